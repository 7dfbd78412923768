package appraise

import (
	"math"
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/material"
	"twoleaf/core/transmission"
)

// Trap names a known way to lose insulation.
type Trap string

// The traps.
const (
	SameBoards     Trap = "sameBoards"     // leaves dip at one frequency
	ThirdLeaf      Trap = "thirdLeaf"      // an inner leaf splits the gap
	ChannelBetween Trap = "channelBetween" // a channel sandwiched between boards
	EmptyGap       Trap = "emptyGap"
	Shorted        Trap = "shorted" // a screw reaches the frame through the channel
	CloseScrews    Trap = "closeScrews"
)

// Advice is a trap found in a build-up and what changing it would bring.
type Advice struct {
	Trap   Trap
	Leaf   int            // the inner leaf, or the first that dips
	Other  int            // the second that dips
	Gap    int            // the empty or shorted one
	Hz     float64        // of the dip
	Board  material.Board // what would replace a board of Leaf
	Bass   float64        // dB gained, 50–125 Hz
	Rating float64        // gained in STC or Rw
	At     float64        // gained at Hz
}

// Advise returns the traps of a build-up whose result is known, worst first
// as a builder would mend them: channel, screws, leaf, fill, dip. Gains are computed
// with the change made, on the same grid. palette are the boards a dip may be
// mended with.
func Advise(b assembly.BuildUp, base Result, o Options, rw bool, palette []material.Board, t *transmission.Tables) []Advice {
	var found []Advice
	add := func(a Advice, changed assembly.BuildUp) {
		better, err := Appraise(changed, Options{Leaf: 0, Accuracy: o.Accuracy}, t)
		if err != nil {
			return
		}
		a.Bass = better.Bass - base.Bass
		a.Rating = better.Rating(rw) - base.Rating(rw)
		if a.Hz > 0 {
			a.At = gainAt(base.TL, better.TL, a.Hz)
		}
		found = append(found, a)
	}
	for i, g := range b.Gaps {
		if g.Near.Shorts > 0 || g.Far.Shorts > 0 {
			c := clone(b)
			c.Gaps[i].Near.Shorts, c.Gaps[i].Far.Shorts = 0, 0
			add(Advice{Trap: Shorted, Gap: i}, c)
		}
	}
	if base.Screws > 0 {
		c := clone(b)
		for i := range c.Gaps {
			c.Gaps[i].Near.Screws, c.Gaps[i].Far.Screws = 0, 0
		}
		add(Advice{Trap: CloseScrews}, c)
	}
	for i := 1; i < len(b.Leaves)-1; i++ {
		if masonry(b.Leaves[i]) {
			continue
		}
		a := Advice{Trap: ThirdLeaf, Leaf: i}
		if sandwiched(b.Gaps[i-1]) || sandwiched(b.Gaps[i]) {
			a.Trap = ChannelBetween
		}
		add(a, WithoutLeaf(b, i))
	}
	for i, g := range b.Gaps {
		if g.Fill.ID != "" || g.Depth < fillableFrom || pane(b.Leaves[i]) && pane(b.Leaves[i+1]) {
			continue
		}
		c := clone(b)
		if c.Gaps[i].Fill = anyFill(b); c.Gaps[i].Fill.ID == "" {
			continue
		}
		c.Gaps[i].FillDepth = g.Depth
		if depth := assembly.FrameDepth(g.Frame); depth > 0 && depth < g.Depth {
			c.Gaps[i].FillDepth = depth
		}
		add(Advice{Trap: EmptyGap, Gap: i}, c)
	}
	if a, c, ok := dipsTogether(b, palette); ok {
		add(a, c)
	}
	return found
}

// fillableFrom is the least depth of a gap that takes a batt, m (25 mm, common practice).
const fillableFrom = 0.025

func pane(l assembly.Leaf) bool { return len(l.Layers) > 0 && glass(l.Layers[0].Board.Kind) }

// sandwiched reports a gap that is only a channel's or clip's own depth, with
// no frame in it.
func sandwiched(g assembly.Gap) bool {
	resilient := func(h assembly.Held) bool {
		return h.Fixing.Kind == material.Channel || h.Fixing.Kind == material.Clip
	}
	return (g.Frame.Kind == material.NoFrame || g.Frame.Kind == material.Bare) && (resilient(g.Near) || resilient(g.Far))
}

// anyFill is a fill the plan has elsewhere, else the generic fibre batt.
func anyFill(b assembly.BuildUp) material.Fill {
	for _, g := range b.Gaps {
		if g.Fill.ID != "" {
			return g.Fill
		}
	}
	fibre, _ := material.FillByID("fibre")
	return fibre
}

