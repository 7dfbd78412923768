package appraise

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/material"
)

// Family is a kind of construction that published tests come in.
type Family string

// The families, named as the trade names the construction.
const (
	SinglePanel      Family = "single panel"
	GlassSingle      Family = "one pane"
	GlassDouble      Family = "two panes"
	MasonryBare      Family = "masonry, bare"
	MasonryLined     Family = "masonry, lined"
	WoodFilled       Family = "wood studs, filled"
	WoodEmpty        Family = "wood studs, empty"
	WoodChannel      Family = "wood studs with channel"
	StaggeredFilled  Family = "staggered studs"
	StaggeredChannel Family = "staggered studs with channel"
	DoubleFilled     Family = "two rows of studs, filled"
	DoubleEmpty      Family = "two rows of studs, empty"
	SteelFilled      Family = "light steel studs, filled"
	SteelEmpty       Family = "light steel studs, empty"
	SteelHeavy       Family = "load-bearing steel studs"
	SteelChannel     Family = "steel studs with channel"
	FloorDirect      Family = "joists, ceiling screwed on"
	FloorFurring     Family = "joists, ceiling on strips"
	FloorChannel     Family = "joists, ceiling on channel"
	FloorThree       Family = "joists, three leaves"
	None             Family = ""
)

// residual is what the method left over against published tests of a family:
// root mean square of computed minus measured STC with each series of tests
// left out of the fit, dB, and how many tests there are.
type residual struct {
	rms   float64
	tests int
}

// residuals are of an independent trial of the same method against the tables
// of NBC2020, HARRIS1995 and BIES2017, each series left out in turn. Single
// panels were told per octave only (4 dB), glass likewise.
var residuals = map[Family]residual{
	SinglePanel:      {4.0, 34},
	GlassSingle:      {1.5, 4},
	GlassDouble:      {3.7, 8},
	MasonryBare:      {3.6, 7},
	MasonryLined:     {3.1, 29},
	WoodFilled:       {2.4, 6},
	WoodEmpty:        {2.2, 5},
	WoodChannel:      {1.2, 4},
	StaggeredFilled:  {1.0, 3},
	StaggeredChannel: {1.5, 4},
	DoubleFilled:     {1.5, 8},
	DoubleEmpty:      {2.9, 4},
	SteelFilled:      {1.9, 28},
	SteelEmpty:       {1.7, 27},
	SteelHeavy:       {2.5, 6},
	SteelChannel:     {1.6, 17},
	FloorDirect:      {2.6, 32},
	FloorFurring:     {3.3, 12},
	FloorChannel:     {3.3, 66},
	FloorThree:       {1.2, 6},
}

// filledShare is the share of a gap's depth from which it counts as filled
// (the code table asks for 90 % of the depth; NBC2020, notes to Table 9.10.3.1.-A;
// half is taken here so that a batt in a deep gap is not called empty).
const filledShare = 0.5

// FamilyOf returns the family of published tests a build-up belongs to, and
// whether it only is the nearest one because none of its own kind was tested:
// rubber clips, damping film, wood panels in a wall, four leaves.
func FamilyOf(b assembly.BuildUp) (f Family, nearest bool) {
	for _, l := range b.Leaves {
		for i, y := range l.Layers {
			if i < len(l.Layers)-1 && y.Join != assembly.Loose {
				nearest = true
			}
			if y.Board.Kind != material.Gypsum && len(b.Leaves) > 1 && !b.Horizontal && !y.Board.Kind.Masonry() && !glass(y.Board.Kind) {
				nearest = true
			}
		}
	}
	switch len(b.Leaves) {
	case 1:
		return single(b.Leaves[0]), nearest
	case 2:
		f, near := twoLeaf(b)
		return f, near || nearest
	}
	if b.Horizontal && len(b.Leaves) == 3 {
		return FloorThree, nearest
	}
	if masonry(b.Leaves[1]) && len(b.Leaves) == 3 {
		return MasonryLined, nearest
	}
	return DoubleFilled, true
}

func glass(k material.Kind) bool { return k == material.Glass || k == material.Laminated }

func masonry(l assembly.Leaf) bool {
	for _, y := range l.Layers {
		if y.Board.Kind.Masonry() {
			return true
		}
	}
	return false
}

