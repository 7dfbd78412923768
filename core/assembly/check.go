package assembly

import (
	"fmt"
	"math"
	"slices"

	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// MaxLeaves and MaxLayers bound a build-up: no wall of four leaves or twelve
// boards has been tested or hung (common practice; the method is for up to four leaves).
const (
	MaxLeaves = 4
	MaxLayers = 12
)

// Code says in which way something is impossible.
type Code string

// The ways.
const (
	Missing   Code = "missing"
	TooMany   Code = "tooMany"
	NotNumber Code = "notNumber"
	Negative  Code = "negative"
	Zero      Code = "zero"
	Small     Code = "small"
	Large     Code = "large"
	Uneven    Code = "uneven" // gaps and leaves do not match
)

// Problem is one thing that makes a build-up impossible, and where it is.
type Problem struct {
	Code             Code
	Leaf, Layer, Gap int // counted from 0; −1 where it does not apply
	Near             bool
	Field            string  // leaves, layers, thickness, mass, young, depth, fillDepth, spacing, rows, along, rating, extra, gaps
	Value, Low, High float64 // SI; High 0 where there is no upper limit
}

// Error names the place, counting from 1.
func (p *Problem) Error() string {
	where := "build-up"
	switch {
	case p.Layer >= 0:
		where = fmt.Sprintf("leaf %d, layer %d", p.Leaf+1, p.Layer+1)
	case p.Leaf >= 0:
		where = fmt.Sprintf("leaf %d", p.Leaf+1)
	case p.Gap >= 0:
		where = fmt.Sprintf("gap %d", p.Gap+1)
	}
	return fmt.Sprintf("%s: %s is %s (%g)", where, p.Field, p.Code, p.Value)
}

// Range is a least and a greatest value, SI.
type Range struct{ Low, High float64 }

// ThicknessRange returns what thickness a board of a kind may have, m. The
// limits enclose everything that is sold with room to spare and keep slips of
// a decimal point out (our own choice).
func ThicknessRange(k material.Kind) Range {
	switch {
	case k.Masonry():
		return Range{0.02, 0.6}
	case k == material.Topping:
		return Range{0.005, 0.3}
	case k == material.Lead || k == material.Steel || k == material.Limp:
		return Range{0.0002, 0.025}
	case k == material.Glass || k == material.Laminated:
		return Range{0.002, 0.06}
	}
	return Range{0.125 * float64(unit.Inch), 4 * float64(unit.Inch)}
}

// DensityRange returns what density a board of a kind may have, kg/m³: from
// soft fibreboard to lead, far outside what is sold (our own choice).
func DensityRange(k material.Kind) Range {
	switch k {
	case material.Lead:
		return Range{5000, 15000}
	case material.Steel:
		return Range{3000, 10000}
	}
	return Range{60, 5000}
}

// The other limits, SI; our own choice, wide enough for anything built.
var (
	// DepthRange of a gap: from a film of air to a crawl space.
	DepthRange = Range{0.5e-3, 2}
	// SpacingRange of studs and joists.
	SpacingRange = Range{0.1, 2.5}
	// GridRange of rows and of points along a row.
	GridRange = Range{0.1, 3}
	// RatingRange of a clip, kg: 1 lb to 1000 lb.
	RatingRange = Range{0.45, 454}
	// ScrewRange of how far apart screws are.
	ScrewRange = Range{0.05, 1}
	// ExtraRange of what else hangs on a leaf, kg/m².
	ExtraRange = Range{0, 100}
)

// check tells in which way a value is outside a range, "" if it is inside.
func (r Range) check(v float64) Code {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return NotNumber
	case v < 0:
		return Negative
	case v == 0 && r.Low > 0:
		return Zero
	case unit.Over(r.Low, v):
		return Small
	case r.High > 0 && unit.Over(v, r.High):
		return Large
	}
	return ""
}

