package link

import (
	"strconv"
	"strings"

	"twoleaf/core/plan"
)

// record is one record on its way into text.
type record struct{ strings.Builder }

func begin(letter byte, first string) *record {
	r := &record{}
	r.WriteByte(letter)
	r.WriteString(first)
	return r
}

func (r *record) field(key byte, value string) {
	r.WriteByte('-')
	r.WriteByte(key)
	r.WriteString(value)
}

func (r *record) text(key byte, s string) {
	if s != "" {
		r.field(key, escape(s))
	}
}

func (r *record) flag(key byte, on bool) {
	if on {
		r.field(key, "")
	}
}

func typed[Q ~string](r *record, key byte, q Q, usual string) {
	if q != "" {
		r.field(key, quantity(q, usual))
	}
}

// write returns the records of a plan.
func write(p plan.Plan) string {
	u := usualOf(p.Region, p.Units)
	records := []string{planRecord(p)}
	records = append(records, roomRecords(p, u)...)
	for _, s := range p.Shelf {
		records = append(records, shelfRecord(s, u))
	}
	var last *plan.Gap
	for _, b := range p.BuildUps {
		records = append(records, buildUpRecords(b, &last, u)...)
	}
	var before plan.Surface
	number := 0
	for _, s := range p.Surfaces {
		var rec string
		rec, number = surfaceRecord(p, s, before, number, u)
		records = append(records, rec)
		records = append(records, onSurface(s, u)...)
		before = s
	}
	return strings.Join(records, "/")
}

func planRecord(p plan.Plan) string {
	r := begin('p', escape(string(p.Region)))
	if p.Units != p.Region.UsualUnits() {
		r.field('u', escape(string(p.Units)))
	}
	switch p.Prices {
	case plan.NoPrices:
	case plan.DemoPrices:
		r.flag('d', true)
	default:
		r.field('l', escape(string(p.Prices)))
	}
	if p.Table != firstTable {
		r.field('t', escape(strconv.Itoa(p.Table)))
	}
	r.text('n', p.Name)
	typed(r, 'w', p.Waste, "%")
	r.text('s', p.Source)
	typed(r, 'v', p.Level, "")
	return r.String()
}

// firstTable is the version of the typical values that a plan without one has.
const firstTable = 1

func shelfRecord(s plan.Shelf, u usual) string {
	r := begin('h', identity(plan.Boards, s.Board))
	weight := u.mass
	switch s.Per {
	case plan.PerSheet:
	case plan.PerArea:
		weight = u.surfaceMass
		r.flag('a', true)
	case plan.PerPallet:
		r.flag('l', true)
	case plan.OnScale:
		r.flag('c', true)
	default:
		r.field('e', escape(string(s.Per)))
	}
	typed(r, 'w', s.Weight, weight)
	typed(r, 'x', s.Less, u.mass)
	typed(r, 'o', s.Of, "")
	typed(r, 'p', s.Price, u.money)
	r.flag('r', s.PriceArea)
	typed(r, 's', s.Sheet, u.sheet)
	typed(r, 't', s.Thickness, u.length)
	typed(r, 'k', s.Stock, "")
	r.flag('y', s.Plenty)
	typed(r, 'm', s.Owned, "")
	return r.String()
}

// layerToken writes a layer: capitals for what is special about it, then its board.
func layerToken(y plan.Layer) string {
	token := ""
	if y.There {
		token = "T"
	}
	switch y.Join {
	case "":
	case "glue":
		token += "G"
	case "film":
		token += "F"
	default:
		token += "J" + escape(y.Join) + endJoin
	}
	return token + identity(plan.Boards, y.Board)
}

// endJoin ends the text of an unknown joint; no escaped text holds it.
const endJoin = "=."

func layersRecord(letter byte, layers []plan.Layer) string {
	tokens := make([]string, len(layers))
	for i, y := range layers {
		tokens[i] = layerToken(y)
	}
	return string(letter) + strings.Join(tokens, "-")
}

