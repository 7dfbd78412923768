package appraise

import (
	"math"
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/material"
	"twoleaf/core/rating"
	"twoleaf/core/transmission"
	"twoleaf/core/unit"
)

// Spread is how far the figures may be off, one standard deviation, dB.
type Spread struct {
	Family  Family
	Nearest bool // none of this very kind was tested; its group stands in
	Tests   int  // rows that the residual was taken from
	Rating  float64
	Bass    float64
	Band    band.Spectrum
	// Widest is the unconfirmed input that widens it most, where inputs were moved.
	Widest Input
}

// Input names an unconfirmed input that is moved over its bounds.
type Input string

// The inputs.
const (
	ClipStiffness Input = "clip"  // dynamic stiffness of a clip, × 2 and ÷ 2
	FilmModulus   Input = "film"  // shear modulus of a damping film, × 2 and ÷ 2
	BoardModulus  Input = "board" // modulus of every board, ± 20 %
	FillFlow      Input = "fill"  // flow resistivity of the fill, × 2 and ÷ 2
)

const (
	enough     = 10   // rows from which a residual speaks for itself
	floorLow   = 6.0  // least spread from 50 to 80 Hz, dB, until measured rows say otherwise
	guess      = 8.0  // of 31.5 and 40 Hz, which no laboratory of the evidence measured, dB
	ratingA    = 1.2  // laboratories among themselves, Rw, dB (ISO12999, Table 3, situation A)
	moduliBy   = 1.2  // ± 20 %
	doubled    = 2.0  // × 2 and ÷ 2
	trustedRow = "AB" // tiers that count
)

// columnA is what laboratories differ by among themselves in a band, dB, one
// standard deviation, 50 to 5000 Hz (ISO12999, Table 2, situation A).
var columnA = [...]float64{
	6.8, 4.6, 3.8, 3.0, 2.7, 2.4, 2.1, 1.8, 1.8, 1.8, 1.8,
	1.8, 1.8, 1.8, 1.8, 1.8, 1.8, 1.9, 2.0, 2.4, 2.8,
}

// SpreadOf returns the spread of a build-up's figures.
//
// With ten rows of its family or more it is what the method leaves over
// against them with each series left out, never below what laboratories differ
// by among themselves. With fewer, or for a kind that is not among the
// evidence, it is the root of the sum of squares of that residual over the
// family's group, of what moving each unconfirmed input over its bounds
// changes, and of the laboratories' own spread. A band's spread goes by the
// spectra of all walls, floors or panels likewise; from 50 to 80 Hz it is at
// least 6 dB, below 50 Hz 8 dB.
func SpreadOf(b assembly.BuildUp, rw bool, t *transmission.Tables) Spread {
	f, near := FamilyOf(b)
	own := ratingResidual(f)
	s := Spread{Family: f, Nearest: near, Tests: own.N}
	var moved movement
	if near || own.N < enough {
		group := ratingResidual(groupOf(f)...)
		s.Tests = group.N
		moved = moveInputs(b, rw, t)
		s.Widest = moved.widest
		s.Rating = math.Sqrt(sq(group.RMS) + sq(moved.rating) + sq(ratingA))
	} else {
		s.Rating = math.Max(own.RMS, ratingA)
	}
	bands := bandResidual(b)
	low, n := 0.0, 0
	for i := range s.Band {
		switch {
		case i < band.First50:
			s.Band[i] = guess
			continue
		case bands[i].N >= enough:
			s.Band[i] = math.Max(bands[i].RMS, columnA[i-band.First50])
		default:
			s.Band[i] = math.Sqrt(sq(math.Max(bands[i].RMS, s.Rating)) + sq(columnA[i-band.First50]))
		}
		if near {
			s.Band[i] = math.Hypot(s.Band[i], moved.band[i])
		}
		if i < band.First100 {
			s.Band[i] = math.Max(s.Band[i], floorLow)
		}
		if i <= band.First125 {
			low += sq(s.Band[i])
			n++
		}
	}
	// The bass is the mean of five bands whose errors go together (ISO12999, Annex B, takes them as correlated).
	s.Bass = math.Sqrt(low / float64(n))
	return s
}

func sq(x float64) float64 { return x * x }

func ratingResidual(of ...Family) evidence.Residual {
	return evidence.RatingResidual(func(kind, tier string) bool {
		return (tier == "" || len(tier) == 1 && slices.Contains([]byte(trustedRow), tier[0])) && slices.Contains(of, Family(kind))
	})
}