// Check returns everything that makes a build-up impossible, in the order of
// its leaves and gaps; none for one that can be built.
func (b BuildUp) Check() []*Problem {
	var all []*Problem
	add := func(p Problem) { all = append(all, &p) }
	whole := Problem{Leaf: -1, Layer: -1, Gap: -1}
	switch n := len(b.Leaves); {
	case n == 0:
		p := whole
		p.Code, p.Field, p.Low, p.High = Missing, "leaves", 1, MaxLeaves
		add(p)
	case n > MaxLeaves:
		p := whole
		p.Code, p.Field, p.Value, p.Low, p.High = TooMany, "leaves", float64(n), 1, MaxLeaves
		add(p)
		return all // what follows would be said thousands of times
	}
	if len(b.Gaps) != max(0, len(b.Leaves)-1) {
		p := whole
		p.Code, p.Field, p.Value = Uneven, "gaps", float64(len(b.Gaps))
		p.Low = float64(max(0, len(b.Leaves)-1))
		p.High = p.Low
		add(p)
	}
	for _, side := range [...]struct {
		field string
		v     unit.Length
	}{{"width", b.Width}, {"height", b.Height}} {
		if c := (Range{0, 100}).check(float64(side.v)); c != "" {
			p := whole
			p.Code, p.Field, p.Value, p.High = c, side.field, float64(side.v), 100
			add(p)
		}
	}
	for i, l := range b.Leaves {
		all = append(all, l.check(i)...)
	}
	for i, g := range b.Gaps {
		all = append(all, g.check(i)...)
	}
	return all
}

func (l Leaf) check(leaf int) []*Problem {
	at := Problem{Leaf: leaf, Layer: -1, Gap: -1}
	switch n := len(l.Layers); {
	case n == 0:
		at.Code, at.Field, at.Low, at.High = Missing, "layers", 1, MaxLayers
		return []*Problem{&at}
	case n > MaxLayers:
		at.Code, at.Field, at.Value, at.Low, at.High = TooMany, "layers", float64(n), 1, MaxLayers
		return []*Problem{&at}
	}
	var all []*Problem
	for j, y := range l.Layers {
		add := func(field string, v float64, r Range) bool {
			c := r.check(v)
			if c != "" {
				all = append(all, &Problem{Code: c, Leaf: leaf, Layer: j, Gap: -1, Field: field, Value: v, Low: r.Low, High: r.High})
			}
			return c == ""
		}
		k, t := y.Board.Kind, float64(y.Board.Thickness)
		if !add("thickness", t, ThicknessRange(k)) {
			continue
		}
		d := DensityRange(k)
		if !add("mass", float64(y.Board.Mass), Range{d.Low * t, d.High * t}) {
			continue
		}
		if s := y.Board.Sound; s.Young != 0 || math.IsNaN(float64(s.Young)) {
			// From limp vinyl to twice steel, Pa.
			add("young", float64(s.Young), Range{1e4, 5e11})
		}
		for _, m := range [...]unit.MoneyRate{y.Price, y.JoinPrice} {
			add("price", float64(m), Range{0, 1e6})
		}
	}
	return all
}

func (g Gap) check(gap int) []*Problem {
	var all []*Problem
	add := func(near bool, field string, v float64, r Range) bool {
		c := r.check(v)
		if c != "" {
			all = append(all, &Problem{Code: c, Leaf: -1, Layer: -1, Gap: gap, Near: near, Field: field, Value: v, Low: r.Low, High: r.High})
		}
		return c == ""
	}
	depth := float64(g.Depth)
	room := DepthRange
	if need := FrameDepth(g.Frame) + g.StandOffs(); float64(need) > room.Low {
		room.Low = float64(need)
	}
	if add(false, "depth", depth, room) && g.Fill.ID != "" {
		add(false, "fillDepth", float64(g.FillDepth), Range{1e-3, depth})
		add(false, "fillDensity", float64(g.Fill.Density), Range{1, 3000})
	}
	if framed(g.Frame.Kind) {
		add(false, "spacing", float64(g.Spacing), SpacingRange)
	}
	for _, near := range [...]bool{true, false} {
		h := g.Held(near)
		if slices.Contains([]material.FixingKind{material.Clip, material.Channel}, h.Fixing.Kind) {
			add(near, "rows", float64(h.Grid.Rows), GridRange)
			add(near, "along", float64(h.Grid.Along), GridRange)
		}
		if h.Rating != 0 {
			add(near, "rating", float64(h.Rating), RatingRange)
		}
		add(near, "extra", float64(h.Extra), ExtraRange)
		add(near, "shorts", h.Shorts, Range{0, 1e4})
		if h.Screws != 0 {
			add(near, "screws", float64(h.Screws), ScrewRange)
		}
	}
	return all
}

// framed reports whether a frame has members at a spacing.
func framed(k material.FrameKind) bool {
	return k != material.NoFrame && k != material.Bare && k != ""
}
