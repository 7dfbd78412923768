package room

import "twoleaf/core/band"

// Levels are levels, or losses, dB, in the nine octaves of Octaves, 31.5 to 8000 Hz.
type Levels = [9]float64

// Room is a room as plain data in SI: what bounds it, what lies beyond, what
// plays in it. It is what Assess takes.
type Room struct {
	// Length, Width and Height are inside, between frames, m; 0 for an odd room.
	Length, Width, Height float64
	Volume                float64 // m³; 0: length × width × height
	Soft                  Soft
	Time                  float64 // reverberation time as typed, s; 0: by Soft
	// OnGround says that its floor is a slab on the ground; see Heard.FloorHangs.
	OnGround bool
	Surfaces []Surface
	Spaces   []Space
	Playing  []Playing // in the room
	// Listener, Target and Background are those of the room itself, for what comes in.
	Listener   string  // Listener.ID; empty: studio
	Target     float64 // A-weighted, dB; 0: the listener's
	Background float64 // A-weighted, dB; 0: the listener's
	Use        Use
	Measured   []Measured
}

// Soft is how much a room takes up of its sound; see Time.
type Soft string

// The furnishings.
const (
	Furnished Soft = ""
	Bare      Soft = "bare"
	Treated   Soft = "soft"
)

// Face is where a surface is.
type Face string

// The faces.
const (
	Wall    Face = "wall"
	Ceiling Face = "ceiling"
	Floor   Face = "floor"
)

// Surface is a wall, the ceiling or the floor, or a part of one.
type Surface struct {
	ID   string
	Face Face
	Side int // of a wall, 1 to 4 around the room; 0 unknown
	// Width and Height are its own where it is a part of a side, m; 0: of the side.
	Width, Height float64
	Area          float64       // of all of it, openings included, m²; 0: width × height
	TL            band.Spectrum // of the build-up in a laboratory, dB
	Spread        band.Spectrum // one standard deviation of TL, dB
	Mass          float64       // of the build-up, kg/m²
	Thickness     float64       // of the build-up, m; the depth of holes through it
	Inside        float64       // of it, what stands inside the frame: what the room loses here, m
	Dips          []Dip
	Openings      []Opening
	Beyond        string  // Space.ID; empty: nothing beyond that counts, as below a slab on the ground
	Flank         string  // Flank.ID; empty: not said
	FlankLoss     float64 // rating of the flanking path as typed, dB; 0: the Flank's own
}

// Dip is a frequency at which a board's coincidence lets sound through.
type Dip struct {
	Hz    float64
	Board string // what it is called, returned as it came
}

// Opening is a door, window, hatch, duct, box, light, pipe or crack, or several alike.
type Opening struct {
	ID   string
	Kind string // Kind.ID
	Seal string // one of the kind's Seals; empty: its first
	// Width and Height are its size, m; 0: the kind's own. Of a crack Width is its
	// length and Height how wide it gapes; of a round thing Width is its diameter.
	Width, Height float64
	Count         int // 0: one
	// X and Y are the left and lower edge on its face, m, if Placed.
	X, Y   float64
	Placed bool
	// Crack is how far the gap under a door, or round a pipe, gapes, m, if CrackSet; else the seal's own.
	Crack    float64
	CrackSet bool
	Run      float64 // lined length of a duct, or depth of the lobby between two doors, m; 0: the kind's own
	Depth    float64 // of the hole or crack, m; 0: the kind's own or the surface's thickness
	// What it stops, best known first: a spectrum computed elsewhere, octaves
	// typed 63 to 4000 Hz, a rating typed (RatingRw: Rw, else STC); else the kind's own.
	TL       *band.Spectrum
	Octaves  []float64
	Rating   float64
	RatingRw bool
}

// Space is what lies beyond some surfaces.
type Space struct {
	ID         string
	Volume     float64 // m³; 0: unknown, its absorption is then taken as that of a small furnished room
	Soft       Soft
	Time       float64 // reverberation time as typed, s; 0: by Soft
	Absorption float64 // equivalent absorption area as typed, m²; 0: from volume and time
	Outdoors   bool
	Distance   float64 // of whoever listens outdoors, m; 0: OutdoorDistance
	Listener   string  // Listener.ID; empty: nobody, only levels are told
	Target     float64 // A-weighted, dB; 0: the listener's
	Background float64 // A-weighted, dB; 0: the listener's
	Noise      []Playing
}

// Playing is one thing that sounds.
type Playing struct {
	Source string  // Source.ID
	Level  float64 // A-weighted, dB; 0: the source's own
	Octave *Levels // its octaves as typed, instead of the source's
}

