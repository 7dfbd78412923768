// Package transmission computes the transmission loss of a build-up of one to
// four leaves with any boards, gaps, frames and fixings, from 50 to 5000 Hz
// (31.5 and 40 Hz are extrapolation), as a laboratory would find it.
//
// One effect a file: plate (boards, coincidence), laminate (film, glue),
// masonry (pores, plateau), cavity (air and fill), mobility (a leaf as a frame
// meets it), bridge (frames and fixings), window (finite size), perimeter (held
// edges), solve (the sums), grid and tables (where and what is kept), number
// (functions with the same digits everywhere), constants (every number of the
// method, with unit, bounds and origin).
//
// # Symbols
//
// f frequency, ω = 2πf, k0 = ω/c0; θ angle of incidence, μ = cosθ, k = k0·sinθ
// trace wavenumber, φ azimuth from the studs; m mass and B bending stiffness
// per area and width, η loss factor, fc critical frequency, kB = (ω²m/B)^¼;
// d depth of a gap; b spacing of lines, n lines per metre or points per m²;
// ⟨·⟩ the mean over the half-space, ∫₀¹dμ. Time goes as e^{jωt}.
//
// # The system
//
// For one frequency and direction the leaves' velocities obey A·v = r with a
// symmetric tridiagonal A: on the diagonal each leaf's impedance Z, the gaps'
// Za and the bridges' n·s, and ρ0c0σ on the first and last leaf; beside it
// −(Zb + n·s). An incident wave of unit pressure gives r = 2 on the first leaf,
// σ is the radiation efficiency of a face of finite size. Each bridge is a
// symmetric two-port S of springs, frame mass and the leaves' mobilities Y
// without their uniform part. Hence the transmission of the uniform motion
//
//	τu = 8(ρ0c0)²·∫ |A⁻¹1N|²·σ dμ
//
// # The bridges' own waves, and reciprocity
//
// A bridge also scatters: at every line or point the forces f = −S·v act on
// both leaves beside it and send out waves of other directions. With the
// columns of A⁻¹ at those two leaves, h for the incident side and g for the
// receiving side, a wave k leaves as a wave k′ in proportion to gᵀ(k′)·S·h(k).
// A is symmetric, so the same number holds with the two sides exchanged. The
// directions of a diffuse field and those into which a force radiates carry
// the same weight dμ: dkx·dky/μ of radiated power is k0² times the solid angle.
// Taken over both,
//
//	τb = 8ρ0c0·n·a·G·⟨⟨|gᵀ·S·h|²⟩⟩,  G = ρ0c0·k0/2 (line), ρ0c0·k0²/2π (point)
//
// where ⟨⟨·⟩⟩ needs only the 2×2 means of h·hᴴ and g·gᴴ. G of a line is that of
// lines of any phase along themselves. What free bending waves add is the same
// on both sides, ra and rb being what they radiate over the near field (file
// mobility; divided by ⟨|ωm/Z|²⟩, since the near field holds the coincidence):
//
//	a = w + (1+ra)(1+rb) − 1
//
// w is the share of the bridge's harmonics that can radiate; below it the
// motion is uniform and already in τu, while free waves know no such limit. A
// source leaf's free waves drive the bridge as a receiving leaf's radiate.
// Bridges in series over inner leaves: the velocities that the forces of one
// make at the next, ∫|A⁻¹|²μ dμ times k0/2 (line) or k0²/2π (point), with
// a = Πw + (1+r)…(1+r) − 1 over the leaves on the way, each once. So every
// term is the same when the build-up is turned about; a test holds all bands of
// all kinds to 1e-6 dB.
//
// # Limits
//
// Kept by TestLaw…: a limp leaf follows Sewell (1970), a stiff one Cremer
// (1942) above coincidence, rigid lines far apart Davy (1991); a bay clamped at
// both studs at low, an infinite plate at high frequency; the mass law of all
// leaves below the mass-air-mass resonance.
//
// # What it is not good for
//
// The first modes of leaves, rooms and test openings (50–80 Hz: ±6 dB); solid
// walls above 1 kHz; sealed glazing units above 500 Hz; corrugated sheet. A
// leak, flanking and the laboratory's own limit belong to others, save for a
// window's frame; see Options.Limit.
package transmission
