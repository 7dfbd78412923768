package room

import (
	"math"

	"twoleaf/core/band"
	"twoleaf/core/rating"
)

// ten turns a level into energy, lg energy into a level.
func ten(db float64) float64   { return math.Exp(db * (math.Ln10 / 10)) }
func level(e float64) float64  { return 10 * math.Log10(math.Max(e, 1e-30)) }
func square(x float64) float64 { return x * x }
func finite(x float64) bool    { return !math.IsNaN(x) && !math.IsInf(x, 0) }
func positive(x float64) bool  { return finite(x) && x > 0 }
func octaveAt(third int) int   { return (third + 1) / 3 } // of bands 3k−1, 3k, 3k+1 the octave is k
func thirds(octave int) (a, b int) {
	return max(3*octave-1, 0), min(3*octave+1, band.Count-1)
}

// ofOctaves returns thirds of which each octave's energy mean is what was typed,
// 63 to 4000 Hz: straight lines between the octaves' middles, every octave then
// moved as a whole. Below 63 Hz it falls by 6 dB an octave, as mass does, never
// under 0. Interpolation is our choice; the octaves are met exactly.
func ofOctaves(o [7]float64) (s band.Spectrum) {
	for i := range s {
		x := float64(i)/3 - 1 // place among the seven
		switch {
		case x <= 0:
			s[i] = o[0] + 6*x
		case x >= 6:
			s[i] = o[6]
		default:
			k := int(x)
			s[i] = o[k] + (o[k+1]-o[k])*(x-float64(k))
		}
	}
	for k := range o {
		a, b := thirds(k + 1)
		by := o[k] - band.MeanLoss(s[a:b+1]...)
		for i := a; i <= b; i++ {
			s[i] += by
		}
	}
	by := math.Max(o[0]-6, math.Min(o[0], 0)) - band.MeanLoss(s[0], s[1])
	s[0], s[1] = s[0]+by, s[1]+by
	return s
}

// contour is the reference curve of ISO 717-1 from 100 Hz and of E413 from 125 Hz,
// over its value at 500 Hz, dB.
var contour = [17]float64{-19, -16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4}

// mostRating bounds a typed rating, dB.
const mostRating = 120

// OfRating returns a loss of the shape of the reference curve that has exactly a
// rating, STC or Rw (isRw), rounded to whole decibels: the curve itself two below
// it, since 16 bands may each be 2 dB short. Below the rating's bands it falls by
// 2 dB a third, 6 dB an octave, above them it stays. It is never under 0 dB; where that
// alone would raise the rating, the curve is lowered until it has it.
// Source: E413, ISO717.
func OfRating(value float64, isRw bool) band.Spectrum {
	if !(value > 0) {
		value = 0 // what is no number stops nothing
	}
	value = math.Round(min(mostRating, value))
	first := band.First125
	if isRw {
		first = band.First100
	}
	var s band.Spectrum
	for at := value - 2; ; at-- {
		for i := range s {
			c := contour[max(first, min(i, band.First100+len(contour)-1))-band.First100]
			s[i] = math.Max(0, at+c-2*math.Max(0, float64(first-i)))
		}
		got := 0
		if isRw {
			got = rating.Rw(s).Rw
		} else {
			got = rating.STC(s).Value
		}
		if float64(got) <= value || at < -100 {
			return s
		}
	}
}
