// Package assembly is a build-up as data, in SI: leaves of layers and the gaps
// between them, from the room outwards. It knows mass, thickness, cost per
// area and which build-ups are possible; it knows nothing of typed text.
package assembly

import (
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Join is how a layer is held to the next one outwards in the same leaf.
type Join string

// The joins.
const (
	Loose Join = ""     // screwed together, dry: masses and stiffnesses add
	Glued Join = "glue" // rigid: one composite section
	Film  Join = "film" // damping film between the two
)

// Layer is one board in a leaf, with what is known of it here.
type Layer struct {
	ID     string
	Board  material.Board // table row; Thickness, Mass and Sound already hold what was typed
	Join   Join           // to the next layer outwards; of no meaning on the last
	There  bool           // in the house already: weighs and sounds, costs nothing
	Price  unit.MoneyRate // per area, NaN-free; see Priced
	Priced bool           // a price is known
	// JoinPrice is per area, of the film to the next layer outwards.
	JoinPrice  unit.MoneyRate
	JoinPriced bool
}

// Leaf is boards fixed together that move as one, from the room outwards.
type Leaf struct {
	Layers []Layer
}

// Grid is where a leaf is held: one grid, read by load, list and sound alike.
type Grid struct {
	Rows  unit.Length // between rows of channel
	Along unit.Length // between clips in a row; for resilient channel the frame spacing
}

// PerArea returns points per square metre, 1/(Rows·Along); 0 for an empty grid.
func (g Grid) PerArea() float64 {
	if g.Rows <= 0 || g.Along <= 0 {
		return 0
	}
	return 1 / float64(g.Rows*g.Along)
}

// Held is how one leaf beside a gap is fixed to the gap's frame.
type Held struct {
	Fixing material.Fixing
	Grid   Grid
	Rating unit.Mass        // per clip as typed, 0 if none
	Extra  unit.SurfaceMass // typed extras hung on the leaf, kg/m²
	Shorts float64          // rigid shorts per m²: screws that reach the frame through the channel
	Screws unit.Length      // between the screws of the boards along what holds them; 0: as usual, 300 mm (12 in) or more
}

// Gap is the space between two leaves.
type Gap struct {
	ID        string
	Frame     material.Frame
	Spacing   unit.Length   // of studs or joists, 0 without a frame
	Depth     unit.Length   // of air and fill between the boards, stand-offs included
	Fill      material.Fill // ID "" is empty
	FillDepth unit.Length
	Near, Far Held // the leaf on the room side of the gap and the one beyond
	// FillLies says that the fill rests on the near leaf (a ceiling): its mass counts on the clips.
	FillLies  bool
	There     bool // the frame is in the house already
	FillThere bool
	FillPrice unit.MoneyRate
}

// BuildUp is leaves and gaps, from the room outwards; len(Gaps) = len(Leaves) − 1.
type BuildUp struct {
	Leaves []Leaf
	Gaps   []Gap
	// Width and Height of the face, m; zero takes the laboratory opening 3.05 × 2.44 m.
	Width, Height unit.Length
	// Horizontal is true for a floor or ceiling.
	Horizontal bool
}
