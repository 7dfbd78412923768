package rating

import (
	"math"

	"twoleaf/core/band"
)

// rwCurve is the reference curve of ISO 717-1, 100 to 3150 Hz, dB (Table 3).
var rwCurve = [16]int{33, 36, 39, 42, 45, 48, 51, 52, 53, 54, 55, 56, 56, 56, 56, 56}

// Spectra for the adaptation terms from 50 Hz, each summing to 0 dB within 0.25 over
// its own bands (ISO 717-1 Table 4 and Table B.1; the first three values of the
// one for 50 to 3150 Hz are from memory).
var (
	pink = energies( // C, 50–3150 Hz; its part from 100 Hz is C itself
		-40, -36, -33, -29, -26, -23, -21, -19, -17, -15, -13, -12, -11, -10, -9, -9, -9, -9, -9,
	)
	pinkWide = energies( // C50–5000 and C100–5000
		-41, -37, -34, -30, -27, -24, -22, -20, -18, -16, -14, -13, -12, -11, -10, -10, -10, -10, -10, -10, -10,
	)
	traffic = energies( // Ctr of all ranges
		-25, -23, -21, -20, -20, -18, -16, -15, -14, -13, -12, -11, -9, -8, -9, -10, -11, -13, -15, -16, -18,
	)
)

// energies returns 10^(L/10) of levels, L in dB.
func energies(levels ...float64) []float64 {
	out := make([]float64, len(levels))
	for i, l := range levels {
		out[i] = ten(l)
	}
	return out
}

// RwResult is a weighted sound reduction index with its adaptation terms, dB.
type RwResult struct {
	Rw         int
	C, Ctr     int // 100 to 3150 Hz
	C50_3150   int
	Ctr50_3150 int
	C50_5000   int
	Ctr50_5000 int
	C100_5000  int
	// Ctr100_5000 is the term for traffic from 100 to 5000 Hz.
	Ctr100_5000 int
	// The same sums Rw + C … before rounding, XA of the standard.
	SumC, SumCtr               float64
	SumC50_5000, SumCtr50_5000 float64
	// Fine is Rw found in steps of 0.1 dB, as uncertainties ask for.
	Fine float64
	// DecidedBy is the band that is short of the curve the most.
	DecidedBy int
	// Deficiency is the sum of what bands are short of the curve, dB.
	Deficiency float64
	// Short is what each band is short of the curve, dB.
	Short band.Spectrum
}

// Rw returns the weighted sound reduction index and the adaptation terms of a
// sound reduction index.
//
// R is rounded to 0.1 dB. The curve goes up in steps of 1 dB as far as the sum of
// what the bands from 100 to 3150 Hz are short of it is at most 32.0 dB; Rw is
// its value at 500 Hz. A term is
//
//	C = XA − Rw,  XA = −10 lg Σ 10^((Li − Ri)/10), rounded to 1 dB
//
// Li is the spectrum of the term.
// Source: ISO717, sections 4.4 and 4.5, Annex B.
func Rw(r band.Spectrum) RwResult {
	var in [16]int // tenths of dB
	lowest := 0    // the rise at which no band is short
	for i, c := range rwCurve {
		in[i] = tenths(sane(r[b100+i]))
		if rise := in[i] - 10*c; i == 0 || rise < lowest {
			lowest = rise
		}
	}
	const sum = 320                       // tenths
	short := func(rise int) (total int) { // rise and total in tenths
		for i, c := range rwCurve {
			total += max(0, 10*c+rise-in[i])
		}
		return total
	}
	highest := func(from, step int) int {
		for short(from+step) <= sum {
			from += step
		}
		return from
	}
	const at500 = 52 // dB, the curve at 500 Hz
	whole := int(math.Floor(float64(lowest)/10)) * 10
	rise := highest(whole, 10)
	out := RwResult{Rw: at500 + rise/10, Deficiency: float64(short(rise)) / 10, DecidedBy: b100}
	out.Fine = float64(10*at500+highest(rise, 1)) / 10
	for i, c := range rwCurve {
		d := float64(max(0, 10*c+rise-in[i])) / 10
		out.Short[b100+i] = d
		if d > out.Short[out.DecidedBy] {
			out.DecidedBy = b100 + i
		}
	}
	// τ of the bands from 50 Hz, R rounded to 0.1 dB.
	var tau [b5000 - b50 + 1]float64
	for i := range tau {
		tau[i] = ten(-float64(tenths(sane(r[b50+i]))) / 10)
	}
	const from100 = b100 - b50
	sumOf := func(spectrum []float64, from int) float64 {
		e := 0.0
		for i, l := range spectrum[from:] {
			e += l * tau[from+i]
		}
		return -10 * lg(e)
	}
	term := func(x float64) int { return halfUp(x) - out.Rw }
	out.SumC, out.SumCtr = sumOf(pink, from100), sumOf(traffic[:b3150-b50+1], from100)
	out.SumC50_5000, out.SumCtr50_5000 = sumOf(pinkWide, 0), sumOf(traffic, 0)
	out.C, out.Ctr = term(out.SumC), term(out.SumCtr)
	out.C50_3150, out.Ctr50_3150 = term(sumOf(pink, 0)), term(sumOf(traffic[:b3150-b50+1], 0))
	out.C50_5000, out.Ctr50_5000 = term(out.SumC50_5000), term(out.SumCtr50_5000)
	out.C100_5000, out.Ctr100_5000 = term(sumOf(pinkWide, from100)), term(sumOf(traffic, from100))
	return out
}
