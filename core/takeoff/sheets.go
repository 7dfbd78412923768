// Package takeoff says what to buy, how to cut it, how to bring it home and in
// what order to hang it: screws (screws.go), sheets by the area rule
// (sheets.go), the cut layout (job.go its words, face.go what is boarded,
// lay.go the pieces, pack.go the sheets, cut.go the search), the rest of the
// list (items.go), the way in (trip.go) and the order of work (order.go).
package takeoff

import (
	"math"

	"twoleaf/core/unit"
)

// UsualWaste is the share of sheet area lost in cutting where none is typed
// (trade guides give 10 to 15 %).
const UsualWaste = 0.10

// MaxSheets bounds a count, far above anything carried into a house.
const MaxSheets = 100_000

// Sheets returns how many sheets one layer needs by the area rule:
//
//	n = ⌈face·(1 + waste)/sheet⌉
//
// face and sheet are areas [m²], waste is a share of one. 0 where the face or
// the sheet has no area. Each layer is counted by itself, since its joints are
// offset against the next and offcuts rarely serve two layers. Doors are not
// taken off: what is cut out seldom gives a usable piece.
//
// Source: common practice of estimating.
func Sheets(face, sheet unit.Area, waste float64) int {
	if !(face > 0) || !(sheet > 0) || !(waste >= 0) {
		return 0
	}
	n := float64(face) * (1 + waste) / float64(sheet)
	if n >= MaxSheets {
		return MaxSheets
	}
	// A face of exactly so many sheets is not one more for the last bit.
	return int(math.Ceil(n - 1e-9))
}
