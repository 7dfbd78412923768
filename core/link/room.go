package link

import (
	"strings"

	"twoleaf/core/plan"
)

// The records of the room, each a letter and fields as everywhere:
//
//	r room · v also plays · y space beyond · i noise of that space · z the list · q price of an item
//	m measured · x opening of the surface before · w hung on it · a clip added · j its joists
func roomRecords(p plan.Plan, u usual) (records []string) {
	if p.Room != nil {
		records = append(records, slotted('r', string(p.Room.Soft), roomSlots(p.Room, u)))
	}
	for _, s := range p.Also {
		records = append(records, slotted('v', s.Source, playingSlots(&s)))
	}
	for _, s := range p.Spaces {
		records = append(records, slotted('y', s.Name, spaceSlots(&s, u)))
		for _, n := range s.Noise {
			records = append(records, slotted('i', n.Source, playingSlots(&n)))
		}
	}
	for _, m := range p.Measured {
		records = append(records, slotted('m', m.Beyond, measuredSlots(&m)))
	}
	if p.Buying != nil {
		records = append(records, slotted('z', "", buyingSlots(p.Buying, u)))
		for _, c := range p.Buying.Costs {
			records = append(records, slotted('q', c.Item, costSlots(&c, u)))
		}
	}
	return records
}

// onSurface writes what is in a surface and on it.
func onSurface(s plan.Surface, u usual) (records []string) {
	for _, o := range s.Openings {
		records = append(records, slotted('x', o.Kind, openingSlots(&o, u)))
	}
	for _, h := range s.Hung {
		records = append(records, slotted('w', h.Name, hungSlots(&h, u)))
	}
	for _, c := range s.Clips {
		records = append(records, slotted('a', "", clipSlots(&c, u)))
	}
	if s.Joists != nil {
		records = append(records, slotted('j', s.Joists.Grade, joistSlots(s.Joists, u)))
	}
	return records
}

// slot is one field of a record, told once for both ways: put writes it, if
// there is something to write, take reads its value.
type slot struct {
	key  byte
	put  func(r *record)
	take func(value string) bool
}

func quantitySlot[Q ~string](key byte, q *Q, usual string) slot {
	return slot{key, func(r *record) { typed(r, key, *q, usual) }, func(v string) bool { return take(q, v, usual) }}
}

func textSlot[S ~string](key byte, s *S) slot {
	return slot{key, func(r *record) { r.text(key, string(*s)) }, func(v string) bool { return text(s, v) }}
}

func flagSlot(key byte, on *bool) slot {
	return slot{key, func(r *record) { r.flag(key, *on) }, func(v string) bool { return set(on, v) }}
}

func rowSlot[Q ~string](key byte, list *[]Q) slot {
	return slot{key, func(r *record) { row(r, key, *list) }, func(v string) bool { return takeRow(list, v) }}
}

// slotted writes a record of slots.
func slotted(letter byte, head string, slots []slot) string {
	r := begin(letter, escape(head))
	for _, s := range slots {
		s.put(r)
	}
	return r.String()
}

// slots reads the fields of such a record.
func (r *reader) slots(rec string, fields []string, slots []slot) {
	r.fields(rec, fields, func(key byte, v string) bool {
		for _, s := range slots {
			if s.key == key {
				return s.take(v)
			}
		}
		return false
	})
}

func roomSlots(v *plan.Room, u usual) []slot {
	return []slot{
		quantitySlot('l', &v.Length, u.length), quantitySlot('w', &v.Width, u.length), quantitySlot('h', &v.Height, u.length),
		quantitySlot('p', &v.People, ""), quantitySlot('m', &v.Minutes, ""), quantitySlot('e', &v.Watts, ""),
		quantitySlot('a', &v.Air, u.flow), flagSlot('f', &v.Fuel),
	}
}

func playingSlots(v *plan.Playing) []slot { return []slot{quantitySlot('v', &v.Level, "")} }

func spaceSlots(v *plan.Space, u usual) []slot {
	return []slot{
		quantitySlot('r', &v.Area, u.area), quantitySlot('h', &v.Height, u.length), textSlot('s', &v.Soft), flagSlot('o', &v.Outdoors),
		quantitySlot('b', &v.Background, ""),
	}
}

func measuredSlots(v *plan.Measured) []slot {
	return []slot{
		flagSlot('t', &v.After), quantitySlot('a', &v.InA, ""), quantitySlot('c', &v.InC, ""), quantitySlot('b', &v.OutA, ""),
		quantitySlot('d', &v.OutC, ""), rowSlot('i', &v.In), rowSlot('o', &v.Out),
	}
}

func buyingSlots(v *plan.Buying, u usual) []slot {
	return []slot{
		quantitySlot('t', &v.Tax, "%"), quantitySlot('c', &v.Contingency, "%"), quantitySlot('b', &v.Budget, u.money),
		quantitySlot('p', &v.Payload, u.mass), quantitySlot('f', &v.Roof, u.mass), quantitySlot('m', &v.People, ""),
		quantitySlot('w', &v.DoorWidth, u.length), quantitySlot('h', &v.DoorHeight, u.length), quantitySlot('k', &v.Corridor, u.length),
		quantitySlot('y', &v.Beyond, u.length), flagSlot('s', &v.Stair),
	}
}

