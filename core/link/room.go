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
	if v := p.Room; v != nil {
		r := begin('r', escape(string(v.Soft)))
		typed(r, 'l', v.Length, u.length)
		typed(r, 'w', v.Width, u.length)
		typed(r, 'h', v.Height, u.length)
		typed(r, 'p', v.People, "")
		typed(r, 'm', v.Minutes, "")
		typed(r, 'e', v.Watts, "")
		typed(r, 'a', v.Air, u.flow)
		r.flag('f', v.Fuel)
		records = append(records, r.String())
	}
	for _, s := range p.Also {
		records = append(records, playing('v', s))
	}
	for _, s := range p.Spaces {
		r := begin('y', escape(s.Name))
		typed(r, 'r', s.Area, u.area)
		typed(r, 'h', s.Height, u.length)
		r.text('s', string(s.Soft))
		r.flag('o', s.Outdoors)
		typed(r, 'b', s.Background, "")
		records = append(records, r.String())
		for _, n := range s.Noise {
			records = append(records, playing('i', n))
		}
	}
	for _, m := range p.Measured {
		r := begin('m', escape(m.Beyond))
		r.flag('t', m.After)
		typed(r, 'a', m.InA, "")
		typed(r, 'c', m.InC, "")
		typed(r, 'b', m.OutA, "")
		typed(r, 'd', m.OutC, "")
		row(r, 'i', m.In)
		row(r, 'o', m.Out)
		records = append(records, r.String())
	}
	if b := p.Buying; b != nil {
		r := begin('z', "")
		typed(r, 't', b.Tax, "%")
		typed(r, 'c', b.Contingency, "%")
		typed(r, 'b', b.Budget, u.money)
		typed(r, 'p', b.Payload, u.mass)
		typed(r, 'f', b.Roof, u.mass)
		typed(r, 'm', b.People, "")
		typed(r, 'w', b.DoorWidth, u.length)
		typed(r, 'h', b.DoorHeight, u.length)
		typed(r, 'k', b.Corridor, u.length)
		typed(r, 'y', b.Beyond, u.length)
		r.flag('s', b.Stair)
		records = append(records, r.String())
		for _, c := range b.Costs {
			r := begin('q', escape(c.Item))
			typed(r, 'p', c.Price, u.money)
			records = append(records, r.String())
		}
	}
	return records
}

