package rating

// ncCurves are the noise criterion curves NC 15 to NC 65 in steps of 5, octave
// levels from 63 to 8000 Hz, dB (NC1957; NC 65 from memory).
var ncCurves = [11][8]float64{
	{47, 36, 29, 22, 17, 14, 12, 11},
	{51, 40, 33, 26, 22, 19, 17, 16},
	{54, 44, 37, 31, 27, 24, 22, 21},
	{57, 48, 41, 35, 31, 29, 28, 27},
	{60, 52, 45, 40, 36, 34, 33, 32},
	{64, 56, 50, 45, 41, 39, 38, 37},
	{67, 60, 54, 49, 46, 44, 43, 42},
	{71, 64, 58, 54, 51, 49, 48, 47},
	{74, 67, 62, 58, 56, 54, 53, 52},
	{77, 71, 67, 63, 61, 59, 58, 57},
	{80, 75, 71, 68, 66, 64, 63, 62},
}

const ncFirst, ncStep = 15, 5

// NCResult is a noise criterion.
type NCResult struct {
	Value     float64 // interpolated between curves
	DecidedBy int     // the octave that touches the highest curve, 0 for 63 Hz
	// Outside says that the levels lie under NC 15 or over NC 65; Value is then that end.
	Outside bool
}

// NCCurve returns the levels of a noise criterion curve, 63 to 8000 Hz, dB,
// interpolated between the printed ones and held at NC 15 and NC 65.
// Source: NC1957.
func NCCurve(nc float64) (out [8]float64) {
	x := max(0, min(float64(len(ncCurves)-1), (nc-ncFirst)/ncStep))
	i := min(int(x), len(ncCurves)-2)
	for k := range out {
		a, b := ncCurves[i][k], ncCurves[i+1][k]
		out[k] = a + (b-a)*(x-float64(i))
	}
	return out
}

// NC returns the noise criterion of octave levels, 63 to 8000 Hz, dB: the highest
// curve that any of them touches, interpolated.
// Source: NC1957.
func NC(level [8]float64) NCResult {
	last := len(ncCurves) - 1
	// rank is where a level stands among the curves of its octave: 0 at the first,
	// 1 at the second; beyond the ends it goes on with the dB beyond.
	rank := func(k int) float64 {
		l := sane(level[k])
		if l < ncCurves[0][k] {
			return l - ncCurves[0][k]
		}
		for i := range last {
			if a, b := ncCurves[i][k], ncCurves[i+1][k]; l <= b {
				return float64(i) + (l-a)/(b-a)
			}
		}
		return float64(last) + l - ncCurves[last][k]
	}
	at, highest := 0, rank(0)
	for k := range level {
		if r := rank(k); r > highest {
			at, highest = k, r
		}
	}
	return NCResult{
		Value:     ncFirst + ncStep*max(0, min(float64(last), highest)),
		DecidedBy: at,
		Outside:   highest < 0 || highest > float64(last),
	}
}
