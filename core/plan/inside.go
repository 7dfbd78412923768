package plan

import (
	"fmt"
	"slices"

	"twoleaf/core/unit"
)

// octaves are the octaves that levels and losses are typed in, 63 to 4000 Hz.
const octaves = 7

// Unread stands in a row of octaves for one that was left empty.
const Unread = -1

// Inside is the room of a plan in SI: what Resolve is for one surface's
// build-up, this is for everything around it. What was not said is 0.
type Inside struct {
	Length, Width, Height unit.Length
	Soft                  Soft
	People                int
	Minutes, Watts        float64
	Air                   float64 // m³/s
	AirSaid, Fuel         bool
	Faces                 []Face // in the order of the plan's surfaces
	Spaces                []Beyond
	Playing               []Sounding
	Measured              []Reading
	Buying                Purchase
}

// Face is one surface as a rectangle.
type Face struct {
	Surface       Surface
	Side          int // of a wall, 1 to 4; 0: none said and more than four walls
	Width, Height unit.Length
	Area          unit.Area
	Openings      []Hole
	FlankLoss     int // dB; 0: not typed
	Hung          []Hanging
	Clips         []Point // added by hand
	Span          unit.Length
	Dead          unit.SurfaceMass
	DeadSaid      bool
}

// Face returns the face of a surface, empty if there is none.
func (in *Inside) Face(surface string) Face {
	for _, f := range in.Faces {
		if f.Surface.ID == surface {
			return f
		}
	}
	return Face{}
}

// Hole is an opening in SI; CrackSaid tells a crack of 0 from none said.
type Hole struct {
	Opening       Opening
	Width, Height unit.Length
	Count         int
	X, Y          unit.Length
	Placed        bool // X and Y are typed
	Crack, Run    unit.Length
	CrackSaid     bool
	Rating        int
	Octaves       []float64 // empty, or seven
}

// Hanging is a thing hung in SI.
type Hanging struct {
	Hung Hung
	X, Y unit.Length
	Mass unit.Mass
}

// Point is a place on a face.
type Point struct{ X, Y unit.Length }

// Beyond is a space in SI.
type Beyond struct {
	Space      Space
	Area       unit.Area
	Height     unit.Length
	Background float64 // dBA; 0: not said
	Noise      []Sounding
}

// Sounding is one thing that sounds; Level is 0 where it has its own.
type Sounding struct {
	Source string
	Level  float64
}

// Reading is a measurement; a level of 0 was not read, an octave of Unread neither.
type Reading struct {
	Measured             Measured
	InA, InC, OutA, OutC float64
	In, Out              []float64
}

// Purchase is what the list is made with, in SI and shares of one.
type Purchase struct {
	Tax, Contingency                        float64
	Budget                                  float64
	Payload, Roof                           unit.Mass
	People                                  int
	DoorWidth, DoorHeight, Corridor, Beyond unit.Length
	Stair                                   bool
	Costs                                   map[string]unit.Money
}

// Ranges of what is typed of a room (our own choice, see range.go).
var (
	openRange    = between("0.0625 in", "30 ft", "1 mm", "9000 mm")
	placeRange   = between("0 in", "100 ft", "0 mm", "30000 mm")
	crackRange   = between("0 in", "4 in", "0 mm", "100 mm")
	runRange     = between("0 in", "60 ft", "0 mm", "20000 mm")
	hungRange    = between("0.1 lb", "1000 lb", "0.05 kg", "450 kg")
	lossRange    = same("1", "90")
	spaceRange   = between("10 ft2", "20000 ft2", "1 m2", "2000 m2")
	readRange    = same("10", "140")
	groundRange  = same("10", "80")
	peopleRange  = same("1", "100")
	minutesRange = same("1", "1440")
	wattsRange   = same("0", "100000")
	airRange     = between("0 cfm", "5000 cfm", "0 L/s", "2500 L/s")
	taxRange     = same("0 %", "50 %")
	loadRange    = between("50 lb", "20000 lb", "20 kg", "10000 kg")
	wayRange     = between("12 in", "30 ft", "300 mm", "9000 mm")
	budgetRange  = same("0", "1000000") // of any currency
	deadRange    = between("0 psf", "200 psf", "0 kg/m2", "1000 kg/m2")
)

// inside reads the fields of one place.
type inside struct {
	at     place
	faults *[]*Fault
}

func (r inside) take(field string, q unit.Quantity, kind unit.Kind, l limits, zero bool) (float64, bool) {
	return r.at.read(r.faults, field, q, kind, l, zero)
}

