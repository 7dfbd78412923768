// Package core is the one door to the core: a plan in, a report out. It joins
// the packages below it and holds no physics of its own.
package core

import (
	"twoleaf/core/appraise"
	"twoleaf/core/assembly"
	"twoleaf/core/caution"
	"twoleaf/core/evidence"
	"twoleaf/core/internal/wire"
	"twoleaf/core/load"
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/takeoff"
	"twoleaf/core/transmission"
	"twoleaf/core/unit"
)

// Tables is a bounded cache of what build-ups share, and of those appraised
// before, owned by the caller, one a worker; nil gives the same digits, slower.
type Tables struct {
	loss   *transmission.Tables
	before map[string]appraise.Result // by all that they were appraised from
	memo   room.Memo
}

// NewTables returns an empty cache.
func NewTables() *Tables {
	return &Tables{loss: transmission.NewTables(), before: map[string]appraise.Result{}}
}

// mostBefore is how many appraised build-ups are kept before starting afresh: a
// room's, with what side by side and the next money try.
const mostBefore = 120

// appraise returns what is said of a build-up, with its spread where doubt is
// asked for: a keystroke changes one of the many that are on screen.
func (t *Tables) appraise(b assembly.BuildUp, leaf int, rw, doubt bool) (appraise.Result, error) {
	text, err := wire.Marshal(appraised{b, leaf, rw, doubt})
	if r, known := t.before[string(text)]; err == nil && known {
		return r, nil
	}
	r, bad := appraise.Appraise(b, appraise.Options{Leaf: leaf, Accuracy: accuracy}, t.loss)
	if bad != nil {
		return r, bad
	}
	if doubt {
		r.Doubt(b, rw, t.loss)
	}
	if err == nil {
		if len(t.before) >= mostBefore {
			clear(t.before)
		}
		t.before[string(text)] = r
	}
	return r, nil
}

// appraised is all that one appraisal depends on.
type appraised struct {
	BuildUp   assembly.BuildUp
	Leaf      int
	Rw, Doubt bool
}

// accuracy is what every figure shown is worked out with, so that differences
// are taken on one and the same grid.
const accuracy = transmission.Converged

// Assess returns what there is to say of one surface of a plan, or what stands
// in the way of it. The report is nil where there are faults.
func Assess(p plan.Plan, want Want, t *Tables) (*Report, []*plan.Fault) {
	if faults := plan.Check(p); len(faults) > 0 {
		return nil, faults
	}
	r, faults := plan.Resolve(p, want.Surface)
	if len(faults) > 0 {
		return nil, faults
	}
	a := assessment{plan: p, want: want, t: t, here: r, rw: rated(p.Region)}
	return a.report()
}

// rated tells a region that rates by Rw from one that rates by STC.
func rated(r plan.Region) (rw bool) { return r == plan.UK || r == plan.EU || r == plan.AU }

// assessment is one surface on its way to a report.
type assessment struct {
	plan plan.Plan
	want Want
	t    *Tables
	here plan.Resolved
	rw   bool // the region rates by Rw

	inside     plan.Inside
	yours, ref appraise.Result
	refHere    plan.Resolved
}

func (a *assessment) options() appraise.Options {
	return appraise.Options{Leaf: a.here.Leaf, Accuracy: accuracy}
}

