package rating

import "twoleaf/core/band"

// stcContour is the reference contour of ASTM E413, 125 to 4000 Hz, re its value at 500 Hz, dB.
var stcContour = [16]int{-16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4}

// STCResult is a sound transmission class and what decides it.
type STCResult struct {
	Value int // dB
	// DecidedBy is the band that keeps it from being higher: the one 8 dB short
	// if the 8 dB rule stops it, else the one that is short the most.
	DecidedBy int
	// EightdB says that the 8 dB rule stops it, the sum of 32 dB leaving room.
	EightdB bool
	// Deficiency is the sum of what the bands are short of the contour, dB.
	Deficiency int
	// Short is what each band is short of the contour, dB.
	Short [band.Count]int
}

// STC returns the sound transmission class of a transmission loss.
//
// TL is rounded to 1 dB, halves upwards. The contour goes up in steps of 1 dB as
// far as
//
//	no band is short of it by more than 8 dB, and
//	the sum of what bands are short is at most 32 dB;
//
// STC is its value at 500 Hz. 125 to 4000 Hz.
// Source: E413; half upwards since its 2010 edition.
func STC(tl band.Spectrum) STCResult {
	const single, sum = 8, 32
	var r [len(stcContour)]int
	for i := range r {
		r[i] = halfUp(sane(tl[b125+i]))
	}
	short := func(class int) (total, worst, at int) {
		for i, c := range stcContour {
			d := max(0, class+c-r[i])
			total += d
			if d > worst {
				worst, at = d, i
			}
		}
		return total, worst, at
	}
	// The class at which no band is short; it goes up from there.
	class := r[0] - stcContour[0]
	for i, c := range stcContour {
		class = min(class, r[i]-c)
	}
	for total, worst, _ := short(class + 1); total <= sum && worst <= single; total, worst, _ = short(class + 1) {
		class++
	}
	out := STCResult{Value: class}
	out.Deficiency, _, out.DecidedBy = short(class)
	if total, worst, at := short(class + 1); worst > single {
		out.DecidedBy, out.EightdB = at, total <= sum
	}
	out.DecidedBy += b125
	for i, c := range stcContour {
		out.Short[b125+i] = max(0, class+c-r[i])
	}
	return out
}
