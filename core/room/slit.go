package room

import (
	"math"

	"twoleaf/core/band"
)

// Air at 20 °C.
const (
	airDensity   = 1.204   // kg/m³
	airSpeed     = 343.2   // of sound, m/s
	airViscosity = 1.82e-5 // Pa·s (from memory)
)

// Angles of incidence, as the factor of Gomperts and Kihlman.
const (
	diffuse = 8.0
	normal  = 4.0
)

// Where a slit lies, as the factor of Gomperts and Kihlman: it radiates into a
// half space in the middle of a face, into a quarter along an edge.
const (
	inFace = 1.0
	atEdge = 0.5
)

// throat is what a tube of the length d between two openings does:
//
//	D = 2 Zr cos φ + j (z + Zr²/z) sin φ,  φ = k d
//
// Zr is the radiation impedance of each mouth, z the impedance of the air in the
// tube, both over ρ0c0, k the wave number in it. |D| is the blocked pressure over
// ρ0c0 times the velocity at the far mouth. Derived (two mouths and a two-port).
func throat(k complex128, d float64, z, zr complex128) float64 {
	s, c := sincos(complex(d, 0) * k)
	b := z
	if z == 1 {
		b += zr * zr
	} else {
		// zr²/z without the language's slow division.
		n := real(z)*real(z) + imag(z)*imag(z)
		b += zr * zr * complex(real(z)/n, -imag(z)/n)
	}
	x, y := zr*c, b*s
	re, im := 2*real(x)-imag(y), 2*imag(x)+real(y)
	return re*re + im*im
}

// sincos returns sine and cosine of a complex number.
func sincos(x complex128) (s, c complex128) {
	sr, cr := math.Sincos(real(x))
	if imag(x) == 0 {
		return complex(sr, 0), complex(cr, 0)
	}
	// Past this the exponentials leave nothing audible and would overflow later.
	y := max(-300, min(300, imag(x)))
	e := math.Exp(y)
	sh, ch := (e-1/e)/2, (e+1/e)/2
	return complex(sr*ch, cr*sh), complex(cr*ch, -sr*sh)
}

// root returns the square root of a complex number, real part not negative.
func root(x complex128) complex128 {
	m := math.Hypot(real(x), imag(x))
	return complex(math.Sqrt((m+real(x))/2), math.Copysign(math.Sqrt(max(0, (m-real(x))/2)), imag(x)))
}

// drag returns √(ρs/ρ0), by which viscosity slows and damps the air between two
// walls w apart:
//
//	ρs/ρ0 = 1/(1 − tanh ζ/ζ),  ζ = (w/2) √(jωρ0/μ)
//
// Source: laminar flow between plates, any text on porous media (from memory).
func drag(f, w, viscosity float64) complex128 {
	if viscosity == 0 {
		return 1
	}
	x := w / 2 * math.Sqrt(math.Pi*f*airDensity/viscosity) // ζ = x(1+j)
	tanh := complex(1, 0)
	if x < 20 {
		e := math.Exp(2 * x)
		sh, ch := (e-1/e)/2, (e+1/e)/2
		s2, c2 := math.Sincos(2 * x)
		tanh = complex(sh/(ch+c2), s2/(ch+c2))
	}
	return root(1 / (1 - tanh/complex(x, x)))
}

// slitAt returns the transmission of a slit at one frequency:
//
//	τ = m K / (2 n² |D|²),  K = k0 w
//	Zr = K/2n + j tan(K e),  e = (1/π)[ln(8/K) − 0.57722]
//
// w is how wide it gapes, d how deep it is [m], m its angle of incidence, n its
// place, D see throat. Without viscosity and the fourth power of K this is the
// equation of Gomperts and Kihlman. For K under about 2: slits to 20 mm.
// Source: GOMPERTS1967 by HOPKINS2007 eq. 4.99 (from memory); with viscosity derived.
func slitAt(f, w, d, m, n, viscosity float64) float64 {
	return slitWith(f, w, d, m, n, drag(f, w, viscosity))
}

func slitWith(f, w, d, m, n float64, q complex128) float64 {
	k0 := 2 * math.Pi * f / airSpeed
	K := k0 * w
	e := max(0, (math.Log(8/K)-0.57722)/math.Pi)
	zr := complex(K/(2*n), math.Tan(K*e))
	return m * K / (2 * n * n * throat(complex(k0, 0)*q, d, q, zr))
}

// Slit returns the transmission of a slit per band in a diffuse field: the mean
// over the band of what slitAt gives, with viscous loss. Over 1 means that it
// collects more than falls on its own area, as a resonator does.
//
// w is how wide it gapes, d how deep it is [m]; edge: it lies along an edge, as
// under a door. Closed (w = 0) it is 0.
func Slit(w, d float64, edge bool) band.Spectrum {
	n := inFace
	if edge {
		n = atEdge
	}
	if w <= 0 {
		return band.Spectrum{}
	}
	return overBands(d+w, w, func(f float64, q complex128) float64 { return slitWith(f, w, d, diffuse, n, q) })
}

// overBands returns the mean of a transmission over each band, over points of
// equal ratio: more of them where a tube as long as that may ring. Viscosity between
// walls w apart is taken at the band's middle, for within a band it hardly moves.
func overBands(length, w float64, at func(f float64, q complex128) float64) (out band.Spectrum) {
	const few, many = 9, 17
	ratio := math.Pow(10, 0.1)
	stepFew, stepMany := math.Pow(ratio, 1.0/few), math.Pow(ratio, 1.0/many)
	for i := range out {
		middle := band.Exact(i)
		points, step := few, stepFew
		if 2*math.Pi*middle/airSpeed*length > 1.8 {
			points, step = many, stepMany
		}
		q := drag(middle, w, airViscosity)
		f, sum := middle*math.Sqrt(step/ratio), 0.0
		for range points {
			sum += at(f, q)
			f *= step
		}
		out[i] = sum / float64(points)
	}
	return out
}
