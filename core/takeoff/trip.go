package takeoff

import (
	"cmp"
	"math"

	"twoleaf/core/unit"
)

// Handling of sheets.
const (
	// IdealLift is the load constant of the lifting equation: the most for one
	// person under ideal conditions (NIOSH-LIFT).
	IdealLift = 23 * unit.Kilogram
	// OneCarries is what a trade body takes as the most for one (UK notes, NIOSH-LIFT).
	OneCarries = 20 * unit.Kilogram
	// TwoCarry is twice that and an eighth: above it a panel lift or a smaller sheet (common practice).
	TwoCarry = 45 * unit.Kilogram
	// PanelLift is what a rented panel lift carries, 150 lb (from memory).
	PanelLift = 150 * unit.Pound
)

// Grip is how well hands hold the load.
type Grip string

// The grips of the lifting equation.
const (
	GoodGrip Grip = "good"
	FairGrip Grip = "fair"
	PoorGrip Grip = "poor" // no handles: a sheet by its edges
)

// Lift is how something is lifted, by where the hands are.
type Lift struct {
	Out      unit.Length // from the ankles forward
	From, To unit.Length // height over the floor, before and after
	Twist    float64     // of the body, degrees
	Grip     Grip
}

// SheetOnEdge is how a sheet is taken from a low stack to be carried upright:
// hands 300 mm out, from 400 to 750 mm, by its edges (our assumption).
var SheetOnEdge = Lift{Out: 0.30, From: 0.40, To: 0.75, Grip: PoorGrip}

// Recommended returns the recommended weight limit of the lifting equation:
//
//	RWL = LC·HM·VM·DM·AM·CM
//	LC = 23 kg, HM = 25/H, VM = 1 − 0.003·|V − 75|, DM = 0.82 + 4.5/D, AM = 1 − 0.0032·A
//
// H is Out, V From, D the distance lifted, all in cm, H and D at least 25; A is
// Twist in degrees; CM by grip: good 1, fair 0.95 below 75 cm else 1, poor 0.90.
// At most one lift in five minutes (frequency multiplier 1). 0 where hands
// are beyond 63 cm out, 175 cm up, or turned by more than 135°.
//
// Source: T. R. Waters, V. Putz-Anderson, A. Garg, NIOSH 94-110 (1994).
func Recommended(l Lift) unit.Mass {
	h, v, d := max(25, float64(l.Out/unit.Centimetre)), float64(l.From/unit.Centimetre), max(25, math.Abs(float64((l.To-l.From)/unit.Centimetre)))
	if !(h <= 63) || !(v >= 0 && v <= 175) || !(d <= 175) || !(l.Twist >= 0 && l.Twist <= 135) {
		return 0
	}
	cm := 1.0
	switch l.Grip {
	case FairGrip:
		if v < 75 {
			cm = 0.95
		}
	case PoorGrip:
		cm = 0.90
	}
	return IdealLift * unit.Mass(25/h*(1-0.003*math.Abs(v-75))*(0.82+4.5/d)*(1-0.0032*l.Twist)*cm)
}

// Carried is who can lift a sheet.
type Carried struct {
	People    int       // 1 or 2
	PanelLift bool      // a panel lift too: over TwoCarry, or any ceiling
	Too       bool      // beyond the panel lift: a smaller sheet
	Limit     unit.Mass // Recommended for one person lifting a sheet on edge
	Index     float64   // share of one person of that limit: over 1 strains some, over 3 most
}

// Carry returns who can lift one sheet of a mass, and for a ceiling hang it. The
// equation is for one person; two share the sheet evenly here.
//
// Source: common practice and the lifting equation, see Recommended.
func Carry(sheet unit.Mass, ceiling bool) Carried {
	c := Carried{People: 1, Limit: Recommended(SheetOnEdge), PanelLift: ceiling}
	if unit.Over(sheet, OneCarries) {
		c.People = 2
	}
	if unit.Over(sheet, TwoCarry) {
		c.PanelLift = true
	}
	c.Too = c.PanelLift && unit.Over(sheet, PanelLift)
	c.Index = float64(sheet/c.Limit) / float64(c.People)
	return c
}

// Cargo is one kind of goods to bring home.
type Cargo struct {
	Of            string
	Count         int
	Each          unit.Mass
	Length, Width unit.Length // of a sheet; 0: loose goods
	Thickness     unit.Length
}

// ToCarry returns the sheets that a cut asks to be bought, as cargo.
func ToCarry(job Job, c Cut) []Cargo {
	var out []Cargo
	for _, t := range c.Totals {
		for _, s := range job.Boards {
			if s.ID == t.Board && t.Buy > 0 {
				out = append(out, Cargo{s.ID, t.Buy, s.Mass, s.Length, s.Width, s.Thickness})
			}
		}
	}
	return out
}

