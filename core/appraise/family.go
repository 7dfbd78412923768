package appraise

import (
	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// Family is a kind of construction that published tests come in; its text is
// the kind that the tables of the evidence give it.
type Family string

// The families of walls, floors and windows, by core/evidence's kinds.
const (
	Panel            Family = "single panel"
	PaneSingle       Family = "window single"
	PaneDouble       Family = "window double"
	MasonryBare      Family = "wall block bare"
	MasonryLined     Family = "wall block lined"
	Slab             Family = "floor concrete"
	WoodSingle       Family = "wall wood single"
	WoodChannel      Family = "wall wood single RC"
	Staggered        Family = "wall wood staggered"
	StaggeredChannel Family = "wall wood staggered RC"
	WoodDouble       Family = "wall wood double"
	SteelSingle      Family = "wall steel single"
	SteelDouble      Family = "wall steel double"
	SteelHeavy       Family = "wall steel loadbearing"
	SteelChannel     Family = "wall steel loadbearing RC"
	FloorDirect      Family = "floor wood joist direct"
	FloorFurring     Family = "floor wood joist furring"
	FloorChannel     Family = "floor wood joist RC"
	FloorSteel       Family = "floor steel joist RC"
	FloorThree       Family = "floor steel joist triple-leaf"
)

// groups are the families that stand in for each other where one has too few
// tests: those whose leaves are tied in the same way.
var groups = [][]Family{
	{WoodSingle, SteelHeavy},
	{WoodChannel, StaggeredChannel, SteelChannel},
	{Staggered, WoodDouble, SteelDouble},
	{SteelSingle},
	{MasonryBare, "wall brick", Slab},
	{MasonryLined},
	{FloorDirect, FloorFurring},
	{FloorChannel, FloorSteel, FloorThree},
	{Panel, "single panel glass", PaneSingle, PaneDouble},
}

// groupOf returns the families that stand in for one, itself among them.
func groupOf(f Family) []Family {
	for _, g := range groups {
		for _, x := range g {
			if x == f {
				return g
			}
		}
	}
	return []Family{f}
}

// lightSheet parts light from load-bearing steel studs, m (common practice, 20 gauge).
const lightSheet = 0.75e-3

// FamilyOf returns the family of published tests a build-up belongs to, and
// whether it only is the nearest one because its own kind is not among them:
// rubber clips, damping film, wood panels in a wall, a third leaf in a wall.
func FamilyOf(b assembly.BuildUp) (f Family, nearest bool) {
	for _, l := range b.Leaves {
		for i, y := range l.Layers {
			k := y.Board.Kind
			odd := k != material.Gypsum && k != material.Plaster && !k.Masonry() && !glass(k)
			nearest = nearest || i < len(l.Layers)-1 && y.Join != assembly.Loose || odd && len(b.Leaves) > 1 && !b.Horizontal
		}
	}
	switch n := len(b.Leaves); {
	case n == 1:
		return single(b), nearest
	case n == 2:
		f, near := twoLeaf(b)
		return f, near || nearest
	case n == 3 && b.Horizontal:
		return FloorThree, nearest
	case n == 3 && masonry(b.Leaves[1]):
		return MasonryLined, nearest
	}
	return WoodDouble, true
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

func single(b assembly.BuildUp) Family {
	switch l := b.Leaves[0]; {
	case masonry(l) && b.Horizontal:
		return Slab
	case masonry(l):
		return MasonryBare
	case glass(l.Layers[0].Board.Kind):
		return PaneSingle
	}
	return Panel
}

func twoLeaf(b assembly.BuildUp) (f Family, nearest bool) {
	g := b.Gaps[0]
	hung := func(k material.FixingKind) bool { return g.Near.Fixing.Kind == k || g.Far.Fixing.Kind == k }
	clip := hung(material.Clip)
	channel := clip || hung(material.Channel)
	nearest = clip
	either := func(with, without Family) Family {
		if channel {
			return with
		}
		return without
	}
	switch g.Frame.Kind {
	case material.SteelJoist:
		return FloorSteel, nearest || !channel
	case material.Joist:
		return either(FloorChannel, FloorDirect), nearest
	}
	switch {
	case masonry(b.Leaves[0]) || masonry(b.Leaves[1]):
		return MasonryLined, nearest
	case glass(b.Leaves[0].Layers[0].Board.Kind) && g.Frame.Kind == material.NoFrame:
		return PaneDouble, nearest
	case b.Horizontal && g.Frame.Kind == material.Strapping:
		return FloorFurring, nearest
	case b.Horizontal:
		return either(FloorChannel, FloorDirect), true
	}
	switch g.Frame.Kind {
	case material.Staggered:
		return either(StaggeredChannel, Staggered), nearest
	case material.Double:
		if g.Frame.Sheet > 0 {
			return SteelDouble, nearest
		}
		return WoodDouble, nearest
	case material.CStud:
		if g.Frame.Sheet < lightSheet {
			return either(SteelChannel, SteelSingle), nearest || channel
		}
		return either(SteelChannel, SteelHeavy), nearest
	case material.Wood:
		return either(WoodChannel, WoodSingle), nearest || hung(material.Untied)
	}
	return WoodDouble, true
}
