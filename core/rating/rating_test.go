package rating_test

import (
	"fmt"
	"math"
	"testing"

	"twoleaf/core/band"
	"twoleaf/core/internal/refdata"
	"twoleaf/core/rating"
)

// spectrum reads the bands of a row that are printed; the others are NaN-free zeros.
func spectrum(t testing.TB, r refdata.Row) (s band.Spectrum) {
	for i := band.First50; i < band.Count; i++ {
		name := fmt.Sprint(band.Nominal[i])
		if v, ok := r.Num(t, name); ok {
			s[i] = v
		}
	}
	return s
}

// Ratings are printed as whole numbers and are met exactly.
func TestPrintedRatings(t *testing.T) {
	for _, r := range refdata.CSV(t, "standard", "ratings.csv") {
		s := spectrum(t, r)
		rw, stc, oitc := rating.Rw(s), rating.STC(s), rating.OITC(s)
		for column, got := range map[string]int{
			"rw": rw.Rw, "c": rw.C, "ctr": rw.Ctr, "c50": rw.C50_5000, "ctr50": rw.Ctr50_5000, "stc": stc.Value, "oitc": oitc.Value,
		} {
			if want, ok := r.Num(t, column); ok && got != int(want) {
				t.Errorf("%s: %s is %d, printed %v", r["id"], column, got, want)
			}
		}
		// Printed in steps of 0.1 dB.
		for column, got := range map[string]float64{
			"rw_fine": rw.Fine, "x50": rw.SumC50_5000, "xtr50": rw.SumCtr50_5000,
		} {
			if want, ok := r.Num(t, column); ok && math.Abs(got-want) > 0.05+1e-9 {
				t.Errorf("%s: %s is %.3f, printed %v", r["id"], column, got, want)
			}
		}
	}
}

// annexC is the worked example of ISO 717-1 Annex C, Table C.1.
var annexC = band.Spectrum{
	0, 0, 18.7, 19.2, 20.0, 20.4, 16.3, 17.7, 22.6, 22.4, 22.7, 24.8, 26.6, 28.0, 30.5, 31.8, 32.5, 33.4, 33.0, 31.0, 25.5, 26.8, 29.2,
}

// ISO 717-1 Annex C, Table C.1: the steps of the example, to their last printed digit.
func TestPrintedStepsOfAnnexC(t *testing.T) {
	rw := rating.Rw(annexC)
	// What the bands are short of the curve, 100 to 3150 Hz.
	short := []float64{0, 0, 0, 0, 0.6, 3.3, 4.2, 3.4, 3.0, 1.5, 1.2, 1.5, 0.6, 1.0, 3.0, 8.5}
	// The table has them from 125 Hz up shifted by none: 20.4 … 25.5 against 11 … 34.
	sum := 0.0
	for i, want := range short {
		if got := rw.Short[band.First100+i]; math.Abs(got-want) > 1e-9 {
			t.Errorf("%v Hz is %.1f short, printed %.1f", band.Nominal[band.First100+i], got, want)
		}
		sum += want
	}
	if math.Abs(rw.Deficiency-31.8) > 1e-9 || math.Abs(sum-31.8) > 1e-9 {
		t.Errorf("sum %.1f, printed 31.8", rw.Deficiency)
	}
	// The table prints the sums of energy, and their levels cut off after three digits.
	for name, c := range map[string][3]float64{
		"XA1": {rw.SumC, 28.308, 147.6199e-5}, "XA2": {rw.SumCtr, 26.859, 206.0636e-5},
	} {
		if level, sum := c[0], math.Pow(10, -c[0]/10); level < c[1] || level >= c[1]+0.001 || math.Abs(sum-c[2]) > 0.5e-9 {
			t.Errorf("%s is %.5f from %.4fe-5, printed %.3f from %.4fe-5", name, level, sum*1e5, c[1], c[2]*1e5)
		}
	}
	if rw.DecidedBy != 20 {
		t.Errorf("decided by %v Hz", band.Nominal[rw.DecidedBy])
	}
	// The term is −1.79 and −3.64 before rounding; computed apart from this code from the same equation.
	if c, ctr := rw.SumC50_5000-30, rw.SumCtr50_5000-30; math.Abs(c+1.79) > 0.006 || math.Abs(ctr+3.64) > 0.006 {
		t.Errorf("C50-5000 %.3f, Ctr50-5000 %.3f", c, ctr)
	}
	if o := rating.OITC(annexC); math.Abs(o.Exact-24.9) > 0.05 {
		t.Errorf("OITC %.2f", o.Exact)
	}
}