// Vehicle is what brings it: payload, and the roof's or bed's size where that matters.
type Vehicle struct {
	Payload       unit.Mass
	Length, Width unit.Length // 0: any size lies flat on it
	Overhang      unit.Length // allowed beyond Length
	Height        unit.Length // of the pile; 0: any
}

// Carriage is so many pieces of one cargo in a trip.
type Carriage struct {
	Of    string
	Count int
	Mass  unit.Mass
}

// Trip is one load.
type Trip struct {
	Rows []Carriage
	Mass unit.Mass
}

// What is said about getting it there.
const (
	NoPayload     Code = "no-payload"     // nothing typed for the vehicle
	PieceTooHeavy Code = "too-heavy"      // one piece is over the payload: mass, payload
	SheetTooLong  Code = "sheet-too-long" // lies not on the vehicle: length, most
	SheetTooWide  Code = "sheet-too-wide" // width, most
	PileTooHigh   Code = "pile-too-high"  // one sheet is thicker than the pile may be
	TooManyTrips  Code = "too-many-trips" // more than MaxTrips
	RouteHeight   Code = "route-height"   // the sheet on edge is taller than the way: width, height
	RouteTurn     Code = "route-turn"     // it does not turn: length, longest, passage (number from 0)
	RouteStair    Code = "route-stair"    // headroom over the stair: width, clear, passage
	RouteClosed   Code = "route-closed"   // a passage no wider than the sheet is thick
)

// MaxTrips bounds the trips.
const MaxTrips = 200

// Trips loads the cargo, heaviest sheets first, onto the first trip with room.
// No trip is over the payload nor, with a bed given, piled over its height. The
// notes say what cannot be taken; the trips bring the rest.
func Trips(cargo []Cargo, v Vehicle) ([]Trip, []Note) {
	if !(v.Payload > 0) {
		return nil, []Note{{Code: NoPayload}}
	}
	order := inOrder(cargo, ranked(len(cargo), func(a, b int) int {
		return cmp.Or(loose(cargo[a])-loose(cargo[b]), cmp.Compare(cargo[b].Each, cargo[a].Each))
	}))
	var trips []Trip
	var piles []unit.Length
	var notes []Note
	for _, c := range order {
		if c.Count <= 0 || !(c.Each >= 0) {
			continue
		}
		note := Note{Board: c.Of}
		long, wide := max(c.Length, c.Width), min(c.Length, c.Width)
		switch {
		case unit.Over(c.Each, v.Payload):
			note.Code, note.Args = PieceTooHeavy, named("mass payload", float64(c.Each), float64(v.Payload))
		case v.Length > 0 && unit.Over(long, v.Length+max(0, v.Overhang)):
			note.Code, note.Args = SheetTooLong, named("length most", float64(long), float64(v.Length+max(0, v.Overhang)))
		case v.Width > 0 && unit.Over(wide, v.Width):
			note.Code, note.Args = SheetTooWide, named("width most", float64(wide), float64(v.Width))
		case v.Height > 0 && unit.Over(c.Thickness, v.Height):
			note.Code = PileTooHigh
		}
		if note.Code != "" {
			notes = append(notes, note)
			continue
		}
		for left, at := c.Count, 0; left > 0; at++ {
			if at == len(trips) {
				if at == MaxTrips {
					say(&notes, TooManyTrips, "", 0, c.Of, "most", MaxTrips)
					break
				}
				trips, piles = append(trips, Trip{}), append(piles, 0)
			}
			n := left
			if c.Each > 0 {
				// Equal to the payload is not over it.
				n = min(n, int(math.Floor(float64((v.Payload-trips[at].Mass)/c.Each)+1e-9)))
			}
			if v.Height > 0 && c.Length > 0 && c.Thickness > 0 {
				n = min(n, int(math.Floor(float64((v.Height-piles[at])/c.Thickness)+1e-9)))
			}
			if len(trips[at].Rows) == 0 {
				n = max(n, 1) // one alone is within the payload
			}
			if n <= 0 {
				continue
			}
			mass := unit.Mass(float64(n)) * c.Each
			trips[at].Rows = append(trips[at].Rows, Carriage{c.Of, n, mass})
			trips[at].Mass += mass
			if c.Length > 0 {
				piles[at] += unit.Length(float64(n)) * c.Thickness
			}
			left -= n
		}
	}
	return trips, notes
}

// loose is 1 for goods that are no sheets.
func loose(c Cargo) int {
	if c.Length*c.Width > 0 {
		return 0
	}
	return 1
}

