package transmission

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// heavier returns a build-up whose leaves each weigh so many times as much, at
// the same thickness and critical frequency: boards of a denser and stiffer make.
func heavier(b assembly.BuildUp, by []float64) assembly.BuildUp {
	b.Leaves = slices.Clone(b.Leaves)
	for i := range b.Leaves {
		l := slices.Clone(b.Leaves[i].Layers)
		for j := range l {
			x := &l[j].Board
			x.Mass *= unit.SurfaceMass(by[i])
			x.Sound.Young *= unit.Pressure(by[i])
			x.Sound.Faces *= by[i]
		}
		b.Leaves[i].Layers = l
	}
	return b
}

// lowestCoincidence is that of any board or leaf, in any direction along it,
// films as stiff as glue.
func lowestCoincidence(b assembly.BuildUp) float64 {
	c := Defaults()
	low := math.Inf(1)
	for _, x := range Coincidences(b) {
		low = min(low, float64(x.Low))
	}
	for _, l := range b.Leaves {
		glued := assembly.Leaf{Layers: slices.Clone(l.Layers)}
		for i := range glued.Layers {
			if glued.Layers[i].Join == assembly.Film {
				glued.Layers[i].Join = assembly.Glued
			}
		}
		f := newLeaf(glued, &c)
		low = min(low, critical(f.mass, f.stiff)/math.Sqrt(orthotropy(f.ratio, 1)))
	}
	return low
}

// highestResonance is that of the leaves on the air between them and that of
// two leaves on what ties them, whichever is higher.
func highestResonance(b assembly.BuildUp) float64 {
	c := Defaults()
	f0 := 0.0
	for _, f := range Resonances(b) {
		f0 = max(f0, float64(f))
	}
	var leaves [maxLeaves]leaf
	for i, l := range b.Leaves {
		leaves[i] = newLeaf(l, &c)
	}
	for i := range b.Gaps {
		found, n := bridges(&b, i, leaves[:len(b.Leaves)], &c)
		for _, r := range found[:n] {
			s := r.density * r.still(&leaves[i], &leaves[i+1])
			f0 = max(f0, math.Sqrt(s*(1/leaves[i].mass+1/leaves[i+1].mass))/(2*pi))
		}
	}
	return f0
}

// TestLawHeavier: mass added to every leaf at the same critical frequency never
// lowers the loss of a band between twice the highest resonance and half the
// lowest coincidence. 0.15 dB is for light steel and edges, whose stiffness is
// taken to grow a little faster than the leaves' mass, just above a resonance.
// Losses above 60 dB are left out: there chains of three bridges, some 1 band in
// 10 000, lose up to 4 dB.
func TestLawHeavier(t *testing.T) {
	n := 6000
	if testing.Short() || runtime.GOOS == "js" {
		n = 600
	}
	r := rand.New(rand.NewPCG(5, 5))
	tables := NewTables()
	checked := 0
	for range n {
		b := newLot(r, 4).build(r)
		h := heavier(b, []float64{1 + r.Float64(), 1 + r.Float64(), 1 + r.Float64(), 1 + r.Float64()})
		if len(b.Check()) > 0 || len(h.Check()) > 0 {
			continue
		}
		low, high := 2*highestResonance(b), lowestCoincidence(b)/2
		const half = 1.1220184543019633 // 10^(1/20), half a band
		from, to := band.First50, band.Count
		for from < to && band.Exact(from)/half < low {
			from++
		}
		for to > from && band.Exact(to-1)*half > high {
			to--
		}
		if from == to {
			continue
		}
		light, heavy := loss(t, b, Options{From: from, To: to}, tables), loss(t, h, Options{From: from, To: to}, tables)
		for i := from; i < to; i++ {
			if light[i] > 60 {
				continue
			}
			checked++
			if light[i]-heavy[i] > 0.15 {
				require.Fail(t, "heavier stops less", "%v Hz: %.2f, then %.2f dB; f0 %.0f, fc %.0f Hz, %+v", band.Nominal[i], light[i], heavy[i], low/2, high*2, b)
			}
		}
	}
	assert.Greater(t, checked, n/2)
}

// TestLawLeak: what leaks beside a build-up never raises its loss, and adds as
// transmissions do: −10 lg(10^(−R/10) + τ).
func TestLawLeak(t *testing.T) {
	for name, b := range zoo(t) {
		tight := loss(t, b, Options{}, nil)
		last := tight
		for _, tau := range []float64{1e-9, 1e-7, LaboratoryLimit * 10, 1e-5, 1e-3, 0.1} {
			leaky := loss(t, b, Options{Limit: tau}, nil)
			for i := range leaky {
				assert.LessOrEqual(t, leaky[i], last[i], "%s, %v Hz", name, band.Nominal[i])
				assert.InDelta(t, -10*math.Log10(min(math.Pow(10, -tight[i]/10)+tau, 1)), leaky[i], 1e-9, "%s, %v Hz", name, band.Nominal[i])
			}
			last = leaky
		}
	}
}

// TestLawPores: a wall of the tables that is not sealed stops no more than the
// same wall sealed, in any band, and some 5 dB less at least in one.
func TestLawPores(t *testing.T) {
	walls := 0
	for _, x := range material.All() {
		if x.Sound.Flow == 0 {
			continue
		}
		walls++
		open := loss(t, one(layer(x)), Options{Accuracy: Converged}, nil)
		x.Sound.Flow = 0
		sealed := loss(t, one(layer(x)), Options{Accuracy: Converged}, nil)
		most := 0.0
		for i := range open {
			assert.LessOrEqual(t, open[i], sealed[i]+1e-9, "%s, %v Hz", x.ID, band.Nominal[i])
			most = max(most, sealed[i]-open[i])
		}
		assert.Greater(t, most, 5.0, x.ID)
	}
	assert.Positive(t, walls)
}