// The 8 dB rule of E413: the wall of IR761-166 is held at 33 by 125 Hz alone.
func TestPrintedEightDecibelRule(t *testing.T) {
	var s band.Spectrum
	copy(s[band.First125:], []float64{9, 16, 31, 34, 36, 43, 44, 44, 49, 51, 53, 54, 53, 45, 40, 43})
	got := rating.STC(s)
	if got.Value != 33 || !got.EightdB || band.Nominal[got.DecidedBy] != 125 || got.Short[band.First125] != 8 {
		t.Errorf("%+v", got)
	}
}

// The contours and curves rate themselves.
func TestLawContoursRateThemselves(t *testing.T) {
	var contour, curve band.Spectrum
	for i, c := range []float64{-16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4} {
		contour[band.First125+i] = 50 + c
	}
	// 16 bands may be short by 2 dB each: the sum is 32.
	if got := rating.STC(contour); got.Value != 52 || got.Deficiency != 32 || got.EightdB {
		t.Errorf("the contour of 50 rates %+v", got)
	}
	for i, c := range []float64{33, 36, 39, 42, 45, 48, 51, 52, 53, 54, 55, 56, 56, 56, 56, 56} {
		curve[band.First100+i] = c
	}
	if got := rating.Rw(curve); got.Rw != 54 || got.Deficiency != 32 {
		t.Errorf("the curve of 52 rates %d", got.Rw)
	}
	flat := level(40)
	if s, r := rating.STC(flat), rating.Rw(flat); s.Value != 40 || r.Rw != 40 || r.C != 0 || r.Ctr != 0 {
		t.Errorf("flat 40 rates STC %d, Rw %d (%d; %d)", s.Value, r.Rw, r.C, r.Ctr)
	}
	// E1332: the source's A-weighted sum is 100.13 dB, so a flat 30 rates 30.
	if o := rating.OITC(level(30)); math.Abs(o.Exact-30) > 0.005 {
		t.Errorf("flat 30 rates OITC %.3f", o.Exact)
	}
}

// A test vector of an open-source acoustics library for ISO 717-1.
func TestPrintedUnevenCurve(t *testing.T) {
	var s band.Spectrum
	copy(s[band.First100:], []float64{10, 11, 12, 13, 15, 18, 20, 20, 25, 22, 18, 15, 20, 25, 28, 30})
	if got := rating.Rw(s); got.Rw != 22 {
		t.Errorf("Rw %d, printed 22", got.Rw)
	}
}