func playing(letter byte, s plan.Playing) string {
	r := begin(letter, escape(s.Source))
	typed(r, 'v', s.Level, "")
	return r.String()
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

// onSurface writes what is in a surface and on it.
func onSurface(s plan.Surface, u usual) (records []string) {
	for _, o := range s.Openings {
		r := begin('x', escape(o.Kind))
		r.text('e', o.Seal)
		typed(r, 'w', o.Width, u.length)
		typed(r, 'h', o.Height, u.length)
		typed(r, 'n', o.Count, "")
		typed(r, 'x', o.X, u.length)
		typed(r, 'y', o.Y, u.length)
		typed(r, 'c', o.Crack, u.length)
		typed(r, 'l', o.Run, u.length)
		typed(r, 'r', o.Rating, "")
		row(r, 'o', o.Octaves)
		r.flag('t', o.There)
		records = append(records, r.String())
	}
	for _, h := range s.Hung {
		r := begin('w', escape(h.Name))
		typed(r, 'x', h.X, u.length)
		typed(r, 'y', h.Y, u.length)
		typed(r, 'm', h.Mass, u.mass)
		records = append(records, r.String())
	}
	for _, c := range s.Clips {
		r := begin('a', "")
		typed(r, 'x', c.X, u.length)
		typed(r, 'y', c.Y, u.length)
		records = append(records, r.String())
	}
	if j := s.Joists; j != nil {
		r := begin('j', escape(j.Grade))
		typed(r, 's', j.Span, u.length)
		r.text('a', j.Above)
		typed(r, 'd', j.Dead, u.surfaceMass)
		records = append(records, r.String())
	}
	return records
}

// aroundRoom reads the records that roomRecords and onSurface write.
func (r *reader) aroundRoom(rec, head string, fields []string) {
	p := &r.p
	var surface *plan.Surface
	if n := len(p.Surfaces); n > 0 {
		surface = &p.Surfaces[n-1]
	}
	name, ok := unescape(head)
	switch rec[0] {
	case 'x', 'w', 'j':
		ok = ok && surface != nil
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
	if ok && rec[0] == 'j' {
		ok = surface.Joists == nil
	}
	if !ok {
		r.fail(rec)
		return
	}
	u := r.u
	switch rec[0] {
	case 'r':
		v := &plan.Room{Soft: plan.Soft(name)}
		p.Room = v
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 'l':
				return take(&v.Length, s, u.length)
			case 'w':
				return take(&v.Width, s, u.length)
			case 'h':
				return take(&v.Height, s, u.length)
			case 'p':
				return take(&v.People, s, "")
			case 'm':
				return take(&v.Minutes, s, "")
			case 'e':
				return take(&v.Watts, s, "")
			case 'a':
				return take(&v.Air, s, u.flow)
			case 'f':
				return set(&v.Fuel, s)
			}
			return false
		})
	case 'v', 'i':
		v := plan.Playing{Source: name}
		r.fields(rec, fields, func(key byte, s string) bool { return key == 'v' && take(&v.Level, s, "") })
		if rec[0] == 'v' {
			p.Also = append(p.Also, v)
		} else {
			space := &p.Spaces[len(p.Spaces)-1]
			space.Noise = append(space.Noise, v)
		}
	case 'y':
		v := plan.Space{Name: name}
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 'r':
				return take(&v.Area, s, u.area)
			case 'h':
				return take(&v.Height, s, u.length)
			case 's':
				return text(&v.Soft, s)
			case 'o':
				return set(&v.Outdoors, s)
			case 'b':
				return take(&v.Background, s, "")
			}
			return false
		})
		p.Spaces = append(p.Spaces, v)
	case 'm':
		v := plan.Measured{Beyond: name}
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 't':
				return set(&v.After, s)
			case 'a':
				return take(&v.InA, s, "")
			case 'c':
				return take(&v.InC, s, "")
			case 'b':
				return take(&v.OutA, s, "")
			case 'd':
				return take(&v.OutC, s, "")
			case 'i':
				return takeRow(&v.In, s)
			case 'o':
				return takeRow(&v.Out, s)
			}
			return false
		})
		p.Measured = append(p.Measured, v)
	case 'z':
		v := &plan.Buying{}
		p.Buying = v
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 't':
				return take(&v.Tax, s, "%")
			case 'c':
				return take(&v.Contingency, s, "%")
			case 'b':
				return take(&v.Budget, s, u.money)
			case 'p':
				return take(&v.Payload, s, u.mass)
			case 'f':
				return take(&v.Roof, s, u.mass)
			case 'm':
				return take(&v.People, s, "")
			case 'w':
				return take(&v.DoorWidth, s, u.length)
			case 'h':
				return take(&v.DoorHeight, s, u.length)
			case 'k':
				return take(&v.Corridor, s, u.length)
			case 'y':
				return take(&v.Beyond, s, u.length)
			case 's':
				return set(&v.Stair, s)
			}
			return false
		})
	case 'q':
		v := plan.Cost{Item: name}
		r.fields(rec, fields, func(key byte, s string) bool { return key == 'p' && take(&v.Price, s, u.money) })
		p.Buying.Costs = append(p.Buying.Costs, v)
	case 'x':
		v := plan.Opening{Kind: name}
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 'e':
				return text(&v.Seal, s)
			case 'w':
				return take(&v.Width, s, u.length)
			case 'h':
				return take(&v.Height, s, u.length)
			case 'n':
				return take(&v.Count, s, "")
			case 'x':
				return take(&v.X, s, u.length)
			case 'y':
				return take(&v.Y, s, u.length)
			case 'c':
				return take(&v.Crack, s, u.length)
			case 'l':
				return take(&v.Run, s, u.length)
			case 'r':
				return take(&v.Rating, s, "")
			case 'o':
				return takeRow(&v.Octaves, s)
			case 't':
				return set(&v.There, s)
			}
			return false
		})
		surface.Openings = append(surface.Openings, v)
	case 'w':
		v := plan.Hung{Name: name}
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 'x':
				return take(&v.X, s, u.length)
			case 'y':
				return take(&v.Y, s, u.length)
			case 'm':
				return take(&v.Mass, s, u.mass)
			}
			return false
		})
		surface.Hung = append(surface.Hung, v)
	case 'a':
		v := plan.Spot{}
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 'x':
				return take(&v.X, s, u.length)
			case 'y':
				return take(&v.Y, s, u.length)
			}
			return false
		})
		surface.Clips = append(surface.Clips, v)
	case 'j':
		v := &plan.Joists{Grade: name}
		surface.Joists = v
		r.fields(rec, fields, func(key byte, s string) bool {
			switch key {
			case 's':
				return take(&v.Span, s, u.length)
			case 'a':
				return text(&v.Above, s)
			case 'd':
				return take(&v.Dead, s, u.surfaceMass)
			}
			return false
		})
	}
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
