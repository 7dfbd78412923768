// Package caution holds what is computed outside a limit, or unsafe, or for a
// licensed person, as values: a code, where it is, and the numbers that set it
// off. The page turns them into sentences; none is printed here.
package caution

import (
	"slices"
	"sort"
)

// Caution is one such value. Numbers are SI.
type Caution struct {
	Code Code `json:"code"`
	// Where is the path of ids in the plan, parts joined by "/": "wallB/b1/0/l2"; empty is the plan.
	Where string `json:"where,omitempty"`
	// Args are the numbers that set it off, by the names of Names.
	Args map[string]float64 `json:"args,omitempty"`
	// Text are ids or names of what it is about, by the names of Names.
	Text map[string]string `json:"text,omitempty"`
}

// Severity says how a caution is shown.
type Severity string

// The severities.
const (
	Info Severity = "info"    // worth knowing
	Care Severity = "caution" // look into it before building
	Over Severity = "over"    // a limit is passed; the answer is no
)

// Code names a limit or a hazard.
type Code string

// The cautions.
const (
	// Load on what carries the leaf.
	OverRating      Code = "over-rating"       // a clip carries more than its rating
	CloseToRating   Code = "close-to-rating"   // from 90 % of it
	UnderLoad       Code = "under-load"        // under 40 % of it: the rubber is too stiff for the mass
	NoRating        Code = "no-rating"         // no rating was typed
	RatingInvented  Code = "rating-invented"   // the rating is the demonstration's
	ChannelBoards   Code = "channel-boards"    // more board than resilient channel is meant for
	CeilingDeadLoad Code = "ceiling-dead-load" // added dead load on joists: ask an engineer
	TrussChord      Code = "truss-chord"
	MasonryOnFloor  Code = "masonry-on-floor"
	PouredFloor     Code = "poured-floor"
	Lifting         Code = "lifting"     // the sheet takes two, or a lift
	OverMass        Code = "over-mass"   // heavier than the reference
	ShortStock      Code = "short-stock" // fewer sheets here than are needed
	NoScrew         Code = "no-screw"    // no stock screw is long enough and short enough

	// Fire and life safety.
	FireBoardOut Code = "fire-board-out" // the reference's fire-rated board is not in this leaf
	WoodAtFace   Code = "wood-at-face"
	WoodBetween  Code = "wood-between"
	GarageFire   Code = "garage-fire" // a garage beside or below: a fire separation
	Escape       Code = "escape"      // a way out through two doors or a window; alarms heard inside
	FreshAir     Code = "air"
	Wiring       Code = "wiring"
	OldHouse     Code = "old-house" // asbestos, lead: test before stripping
	Dust         Code = "dust"
	Moisture     Code = "moisture" // condensation in an outside wall

	// What undoes the sound.
	TripleLeaf        Code = "triple-leaf"
	ChannelSandwiched Code = "channel-sandwiched"
	ChannelShorted    Code = "channel-shorted"
	CloseScrews       Code = "close-screws"
	EmptyGap          Code = "empty-gap"
	SameBoards        Code = "same-boards" // both leaves dip together
	Flanking          Code = "flanking"    // more than a built wall can show
	OpenPores         Code = "open-pores"  // an unsealed block wall

	// How far the figures go. Packages load and plan declare codes of their own.
	Below50Hz    Code = "below-50hz"
	NoFamily     Code = "no-family" // no published test of this kind
	AssumedSound Code = "assumed-sound"
	AssumedMass  Code = "assumed-mass"  // a mass from memory
	ValueChanged Code = "value-changed" // a typical value moved since the plan was made
	InventedCost Code = "invented-cost"
	TagUnlikely  Code = "tag-unlikely" // a typed weight far from the board's range
)

// rule is what a code stands for: how it is shown and which names it carries.
type rule struct {
	code     Code
	severity Severity
	names    []string
}

