package takeoff

import (
	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// How far a screw must reach into what holds the boards.
const (
	// IntoWood is 5/8 in, 16 mm in round figures (IRC-R702).
	IntoWood = 0.625 * unit.Inch
	// PastSteel is 3/8 in, 10 mm in round figures (the same).
	PastSteel = 0.375 * unit.Inch
)

// printed is half of the last digit that tables print a board's thickness to:
// 15.9 mm is 5/8 in = 15.875. A screw is not the next size up for that.
const printed = 0.05 * unit.Millimetre

// Stock lengths of drywall screws (from memory: 1, 1 1/4, 1 5/8, 2, 2 1/4,
// 2 1/2, 3 in; the metric series of three markets).
var stock = map[string][]unit.Length{
	material.NorthAmerica: {1 * unit.Inch, 1.25 * unit.Inch, 1.625 * unit.Inch, 2 * unit.Inch, 2.25 * unit.Inch, 2.5 * unit.Inch, 3 * unit.Inch, 4 * unit.Inch},
	"UK":                  {0.025, 0.032, 0.035, 0.038, 0.042, 0.050, 0.060, 0.065, 0.075, 0.090, 0.100},
	material.Europe:       {0.025, 0.035, 0.045, 0.055, 0.070, 0.090, 0.110},
	material.Australia:    {0.025, 0.030, 0.041, 0.045, 0.051, 0.057, 0.065, 0.075, 0.100},
}

// Stock returns the lengths of drywall screws sold in a plan's region, shortest
// first (from memory).
func Stock(region string) []unit.Length {
	list := stock[region]
	if list == nil {
		list = stock[material.TableRegion(region)]
	}
	return append([]unit.Length(nil), list...)
}

// Why says what decided the length of a screw.
type Why string

// The reasons.
const (
	Wood    Why = "wood"    // boards and so much into wood
	Steel   Why = "steel"   // boards and so much past steel
	Channel Why = "channel" // as steel, and no further than the channel is clear of the frame
	There   Why = "there"   // the layer is in the house already
	Masonry Why = "masonry" // fixed to masonry: no drywall screw
	NoFrame Why = "noFrame" // nothing to screw to
	TooLong Why = "tooLong" // longer than any sold
	Touches Why = "touches" // the shortest that holds already reaches the frame
)

// Screw is the screw of one layer.
type Screw struct {
	Least  unit.Length // boards passed and penetration
	Most   unit.Length // no longer, or it reaches the frame; 0 without such a limit
	Length unit.Length // shortest stock length that holds; 0 where there is none
	Why    Why
}

// Screws returns the screw of every layer of a leaf, in the order of its layers.
// The layer nearest the frame is fixed first; each later one is screwed through
// those before it:
//
//	least = Σ boards up to the layer + penetration
//	most  = Σ boards up to the layer + clear depth of the channel
//
// rounded up to a stock length of the region. All lengths in m. On channel a
// screw longer than most touches the frame and undoes it.
//
// Source: penetration, IRC-R702; maximum on channel, derived.
func Screws(b assembly.BuildUp, leaf int, region string) []Screw {
	if leaf < 0 || leaf >= len(b.Leaves) {
		return nil
	}
	layers := b.Leaves[leaf].Layers
	out := make([]Screw, len(layers))
	gap, near, fixed := b.Fixed(leaf)
	penetration, clear, why := unit.Length(0), unit.Length(0), NoFrame
	if fixed {
		g := b.Gaps[gap]
		penetration, clear, why = into(g.Frame, g.Held(near).Fixing)
	}
	list := Stock(region)
	sum, slack := unit.Length(0), unit.Length(0)
	for n := range layers {
		i := n // a leaf beyond the gap is fixed from its first layer on
		if near {
			i = len(layers) - 1 - n // one on the room side from its last
		}
		sum += layers[i].Board.Thickness
		slack += printed
		switch {
		case layers[i].There:
			out[i] = Screw{Why: There}
		case penetration == 0:
			out[i] = Screw{Why: why}
		default:
			out[i] = choose(sum, slack, penetration, clear, why, list)
		}
	}
	return out
}

// into returns how far a screw goes into what holds a leaf and how much is clear behind it.
func into(f material.Frame, held material.Fixing) (penetration, clear unit.Length, why Why) {
	switch held.Kind {
	case material.Channel, material.Clip:
		return PastSteel, held.Clear, Channel
	case material.Screwed:
	default:
		return 0, 0, NoFrame
	}
	switch f.Kind {
	case material.Bare:
		return 0, 0, Masonry
	case material.NoFrame, "":
		return 0, 0, NoFrame
	}
	if f.Sheet > 0 {
		return PastSteel, 0, Steel
	}
	return IntoWood, 0, Wood
}

func choose(boards, slack, penetration, clear unit.Length, why Why, list []unit.Length) Screw {
	s := Screw{Least: boards + penetration, Why: why}
	if clear > 0 {
		s.Most = boards + clear
	}
	for _, length := range list {
		if unit.Over(s.Least-slack, length) {
			continue
		}
		s.Length = length
		if s.Most > 0 && unit.Over(length, s.Most) {
			s.Why = Touches
		}
		return s
	}
	s.Why = TooLong
	return s
}

// Longest returns the longest screw of a leaf, 0 if it needs none.
func Longest(screws []Screw) unit.Length {
	longest := unit.Length(0)
	for _, s := range screws {
		longest = max(longest, s.Length)
	}
	return longest
}