func (r inside) length(field string, q unit.Quantity, l limits) unit.Length {
	v, _ := r.take(field, q, unit.OfLength, l, l.low[0][0] == '0' && l.low[1][:2] == "0 ")
	return unit.Length(v)
}

func (r inside) number(field string, q unit.Quantity, l limits) float64 {
	v, _ := r.take(field, q, unit.OfCount, l, l.low[0] == "0")
	return v
}

func (r inside) row(field string, list []unit.Quantity, l limits) []float64 {
	some := false
	out := make([]float64, octaves)
	for i := range out {
		out[i] = Unread
		if i < len(list) && list[i] != "" {
			if v, ok := r.take(field, list[i], unit.OfCount, l, false); ok {
				out[i], some = v, true
			}
		}
	}
	if !some {
		return nil
	}
	return out
}

// ResolveRoom returns the room of a plan in SI and what is wrong in it, each
// fault at its field. What is wrong is left out of the result, so that the rest
// keeps computing.
func ResolveRoom(p Plan) (Inside, []*Fault) {
	var faults []*Fault
	in := Inside{}
	whole := inside{place{f: Fault{Leaf: -1}, words: "the room"}, &faults}
	if r := p.Room; r != nil {
		in.Length = whole.length("length", r.Length, wallRange)
		in.Width = whole.length("width", r.Width, wallRange)
		in.Height = whole.length("height", r.Height, wallRange)
		in.Soft, in.Fuel = r.Soft, r.Fuel
		in.People = int(whole.number("people", r.People, peopleRange))
		in.Minutes = whole.number("minutes", r.Minutes, minutesRange)
		in.Watts = whole.number("watts", r.Watts, wattsRange)
		in.Air, in.AirSaid = whole.take("air", r.Air, unit.OfFlow, airRange, true)
		if !slices.Contains([]Soft{Furnished, Bare, Treated}, r.Soft) {
			faults = append(faults, whole.at.unknown("soft", string(r.Soft)))
		}
	}
	if p.Source != "" {
		in.Playing = append(in.Playing, whole.sounding(Playing{p.Source, p.Level}))
	}
	for _, s := range p.Also {
		in.Playing = append(in.Playing, whole.sounding(s))
	}
	walls := 0
	for _, s := range p.Surfaces {
		if s.Kind == Wall {
			walls++
		}
		in.Faces = append(in.Faces, in.face(s, walls, &faults))
	}
	in.close()
	for i := range in.Faces {
		in.Faces[i].holes(&faults)
	}
	for _, s := range p.Spaces {
		in.Spaces = append(in.Spaces, beyond(s, &faults))
	}
	for _, m := range p.Measured {
		r := inside{place{f: Fault{Leaf: -1, Item: m.Beyond}, words: "measured in " + clip(m.Beyond)}, &faults}
		in.Measured = append(in.Measured, Reading{
			Measured: m, InA: r.number("inA", m.InA, readRange), InC: r.number("inC", m.InC, readRange),
			OutA: r.number("outA", m.OutA, readRange), OutC: r.number("outC", m.OutC, readRange),
			In: r.row("in", m.In, readRange), Out: r.row("out", m.Out, readRange),
		})
	}
	in.Buying = purchase(p, &faults)
	return in, faults
}

func (r inside) sounding(s Playing) Sounding {
	return Sounding{s.Source, r.number("level", s.Level, levelRange)}
}

// face reads a surface; nth is the number of a wall in their order.
func (in *Inside) face(s Surface, nth int, faults *[]*Fault) Face {
	r := inside{place{f: Fault{Leaf: -1, Surface: s.ID}, words: nameOf(s)}, faults}
	f := Face{Surface: s, Side: s.Side, FlankLoss: int(r.number("flankLoss", s.FlankLoss, lossRange))}
	if s.Side < 0 || s.Side > 4 {
		*faults = append(*faults, r.at.unknown("side", fmt.Sprint(s.Side)))
		f.Side = 0
	}
	if s.Kind == Wall && f.Side == 0 && nth <= 4 {
		f.Side = nth
	}
	f.Width = r.length("width", s.Width, wallRange)
	f.Height = r.length("height", s.Height, wallRange)
	if a, ok := r.take("area", s.Area, unit.OfArea, faceRange, false); ok {
		f.Area = unit.Area(a)
	}
	for _, h := range s.Hung {
		r := r
		r.at.f.Item, r.at.words = h.ID, r.at.words+", "+called(h.Name, "thing hung")
		f.Hung = append(f.Hung, Hanging{
			Hung: h, X: r.length("x", h.X, placeRange), Y: r.length("y", h.Y, placeRange),
			Mass: unit.Mass(first(r.take("mass", h.Mass, unit.OfMass, hungRange, false))),
		})
	}
	for _, c := range s.Clips {
		f.Clips = append(f.Clips, Point{r.length("x", c.X, placeRange), r.length("y", c.Y, placeRange)})
	}
	if j := s.Joists; j != nil {
		f.Span = r.length("span", j.Span, wallRange)
		v, ok := r.take("dead", j.Dead, unit.OfSurfaceMass, deadRange, true)
		f.Dead, f.DeadSaid = unit.SurfaceMass(v), ok
	}
	return f
}

