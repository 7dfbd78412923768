package evidence

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"twoleaf/core/assembly"
	"twoleaf/core/material"
	"twoleaf/core/unit"
)

// Built is what a text has been read as.
type Built struct {
	BuildUps []assembly.BuildUp // every construction that the text allows, at least one
	Assumed  []string           // what the source leaves out, as it was taken
}

// Panes are tested in an opening of 2.2 m² (calibrated against the windows of
// HARRIS1995 and BIES2017), walls and floors in the usual one.
const (
	paneWidth  = 1.48
	paneHeight = 1.48
)

// tiesPerArea of a cavity wall, 1/m² (common practice).
const tiesPerArea = 2.5

// ReadText reads the text of a construction:
//
//	leaf1    gypsum 15.9 typeX x2 · plywood/OSB 11 x1 + … · glass 4 + air 12 + glass 4 · none
//	framing  wood 38x89 @400 or 600 single · steel 92 ga25 @600 single +RC@400 on leaf1 ·
//	         wood joist 38x235 @<=600 +RC@400 on ceiling · block 190; wood strapping 38x38 @600 both sides · window · none
//	spacing  of the frame, where framing does not have it
//	cavity   depth of the space, mm
//	fill     none · absorptive fibre 89 · absorptive fibre 89 each side · insulation 50
//
// Where it allows more than one construction (two spacings, two amounts of
// fill) all are returned. An error says which part could not be read.
func ReadText(t Text) (Built, error) {
	var all Built
	for _, l1 := range alternatives(t.Leaf1) {
		for _, l2 := range alternatives(t.Leaf2) {
			one := t
			one.Leaf1, one.Leaf2 = l1, l2
			// Both leaves in step: "12.7 or 15.9" on both sides is one board or the other, not a mix.
			if len(alternatives(t.Leaf1)) > 1 && t.Leaf1 == t.Leaf2 && l1 != l2 {
				continue
			}
			b, err := readOne(one)
			if err != nil {
				return Built{}, err
			}
			all.BuildUps = append(all.BuildUps, b.BuildUps...)
			all.Assumed = b.Assumed
		}
	}
	for _, b := range all.BuildUps {
		if problems := b.Check(); len(problems) > 0 {
			return Built{}, fmt.Errorf("impossible as read: %v", problems[0])
		}
	}
	return all, nil
}

// depthOf reads the depth of the space, mm: "235 + 13" is their sum, "235 +
// furring depth (not stated)" what is known of it. 0 where nothing is printed.
func depthOf(cavity string) (mm float64, whole bool) {
	whole = true
	for _, p := range split(cavity, "+") {
		v, ok := firstNumber(p)
		if !ok {
			whole = whole && p == ""
			continue
		}
		mm += v
	}
	return mm, whole
}

func none(s string) bool {
	s = strings.ToLower(strings.TrimSpace(s))
	return s == "" || s == "none" || s == "-"
}

func readOne(t Text) (Built, error) {
	if has(strings.ToLower(t.Kind), "door") || t.Leaf1 == "door" {
		return Built{}, fmt.Errorf("a door: kept as a measured spectrum, not computed")
	}
	cavity, whole := depthOf(t.Cavity)
	f, err := readFraming(t.Framing, t.Spacing, t.Kind, cavity)
	if err != nil {
		return Built{}, err
	}
	var near, far []part
	if !none(t.Leaf1) {
		if near, err = readParts(t.Leaf1); err != nil {
			return Built{}, err
		}
	}
	if !none(t.Leaf2) {
		if far, err = readParts(t.Leaf2); err != nil {
			return Built{}, err
		}
		if strings.EqualFold(t.Leaf1, t.Leaf2) {
			for i := range far {
				mirror(far[i].layers)
			}
			slices.Reverse(far)
		}
	}
	if has(strings.ToLower(t.Leaf1), "floating") || f.floating {
		return Built{}, fmt.Errorf("a floating floor: the stiffness of its layer is not stated")
	}
	var out Built
	switch {
	case f.block != "":
		out, err = lined(f, near, far, t, cavity)
	case len(far) == 0:
		if len(near) == 0 {
			return Built{}, fmt.Errorf("no board")
		}
		if last := near[len(near)-1]; len(near) > 1 && last.fibre {
			// Bare fibre on a panel's face adds next to nothing below a few hundred hertz.
			near = near[:len(near)-1]
			out.Assumed = append(out.Assumed, "bare fibre on a face left out")
		}
		var c chain
		if err = c.addParts(near); err == nil {
			out.BuildUps = []assembly.BuildUp{c.buildUp(f.horizontal)}
		}
	default:
		out, err = framed(f, near, far, t, cavity, whole)
	}
	if err != nil {
		return Built{}, err
	}
	if m, err := strconv.ParseFloat(t.Mass, 64); err == nil && m > 0 {
		for i := range out.BuildUps {
			if said := weigh(&out.BuildUps[i], m); said != "" && !slices.Contains(out.Assumed, said) {
				out.Assumed = append(out.Assumed, said)
			}
		}
	}
	return out, nil
}

