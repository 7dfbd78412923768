package main

import (
	"fmt"
	"math"

	"twoleaf/core/transmission"
)

// scale is how a constant is moved.
type scale int

const (
	linear scale = iota
	ratio        // by its logarithm: stiffnesses and losses
)

// free names the constants that are fitted; their meaning and bounds are in
// the table of constants. What is not here is not fitted: it is derived,
// sourced, or the rows do not tell it from another.
var free = []struct {
	name      string
	scale     scale
	low, high float64
}{
	{"BayFactor", linear, 1, 1.5},
	{"LatticeLoss", ratio, 0.03, 0.5},
	{"StudLoss", ratio, 20, 150},
	{"StudLossPower", linear, 0, 1.3},
	{"JoistLoss", ratio, 20, 250},
	{"MasonryLoss", ratio, 60, 500},
	{"PaneLoss", ratio, 150, 700},
	{"PanePower", linear, 0, 1},
	{"EdgeCap", ratio, 0.03, 0.07},
	{"Stud", ratio, 200000, 1.5e+06},
	{"StudDepth", linear, 0, 2},
	{"StudGrowth", linear, 0, 2},
	{"StudMass", linear, 0, 2},
	{"Channel", ratio, 80000, 300000},
	{"Staggered", ratio, 1e+06, 5e+07},
	{"Edge", ratio, 100000, 1e+06},
	{"BridgeLoss", ratio, 0.05, 0.5},
	{"FaceDepth", ratio, 0.003, 0.03},
	{"FaceLoss", ratio, 0.1, 1},
	{"LiningChannel", ratio, 20000, 300000},
	{"Strapping", ratio, 1e+06, 2e+07},
	{"ZBar", ratio, 20000, 300000},
	{"Standing", ratio, 20000, 500000},
	{"LiningLattice", ratio, 0.05, 0.5},
	{"JoistLattice", ratio, 0.1, 2},
	{"Furring", ratio, 2e+06, 2e+08},
	{"JoistChannel", ratio, 100000, 600000},
	{"JoistMass", linear, 0, 1.5},
}

// parameter is a free constant as a share of the way between its bounds.
type parameter struct {
	transmission.Constant
	scale scale
}

func (p parameter) share(v float64) float64 {
	if p.scale == ratio {
		return math.Log(v/p.Low) / math.Log(p.High/p.Low)
	}
	return (v - p.Low) / (p.High - p.Low)
}

// value returns the constant at a share, to four figures, so that what is
// written is what was computed with.
func (p parameter) value(u float64) float64 {
	v := p.Low + u*(p.High-p.Low)
	if p.scale == ratio {
		v = p.Low * math.Exp(u*math.Log(p.High/p.Low))
	}
	return v
}

// figures rounds to four significant figures.
func figures(v float64) float64 {
	if v == 0 {
		return 0
	}
	e := math.Pow(10, 3-math.Floor(math.Log10(math.Abs(v))))
	return math.Round(v*e) / e
}

// parameters returns the free constants and where they stand now.
func parameters(only map[string]bool) (ps []parameter, at []float64, err error) {
	table := map[string]transmission.Constant{}
	for _, c := range transmission.Table() {
		table[c.Name] = c
	}
	for _, f := range free {
		c, ok := table[f.name]
		if !ok {
			return nil, nil, fmt.Errorf("no constant %s in the table", f.name)
		}
		if len(only) > 0 && !only[f.name] {
			continue
		}
		c.Low, c.High = f.low, f.high
		p := parameter{c, f.scale}
		if !(c.High > c.Low) || f.scale == ratio && c.Low <= 0 {
			return nil, nil, fmt.Errorf("bounds of %s: %g to %g", c.Name, c.Low, c.High)
		}
		u := p.share(c.Value)
		if u < 0 || u > 1 {
			return nil, nil, fmt.Errorf("%s is %g, out of its bounds %g to %g", c.Name, c.Value, c.Low, c.High)
		}
		ps, at = append(ps, p), append(at, u)
	}
	return ps, at, nil
}
