package evidence

import (
	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// ScrewAllowance returns what the screws of a wall on studs cost, dB of STC, and
// the spacing that sets it, the closer of all its sides: 1 where they are less
// than 300 mm apart, 2 where less than 200 mm (NBC2020, notes to Table
// 9.10.3.1.-A; measured, not derived: closer screws tie board and frame along
// more of their length). It is 0 at the usual spacing, and for whatever is not
// OnStuds, of which nothing is printed.
func ScrewAllowance(b assembly.BuildUp) (loss float64, spacing unit.Length) {
	for i, g := range b.Gaps {
		for _, h := range [...]assembly.Held{g.Near, g.Far} {
			if h.Screws > 0 && (spacing == 0 || h.Screws < spacing) && OnStuds(b, i) {
				spacing = h.Screws
			}
		}
	}
	switch {
	case spacing == 0 || !unit.Over(300*unit.Millimetre, spacing):
		return 0, 0
	case unit.Over(200*unit.Millimetre, spacing):
		return 2, spacing
	}
	return 1, spacing
}

// OnStuds reports whether the boards beside a gap are screwed to the studs of a
// wall without masonry, as in the table that ScrewAllowance is of.
func OnStuds(b assembly.BuildUp, gap int) bool {
	switch b.Gaps[gap].Frame.Kind {
	case material.Wood, material.Staggered, material.Double, material.CStud:
	default:
		return false
	}
	for i := range b.Leaves {
		if hard, _, _, _, _ := leafOf(&b.Leaves[i]); hard {
			return false
		}
	}
	return !b.Horizontal
}