// mirror turns the layers of a leaf about, joints included: two leaves of the
// same words lie symmetrically about the space between them.
func mirror(layers []assembly.Layer) {
	slices.Reverse(layers)
	for i := range len(layers) - 1 {
		layers[i].Join = layers[i+1].Join
	}
	if n := len(layers); n > 0 {
		layers[n-1].Join = assembly.Loose
	}
}

// weigh gives a single leaf the mass that was printed for it, unless the two
// are so far apart that one of them must be of something else.
func weigh(b *assembly.BuildUp, printed float64) string {
	if len(b.Leaves) != 1 {
		return ""
	}
	have := float64(b.Leaves[0].Mass())
	const apart = 1.35 // our own choice: beyond the scatter of any board
	if printed > apart*have || have > apart*printed {
		return fmt.Sprintf("printed mass of %g kg/m² not believed, %.3g taken", printed, have)
	}
	layers := slices.Clone(b.Leaves[0].Layers)
	for i := range layers {
		layers[i].Board = layers[i].Board.WithMass(layers[i].Board.Mass * unit.SurfaceMass(printed/have))
	}
	b.Leaves[0].Layers = layers
	return ""
}

// chain grows a build-up from leaf 1 outwards.
type chain struct {
	leaves []assembly.Leaf
	gaps   []assembly.Gap
}

// addParts adds the leaves of one text and the spaces between them.
func (c *chain) addParts(parts []part) error {
	want := len(c.leaves) == len(c.gaps) // a leaf must come next
	for _, p := range parts {
		switch {
		case len(p.layers) > 0 && want:
			c.leaves = append(c.leaves, assembly.Leaf{Layers: p.layers})
			want = false
		case len(p.layers) > 0:
			return fmt.Errorf("two leaves without a space between them")
		case want:
			return fmt.Errorf("a space without a leaf before it")
		default:
			g := assembly.Gap{Frame: noFrame(), Depth: mm(p.gap), Near: untied(), Far: untied()}
			if p.fibre {
				g.Fill, g.FillDepth = fibre(""), g.Depth
			}
			c.gaps = append(c.gaps, g)
			want = true
		}
	}
	if want {
		return fmt.Errorf("a space without a leaf behind it")
	}
	return nil
}

func (c *chain) buildUp(horizontal bool) assembly.BuildUp {
	b := assembly.BuildUp{Leaves: slices.Clone(c.leaves), Gaps: slices.Clone(c.gaps), Horizontal: horizontal}
	panes := true
	for _, l := range b.Leaves {
		for _, y := range l.Layers {
			panes = panes && (y.Board.Kind == material.Glass || y.Board.Kind == material.Laminated)
		}
	}
	if panes {
		b.Width, b.Height = paneWidth, paneHeight
	}
	for i := range b.Leaves {
		for j := range b.Leaves[i].Layers {
			b.Leaves[i].Layers[j].ID = fmt.Sprintf("leaf%d.%d", i+1, j+1)
		}
	}
	for i := range b.Gaps {
		b.Gaps[i].ID = fmt.Sprintf("gap%d", i+1)
	}
	return b
}