// Use is who and what is in the room, for air and heat.
type Use struct {
	People  int
	Playing bool    // hard at it: they breathe more than seated
	Minutes float64 // at a time
	Watts   float64 // of lamps and amplifiers, people not counted
	Air     float64 // fresh air, m³/s; 0: none
	AirSet  bool    // it was said how much air there is
	Fuel    bool    // something burns in it or draws its air from it
}

// Measured is what somebody read in the room and beyond, dB; NaN or 0 was not read.
type Measured struct {
	Beyond     string // Space.ID
	After      bool   // with everything in place; the caller gives the room that goes with it
	InA, InC   float64
	OutA, OutC float64
	In, Out    []float64 // octaves 63 to 4000 Hz
}

// Report is all that follows from a Room. Slices are in the order of what they
// report on; nothing in it points into the Room.
type Report struct {
	Faults   []Fault
	Volume   float64 // m³
	Level    Levels  // of all that plays, dB
	LevelA   float64
	Surfaces []SurfaceReport
	Paths    []Path  // in order of surfaces, boards first; Rank sorts them
	Out      []Heard // one a space
	In       []Heard // one a thing that sounds beyond
	InAll    *Heard  // all of them together; nil without any
	Air      Air
	Together []Together // faces that dip together
	Shape    Shape
	Measured []Fit
}

// SurfaceReport is what a surface stops.
type SurfaceReport struct {
	ID     string
	Area   float64       // m²
	Boards float64       // of it, boards, m²
	Lab    band.Spectrum // of the boards, as they came
	Holed  band.Spectrum // with its openings, no flanking
	Built  band.Spectrum // with flanking where it was said
	Spread band.Spectrum // one standard deviation of Built
	// Share and Bass are its part of what gets out of the room, A-weighted and in
	// the octaves 63 and 125 Hz.
	Share, Bass float64
	Breaks      []Break // where the strategy breaks here
}

// Way says what sort of path it is.
type Way string

// The ways.
const (
	ByBoards Way = "boards"
	ByLeaf   Way = "leaf"  // of a door or window with its edges; of a box, duct, light all of it
	ByCrack  Way = "crack" // under a door, round a pipe, along an edge
	ByHole   Way = "hole"
	ByFlank  Way = "flank" // by the structure that both sides share
)

// Path is one way from the room to a space beyond.
type Path struct {
	Surface int // index
	Opening int // index in its surface; −1: none
	Way     Way
	Space   int     // index in Room.Spaces; −1: nobody beyond
	Area    float64 // m²
	// Open is its equivalent open area, m² per octave: area × transmission.
	Open   Levels
	Spread Levels // one standard deviation of it, dB
	// Shares of the energy that gets out of the room, and of what reaches its own
	// space, A-weighted and in the octaves 63 and 125 Hz; each sums to one.
	Share, Bass           float64
	ShareThere, BassThere float64
	// Perfect… is what would be gained if this way let nothing through, dB.
	Perfect, PerfectBass           float64
	PerfectThere, PerfectBassThere float64
}

// State says how a level stands to a target and a background.
type State string

// The states, best first.
const (
	NotHeard State = "notHeard" // its peaks are not over background and threshold
	Within   State = "within"   // heard, within the target
	MayOver  State = "mayOver"  // mean within the target, but its range is not
	Over     State = "over"
	NoTarget State = "noTarget"
)

// Word is what a level is like, for the row of a listener.
type Word string

// The words.
const (
	WordNotHeard Word = "notHeard"
	WordFaint    Word = "faint"    // peaks less than 10 dB over the background
	WordKick     Word = "kickOnly" // heard in no octave over 125 Hz
	WordHeard    Word = "heard"
	WordWords    Word = "words" // of speech: words are understood
	WordLoud     Word = "loud"  // loud music: 65 dB, A-weighted, or more
)

// Octave is how one octave is heard.
type Octave struct {
	Hz         float64
	Level      float64 // mean, dB
	Low, High  float64 // one standard deviation to either side
	Range      bool    // under the Schroeder frequency: only the range holds
	Peak       float64 // mean + Peaks
	Target     float64
	Background float64
	Threshold  float64 // of hearing
	Over       float64 // mean over the target; negative: under it
	Need       float64 // loss needed of all that faces this space, dB
	State      State
	Beyond     bool // 31.5 and 8000 Hz: outside what is known, shown, never judged
}

