package takeoff

import "twoleaf/core/unit"

// Place is what a face is: it decides what hangs first and how close screws are.
type Place string

// The places.
const (
	Wall    Place = "wall"
	Ceiling Place = "ceiling"
	Floor   Place = "floor"
)

// Rect is a rectangle, by its corner nearest the origin. On a face x runs along
// the width from its left corner as seen in the room, y up from its foot (on a
// ceiling or floor: from any one corner). On a sheet x runs along its length.
type Rect struct {
	X, Y, W, H unit.Length
}

// Opening is a hole in a face: door, window, hatch, duct, box, pipe.
type Opening struct {
	ID   string
	Kind string // "door", "window", "hatch", "duct", "box", "pipe"
	Rect        // on the bare face
}

// Framing is what the boards of a face are screwed to: studs, joists or rows of channel.
type Framing struct {
	Upright        bool          // lines at x = const (studs); else at y = const (rows of channel)
	First, Spacing unit.Length   // the first line, then one every Spacing
	At             []unit.Length // the lines themselves, instead of those two
	Width          unit.Length   // of the face that boards bear on; 0 is 38 mm
	Free           bool          // joints need not fall on a line
}

// Face is one surface as it is before anything hangs: the rectangle in the plane
// of the first boards' backs, from the bare face of one neighbour to the other.
type Face struct {
	ID            string
	Place         Place
	Width, Height unit.Length
	Openings      []Opening
	Framing       Framing
	// The faces it meets at its four edges, by id; "" where there is none.
	Left, Right, Foot, Head string
}

// Layer is one layer of boards on a face. Layer 0 hangs first.
type Layer struct {
	Face  string
	Layer int
	Board string // id of a Stock row
	// Across forces the long side of the sheets across the lines of framing, Along along them; neither: what is better.
	Across, Along bool
	Base          bool // the boards of this layer need not end on framing: fixed to the layer below
}

// Sold is a board as it is sold.
type Sold struct {
	ID            string
	Thickness     unit.Length
	Width, Length unit.Length
	Mass          unit.Mass     // of a sheet; 0 if unknown
	Grain         bool          // the long side of a piece stays along the sheet (plywood)
	Kerf          unit.Length   // lost in a cut: 0 for score and snap
	Gap           unit.Length   // left between sheets
	Owned         int           // whole sheets at hand, used first
	Lengths       []unit.Length // other lengths sold, for Other
}

// Rules are the habits of the cut; the zero value takes the usual ones.
type Rules struct {
	Edge       unit.Length // gap at every edge of a face; usual 6 mm (1/4 in); less than 0 is none
	Stagger    unit.Length // least distance of parallel joints of two layers; usual 250 mm (10 in)
	Narrow     unit.Length // pieces narrower than this are avoided and said; usual 100 mm
	Keep       unit.Length // least side of an offcut worth keeping; usual 300 mm (1 ft)
	Waste      float64     // of the area rule it is compared with; usual 0.15
	FloorFirst bool        // the floor's layers lie before the walls hang
}

// Job is all that is to be cut.
type Job struct {
	Faces  []Face
	Layers []Layer
	Boards []Sold
	Rules  Rules
}

// Code names what is said about a result or an error; the page has the sentence.
type Code string

// Note is a code, what it is about, and its numbers by name (SI).
type Note struct {
	Code  Code
	Face  string
	Layer int
	Board string
	Args  map[string]float64
}

// Piece is one piece of board: where it hangs and where it is cut from.
type Piece struct {
	Face   string
	Layer  int
	Board  string
	On     Rect   // on the bare face
	Holes  []Rect // cut out of it, on the bare face
	Sheet  int    // index in Cut.Sheets
	Part   int    // 0 the largest of its sheet, then 1, 2 …: "2", "2a", "2b"
	At     Rect   // on the sheet
	Turned bool   // x of the face lies along y of the sheet
}

// Used is one sheet and what comes of it.
type Used struct {
	Board         string
	No            int // from 1, by board, in the order of hanging
	Owned         bool
	Width, Length unit.Length
	Pieces        []int  // indices in Cut.Pieces
	Left          []Rect // what is left over
	Cuts          int    // straight cuts, holes not counted
}

// Hung is one layer of one face as cut.
type Hung struct {
	Face     string
	Layer    int
	Board    string
	Order    int  // in the hanging of the room, from 0
	Area     Rect // boarded rectangle on the bare face, openings still in it
	Upright  bool // long sides of the sheets run along y
	Pieces   []int
	Joints   int         // between two pieces
	Ends     int         // of those, across the sheets
	JointRun unit.Length // length of all joints
	Stagger  unit.Length // least distance to a parallel joint of the layer before; 0 without one
	// Past says of the four edges whether this layer runs past what its neighbour
	// of the same layer does (hung before it) or stops against it.
	PastLeft, PastRight, PastFoot, PastHead bool
}

// Total is what one board comes to.
type Total struct {
	Board   string
	Sheets  int // cut
	Owned   int // of those, at hand
	Buy     int
	Bound   int       // no layout needs fewer: boarded area / sheet area
	Area    int       // by the area rule
	Boarded unit.Area // net
	Left    unit.Area // kept offcuts
	Cuts    int
	Joints  int
	Ends    int       // of those, across the sheets
	Mass    unit.Mass // of the sheets to buy
}

// Cut is a cut layout of a whole job.
type Cut struct {
	Try    int // which try gave it
	Pieces []Piece
	Sheets []Used
	Hung   []Hung // in the order of hanging
	Totals []Total
	Notes  []Note
	cost   cost
}
