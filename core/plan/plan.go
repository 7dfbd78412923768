// Package plan is the document: what somebody wants to build, every quantity
// kept as it was typed (decimal text and unit), typical values only by their
// id. It checks a plan, names what is wrong in the user's words, carries old
// formats forward, and turns a plan's build-ups into assemblies in SI.
package plan

import "twoleaf/core/unit"

// Format is the number of the document's form; see migrate.go for older ones.
const Format = 1

// Plan is the whole document. Ids stay the same across edits.
type Plan struct {
	Format   int       `json:"format"`
	Table    int       `json:"table"` // material.TableVersion it was made with
	Name     string    `json:"name"`
	Region   Region    `json:"region"`
	Units    Units     `json:"units"`
	Prices   Prices    `json:"prices,omitempty"`
	Surfaces []Surface `json:"surfaces"` // at least one
	BuildUps []BuildUp `json:"buildUps"` // at least one
	Shelf    []Shelf   `json:"shelf,omitempty"`
	// Waste is the share of sheet area lost in cutting, in per cent as typed; empty is 10.
	Waste unit.Quantity `json:"waste,omitempty"`
	// Source is what plays, room.Source.ID; empty: nothing chosen. Level is its
	// A-weighted level in the room, dB as a bare number; empty: its own.
	Source string        `json:"source,omitempty"`
	Level  unit.Quantity `json:"level,omitempty"`
	// Also plays beside it.
	Also     []Playing  `json:"also,omitempty"`
	Room     *Room      `json:"room,omitempty"`
	Spaces   []Space    `json:"spaces,omitempty"`
	Measured []Measured `json:"measured,omitempty"`
	Buying   *Buying    `json:"buying,omitempty"`
	// Notes stay out of the link.
	Notes string `json:"notes,omitempty"`
	// Unread names what a file held beyond these fields; it is never written.
	Unread []string `json:"-"`
}

// Region decides boards, sizes, rating names and code words.
type Region string

// The regions.
const (
	US Region = "US"
	CA Region = "CA"
	UK Region = "UK"
	EU Region = "EU"
	AU Region = "AU"
)

// Units is the switch of units, apart from the region.
type Units string

// The systems of units.
const (
	Customary Units = "us"
	Metric    Units = "si"
)

// Prices says which list fills in for a price that was not typed.
type Prices string

// The price lists.
const (
	NoPrices   Prices = ""
	DemoPrices Prices = "demo" // invented, and said to be
)

// SurfaceKind is where a surface is.
type SurfaceKind string

// The kinds of surface.
const (
	Wall    SurfaceKind = "wall"
	Ceiling SurfaceKind = "ceiling"
	Floor   SurfaceKind = "floor"
)

// Surface is a wall, the ceiling or the floor.
type Surface struct {
	ID      string        `json:"id"`
	Name    string        `json:"name"` // "wall B"
	Kind    SurfaceKind   `json:"kind"`
	Width   unit.Quantity `json:"width,omitempty"`
	Height  unit.Quantity `json:"height,omitempty"`
	Area    unit.Quantity `json:"area,omitempty"` // typed instead of width × height
	BuildUp string        `json:"buildUp"`
	Beyond  string        `json:"beyond,omitempty"` // "bedroom"
	// Listener is who is beyond, room.Listener.ID; empty: nobody chosen.
	Listener string `json:"listener,omitempty"`
	// Garage says that a garage lies on the other side or below: fire words then apply.
	Garage bool `json:"garage,omitempty"`
	// Side is where a wall stands, 1 to 4 around the room; 0: in the order of the walls.
	// A side with several walls is split.
	Side     int       `json:"side,omitempty"`
	Openings []Opening `json:"openings,omitempty"`
	// Flank is what the surface shares with the space beyond, room.Flank.ID;
	// FlankLoss is its loss as typed, dB as a bare number.
	Flank     string        `json:"flank,omitempty"`
	FlankLoss unit.Quantity `json:"flankLoss,omitempty"`
	Hung      []Hung        `json:"hung,omitempty"`
	Clips     []Spot        `json:"clips,omitempty"` // added to the grid's
	Joists    *Joists       `json:"joists,omitempty"`
}

// BuildUp is leaves and gaps from the room outwards, and what its edited leaf is compared with.
type BuildUp struct {
	ID      string  `json:"id"`
	Name    string  `json:"name,omitempty"`
	Leaves  []Leaf  `json:"leaves"`
	Gaps    []Gap   `json:"gaps,omitempty"`
	Compare Compare `json:"compare"`
}

