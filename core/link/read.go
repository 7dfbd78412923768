package link

import (
	"strconv"
	"strings"

	"twoleaf/core/plan"
)

// reader takes records in their order. bad is the first piece that cannot be
// read; newer says that the piece is a code of a later table.
type reader struct {
	p    plan.Plan
	last *plan.Gap // read before, to be repeated
	// number is the place of the build-up of the surface read before.
	number int
	u      usual
	bad    string
	newer  bool
}

func (r *reader) fail(piece string) {
	if r.bad == "" {
		r.bad = piece
		if piece == "" {
			r.bad = "/"
		}
	}
}

// read returns the plan of records; surfaces name build-ups by the ids b1, b2 …
func read(body string) (plan.Plan, *plan.Fault) {
	r := &reader{p: plan.Plan{Format: plan.Format, Table: firstTable}}
	for i, rec := range strings.Split(body, "/") {
		r.record(i, rec)
		if r.bad == "" {
			continue
		}
		if r.newer {
			return plan.Plan{}, fault("newer", r.bad, "it was made by a newer version: “"+r.bad+"” is in no table here")
		}
		return plan.Plan{}, fault("unreadable", r.bad, "“"+r.bad+"” cannot be read")
	}
	if len(r.p.Surfaces) == 0 || len(r.p.BuildUps) == 0 {
		return plan.Plan{}, fault("unreadable", "", "it holds no wall, ceiling or floor")
	}
	return r.p, nil
}

func (r *reader) record(i int, rec string) {
	if rec == "" || i == 0 != (rec[0] == 'p') {
		r.fail(rec)
		return
	}
	fields := strings.Split(rec[1:], "-")
	head, fields := fields[0], fields[1:]
	switch rec[0] {
	case 'p':
		r.plan(rec, head, fields)
	case 'h':
		r.shelf(rec, head, fields)
	case 's':
		r.surface(rec, head, fields)
	case 'r', 'v', 'y', 'z', 'x', 'w', 'a', 'j', 'm', 'q', 'i':
		r.aroundRoom(rec, head, fields)
	case 'b':
		name, ok := unescape(head)
		if !ok || len(fields) > 0 {
			r.fail(rec)
			return
		}
		r.p.BuildUps = append(r.p.BuildUps, plan.BuildUp{ID: "b" + strconv.Itoa(len(r.p.BuildUps)+1), Name: name})
	default:
		if len(r.p.BuildUps) == 0 {
			r.fail(rec)
			return
		}
		r.within(&r.p.BuildUps[len(r.p.BuildUps)-1], rec, head, fields)
	}
}

// within reads a record that belongs to a build-up.
func (r *reader) within(b *plan.BuildUp, rec, head string, fields []string) {
	switch rec[0] {
	case 'l':
		b.Leaves = append(b.Leaves, plan.Leaf{Layers: r.layers(rec)})
	case 'f':
		b.Compare.Reference = r.layers(rec)
	case 'k':
		b.Compare.Rows = append(b.Compare.Rows, plan.Candidate{Layers: r.layers(rec)})
	case 'c':
		text, ok := unescape(head)
		n, err := strconv.Atoi(text)
		if !ok || err != nil || strconv.Itoa(n) != text || len(fields) > 0 {
			r.fail(rec)
		}
		b.Compare.Leaf = n
	case 'g':
		g := plan.Gap{Frame: r.id(plan.Frames, rec, head), Near: screwed, Far: screwed}
		r.fields(rec, fields, func(key byte, v string) bool {
			switch key {
			case 'd':
				return take(&g.Depth, v, r.u.length)
			case 's':
				return take(&g.Spacing, v, r.u.length)
			case 'f':
				g.Fill = r.id(plan.Fills, rec, v)
				return true
			case 'e':
				return take(&g.FillDepth, v, r.u.length)
			case 't':
				return set(&g.There, v)
			case 'i':
				return set(&g.FillThere, v)
			}
			return false
		})
		r.last = &g
		b.Gaps = append(b.Gaps, g)
	case 'u':
		if rec != "u" || r.last == nil {
			r.fail(rec)
			return
		}
		b.Gaps = append(b.Gaps, *r.last)
	case 'n', 'o':
		if len(b.Gaps) == 0 {
			r.fail(rec)
			return
		}
		g := &b.Gaps[len(b.Gaps)-1]
		if h := r.held(rec, head, fields); rec[0] == 'n' {
			g.Near = h
		} else {
			g.Far = h
		}
		*r.last = *g
	default:
		r.fail(rec)
	}
}

