// Package rating turns a spectrum of transmission loss or of level into single
// numbers, one standard per file. Transmission loss (TL, ASTM) and sound
// reduction index (R, ISO) are the same quantity, dB per one-third octave.
package rating

import (
	"math"

	"twoleaf/core/band"
)

// noise is how far a value may lie under a half by the arithmetic of floating
// point alone and still be rounded up, in the last digit kept. What is further
// away, 34.4999999 for one, is under the half and goes down.
const noise = 1e-9

// halfUp returns x rounded to a whole number, halves upwards:
//
//	⌊x + 1/2⌋
//
// A rating goes from the full value to its step at once, never by way of 0.1 dB.
func halfUp(x float64) int { return int(math.Floor(x + 0.5 + noise)) }

// tenths returns x in whole tenths, halves upwards.
func tenths(x float64) int { return halfUp(10 * x) }

// most bounds a band, dB: a build-up that stops more is rated as if it stopped this.
const most = 200

// sane keeps a band within ±most; what is no number counts as 0 dB, the careful side.
func sane(x float64) float64 {
	if math.IsNaN(x) {
		return 0
	}
	return max(-most, min(most, x))
}

// lg is the logarithm to base ten; ten its inverse for levels.
func lg(x float64) float64  { return math.Log10(x) }
func ten(x float64) float64 { return math.Pow(10, x/10) }

// Bands are named by their index in band.Nominal.
const (
	b50   = band.First50
	b80   = 4
	b100  = band.First100
	b125  = band.First125
	b3150 = 20
	b5000 = 22
)