func (a *assessment) report() (*Report, []*plan.Fault) {
	if a.t == nil {
		a.t = NewTables()
	}
	var faults []*plan.Fault
	if a.refHere, faults = a.here.WithLeaf(a.here.Reference()); len(faults) > 0 {
		return nil, faults
	}
	var err error
	if a.yours, err = a.t.appraise(a.here.Assembly, a.here.Leaf, a.rw, true); err != nil {
		return nil, a.impossible(err)
	}
	a.inside, _ = plan.ResolveRoom(a.plan)
	a.laid(&a.yours, a.here)
	if a.ref, err = a.t.appraise(a.refHere.Assembly, a.here.Leaf, a.rw, false); err != nil {
		return nil, a.impossible(err)
	}
	a.laid(&a.ref, a.refHere)
	rep := &Report{
		Surface: a.here.Surface.ID, BuildUp: a.here.BuildUp.ID, Leaf: a.here.Leaf,
		RatingIs: "STC", Currency: string(a.plan.Region.Currency()),
		IsRef:    sameLayers(a.here.BuildUp.Leaves[a.here.Leaf].Layers, a.here.Reference()),
		Cautions: []caution.Caution{}, Verdicts: map[string]Verdict{},
	}
	if a.rw {
		rep.RatingIs = "Rw"
	}
	if a.here.Face > 0 {
		rep.Area = &Value{V: float64(a.here.Face), Kind: kindArea, Origin: origin(a.here.FaceFrom), As: string(a.here.FaceFrom.As)}
	}
	rep.Yours = a.figures(a.yours)
	rep.Reference = a.figures(a.ref)
	against(&rep.Yours, rep.Reference)
	rep.Leaves = a.leaves(a.here)
	rep.RefLayers = a.layers(a.refHere, a.here.Leaf)
	rep.Gaps = a.gaps()
	rep.Load = a.load()
	rep.Buy = a.buy(rep)
	advice := a.advice()
	rep.Cautions = a.cautions(rep, advice)
	if a.want.Sound {
		rep.Sound = a.sound(advice)
	}
	if a.want.Rows {
		if rep.Rows, faults = a.rows(rep); len(faults) > 0 {
			return nil, faults
		}
		rep.Picks = picks(rep.Rows)
	}
	if a.want.Ladder {
		if rep.Ladder, faults = a.ladder(); len(faults) > 0 {
			return nil, faults
		}
	}
	if a.want.Nearest {
		if rep.Nearest, faults = a.nearest(); len(faults) > 0 {
			return nil, faults
		}
	}
	if a.want.Room {
		rep.House = newHouse(a.plan, a.rw, a.t).report(a.want)
	}
	if a.want.Layout {
		rep.Layout = a.layout()
	}
	if a.want.List {
		rep.List = newShopping(a.plan).list(a.want.Try, a.want.Got)
	}
	a.verdicts(rep)
	if a.want.Work != "" {
		rep.Working = a.working(a.want.Work)
	}
	return rep, nil
}

// impossible says a build-up that the model refuses in the plan's words.
func (a *assessment) impossible(err error) []*plan.Fault {
	return []*plan.Fault{{
		Code: "impossible", Surface: a.here.Surface.ID, BuildUp: a.here.BuildUp.ID, Leaf: -1, Field: "buildUp",
		Words: a.here.Surface.Name + ": " + err.Error(),
	}}
}

func sameLayers(a, b []plan.Layer) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Board != b[i].Board || i < len(a)-1 && a[i].Join != b[i].Join {
			return false
		}
	}
	return true
}

// figures returns the six figures and the stack of one result.
func (a *assessment) figures(r appraise.Result) Figures {
	f := Figures{
		Mass:      value(r.Mass, kindSurfaceMass, "mass"),
		Bass:      spread(r.Bass, r.Spread.Bass, "bass"),
		Rating:    spread(r.Rating(a.rw), r.Spread.Rating, "rating"),
		Built:     value(appraise.Built(r.Rating(a.rw)), kindDecibel, "built"),
		Thickness: value(r.Thickness, kindLength, "thickness"),
		LeafThick: value(r.LeafThickness, kindLength, "thickness"),
		Load:      string(r.Clip.State),
		C:         r.Rw.C, Ctr: r.Rw.Ctr,
	}
	if r.Priced {
		f.Cost = value(r.Cost, kindMoneyRate, "cost")
		if a.invented() {
			f.Cost.Origin = Demo
		}
	}
	if r.Clip.State != load.None {
		f.ClipLoad = value(r.Clip.OnClip, kindMass, "clip")
		if r.Clip.Rating > 0 {
			f.Clip = value(r.Clip.Share, kindShare, "clip")
		}
	}
	if r.Stacked {
		f.Stack = value(r.Stack, kindMass, "mass")
	}
	if r.StackPriced {
		f.StackCost = value(r.StackCost, kindMoney, "cost")
	}
	return f
}

