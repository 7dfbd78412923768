package load

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/caution"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Advice on fastening; the names of the numbers follow, the text is the board's name.
const (
	// PilotHoles: a wood panel over thin steel is drilled through for the thread to pass,
	// or the screw lifts the panel off what is behind it before it bites: layer, diameter of the drill.
	PilotHoles caution.Code = "pilot-holes"
	// PanelGap: wood panels keep a gap at every edge, sealed, and touch no other wall: layer, gap.
	PanelGap caution.Code = "panel-gap"
	// CoarseThread, FineThread, DrillPoint: which screw for what holds the leaf; the last two: steel thickness.
	CoarseThread caution.Code = "coarse-thread"
	FineThread   caution.Code = "fine-thread"
	DrillPoint   caution.Code = "drill-point"
	// CornerBacking: the stud or channel at an inside corner shows too little beside what
	// hangs on the wall that is boarded first: need, has.
	CornerBacking caution.Code = "corner-backing"
	// HalfLoad: a clip that carries this share of the mean sits higher in frequency: share, frequency, mean.
	HalfLoad caution.Code = "half-load"
)

const (
	// Drill is what a thread of No. 6 (3.5 mm across) passes freely, 9/64 in (common practice).
	Drill = unit.Length(9.0/64) * unit.Inch
	// DrillCoarser is the same for No. 8 (4.2 mm), which screws of 2 1/2 in and more are: 11/64 in.
	DrillCoarser = unit.Length(11.0/64) * unit.Inch
	// No8From is the length from which drywall screws are No. 8 (from memory).
	No8From = 2.5 * unit.Inch
	// PanelGapWidth is 1/8 in, 3 mm (common practice of sheathing).
	PanelGapWidth = 0.125 * unit.Inch
	// NeedleTo is the steel above which a screw wants a drill point: 0.75 mm
	// (board manual of Australia; 0.84 mm in North America from memory).
	NeedleTo = 0.75 * unit.Millimetre
	// channelSteel is the usual hat channel, 25 gauge.
	channelSteel = 0.46 * unit.Millimetre
)

// Fasten returns the advice on the screws of a leaf: the thread that what holds
// it wants, and for every new wood panel over steel the hole that lets the thread
// pass, with the gap it keeps. lengths are those of the layers' screws, in their
// order, and may be nil.
//
// Source: common practice; thread and point by steel thickness, manuals of the trade.
func Fasten(b assembly.BuildUp, leaf int, lengths []unit.Length) (out []caution.Caution) {
	gap, near, ok := b.Fixed(leaf)
	if !ok {
		return nil
	}
	g := b.Gaps[gap]
	steel := g.Frame.Sheet
	if k := g.Held(near).Fixing.Kind; k == material.Channel || k == material.Clip {
		steel = channelSteel
	} else if g.Frame.Kind == material.Bare || g.Frame.Kind == material.NoFrame || g.Frame.Kind == "" {
		return nil
	}
	switch {
	case steel == 0:
		out = append(out, caution.Caution{Code: CoarseThread})
	case unit.Over(steel, NeedleTo):
		out = append(out, caution.Caution{Code: DrillPoint, Args: nums{"steel": float64(steel)}})
	default:
		out = append(out, caution.Caution{Code: FineThread, Args: nums{"steel": float64(steel)}})
	}
	for i, y := range b.Leaves[leaf].Layers {
		if y.There || !y.Board.Kind.Wood() {
			continue
		}
		text := map[string]string{"board": y.Board.Name}
		if steel > 0 {
			drill := Drill
			if i < len(lengths) && !unit.Over(No8From, lengths[i]) {
				drill = DrillCoarser
			}
			out = append(out, caution.Caution{Code: PilotHoles, Args: nums{"layer": float64(i), "diameter": float64(drill)}, Text: text})
		}
		out = append(out, caution.Caution{Code: PanelGap, Args: nums{"layer": float64(i), "gap": float64(PanelGapWidth)}, Text: text})
	}
	return out
}

// CornerGrip is how much of a stud each layer finds at an inside corner beyond the
// layers of the other wall: 20 mm, for a screw 10 mm from the board's edge and 10 mm
// from the stud's (derived from distance from the edge, UK specification clauses).
const CornerGrip = 20 * unit.Millimetre

// Corner is what the second wall of an inside corner needs to be screwed to.
type Corner struct {
	Need unit.Length   // face of stud or blocking beyond the corner of the frames
	Grip []unit.Length // what each of its layers finds of the stud that is there
	Ok   bool
	// Add is how many more studs of that thickness, side by side, make it enough.
	Add int
}

