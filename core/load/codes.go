package load

import "twoleaf/core/caution"

// Cautions of a layout beside those of package caution; the names of their numbers follow.
const (
	// NeedsBlocking: clips where no member is, on blocking put in between: clips.
	NeedsBlocking caution.Code = "needs-blocking"
	// OneRow: the face is too low for two rows, there is one in its middle: height, need.
	OneRow caution.Code = "one-row"
	// OneClip: a piece of channel so short that one clip holds it: pieces.
	OneClip caution.Code = "one-clip"
	// LooseStrip: a strip of board that no row crosses; it needs blocking or a row: width, height.
	LooseStrip caution.Code = "loose-strip"
	// LiftedClip: by the channel as a beam a clip is pushed, not pulled: load.
	LiftedClip caution.Code = "lifted-clip"
	// RatedOtherWay: a rating is typed, but not for the direction that acts: load, rating.
	RatedOtherWay caution.Code = "rated-other-way"
	// ChannelSags: more than L/240 between two clips: sag, limit, share.
	ChannelSags caution.Code = "channel-sags"
	// ChannelBends: more moment than the channel may take: share.
	ChannelBends caution.Code = "channel-bends"
)

// Fault is why there is no layout: a code and what goes with it; SI.
type Fault struct {
	Code caution.Code
	Args nums
}

// Error returns the code.
func (f *Fault) Error() string { return string(f.Code) }

// Faults.
const (
	// FaultFace: a side of the face is below the least or above the most: width, height, least, most.
	FaultFace caution.Code = "face-size"
	// FaultOpenings: nothing is left of the face beside its openings, or no strip
	// beside them is long enough for channel: area that is left, least length of a strip.
	FaultOpenings caution.Code = "openings-fill"
	// FaultRule: a rule that is not above 0; the number says which: rows 1, every 2,
	// along 3, first 4, last 5, end 6; short, at-openings or a spacing below 0 is 7.
	FaultRule caution.Code = "rule-not-positive"
	// FaultHung: something hung that is off the boards: number from 0, and the nearest
	// place that is on them: x, y.
	FaultHung caution.Code = "hung-off"
	// FaultMass: a mass below 0, or absurd: number from 0 of what hangs, none for the boards or channel.
	FaultMass caution.Code = "mass-not-positive"
	// FaultNoneHolds: of all spacings tried none holds; the closest is given: rows,
	// every, clips, load, rating, share, and the mass per area that its clips would hold: most.
	FaultNoneHolds caution.Code = "none-holds"
	// FaultUnrated: no spacing can be found without a rating for the direction that acts.
	FaultUnrated caution.Code = "no-rating"
)
