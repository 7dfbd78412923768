package core

import (
	"math"

	"twoleaf/core/appraise"
	"twoleaf/core/load"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// rows returns side by side: the reference, the leaf as it is, the candidates.
func (a *assessment) rows(rep *Report) ([]RowReport, []*plan.Fault) {
	out := []RowReport{{
		ID: "reference", Is: "reference", Layers: rep.RefLayers, Figures: rep.Reference,
		OverClip: a.ref.Clip.State == load.Over, Cautions: boardCautions(a.refHere.Assembly, a.refHere.Assembly, a.here.Leaf, "reference"),
	}}
	mine := a.here.BuildUp.Leaves[a.here.Leaf].Layers
	if !rep.IsRef {
		out = append(out, a.row("yours", "yours", a.here, a.yours))
	}
	var faults []*plan.Fault
	for _, c := range a.here.Rows() {
		if sameLayers(c.Layers, mine) || sameLayers(c.Layers, a.here.Reference()) {
			continue
		}
		here, f := a.here.WithLeaf(c.Layers)
		if len(f) > 0 {
			faults = append(faults, f...)
			continue
		}
		r, err := a.t.appraise(here.Assembly, here.Leaf, a.rw, false)
		if err != nil {
			return nil, a.impossible(err)
		}
		a.laid(&r, here)
		out = append(out, a.row(c.ID, "", here, r))
	}
	return out, faults
}

func (a *assessment) row(id, is string, here plan.Resolved, r appraise.Result) RowReport {
	row := RowReport{
		ID: id, Is: is, Layers: a.layers(here, here.Leaf), Figures: a.figures(r),
		OverMass: unit.Over(r.Mass, a.ref.Mass), OverClip: r.Clip.State == load.Over,
		Cautions: boardCautions(here.Assembly, a.refHere.Assembly, here.Leaf, id),
	}
	if row.Figures.Cost != nil {
		row.Figures.Cost.Origin = Computed
		for _, y := range row.Layers {
			if y.Price != nil && y.Price.Origin == Demo {
				row.Figures.Cost.Origin = Demo
			}
		}
	}
	against(&row.Figures, a.figures(a.ref))
	return row
}

// picks returns the rows worth naming, none of them the reference. The closest
// is the heaviest that is over neither the reference's mass nor the clips; the
// cheapest is of those that hold with no less bass than the reference, after
// rounding to 1 dB; the best has the most bass of those that hold.
func picks(rows []RowReport) *Picks {
	p := &Picks{}
	var closest, cheapest, best float64 = -1, math.Inf(1), math.Inf(-1)
	refBass := math.Round(rows[0].Figures.Bass.V)
	for _, r := range rows[1:] {
		if r.OverClip {
			continue
		}
		if m := r.Figures.Mass.V; !r.OverMass && unit.Over(m, closest) {
			closest, p.Closest = m, r.ID
		}
		if r.Figures.Cost != nil && math.Round(r.Figures.Bass.V) >= refBass && r.Figures.Cost.V < cheapest {
			cheapest, p.Cheapest = r.Figures.Cost.V, r.ID
		}
		if r.Figures.Bass.V > best {
			best, p.Best = r.Figures.Bass.V, r.ID
		}
	}
	return p
}