// invented reports whether a price of the edited leaf is from the invented list.
func (a *assessment) invented() bool {
	for _, y := range a.here.BuildUp.Leaves[a.here.Leaf].Layers {
		if !y.There && a.here.Boards[y.Board].Price.Origin == plan.Invented {
			return true
		}
	}
	return false
}

// against sets the differences of figures from the reference's.
func against(f *Figures, ref Figures) {
	for _, pair := range [][2]*Value{
		{f.Mass, ref.Mass}, {f.Cost, ref.Cost}, {f.Clip, ref.Clip}, {f.ClipLoad, ref.ClipLoad}, {f.Bass, ref.Bass},
		{f.Rating, ref.Rating}, {f.Built, ref.Built}, {f.Thickness, ref.Thickness}, {f.LeafThick, ref.LeafThick},
		{f.Stack, ref.Stack}, {f.StackCost, ref.StackCost},
	} {
		if pair[0] == nil || pair[1] == nil {
			continue
		}
		d := pair[0].V - pair[1].V
		pair[0].Diff = &d
		pair[0].Same = unit.Same(pair[0].V, pair[1].V)
	}
}

func (a *assessment) leaves(r plan.Resolved) []LeafReport {
	out := make([]LeafReport, len(r.Assembly.Leaves))
	for i, l := range r.Assembly.Leaves {
		out[i] = LeafReport{
			Mass: value(l.Mass(), kindSurfaceMass, ""), Thickness: value(l.Thickness(), kindLength, ""),
			There: l.There(), Layers: a.layers(r, i),
		}
	}
	return out
}

func (a *assessment) layers(r plan.Resolved, leaf int) []LayerReport {
	l := r.Assembly.Leaves[leaf]
	screws := takeoff.Screws(r.Assembly, leaf, string(a.plan.Region))
	out := make([]LayerReport, len(l.Layers))
	for i, y := range l.Layers {
		h := r.Boards[r.BuildUp.Leaves[leaf].Layers[i].Board]
		b := h.Board
		row := LayerReport{
			ID: y.ID, Board: b.ID, Short: b.Short, Row: b.Row, Brief: b.Brief, Nominal: b.Nominal, Kind: string(b.Kind),
			Heavy: float64(b.Mass) / float64(b.Thickness), There: y.There, Join: string(y.Join),
			Thickness: from(b.Thickness, kindLength, h.Thickness),
			Mass:      from(b.Mass, kindSurfaceMass, h.Mass),
			Sheets:    sizeTexts(b), Plenty: h.Plenty, Wood: b.Kind.Wood(), FireRated: b.FireRated,
			ScrewWhy: string(screws[i].Why),
		}
		if b.MassLow > 0 {
			low, high := float64(b.MassLow), float64(b.MassHigh)
			row.Mass.Low, row.Mass.High = &low, &high
		}
		if len(row.Sheets) > 0 {
			row.Sheet = row.Sheets[0]
		}
		if w, ok := h.Weight(); ok {
			row.Weight = from(w, kindMass, h.Mass)
		}
		if m, ok := h.SheetPrice(); ok && !y.There {
			row.Price = from(m, kindMoney, h.Price)
		}
		if h.StockSaid {
			row.Stock = count(h.Stock, Typed)
		}
		if h.Owned > 0 {
			row.Owned = count(h.Owned, Typed)
		}
		if !y.There {
			row.Need = takeoff.Sheets(r.Face, h.Area(), r.Waste)
		}
		if screws[i].Length > 0 {
			row.Screw = value(screws[i].Length, kindLength, "")
		}
		if screws[i].Most > 0 {
			row.ScrewMax = value(screws[i].Most, kindLength, "")
		}
		out[i] = row
	}
	return out
}

