package evidence

import (
	_ "embed"
	"math"
	"strconv"
	"strings"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
	"twoleaf/core/internal/text"
	"twoleaf/core/material"
)

// What the reader has made of the tables, written by core/internal/preread.
//
//go:generate go run twoleaf/core/internal/preread
//go:embed preread.csv
var prereadCSV string

// preread is the rows of the tables as they were read, and what the method left
// over against them with each series left out.
type preread struct {
	tests   []Test
	views   []view
	ratings []leftover
	bands   []leftover
	thirds  map[string]band.Spectrum
	octaves map[string][len(band.Octaves)]float64
}

var prereadTable once[preread]

// known returns the pre-read table. Its lines, told by their first field, are
//
//	board     id, short, kind, fire, source of its sound, source, origin, thickness, mass, E, ν, η, Bx/By, shear, flow
//	leaf      numbers of its boards, each with g or f behind it if glued or with film to the next
//	frame     id, or nothing and then kind, source, origin, depth, plate, width, sheet, mass
//	held      fixing, rows, along, shorts
//	gap       fill, frame, held near, held far, spacing, depth, depth of the fill
//	assumed   a sentence
//	row       id, source, table, description, kind, tier, assumed, lies flat, STC, STC left out, width, height,
//	          then its constructions: leaf, gap, leaf …
//	computed  id, thirds left out
//	thirds    id, kind, tier, bands as measured
//	octaves   the same
//
// in SI, counted from 0, in the order in which they are needed.
func known() *preread {
	prereadTable.get(func() (p preread) {
		p.read()
		return p
	})
	return &prereadTable.v
}

// fields is what is left of a line of the table.
type fields []string

// texts takes the next fields as they are.
func (f *fields) texts(to ...*string) {
	for _, t := range to {
		*t, *f = (*f)[0], (*f)[1:]
	}
}

// numbers takes the next fields as numbers, an empty one as what it stands for.
func (f *fields) numbers(empty float64, to ...*float64) {
	for _, t := range to {
		*t = empty
		if s := (*f)[0]; s != "" {
			*t = must(strconv.ParseFloat(s, 64))
		}
		*f = (*f)[1:]
	}
}

// bands takes as many as there are places for, NaN where none was printed.
func (f *fields) bands(to []float64) {
	for i := range to {
		f.numbers(missing, &to[i])
	}
}

// wholes are the numbers of a field, parted by spaces.
func wholes(s string) (out []int) {
	for _, w := range strings.Fields(s) {
		out = append(out, must(strconv.Atoi(w)))
	}
	return out
}

