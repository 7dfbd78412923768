package rating

import "twoleaf/core/band"

// oitcSource is the reference source of ASTM E1332, 80 to 4000 Hz, dB.
var oitcSource = [18]float64{103, 102, 101, 98, 97, 95, 94, 93, 93, 91, 90, 89, 89, 88, 88, 87, 85, 84}

// oitcTotal is the A-weighted level of that source, dB (E1332).
const oitcTotal = 100.13

// OITCResult is an outdoor-indoor transmission class, dB.
type OITCResult struct {
	Value     int
	Exact     float64 // before rounding
	DecidedBy int     // the band that lets most of it in
}

// OITC returns the outdoor-indoor transmission class of a transmission loss:
//
//	OITC = 100.13 − 10 lg Σ 10^((Li − TLi + Ai)/10)
//
// Li is the reference source, Ai the A-weight, 80 to 4000 Hz; rounded to 1 dB.
// Source: E1332.
func OITC(tl band.Spectrum) OITCResult {
	out := OITCResult{DecidedBy: b80}
	sum, loudest := 0.0, 0.0
	for i, l := range oitcSource {
		k := b80 + i
		e := ten(l - sane(tl[k]) + AWeight[k])
		sum += e
		if e > loudest {
			loudest, out.DecidedBy = e, k
		}
	}
	out.Exact = oitcTotal - 10*lg(sum)
	out.Value = halfUp(out.Exact)
	return out
}