// Passage is one narrow place on the way in: a corner of two corridors, a door
// at the side of a corridor (Out is its clear width), a flight of stairs.
type Passage struct {
	In, Out unit.Length // clear widths before and after the turn; Out 0: straight on
	Height  unit.Length // clear height; over stairs: headroom, plumb above the line of nosings; 0: any
	Slope   float64     // rise over going of a flight; 0: level
}

// Turn returns the longest rectangle of a thickness, carried on edge, that turns
// a right-angled corner from a corridor of one clear width into one of another:
//
//	l = min over θ of (a·cos θ + b·sin θ − t)/(sin θ·cos θ)
//
// Its ends slide along the two outer walls; at angle θ the inner corner is
// a·cos θ + b·sin θ − l·sin θ·cos θ away from its outer side, which must be
// at least t. With t = 0 it is the ladder of the calculus books, (a^⅔ + b^⅔)^(3/2).
// 0 where the sheet is no thinner than a corridor. Derived.
func Turn(a, b, t unit.Length) unit.Length {
	if !(a > t) || !(b > t) || !(t >= 0) {
		return 0
	}
	at := func(θ float64) float64 {
		s, c := math.Sincos(θ)
		return (float64(a)*c + float64(b)*s - float64(t)) / (s * c)
	}
	// One valley between the two ends: thirds close in on it.
	low, high := 1e-6, math.Pi/2-1e-6
	for range 200 {
		x, y := low+(high-low)/3, high-(high-low)/3
		if at(x) < at(y) {
			high = y
		} else {
			low = x
		}
	}
	return unit.Length(max(0, at((low+high)/2)))
}

// Blocked returns what stops a sheet on its way in; nothing means that it goes
// through. A sheet is carried on edge, long side level; on a flight of stairs it
// is tilted with it and needs width ≤ headroom·cos(slope) (derived); where the
// way is high enough it is stood on end instead, and only its width turns.
func Blocked(length, width, thickness unit.Length, way []Passage) []Note {
	var notes []Note
	long, wide := max(length, width), min(length, width)
	for i, p := range way {
		n := float64(i)
		clear := p.Height
		code := RouteHeight
		if p.Slope > 0 {
			clear *= unit.Length(1 / math.Sqrt(1+p.Slope*p.Slope))
			code = RouteStair
		}
		if p.Height > 0 && unit.Over(wide, clear) {
			say(&notes, code, "", 0, "", "passage width clear height", n, float64(wide), float64(clear), float64(p.Height))
			continue
		}
		if !(p.In > thickness) || p.Out > 0 && !(p.Out > thickness) {
			say(&notes, RouteClosed, "", 0, "", "passage width thickness", n, float64(min(p.In, p.Out)), float64(thickness))
			continue
		}
		if p.Out <= 0 {
			continue
		}
		turns := long
		if p.Slope == 0 && p.Height > 0 && !unit.Over(long, p.Height) {
			turns = wide // stood on end
		}
		if most := Turn(p.In, p.Out, thickness); unit.Over(turns, most) {
			say(&notes, RouteTurn, "", 0, "", "passage length longest", n, float64(long), float64(most))
		}
	}
	return notes
}

// Through returns the largest sheet that goes through: of the sizes sold the one
// of most area, and how long a piece of the first size's width may be, cut before
// it is carried in (0 if none goes). found is false where no size sold goes through.
func Through(sizes [][2]unit.Length, thickness unit.Length, way []Passage) (size [2]unit.Length, found bool, cut unit.Length) {
	for _, s := range sizes {
		if len(Blocked(s[0], s[1], thickness, way)) == 0 && (!found || s[0]*s[1] > size[0]*size[1]) {
			size, found = s, true
		}
	}
	if len(sizes) == 0 {
		return
	}
	wide, long := min(sizes[0][0], sizes[0][1]), max(sizes[0][0], sizes[0][1])
	low, high := unit.Length(0), long
	for range 40 {
		if mid := (low + high) / 2; len(Blocked(mid, wide, thickness, way)) == 0 {
			low = mid
		} else {
			high = mid
		}
	}
	if low > 0.01 {
		cut = low * (1 - unit.Slack) // what a comparison lets pass is not to be cut
	}
	return
}

// Stack returns how many sheets may lie flat in one pile on a floor: its load
// over the area of the sheet no more than the live load p the floor is made for,
//
//	n = ⌊p/(g·m″)⌋
//
// m″ is the mass of a sheet by its area. Derived; the floor beside the pile is
// taken to be empty.
func Stack(live unit.Pressure, sheet unit.Mass, area unit.Area) int {
	if !(live > 0) || !(sheet > 0) || !(area > 0) {
		return 0
	}
	n := float64(live) * float64(area) / (float64(sheet) * unit.StandardGravity)
	if n >= MaxSheets {
		return MaxSheets
	}
	return int(math.Floor(n + 1e-9))
}