// bandResidual goes by the spectra of what a build-up is: panels, panes, floors or walls.
func bandResidual(b assembly.BuildUp) [band.Count]evidence.Residual {
	switch {
	case len(b.Leaves) == 1 && !masonry(b.Leaves[0]):
		return evidence.BandResidual("single panel", "window single")
	case pane(b.Leaves[0]):
		return evidence.BandResidual("window")
	case b.Horizontal:
		return evidence.BandResidual("floor", "wall wood", "wall steel")
	case masonry(b.Leaves[0]):
		return evidence.BandResidual("wall block", "wall brick")
	}
	return evidence.BandResidual("wall wood", "wall steel")
}

// movement is what moving the unconfirmed inputs changes, root sum of squares, dB.
type movement struct {
	rating float64
	band   band.Spectrum
	widest Input
}

// moveInputs moves each unconfirmed input of a build-up up and down and takes
// the larger change of the two, at ranking accuracy: differences of one grid.
func moveInputs(b assembly.BuildUp, rw bool, t *transmission.Tables) movement {
	var m movement
	most := 0.0
	loss := func(c assembly.BuildUp) (band.Spectrum, bool) {
		tl, err := transmission.Loss(c, transmission.Ranking, t)
		return tl, err == nil
	}
	base, ok := loss(b)
	if !ok {
		return m
	}
	move := func(name Input, one func(factor float64) (band.Spectrum, bool), by float64) {
		rated, bands, any := 0.0, band.Spectrum{}, false
		for _, factor := range []float64{by, 1 / by} {
			tl, ok := one(factor)
			if !ok {
				continue
			}
			any = true
			rated = math.Max(rated, math.Abs(rate(tl, rw)-rate(base, rw)))
			for i := range bands {
				bands[i] = math.Max(bands[i], math.Abs(tl[i]-base[i]))
			}
		}
		if !any {
			return
		}
		if rated > most {
			most, m.widest = rated, name
		}
		m.rating = math.Hypot(m.rating, rated)
		for i := range bands {
			m.band[i] = math.Hypot(m.band[i], bands[i])
		}
	}
	clips, films, fills := false, false, false
	for _, g := range b.Gaps {
		clips = clips || g.Near.Fixing.Kind == material.Clip || g.Far.Fixing.Kind == material.Clip
		fills = fills || g.Fill.ID != ""
	}
	for _, l := range b.Leaves {
		for i, y := range l.Layers {
			films = films || i < len(l.Layers)-1 && y.Join == assembly.Film
		}
	}
	if clips {
		move(ClipStiffness, func(factor float64) (band.Spectrum, bool) {
			c := clone(b)
			for i := range c.Gaps {
				for _, h := range []*assembly.Held{&c.Gaps[i].Near, &c.Gaps[i].Far} {
					if h.Fixing.Kind == material.Clip {
						if h.Fixing.Stiffness == 0 {
							h.Fixing.Stiffness = transmission.Defaults().Clip
						}
						h.Fixing.Stiffness *= factor
					}
				}
			}
			return loss(c)
		}, doubled)
	}
	if films {
		move(FilmModulus, func(factor float64) (band.Spectrum, bool) {
			c, _ := transmission.Defaults().With("FilmModulus", factor*transmission.Defaults().FilmModulus)
			tl, err := transmission.LossOf(b, transmission.Options{Accuracy: transmission.Ranking, Limit: transmission.LaboratoryLimit, Constants: &c}, nil)
			return tl, err == nil
		}, doubled)
	}
	move(BoardModulus, func(factor float64) (band.Spectrum, bool) {
		c := clone(b)
		for i := range c.Leaves {
			for k := range c.Leaves[i].Layers {
				c.Leaves[i].Layers[k].Board.Sound.Young *= unit.Pressure(factor)
			}
		}
		return loss(c)
	}, moduliBy)
	if fills {
		move(FillFlow, func(factor float64) (band.Spectrum, bool) {
			c := clone(b)
			for i := range c.Gaps {
				c.Gaps[i].Fill.Flow *= factor
			}
			return loss(c)
		}, doubled)
	}
	return m
}

func rate(tl band.Spectrum, rw bool) float64 {
	if rw {
		return float64(rating.Rw(tl).Rw)
	}
	return float64(rating.STC(tl).Value)
}