// Heard is what reaches a listener.
type Heard struct {
	Space  int    // index in Room.Spaces
	Source string // of what comes in: Source.ID
	Octave [9]Octave
	A, C   float64 // weighted levels, dB
	// SpreadA and SpreadC are one standard deviation.
	SpreadA, SpreadC float64
	NC               float64
	NCOutside        bool // under NC 15 or over NC 65
	NCBy             int  // the octave that decides, index of Octaves
	NR               float64
	NRBy             int
	Target           float64 // A-weighted; 0: nobody listens
	Background       float64
	OverA            float64 // of the A-weighted level
	State            State
	Worst            int // the octave most over its target, or nearest to it; −1 without a target
	Word             Word
	Felt             bool    // peaks at 31.5 or 63 Hz of FeltFrom or more
	FloorDriven      bool    // through the air; the pedal through the floor is not counted
	FloorHangs       bool    // and that floor is no slab on the ground: it will be heard through it
	LeansOnFlank     bool    // would not hold with the flanking figure at its worse edge
	FlankUnknown     bool    // a surface does not say what it shares with the house
	Schroeder        float64 // of the receiving room, Hz; 0 outdoors or unknown
	Absorption       float64 // of the receiving room, m²; 0 outdoors
	Assumed          bool    // the absorption is assumed, the volume being unknown
	Each             []Each  // what each thing that plays would be alone
}

// Each is one source alone.
type Each struct {
	Source string
	A      float64
	State  State
	Word   Word
	Felt   bool
}

// Air is what the people in a closed room breathe and what warms it.
type Air struct {
	Start, End float64 // carbon dioxide when they begin and after Minutes, parts per million
	Steady     float64 // what it would settle at; 0 without fresh air
	Limit      float64 // CO2Limit
	MinutesTo  float64 // until Limit; 0 if it is never reached
	Given      float64 // fresh air, m³/s
	Want       float64 // fresh air that holds Limit, m³/s, or the rate a head, whichever is more
	DuctArea   float64 // m² each way for Want at QuietSpeed
	DuctRound  float64 // its diameter, m
	DuctLoss   Levels  // insertion loss such a duct needs so that it passes a tenth of what else gets out, dB
	Heat       float64 // people and things, W
	RiseSealed float64 // of the temperature after an hour with nothing carried away, K
	Rise       float64 // with the fresh air given, K
	Cooling    float64 // wanted, W: Heat less what the fresh air carries at AirRise
	TooLittle  bool    // Given is under Want
	Sealed     bool    // nobody said that any air comes in
	Fuel       bool    // something burns in it: never in a sealed room
}

// Together are faces whose boards dip at one frequency.
type Together struct {
	Hz     float64  // mean of them
	Faces  []int    // indices of Room.Surfaces, each once
	Boards []string // of each face
	Share  float64  // of what gets out in the octave that holds Hz, by these faces' boards
}

// Break is a way in which a face falls out of the room's strategy.
type Break string

// The breaks.
const (
	LoneWeak Break = "loneWeak" // lets through, for its size, four times what all others together let through for theirs
	Lighter  Break = "lighter"  // lighter than three quarters of its neighbours' mean
)

// Shape is the room's geometry.
type Shape struct {
	Known                                   bool // length, width and height were given
	Length, Width, Height                   float64
	InsideLength, InsideWidth, InsideHeight float64 // when all is up, m
	LostFloor                               float64 // m²
	InsideVolume                            float64
	HeightLeft                              float64 // of InsideHeight over HeadroomCode, m; negative: under it
	StandLeft                               float64 // over StandHeight
	Faces                                   []FaceAt
	UnfoldedWidth, UnfoldedHeight           float64
}

// FaceAt is a face of the room unfolded flat: the floor in the middle, walls
// around it, the ceiling on top. X, Y is the upper left corner, y downwards, m.
type FaceAt struct {
	Surface             int
	X, Y, Width, Height float64
}

// Fit is a measurement beside what was predicted for it.
type Fit struct {
	Space    int
	After    bool
	Octaves  bool    // octaves were read; else A or C
	Got      []Diff  // measured level differences beside the predicted
	Residual float64 // mean of predicted − measured, dB
	RMS      float64 // of predicted − measured
	Path     int     // index in Report.Paths that fits best; −1: none does better by 1 dB
	Raised   float64 // how much more that path would have to let through, dB
	RMSAfter float64 // with it
	Prior    float64 // spread of the prediction, dB
	Reading  float64 // spread of the reading, dB
	Spread   float64 // of both together, dB
	Shift    float64 // to add to predicted levels beyond, dB
	Unlikely bool    // they differ by more than twice what their spreads allow
}

// Diff is one level difference between the rooms.
type Diff struct {
	What      string  // "A", "C" or "octave"
	Hz        float64 // of an octave
	Measured  float64
	Predicted float64
}
