package room

import (
	"math"

	"twoleaf/core/band"
)

// element is one way through an opening.
type element struct {
	way    Way
	area   float64       // its own, m²
	open   band.Spectrum // equivalent open area, m²
	spread float64       // one standard deviation, dB
}

// leaf is what a door's leaf or a window's glazing stops when its edges are
// tight, octaves 63 to 4000 Hz, dB.
type leaf struct {
	kind   string
	loss   [7]float64
	depth  float64 // m
	origin string
}

// leaves: doors from measured ones less the leak they were measured with, 63 Hz
// by the mass law; steel and foam doors by their rating and an assumed shape; the
// hatch and the windows computed with the method of this project, sealed units
// lowered above 500 Hz for their rigid spacer.
var leaves = []leaf{
	{"doorHollow", [7]float64{11, 14, 19, 23, 22, 22, 25}, 0.044, "ROSSING2014"},
	{"doorSolid", [7]float64{17, 21, 26, 26, 29, 33, 37}, 0.044, "BIES2017"},
	{"doorHeavy", [7]float64{20, 24, 26, 33, 38, 41, 46}, 0.066, "BIES2017"},
	{"doorSteel", [7]float64{19, 22, 25, 28, 31, 33, 36}, 0.044, "HARRIS1995"},
	{"doorFoam", [7]float64{15, 18, 22, 26, 27, 26, 34}, 0.045, "HARRIS1995"},
	{"doorFilled", [7]float64{22, 26, 34, 40, 48, 44, 52}, 0.045, "ROSSING2014"},
	{"doorAcoustic", [7]float64{37, 36, 39, 44, 49, 54, 57}, 0.1, "BIES2017"},
	{"doorTwoHollow", [7]float64{11, 14, 19, 23, 22, 22, 25}, 0.044, "ROSSING2014"},
	{"doorTwo", [7]float64{17, 21, 26, 26, 29, 33, 37}, 0.044, "BIES2017"},
	{"hatch", [7]float64{12, 16, 21, 24, 20, 28, 39}, 0.019, "computed"},
	{"windowSingle", [7]float64{15, 18, 22, 27, 31, 33, 28}, 0.004, "computed"},
	{"windowLaminated", [7]float64{19, 22, 26, 31, 35, 35, 41}, 0.0064, "computed"},
	{"windowUnit", [7]float64{20, 23, 21, 30, 37, 38, 35}, 0.02, "computed"},
	{"windowTwo", [7]float64{17, 20, 34, 46, 54, 53, 55}, 0.11, "computed"},
	{"windowWide", [7]float64{19, 32, 45, 54, 57, 55, 57}, 0.214, "computed"},
}

func leafOf(kind string) (leaf, bool) {
	for _, l := range leaves {
		if l.kind == kind {
			return l, true
		}
	}
	return leaf{}, false
}

// What the edges of a door let through, as a loss over all of its leaf, dB,
// fitted to doors measured with and without seals (HARRIS1995): open all round at
// about 3 mm, 18 to 22; gaskets and a drop seal, 34 to 42. A window that opens and
// has no good seal: 25 to 30.
const (
	leakOpen   = 20.5
	leakSwept  = 27.0 // gaskets, a sweep at the sill, 25 to 30
	leakSealed = 37.0
	leakWindow = 27.0
)

// Losses of boxes and lights over their area, dB (common practice).
const (
	boxArea     = 0.01 // m²
	boxOpen     = 20.0
	boxPutty    = 35.0
	backOpen    = 12.0
	backPutty   = 30.0
	lampOpen    = 10.0
	lampBoxed   = 35.0
	usualDepth  = 0.03 // of a hole or crack where no build-up says it, m (common practice)
	deepLobby   = 0.15 // two doors further apart than this do better, m
	typedSpread = 3.0  // of a typed rating or spectrum, dB (common practice)
	widestSlit  = 0.02 // m; the equation of the slit holds under it
)

