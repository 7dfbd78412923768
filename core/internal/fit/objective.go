package main

import (
	"math"

	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/internal/trial"
	"twoleaf/core/transmission"
)

// The objective is a sum of squares:
//
//	Σ w·ρ(fine STC − STC − o) + Σ ws·ρ((R − Rmeasured)/σ) + Σ prior
//
// o is by how much unrounded classes lie over rounded ones on the average:
// half a decibel where the sum rule decides, nothing where the 8 dB rule does.
// A row weighs by its tier (tier B in full where its family has no tier A), and
// by n^(−½) of the n rows of its series, so that twenty rows of one floor do
// not outvote three of a wall. ρ grows in proportion beyond three decibels: one
// misprint does not bend the rest. Spectra count by the scatter between
// laboratories of their band. The prior, as weak as a row or two, keeps what
// the rows do not tell in the middle of its bounds.
const (
	spectralWeight = 0.1  // of a band against a row
	priorWeight    = 2.0  // of a constant at a bound, in dB of one row
	soft           = 3.0  // dB
	offset         = 0.15 // dB
)

var tierWeight = map[string]float64{"A": 1, "": 1, "B": 0.4, "C": 0.1}

// columnA is the reproducibility between laboratories, 50 to 5000 Hz, dB
// (ISO 12999-1:2020, Table 2, situation A).
var columnA = [...]float64{
	6.8, 4.6, 3.8, 3.0, 2.7, 2.4, 2.1, 1.8, 1.8, 1.8, 1.8,
	1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.9, 2.0, 2.4, 2.8,
}

// problem is the rows and what is free.
type problem struct {
	free     []parameter
	base     transmission.Constants
	accuracy transmission.Accuracy
	tests    []evidence.Test // ratings, thirds, octaves
	thirds   []evidence.Thirds
	octaves  []evidence.Octaves
	ratings  int
	weight   []float64 // of the rows with a rating
	offset   []int     // first residual of each test
	length   int       // residuals of tests
	series   []string
}

func newProblem(free []parameter, accuracy transmission.Accuracy) *problem {
	p := &problem{free: free, base: transmission.Defaults(), accuracy: accuracy}
	size, full := map[string]float64{}, map[string]bool{}
	for _, t := range evidence.Ratings() {
		if t.Read() {
			p.tests = append(p.tests, t)
			size[t.Series]++
			full[t.Kind] = full[t.Kind] || t.Tier == "A" || t.Tier == ""
		}
	}
	p.ratings = len(p.tests)
	for _, t := range p.tests {
		w := tierWeight[t.Tier]
		if t.Tier == "B" && !full[t.Kind] {
			w = tierWeight["A"] // all there is of its family
		}
		p.weight = append(p.weight, w/math.Sqrt(size[t.Series]))
		p.offset = append(p.offset, p.length)
		p.length++
	}
	for _, s := range evidence.ThirdSpectra() {
		if s.Read() {
			p.thirds, p.tests = append(p.thirds, s), append(p.tests, s.Test)
			p.offset = append(p.offset, p.length)
			p.length += band.Count
		}
	}
	for _, s := range evidence.OctaveSpectra() {
		if s.Read() {
			p.octaves, p.tests = append(p.octaves, s), append(p.tests, s.Test)
			p.offset = append(p.offset, p.length)
			p.length += len(band.Octaves)
		}
	}
	p.offset = append(p.offset, p.length)
	for _, t := range p.tests {
		p.series = append(p.series, t.Series)
	}
	return p
}

// constants returns the constants at shares.
func (p *problem) constants(at []float64) transmission.Constants {
	c := p.base
	for i, f := range p.free {
		c, _ = c.With(f.Name, f.value(at[i]))
		if f.also != "" {
			c, _ = c.With(f.also, f.value(at[i]))
		}
	}
	return c
}

// compute computes some of the tests; nil is all.
func (p *problem) compute(at []float64, some []int) []trial.Result {
	m := trial.Method{Constants: p.constants(at), Accuracy: p.accuracy}
	if some == nil {
		return m.Compute(p.tests)
	}
	tests := make([]evidence.Test, len(some))
	for i, k := range some {
		tests[i] = p.tests[k]
	}
	return m.Compute(tests)
}

// residuals fills in those of one test.
func (p *problem) residuals(k int, r trial.Result, to []float64) {
	out := to[p.offset[k]:p.offset[k+1]]
	switch {
	case k < p.ratings:
		out[0] = math.Sqrt(p.weight[k]) * gentle(r.Fine-float64(r.Test.STC)-offset, soft)
	case k < p.ratings+len(p.thirds):
		s := p.thirds[k-p.ratings]
		for i := range band.Count {
			out[i] = spectral(r.Loss[i]-s.Loss[i], i)
		}
	default:
		s := p.octaves[k-p.ratings-len(p.thirds)]
		for o := range band.Octaves {
			// The middle third of the octave stands for its scatter.
			out[o] = spectral(r.Loss.Octave(o)-s.Loss[o], 3*o)
		}
	}
}

// spectral is the residual of one band, 0 where nothing was measured.
func spectral(d float64, i int) float64 {
	if math.IsNaN(d) || i < band.First50 {
		return 0
	}
	return math.Sqrt(spectralWeight) * gentle(d/columnA[i-band.First50], soft/2)
}

// gentle is the root of Huber's loss: proportional to d, beyond k to its root.
func gentle(d, k float64) float64 {
	if a := math.Abs(d); a > k {
		return math.Copysign(math.Sqrt(2*k*a-k*k), d)
	}
	return d
}

// cost sums the squares of the residuals that are left in, and the prior's.
func (p *problem) cost(r []float64, at []float64, out func(test int) bool) float64 {
	sum := 0.0
	for k := range p.tests {
		if out != nil && out(k) {
			continue
		}
		for _, v := range r[p.offset[k]:p.offset[k+1]] {
			sum += v * v
		}
	}
	for _, u := range at {
		sum += sq(prior(u))
	}
	return sum
}

func prior(u float64) float64 { return priorWeight * (2*u - 1) }
func sq(x float64) float64    { return x * x }
