package core

import (
	"math"

	"twoleaf/core/appraise"
	"twoleaf/core/caution"
	"twoleaf/core/load"
	"twoleaf/core/plan"
	"twoleaf/core/takeoff"
	"twoleaf/core/unit"
)

// clipsOn is what a layout of clips is made of.
type clipsOn struct {
	face    load.Face
	rules   load.Rules
	carried load.Carried
	ratings load.Ratings
	in      plan.Face
}

// clipsOn returns what the layout of a surface's leaf is made of; ok is false
// where the leaf hangs on no clips or the surface has no size.
func clipsOf(p plan.Plan, r plan.Resolved, in plan.Inside) (c clipsOn, ok bool) {
	b, leaf := r.Assembly, r.Leaf
	var rating unit.Mass
	if c.carried, rating, ok = load.CarriedBy(b, leaf); !ok {
		return c, false
	}
	c.in = in.Face(r.Surface.ID)
	if c.in.Width <= 0 || c.in.Height <= 0 {
		return c, false
	}
	gap, near, _ := b.Holder(leaf)
	c.face = loadFace(c.in, r, gap)
	held := b.Gaps[gap].Held(near)
	c.rules = load.Usual(c.face)
	c.rules.Rows, c.rules.Along = held.Grid.Rows, held.Grid.Along
	if s := c.face.Frame.Spacing; s > 0 {
		c.rules.Every = max(1, int(math.Round(float64(held.Grid.Along/s))))
	}
	typed := r.BuildUp.Gaps[gap].Far
	if near {
		typed = r.BuildUp.Gaps[gap].Near
	}
	if v, has := typed.First.Length(); has {
		c.rules.First, c.rules.Last = v, v
	}
	if v, has := typed.Ends.Length(); has {
		c.rules.End = v
	}
	c.rules.Staggered = typed.Stagger
	for _, spot := range c.in.Clips {
		c.rules.Plus = append(c.rules.Plus, load.Place{X: spot.X, Y: spot.Y})
	}
	for _, h := range c.in.Hung {
		c.carried.Hung = append(c.carried.Hung, load.Hung{X: h.X, Y: h.Y, Mass: h.Mass})
	}
	c.ratings = load.Ratings{Shear: rating, Pull: rating}
	return c, true
}

// lay returns the layout, nil where there is none, and why.
func (c clipsOn) lay() (load.Layout, *load.Fault) {
	l, err := load.Lay(c.face, c.rules, c.carried, c.ratings)
	if fault, ok := err.(*load.Fault); ok {
		return l, fault
	}
	return l, nil
}

// laid gives a result the worst clip of its whole face, where the face has a
// size: the clips at an edge, beside an opening or under a lamp carry more or
// less than an inner one.
func (a *assessment) laid(r *appraise.Result, here plan.Resolved) {
	if r.Clip.State == load.None {
		return
	}
	if c, ok := clipsOf(a.plan, here, a.inside); ok {
		if l, fault := c.lay(); fault == nil {
			r.Clip = r.Clip.Laid(l)
		}
	}
}

// rowSteps are the distances between rows that are tried for the widest that
// holds: what tapes and centres of studs are marked in (common practice).
func rowSteps(units plan.Units) []unit.Length {
	if units == plan.Customary {
		return []unit.Length{24 * unit.Inch, 20 * unit.Inch, 16 * unit.Inch, 12 * unit.Inch, 8 * unit.Inch}
	}
	return []unit.Length{0.6, 0.5, 0.4, 0.3, 0.2}
}

// layout tells where every clip of the edited leaf goes; without clips or a
// size, only what hangs on joists; nil where there is nothing to tell.
func (a *assessment) layout() *LayoutReport {
	in := a.inside
	b, leaf := a.here.Assembly, a.here.Leaf
	out := &LayoutReport{Hung: []HungSpot{}, Fasten: []caution.Caution{}, Joists: a.joists(in)}
	_, faults := plan.ResolveRoom(a.plan)
	for _, f := range faults {
		if f.Surface == a.here.Surface.ID {
			out.Faults = append(out.Faults, f)
		}
	}
	var lengths []unit.Length
	for _, s := range takeoff.Screws(b, leaf, string(a.plan.Region)) {
		lengths = append(lengths, s.Length)
	}
	out.Fasten = append(out.Fasten, load.Fasten(b, leaf, lengths)...)
	out.Spacing = a.spacing()
	out.Line = a.line(in)
	c, ok := clipsOf(a.plan, a.here, in)
	if !ok {
		if out.Joists == nil && out.Line == nil && len(out.Fasten) == 0 {
			return nil
		}
		return out
	}
	out.Face, out.Rules = c.face, c.rules
	for _, h := range c.in.Hung {
		out.Hung = append(out.Hung, HungSpot{ID: h.Hung.ID, Name: h.Hung.Name, X: float64(h.X), Y: float64(h.Y), Mass: value(h.Mass, kindMass, "")})
	}
	l, fault := c.lay()
	if fault != nil {
		out.Fault = &Sentence{Code: string(fault.Code), Args: fault.Args}
		return out
	}
	out.Layout = &l
	gap, near, _ := b.Holder(leaf)
	g := b.Gaps[gap]
	fixing := g.Held(near).Fixing
	if l.Per > 0 {
		h := load.Hang(float64(fixing.Stiffness), float64(fixing.StiffnessLow), float64(fixing.StiffnessHigh), l.Per, c.carried.Area, g.Depth, nil)
		out.Hanging = &h
		if uneven, some := load.Uneven(l, float64(fixing.Stiffness)); some {
			out.Fasten = append(out.Fasten, uneven)
		}
	}
	if c.face.Ceiling {
		line := unit.LineMass(float64(c.carried.Area)*float64(c.rules.Rows)) + c.carried.Channel
		if span, _ := load.SpanOf(c.carried.Section, line, load.Multiple, load.SagLimit); span > 0 {
			out.Span = value(span, kindLength, "")
		}
	}
	if l.Rating > 0 {
		r, wide, err := load.Widest(c.face, c.rules, c.carried, c.ratings, rowSteps(a.plan.Units))
		if fault, none := err.(*load.Fault); none {
			out.Widest = &WidestReport{None: &Sentence{Code: string(fault.Code), Args: fault.Args}}
		} else {
			along := r.Along
			if s := c.face.Frame.Spacing; s > 0 {
				along = s * unit.Length(r.Every)
			}
			out.Widest = &WidestReport{
				Rows: value(r.Rows, kindLength, ""), Along: value(along, kindLength, ""),
				Share: value(wide.Spots[wide.Worst].Of, kindShare, ""), Clips: len(wide.Spots),
			}
		}
		if l.Count.Over > 0 {
			if at, better, found := load.Mend(c.face, c.rules, c.carried, c.ratings); found {
				out.Mend = &MendReport{X: float64(at.X), Y: float64(at.Y), Share: value(better.Spots[better.Worst].Of, kindShare, "")}
			}
		}
	}
	return out
}

