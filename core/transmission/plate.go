package transmission

import (
	"math"
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// least is the bending stiffness below which a leaf is limp, N·m: that of
// loaded vinyl is some 1e-3. It keeps mobilities finite.
const least = 1e-5

// leaf is what the method needs to know of boards that move as one. It is
// comparable and is the key of the leaf's tables.
type leaf struct {
	mass    float64 // m, kg/m²
	stiff   float64 // B of the boards by themselves, N·m, azimuth mean of √B
	loss    float64 // loss factor of the boards, Im B / Re B
	edge    float64 // edge loss at 100 Hz, falling as 1/√f
	shear   float64 // Gs = κ²Gh, N/m
	ratio   float64 // √(Bx/By)
	masonry bool
	glass   bool
	pores   pores    // of an unsealed porous wall
	film    laminate // what joints add to the stiffness
}

// plate returns the bending stiffness of one board per width, N·m:
//
//	B = E·t³ / 12(1−ν²)
//
// a thin isotropic plate; E is the effective modulus, of which the azimuth mean of √B holds.
func plate(b material.Board) float64 {
	t, nu := float64(b.Thickness), b.Sound.Nu
	return max(float64(b.Sound.Young)*t*t*t/(12*(1-nu*nu)), least)
}

// Critical returns the critical (coincidence) frequency of a board by itself, Hz:
//
//	fc = (c0²/2π)·√(m/B)
//
// with the effective isotropic stiffness (Cremer 1942); see Coincidences for the range of an orthotropic one.
func Critical(b material.Board) float64 { return critical(float64(b.Mass), plate(b)) }

func critical(mass, stiff float64) float64 { return c0 * c0 / (2 * pi) * math.Sqrt(mass/stiff) }

// along returns √(Bx/By), at least 1.
func along(s material.Sound) float64 {
	if s.Ratio > 1 {
		return math.Sqrt(s.Ratio)
	}
	return 1
}

// orthotropy returns B(φ)/B for √(Bx/By) = q:
//
//	B(φ) = (√Bx·cos²φ + √By·sin²φ)²,  √Bx + √By = 2√B
//
// φ is counted from the studs, along which the boards' stiffer way is taken to lie.
func orthotropy(q, cos2 float64) float64 {
	s := 2 * (1 + (q-1)*cos2) / (1 + q)
	return s * s
}

// newLeaf gathers the layers of a leaf. Masses and, where boards are screwed
// together dry, stiffnesses add; sums are taken in the order of size, so that
// the order of dry layers changes no digit.
func newLeaf(l assembly.Leaf, c *Constants) leaf {
	var stiffs, losses, shears, ratios, masses [assembly.MaxLayers]float64
	n := len(l.Layers)
	f := leaf{mass: float64(l.Mass()), glass: true}
	loose := false
	for i, y := range l.Layers {
		b := y.Board
		s := plate(b)
		stiffs[i] = s
		losses[i] = s * b.Sound.Loss
		ratios[i] = s * along(b.Sound)
		masses[i] = float64(b.Mass)
		kept := b.Sound.Shear
		if kept <= 0 {
			kept = 1
		}
		// Gs = κ²·G·h with κ² = 5/6, G = E/2(1+ν) (Mindlin 1951, static).
		shears[i] = 5.0 / 6 * float64(b.Sound.Young) / (2 * (1 + b.Sound.Nu)) * float64(b.Thickness) * kept
		f.masonry = f.masonry || b.Kind.Masonry()
		f.glass = f.glass && pane(b.Kind)
		loose = loose || i < n-1 && y.Join == assembly.Loose
	}
	f.stiff = sum(stiffs[:n])
	f.loss = sum(losses[:n]) / f.stiff
	f.ratio = max(1, sum(ratios[:n])/f.stiff)
	f.shear = max(sum(shears[:n]), 1)
	if loose {
		f.loss += c.StackLoss
	}
	f.edge = min(max(c.EdgeLoss, f.mass/c.EdgeMass), c.EdgeCap)
	if n == 1 && l.Layers[0].Board.Sound.Flow > 0 {
		f.pores = pores{l.Layers[0].Board.Sound.Flow, float64(l.Layers[0].Board.Thickness), c.Porosity, c.Tortuosity}
	}
	f.film = newLaminate(l.Layers, c)
	if glued := f.film.rigid(); glued > 0 {
		f.stiff, f.loss = f.stiff+glued, sum(losses[:n])/sum(stiffs[:n])
		if loose {
			f.loss += c.StackLoss
		}
		f.film = laminate{}
	}
	return f
}

func pane(k material.Kind) bool { return k == material.Glass || k == material.Laminated }

// sum adds in the order of size.
func sum(parts []float64) float64 {
	slices.Sort(parts)
	total := 0.0
	for _, p := range parts {
		total += p
	}
	return total
}

// damping returns the loss factor at a frequency, beside a film's.
func (f *leaf) damping(hz float64) float64 { return f.loss + f.edge*math.Sqrt(100/hz) }

// bending returns B(1+jη) at a frequency and a wavenumber along the plate, without orthotropy, N·m.
func (f *leaf) bending(hz, k2 float64) complex128 {
	b := complex(f.stiff, f.stiff*f.damping(hz))
	if f.film.n > 0 {
		b += f.film.stiffness(hz, k2)
	}
	return b
}

// free returns B and η at the wavenumber of free bending waves, kB = (ω²m/B)^¼.
func (f *leaf) free(hz float64) (stiff, loss float64) {
	w := 2 * pi * hz
	b := f.bending(hz, w*math.Sqrt(f.mass/f.stiff))
	if f.film.n > 0 {
		for range 8 { // B falls as k rises, so this closes in
			b = f.bending(hz, w*math.Sqrt(f.mass/real(b)))
		}
	}
	return real(b), imag(b) / real(b)
}

// impedance returns the leaf's own impedance at trace wavenumber k, Pa·s/m:
//
//	Z = jωm + B(1+jη)·k⁴ / [(1 + B·k²/Gs)·jω]
//
// in parallel with the pores of an unsealed wall. kk is k², cos2 is cos²φ.
func (f *leaf) impedance(hz, kk, cos2 float64) complex128 {
	w := 2 * pi * hz
	b := f.bending(hz, kk) * complex(orthotropy(f.ratio, cos2), 0)
	z := complex(0, w*f.mass) + b*complex(kk*kk, 0)/(complex(1+real(b)*kk/f.shear, 0)*complex(0, w))
	if f.pores.flow > 0 {
		through := f.pores.impedance(w, kk)
		z = z * through / (z + through)
	}
	return z
}

// Coincidence is where a leaf, or one board of it by itself, has its critical frequency.
type Coincidence struct {
	Leaf    int
	Layers  []int // of the leaf, those of the same board
	ID      string
	Board   material.Board
	Low     unit.Frequency // least and greatest over azimuth
	Central unit.Frequency // of the effective isotropic stiffness
	High    unit.Frequency
}

// Coincidences returns the critical frequency of every board of a build-up by
// itself, board by board of each leaf, alike ones together: boards screwed
// together dry keep it, since masses and stiffnesses add alike. The range is
// that of an orthotropic board,
//
//	fc(φ) = fc·√(B/B(φ))
//
// with B(φ) = (√Bx·cos²φ + √By·sin²φ)².
func Coincidences(b assembly.BuildUp) []Coincidence {
	var all []Coincidence
	for i, l := range b.Leaves {
		first := len(all)
	layers:
		for j, y := range l.Layers {
			for k := first; k < len(all); k++ {
				if all[k].ID == y.Board.ID && all[k].Board.Mass == y.Board.Mass && all[k].Board.Thickness == y.Board.Thickness {
					all[k].Layers = append(all[k].Layers, j)
					continue layers
				}
			}
			fc, q := Critical(y.Board), along(y.Board.Sound)
			all = append(all, Coincidence{
				Leaf: i, Layers: []int{j}, ID: y.Board.ID, Board: y.Board,
				Low:     unit.Frequency(fc / math.Sqrt(orthotropy(q, 1))),
				Central: unit.Frequency(fc),
				High:    unit.Frequency(fc / math.Sqrt(orthotropy(q, 0))),
			})
		}
	}
	return all
}
