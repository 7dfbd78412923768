package appraise

import (
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Rung names what one step of the ladder adds.
type Rung string

// The rungs, in the order in which they are climbed.
const (
	RungBare    Rung = "bare"    // one board a side on the frame, nothing in the gap
	RungFill    Rung = "fill"    // the gap filled
	RungFixing  Rung = "fixing"  // the leaf hung from clips or channel
	RungFrame   Rung = "frame"   // two rows, or staggered, instead of one frame
	RungBoard   Rung = "board"   // one more board on a leaf
	RungLeaf    Rung = "leaf"    // an inner leaf, which may take a step down
	RungMore    Rung = "more"    // not taken: one more board on the edited leaf
	RungFar     Rung = "far"     // not taken: one more board on the far leaf
	RungTwoRows Rung = "twoRows" // not taken: two rows of studs instead
	RungClips   Rung = "clips"   // not taken: clips under the edited leaf
)

// Where a step stands.
const (
	Taken = "taken"
	Here  = "here"
	Open  = "open"
)

// Step is one step of the ladder.
type Step struct {
	Rung    Rung
	Where   string
	Leaf    int            // that the rung is about
	Board   material.Board // that it adds
	Gap     int
	BuildUp assembly.BuildUp
}

// Ladder returns the steps from one board a side on a bare frame to the
// build-up, and the next few not taken. Boards are added from the frame
// outwards; inner leaves come last, so that what they cost is seen. heavy is
// the layer of the steps not taken; rows and clip are what two rows of studs
// and a leaf on clips would be made of. nil for a single leaf.
func Ladder(b assembly.BuildUp, leaf int, heavy assembly.Layer, rows material.Frame, clip assembly.Held) []Step {
	if len(b.Leaves) < 2 {
		return nil
	}
	outer := b
	for len(outer.Leaves) > 2 {
		outer = WithoutLeaf(outer, 1)
	}
	now := clone(outer)
	g := &now.Gaps[0]
	goal := outer.Gaps[0]
	bare(&now)
	var steps []Step
	add := func(r Rung, leaf int, board material.Board) {
		steps = append(steps, Step{Rung: r, Where: Taken, Leaf: leaf, Board: board, BuildUp: clone(now)})
	}
	add(RungBare, 0, now.Leaves[0].Layers[0].Board)
	if goal.Fill.ID != "" {
		g.Fill, g.FillPrice, g.FillThere = goal.Fill, goal.FillPrice, goal.FillThere
		g.FillDepth = min(goal.FillDepth, g.Depth)
		add(RungFill, 0, material.Board{})
	}
	if g.Frame.ID != goal.Frame.ID {
		g.Frame, g.Depth, g.FillDepth = goal.Frame, max(goal.Depth-goal.StandOffs(), assembly.FrameDepth(goal.Frame)), min(goal.FillDepth, goal.Depth-goal.StandOffs())
		if goal.Fill.ID == "" {
			g.FillDepth = 0
		}
		add(RungFrame, 0, material.Board{})
	}
	if g.Near.Fixing.ID != goal.Near.Fixing.ID || g.Far.Fixing.ID != goal.Far.Fixing.ID {
		*g = goal
		add(RungFixing, leaf, material.Board{})
	}
	*g = goal
	for _, side := range order(leaf, len(b.Leaves)) {
		at := min(side, 1)
		full := outer.Leaves[at].Layers
		for n := len(now.Leaves[at].Layers) + 1; n <= len(full); n++ {
			now.Leaves[at].Layers = held(full, at == 0, n)
			board := now.Leaves[at].Layers[0].Board
			if at != 0 {
				board = now.Leaves[at].Layers[n-1].Board
			}
			add(RungBoard, at, board)
		}
	}
	for i := len(b.Leaves) - 2; i >= 1; i-- {
		now = clone(b)
		for j := i - 1; j >= 1; j-- {
			now = WithoutLeaf(now, j)
		}
		add(RungLeaf, i, b.Leaves[i].Layers[0].Board)
	}
	steps[len(steps)-1].Where = Here
	steps[len(steps)-1].BuildUp = b
	return append(steps, open(b, leaf, heavy, rows, clip)...)
}

// bare leaves one board a side, the one next to the frame, and takes the fill
// and what isolates out of the gap. What is there already stays.
func bare(b *assembly.BuildUp) {
	for i := range b.Leaves {
		if !b.Leaves[i].There() {
			b.Leaves[i].Layers = held(b.Leaves[i].Layers, i == 0, 1)
		}
	}
	g := &b.Gaps[0]
	screwed, _ := material.FixingByID("screwed")
	for _, h := range []*assembly.Held{&g.Near, &g.Far} {
		if h.Fixing.Kind == material.Clip || h.Fixing.Kind == material.Channel {
			*h = assembly.Held{Fixing: screwed, Extra: h.Extra, Screws: h.Screws}
		}
	}
	if single, ok := singleRow(g.Frame); ok {
		g.Frame = single
	}
	if d := assembly.FrameDepth(g.Frame); d > 0 {
		g.Depth = d + g.StandOffs()
	}
	if !g.FillThere {
		g.Fill, g.FillDepth, g.FillPrice = material.Fill{}, 0, 0
	}
	g.FillDepth = min(g.FillDepth, g.Depth)
}

// singleRow returns the single row of studs of the same member.
func singleRow(f material.Frame) (material.Frame, bool) {
	if f.Kind != material.Double && f.Kind != material.Staggered {
		return f, false
	}
	for _, s := range material.Frames("") {
		if s.Kind == material.Wood && unit.Same(s.Depth, f.Depth) {
			return s, true
		}
	}
	return f, false
}

// held returns the n layers of a leaf next to its frame: the last n of the room
// side's leaf, the first n of the far one's.
func held(layers []assembly.Layer, near bool, n int) []assembly.Layer {
	n = min(n, len(layers))
	if near {
		return slices.Clone(layers[len(layers)-n:])
	}
	return slices.Clone(layers[:n])
}

// order returns the outer leaves, the edited one first.
func order(leaf, leaves int) []int {
	if leaf == leaves-1 {
		return []int{leaves - 1, 0}
	}
	return []int{0, leaves - 1}
}

func open(b assembly.BuildUp, leaf int, heavy assembly.Layer, rows material.Frame, clip assembly.Held) []Step {
	var steps []Step
	last := len(b.Leaves) - 1
	more := func(r Rung, at int) {
		c := clone(b)
		if len(c.Leaves[at].Layers) >= assembly.MaxLayers {
			return
		}
		if at == 0 {
			c.Leaves[at].Layers = slices.Insert(c.Leaves[at].Layers, 0, heavy)
		} else {
			c.Leaves[at].Layers = append(c.Leaves[at].Layers, heavy)
		}
		steps = append(steps, Step{Rung: r, Where: Open, Leaf: at, Board: heavy.Board, BuildUp: c})
	}
	more(RungMore, leaf)
	if leaf == 0 {
		more(RungFar, last)
	} else {
		more(RungFar, 0)
	}
	gap := min(leaf, last-1)
	near := gap == leaf
	g := b.Gaps[gap]
	if clip.Fixing.Kind == material.Clip && g.Held(near).Fixing.Kind != material.Clip && g.Frame.Kind != material.Double && g.Frame.Kind != material.NoFrame {
		c := clone(b)
		before := c.Gaps[gap].StandOffs()
		clip.Screws = g.Held(near).Screws
		if near {
			c.Gaps[gap].Near = clip
		} else {
			c.Gaps[gap].Far = clip
		}
		c.Gaps[gap].Depth += c.Gaps[gap].StandOffs() - before
		steps = append(steps, Step{Rung: RungClips, Where: Open, Leaf: leaf, Gap: gap, BuildUp: c})
	}
	if rows.Kind == material.Double && !masonry(b.Leaves[0]) && !masonry(b.Leaves[last]) && !b.Horizontal && len(b.Leaves) == 2 && (g.Frame.Kind == material.Wood || g.Frame.Kind == material.Staggered) {
		c := clone(b)
		screwed, _ := material.FixingByID("screwed")
		c.Gaps[0].Frame = rows
		c.Gaps[0].Near, c.Gaps[0].Far = assembly.Held{Fixing: screwed, Extra: g.Near.Extra, Screws: g.Near.Screws}, assembly.Held{Fixing: screwed, Extra: g.Far.Extra, Screws: g.Far.Screws}
		c.Gaps[0].Depth = max(rows.Plate, assembly.FrameDepth(rows))
		if g.Fill.ID != "" {
			c.Gaps[0].FillDepth = 2 * min(g.FillDepth, rows.Depth)
		}
		steps = append(steps, Step{Rung: RungTwoRows, Where: Open, Leaf: leaf, BuildUp: c})
	}
	return steps
}