// spacing returns how far apart the screws of the edited leaf's layers are, in
// their order from the room; nil where nothing holds the leaf.
func (a *assessment) spacing() (out []takeoff.Spacing) {
	b, leaf := a.here.Assembly, a.here.Leaf
	gap, near, ok := b.Fixed(leaf)
	if !ok {
		return nil
	}
	channel := b.Gaps[gap].Held(near).Grid.Rows > 0
	layers := b.Leaves[leaf].Layers
	for i, y := range layers {
		last := i == len(layers)-1 // hung last: the one away from the frame
		if near {
			last = i == 0
		}
		s := takeoff.ScrewSpacing(string(a.plan.Region), takeoff.Place(a.here.Surface.Kind), y.Board.Kind, channel, last)
		if last {
			s = s.Closer(b.Gaps[gap].Held(near).Screws)
		}
		out = append(out, s)
	}
	return out
}

// line is the load along the foot of a wall's new frame, kg/m: its new boards,
// fill, studs and plates; nil for a frame that is there, and without a height.
func (a *assessment) line(in plan.Inside) *Value {
	b := a.here.Assembly
	if a.here.Surface.Kind != plan.Wall {
		return nil
	}
	frame := load.InnerFrame{Height: in.Face(a.here.Surface.ID).Height}
	fresh := false
	for _, g := range b.Gaps {
		if g.There || g.Frame.Mass == 0 {
			continue
		}
		fresh = true
		frame.Stud, frame.Spacing = g.Frame.Mass, g.Spacing
		if !g.FillThere {
			frame.Wall += g.FillMass()
		}
	}
	if !fresh || frame.Height <= 0 {
		return nil
	}
	for _, l := range b.Leaves {
		frame.Wall += l.NewMass()
	}
	_, wall := frame.OnFloor()
	return value(wall, kindLineMass, "")
}

// joists tells what a ceiling puts on what carries it; nil for walls and where
// nothing new hangs on joists.
func (a *assessment) joists(in plan.Inside) *JoistReport {
	if a.here.Surface.Kind != plan.Ceiling {
		return nil
	}
	b, leaf := a.here.Assembly, a.here.Leaf
	gap, _, ok := b.Fixed(leaf)
	if !ok {
		return nil
	}
	g := b.Gaps[gap]
	typed := plan.Joists{}
	if j := a.here.Surface.Joists; j != nil {
		typed = *j
	}
	above := load.Above(typed.Above)
	if above == "" {
		above = load.FloorAbove
	}
	face := in.Face(a.here.Surface.ID)
	c := load.Ceiling{Above: above, Region: string(a.plan.Region), Spacing: g.Spacing, Added: load.Added(b, leaf), Code: load.CodeAdded(b, leaf)}
	if face.DeadSaid {
		c.There = face.Dead
	}
	out := &JoistReport{Above: above, Added: c.Added, Code: c.Code, Dead: load.DeadOn(c), Limit: load.AddedLimit, Cautions: []caution.Caution{}}
	facts := load.Facts{Ceiling: c, Span: face.Span}
	if t, known := load.TimberOf(typed.Grade); known && face.Span > 0 && out.Dead.Known {
		j := load.Joist{
			Timber: t, Width: g.Frame.Width, Depth: g.Frame.Depth, Span: face.Span, Spacing: g.Spacing,
			Dead: out.Dead.ThereHigh + c.Code, Live: out.Dead.Sized.Live, Limit: out.Dead.Sized.Limit,
		}
		bend := j.Bend()
		out.Bend, facts.Joist = &bend, &j
	}
	out.Cautions = append(out.Cautions, load.Engineer(facts)...)
	return out
}
