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
	"twoleaf/core/unit"
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
//	board     id, short, kind, fire, thickness, mass, E, ν, η, Bx/By, shear, flow, source of these, source, origin
//	leaf      numbers of its boards, each with g or f behind it if glued or with film to the next
//	frame     id, or nothing and then kind, depth, plate, width, sheet, mass, source, origin
//	held      fixing, rows, along, shorts
//	gap       frame, spacing, depth, fill, its depth, held near, held far
//	assumed   a sentence
//	row       id, source, table, description, kind, tier, STC, STC left out, assumed, lies flat, width, height, then
//	          its constructions: leaf, gap, leaf …
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

// fields is a line of the table; what is empty is 0 as a number.
type fields []string

func (f fields) number(i int) float64 {
	if f[i] == "" {
		return 0
	}
	return must(strconv.ParseFloat(f[i], 64))
}

func (f fields) whole(i int) int { return int(f.number(i)) }

func (f fields) length(i int) unit.Length { return unit.Length(f.number(i)) }

// level is a number, or NaN for a band that was not printed.
func (f fields) level(i int) float64 {
	if f[i] == "" {
		return missing
	}
	return f.number(i)
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
	var boards []material.Board
	var leaves []assembly.Leaf
	var frames []material.Frame
	var holds []assembly.Held
	var gaps []assembly.Gap
	var assumed []string
	computed := map[string]band.Spectrum{}
	for _, line := range must(text.Records(prereadCSV)) {
		f := fields(line[1:])
		switch line[0] {
		case "board":
			boards = append(boards, material.Board{
				ID: f[0], Name: f[0], Short: f[1], Kind: material.Kind(f[2]), FireRated: f[3] != "", Thickness: f.length(4), Mass: unit.SurfaceMass(f.number(5)),
				Sound: material.Sound{
					Young: unit.Pressure(f.number(6)), Nu: f.number(7), Loss: f.number(8), Ratio: f.number(9), Shear: f.number(10), Flow: f.number(11), Source: f[12],
				},
				Source: f[13], Origin: f[14],
			})
		case "leaf":
			var l assembly.Leaf
			for _, w := range strings.Fields(f[0]) {
				at, glued := strings.CutSuffix(w, "g")
				at, film := strings.CutSuffix(at, "f")
				y := assembly.Layer{Board: boards[must(strconv.Atoi(at))]}
				switch {
				case glued:
					y.Join = assembly.Glued
				case film:
					y.Join = assembly.Film
				}
				l.Layers = append(l.Layers, y)
			}
			leaves = append(leaves, l)
		case "frame":
			r, _ := material.FrameByID(f[0])
			if f[0] == "" {
				r = material.Frame{
					Kind: material.FrameKind(f[1]), Depth: f.length(2), Plate: f.length(3), Width: f.length(4), Sheet: f.length(5),
					Mass: unit.LineMass(f.number(6)), Source: f[7], Origin: f[8],
				}
			}
			frames = append(frames, r)
		case "held":
			x := fixing(f[0])
			x.Stiffness, x.StiffnessLow, x.StiffnessHigh = 0, 0, 0 // no source states one
			holds = append(holds, assembly.Held{Fixing: x, Grid: assembly.Grid{Rows: f.length(1), Along: f.length(2)}, Shorts: f.number(3)})
		case "gap":
			g := assembly.Gap{
				Frame: frames[f.whole(0)], Spacing: f.length(1), Depth: f.length(2), FillDepth: f.length(4),
				Near: holds[f.whole(5)], Far: holds[f.whole(6)],
			}
			g.Fill, _ = material.FillByID(f[3])
			gaps = append(gaps, g)
		case "assumed":
			assumed = append(assumed, f[0])
		case "row":
			t := Test{ID: f[0], Source: f[1], Table: f[2], Description: f[3], Kind: f[4], Tier: f[5], STC: f.whole(6)}
			if f[7] != "" && t.STC > 0 {
				p.ratings = append(p.ratings, leftover{t.Kind, t.Tier, 0, f.number(7) - float64(t.STC)})
			}
			for _, i := range wholes(f[8]) {
				t.Assumed = append(t.Assumed, assumed[i])
			}
			for _, s := range f[12:] {
				b := assembly.BuildUp{Horizontal: f[9] != "", Width: f.length(10), Height: f.length(11)}
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
			for i := range r {
				r[i] = f.level(1 + i)
			}
			computed[f[0]] = r
		case "thirds":
			var r band.Spectrum
			c, ok := computed[f[0]]
			for i := range r {
				r[i] = f.level(3 + i)
				if ok {
					p.leave(f, i, c[i]-r[i])
				}
			}
			p.thirds[f[0]] = r
		case "octaves":
			var r [len(band.Octaves)]float64
			c, ok := computed[f[0]]
			for o := range r {
				r[o] = f.level(3 + o)
				if ok {
					p.leave(f, 3*o, c.Octave(o)-r[o])
				}
			}
			p.octaves[f[0]] = r
		}
	}
	p.views = views(p.tests)
}

// leave keeps what is left over in a band of a spectrum, an octave for the band in its middle.
func (p *preread) leave(f fields, at int, by float64) {
	if !math.IsNaN(by) {
		p.bands = append(p.bands, leftover{f[1], f[2], at, by})
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
