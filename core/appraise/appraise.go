// Package appraise turns one build-up into everything that is said of it:
// mass, cost, thickness, load, transmission loss, ratings, spread. It is the
// one function that layers, side by side and advice all call.
package appraise

import (
	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/load"
	"twoleaf/core/material"
	"twoleaf/core/rating"
	"twoleaf/core/transmission"
	"twoleaf/core/unit"
)

// Options say what to work out.
type Options struct {
	Leaf     int  // the edited leaf, whose mass and cost are told
	Silent   bool // leave the sound out: mass, cost and load only
	Accuracy transmission.Accuracy
}

// Result is what is said of one build-up.
type Result struct {
	Mass          unit.SurfaceMass // of the edited leaf
	Thickness     unit.Length      // of all
	LeafThickness unit.Length
	Cost          unit.MoneyRate // of the edited leaf's new boards
	Priced        bool
	Stack         unit.Mass // one sheet of each layer of the edited leaf
	Stacked       bool
	StackCost     unit.Money
	StackPriced   bool
	Clip          load.Clip // State is none where nothing hangs on clips
	TL            band.Spectrum
	Bass          float64
	STC           rating.STCResult
	Rw            rating.RwResult
	OITC          rating.OITCResult
	Screws        float64 // dB of TL that close screws cost, in it already
	Spread        Spread  // set by Doubt
}

// Appraise returns what is said of a build-up. The laboratory's own limit
// (transmission.LaboratoryLimit) is in the sound figures.
func Appraise(b assembly.BuildUp, o Options, t *transmission.Tables) (Result, error) {
	leaf := b.Leaves[o.Leaf]
	r := Result{
		Mass:          leaf.Mass(),
		Thickness:     b.Thickness(),
		LeafThickness: leaf.Thickness(),
	}
	r.Cost, r.Priced = leaf.Cost()
	r.Stack, r.Stacked = leaf.Stack()
	r.StackCost, r.StackPriced = leaf.StackCost()
	r.Clip, _ = load.OnClip(b, o.Leaf)
	if o.Silent {
		return r, nil
	}
	r.Screws, _ = evidence.ScrewAllowance(b)
	tl, err := transmission.Loss(b, o.Accuracy, t)
	if err != nil {
		return r, err
	}
	tie(&tl, r.Screws)
	r.Hear(tl)
	if narrow, wide := tested(b); wide {
		// Published tables give rigid studs at 400 and 600 mm one figure, the
		// lower (NBC2020); the method alone would let the wider spacing gain 10.
		if tl, err := transmission.Loss(narrow, o.Accuracy, t); err == nil {
			tie(&tl, r.Screws)
			if rating.STC(tl).Value < r.STC.Value {
				r.Hear(tl)
			}
		}
	}
	return r, nil
}

// tie takes what close screws cost, dB, off a transmission loss from 125 Hz up,
// where the rating that it was printed of begins; below nothing is known
// (NBC2020, see evidence.ScrewAllowance).
func tie(tl *band.Spectrum, loss float64) {
	for i := band.First125; i < band.Count; i++ {
		tl[i] = min(tl[i], max(0, tl[i]-loss))
	}
}

// testedSpacing is the widest spacing of rigid studs that published tests
// resolve, m (16 in), and rigidSheet the steel from which a stud is as rigid as
// wood, m (load-bearing studs, to which NBC2020 gives the figures of wood).
const (
	testedSpacing = 0.4064
	rigidSheet    = 1e-3
)

// tested returns a wall whose rigid studs stand wider than was tested with
// them at the widest tested spacing; false for any other build-up.
func tested(b assembly.BuildUp) (narrow assembly.BuildUp, wide bool) {
	narrow = b
	for i, g := range b.Gaps {
		rigid := g.Frame.Kind == material.Wood || g.Frame.Kind == material.CStud && g.Frame.Sheet > rigidSheet
		screwed := g.Near.Fixing.Kind == material.Screwed && g.Far.Fixing.Kind == material.Screwed
		if !rigid || !screwed || b.Horizontal || !unit.Over(g.Spacing, testedSpacing) {
			continue
		}
		if !wide {
			narrow, wide = clone(b), true
		}
		narrow.Gaps[i].Spacing = testedSpacing
	}
	return narrow, wide
}

// Doubt sets the spread of a result that was heard.
func (r *Result) Doubt(b assembly.BuildUp, rw bool, t *transmission.Tables) {
	r.Spread = SpreadOf(b, rw, t)
}

// Hear sets the ratings of a transmission loss.
func (r *Result) Hear(tl band.Spectrum) {
	r.TL = tl
	r.Bass = tl.Bass()
	r.STC = rating.STC(tl)
	r.Rw = rating.Rw(tl)
	r.OITC = rating.OITC(tl)
}

// Rating returns the single number of a region: Rw where rw is true, else STC.
func (r Result) Rating(rw bool) float64 {
	if rw {
		return float64(r.Rw.Rw)
	}
	return float64(r.STC.Value)
}