func (a *assessment) gaps() []GapReport {
	out := make([]GapReport, len(a.here.Assembly.Gaps))
	for i, g := range a.here.Assembly.Gaps {
		f := a.here.Gaps[i]
		out[i] = GapReport{
			ID: a.here.BuildUp.Gaps[i].ID, Depth: from(g.Depth, kindLength, f.Depth),
			Frame: g.Frame.ID, FrameKind: string(g.Frame.Kind), FrameName: g.Frame.Name,
			Fill: g.Fill.ID, FillName: g.Fill.Name, There: g.There, FillThere: g.FillThere,
			Near: held(g.Near, f.Near), Far: held(g.Far, f.Far),
		}
		if evidence.OnStuds(a.here.Assembly, i) {
			out[i].Near.Screws, out[i].Far.Screws = a.screws(g.Near, f.Near), a.screws(g.Far, f.Far)
		}
		if d := assembly.FrameDepth(g.Frame); d > 0 {
			out[i].FrameDepth = value(d, kindLength, "")
			out[i].FrameWidth = value(g.Frame.Width, kindLength, "")
		}
		if g.Spacing > 0 {
			out[i].Spacing = from(g.Spacing, kindLength, f.Spacing)
		}
		if g.Fill.ID != "" {
			out[i].FillDepth = from(g.FillDepth, kindLength, f.FillDepth)
		}
	}
	return out
}

// screws returns how far apart the screws of a side on studs are: as typed, else
// at least as the code table has them (NBC2020), 300 mm or 12 in; nil where nothing is screwed.
func (a *assessment) screws(h assembly.Held, f plan.HeldFrom) *Value {
	switch {
	case h.Fixing.Kind == material.Untied:
		return nil
	case h.Screws > 0:
		return from(h.Screws, kindLength, f.Screws)
	case a.plan.Units == plan.Customary:
		return fixed(float64(12*unit.Inch), kindLength)
	}
	return fixed(float64(300*unit.Millimetre), kindLength)
}

func held(h assembly.Held, f plan.HeldFrom) HeldReport {
	out := HeldReport{
		Fixing: h.Fixing.ID, Kind: string(h.Fixing.Kind), Name: h.Fixing.Name,
		StandOff: value(h.Fixing.StandOff, kindLength, ""), Shorts: h.Shorts > 0,
	}
	if h.Grid.Rows > 0 {
		out.Rows, out.Along = from(h.Grid.Rows, kindLength, f.Rows), from(h.Grid.Along, kindLength, f.Along)
	}
	if h.Rating > 0 {
		out.Rating = from(h.Rating, kindMass, f.Rating)
	}
	if h.Extra > 0 {
		out.Extra = from(h.Extra, kindSurfaceMass, f.Extra)
	}
	return out
}

func (a *assessment) load() *LoadReport {
	c := a.yours.Clip
	if c.State == load.None {
		return nil
	}
	gap := a.here.Gaps[c.Gap].Held(c.Near)
	out := &LoadReport{
		Leaf: a.here.Leaf, Area: value(c.Area, kindArea, "clip"), Boards: value(c.Boards, kindSurfaceMass, "mass"),
		Channel: value(c.Channel, kindSurfaceMass, ""), Own: value(c.Own, kindMass, "clip"), OnClip: value(c.OnClip, kindMass, "clip"),
		State: string(c.State), PerArea: &Value{V: c.Per, Kind: kindNumber, Origin: Computed}, Count: c.Count(a.here.Face),
	}
	out.Channel.Origin = Typical
	if c.Worst != nil {
		out.Area, out.Own = value(c.Worst.Area, kindArea, "clip"), value(c.Worst.Share, kindMass, "clip")
	}
	if c.Fill > 0 {
		out.Fill = value(c.Fill, kindSurfaceMass, "")
	}
	if c.Extra > 0 {
		out.Extra = from(c.Extra, kindSurfaceMass, gap.Extra)
	}
	if c.Rating > 0 {
		out.Rating = from(c.Rating, kindMass, gap.Rating)
		out.Share = value(c.Share, kindShare, "clip")
		out.HoldsRows = value(c.HoldsRows, kindLength, "")
	}
	if a.here.Surface.Kind == plan.Ceiling {
		out.Added = value(load.Added(a.here.Assembly, a.here.Leaf), kindSurfaceMass, "")
	}
	return out
}

