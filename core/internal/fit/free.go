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
	name  string
	scale scale
	also  string // another constant that is the same thing and has the same value
}{
	{"BayFactor", linear, ""},
	{"LatticeLoss", ratio, ""},
	{"BayLoss", ratio, ""},
	{"MasonryLoss", ratio, ""},
	{"PaneLoss", ratio, ""},
	{"EdgeCap", ratio, ""},
	{"Stud", ratio, ""},
	{"StudGrowth", linear, ""},
	{"StudMass", linear, ""},
	{"Channel", ratio, ""},
	{"Staggered", ratio, ""},
	{"Edge", ratio, ""},
	{"BridgeLoss", ratio, ""},
	{"FaceDepth", ratio, ""},
	{"FaceLoss", ratio, ""},
	{"Strapping", ratio, "Furring"}, // strips of wood and their nails, on block or under joists
	{"ZBar", ratio, ""},
	{"Standing", ratio, ""},
	{"LiningLattice", ratio, ""},
	{"JoistLattice", ratio, ""},
}

// parameter is a free constant as a share of the way between its bounds.
type parameter struct {
	transmission.Constant
	scale scale
	also  string
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
		if _, ok := table[f.also]; f.also != "" && !ok {
			return nil, nil, fmt.Errorf("no constant %s in the table", f.also)
		}
		if len(only) > 0 && !only[f.name] {
			continue
		}
		p := parameter{c, f.scale, f.also}
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
