package core

import (
	"twoleaf/core/load"
	"twoleaf/core/takeoff"
)

// LayoutReport is where every clip of a surface's edited leaf goes and what it carries.
type LayoutReport struct {
	Layout load.Layout `json:"layout"`
	Face   load.Face   `json:"face"`
	Rules  load.Rules  `json:"rules"`
	Hung   []HungSpot  `json:"hung"`
	// Widest is the widest spacing that still holds, nil without a rating or where none does.
	Widest *WidestReport `json:"widest,omitempty"`
	Joists *JoistReport  `json:"joists,omitempty"`
	Faults []*Fault      `json:"faults,omitempty"`
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
}

// JoistReport is what a ceiling puts on its joists.
type JoistReport struct {
	Added     *Value `json:"added"`     // kg/m², new
	There     *Value `json:"there"`     // kg/m², that they carry already
	Allowance *Value `json:"allowance"` // kg/m² they were likely sized for
	Left      *Value `json:"left"`      // of it, when all hangs; may be negative
	PerJoist  *Value `json:"perJoist"`  // kg a metre of joist, new
	Span      *Value `json:"span"`
	Moment    *Value `json:"moment"` // share of what it may take; nil without span and grade
	Bend      *Value `json:"bend"`   // share of the allowed deflection
	Engineer  bool   `json:"engineer"`
	// Notes are codes of the load package's own.
	Notes []string `json:"notes,omitempty"`
}

// ListReport is everything to buy for the whole plan but the cut layout, which
// is asked for by itself (call cut).
type ListReport struct {
	Lines  []ItemReport   `json:"lines"`
	Before *Value         `json:"before"` // sum of what has a price
	Tax    *Value         `json:"tax"`
	Extra  *Value         `json:"extra"` // contingency
	All    *Value         `json:"all"`
	Lacks  int            `json:"lacks"` // lines without a price
	Mass   *Value         `json:"mass"`  // of the sheets
	Lifts  []LiftReport   `json:"lifts"`
	Way    []takeoff.Note `json:"way"`    // what does not go through, and what would
	Stack  *Value         `json:"stack"`  // sheets that may lie on the floor in one stack, count
	Forgot []string       `json:"forgot"` // codes of what is often forgotten
}

// ItemReport is one line of the list.
type ItemReport struct {
	Item     string             `json:"item"` // what its price is kept by, and its tick
	Code     string             `json:"code"`
	Board    string             `json:"board,omitempty"` // id, of sheets
	Short    string             `json:"short,omitempty"`
	Row      string             `json:"row,omitempty"`
	Nominal  string             `json:"nominal,omitempty"`
	Sheet    string             `json:"sheet,omitempty"`
	Need     float64            `json:"need"`
	Owned    float64            `json:"owned"`
	Buy      float64            `json:"buy"`
	Unit     string             `json:"unit"`             // sheet, piece, box, tube, pack, roll, bucket, m, each
	Size     *Value             `json:"size,omitempty"`   // length of a screw or channel
	Weight   *Value             `json:"weight,omitempty"` // of one
	Price    *Value             `json:"price"`            // of one
	Cost     *Value             `json:"cost"`
	Rule     string             `json:"rule"` // code of the rule it was counted by
	Args     map[string]float64 `json:"args,omitempty"`
	Lacking  int                `json:"lacking,omitempty"`
	Optional bool               `json:"optional,omitempty"` // often forgotten
}

// LiftReport is who can lift one board's sheet.
type LiftReport struct {
	Board  string `json:"board"`
	Short  string `json:"short"`
	Mass   *Value `json:"mass"`
	People int    `json:"people"`
	Panel  bool   `json:"panel"` // a panel lift for the ceiling
}

// CutReport is the best cut layout of a stretch of tries.
type CutReport struct {
	Cut   takeoff.Cut `json:"cut"`
	Tries int         `json:"tries"` // of all
	Faces []CutFace   `json:"faces"`
}

// CutFace is a face that was cut for.
type CutFace struct {
	ID     string  `json:"id"`
	Name   string  `json:"name"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
}