// buy returns the first form of the list: every new board of every leaf.
func (a *assessment) buy(rep *Report) BuyReport {
	b := BuyReport{Lines: []BuyLine{}, Screws: []Value{}, Waste: &Value{V: a.here.Waste, Kind: kindShare, Origin: origin(a.here.WasteFrom), As: string(a.here.WasteFrom.As)}}
	line := map[string]int{}
	screws := map[float64]bool{}
	mass, cost, priced := 0.0, 0.0, true
	for _, l := range rep.Leaves {
		for _, y := range l.Layers {
			if y.There {
				continue
			}
			if y.Screw != nil && !screws[y.Screw.V] {
				screws[y.Screw.V] = true
				b.Screws = append(b.Screws, *y.Screw)
			}
			if y.Need == 0 {
				continue
			}
			i, known := line[y.Board]
			if !known {
				i = len(b.Lines)
				line[y.Board] = i
				b.Lines = append(b.Lines, BuyLine{Board: y.Board, Short: y.Short, Row: y.Row, Brief: y.Brief, Nominal: y.Nominal, Sheet: y.Sheet, Weight: y.Weight, Price: y.Price})
			}
			b.Lines[i].Need += y.Need
		}
	}
	sortValues(b.Screws)
	for i := range b.Lines {
		y := &b.Lines[i]
		h := a.here.Boards[y.Board]
		y.Owned = min(h.Owned, y.Need)
		y.Buy = y.Need - y.Owned
		if h.StockSaid && !h.Plenty {
			y.Lacking = max(0, y.Buy-h.Stock)
		}
		b.Sheets += y.Need
		if y.Weight != nil {
			mass += float64(y.Need) * y.Weight.V
		}
		if y.Price == nil {
			priced = priced && y.Buy == 0
			continue
		}
		y.Cost = &Value{V: float64(y.Buy) * y.Price.V, Kind: kindMoney, Origin: y.Price.Origin}
		cost += y.Cost.V
	}
	b.Mass = value(mass, kindMass, "")
	if priced {
		b.Cost = value(cost, kindMoney, "")
	}
	return b
}

// sheetsCost returns the price of the sheets of a leaf's new layers by the area
// rule, owned ones not taken off, and how many they are.
func (a *assessment) sheetsCost(layers []LayerReport) (money float64, n int, ok bool) {
	ok = true
	for _, y := range layers {
		if y.There {
			continue
		}
		n += y.Need
		if y.Price == nil {
			ok = false
			continue
		}
		money += float64(y.Need) * y.Price.V
	}
	return money, n, ok && n > 0
}

func (a *assessment) advice() []appraise.Advice {
	return appraise.Advise(a.here.Assembly, a.yours, a.options(), a.rw, a.palette(), a.t.loss)
}

// palette are the boards that a dip may be mended with: those of the region
// that come in sheets, as the shelf has them; none that is out of stock.
func (a *assessment) palette() []material.Board { return palette(a.plan) }

func palette(p plan.Plan) []material.Board {
	var out []material.Board
	for _, b := range material.InRegion(string(p.Region)) {
		if b.Kind.Masonry() || b.Area() <= 0 {
			continue
		}
		h, faults := plan.BoardHere(p, b.ID)
		if len(faults) > 0 || h.StockSaid && h.Stock == 0 && !h.Plenty {
			continue
		}
		out = append(out, h.Board)
	}
	return out
}
