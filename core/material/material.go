// Package material holds what can be bought or is already there: boards and
// masonry, fills, frames and fixings, and the invented demo prices. Every row
// of its embedded tables carries the key of its source (testdata/SOURCES.md).
package material

import "twoleaf/core/unit"

// TableVersion counts the changes of typical values. A plan keeps the version
// it was made with, so that a value that has moved since is said, not slipped in.
const TableVersion = 1

// Kind is the family of a board: it decides hatch, fire words and the
// properties it borrows where nothing is known.
type Kind string

// The kinds of board and masonry.
const (
	Gypsum    Kind = "gypsum"
	Plywood   Kind = "plywood"
	OSB       Kind = "osb"
	MDF       Kind = "mdf"
	Particle  Kind = "particleboard"
	Hardboard Kind = "hardboard"
	Softboard Kind = "fibreboard"
	Cement    Kind = "cement"    // cement board, fibre-cement, cement-bonded particleboard
	Magnesium Kind = "magnesium" // magnesium-oxide board
	Limp      Kind = "limp"      // loaded vinyl and other limp barriers
	Lead      Kind = "lead"
	Steel     Kind = "steel"
	Glass     Kind = "glass"
	Laminated Kind = "laminated" // laminated glass
	Plaster   Kind = "plaster"   // plaster on lath
	Block     Kind = "block"     // concrete block, hollow or solid
	Brick     Kind = "brick"
	Concrete  Kind = "concrete"
	Aerated   Kind = "aerated" // aerated block
	Topping   Kind = "topping" // poured floor topping
)

// Masonry reports whether the kind is built, not hung: it takes the loss
// factor and the shear correction of walls of stone.
func (k Kind) Masonry() bool {
	switch k {
	case Block, Brick, Concrete, Aerated:
		return true
	}
	return false
}

// Wood reports whether the kind burns like wood: it sets off the fire caution.
func (k Kind) Wood() bool {
	switch k {
	case Plywood, OSB, MDF, Particle, Hardboard, Softboard:
		return true
	}
	return false
}

// Sheet is one piece as sold; zero Length means a roll or cut to order.
type Sheet struct {
	Width, Length unit.Length
}

// Area returns Width × Length.
func (s Sheet) Area() unit.Area { return unit.Area(s.Width * s.Length) }

// Sound holds what the transmission model needs of a board beside mass and thickness.
type Sound struct {
	Young unit.Pressure // effective isotropic modulus E in bending, Pa
	// Faces is what each of the two paper faces of a gypsum board adds to its
	// stiffness in tension, modulus × thickness, N/m; 0 of other boards. Young
	// has their share in bending in it.
	Faces float64
	Nu    float64 // Poisson's ratio ν
	Loss  float64 // loss factor η in place, without the edge loss of masonry
	Ratio float64 // Bx/By, stiffness along over across the sheet, ≥ 1
	Shear float64 // share of the solid shear stiffness kept, 1 for solid boards
	// Flow is the flow resistivity of an unsealed porous wall, Pa·s/m², else 0.
	Flow float64
	// Source is the key of the row these values come from; Assumed names what
	// the board was taken to be like where nothing of its own is known.
	Source  string
	Assumed string
}

// Board is one row of the table of boards and masonry.
type Board struct {
	ID        string // stable, as in the table
	Code      string // stable, short, [a-z0-9]+, for the link
	Name      string // as the table names it, thickness included: "Gypsum board type X 5/8 in"
	Short     string // for rows and verdicts, without thickness: "Gypsum type X", "Plywood"
	Row       string // the same with % where the thickness stands: "Gypsum % type X", "Plywood %"
	Brief     string // for narrow tables, % as in Row: "% type X", "ply %"
	Region    string // NA, EU, AU or ALL
	Kind      Kind
	Thickness unit.Length
	Nominal   string           // thickness as the trade says it: "5/8 in", "12.5 mm"
	Mass      unit.SurfaceMass // typical, as delivered
	MassLow   unit.SurfaceMass // range, 0 if none is known
	MassHigh  unit.SurfaceMass
	CodeMass  unit.SurfaceMass // the heavier figure of structural tables, 0 if none
	Sheets    []Sheet          // as sold, first is usual; empty for built masonry, glass and metal cut to order
	Sizes     []unit.Quantity  // the same as the trade writes them: "4x8 ft", "1200x2400 mm"
	FireRated bool             // type X, enhanced core, type F, fire-rated
	Usual     bool             // the region's usual heavy gypsum board
	Sound     Sound
	Source    string // key
	Origin    string // sourced, derived, calibrated or from memory
}

// Fill is what lies in a gap.
type Fill struct {
	ID, Code, Name string
	Density        unit.Density
	Flow           float64 // flow resistivity, Pa·s/m²
	FlowLow        float64
	FlowHigh       float64
	Depths         []unit.Length // as sold
	Region         string
	Source, Origin string
}

// FrameKind is how a frame ties its two leaves.
type FrameKind string

// The kinds of frame.
const (
	NoFrame    FrameKind = "none"      // nothing between the leaves (panes, a leaf of its own)
	Wood       FrameKind = "wood"      // one row of wood studs, both leaves on it
	Staggered  FrameKind = "staggered" // studs in turn on a wider plate
	Double     FrameKind = "double"    // two separate rows
	CStud      FrameKind = "steel"     // one row of steel C-studs
	Joist      FrameKind = "joist"     // wood joists, I-joists
	SteelJoist FrameKind = "steel joist"
	Strapping  FrameKind = "strapping" // wood strips fixed to masonry or across joists
	ZBar       FrameKind = "z-bar"     // Z-bars or channel on strips on masonry
	Standing   FrameKind = "standing"  // light studs standing free before masonry
	Bare       FrameKind = "bare"      // fixing held by the masonry itself
)

// Frame is one row of the table of frames.
type Frame struct {
	ID, Code, Name string
	Kind           FrameKind
	Depth          unit.Length   // of one member, in the direction of the gap
	Plate          unit.Length   // depth of the plate or of both rows with the usual space; = Depth for one row
	Width          unit.Length   // thickness of a stud, 38 mm for wood
	Sheet          unit.Length   // steel thickness, 0 for wood
	Spacings       []unit.Length // usual, first is the default
	Mass           unit.LineMass // of one member
	Region         string
	Source, Origin string
}

// FixingKind is how a leaf is held to its frame.
type FixingKind string

// The kinds of fixing.
const (
	Screwed FixingKind = "screwed"
	Channel FixingKind = "channel" // resilient channel
	Clip    FixingKind = "clip"    // rubber clip with hat channel
	Untied  FixingKind = "untied"  // leaf not tied to this frame at all
)

// Fixing is one row of the table of fixings.
type Fixing struct {
	ID, Code, Name string
	Kind           FixingKind
	StandOff       unit.Length   // from frame to the back of the boards
	LineMass       unit.LineMass // of the channel
	PointMass      unit.Mass     // of one clip
	Stiffness      float64       // dynamic, N/m per point; 0 for screwed
	StiffnessLow   float64
	StiffnessHigh  float64
	Rows, Along    unit.Length // usual grid: between rows, along the row; see UsualGrid
	Clear          unit.Length // depth free behind the channel's face before a screw meets the frame
	metricRows     unit.Length
	metricAlong    unit.Length
	Region         string
	Source, Origin string
}
