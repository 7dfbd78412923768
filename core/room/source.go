// Package room is what is loud, who must not hear it, and what lies between:
// openings, cracks and the structure that both sides share, what is heard beyond
// and by which ways, what to spend next, what the people breathe, and what a
// reading says of it all. One effect a file; Assess joins them. Levels are in
// octaves, losses in thirds; everything else is in SI.
package room

import (
	"math"

	"twoleaf/core/rating"
)

// Octaves are the mid-band frequencies of a source's spectrum, Hz.
var Octaves = [9]float64{31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000}

// cWeight is the C-weighting, likewise.
var cWeight = Levels{-3.0, -0.8, -0.2, 0, 0, 0, -0.2, -0.8, -3.0}

// threshold is the threshold of hearing at the middle of Octaves, free field, dB (ISO226).
var threshold = Levels{59.5, 37.5, 22.1, 11.4, 4.4, 2.4, -1.3, -5.4, 12.6}

// aWeight is the A-weighting of Octaves, dB (IEC 61672-1:2013, Table 3).
var aWeight = [9]float64{-39.4, -26.2, -16.1, -8.6, -3.2, 0, 1.2, 1.0, -1.1}

// silent stands for an octave that a source has nothing in.
const silent = -100

// Source is what plays: room-average level per octave in a small treated room, dB.
type Source struct {
	ID     string
	Levels [9]float64
	// Floor says that its pedal or cabinet also drives the floor, which no
	// airborne figure counts.
	Floor  bool
	Origin string // of the levels
	// Speech says that words may be understood; House that it is what a house does.
	Speech, House bool
}

// SourceSpread is how far a source's level may be off, dB: the spectra are
// estimates of ours (common practice).
const SourceSpread = 5

const estimate = "common practice"

// sources are engineering estimates of the equivalent level, ± 5 dB (common practice).
var sources = []Source{
	{ID: "band", Levels: Levels{93, 106, 105, 103, 103, 103, 102, 98, 93}, Floor: true, Origin: estimate},
	{ID: "drums", Levels: Levels{82, 98, 100, 98, 98, 98, 97, 95, 91}, Floor: true, Origin: estimate},
	{ID: "drumsLight", Levels: Levels{70, 86, 88, 87, 88, 88, 87, 85, 81}, Floor: true, Origin: estimate},
	{ID: "bass", Levels: Levels{92, 104, 102, 97, 90, 84, 78, 70, 60}, Floor: true, Origin: estimate},
	{ID: "guitar", Levels: Levels{55, 75, 92, 98, 100, 100, 99, 94, 82}, Floor: true, Origin: estimate},
	{ID: "singing", Levels: Levels{silent, silent, 72, 82, 90, 92, 88, 80, 70}, Origin: estimate},
	{ID: "piano", Levels: Levels{50, 66, 80, 85, 85, 82, 76, 68, 58}, Floor: true, Origin: estimate},
	{ID: "monitors", Levels: Levels{80, 88, 87, 85, 83, 81, 79, 76, 72}, Floor: true, Origin: estimate},
	{ID: "speech", Levels: Levels{silent, silent, 58, 66, 70, 68, 62, 55, 48}, Speech: true, Origin: estimate},
}

// noises are what a house does, the airborne part of it, likewise estimated.
var noises = []Source{
	{ID: "children", Levels: Levels{silent, 52, 60, 70, 76, 78, 74, 66, 56}, Floor: true, Speech: true, House: true, Origin: estimate},
	{ID: "kitchen", Levels: Levels{silent, 55, 58, 62, 64, 64, 62, 58, 52}, House: true, Origin: estimate},
	{ID: "tv", Levels: Levels{45, 58, 64, 66, 66, 63, 59, 54, 48}, Speech: true, House: true, Origin: estimate},
	{ID: "talk", Levels: Levels{silent, silent, 52, 60, 64, 62, 56, 49, 42}, Speech: true, House: true, Origin: estimate},
}

