package load

import (
	"sort"

	"twoleaf/core/assembly"
	"twoleaf/core/unit"
)

// Sizes that no rule of the user's changes.
const (
	leastFace = 100 * unit.Millimetre // a side of a face (our proposal)
	mostFace  = 100 * unit.Metre
	mostMass  = 1e5 // kg, or kg/m², kg/m: more is a slip
	// leastPiece is a length of channel below which there is none, and twoClips the
	// one from which two clips go on it (our proposal: a clip is about 50 mm long).
	leastPiece = 60 * unit.Millimetre
	twoClips   = 250 * unit.Millimetre
	clipHalf   = 25 * unit.Millimetre // from the end of a channel to a clip's centre, at least
	// atEnd is where a clip sits on the 38 mm stud at the edge of a face, and atJamb on the pair of
	// studs beside an opening, from the edge (common practice for 2x framing).
	atEnd  = 31 * unit.Millimetre
	atJamb = 38 * unit.Millimetre
	// beside is how far a short row goes past an opening, 6 in: over the jamb studs.
	beside = 6 * unit.Inch
	near   = 50 * unit.Millimetre // two clips are not nearer than this
	hair   = 1e-9
)

// Usual returns the rules that layouts of clips commonly keep: rows 24 in and
// clips 48 in apart at most; on a wall the first row 3 in from the floor and the
// last 6 in from the ceiling, on a ceiling both 6 in (150 mm) from the wall; the
// first clip 8 in from the end of a channel, which stops 1/4 in short; a row
// within half the distance of rows of head and sill.
//
// Source: common practice; 150 mm on ceilings from joist-isolator.
func Usual(face Face) Rules {
	r := Rules{
		Rows: 24 * unit.Inch, Every: 1, Along: 48 * unit.Inch,
		First: 3 * unit.Inch, Last: 6 * unit.Inch, End: 8 * unit.Inch, Short: 0.25 * unit.Inch,
		AtOpenings: 12 * unit.Inch,
	}
	if face.Ceiling {
		r.First = 6 * unit.Inch
	}
	if s := face.Frame.Spacing; s > 0 {
		r.Every = max(1, int(float64((48*unit.Inch+5*unit.Millimetre)/s)))
	}
	return r
}

// UsualResilient returns the same for resilient channel screwed to every member:
// rows as ResilientRows has it, 3 in from the floor.
func UsualResilient(face Face) Rules {
	r := Usual(face)
	r.Every = 1
	if rows, ok := ResilientRows(face.Ceiling, face.Frame.Spacing); ok {
		r.Rows = rows
	}
	return r
}

// CarriedBy returns what hangs on the clips or on the resilient channel of a
// leaf and the typed rating, counted as OnClip does; ok is false where the leaf hangs on neither.
func CarriedBy(b assembly.BuildUp, leaf int) (c Carried, rating unit.Mass, ok bool) {
	if leaf < 0 || leaf >= len(b.Leaves) {
		return c, 0, false
	}
	gap, near, ok := b.Holder(leaf)
	if !ok {
		return c, 0, false
	}
	g := b.Gaps[gap]
	held := g.Held(near)
	c = Carried{Area: b.Leaves[leaf].Mass() + held.Extra, Channel: held.Fixing.LineMass}
	if g.FillLies && near {
		c.Area += g.FillMass()
	}
	if !clips(held) {
		c.Unrated = true
		return c, 0, true
	}
	if c.Channel > 0 {
		c.Section = Hat18
	}
	return c, held.Rating, true
}

// run is one length of channel while a layout is made, in the row's own
// coordinates: u along it, v across.
type run struct {
	v, from, to    float64 // the channel
	board0, board1 float64 // the board it holds, along u
	jamb0, jamb1   bool    // that board ends at an opening
	order          int     // of its row, for staggering
	added          bool
	at             []float64
	seats          []Seat
	first          int // of its clips in the layout
	beam           beam
}

type layer struct {
	face    Face
	rules   Rules
	load    Carried
	w, h    float64 // along and across the rows
	holes   []hole
	members []float64
	step    float64 // the most between clips
	runs    []*run
	out     Layout
}

// hole is an opening in the coordinates of the rows.
type hole struct{ u0, u1, v0, v1 float64 }

type stretch struct{ from, to float64 }

// Lay places rows and clips on a face and returns what each clip carries, two ways:
//
//	share = Σ mass·area + line·length + its part of what hangs near
//	beam  = reaction of the channel as a continuous beam over its clips
//
// Every point of the boards belongs to the rows next to it above and below,
// divided halfway; between openings, and beyond the last row, to the one row
// there is. Along a row share divides halfway between clips, and what hangs
// between two clips by the lever. The larger of the two is Load. Both sum to
// Weight. mass is per area [kg/m²], line per length of channel [kg/m].
//
// On a wall the leaf is stiff in its own plane, so that in truth its clips share
// more evenly than either way says: both are on the careful side for the worst
// clip. Rubber that gives evens out the beam as well.
//
// Source: tributary area, common practice; beam, see HICKS2002; placing of clips, see Usual.
func Lay(face Face, rules Rules, carried Carried, ratings Ratings) (Layout, error) {
	y := layer{face: face, rules: rules, load: carried}
	if fault := y.check(); fault != nil {
		return Layout{Worst: -1, Least: -1}, fault
	}
	y.row()
	if len(y.runs) == 0 {
		return Layout{Worst: -1, Least: -1}, &Fault{FaultOpenings, nums{"area": float64(y.out.Boarded), "least": float64(leastPiece + 2*rules.Short)}}
	}
	for _, r := range y.runs {
		y.clip(r)
	}
	y.plus()
	y.spots()
	y.share()
	if fault := y.hang(); fault != nil {
		return Layout{Worst: -1, Least: -1}, fault
	}
	y.solve(ratings)
	return y.out, nil
}

