package evidence

import (
	_ "embed"
	"fmt"
	"strconv"
	"strings"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

//go:embed boards.csv
var boardsCSV string

// declared is a row of the table of what evidence boards weigh.
type declared struct {
	words                          []string
	only                           float64 // thickness the row is for, mm; 0 any
	mass, density, usual           float64 // kg/m², kg/m³, mm
	kind                           material.Kind
	like                           material.Board // its sound values are taken where ok
	own                            bool           // sound values are the row's own
	young                          float64        // Pa
	nu, loss, ratio, shear, porous float64
	source, origin                 string
}

const skipped = "skip"

var declaredRead once[[]declared]

func declaredBoards() []declared { return declaredRead.get(readDeclared) }

func readDeclared() []declared {
	recs := must(records(boardsCSV, "words"))
	var out []declared
	for _, r := range recs {
		num := func(column string) float64 {
			v, _, err := r.number(column)
			return must(v, err)
		}
		d := declared{
			words: strings.Split(r.cell["words"], "+"), only: num("thickness_mm"),
			mass: num("mass_kg_m2"), density: num("density_kg_m3"), usual: num("default_mm"),
			kind: material.Kind(r.cell["kind"]), young: num("young_GPa") * 1e9,
			nu: num("nu"), loss: num("loss"), ratio: num("ratio"), shear: num("shear"), porous: num("flow"),
			source: r.cell["source"], origin: r.cell["origin"],
		}
		if id := r.cell["like"]; id != "" {
			b, ok := material.ByID(id)
			if !ok {
				panic("evidence: no board " + id)
			}
			d.like = b
		} else {
			d.own = true
		}
		out = append(out, d)
	}
	return out
}

// board returns the declared board of a thickness in mm (0 where the text has
// none) whose mass is printed in the text (0 where it is not), kg/m².
func (d declared) board(name string, mm, printed float64) material.Board {
	if mm == 0 {
		mm = max(d.usual, d.only)
	}
	t := unit.Length(mm) * unit.Millimetre
	mass := d.mass
	if mass == 0 {
		mass = d.density * float64(t)
	}
	if printed > 0 {
		mass = printed
	}
	b := d.like
	if d.own {
		b = material.Board{Kind: d.kind, Thickness: t, Mass: unit.SurfaceMass(d.density * float64(t)), Sound: material.Sound{
			Young: unit.Pressure(d.young), Nu: d.nu, Loss: d.loss, Ratio: max(1, d.ratio), Shear: d.shear, Flow: d.porous,
		}}
	}
	b = b.WithThickness(t).WithMass(unit.SurfaceMass(mass))
	if d.loss > 0 {
		b.Sound.Loss = d.loss
	}
	kind := d.kind
	if d.fluted() {
		b = flute(b)
		kind = b.Kind
	}
	// What it is like is not what it is: no sheet sizes, prices or ranges of that board.
	return material.Board{
		ID: strings.TrimSpace(name), Name: strings.TrimSpace(name), Short: strings.TrimSpace(name),
		Kind: kind, Thickness: b.Thickness, Mass: b.Mass, Sound: b.Sound,
		FireRated: b.FireRated, Source: d.source, Origin: d.origin,
	}
}

func (d declared) fluted() bool { return len(d.words) > 1 && d.words[1] == "fluted" }

// Fluted sheet as a plate of the depth of its flutes with the stiffness of its
// section along them and of the flat sheet across: second moment I′ = 5·10⁻⁷ m³
// of a common deck, depth 25 mm (calibrated, the one row there is).
const (
	fluteMoment = 5e-7
	fluteDepth  = 25 * unit.Millimetre
)

func flute(b material.Board) material.Board {
	e, nu, t := float64(b.Sound.Young), b.Sound.Nu, float64(b.Thickness)
	// E of the steel itself, not scaled with the mass of the folded sheet: 205 GPa (common practice).
	e = 205e9
	along := e * fluteMoment
	across := e * t * t * t / (12 * (1 - nu*nu))
	ratio := along / across
	// The plate's B is the square of the mean of the two roots.
	mean := sq((root(along) + root(across)) / 2)
	d := float64(fluteDepth)
	b.Kind = "" // none of the kinds: far lighter for its depth than sheet steel
	b.Thickness = fluteDepth
	b.Sound.Young = unit.Pressure(mean * 12 * (1 - nu*nu) / (d * d * d))
	b.Sound.Ratio = ratio
	return b
}

// piece is a part of a leaf's text between the pluses.
type piece struct {
	text    string
	count   int
	mm      []float64 // thicknesses it may have
	printed float64   // kg/m² in brackets
}

var printedMass = before("kg/m2")

// firstNumber returns the first number in a text; ok is false where there is none.
func firstNumber(s string) (float64, bool) {
	r, ok := decimal.in(s)
	if !ok {
		return 0, false
	}
	v, err := strconv.ParseFloat(r.first, 64)
	return v, err == nil
}

// split parts a leaf's text at its pluses outside brackets.
func split(s string, at ...string) []string {
	var out []string
	depth, from := 0, 0
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '(':
			depth++
		case ')':
			depth--
		}
		for _, a := range at {
			if depth <= 0 && strings.HasPrefix(s[i:], a) && i >= from {
				out = append(out, strings.TrimSpace(s[from:i]))
				from = i + len(a)
				break
			}
		}
	}
	return append(out, strings.TrimSpace(s[from:]))
}

