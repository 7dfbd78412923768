package transmission

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// cavity is what the method needs to know of the air and fill between two
// leaves. It is comparable and is the key of the gap's tables.
type cavity struct {
	depth  float64 // d, m
	filled float64 // share a of the depth
	flow   float64 // σr of the fill, Pa·s/m²
	loss   float64 // σe of the air, as flow resistivity, Pa·s/m²
	face   float64 // depth of lossy air lent by masonry faces, m
	slack  float64 // its loss factor
	closed closure
}

// closure is how studs close a cavity to sound along it.
type closure struct {
	spacing float64 // b, m; 0 where nothing closes it
	open    float64 // g0
}

func newCavity(g *assembly.Gap, near, far *leaf, c *Constants) cavity {
	d := float64(g.Depth)
	v := cavity{depth: d}
	if g.Fill.ID != "" && g.Fill.Flow > 0 && g.FillDepth > 0 {
		v.filled, v.flow = min(float64(g.FillDepth)/d, 1), g.Fill.Flow
	}
	k := g.Frame.Kind
	switch {
	case near.masonry || far.masonry:
		v.loss = c.MasonryLoss
		v.slack = c.FaceLoss
		for _, f := range [...]*leaf{near, far} {
			if f.masonry {
				v.face += c.FaceDepth
			}
		}
		return v
	case near.glass && far.glass:
		v.loss = c.PaneLoss * pow(0.05/d, c.PanePower)
		return v
	case k == material.Joist || k == material.SteelJoist || k == material.Strapping || k == material.ZBar,
		k == material.Bare, !framedWall(k) && (side{held: &g.Near}.resilient() || side{held: &g.Far}.resilient()):
		// A channel's own depth below boards is closed like the joist space above it.
		v.loss = c.BayLoss
		return v
	}
	v.loss = c.BayLoss
	if k == material.Double && g.Frame.Sheet == 0 {
		// Solid studs of two rows: sound that passes between the rows is squeezed
		// by both. Punched sheet steel shows none of it in the rows of NBC2020.
		v.loss *= 2
	}
	v.closed = newClosure(g, c)
	return v
}

// newClosure returns how the studs of a gap close it. Sound cannot run across
// them below the first cross mode of a bay; what is open beside them is air
// squeezed through a share o of the depth over a length tw:
//
//	g0 = 1/[1 + (tw/b)(1/o − 1)], 0 where o = 0
func newClosure(g *assembly.Gap, c *Constants) closure {
	b, d, tw := float64(g.Spacing), float64(g.Depth), float64(g.Frame.Width)
	if b <= 0 {
		return closure{}
	}
	o := 0.0
	switch g.Frame.Kind {
	case material.Wood:
	case material.CStud:
		o, tw = c.StudOpening, c.StudThroat
	case material.Double:
		o = max(d-float64(assembly.FrameDepth(g.Frame)), 0) / d
	case material.Staggered:
		o = max(d-float64(g.Frame.Depth), 0) / d
		b /= 2
	default:
		return closure{}
	}
	if o <= 0 {
		return closure{b, 0}
	}
	return closure{b, 1 / (1 + tw/b*(1/o-1))}
}

// across returns the factor on k² of sound running across the studs:
//
//	g = g0 + (1−g0)/(1+(fl/f)⁴),  fl = c0/2b
func (c closure) across(hz float64) float64 {
	if c.spacing <= 0 {
		return 1
	}
	x := c0 / (2 * c.spacing * hz)
	x *= x
	return c.open + (1-c.open)/(1+x*x)
}

// fibre returns the equivalent density and bulk modulus of a fibrous fill of
// flow resistivity σ (Pa·s/m²):
//
//	X = ρ0·f/σ,  ρ = 1.2 + √(−0.0364·X⁻² − j·0.1144·X⁻¹)
//	K = 101 320·(j·29.64 + q)/(j·21.17 + q),  q = √(2.82·X⁻² + j·24.9·X⁻¹)
//
// valid down to f → 0, where K → P0 (Allard and Champoux, J. Acoust. Soc. Am.
// 91 (1992) 3346, from memory).
func fibre(hz, flow float64) (rho, k complex128) {
	x := flow / (rho0 * hz)
	rho = 1.2 + csqrt(complex(-0.0364*x*x, -0.1144*x))
	q := csqrt(complex(2.82*x*x, 24.9*x))
	return rho, 101320 * (29.64i + q) / (21.17i + q)
}

// fluid is the layered fill of a gap at one frequency: density across and
// along the gap, bulk modulus.
type fluid struct {
	across, along, bulk complex128
	filled              bool
}

// fluid returns the fill of a gap at one frequency. Air of density
// ρa = ρ0(1 − jσe/ωρ0) and fibre act in series across and in parallel along:
//
//	ρz = aρp + (1−a)ρa,  1/ρx = a/ρp + (1−a)/ρa,  1/K = a/Kp + (1−a)/γP0 + (X/d)/[P0(1+jηX)]
func (v *cavity) fluid(hz float64) fluid {
	air := complex(rho0, -v.loss/(2*pi*hz))
	f := fluid{across: air, along: air, bulk: adiabat * p0}
	if a := v.filled; a > 0 {
		rho, k := fibre(hz, v.flow)
		p, q := complex(a, 0), complex(1-a, 0)
		f.across = p*rho + q*air
		f.along = 1 / (p/rho + q/air)
		f.bulk = 1 / (p/k + q/complex(adiabat*p0, 0))
	}
	if v.face > 0 {
		f.bulk = 1 / (1/f.bulk + complex(v.face/v.depth, 0)/(complex(p0, 0)*complex(1, v.slack)))
	}
	return f
}

// impedances returns the two-port of the gap at trace wavenumber k, Pa·s/m:
//
//	kz² = ω²ρz/K − k²·ρz/ρx,  Z = ωρz/kz,  E = exp(−jkz·d)
//	Za = Z(1+E²)/(1−E²),  Zb = 2ZE/(1−E²)
//
// with |E| ≤ 1, so nothing overflows; kk is k² along the gap, closure included.
func (f fluid) impedances(hz, depth, kk float64) (za, zb complex128) {
	w := 2 * pi * hz
	kz := csqrt(complex(w*w, 0)*f.across/f.bulk - complex(kk, 0)*f.across/f.along)
	if imag(kz) > 0 {
		kz = -kz
	}
	if floor := 1e-6 / depth; math.Abs(real(kz))+math.Abs(imag(kz)) < floor {
		kz = complex(floor, -floor) // the gap then is a spring, whatever kz
	}
	e := cexp(complex(imag(kz)*depth, -real(kz)*depth))
	z := complex(w, 0) * f.across / kz
	e2 := e * e
	d := z / (1 - e2)
	return d * (1 + e2), 2 * d * e
}

// drag returns what the fill of a gap takes out of a leaf that moves in waves
// much shorter than those of sound, as mass per area times loss factor, kg/m²:
//
//	drag = −Im √(ρz·ρx)·coth(k·d)/k
//
// for air that such waves push to and fro along the gap, through the fibre
// (derived: the gap's Za at k ≫ k0, the other leaf at rest). It is why a fill
// helps even where rigid studs carry most of the sound.
func (v *cavity) drag(hz, k float64) float64 {
	if v.depth <= 0 {
		return 0
	}
	f := v.fluid(hz)
	e := exp(-2 * k * v.depth)
	return max(-imag(csqrt(f.across*f.along)), 0) * (1 + e) / ((1 - e) * k)
}
