package room

import (
	"math"

	"twoleaf/core/band"
)

// struve returns the Struve function H1 within 0.005:
//
//	H1(x) ≈ 2/π − J0(x) + (16/π − 5) sin x/x + (12 − 36/π)(1 − cos x)/x²
//
// Source: AARTS2003.
func struve(x float64) float64 {
	s, c := math.Sincos(x)
	return 2/math.Pi - math.J0(x) + (16/math.Pi-5)*s/x + (12-36/math.Pi)*(1-c)/(x*x)
}

// holeAt returns the transmission of a round hole at one frequency and normal
// incidence, a tube with a piston at each end:
//
//	τ = 4 R0/|D|²,  R0 = 1 − J1(2ka)/ka,  X0 = H1(2ka)/ka
//
// a is its radius, d its depth [m], D see throat; viscosity as between plates a
// apart, which have the same wall for their area.
// Source: equation of WILSON1965, derived by way of the piston's impedance.
func holeAt(f, a, d, viscosity float64) float64 {
	return holeWith(f, a, d, drag(f, a, viscosity))
}

func holeWith(f, a, d float64, q complex128) float64 {
	k0 := 2 * math.Pi * f / airSpeed
	ka := k0 * a
	r, x := 1-math.J1(2*ka)/ka, struve(2*ka)/ka
	return 4 * r / throat(complex(k0, 0)*q, d, q, complex(r, x))
}

// Hole returns the transmission of a round hole per band in a diffuse field: the
// mean over the band, with viscous loss. In a diffuse field a small hole passes
// twice what it does at normal incidence, a large one (ka ≫ 1) as much:
//
//	τ = τ_normal · (1 + 1/(1 + (ka)⁴))
//
// a is its radius, d its depth [m]; the step between the two is our choice.
func Hole(a, d float64) band.Spectrum {
	if a <= 0 {
		return band.Spectrum{}
	}
	return overBands(d+1.7*a, a, func(f float64, q complex128) float64 {
		ka := 2 * math.Pi * f / airSpeed * a
		return holeWith(f, a, d, q) * (1 + 1/(1+ka*ka*ka*ka))
	})
}
