package rating

// nrA and nrB are the constants of the noise rating curves, octaves 31.5 to 8000 Hz (NR1971).
var (
	nrA = [9]float64{55.4, 35.5, 22.0, 12.0, 4.8, 0, -3.5, -6.1, -8.0}
	nrB = [9]float64{0.681, 0.790, 0.870, 0.930, 0.974, 1, 1.015, 1.025, 1.030}
)

// NRCurve returns the levels of a noise rating curve, octaves 31.5 to 8000 Hz, dB:
//
//	L = A + B·NR
//
// Source: NR1971.
func NRCurve(nr float64) (out [9]float64) {
	for k := range out {
		out[k] = nrA[k] + nrB[k]*nr
	}
	return out
}

// NR returns the noise rating of octave levels, 31.5 to 8000 Hz, dB, and the
// octave that decides it: the highest curve that any of them touches.
// Source: NR1971.
func NR(level [9]float64) (value float64, decidedBy int) {
	for k, l := range level {
		if v := (sane(l) - nrA[k]) / nrB[k]; k == 0 || v > value {
			value, decidedBy = v, k
		}
	}
	return value, decidedBy
}
