package core

import (
	"fmt"
	"strings"

	"twoleaf/core/appraise"
	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/load"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// working returns how one figure was worked out, by its trace; nil for a trace
// that nothing has.
func (a *assessment) working(trace string) *Working {
	w := &Working{Trace: trace, Rows: []WorkRow{}, Sources: []WorkSource{}}
	switch trace {
	case "mass":
		a.massWork(w)
	case "cost":
		a.costWork(w)
	case "clip":
		if a.yours.Clip.State == load.None {
			return nil
		}
		a.clipWork(w)
	case "bass":
		a.bassWork(w)
	case "rating":
		a.ratingWork(w)
	case "built":
		a.builtWork(w)
	case "thickness":
		a.thicknessWork(w)
	default:
		return nil
	}
	return w
}

func (w *Working) row(code, form string, result *Value, terms ...*Value) {
	w.Rows = append(w.Rows, WorkRow{Code: code, Form: form, Terms: terms, Result: result})
}

func (w *Working) source(code, source string, v *Value) {
	for _, s := range w.Sources {
		if s.Code == code && s.Source == source {
			return
		}
	}
	w.Sources = append(w.Sources, WorkSource{Code: code, Value: v, Source: source})
}

// form joins n terms from the first by a sign: form(3, "+") is "%0 + %1 + %2".
func form(n int, sign string) string {
	parts := make([]string, n)
	for i := range parts {
		parts[i] = fmt.Sprintf("%%%d", i)
	}
	return strings.Join(parts, " "+sign+" ")
}

// layersHere returns the layers of the edited leaf with what is known of them.
func (a *assessment) layersHere() []plan.Here {
	layers := a.here.BuildUp.Leaves[a.here.Leaf].Layers
	out := make([]plan.Here, len(layers))
	for i, y := range layers {
		out[i] = a.here.Boards[y.Board]
	}
	return out
}

func (w *Working) boardSource(h plan.Here) {
	switch h.Mass.Origin {
	case plan.Typed:
		w.source("typed:"+h.Board.ID, "typed", from(h.Board.Mass, kindSurfaceMass, h.Mass))
	default:
		v := from(h.Board.Mass, kindSurfaceMass, h.Mass)
		if h.Board.MassLow > 0 {
			low, high := float64(h.Board.MassLow), float64(h.Board.MassHigh)
			v.Low, v.High = &low, &high
		}
		source := h.Board.Source
		if h.Board.Origin == "from memory" {
			source = "from memory"
		}
		w.source("mass:"+h.Board.ID, source, v)
	}
}

// massWork: the sheets of the leaf, each weight over its own area.
func (a *assessment) massWork(w *Working) {
	here := a.layersHere()
	sheets, oneSize := []*Value{}, true
	for _, h := range here {
		weight, ok := h.Weight()
		oneSize = oneSize && ok && h.Area() == here[0].Area()
		sheets = append(sheets, from(weight, kindMass, h.Mass))
		w.boardSource(h)
	}
	total := value(a.yours.Mass, kindSurfaceMass, "mass")
	films := a.yours.Mass - unit.SurfaceMass(sumMass(here))
	if oneSize && len(here) > 0 {
		boards := value(sumMass(here), kindSurfaceMass, "")
		terms := append(sheets, from(here[0].Area(), kindArea, here[0].Sheet))
		w.row("boards", "("+form(len(sheets), "+")+fmt.Sprintf(") ÷ %%%d", len(sheets)), boards, terms...)
	} else {
		for i, h := range here {
			mass := from(h.Board.Mass, kindSurfaceMass, h.Mass)
			if sheets[i].V > 0 {
				w.row("layer:"+h.Board.ID, "%0 ÷ %1", mass, sheets[i], from(h.Area(), kindArea, h.Sheet))
			} else {
				w.row("layer:"+h.Board.ID, "%0", mass, mass)
			}
		}
	}
	if unit.Over(films, 1e-6) {
		w.row("film", "%0", value(films, kindSurfaceMass, ""), value(films, kindSurfaceMass, ""))
	}
	w.row("mass", "", total)
	w.source("sheet", "common practice", nil)
}

func sumMass(here []plan.Here) float64 {
	sum := 0.0
	for _, h := range here {
		sum += float64(h.Board.Mass)
	}
	return sum
}

// costWork: the prices of the leaf's new boards, each over its own area.
func (a *assessment) costWork(w *Working) {
	layers := a.here.Assembly.Leaves[a.here.Leaf].Layers
	for i, h := range a.layersHere() {
		if layers[i].There {
			w.row("there:"+h.Board.ID, "", value(0.0, kindMoneyRate, ""))
			continue
		}
		price, ok := h.SheetPrice()
		if !ok {
			w.row("unpriced:"+h.Board.ID, "", &Value{Kind: kindMoneyRate, Origin: Computed})
			continue
		}
		w.row("layer:"+h.Board.ID, "%0 ÷ %1", value(float64(h.Rate), kindMoneyRate, ""),
			from(price, kindMoney, h.Price), from(h.Area(), kindArea, h.Sheet))
		source := "typed"
		if h.Price.Origin == plan.Invented {
			source = "invented"
		}
		w.source("price:"+h.Board.ID, source, from(price, kindMoney, h.Price))
		if layers[i].Join == "film" && layers[i].JoinPriced {
			w.row("film", "%0", value(layers[i].JoinPrice, kindMoneyRate, ""), value(layers[i].JoinPrice, kindMoneyRate, ""))
		}
	}
	if a.yours.Priced {
		w.row("cost", "", value(a.yours.Cost, kindMoneyRate, "cost"))
	}
}

// clipWork: area halfway to the next clips, times all that hangs on it, times
// 1.10; of a face with a size, the worst clip's own two loads, the larger counting.
func (a *assessment) clipWork(w *Working) {
	c := a.yours.Clip
	g := a.here.Gaps[c.Gap].Held(c.Near)
	held := a.here.Assembly.Gaps[c.Gap].Held(c.Near)
	area := value(c.Area, kindArea, "")
	w.row("area", "%0 × %1", area, from(c.Grid.Rows, kindLength, g.Rows), from(c.Grid.Along, kindLength, g.Along))
	boards := value(c.Boards, kindSurfaceMass, "mass")
	before := len(w.Rows)
	a.massWork(w)
	// The sum of the boards is one row here; its own working is behind the mass.
	first := w.Rows[before]
	w.Rows = w.Rows[:before]
	if first.Code == "boards" && !unit.Over(float64(c.Boards), first.Result.V) {
		w.Rows = append(w.Rows, first)
	} else {
		w.row("boards", "%0", boards, boards)
	}
	channel := value(c.Channel, kindSurfaceMass, "")
	channel.Origin = Typical
	line := fixed(float64(held.Fixing.LineMass), kindLineMass)
	w.row("channel", "%0 ÷ %1", channel, line, from(c.Grid.Rows, kindLength, g.Rows))
	hung := []*Value{boards, channel}
	if c.Fill > 0 {
		fill := value(c.Fill, kindSurfaceMass, "")
		w.row("fill", "%0", fill, fill)
		hung = append(hung, fill)
	}
	if c.Extra > 0 {
		extra := from(c.Extra, kindSurfaceMass, g.Extra)
		w.row("extra", "%0", extra, extra)
		hung = append(hung, extra)
	}
	sum := make([]string, len(hung))
	for i := range hung {
		sum[i] = fmt.Sprintf("%%%d", i+1)
	}
	if c.Worst != nil {
		on := value(c.OnClip, kindMass, "")
		byArea, byBeam := value(c.Worst.Share, kindMass, ""), value(c.Worst.Beam, kindMass, "")
		w.row("byArea", "%0", byArea, value(c.Worst.Area, kindArea, ""))
		w.row("byBeam", "%0", byBeam, byArea)
		w.row("onClip", "%0", on, on)
		a.clipShare(w, on)
		return
	}
	own := value(c.Own, kindMass, "")
	w.row("own", "%0 × ("+strings.Join(sum, " + ")+")", own, append([]*Value{area}, hung...)...)
	on := value(c.OnClip, kindMass, "")
	w.row("onClip", "%0 × %1", on, own, fixed(load.Continuous, kindNumber))
	w.source("continuous", "derived", fixed(load.Continuous, kindNumber))
	a.clipShare(w, on)
}

// clipShare ends the working of a clip: its load over its rating, and what that comes from.
func (a *assessment) clipShare(w *Working, on *Value) {
	c := a.yours.Clip
	g := a.here.Gaps[c.Gap].Held(c.Near)
	fixing := a.here.Assembly.Gaps[c.Gap].Held(c.Near).Fixing
	w.source("area", "common practice", nil)
	w.source("channel", fixing.Source, fixed(float64(fixing.LineMass), kindLineMass))
	if c.Rating > 0 {
		rating := from(c.Rating, kindMass, g.Rating)
		w.row("share", "%0 ÷ %1", value(c.Share, kindShare, "clip"), on, rating)
		source := "typed"
		if g.Rating.Origin == plan.Invented {
			source = "invented"
		}
		w.source("rating", source, rating)
		w.source("holdsRows", "computed", value(c.HoldsRows, kindLength, ""))
	}
}

// bassWork: the energy mean of five bands.
func (a *assessment) bassWork(w *Working) {
	var terms []*Value
	for i := band.First50; i <= band.First125; i++ {
		v := value(a.yours.TL[i], kindDecibel, "")
		w.row(fmt.Sprintf("band:%g", band.Nominal[i]), "", v)
		terms = append(terms, v)
	}
	w.row("bass", "mean", spread(a.yours.Bass, a.yours.Spread.Bass, "bass"), terms...)
	w.source("method", "derived", nil)
	a.spreadSource(w)
	a.screwWork(w)
}

func (a *assessment) spreadSource(w *Working) {
	n := value(float64(a.yours.Spread.Tests), kindCount, "")
	if a.yours.Spread.Nearest {
		w.source("spread.near:"+string(a.yours.Spread.Family), "ISO12999", n)
		return
	}
	w.source("spread:"+string(a.yours.Spread.Family), "ISO12999", n)
}

// ratingWork: how far the contour goes up and what stops it.
func (a *assessment) ratingWork(w *Working) {
	if cost := a.screwWork(w); cost > 0 {
		w.row("screws", "", value(-cost, kindDecibel, ""))
	}
	if a.rw {
		r := a.yours.Rw
		w.row("contour.rw", "", value(float64(r.Rw), kindDecibel, ""))
		w.row("sum", "%0", value(r.Deficiency, kindDecibel, ""), fixed(32, kindDecibel))
		w.row(fmt.Sprintf("worst:%g", band.Nominal[r.DecidedBy]), "", value(r.Short[r.DecidedBy], kindDecibel, ""))
		w.row("c", "", value(float64(r.C), kindDecibel, ""))
		w.row("ctr", "", value(float64(r.Ctr), kindDecibel, ""))
		w.row("rating", "", spread(float64(r.Rw), a.yours.Spread.Rating, "rating"))
		w.source("standard", "ISO717", nil)
	} else {
		r := a.yours.STC
		w.row("contour.stc", "", value(float64(r.Value), kindDecibel, ""))
		w.row("sum", "%0", value(float64(r.Deficiency), kindDecibel, ""), fixed(32, kindDecibel))
		w.row(fmt.Sprintf("worst:%g", band.Nominal[r.DecidedBy]), "%0", value(float64(r.Short[r.DecidedBy]), kindDecibel, ""), fixed(8, kindDecibel))
		w.row("rating", "", spread(float64(r.Value), a.yours.Spread.Rating, "rating"))
		w.source("standard", "E413", nil)
	}
	a.builtWork(w)
	a.spreadSource(w)
}

// screwWork: what close screws take off every band from 125 Hz up, in the
// figures already; 0 for nothing.
func (a *assessment) screwWork(w *Working) (cost float64) {
	cost, spacing := evidence.ScrewAllowance(a.here.Assembly)
	if cost == 0 {
		return 0
	}
	w.source("screws", "NBC2020", &Value{V: float64(spacing), Kind: kindLength, Origin: Typed})
	return cost
}

func (a *assessment) builtWork(w *Working) {
	lab := a.yours.Rating(a.rw)
	w.row("built", "%0", value(appraise.Built(lab), kindDecibel, "built"), value(lab, kindDecibel, ""))
	w.source("built", "common practice", nil)
}

// thicknessWork: leaves and gaps from the room outwards.
func (a *assessment) thicknessWork(w *Working) {
	for i, l := range a.here.Assembly.Leaves {
		var terms []*Value
		for _, y := range l.Layers {
			h := a.here.Boards[y.Board.ID]
			terms = append(terms, from(y.Board.Thickness, kindLength, h.Thickness))
		}
		w.row(fmt.Sprintf("leaf:%d", i), form(len(terms), "+"), value(l.Thickness(), kindLength, ""), terms...)
		if i < len(a.here.Assembly.Gaps) {
			g, f := a.here.Assembly.Gaps[i], a.here.Gaps[i]
			depth := from(g.Depth, kindLength, f.Depth)
			switch frame := value(g.Frame.Depth, kindLength, ""); {
			case f.Depth.Origin == plan.Computed && g.StandOffs() > 0:
				w.row("gap", "%0 + %1", depth, frame, value(g.StandOffs(), kindLength, ""))
			default:
				w.row("gap", "%0", depth, depth)
			}
		}
	}
	w.row("thickness", "", value(a.yours.Thickness, kindLength, "thickness"))
	w.source("sizes", "common practice", nil)
}