func single(l assembly.Leaf) Family {
	switch {
	case masonry(l):
		return MasonryBare
	case len(l.Layers) == 1 && glass(l.Layers[0].Board.Kind):
		return GlassSingle
	}
	return SinglePanel
}

func twoLeaf(b assembly.BuildUp) (f Family, nearest bool) {
	g := b.Gaps[0]
	filled := g.Fill.ID != "" && float64(g.FillDepth) >= filledShare*float64(g.Depth)
	held := g.Near.Fixing.Kind
	if held == material.Screwed {
		held = g.Far.Fixing.Kind
	}
	channel := held == material.Channel || held == material.Clip
	nearest = held == material.Clip || held == material.Untied
	choose := func(yes, no Family) Family {
		if filled {
			return yes
		}
		return no
	}
	switch {
	case masonry(b.Leaves[0]) || masonry(b.Leaves[1]):
		return MasonryLined, nearest
	case glass(b.Leaves[0].Layers[0].Board.Kind) && g.Frame.Kind == material.NoFrame:
		return GlassDouble, nearest
	case b.Horizontal || g.Frame.Kind == material.Joist || g.Frame.Kind == material.SteelJoist:
		if g.Frame.Kind == material.Strapping {
			return FloorFurring, nearest
		}
		if channel {
			return FloorChannel, nearest
		}
		return FloorDirect, nearest
	}
	switch g.Frame.Kind {
	case material.Staggered:
		if channel {
			return StaggeredChannel, nearest
		}
		return StaggeredFilled, nearest || !filled
	case material.Double, material.Standing, material.NoFrame:
		return choose(DoubleFilled, DoubleEmpty), nearest || g.Frame.Kind != material.Double
	case material.CStud:
		// 0.75 mm parts light from load-bearing studs (common practice, 20 gauge).
		if channel {
			return SteelChannel, nearest || g.Frame.Sheet < 0.75e-3
		}
		if g.Frame.Sheet >= 0.75e-3 {
			return SteelHeavy, nearest
		}
		return choose(SteelFilled, SteelEmpty), nearest
	}
	if channel {
		return WoodChannel, nearest || !filled
	}
	return choose(WoodFilled, WoodEmpty), nearest
}

// Spread is how far the figures may be off, one standard deviation, dB.
type Spread struct {
	Family  Family
	Nearest bool // none of this very kind was tested; the nearest family stands in
	Tests   int
	Rating  float64
	Bass    float64
	Band    band.Spectrum
}

// columnA is the reproducibility of one third-octave band between
// laboratories, dB, one standard deviation, 50 to 5000 Hz
// (ISO 12999-1:2020, Table 2, situation A).
var columnA = [...]float64{
	6.8, 4.6, 3.8, 3.0, 2.7, 2.4, 2.1, 1.8, 1.8, 1.8, 1.8,
	1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.9, 2.0, 2.4, 2.8,
}

const (
	// ratingA is the same for Rw, dB (ISO 12999-1:2020, Table 3).
	ratingA = 1.2
	// nearestAdd widens the spread where only the nearest family was tested, dB:
	// what moving an unconfirmed isolator stiffness or film modulus by a factor
	// of two does to STC (calculated: ± 3 for either).
	nearestAdd = 3.0
	// bassFloor and guess: published spectra below 100 Hz are too few to do
	// better than ± 6; below 50 Hz nothing is measured (± 8).
	bassFloor = 6.0
	guess     = 8.0
)

// SpreadOf returns the spread of a build-up's figures: the residual of its
// family, never below what laboratories differ by among themselves, widened
// by root sum of squares where only the nearest family was tested; at least
// 6 dB below 100 Hz and 8 dB at 31.5 and 40 Hz.
func SpreadOf(b assembly.BuildUp) Spread {
	f, near := FamilyOf(b)
	r := residuals[f]
	s := Spread{Family: f, Nearest: near, Tests: r.tests, Rating: max(r.rms, ratingA), Bass: bassFloor}
	if near {
		s.Rating = math.Hypot(s.Rating, nearestAdd)
	}
	for i := range s.Band {
		switch {
		case i < band.First50:
			s.Band[i] = guess
		case i < band.First100:
			s.Band[i] = math.Max(bassFloor, columnA[i-band.First50])
		default:
			s.Band[i] = math.Max(s.Rating, columnA[i-band.First50])
		}
	}
	return s
}
