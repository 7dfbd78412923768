package core

import (
	"slices"
	"sort"
	"strconv"

	"twoleaf/core/assembly"
	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/takeoff"
	"twoleaf/core/unit"
)

// shopping is a plan on its way to its list: the job of cutting it, and what
// else it holds.
type shopping struct {
	plan   plan.Plan
	inside plan.Inside
	job    takeoff.Job
	goods  takeoff.Goods
	price  prices
	fill   string // whose price the batts have
	faces  []CutFace
	boards map[string]plan.Here
	above  map[string]bool // boards that hang on a ceiling
	origin map[string]Origin
	faults []*plan.Fault
}

// newShopping draws up the job of a plan: every leaf with new boards is a face,
// every new board of it a layer, the one on the frame first.
func newShopping(p plan.Plan) *shopping {
	s := &shopping{plan: p, boards: map[string]plan.Here{}, above: map[string]bool{}, origin: map[string]Origin{}}
	s.inside, s.faults = plan.ResolveRoom(p)
	s.price = pricesOf(p, s.inside)
	s.goods.Region = string(p.Region)
	s.goods.Prices = map[string]takeoff.Price{}
	for _, f := range s.inside.Faces {
		here, faults := plan.Resolve(p, f.Surface.ID)
		if len(faults) > 0 || f.Width <= 0 || f.Height <= 0 {
			continue
		}
		for leaf := range here.Assembly.Leaves {
			s.leaf(f, here, leaf)
		}
		for _, g := range here.Assembly.Gaps {
			if g.Fill.ID != "" && !g.FillThere {
				s.goods.Batts += f.Area
				// All fills are one line: the first that has a price gives it.
				if _, priced := s.price.fill(s.fill); s.fill == "" || !priced {
					s.fill = g.Fill.ID
				}
			}
		}
		s.goods.Mounts += len(f.Hung)
	}
	s.meet()
	for id, h := range s.boards {
		s.sold(id, h)
	}
	sort.Slice(s.job.Boards, func(i, j int) bool { return s.job.Boards[i].ID < s.job.Boards[j].ID })
	return s
}

// name is how a leaf's face is called among the faces of a job.
func faceID(surface string, leaf int) string {
	if leaf == 0 {
		return surface
	}
	return surface + "." + strconv.Itoa(leaf)
}

