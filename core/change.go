package core

import (
	"math"
	"slices"
	"strings"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/takeoff"
	"twoleaf/core/transmission"
	"twoleaf/core/unit"
)

// change is one thing that could be done to a room, as an edit of its plan.
type change struct {
	ChangeReport
	surfaces []int // that it changes
	group    string
	make     func(p *plan.Plan)
	// cost is worked out from the plan; false while a price is missing.
	cost   func() (float64, bool)
	builds bool // it changes a build-up, which is to be appraised again
}

// clone is a plan whose lists may be changed without touching p's.
func clone(p plan.Plan) plan.Plan {
	p.Surfaces = slices.Clone(p.Surfaces)
	for i := range p.Surfaces {
		p.Surfaces[i].Openings = slices.Clone(p.Surfaces[i].Openings)
	}
	p.BuildUps = slices.Clone(p.BuildUps)
	for i := range p.BuildUps {
		b := &p.BuildUps[i]
		b.Gaps = slices.Clone(b.Gaps)
		b.Leaves = slices.Clone(b.Leaves)
		for j := range b.Leaves {
			b.Leaves[j].Layers = slices.Clone(b.Leaves[j].Layers)
		}
	}
	return p
}

func (h *house) prices() prices { return pricesOf(h.plan, h.inside) }

// items is the cost of n of what is on no shelf, by its row of the invented list.
func (h *house) items(row string, n float64) func() (float64, bool) {
	return func() (float64, bool) {
		price, ok := h.prices().need(row)
		return price * n, ok
	}
}

// better are the changes of an opening by its kind's group: the seal to go to
// and what it is bought as.
var better = map[room.Group]struct{ code, seal, item string }{
	room.Door:     {"seal", string(room.SealAll), "seal_door"},
	room.Box:      {"pad", string(room.SealPutty), "putty_pad"},
	room.Crack:    {"caulk", string(room.SealShut), "sealant"},
	room.Pipe:     {"caulk", string(room.SealShut), "sealant"},
	room.HoleKind: {"caulk", string(room.SealShut), "sealant"},
	room.Duct:     {"box", string(room.DuctBox), "baffle_box"},
	room.Lamp:     {"boxed", string(room.LampBoxed), "light_box"},
}

// changes lists what could be done, in the order of surfaces: first their
// openings, then their build-ups, each once; before them what parts faces that dip together.
func (h *house) changes(told room.Report) []change {
	out := h.together(told)
	built := map[string]bool{}
	for i := range h.inside.Faces {
		f := &h.inside.Faces[i]
		for _, o := range f.Openings {
			out = append(out, h.openingChanges(i, o)...)
		}
		if id := f.Surface.BuildUp; h.heard[i].ok && !built[id] && f.Surface.Beyond != "" {
			built[id] = true
			out = append(out, h.buildUpChanges(id)...)
		}
		if f.Surface.Flank != "" && f.Surface.Flank != apartFlank && f.FlankLoss == 0 {
			if _, known := room.FlankByID(f.Surface.Flank); known {
				out = append(out, h.on(i, "cut", "", "flank "+f.Surface.ID, func(s *plan.Surface) { s.Flank = apartFlank }, func() (float64, bool) { return 0, false }))
			}
		}
	}
	return out
}

