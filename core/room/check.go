package room

import (
	"math"

	"twoleaf/core/band"
	"twoleaf/core/unit"
)

func (a *assessment) fault(f Fault) { a.report.Faults = append(a.report.Faults, f) }

// No size, level or flow of a room is out of these, in SI (our choice).
const largest, smallest = 1e6, 1e-9

// loudest bounds a level or a loss, dB (our choice).
const loudest = 200

// bounded keeps a level or loss within what is possible.
func bounded(db float64) float64 { return max(-loudest, min(loudest, db)) }

// wrong names what is wrong with a size that may be 0.
func wrong(x float64) (Code, bool) {
	switch {
	case !finite(x):
		return NotNumber, true
	case x < 0:
		return Negative, true
	case x > largest:
		return TooLarge, true
	case x > 0 && x < smallest:
		return TooSmall, true
	}
	return "", false
}

// check names what is wrong and leaves it out.
func (a *assessment) check() {
	r := a.room
	for _, f := range [...]struct {
		name string
		v    *float64
	}{
		{"length", &r.Length}, {"width", &r.Width}, {"height", &r.Height}, {"volume", &r.Volume}, {"time", &r.Time},
		{"target", &r.Target}, {"background", &r.Background}, {"minutes", &r.Use.Minutes}, {"watts", &r.Use.Watts}, {"air", &r.Use.Air},
	} {
		if c, bad := wrong(*f.v); bad {
			a.fault(Fault{Code: c, Field: f.name, Value: *f.v})
			*f.v = 0
		}
	}
	if r.volume() == 0 {
		a.fault(Fault{Code: Zero, Field: "volume"})
	}
	if r.Target > 0 && r.Background > 0 && r.Target < r.Background {
		a.fault(Fault{Code: BelowBackground, Field: "target", Value: r.Target, Limit: r.Background})
	}
	a.checkPlaying(r.Playing, "")
	a.checkListener(r.Listener, "")
	// What follows may be mended in place: the room's own slices stay as they are.
	r.Spaces = append([]Space(nil), r.Spaces...)
	r.Surfaces = append([]Surface(nil), r.Surfaces...)
	for i := range r.Spaces {
		a.checkSpace(&r.Spaces[i])
	}
	n := len(r.Surfaces)
	a.out, a.drop, a.kinds = make([]bool, n), make([][]bool, n), make([][]*Kind, n)
	for i := range r.Surfaces {
		a.checkSurface(i)
	}
	for side := 1; side <= 4; side++ {
		a.checkSide(side)
	}
}

func (a *assessment) checkPlaying(list []Playing, space string) {
	for _, p := range list {
		if c, bad := wrong(p.Level); bad || p.Level > loudest {
			if !bad {
				c = TooLarge
			}
			a.fault(Fault{Code: c, Space: space, Field: "level", Value: p.Level})
		}
		if p.Octave != nil {
			for o, l := range p.Octave {
				if !finite(l) {
					a.fault(Fault{Code: Lacking, Space: space, Field: "octave", Value: Octaves[o]})
				}
			}
		}
		if _, ok := SourceByID(p.Source); !ok && p.Octave == nil {
			a.fault(Fault{Code: Unknown, Space: space, Field: "source", Typed: p.Source})
		}
	}
}

func (a *assessment) checkListener(id, space string) {
	if _, ok := ListenerByID(id); !ok && id != "" {
		a.fault(Fault{Code: Unknown, Space: space, Field: "listener", Typed: id})
	}
}

func (a *assessment) checkSpace(s *Space) {
	for _, f := range [...]struct {
		name string
		v    *float64
	}{
		{"volume", &s.Volume}, {"time", &s.Time}, {"absorption", &s.Absorption}, {"distance", &s.Distance},
		{"target", &s.Target}, {"background", &s.Background},
	} {
		if c, bad := wrong(*f.v); bad {
			a.fault(Fault{Code: c, Space: s.ID, Field: f.name, Value: *f.v})
			*f.v = 0
		}
	}
	a.checkListener(s.Listener, s.ID)
	a.checkPlaying(s.Noise, s.ID)
	l, _ := ListenerByID(s.Listener)
	target, background := s.Target, s.Background
	if target == 0 {
		target = l.DBA
	}
	if background == 0 {
		background = l.Background
	}
	if target > 0 && background > 0 && target < background {
		a.fault(Fault{Code: BelowBackground, Space: s.ID, Field: "target", Value: target, Limit: background})
	}
}

