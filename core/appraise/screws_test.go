package appraise

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/material"
	"twoleaf/core/transmission"
	"twoleaf/core/unit"
)

func screwedAt(b assembly.BuildUp, near, far unit.Length) assembly.BuildUp {
	b = clone(b)
	b.Gaps[0].Near.Screws, b.Gaps[0].Far.Screws = near, far
	return b
}

// Walls of the code table with their screws closer: one STC less below 300 mm,
// two below 200 mm (NBC2020, notes to Table 9.10.3.1.-A), the table's own figure as it was.
func TestPrintedCloseScrews(t *testing.T) {
	const mm = unit.Millimetre
	tables, seen := transmission.NewTables(), 0
	for _, test := range evidence.Ratings() {
		switch test.ID {
		case "NBC-W1a", "NBC-W5a", "NBC-W9d", "NBC-W14c", "NBC-S3f", "NBC-S10d":
		default:
			continue
		}
		seen++
		o := Options{Accuracy: transmission.Ranking}
		usual, err := Appraise(test.BuildUps[0], o, tables)
		require.NoError(t, err)
		for _, row := range []struct {
			near, far unit.Length
			less      int
		}{{300 * mm, 0, 0}, {250 * mm, 0, 1}, {0, 200 * mm, 1}, {150 * mm, 250 * mm, 2}, {300 * mm, 199 * mm, 2}} {
			closer, err := Appraise(screwedAt(test.BuildUps[0], row.near, row.far), o, tables)
			require.NoError(t, err)
			assert.Equal(t, usual.STC.Value-row.less, closer.STC.Value, "%s at %v and %v", test.ID, row.near, row.far)
		}
	}
	assert.Equal(t, 6, seen)
}

// Closer screws never stop more, in any band; at the usual spacing every digit
// is as it was, and below 125 Hz at any; nothing changes in a ceiling.
func TestLawCloserScrewsNeverStopMore(t *testing.T) {
	tables := transmission.NewTables()
	o := Options{Accuracy: transmission.Ranking}
	for _, spacing := range []unit.Length{16 * unit.Inch, 24 * unit.Inch} { // the wider as tested narrower
		b := wall(t, "na_gyp_typeX_16", spacing)
		usual, err := Appraise(b, o, tables)
		require.NoError(t, err)
		before := usual
		for _, at := range []unit.Length{1, 16 * unit.Inch, 12 * unit.Inch, 0.25, 0.2, 0.199, 0.15, 0.05} {
			r, err := Appraise(screwedAt(b, at, 0), o, tables)
			require.NoError(t, err)
			for i := range r.TL {
				assert.LessOrEqual(t, r.TL[i], before.TL[i])
				if i < band.First125 {
					assert.Equal(t, usual.TL[i], r.TL[i], "nothing is known below 125 Hz")
				} else {
					assert.InDelta(t, max(0, usual.TL[i]-r.Screws), r.TL[i], 1e-12)
				}
			}
			if at >= 0.3 {
				assert.Equal(t, usual, r, "as usual")
			}
			before = r
		}
		assert.Equal(t, 2.0, before.Screws)

		over := b
		over.Horizontal = true
		level, err := Appraise(over, o, tables)
		require.NoError(t, err)
		close, err := Appraise(screwedAt(over, 0.15, 0.15), o, tables)
		require.NoError(t, err)
		assert.Equal(t, level, close)
	}
}

// What the advice promises is what the usual spacing brings; without close screws there is none.
func TestCloseScrewsAdvised(t *testing.T) {
	tables := transmission.NewTables()
	o := Options{Accuracy: transmission.Ranking}
	b := wall(t, "na_gyp_typeX_16", 16*unit.Inch)
	usual, err := Appraise(b, o, tables)
	require.NoError(t, err)
	of := func(b assembly.BuildUp) (found []Advice) {
		r, err := Appraise(b, o, tables)
		require.NoError(t, err)
		for _, a := range Advise(b, r, o, false, nil, tables) {
			if a.Trap == CloseScrews {
				found = append(found, a)
			}
		}
		return found
	}
	assert.Empty(t, of(b))
	assert.Empty(t, of(screwedAt(b, 12*unit.Inch, 16*unit.Inch)))
	both := screwedAt(b, 8*unit.Inch, 6*unit.Inch)
	found := of(both)
	require.Len(t, found, 1, "once for both sides")
	close, err := Appraise(both, o, tables)
	require.NoError(t, err)
	assert.Equal(t, 2.0, found[0].Rating)
	assert.Equal(t, float64(usual.STC.Value-close.STC.Value), found[0].Rating)
	assert.InDelta(t, usual.Bass-close.Bass, found[0].Bass, 1e-12)
}

// The steps of the ladder keep the screws, so that none of them takes the blame.
func TestLadderKeepsScrews(t *testing.T) {
	b := screwedAt(wall(t, "na_gyp_typeX_16", 16*unit.Inch), 6*unit.Inch, 0)
	steps := Ladder(b, 0, b.Leaves[0].Layers[0], twoRows(t), clipHeld(t))
	seen := 0
	for _, s := range steps {
		loss, _ := evidence.ScrewAllowance(s.BuildUp)
		assert.Equal(t, 2.0, loss, s.Rung)
		if s.Rung == RungTwoRows || s.Rung == RungClips {
			seen++
		}
	}
	assert.Equal(t, 2, seen)
}

func twoRows(t *testing.T) material.Frame {
	t.Helper()
	for _, f := range material.Frames("US") {
		if f.Kind == material.Double {
			return f
		}
	}
	t.Fatal("no two rows of studs")
	return material.Frame{}
}

func clipHeld(t *testing.T) assembly.Held {
	t.Helper()
	f, ok := material.FixingByID("clip")
	require.True(t, ok)
	return assembly.Held{Fixing: f, Grid: assembly.Grid{Rows: 0.6, Along: 1.2}}
}