// Halves go up, in one step from the full value: 34.4999999 is not 34.5 first
// and 35 then, while 34.5 with the noise of arithmetic in it still is 34.5.
func TestLawHalvesGoUp(t *testing.T) {
	noisy := -10 * math.Log10(math.Pow(10, -3.45)) // 34.5, there and back
	if noisy >= 34.5 {
		noisy = math.Nextafter(34.5, 0)
	}
	for tl, want := range map[float64]int{
		34.5: 35, noisy: 35, 34.4999999: 34, 34.49: 34, 34.500001: 35, 35.4999999: 35, -0.5: 0, -0.51: -1,
	} {
		if got := rating.STC(level(tl)); got.Value != want {
			t.Errorf("flat %v rates STC %d, want %d", tl, got.Value, want)
		}
	}
	// R to 0.1 dB: a flat 34.4499999 is 34.4, so that each band of 16 may be 2.0 dB
	// short at 36.4 and the curve stops a whole dB lower.
	var curve band.Spectrum
	for i, c := range []float64{33, 36, 39, 42, 45, 48, 51, 52, 53, 54, 55, 56, 56, 56, 56, 56} {
		curve[band.First100+i] = c
	}
	for shift, want := range map[float64]float64{0: 54, 0.05: 54.1, 0.0499999: 54, -0.05: 54, -0.0500001: 53.9} {
		s := curve
		for i := range s {
			s[i] += shift
		}
		if got := rating.Rw(s); math.Abs(got.Fine-want) > 1e-9 {
			t.Errorf("the curve %+v dB rates %.1f in tenths, want %.1f", shift, got.Fine, want)
		}
	}
}

func TestLawHigherLossNeverRatesLower(t *testing.T) {
	base := annexC
	s0, r0, o0 := rating.STC(base), rating.Rw(base), rating.OITC(base)
	for i := range base {
		up := base
		up[i] += 3
		s, r, o := rating.STC(up), rating.Rw(up), rating.OITC(up)
		if s.Value < s0.Value || r.Fine < r0.Fine || o.Exact < o0.Exact {
			t.Errorf("3 dB more at %v Hz lowers a rating", band.Nominal[i])
		}
	}
	for i := range base {
		base[i] += 7
	}
	if s, r := rating.STC(base), rating.Rw(base); s.Value != s0.Value+7 || r.Rw != r0.Rw+7 || r.C != r0.C {
		t.Errorf("7 dB more rate STC %d, Rw %d (%d)", s.Value, r.Rw, r.C)
	}
}

// The band that is said to decide does: mending it raises the class or the sum's room.
func TestLawDecidedByDecides(t *testing.T) {
	for _, s := range []band.Spectrum{annexC, level(40)} {
		got := rating.STC(s)
		s[got.DecidedBy] += 20
		if after := rating.STC(s); after.Value < got.Value || (after.Value == got.Value && after.Deficiency >= got.Deficiency) {
			t.Errorf("mending %v Hz brings nothing: %d to %d", band.Nominal[got.DecidedBy], got.Value, after.Value)
		}
	}
}

func TestWhatIsNoNumberIsBounded(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300} {
		s, r, o := rating.STC(level(x)), rating.Rw(level(x)), rating.OITC(level(x))
		if s.Value < -220 || s.Value > 220 || r.Rw < -220 || r.Rw > 220 || math.IsNaN(o.Exact) || math.IsInf(o.Exact, 0) {
			t.Errorf("%v: STC %d, Rw %d, OITC %v", x, s.Value, r.Rw, o.Exact)
		}
	}
}

func level(db float64) (s band.Spectrum) {
	for i := range s {
		s[i] = db
	}
	return s
}

// IEC 61672-1:2013, Table 3, exactly; and the standard's own formulas within half
// its last digit.
func TestPrintedWeights(t *testing.T) {
	rows := refdata.CSV(t, "standard", "weights.csv")
	for i, r := range rows {
		f, _ := r.Num(t, "f")
		a, _ := r.Num(t, "a")
		c, _ := r.Num(t, "c")
		if i < band.Count && (f != band.Nominal[i] || rating.AWeight[i] != a || rating.CWeight[i] != c) {
			t.Errorf("%v Hz: A %v, C %v, printed %v and %v", f, rating.AWeight[i], rating.CWeight[i], a, c)
		}
		const f1, f2, f3, f4 = 20.598997, 107.65265, 737.86223, 12194.217
		x := math.Pow(10, float64(15+i)/10)
		weight := func(g float64) float64 { return 20 * math.Log10(g) }
		cOf := func(x float64) float64 { return f4 * f4 * x * x / ((x*x + f1*f1) * (x*x + f4*f4)) }
		aOf := func(x float64) float64 {
			return cOf(x) * x * x / math.Sqrt((x*x+f2*f2)*(x*x+f3*f3))
		}
		if got := weight(aOf(x)) - weight(aOf(1000)); math.Abs(got-a) > 0.051 {
			t.Errorf("%v Hz: A by formula %.3f, table %v", f, got, a)
		}
		if got := weight(cOf(x)) - weight(cOf(1000)); math.Abs(got-c) > 0.051 {
			t.Errorf("%v Hz: C by formula %.3f, table %v", f, got, c)
		}
	}
	if len(rows) < band.Count {
		t.Errorf("only %d rows", len(rows))
	}
	// One band of 70 dB at 1 kHz is 70 dB(A) and 70 dB(C).
	s := level(-200)
	s[15] = 70
	if a, c := rating.DBA(s), rating.DBC(s); math.Abs(a-70) > 1e-9 || math.Abs(c-70) > 1e-9 {
		t.Errorf("70 dB at 1 kHz is %v dB(A), %v dB(C)", a, c)
	}
}