// leaf adds the new boards of one leaf.
func (s *shopping) leaf(f plan.Face, here plan.Resolved, leaf int) {
	l := here.Assembly.Leaves[leaf]
	screws := takeoff.Screws(here.Assembly, leaf, string(s.plan.Region))
	gap, near, fixed := here.Assembly.Fixed(leaf)
	n := len(l.Layers)
	id := faceID(f.Surface.ID, leaf)
	var held assembly.Held
	if fixed {
		held = here.Assembly.Gaps[gap].Held(near)
	}
	resilient := held.Grid.Rows > 0
	order := 0
	for k := range n {
		i := k
		if near || !fixed {
			i = n - 1 - k // the last of them lies on the frame
		}
		y := l.Layers[i]
		if y.There || y.Board.Kind.Masonry() {
			continue
		}
		h := here.Boards[y.Board.ID]
		s.boards[y.Board.ID] = h
		s.above[y.Board.ID] = s.above[y.Board.ID] || f.Surface.Kind == plan.Ceiling
		s.job.Layers = append(s.job.Layers, takeoff.Layer{Face: id, Layer: order, Board: y.Board.ID, Base: order > 0})
		s.goods.Screws = append(s.goods.Screws, takeoff.Fixed{Face: id, Layer: order, Length: screws[i].Length, Kind: y.Board.Kind, OnChannel: resilient, Typed: held.Screws})
		// The film lies between this layer and the one that is hung over it.
		film := y.Join
		if near || !fixed {
			film = ""
			if i > 0 {
				film = l.Layers[i-1].Join
			}
		}
		if film == "film" {
			s.goods.Film = append(s.goods.Film, takeoff.Layer{Face: id, Layer: order})
		}
		order++
	}
	if order == 0 {
		return
	}
	face := takeoff.Face{ID: id, Place: takeoff.Place(f.Surface.Kind), Width: f.Width, Height: f.Height}
	for _, h := range holes(f) {
		kind := ""
		switch h.kind.Group {
		case room.Door:
			kind = "door"
			if h.kind.ID == "hatch" {
				kind = "hatch"
			}
		case room.Window:
			kind = "window"
		case room.Duct, room.Lamp:
			kind = "duct"
		case room.Box:
			kind = "box"
		case room.Pipe, room.HoleKind:
			kind = "pipe"
		default:
			continue
		}
		x := h.X
		if leaf > 0 && f.Surface.Kind == plan.Wall {
			x = f.Width - h.X - h.Width // seen from the other side
		}
		for n := range h.count {
			at := x + unit.Length(n)*(h.Width+0.3)
			if at+h.Width > f.Width {
				break
			}
			face.Openings = append(face.Openings, takeoff.Opening{ID: h.id, Kind: kind, Rect: takeoff.Rect{X: at, Y: h.Y, W: h.Width, H: h.Height}})
		}
	}
	if fixed {
		g := here.Assembly.Gaps[gap]
		frame := frameOf(f, g.Spacing)
		face.Framing = takeoff.Framing{Upright: !frame.AlongX, First: frame.First, Spacing: g.Spacing, Width: g.Frame.Width, Free: g.Spacing == 0}
		if resilient {
			s.rows(f, here, leaf, gap, &face)
		}
	} else {
		face.Framing.Free = true
	}
	name := f.Surface.Name
	s.job.Faces = append(s.job.Faces, face)
	cut := CutFace{ID: id, Surface: f.Surface.ID, Leaf: leaf, Name: name, Width: float64(f.Width), Height: float64(f.Height), Openings: face.Openings, Upright: face.Framing.Upright}
	for _, at := range face.Framing.At {
		cut.Lines = append(cut.Lines, float64(at))
	}
	if len(cut.Lines) == 0 && face.Framing.Spacing > 0 {
		along := f.Width
		if !face.Framing.Upright {
			along = f.Height
		}
		for at := face.Framing.First; at <= along; at += face.Framing.Spacing {
			cut.Lines = append(cut.Lines, float64(at))
		}
	}
	s.faces = append(s.faces, cut)
}

// rows puts the rows of channel of a leaf in the place of the studs, and on the list.
func (s *shopping) rows(f plan.Face, here plan.Resolved, leaf, gap int, face *takeoff.Face) {
	here.Leaf = leaf
	c, ok := clipsOf(s.plan, here, s.inside)
	if !ok { // channel without clips: rows by its grid
		grid := here.Assembly.Gaps[gap].Held(true).Grid
		if grid.Rows == 0 {
			grid = here.Assembly.Gaps[gap].Held(false).Grid
		}
		face.Framing = takeoff.Framing{Upright: !face.Framing.Upright, Spacing: grid.Rows, First: 0}
		long, across := f.Width, f.Height
		if face.Framing.Upright {
			long, across = across, long
		}
		for n := 0; unit.Length(n)*grid.Rows < across+grid.Rows-1e-9; n++ {
			s.goods.Rows = append(s.goods.Rows, long)
		}
		return
	}
	l, fault := c.lay()
	if fault != nil {
		return
	}
	face.Framing = takeoff.Framing{Upright: !l.AlongX}
	for _, r := range l.Rows {
		if !slices.Contains(face.Framing.At, r.At) {
			face.Framing.At = append(face.Framing.At, r.At)
		}
		s.goods.Rows = append(s.goods.Rows, r.To-r.From)
	}
	at := face.Framing.At
	sort.Slice(at, func(i, j int) bool { return at[i] < at[j] })
	s.goods.Clips += len(l.Spots)
}

// meet says which faces meet at their edges: walls in their order around the
// room, seen from inside, the ceiling over and the floor under them.
func (s *shopping) meet() {
	at := map[string]*takeoff.Face{}
	for i := range s.job.Faces {
		at[s.job.Faces[i].ID] = &s.job.Faces[i]
	}
	var side [5][]string
	head, foot := "", ""
	for _, f := range s.inside.Faces {
		switch f.Surface.Kind {
		case plan.Wall:
			side[f.Side] = append(side[f.Side], f.Surface.ID)
		case plan.Ceiling:
			if at[f.Surface.ID] != nil && head == "" {
				head = f.Surface.ID
			}
		default:
			if at[f.Surface.ID] != nil && foot == "" {
				foot = f.Surface.ID
			}
		}
	}
	one := func(n int) string {
		if len(side[n]) == 1 && at[side[n][0]] != nil {
			return side[n][0]
		}
		return ""
	}
	if len(side[0]) > 0 {
		return
	}
	for n := 1; n <= 4; n++ {
		w := at[one(n)]
		if w == nil {
			continue
		}
		w.Right, w.Left, w.Head, w.Foot = one(n%4+1), one((n+2)%4+1), head, foot
	}
	for _, id := range []string{head, foot} {
		if f := at[id]; f != nil {
			f.Foot, f.Right, f.Head, f.Left = one(1), one(2), one(3), one(4)
		}
	}
}

