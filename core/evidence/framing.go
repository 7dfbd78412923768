package evidence

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"twoleaf/core/material"
)

// Distances in mm where a source leaves them out (common practice of the
// countries the sources are from).
const (
	usualWood     = 400.0
	usualSteel    = 600.0 // light studs
	usualRows     = 600.0 // of resilient channel
	usualClips    = 1200.0
	usualBlock    = 190.0
	usualJoist    = 235.0
	usualStud     = 89.0
	usualSteelD   = 92.0
	channelDepth  = 13.0
	furringDepth  = 19.0
	clipDepth     = 41.0
	rowsApart     = 25.0 // between two rows of studs
	lightSheet    = 0.5
	bearingSheet  = 1.52 // the stiffest of 0.84 to 1.52 mm: the table's value holds for all
	channelScrews = 400.0
)

// side is which of the two leaves of the text something holds.
type side int

const (
	neither side = iota
	onLeaf1
	onLeaf2
	onBoth
)

// resilient is what is said of a channel or clips.
type resilient struct {
	kind  material.FixingKind // "" is none
	on    side
	rows  []float64 // mm
	along []float64 // mm, of clips
}

// framing is what is said between the leaves.
type framing struct {
	kind                 material.FrameKind
	wood                 bool
	depth, width, sheet  float64 // mm, 0 not stated
	plate, apart         float64 // mm, of staggered studs and of two rows
	spacing              []float64
	resilient            resilient
	furring              []float64 // spacing of strips across joists
	furringDepth         float64
	bearing              bool
	horizontal, floating bool
	block                string // of a lined wall, as leaf text
	lining               string // how its linings are fixed
	on                   side   // which sides are lined
	ties                 bool
	assumed              []string
}

var (
	gauge   = wholeAfter("ga")
	plateMM = wholeAfter("plate")
	apartMM = wholeAfter("gap")
)

// gauges are thicknesses of steel by gauge number, mm (common practice).
var gauges = map[int]float64{25: 0.5, 24: 0.6, 22: 0.76, 20: 0.84, 18: 1.2, 16: 1.52, 14: 1.9}

// spacings reads "@400 or 600" (two), "@<=600" (400 and that) or "@400".
func spacings(s string) (out []float64, rest string) {
	r, ok := atSpacing.in(s)
	if !ok {
		return nil, s
	}
	first, second := value(r.first), value(r.second)
	switch {
	case r.upTo && first > usualWood:
		out = []float64{usualWood, first}
	case second > 0:
		out = []float64{first, second}
	default:
		out = []float64{first}
	}
	return out, s[:r.from] + " " + s[r.to:]
}

