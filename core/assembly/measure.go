package assembly

import (
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// FilmMass is the mass of a damping film between two boards, kg/m²: about
// 0.4 mm of cured water-based compound of about 1000 kg/m³ (from memory; two
// tubes of 0.83 l on a sheet of 2.97 m² go on as 0.56 mm and shrink in drying).
const FilmMass unit.SurfaceMass = 0.4

// FilmDepth is the thickness of that film, m. It is squeezed into the unevenness
// of the boards and is not added to the thickness of a leaf.
const FilmDepth = 0.4 * unit.Millimetre

// joint returns the mass of what lies between layer i and the next, kg/m².
// Glue is taken as of no mass of its own.
func (l Leaf) joint(i int) unit.SurfaceMass {
	if i < len(l.Layers)-1 && l.Layers[i].Join == Film {
		return FilmMass
	}
	return 0
}

// Mass returns the mass of a leaf per area, kg/m²:
//
//	m = Σ mi + Σ mfilm
//
// of every layer, those that are there already included.
func (l Leaf) Mass() unit.SurfaceMass {
	// Sorted by size, so that the order of the layers does not change the last digit.
	var room [2 * MaxLayers]float64 // kept off the heap: a search asks this very often
	parts := room[:0]
	for i, y := range l.Layers {
		parts = append(parts, float64(y.Board.Mass), float64(l.joint(i)))
	}
	return unit.SurfaceMass(sum(parts))
}

// NewMass returns the mass per area of what is hung now, kg/m²: the layers of
// Mass that are not in the house already.
func (l Leaf) NewMass() unit.SurfaceMass {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for i, y := range l.Layers {
		if !y.There {
			parts = append(parts, float64(y.Board.Mass))
		}
		if !l.jointThere(i) {
			parts = append(parts, float64(l.joint(i)))
		}
	}
	return unit.SurfaceMass(sum(parts))
}

// jointThere reports whether both boards of a joint, and so the joint, are in the house already.
func (l Leaf) jointThere(i int) bool {
	return i < len(l.Layers)-1 && l.Layers[i].There && l.Layers[i+1].There
}

// Thickness returns the thickness of a leaf, m: the sum of its boards.
func (l Leaf) Thickness() unit.Length {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for _, y := range l.Layers {
		parts = append(parts, float64(y.Board.Thickness))
	}
	return unit.Length(sum(parts))
}

// There reports whether every layer of the leaf is in the house already.
func (l Leaf) There() bool {
	for _, y := range l.Layers {
		if !y.There {
			return false
		}
	}
	return len(l.Layers) > 0
}

// FilmID stands for the damping film where something is named that has no price.
const FilmID = "film"

// Cost returns the price per area of the new layers and films of a leaf, in
// the plan's currency per m². Layers that are there already cost nothing; glue,
// screws and sealant are not counted. ok is false while a price is missing,
// see Unpriced.
func (l Leaf) Cost() (rate unit.MoneyRate, ok bool) {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	ok = true
	for i, y := range l.Layers {
		if !y.There {
			ok = ok && y.Priced
			parts = append(parts, float64(y.Price))
		}
		if l.joint(i) > 0 && !l.jointThere(i) {
			ok = ok && y.JoinPriced
			parts = append(parts, float64(y.JoinPrice))
		}
	}
	if !ok {
		return 0, false
	}
	return unit.MoneyRate(sum(parts)), true
}

// Unpriced returns the ids of what has no price yet, each once, in the order
// of the layers: board ids, and FilmID for a film.
func (l Leaf) Unpriced() []string {
	var ids []string
	add := func(id string) {
		for _, have := range ids {
			if have == id {
				return
			}
		}
		ids = append(ids, id)
	}
	for i, y := range l.Layers {
		if !y.There && !y.Priced {
			add(y.Board.ID)
		}
		if l.joint(i) > 0 && !l.jointThere(i) && !y.JoinPriced {
			add(FilmID)
		}
	}
	return ids
}

// Stack returns the mass of one sheet of each new layer, kg: what has to be
// lifted and driven for one sheet's face. ok is false where a new layer does
// not come in sheets, or where nothing is new.
func (l Leaf) Stack() (mass unit.Mass, ok bool) {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for _, y := range l.Layers {
		if y.There {
			continue
		}
		weight, sheet := y.Weight()
		if !sheet {
			return 0, false
		}
		parts = append(parts, float64(weight))
	}
	return unit.Mass(sum(parts)), len(parts) > 0
}

// StackCost returns the price of one sheet of each new layer. ok is false as
// for Stack, or while a price is missing. A film is bought by the tube and not in it.
func (l Leaf) StackCost() (money unit.Money, ok bool) {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for _, y := range l.Layers {
		if y.There {
			continue
		}
		area := y.Sheet().Area()
		if area <= 0 || !y.Priced {
			return 0, false
		}
		parts = append(parts, float64(y.Price)*float64(area))
	}
	return unit.Money(sum(parts)), len(parts) > 0
}

// Sheet returns the sheet that the layer is counted in, the first as sold;
// the zero Sheet for built masonry and what comes cut to order.
func (y Layer) Sheet() material.Sheet {
	if len(y.Board.Sheets) == 0 {
		return material.Sheet{}
	}
	return y.Board.Sheets[0]
}

// Weight returns the mass of one sheet, kg; ok is false without a sheet.
func (y Layer) Weight() (mass unit.Mass, ok bool) {
	area := y.Sheet().Area()
	if area <= 0 {
		return 0, false
	}
	return unit.Mass(float64(y.Board.Mass) * float64(area)), true
}

// Mass returns the mass of all leaves and fills of a build-up per area, kg/m²;
// frames and channels are not in it.
func (b BuildUp) Mass() unit.SurfaceMass {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for _, l := range b.Leaves {
		parts = append(parts, float64(l.Mass()))
	}
	for _, g := range b.Gaps {
		parts = append(parts, float64(g.FillMass()))
	}
	return unit.SurfaceMass(sum(parts))
}

// Thickness returns the thickness of a build-up, m: leaves and gaps.
func (b BuildUp) Thickness() unit.Length {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for _, l := range b.Leaves {
		parts = append(parts, float64(l.Thickness()))
	}
	for _, g := range b.Gaps {
		parts = append(parts, float64(g.Depth))
	}
	return unit.Length(sum(parts))
}

// Cost returns the price per area of the new boards and films of all leaves;
// ok is false while one is missing.
func (b BuildUp) Cost() (rate unit.MoneyRate, ok bool) {
	var room [2 * MaxLayers]float64
	parts := room[:0]
	for _, l := range b.Leaves {
		c, known := l.Cost()
		if !known {
			return 0, false
		}
		parts = append(parts, float64(c))
	}
	return unit.MoneyRate(sum(parts)), true
}

// FillMass returns density × depth of the fill, kg/m².
func (g Gap) FillMass() unit.SurfaceMass {
	if g.Fill.ID == "" {
		return 0
	}
	return unit.SurfaceMass(float64(g.Fill.Density) * float64(g.FillDepth))
}

// FrameDepth returns the least depth that a frame takes up between its two
// leaves, without stand-offs, m: one member, or for two separate rows both.
func FrameDepth(f material.Frame) unit.Length {
	if f.Kind == material.Double {
		return 2 * f.Depth
	}
	return f.Depth
}

// StandOffs returns the depth that the fixings on both sides of a frame add, m.
func (g Gap) StandOffs() unit.Length { return g.Near.Fixing.StandOff + g.Far.Fixing.StandOff }

// DefaultDepth returns the depth of a gap from its frame and fixings, m:
//
//	d = plate + stand-off near + stand-off far
//
// where the plate of one row of studs is as deep as the studs, of staggered
// studs and two rows as deep as the usual plates. A gap without a frame has no
// depth of its own: 0, to be typed.
func (g Gap) DefaultDepth() unit.Length {
	deep := max(g.Frame.Plate, FrameDepth(g.Frame))
	return deep + g.StandOffs()
}

// Empty returns the depth of a gap that its fill leaves free, m.
func (g Gap) Empty() unit.Length {
	if g.Fill.ID == "" {
		return g.Depth
	}
	return max(0, g.Depth-g.FillDepth)
}

// Holder returns what holds leaf i on resilient points: the gap and whether the
// leaf is on the gap's room side. A leaf between two gaps is held by the one
// with clips, else by the one with channel. ok is false where nothing resilient holds it.
func (b BuildUp) Holder(i int) (gap int, near bool, ok bool) {
	for _, kind := range [...]material.FixingKind{material.Clip, material.Channel} {
		if i >= 0 && i < len(b.Gaps) && b.Gaps[i].Near.Fixing.Kind == kind {
			return i, true, true
		}
		if i > 0 && i <= len(b.Gaps) && b.Gaps[i-1].Far.Fixing.Kind == kind {
			return i - 1, false, true
		}
	}
	return -1, false, false
}

// Fixed returns what leaf i is fixed to, resilient or not, in the same way;
// ok is false for a leaf that stands by itself.
func (b BuildUp) Fixed(i int) (gap int, near bool, ok bool) {
	if gap, near, ok = b.Holder(i); ok {
		return gap, near, ok
	}
	if i >= 0 && i < len(b.Gaps) && b.Gaps[i].Near.Fixing.Kind == material.Screwed {
		return i, true, true
	}
	if i > 0 && i <= len(b.Gaps) && b.Gaps[i-1].Far.Fixing.Kind == material.Screwed {
		return i - 1, false, true
	}
	return -1, false, false
}

// Held returns how a leaf beside gap g is held on the given side.
func (g Gap) Held(near bool) Held {
	if near {
		return g.Near
	}
	return g.Far
}

// Reversed returns the build-up seen from the other side: the last leaf first,
// its layers turned about, near and far exchanged. It shares nothing with b.
// FillLies is carried along and has no meaning for load in it.
func (b BuildUp) Reversed() BuildUp {
	r := b
	r.Leaves = make([]Leaf, len(b.Leaves))
	for i, l := range b.Leaves {
		r.Leaves[len(b.Leaves)-1-i] = l.reversed()
	}
	r.Gaps = make([]Gap, len(b.Gaps))
	for i, g := range b.Gaps {
		g.Near, g.Far = g.Far, g.Near
		r.Gaps[len(b.Gaps)-1-i] = g
	}
	return r
}

// reversed turns the layers about; a joint stays between its two boards, so it
// moves to the other one of them.
func (l Leaf) reversed() Leaf {
	n := len(l.Layers)
	layers := make([]Layer, n)
	for i, y := range l.Layers {
		layers[n-1-i] = y
	}
	for j := range layers {
		if j == n-1 {
			layers[j].Join, layers[j].JoinPrice, layers[j].JoinPriced = Loose, 0, false
			continue
		}
		from := l.Layers[n-2-j]
		layers[j].Join, layers[j].JoinPrice, layers[j].JoinPriced = from.Join, from.JoinPrice, from.JoinPriced
	}
	return Leaf{Layers: layers}
}
