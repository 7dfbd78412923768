package appraise

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/evidence"
	"twoleaf/core/material"
	"twoleaf/core/transmission"
	"twoleaf/core/unit"
)

// wall is one board a side on wood studs, filled.
func wall(t *testing.T, board string, spacing unit.Length) assembly.BuildUp {
	t.Helper()
	b, ok := material.ByID(board)
	require.True(t, ok)
	frame, _ := material.FrameByID("wood_38x89")
	fill, _ := material.FillByID("fibre")
	screwed, _ := material.FixingByID("screwed")
	leaf := assembly.Leaf{Layers: []assembly.Layer{{ID: "l", Board: b}}}
	return assembly.BuildUp{
		Leaves: []assembly.Leaf{leaf, leaf},
		Gaps: []assembly.Gap{{
			ID: "g", Frame: frame, Spacing: spacing, Depth: frame.Depth, Fill: fill, FillDepth: frame.Depth,
			Near: assembly.Held{Fixing: screwed}, Far: assembly.Held{Fixing: screwed},
		}},
	}
}

// Rigid studs farther apart gain no more than measured rows show: none.
func TestLawWiderRigidStudsGainNothingUntested(t *testing.T) {
	tables := transmission.NewTables()
	for _, board := range []string{"na_gyp_reg_13", "na_gyp_typeX_16"} {
		close, err := Appraise(wall(t, board, 16*unit.Inch), Options{Accuracy: transmission.Converged}, tables)
		require.NoError(t, err)
		wide, err := Appraise(wall(t, board, 24*unit.Inch), Options{Accuracy: transmission.Converged}, tables)
		require.NoError(t, err)
		assert.LessOrEqual(t, wide.STC.Value, close.STC.Value)
	}
}

// A family with ten tests speaks for itself; with a damping film its kind is
// not among them and the inputs add.
func TestSpreadWidensOutsideWhatWasMeasured(t *testing.T) {
	tables := transmission.NewTables()
	b := wall(t, "na_gyp_typeX_16", 16*unit.Inch)
	measured := SpreadOf(b, false, tables)
	assert.False(t, measured.Nearest)
	assert.Equal(t, WoodSingle, measured.Family)
	own := evidence.RatingResidual(func(kind, tier string) bool { return kind == string(WoodSingle) && (tier == "A" || tier == "B") })
	require.GreaterOrEqual(t, own.N, enough)
	assert.InDelta(t, own.RMS, measured.Rating, 1e-9)

	film := clone(b)
	y := film.Leaves[0].Layers[0]
	y.Join = assembly.Film
	film.Leaves[0].Layers = []assembly.Layer{y, film.Leaves[0].Layers[0]}
	wider := SpreadOf(film, false, tables)
	assert.True(t, wider.Nearest)
	assert.NotEmpty(t, wider.Widest)
	assert.Greater(t, wider.Rating, measured.Rating)
	for i, s := range wider.Band {
		if i >= 2 && i < 5 {
			assert.GreaterOrEqual(t, s, floorLow, "50 to 80 Hz")
		}
	}
}

// What a built room is likely to reach: 5 less at 50 (NBC2020: 50 in the laboratory, 45 on site).
func TestPrintedBuilt(t *testing.T) {
	assert.Equal(t, 45.0, Built(50))
	last := 0.0
	for r := 30.0; r < 80; r++ {
		assert.Less(t, Built(r), r)
		assert.Greater(t, Built(r), last)
		last = Built(r)
	}
}
