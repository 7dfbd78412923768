package evidence

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
)

// bare leaves out of a build-up what the pre-read table does not hold: names of
// frames and fixings as sold, and ids, none of which weigh or sound.
func bare(b assembly.BuildUp) assembly.BuildUp {
	out := assembly.BuildUp{Width: b.Width, Height: b.Height, Horizontal: b.Horizontal}
	for _, l := range b.Leaves {
		var c assembly.Leaf
		for _, y := range l.Layers {
			y.ID = ""
			c.Layers = append(c.Layers, y)
		}
		out.Leaves = append(out.Leaves, c)
	}
	for _, g := range b.Gaps {
		g.ID = ""
		g.Frame.Code, g.Frame.Name, g.Frame.Region, g.Frame.Spacings = "", "", "", nil
		out.Gaps = append(out.Gaps, g)
	}
	return out
}

// Every row stands in the pre-read table as the reader reads it, to the digit.
func TestPrereadIsWhatIsRead(t *testing.T) {
	rows := map[string]Test{}
	for _, x := range known().tests {
		rows[x.ID] = x
	}
	read := 0
	for _, x := range Ratings() {
		if !x.Read() {
			assert.NotContains(t, rows, x.ID)
			continue
		}
		read++
		y, ok := rows[x.ID]
		require.True(t, ok, x.ID)
		assert.Equal(t, [...]string{x.Source, x.Table, x.Description, x.Kind, x.Tier}, [...]string{y.Source, y.Table, y.Description, y.Kind, y.Tier}, x.ID)
		assert.Equal(t, x.STC, y.STC, x.ID)
		assert.Equal(t, x.Assumed, y.Assumed, x.ID)
		require.Len(t, y.BuildUps, len(x.BuildUps), x.ID)
		for i := range x.BuildUps {
			require.Equal(t, bare(x.BuildUps[i]), bare(y.BuildUps[i]), "%s, %d", x.ID, i)
		}
	}
	assert.Len(t, known().tests, read)
}

// The spectra, too, NaN where none was printed.
func TestPrereadSpectra(t *testing.T) {
	same := func(id string, a, b []float64) {
		for i := range a {
			assert.True(t, a[i] == b[i] || math.IsNaN(a[i]) && math.IsNaN(b[i]), "%s, %d: %v, %v", id, i, a[i], b[i])
		}
	}
	for _, x := range ThirdSpectra() {
		thirds, _, ok := Printed(x.ID)
		require.True(t, ok.Thirds, x.ID)
		same(x.ID, x.Loss[:], thirds[:])
	}
	for _, x := range OctaveSpectra() {
		_, octaves, ok := Printed(x.ID)
		require.True(t, ok.Octaves, x.ID)
		same(x.ID, x.Loss[:], octaves[:])
	}
	_, _, ok := Printed("none such")
	assert.False(t, ok.Thirds || ok.Octaves)
}

// The nearest row is the same by either way, and what differs from it.
func TestPrereadNearest(t *testing.T) {
	rows := Ratings()
	all := views(rows)
	changed := func(b assembly.BuildUp, i int) assembly.BuildUp {
		b.Leaves = append([]assembly.Leaf(nil), b.Leaves...)
		l := append([]assembly.Layer(nil), b.Leaves[0].Layers...)
		l[0].Board = l[0].Board.WithMass(l[0].Board.Mass * 1.4)
		if i%2 == 0 {
			l = append(l, l[0])
		}
		b.Leaves[0].Layers = l
		b.Gaps = append([]assembly.Gap(nil), b.Gaps...)
		for k := range b.Gaps {
			b.Gaps[k].Depth *= 1.3
			b.Gaps[k].Near, b.Gaps[k].Far = b.Gaps[k].Far, b.Gaps[k].Near
		}
		return b
	}
	asked := 0
	for i, x := range rows {
		if i%9 != 0 {
			continue // every ninth is enough of the same
		}
		for _, b := range x.BuildUps {
			for _, q := range []assembly.BuildUp{b, changed(b, i)} {
				want, differ := nearestOf(q, rows, all)
				got, same := Nearest(q)
				require.Equal(t, want.ID, got.ID)
				require.Equal(t, differ, same, x.ID)
				asked++
			}
		}
	}
	assert.Greater(t, asked, 80)
}

// What is left over is the left-out figures less the measured ones, row by row.
func TestPrereadLeftovers(t *testing.T) {
	ratings := map[string]int{}
	for _, x := range LeftOutRatings() {
		ratings[x.ID] = x.STC
	}
	var want []leftover
	for _, x := range Ratings() {
		if c, ok := ratings[x.ID]; ok && x.STC > 0 {
			want = append(want, leftover{x.Kind, x.Tier, 0, float64(c - x.STC)})
		}
	}
	assert.Equal(t, want, known().ratings)
	bands := map[string]band.Spectrum{}
	for _, x := range LeftOutSpectra() {
		bands[x.ID] = x.Loss
	}
	want = nil
	take := func(x Test, at int, by float64) {
		if !math.IsNaN(by) {
			want = append(want, leftover{x.Kind, x.Tier, at, by})
		}
	}
	for _, x := range ThirdSpectra() {
		if c, ok := bands[x.ID]; ok {
			for i := range c {
				take(x.Test, i, c[i]-x.Loss[i])
			}
		}
	}
	for _, x := range OctaveSpectra() {
		if c, ok := bands[x.ID]; ok {
			for o := range x.Loss {
				take(x.Test, 3*o, c.Octave(o)-x.Loss[o])
			}
		}
	}
	assert.Equal(t, want, known().bands)
}
