package core

import (
	"twoleaf/core/band"
	"twoleaf/core/caution"
	"twoleaf/core/plan"
	"twoleaf/core/unit"
)

// Want says what is asked for now; all false is the strip, the build-up and the Layers verdict.
type Want struct {
	Surface string `json:"surface"`           // id; empty: the first
	Sound   bool   `json:"sound,omitempty"`   // curve, marks, sentences
	Rows    bool   `json:"rows,omitempty"`    // side by side
	Ladder  bool   `json:"ladder,omitempty"`  // what each step brings
	Nearest bool   `json:"nearest,omitempty"` // the closest measured construction
	Room    bool   `json:"room,omitempty"`    // the whole room
	Opening string `json:"opening,omitempty"` // with Room: what the crack under this door costs
	Money   bool   `json:"money,omitempty"`   // with Room: what the next money does
	Layout  bool   `json:"layout,omitempty"`  // where every clip goes
	List    bool   `json:"list,omitempty"`    // everything to buy
	Try     int    `json:"try,omitempty"`     // with List: the try of the cut layout that it is made by
	// Got are the keys of the list's items that were bought already.
	Got  []string `json:"got,omitempty"`
	Work string   `json:"work,omitempty"` // trace id: how a figure was worked out
}

// Origin says where a figure comes from.
type Origin string

// The origins.
const (
	Typed    Origin = "typed"
	Typical  Origin = "typical"
	Demo     Origin = "demo" // from the invented list
	Computed Origin = "computed"
)

// Value is a figure in SI with what is known of it.
type Value struct {
	V      float64  `json:"v"`
	Kind   string   `json:"kind"` // length, area, mass, surfaceMass, money, moneyRate, share, decibel, frequency, count, lineMass, density, flow, stiffness, number
	Low    *float64 `json:"low,omitempty"`
	High   *float64 `json:"high,omitempty"`
	Origin Origin   `json:"origin"`
	Trace  string   `json:"trace,omitempty"`
	As     string   `json:"as,omitempty"` // as typed: "58 lb"
	// Diff is against the reference; Same says that neither is over the other.
	Diff *float64 `json:"diff,omitempty"`
	Same bool     `json:"same,omitempty"`
}

// Figures are the numbers of one build-up. A nil value is not known.
type Figures struct {
	Mass      *Value `json:"mass"`      // of the edited leaf, kg/m²
	Cost      *Value `json:"cost"`      // of its new boards per m²; nil while a price is missing
	Clip      *Value `json:"clip"`      // load on the worst clip over its rating; nil without clips or rating
	ClipLoad  *Value `json:"clipLoad"`  // kg on it; nil without clips
	Bass      *Value `json:"bass"`      // dB, 50–125 Hz
	Rating    *Value `json:"rating"`    // STC or Rw by region
	Built     *Value `json:"built"`     // what a built room is likely to reach
	Thickness *Value `json:"thickness"` // whole build-up
	LeafThick *Value `json:"leafThick"` // the edited leaf
	Stack     *Value `json:"stack"`     // kg, one sheet of each layer
	StackCost *Value `json:"stackCost"`
	Load      string `json:"load"` // over, close, holds, under, unrated, none (nothing to load)
	C         int    `json:"c"`    // ISO 717-1 terms
	Ctr       int    `json:"ctr"`
}

// Report is the answer to a plan: figures, judgements as codes, geometry for the drawings.
type Report struct {
	Surface   string             `json:"surface"`
	BuildUp   string             `json:"buildUp"`
	Leaf      int                `json:"leaf"`
	RatingIs  string             `json:"ratingIs"` // "STC" or "Rw"
	Currency  string             `json:"currency"`
	Area      *Value             `json:"area"` // of the surface; nil if not said
	Yours     Figures            `json:"yours"`
	Reference Figures            `json:"reference"`
	RefLayers []LayerReport      `json:"refLayers"`
	IsRef     bool               `json:"isReference"` // yours is the reference
	Leaves    []LeafReport       `json:"leaves"`
	Gaps      []GapReport        `json:"gaps"`
	Load      *LoadReport        `json:"load,omitempty"`
	Buy       BuyReport          `json:"buy"`
	Sound     *SoundReport       `json:"sound,omitempty"`
	Rows      []RowReport        `json:"rows,omitempty"`
	Ladder    []StepReport       `json:"ladder,omitempty"`
	Nearest   *NearestReport     `json:"nearest,omitempty"`
	Picks     *Picks             `json:"picks,omitempty"`
	House     *HouseReport       `json:"house,omitempty"`
	Layout    *LayoutReport      `json:"layout,omitempty"`
	List      *ListReport        `json:"list,omitempty"`
	Verdicts  map[string]Verdict `json:"verdicts"` // by section: layers, load, sound, swap, buy
	Cautions  []caution.Caution  `json:"cautions"`
	Working   *Working           `json:"working,omitempty"`
}