// gap returns the first band of a spectrum that is no number.
func gap(s *band.Spectrum) (hz float64, bad bool) {
	for i, v := range s {
		if !finite(v) {
			return band.Nominal[i], true
		}
	}
	return 0, false
}

func (a *assessment) checkSurface(i int) {
	r := a.room
	s := &r.Surfaces[i]
	f := Fault{Surface: s.ID}
	say := func(c Code, field string, v, limit float64) {
		f.Code, f.Field, f.Value, f.Limit = c, field, v, limit
		a.fault(f)
	}
	w, h, area := r.face(i)
	a.drop[i], a.kinds[i] = make([]bool, len(s.Openings)), make([]*Kind, len(s.Openings))
	for _, x := range [...]struct {
		name string
		v    float64
	}{{"width", w}, {"height", h}, {"area", area}, {"flankLoss", s.FlankLoss}, {"mass", s.Mass}, {"thickness", s.Thickness}, {"inside", s.Inside}} {
		if c, bad := wrong(x.v); bad {
			say(c, x.name, x.v, 0)
			switch x.name {
			case "flankLoss":
				s.FlankLoss = 0
			case "mass":
				s.Mass = 0
			case "thickness":
				s.Thickness = 0
			case "inside":
				s.Inside = 0
			default:
				a.out[i] = true
			}
		}
	}
	if area == 0 {
		say(Zero, "area", 0, 0)
		a.out[i] = true
	}
	if hz, bad := gap(&s.TL); bad {
		say(Lacking, "tl", hz, 0)
		a.out[i] = true
	}
	if hz, bad := gap(&s.Spread); bad {
		say(Lacking, "spread", hz, 0)
		s.Spread = band.Spectrum{}
	}
	for k := range s.TL {
		s.TL[k], s.Spread[k] = bounded(s.TL[k]), max(0, bounded(s.Spread[k]))
	}
	if s.Flank != "" {
		if _, ok := FlankByID(s.Flank); !ok {
			f.Typed = s.Flank
			say(Unknown, "flank", 0, 0)
			f.Typed = ""
		}
	}
	if s.Beyond != "" && a.spaceAt(s.Beyond) < 0 {
		f.Typed = s.Beyond
		say(Unknown, "beyond", 0, 0)
		f.Typed = ""
	}
	if a.out[i] {
		return
	}
	taken := 0.0
	for j := range s.Openings {
		used, ok := a.checkOpening(s, j, i, w, h, area)
		if !ok {
			a.drop[i][j] = true
			continue
		}
		if taken+used > area*(1+unit.Slack) {
			f.Opening = s.Openings[j].ID
			say(Overfull, "openings", taken+used, area)
			f.Opening = ""
			a.drop[i][j] = true
			continue
		}
		taken += used
	}
	a.checkOverlap(i)
}

