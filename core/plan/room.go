package plan

import "twoleaf/core/unit"

// Room is the shell as it stands, before anything new hangs in it, and what
// goes on in it.
type Room struct {
	// Length, Width and Height are inside, from frame to frame. Walls on the
	// sides 1 and 3 are as wide as Length, on 2 and 4 as Width, unless a surface
	// has its own.
	Length  unit.Quantity `json:"length,omitempty"`
	Width   unit.Quantity `json:"width,omitempty"`
	Height  unit.Quantity `json:"height,omitempty"`
	Soft    Soft          `json:"soft,omitempty"`
	People  unit.Quantity `json:"people,omitempty"`
	Minutes unit.Quantity `json:"minutes,omitempty"` // of playing at a time
	Watts   unit.Quantity `json:"watts,omitempty"`   // of lamps and amplifiers, people not counted
	Air     unit.Quantity `json:"air,omitempty"`     // fresh air, "40 cfm"; empty: none said
	Fuel    bool          `json:"fuel,omitempty"`    // something burns in it or draws its air from it
}

// Soft is how much a room takes up of its sound.
type Soft string

// The furnishings.
const (
	Furnished Soft = ""
	Bare      Soft = "bare"
	Treated   Soft = "soft"
)

// Playing is one thing that sounds. Level is its A-weighted level, dB as a bare
// number; empty: its own.
type Playing struct {
	Source string        `json:"source"` // room.Source.ID
	Level  unit.Quantity `json:"level,omitempty"`
}

// Space is what lies beyond some surfaces; they name it by Surface.Beyond.
type Space struct {
	Name       string        `json:"name"`
	Area       unit.Quantity `json:"area,omitempty"`   // of its floor
	Height     unit.Quantity `json:"height,omitempty"` // of its ceiling
	Soft       Soft          `json:"soft,omitempty"`
	Outdoors   bool          `json:"outdoors,omitempty"`
	Background unit.Quantity `json:"background,omitempty"` // A-weighted, dB as a bare number
	// Noise is what the house does there.
	Noise []Playing `json:"noise,omitempty"`
}

// Opening is a door, window, box, duct, light, pipe or crack in a surface, or
// several alike.
type Opening struct {
	ID     string        `json:"id"`
	Kind   string        `json:"kind"`             // room.Kind.ID
	Seal   string        `json:"seal,omitempty"`   // how it is closed, of the kind's own list
	Width  unit.Quantity `json:"width,omitempty"`  // of a crack its length
	Height unit.Quantity `json:"height,omitempty"` // of a crack its width
	Count  unit.Quantity `json:"count,omitempty"`
	X      unit.Quantity `json:"x,omitempty"` // of its left edge, from the left end
	Y      unit.Quantity `json:"y,omitempty"` // of its lower edge, from the floor
	Crack  unit.Quantity `json:"crack,omitempty"`
	Run    unit.Quantity `json:"run,omitempty"` // lined length of a duct; depth of a lobby
	// Rating is typed, STC or Rw as a bare number; Octaves are losses from 63 to
	// 4000 Hz, bare numbers. Octaves go before Rating, both before the kind's own.
	Rating  unit.Quantity   `json:"rating,omitempty"`
	Octaves []unit.Quantity `json:"octaves,omitempty"`
	There   bool            `json:"there,omitempty"` // in the house already, as it is
}

// Hung is something that hangs on a surface at a place: a lamp, an air box.
type Hung struct {
	ID   string        `json:"id"`
	Name string        `json:"name,omitempty"`
	X    unit.Quantity `json:"x"` // of its middle, from the left end
	Y    unit.Quantity `json:"y"` // from the lower end
	Mass unit.Quantity `json:"mass"`
}

// Spot is a clip added by hand.
type Spot struct {
	X unit.Quantity `json:"x"`
	Y unit.Quantity `json:"y"`
}

// Joists are what carries a ceiling, as far as it is known beyond the frame.
type Joists struct {
	Span  unit.Quantity `json:"span,omitempty"`
	Grade string        `json:"grade,omitempty"` // load.Timber.ID
	Above string        `json:"above,omitempty"` // load.Above; empty: a floor
	// Dead is what they carry already, mass per area, typed instead of what the build-up says.
	Dead unit.Quantity `json:"dead,omitempty"`
}

// Measured are levels that somebody read in the room and beyond.
type Measured struct {
	Beyond string `json:"beyond"` // the space
	// After says that the new build-ups were in place; before, only what is there already.
	After bool          `json:"after,omitempty"`
	InA   unit.Quantity `json:"inA,omitempty"` // dB as bare numbers
	InC   unit.Quantity `json:"inC,omitempty"`
	OutA  unit.Quantity `json:"outA,omitempty"`
	OutC  unit.Quantity `json:"outC,omitempty"`
	// In and Out are octaves, 63 to 4000 Hz; an empty one was not read.
	In  []unit.Quantity `json:"in,omitempty"`
	Out []unit.Quantity `json:"out,omitempty"`
}

// Buying is what the list is made with.
type Buying struct {
	Tax         unit.Quantity `json:"tax,omitempty"`         // per cent
	Contingency unit.Quantity `json:"contingency,omitempty"` // per cent
	Budget      unit.Quantity `json:"budget,omitempty"`      // for the next changes
	Payload     unit.Quantity `json:"payload,omitempty"`     // that goes on one trip
	Roof        unit.Quantity `json:"roof,omitempty"`        // of that, what the roof or bed takes lying flat
	People      unit.Quantity `json:"people,omitempty"`      // who lift
	// The narrowest of the way in.
	DoorWidth  unit.Quantity `json:"doorWidth,omitempty"`
	DoorHeight unit.Quantity `json:"doorHeight,omitempty"`
	Corridor   unit.Quantity `json:"corridor,omitempty"` // before a turn
	Beyond     unit.Quantity `json:"beyond,omitempty"`   // after it
	Stair      bool          `json:"stair,omitempty"`
	// Costs are the prices of what is not on the shelf, by the list's own items.
	Costs []Cost `json:"costs,omitempty"`
}

// Cost is the price of one unit of an item of the list.
type Cost struct {
	Item  string        `json:"item"`
	Price unit.Quantity `json:"price"`
}

// Counts of the room that a plan may not exceed (our own choice).
const (
	MaxSpaces   = 24
	MaxOpenings = 40 // in one surface
	MaxHung     = 40 // on one surface
	MaxSpots    = 40 // added by hand
	MaxPlaying  = 12
	MaxMeasured = 24
	MaxCosts    = 100
)
