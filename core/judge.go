package core

import (
	"math"

	"twoleaf/core/appraise"
	"twoleaf/core/assembly"
	"twoleaf/core/caution"
	"twoleaf/core/evidence"
	"twoleaf/core/load"
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/takeoff"
	"twoleaf/core/unit"
)

// What a sheet asks of those who carry it, kg: one person up to 20, two up to
// 45, a lift or smaller sheets above (proposal; NIOSH's 23 kg is the most under
// ideal conditions, P1).
const (
	liftOne unit.Mass = 20
	liftTwo unit.Mass = 45
)

// tagSlack is how far a typed mass may lie outside the range of its kind
// before it is asked about: mills differ by a fifth (W1).
const tagSlack = 0.2

// bassLoss is the loss of bass against the reference from which the answer is
// "not yet", dB after rounding: 3 dB is plainly heard (common practice).
const bassLoss = 3

func (a *assessment) cautions(rep *Report, advice []appraise.Advice) []caution.Caution {
	var out []caution.Caution
	add := func(code caution.Code, args map[string]float64, text map[string]string) {
		out = append(out, caution.Caution{Code: code, Where: a.here.Surface.ID, Args: args, Text: text})
	}
	out = append(out, a.clipCautions(rep)...)
	out = append(out, boardCautions(a.here.Assembly, a.refHere.Assembly, a.here.Leaf, a.here.Surface.ID)...)
	if mass, over := load.OverChannel(a.here.Assembly, a.here.Leaf); over {
		add(caution.ChannelBoards, nums("mass", float64(mass)).and("limit", float64(load.ChannelLimit)), nil)
	}
	if !rep.IsRef && unit.Over(a.yours.Mass, a.ref.Mass) {
		add(caution.OverMass, nums("mass", float64(a.yours.Mass)).and("limit", float64(a.ref.Mass)).and("share", float64(a.yours.Mass/a.ref.Mass)), nil)
	}
	if a.here.Surface.Garage {
		add(caution.GarageFire, nil, texts("beyond", a.here.Surface.Beyond))
	}
	if rep.Load != nil && rep.Load.Added != nil && unit.Over(rep.Load.Added.V, float64(load.AddedLimit)) {
		add(caution.CeilingDeadLoad, nums("added", rep.Load.Added.V).and("limit", float64(load.AddedLimit)), nil)
	}
	heaviest, pores := unit.Mass(0), false
	name := ""
	for _, l := range a.here.Assembly.Leaves {
		for _, y := range l.Layers {
			pores = pores || y.Board.Sound.Flow > 0
			if w, ok := y.Weight(); ok && !y.There && w > heaviest {
				heaviest, name = w, y.Board.ID
			}
			if y.Board.Kind == material.Plaster && y.There {
				add(caution.OldHouse, nil, nil)
			}
			if !y.There && y.Board.Kind.Masonry() && a.here.Surface.Kind == plan.Wall {
				add(caution.MasonryOnFloor, nums("mass", float64(y.Board.Mass)), nil)
			}
			if !y.There && (y.Board.Kind == material.MDF || y.Board.Kind == material.Cement) {
				add(caution.Dust, nil, texts("board", y.Board.ID))
			}
			if y.Board.Sound.Assumed != "" {
				add(caution.AssumedSound, nil, texts("board", y.Board.ID).and("like", y.Board.Sound.Assumed))
			}
			h := a.here.Boards[y.Board.ID]
			if h.Mass.Origin == plan.Typed {
				if t, ok := material.ByID(y.Board.ID); ok {
					low, high := float64(t.MassLow), float64(t.MassHigh)
					if low == 0 {
						low, high = float64(t.Mass), float64(t.Mass)
					}
					if m := float64(y.Board.Mass); m < low*(1-tagSlack) || m > high*(1+tagSlack) {
						add(caution.TagUnlikely, nums("mass", m).and("low", low).and("high", high), texts("board", y.Board.ID))
					}
				}
			} else if y.Board.Origin == "from memory" {
				add(caution.AssumedMass, nil, texts("board", y.Board.ID))
			}
		}
	}
	if heaviest > liftOne {
		people := 2.0
		if heaviest > liftTwo {
			people = 3
		}
		add(caution.Lifting, nums("mass", float64(heaviest)).and("people", people), texts("board", name))
	}
	if pores {
		add(caution.OpenPores, nil, nil)
	}
	for _, y := range rep.Leaves[rep.Leaf].Layers {
		if why := takeoff.Why(y.ScrewWhy); why == takeoff.TooLong || why == takeoff.Touches {
			args := map[string]float64{}
			if y.ScrewMax != nil {
				args["longest"] = y.ScrewMax.V
			}
			add(caution.NoScrew, args, texts("board", y.Board))
		}
	}
	for _, l := range rep.Buy.Lines {
		if l.Lacking > 0 {
			add(caution.ShortStock, nums("need", float64(l.Buy)).and("stock", float64(l.Buy-l.Lacking)), texts("board", l.Board))
		}
	}
	for _, d := range advice {
		args := nums("gain", d.Rating).and("bass", d.Bass)
		switch d.Trap {
		case appraise.ThirdLeaf:
			args["leaves"] = float64(len(a.here.Assembly.Leaves))
			add(caution.TripleLeaf, args, nil)
		case appraise.ChannelBetween:
			add(caution.ChannelSandwiched, args, nil)
		case appraise.Shorted:
			add(caution.ChannelShorted, args, nil)
		case appraise.CloseScrews:
			_, s := evidence.ScrewAllowance(a.here.Assembly)
			add(caution.CloseScrews, args.and("screws", float64(s)), nil)
		}
	}
	if a.yours.Spread.Nearest {
		add(caution.NoFamily, nums("spread", a.yours.Spread.Rating), texts("widest", string(a.yours.Spread.Widest)))
	}
	if a.invented() {
		add(caution.InventedCost, nil, nil)
	}
	if len(a.plan.Surfaces) > 3 {
		// Enough faces to close a room: people are in it.
		add(caution.Escape, nil, nil)
		add(caution.FreshAir, nil, nil)
		add(caution.Wiring, nil, nil)
	}
	return caution.Sort(out)
}