// readFraming reads the framing of a wall, a window or a floor. cavity is the
// depth of the space in mm where the table prints one, else 0.
func readFraming(text, spacing, kind string, cavity float64) (framing, error) {
	low := strings.ToLower(text)
	f := framing{horizontal: has(strings.ToLower(kind), "floor", "ceiling", "roof")}
	if _, block := blockMM.in(low); (block || strings.HasPrefix(low, "brick") || strings.HasPrefix(low, "concrete")) && strings.Contains(low, ";") {
		wall, lining, _ := strings.Cut(text, ";")
		f.block = wall
		if block && !has(strings.ToLower(wall), "concrete-block", "block wall") {
			f.block = "concrete-block " + wall
		}
		return f, f.readLining(strings.ToLower(lining), spacing)
	}
	main, hung := low, ""
	if i := strings.Index(low, "+"); i >= 0 {
		main, hung = low[:i], low[i:]
	}
	f.readHung(hung, low)
	f.spacing, main = spacings(main)
	if m, ok := plateMM.in(main); ok {
		f.plate = value(m.first)
		main = plateMM.replace(main, " ")
	}
	if m, ok := apartMM.in(main); ok {
		f.apart = value(m.first)
		main = apartMM.replace(main, " ")
	}
	if m, ok := gauge.in(main); ok {
		n, _ := strconv.Atoi(m.first)
		if f.sheet = gauges[n]; f.sheet == 0 {
			return f, fmt.Errorf("no steel thickness is known for gauge %d in %q", n, text)
		}
		main = gauge.replace(main, " ")
	}
	if m, ok := sheetMM.in(main); ok {
		f.sheet = value(m.first)
		if m.second != "" { // a range: the stiffest has the lowest rating, and the table's figure holds for all
			f.sheet = value(m.second)
		}
		main = sheetMM.replace(main, " ")
	}
	main = bracket.replace(main, " ")
	// Of "38x235 or I-joist 241" the first.
	first, _, _ := strings.Cut(main, " or ")
	if m, ok := section.in(first); ok {
		f.width = value(m.first)
		f.depth = value(m.second)
	} else if m, ok := bareDepth.in(first); ok {
		f.depth = value(m.first)
	}
	steel := has(main, "steel", "metal", "c-stud")
	f.wood = !steel
	f.bearing = has(main, "loadbearing", "load-bearing", "load bearing")
	switch {
	case has(main, "door"):
		return f, fmt.Errorf("a door: kept as a measured spectrum, not computed")
	case has(main, "rafter", "truss"):
		return f, fmt.Errorf("a roof: its covering is no board of the tables")
	case has(main, "extra leaf"):
		return f, fmt.Errorf("a leaf inside whose place and fixing are not stated")
	case has(main, "floating"):
		f.floating = true
	}
	switch {
	case has(main, "joist") || f.horizontal && has(main, "wood", "steel"):
		f.kind, f.horizontal = material.Joist, true
		if steel {
			f.kind = material.SteelJoist
		}
	case has(main, "window", "glaz", "no studs", "none", "independent") || main == "":
		f.kind = material.NoFrame
	case has(main, "ties", "tied"):
		f.kind, f.ties = material.NoFrame, true
	case has(main, "cavity"):
		f.kind = material.NoFrame
	case has(main, "double", "two rows", "separate"):
		f.kind = material.Double
	case has(main, "staggered"):
		f.kind = material.Staggered
	case steel:
		f.kind = material.CStud
	case has(main, "wood", "stud"):
		f.kind = material.Wood
	default:
		return f, fmt.Errorf("no frame is known for %q", text)
	}
	if has(main, "frame one side") {
		f.kind = material.NoFrame
	}
	return f, f.complete(spacing, cavity)
}

// readHung reads what follows the plus: "+RC@400 or 600 on leaf1", "+furring@400 on ceiling", "+clips@600x1200 on leaf2".
func (f *framing) readHung(hung, all string) {
	if hung == "" {
		return
	}
	switch {
	case has(hung, "clip"):
		f.resilient.kind = material.Clip
	case has(hung, "rc", "channel", "resilient"):
		f.resilient.kind = material.Channel
	case has(hung, "furring", "strap"):
		f.furring, _ = spacings(hung)
		if len(f.furring) == 0 {
			f.furring = []float64{usualWood}
			f.assumed = append(f.assumed, "furring each 400 mm")
		}
		f.furringDepth = furringDepth
		if m, ok := bareDepth.in(atSpacing.replace(hung, " ")); ok {
			f.furringDepth = value(m.first)
		}
		return
	default:
		return
	}
	if m, ok := section.in(hung); ok && f.resilient.kind == material.Clip {
		f.resilient.rows, f.resilient.along = []float64{value(m.first)}, []float64{value(m.second)}
	} else {
		f.resilient.rows, _ = spacings(hung)
	}
	if len(f.resilient.rows) == 0 {
		f.resilient.rows = []float64{usualRows}
		f.assumed = append(f.assumed, "channel each 600 mm")
	}
	if f.resilient.kind == material.Clip && len(f.resilient.along) == 0 {
		f.resilient.along = []float64{usualClips}
		f.assumed = append(f.assumed, "clips each 1200 mm")
	}
	switch {
	case has(hung, "both"):
		f.resilient.on = onBoth
	case has(hung, "ceiling", "leaf2", "through it") || f.horizontal || has(all, "joist"):
		f.resilient.on = onLeaf2
	default:
		f.resilient.on = onLeaf1
	}
}

