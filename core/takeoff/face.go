package takeoff

import (
	"cmp"
	"math"
	"slices"

	"twoleaf/core/unit"
)

// What is said of a job or its cut. Notes of the first group stand for a layer
// that could not be cut; the others tell what to know about the layout.
const (
	UnknownFace  Code = "unknown-face"   // a layer names a face that is not there
	UnknownBoard Code = "unknown-board"  // a layer names a board that is not there
	NoSheet      Code = "no-sheet"       // the board is a roll or cut to order: no sheet size
	FaceTooSmall Code = "face-too-small" // nothing is left of the face: width, height, taken across, taken up
	FaceTooLarge Code = "face-too-large" // more than 60 m: width, height
	FaceCovered  Code = "face-covered"   // openings leave nothing to board
	BadSheet     Code = "bad-sheet"      // thickness or size is not a length that can be cut
	TwiceHung    Code = "twice-hung"     // two layers of one face have one number
	OpeningOff   Code = "opening-off"    // an opening lies outside the face or crosses its edge: x, y, width, height
	StaggerShort Code = "stagger-short"  // joints closer to those of the layer before: distance, wanted
	OffFraming   Code = "off-framing"    // joints that fall between the lines of framing: count
	NarrowPiece  Code = "narrow-piece"   // pieces narrower than wanted: count, width
	OverAreaRule Code = "over-area-rule" // more sheets than the area rule: sheets, rule, and of the four reasons the sheets without it
	ManyPieces   Code = "many-pieces"    // more pieces than can be laid out: count, most
	CloseCourses Code = "close-courses"  // end joints of neighbouring courses closer than wanted: count, wanted
)

// The usual habits (common practice of the trade; see the sources of testdata).
const (
	UsualEdge    = 0.25 * unit.Inch      // sealed gap at every edge
	UsualStagger = 10 * unit.Inch        // joints of two layers
	UsualNarrow  = 100 * unit.Millimetre // narrowest piece that is not a nuisance
	UsualKeep    = 300 * unit.Millimetre // offcuts kept, 1 ft in round figures
	CutWaste     = 0.15                  // upper end of what guides add for waste
	// Bearing is what an end needs to lie on: 3/8 in from a screw to a bound
	// edge and 1/8 in for its head (common practice).
	Bearing     = 0.5 * unit.Inch
	usualMember = 1.5 * unit.Inch

	mostLength = 60 * unit.Metre
	mostPieces = 800
)

// Lengths are whole micrometres within the cut: sums are exact, so that pieces
// tile a face to the last bit on every machine.
const perMetre = 1e6

func µm(l unit.Length) int     { return int(math.Round(float64(l) * perMetre)) }
func metres(n int) unit.Length { return unit.Length(float64(n) / perMetre) }
func squares(n int) unit.Area  { return unit.Area(float64(n) / (perMetre * perMetre)) }
func finite(l ...unit.Length) bool {
	return !slices.ContainsFunc(l, func(x unit.Length) bool { return !(x >= -mostLength && x <= mostLength) })
}

type box struct{ x, y, w, h int }

func (b box) rect() Rect { return Rect{metres(b.x), metres(b.y), metres(b.w), metres(b.h)} }

// back returns a rectangle in whole micrometres again.
func back(r Rect) box { return box{µm(r.X), µm(r.Y), µm(r.W), µm(r.H)} }

func (b box) area() int { return b.w * b.h }

// meet returns what two boxes have in common; no width or height where nothing.
func (b box) meet(c box) box {
	x, y := max(b.x, c.x), max(b.y, c.y)
	return box{x, y, min(b.x+b.w, c.x+c.w) - x, min(b.y+b.h, c.y+c.h) - y}
}

func (b box) empty() bool { return b.w <= 0 || b.h <= 0 }

// hung is one layer of one face on its way to being cut.
type hung struct {
	face, board, k int
	at             Layer
	thick          int
	area           box
	past           [4]bool // left, right, foot, head
	holes          []box
	before         int // index of the layer under it, -1 for none
	lays           []lay
	apart          [][]int // least distance of the joints of lay i to those of lay j of the layer before
	ahead          []int   // by lay: how many layers after it can keep clear of the one before
	colour         int
}

// withDefaults returns the rules with the usual ones in the place of zeros.
func (r Rules) withDefaults() Rules {
	usual := func(v *unit.Length, to unit.Length) {
		if *v == 0 || !finite(*v) {
			*v = to
		}
		*v = max(*v, 0)
	}
	usual(&r.Edge, UsualEdge)
	usual(&r.Stagger, UsualStagger)
	usual(&r.Narrow, UsualNarrow)
	usual(&r.Keep, UsualKeep)
	if !(r.Waste > 0) {
		r.Waste = CutWaste
	}
	return r
}

// Box returns the six faces of a room of right angles, joined at their edges:
// the walls A and B of the given length, C and D of the given width, the ceiling
// E and the floor F. Seen from within, C is to the right of A, then B, then D.
func Box(length, width, height unit.Length) []Face {
	wall := func(id string, w unit.Length, left, right string) Face {
		return Face{ID: id, Place: Wall, Width: w, Height: height, Left: left, Right: right, Foot: "F", Head: "E"}
	}
	flat := func(id string, p Place) Face {
		return Face{ID: id, Place: p, Width: length, Height: width, Left: "D", Right: "C", Foot: "A", Head: "B"}
	}
	return []Face{
		wall("A", length, "D", "C"), wall("B", length, "C", "D"),
		wall("C", width, "A", "B"), wall("D", width, "B", "A"),
		flat("E", Ceiling), flat("F", Floor),
	}
}