// measure returns an opening with the kind's own sizes where none were given.
func (o *Opening) measure(k *Kind, s *Surface) Opening {
	m := *o
	usual := func(v *float64, own float64) {
		if *v == 0 {
			*v = own
		}
	}
	usual(&m.Width, k.Width)
	usual(&m.Height, k.Height)
	usual(&m.Run, k.Run)
	m.Count = max(1, m.Count)
	if !m.CrackSet {
		m.Crack = k.Gap
	}
	if l, ok := leafOf(k.ID); ok {
		usual(&m.Depth, l.depth)
	}
	usual(&m.Depth, s.Thickness)
	usual(&m.Depth, usualDepth)
	if m.Seal == "" {
		m.Seal = string(k.Seals[0])
	}
	return m
}

// area returns the area of one such opening, m².
func (o *Opening) area(k *Kind) float64 {
	switch k.Group {
	case Crack:
		return o.Width * o.Height
	case Box:
		if k.ID == "boxSurface" {
			break
		}
		return boxArea
	case Pipe:
		return math.Pi / 4 * square(o.Width+2*o.Crack)
	}
	if o.Height > 0 {
		return o.Width * o.Height
	}
	return math.Pi / 4 * o.Width * o.Width
}

// typed returns what somebody else said that the opening stops.
func (o *Opening) typed() (band.Spectrum, bool) {
	switch {
	case o.TL != nil:
		return *o.TL, true
	case len(o.Octaves) == 7:
		return ofOctaves([7]float64(o.Octaves)), true
	case o.Rating > 0:
		return OfRating(o.Rating, o.RatingRw), true
	}
	return band.Spectrum{}, false
}

// elements appends the ways through an opening whose sizes are known.
//
// A door is its leaf with the leak of its edges,
//
//	τ = 10^(−R/10) + 10^(−L/10)
//
// and the crack under it, which is a slit along an edge. A typed loss is that of
// the whole opening, its edges included, but not of the crack under a door.
func (o *Opening) elements(k *Kind, memo *Memo, to []element) []element {
	area, n := o.area(k), float64(o.Count)
	seal := Seal(o.Seal)
	add := func(way Way, area float64, tau band.Spectrum, on, spread float64) {
		for i := range tau {
			tau[i] *= on * n
		}
		to = append(to, element{way, area * n, tau, spread})
	}
	loss, said := o.typed()
	switch k.Group {
	case Door:
		spread := k.Spread
		crack := band.Spectrum{}
		sill := k.Gap > 0 && (seal == NoSeal || seal == SealSides)
		if sill {
			crack = memo.slit(o.Crack, o.Depth, true)
		}
		pair := k.ID == "doorTwo" || k.ID == "doorTwoHollow"
		switch {
		case said:
			spread = typedSpread
			add(ByLeaf, area, transmitted(loss), area, spread)
		case pair:
			l, _ := leafOf(k.ID)
			add(ByLeaf, area, o.pair(l, seal, crack), area, spread)
			sill = false // inside the pair
		default:
			l, _ := leafOf(k.ID)
			tau := transmitted(ofOctaves(l.loss))
			edge := o.leak(seal, k)
			for i := range tau {
				tau[i] += edge
			}
			add(ByLeaf, area, tau, area, spread)
		}
		if sill && o.Crack > 0 {
			add(ByCrack, 0, crack, o.Width*o.Crack, spread)
		}
	case Window:
		spread := k.Spread
		if said {
			spread = typedSpread
		} else {
			l, _ := leafOf(k.ID)
			loss = ofOctaves(l.loss)
		}
		tau := transmitted(loss)
		if seal == NoSeal {
			for i := range tau {
				tau[i] += ten(-leakWindow)
			}
		}
		add(ByLeaf, area, tau, area, spread)
	default:
		if seal == SealShut {
			return to
		}
		if said {
			add(ByLeaf, area, transmitted(loss), area, typedSpread)
			return to
		}
		switch {
		case k.ID == "duct":
			add(ByLeaf, area, o.duct(), area, k.Spread)
		case k.ID == "box":
			add(ByLeaf, area, flat(pick(seal == SealPutty, boxPutty, boxOpen)), area, k.Spread)
		case k.ID == "boxBack":
			add(ByLeaf, area, flat(pick(seal == SealPutty, backPutty, backOpen)), area, k.Spread)
		case k.ID == "light":
			add(ByLeaf, area, flat(pick(seal == LampBoxed, lampBoxed, lampOpen)), area, k.Spread)
		case k.ID == "pipe":
			// The ring round the pipe, as a slit in the face as long as its middle.
			add(ByCrack, area, memo.slit(o.Crack, o.Depth, false), math.Pi*(o.Width+o.Crack)*o.Crack, k.Spread)
		case k.Group == Crack:
			add(ByCrack, area, memo.slit(o.Height, o.Depth, k.ID == "crackEdge"), area, k.Spread)
		default: // hole, vent, the cable hole of a box on the surface
			add(ByHole, area, memo.hole(math.Sqrt(area/math.Pi), o.Depth), area, k.Spread)
		}
	}
	return to
}

