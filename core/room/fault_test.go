package room

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What is wrong is named at its field; the rest is computed.
func TestFaults(t *testing.T) {
	nan := even(50)
	nan[7] = math.NaN()
	wall := func(change func(*Room, *Surface)) func(*Room) {
		return func(r *Room) { change(r, &r.Surfaces[0]) }
	}
	opening := func(o Opening) func(*Room) {
		return func(r *Room) { r.Surfaces[0].Openings = []Opening{o} }
	}
	door := func(id string, x float64) Opening {
		return Opening{ID: id, Kind: "doorSolid", X: x, Placed: true}
	}
	for name, c := range map[string]struct {
		change func(*Room)
		want   Fault
	}{
		"no volume":          {func(r *Room) { r.Volume = 0 }, Fault{Code: Zero, Field: "volume"}},
		"negative length":    {func(r *Room) { r.Length = -1 }, Fault{Code: Negative, Field: "length", Value: -1}},
		"no area":            {wall(func(_ *Room, s *Surface) { s.Width = 0 }), Fault{Code: Zero, Surface: "a", Field: "area"}},
		"gap in a wall":      {wall(func(_ *Room, s *Surface) { s.TL = nan }), Fault{Code: Lacking, Surface: "a", Field: "tl", Value: 160}},
		"unknown flank":      {wall(func(_ *Room, s *Surface) { s.Flank = "x" }), Fault{Code: Unknown, Surface: "a", Field: "flank", Typed: "x"}},
		"unknown space":      {wall(func(_ *Room, s *Surface) { s.Beyond = "x" }), Fault{Code: Unknown, Surface: "a", Field: "beyond", Typed: "x"}},
		"unknown kind":       {opening(Opening{ID: "o", Kind: "x"}), Fault{Code: Unknown, Surface: "a", Opening: "o", Field: "kind", Typed: "x"}},
		"unknown seal":       {opening(Opening{ID: "o", Kind: "duct", Seal: "sides"}), Fault{Code: Unknown, Surface: "a", Opening: "o", Field: "seal", Typed: "sides"}},
		"negative width":     {opening(Opening{ID: "o", Kind: "doorSolid", Width: -2}), Fault{Code: Negative, Surface: "a", Opening: "o", Field: "width", Value: -2}},
		"wide as a barn":     {opening(Opening{ID: "o", Kind: "doorSolid", Width: 5, Height: 1}), Fault{Code: LargerThanWall, Surface: "a", Opening: "o", Field: "width", Value: 5, Limit: 4}},
		"taller than it":     {opening(Opening{ID: "o", Kind: "doorSolid", Width: 1, Height: 3}), Fault{Code: LargerThanWall, Surface: "a", Opening: "o", Field: "height", Value: 3, Limit: 2.5}},
		"larger than it":     {opening(Opening{ID: "o", Kind: "windowUnit", Width: 4, Height: 3}), Fault{Code: LargerThanWall, Surface: "a", Opening: "o", Field: "area", Value: 12, Limit: 10}},
		"out of it":          {opening(door("o", 3.5)), Fault{Code: LargerThanWall, Surface: "a", Opening: "o", Field: "x", Value: 4.31, Limit: 4}},
		"six octaves":        {opening(Opening{ID: "o", Kind: "doorSolid", Octaves: make([]float64, 6)}), Fault{Code: Lacking, Surface: "a", Opening: "o", Field: "octaves", Value: 4000}},
		"an octave short":    {opening(Opening{ID: "o", Kind: "doorSolid", Octaves: []float64{20, math.NaN(), 20, 20, 20, 20, 20}}), Fault{Code: Lacking, Surface: "a", Opening: "o", Field: "octaves", Value: 125}},
		"gaping crack":       {opening(Opening{ID: "o", Kind: "crack", Width: 1, Height: 0.05}), Fault{Code: TooLarge, Surface: "a", Opening: "o", Field: "crack", Value: 0.05, Limit: widestSlit}},
		"crack of no length": {opening(Opening{ID: "o", Kind: "crack"}), Fault{Code: Zero, Surface: "a", Opening: "o", Field: "width"}},
		"two in one place": {func(r *Room) { r.Surfaces[0].Openings = []Opening{door("o", 1), door("p", 1.5)} },
			Fault{Code: Overlap, Surface: "a", Opening: "o", Other: "p", Field: "x", Value: 0.31 * 2.03}},
		"too many": {func(r *Room) {
			r.Surfaces[0].Openings = []Opening{{ID: "o", Kind: "windowUnit", Width: 3, Height: 2}, {ID: "p", Kind: "windowUnit", Width: 3, Height: 2}}
		}, Fault{Code: Overfull, Surface: "a", Opening: "p", Field: "openings", Value: 12, Limit: 10}},
		"target under the background": {func(r *Room) { r.Spaces[0].Background = 40 },
			Fault{Code: BelowBackground, Space: "bedroom", Field: "target", Value: 30, Limit: 40}},
		"of the room itself":    {func(r *Room) { r.Target, r.Background = 20, 30 }, Fault{Code: BelowBackground, Field: "target", Value: 20, Limit: 30}},
		"unknown source":        {func(r *Room) { r.Playing = append(r.Playing, Playing{Source: "x"}) }, Fault{Code: Unknown, Field: "source", Typed: "x"}},
		"unknown listener":      {func(r *Room) { r.Spaces[0].Listener = "x" }, Fault{Code: Unknown, Space: "bedroom", Field: "listener", Typed: "x"}},
		"gap in what plays":     {func(r *Room) { r.Playing[0].Octave = &Levels{0, 0, math.NaN()} }, Fault{Code: Lacking, Field: "octave", Value: 125}},
		"no number of anything": {func(r *Room) { r.Spaces[0].Volume = math.Inf(1) }, Fault{Code: NotNumber, Space: "bedroom", Field: "volume", Value: math.Inf(1)}},
		"read in no space":      {func(r *Room) { r.Measured = []Measured{{Beyond: "x"}} }, Fault{Code: Unknown, Space: "x", Field: "measured", Typed: "x"}},
	} {
		r := flatRoom(50)
		r.Surfaces = append(r.Surfaces, Surface{ID: "b", Face: Ceiling, Area: 12, TL: even(45), Beyond: "bedroom"})
		c.change(&r)
		rep := Assess(r)
		if assert.Len(t, rep.Faults, 1, name) {
			got := rep.Faults[0]
			assert.InDelta(t, c.want.Value, got.Value, 1e-9, name)
			got.Value, c.want.Value = 0, 0
			assert.Equal(t, c.want, got, name)
			assert.NotEmpty(t, got.Error())
		}
		// The ceiling is heard all the same.
		if len(r.Spaces) > 0 && name != "gap in what plays" {
			assert.Greater(t, rep.Out[0].A, 40.0, name)
		}
		assert.True(t, finite(rep.Out[0].A) && finite(rep.Out[0].C), name)
	}
}

// A side whose parts are longer than it.
func TestFaultSplitSide(t *testing.T) {
	r := Room{Length: 4, Width: 3, Height: 2.5, Surfaces: []Surface{
		{ID: "a1", Face: Wall, Side: 1, Width: 2.5, TL: even(40)}, {ID: "a2", Face: Wall, Side: 1, Width: 2, TL: even(40)},
	}}
	rep := Assess(r)
	assert.Equal(t, []Fault{{Code: Overfull, Surface: "a2", Field: "width", Value: 4.5, Limit: 4}}, rep.Faults)
	r.Surfaces[1].Width = 1.5
	assert.Empty(t, Assess(r).Faults)
}

// Nothing at all is a room without answers, not an accident.
func TestEmptyRoom(t *testing.T) {
	rep := Assess(Room{})
	assert.Equal(t, []Fault{{Code: Zero, Field: "volume"}}, rep.Faults)
	assert.Empty(t, rep.Paths)
	sp := Money(Room{}, rep, nil, 100, ByLevel)
	assert.Equal(t, -1, sp.Worst)
	_, ok := FitMeasured(Room{}, rep, Measured{Beyond: "x"})
	assert.False(t, ok)
	assert.Nil(t, Gaps(Room{}, rep, 0, 0, nil))
}