// complete takes what a source leaves out as it usually is, and says so.
func (f *framing) complete(spacing string, cavity float64) error {
	say := func(s string, args ...any) { f.assumed = append(f.assumed, fmt.Sprintf(s, args...)) }
	if f.kind == material.NoFrame {
		return nil
	}
	if len(f.spacing) == 0 && spacing != "" && !has(spacing, "not stated") {
		f.spacing, _ = spacings("@" + strings.TrimSpace(spacing))
	}
	standOff := 0.0
	if f.resilient.on != neither {
		standOff = channelDepth
		if f.resilient.kind == material.Clip {
			standOff = clipDepth
		}
		if f.resilient.on == onBoth {
			standOff *= 2
		}
	}
	if f.depth == 0 {
		switch usual := usualStud; {
		case f.kind == material.Staggered:
			f.depth = usual
		case cavity > 0 && f.kind == material.Double:
			f.depth = math.Floor((cavity - rowsApart - standOff) / 2)
		case cavity > 0:
			f.depth = cavity - standOff - f.furringDepth
		case f.kind == material.Joist || f.kind == material.SteelJoist:
			f.depth = usualJoist
			say("joists %.0f mm deep", f.depth)
		case !f.wood:
			f.depth = usualSteelD
			say("studs %.0f mm deep", f.depth)
		default:
			f.depth = usual
			say("studs %.0f mm deep", f.depth)
		}
	}
	if f.depth <= 0 {
		return fmt.Errorf("the frame has no depth in a space of %g mm", cavity)
	}
	if f.wood && f.width == 0 {
		f.width = 38
	}
	if !f.wood {
		if f.sheet == 0 {
			f.sheet = lightSheet
			if f.bearing {
				f.sheet = bearingSheet
			}
			if f.kind == material.SteelJoist {
				f.sheet = gauges[18]
			}
			say("steel %.2f mm thick", f.sheet)
		}
		if f.width == 0 {
			f.width = 32
			if f.sheet >= 0.84 {
				f.width = 41
			}
		}
	}
	if f.kind == material.Staggered && f.plate == 0 {
		f.plate = f.depth + 51
		if cavity > 0 {
			f.plate = max(cavity-standOff, f.depth)
		} else {
			say("plate %.0f mm", f.plate)
		}
	}
	if f.kind == material.Double && f.apart == 0 {
		f.apart = rowsApart
		if rest := cavity - standOff - 2*f.depth; cavity > 0 && rest >= 0 {
			f.apart = rest
		} else if cavity == 0 {
			say("%.0f mm between the rows", f.apart)
		}
	}
	if len(f.spacing) == 0 {
		f.spacing = []float64{usualWood}
		if !f.wood && !f.bearing && f.kind != material.SteelJoist {
			f.spacing = []float64{usualSteel}
		}
		say("frame each %.0f mm", f.spacing[0])
	}
	return nil
}

// readLining reads how the linings of a masonry wall are held.
func (f *framing) readLining(low, spacing string) error {
	f.lining = low
	switch {
	case has(low, "both"):
		f.on = onBoth
	case has(low, "leaf1 only"), has(low, "on leaf1"), has(low, "one side"), has(low, "on one leaf"):
		f.on = onLeaf1
	default:
		f.on = onLeaf1
	}
	plain := bracket.replace(low, " ")
	f.spacing, plain = spacings(plain)
	if len(f.spacing) == 0 && spacing != "" && !has(spacing, "not stated") {
		f.spacing, _ = spacings("@" + spacing)
	}
	if m, ok := section.in(plain); ok {
		f.width = value(m.first)
		f.depth = value(m.second)
	} else if v, ok := firstNumber(strings.NewReplacer("leaf1", "", "leaf2", "").Replace(plain)); ok {
		f.depth = v
	}
	if m, ok := sheetMM.in(plain); ok {
		f.sheet = value(m.first)
	}
	free := has(plain, "free", "independent", "not touching")
	resil := has(plain, "rc", "resilient", "channel")
	switch {
	case has(plain, "clip"):
		f.kind, f.resilient.kind = material.Bare, material.Clip
	case has(plain, "z-bar", "zbar", "hat"):
		f.kind = material.ZBar
	case resil && has(plain, "strapping", "furring"):
		f.kind = material.ZBar // channel on strips is as a Z-bar
	case has(plain, "stud") || free:
		f.kind = material.Standing
	case resil:
		f.kind, f.resilient.kind = material.Bare, material.Channel
	case has(plain, "strapping", "furring", "wood"):
		f.kind = material.Strapping
	case has(plain, "direct", "adhered", "glued", "bonded", "dabs"):
		f.kind = material.NoFrame
	default:
		return fmt.Errorf("no way is known in which %q holds a lining", strings.TrimSpace(low))
	}
	if f.kind == material.NoFrame {
		return nil
	}
	if len(f.spacing) == 0 {
		f.spacing = []float64{usualSteel}
		f.assumed = append(f.assumed, "lining held each 600 mm")
	}
	return nil
}