// buildUpRecords writes a build-up; last is the gap written before it anywhere.
func buildUpRecords(b plan.BuildUp, last **plan.Gap, u usual) []string {
	records := []string{"b" + escape(b.Name)}
	for i := range max(len(b.Leaves), len(b.Gaps)) {
		if i < len(b.Leaves) {
			records = append(records, layersRecord('l', b.Leaves[i].Layers))
		}
		if i < len(b.Gaps) {
			g := b.Gaps[i]
			g.ID = ""
			if *last != nil && **last == g {
				records = append(records, "u") // as the gap before
			} else {
				records = append(records, gapRecords(g, u)...)
			}
			*last = &g
		}
	}
	if b.Compare.Leaf != 0 {
		records = append(records, "c"+escape(strconv.Itoa(b.Compare.Leaf)))
	}
	if len(b.Compare.Reference) > 0 {
		records = append(records, layersRecord('f', b.Compare.Reference))
	}
	for _, row := range b.Compare.Rows {
		records = append(records, layersRecord('k', row.Layers))
	}
	return records
}

func gapRecords(g plan.Gap, u usual) []string {
	r := begin('g', identity(plan.Frames, g.Frame))
	typed(r, 'd', g.Depth, u.length)
	typed(r, 's', g.Spacing, u.length)
	if g.Fill != "" {
		r.field('f', identity(plan.Fills, g.Fill))
	}
	typed(r, 'e', g.FillDepth, u.length)
	r.flag('t', g.There)
	r.flag('i', g.FillThere)
	records := []string{r.String()}
	for _, side := range []struct {
		letter byte
		held   plan.Held
	}{{'n', g.Near}, {'o', g.Far}} {
		if side.held != screwed {
			records = append(records, heldRecord(side.letter, side.held, u))
		}
	}
	return records
}

// screwed is how a leaf is held where nothing is said.
var screwed = plan.Held{Fixing: "screwed"}

func heldRecord(letter byte, h plan.Held, u usual) string {
	r := begin(letter, identity(plan.Fixings, h.Fixing))
	typed(r, 'r', h.Rows, u.length)
	typed(r, 'a', h.Along, u.length)
	typed(r, 'm', h.Rating, u.mass)
	typed(r, 'x', h.Extra, u.surfaceMass)
	r.flag('s', h.Shorts)
	typed(r, 'c', h.Screws, u.length)
	r.flag('e', h.Example)
	typed(r, 'f', h.First, u.length)
	typed(r, 'n', h.Ends, u.length)
	r.flag('g', h.Stagger)
	return r.String()
}

// kinds are the letters of the kinds of surface.
var kinds = map[plan.SurfaceKind]string{plan.Wall: "w", plan.Ceiling: "c", plan.Floor: "f"}

// surfaceRecord writes a surface. Width and height are left out where they are
// as of the surface before, the build-up where it is the one after that of the
// surface before; its number is returned, 0 for one that is not there.
func surfaceRecord(p plan.Plan, s, before plan.Surface, number int, u usual) (string, int) {
	kind, known := kinds[s.Kind]
	if !known {
		kind = "." + escape(string(s.Kind))
	}
	r := begin('s', kind)
	if rest, named := strings.CutPrefix(s.Name, string(s.Kind)+" "); named && known && rest != "" {
		r.text('a', rest) // "wall B"
	} else {
		r.text('n', s.Name)
	}
	side(r, 'w', s.Width, before.Width, u.length)
	side(r, 'h', s.Height, before.Height, u.length)
	typed(r, 'r', s.Area, u.area)
	next := number + 1
	number = buildUpNumber(p, s.BuildUp)
	switch number {
	case next:
	case 0:
		r.field('b', "."+escape(s.BuildUp))
	default:
		r.field('b', strconv.Itoa(number))
	}
	r.text('y', s.Beyond)
	r.flag('g', s.Garage)
	r.text('l', s.Listener)
	if s.Side != 0 {
		r.field('d', escape(strconv.Itoa(s.Side)))
	}
	r.text('f', s.Flank)
	typed(r, 'k', s.FlankLoss, "")
	return r.String(), number
}

// side writes a width or height unless it is as before; nothing where something was before stands as an empty field.
func side[Q ~string](r *record, key byte, q, before Q, usual string) {
	switch q {
	case before:
	case "":
		r.field(key, "")
	default:
		typed(r, key, q, usual)
	}
}

// buildUpNumber is the place of a build-up in the plan from 1, 0 if it is not there.
func buildUpNumber(p plan.Plan, id string) int {
	for i, b := range p.BuildUps {
		if b.ID == id {
			return i + 1
		}
	}
	return 0
}