func mm(v float64) unit.Length { return unit.Length(v) * unit.Millimetre }

func noFrame() material.Frame { return frameLike("none", 0) }

// frameLike is a row of the table of frames with another depth, in mm.
func frameLike(id string, depth float64) material.Frame {
	f, ok := material.FrameByID(id)
	if !ok {
		panic("evidence: no frame " + id)
	}
	if depth > 0 {
		f.Depth, f.Plate = mm(depth), mm(depth)
		f.ID, f.Code, f.Name = "", "", ""
	}
	return f
}

func fixing(id string) material.Fixing {
	f, ok := material.FixingByID(id)
	if !ok {
		panic("evidence: no fixing " + id)
	}
	return f
}

func screwed() assembly.Held { return assembly.Held{Fixing: fixing("screwed")} }
func untied() assembly.Held  { return assembly.Held{Fixing: fixing("untied")} }

// fibre is the fill that a text means: blown cellulose where it is the only
// one named, stone wool where that is, else the generic batt.
func fibre(low string) material.Fill {
	id := "fibre"
	switch {
	case has(low, "fibre") && has(low, "cellulose"):
	case has(low, "cellulose"):
		id = "xx_cellulose"
	case has(low, "stone", "rock", "slag"):
		id = "na_stone_42"
	case has(low, "polyester"):
		id = "xx_polyester"
	}
	f, ok := material.FillByID(id)
	if !ok {
		panic("evidence: no fill " + id)
	}
	return f
}

var density = struct{ wood, steel float64 }{450, 7850} // kg/m³, as in the table of frames

// member returns one stud or joist as stated.
func (f framing) member() material.Frame {
	m := material.Frame{
		Kind: f.kind, Depth: mm(f.depth), Plate: mm(f.depth), Width: mm(f.width), Sheet: mm(f.sheet),
		Source: "frame-trade", Origin: "common practice",
	}
	switch f.kind {
	case material.Staggered:
		m.Plate = mm(f.plate)
	case material.Double:
		m.Plate = mm(2*f.depth + f.apart)
	}
	if f.wood {
		m.Mass = unit.LineMass(density.wood * f.width * f.depth * 1e-6)
	} else {
		// Web, two flanges and two lips of 6 mm each.
		m.Mass = unit.LineMass(density.steel * f.sheet * (f.depth + 2*f.width + 12) * 1e-6)
	}
	return m
}

// held returns how the resilient fixing of a framing holds a leaf.
func (r resilient) held(rows, along float64) assembly.Held {
	h := assembly.Held{Grid: assembly.Grid{Rows: mm(rows), Along: mm(along)}}
	switch r.kind {
	case material.Clip:
		h.Fixing = fixing("clip")
	default:
		h.Fixing = fixing("channel")
	}
	// No source states a stiffness: the method's own counts.
	h.Fixing.Stiffness, h.Fixing.StiffnessLow, h.Fixing.StiffnessHigh = 0, 0, 0
	return h
}

