package core

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

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
}