func (a *assessment) clipCautions(rep *Report) []caution.Caution {
	c := a.yours.Clip
	if c.State == load.None {
		return nil
	}
	args := nums("load", float64(c.OnClip)).and("rating", float64(c.Rating)).and("share", c.Share)
	code := map[load.State]caution.Code{
		load.Over: caution.OverRating, load.Close: caution.CloseToRating, load.Under: caution.UnderLoad, load.Unrated: caution.NoRating,
	}[c.State]
	var out []caution.Caution
	if code != "" {
		out = append(out, caution.Caution{Code: code, Where: a.here.Surface.ID, Args: args})
	}
	if rep.Load.Rating != nil && rep.Load.Rating.Origin == Demo {
		out = append(out, caution.Caution{Code: caution.RatingInvented, Where: a.here.Surface.ID, Args: nums("rating", float64(c.Rating))})
	}
	return out
}

// boardCautions say what a leaf does to fire: fewer fire-rated boards than the
// reference has, wood at the room's face or between boards.
func boardCautions(b, ref assembly.BuildUp, leaf int, where string) []caution.Caution {
	var out []caution.Caution
	rated := func(l assembly.Leaf) (n int, id string) {
		for _, y := range l.Layers {
			if y.Board.FireRated {
				n, id = n+1, y.Board.ID
			}
		}
		return n, id
	}
	have, _ := rated(b.Leaves[leaf])
	want, id := rated(ref.Leaves[leaf])
	if have < want {
		out = append(out, caution.Caution{Code: caution.FireBoardOut, Where: where, Text: texts("board", id)})
	}
	layers := b.Leaves[leaf].Layers
	for i, y := range layers {
		if !y.Board.Kind.Wood() {
			continue
		}
		var code caution.Code
		switch last := len(layers) - 1; {
		case i == 0 && leaf == 0, i == last && leaf == len(b.Leaves)-1 && leaf > 0:
			code = caution.WoodAtFace
		case i > 0 && i < last:
			code = caution.WoodBetween
		default:
			continue // behind the boards, on the frame's side
		}
		out = append(out, caution.Caution{Code: code, Where: where, Text: texts("board", y.Board.ID)})
	}
	return out
}

