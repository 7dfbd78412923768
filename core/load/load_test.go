package load

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// hung is a leaf of boards of so many psf on clips, with channel of so many lb/ft.
func hung(psf, rowsIn, alongIn, channelLbFt, ratingLb float64) assembly.BuildUp {
	there := material.Board{Kind: material.Gypsum, Thickness: 0.0127, Mass: 7.8}
	return assembly.BuildUp{
		Leaves: []assembly.Leaf{
			{Layers: []assembly.Layer{{Board: material.Board{Kind: material.Gypsum, Thickness: 0.03, Mass: unit.SurfaceMass(psf) * unit.PoundPerSquareFoot}}}},
			{Layers: []assembly.Layer{{Board: there, There: true}}},
		},
		Gaps: []assembly.Gap{{
			Depth: 0.13, Fill: material.Fill{ID: "wool", Density: 42}, FillDepth: 0.089,
			Near: assembly.Held{
				Fixing: material.Fixing{ID: "clip", Kind: material.Clip, LineMass: unit.LineMass(channelLbFt) * unit.PoundPerFoot},
				Grid:   assembly.Grid{Rows: unit.Length(rowsIn) * unit.Inch, Along: unit.Length(alongIn) * unit.Inch},
				Rating: unit.Mass(ratingLb) * unit.Pound,
			},
		}},
	}
}

// Sheets of 41, 58 and 41 lb on clips at 24 × 48 in rated 42 lb, channel 0.3 lb/ft.
func ExampleOnClip() {
	c, _ := OnClip(hung((41+58+41)/32.0, 24, 48, 0.3, 42), 0)
	fmt.Printf("area        %.2f ft²\n", float64(c.Area/unit.SquareFoot))
	fmt.Printf("boards      %.2f psf\n", float64(c.Boards/unit.PoundPerSquareFoot))
	fmt.Printf("channel     %.2f psf\n", float64(c.Channel/unit.PoundPerSquareFoot))
	fmt.Printf("own area    %.1f lb\n", float64(c.Own/unit.Pound))
	fmt.Printf("on the clip %.1f lb\n", float64(c.OnClip/unit.Pound))
	fmt.Printf("of rating   %.0f %%, %s\n", 100*c.Share, c.State)
	fmt.Printf("holds up to rows %.1f in apart\n", float64(c.HoldsRows/unit.Inch))
	// Output:
	// area        8.00 ft²
	// boards      4.38 psf
	// channel     0.15 psf
	// own area    36.2 lb
	// on the clip 39.8 lb
	// of rating   95 %, close
	// holds up to rows 25.4 in apart
}

// Load on one clip without the 1.10, boards and 0.15 psf for channel and
// screws, lb (common practice: tributary area × mass, printed to 0.1 lb).
func TestPrintedTributary(t *testing.T) {
	grids := [][2]float64{{24, 48}, {24, 36}, {24, 24}, {16, 48}, {16, 32}, {16, 24}}
	for _, row := range []struct {
		psf  float64
		want [6]float64
	}{
		{1.6, [6]float64{14.0, 10.5, 7.0, 9.3, 6.2, 4.7}},
		{2.2, [6]float64{18.8, 14.1, 9.4, 12.5, 8.4, 6.3}},
		{3.2, [6]float64{26.8, 20.1, 13.4, 17.9, 11.9, 8.9}},
		{4.4, [6]float64{36.4, 27.3, 18.2, 24.3, 16.2, 12.1}},
		{6.6, [6]float64{54.0, 40.5, 27.0, 36.0, 24.0, 18.0}},
		{8.8, [6]float64{71.6, 53.7, 35.8, 47.7, 31.8, 23.9}},
	} {
		for i, g := range grids {
			// 0.15 psf at this distance of rows, as channel per length.
			c, ok := OnClip(hung(row.psf, g[0], g[1], 0.15*g[0]/12, 36), 0)
			require.True(t, ok)
			own := float64(c.Own / unit.Pound)
			// Half of the last printed digit, and of 9.35 rounded either way.
			assert.InDelta(t, row.want[i], own, 0.0501, "%g psf at %g × %g in", row.psf, g[0], g[1])
		}
	}
}

// On a 36 lb clip the table prints as over: two layers of 5/8 at 24 × 48 in and
// more; three at 24 × 36; four at 16 × 48.
func TestPrintedOver(t *testing.T) {
	over := func(psf, rows, along float64) bool {
		c, _ := OnClip(hung(psf, rows, along, 0.15*rows/12, 36), 0)
		return unit.Over(c.Own, c.Rating)
	}
	assert.True(t, over(4.4, 24, 48))
	assert.False(t, over(3.2, 24, 48))
	assert.True(t, over(6.6, 24, 36))
	assert.False(t, over(4.4, 24, 36))
	assert.False(t, over(6.6, 16, 48), "36.0 lb on 36 lb is equal, not over")
	assert.True(t, over(8.8, 16, 48))
	assert.False(t, over(8.8, 24, 24))
}

// The inner reaction of a beam over n equal spans, in w·l, by the theorem of
// three moments: Mk−1 + 4·Mk + Mk+1 = −w·l²/2, ends free.
func reactions(n int) []float64 {
	inner := n - 1
	diag, right := make([]float64, inner), make([]float64, inner)
	for i := range diag {
		diag[i], right[i] = 4, -0.5
		if i > 0 {
			diag[i] -= 1 / diag[i-1]
			right[i] -= right[i-1] / diag[i-1]
		}
	}
	m := make([]float64, n+1)
	for i := inner - 1; i >= 0; i-- {
		m[i+1] = (right[i] - m[i+2]) / diag[i]
	}
	r := make([]float64, n+1)
	for k := range n { // span k between supports k and k+1
		lean := m[k+1] - m[k]
		r[k] += 0.5 + lean
		r[k+1] += 0.5 - lean
	}
	return r
}