// framed reads two leaves on a frame, or with nothing between them.
func framed(f framing, near, far []part, t Text, cavity float64, whole bool) (Built, error) {
	out := Built{Assumed: f.assumed}
	fill, err := readFill(t.Fill)
	if err != nil {
		return out, err
	}
	out.Assumed = append(out.Assumed, fill.assumed...)
	// A second layer of channel below a boarded ceiling: the text of leaf 2 has
	// the two leaves with the space between them.
	hungBelow := f.resilient.kind != "" && has(strings.ToLower(t.Framing), "direct inner layer", "through it")
	spacing, rows, along := f.spacing, []float64{0}, []float64{0}
	if f.resilient.kind != "" {
		rows = f.resilient.rows
		if f.resilient.kind == material.Clip {
			along = f.resilient.along
		}
	}
	strips := f.furring
	if len(strips) == 0 {
		strips = []float64{0}
	}
	if len(spacing) == 0 {
		spacing = []float64{0}
	}
	if len(f.furring) > 0 {
		spacing = spacing[:1] // strips across joists carry the ceiling: their own spacing counts
	}
	for _, b := range spacing {
		for _, r := range rows {
			for _, a := range along {
				for _, s := range strips {
					g := assembly.Gap{Frame: f.member(), Spacing: mm(b), Near: screwed(), Far: screwed()}
					if f.kind == material.NoFrame {
						g.Frame, g.Spacing, g.Near, g.Far = noFrame(), 0, untied(), untied()
						if f.ties {
							g.Near.Shorts = tiesPerArea
						}
					}
					if s > 0 {
						g.Frame.Kind = material.Strapping
						g.Frame.Depth += mm(f.furringDepth)
						g.Frame.Plate = g.Frame.Depth
						g.Spacing = mm(s)
					}
					crossing := a
					if f.resilient.kind == material.Channel {
						crossing = b // a channel is screwed at every stud
					}
					if f.resilient.kind != "" && !hungBelow {
						h := f.resilient.held(r, crossing)
						if f.resilient.on == onLeaf1 || f.resilient.on == onBoth {
							g.Near = h
						}
						if f.resilient.on == onLeaf2 || f.resilient.on == onBoth {
							g.Far = h
						}
					}
					g.Depth = g.DefaultDepth()
					if whole && !hungBelow && cavity > 0 {
						g.Depth = max(mm(cavity), assembly.FrameDepth(g.Frame)+g.StandOffs())
					}
					if g.Depth <= 0 {
						return out, fmt.Errorf("no depth of the space")
					}
					for _, d := range fill.depths(f, float64(g.Depth/unit.Millimetre)) {
						gap := g
						if d > 0 {
							gap.Fill, gap.FillDepth = fill.of, min(mm(d), gap.Depth)
						}
						var c chain
						if err := c.addParts(near); err != nil {
							return out, err
						}
						c.gaps = append(c.gaps, gap)
						if err := c.addParts(far); err != nil {
							return out, err
						}
						if hungBelow {
							if len(c.gaps) < 2 {
								return out, fmt.Errorf("channel through a ceiling that is not described")
							}
							last := &c.gaps[len(c.gaps)-1]
							*last = assembly.Gap{Frame: frameLike("bare", 0), Depth: mm(channelDepth), Near: untied(), Far: f.resilient.held(r, crossing)}
						}
						built := c.buildUp(f.horizontal)
						if !slices.ContainsFunc(out.BuildUps, func(o assembly.BuildUp) bool { return same(o, built) }) {
							out.BuildUps = append(out.BuildUps, built)
						}
					}
				}
			}
		}
	}
	return out, nil
}

// same reports whether two build-ups of one text are alike in what varies: gaps.
func same(a, b assembly.BuildUp) bool {
	return slices.EqualFunc(a.Gaps, b.Gaps, func(x, y assembly.Gap) bool {
		return x.Spacing == y.Spacing && x.Depth == y.Depth && x.FillDepth == y.FillDepth && x.Near.Grid == y.Near.Grid && x.Far.Grid == y.Far.Grid
	})
}

