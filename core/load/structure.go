package load

import (
	"twoleaf/core/assembly"
	"twoleaf/core/caution"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Above is what the members over a ceiling carry, and so what they were sized for.
type Above string

// What there may be.
const (
	FloorAbove  Above = "floor"  // joists of a floor
	AtticEmpty  Above = "attic"  // ceiling joists, nothing stored on them
	AtticStored Above = "stored" // ceiling joists under limited storage
	TrussAbove  Above = "truss"  // the bottom chord of a roof truss
	SlabAbove   Above = "slab"   // concrete: nothing here is for it
)

// Sized is what joists were likely sized for.
type Sized struct {
	Dead, Live unit.SurfaceMass
	Limit      float64 // span over deflection under live load
	Origin     string
	// ThereLow and ThereHigh is what usually hangs on them already, their own mass with it.
	ThereLow, ThereHigh unit.SurfaceMass
}

const kilonewton = unit.SurfaceMass(1000 / unit.StandardGravity) // one kN/m² as kg/m²

// SizedFor returns what members were likely sized for in a region (a region
// material knows, or one of its plans'); ok is false for concrete.
//
//	               dead          live
//	floor          10 psf        40 psf, L/360      IRC-JOISTS
//	attic          5 psf         10 psf, L/240      IRC-JOISTS
//	stored         10 psf        20 psf, L/240      IRC-JOISTS
//	truss          10 psf        10 psf, L/240      trade summary of attic loads
//
// Europe: floor 0.5 and 1.5 kN/m², ceiling joists 0.25 and 0.25 (from memory); Australia: floor 40 kg/m²
// and 1.5 kN/m², ceiling joists 12 kg/m² and 0.25 kN/m² (from memory). What is there already: floors 7 to 11 psf
// (3/4 in panel 2.3, joists 2–3, finish 1–4, 1/2 in ceiling 1.7–2.2), ceiling joists 3 to 5 psf (joists
// 1.2–2, fill 0.3–1, ceiling 1.6–2.2), trusses the same; derived from the masses of the materials.
func SizedFor(above Above, region string) (s Sized, ok bool) {
	psf := unit.PoundPerSquareFoot
	s = Sized{Dead: 10 * psf, Live: 20 * psf, Limit: 240, Origin: "IRC-JOISTS", ThereLow: 3 * psf, ThereHigh: 5 * psf}
	table := material.TableRegion(region)
	if table != material.NorthAmerica {
		s.Dead, s.Live, s.Origin = 0.25*kilonewton, 0.25*kilonewton, "from memory"
		if table == material.Australia {
			s.Dead = 12
		}
	}
	switch above {
	case FloorAbove:
		s.Limit, s.ThereLow, s.ThereHigh = 360, 7*psf, 11*psf
		switch table {
		case material.NorthAmerica:
			s.Live = 40 * psf
		case material.Australia:
			s.Dead, s.Live = 40, 1.5*kilonewton
		default:
			s.Dead, s.Live = 0.5*kilonewton, 1.5*kilonewton
		}
	case AtticEmpty:
		if table == material.NorthAmerica {
			s.Dead, s.Live = 5*psf, 10*psf
		}
	case AtticStored:
	case TrussAbove:
		if table == material.NorthAmerica {
			s.Live, s.Origin = 10*psf, "common"
		}
	default:
		return Sized{}, false
	}
	return s, true
}

// CodeAdded returns the dead load that a leaf newly puts on its frame by the
// masses of structural tables, kg/m²: as Added, with the heavier of the two masses for every new
// layer. What the load on a structure is judged by; clips and sound go by Added.
func CodeAdded(b assembly.BuildUp, leaf int) unit.SurfaceMass {
	added := Added(b, leaf)
	if leaf < 0 || leaf >= len(b.Leaves) {
		return added
	}
	for _, y := range b.Leaves[leaf].Layers {
		if !y.There {
			added += max(0, y.Board.CodeMass-y.Board.Mass)
		}
	}
	return added
}

// Ceiling is what is asked of the members over a ceiling.
type Ceiling struct {
	Above       Above
	Region      string
	Spacing     unit.Length // of the joists
	Added, Code unit.SurfaceMass
	There       unit.SurfaceMass // as typed, their own mass with it; 0 takes the usual
	Off         unit.SurfaceMass // of what is there, taken off
}

// Dead is how added dead load stands to what joists were likely sized for.
type Dead struct {
	Sized               Sized
	ThereLow, ThereHigh unit.SurfaceMass // that stays
	// LeftLow and LeftHigh are what is left of the dead load after the addition, by the
	// code's masses; below 0 it is passed.
	LeftLow, LeftHigh unit.SurfaceMass
	OnJoist           unit.LineMass // added, per length of one joist, code mass
	Known             bool          // false for concrete: nothing is known
}

// DeadOn returns it:
//
//	left  = sized − (there − off) − code
//	joist = code · spacing
func DeadOn(c Ceiling) (d Dead) {
	d.OnJoist = unit.LineMass(float64(c.Code) * float64(c.Spacing))
	d.Sized, d.Known = SizedFor(c.Above, c.Region)
	if !d.Known {
		return d
	}
	d.ThereLow, d.ThereHigh = d.Sized.ThereLow, d.Sized.ThereHigh
	if c.There > 0 {
		d.ThereLow, d.ThereHigh = c.There, c.There
	}
	d.ThereLow, d.ThereHigh = max(0, d.ThereLow-c.Off), max(0, d.ThereHigh-c.Off)
	d.LeftLow = d.Sized.Dead - d.ThereHigh - c.Code
	d.LeftHigh = d.Sized.Dead - d.ThereLow - c.Code
	return d
}

// InnerFrame is a room's own walls that carry its own ceiling.
type InnerFrame struct {
	Ceiling unit.SurfaceMass // boards, fill and joists
	Span    unit.Length      // of those joists
	Wall    unit.SurfaceMass // boards and fill on the studs
	Height  unit.Length
	Stud    unit.LineMass
	Spacing unit.Length
	Plates  int // lengths of plate one above the other; 0 takes 3
}

// OnFloor returns the line load of an inner frame on the floor, kg/m: of the
// walls that the ceiling joists rest on, and of the two others:
//
//	rests = ceiling·span/2 + (wall + stud/spacing)·height + plates·stud
func (f InnerFrame) OnFloor() (rests, others unit.LineMass) {
	plates := f.Plates
	if plates == 0 {
		plates = 3
	}
	studs := 0.0
	if f.Spacing > 0 {
		studs = float64(f.Stud) / float64(f.Spacing)
	}
	others = unit.LineMass((float64(f.Wall)+studs)*float64(f.Height)) + unit.LineMass(plates)*f.Stud
	return others + unit.LineMass(float64(f.Ceiling)*float64(f.Span)/2), others
}

// What asks for an engineer beside CeilingDeadLoad, TrussChord, MasonryOnFloor
// and PouredFloor of package caution; the names of their numbers follow.
const (
	// DeadPassed: with what is there the joists likely carry more than they were sized for: left, sized.
	DeadPassed caution.Code = "dead-passed"
	// JoistOver: a joist's own check fails: share.
	JoistOver caution.Code = "joist-over"
	// JoistsCut: notched, drilled or sistered.
	JoistsCut caution.Code = "joists-cut"
	// JoistsSag: hanging by more than span/360: sag, limit.
	JoistsSag caution.Code = "joists-sag"
	// LongSpan: new joists of an inner room over more than 3.6 m (12 ft): span, limit.
	LongSpan caution.Code = "long-span"
	// WallOut: lath and plaster, or a wall that may bear, is taken out.
	WallOut caution.Code = "wall-out"
	// OldFrame: a house from before 1940: year.
	OldFrame caution.Code = "old-frame"
	// FrameOnFloor: an inner frame stands on a floor that hangs free: line, the load of the wall the joists rest on.
	FrameOnFloor caution.Code = "frame-on-floor"
)

// Limits of those triggers (proposals of ours, on the careful side).
const (
	LongestInner = 12 * unit.Foot
	SagOfSpan    = 360
	OldYear      = 1940
)

// Facts is what is known of the structure.
type Facts struct {
	Ceiling   Ceiling // zero Above: no ceiling on old joists
	Joist     *Joist  // with the addition in Dead; nil if not given
	Span      unit.Length
	Sag       unit.Length // of the old joists as measured
	Cut       bool        // notched, drilled or sistered
	Poured    unit.SurfaceMass
	Masonry   unit.SurfaceMass // new, on a floor that hangs free
	Inner     *InnerFrame
	Suspended bool // the floor is not on the ground
	WallOut   bool
	Built     int // year, 0 unknown
}

// Engineer returns what asks for an engineer, in no order.
//
// Source: triggers, proposals on the careful side; AddedLimit see there.
func Engineer(f Facts) (out []caution.Caution) {
	add := func(c caution.Code, args nums) { out = append(out, caution.Caution{Code: c, Args: args}) }
	if f.Ceiling.Above != "" {
		if unit.Over(f.Ceiling.Code, AddedLimit) && f.Ceiling.Above != SlabAbove {
			add(caution.CeilingDeadLoad, nums{"added": float64(f.Ceiling.Code), "limit": float64(AddedLimit)})
		}
		if d := DeadOn(f.Ceiling); d.Known && f.Ceiling.Code > 0 && d.LeftLow < -unit.Slack*d.Sized.Dead {
			add(DeadPassed, nums{"left": float64(d.LeftLow), "sized": float64(d.Sized.Dead)})
		}
		if f.Ceiling.Above == TrussAbove && f.Ceiling.Code > 0 {
			add(caution.TrussChord, nil)
		}
	}
	if f.Joist != nil {
		if b := f.Joist.Bend(); unit.Over(b.Of, 1) {
			add(JoistOver, nums{"share": b.Of})
		}
	}
	if f.Cut {
		add(JoistsCut, nil)
	}
	if f.Sag > 0 && f.Span > 0 && unit.Over(f.Sag, f.Span/SagOfSpan) {
		add(JoistsSag, nums{"sag": float64(f.Sag), "limit": float64(f.Span / SagOfSpan)})
	}
	if f.Poured > 0 {
		add(caution.PouredFloor, nums{"mass": float64(f.Poured)})
	}
	if f.Masonry > 0 && f.Suspended {
		add(caution.MasonryOnFloor, nums{"mass": float64(f.Masonry)})
	}
	if f.Inner != nil {
		if unit.Over(f.Inner.Span, LongestInner) {
			add(LongSpan, nums{"span": float64(f.Inner.Span), "limit": float64(LongestInner)})
		}
		if rests, _ := f.Inner.OnFloor(); f.Suspended {
			add(FrameOnFloor, nums{"line": float64(rests)})
		}
	}
	if f.WallOut {
		add(WallOut, nil)
	}
	if f.Built > 0 && f.Built < OldYear {
		add(OldFrame, nums{"year": float64(f.Built)})
	}
	return out
}