// sequence puts the layers in the order in which they hang and cuts every one to
// the face less what hangs already:
//
//	layer by layer: ceiling, walls of one colour, walls of the other, floor
//	boarded = face − Σ thickness on each neighbour by then − edge gap
//
// Walls that meet have different colours, and the colours take turns from layer
// to layer: which wall runs past at a corner alternates, so that no corner has
// a straight joint through all layers.
func (p *Prepared) sequence() {
	job := &p.job
	faces := map[string]int{}
	for i, f := range job.Faces {
		faces[f.ID] = i
	}
	boards := map[string]int{}
	for i, b := range job.Boards {
		boards[b.ID] = i
	}
	colour := colours(job.Faces, faces)
	bad := map[int]Note{} // per face
	for i, f := range job.Faces {
		switch {
		case !(f.Width > 0) || !(f.Height > 0):
			bad[i] = p.size(FaceTooSmall, f, 0, 0)
		case f.Width > mostLength || f.Height > mostLength:
			bad[i] = p.size(FaceTooLarge, f, 0, 0)
		}
	}
	seen := map[[2]int]bool{}
	for _, l := range job.Layers {
		f, known := faces[l.Face]
		b, sold := boards[l.Board]
		note := Note{Face: l.Face, Layer: l.Layer, Board: l.Board}
		switch {
		case !known:
			note.Code = UnknownFace
		case !sold:
			note.Code = UnknownBoard
		case seen[[2]int{f, l.Layer}]:
			note.Code = TwiceHung
		default:
			seen[[2]int{f, l.Layer}] = true
			if n, is := bad[f]; is {
				n.Layer, n.Board = l.Layer, l.Board
				note = n
				break
			}
			s := job.Boards[b]
			switch {
			case !finite(s.Thickness, s.Width, s.Length, s.Kerf, s.Gap) || !(s.Thickness >= 0) || s.Kerf < 0 || s.Gap < 0 || s.Width < 0 || s.Length < 0:
				note.Code = BadSheet
			case µm(s.Width) < 2*least || µm(s.Length) < 2*least:
				note.Code = NoSheet
			default:
				p.hung = append(p.hung, hung{face: f, board: b, k: l.Layer, at: l, thick: µm(s.Thickness), before: -1, colour: colour[f]})
			}
		}
		if note.Code != "" {
			p.notes = append(p.notes, note)
		}
	}
	rank := func(h hung) int {
		switch job.Faces[h.face].Place {
		case Ceiling:
			return 1
		case Floor:
			if p.rules.FloorFirst {
				return 0
			}
			return 4
		}
		return 2 + (h.colour+h.k)&1
	}
	all := inOrder(p.hung, ranked(len(p.hung), func(i, j int) int {
		a, b := p.hung[i], p.hung[j]
		return cmp.Or(cmp.Compare(a.k, b.k), rank(a)-rank(b), a.face-b.face)
	}))
	edge := µm(p.rules.Edge)
	kept := p.hung[:0]
	thick := make([]int, len(job.Faces)) // hung on each face by now
	last := make([]int, len(job.Faces))
	for i := range last {
		last[i] = -1
	}
	for n, h := range all {
		f := job.Faces[h.face]
		var taken [4]int
		for e, id := range [4]string{f.Left, f.Right, f.Foot, f.Head} {
			other, is := faces[id]
			if id == "" || !is {
				continue
			}
			taken[e] = thick[other]
			h.past[e] = slices.ContainsFunc(all[n+1:], func(o hung) bool { return o.face == other && o.k == h.k })
		}
		h.area = box{taken[0] + edge, taken[2] + edge, µm(f.Width) - taken[0] - taken[1] - 2*edge, µm(f.Height) - taken[2] - taken[3] - 2*edge}
		thick[h.face] += h.thick
		if h.area.w < least || h.area.h < least {
			note := p.size(FaceTooSmall, f, taken[0]+taken[1]+2*edge, taken[2]+taken[3]+2*edge)
			note.Layer, note.Board = h.k, h.at.Board
			p.notes = append(p.notes, note)
			continue
		}
		for _, o := range f.Openings {
			if !finite(o.X, o.Y, o.W, o.H) || !(o.W > 0) || !(o.H > 0) {
				continue
			}
			if hole := back(o.Rect).meet(h.area); !hole.empty() {
				h.holes = append(h.holes, hole)
			}
		}
		h.before = last[h.face]
		last[h.face] = len(kept)
		kept = append(kept, h)
	}
	p.hung = kept
	for _, f := range job.Faces {
		for _, o := range f.Openings {
			if !(o.X >= 0) || !(o.Y >= 0) || !(o.W > 0) || !(o.H > 0) || unit.Over(o.X+o.W, f.Width) || unit.Over(o.Y+o.H, f.Height) {
				say(&p.notes, OpeningOff, f.ID, -1, o.ID, "x y width height", float64(o.X), float64(o.Y), float64(o.W), float64(o.H))
			}
		}
	}
}

func (p *Prepared) size(c Code, f Face, across, up int) Note {
	return Note{Code: c, Face: f.ID, Args: named("width height across up least", float64(f.Width), float64(f.Height), float64(metres(across)), float64(metres(up)), float64(metres(least)))}
}

// colours gives walls that meet different colours where that can be.
func colours(faces []Face, at map[string]int) []int {
	out := make([]int, len(faces))
	for i := range out {
		out[i] = -1
	}
	for start, f := range faces {
		if f.Place != Wall || out[start] >= 0 {
			continue
		}
		out[start] = 0
		for queue := []int{start}; len(queue) > 0; queue = queue[1:] {
			i := queue[0]
			for _, id := range [2]string{faces[i].Left, faces[i].Right} {
				if n, is := at[id]; is && id != "" && faces[n].Place == Wall && out[n] < 0 {
					out[n] = 1 - out[i]
					queue = append(queue, n)
				}
			}
		}
	}
	return out
}