func TestLawContinuous(t *testing.T) {
	r := reactions(3)
	assert.InDelta(t, Continuous, r[1], 1e-12)
	assert.InDelta(t, Continuous, r[2], 1e-12)
	assert.InDelta(t, 0.4, r[0], 1e-12)
	assert.InDelta(t, 1.25, reactions(2)[1], 1e-12)
	assert.InDelta(t, 8.0/7, reactions(4)[1], 1e-12)
	for n := 2; n < 9; n++ {
		total := 0.0
		for _, x := range reactions(n) {
			total += x
		}
		assert.InDelta(t, float64(n), total, 1e-12, "all of the load arrives")
	}
}

func TestLawLoad(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 300 {
		psf, rows, along, ch, rating := 1+9*r.Float64(), 10+20*r.Float64(), 12+40*r.Float64(), 0.4*r.Float64(), 15+60*r.Float64()
		c, ok := OnClip(hung(psf, rows, along, ch, rating), 0)
		require.True(t, ok)
		// All clips together carry all that hangs.
		whole := float64(c.Boards+c.Channel+c.Fill+c.Extra) / c.Per
		assert.InDelta(t, whole, float64(c.Own), 1e-9)
		// Twice as many rows carry half of the boards each; the channel is then twice as much.
		half, _ := OnClip(hung(psf, rows/2, along, ch, rating), 0)
		line := ch * float64(unit.PoundPerFoot) * along * float64(unit.Inch)
		assert.InDelta(t, (float64(c.Own)-line)/2+line, float64(half.Own), 1e-9)
		// At the widest rows that hold, the load is the rating, and wider is over.
		if c.HoldsRows > 0 {
			at := float64(c.HoldsRows / unit.Inch)
			just, _ := OnClip(hung(psf, at, along, ch, rating), 0)
			assert.Equal(t, Close, just.State)
			assert.InDelta(t, 1, just.Share, 1e-9)
			wide, _ := OnClip(hung(psf, at*1.01, along, ch, rating), 0)
			assert.Equal(t, Over, wide.State)
		}
	}
}

func TestStates(t *testing.T) {
	for share, want := range map[float64]State{
		0: Under, 0.39: Under, 0.40: Holds, 0.5: Holds, 0.89: Holds, 0.90: Close, 0.99: Close,
		1: Close, 1.0009: Close, 1.002: Over, 1.41: Over, math.Inf(1): Over,
	} {
		assert.Equal(t, want, StateOf(share), "%g", share)
	}
	c, ok := OnClip(hung(4, 24, 48, 0.24, 0), 0)
	assert.True(t, ok)
	assert.Equal(t, Unrated, c.State)
	assert.Zero(t, c.HoldsRows)
	c, _ = OnClip(hung(4, 24, 48, 0.24, 0.5), 0)
	assert.Equal(t, Over, c.State)
	assert.Zero(t, c.HoldsRows, "the channel alone is over")
}

func TestNothingToLoad(t *testing.T) {
	b := hung(4, 24, 48, 0.24, 36)
	_, ok := OnClip(b, 1)
	assert.False(t, ok, "the far leaf hangs on nothing")
	_, ok = OnClip(b, 9)
	assert.False(t, ok)
	b.Gaps[0].Near.Fixing.Kind = material.Channel
	c, ok := OnClip(b, 0)
	assert.False(t, ok)
	assert.Equal(t, None, c.State)
	mass, over := OverChannel(b, 0)
	assert.InDelta(t, 4, float64(mass/unit.PoundPerSquareFoot), 1e-12)
	assert.False(t, over)
	_, over = OverChannel(hungOnChannel(7.6), 0)
	assert.True(t, over)
	_, over = OverChannel(hungOnChannel(7.5), 0)
	assert.False(t, over, "equal is not over")
}

func hungOnChannel(psf float64) assembly.BuildUp {
	b := hung(psf, 24, 16, 0.24, 0)
	b.Gaps[0].Near.Fixing.Kind = material.Channel
	return b
}

// On a ceiling the fill lies on the boards and hangs on the clips too.
func TestCeiling(t *testing.T) {
	b := hung(4.4, 24, 48, 0.24, 42)
	wall, _ := OnClip(b, 0)
	b.Gaps[0].FillLies = true
	b.Gaps[0].Near.Extra = 1
	ceiling, _ := OnClip(b, 0)
	fill := 42 * 0.089
	assert.InDelta(t, fill, float64(ceiling.Fill), 1e-12)
	assert.InDelta(t, float64(wall.Own)+float64(wall.Area)*(fill+1), float64(ceiling.Own), 1e-9)

	added := 4.4*float64(unit.PoundPerSquareFoot) + float64(ceiling.Channel) + fill + 1
	assert.InDelta(t, added, float64(Added(b, 0)), 1e-9)
	b.Gaps[0].FillThere = true
	assert.InDelta(t, added-fill, float64(Added(b, 0)), 1e-9)
	assert.True(t, unit.Over(Added(b, 0), AddedLimit))
	assert.Zero(t, Added(b, 1), "what is there already adds nothing")
}

func TestCount(t *testing.T) {
	c, _ := OnClip(hung(4, 24, 48, 0.24, 36), 0)
	assert.Equal(t, 14, c.Count(160.0*8/12*unit.SquareFoot), "106.7 ft² at one for 8 ft²")
	assert.Equal(t, 4, c.Count(32*unit.SquareFoot))
	assert.Zero(t, c.Count(0))
}