func (r *reader) plan(rec, head string, fields []string) {
	region, ok := unescape(head)
	if !ok {
		r.fail(rec)
		return
	}
	p := &r.p
	p.Region = plan.Region(region)
	p.Units = p.Region.UsualUnits()
	r.fields(rec, fields, func(key byte, v string) bool {
		switch key {
		case 'u':
			return text(&p.Units, v)
		case 'd':
			var on bool
			ok := set(&on, v)
			p.Prices = plan.DemoPrices
			return ok
		case 'l':
			return text(&p.Prices, v)
		case 't':
			return number(&p.Table, v)
		case 'n':
			return text(&p.Name, v)
		case 'w':
			return take(&p.Waste, v, "%")
		case 's':
			return text(&p.Source, v)
		case 'v':
			return take(&p.Level, v, "")
		}
		return false
	})
	r.u = usualOf(p.Region, p.Units)
}

func (r *reader) shelf(rec, head string, fields []string) {
	s := plan.Shelf{Board: r.id(plan.Boards, rec, head)}
	weight := r.u.mass
	r.fields(rec, fields, func(key byte, v string) bool {
		on := false
		switch key {
		case 'a':
			s.Per, weight = plan.PerArea, r.u.surfaceMass
			return set(&on, v)
		case 'l':
			s.Per = plan.PerPallet
			return set(&on, v)
		case 'c':
			s.Per = plan.OnScale
			return set(&on, v)
		case 'e':
			return text(&s.Per, v)
		case 'w':
			return take(&s.Weight, v, weight)
		case 'x':
			return take(&s.Less, v, r.u.mass)
		case 'o':
			return take(&s.Of, v, "")
		case 'p':
			return take(&s.Price, v, r.u.money)
		case 'r':
			return set(&s.PriceArea, v)
		case 's':
			return take(&s.Sheet, v, r.u.sheet)
		case 't':
			return take(&s.Thickness, v, r.u.length)
		case 'k':
			return take(&s.Stock, v, "")
		case 'y':
			return set(&s.Plenty, v)
		case 'm':
			return take(&s.Owned, v, "")
		}
		return false
	})
	r.p.Shelf = append(r.p.Shelf, s)
}

func (r *reader) held(rec, head string, fields []string) plan.Held {
	h := plan.Held{Fixing: r.id(plan.Fixings, rec, head)}
	r.fields(rec, fields, func(key byte, v string) bool {
		switch key {
		case 'r':
			return take(&h.Rows, v, r.u.length)
		case 'a':
			return take(&h.Along, v, r.u.length)
		case 'm':
			return take(&h.Rating, v, r.u.mass)
		case 'x':
			return take(&h.Extra, v, r.u.surfaceMass)
		case 's':
			return set(&h.Shorts, v)
		case 'c':
			return take(&h.Screws, v, r.u.length)
		case 'e':
			return set(&h.Example, v)
		case 'f':
			return take(&h.First, v, r.u.length)
		case 'n':
			return take(&h.Ends, v, r.u.length)
		case 'g':
			return set(&h.Stagger, v)
		}
		return false
	})
	return h
}

