package transmission

import (
	"math"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
)

// perimeter is a framed wall held at its edges: a strip there stands still, so
// that the uniform part of the motion carries less.
//
//	τ → τ·[(1−ε)² + ε²],  ε = min{ (2/H)/(α·kv) + (2/W)/(α·kh), ½ }
//	kv = (ω²M/Dv)^¼, kh = (ω²M/Dh)^¼,  M = Σm + Σmstud/b
//	Dh = ΣB, Dv = Dh + ΣEIstud/b,  α = 1 clamped
//
// from the deficit (1−j)/αk of a plate under uniform pressure per metre of held
// edge (derived). Walls with studs and no masonry only: bare boards, panes and
// masonry follow Sewell as they are.
type perimeter struct {
	held        bool
	wide, high  float64 // 2/αW, 2/αH, 1/m
	mass, studs float64 // M, kg/m²; ΣEI/b, N·m
}

const (
	woodModulus  = 9.5e9 // along the grain, Pa (from memory)
	steelModulus = 205e9 // Pa (from memory)
	flangeWidth  = 0.032 // of a C-stud, m (common practice)
	faceWidth    = 3.05  // of a laboratory's opening, m (from memory)
	faceHeight   = 2.44  // the same, m
	paneArea     = 2.2   // of a window in a laboratory, m² (calibrated against BIES2017, HARRIS1995)
)

func newPerimeter(b *assembly.BuildUp, leaves []leaf, c *Constants) perimeter {
	width, height := float64(b.Width), float64(b.Height)
	if width <= 0 || height <= 0 {
		width, height = faceWidth, faceHeight
	}
	p := perimeter{wide: 2 / (c.PerimeterHold * width), high: 2 / (c.PerimeterHold * height)}
	if b.Horizontal || len(leaves) < 2 {
		return p
	}
	for _, f := range leaves {
		if f.masonry {
			return p
		}
		p.mass += f.mass
	}
	for i := range b.Gaps {
		g := &b.Gaps[i]
		s := float64(g.Spacing)
		if !framedWall(g.Frame.Kind) || s <= 0 {
			continue
		}
		rows := 1.0
		if g.Frame.Kind == material.Double {
			rows = 2
		}
		p.held = true
		p.mass += rows * float64(g.Frame.Mass) / s
		p.studs += rows * bendingOfStud(&g.Frame) / s
	}
	return p
}

// bendingOfStud returns EI of one member, N·m²: E·w·d³/12 of wood,
// E·[t·d³/12 + 2·0.032·t·(d/2)²] of a C-section.
func bendingOfStud(f *material.Frame) float64 {
	d, w, t := float64(f.Depth), float64(f.Width), float64(f.Sheet)
	if t > 0 {
		return steelModulus * (t*d*d*d/12 + 2*flangeWidth*t*d*d/4)
	}
	return woodModulus * w * d * d * d / 12
}

// keeps returns (1−ε)² + ε² at ω for leaves of ΣB together.
func (p *perimeter) keeps(w, across float64) float64 {
	if !p.held {
		return 1
	}
	inertia := 1 / (w * w * p.mass)
	e := p.high*math.Sqrt(math.Sqrt((across+p.studs)*inertia)) + p.wide*math.Sqrt(math.Sqrt(across*inertia))
	e = min(e, 0.5)
	return (1-e)*(1-e) + e*e
}
