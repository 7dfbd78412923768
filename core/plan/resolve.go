package plan

import (
	"fmt"
	"math"
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Resolved is one surface of a plan in SI, with where every value comes from.
type Resolved struct {
	Surface   Surface
	BuildUp   BuildUp
	Assembly  assembly.BuildUp
	Leaf      int             // the leaf being edited
	Face      unit.Area       // of the surface, m²; 0 if not said
	FaceFrom  From            // typed, or computed from width × height
	Boards    map[string]Here // by board id, of every layer
	Gaps      []GapFrom
	Waste     float64 // share of the area lost in cutting
	WasteFrom From

	plan *Plan
}

// GapFrom is where the values of a gap come from.
type GapFrom struct {
	Depth, Spacing, FillDepth From
	Near, Far                 HeldFrom
}

// HeldFrom is where the values of a fixing come from.
type HeldFrom struct{ Rows, Along, Rating, Extra, Screws From }

// Held returns the side of the gap.
func (g GapFrom) Held(near bool) HeldFrom {
	if near {
		return g.Near
	}
	return g.Far
}

// usualWaste is the share of sheet area lost in cutting where none is typed (trade guides give 10 to 15 %).
const usualWaste = 0.10

// shortsShare is the share of the crossings of channel and frame at which a
// screw is taken to have reached the frame, where Shorts is set.
const shortsShare = 0.1

// SurfaceByID returns a surface; "" asks for the first.
func (p *Plan) SurfaceByID(id string) (Surface, bool) {
	for _, s := range p.Surfaces {
		if s.ID == id || id == "" {
			return s, true
		}
	}
	return Surface{}, false
}

// BuildUpByID returns a build-up.
func (p *Plan) BuildUpByID(id string) (BuildUp, bool) {
	for _, b := range p.BuildUps {
		if b.ID == id {
			return b, true
		}
	}
	return BuildUp{}, false
}

// Resolve returns a surface of a plan in SI, the shelf applied, and everything
// that stands in the way; "" asks for the first surface. With faults the result
// is not to be computed with.
func Resolve(p Plan, surface string) (Resolved, []*Fault) {
	s, ok := p.SurfaceByID(surface)
	if !ok {
		if len(p.Surfaces) == 0 {
			return Resolved{}, []*Fault{place{f: Fault{Leaf: -1}}.fault("missing", "surfaces", "", "a plan needs at least one wall, ceiling or floor")}
		}
		return Resolved{}, []*Fault{place{f: Fault{Leaf: -1}}.unknown("surface", surface)}
	}
	at := place{f: Fault{Leaf: -1, Surface: s.ID, BuildUp: s.BuildUp}, words: nameOf(s)}
	b, ok := p.BuildUpByID(s.BuildUp)
	if !ok {
		return Resolved{}, []*Fault{at.unknown("buildUp", s.BuildUp)}
	}
	return p.resolve(s, b, at)
}

// nameOf is how a surface is called in a sentence.
func nameOf(s Surface) string {
	switch {
	case s.Name != "":
		return clip(s.Name)
	case s.Kind != "":
		return clip(string(s.Kind))
	}
	return clip(s.ID)
}

func (p *Plan) resolve(s Surface, b BuildUp, at place) (Resolved, []*Fault) {
	if f := counts(b, at); f != nil {
		return Resolved{}, f
	}
	r := Resolved{Surface: s, BuildUp: b, Leaf: b.Compare.Leaf, Boards: map[string]Here{}, plan: p}
	var faults []*Fault
	if r.Leaf < 0 || r.Leaf >= len(b.Leaves) {
		f := at.fault("unknown", "leaf", fmt.Sprint(r.Leaf+1), fmt.Sprintf("there is no leaf %d to edit", r.Leaf+1))
		f.Low, f.High = "1", fmt.Sprint(len(b.Leaves))
		faults = append(faults, f)
		r.Leaf = 0
	}
	r.face(at, &faults)
	r.waste(at, &faults)
	for i, l := range b.Leaves {
		leaf, f := r.leaf(l.Layers, i, at)
		faults = append(faults, f...)
		r.Assembly.Leaves = append(r.Assembly.Leaves, leaf)
	}
	for _, g := range b.Gaps {
		gap, from, f := r.gap(g, at)
		faults = append(faults, f...)
		r.Assembly.Gaps = append(r.Assembly.Gaps, gap)
		r.Gaps = append(r.Gaps, from)
	}
	r.Assembly.Horizontal = s.Kind == Ceiling || s.Kind == Floor
	if len(faults) == 0 {
		faults = r.problems(at)
	}
	return r, faults
}

// counts returns the faults of a build-up's lists, which must be sound before anything else is looked at.
func counts(b BuildUp, at place) []*Fault {
	switch n := len(b.Leaves); {
	case n == 0:
		return []*Fault{at.fault("missing", "leaves", "", "the build-up has no leaf")}
	case n > assembly.MaxLeaves:
		return []*Fault{at.tooMany("leaves", n, assembly.MaxLeaves)}
	case len(b.Gaps) != n-1:
		return []*Fault{at.fault("uneven", "gaps", fmt.Sprint(len(b.Gaps)), fmt.Sprintf("%d leaves need %d gaps between them, not %d", n, n-1, len(b.Gaps)))}
	}
	return nil
}

func (r *Resolved) face(at place, faults *[]*Fault) {
	s := r.Surface
	w, hasW := at.read(faults, "width", s.Width, unit.OfLength, wallRange, false)
	h, hasH := at.read(faults, "height", s.Height, unit.OfLength, wallRange, false)
	if hasW && hasH {
		r.Assembly.Width, r.Assembly.Height = unit.Length(w), unit.Length(h)
		r.Face, r.FaceFrom = unit.Area(w*h), From{Origin: Computed}
	}
	if a, ok := at.read(faults, "area", s.Area, unit.OfArea, faceRange, false); ok {
		r.Face, r.FaceFrom = unit.Area(a), typed(s.Area)
	}
}

func (r *Resolved) waste(at place, faults *[]*Fault) {
	r.Waste, r.WasteFrom = usualWaste, From{Origin: Typical}
	whole := place{f: Fault{Leaf: -1}}
	if v, ok := whole.read(faults, "waste", r.plan.Waste, unit.OfPercent, wasteRange, true); ok {
		r.Waste, r.WasteFrom = v, typed(r.plan.Waste)
	}
}

// leaf returns layers in SI; number is which leaf of the build-up, from 0.
func (r *Resolved) leaf(layers []Layer, number int, at place) (assembly.Leaf, []*Fault) {
	at.f.Leaf = number
	at.words = fmt.Sprintf("%s, leaf %d", at.words, number+1)
	switch n := len(layers); {
	case n == 0:
		return assembly.Leaf{}, []*Fault{at.fault("missing", "layers", "", "the leaf has no board")}
	case n > assembly.MaxLayers:
		return assembly.Leaf{}, []*Fault{at.tooMany("layers", n, assembly.MaxLayers)}
	}
	out := assembly.Leaf{Layers: make([]assembly.Layer, 0, len(layers))}
	var faults []*Fault
	for i, y := range layers {
		here := at
		here.f.Layer = y.ID
		here.words = fmt.Sprintf("%s, layer %d", at.words, i+1)
		h, known := r.Boards[y.Board]
		if !known {
			var f []*Fault
			h, f = r.plan.here(y.Board, here)
			faults = append(faults, f...)
			if len(f) == 0 {
				r.Boards[y.Board] = h
			}
		}
		layer := assembly.Layer{ID: y.ID, Board: h.Board, Join: assembly.Join(y.Join), There: y.There, Price: h.Rate, Priced: h.Priced}
		switch layer.Join {
		case assembly.Loose, assembly.Glued:
		case assembly.Film:
			layer.JoinPrice, layer.JoinPriced = r.plan.filmHere()
		default:
			faults = append(faults, here.unknown("join", y.Join))
		}
		out.Layers = append(out.Layers, layer)
	}
	return out, faults
}

func (r *Resolved) gap(g Gap, at place) (assembly.Gap, GapFrom, []*Fault) {
	at.f.Gap = g.ID
	at.words += ", gap"
	if n := slices.IndexFunc(r.BuildUp.Gaps, func(x Gap) bool { return x.ID == g.ID }); len(r.BuildUp.Gaps) > 1 && n >= 0 {
		at.words = fmt.Sprintf("%s %d", at.words, n+1)
	}
	var faults []*Fault
	out := assembly.Gap{ID: g.ID, There: g.There, FillThere: g.FillThere, FillLies: r.Surface.Kind == Ceiling}
	from := GapFrom{}
	frame, ok := material.FrameByID(g.Frame)
	if !ok {
		return out, from, []*Fault{at.unknown("frame", g.Frame)}
	}
	out.Frame = frame
	if len(frame.Spacings) > 0 {
		out.Spacing, from.Spacing = r.usual(frame.Spacings[0]), From{Origin: Typical}
		if v, ok := at.read(&faults, "spacing", g.Spacing, unit.OfLength, spacingRange, false); ok {
			out.Spacing, from.Spacing = unit.Length(v), typed(g.Spacing)
		}
	}
	out.Near, from.Near = r.held(g.Near, out.Spacing, at, &faults)
	out.Far, from.Far = r.held(g.Far, out.Spacing, at, &faults)
	out.Depth, from.Depth = out.DefaultDepth(), From{Origin: Computed}
	if v, ok := at.read(&faults, "depth", g.Depth, unit.OfLength, depthRange, false); ok {
		out.Depth, from.Depth = unit.Length(v), typed(g.Depth)
	} else if g.Depth == "" && out.Depth == 0 {
		faults = append(faults, at.fault("missing", "depth", "", "a gap without a frame needs its depth"))
	}
	if g.Fill == "" {
		return out, from, faults
	}
	fill, ok := material.FillByID(g.Fill)
	if !ok {
		return out, from, append(faults, at.unknown("fill", g.Fill))
	}
	out.Fill = fill
	out.FillDepth, from.FillDepth = usualFill(fill, out), From{Origin: Typical}
	if v, ok := at.read(&faults, "fillDepth", g.FillDepth, unit.OfLength, fillRange, false); ok {
		out.FillDepth, from.FillDepth = unit.Length(v), typed(g.FillDepth)
	}
	if r.plan.Prices == DemoPrices && !g.FillThere {
		if d, has := material.Demo(fill.ID, string(r.plan.Region)); has {
			out.FillPrice = d.Rate(0)
		}
	}
	return out, from, faults
}

// usual turns 16 and 24 in of a table for all regions into 400 and 600 mm where
// sheets and studs are metric.
func (r *Resolved) usual(l unit.Length) unit.Length {
	if material.TableRegion(string(r.plan.Region)) == material.NorthAmerica {
		return l
	}
	round := unit.Length(math.Round(float64(l)/0.05) * 0.05)
	if math.Abs(float64(l-round)) <= 0.02*float64(l) {
		return round
	}
	return l
}

// usualFill returns the depth in which a fill is laid: the deepest as sold that
// goes between the members, or into the gap where there are none; a fill that is
// blown in takes it all, and what is only sold deeper is pressed in.
func usualFill(f material.Fill, g assembly.Gap) unit.Length {
	room := g.Frame.Depth
	if room <= 0 || unit.Over(room, g.Depth) {
		room = g.Depth
	}
	best := unit.Length(0)
	for _, d := range f.Depths {
		if !unit.Over(d, room) && d > best {
			best = d
		}
	}
	if best == 0 {
		return room
	}
	return best
}

func (r *Resolved) held(h Held, spacing unit.Length, at place, faults *[]*Fault) (assembly.Held, HeldFrom) {
	id := h.Fixing
	if id == "" {
		id = "screwed"
	}
	fixing, ok := material.FixingByID(id)
	if !ok {
		*faults = append(*faults, at.unknown("fixing", id))
		return assembly.Held{}, HeldFrom{}
	}
	out, from := assembly.Held{Fixing: fixing}, HeldFrom{}
	resilient := fixing.Kind == material.Clip || fixing.Kind == material.Channel
	if resilient {
		out.Grid.Rows, out.Grid.Along = fixing.UsualGrid(string(r.plan.Region))
		if out.Grid.Along == 0 {
			out.Grid.Along = spacing
		}
		from.Rows, from.Along = From{Origin: Typical}, From{Origin: Typical}
	}
	if v, ok := at.read(faults, "rows", h.Rows, unit.OfLength, gridRange, false); ok && resilient {
		out.Grid.Rows, from.Rows = unit.Length(v), typed(h.Rows)
	}
	if v, ok := at.read(faults, "along", h.Along, unit.OfLength, gridRange, false); ok && resilient {
		out.Grid.Along, from.Along = unit.Length(v), typed(h.Along)
	}
	if v, ok := at.read(faults, "rating", h.Rating, unit.OfMass, ratingRange, false); ok && fixing.Kind == material.Clip {
		out.Rating, from.Rating = unit.Mass(v), typed(h.Rating)
		if h.Example && h.Rating == r.plan.Region.exampleRating() {
			from.Rating.Origin = Invented
		}
	}
	if v, ok := at.read(faults, "extra", h.Extra, unit.OfSurfaceMass, extraRange, true); ok {
		out.Extra, from.Extra = unit.SurfaceMass(v), typed(h.Extra)
	}
	if v, ok := at.read(faults, "screws", h.Screws, unit.OfLength, screwRange, false); ok && fixing.Kind != material.Untied {
		out.Screws, from.Screws = unit.Length(v), typed(h.Screws)
	}
	if h.Shorts && resilient && spacing > 0 && out.Grid.Rows > 0 {
		out.Shorts = shortsShare / float64(spacing*out.Grid.Rows)
	}
	return out, from
}

// problems returns what makes the build-up impossible, in the plan's words.
func (r *Resolved) problems(at place) []*Fault {
	var faults []*Fault
	for _, p := range r.Assembly.Check() {
		here := at
		var q func(v float64) string
		switch {
		case p.Layer >= 0:
			here.f.Leaf = p.Leaf
			here.f.Layer = r.BuildUp.Leaves[p.Leaf].Layers[p.Layer].ID
			here.f.Board = r.BuildUp.Leaves[p.Leaf].Layers[p.Layer].Board
			here.words = fmt.Sprintf("%s, leaf %d, layer %d, %s", at.words, p.Leaf+1, p.Layer+1, r.Assembly.Leaves[p.Leaf].Layers[p.Layer].Board.Name)
		case p.Leaf >= 0:
			here.f.Leaf = p.Leaf
			here.words = fmt.Sprintf("%s, leaf %d", at.words, p.Leaf+1)
		case p.Gap >= 0:
			here.f.Gap = r.BuildUp.Gaps[p.Gap].ID
			here.words += ", gap"
			if len(r.BuildUp.Gaps) > 1 {
				here.words = fmt.Sprintf("%s %d", here.words, p.Gap+1)
			}
		}
		switch p.Field {
		case "thickness", "depth", "fillDepth", "spacing", "rows", "along", "screws", "width", "height":
			q = r.plan.lengthWords
		case "mass", "extra":
			q = r.plan.massWords
		default:
			q = func(v float64) string { return fmt.Sprintf("%.3g", v) }
		}
		what := fmt.Sprintf("%s is %s", word(p.Field), q(p.Value))
		switch {
		case p.Field == "depth" && p.Code == assembly.Small:
			what = fmt.Sprintf("depth is %s, but frame and fixings take %s", q(p.Value), q(p.Low))
		case p.Field == "fillDepth" && p.Code == assembly.Large:
			what = fmt.Sprintf("the fill is %s deep in a gap of %s", q(p.Value), q(p.High))
		case p.Code == assembly.Small || p.Code == assembly.Large:
			what = fmt.Sprintf("%s; %s to %s is allowed", what, q(p.Low), q(p.High))
		}
		f := here.fault(string(p.Code), p.Field, q(p.Value), what)
		if p.High > 0 {
			f.Low, f.High = q(p.Low), q(p.High)
		}
		if p.Field == "fillDepth" && p.Code == assembly.Large {
			f.Mend = []string{q(p.High)}
		}
		if p.Field == "depth" && p.Code == assembly.Small {
			f.Mend = []string{q(p.Low)}
		}
		faults = append(faults, f)
	}
	return faults
}

// lengthWords writes a computed length in the plan's units, to 1/64 in or 0.1 mm.
func (p *Plan) lengthWords(v float64) string {
	if p.Units == Customary {
		return say(unit.Of(math.Round(v/float64(unit.Inch)*64)/64, unit.IN))
	}
	return say(unit.Of(math.Round(v*1e4)/10, unit.MM))
}

// massWords writes a computed mass per area in the plan's units, to three figures.
func (p *Plan) massWords(v float64) string {
	if p.Units == Customary {
		return fmt.Sprintf("%.3g psf", v/float64(unit.PoundPerSquareFoot))
	}
	return fmt.Sprintf("%.3g kg/m²", v)
}

// WithLeaf returns the same surface with other layers in the edited leaf; gaps
// and the other leaves are shared with r.
func (r Resolved) WithLeaf(layers []Layer) (Resolved, []*Fault) {
	at := place{f: Fault{Leaf: -1, Surface: r.Surface.ID, BuildUp: r.BuildUp.ID}, words: nameOf(r.Surface)}
	boards := make(map[string]Here, len(r.Boards)+2)
	for id, h := range r.Boards {
		boards[id] = h
	}
	r.Boards = boards
	leaf, faults := r.leaf(layers, r.Leaf, at)
	if len(faults) > 0 {
		return r, faults
	}
	r.Assembly.Leaves = slices.Clone(r.Assembly.Leaves)
	r.Assembly.Leaves[r.Leaf] = leaf
	r.BuildUp.Leaves = slices.Clone(r.BuildUp.Leaves)
	r.BuildUp.Leaves[r.Leaf] = Leaf{Layers: layers}
	return r, r.problems(at)
}

// ResolveLeaf returns a surface with other layers in its edited leaf, for a
// candidate or the reference: same gaps, same far leaf, other boards.
func ResolveLeaf(p Plan, surface string, layers []Layer) (Resolved, []*Fault) {
	r, faults := Resolve(p, surface)
	if len(faults) > 0 {
		return r, faults
	}
	return r.WithLeaf(layers)
}

// Reference returns the layers that the edited leaf is compared with: the
// typed ones, else two of the region's usual heavy gypsum board.
func (r Resolved) Reference() []Layer {
	if len(r.BuildUp.Compare.Reference) > 0 {
		return r.BuildUp.Compare.Reference
	}
	return ReferenceLayers(r.plan.Region)
}

// Rows returns the candidates of side by side: the typed ones, else the region's eight.
func (r Resolved) Rows() []Candidate {
	if len(r.BuildUp.Compare.Rows) > 0 {
		return r.BuildUp.Compare.Rows
	}
	return StartingRows(r.plan.Region)
}
