package plan

import (
	"fmt"
	"strings"

	"twoleaf/core/unit"
)

// words are how a field is called in a sentence.
var words = map[string]string{
	"width": "width", "height": "height", "area": "area", "waste": "waste", "source": "what plays", "level": "its level", "listener": "who is beyond",
	"weight": "weight", "less": "weight without the sheet", "of": "number of sheets in the pallet",
	"price": "price", "sheet": "sheet size", "thickness": "thickness", "mass": "mass per area",
	"stock": "number in stock", "owned": "number owned",
	"depth": "depth", "spacing": "spacing of the frame", "fillDepth": "depth of the fill", "fill": "fill", "frame": "frame",
	"fixing": "fixing", "rows": "distance between rows", "along": "spacing along the row", "rating": "clip rating", "extra": "extra load",
	"layers": "layers", "leaves": "leaves", "gaps": "gaps", "board": "board", "join": "joint",
	"surfaces": "surfaces", "buildUps": "build-ups", "shelf": "shelf", "candidates": "rows side by side", "reference": "reference",
	"id": "id", "name": "name", "beyond": "space beyond", "notes": "notes", "region": "region", "units": "units", "prices": "price list",
	"kind": "kind", "buildUp": "build-up", "format": "format", "leaf": "edited leaf", "per": "what the weight is of", "young": "stiffness",
	"fillDensity": "density of the fill", "shorts": "number of shorts", "screws": "distance between screws",
	"openings": "openings", "hung": "things hung", "clips": "clips added", "spaces": "spaces beyond", "playing": "things that play", "measured": "measurements",
	"costs": "prices of items", "octaves": "octaves", "count": "number", "x": "distance from the left end", "y": "height above the floor",
	"crack": "crack", "run": "lined length", "opening": "opening", "flank": "what is shared", "flankLoss": "loss of what is shared",
	"span": "span of the joists", "grade": "grade of the joists", "dead": "dead load there already", "background": "background",
	"people": "number of people", "minutes": "minutes", "watts": "watts", "air": "fresh air", "soft": "furnishing",
	"inA": "dBA in the room", "inC": "dBC in the room", "outA": "dBA beyond", "outC": "dBC beyond", "in": "level in the room", "out": "level beyond",
	"tax": "tax", "contingency": "contingency", "budget": "budget", "payload": "load of one trip", "roof": "load on the roof",
	"doorWidth": "width of the door", "doorHeight": "height of the door", "corridor": "width of the corridor",
	"first": "distance to the first row", "ends": "distance to the first clip", "side": "side", "seal": "seal",
	"length": "length", "flow": "flow of air", "surfaceMass": "mass per area", "money": "amount", "percent": "percentage",
}

func word(field string) string {
	if w := words[field]; w != "" {
		return w
	}
	return field
}

// place is where a fault is, in ids and in words.
type place struct {
	f     Fault
	words string
}

// fault returns a fault at a place, its words "place: what is wrong".
func (at place) fault(code, field, typed, what string) *Fault {
	f := at.f
	f.Code, f.Field, f.Typed = code, field, clip(typed)
	f.Words = what
	if at.words != "" {
		f.Words = at.words + ": " + what
	}
	return &f
}

// clip keeps a message short whatever was typed.
func clip(s string) string {
	const most = 40
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return string(r[:most]) + "…"
}

// unknown returns a fault for an id that is in no table or list.
func (at place) unknown(field, id string) *Fault {
	if id == "" {
		return at.fault("missing", field, "", word(field)+" is missing")
	}
	return at.fault("unknown", field, id, fmt.Sprintf("%s “%s” is not known", word(field), clip(id)))
}

// tooMany returns a fault for a list that is too long.
func (at place) tooMany(field string, n, most int) *Fault {
	f := at.fault("tooMany", field, fmt.Sprint(n), fmt.Sprintf("%d %s are too many; at most %d", n, word(field), most))
	f.High = fmt.Sprint(most)
	return f
}

// read returns a typed quantity in SI; ok is false for an empty field and for a
// wrong one, which is then added to faults. zero allows 0.
func (at place) read(faults *[]*Fault, field string, q unit.Quantity, kind unit.Kind, l limits, zero bool) (si float64, ok bool) {
	if q == "" {
		return 0, false
	}
	f := at.wrong(field, q, kind, l, zero)
	if f != nil {
		*faults = append(*faults, f)
		return 0, false
	}
	if kind == unit.OfLength && strings.Contains(string(q), "x") {
		return 0, true // a sheet, read by its own method
	}
	_, factor := q.Unit().SI()
	v, _ := q.Value()
	return v * factor, true
}