// LayerReport is one row of the list under the section.
type LayerReport struct {
	ID        string   `json:"id"`
	Board     string   `json:"board"`
	Short     string   `json:"short"`   // "Gypsum type X"
	Row       string   `json:"row"`     // the same with % where the thickness stands: "Gypsum % type X"
	Brief     string   `json:"brief"`   // for narrow tables: "% type X"
	Nominal   string   `json:"nominal"` // "5/8 in"
	Kind      string   `json:"kind"`
	Heavy     float64  `json:"density"` // kg/m³, for the hatch
	There     bool     `json:"there"`
	Join      string   `json:"join"`
	Thickness *Value   `json:"thickness"`
	Mass      *Value   `json:"mass"`   // kg/m²
	Weight    *Value   `json:"weight"` // kg a sheet; nil for built masonry
	Price     *Value   `json:"price"`  // a sheet
	Sheet     string   `json:"sheet"`  // "4x8 ft", as the shelf or the table has it
	Sheets    []string `json:"sheetChoices"`
	Stock     *Value   `json:"stock"`
	Plenty    bool     `json:"plenty"`
	Owned     *Value   `json:"owned"`
	Need      int      `json:"need"`     // sheets for this layer by the area rule, 0 without an area
	Screw     *Value   `json:"screw"`    // shortest stock length that holds it
	ScrewMax  *Value   `json:"screwMax"` // longest that stays clear of the frame; nil if none
	ScrewWhy  string   `json:"screwWhy"` // code
	Wood      bool     `json:"wood"`
	FireRated bool     `json:"fireRated"`
}

// LeafReport is one leaf.
type LeafReport struct {
	Mass      *Value        `json:"mass"`
	Thickness *Value        `json:"thickness"`
	There     bool          `json:"there"` // every layer is
	Layers    []LayerReport `json:"layers"`
}

// HeldReport is how a leaf is held.
type HeldReport struct {
	Fixing   string `json:"fixing"`
	Kind     string `json:"kind"` // screwed, channel, clip, untied
	Name     string `json:"name"`
	StandOff *Value `json:"standOff"`
	Rows     *Value `json:"rows"`
	Along    *Value `json:"along"`
	Rating   *Value `json:"rating"`
	Extra    *Value `json:"extra"`
	Shorts   bool   `json:"shorts"`
	Screws   *Value `json:"screws"` // how far apart, where it counts; typical: at least so far
}

// GapReport is one gap.
type GapReport struct {
	ID         string     `json:"id"`
	Depth      *Value     `json:"depth"`
	Frame      string     `json:"frame"`
	FrameKind  string     `json:"frameKind"`
	FrameName  string     `json:"frameName"`
	FrameDepth *Value     `json:"frameDepth"`
	FrameWidth *Value     `json:"frameWidth"`
	Spacing    *Value     `json:"spacing"`
	Fill       string     `json:"fill"`
	FillName   string     `json:"fillName"`
	FillDepth  *Value     `json:"fillDepth"`
	Near       HeldReport `json:"near"`
	Far        HeldReport `json:"far"`
	There      bool       `json:"there"`
	FillThere  bool       `json:"fillThere"`
}

// LoadReport is what the worst clip carries; of a surface without a size an inner one, from the grid.
type LoadReport struct {
	Leaf      int    `json:"leaf"`
	Area      *Value `json:"area"`    // tributary
	Boards    *Value `json:"boards"`  // kg/m²
	Channel   *Value `json:"channel"` // kg/m²
	Fill      *Value `json:"fill"`    // kg/m², that lies on it
	Extra     *Value `json:"extra"`
	Own       *Value `json:"own"`    // area × all that
	OnClip    *Value `json:"onClip"` // with the channel running through
	Rating    *Value `json:"rating"`
	Share     *Value `json:"share"`
	State     string `json:"state"`
	HoldsRows *Value `json:"holdsRows"` // widest row spacing that still holds; nil without rating
	PerArea   *Value `json:"perArea"`   // clips per m²
	Count     int    `json:"count"`     // clips for the area, by density
	Added     *Value `json:"added"`     // kg/m² hung on joists (ceilings)
}

// BuyReport is the first form of the list: sheets by the area rule.
type BuyReport struct {
	Lines  []BuyLine `json:"lines"`
	Mass   *Value    `json:"mass"`
	Cost   *Value    `json:"cost"` // nil while a price is missing
	Sheets int       `json:"sheets"`
	Waste  *Value    `json:"waste"`
	Screws []Value   `json:"screws"` // stock lengths, shortest first
}

// BuyLine is one board of the list.
type BuyLine struct {
	Board   string `json:"board"`
	Short   string `json:"short"`
	Row     string `json:"row"`
	Brief   string `json:"brief"`
	Nominal string `json:"nominal"`
	Sheet   string `json:"sheet"`
	Need    int    `json:"need"`
	Owned   int    `json:"owned"`
	Buy     int    `json:"buy"`
	Lacking int    `json:"lacking"` // more than there are here
	Weight  *Value `json:"weight"`  // a sheet
	Price   *Value `json:"price"`   // a sheet
	Cost    *Value `json:"cost"`    // of what is to buy
}