// together lists, for faces whose boards dip at one frequency and let a
// hundredth or more of that octave through, the cheapest other board that parts
// them: on one of them, in the place of the board that dips, of about its weight,
// fire-rated where it is, its dip a third of an octave away or more.
func (h *house) together(told room.Report) []change {
	var out []change
	boards := palette(h.plan)
	for _, t := range told.Together {
		if t.Share < worthParting {
			continue
		}
		best, least := change{}, math.Inf(1)
		done := map[string]bool{}
		for _, i := range t.Faces {
			id := h.inside.Faces[i].Surface.BuildUp
			if !h.heard[i].ok || done[id] {
				continue
			}
			done[id] = true
			here := h.heard[i].here
			for k, y := range here.Assembly.Leaves[0].Layers {
				if y.There || math.Abs(math.Log2(transmission.Critical(y.Board)/t.Hz)) > aThird {
					continue
				}
				for _, b := range boards {
					hz := transmission.Critical(b)
					if b.ID == y.Board.ID || y.Board.FireRated && !b.FireRated || b.Kind.Wood() != y.Board.Kind.Wood() ||
						math.Abs(math.Log2(hz/t.Hz)) < aThird || math.Abs(math.Log2(float64(b.Mass/y.Board.Mass))) > aboutAsHeavy {
						continue
					}
					local, faults := plan.BoardHere(h.plan, b.ID)
					c := h.inPlace(id, k, b)
					rate, priced := h.prices().board(local)
					cost := rate * c.area * (1 + here.Waste)
					if len(faults) == 0 && priced && cost < least {
						best, least = c.change, cost
						best.cost = func() (float64, bool) { return cost, true }
					}
				}
			}
		}
		if best.make != nil {
			out = append(out, best)
		}
	}
	return out
}

const (
	worthParting = 0.01    // of what gets out in the octave (our own choice)
	aThird       = 1.0 / 3 // of an octave
	aboutAsHeavy = 0.5     // octaves of mass: between 0.7 and 1.4 times
)

// inPlace is another board in the place of one layer of a build-up's room side,
// and the area of the surfaces that have it.
func (h *house) inPlace(buildUp string, layer int, b material.Board) (c struct {
	change
	area float64
}) {
	n := slices.IndexFunc(h.plan.BuildUps, func(x plan.BuildUp) bool { return x.ID == buildUp })
	for i, f := range h.inside.Faces {
		if f.Surface.BuildUp == buildUp {
			c.surfaces = append(c.surfaces, i)
			c.area += float64(f.Area)
		}
	}
	c.ChangeReport = ChangeReport{
		ID: "apart " + buildUp + " " + b.ID, Code: "apart", Surface: h.inside.Faces[c.surfaces[0]].Surface.ID,
		Text: texts("board", b.ID).and("short", b.Short).and("row", b.Row).and("nominal", b.Nominal),
	}
	c.group, c.builds = "apart "+buildUp, true
	c.make = func(p *plan.Plan) { p.BuildUps[n].Leaves[0].Layers[layer].Board = b.ID }
	return c
}

// apartFlank is the structure that shares nothing.
const apartFlank = "separate"

// on is a change of one surface.
func (h *house) on(i int, code, opening, group string, edit func(s *plan.Surface), cost func() (float64, bool)) change {
	id := h.inside.Faces[i].Surface.ID
	return change{
		ChangeReport: ChangeReport{ID: code + " " + id + " " + opening, Code: code, Surface: id, Opening: opening},
		surfaces:     []int{i}, group: group, cost: cost,
		make: func(p *plan.Plan) {
			for k := range p.Surfaces {
				if p.Surfaces[k].ID == id {
					edit(&p.Surfaces[k])
				}
			}
		},
	}
}

func (h *house) openingChanges(i int, o plan.Hole) []change {
	k, known := room.KindByID(o.Opening.Kind)
	if !known {
		return nil
	}
	seal := o.Opening.Seal
	if seal == "" {
		seal = string(k.Seals[0])
	}
	id := o.Opening.ID
	group := "opening " + h.inside.Faces[i].Surface.ID + " " + id
	var out []change
	add := func(code string, edit func(o *plan.Opening), cost func() (float64, bool)) {
		c := h.on(i, code, id, group, func(s *plan.Surface) {
			for j := range s.Openings {
				if s.Openings[j].ID == id {
					edit(&s.Openings[j])
				}
			}
		}, cost)
		c.Kind = k.ID
		out = append(out, c)
	}
	typed := o.Rating > 0 || len(o.Octaves) > 0
	if b, ok := better[k.Group]; ok && seal != b.seal && offers(k, b.seal) && !closedAs(k, seal, b.seal) {
		n := float64(o.Count)
		item := b.item
		if k.ID == "hatch" {
			item = "hatch_seal"
		}
		if b.code == "caulk" {
			n = max(1, n*float64(o.Width/takeoff.Bead(takeoff.Cartridge, takeoff.UsualBead)))
		}
		add(b.code, func(o *plan.Opening) { o.Seal, o.Crack = b.seal, "" }, h.items(item, n))
	}
	if k.Group == room.Door && k.ID != "hatch" && !strings.HasPrefix(k.ID, "doorTwo") && !typed {
		if k.ID == "doorHollow" {
			add("solidDoor", func(o *plan.Opening) { o.Kind = "doorSolid" }, h.items("door_solid", float64(o.Count)))
		}
		add("secondDoor", func(o *plan.Opening) { o.Kind, o.Seal, o.Crack = "doorTwo", string(room.SealAll), "" }, h.items("door_second", float64(o.Count)))
	}
	if k.ID == "windowSingle" || k.ID == "windowLaminated" || k.ID == "windowUnit" {
		if !typed {
			area := usually(float64(o.Width), k.Width) * usually(float64(o.Height), k.Height) * float64(o.Count)
			add("pane", func(o *plan.Opening) { o.Kind, o.Seal = "windowWide", "" }, h.items("pane", area))
		}
	}
	return out
}