// checkOpening names what is wrong with an opening; what it takes of the face, m².
func (a *assessment) checkOpening(s *Surface, j, i int, w, h, area float64) (used float64, ok bool) {
	o := &s.Openings[j]
	f := Fault{Surface: s.ID, Opening: o.ID}
	say := func(c Code, field string, v, limit float64) {
		f.Code, f.Field, f.Value, f.Limit = c, field, v, limit
		a.fault(f)
	}
	k, known := kindAt(o.Kind)
	if !known {
		f.Typed = o.Kind
		say(Unknown, "kind", 0, 0)
		return 0, false
	}
	a.kinds[i][j] = k
	ok = true
	for _, x := range [...]struct {
		name string
		v    float64
	}{
		{"width", o.Width}, {"height", o.Height}, {"crack", o.Crack}, {"run", o.Run}, {"depth", o.Depth}, {"rating", o.Rating},
		{"count", float64(o.Count)}, {"x", o.X}, {"y", o.Y},
	} {
		if c, bad := wrong(x.v); bad {
			say(c, x.name, x.v, 0)
			ok = false
		}
	}
	if !ok {
		return 0, false
	}
	if o.Seal != "" && !k.seals(Seal(o.Seal)) {
		f.Typed = o.Seal
		say(Unknown, "seal", 0, 0)
		f.Typed = ""
		return 0, false
	}
	if len(o.Octaves) > 0 {
		for n := range 7 {
			if n >= len(o.Octaves) || !finite(o.Octaves[n]) {
				say(Lacking, "octaves", Octaves[n+1], 0)
				return 0, false
			}
		}
	}
	if o.TL != nil {
		if hz, bad := gap(o.TL); bad {
			say(Lacking, "tl", hz, 0)
			return 0, false
		}
	}
	m := o.measure(k, s)
	if k.Group == Crack && m.Width == 0 {
		say(Zero, "width", 0, 0)
		return 0, false
	}
	gape := m.Crack
	if k.Group == Crack {
		gape = m.Height
	}
	if (k.Gap > 0 || k.Group == Crack) && unit.Over(gape, widestSlit) {
		say(TooLarge, "crack", gape, widestSlit)
		return 0, false
	}
	used = m.area(k) * float64(m.Count)
	high := m.Height
	if high == 0 {
		high = m.Width
	}
	switch {
	case unit.Over(used, area):
		say(LargerThanWall, "area", used, area)
		return 0, false
	case k.Group == Crack:
		// It may run round the whole face.
	case w > 0 && unit.Over(m.Width, w):
		say(LargerThanWall, "width", m.Width, w)
		return 0, false
	case h > 0 && unit.Over(high, h):
		say(LargerThanWall, "height", high, h)
		return 0, false
	case o.Placed && w > 0 && unit.Over(o.X+m.Width, w):
		say(LargerThanWall, "x", o.X+m.Width, w)
	case o.Placed && h > 0 && unit.Over(o.Y+high, h):
		say(LargerThanWall, "y", o.Y+high, h)
	}
	return used, true
}

// checkOverlap names openings that lie over each other; both still count.
func (a *assessment) checkOverlap(i int) {
	s := &a.room.Surfaces[i]
	box := func(j int) (x0, y0, x1, y1 float64, ok bool) {
		if a.drop[i][j] || !s.Openings[j].Placed {
			return
		}
		k := a.kinds[i][j]
		m := s.Openings[j].measure(k, s)
		if k.Group == Crack || k.Group == Pipe {
			return
		}
		high := m.Height
		if high == 0 {
			high = m.Width
		}
		return m.X, m.Y, m.X + m.Width, m.Y + high, true
	}
	for j := range s.Openings {
		x0, y0, x1, y1, ok := box(j)
		for l := 0; ok && l < j; l++ {
			u0, v0, u1, v1, too := box(l)
			if !too {
				continue
			}
			const hair = 1e-6 // m: touching is no overlap
			if wide, tall := math.Min(x1, u1)-math.Max(x0, u0), math.Min(y1, v1)-math.Max(y0, v0); wide > hair && tall > hair {
				a.fault(Fault{Code: Overlap, Surface: s.ID, Opening: s.Openings[l].ID, Other: s.Openings[j].ID, Field: "x", Value: wide * tall})
			}
		}
	}
}

// checkSide names a side whose parts are together longer than it.
func (a *assessment) checkSide(side int) {
	r := a.room
	long := r.Length
	if side%2 == 0 {
		long = r.Width
	}
	sum, last := 0.0, ""
	for i := range r.Surfaces {
		if r.side(i) == side && r.Surfaces[i].Face == Wall && !a.out[i] {
			w, _, _ := r.face(i)
			sum += w
			last = r.Surfaces[i].ID
		}
	}
	if long > 0 && unit.Over(sum, long) {
		a.fault(Fault{Code: Overfull, Surface: last, Field: "width", Value: sum, Limit: long})
	}
}