// Noises returns what the house may do, loudest first. Steps are not among
// them: they come through the structure.
func Noises() []Source { return append([]Source(nil), noises...) }

// Sources returns what may play, loudest first.
func Sources() []Source { return append([]Source(nil), sources...) }

// SourceByID returns a source.
func SourceByID(id string) (Source, bool) {
	for _, list := range [2][]Source{sources, noises} {
		for _, s := range list {
			if s.ID == id {
				return s, true
			}
		}
	}
	return Source{}, false
}

// DBA returns the A-weighted level of a spectrum, dB:
//
//	LA = 10 lg Σ 10^((Li + Ai)/10)
func DBA(levels [9]float64) float64 {
	sum := 0.0
	for i, l := range levels {
		sum += ten(l + aWeight[i])
	}
	return 10 * math.Log10(sum)
}

// At returns the source at another A-weighted level: every octave moved alike.
func (s Source) At(dba float64) [9]float64 {
	by := dba - DBA(s.Levels)
	out := s.Levels
	for i := range out {
		if out[i] > silent {
			out[i] += by
		}
	}
	return out
}

// Listener is somebody beyond, with the A-weighted level that does not disturb them.
type Listener struct {
	ID     string
	DBA    float64
	Source string // key of testdata/SOURCES.md, or "common practice"
	// Background is what is usually there without us, A-weighted, dB (common practice).
	Background float64
}

// listeners: a sleeper, 30 dB, and a living room, 35 dB (WHO 1999, Table 4.1);
// a studio's background, 25 dB (common practice).
var listeners = []Listener{
	{"sleeper", 30, "WHO1999", 25},
	{"living", 35, "WHO1999", 30},
	{"studio", 25, "common practice", 20},
}

// Listeners returns who may be beyond.
func Listeners() []Listener { return append([]Listener(nil), listeners...) }

// ListenerByID returns a listener.
func ListenerByID(id string) (Listener, bool) {
	for _, l := range listeners {
		if l.ID == id {
			return l, true
		}
	}
	return Listener{}, false
}

// Allowed returns the level per octave, 63 to 4000 Hz, dB, that together makes
// an A-weighted level and has the shape of a noise criterion curve, so that no
// octave stands out: the NC curve, found between the printed ones, whose
// A-weighted sum is dba. Below 250 Hz it lets more through than a flat
// spectrum would, as the ear does.
//
// Between NC 15 and NC 65, about 27 to 72 dB; outside, the end curve is moved
// as a whole.
// Source: curves, see rating.NC; the choice of shape is ours.
func Allowed(dba float64) [7]float64 {
	shape := func(nc float64) (out [7]float64, level float64) {
		total := 0.0
		curve := rating.NCCurve(nc)
		for i := range out {
			out[i] = curve[i]
			total += ten(out[i] + aWeight[i+1])
		}
		return out, 10 * math.Log10(total)
	}
	low, high := 15.0, 65.0
	for range 50 { // halvings, far below the last digit of a decibel
		if mid := (low + high) / 2; levelOf(shape(mid)) > dba {
			high = mid
		} else {
			low = mid
		}
	}
	out, level := shape(low)
	for i := range out {
		out[i] += dba - level
	}
	return out
}

func levelOf(_ [7]float64, level float64) float64 { return level }

// Needed returns the loss needed per octave, 63 to 4000 Hz, dB, so that a source
// leaves no more than allowed beyond:
//
//	R = L1 − L2 + 10 lg(S/A), with S/A taken as 1
//
// S is the face [m²], A the absorption of a small furnished room, about 10 m²,
// so that the last term is near 0. 0 where the source is quieter already.
// Source: L2 = L1 − R + 10 lg(S/A), e.g. ISO 12354-1; S/A = 1 common practice.
func Needed(source [9]float64, allowed [7]float64) [7]float64 {
	var out [7]float64
	for i := range out {
		out[i] = math.Max(0, source[i+1]-allowed[i])
	}
	return out
}
