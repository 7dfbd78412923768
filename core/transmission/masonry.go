package transmission

import "math"

// pores is an unsealed porous wall seen as a rigid layer of air: flow
// resistivity in Pa·s/m², thickness in m, porosity φ and tortuosity α.
type pores struct{ flow, thick, porosity, tortuosity float64 }

// impedance returns pressure difference over the velocity that comes through,
// Pa·s/m, at trace wavenumber k:
//
//	ρe = α·ρ0/φ + σ/jω,  K = P0/φ,  kz² = ω²ρe/K − k²,  Zt = j·(ωρe/kz)·sin(kz·t)
//
// with isothermal air. Sealed by a coat of filler, plaster or a board, a wall has no pores.
func (p pores) impedance(w, kk float64) complex128 {
	rho := complex(p.tortuosity*rho0/p.porosity, -p.flow/w)
	k := p0 / p.porosity
	kz := csqrt(rho*complex(w*w/k, 0) - complex(kk, 0))
	if imag(kz) > 0 {
		kz = -kz
	}
	if norm(kz)*p.thick*p.thick < 1e-6 {
		return complex(0, w*p.thick) * rho
	}
	// sin(x) = (e^{jx} − e^{−jx})/2j; the growing wave is kept in bounds: e^80 lets nothing through.
	x := kz * complex(p.thick, 0)
	if imag(x) < -80 {
		x = complex(real(x), -80)
	}
	s := (cexp(complex(-imag(x), real(x))) - cexp(complex(imag(x), -real(x)))) / complex(0, 2)
	return complex(0, w) * rho / kz * s
}

// plateau returns the transmission that the thickness resonances of one thick
// wall leave above coincidence:
//
//	τp = [4ρ0c0 / (1.1·cL·ρ)]²·0.02/η,  cL = √(E/ρ), ρ = m/t
//
// (form of ISO 12354-1:2017 Annex B, from memory); 61 to 70 dB for block and concrete.
func (f *leaf) plateau(hz, young, thick float64, c *Constants) float64 {
	rho := f.mass / thick
	x := 4 * airSpeed / (1.1 * math.Sqrt(young*rho))
	return x * x * c.Plateau / f.damping(hz)
}