// SoundReport is the curve and what there is to say of it.
type SoundReport struct {
	Hz         []float64        `json:"hz"` // nominal
	TL         band.Spectrum    `json:"tl"`
	Low        band.Spectrum    `json:"low"`
	High       band.Spectrum    `json:"high"`
	Ref        band.Spectrum    `json:"ref"`
	Octaves    []Octave         `json:"octaves"` // 63 to 4000
	STC        int              `json:"stc"`
	Rw         int              `json:"rw"`
	C          int              `json:"c"`
	Ctr        int              `json:"ctr"`
	C50        int              `json:"c50"`
	Ctr50      int              `json:"ctr50"`
	OITC       int              `json:"oitc"`
	Spread     Spread           `json:"spread"`
	Resonances []unit.Frequency `json:"resonances"`
	Dips       []Dip            `json:"dips"`
	Decides    int              `json:"decides"` // index of the band that decides the rating, −1 if none alone does
	EightRule  bool             `json:"eightRule"`
	Sentences  []Sentence       `json:"sentences"`
	Need       *Need            `json:"need,omitempty"` // nil while nobody plays or listens
}

// Need is the loss needed from what plays to who must not hear it, by octave.
type Need struct {
	Source   string       `json:"source"` // id
	Level    float64      `json:"level"`  // dBA in the room
	Listener string       `json:"listener"`
	Allowed  float64      `json:"allowed"` // dBA beyond
	Octaves  []NeedOctave `json:"octaves"` // 63 to 4000
	Worst    int          `json:"worst"`   // index of the octave that is short the most, −1 if none is
	Floor    bool         `json:"floor"`   // it also drives the floor, which is not counted
}

// NeedOctave is one octave of it; Short is 0 where enough is stopped.
type NeedOctave struct {
	Hz    float64 `json:"hz"`
	Need  float64 `json:"need"`
	Got   float64 `json:"got"`
	Short float64 `json:"short"`
}

// Octave is one column of the octave table.
type Octave struct {
	Hz     float64 `json:"hz"`
	TL     float64 `json:"tl"`
	Spread float64 `json:"spread"`
	Ref    float64 `json:"ref"`
}

// Spread says how far the rating may be off, and why that much.
type Spread struct {
	Rating float64 `json:"rating"` // ± dB
	Bass   float64 `json:"bass"`
	Family string  `json:"family"`
	Tests  int     `json:"tests"`            // measured rows of that family
	Near   bool    `json:"near"`             // the family is only the nearest; none of this kind is measured
	Widest string  `json:"widest,omitempty"` // the unconfirmed input that widens it most: clip, film, board, fill
}

// Dip is the coincidence of one board.
type Dip struct {
	Hz     float64 `json:"hz"`
	Leaf   int     `json:"leaf"`
	Layers []int   `json:"layers"`
	Short  string  `json:"short"`
	Kind   string  `json:"kind"`
	Both   bool    `json:"both"` // the same board dips in another leaf too
}

// Sentence is something to say, as a code with numbers; the page words it.
type Sentence struct {
	Code string             `json:"code"`
	Args map[string]float64 `json:"args,omitempty"`
	Text map[string]string  `json:"text,omitempty"`
	// Edit, if any, is what the page may offer to do.
	Edit string `json:"edit,omitempty"`
}

// RowReport is one row of side by side.
type RowReport struct {
	ID       string            `json:"id"`
	Is       string            `json:"is"` // reference, yours or empty
	Layers   []LayerReport     `json:"layers"`
	Figures  Figures           `json:"figures"`
	OverMass bool              `json:"overMass"` // heavier than the reference
	OverClip bool              `json:"overClip"`
	Cautions []caution.Caution `json:"cautions"`
}

// Picks are the rows worth naming.
type Picks struct {
	Closest  string `json:"closest"`  // heaviest that is not over the reference's mass nor over the clips
	Cheapest string `json:"cheapest"` // cheapest whose bass is not less than the reference's
	Best     string `json:"best"`     // most bass that holds
}

// Verdict is an answer and its reasons, to be worded in their order.
type Verdict struct {
	Answer string     `json:"answer"` // yes, notYet, no
	Parts  []Sentence `json:"parts"`
	Mend   *Sentence  `json:"mend,omitempty"`
}

// Working is how one figure was worked out, with the user's own numbers.
type Working struct {
	Trace   string       `json:"trace"`
	Rows    []WorkRow    `json:"rows"`
	Sources []WorkSource `json:"sources"`
}

// WorkRow is one line of the sum: Form is the terms in their order joined by
// signs ("%0 × %1"), to be filled in by the page.
type WorkRow struct {
	Code   string   `json:"code"`
	Form   string   `json:"form"`
	Terms  []*Value `json:"terms"`
	Result *Value   `json:"result"`
}

// WorkSource is where one number comes from.
type WorkSource struct {
	Code   string `json:"code"`
	Value  *Value `json:"value,omitempty"`
	Source string `json:"source"` // key of testdata/SOURCES.md, "common practice", "from memory", "typed"
}

// Fault is an error for the page: a code, where it is, and what would be allowed.
type Fault = plan.Fault
