package core

import (
	"twoleaf/core/appraise"
	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// StepReport is one step of the ladder: what it adds and where that leads.
type StepReport struct {
	Rung    string `json:"rung"`
	Where   string `json:"where"` // taken, here, open
	Leaf    int    `json:"leaf"`
	Board   string `json:"board,omitempty"`
	Short   string `json:"short,omitempty"`
	Nominal string `json:"nominal,omitempty"`
	Fill    string `json:"fill,omitempty"`
	Frame   string `json:"frame,omitempty"`
	Fixing  string `json:"fixing,omitempty"` // kind
	Depth   *Value `json:"depth,omitempty"`  // of the fill
	Bass    *Value `json:"bass"`             // Diff is against the step it is taken from
	Rating  *Value `json:"rating"`
	Mass    *Value `json:"mass"` // of the whole build-up, kg/m²
	Cost    *Value `json:"cost"` // that the step adds, for the face if it has an area, else per m²; nil while a price is missing
}

// ladder returns what each step to the build-up brings, and the next few.
func (a *assessment) ladder() ([]StepReport, []*plan.Fault) {
	region := string(a.plan.Region)
	steps := appraise.Ladder(a.here.Assembly, a.here.Leaf, a.heavy(), a.twoRows(), a.clipHere())
	out := []StepReport{}
	var before *appraise.Result
	var beforeCost, beforeKnown = 0.0, false
	for _, s := range steps {
		r, err := appraise.Appraise(s.BuildUp, appraise.Options{Accuracy: accuracy}, a.t.loss)
		if err != nil {
			return nil, a.impossible(err)
		}
		g := s.BuildUp.Gaps[min(s.Gap, len(s.BuildUp.Gaps)-1)]
		row := StepReport{
			Rung: string(s.Rung), Where: s.Where, Leaf: s.Leaf, Board: s.Board.ID, Short: s.Board.Short, Nominal: s.Board.Nominal,
			Fill: g.Fill.Name, Frame: g.Frame.Name, Fixing: string(g.Near.Fixing.Kind),
			Bass:   spread(r.Bass, r.Spread.Bass, ""),
			Rating: spread(r.Rating(a.rw), r.Spread.Rating, ""),
			Mass:   value(s.BuildUp.Mass(), kindSurfaceMass, ""),
		}
		if g.Near.Fixing.Kind == material.Screwed {
			row.Fixing = string(g.Far.Fixing.Kind)
		}
		if g.Fill.ID != "" {
			row.Depth = value(g.FillDepth, kindLength, "")
		}
		cost, known := a.allCost(s.BuildUp, region)
		if before != nil {
			bass, rating := r.Bass-before.Bass, r.Rating(a.rw)-before.Rating(a.rw)
			row.Bass.Diff, row.Rating.Diff = &bass, &rating
			// Studs have no price in a plan.
			if known && beforeKnown && s.Rung != appraise.RungTwoRows && s.Rung != appraise.RungFrame {
				row.Cost = a.faceMoney(cost - beforeCost)
			}
		}
		if s.Where != appraise.Open {
			before, beforeCost, beforeKnown = &r, cost, known
		}
		out = append(out, row)
	}
	return out, nil
}

// faceMoney is a price per m² for the whole face, or per m² without one.
func (a *assessment) faceMoney(perM2 float64) *Value {
	if a.here.Face > 0 {
		return &Value{V: perM2 * float64(a.here.Face), Kind: kindMoney, Origin: Computed}
	}
	return &Value{V: perM2, Kind: kindMoneyRate, Origin: Computed}
}

// allCost returns boards, films, fill, clips and channel that are new, per m²;
// false while a price is missing.
func (a *assessment) allCost(b assembly.BuildUp, region string) (perM2 float64, ok bool) {
	boards, ok := b.Cost()
	if !ok {
		return 0, false
	}
	perM2 = float64(boards)
	demo := a.plan.Prices == plan.DemoPrices
	for _, g := range b.Gaps {
		if g.Fill.ID != "" && !g.FillThere {
			if g.FillPrice == 0 {
				return 0, false
			}
			perM2 += float64(g.FillPrice)
		}
		for _, h := range []assembly.Held{g.Near, g.Far} {
			id, each := "", 0.0
			switch h.Fixing.Kind {
			case material.Clip:
				id, each = material.HatChannel, h.Grid.PerArea()
			case material.Channel:
				id = h.Fixing.ID
			default:
				continue
			}
			piece, known := material.Demo(id, region)
			clip, knownClip := material.Demo(h.Fixing.ID, region)
			if !demo || !known || each > 0 && !knownClip || h.Grid.Rows <= 0 {
				return 0, false
			}
			perM2 += each*float64(clip.Amount) + float64(piece.Amount)/float64(material.ChannelPiece(region)*h.Grid.Rows)
		}
	}
	return perM2, true
}

// heavy is the layer of the steps not taken: the reference's first board, as it is here.
func (a *assessment) heavy() assembly.Layer {
	y := a.refHere.Assembly.Leaves[a.here.Leaf].Layers[0]
	y.ID, y.There, y.Join = "ladder", false, assembly.Loose
	return y
}

// twoRows is the double frame of the region whose members are those of the
// build-up, else its first.
func (a *assessment) twoRows() material.Frame {
	var first material.Frame
	want := unit.Length(0)
	for _, g := range a.here.Assembly.Gaps {
		want = g.Frame.Depth
	}
	for _, f := range material.Frames(string(a.plan.Region)) {
		if f.Kind != material.Double || f.Sheet > 0 {
			continue
		}
		if first.ID == "" || unit.Same(f.Depth, want) {
			first = f
		}
	}
	return first
}

// clipHere is a leaf on clips at the region's usual grid.
func (a *assessment) clipHere() assembly.Held {
	f, _ := material.FixingByID("clip")
	rows, along := f.UsualGrid(string(a.plan.Region))
	return assembly.Held{Fixing: f, Grid: assembly.Grid{Rows: rows, Along: along}}
}