func (r *reader) surface(rec, head string, fields []string) {
	s := plan.Surface{}
	if n := len(r.p.Surfaces); n > 0 {
		s.Width, s.Height = r.p.Surfaces[n-1].Width, r.p.Surfaces[n-1].Height
	}
	for kind, letter := range kinds {
		if letter == head {
			s.Kind = kind
		}
	}
	known := s.Kind != ""
	if !known {
		free, ok := strings.CutPrefix(head, ".")
		if !ok || !text(&s.Kind, free) {
			r.fail(rec)
			return
		}
	}
	r.number++
	r.fields(rec, fields, func(key byte, v string) bool {
		switch key {
		case 'n':
			return text(&s.Name, v)
		case 'a':
			var rest string
			ok := text(&rest, v) && known
			s.Name = string(s.Kind) + " " + rest
			return ok
		case 'w', 'h':
			side := &s.Width
			if key == 'h' {
				side = &s.Height
			}
			if v == "" {
				was := *side
				*side = ""
				return was != ""
			}
			return take(side, v, r.u.length)
		case 'r':
			return take(&s.Area, v, r.u.area)
		case 'b':
			if free, ok := strings.CutPrefix(v, "."); ok {
				r.number = 0
				return text(&s.BuildUp, free)
			}
			n, err := strconv.Atoi(v)
			r.number = n
			return err == nil && strconv.Itoa(n) == v && n >= 1
		case 'y':
			return text(&s.Beyond, v)
		case 'g':
			return set(&s.Garage, v)
		case 'l':
			return text(&s.Listener, v)
		case 'd':
			return number(&s.Side, v)
		case 'f':
			return text(&s.Flank, v)
		case 'k':
			return take(&s.FlankLoss, v, "")
		}
		return false
	})
	switch {
	case r.number > len(r.p.BuildUps):
		r.fail(rec)
	case r.number > 0:
		s.BuildUp = "b" + strconv.Itoa(r.number)
	}
	r.p.Surfaces = append(r.p.Surfaces, s)
}

// fields hands out the fields of a record; what is not taken is the bad piece.
func (r *reader) fields(rec string, fields []string, take func(key byte, value string) bool) {
	for _, f := range fields {
		if f == "" || !take(f[0], f[1:]) {
			if r.bad == "" {
				r.fail(rec)
			}
			return
		}
	}
}

func (r *reader) id(t plan.Table, rec, s string) string {
	id, known, ok := readIdentity(t, s)
	if !ok {
		r.fail(rec)
	} else if !known && r.bad == "" {
		r.fail(s)
		r.newer = true
	}
	return id
}

func (r *reader) layers(rec string) (layers []plan.Layer) {
	if len(rec) == 1 {
		return nil
	}
	for _, token := range strings.Split(rec[1:], "-") {
		y := plan.Layer{}
		token, y.There = strings.CutPrefix(token, "T")
		switch {
		case strings.HasPrefix(token, "G"):
			y.Join, token = "glue", token[1:]
		case strings.HasPrefix(token, "F"):
			y.Join, token = "film", token[1:]
		case strings.HasPrefix(token, "J"):
			join, rest, ok := strings.Cut(token[1:], endJoin)
			if !ok || !text(&y.Join, join) {
				r.fail(rec)
			}
			token = rest
		}
		y.Board = r.id(plan.Boards, rec, token)
		layers = append(layers, y)
	}
	return layers
}

// take reads a quantity into a field.
func take[Q ~string](into *Q, v, usual string) bool {
	q, ok := readQuantity(v, usual)
	*into = Q(q)
	return ok && q != ""
}

// text reads an escaped text into a field.
func text[S ~string](into *S, v string) bool {
	s, ok := unescape(v)
	*into = S(s)
	return ok
}

// number reads a whole number in its one form.
func number(into *int, v string) bool {
	s, ok := unescape(v)
	n, err := strconv.Atoi(s)
	*into = n
	return ok && err == nil && strconv.Itoa(n) == s
}

// set reads a flag, which has no value.
func set(into *bool, v string) bool {
	*into = true
	return v == ""
}
