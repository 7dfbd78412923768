package transmission

import (
	"math"
	"math/rand/v2"
	"os"
	"runtime"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// lot is random parts to put build-ups together from: boards of any kind,
// thickness and weight, every frame and fixing, fills, shorts, films and glue.
type lot struct {
	leaves []assembly.Leaf
	gaps   []assembly.Gap
	faces  [][2]unit.Length
}

// wide is v times anything from e^-by to e^by.
func wide(r *rand.Rand, v, by float64) float64 { return v * math.Exp(by*(2*r.Float64()-1)) }

// newLot draws n leaves and n gaps.
func newLot(r *rand.Rand, n int) (p lot) {
	boards, frames, fixings, fills := material.All(), material.Frames(""), material.Fixings(), material.Fills("")
	pick := func(n int) int { return r.IntN(n) }
	for range n {
		var l assembly.Leaf
		for range 1 + pick(1+pick(4)) {
			x := boards[pick(len(boards))]
			rg := assembly.ThicknessRange(x.Kind)
			if pick(3) == 0 {
				x = x.WithThickness(unit.Length(math.Max(rg.Low, math.Min(rg.High, wide(r, float64(x.Thickness), 0.7)))))
			}
			if pick(3) == 0 {
				d := assembly.DensityRange(x.Kind)
				t := float64(x.Thickness)
				x = x.WithMass(unit.SurfaceMass(math.Max(d.Low*t*1.01, math.Min(d.High*t*0.99, wide(r, float64(x.Mass), 1)))))
			}
			l.Layers = append(l.Layers, assembly.Layer{Board: x, Join: []assembly.Join{assembly.Loose, assembly.Loose, assembly.Glued, assembly.Film}[pick(4)]})
		}
		p.leaves = append(p.leaves, l)
		g := assembly.Gap{Frame: frames[pick(len(frames))], Spacing: unit.Length(wide(r, 0.5, 0.9))}
		for _, h := range []*assembly.Held{&g.Near, &g.Far} {
			h.Fixing = fixings[pick(len(fixings))]
			h.Fixing.Stiffness = wide(r, h.Fixing.Stiffness, 2)
			h.Grid = assembly.Grid{Rows: unit.Length(wide(r, 0.6, 1)), Along: unit.Length(wide(r, 0.6, 1))}
			if pick(8) == 0 {
				h.Shorts = wide(r, 1, 3)
			}
		}
		g.Depth = max(g.DefaultDepth(), unit.Length(wide(r, 0.03, 3)))
		if pick(2) == 0 {
			g.Fill = fills[pick(len(fills))]
			g.FillDepth = min(max(unit.Length(float64(g.Depth)*r.Float64()), 1.01e-3), g.Depth)
		}
		p.gaps = append(p.gaps, g)
	}
	p.faces = [][2]unit.Length{{}, {}, {unit.Length(wide(r, 3, 2)), unit.Length(wide(r, 2.5, 2))}}
	return p
}

// build is one to four of the leaves with gaps between them.
func (p lot) build(r *rand.Rand) (b assembly.BuildUp) {
	n := 1 + r.IntN(assembly.MaxLeaves)
	for i := range n {
		b.Leaves = append(b.Leaves, p.leaves[r.IntN(len(p.leaves))])
		if i > 0 {
			b.Gaps = append(b.Gaps, p.gaps[r.IntN(len(p.gaps))])
		}
	}
	face := p.faces[r.IntN(len(p.faces))]
	b.Width, b.Height = face[0], face[1]
	b.Horizontal = r.IntN(4) == 0
	return b
}

// TestFinite: every build-up that can be has a finite loss that is nowhere
// below nothing, and the same from its other side: every twentieth in all
// bands, the rest in three neighbouring ones anywhere. As many as TWOLEAF_FINITE
// says, for at most TWOLEAF_FINITE_FOR.
func TestFinite(t *testing.T) {
	n, each, deadline := 20_000, 50, time.Time{}
	switch {
	case testing.Short():
		n = 500
	case runtime.GOOS == "js":
		n = 2_000
	}
	if v := os.Getenv("TWOLEAF_FINITE"); v != "" {
		var err error
		n, err = strconv.Atoi(v)
		require.NoError(t, err)
		each = 1_000
		if v := os.Getenv("TWOLEAF_FINITE_FOR"); v != "" {
			limit, err := time.ParseDuration(v)
			require.NoError(t, err)
			deadline = time.Now().Add(limit)
		}
	}
	r := rand.New(rand.NewPCG(2, 1120))
	tables := NewTables()
	done, turned := 0, 0
	var parts lot
	for i := range n {
		if i%each == 0 {
			if !deadline.IsZero() && time.Now().After(deadline) {
				break
			}
			parts = newLot(r, 4)
		}
		b := parts.build(r)
		if len(b.Check()) > 0 {
			continue
		}
		o := Options{}
		if i%20 > 0 {
			o.From = r.IntN(band.Count - 2)
			o.To = o.From + 3
		}
		l, err := LossOf(b, o, tables)
		require.NoError(t, err, "%d", i)
		for k, x := range l {
			// Comparisons first: assertions cost more than the sums.
			if !(x >= 0 && x < 301) {
				require.Fail(t, "not a loss", "%d, %v Hz: %v", i, band.Nominal[k], x)
			}
		}
		for _, f := range Resonances(b) {
			if !(f >= 0 && f < 1e6) {
				require.Fail(t, "not a resonance", "%d: %v", i, f)
			}
		}
		if i%10 < 2 {
			back := loss(t, b.Reversed(), o, tables)
			for k := range l {
				if d := math.Abs(l[k] - back[k]); !(d < 1e-6) {
					require.Fail(t, "not reciprocal", "%d, %v Hz: %v", i, band.Nominal[k], d)
				}
			}
			turned++
		}
		done++
	}
	t.Logf("%d build-ups", done)
	if deadline.IsZero() {
		assert.Greater(t, done, n*9/10)
	}
	assert.Greater(t, turned, done/10)
}
