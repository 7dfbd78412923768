package load

import (
	"twoleaf/core/assembly"
	"twoleaf/core/caution"
	"twoleaf/core/unit"
)

// A Face is measured from one corner: X to the right and Y away from that
// corner, on a wall up from the floor, on a ceiling along the second wall.

// Rect is a rectangle of a face, m: its corner nearest the origin, and its size.
type Rect struct {
	X, Y, Width, Height unit.Length
}

// Area returns Width × Height.
func (r Rect) Area() unit.Area { return unit.Area(r.Width * r.Height) }

// Frame is the studs or joists that clips are screwed to.
type Frame struct {
	Spacing unit.Length // between centres
	First   unit.Length // of the first one from the origin, by its centre
	// AlongX says that they run in the direction of X; studs run along Y.
	// Rows of channel always cross them.
	AlongX bool
	// Ends says that there is one at both edges of the face as well, as in a stud wall.
	Ends bool
	// Jambs says that there is one on both sides of every opening.
	Jambs bool
}

// Face is a wall or ceiling as plain geometry.
type Face struct {
	Width, Height unit.Length
	Ceiling       bool // the load pulls on the clips; on a wall it shears them
	Openings      []Rect
	Frame         Frame
}

// Rules is how rows and clips are placed. All distances are the most that is allowed.
type Rules struct {
	Rows  unit.Length // between rows of channel
	Every int         // a clip on every so-many-th member of the frame
	// Along is between clips where there is no frame to follow (masonry); else not used.
	Along unit.Length
	// First and Last are from the edge at the origin to the first row (on a wall
	// the floor) and from the last row to the opposite edge.
	First, Last unit.Length
	End         unit.Length // from the end of a channel to the clip next to it
	Short       unit.Length // how far channel stops short of walls and openings
	// AtOpenings is from the head and the sill of an opening to a row; where none
	// is as near, a short row is added at half of that. 0 adds none.
	AtOpenings unit.Length
	Staggered  bool // the clips of every second row are moved by half their spacing
	// Even spaces rows evenly, and clips as evenly as the members allow, instead of
	// leaving the odd distance to the last; as many of both. Staggered clips stay as they are.
	Even bool
	// Plus are clips put in by hand, each into the row nearest to it.
	Plus []Place
}

// Place is a point of a face.
type Place struct{ X, Y unit.Length }

// Hung is something that hangs on the leaf at one place: a light, a backer box, an air box.
type Hung struct {
	X, Y          unit.Length // its centre
	Width, Height unit.Length // its size, spreads the load; may be 0
	Mass          unit.Mass
}

// Carried is what hangs on the clips.
type Carried struct {
	Area    unit.SurfaceMass // boards, films, lying fill and spread extras
	Channel unit.LineMass
	// Section is of the channel; the zero one leaves out how far it bends.
	Section Section
	Hung    []Hung
	// Unrated says that channel is screwed straight to the frame: no rating is missed.
	Unrated bool
}

// Ratings of one clip by direction, as typed; 0 where none was.
type Ratings struct {
	Shear, Pull unit.Mass
}

// Seat is what a clip is screwed to.
type Seat string

// The seats.
const (
	OnMember   Seat = "member"   // a stud or joist
	OnEnd      Seat = "end"      // the one at the edge of the face
	OnJamb     Seat = "jamb"     // the studs beside an opening
	OnBlocking Seat = "blocking" // a piece to be put in between two members
	OnMasonry  Seat = "masonry"  // no frame: anywhere
)

// Spot is one clip.
type Spot struct {
	X, Y   unit.Length
	Row    int
	Seat   Seat
	Area   unit.Area // tributary, openings left out
	Share  unit.Mass // by tributary area, with its part of the channel and of what hangs near
	Beam   unit.Mass // by the channel as a continuous beam over its clips
	Load   unit.Mass // the larger of the two
	Of     float64   // Load over the rating; 0 without one
	State  State
	Pieces []Rect // that make up Area, to draw
}

// Row is one length of channel. A row that an opening cuts is several.
type Row struct {
	At       unit.Length // from the origin, across the row
	From, To unit.Length // the channel's ends, along the row
	Added    bool        // beside an opening, not in the rhythm of the rows
	Clips    []int       // places in Layout.Spots
	// Marks are the clips' places along the row from the origin: what a tape hooked
	// over that corner shows.
	Marks []unit.Length
	// Sag is the most that the channel bends between two clips, m, and SagOf that
	// over its allowed deflection; both 0 where the section is not known or on a wall.
	Sag   unit.Length
	SagOf float64
	// MomentOf is the largest moment in the channel over what it may take.
	MomentOf float64
}

// Counts is how many clips are in each state.
type Counts struct{ Over, Close, Holds, Under, Unrated int }

// Layout is rows and clips on a face and what each clip carries.
type Layout struct {
	AlongX  bool // rows run in the direction of X
	Rows    []Row
	Spots   []Spot
	Boarded unit.Area   // the face without its openings
	Channel unit.Length // of channel, without overlaps
	Weight  unit.Mass   // all that hangs; the sum of Share and of Beam
	Rating  unit.Mass   // for the direction that acts, 0 if none
	// Worst and Least are places in Spots, −1 without clips.
	Worst, Least int
	Mean         unit.Mass
	Count        Counts
	Per          float64       // clips per m² of boarded area
	Grid         assembly.Grid // as close as the rules' rows and as dense as Per: for sound
	Notes        []caution.Caution
}