// NC 25 as printed; NR 30 at 63, 1000 and 8000 Hz by its constants, to 0.05 dB.
func TestPrintedNoiseCurves(t *testing.T) {
	if got, want := rating.NCCurve(25), [8]float64{54, 44, 37, 31, 27, 24, 22, 21}; got != want {
		t.Errorf("NC 25 is %v", got)
	}
	nr := rating.NRCurve(30)
	for k, want := range map[int]float64{1: 59.2, 5: 30, 8: 22.9} {
		if math.Abs(nr[k]-want) > 0.05 {
			t.Errorf("NR 30 in octave %d is %.2f, printed %.1f", k, nr[k], want)
		}
	}
}

func TestLawNoiseCurvesRateThemselves(t *testing.T) {
	for _, nc := range []float64{15, 20, 22.5, 40, 63, 65} {
		if got := rating.NC(rating.NCCurve(nc)); math.Abs(got.Value-nc) > 1e-9 || got.Outside {
			t.Errorf("NC %v rates %+v", nc, got)
		}
	}
	for _, nr := range []float64{0, 30, 77} {
		if got, _ := rating.NR(rating.NRCurve(nr)); math.Abs(got-nr) > 1e-9 {
			t.Errorf("NR %v rates %v", nr, got)
		}
	}
	quiet, loud := rating.NCCurve(15), rating.NCCurve(65)
	for k := range quiet {
		quiet[k]--
	}
	loud[2]++
	if got := rating.NC(quiet); got.Value != 15 || !got.Outside {
		t.Errorf("under NC 15: %+v", got)
	}
	if got := rating.NC(loud); got.Value != 65 || !got.Outside || got.DecidedBy != 2 {
		t.Errorf("over NC 65: %+v", got)
	}
	mixed := rating.NCCurve(20)
	mixed[1] = 44 // NC 25 at 125 Hz
	if got := rating.NC(mixed); math.Abs(got.Value-25) > 1e-9 || got.DecidedBy != 1 || got.Outside {
		t.Errorf("one octave at NC 25: %+v", got)
	}
}

// ISO 717-1 Annex C, Table C.1.
func ExampleRw() {
	r := rating.Rw(annexC)
	fmt.Printf("Rw (C; Ctr) = %d (%d; %d) dB, sum %.1f dB\n", r.Rw, r.C, r.Ctr, r.Deficiency)
	fmt.Printf("C50-5000 = %d dB, Ctr50-5000 = %d dB\n", r.C50_5000, r.Ctr50_5000)
	// Output:
	// Rw (C; Ctr) = 30 (-2; -3) dB, sum 31.8 dB
	// C50-5000 = -2 dB, Ctr50-5000 = -4 dB
}

func BenchmarkSTC(b *testing.B) {
	for b.Loop() {
		rating.STC(annexC)
	}
}

func BenchmarkRw(b *testing.B) {
	for b.Loop() {
		rating.Rw(annexC)
	}
}
