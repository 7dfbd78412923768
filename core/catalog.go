package core

import (
	"twoleaf/core/load"
	"twoleaf/core/material"
	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/unit"
)

// BoardReport is one board of a search.
type BoardReport struct {
	ID        string           `json:"id"`
	Short     string           `json:"short"`
	Row       string           `json:"row"`
	Brief     string           `json:"brief"`
	Nominal   string           `json:"nominal"`
	Name      string           `json:"name"`
	Kind      material.Kind    `json:"kind"`
	Region    string           `json:"region"`
	Thickness unit.Length      `json:"thickness"`
	Mass      unit.SurfaceMass `json:"mass"`
	Low       unit.SurfaceMass `json:"low"`
	High      unit.SurfaceMass `json:"high"`
	Density   float64          `json:"density"`
	Weight    unit.Mass        `json:"weight"` // of the first sheet as sold, 0 if none
	Sheets    []string         `json:"sheets"`
	FireRated bool             `json:"fireRated"`
	Wood      bool             `json:"wood"`
	Built     bool             `json:"built"` // masonry: no sheet, no tag
	Source    string           `json:"source"`
	Origin    string           `json:"origin"`
	Assumed   string           `json:"assumed"` // what its sound was taken to be like
}

// searchBoards returns the boards of a region that a query finds, best first;
// an empty query lists them all.
func searchBoards(query string, region plan.Region) []BoardReport {
	found := material.InRegion(string(region))
	if query != "" {
		found = material.Search(query, string(region))
	}
	out := make([]BoardReport, 0, len(found))
	for _, b := range found {
		r := BoardReport{
			ID: b.ID, Short: b.Short, Row: b.Row, Brief: b.Brief, Nominal: b.Nominal, Name: b.Name, Kind: b.Kind, Region: b.Region,
			Thickness: b.Thickness, Mass: b.Mass, Low: b.MassLow, High: b.MassHigh,
			Density: float64(b.Mass) / float64(b.Thickness),
			Weight:  unit.Mass(float64(b.Mass) * float64(b.Area())),
			Sheets:  sizeTexts(b), FireRated: b.FireRated, Wood: b.Kind.Wood(), Built: b.Kind.Masonry(),
			Source: b.Source, Origin: b.Origin, Assumed: b.Sound.Assumed,
		}
		out = append(out, r)
	}
	return out
}

// sizeTexts returns the sizes a board is sold in, as the trade writes them.
func sizeTexts(b material.Board) []string {
	out := make([]string, 0, len(b.Sizes))
	for i, q := range b.Sizes {
		if b.Sheets[i].Length > 0 {
			out = append(out, string(q))
		}
	}
	return out
}

// Catalog is what a region's gaps are made of, and who may play and listen.
type Catalog struct {
	Frames    []FrameReport  `json:"frames"`
	Fills     []FillReport   `json:"fills"`
	Fixings   []FixingReport `json:"fixings"`
	Sources   []LevelReport  `json:"sources"`   // with the level they have of their own
	Listeners []LevelReport  `json:"listeners"` // with the level that does not disturb them
	Noises    []LevelReport  `json:"noises"`    // what the house does
	Kinds     []room.Kind    `json:"kinds"`     // of opening
	Flanks    []room.Flank   `json:"flanks"`    // what a surface may share with the house
	Timbers   []string       `json:"timbers"`   // ids of the region's joists
}

// LevelReport is a source or a listener with its A-weighted level.
type LevelReport struct {
	ID     string  `json:"id"`
	Level  float64 `json:"level"` // dB
	Source string  `json:"source"`
}

// FrameReport is one frame.
type FrameReport struct {
	ID       string             `json:"id"`
	Name     string             `json:"name"`
	Kind     material.FrameKind `json:"kind"`
	Depth    unit.Length        `json:"depth"`
	Plate    unit.Length        `json:"plate"`
	Width    unit.Length        `json:"width"`
	Spacings []unit.Length      `json:"spacings"`
	Source   string             `json:"source"`
}

// FillReport is one fill.
type FillReport struct {
	ID     string        `json:"id"`
	Name   string        `json:"name"`
	Depths []unit.Length `json:"depths"`
	Source string        `json:"source"`
}

// FixingReport is one fixing with its usual grid.
type FixingReport struct {
	ID       string              `json:"id"`
	Name     string              `json:"name"`
	Kind     material.FixingKind `json:"kind"`
	StandOff unit.Length         `json:"standOff"`
	Rows     unit.Length         `json:"rows"`
	Along    unit.Length         `json:"along"`
	Source   string              `json:"source"`
}

func catalog(region plan.Region) Catalog {
	c := Catalog{Frames: []FrameReport{}, Fills: []FillReport{}, Fixings: []FixingReport{}}
	for _, s := range room.Sources() {
		c.Sources = append(c.Sources, LevelReport{s.ID, room.DBA(s.Levels), "common practice"})
	}
	for _, s := range room.Noises() {
		c.Noises = append(c.Noises, LevelReport{s.ID, room.DBA(s.Levels), "common practice"})
	}
	c.Kinds, c.Flanks = room.Kinds(), room.Flanks()
	table := material.TableRegion(string(region))
	for _, t := range load.Timbers() {
		if t.Region == table {
			c.Timbers = append(c.Timbers, t.ID)
		}
	}
	for _, l := range room.Listeners() {
		c.Listeners = append(c.Listeners, LevelReport{l.ID, l.DBA, l.Source})
	}
	for _, f := range material.Frames(string(region)) {
		c.Frames = append(c.Frames, FrameReport{f.ID, f.Name, f.Kind, f.Depth, f.Plate, f.Width, f.Spacings, f.Source})
	}
	for _, f := range material.Fills(string(region)) {
		c.Fills = append(c.Fills, FillReport{f.ID, f.Name, f.Depths, f.Source})
	}
	for _, f := range material.Fixings() {
		rows, along := f.UsualGrid(string(region))
		c.Fixings = append(c.Fixings, FixingReport{f.ID, f.Name, f.Kind, f.StandOff, rows, along, f.Source})
	}
	return c
}