func pick(first bool, a, b float64) float64 {
	if first {
		return a
	}
	return b
}

// leak returns the transmission of a door's edges over its leaf. Unsealed, the
// sill's part of the edge is left to the crack under it.
func (o *Opening) leak(seal Seal, k *Kind) float64 {
	switch {
	case seal == SealShut:
		return 0
	case seal == NoSeal && k.Gap > 0:
		return ten(-leakOpen) * (1 - o.Width/(2*o.Width+2*o.Height))
	case seal == NoSeal:
		return ten(-leakOpen)
	}
	return ten(-leakSealed)
}

// pair returns the transmission of two like doors in a row, each with its leak
// and the crack under it:
//
//	R = max( R1 + 3, 2 R1 − D c ),  c = lg2(f/31.5)/3 between 0.3 and 1
//
// D is 12 unsealed, 17 with a bare reveal and 13 with a lined one when sealed, 6
// less from 150 mm apart. Fitted to six ratings of HARRIS1995: ±4 dB, indicative.
// So that sealing never makes it worse, doors with open sills or edges are never
// better than the same doors sealed.
func (o *Opening) pair(l leaf, seal Seal, crack band.Spectrum) band.Spectrum {
	loss := ofOctaves(l.loss)
	area := o.Width * o.Height
	side := o.Width / (2*o.Width + 2*o.Height)
	// The ratings were taken with the sill as a part of the edge: so it stays where
	// nobody said how far it gapes.
	edges, sill := [2]float64{ten(-leakOpen), ten(-leakSwept)}, 0.0
	if o.CrackSet {
		edges, sill = [2]float64{ten(-leakOpen) * (1 - side), ten(-leakSealed)}, o.Width*o.Crack/area
	}
	both := func(edge, slit, d float64, i int) float64 {
		one := -level(ten(-loss[i]) + edge + slit)
		c := max(0.3, min(1, math.Log2(band.Nominal[i]/31.5)/3))
		if o.Run > deepLobby {
			d -= 6
		}
		return math.Max(one+3, 2*one-d*c)
	}
	var tau band.Spectrum
	for i := range tau {
		slit := crack[i] * sill
		tight := both(ten(-leakSealed), 0, 17, i)
		r := 0.0
		switch seal {
		case SealLined:
			r = both(ten(-leakSealed), 0, 13, i)
		case SealAll:
			r = tight
		case SealSides:
			r = math.Min(both(edges[1], slit, 12, i), tight)
		default:
			r = math.Min(both(edges[0], slit, 12, i), tight)
		}
		tau[i] = ten(-r)
	}
	return tau
}

// transmitted turns a loss into a transmission.
func transmitted(loss band.Spectrum) band.Spectrum {
	for i, r := range loss {
		loss[i] = ten(-bounded(r))
	}
	return loss
}

// flat returns one transmission in every band.
func flat(loss float64) (tau band.Spectrum) {
	for i := range tau {
		tau[i] = ten(-loss)
	}
	return tau
}
