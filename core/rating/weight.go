package rating

import "twoleaf/core/band"

// AWeight is the frequency weighting A per one-third octave, dB (IEC61672, Table 3).
var AWeight = band.Spectrum{
	-39.4, -34.6, -30.2, -26.2, -22.5, -19.1, -16.1, -13.4, -10.9, -8.6, -6.6, -4.8, -3.2,
	-1.9, -0.8, 0, 0.6, 1.0, 1.2, 1.3, 1.2, 1.0, 0.5,
}

// CWeight is the frequency weighting C per one-third octave, dB (IEC61672, Table 3).
var CWeight = band.Spectrum{
	-3.0, -2.0, -1.3, -0.8, -0.5, -0.3, -0.2, -0.1, 0, 0, 0, 0, 0,
	0, 0, 0, 0, -0.1, -0.2, -0.3, -0.5, -0.8, -1.3,
}

// Weighted returns the level of a spectrum of levels under a weighting, dB:
//
//	10 lg Σ 10^((Li + Wi)/10)
//
// Source: IEC61672.
func Weighted(level, weight band.Spectrum) float64 {
	sum := 0.0
	for i, l := range level {
		sum += ten(l + weight[i])
	}
	return 10 * lg(sum)
}

// DBA returns the A-weighted level of a spectrum of levels, dB.
func DBA(level band.Spectrum) float64 { return Weighted(level, AWeight) }

// DBC returns the C-weighted level of a spectrum of levels, dB.
func DBC(level band.Spectrum) float64 { return Weighted(level, CWeight) }
