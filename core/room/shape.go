package room

import "math"

const (
	// HeadroomCode is the least ceiling height of a room to live in, m: 7 ft (IRC-R305).
	HeadroomCode = 7 * 0.3048
	// StandHeight is what tall cymbal stands and a raised arm want, m: 7 ft 3 in
	// (builders' reports; common practice).
	StandHeight = 7.25 * 0.3048
)

// shape lays out the room: faces unfolded flat, and what is left inside.
func (a *assessment) shape() (out Shape) {
	r := a.room
	out.Length, out.Width, out.Height = r.Length, r.Width, r.Height
	out.Known = positive(r.Length) && positive(r.Width) && positive(r.Height)
	if !out.Known {
		return out
	}
	var side [5]float64 // what stands inside on each
	var top, bottom float64
	for i := range r.Surfaces {
		s := &r.Surfaces[i]
		switch s.Face {
		case Wall:
			if n := r.side(i); n > 0 && n <= 4 {
				side[n] = math.Max(side[n], s.Inside)
			}
		case Ceiling:
			top = math.Max(top, s.Inside)
		default:
			bottom = math.Max(bottom, s.Inside)
		}
	}
	left := func(x, a, b float64) float64 { return math.Max(0, x-a-b) }
	out.InsideLength = left(r.Length, side[2], side[4])
	out.InsideWidth = left(r.Width, side[1], side[3])
	out.InsideHeight = left(r.Height, top, bottom)
	out.LostFloor = r.Length*r.Width - out.InsideLength*out.InsideWidth
	out.InsideVolume = out.InsideLength * out.InsideWidth * out.InsideHeight
	out.HeightLeft = out.InsideHeight - HeadroomCode
	out.StandLeft = out.InsideHeight - StandHeight
	out.UnfoldedWidth, out.UnfoldedHeight = r.Length+2*r.Height, 2*r.Width+2*r.Height
	// Where each part of a face goes on: parts lie beside each other in their order.
	var at [7]float64
	for i := range r.Surfaces {
		s := &r.Surfaces[i]
		w, h, _ := r.face(i)
		if !positive(w) || !positive(h) && s.Face != Wall {
			continue
		}
		f := FaceAt{Surface: i}
		switch n := r.side(i); {
		case s.Face == Wall && n >= 1 && n <= 4:
			switch n {
			case 1: // over the floor
				f.X, f.Y, f.Width, f.Height = r.Height+at[n], r.Width, w, r.Height
			case 2: // right of it
				f.X, f.Y, f.Width, f.Height = r.Height+r.Length, r.Width+r.Height+at[n], r.Height, w
			case 3: // under it
				f.X, f.Y, f.Width, f.Height = r.Height+at[n], 2*r.Width+r.Height, w, r.Height
			case 4: // left of it
				f.X, f.Y, f.Width, f.Height = 0, r.Width+r.Height+at[n], r.Height, w
			}
			at[n] += w
		case s.Face == Ceiling:
			f.X, f.Y, f.Width, f.Height = r.Height+at[5], 0, w, h
			at[5] += w
		case s.Face == Floor:
			f.X, f.Y, f.Width, f.Height = r.Height+at[6], r.Width+r.Height, w, h
			at[6] += w
		default:
			continue
		}
		out.Faces = append(out.Faces, f)
	}
	return out
}

// A face breaks the room's strategy when it alone lets through this much more for its
// size than all others, or is lighter than this part of their mean (our choice).
const (
	loneTimes = 4.0
	lightPart = 0.75
)

// strategy marks the faces that fall out of the room's strategy. The floor on
// the ground and faces with nothing beyond do not count.
func (a *assessment) strategy() {
	r := a.room
	counts := func(i int) bool { return !a.out[i] && r.Surfaces[i].Beyond != "" }
	share, area, mass, n := 0.0, 0.0, 0.0, 0.0
	for i := range r.Surfaces {
		if counts(i) {
			share += a.report.Surfaces[i].Share
			area += a.report.Surfaces[i].Area
			if r.Surfaces[i].Face != Floor && r.Surfaces[i].Mass > 0 {
				mass += r.Surfaces[i].Mass
				n++
			}
		}
	}
	for i := range r.Surfaces {
		s, rep := &r.Surfaces[i], &a.report.Surfaces[i]
		if !counts(i) {
			continue
		}
		if others := share - rep.Share; area > rep.Area && others > 0 && rep.Share/rep.Area > loneTimes*others/(area-rep.Area) {
			rep.Breaks = append(rep.Breaks, LoneWeak)
		}
		if s.Face != Floor && s.Mass > 0 && n > 1 && s.Mass < lightPart*(mass-s.Mass)/(n-1) {
			rep.Breaks = append(rep.Breaks, Lighter)
		}
	}
}
