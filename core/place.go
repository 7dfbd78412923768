package core

import (
	"twoleaf/core/caution"
	"twoleaf/core/load"
	"twoleaf/core/plan"
	"twoleaf/core/takeoff"
	"twoleaf/core/unit"
)

// LayoutReport is where every clip of a surface's edited leaf goes and what it carries.
type LayoutReport struct {
	Layout *load.Layout `json:"layout"` // nil where there is none, see Fault
	Face   load.Face    `json:"face"`
	Rules  load.Rules   `json:"rules"`
	Hung   []HungSpot   `json:"hung"`
	// Widest is the widest spacing that still holds, nil without a rating or where none does.
	Widest *WidestReport `json:"widest,omitempty"`
	// Mend is one clip more that brings the worst down the furthest; only where one is over.
	Mend   *MendReport  `json:"mend,omitempty"`
	Joists *JoistReport `json:"joists,omitempty"`
	// Line is what a wall's new frame, with all that hangs on it, puts on each metre of floor.
	Line *Value `json:"line,omitempty"`
	// Hanging is the leaf as a mass on its clips.
	Hanging *load.Hanging `json:"hanging,omitempty"`
	// Span is how far the channel may run between clips; Sags the most it bends of what it may.
	Span *Value `json:"span,omitempty"`
	// Spacing is how far apart the screws of each layer are.
	Spacing []takeoff.Spacing `json:"spacing,omitempty"`
	// Fasten is advice on the screws, Corner what the corners need to be screwed to.
	Fasten []caution.Caution `json:"fasten"`
	// Fault says why there is no layout, as load names it.
	Fault *Sentence `json:"fault,omitempty"`
	// Faults are of the fields of what hangs and of the joists.
	Faults []*plan.Fault `json:"faults,omitempty"`
}

// MendReport is a clip to add, and what the worst then carries of its rating.
type MendReport struct {
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
	Share *Value  `json:"share"`
}

// HungSpot is a thing hung, by its id in the plan.
type HungSpot struct {
	ID   string  `json:"id"`
	Name string  `json:"name"`
	X    float64 `json:"x"`
	Y    float64 `json:"y"`
	Mass *Value  `json:"mass"`
}

// WidestReport is a grid, and what the worst clip then carries of its rating.
type WidestReport struct {
	Rows  *Value `json:"rows"`
	Along *Value `json:"along"`
	Share *Value `json:"share"`
	Clips int    `json:"clips"`
	// None says that none holds, and which comes closest.
	None *Sentence `json:"none,omitempty"`
}

// JoistReport is what a ceiling puts on its joists.
type JoistReport struct {
	Above load.Above       `json:"above"`
	Added unit.SurfaceMass `json:"added"` // new, as delivered
	Code  unit.SurfaceMass `json:"code"`  // the same by the masses that codes take
	Dead  load.Dead        `json:"dead"`
	Limit unit.SurfaceMass `json:"limit"` // added beyond it: ask an engineer
	// Bend is the joist's own check; nil without its span and grade.
	Bend     *load.Bending     `json:"bend,omitempty"`
	Cautions []caution.Caution `json:"cautions"`
}

// ListReport is everything to buy for the whole plan, by one try of the cut
// layout; the search for the best of them is the call cut.
type ListReport struct {
	Try    int             `json:"try"`
	Items  []ItemReport    `json:"items"`
	Bill   takeoff.Bill    `json:"bill"`
	Totals []takeoff.Total `json:"totals"` // by board, beside the rule of area and waste
	Notes  []takeoff.Note  `json:"notes"`  // what could not be cut, and what to know
	Mass   *Value          `json:"mass"`   // of the sheets to buy
	Sheets int             `json:"sheets"` // to buy
	Trips  []takeoff.Trip  `json:"trips"`
	Cargo  []takeoff.Note  `json:"cargo"` // what does not go on the vehicle
	Lifts  []LiftReport    `json:"lifts"`
	Way    []WayReport     `json:"way"`    // sheets that do not go through the way in
	Forgot []takeoff.Note  `json:"forgot"` // often forgotten
	Steps  []takeoff.Step  `json:"steps"`  // order of work
	Faces  []CutFace       `json:"faces"`
	// Faults are of the fields that the list is made with.
	Faults []*plan.Fault `json:"faults,omitempty"`
	// Names are of the boards, by id.
	Names map[string]BoardName `json:"names"`
}

// BoardName is what a board is called.
type BoardName struct {
	Short   string `json:"short"`
	Row     string `json:"row"`
	Brief   string `json:"brief"`
	Nominal string `json:"nominal"`
	Kind    string `json:"kind"`
	Sheet   string `json:"sheet"`
}

// ItemReport is one line of the list: what was counted, and its price's origin.
type ItemReport struct {
	Key     string       `json:"key"`
	Item    takeoff.Item `json:"item"`
	Origin  Origin       `json:"origin,omitempty"`  // of the price
	Lacking int          `json:"lacking,omitempty"` // more than there are here
}

// LiftReport is who can lift one board's sheet, and how many may lie in one stack.
type LiftReport struct {
	Board string          `json:"board"`
	Mass  *Value          `json:"mass"`
	Wall  takeoff.Carried `json:"wall"`
	Over  takeoff.Carried `json:"over"`  // on a ceiling
	Above bool            `json:"above"` // it hangs on one
	Stack int             `json:"stack"` // sheets in one pile on a floor made for living rooms
}

// WayReport is a board whose sheet does not go through the way in.
type WayReport struct {
	Board string         `json:"board"`
	Notes []takeoff.Note `json:"notes"`
	// Fits is the largest sheet sold that goes through, nil if none; Cut how long a piece may be.
	Fits *SizeReport `json:"fits,omitempty"`
	Cut  *Value      `json:"cut"`
}

// SizeReport is a sheet.
type SizeReport struct {
	Width  *Value `json:"width"`
	Length *Value `json:"length"`
}

// CutReport is the best cut layout of a stretch of tries.
type CutReport struct {
	Cut   takeoff.Cut          `json:"cut"`
	Tries int                  `json:"tries"` // of all
	Faces []CutFace            `json:"faces"`
	Names map[string]BoardName `json:"names"`
	// Other is what each board comes to in its other lengths, the first as it is;
	// only where the call asked for it.
	Other map[string][]takeoff.Choice `json:"other,omitempty"`
}

// CutFace is a face that was cut for.
type CutFace struct {
	ID       string            `json:"id"`
	Surface  string            `json:"surface"`
	Leaf     int               `json:"leaf"`
	Name     string            `json:"name"`
	Width    float64           `json:"width"`
	Height   float64           `json:"height"`
	Openings []takeoff.Opening `json:"openings"`
	Lines    []float64         `json:"lines"`   // of framing, m
	Upright  bool              `json:"upright"` // they run along y
}
