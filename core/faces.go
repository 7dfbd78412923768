package core

import (
	"twoleaf/core/load"
	"twoleaf/core/plan"
	"twoleaf/core/room"
	"twoleaf/core/unit"
)

// hole is one opening as it lies on its face, m, sizes filled in from its kind.
type hole struct {
	load.Rect
	kind   room.Kind
	id     string
	seal   string
	count  int
	crack  float64 // under a door
	run    float64
	placed bool // by hand
	round  bool
}

// Where an opening lies that nobody has placed, m (common practice).
const (
	doorFromCorner = 0.30
	sillHeight     = 0.90
	boxHeight      = 0.30
	fromCeiling    = 0.15
	apart          = 0.40
)

// holes lays the openings of a face out: where they were placed, the others
// where such things usually are, one beside the other.
func holes(f plan.Face) []hole {
	var out []hole
	w, h := float64(f.Width), float64(f.Height)
	fromRight, fromLeft, high := doorFromCorner, apart, apart
	for _, o := range f.Openings {
		k, ok := room.KindByID(o.Opening.Kind)
		if !ok {
			continue
		}
		g := hole{kind: k, id: o.Opening.ID, seal: o.Opening.Seal, count: o.Count, crack: float64(o.Crack), run: float64(o.Run), placed: o.Placed}
		g.Width, g.Height = unit.Length(usually(float64(o.Width), k.Width)), unit.Length(usually(float64(o.Height), k.Height))
		if g.seal == "" {
			g.seal = string(k.Seals[0])
		}
		if !o.CrackSaid {
			g.crack = k.Gap
		}
		g.run = usually(g.run, k.Run)
		if g.Width == 0 {
			g.Width = boxSide
		}
		if g.Height == 0 && k.Group != room.Crack {
			g.Height, g.round = g.Width, k.Group != room.Box
		}
		x, y := float64(o.X), float64(o.Y)
		if !o.Placed {
			wide, tall := float64(g.Width), float64(g.Height)
			switch k.Group {
			case room.Door:
				x, y = w-fromRight-wide, 0
				fromRight += wide + apart
			case room.Window:
				x, y = max(0, (w-wide)/2), min(sillHeight, max(0, (h-tall)/2))
			case room.Duct:
				x, y = high, h-fromCeiling-tall
				high += wide + apart
			case room.Crack:
				x, y = 0, 0
			case room.Lamp:
				x, y = (w-wide)/2, (h-tall)/2
			default:
				x, y = fromLeft, boxHeight
				fromLeft += wide + 2*apart
			}
			x, y = max(0, min(x, w-wide)), max(0, min(y, h-tall))
		}
		g.X, g.Y = unit.Length(x), unit.Length(y)
		out = append(out, g)
	}
	return out
}

// boxSide is an electrical box, m: 2 by 4 in with its plaster ring, about 0.01 m² (common practice).
const boxSide = 0.1

func usually[T ~float64](typed, own T) T {
	if typed > 0 {
		return typed
	}
	return own
}

// between is the narrowest opening that rows of channel must stop at, m: what is
// smaller goes between two rows, which are moved a little for it (common practice).
const between = 0.35

// cutsRows tells openings that channel stops at from what goes through a sheet
// between two rows.
func (h hole) cutsRows() bool {
	return h.kind.Group != room.Crack && max(h.Width, h.Height) > between
}

// loadFace is a face as the layout of clips takes it.
func loadFace(f plan.Face, r plan.Resolved, gap int) load.Face {
	face := load.Face{Width: f.Width, Height: f.Height, Ceiling: f.Surface.Kind == plan.Ceiling}
	for _, h := range holes(f) {
		if h.cutsRows() {
			face.Openings = append(face.Openings, h.Rect)
		}
	}
	face.Frame = frameOf(f, r.Assembly.Gaps[gap].Spacing)
	return face
}

// frameOf is what stands or hangs behind a face, as often as its spacing says.
// At both edges stands a stud, or hangs a joist or the piece that edges of
// boards are nailed to; joists span the shorter way (common practice).
func frameOf(f plan.Face, spacing unit.Length) load.Frame {
	if f.Surface.Kind == plan.Ceiling {
		return load.Frame{Spacing: spacing, Ends: true, AlongX: f.Width < f.Height, First: spacing}
	}
	return load.Frame{Spacing: spacing, Ends: true, Jambs: true}
}