func (v *Verdict) say(s Sentence) { v.Parts = append(v.Parts, s) }

func part(code string, args map[string]float64) Sentence { return Sentence{Code: code, Args: args} }

// compared returns the sentence of a figure against the reference's: name.same,
// name.more or name.less, by after rounding to step.
func compared(name string, yours, ref, step float64) Sentence {
	by := yours - ref
	args := nums("by", math.Abs(by)).and("value", yours)
	switch rounded := math.Round(yours/step) - math.Round(ref/step); {
	case rounded > 0:
		args["by"] = rounded * step
		return part(name+".more", args)
	case rounded < 0:
		args["by"] = -rounded * step
		return part(name+".less", args)
	}
	return part(name+".same", args)
}

func massPart(yours, ref unit.SurfaceMass) Sentence {
	args := nums("by", math.Abs(float64(yours-ref))).and("value", float64(yours)).and("share", float64(yours/ref))
	switch {
	case unit.Over(yours, ref):
		return part("mass.more", args)
	case unit.Over(ref, yours):
		return part("mass.less", args)
	}
	return part("mass.same", args)
}

func clipPart(c load.Clip) Sentence {
	switch c.State {
	case load.None:
		return part("clip.none", nil)
	case load.Unrated:
		return part("clip.unrated", nums("load", float64(c.OnClip)))
	case load.Over:
		return part("clip.over", nums("share", c.Share).and("load", float64(c.OnClip)).and("rating", float64(c.Rating)))
	}
	return part("clip.share", nums("share", c.Share).and("load", float64(c.OnClip)).and("rating", float64(c.Rating)))
}