// wrong returns what is wrong with a typed quantity, nil if nothing is.
func (at place) wrong(field string, q unit.Quantity, kind unit.Kind, l limits, zero bool) *Fault {
	low, high := l.of(q.Unit())
	limited := func(f *Fault) *Fault {
		f.Low, f.High = say(low), say(high)
		return f
	}
	if f := at.malformed(field, q, kind); f != nil {
		return limited(f)
	}
	sheet := strings.Contains(string(q), "x")
	v, _ := q.Value()
	if sheet {
		w, h, _ := q.Sheet()
		v = min(float64(w), float64(h))
	}
	switch {
	case v < 0:
		return limited(at.fault("negative", field, string(q), fmt.Sprintf("%s is %s, less than nothing", word(field), say(q))))
	case v == 0 && !zero:
		return limited(at.fault("zero", field, string(q), word(field)+" is 0"))
	case v == 0:
		return nil
	}
	err := unit.Check(q, low, high)
	if err == nil {
		return nil
	}
	out, ok := err.(*unit.ReadError)
	if !ok {
		return at.fault("notNumber", field, string(q), err.Error())
	}
	f := at.fault(string(out.Code), field, string(q), fmt.Sprintf("%s is %s; %s to %s is allowed", word(field), say(q), bare(say(low), say(high)), say(high)))
	for _, m := range out.Mend {
		f.Mend = append(f.Mend, string(m))
	}
	return limited(f)
}

// bare leaves the unit of the lower limit out where the upper one says it.
func bare(low, high string) string {
	n, u, _ := strings.Cut(low, " ")
	if strings.HasSuffix(high, " "+u) && !strings.Contains(u, " ") {
		return n
	}
	return low
}

// malformed returns a fault for a text that is no quantity of the kind. A plan
// keeps quantities in the one form that reading gives them ("58 lb"); a file
// written by other hands may hold anything.
func (at place) malformed(field string, q unit.Quantity, kind unit.Kind) *Fault {
	k, factor := q.Unit().SI()
	if factor == 0 || k != kind {
		if _, number := q.Value(); number {
			return at.fault("unit", field, string(q), fmt.Sprintf("%s is “%s”, which is no %s", word(field), clip(string(q)), kind))
		}
		return at.fault("notNumber", field, string(q), fmt.Sprintf("%s is “%s”, which is not a number with its unit", word(field), clip(string(q))))
	}
	if strings.Contains(string(q), "x") && kind == unit.OfLength && field == "sheet" {
		if _, _, ok := q.Sheet(); ok {
			return nil
		}
	} else if _, ok := q.Value(); ok {
		if kind == unit.OfCount {
			if _, whole := q.Count(); !whole {
				return at.fault("notNumber", field, string(q), fmt.Sprintf("%s is %s, which is no whole number", word(field), clip(string(q))))
			}
		}
		return nil
	}
	return at.fault("notNumber", field, string(q), fmt.Sprintf("%s is “%s”, which is not a number", word(field), clip(string(q))))
}

// Read reads what somebody typed into a field: what is length, mass,
// surfaceMass, sheet, money, count, area or percent, in is the unit of the field,
// taken for a bare number. The fault's Mend holds the readings to tap.
func Read(what, text, in string) (unit.Quantity, *Fault) {
	u := unit.Unit(in)
	var q unit.Quantity
	var err error
	switch what {
	case "length":
		q, err = unit.ReadLength(text, u)
	case "mass":
		q, err = unit.ReadMass(text, u)
	case "surfaceMass":
		q, err = unit.ReadSurfaceMass(text, u)
	case "sheet":
		q, err = unit.ReadSheet(text, u)
	case "money":
		q, err = unit.ReadMoney(text, u)
	case "count":
		q, err = unit.ReadCount(text)
	case "area":
		q, err = unit.ReadArea(text, u)
	case "percent":
		q, err = unit.ReadPercent(text)
	case "flow":
		q, err = unit.Read(unit.OfFlow, text, u)
	default:
		at := place{f: Fault{Leaf: -1}}
		return "", at.fault("unknown", "call", what, fmt.Sprintf("“%s” is nothing that can be read", clip(what)))
	}
	if err == nil {
		return q, nil
	}
	at := place{f: Fault{Leaf: -1}}
	out, ok := err.(*unit.ReadError)
	if !ok {
		return "", at.fault("notNumber", what, text, err.Error())
	}
	f := at.fault(string(out.Code), what, out.Typed, out.Error())
	f.Low, f.High = say(out.Low), say(out.High)
	for _, m := range out.Mend {
		f.Mend = append(f.Mend, string(m))
	}
	return "", f
}