func called(name, otherwise string) string {
	if name == "" {
		return otherwise
	}
	return clip(name)
}

// close gives the room the sizes that only its faces say, and the faces those
// that only the room says.
func (in *Inside) close() {
	for _, f := range in.Faces {
		switch {
		case f.Surface.Kind != Wall:
			in.Length, in.Width = or(in.Length, f.Width), or(in.Width, f.Height)
		case f.Side == 1 || f.Side == 3:
			in.Length, in.Height = or(in.Length, in.along(f.Side)), or(in.Height, f.Height)
		default:
			in.Width, in.Height = or(in.Width, in.along(f.Side)), or(in.Height, f.Height)
		}
	}
	for i := range in.Faces {
		f := &in.Faces[i]
		switch {
		case f.Surface.Kind != Wall:
			f.Width, f.Height = or(f.Width, in.Length), or(f.Height, in.Width)
		case f.Side == 1 || f.Side == 3:
			f.Width, f.Height = or(f.Width, in.rest(f.Side, in.Length)), or(f.Height, in.Height)
		case f.Side != 0:
			f.Width, f.Height = or(f.Width, in.rest(f.Side, in.Width)), or(f.Height, in.Height)
		}
		if f.Area == 0 {
			f.Area = unit.Area(f.Width) * unit.Area(f.Height)
		}
	}
}

func or(a, b unit.Length) unit.Length {
	if a > 0 {
		return a
	}
	return b
}

// along is how wide the walls of a side are together; 0 where one does not say.
func (in *Inside) along(side int) unit.Length {
	sum := unit.Length(0)
	for _, f := range in.Faces {
		if f.Surface.Kind == Wall && f.Side == side {
			if f.Width == 0 {
				return 0
			}
			sum += f.Width
		}
	}
	return sum
}

// rest is what the walls of a side that say their width leave to those that do not.
func (in *Inside) rest(side int, all unit.Length) unit.Length {
	open := unit.Length(0)
	for _, f := range in.Faces {
		if f.Surface.Kind == Wall && f.Side == side {
			if all -= f.Width; f.Width == 0 {
				open++
			}
		}
	}
	if all <= 0 || open == 0 {
		return 0
	}
	return all / open
}

// holes reads the openings of a face.
func (f *Face) holes(faults *[]*Fault) {
	for _, o := range f.Surface.Openings {
		r := inside{place{f: Fault{Leaf: -1, Surface: f.Surface.ID, Item: o.ID}, words: nameOf(f.Surface) + ", " + called(o.Kind, "opening")}, faults}
		before := len(*faults)
		h := Hole{
			Opening: o, Width: r.length("width", o.Width, openRange), Height: r.length("height", o.Height, openRange),
			Count: max(1, int(r.number("count", o.Count, piecesRange))),
			X:     r.length("x", o.X, placeRange), Y: r.length("y", o.Y, placeRange), Placed: o.X != "" && o.Y != "",
			Crack: r.length("crack", o.Crack, crackRange), CrackSaid: o.Crack != "", Run: r.length("run", o.Run, runRange),
			Rating: int(r.number("rating", o.Rating, lossRange)), Octaves: r.row("octaves", o.Octaves, lossRange),
		}
		if len(*faults) == before {
			f.Openings = append(f.Openings, h)
		}
	}
}

func beyond(s Space, faults *[]*Fault) Beyond {
	r := inside{place{f: Fault{Leaf: -1, Item: s.Name}, words: clip(s.Name)}, faults}
	b := Beyond{
		Space: s, Area: unit.Area(first(r.take("area", s.Area, unit.OfArea, spaceRange, false))),
		Height: r.length("height", s.Height, wallRange), Background: r.number("background", s.Background, groundRange),
	}
	for _, n := range s.Noise {
		b.Noise = append(b.Noise, r.sounding(n))
	}
	return b
}

