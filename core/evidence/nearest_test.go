package evidence

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

func read(t testing.TB, leaf1, framing, fill, leaf2, kind string) assembly.BuildUp {
	built, err := ReadText(Text{Leaf1: leaf1, Framing: framing, Fill: fill, Leaf2: leaf2, Kind: kind})
	require.NoError(t, err)
	return built.BuildUps[0]
}

func whats(d []Difference) (out []What) {
	for _, x := range d {
		out = append(out, x.What)
	}
	return out
}

// The nearest test to a measured construction is itself, or one of the same text; from either side.
func TestLawNearestToItself(t *testing.T) {
	for i, r := range Ratings() {
		if i%3 != 0 {
			continue // every third is enough of the same
		}
		for _, b := range r.BuildUps {
			for _, seen := range []assembly.BuildUp{b, b.Reversed()} {
				near, d := Nearest(seen)
				sum := 0.0
				for _, x := range d {
					sum += x.Weight
				}
				// A row with a detail missing may give way to one stated in full that is as like.
				assert.LessOrEqual(t, sum, tierDistance[r.Tier], "%s: %s, %v", r.ID, near.ID, whats(d))
			}
		}
	}
}

func TestNearest(t *testing.T) {
	// Two boards a side on wood studs, the code's W2a, but at a third of the fill.
	b := read(t, "gypsum 15.9 typeX x2", "wood 38x89 @400 single", "absorptive fibre 30", "gypsum 15.9 typeX x2", "")
	near, d := Nearest(b)
	assert.Equal(t, "NBC-W2d", near.ID)
	require.Len(t, d, 1)
	assert.Equal(t, Filled, d[0].What)
	assert.InDelta(t, 30.0/89, d[0].Yours, 1e-9)
	assert.InDelta(t, 0, d[0].Test, 1e-9)

	// Clips: nothing of the kind was measured; channel is the nearest thing.
	b = read(t, "gypsum 15.9 typeX x1", "wood 38x89 @600 single +clips@600x1200 on leaf1", "absorptive fibre 89", "gypsum 15.9 typeX x2", "")
	near, d = Nearest(b)
	assert.Equal(t, "wall wood single RC", near.Kind)
	i := slices.IndexFunc(d, func(x Difference) bool { return x.What == Fixing })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, string(material.Clip), d[i].YoursWord)
	assert.Equal(t, string(material.Channel), d[i].TestWord)

	// A plywood sandwich: told as boards, by leaf, whichever way it faces.
	b = read(t, "gypsum 15.9 typeX x1", "steel 92 ga25 @600 single", "absorptive fibre 89", "gypsum 12.7 typeX x1 + plywood 15.5 x1", "")
	_, d = Nearest(b)
	i = slices.IndexFunc(d, func(x Difference) bool { return x.What == Boards })
	require.GreaterOrEqual(t, i, 0)
	assert.Equal(t, 1, d[i].Leaf)
	assert.Equal(t, "gypsum+plywood", d[i].YoursWord)

	// A damping film is a difference.
	b = read(t, "gypsum 15.9 typeX x2 with film", "wood 38x89 @400 single", "absorptive fibre 89", "gypsum 15.9 typeX x2", "")
	near, d = Nearest(b)
	assert.Equal(t, "NBC-W2a", near.ID)
	assert.Equal(t, []What{Joints}, whats(d))

	// Kinds stay together: block to block, floor to floor, pane to pane.
	near, _ = Nearest(read(t, "gypsum 12.7 regular x2", "block 140; wood strapping 38x38 @600 on leaf1", "absorptive fibre 38", "none", "").Reversed())
	assert.Equal(t, "wall block lined", near.Kind)
	b = read(t, "osb 18 x1", "wood joist 38x286 @400 +RC@600 on ceiling", "absorptive fibre 150", "gypsum 15.9 typeX x2", "floor")
	b.Gaps[0].Depth = 0.3
	near, d = Nearest(b)
	assert.Equal(t, "floor wood joist RC", near.Kind)
	assert.Contains(t, whats(d), Depth)
	b = assembly.BuildUp{Leaves: []assembly.Leaf{{Layers: []assembly.Layer{{Board: material.Board{Kind: material.Glass, Thickness: 5 * unit.Millimetre, Mass: 12.5}}}}}}
	near, _ = Nearest(b)
	assert.Equal(t, "window single", near.Kind)

	near, d = Nearest(assembly.BuildUp{})
	assert.Empty(t, near.ID)
	assert.Empty(t, d)
}

func BenchmarkNearest(b *testing.B) {
	w := read(b, "gypsum 15.9 typeX x2", "wood 38x89 @400 single", "absorptive fibre 89", "plywood 15.5 x2", "")
	for b.Loop() {
		Nearest(w)
	}
}
