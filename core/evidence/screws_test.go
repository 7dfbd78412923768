package evidence

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// The notes to Table 9.10.3.1.-A: 300 mm or more, nothing; less, 1; less than 200 mm, 2 (NBC2020).
func TestPrintedScrewAllowance(t *testing.T) {
	const mm, in = unit.Millimetre, unit.Inch
	frame := func(k material.FrameKind) assembly.BuildUp {
		return assembly.BuildUp{Leaves: make([]assembly.Leaf, 2), Gaps: []assembly.Gap{{Frame: material.Frame{Kind: k}}}}
	}
	for _, row := range []struct {
		apart unit.Length
		loss  float64
	}{
		{0, 0}, {400 * mm, 0}, {12 * in, 0}, {300 * mm, 0}, {299 * mm, 1}, {8 * in, 1}, {200 * mm, 1}, {199 * mm, 2}, {6 * in, 2}, {50 * mm, 2},
	} {
		for _, k := range []material.FrameKind{material.Wood, material.Staggered, material.Double, material.CStud} {
			for _, near := range []bool{true, false} {
				b := frame(k)
				// The other side closer than usual by nothing: the worse of the two counts.
				b.Gaps[0].Near.Screws, b.Gaps[0].Far.Screws = row.apart, 16*in
				if !near {
					b = b.Reversed()
				}
				loss, apart := ScrewAllowance(b)
				assert.Equal(t, row.loss, loss, "%v at %v", k, row.apart)
				if loss > 0 {
					assert.Equal(t, row.apart, apart)
				}
			}
		}
	}
	for name, b := range map[string]assembly.BuildUp{
		"a ceiling": func() assembly.BuildUp { b := frame(material.Wood); b.Horizontal = true; return b }(),
		"joists":    frame(material.Joist),
		"strips":    frame(material.Strapping),
		"standing":  frame(material.Standing),
		"masonry": func() assembly.BuildUp {
			b := frame(material.Wood)
			b.Leaves[1].Layers = []assembly.Layer{{Board: material.Board{Kind: material.Block}}}
			return b
		}(),
	} {
		b.Gaps[0].Near.Screws = 100 * mm
		loss, _ := ScrewAllowance(b)
		assert.Zero(t, loss, name)
	}
}

// No row of the tables is marked down by what it says itself; of one that is
// otherwise the same, the screws are the only difference.
func TestLawNoTestHasCloseScrews(t *testing.T) {
	for _, test := range Ratings() {
		for _, b := range test.BuildUps {
			loss, _ := ScrewAllowance(b)
			assert.Zero(t, loss, test.ID)
			if test.ID != "NBC-W1a" {
				continue
			}
			b.Gaps = append([]assembly.Gap(nil), b.Gaps...)
			b.Gaps[0].Far.Screws = 6 * unit.Inch
			near, differences := Nearest(b)
			assert.Equal(t, test.ID, near.ID)
			assert.Equal(t, test.STC, near.STC)
			if assert.Len(t, differences, 1) {
				assert.Equal(t, Difference{What: Screws, Leaf: -1, Gap: -1, Yours: float64(6 * unit.Inch), Weight: 2}, differences[0])
			}
		}
	}
}