// readPiece reads "gypsum 15.9 typeX x2" into its parts.
func readPiece(s string) piece {
	p := piece{count: 1}
	for b, ok := bracket.in(s); ok; b, ok = bracket.find(s, b.to) {
		in := s[b.from:b.to]
		if m, ok := printedMass.in(in); ok && !strings.Contains(in, "block") {
			p.printed = value(m.first)
		}
	}
	s = strings.ToLower(bracket.replace(s, " "))
	if m, ok := times.in(s); ok {
		p.count, _ = strconv.Atoi(m.first)
		if p.count > assembly.MaxLayers {
			p.count = assembly.MaxLayers + 1 // enough to be refused
		}
		s = times.replace(s, " ")
	}
	p.text = strings.Join(strings.Fields(s), " ")
	if m, ok := between.in(p.text); ok {
		if lo, hi := value(m.first), value(m.second); lo < hi {
			p.mm = []float64{lo, hi}
			return p
		}
	}
	if v, ok := firstNumber(strings.ReplaceAll(p.text, "type x", "typex")); ok {
		p.mm = []float64{v}
	}
	return p
}

// alternatives of "gypsum 12.7 typeX or 15.9 typeX x1": each as a text of its own.
func alternatives(s string) []string {
	count := ""
	plain := bracket.replace(s, "")
	if m, ok := times.in(plain); ok {
		count = plain[m.from:m.to]
	}
	parts := split(s, " or ")
	if len(parts) < 2 {
		return []string{s}
	}
	material, _, _ := strings.Cut(parts[0], " ")
	for i := range parts {
		if i > 0 && (parts[i] == "" || !strings.ContainsAny(parts[i][:1], "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ")) {
			parts[i] = material + " " + parts[i]
		}
		if _, counted := times.in(bracket.replace(parts[i], "")); !counted && count != "" {
			parts[i] += " " + count
		}
	}
	return parts
}

// findBoard returns the declared row of a text and thickness.
func findBoard(text string, mm float64) (declared, bool) {
rows:
	for _, d := range declaredBoards() {
		for _, w := range d.words {
			if !strings.Contains(text, w) {
				continue rows
			}
		}
		if d.only != 0 && d.only != mm {
			continue
		}
		return d, true
	}
	return declared{}, false
}

// part is a leaf, or the air or fibre between two leaves of one text.
type part struct {
	layers []assembly.Layer
	gap    float64 // mm, of a part that is a gap
	fibre  bool
}

// gapWords are the words of a piece that is no board but a space.
var gapWords = []string{"glass fibre", "glass wool", "mineral wool", "mineral fibre", "rock wool", "stone wool", "fibre batt", "batt", "air ", "argon", "krypton", "cavity ", " gap"}