func clone(b assembly.BuildUp) assembly.BuildUp {
	b.Leaves = slices.Clone(b.Leaves)
	for i := range b.Leaves {
		b.Leaves[i].Layers = slices.Clone(b.Leaves[i].Layers)
	}
	b.Gaps = slices.Clone(b.Gaps)
	return b
}

// WithoutLeaf returns the build-up with inner leaf i taken out and the gaps
// beside it made one of the same whole depth: the leaves keep their places,
// each stays held as it was on its own side, the frame is the deeper one, or
// the two rows where there were two.
func WithoutLeaf(b assembly.BuildUp, i int) assembly.BuildUp {
	c := clone(b)
	near, far := b.Gaps[i-1], b.Gaps[i]
	joined := near
	if far.Frame.Kind == material.Double || near.Frame.Kind != material.Double && far.Frame.Depth > near.Frame.Depth {
		joined = far
	}
	joined.Near, joined.Far = near.Near, far.Far
	joined.Depth = near.Depth + far.Depth + b.Leaves[i].Thickness()
	joined.Fill = near.Fill
	if joined.Fill.ID == "" {
		joined.Fill = far.Fill
	}
	joined.FillDepth = 0
	for _, g := range []assembly.Gap{near, far} {
		if g.Fill.ID != "" {
			joined.FillDepth += g.FillDepth
		}
	}
	c.Leaves = slices.Delete(c.Leaves, i, i+1)
	c.Gaps = slices.Delete(c.Gaps, i-1, i+1)
	c.Gaps = slices.Insert(c.Gaps, i-1, joined)
	return c
}

// dipsTogether finds boards of one coincidence in two leaves and the board of
// the palette that parts them best: of the same kind, nearest in mass and about
// as heavy, its coincidence in another band.
func dipsTogether(b assembly.BuildUp, palette []material.Board) (Advice, assembly.BuildUp, bool) {
	for i := range b.Leaves {
		for j := i + 1; j < len(b.Leaves); j++ {
			for k, y := range b.Leaves[i].Layers {
				for _, z := range b.Leaves[j].Layers {
					if y.Board.Kind.Masonry() || z.Board.Kind.Masonry() || !sameDip(y.Board, z.Board) || y.There {
						continue
					}
					with, ok := nearestOther(y.Board, palette)
					if !ok {
						continue
					}
					c := clone(b)
					c.Leaves[i].Layers[k].Board = with
					// Every layer of that board in the leaf changes with it, or the dip stays.
					for n := range c.Leaves[i].Layers {
						if c.Leaves[i].Layers[n].Board.ID == y.Board.ID && !c.Leaves[i].Layers[n].There {
							c.Leaves[i].Layers[n].Board = with
						}
					}
					return Advice{Trap: SameBoards, Leaf: i, Other: j, Hz: transmission.Critical(y.Board), Board: with}, c, true
				}
			}
		}
	}
	return Advice{}, b, false
}

// thirdOfOctave parts two dips: nearer than this they fall into one band.
var thirdOfOctave = math.Cbrt(2)

// DipTogether reports whether two critical frequencies, Hz, fall within half a
// band of each other.
func DipTogether(a, b float64) bool {
	half := math.Sqrt(thirdOfOctave)
	return a < b*half && b < a*half
}

// aboutAsHeavy is how many times as heavy a board may be that is to replace another (our own choice).
const aboutAsHeavy = 1.4

func sameDip(a, b material.Board) bool {
	return DipTogether(transmission.Critical(a), transmission.Critical(b))
}

func nearestOther(b material.Board, palette []material.Board) (material.Board, bool) {
	best, found := material.Board{}, false
	for _, p := range palette {
		r := float64(p.Mass / b.Mass)
		if p.Kind != b.Kind || b.FireRated && !p.FireRated || sameDip(p, b) || r > aboutAsHeavy || r < 1/aboutAsHeavy {
			continue
		}
		if !found || math.Abs(float64(p.Mass-b.Mass)) < math.Abs(float64(best.Mass-b.Mass)) {
			best, found = p, true
		}
	}
	return best, found
}

// gainAt returns the most gained within a third of an octave of a frequency, dB.
func gainAt(before, after band.Spectrum, hz float64) float64 {
	best := math.Inf(-1)
	for i := range before {
		if r := band.Exact(i) / hz; r > 1/thirdOfOctave && r < thirdOfOctave {
			best = math.Max(best, after[i]-before[i])
		}
	}
	if math.IsInf(best, -1) {
		return 0
	}
	return best
}
