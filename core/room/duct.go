package room

import (
	"math"

	"twoleaf/core/band"
)

// Round duct with 50 mm of lining, dB a metre in octaves 63 to 4000 Hz, of 6 and
// 8 in inside; other sizes by a straight line between 100 and 300 mm, rectangles as
// the round one of the same area for its wall. Source: duct-lined.
var lined = [2][7]float64{
	{0.56, 0.80, 1.37, 2.25, 2.17, 2.31, 2.04},
	{0.51, 0.75, 1.33, 2.23, 2.19, 2.17, 1.83},
}

// boxLining is the absorption of 50 mm of fibre, octaves 63 to 4000 Hz (common practice).
var boxLining = [7]float64{0.10, 0.25, 0.60, 0.90, 0.95, 0.95, 0.95}

const (
	foot       = 0.3048
	linedSix   = 6 * 0.0254 // m
	linedEight = 8 * 0.0254 // m
	boxWalls   = 1.08       // inside of a box 0.6 × 0.4 × 0.3 m, m² (common practice)
	mostInDuct = 50.0       // what a duct can stop before its own wall lets through more, dB (common practice)
)

// endLoss returns what the end of a duct flush in a wall reflects, dB:
//
//	E = 10 lg( 1 + (0.8 c0/π f D)^1.88 )
//
// Source: ASHRAE2019, chapter 49 (from memory).
func endLoss(f, diameter float64) float64 {
	return 10 * math.Log10(1+math.Pow(0.8*airSpeed/(math.Pi*f*diameter), 1.88))
}

// passed returns the transmission over its area of a duct that stops an amount on its
// way, dB:
//
//	τ = e a t/(1 − (1−t)² a²),  e = max(1, 4t/(ka)²)
//
// t is what its end lets through (see endLoss), a what its length does, e what
// it collects from a diffuse field over its own area, by reciprocity, between
// 8 when small and 1 when large; the sum runs over all that is thrown back and
// forth between its ends. Derived.
func passed(f, diameter, stops float64) float64 {
	t, a := ten(-endLoss(f, diameter)), ten(-stops)
	ka := math.Pi * f * diameter / airSpeed
	return math.Max(1, 4*t/(ka*ka)) * a * t / (1 - square((1-t)*a))
}

// ductStops returns what a lining and boxes stop, octaves 63 to 4000 Hz, dB.
//
// A box is a plenum that is not seen through: only what its lining leaves comes out,
//
//	10 lg( a Sw / (Se (1−a)) )
//
// Se is the duct's area, Sw the box's walls [m²], a their absorption. Careful by 5 to
// 10 dB in the bass. Source: BIES2017, plenum equation, direct part left out.
func ductStops(diameter, run float64, boxes int) (out [7]float64) {
	x := (min(0.3, max(0.1, diameter)) - linedSix) / (linedEight - linedSix)
	duct := math.Pi / 4 * diameter * diameter
	for k := range out {
		out[k] = (lined[0][k] + (lined[1][k]-lined[0][k])*x) * run / foot
		a := boxLining[k]
		out[k] += float64(boxes) * math.Max(0, level(a*boxWalls/(duct*(1-a))))
		out[k] = math.Min(mostInDuct, out[k])
	}
	return out
}

// duct returns the transmission of a duct over its area.
func (o *Opening) duct() band.Spectrum {
	d := o.Width
	if o.Height > 0 {
		d = 2 * o.Width * o.Height / (o.Width + o.Height)
	}
	run, boxes := o.Run, 0
	switch Seal(o.Seal) {
	case DuctBare:
		run = 0
	case DuctBox:
		boxes = 1
	case DuctBoxes:
		boxes = 2
	}
	stops := ductStops(d, run, boxes)
	var tau band.Spectrum
	for i := range tau {
		x := max(-1, min(6, float64(i)/3-1))
		k := max(0, min(5, int(x)))
		at := stops[k] + (stops[k+1]-stops[k])*(x-float64(k))
		if x < 0 {
			at = stops[0] * (1 + x/2) // half of it an octave down (our choice)
		}
		tau[i] = passed(band.Exact(i), d, at)
	}
	return tau
}
