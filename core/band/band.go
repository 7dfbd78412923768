// Package band holds the one-third-octave and octave bands from 31.5 to
// 5000 Hz, spectra over them, and sums of energy.
package band

import "math"

// Count is the number of one-third-octave bands the core works in: 31.5 to
// 5000 Hz. Below First50 results are extrapolation.
const Count = 23

// First50 is the index of the 50 Hz band, First100 of 100 Hz, First125 of 125 Hz.
const (
	First50  = 2
	First100 = 5
	First125 = 6
)

// Nominal are the nominal mid-band frequencies, Hz (ISO 266:1997).
var Nominal = [Count]float64{
	31.5, 40, 50, 63, 80, 100, 125, 160, 200, 250, 315, 400, 500,
	630, 800, 1000, 1250, 1600, 2000, 2500, 3150, 4000, 5000,
}

// Exact returns the exact mid-band frequency of band i, Hz:
//
//	f = 10^(n/10), n = 15 + i
//
// (base-ten system of IEC 61260-1:2014, eq. 2).
func Exact(i int) float64 { return math.Pow(10, float64(15+i)/10) }

// Edges returns the lower and upper edge of band i, Hz: f·10^(∓1/20).
func Edges(i int) (lo, hi float64) {
	f := Exact(i)
	k := math.Pow(10, 0.05)
	return f / k, f * k
}

// Holding returns the band whose edges a frequency, Hz, lies between; false below
// the first and above the last.
func Holding(f float64) (int, bool) {
	first, _ := Edges(0)
	_, last := Edges(Count - 1)
	if !(f >= first && f < last) {
		return 0, false
	}
	return max(0, min(Count-1, int(math.Round(10*math.Log10(f)))-15)), true
}

// Spectrum is a level or a transmission loss in dB per one-third-octave band.
type Spectrum [Count]float64

// Octaves are the nominal octave mid-band frequencies 31.5 to 4000 Hz that
// lie within the bands; octave k is made of bands 3k-1, 3k and 3k+1 where
// they exist (31.5 Hz has only its upper two).
var Octaves = [8]float64{31.5, 63, 125, 250, 500, 1000, 2000, 4000}

// MeanLoss returns the transmission loss of several bands together, dB:
//
//	R = −10 lg( (1/n) Σ 10^(−Ri/10) )
//
// the energy mean of their transmission, for equal incident energy in each.
func MeanLoss(r ...float64) float64 {
	sum := 0.0
	for _, x := range r {
		sum += math.Pow(10, -x/10)
	}
	return -10 * math.Log10(sum/float64(len(r)))
}

// Octave returns the loss of octave k (see Octaves) as the energy mean of its thirds.
func (s Spectrum) Octave(k int) float64 {
	lo, hi := max(3*k-1, 0), min(3*k+1, Count-1)
	return MeanLoss(s[lo : hi+1]...)
}

// Bass returns the mean loss from 50 to 125 Hz, dB: the energy mean of five
// bands. It is the plain word "bass" of the page.
func (s Spectrum) Bass() float64 { return MeanLoss(s[First50 : First125+1]...) }