func (y *layer) check() *Fault {
	f, r := y.face, y.rules
	if !(f.Width >= leastFace && f.Height >= leastFace && f.Width <= mostFace && f.Height <= mostFace) {
		return &Fault{FaultFace, nums{"width": float64(f.Width), "height": float64(f.Height), "least": float64(leastFace), "most": float64(mostFace)}}
	}
	along := unit.Length(1)
	if f.Frame.Spacing == 0 {
		along = r.Along
	}
	for i, v := range [...]unit.Length{r.Rows, unit.Length(r.Every), along, r.First, r.Last, r.End} {
		if !(v > 0) {
			return &Fault{FaultRule, nums{"rule": float64(i + 1)}}
		}
	}
	if !(r.Short >= 0 && r.AtOpenings >= 0 && f.Frame.Spacing >= 0 && f.Frame.First >= 0) || f.Frame.Spacing > 0 && f.Frame.Spacing < near || r.Rows < near {
		return &Fault{FaultRule, nums{"rule": 7}}
	}
	if !(y.load.Area >= 0 && y.load.Channel >= 0 && y.load.Area < mostMass && y.load.Channel < mostMass) {
		return &Fault{FaultMass, nil}
	}
	y.out.AlongX = !f.Frame.AlongX
	y.w, y.h = float64(f.Width), float64(f.Height)
	if !y.out.AlongX {
		y.w, y.h = y.h, y.w
	}
	for _, o := range f.Openings {
		u, v, a, b := y.turn(o.X, o.Y, o.Width, o.Height)
		n := hole{max(u, 0), min(u+a, y.w), max(v, 0), min(v+b, y.h)}
		if n.u1-n.u0 > hair && n.v1-n.v0 > hair {
			y.holes = append(y.holes, n)
		}
	}
	for _, c := range y.columns(nil) {
		for _, s := range y.free((c.from+c.to)/2, true) {
			y.out.Boarded += unit.Area((c.to - c.from) * (s.to - s.from))
		}
	}
	if y.out.Boarded < unit.Area(leastFace*leastFace) {
		return &Fault{FaultOpenings, nums{"area": float64(y.out.Boarded), "least": float64(leastPiece + 2*r.Short)}}
	}
	if s := float64(f.Frame.Spacing); s > 0 {
		y.step = s * float64(r.Every)
		for x := float64(f.Frame.First); x < y.w; x += s {
			y.members = append(y.members, x)
		}
	} else {
		y.step = float64(r.Along)
	}
	return nil
}

// turn changes between the coordinates of the face and those of the rows.
func (y *layer) turn(a, b, c, d unit.Length) (u, v, w, h float64) {
	if y.out.AlongX {
		return float64(a), float64(b), float64(c), float64(d)
	}
	return float64(b), float64(a), float64(d), float64(c)
}

func (y *layer) rect(u0, v0, u1, v1 float64) Rect {
	if !y.out.AlongX {
		u0, v0, u1, v1 = v0, u0, v1, u1
	}
	return Rect{unit.Length(u0), unit.Length(v0), unit.Length(u1 - u0), unit.Length(v1 - v0)}
}

// columns returns the stretches of u on which nothing changes.
func (y *layer) columns(runs []*run) []stretch {
	cuts := make([]float64, 0, 2+2*len(y.holes)+2*len(runs))
	cuts = append(cuts, 0, y.w)
	for _, h := range y.holes {
		cuts = append(cuts, h.u0, h.u1)
	}
	for _, r := range runs {
		cuts = append(cuts, r.board0, r.board1)
	}
	sort.Float64s(cuts)
	out := make([]stretch, 0, len(cuts))
	for i := 1; i < len(cuts); i++ {
		if cuts[i]-cuts[i-1] > hair {
			out = append(out, stretch{cuts[i-1], cuts[i]})
		}
	}
	return out
}

// free returns what the openings leave of a line: across the rows at u = at, or
// along them at v = at.
func (y *layer) free(at float64, across bool) []stretch {
	end := y.w
	if across {
		end = y.h
	}
	var shut []stretch
	for _, h := range y.holes {
		if across && h.u0 < at && at < h.u1 {
			shut = append(shut, stretch{h.v0, h.v1})
		}
		if !across && h.v0 < at && at < h.v1 {
			shut = append(shut, stretch{h.u0, h.u1})
		}
	}
	sort.SliceStable(shut, func(i, j int) bool { return shut[i].from < shut[j].from })
	var out []stretch
	from := 0.0
	for _, s := range append(shut, stretch{end, end}) {
		if s.from-from > hair {
			out = append(out, stretch{from, s.from})
		}
		from = max(from, s.to)
	}
	return out
}
