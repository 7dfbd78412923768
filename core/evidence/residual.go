package evidence

import (
	"math"
	"strings"

	"twoleaf/core/band"
)

// Residual is computed minus measured with every series left out of the fit in turn, dB.
type Residual struct {
	N    int
	Bias float64
	SD   float64 // about the bias
	RMS  float64
}

func residual(d []float64) Residual {
	r := Residual{N: len(d)}
	if r.N == 0 {
		return r
	}
	sum, squares := 0.0, 0.0
	for _, x := range d {
		sum += x
		squares += x * x
	}
	n := float64(r.N)
	r.Bias, r.RMS = sum/n, math.Sqrt(squares/n)
	r.SD = math.Sqrt(max(0, squares/n-r.Bias*r.Bias))
	return r
}

// leftover is one computed figure minus its measured one, with the kind and tier of its row.
type leftover struct {
	kind, tier string
	band       int // of a spectrum
	by         float64
}

// RatingResidual returns that of STC over the rows that a test accepts, told
// by kind and tier: those of a family, or of several families together.
func RatingResidual(accept func(kind, tier string) bool) Residual {
	var d []float64
	for _, l := range known().ratings {
		if accept(l.kind, l.tier) {
			d = append(d, l.by)
		}
	}
	return residual(d)
}

// BandResidual returns those of the bands over the spectra whose kind begins
// with one of the words; no word takes all. A third counts for its band, an
// octave for the band in its middle.
func BandResidual(begins ...string) [band.Count]Residual {
	var d [band.Count][]float64
	for _, l := range known().bands {
		takes := len(begins) == 0
		for _, b := range begins {
			takes = takes || strings.HasPrefix(l.kind, b)
		}
		if takes {
			d[l.band] = append(d[l.band], l.by)
		}
	}
	var out [band.Count]Residual
	for i := range d {
		out[i] = residual(d[i])
	}
	return out
}