func purchase(p Plan, faults *[]*Fault) Purchase {
	out := Purchase{Costs: map[string]unit.Money{}}
	b := p.Buying
	if b == nil {
		return out
	}
	r := inside{place{f: Fault{Leaf: -1}, words: "the list"}, faults}
	out.Tax, _ = r.take("tax", b.Tax, unit.OfPercent, taxRange, true)
	out.Contingency, _ = r.take("contingency", b.Contingency, unit.OfPercent, taxRange, true)
	out.Budget, _ = r.take("budget", b.Budget, unit.OfMoney, budgetRange, true)
	out.Payload = unit.Mass(first(r.take("payload", b.Payload, unit.OfMass, loadRange, false)))
	out.Roof = unit.Mass(first(r.take("roof", b.Roof, unit.OfMass, loadRange, false)))
	out.People = int(r.number("people", b.People, peopleRange))
	out.DoorWidth = r.length("doorWidth", b.DoorWidth, wayRange)
	out.DoorHeight = r.length("doorHeight", b.DoorHeight, wayRange)
	out.Corridor = r.length("corridor", b.Corridor, wayRange)
	out.Beyond = r.length("beyond", b.Beyond, wayRange)
	out.Stair = b.Stair
	for _, c := range b.Costs {
		if v, ok := r.take("price", c.Price, unit.OfMoney, priceRange, true); ok {
			out.Costs[c.Item] = unit.Money(v)
		}
	}
	return out
}

// RoomProblem is what the room finds wrong when it is put together, in its own
// terms: a code, ids, the field as the room names it, numbers in SI.
type RoomProblem struct {
	Code, Surface, Opening, Space, Field, Typed string
	Value, Limit                                float64
}

// roomFields are the room's names of fields that have another here.
var roomFields = map[string]string{
	"TL": "buildUp", "Spread": "buildUp", "Beyond": "beyond", "FlankLoss": "flankLoss", "Volume": "area", "Time": "soft",
	"Background": "background", "Target": "listener", "Listener": "listener", "Source": "source", "Level": "level", "Area": "area",
	"Openings": "openings", "Kind": "opening", "X": "x", "Y": "y", "Octaves": "octaves", "Air": "air", "People": "people", "Minutes": "minutes", "Watts": "watts",
	"Noise": "source", "Playing": "source", "In": "in", "Out": "out",
}

// RoomFault says a problem of the room in the plan's words, at its field.
func RoomFault(p Plan, x RoomProblem) *Fault {
	at := place{f: Fault{Leaf: -1, Surface: x.Surface, Item: x.Opening}, words: "the room"}
	if s, ok := p.SurfaceByID(x.Surface); ok && x.Surface != "" {
		at.words = nameOf(s)
		for _, o := range s.Openings {
			if o.ID == x.Opening {
				at.words += ", " + called(o.Kind, "opening")
			}
		}
	}
	if x.Space != "" {
		at.f.Item, at.words = x.Space, clip(x.Space)
	}
	field := roomFields[x.Field]
	if field == "" && x.Field != "" {
		field = string(x.Field[0]|0x20) + x.Field[1:]
	}
	number := func(v float64) string {
		switch field {
		case "width", "height", "crack", "run", "depth", "x", "y", "length":
			return p.lengthWords(v)
		case "area", "openings":
			if p.Units == Customary {
				return fmt.Sprintf("%.3g ft²", v/float64(unit.SquareFoot))
			}
			return fmt.Sprintf("%.3g m²", v)
		}
		return fmt.Sprintf("%.4g", v)
	}
	what := ""
	switch x.Code {
	case "largerThanWall":
		what = fmt.Sprintf("%s is %s, the surface has %s", word(field), number(x.Value), number(x.Limit))
	case "overfull":
		if field == "width" {
			what = fmt.Sprintf("the walls on its side are %s long together, the side %s", number(x.Value), number(x.Limit))
			break
		}
		field = "openings"
		what = fmt.Sprintf("the openings take %s together, the surface has %s", number(x.Value), number(x.Limit))
	case "overlap":
		what = "it lies over another opening"
	case "gaps":
		what = fmt.Sprintf("the octave of %.0f Hz is missing; all from 63 to 4000 Hz are needed, or none", x.Value)
	case "belowBackground":
		what = fmt.Sprintf("%.0f dB is wanted, but the background is %.0f dB: quieter than that is not heard", x.Value, x.Limit)
	case "unknown":
		return at.unknown(field, x.Typed)
	case "zero":
		what = word(field) + " is 0"
	case "negative":
		what = word(field) + " is less than nothing"
	case "small", "large":
		what = fmt.Sprintf("%s is %s; the limit is %s", word(field), number(x.Value), number(x.Limit))
	default:
		what = word(field) + " is not a number"
	}
	f := at.fault(x.Code, field, x.Typed, what)
	if x.Limit != 0 {
		f.High = number(x.Limit)
	}
	return f
}