func offers(k room.Kind, seal string) bool {
	return slices.ContainsFunc(k.Seals, func(s room.Seal) bool { return string(s) == seal })
}

// closedAs tells an opening that is closed as well already, or better.
func closedAs(k room.Kind, seal, to string) bool {
	if seal == string(room.SealShut) || seal == string(room.SealLined) || seal == string(room.DuctBoxes) {
		return true
	}
	return seal == to
}

// buildUpChanges are those of one build-up, for all surfaces that have it.
func (h *house) buildUpChanges(id string) []change {
	var surfaces []int
	area := 0.0
	for i, f := range h.inside.Faces {
		if f.Surface.BuildUp == id && h.heard[i].ok {
			surfaces = append(surfaces, i)
			area += float64(f.Area)
		}
	}
	here := h.heard[surfaces[0]].here
	b := here.Assembly
	n := slices.IndexFunc(h.plan.BuildUps, func(x plan.BuildUp) bool { return x.ID == id })
	var out []change
	add := func(code string, edit func(b *plan.BuildUp), cost func() (float64, bool)) *change {
		out = append(out, change{
			ChangeReport: ChangeReport{ID: code + " " + id, Code: code, Surface: h.inside.Faces[surfaces[0]].Surface.ID},
			surfaces:     surfaces, group: code + " " + id, cost: cost, builds: true,
			make: func(p *plan.Plan) { edit(&p.BuildUps[n]) },
		})
		return &out[len(out)-1]
	}
	if len(b.Gaps) == 0 {
		return nil
	}
	region := string(h.plan.Region)
	for i, g := range b.Gaps {
		if g.Fill.ID == "" && float64(g.Depth) >= emptyEnough {
			fill := usualFill(h.plan.Region)
			add("fill", func(b *plan.BuildUp) { b.Gaps[i].Fill, b.Gaps[i].FillDepth, b.Gaps[i].FillThere = fill, "", false }, func() (float64, bool) {
				rate, ok := h.prices().fill(fill)
				return rate * area, ok
			})
			break
		}
	}
	heavy := material.UsualHeavy(region)
	if leaf := b.Leaves[0]; len(leaf.Layers) < assembly.MaxLayers {
		c := add("board", func(b *plan.BuildUp) {
			l := &b.Leaves[0]
			l.Layers = append([]plan.Layer{{ID: freeID(b), Board: heavy.ID}}, l.Layers...)
		}, func() (float64, bool) {
			y, faults := plan.BoardHere(h.plan, heavy.ID)
			rate, ok := h.prices().board(y)
			return rate * area * (1 + here.Waste), len(faults) == 0 && ok
		})
		c.Text = texts("board", heavy.ID).and("short", heavy.Short).and("row", heavy.Row).and("nominal", heavy.Nominal)
		c.Mass = value(heavy.Mass, kindSurfaceMass, "")
		c.Thick = value(heavy.Thickness, kindLength, "")
	}
	g := b.Gaps[0]
	if g.Near.Fixing.Kind == material.Screwed && g.Frame.Kind != material.Double && g.Frame.Kind != material.NoFrame {
		fixing, _ := material.FixingByID("clip")
		add("clips", func(b *plan.BuildUp) {
			b.Gaps[0].Near = plan.Held{Fixing: "clip", Rating: b.Gaps[0].Near.Rating, Screws: b.Gaps[0].Near.Screws}
			for j := range b.Leaves[0].Layers {
				b.Leaves[0].Layers[j].There = false
			}
		}, func() (float64, bool) {
			rows, along := fixing.UsualGrid(region)
			if along == 0 {
				along = g.Spacing
			}
			price := h.prices()
			clip, ok := price.need("clip")
			channel, has := price.need(material.HatChannel)
			boards := 0.0
			for _, y := range b.Leaves[0].Layers {
				if y.There { // it comes off and is bought anew
					rate, priced := price.board(here.Boards[y.Board.ID])
					boards += rate
					ok = ok && priced
				}
			}
			return area*(clip/float64(rows*along)+channel/float64(rows*material.ChannelPiece(region))) + area*boards*(1+here.Waste), ok && has
		}).Thick = value(fixing.StandOff, kindLength, "")
	}
	if two := twoRows[g.Frame.Kind]; two != "" && !b.Horizontal && g.Near.Fixing.Kind == material.Screwed && g.Far.Fixing.Kind == material.Screwed {
		frame := twoRowsLike(region, g.Frame)
		if frame.ID != "" {
			add("frame", func(b *plan.BuildUp) {
				b.Gaps[0].Frame, b.Gaps[0].Depth, b.Gaps[0].FillDepth, b.Gaps[0].Spacing = frame.ID, "", "", ""
			}, h.items("stud_row", area)).Thick = value(frame.Plate-g.Frame.Plate, kindLength, "")
		}
	}
	if len(b.Leaves) > 2 {
		// The inner leaf goes, and with it the smaller of the two gaps beside it.
		add("takeOff", func(b *plan.BuildUp) {
			b.Leaves = append(b.Leaves[:1:1], b.Leaves[2:]...)
			gaps := append([]plan.Gap(nil), b.Gaps[1:]...)
			gaps[0].Near, gaps[0].Depth = b.Gaps[0].Near, ""
			b.Gaps = gaps
			b.Compare.Leaf = min(b.Compare.Leaf, len(b.Leaves)-1)
		}, func() (float64, bool) { return 0, true })
	}
	return out
}

