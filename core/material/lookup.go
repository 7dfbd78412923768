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

// WithMass returns the board with another mass per area. The modulus goes with
// the mass,
//
//	E′ = E·m′/m
//
// so that thickness × critical frequency, which depends on E/ρ only, stays what
// boards of the kind measure. A mass of 0 or less returns the board as it is.
func (b Board) WithMass(m unit.SurfaceMass) Board {
	if m > 0 && b.Mass > 0 {
		b.Sound.Young *= unit.Pressure(m / b.Mass)
		b.Mass = m
	}
	return b
}

// WithThickness returns the board in another thickness at the same density and
// modulus: the mass goes with it, m′ = m·t′/t, and the stiffness follows from
// E and t′. A thickness of 0 or less returns the board as it is.
func (b Board) WithThickness(t unit.Length) Board {
	if t > 0 && b.Thickness > 0 {
		k := unit.SurfaceMass(t / b.Thickness)
		b.Mass, b.MassLow, b.MassHigh, b.CodeMass = b.Mass*k, b.MassLow*k, b.MassHigh*k, b.CodeMass*k
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