// sold is a board as the shelf has it.
func (s *shopping) sold(id string, h plan.Here) {
	b := h.Board
	out := takeoff.Sold{ID: id, Thickness: b.Thickness, Grain: b.Kind.Wood(), Owned: h.Owned}
	if b.Kind.Wood() {
		out.Kerf = 3 * unit.Millimetre // of a circular saw (common practice)
	}
	if len(b.Sheets) > 0 {
		out.Width, out.Length = b.Sheets[0].Width, b.Sheets[0].Length
		for _, o := range b.Sheets[1:] {
			if o.Width == out.Width && o.Length > 0 && o.Length != out.Length {
				out.Lengths = append(out.Lengths, o.Length)
			}
		}
	}
	if m, ok := h.Weight(); ok {
		out.Mass = m
	}
	s.job.Boards = append(s.job.Boards, out)
	price, from, ok := s.price.sheet(h)
	s.put(takeoff.Item{Code: takeoff.ItemSheets, Of: id}, price, from, ok)
}

// items is the list of a cut with its prices. Items come by size, so that their
// keys are known only from a list without.
func (s *shopping) items(cut takeoff.Cut) []takeoff.Item {
	for _, i := range takeoff.Items(s.job, cut, s.goods) {
		row, pack := rowOf(i.Code), 1.0
		switch i.Code {
		case takeoff.ItemSheets:
			continue // they have theirs already
		case takeoff.ItemBatts:
			row, pack = s.fill, battCover
		}
		price, from, ok := s.price.one(i.Key(), row, pack)
		s.put(i, price, from, ok)
	}
	return takeoff.Items(s.job, cut, s.goods)
}

// put sets the price of an item that has one.
func (s *shopping) put(i takeoff.Item, each unit.Money, from Origin, ok bool) {
	if ok {
		s.goods.Prices[i.Key()], s.origin[i.Key()] = takeoff.Price{Each: each, Has: true}, from
	}
}

func (s *shopping) names() map[string]BoardName {
	out := map[string]BoardName{}
	for id, h := range s.boards {
		n := BoardName{Short: h.Board.Short, Row: h.Board.Row, Brief: h.Board.Brief, Nominal: h.Board.Nominal, Kind: string(h.Board.Kind)}
		if sizes := sizeTexts(h.Board); len(sizes) > 0 {
			n.Sheet = sizes[0]
		}
		out[id] = n
	}
	return out
}

// livingFloor is the live load that floors of living rooms are made for: 40 psf
// in the US and Canada (IRC-JOISTS), 2.0 kPa elsewhere at most (EN 1991-1-1, from memory).
const livingFloor = 40 * unit.Pressure(unit.PoundPerSquareFoot*unit.StandardGravity)

