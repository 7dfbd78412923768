package evidence

import (
	"math"
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// What is one thing in which two build-ups differ.
type What string

// The things.
const (
	Leaves    What = "leaves"    // how many
	Facing    What = "facing"    // wall against floor; no values
	LeafMass  What = "leafMass"  // kg/m²
	Layers    What = "layers"    // how many, at much the same mass
	Boards    What = "boards"    // kinds, in words
	Joints    What = "joints"    // damping films in a leaf
	FrameKind What = "frame"     // kinds, in words
	Sheet     What = "sheet"     // steel thickness, m
	Spacing   What = "spacing"   // of the frame, m
	Depth     What = "depth"     // of the gap, m
	Filled    What = "filled"    // share of the gap's depth
	Fixing    What = "fixing"    // kinds, in words
	PerArea   What = "perArea"   // clips or crossings per m²
	Shorted   What = "shorted"   // rigid shorts per m²
	Screws    What = "screws"    // how far apart, m, closer than is usual; of a test 0, as usual
	Masonry   What = "masonry"   // a leaf of masonry against one of boards; no values
	Glazing   What = "glazing"   // a pane against boards; no values
	Thickness What = "thickness" // of a wall or pane, m
)

// Difference is one thing in which a build-up differs from a measured one.
type Difference struct {
	What      What
	Leaf, Gap int // counted from 0 in the build-up asked about; −1 where it does not apply
	// Yours is of the build-up asked about, Test of the measured one: SI values, or words where What is a kind.
	Yours, Test         float64
	YoursWord, TestWord string
	// Weight is how much it is likely to matter, dB of STC. It only orders
	// differences and tells near from far.
	Weight float64
}

// What the differences weigh, dB. Scaled on the mean steps between rows of
// NBC2020 that differ in one thing (fill +9 on light steel, +7 on channel
// ceilings; second layer on a leaf +4.7; channel at 600 instead of 400 mm +2;
// studs at 600 instead of 400 mm +1 to +5; channel on wood studs +15; a second
// row of studs +20); the rest is our own choice.
const (
	leafWeight    = 30.0
	facingWeight  = 6.0
	massWeight    = 15.6 // per factor of ten of a leaf's mass
	layerWeight   = 1.0
	boardWeight   = 3.0
	filmWeight    = 5.0
	depthWeight   = 20.0 // per factor of ten
	fillWeight    = 9.0  // of the whole depth
	spacingWeight = 12.0 // per factor of ten
	gridWeight    = 6.0  // per factor of ten of points per area
	sheetWeight   = 12.0 // per factor of ten
	shortWeight   = 4.0
	masonryWeight = 25.0
	paneWeight    = 15.0
	kindWeight    = 3.0 // of two ways of holding that part the leaves as well
	plenty        = 0.25
)

// apart is how well a frame and its fixings part the leaves, dB of STC over
// both screwed to one row of wood studs (as above).
func apart(g *assembly.Gap) float64 {
	resilient := 0.0
	for _, h := range [...]*assembly.Held{&g.Near, &g.Far} {
		switch h.Fixing.Kind {
		case material.Channel:
			resilient = max(resilient, 15)
		case material.Clip:
			resilient = max(resilient, 17)
		}
	}
	frame := 0.0
	switch g.Frame.Kind {
	case material.NoFrame, "", material.Bare:
		frame = 22
		if resilient > 0 {
			frame = 0 // held by the wall behind
		}
	case material.Double, material.Standing:
		frame = 20
	case material.Staggered:
		frame = 13
	case material.CStud:
		frame = 10
		if float64(g.Frame.Sheet) > 1e-3 {
			frame = 0
		}
	case material.ZBar:
		frame = 10
	}
	return max(resilient, frame)
}

func holding(g *assembly.Gap) material.FixingKind {
	best := material.Screwed
	for _, k := range [...]material.FixingKind{g.Near.Fixing.Kind, g.Far.Fixing.Kind} {
		switch {
		case k == material.Clip || best == material.Clip:
			best = material.Clip
		case k == material.Channel || best == material.Channel:
			best = material.Channel
		case k == material.Untied:
			best = material.Untied
		}
	}
	return best
}

// ofSteel names a frame with its material where the kind does not.
func ofSteel(f *material.Frame) string {
	if f.Sheet > 0 && f.Kind == material.Double {
		return "double steel"
	}
	return string(f.Kind)
}

func pointsPerArea(g *assembly.Gap) float64 {
	return max(g.Near.Grid.PerArea(), g.Far.Grid.PerArea())
}

func filledShare(g *assembly.Gap) float64 {
	if g.Fill.ID == "" || g.Depth <= 0 {
		return 0
	}
	return min(1, float64(g.FillDepth/g.Depth))
}

// ratio weighs a difference in size by its factor.
func bySize(weight, a, b float64) float64 {
	if a <= 0 || b <= 0 {
		return 0
	}
	return weight * math.Abs(math.Log10(a/b))
}

func leafOf(l *assembly.Leaf) (masonry, pane bool, films int, kinds [2]material.Kind, n int) {
	for i, y := range l.Layers {
		k := y.Board.Kind
		masonry = masonry || k.Masonry()
		pane = pane || k == material.Glass || k == material.Laminated
		if i < len(l.Layers)-1 && y.Join == assembly.Film {
			films++
		}
		if n < 2 && !slices.Contains(kinds[:n], k) {
			kinds[n] = k
			n++
		}
	}
	slices.Sort(kinds[:n])
	return masonry, pane, films, kinds, n
}

func words(k [2]material.Kind, n int) string {
	s := string(k[0])
	if n > 1 {
		s += "+" + string(k[1])
	}
	return s
}

// compare tells every difference between two build-ups as they lie.
func compare(yours, test *assembly.BuildUp, tell func(Difference)) {
	one := func(w What, leaf, gap int, a, b, weight float64) {
		if weight > 0 {
			tell(Difference{What: w, Leaf: leaf, Gap: gap, Yours: a, Test: b, Weight: weight})
		}
	}
	if a, b := len(yours.Leaves), len(test.Leaves); a != b {
		one(Leaves, -1, -1, float64(a), float64(b), leafWeight*math.Abs(float64(a-b)))
	}
	if yours.Horizontal != test.Horizontal {
		one(Facing, -1, -1, 0, 0, facingWeight)
	}
	for i := range min(len(yours.Leaves), len(test.Leaves)) {
		a, b := &yours.Leaves[i], &test.Leaves[i]
		ma, mb := float64(a.Mass()), float64(b.Mass())
		if w := bySize(massWeight, ma, mb); w > plenty {
			one(LeafMass, i, -1, ma, mb, w)
		}
		masonryA, paneA, filmsA, kindsA, na := leafOf(a)
		masonryB, paneB, filmsB, kindsB, nb := leafOf(b)
		switch {
		case masonryA != masonryB:
			one(Masonry, i, -1, 0, 0, masonryWeight)
		case paneA != paneB:
			one(Glazing, i, -1, 0, 0, paneWeight)
		case kindsA != kindsB:
			tell(Difference{What: Boards, Leaf: i, Gap: -1, YoursWord: words(kindsA, na), TestWord: words(kindsB, nb), Weight: boardWeight})
		}
		if x, y := len(a.Layers), len(b.Layers); x != y {
			one(Layers, i, -1, float64(x), float64(y), layerWeight*math.Abs(float64(x-y)))
		}
		if filmsA != filmsB {
			one(Joints, i, -1, float64(filmsA), float64(filmsB), filmWeight*math.Abs(float64(filmsA-filmsB)))
		}
		if masonryA && masonryB {
			if w := bySize(massWeight, float64(a.Thickness()), float64(b.Thickness())); w > plenty {
				one(Thickness, i, -1, float64(a.Thickness()), float64(b.Thickness()), w/4)
			}
		}
	}
	if cost, apart := ScrewAllowance(*yours); cost > 0 {
		one(Screws, -1, -1, float64(apart), 0, cost)
	}
	for i := range min(len(yours.Gaps), len(test.Gaps)) {
		a, b := &yours.Gaps[i], &test.Gaps[i]
		parted := math.Abs(apart(a) - apart(b))
		if a.Frame.Kind != b.Frame.Kind {
			w := kindWeight
			if holding(a) == holding(b) {
				w = max(parted, kindWeight)
			}
			tell(Difference{What: FrameKind, Leaf: -1, Gap: i, YoursWord: string(a.Frame.Kind), TestWord: string(b.Frame.Kind), Weight: w})
		} else if s, t := float64(a.Frame.Sheet), float64(b.Frame.Sheet); (s > 0) != (t > 0) {
			tell(Difference{What: FrameKind, Leaf: -1, Gap: i, YoursWord: ofSteel(&a.Frame), TestWord: ofSteel(&b.Frame), Weight: kindWeight})
		} else if s > 0 {
			if w := bySize(sheetWeight, s, t); w > plenty {
				one(Sheet, -1, i, s, t, w)
			}
		}
		if x, y := holding(a), holding(b); x != y {
			tell(Difference{What: Fixing, Leaf: -1, Gap: i, YoursWord: string(x), TestWord: string(y), Weight: max(parted, kindWeight)})
		} else if p, q := pointsPerArea(a), pointsPerArea(b); p > 0 && q > 0 {
			if w := bySize(gridWeight, p, q); w > plenty {
				one(PerArea, -1, i, p, q, w)
			}
		}
		if w := bySize(spacingWeight, float64(a.Spacing), float64(b.Spacing)); w > plenty {
			one(Spacing, -1, i, float64(a.Spacing), float64(b.Spacing), w)
		}
		if w := bySize(depthWeight, float64(a.Depth), float64(b.Depth)); w > plenty {
			one(Depth, -1, i, float64(a.Depth), float64(b.Depth), w)
		}
		if x, y := filledShare(a), filledShare(b); math.Abs(x-y) > 0.1 {
			one(Filled, -1, i, x, y, fillWeight*math.Abs(x-y))
		}
		if x, y := a.Near.Shorts+a.Far.Shorts, b.Near.Shorts+b.Far.Shorts; (x > 0) != (y > 0) {
			one(Shorted, -1, i, x, y, shortWeight)
		}
	}
}

// tierDistance makes a row that is stated in full come before one that is not, dB.
var tierDistance = map[string]float64{"A": 0, "": 0, "B": 1, "C": 4}

// view is a build-up of a rated row as it is seen from one of its two sides.
type view struct {
	test  int
	built assembly.BuildUp
}

// views returns every build-up of some rows, from both sides.
func views(tests []Test) (out []view) {
	for i, t := range tests {
		for _, b := range t.BuildUps {
			out = append(out, view{i, b})
			if len(b.Leaves) > 1 {
				out = append(out, view{i, b.Reversed()})
			}
		}
	}
	return out
}

// Nearest returns the rated measured construction that differs the least from
// a build-up, seen from either side, and what differs, gravest first. With no
// leaf at all it returns the zero Test. Of the Test, what describes the row,
// its STC, its constructions and what was assumed are filled in.
func Nearest(b assembly.BuildUp) (Test, []Difference) {
	k := known()
	return nearestOf(b, k.tests, k.views)
}

func nearestOf(b assembly.BuildUp, tests []Test, all []view) (Test, []Difference) {
	if len(b.Leaves) == 0 {
		return Test{}, nil
	}
	best, least := -1, math.Inf(1)
	for i := range all {
		k := &all[i]
		far := tierDistance[tests[k.test].Tier]
		compare(&b, &k.built, func(d Difference) { far += d.Weight })
		if far < least {
			best, least = i, far
		}
	}
	if best < 0 {
		return Test{}, nil
	}
	var found []Difference
	compare(&b, &all[best].built, func(d Difference) { found = append(found, d) })
	// Few, so each is moved up to its place; a library's sort would weigh more than the rest of this file.
	for i := range found {
		for k := i; k > 0 && found[k].Weight > found[k-1].Weight; k-- {
			found[k], found[k-1] = found[k-1], found[k]
		}
	}
	return tests[all[best].test], found
}

// Contradiction is two measured constructions that say the same in words and
// not in their ratings.
type Contradiction struct{ A, B Test }

// Contradictions returns the pairs of tests of different sources whose
// constructions differ by less than a decibel's worth and whose ratings differ
// by more than so many dB. Of each test only the nearest of another source counts.
func Contradictions(of []Test, by int) []Contradiction {
	const alike = 1.0
	var out []Contradiction
	for i := range of {
		nearest, least := -1, alike
		for j := range i {
			if of[i].Source == of[j].Source || of[i].STC == 0 || of[j].STC == 0 {
				continue
			}
			for x := range of[i].BuildUps {
				for y := range of[j].BuildUps {
					sum := 0.0
					compare(&of[i].BuildUps[x], &of[j].BuildUps[y], func(d Difference) { sum += d.Weight })
					if sum < least {
						nearest, least = j, sum
					}
				}
			}
		}
		if nearest < 0 {
			continue
		}
		if d := of[i].STC - of[nearest].STC; d > by || -d > by {
			out = append(out, Contradiction{of[nearest], of[i]})
		}
	}
	return out
}
