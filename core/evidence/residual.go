package evidence

import (
	"math"
	"strings"
	"sync"

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
	band       int // −1 for a rating
	by         float64
}

// ratingLeftovers and bandLeftovers take only figures from the tables: reading
// every construction would cost a first visit a third of a second.
var ratingLeftovers = sync.OnceValue(func() []leftover {
	computed := map[string]int{}
	for _, x := range leftOut() {
		computed[x.ID] = x.STC
	}
	var out []leftover
	for _, r := range must(records(ratingsCSV, "id", "kind", "tier", "STC")) {
		stc, ok, err := r.number("STC")
		if c, known := computed[r.cell["id"]]; known && ok && err == nil && int(stc) > 0 {
			out = append(out, leftover{r.cell["kind"], r.cell["tier"], -1, float64(c - int(stc))})
		}
	}
	return out
})

var bandLeftovers = sync.OnceValue(func() []leftover {
	// An id may stand in both tables of spectra; the order of the file is thirds, then octaves.
	computed := map[string]band.Spectrum{}
	for _, x := range leftOutBands() {
		computed[x.ID] = x.Loss
	}
	var out []leftover
	take := func(r record, hz float64, at int, loss float64) {
		if m := must(r.level(hz)); !math.IsNaN(loss - m) {
			out = append(out, leftover{r.cell["kind"], r.cell["tier"], at, loss - m})
		}
	}
	for _, r := range must(records(thirdsCSV, "id", "kind")) {
		if c, ok := computed[r.cell["id"]]; ok {
			for i, hz := range band.Nominal {
				take(r, hz, i, c[i])
			}
		}
	}
	for _, r := range must(records(octavesCSV, "id", "kind")) {
		if c, ok := computed[r.cell["id"]]; ok {
			for o, hz := range band.Octaves {
				take(r, hz, 3*o, c.Octave(o))
			}
		}
	}
	return out
})

// RatingResidual returns that of STC over the rows that a test accepts, told
// by kind and tier: those of a family, or of several families together.
func RatingResidual(accept func(kind, tier string) bool) Residual {
	var d []float64
	for _, l := range ratingLeftovers() {
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
	for _, l := range bandLeftovers() {
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