// list tells everything to buy, by one try of the cut layout; got are the keys ticked.
func (s *shopping) list(try int, got []string) *ListReport {
	cut := takeoff.Prepare(s.job).Cut(try, try+1)
	items := s.items(cut)
	ticked := map[string]bool{}
	for _, key := range got {
		ticked[key] = true
	}
	b := s.inside.Buying
	out := &ListReport{
		Try: try, Items: []ItemReport{}, Bill: takeoff.BillOf(items, b.Contingency, b.Tax, ticked), Totals: cut.Totals, Notes: cut.Notes,
		Lifts: []LiftReport{}, Way: []WayReport{}, Forgot: takeoff.Forgotten(s.job, cut, s.goods), Steps: takeoff.Order(s.job, cut, s.goods),
		Faces: s.faces, Names: s.names(),
	}
	for _, f := range s.faults {
		if f.Surface == "" && f.Item == "" {
			out.Faults = append(out.Faults, f)
		}
	}
	mass := unit.Mass(0)
	way := s.way()
	for _, i := range items {
		r := ItemReport{Key: i.Key(), Item: i, Origin: s.origin[i.Key()]}
		if h, ok := s.boards[i.Of]; ok && i.Code == takeoff.ItemSheets {
			out.Sheets += i.Buy
			if h.StockSaid && !h.Plenty {
				r.Lacking = max(0, i.Buy-h.Stock)
			}
		}
		out.Items = append(out.Items, r)
	}
	for _, t := range cut.Totals {
		mass += t.Mass
		n := slices.IndexFunc(s.job.Boards, func(x takeoff.Sold) bool { return x.ID == t.Board })
		if n < 0 {
			continue
		}
		x := s.job.Boards[n]
		if x.Mass > 0 {
			out.Lifts = append(out.Lifts, LiftReport{
				Board: x.ID, Mass: value(x.Mass, kindMass, ""), Wall: takeoff.Carry(x.Mass, false), Over: takeoff.Carry(x.Mass, true), Above: s.above[x.ID],
				Stack: takeoff.Stack(livingFloor, x.Mass, unit.Area(x.Width*x.Length)),
			})
		}
		if notes := takeoff.Blocked(x.Length, x.Width, x.Thickness, way); len(notes) > 0 {
			out.Way = append(out.Way, s.around(x, notes, way))
		}
	}
	out.Mass = value(mass, kindMass, "")
	out.Trips, out.Cargo = takeoff.Trips(takeoff.ToCarry(s.job, cut), takeoff.Vehicle{Payload: payload(b)})
	return out
}

// payload is what one trip carries; the roof, where it is typed, is what lies flat on it.
func payload(b plan.Purchase) unit.Mass {
	if b.Roof > 0 && (b.Payload == 0 || b.Roof < b.Payload) {
		return b.Roof
	}
	return b.Payload
}

// way is the narrowest of the way in: a door, a corridor with a turn, a stair.
func (s *shopping) way() (way []takeoff.Passage) {
	b := s.inside.Buying
	if b.DoorWidth > 0 {
		way = append(way, takeoff.Passage{In: b.DoorWidth, Height: b.DoorHeight})
	}
	if b.Corridor > 0 {
		way = append(way, takeoff.Passage{In: b.Corridor, Out: usually(b.Beyond, b.Corridor), Height: b.DoorHeight})
	}
	if b.Stair {
		// Headroom of 6 ft 8 in, rise 7¾ over going 10 in (IRC R311.7, from memory).
		way = append(way, takeoff.Passage{In: usually(b.Corridor, 36*unit.Inch), Height: 80 * unit.Inch, Slope: 7.75 / 10})
	}
	return way
}

func (s *shopping) around(x takeoff.Sold, notes []takeoff.Note, way []takeoff.Passage) WayReport {
	out := WayReport{Board: x.ID, Notes: notes}
	sizes := [][2]unit.Length{{x.Width, x.Length}}
	for _, l := range x.Lengths {
		sizes = append(sizes, [2]unit.Length{x.Width, l})
	}
	size, found, cut := takeoff.Through(sizes, x.Thickness, way)
	if found {
		out.Fits = &SizeReport{value(size[0], kindLength, ""), value(size[1], kindLength, "")}
	}
	if cut > 0 {
		out.Cut = value(cut, kindLength, "")
	}
	return out
}

// cut makes a stretch of tries and returns the better of it and the try that was
// best so far, −1 for none.
func (s *shopping) cut(from, to, best int, other bool) *CutReport {
	p := takeoff.Prepare(s.job)
	c := p.Cut(from, to)
	if best >= 0 {
		c = takeoff.Better(p.Cut(best, best+1), c)
	}
	if to >= takeoff.Tries {
		c = p.Why(c) // once, at the end
	}
	out := &CutReport{Cut: c, Tries: takeoff.Tries, Faces: s.faces, Names: s.names()}
	if other {
		out.Other = map[string][]takeoff.Choice{}
		for _, b := range s.job.Boards {
			if len(b.Lengths) > 0 {
				out.Other[b.ID], _ = takeoff.Other(s.job, b.ID, otherTries)
			}
		}
	}
	return out
}

// otherTries of each other length, so that they are compared alike.
const otherTries = 2