// Leaf is boards fixed together, from the room outwards.
type Leaf struct {
	Layers []Layer `json:"layers"`
}

// Layer is one board of a leaf.
type Layer struct {
	ID    string `json:"id"`
	Board string `json:"board"` // material.Board.ID
	There bool   `json:"there,omitempty"`
	Join  string `json:"join,omitempty"` // to the next layer outwards: "", "glue", "film"
}

// Gap is the space between two leaves.
type Gap struct {
	ID        string        `json:"id"`
	Frame     string        `json:"frame"`             // material.Frame.ID
	Depth     unit.Quantity `json:"depth,omitempty"`   // all of it, typed; empty: frame and stand-offs
	Spacing   unit.Quantity `json:"spacing,omitempty"` // of studs; empty: the frame's usual
	Fill      string        `json:"fill,omitempty"`    // material.Fill.ID; empty: nothing
	FillDepth unit.Quantity `json:"fillDepth,omitempty"`
	Near      Held          `json:"near"` // the leaf on the room side
	Far       Held          `json:"far"`
	There     bool          `json:"there,omitempty"` // the frame is in the house already
	FillThere bool          `json:"fillThere,omitempty"`
}

// Held is how one leaf beside a gap is held.
type Held struct {
	Fixing string        `json:"fixing"` // material.Fixing.ID
	Rows   unit.Quantity `json:"rows,omitempty"`
	Along  unit.Quantity `json:"along,omitempty"`
	Rating unit.Quantity `json:"rating,omitempty"` // per clip, as typed
	Extra  unit.Quantity `json:"extra,omitempty"`  // mass per area of what else hangs on the leaf
	// First is from the face's edges to the first and last row, Ends from a row's
	// end to its first clip; Stagger sets every other row off by half a spacing.
	First   unit.Quantity `json:"first,omitempty"`
	Ends    unit.Quantity `json:"ends,omitempty"`
	Stagger bool          `json:"stagger,omitempty"`
	Shorts  bool          `json:"shorts,omitempty"` // a screw reaches the frame through the channel at one crossing in ten
	// Screws is how far apart the screws of the boards are; empty: as usual, 12 in or 300 mm or more.
	Screws unit.Quantity `json:"screws,omitempty"`
	// Example says that the rating is the invented one of the example; of no
	// meaning as soon as another one is typed.
	Example bool `json:"example,omitempty"`
}

// Compare is the side-by-side table of one leaf.
type Compare struct {
	Leaf int `json:"leaf"` // the leaf being edited
	// Reference are the layers compared with; empty: two of the region's usual heavy gypsum board.
	Reference []Layer `json:"reference,omitempty"`
	// Rows are the candidates; nil: the region's eight.
	Rows []Candidate `json:"rows,omitempty"`
}

// Candidate is another set of layers for the edited leaf.
type Candidate struct {
	ID     string  `json:"id"`
	Layers []Layer `json:"layers"`
}

// Weight says what a tag's weight is of.
type Weight string

// The ways a weight is told.
const (
	PerSheet  Weight = ""       // one sheet
	PerArea   Weight = "area"   // psf or kg/m²
	PerPallet Weight = "pallet" // a total and a count
	OnScale   Weight = "scale"  // with and without the sheet
)

// Shelf is what the user knows of a board here, from the tag.
type Shelf struct {
	Board     string        `json:"board"`
	Per       Weight        `json:"per,omitempty"`
	Weight    unit.Quantity `json:"weight,omitempty"`    // sheet, area, pallet total, or scale with the sheet
	Less      unit.Quantity `json:"less,omitempty"`      // scale without the sheet
	Of        unit.Quantity `json:"of,omitempty"`        // sheets in the pallet
	Price     unit.Quantity `json:"price,omitempty"`     // per sheet, or per area if PriceArea
	PriceArea bool          `json:"priceArea,omitempty"` // per ft² or m², by the plan's units
	Sheet     unit.Quantity `json:"sheet,omitempty"`
	Thickness unit.Quantity `json:"thickness,omitempty"`
	Stock     unit.Quantity `json:"stock,omitempty"` // how many there are; empty: not said, "0": none
	Plenty    bool          `json:"plenty,omitempty"`
	Owned     unit.Quantity `json:"owned,omitempty"` // how many they have
}
