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
	ID          string   `json:"id"`
	Source      string   `json:"source"` // key of testdata/SOURCES.md
	Table       string   `json:"table"`
	Description string   `json:"description"`
	Tier        string   `json:"tier"` // A stated in full, B a detail is missing, C for orientation
	STC         int      `json:"stc"`
	Bass        *float64 `json:"bass,omitempty"` // measured; nil where no spectrum was printed
	// Measured are the bands that were printed, Octaves says which kind; nil where none were.
	Measured    []NearestBand `json:"measured,omitempty"`
	Octaves     bool          `json:"octaves,omitempty"`
	Ours        NearestOurs   `json:"ours"` // what the model says for that very construction
	Assumed     []string      `json:"assumed,omitempty"`
	Differences []Difference  `json:"differences"` // of the user's build-up from it, gravest first
}

// NearestOurs is the model's word on the measured construction.
type NearestOurs struct {
	STC  int           `json:"stc"`
	Bass float64       `json:"bass"`
	TL   band.Spectrum `json:"tl"`
	// Leaves and Gaps are that construction, from the side the source states first.
	Leaves [][]NearestLayer `json:"leaves"`
	Gaps   []NearestGap     `json:"gaps"`
}

// NearestBand is one measured band.
type NearestBand struct {
	Hz   float64 `json:"hz"`
	Loss float64 `json:"loss"`
}

// NearestLayer is one board of a measured construction.
type NearestLayer struct {
	Short     string  `json:"short"`
	Kind      string  `json:"kind"`
	Thickness float64 `json:"thickness"`
	Mass      float64 `json:"mass"`
}

// NearestGap is one gap of a measured construction: SI, 0 where there is none.
type NearestGap struct {
	Frame      string  `json:"frame"` // kind
	FrameDepth float64 `json:"frameDepth"`
	Sheet      float64 `json:"sheet"` // of steel
	Spacing    float64 `json:"spacing"`
	Depth      float64 `json:"depth"`
	FillDepth  float64 `json:"fillDepth"`
	Near       string  `json:"near"` // fixing kinds
	Far        string  `json:"far"`
	Rows       float64 `json:"rows"` // of the channel
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
		r, err := appraise.Appraise(b, appraise.Options{Accuracy: accuracy}, a.t.loss)
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
			out.Ours.Gaps = []NearestGap{}
			for _, g := range b.Gaps {
				to := NearestGap{
					Frame: string(g.Frame.Kind), FrameDepth: float64(g.Frame.Depth), Sheet: float64(g.Frame.Sheet), Spacing: float64(g.Spacing),
					Depth: float64(g.Depth), Near: string(g.Near.Fixing.Kind), Far: string(g.Far.Fixing.Kind),
					Rows: math.Max(float64(g.Near.Grid.Rows), float64(g.Far.Grid.Rows)),
				}
				if g.Fill.ID != "" {
					to.FillDepth = float64(g.FillDepth)
				}
				out.Ours.Gaps = append(out.Ours.Gaps, to)
			}
		}
	}
	add := func(hz, loss float64) {
		if !math.IsNaN(loss) {
			out.Measured = append(out.Measured, NearestBand{hz, loss})
		}
	}
	thirds, octaves, ok := evidence.Printed(test.ID)
	if ok.Thirds {
		if bass := thirds.Bass(); !math.IsNaN(bass) {
			out.Bass = &bass
		}
		for i, loss := range thirds {
			add(band.Nominal[i], loss)
		}
	}
	if ok.Octaves && len(out.Measured) == 0 {
		for k, loss := range octaves {
			add(band.Octaves[k], loss)
		}
		out.Octaves = len(out.Measured) > 0
	}
	for _, d := range differences {
		out.Differences = append(out.Differences, Difference{
			What: string(d.What), Leaf: d.Leaf, Gap: d.Gap, Yours: d.Yours, Test: d.Test, YoursWord: d.YoursWord, TestWord: d.TestWord,
		})
	}
	return out, nil
}