// CornerOf returns it for the layers of the first wall, which run into the corner
// behind those of the second, for what shows of the stud there, and the thickness of a stud:
//
//	need = Σ first + gap + grip
//
// First is all that hangs on the wall boarded first, with its stand-off if it stands
// off, and gap what is left open at the edge. All layers of the second wall stop
// at the face of the first wall and find the same: that is why a third layer fails
// where one did not. Source: derived; n·t + 20 mm is common practice.
func CornerOf(first []unit.Length, gap, shows, stud unit.Length, second int) (c Corner) {
	sum := gap
	for _, t := range first {
		sum += t
	}
	c.Need = sum + CornerGrip
	for range second {
		c.Grip = append(c.Grip, max(0, shows-sum))
	}
	c.Ok = !unit.Over(c.Need, shows)
	if !c.Ok && stud > 0 {
		c.Add = int(math.Ceil(float64((c.Need-shows)/stud) - unit.Slack))
	}
	return c
}

// Hanging is a leaf on its clips as one mass on springs.
type Hanging struct {
	Frequency, Low, High unit.Frequency // at the mean load, and at the bounds of stiffness
	HalfLoad             unit.Frequency // at half of it
	Deflection           unit.Length    // static, at the mean load
	// WithAir is with the air of the gap as a second spring beside the clips: what the
	// leaf does in the wall. 0 without a gap.
	WithAir unit.Frequency
	PerArea float64 // clips' stiffness, N/m³
	Each    []unit.Frequency
}

// RubberRatio is the dynamic over the static stiffness of rubber clips: 1.4,
// between 1.2 and 1.8 (from memory).
const RubberRatio = 1.4

// AirSpring is the stiffness of air in a gap times its depth, N/m²: 0.111 MPa, taken
// between 0.101 (isothermal, a gap full of fibre) and 0.142 (adiabatic, an empty one).
const AirSpring = 0.111e6

// Hang returns the natural frequency of a leaf on its clips:
//
//	f = 1/(2π)·√(k·n/m)
//	δ = m·g/(n·k/1.4)
//	with air  f = 1/(2π)·√((k·n + 0.111e6/d)/m)
//
// k dynamic stiffness of a clip [N/m] with its bounds, n clips per area [1/m²],
// m mass per area on them [kg/m²], d depth of the gap [m]. Half the load on the
// same clips is √2 of the frequency: 41 % higher. Each is that of every clip
// alone under what it carries. The frame is taken as not moving.
//
// Source: one mass on springs, every book on vibration; ratio see RubberRatio.
func Hang(k, low, high float64, perArea float64, mass unit.SurfaceMass, depth unit.Length, spots []Spot) (h Hanging) {
	if !(k > 0 && perArea > 0 && mass > 0) {
		return h
	}
	f := func(stiff, mass float64) unit.Frequency {
		return unit.Frequency(math.Sqrt(stiff/mass) / (2 * math.Pi))
	}
	h.PerArea = k * perArea
	h.Frequency = f(k*perArea, float64(mass))
	h.Low, h.High = f(low*perArea, float64(mass)), f(high*perArea, float64(mass))
	h.HalfLoad = f(k*perArea, float64(mass)/2)
	h.Deflection = unit.Length(float64(mass) * unit.StandardGravity * RubberRatio / (perArea * k))
	if depth > 0 {
		h.WithAir = f(k*perArea+AirSpring/float64(depth), float64(mass))
	}
	for _, s := range spots {
		alone := unit.Frequency(0)
		if s.Share > 0 {
			alone = f(k, float64(s.Share))
		}
		h.Each = append(h.Each, alone)
	}
	return h
}

// Uneven returns the caution of clips that carry half of the mean or less; ok is false
// where none does.
func Uneven(l Layout, k float64) (c caution.Caution, ok bool) {
	if l.Least < 0 || l.Mean <= 0 || !(k > 0) {
		return c, false
	}
	least := l.Spots[0].Share
	for _, s := range l.Spots {
		least = min(least, s.Share)
	}
	share := float64(least / l.Mean)
	if least <= 0 || share > 0.5 {
		return c, false
	}
	f := math.Sqrt(k/float64(least)) / (2 * math.Pi)
	return caution.Caution{Code: HalfLoad, Args: nums{"share": share, "frequency": f, "mean": f * math.Sqrt(share)}}, true
}