// lined reads a masonry wall with a lining on one or both sides.
func lined(f framing, near, far []part, t Text, cavity float64) (Built, error) {
	out := Built{Assumed: f.assumed}
	wall, err := readParts(f.block)
	if err != nil {
		return out, err
	}
	if len(wall) != 1 || len(near) > 1 || len(far) > 1 {
		return out, fmt.Errorf("a lining of more than one leaf")
	}
	fill, err := readFill(t.Fill)
	if err != nil {
		return out, err
	}
	out.Assumed = append(out.Assumed, fill.assumed...)
	direct := has(f.lining, "leaf2 direct")
	spacing := f.spacing
	if len(spacing) == 0 {
		spacing = []float64{0}
	}
	depth := f.depth
	if cavity > 0 {
		depth = cavity
	}
	if f.kind != material.NoFrame && depth <= 0 {
		return out, fmt.Errorf("no depth of the space behind the lining")
	}
	for _, b := range spacing {
		gap := func(nearSide bool) assembly.Gap {
			lining, masonry := screwed(), screwed()
			g := assembly.Gap{Depth: mm(depth), Spacing: mm(b)}
			switch f.kind {
			case material.Strapping:
				g.Frame = frameLike("strap_38", depth)
			case material.ZBar:
				g.Frame = frameLike("zbar_50", depth)
			case material.Standing:
				g.Frame = frameLike("standing_64", depth)
				if f.sheet > 0 {
					g.Frame.Sheet = mm(f.sheet)
				}
				masonry = untied()
			case material.Bare:
				g.Frame, g.Spacing = frameLike("bare", 0), 0
				along := channelScrews
				if f.resilient.kind == material.Clip {
					along = usualClips
				}
				lining, masonry = f.resilient.held(b, along), untied()
				g.Depth = max(g.Depth, lining.Fixing.StandOff)
			}
			for _, d := range fill.depths(f, depth) {
				if d > 0 {
					g.Fill, g.FillDepth = fill.of, min(mm(d), g.Depth)
				}
				break
			}
			g.Near, g.Far = lining, masonry
			if !nearSide {
				g.Near, g.Far = masonry, lining
			}
			return g
		}
		core := slices.Clone(wall[0].layers)
		var c chain
		switch {
		case f.kind == material.NoFrame && len(near) > 0:
			core = append(slices.Clone(near[0].layers), core...)
		case len(near) > 0:
			c.leaves = append(c.leaves, assembly.Leaf{Layers: near[0].layers})
			c.gaps = append(c.gaps, gap(true))
		}
		if len(far) > 0 && (direct || f.kind == material.NoFrame) {
			core = append(core, far[0].layers...)
		}
		c.leaves = append(c.leaves, assembly.Leaf{Layers: core})
		if len(far) > 0 && !direct && f.kind != material.NoFrame {
			c.gaps = append(c.gaps, gap(false))
			c.leaves = append(c.leaves, assembly.Leaf{Layers: far[0].layers})
		}
		out.BuildUps = append(out.BuildUps, c.buildUp(false))
	}
	return out, nil
}

// fillText is what is said of the fill.
type fillText struct {
	of      material.Fill
	amount  []float64 // mm in all, each an alternative; empty and filled: as deep as the frame
	filled  bool
	rows    int // of the amount: 2 where it is in each of two rows
	assumed []string
}

func readFill(text string) (fillText, error) {
	low := strings.ToLower(strings.TrimSpace(text))
	if none(low) || strings.HasPrefix(low, "none") || strings.HasPrefix(low, "with or without") || has(low, "reveal") || low == "air" || low == "empty" {
		f := fillText{}
		if strings.HasPrefix(low, "with or without") {
			f.assumed = []string{"computed empty"}
		}
		return f, nil
	}
	f := fillText{filled: true, of: fibre(low)}
	if has(low, "not stated") && !has(low, "absorb", "fibre", "insulat", "wool") {
		f.assumed = []string{"filled"}
		return f, nil
	}
	plain := bracket.replace(low, " ")
	for _, alt := range strings.Split(plain, " or ") {
		v, ok := firstNumber(alt)
		if !ok {
			continue
		}
		if has(alt, "each side", "each row", "both sides") {
			v *= 2
		}
		f.amount = append(f.amount, v)
	}
	if len(f.amount) == 0 && !has(low, "filling", "filled", "whole", "full") {
		f.assumed = []string{"filled as deep as the frame"}
	}
	return f, nil
}

// depths returns the depths of fill that are possible in a space, mm; 0 is none.
func (t fillText) depths(f framing, cavity float64) []float64 {
	if !t.filled {
		return []float64{0}
	}
	if len(t.amount) == 0 {
		d := f.depth
		if f.kind == material.Double {
			d *= 2
		}
		if f.kind == material.Staggered {
			d = f.plate
		}
		if d <= 0 || f.block != "" || f.kind == material.NoFrame {
			d = cavity
		}
		return []float64{d}
	}
	var out []float64
	for _, a := range t.amount {
		a = math.Min(a, cavity)
		if !slices.Contains(out, a) {
			out = append(out, a)
		}
	}
	return out
}

func root(x float64) float64 { return math.Sqrt(x) }
func sq(x float64) float64   { return x * x }
