package plan

import (
	"fmt"
	"slices"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// maxFaults bounds how many faults are told at once: a page shows one a field.
const maxFaults = 60

// Check returns everything that is wrong with a plan, each once, in the order
// surfaces, build-ups, shelf: none for a plan whose every surface can be
// computed. A plan of absurd size is refused by its counts alone.
func Check(p Plan) []*Fault {
	whole := place{f: Fault{Leaf: -1}}
	c := checker{}
	if f := p.tooBig(whole); len(f) > 0 {
		return f
	}
	if p.Format != Format {
		c.add(whole.fault("format", "format", fmt.Sprint(p.Format), fmt.Sprintf("the plan's format is %d, not %d", p.Format, Format)))
	}
	if !slices.Contains([]Region{US, CA, UK, EU, AU}, p.Region) {
		c.add(whole.unknown("region", string(p.Region)))
	}
	if p.Units != Customary && p.Units != Metric {
		c.add(whole.unknown("units", string(p.Units)))
	}
	if p.Prices != NoPrices && p.Prices != DemoPrices {
		c.add(whole.unknown("prices", string(p.Prices)))
	}
	c.name(whole, "name", p.Name, MaxName)
	c.name(whole, "notes", p.Notes, MaxNotes)
	c.name(whole, "source", p.Source, MaxName)
	var level []*Fault
	whole.read(&level, "level", p.Level, unit.OfCount, levelRange, false)
	c.add(level...)
	c.ids(&p, whole)
	for _, s := range p.Surfaces {
		at := place{f: Fault{Leaf: -1, Surface: s.ID}, words: nameOf(s)}
		c.name(at, "name", s.Name, MaxName)
		c.name(at, "beyond", s.Beyond, MaxName)
		c.name(at, "listener", s.Listener, MaxName)
		if !slices.Contains([]SurfaceKind{Wall, Ceiling, Floor}, s.Kind) {
			c.add(at.unknown("kind", string(s.Kind)))
		}
		for _, h := range s.Hung {
			c.name(at, "name", h.Name, MaxName)
		}
		for _, o := range s.Openings {
			c.name(at, "opening", o.Kind, MaxName)
			c.name(at, "seal", o.Seal, MaxName)
		}
		_, faults := Resolve(p, s.ID)
		c.add(faults...)
	}
	for _, b := range p.BuildUps {
		c.buildUp(&p, b)
	}
	for _, s := range p.Shelf {
		if s.Board == material.DampingFilm {
			at := place{f: Fault{Leaf: -1, Board: s.Board}, words: "shelf, damping film"}
			s.PriceArea = true
			var faults []*Fault
			p.priced(material.Board{}, s, at, &faults)
			c.add(faults...)
			continue
		}
		_, faults := BoardHere(p, s.Board)
		c.add(faults...)
	}
	return c.faults
}

type checker struct{ faults []*Fault }

// add keeps a fault unless the same one was told of another place: a board of
// the shelf is wrong once, however many layers are made of it.
func (c *checker) add(faults ...*Fault) {
	for _, f := range faults {
		if len(c.faults) >= maxFaults {
			return
		}
		if !slices.ContainsFunc(c.faults, func(o *Fault) bool { return repeats(o, f) }) {
			c.faults = append(c.faults, f)
		}
	}
}

func repeats(a, b *Fault) bool {
	if a.Code != b.Code || a.Field != b.Field || a.Typed != b.Typed {
		return false
	}
	if a.Board != "" && a.Board == b.Board {
		return true
	}
	return a.Surface == b.Surface && a.BuildUp == b.BuildUp && a.Leaf == b.Leaf && a.Layer == b.Layer && a.Gap == b.Gap && a.Board == b.Board && a.Item == b.Item
}

func (c *checker) name(at place, field, text string, most int) {
	if n := len([]rune(text)); n > most {
		f := at.fault("large", field, text, fmt.Sprintf("%s is %d characters long; at most %d", word(field), n, most))
		f.High = fmt.Sprint(most)
		c.add(f)
	}
}

// tooBig returns a fault for every list that is too long or empty.
func (p *Plan) tooBig(at place) (faults []*Fault) {
	for _, l := range []struct {
		field   string
		n, most int
		need    bool
	}{
		{"surfaces", len(p.Surfaces), MaxSurfaces, true},
		{"buildUps", len(p.BuildUps), MaxBuildUps, true},
		{"shelf", len(p.Shelf), MaxShelf, false},
		{"spaces", len(p.Spaces), MaxSpaces, false},
		{"playing", len(p.Also), MaxPlaying, false},
		{"measured", len(p.Measured), MaxMeasured, false},
	} {
		switch {
		case l.n > l.most:
			faults = append(faults, at.tooMany(l.field, l.n, l.most))
		case l.n == 0 && l.need:
			f := at.fault("missing", l.field, "", "a plan needs at least one of its "+word(l.field))
			f.Low = "1"
			faults = append(faults, f)
		}
	}
	if b := p.Buying; b != nil && len(b.Costs) > MaxCosts {
		faults = append(faults, at.tooMany("costs", len(b.Costs), MaxCosts))
	}
	for _, s := range p.Spaces {
		if n := len(s.Noise); n > MaxPlaying {
			faults = append(faults, at.tooMany("playing", n, MaxPlaying))
		}
	}
	if len(faults) > 0 {
		return faults
	}
	for _, s := range p.Surfaces {
		here := place{f: Fault{Leaf: -1, Surface: s.ID}, words: nameOf(s)}
		if n := len(s.Openings); n > MaxOpenings {
			faults = append(faults, here.tooMany("openings", n, MaxOpenings))
		}
		if n := len(s.Hung); n > MaxHung {
			faults = append(faults, here.tooMany("hung", n, MaxHung))
		}
		if n := len(s.Clips); n > MaxSpots {
			faults = append(faults, here.tooMany("clips", n, MaxSpots))
		}
		for _, o := range s.Openings {
			if n := len(o.Octaves); n > octaves {
				faults = append(faults, here.tooMany("octaves", n, octaves))
			}
		}
	}
	for _, m := range p.Measured {
		if n := max(len(m.In), len(m.Out)); n > octaves {
			faults = append(faults, at.tooMany("octaves", n, octaves))
		}
	}
	for i := range p.BuildUps {
		b := &p.BuildUps[i]
		here := place{f: Fault{Leaf: -1, BuildUp: b.ID}, words: p.buildUpName(b)}
		if n := len(b.Leaves); n > assembly.MaxLeaves {
			faults = append(faults, here.tooMany("leaves", n, assembly.MaxLeaves))
		}
		if n := len(b.Gaps); n > assembly.MaxLeaves {
			faults = append(faults, here.tooMany("gaps", n, assembly.MaxLeaves-1))
		}
		if n := len(b.Compare.Rows); n > MaxRows {
			faults = append(faults, here.tooMany("candidates", n, MaxRows))
		}
		for j, l := range b.Leaves {
			if n := len(l.Layers); n > assembly.MaxLayers && j < assembly.MaxLeaves {
				leaf := here
				leaf.f.Leaf = j
				leaf.words = fmt.Sprintf("%s, leaf %d", here.words, j+1)
				faults = append(faults, leaf.tooMany("layers", n, assembly.MaxLayers))
			}
		}
	}
	return faults
}

// buildUpName is how a build-up is called: by itself, else by the surface it belongs to.
func (p *Plan) buildUpName(b *BuildUp) string {
	for _, s := range p.Surfaces {
		if s.BuildUp == b.ID {
			return nameOf(s)
		}
	}
	if b.Name != "" {
		return clip(b.Name)
	}
	return "build-up " + clip(b.ID)
}

// ids checks that every id is there, short, and the only one of its kind.
func (c *checker) ids(p *Plan, whole place) {
	unique := func(at place, seen map[string]bool, id string) {
		switch {
		case id == "":
			c.add(at.fault("missing", "id", "", "an id is missing"))
		case len(id) > MaxID:
			c.add(at.fault("large", "id", id, "an id is too long"))
		case seen[id]:
			c.add(at.fault("twice", "id", id, fmt.Sprintf("the id “%s” is there twice", clip(id))))
		}
		seen[id] = true
	}
	surfaces, buildUps, shelf := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, s := range p.Surfaces {
		at := place{f: Fault{Leaf: -1, Surface: s.ID}, words: nameOf(s)}
		unique(at, surfaces, s.ID)
		openings, hung := map[string]bool{}, map[string]bool{}
		for _, o := range s.Openings {
			unique(at, openings, o.ID)
		}
		for _, h := range s.Hung {
			unique(at, hung, h.ID)
		}
	}
	spaces := map[string]bool{}
	for _, s := range p.Spaces {
		unique(place{f: Fault{Leaf: -1, Item: s.Name}, words: clip(s.Name)}, spaces, s.Name)
	}
	for i := range p.BuildUps {
		b := &p.BuildUps[i]
		at := place{f: Fault{Leaf: -1, BuildUp: b.ID}, words: p.buildUpName(b)}
		unique(at, buildUps, b.ID)
		layers, gaps, rows := map[string]bool{}, map[string]bool{}, map[string]bool{}
		for j, l := range b.Leaves {
			here := at
			here.f.Leaf = j
			here.words = fmt.Sprintf("%s, leaf %d", at.words, j+1)
			for k, y := range l.Layers {
				this := here
				this.f.Layer = y.ID
				this.words = fmt.Sprintf("%s, layer %d", here.words, k+1)
				unique(this, layers, y.ID)
			}
		}
		for _, g := range b.Gaps {
			here := at
			here.f.Gap = g.ID
			here.words = at.words + ", gap"
			unique(here, gaps, g.ID)
		}
		for _, r := range b.Compare.Rows {
			unique(at, rows, r.ID)
		}
	}
	for _, s := range p.Shelf {
		unique(place{f: Fault{Leaf: -1, Board: s.Board}, words: "shelf"}, shelf, s.Board)
	}
}

// buildUp checks what Resolve of a surface has not seen: names, build-ups of no
// surface, and the layers of side by side.
func (c *checker) buildUp(p *Plan, b BuildUp) {
	at := place{f: Fault{Leaf: -1, BuildUp: b.ID}, words: p.buildUpName(&b)}
	c.name(at, "name", b.Name, MaxName)
	if !slices.ContainsFunc(p.Surfaces, func(s Surface) bool { return s.BuildUp == b.ID }) {
		_, faults := p.resolve(Surface{Kind: Wall}, b, at)
		c.add(faults...)
	}
	r := Resolved{BuildUp: b, Boards: map[string]Here{}, plan: p}
	list := func(name string, layers []Layer) {
		here := at
		here.words += ", " + name
		if len(layers) == 0 || len(layers) > assembly.MaxLayers {
			_, faults := r.leaf(layers, b.Compare.Leaf, here)
			c.add(faults...)
			return
		}
		for _, y := range layers {
			here.f.Layer = y.ID
			if _, known := material.ByID(y.Board); !known {
				c.add(here.unknown("board", y.Board))
			}
			if j := assembly.Join(y.Join); j != assembly.Loose && j != assembly.Glued && j != assembly.Film {
				c.add(here.unknown("join", y.Join))
			}
		}
	}
	if len(b.Compare.Reference) > 0 {
		list("reference", b.Compare.Reference)
	}
	for i, row := range b.Compare.Rows {
		list(fmt.Sprintf("row %d side by side", i+1), row.Layers)
	}
}
