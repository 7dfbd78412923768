package plan

import (
	"strconv"

	"twoleaf/core/material"
)

// Table names a table of things that have an id in a plan and a short code in a link.
type Table int

// The tables.
const (
	Boards Table = iota
	Fills
	Frames
	Fixings
)

// Code returns the short code of an id; false if the table has no such id.
func (t Table) Code(id string) (string, bool) {
	switch t {
	case Boards:
		if id == material.DampingFilm {
			return filmCode, true
		}
		b, ok := material.ByID(id)
		return b.Code, ok
	case Fills:
		f, ok := material.FillByID(id)
		return f.Code, ok
	case Frames:
		f, ok := material.FrameByID(id)
		return f.Code, ok
	case Fixings:
		f, ok := material.FixingByID(id)
		return f.Code, ok
	}
	return "", false
}

// ID returns the id of a short code; false if the table has no such code.
func (t Table) ID(code string) (string, bool) {
	switch t {
	case Boards:
		if code == filmCode {
			return material.DampingFilm, true
		}
		b, ok := material.ByCode(code)
		return b.ID, ok
	case Fills:
		f, ok := material.FillByCode(code)
		return f.ID, ok
	case Frames:
		f, ok := material.FrameByCode(code)
		return f.ID, ok
	case Fixings:
		f, ok := material.FixingByCode(code)
		return f.ID, ok
	}
	return "", false
}

// filmCode stands for the damping film on the shelf; no board has a code of one letter.
const filmCode = "f"

// Renumbered returns the plan with ids given anew in order, s1, b1, l1, g1, c1 …,
// as a plan that comes out of a link has them. References go along; one that led
// nowhere still does. It shares nothing with p that is changed.
func Renumbered(p Plan) Plan {
	next := map[string]int{}
	id := func(kind string) string {
		next[kind]++
		return kind + strconv.Itoa(next[kind])
	}
	layers := func(list []Layer) []Layer {
		out := append([]Layer(nil), list...)
		for i := range out {
			out[i].ID = id("l")
		}
		return out
	}
	buildUps := make([]BuildUp, 0, len(p.BuildUps))
	names := map[string]string{}
	for _, b := range p.BuildUps {
		old := b.ID
		b.ID = id("b")
		if _, twice := names[old]; !twice {
			names[old] = b.ID
		}
		leaves := make([]Leaf, 0, len(b.Leaves))
		for _, l := range b.Leaves {
			leaves = append(leaves, Leaf{Layers: layers(l.Layers)})
		}
		b.Leaves = leaves
		b.Gaps = append([]Gap(nil), b.Gaps...)
		for i := range b.Gaps {
			b.Gaps[i].ID = id("g")
		}
		b.Compare.Reference = layers(b.Compare.Reference)
		rows := append([]Candidate(nil), b.Compare.Rows...)
		for i := range rows {
			rows[i] = Candidate{ID: id("c"), Layers: layers(rows[i].Layers)}
		}
		b.Compare.Rows = rows
		buildUps = append(buildUps, b)
	}
	surfaces := make([]Surface, 0, len(p.Surfaces))
	for _, s := range p.Surfaces {
		s.ID = id("s")
		if to, ok := names[s.BuildUp]; ok {
			s.BuildUp = to
		}
		s.Openings = append([]Opening(nil), s.Openings...)
		for i := range s.Openings {
			s.Openings[i].ID = id("o")
		}
		s.Hung = append([]Hung(nil), s.Hung...)
		for i := range s.Hung {
			s.Hung[i].ID = id("h")
		}
		surfaces = append(surfaces, s)
	}
	p.BuildUps, p.Surfaces = buildUps, surfaces
	p.Shelf = append([]Shelf(nil), p.Shelf...)
	return p
}
