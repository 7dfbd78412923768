package room

// Kind is a kind of opening: its id, its usual size, how it may be closed.
type Kind struct {
	ID    string
	Group Group
	// Width and Height are its usual size, m; of a round thing Height is 0 and
	// Width its diameter; of a crack its length (0: as typed) and how wide it gapes.
	Width, Height float64
	Run           float64 // lined length of a duct, lobby of two doors, m
	Gap           float64 // usual gap under a door with an open sill, or round a pipe, m
	Seals         []Seal  // first is the usual
	Origin        string  // of the figures: key of testdata/SOURCES.md or "common practice"
	Spread        float64 // one standard deviation of its loss, dB
}

// Group says how an opening is drawn and what may be typed for it.
type Group string

// The groups.
const (
	Door     Group = "door"
	Window   Group = "window"
	Duct     Group = "duct"
	Box      Group = "box" // electrical
	Lamp     Group = "light"
	Pipe     Group = "pipe"
	Crack    Group = "crack"
	HoleKind Group = "hole"
)

// Seal is how an opening is closed.
type Seal string

// The ways of closing, each kind having some of them.
const (
	NoSeal    Seal = "none"    // door, window: unsealed; box, light, pipe, crack, hole: open
	SealSides Seal = "sides"   // door: gaskets at sides and head, sill open
	SealAll   Seal = "all"     // door: gaskets and a drop seal at the sill
	SealLined Seal = "allSoft" // two doors: gaskets and drop seals, the lobby lined with absorber
	SealShut  Seal = "shut"    // caulked shut; crack, hole, pipe: airtight sealant
	SealPutty Seal = "putty"   // box: putty pad or board box behind it
	DuctBare  Seal = "bare"    // duct: unlined
	DuctLined Seal = "lined"   // duct: lined over its run
	DuctBox   Seal = "box"     // duct: lined, and a baffle box at one leaf
	DuctBoxes Seal = "boxes"   // duct: lined, and a baffle box at each leaf
	LampBoxed Seal = "boxed"   // light: a box over it as heavy as the leaf
)

// kinds is the one table of openings. Sizes are usual ones (common practice).
var kinds = []Kind{
	{ID: "doorHollow", Group: Door, Width: 0.81, Height: 2.03, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealShut}, Origin: "doors-fitted", Spread: 3},
	{ID: "doorSolid", Group: Door, Width: 0.81, Height: 2.03, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealShut}, Origin: "doors-fitted", Spread: 3},
	{ID: "doorHeavy", Group: Door, Width: 0.81, Height: 2.03, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealShut}, Origin: "doors-fitted", Spread: 3},
	{ID: "doorSteel", Group: Door, Width: 0.81, Height: 2.03, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealShut}, Origin: "doors-fitted", Spread: 3},
	{ID: "doorFoam", Group: Door, Width: 0.81, Height: 2.03, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealShut}, Origin: "doors-fitted", Spread: 3},
	{ID: "doorFilled", Group: Door, Width: 0.81, Height: 2.03, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealShut}, Origin: "doors-fitted", Spread: 3},
	{ID: "doorAcoustic", Group: Door, Width: 0.91, Height: 2.03, Gap: 0.003, Seals: []Seal{SealAll, SealSides, NoSeal, SealShut}, Origin: "doors-fitted", Spread: 4},
	{ID: "doorTwoHollow", Group: Door, Width: 0.81, Height: 2.03, Run: 0.1, Gap: 0.003, Seals: []Seal{NoSeal, SealSides, SealAll, SealLined}, Origin: "doors-fitted", Spread: 4},
	{ID: "doorTwo", Group: Door, Width: 0.81, Height: 2.03, Run: 0.1, Gap: 0.003, Seals: []Seal{SealAll, SealLined, SealSides, NoSeal}, Origin: "doors-fitted", Spread: 4},
	{ID: "hatch", Group: Door, Width: 0.56, Height: 0.76, Seals: []Seal{NoSeal, SealAll, SealShut}, Origin: "computed", Spread: 4},
	{ID: "windowSingle", Group: Window, Width: 1, Height: 1.2, Seals: []Seal{SealAll, NoSeal}, Origin: "computed", Spread: 3},
	{ID: "windowLaminated", Group: Window, Width: 1, Height: 1.2, Seals: []Seal{SealAll, NoSeal}, Origin: "computed", Spread: 3},
	{ID: "windowUnit", Group: Window, Width: 1, Height: 1.2, Seals: []Seal{SealAll, NoSeal}, Origin: "computed", Spread: 3},
	{ID: "windowTwo", Group: Window, Width: 1, Height: 1.2, Seals: []Seal{SealAll, NoSeal}, Origin: "computed", Spread: 4},
	{ID: "windowWide", Group: Window, Width: 1, Height: 1.2, Seals: []Seal{SealAll, NoSeal}, Origin: "computed", Spread: 4},
	{ID: "duct", Group: Duct, Width: 0.152, Run: 3, Seals: []Seal{DuctLined, DuctBare, DuctBox, DuctBoxes}, Origin: "duct-lined", Spread: 4},
	{ID: "vent", Group: Duct, Width: 0.152, Seals: []Seal{NoSeal, SealShut}, Origin: "derived", Spread: 3},
	{ID: "box", Group: Box, Seals: []Seal{NoSeal, SealPutty, SealShut}, Origin: "common practice", Spread: 5},
	{ID: "boxBack", Group: Box, Seals: []Seal{NoSeal, SealPutty, SealShut}, Origin: "common practice", Spread: 6},
	{ID: "boxSurface", Group: Box, Width: 0.012, Seals: []Seal{NoSeal, SealShut}, Origin: "derived", Spread: 3},
	{ID: "light", Group: Lamp, Width: 0.15, Seals: []Seal{NoSeal, LampBoxed, SealShut}, Origin: "common practice", Spread: 5},
	{ID: "pipe", Group: Pipe, Width: 0.05, Gap: 0.005, Seals: []Seal{NoSeal, SealShut}, Origin: "derived", Spread: 3},
	{ID: "crackEdge", Group: Crack, Height: 0.002, Seals: []Seal{NoSeal, SealShut}, Origin: "derived", Spread: 3},
	{ID: "crack", Group: Crack, Height: 0.001, Seals: []Seal{NoSeal, SealShut}, Origin: "derived", Spread: 3},
	{ID: "hole", Group: HoleKind, Width: 0.025, Seals: []Seal{NoSeal, SealShut}, Origin: "derived", Spread: 3},
}

// Kinds returns the kinds of opening.
func Kinds() []Kind { return append([]Kind(nil), kinds...) }

// KindByID returns a kind of opening.
func KindByID(id string) (Kind, bool) {
	if k, ok := kindAt(id); ok {
		return *k, true
	}
	return Kind{}, false
}

func kindAt(id string) (*Kind, bool) {
	for i := range kinds {
		if kinds[i].ID == id {
			return &kinds[i], true
		}
	}
	return nil, false
}

// fills reports whether such an opening stands in the place of boards. All
// others are holes beside which the boards are thought whole, as in the
// normalised level difference of small elements: so closing one leaves them as they were.
func (k *Kind) fills() bool { return k.Group == Door || k.Group == Window }

func (k *Kind) seals(s Seal) bool {
	for _, own := range k.Seals {
		if own == s {
			return true
		}
	}
	return false
}