// emptyEnough is a gap that is worth filling, m (common practice: the thinnest batt).
const emptyEnough = 0.025

// twoRows are the frames that a second row of studs may stand beside.
var twoRows = map[material.FrameKind]material.FrameKind{
	material.Wood: material.Double, material.Staggered: material.Double,
}

// twoRowsLike is two rows of studs as deep as a frame's, or the nearest to it.
func twoRowsLike(region string, f material.Frame) (best material.Frame) {
	for _, g := range material.Frames(region) {
		if g.Kind != material.Double || g.Sheet > 0 {
			continue
		}
		if best.ID == "" || apartBy(g.Depth, f.Depth) < apartBy(best.Depth, f.Depth) {
			best = g
		}
	}
	return best
}

func apartBy(a, b unit.Length) unit.Length { return max(a-b, b-a) }

// usualFill is what a region's empty gaps are filled with.
func usualFill(r plan.Region) string { return plan.First(r).BuildUps[0].Gaps[0].Fill }

// freeID is an id that no layer of a build-up has.
func freeID(b *plan.BuildUp) string {
	for n := 1; ; n++ {
		id := "n" + string(rune('0'+n%10)) + strings.Repeat("x", n/10)
		taken := false
		for _, l := range b.Leaves {
			taken = taken || slices.ContainsFunc(l.Layers, func(y plan.Layer) bool { return y.ID == id })
		}
		for _, l := range [][]plan.Layer{b.Compare.Reference} {
			taken = taken || slices.ContainsFunc(l, func(y plan.Layer) bool { return y.ID == id })
		}
		if !taken {
			return id
		}
	}
}
