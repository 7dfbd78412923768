package band_test

import (
	"fmt"
	"math"
	"testing"

	"twoleaf/core/band"
)

// IEC 61260-1:2014: exact mid-band frequencies in the base-ten system, as printed
// to five figures, Hz.
func TestPrintedExactFrequencies(t *testing.T) {
	printed := [band.Count]float64{
		31.623, 39.811, 50.119, 63.096, 79.433, 100, 125.89, 158.49, 199.53, 251.19, 316.23, 398.11,
		501.19, 630.96, 794.33, 1000, 1258.9, 1584.9, 1995.3, 2511.9, 3162.3, 3981.1, 5011.9,
	}
	for i, want := range printed {
		// Half a unit of the fifth figure.
		if got := band.Exact(i); math.Abs(got/want-1) > 5e-5 {
			t.Errorf("%v Hz is %.3f Hz, printed %v", band.Nominal[i], got, want)
		}
		// ISO 266:1997: nominal frequencies are the exact ones rounded, by at most 1 %.
		if got := band.Exact(i); math.Abs(got/band.Nominal[i]-1) > 0.01 {
			t.Errorf("nominal %v Hz stands for %.3f Hz", band.Nominal[i], got)
		}
	}
}

func TestLawBandsTouch(t *testing.T) {
	for i := 1; i < band.Count; i++ {
		_, hi := band.Edges(i - 1)
		lo, _ := band.Edges(i)
		if math.Abs(hi/lo-1) > 1e-12 {
			t.Errorf("%v Hz ends at %v, %v Hz begins at %v", band.Nominal[i-1], hi, band.Nominal[i], lo)
		}
	}
	// 178.5 Hz lies in the 200 Hz band, whose lower edge is 177.83 Hz (ISO 12354-1 uses it so).
	if lo, hi := band.Edges(8); math.Abs(lo-177.83) > 0.005 || 178.5 < lo || 178.5 > hi {
		t.Errorf("200 Hz is %.2f–%.2f Hz", lo, hi)
	}
	if i, ok := band.Holding(178.5); !ok || band.Nominal[i] != 200 {
		t.Errorf("178.5 Hz lies in band %d", i)
	}
	for i := range band.Count {
		if k, ok := band.Holding(band.Exact(i)); !ok || k != i {
			t.Errorf("%v Hz lies in band %d", band.Nominal[i], k)
		}
	}
	for _, f := range []float64{0, -1, 20, 6300, math.NaN(), math.Inf(1)} {
		if i, ok := band.Holding(f); ok {
			t.Errorf("%v Hz lies in band %d", f, i)
		}
	}
}

func TestNamedBands(t *testing.T) {
	for i, want := range map[int]float64{band.First50: 50, band.First100: 100, band.First125: 125} {
		if band.Nominal[i] != want {
			t.Errorf("band %d is %v Hz, not %v", i, band.Nominal[i], want)
		}
	}
	for k, f := range band.Octaves {
		if band.Nominal[3*k] != f {
			t.Errorf("octave %v has %v Hz in its middle", f, band.Nominal[3*k])
		}
	}
}

// The means are of energy: equal losses stay, a hole wins.
func TestLawMeansAreOfEnergy(t *testing.T) {
	var s band.Spectrum
	for i := range s {
		s[i] = 20
	}
	if got := s.Bass(); math.Abs(got-20) > 1e-12 {
		t.Errorf("flat 20 has a bass of %v", got)
	}
	for k := range band.Octaves {
		if got := s.Octave(k); math.Abs(got-20) > 1e-12 {
			t.Errorf("flat 20 has %v in octave %d", got, k)
		}
	}
	s[band.First50] = 0 // all comes through in one band of five
	want := -10 * math.Log10((1+4*0.01)/5)
	if got := s.Bass(); math.Abs(got-want) > 1e-12 {
		t.Errorf("with a hole at 50 Hz the bass is %v, want %v", got, want)
	}
	// Bass is 50 to 125 Hz and nothing else.
	s[band.First50-1], s[band.First125+1] = -50, -50
	if got := s.Bass(); math.Abs(got-want) > 1e-12 {
		t.Errorf("40 and 160 Hz count in the bass: %v", got)
	}
	for i := band.First50; i <= band.First125; i++ {
		up := s
		up[i]++
		if up.Bass() <= s.Bass() {
			t.Errorf("%v Hz does not count in the bass", band.Nominal[i])
		}
	}
}

// ISO 15186-3:2002, Table A.1: a limp panel of 10 kg/m². Its bands from 50 to
// 125 Hz; the mean is arithmetic on printed values.
func ExampleSpectrum_Bass() {
	var s band.Spectrum
	copy(s[band.First50:], []float64{10.7, 11.9, 13.4, 14.8, 16.3, 17.9})
	fmt.Printf("%.1f dB\n", s.Bass())
	// Output:
	// 13.0 dB
}
