// Package load tells what carries a leaf and whether it holds: every clip of a
// face where it goes (Lay) or one inner clip of a build-up alone (OnClip), the
// channel between clips, the joists above and the floor below, and what the boards
// are screwed to. What it returns are figures, states and codes; what to say of
// them is the page's.
package load

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/unit"
)

// Continuous is how much more than its own share of area an inner clip carries
// when the channel runs through over three equal spans: the inner reaction of a
// continuous beam under a uniform load w on spans l is 1.10·w·l, the outer 0.40·w·l.
//
// It follows from the theorem of three moments, M = w·l²/10 over the inner
// supports (derived; the beam tables of every structural handbook print the
// same figure, cited from memory). Two spans would be 1.25, four 1.14.
const Continuous = 1.10

// State is how a clip is loaded.
type State string

// The states. The bands are a proposal of ours: rubber that is hardly loaded
// is too stiff for what hangs on it, and near its rating nothing is left for a lamp.
const (
	Over    State = "over"    // more than the rating
	Close   State = "close"   // 90 to 100 %
	Holds   State = "holds"   // 40 to 90 %
	Under   State = "under"   // less than 40 %
	Unrated State = "unrated" // no rating typed
	None    State = "none"    // nothing that could be loaded: no clips
)

// The edges of the states, shares of the rating.
const (
	CloseFrom = 0.90
	UnderTo   = 0.40
)

// Clip is what one inner clip of a leaf carries, and of what that is made.
type Clip struct {
	Gap  int           // that the clips are in
	Near bool          // the leaf is on the room side of that gap
	Grid assembly.Grid // rows and spacing along the row
	Area unit.Area     // tributary: halfway to the next clips, Rows × Along
	Per  float64       // clips per m², 1/Area
	// What hangs on it, kg/m²: boards and films, channel, fill that lies on the
	// leaf, typed extras.
	Boards, Channel, Fill, Extra unit.SurfaceMass
	Own                          unit.Mass // Area × all that
	OnClip                       unit.Mass // Continuous × Own
	Rating                       unit.Mass // as typed, 0 if none
	Share                        float64   // OnClip/Rating, 0 without a rating
	State                        State
	// Worst is the worst clip of the whole face, where the face has a size: OnClip,
	// Share and State are then its own, else those of an inner clip.
	Worst *Spot
	// HoldsRows is the widest distance between rows at which OnClip is the
	// rating, by load alone; 0 without a rating or where none holds.
	HoldsRows unit.Length
}

// OnClip returns the load on an inner clip of a leaf, kg; ok is false where the
// leaf hangs on no clips.
//
//	own    = rows·along·(boards + fill + extra) + along·channel
//	onClip = 1.10·own
//	share  = onClip/rating
//
// boards, fill and extra are masses per area [kg/m²], channel is per length
// [kg/m], rows and along are the grid [m]. The clip's own mass hangs on its
// screw, not on its rubber, and is left out. Edge clips carry less, about half;
// point loads and cut-outs are not in it; Lay has them.
//
// Source: tributary area, common practice; 1.10 see Continuous.
func OnClip(b assembly.BuildUp, leaf int) (c Clip, ok bool) {
	if leaf < 0 || leaf >= len(b.Leaves) {
		return Clip{State: None}, false
	}
	gap, near, ok := b.Holder(leaf)
	if !ok {
		return Clip{State: None}, false
	}
	g := b.Gaps[gap]
	held := g.Held(near)
	if !clips(held) || held.Grid.Rows <= 0 || held.Grid.Along <= 0 {
		return Clip{State: None}, false
	}
	c = Clip{
		Gap: gap, Near: near, Grid: held.Grid,
		Area:   unit.Area(held.Grid.Rows * held.Grid.Along),
		Per:    held.Grid.PerArea(),
		Boards: b.Leaves[leaf].Mass(),
		Extra:  held.Extra,
		Rating: held.Rating,
	}
	c.Channel = unit.SurfaceMass(float64(held.Fixing.LineMass) / float64(held.Grid.Rows))
	if g.FillLies && near {
		c.Fill = g.FillMass()
	}
	line := float64(held.Fixing.LineMass) * float64(held.Grid.Along)
	lying := float64(c.Boards + c.Fill + c.Extra)
	c.Own = unit.Mass(float64(c.Area)*lying + line)
	c.OnClip = Continuous * c.Own
	c.State = Unrated
	if c.Rating > 0 {
		c.Share = float64(c.OnClip) / float64(c.Rating)
		c.State = StateOf(c.Share)
		if lying > 0 {
			rows := (float64(c.Rating)/Continuous - line) / (float64(held.Grid.Along) * lying)
			c.HoldsRows = unit.Length(math.Max(0, rows))
		}
	}
	return c, true
}

// Laid returns the clip with the load of the worst one of a layout.
func (c Clip) Laid(l Layout) Clip {
	if l.Worst < 0 || len(l.Spots) == 0 {
		return c
	}
	worst := l.Spots[l.Worst]
	worst.Pieces = nil
	c.Worst = &worst
	c.OnClip = worst.Load
	if c.Rating > 0 {
		c.Share = float64(c.OnClip) / float64(c.Rating)
		c.State = StateOf(c.Share)
	}
	return c
}

// StateOf returns the state of a share of the rating. The rating itself and 90 %
// are close; equal is not over.
func StateOf(share float64) State {
	switch {
	case unit.Over(share, 1):
		return Over
	case !unit.Over(CloseFrom, share):
		return Close
	case unit.Over(UnderTo, share):
		return Under
	}
	return Holds
}

// Count returns the clips for a face by density alone, rounded up; edge rows
// add to it in small rooms.
func (c Clip) Count(face unit.Area) int {
	if face <= 0 || c.Per <= 0 {
		return 0
	}
	return int(math.Ceil(float64(face)*c.Per - 1e-9))
}
