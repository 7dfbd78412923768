package material

import (
	"slices"

	"twoleaf/core/unit"
)

// The regions of the tables.
const (
	NorthAmerica = "NA"
	Europe       = "EU"
	Australia    = "AU"
	Everywhere   = "ALL"
)

// TableRegion returns the tables' region of a plan's region: US and CA buy from
// NA, UK and EU from EU, AU from AU; any other text returns "".
func TableRegion(region string) string {
	switch region {
	case "US", "CA", "NA":
		return NorthAmerica
	case "UK", "EU":
		return Europe
	case "AU":
		return Australia
	}
	return ""
}

// sold reports whether a row of one table region is sold in a plan's region; "" asks for all.
func sold(rowRegion, region string) bool {
	return region == "" || rowRegion == Everywhere || rowRegion == TableRegion(region)
}

func inRegion[T any](rows []T, of func(T) string, region string) []T {
	var out []T
	for _, r := range rows {
		if sold(of(r), region) {
			out = append(out, r)
		}
	}
	return out
}

// All returns every board and masonry, in the order of the table.
func All() []Board { return slices.Clone(boards().rows) }

// InRegion returns the boards and masonry sold in a plan's region (US, CA, UK, EU, AU), in the order of the table.
func InRegion(region string) []Board {
	return inRegion(boards().rows, func(b Board) string { return b.Region }, region)
}

// ByID returns the board with an id.
func ByID(id string) (Board, bool) { t := boards(); return t.find(t.byID, id) }

// ByCode returns the board with a link code.
func ByCode(code string) (Board, bool) { t := boards(); return t.find(t.byCode, code) }

// UsualHeavy returns the usual heavy gypsum board of a plan's region: type X
// 5/8 in, type F 15 mm, fire rated 16 mm (common practice). An unknown region has the first.
func UsualHeavy(region string) Board {
	want := TableRegion(region)
	var first Board
	for _, b := range boards().rows {
		if !b.Usual {
			continue
		}
		if b.Region == want {
			return b
		}
		if first.ID == "" {
			first = b
		}
	}
	return first
}

// Fills returns the fills sold in a plan's region; "" returns all.
func Fills(region string) []Fill {
	return inRegion(fills().rows, func(f Fill) string { return f.Region }, region)
}

// FillByID returns the fill with an id.
func FillByID(id string) (Fill, bool) { t := fills(); return t.find(t.byID, id) }

// FillByCode returns the fill with a link code.
func FillByCode(code string) (Fill, bool) { t := fills(); return t.find(t.byCode, code) }

// Frames returns the frames used in a plan's region; "" returns all.
func Frames(region string) []Frame {
	return inRegion(frames().rows, func(f Frame) string { return f.Region }, region)
}

// FrameByID returns the frame with an id.
func FrameByID(id string) (Frame, bool) { t := frames(); return t.find(t.byID, id) }

// FrameByCode returns the frame with a link code.
func FrameByCode(code string) (Frame, bool) { t := frames(); return t.find(t.byCode, code) }

// Fixings returns every fixing.
func Fixings() []Fixing { return slices.Clone(fixings().rows) }

// FixingByID returns the fixing with an id.
func FixingByID(id string) (Fixing, bool) { t := fixings(); return t.find(t.byID, id) }

// FixingByCode returns the fixing with a link code.
func FixingByCode(code string) (Fixing, bool) { t := fixings(); return t.find(t.byCode, code) }

// UsualGrid returns the distance between rows and along a row that is usual in
// a plan's region: 24 × 48 in for clips in the US and Canada, 600 × 1200 mm
// elsewhere. Along is 0 where the frame's spacing decides it.
func (f Fixing) UsualGrid(region string) (rows, along unit.Length) {
	if TableRegion(region) == NorthAmerica {
		return f.Rows, f.Along
	}
	return f.metricRows, f.metricAlong
}

// facing returns what paper faces of stiffness F add to a board's modulus in bending, Pa:
//
//	6·F/t
//
// from F·(t/2)² of each face beside E·t³/12 of the core (derived).
func facing(faces, thickness float64) unit.Pressure { return unit.Pressure(6 * faces / thickness) }

// Stretch returns the board's stiffness in tension per width, N/m, but for
// 1/(1−ν²): E·t of a board alike all through, and less where paper faces F
// stiffen it in bending,
//
//	E·t − 4·F
func (b Board) Stretch() float64 {
	return float64(b.Sound.Young)*float64(b.Thickness) - 4*b.Sound.Faces
}

// WithMass returns the board with another mass per area. The modulus goes with
// the mass, but for the share of paper faces F, which stay as they are:
//
//	E′ = (E − 6F/t)·m′/m + 6F/t
//
// so that without faces thickness × critical frequency, which depends on E/ρ
// only, stays what boards of the kind measure. A mass of 0 or less returns the
// board as it is.
func (b Board) WithMass(m unit.SurfaceMass) Board {
	if m > 0 && b.Mass > 0 {
		f := facing(b.Sound.Faces, float64(b.Thickness))
		b.Sound.Young = (b.Sound.Young-f)*unit.Pressure(m/b.Mass) + f
		b.Mass = m
	}
	return b
}

// WithThickness returns the board in another thickness at the same density,
// modulus and faces F: the mass goes with it, m′ = m·t′/t, and the stiffness
// follows from t′ and
//
//	E′ = E − 6F/t + 6F/t′
//
// A thickness of 0 or less returns the board as it is.
func (b Board) WithThickness(t unit.Length) Board {
	if t > 0 && b.Thickness > 0 {
		k := unit.SurfaceMass(t / b.Thickness)
		b.Mass, b.MassLow, b.MassHigh, b.CodeMass = b.Mass*k, b.MassLow*k, b.MassHigh*k, b.CodeMass*k
		b.Sound.Young += facing(b.Sound.Faces, float64(t)) - facing(b.Sound.Faces, float64(b.Thickness))
		b.Thickness = t
	}
	return b
}

// Area returns the area of the first sheet as sold, 0 for a roll, cut to order or built.
func (b Board) Area() unit.Area {
	if len(b.Sheets) == 0 {
		return 0
	}
	return b.Sheets[0].Area()
}