func (a *assessment) verdicts(rep *Report) {
	clip := clipPart(a.yours.Clip)
	bass := compared("bass", a.yours.Bass, a.ref.Bass, 1)
	answer := "yes"
	switch {
	case a.yours.Clip.State == load.Over:
		answer = "no"
	case a.yours.Clip.State == load.Unrated, bass.Code == "bass.less" && bass.Args["by"] >= bassLoss:
		answer = "notYet"
	}
	layers := Verdict{Answer: answer, Parts: []Sentence{massPart(a.yours.Mass, a.ref.Mass), clip, bass}}
	if rep.IsRef {
		layers.Parts[0] = part("isReference", nums("value", float64(a.yours.Mass)))
		layers.Parts[2] = part("bass.is", nums("value", a.yours.Bass))
	}
	mine, n, ok := a.sheetsCost(rep.Leaves[rep.Leaf].Layers)
	theirs, _, okRef := a.sheetsCost(rep.RefLayers)
	switch {
	case n == 0:
	case !ok || !okRef:
		layers.say(part("cost.unknown", nil))
	case rep.IsRef:
		layers.say(part("cost.is", nums("value", mine)))
	default:
		layers.say(compared("cost", mine, theirs, 1))
	}
	if n > 0 {
		layers.say(part("sheets", nums("n", float64(n))))
	} else {
		layers.say(part("sheets.noArea", nil))
	}
	if longest := a.longestScrew(rep); longest > 0 {
		layers.say(part("screw", nums("length", longest)))
	}
	holds := a.holdsRows()
	if answer == "no" && holds != nil {
		layers.Mend = holds
	}
	rep.Verdicts["layers"] = layers

	ld := Verdict{Answer: "yes", Parts: []Sentence{clip}}
	switch a.yours.Clip.State {
	case load.Over:
		ld.Answer, ld.Mend = "no", holds
	case load.Unrated:
		ld.Answer = "notYet"
	}
	rep.Verdicts["load"] = ld

	sound := Verdict{Answer: "yes", Parts: []Sentence{compared("rating", a.yours.Rating(a.rw), a.ref.Rating(a.rw), 1), bass}}
	if rep.IsRef {
		sound.Parts = []Sentence{part("rating.is", nums("value", a.yours.Rating(a.rw))), part("bass.is", nums("value", a.yours.Bass))}
	}
	if bass.Code == "bass.less" && bass.Args["by"] >= bassLoss {
		sound.Answer = "notYet"
	}
	if rep.Sound != nil && rep.Sound.Need != nil {
		n := rep.Sound.Need
		if n.Worst < 0 {
			sound = Verdict{Answer: "yes", Parts: []Sentence{part("need.met", nil)}}
		} else {
			o := n.Octaves[n.Worst]
			sound = Verdict{Answer: "notYet", Parts: []Sentence{part("need.short", nums("by", o.Short).and("hz", o.Hz))}}
		}
		sound.Parts[0].Text = texts("source", n.Source).and("listener", n.Listener).and("beyond", a.here.Surface.Beyond)
		if n.Floor && a.here.Surface.Kind != plan.Wall {
			sound.say(part("need.floor", nil))
		}
	}
	rep.Verdicts["sound"] = sound

	if rep.Picks != nil {
		swap := Verdict{Answer: "yes"}
		say := func(code, id string) {
			if id != "" {
				swap.say(Sentence{Code: code, Text: texts("id", id)})
			}
		}
		say("pick.closest", rep.Picks.Closest)
		say("pick.cheapest", rep.Picks.Cheapest)
		if len(swap.Parts) == 0 {
			swap.Answer = "no"
			swap.say(part("pick.none", nil))
		}
		rep.Verdicts["swap"] = swap
	}

	buy := Verdict{Answer: "yes"}
	switch {
	case rep.Buy.Sheets == 0:
		buy.Answer = "notYet"
		buy.say(part("sheets.noArea", nil))
	default:
		args := nums("sheets", float64(rep.Buy.Sheets)).and("mass", rep.Buy.Mass.V)
		code := "buy.total"
		if rep.Buy.Cost == nil {
			buy.Answer, code = "notYet", "buy.noPrice"
		} else {
			args["cost"] = rep.Buy.Cost.V
		}
		buy.say(part(code, args))
		for _, l := range rep.Buy.Lines {
			if l.Lacking > 0 {
				buy.Answer = "notYet"
				buy.say(Sentence{Code: "buy.lacking", Args: nums("n", float64(l.Lacking)), Text: texts("board", l.Board)})
			}
		}
		for _, c := range rep.Cautions {
			if c.Code == caution.Lifting {
				buy.say(Sentence{Code: "buy.lift", Args: c.Args, Text: c.Text})
			}
		}
	}
	rep.Verdicts["buy"] = buy
}

// holdsRows offers the row spacing at which an overloaded clip holds: the
// widest of a 2 in or 50 mm step; nil if it holds or nothing does.
func (a *assessment) holdsRows() *Sentence {
	c := a.yours.Clip
	if c.State != load.Over {
		return nil
	}
	step := 0.050
	if a.plan.Units == plan.Customary {
		step = 2 * float64(unit.Inch)
	}
	rows := math.Floor(float64(c.HoldsRows)/step+1e-9) * step
	if rows < 2*step {
		return nil
	}
	changed := a.here.Assembly
	changed.Gaps = append([]assembly.Gap(nil), changed.Gaps...)
	if c.Near {
		changed.Gaps[c.Gap].Near.Grid.Rows = unit.Length(rows)
	} else {
		changed.Gaps[c.Gap].Far.Grid.Rows = unit.Length(rows)
	}
	then, _ := load.OnClip(changed, a.here.Leaf)
	side := "far"
	if c.Near {
		side = "near"
	}
	return &Sentence{Code: "mend.rows", Args: nums("rows", rows).and("share", then.Share),
		Text: texts("gap", a.here.BuildUp.Gaps[c.Gap].ID).and("side", side), Edit: "rows"}
}

func (a *assessment) longestScrew(rep *Report) float64 {
	longest := 0.0
	for _, y := range rep.Leaves[rep.Leaf].Layers {
		if y.Screw != nil && !y.There {
			longest = math.Max(longest, y.Screw.V)
		}
	}
	return longest
}
