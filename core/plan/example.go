package plan

import (
	"strconv"

	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// set is what the examples and the starting rows of a region are made of. All
// are rows of the tables; only what is invented says so.
type set struct {
	heavy, light, wood, osb, dense string // boards: usual heavy, usual light, and panels to hang behind
	double                         string // two of these are the light alternative
	far, sheathing, deck           string // what is there already: inside, outside, floor above
	frame, joist                   string
	fill, joistFill                string
	rating                         unit.Quantity // of a clip, invented
	width, depth, height           unit.Quantity // of the room
	ceilingRows                    unit.Quantity
	lightTag, woodTag              unit.Quantity // weights on invented tags
	boxX, boxY, boxMass            unit.Quantity // of a box for fresh air that hangs on the ceiling
	livingArea, bedArea, payload   unit.Quantity
}

func (r Region) set() set {
	na := set{
		heavy: "na_gyp_typeX_16", light: "na_gyp_light_13", wood: "na_ply_soft_15", osb: "na_osb_18_23-32", dense: "na_mdf_19",
		double: "na_gyp_light_13", far: "na_gyp_reg_13", sheathing: "na_osb_11_7-16", deck: "na_osb_18_23-32",
		frame: "wood_38x89", joist: "joist_38x235", fill: "na_stone_42", joistFill: "na_glass_sound",
		rating: "42 lb", width: "160 in", depth: "128 in", height: "8 ft", ceilingRows: "16 in",
		lightTag: "41 lb", woodTag: "58 lb",
		boxX: "88 in", boxY: "54 in", boxMass: "12 lb", livingArea: "240 ft2", bedArea: "150 ft2", payload: "1000 lb",
	}
	metric := func(m set) set {
		m.boxX, m.boxY, m.boxMass, m.livingArea, m.bedArea, m.payload = "2250 mm", "1350 mm", "5.5 kg", "22 m2", "14 m2", "450 kg"
		return m
	}
	switch r {
	case CA:
		na.rating, na.width, na.depth, na.height, na.ceilingRows = "19 kg", "4060 mm", "3250 mm", "2440 mm", "400 mm"
		na.lightTag, na.woodTag = "18.6 kg", "26.3 kg"
		na = metric(na)
	case UK, EU:
		return metric(set{
			heavy: "eu_gyp_f_15", light: "eu_gyp_a_12", wood: "eu_ply_soft_15", osb: "eu_osb_18", dense: "eu_mdf_18",
			double: "eu_gyp_d_12", far: "eu_gyp_a_12", sheathing: "eu_brick_102", deck: "eu_chip_22",
			frame: "wood_45x95", joist: "joist_47x200", fill: "eu_stone_45", joistFill: "eu_glass_loft",
			rating: "21 kg", width: "4000 mm", depth: "3200 mm", height: "2400 mm", ceilingRows: "400 mm",
			lightTag: "24.2 kg", woodTag: "22.9 kg",
		})
	case AU:
		return metric(set{
			heavy: "au_gyp_fire_16", light: "au_gyp_std_13", wood: "au_ply_17", osb: "au_part_19", dense: "au_mdf_18",
			double: "au_gyp_ac_13", far: "au_gyp_std_10", sheathing: "xx_fc_6", deck: "au_part_19",
			frame: "wood_35x90", joist: "joist_45x240", fill: "au_glass_sound", joistFill: "au_glass_sound",
			rating: "22 kg", width: "4000 mm", depth: "3200 mm", height: "2400 mm", ceilingRows: "400 mm",
			lightTag: "24.8 kg", woodTag: "26.8 kg",
		})
	}
	return na
}

// exampleRating is the invented rating of a clip in the examples of a region.
func (r Region) exampleRating() unit.Quantity { return r.set().rating }

// UsualUnits returns the system a region counts in: customary in the US and metric elsewhere.
func (r Region) UsualUnits() Units {
	if r == US || r == "" {
		return Customary
	}
	return Metric
}

func layersOf(boards ...string) []Layer {
	out := make([]Layer, len(boards))
	for i, b := range boards {
		out[i] = Layer{ID: "l" + strconv.Itoa(i+1), Board: b}
	}
	return out
}

func there(layers []Layer) []Layer {
	for i := range layers {
		layers[i].There = true
	}
	return layers
}

// ReferenceLayers returns two layers of a region's usual heavy gypsum board.
func ReferenceLayers(r Region) []Layer {
	b := material.UsualHeavy(string(r)).ID
	return layersOf(b, b)
}

// StartingRows returns the eight build-ups of a leaf that side by side starts
// with in a region, room side first (common practice: what yards have beside
// the usual heavy board).
func StartingRows(r Region) []Candidate {
	s := r.set()
	film := layersOf(s.heavy, s.heavy)
	film[0].Join = "film"
	rows := [][]Layer{
		layersOf(s.light, s.wood, s.light),
		layersOf(s.heavy, s.osb),
		layersOf(s.light, s.light, s.light),
		layersOf(s.heavy, s.light),
		film,
		layersOf(s.heavy, s.heavy, s.heavy),
		layersOf(s.heavy, s.dense),
		layersOf(s.double, s.double),
	}
	out := make([]Candidate, len(rows))
	for i, l := range rows {
		out[i] = Candidate{ID: "c" + strconv.Itoa(i+1), Layers: l}
	}
	return out
}

// listOf returns a list. For a list written out the compiler also makes code
// that compares arrays of that length, field by field, which nothing calls.
func listOf[T any](items ...T) []T { return append([]T(nil), items...) }

// onClips is a leaf on clips whose rating is the invented one.
func (s set) onClips() Held { return Held{Fixing: "clip", Rating: s.rating, Example: true} }

func screwed() Held { return Held{Fixing: "screwed"} }

// First returns the wall that the page starts with: two layers of the region's
// heavy board on rubber clips, studs that are there already, wool, board on the
// far side that is there too. Prices and the rating of the clip are invented and
// marked so.
func First(r Region) Plan {
	s := r.set()
	return Renumbered(Plan{
		Format: Format, Table: material.TableVersion, Name: "A wall",
		Region: r, Units: r.UsualUnits(), Prices: DemoPrices, Source: "band", Level: "100",
		Surfaces: listOf(Surface{ID: "s", Name: "wall", Kind: Wall, Width: s.width, Height: s.height, BuildUp: "b", Beyond: "bedroom", Listener: "sleeper"}),
		BuildUps: []BuildUp{{
			ID:     "b",
			Leaves: []Leaf{{Layers: layersOf(s.heavy, s.heavy)}, {Layers: there(layersOf(s.far))}},
			Gaps:   listOf(Gap{Frame: s.frame, Fill: s.fill, Near: s.onClips(), Far: screwed(), There: true}),
		}},
	})
}

// Demo returns a drummer's room in a garage under a bedroom: four walls, a
// ceiling below the bedroom, a slab. Tags, prices and the rating of the clips
// are invented; the notes say so. Wall B swaps the fire-rated boards for a
// sandwich with wood in it, which a room beside a garage must not do unasked.
func Demo(r Region) Plan {
	s := r.set()
	shell := func(id string, far string) BuildUp {
		return BuildUp{
			ID:     id,
			Leaves: []Leaf{{Layers: layersOf(s.heavy, s.heavy)}, {Layers: there(layersOf(far))}},
			Gaps:   listOf(Gap{Frame: s.frame, Fill: s.fill, Near: s.onClips(), Far: screwed(), There: true}),
		}
	}
	inside := shell("inside", s.far)
	sandwich := shell("sandwich", s.far)
	sandwich.Leaves[0].Layers = layersOf(s.light, s.wood, s.light)
	outside := shell("outside", s.sheathing)
	if b, ok := material.ByID(s.sheathing); ok && b.Kind.Masonry() {
		// A row of studs of its own before a wall of brick: nothing is tied to it.
		outside.Gaps[0].There = false
		outside.Gaps[0].Far = Held{Fixing: "untied"}
		outside.Gaps[0].Depth = "175 mm"
	}
	ceiling := shell("ceiling", s.deck)
	ceiling.Gaps[0].Frame, ceiling.Gaps[0].Fill = s.joist, s.joistFill
	ceiling.Gaps[0].Near.Rows = s.ceilingRows
	slab := BuildUp{ID: "slab", Leaves: []Leaf{{Layers: there(layersOf("xx_concrete_150"))}}}
	wall := func(id, name string, width unit.Quantity, buildUp, beyond string, garage bool) Surface {
		return Surface{ID: id, Name: name, Kind: Wall, Width: width, Height: s.height, BuildUp: buildUp, Beyond: beyond, Garage: garage}
	}
	hall := wall("A", "wall A", s.width, "inside", "hall", true)
	hall.Listener, hall.Flank, hall.Side = "living", "plate", 1
	hall.Openings = listOf(Opening{Kind: "doorSolid"}, Opening{Kind: "box"})
	living := wall("B", "wall B", s.width, "sandwich", "living room", true)
	living.Listener, living.Flank, living.Side = "living", "plate", 3
	living.Openings = listOf(Opening{Kind: "box", Count: "2"})
	yard := wall("C", "wall C", s.depth, "outside", "yard", false)
	yard.Side = 2
	street := wall("D", "wall D", s.depth, "outside", "street", false)
	street.Side = 4
	above := Surface{ID: "E", Name: "ceiling E", Kind: Ceiling, Width: s.width, Height: s.depth, BuildUp: "ceiling", Beyond: "bedroom", Listener: "sleeper", Flank: "joists", Garage: true}
	above.Openings = listOf(Opening{Kind: "duct"})
	above.Hung = listOf(Hung{Name: "air box", X: s.boxX, Y: s.boxY, Mass: s.boxMass})
	return Renumbered(Plan{
		Format: Format, Table: material.TableVersion, Name: "Garage room",
		Region: r, Units: r.UsualUnits(), Prices: DemoPrices, Source: "drums", Level: "100",
		Room: &Room{Soft: Treated, People: "3", Minutes: "90", Watts: "600"},
		Spaces: listOf(
			Space{Name: "living room", Area: s.livingArea, Noise: listOf(Playing{Source: "tv"})},
			Space{Name: "yard", Outdoors: true}, Space{Name: "street", Outdoors: true},
			Space{Name: "bedroom", Area: s.bedArea},
		),
		Buying: &Buying{Tax: "7 %", Payload: s.payload, Budget: unit.Of(600, r.Currency())},
		Surfaces: listOf(
			hall,
			living,
			yard,
			street,
			above,
			Surface{ID: "F", Name: "floor F", Kind: Floor, Width: s.width, Height: s.depth, BuildUp: "slab"},
		),
		BuildUps: []BuildUp{inside, sandwich, outside, ceiling, slab},
		Shelf: listOf(
			Shelf{Board: s.heavy, Stock: "20"},
			Shelf{Board: s.light, Weight: s.lightTag, Plenty: true},
			Shelf{Board: s.wood, Weight: s.woodTag, Stock: "9", Owned: "2"},
		),
		Notes: "An example: the tags, the prices and the rating of the clips are invented.",
	})
}

// Roomed returns a plan's first wall as wall A of a whole room: three more walls
// of its build-up, a ceiling under joists with the same boards on its room side,
// a slab. Sizes that the wall does not have are the region's example; who is
// beyond the other faces is for its owner to say. A room stays as it is.
func Roomed(p Plan) Plan {
	if len(p.Surfaces) != 1 {
		return p
	}
	s := p.Region.set()
	a := p.Surfaces[0]
	or := func(q, other unit.Quantity) unit.Quantity {
		if q == "" {
			return other
		}
		return q
	}
	if p.Name == First(p.Region).Name {
		p.Name = "A room"
	}
	room := Room{}
	if p.Room != nil {
		room = *p.Room
	}
	width, depth, height := or(room.Length, or(a.Width, s.width)), or(room.Width, s.depth), or(room.Height, or(a.Height, s.height))
	var own BuildUp
	for _, b := range p.BuildUps {
		if b.ID == a.BuildUp {
			own = b
		}
	}
	near := Leaf{Layers: layersOf(s.heavy, s.heavy)}
	if len(own.Leaves) > 1 {
		near = Leaf{Layers: append([]Layer(nil), own.Leaves[0].Layers...)}
		for i := range near.Layers {
			near.Layers[i].There = false
		}
	}
	over := s.onClips()
	over.Rows = s.ceilingRows
	a.Name, a.Kind, a.Side, a.Width, a.Height, a.Area = "wall A", Wall, 1, width, height, ""
	wall := func(letter string, side int, width unit.Quantity) Surface {
		return Surface{ID: letter, Name: "wall " + letter, Kind: Wall, Side: side, Width: width, Height: height, BuildUp: a.BuildUp}
	}
	p.Surfaces = listOf(a, wall("B", 3, width), wall("C", 2, depth), wall("D", 4, depth),
		Surface{ID: "E", Name: "ceiling E", Kind: Ceiling, Width: width, Height: depth, BuildUp: "joists"},
		Surface{ID: "F", Name: "floor F", Kind: Floor, Width: width, Height: depth, BuildUp: "slab"})
	p.BuildUps = append(append([]BuildUp(nil), p.BuildUps...),
		BuildUp{
			ID:     "joists",
			Leaves: []Leaf{near, {Layers: there(layersOf(s.deck))}},
			Gaps:   listOf(Gap{Frame: s.joist, Fill: s.joistFill, Near: over, Far: screwed(), There: true}),
		},
		BuildUp{ID: "slab", Leaves: []Leaf{{Layers: there(layersOf("xx_concrete_150"))}}})
	return Renumbered(p)
}