// readParts reads a leaf's text: one leaf, or several with spaces between them
// ("glass 4 + air 12 + glass 4", "… on joists // 13 RC gap // …").
func readParts(s string) ([]part, error) {
	var out []part
	now := part{}
	flush := func() {
		if len(now.layers) > 0 {
			out = append(out, now)
			now = part{}
		}
	}
	last := "" // material of the piece before, for "gypsum 15.9 + 12.7"
	for _, group := range split(s, "//") {
		flush()
		for _, text := range split(group, " + ") {
			low := strings.ToLower(bracket.replace(text, " "))
			if has(low, "film", "damping compound", "viscoelastic") && !has(low, "gypsum") {
				if n := len(now.layers); n > 0 {
					now.layers[n-1].Join = assembly.Film
				}
				continue
			}
			if isGap(low) {
				flush()
				mm, ok := firstNumber(low)
				if !ok {
					return nil, fmt.Errorf("no depth of the space in %q", text)
				}
				out = append(out, part{gap: mm, fibre: has(low, "fibre", "wool", "batt")})
				continue
			}
			p := readPiece(text)
			if p.text == "" {
				continue
			}
			if last != "" && !strings.ContainsAny(p.text[:1], "abcdefghijklmnopqrstuvwxyz") {
				p.text = last + " " + p.text
			}
			mm := 0.0
			for _, v := range p.mm {
				mm += v / float64(len(p.mm))
			}
			d, ok := findBoard(p.text, mm)
			if !ok {
				return nil, fmt.Errorf("no board is known for %q", text)
			}
			last, _, _ = strings.Cut(p.text, " ")
			if d.kind == skipped {
				continue
			}
			layer := assembly.Layer{Board: d.board(text, mm, p.printed)}
			if layer.Board.Thickness <= 0 || layer.Board.Mass <= 0 {
				return nil, fmt.Errorf("no thickness in %q", text)
			}
			layer.Board.ID, layer.Board.Name = p.text, p.text
			if n := len(now.layers); has(low, "skim") && n > 0 {
				// A skim coat is part of its board.
				now.layers[n-1].Board.Thickness += layer.Board.Thickness
				now.layers[n-1].Board.Mass += layer.Board.Mass
				continue
			}
			if has(low, "each face", "both faces", "each side", "both sides") && len(now.layers) > 0 {
				under := layer
				if bonded(layer, now.layers[0]) {
					under.Join = assembly.Glued
				}
				now.layers = append([]assembly.Layer{under}, now.layers...)
			}
			joined := assembly.Loose
			if has(low, "glued") {
				joined = assembly.Glued
			}
			if has(low, "with film", "damping film") {
				joined = assembly.Film
			}
			if n := len(now.layers); n > 0 && (joined != assembly.Loose || bonded(layer, now.layers[n-1])) {
				now.layers[n-1].Join = orElse(joined, assembly.Glued)
			}
			for i := range p.count {
				copied := layer
				if i < p.count-1 {
					copied.Join = joined
				}
				now.layers = append(now.layers, copied)
			}
		}
	}
	flush()
	if len(out) == 0 {
		return nil, fmt.Errorf("no board in %q", s)
	}
	return out, nil
}

// bonded reports whether a layer is laid wet on another: plaster and render on masonry or slab.
func bonded(a, b assembly.Layer) bool {
	wet := func(y assembly.Layer) bool { return y.Board.Kind == material.Plaster }
	return wet(a) && (b.Board.Kind.Masonry() || strings.HasPrefix(b.Board.ID, "wood-wool")) || wet(b) && a.Board.Kind.Masonry()
}

func orElse(a, b assembly.Join) assembly.Join {
	if a != assembly.Loose {
		return a
	}
	return b
}

func isGap(low string) bool {
	if leadsGap(strings.TrimSpace(low)) {
		return true
	}
	for _, w := range gapWords {
		if strings.HasPrefix(low, strings.TrimSpace(w)+" ") || strings.HasPrefix(w, " ") && strings.Contains(low, w) {
			return true
		}
	}
	return false
}

// has reports whether any of the words stands in a text.
func has(s string, words ...string) bool {
	for _, w := range words {
		if strings.Contains(s, w) {
			return true
		}
	}
	return false
}
