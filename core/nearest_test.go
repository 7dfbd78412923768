package core

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/plan"
)

func TestNearestIsMeasuredAndSaysWhatDiffers(t *testing.T) {
	p := plan.First(plan.US)
	r := report(t, p, Want{Nearest: true})
	require.NotNil(t, r.Nearest)
	assert.NotEmpty(t, r.Nearest.Source)
	assert.Positive(t, r.Nearest.STC)
	assert.InDelta(t, r.Nearest.STC, r.Nearest.Ours.STC, 10)
	require.NotEmpty(t, r.Nearest.Differences, "clips are among no published tests")

	// 38 × 89 mm studs at 400 mm, 15.9 mm type X a side, filled: NBC2020 wall W1a, STC 36.
	p.BuildUps[0].Leaves[0].Layers = p.BuildUps[0].Leaves[0].Layers[:1]
	p.BuildUps[0].Leaves[1].Layers = []plan.Layer{{ID: "f1", Board: "na_gyp_typeX_16"}}
	p.BuildUps[0].Gaps[0].Near = plan.Held{Fixing: "screwed"}
	r = report(t, p, Want{Nearest: true})
	assert.Equal(t, "NBC-W1a", r.Nearest.ID)
	assert.Equal(t, 36, r.Nearest.STC)
	require.Len(t, r.Nearest.Ours.Gaps, 1)
	g := r.Nearest.Ours.Gaps[0]
	assert.Equal(t, "wood", g.Frame)
	assert.InDelta(t, 0.089, g.Depth, 1e-9)
	assert.InDelta(t, 0.089, g.FillDepth, 1e-9)
	assert.Empty(t, r.Nearest.Measured, "the code table prints no spectra")
}

func TestNearestTellsThePrintedBands(t *testing.T) {
	seen := 0
	for _, s := range evidence.OctaveSpectra() {
		for i, b := range s.BuildUps {
			test, differences := evidence.Nearest(b)
			if i > 0 || len(differences) > 0 || test.ID != s.ID {
				continue
			}
			a := assessment{here: plan.Resolved{Assembly: b}, t: NewTables()}
			n, faults := a.nearest()
			require.Empty(t, faults)
			require.NotEmpty(t, n.Measured, s.ID)
			assert.True(t, n.Octaves)
			for _, m := range n.Measured {
				k := slices.Index(band.Octaves[:], m.Hz)
				assert.Equal(t, s.Loss[k], m.Loss)
			}
			seen++
		}
	}
	assert.Positive(t, seen)
}