func (p *preread) read() {
	p.thirds, p.octaves = map[string]band.Spectrum{}, map[string][len(band.Octaves)]float64{}
	var boards []assembly.Layer
	var leaves []assembly.Leaf
	var frames []material.Frame
	var holds []assembly.Held
	var gaps []assembly.Gap
	var assumed []string
	computed := map[string]band.Spectrum{}
	for _, line := range must(text.Records(prereadCSV)) {
		f := fields(line[1:])
		var id, kind, tier string
		f.texts(&id)
		switch line[0] {
		case "board":
			var y assembly.Layer
			var fire string
			b := &y.Board
			s := &b.Sound
			b.ID, b.Name = id, id
			f.texts(&b.Short, (*string)(&b.Kind), &fire, &s.Source, &b.Source, &b.Origin)
			f.numbers(0, (*float64)(&b.Thickness), (*float64)(&b.Mass), (*float64)(&s.Young), &s.Nu, &s.Loss, &s.Ratio, &s.Shear, &s.Flow, &s.Faces)
			b.FireRated = fire != ""
			boards = append(boards, y)
		case "leaf":
			var l assembly.Leaf
			for _, w := range strings.Fields(id) {
				join := assembly.Loose
				at := strings.TrimRight(w, "gf")
				switch w[len(at):] {
				case "g":
					join = assembly.Glued
				case "f":
					join = assembly.Film
				}
				l.Layers = append(l.Layers, boards[must(strconv.Atoi(at))])
				l.Layers[len(l.Layers)-1].Join = join
			}
			leaves = append(leaves, l)
		case "frame":
			r, ok := material.FrameByID(id)
			if !ok {
				f.texts((*string)(&r.Kind), &r.Source, &r.Origin)
				f.numbers(0, (*float64)(&r.Depth), (*float64)(&r.Plate), (*float64)(&r.Width), (*float64)(&r.Sheet), (*float64)(&r.Mass))
			}
			frames = append(frames, r)
		case "held":
			h := assembly.Held{Fixing: fixing(id)}
			h.Fixing.Stiffness, h.Fixing.StiffnessLow, h.Fixing.StiffnessHigh = 0, 0, 0 // no source states one
			f.numbers(0, (*float64)(&h.Grid.Rows), (*float64)(&h.Grid.Along), &h.Shorts)
			holds = append(holds, h)
		case "gap":
			var g assembly.Gap
			var frame, near, far float64
			f.numbers(0, &frame, &near, &far, (*float64)(&g.Spacing), (*float64)(&g.Depth), (*float64)(&g.FillDepth))
			g.Fill, _ = material.FillByID(id)
			g.Frame, g.Near, g.Far = frames[int(frame)], holds[int(near)], holds[int(far)]
			gaps = append(gaps, g)
		case "assumed":
			assumed = append(assumed, id)
		case "row":
			t := Test{ID: id}
			var said, flat string
			var stc, left float64
			var b assembly.BuildUp
			f.texts(&t.Source, &t.Table, &t.Description, &t.Kind, &t.Tier, &said, &flat)
			f.numbers(0, &stc)
			f.numbers(missing, &left)
			f.numbers(0, (*float64)(&b.Width), (*float64)(&b.Height))
			if by := left - stc; stc > 0 && !math.IsNaN(by) {
				p.ratings = append(p.ratings, leftover{t.Kind, t.Tier, 0, by})
			}
			t.STC, b.Horizontal = int(stc), flat != ""
			for _, i := range wholes(said) {
				t.Assumed = append(t.Assumed, assumed[i])
			}
			for _, s := range f {
				b.Leaves, b.Gaps = nil, nil
				for i, n := range wholes(s) {
					if i%2 == 0 {
						b.Leaves = append(b.Leaves, leaves[n])
					} else {
						b.Gaps = append(b.Gaps, gaps[n])
					}
				}
				t.BuildUps = append(t.BuildUps, b)
			}
			p.tests = append(p.tests, t)
		case "computed":
			var r band.Spectrum
			f.bands(r[:])
			computed[id] = r
		case "thirds":
			var r band.Spectrum
			f.texts(&kind, &tier)
			f.bands(r[:])
			p.thirds[id] = r
			if c, ok := computed[id]; ok {
				for i := range r {
					p.leave(kind, tier, i, c[i]-r[i])
				}
			}
		case "octaves":
			var r [len(band.Octaves)]float64
			f.texts(&kind, &tier)
			f.bands(r[:])
			p.octaves[id] = r
			if c, ok := computed[id]; ok {
				for o := range r {
					p.leave(kind, tier, 3*o, c.Octave(o)-r[o])
				}
			}
		}
	}
	p.views = views(p.tests)
}

// leave keeps what is left over in a band of a spectrum, an octave for the band in its middle.
func (p *preread) leave(kind, tier string, at int, by float64) {
	if !math.IsNaN(by) {
		p.bands = append(p.bands, leftover{kind, tier, at, by})
	}
}

// Printed returns the spectra that were printed for a rated row, NaN in bands
// that were not; ok tells which there are.
func Printed(id string) (thirds band.Spectrum, octaves [len(band.Octaves)]float64, ok struct{ Thirds, Octaves bool }) {
	k := known()
	thirds, ok.Thirds = k.thirds[id]
	octaves, ok.Octaves = k.octaves[id]
	return thirds, octaves, ok
}
