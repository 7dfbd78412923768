package load

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// equal is a beam over n equal spans of 1 m under 1 kg/m.
func equal(n int) *beam {
	b := &beam{spreads: []spread{{0, float64(n), 1}}}
	for i := range n + 1 {
		b.at = append(b.at, float64(i))
	}
	b.solve()
	return b
}

// HICKS2002, Table 2.1, p. 50: moments over the supports in w·l² and shears in
// w·l of uniformly loaded continuous beams over equal spans, from the left end
// to the middle; a reaction is the sum of the shears on both its sides.
func TestPrintedEqualSpans(t *testing.T) {
	for spans, row := range map[int]struct{ moments, reactions []float64 }{
		1: {[]float64{0}, []float64{1.0 / 2}},
		2: {[]float64{0, 1.0 / 8}, []float64{3.0 / 8, 10.0 / 8}},
		3: {[]float64{0, 1.0 / 10}, []float64{4.0 / 10, 11.0 / 10}},
		4: {[]float64{0, 3.0 / 28, 2.0 / 28}, []float64{11.0 / 28, 32.0 / 28, 26.0 / 28}},
		5: {[]float64{0, 4.0 / 38, 3.0 / 38}, []float64{15.0 / 38, 43.0 / 38, 37.0 / 38}},
		6: {[]float64{0, 11.0 / 104, 8.0 / 104, 9.0 / 104}, []float64{41.0 / 104, 118.0 / 104, 100.0 / 104, 106.0 / 104}},
		7: {[]float64{0, 15.0 / 142, 11.0 / 142, 12.0 / 142}, []float64{56.0 / 142, 161.0 / 142, 137.0 / 142, 143.0 / 142}},
	} {
		b := equal(spans)
		for i, m := range row.moments {
			assert.InDelta(t, -m, b.moment[i], 1e-12, "%d spans, support %d", spans, i+1)
			assert.InDelta(t, row.reactions[i], b.react[i], 1e-12, "%d spans, support %d", spans, i+1)
			assert.InDelta(t, row.reactions[i], b.react[spans-i], 1e-12, "from the other end")
		}
	}
	assert.InDelta(t, Continuous, equal(3).react[1], 1e-12)
}

// The same table: largest moment in each span, w·l², to the digits printed.
func TestPrintedSpanMoments(t *testing.T) {
	for spans, want := range map[int][]float64{
		1: {0.125}, 2: {0.0703}, 3: {0.080, 0.025}, 4: {0.0772, 0.0364}, 5: {0.0779, 0.0332, 0.0461},
		6: {0.0777, 0.0340, 0.0433}, 7: {0.0778, 0.0338, 0.0440, 0.0405},
	} {
		b := equal(spans)
		for k, m := range want {
			got, _ := b.bend(k)
			// Looked at in sixteenths of a span: at most l²/32²/2 = 0.0005 below the top.
			assert.InDelta(t, m, got, 0.00055, "%d spans, span %d", spans, k+1)
			assert.LessOrEqual(t, got, m+0.00005)
		}
	}
}

// Largest deflections in w·l⁴/EI of the beam tables that every steel handbook
// prints: 5/384 simple, 1/185 over two spans, 0.0069 at the ends of three
// (cited from memory); derived for a load at the middle of a simple span 1/48.
func TestPrintedDeflection(t *testing.T) {
	sag := func(b *beam, k int) float64 { _, y := b.bend(k); return y }
	assert.InDelta(t, 5.0/384, sag(equal(1), 0), 1e-12)
	assert.InDelta(t, 185, 1/sag(equal(2), 0), 0.5)
	assert.InDelta(t, 0.0069, sag(equal(3), 0), 0.5e-4)
	mid := &beam{at: []float64{0, 1}, lumps: []lump{{0.5, 1}}}
	mid.solve()
	m, y := mid.bend(0)
	assert.InDelta(t, 1.0/4, m, 1e-12)
	assert.InDelta(t, 1.0/48, y, 1e-12)
	// One span between two free ends of 0.2 under 1: M = −0.02 over both.
	ends := &beam{at: []float64{0.2, 1.2}, spreads: []spread{{0, 1.4, 1}}}
	ends.solve()
	assert.InDelta(t, -0.02, ends.moment[0], 1e-12)
	_, y = ends.bend(0)
	assert.InDelta(t, 5.0/384-0.02/8, y, 1e-12)
}

// Whatever lies wherever: reactions sum to the load and balance about the
// origin, and a load turned about gives reactions turned about.
func TestLawBeam(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 400 {
		b, turned := &beam{}, &beam{}
		x := 0.3 * r.Float64()
		for range 2 + r.IntN(6) {
			b.at = append(b.at, x)
			x += 0.1 + 1.5*r.Float64()
		}
		end := b.at[len(b.at)-1] + 0.3*r.Float64()
		mass, lever := 0.0, 0.0
		for range 1 + r.IntN(5) {
			from := end * r.Float64()
			to := from + (end-from)*r.Float64()
			w := 30 * r.Float64()
			b.spreads = append(b.spreads, spread{from, to, w})
			turned.spreads = append(turned.spreads, spread{end - to, end - from, w})
			mass += w * (to - from)
			lever += w * (to - from) * (from + to) / 2
		}
		for range r.IntN(4) {
			p := lump{end * r.Float64(), 20 * r.Float64()}
			b.lumps = append(b.lumps, p)
			turned.lumps = append(turned.lumps, lump{end - p.at, p.m})
			mass += p.m
			lever += p.m * p.at
		}
		for i := range b.at {
			turned.at = append(turned.at, end-b.at[len(b.at)-1-i])
		}
		b.solve()
		turned.solve()
		sum, about := 0.0, 0.0
		for i, f := range b.react {
			sum += f
			about += f * b.at[i]
			assert.InDelta(t, f, turned.react[len(b.at)-1-i], 1e-8)
		}
		assert.InDelta(t, mass, sum, 1e-9)
		assert.InDelta(t, lever, about, 1e-8)
		// A little rotation over an inner support is the same from both sides: the
		// slopes of the two spans, by differences of the deflection, agree.
		for k := range len(b.at) - 2 {
			assert.InDelta(t, b.slope(k, true), b.slope(k+1, false), 1e-6)
		}
	}
}

// slope returns EI·θ at the right or left end of span k by numbers alone:
// ∫ M·x/l dx with the moment found from the free body left of x.
func (b *beam) slope(k int, right bool) float64 {
	l := b.at[k+1] - b.at[k]
	bending := func(at float64) float64 {
		m := 0.0
		for i, f := range b.react {
			m += f * math.Max(0, at-b.at[i])
		}
		for _, s := range b.spreads {
			if to := math.Min(s.to, at); to > s.from {
				m -= s.w * (to - s.from) * (at - (to+s.from)/2)
			}
		}
		for _, p := range b.lumps {
			m -= p.m * math.Max(0, at-p.at)
		}
		return m
	}
	const n = 4000
	sum := 0.0
	for i := range n {
		x := (float64(i) + 0.5) / n
		arm := 1 - x
		if right {
			arm = -x
		}
		sum += bending(b.at[k]+x*l) * arm * l / n
	}
	return sum
}
