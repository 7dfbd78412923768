package core

import (
	"math"

	"twoleaf/core/appraise"
	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/plan"
)

// NearestReport is the closest measured construction among the evidence.
type NearestReport struct {
	ID          string       `json:"id"`
	Source      string       `json:"source"` // key of testdata/SOURCES.md
	Table       string       `json:"table"`
	Description string       `json:"description"`
	Tier        string       `json:"tier"` // A stated in full, B a detail is missing, C for orientation
	STC         int          `json:"stc"`
	Bass        *float64     `json:"bass,omitempty"` // measured; nil where no spectrum was printed
	Ours        NearestOurs  `json:"ours"`           // what the model says for that very construction
	Assumed     []string     `json:"assumed,omitempty"`
	Differences []Difference `json:"differences"` // of the user's build-up from it, gravest first
}

// NearestOurs is the model's word on the measured construction.
type NearestOurs struct {
	STC  int           `json:"stc"`
	Bass float64       `json:"bass"`
	TL   band.Spectrum `json:"tl"`
	// Leaves is that construction from the room outwards, for its drawing.
	Leaves [][]NearestLayer `json:"leaves"`
}

// NearestLayer is one board of a measured construction.
type NearestLayer struct {
	Short     string  `json:"short"`
	Kind      string  `json:"kind"`
	Thickness float64 `json:"thickness"`
	Mass      float64 `json:"mass"`
}

// Difference is one thing in which the build-up differs from the measured one.
type Difference struct {
	What      string  `json:"what"` // evidence.What
	Leaf      int     `json:"leaf"`
	Gap       int     `json:"gap"`
	Yours     float64 `json:"yours"`
	Test      float64 `json:"test"`
	YoursWord string  `json:"yoursWord,omitempty"`
	TestWord  string  `json:"testWord,omitempty"`
}

// nearest returns the closest measured construction and the model's word on
// it; of several constructions that its text allows the lowest STC counts, as
// the code table's does.
func (a *assessment) nearest() (*NearestReport, []*plan.Fault) {
	test, differences := evidence.Nearest(a.here.Assembly)
	if !test.Read() {
		return nil, nil
	}
	out := &NearestReport{
		ID: test.ID, Source: test.Source, Table: test.Table, Description: test.Description, Tier: test.Tier,
		STC: test.STC, Assumed: test.Assumed, Differences: []Difference{},
	}
	out.Ours.STC = math.MaxInt
	for _, b := range test.BuildUps {
		r, err := appraise.Appraise(b, appraise.Options{Accuracy: accuracy}, a.t)
		if err != nil {
			return nil, a.impossible(err)
		}
		if r.STC.Value < out.Ours.STC {
			out.Ours = NearestOurs{STC: r.STC.Value, Bass: r.Bass, TL: r.TL}
			for _, l := range b.Leaves {
				var layers []NearestLayer
				for _, y := range l.Layers {
					layers = append(layers, NearestLayer{y.Board.Short, string(y.Board.Kind), float64(y.Board.Thickness), float64(y.Board.Mass)})
				}
				out.Ours.Leaves = append(out.Ours.Leaves, layers)
			}
		}
	}
	for _, s := range evidence.ThirdSpectra() {
		if bass := s.Loss.Bass(); s.ID == test.ID && !math.IsNaN(bass) {
			out.Bass = &bass
		}
	}
	for _, d := range differences {
		out.Differences = append(out.Differences, Difference{
			What: string(d.What), Leaf: d.Leaf, Gap: d.Gap, Yours: d.Yours, Test: d.Test, YoursWord: d.YoursWord, TestWord: d.TestWord,
		})
	}
	return out, nil
}
