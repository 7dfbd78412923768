package room

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/band"
)

func even(db float64) (s band.Spectrum) {
	for i := range s {
		s[i] = db
	}
	return s
}

// flatRoom is a wall of one loss to one space, with one thing playing.
func flatRoom(loss float64, openings ...Opening) Room {
	return Room{
		Volume:   30,
		Surfaces: []Surface{{ID: "a", Face: Wall, Area: 10, TL: even(loss), Thickness: 0.2, Beyond: "bedroom", Openings: openings}},
		Spaces:   []Space{{ID: "bedroom", Volume: 30, Time: 0.5, Listener: "sleeper"}},
		Playing:  []Playing{{Octave: &Levels{100, 100, 100, 100, 100, 100, 100, 100, 100}}},
	}
}

// check values: L1 100, R 50, S 10, V 30, T 0.5; Sabine; Schroeder; façade.
func TestPrintedLevels(t *testing.T) {
	rep := Assess(flatRoom(50))
	require.Empty(t, rep.Faults)
	for _, o := range rep.Out[0].Octave {
		assert.InDelta(t, 50.15, o.Level, 0.02)
	}
	assert.InDelta(t, 12.88, Absorption(40, 0.5), 0.01)
	assert.InDelta(t, 231, Schroeder(30, 0.4), 1)
	assert.InDelta(t, 38.5, Facade(60, 20, 10, 10, 1.5), 1e-9)
}