// rules is the one list of the cautions, in the order in which they are shown
// within a severity. The names of numbers come first, then those of texts.
var rules = []rule{
	{OverRating, Over, []string{"load", "rating", "share"}},
	{ChannelBoards, Over, []string{"mass", "limit"}},
	{OverMass, Over, []string{"mass", "limit", "share"}},
	{"channel-sags", Over, []string{"sag", "limit", "share"}}, // these and the others in quotes: see load
	{"channel-bends", Over, []string{"share"}},
	{"joist-over", Over, []string{"share"}},
	{NoScrew, Over, []string{"shortest", "longest"}},
	{ShortStock, Over, []string{"need", "stock", "board"}},

	{FireBoardOut, Care, []string{"board"}},
	{GarageFire, Care, []string{"beyond"}},
	{WoodAtFace, Care, []string{"board"}},
	{WoodBetween, Care, []string{"board"}},
	{CloseToRating, Care, []string{"load", "rating", "share"}},
	{UnderLoad, Care, []string{"load", "rating", "share"}},
	{NoRating, Care, []string{"load"}},
	{CeilingDeadLoad, Care, []string{"added", "limit"}},
	{TrussChord, Care, nil},
	{"rated-other-way", Care, []string{"load", "rating"}},
	{"needs-blocking", Care, []string{"clips"}},
	{"loose-strip", Care, []string{"width", "height"}},
	{"lifted-clip", Care, []string{"load"}},
	{"dead-passed", Care, []string{"left", "sized"}},
	{"joists-cut", Care, nil},
	{"joists-sag", Care, []string{"sag", "limit"}},
	{"long-span", Care, []string{"span", "limit"}},
	{"wall-out", Care, nil},
	{"old-frame", Care, []string{"year"}},
	{"frame-on-floor", Care, []string{"line"}},
	{"corner-backing", Care, []string{"need", "has"}},
	{"pilot-holes", Care, []string{"layer", "diameter", "board"}},
	{MasonryOnFloor, Care, []string{"mass"}},
	{PouredFloor, Care, []string{"mass"}},
	{TripleLeaf, Care, []string{"leaves", "gain"}},
	{ChannelSandwiched, Care, []string{"gain"}},
	{ChannelShorted, Care, []string{"shorts", "gain"}},
	{CloseScrews, Care, []string{"screws", "gain"}},
	{EmptyGap, Care, []string{"depth", "gain"}},
	{OpenPores, Care, []string{"gain"}},
	{Lifting, Care, []string{"mass", "people", "board"}},
	{TagUnlikely, Care, []string{"mass", "low", "high", "board"}},
	{Escape, Care, nil},
	{FreshAir, Care, nil},
	{Wiring, Care, nil},
	{OldHouse, Care, nil},
	{Moisture, Care, nil},
	{Dust, Care, []string{"board"}},

	{"one-row", Info, []string{"height", "need"}},
	{"one-clip", Info, []string{"pieces"}},
	{"panel-gap", Info, []string{"layer", "gap", "board"}},
	{"coarse-thread", Info, nil},
	{"fine-thread", Info, []string{"steel"}},
	{"drill-point", Info, []string{"steel"}},
	{"half-load", Info, []string{"share", "frequency", "mean"}},
	{SameBoards, Info, []string{"frequency", "gain", "board"}},
	{Flanking, Info, []string{"rating", "limit"}},
	{Below50Hz, Info, []string{"spread"}},
	{NoFamily, Info, []string{"spread", "widest"}},
	{AssumedSound, Info, []string{"board", "like"}},
	{AssumedMass, Info, []string{"board"}},
	{ValueChanged, Info, []string{"was", "now", "board"}},
	{"table-newer", Info, []string{"was", "now"}}, // see plan
	{"unread-fields", Info, []string{"fields"}},
	{RatingInvented, Info, []string{"rating"}},
	{InventedCost, Info, nil},
}

func ruleOf(c Code) (int, bool) {
	i := slices.IndexFunc(rules, func(r rule) bool { return r.code == c })
	return i, i >= 0
}

// Codes returns every code in the order in which they are shown.
func Codes() []Code {
	out := make([]Code, len(rules))
	for i, r := range rules {
		out[i] = r.code
	}
	return out
}

// Severity returns how a code is shown; "" if there is no such code.
func (c Code) Severity() Severity {
	if i, ok := ruleOf(c); ok {
		return rules[i].severity
	}
	return ""
}

// Names returns the names of a code's numbers and texts.
func (c Code) Names() []string {
	if i, ok := ruleOf(c); ok {
		return slices.Clone(rules[i].names)
	}
	return nil
}

// Sort brings cautions into the order in which they are shown, gravest first,
// and drops repeats: each is said once where it matters.
func Sort(list []Caution) []Caution {
	out := make([]Caution, 0, len(list))
	for _, c := range list {
		if !slices.ContainsFunc(out, func(o Caution) bool {
			return o.Code == c.Code && o.Where == c.Where && o.Text["board"] == c.Text["board"]
		}) {
			out = append(out, c)
		}
	}
	rank := func(c Caution) int {
		i, known := ruleOf(c.Code)
		if !known {
			return len(rules)
		}
		return i
	}
	sort.SliceStable(out, func(i, j int) bool { return rank(out[i]) < rank(out[j]) })
	return out
}