func costSlots(v *plan.Cost, u usual) []slot { return []slot{quantitySlot('p', &v.Price, u.money)} }

func openingSlots(v *plan.Opening, u usual) []slot {
	return []slot{
		textSlot('e', &v.Seal), quantitySlot('w', &v.Width, u.length), quantitySlot('h', &v.Height, u.length), quantitySlot('n', &v.Count, ""),
		quantitySlot('x', &v.X, u.length), quantitySlot('y', &v.Y, u.length), quantitySlot('c', &v.Crack, u.length),
		quantitySlot('l', &v.Run, u.length), quantitySlot('r', &v.Rating, ""), rowSlot('o', &v.Octaves), flagSlot('t', &v.There),
	}
}

func hungSlots(v *plan.Hung, u usual) []slot {
	return []slot{quantitySlot('x', &v.X, u.length), quantitySlot('y', &v.Y, u.length), quantitySlot('m', &v.Mass, u.mass)}
}

func clipSlots(v *plan.Spot, u usual) []slot {
	return []slot{quantitySlot('x', &v.X, u.length), quantitySlot('y', &v.Y, u.length)}
}

func joistSlots(v *plan.Joists, u usual) []slot {
	return []slot{quantitySlot('s', &v.Span, u.length), textSlot('a', &v.Above), quantitySlot('d', &v.Dead, u.surfaceMass)}
}

// aroundRoom reads the records that roomRecords and onSurface write.
func (r *reader) aroundRoom(rec, head string, fields []string) {
	p, u := &r.p, r.u
	var surface *plan.Surface
	if n := len(p.Surfaces); n > 0 {
		surface = &p.Surfaces[n-1]
	}
	name, ok := unescape(head)
	switch rec[0] {
	case 'x', 'w':
		ok = ok && surface != nil
	case 'j':
		ok = ok && surface != nil && surface.Joists == nil
	case 'a':
		ok = ok && surface != nil && name == ""
	case 'i':
		ok = ok && len(p.Spaces) > 0
	case 'q':
		ok = ok && p.Buying != nil
	case 'r':
		ok = ok && p.Room == nil
	case 'z':
		ok = ok && p.Buying == nil && name == ""
	}
	if !ok {
		r.fail(rec)
		return
	}
	switch rec[0] {
	case 'r':
		p.Room = &plan.Room{Soft: plan.Soft(name)}
		r.slots(rec, fields, roomSlots(p.Room, u))
	case 'v':
		v := plan.Playing{Source: name}
		r.slots(rec, fields, playingSlots(&v))
		p.Also = append(p.Also, v)
	case 'y':
		v := plan.Space{Name: name}
		r.slots(rec, fields, spaceSlots(&v, u))
		p.Spaces = append(p.Spaces, v)
	case 'i':
		v := plan.Playing{Source: name}
		r.slots(rec, fields, playingSlots(&v))
		space := &p.Spaces[len(p.Spaces)-1]
		space.Noise = append(space.Noise, v)
	case 'm':
		v := plan.Measured{Beyond: name}
		r.slots(rec, fields, measuredSlots(&v))
		p.Measured = append(p.Measured, v)
	case 'z':
		p.Buying = &plan.Buying{}
		r.slots(rec, fields, buyingSlots(p.Buying, u))
	case 'q':
		v := plan.Cost{Item: name}
		r.slots(rec, fields, costSlots(&v, u))
		p.Buying.Costs = append(p.Buying.Costs, v)
	case 'x':
		v := plan.Opening{Kind: name}
		r.slots(rec, fields, openingSlots(&v, u))
		surface.Openings = append(surface.Openings, v)
	case 'w':
		v := plan.Hung{Name: name}
		r.slots(rec, fields, hungSlots(&v, u))
		surface.Hung = append(surface.Hung, v)
	case 'a':
		v := plan.Spot{}
		r.slots(rec, fields, clipSlots(&v, u))
		surface.Clips = append(surface.Clips, v)
	case 'j':
		surface.Joists = &plan.Joists{Grade: name}
		r.slots(rec, fields, joistSlots(surface.Joists, u))
	}
}

// row writes octaves one after another, each ended by a point.
func row[Q ~string](r *record, key byte, list []Q) {
	if len(list) == 0 {
		return
	}
	var b strings.Builder
	for _, q := range list {
		b.WriteString(escape(string(q)))
		b.WriteByte('=')
		b.WriteByte('.')
	}
	r.field(key, b.String())
}

// takeRow is the inverse of row.
func takeRow[Q ~string](into *[]Q, s string) bool {
	for s != "" {
		one, rest, ok := strings.Cut(s, "=.")
		if !ok || len(*into) >= mostOctaves {
			return false
		}
		var q Q
		if one != "" && !text(&q, one) {
			return false
		}
		*into = append(*into, q)
		s = rest
	}
	return len(*into) > 0
}

// mostOctaves bounds a row of a text that nobody has checked yet.
const mostOctaves = 12
