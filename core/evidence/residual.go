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

// RatingResidual returns that of STC over the rows that a test accepts, told
// by kind and tier: those of a family, or of several families together.
func RatingResidual(accept func(kind, tier string) bool) Residual {
	measured := map[string]int{}
	for _, t := range ratings() {
		if t.STC > 0 && accept(t.Kind, t.Tier) {
			measured[t.ID] = t.STC
		}
	}
	var d []float64
	for _, x := range leftOut() {
		if stc, ok := measured[x.ID]; ok {
			d = append(d, float64(x.STC-stc))
		}
	}
	return residual(d)
}

// BandResidual returns those of the bands over the spectra whose kind begins
// with one of the words; no word takes all. A third counts for its band, an
// octave for the band in its middle.
func BandResidual(begins ...string) [band.Count]Residual {
	takes := func(kind string) bool {
		for _, b := range begins {
			if strings.HasPrefix(kind, b) {
				return true
			}
		}
		return len(begins) == 0
	}
	// An id may stand in both tables of spectra; the order of the file is thirds, then octaves.
	var d [band.Count][]float64
	computed := map[string]band.Spectrum{}
	for _, x := range leftOutBands() {
		computed[x.ID] = x.Loss
	}
	for _, s := range thirds() {
		c, ok := computed[s.ID]
		if !ok || !takes(s.Kind) {
			continue
		}
		for i, m := range s.Loss {
			if x := c[i] - m; !math.IsNaN(x) {
				d[i] = append(d[i], x)
			}
		}
	}
	for _, s := range octaves() {
		c, ok := computed[s.ID]
		if !ok || !takes(s.Kind) {
			continue
		}
		for o, m := range s.Loss {
			if x := c.Octave(o) - m; !math.IsNaN(x) {
				i := max(3*o, 0)
				d[i] = append(d[i], x)
			}
		}
	}
	var out [band.Count]Residual
	for i := range d {
		out[i] = residual(d[i])
	}
	return out
}
