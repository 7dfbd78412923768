// Package room is what is loud, who must not hear it, and what lies between:
// its first form, the loss needed per octave from one source to one listener.
package room

import (
	"math"

	"twoleaf/core/rating"
)

// Octaves are the mid-band frequencies of a source's spectrum, Hz.
var Octaves = [9]float64{31.5, 63, 125, 250, 500, 1000, 2000, 4000, 8000}

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
	Floor bool
}

// SourceSpread is how far a source's level may be off, dB: the spectra are
// estimates of ours (common practice).
const SourceSpread = 5

// sources are engineering estimates of the equivalent level, ± 5 dB (common practice).
var sources = []Source{
	{"band", [9]float64{93, 106, 105, 103, 103, 103, 102, 98, 93}, true},
	{"drums", [9]float64{82, 98, 100, 98, 98, 98, 97, 95, 91}, true},
	{"drumsLight", [9]float64{70, 86, 88, 87, 88, 88, 87, 85, 81}, true},
	{"bass", [9]float64{92, 104, 102, 97, 90, 84, 78, 70, 60}, true},
	{"guitar", [9]float64{55, 75, 92, 98, 100, 100, 99, 94, 82}, true},
	{"singing", [9]float64{silent, silent, 72, 82, 90, 92, 88, 80, 70}, false},
	{"piano", [9]float64{50, 66, 80, 85, 85, 82, 76, 68, 58}, true},
	{"monitors", [9]float64{80, 88, 87, 85, 83, 81, 79, 76, 72}, true},
	{"speech", [9]float64{silent, silent, 58, 66, 70, 68, 62, 55, 48}, false},
}

// Sources returns what may play, loudest first.
func Sources() []Source { return append([]Source(nil), sources...) }

// SourceByID returns a source.
func SourceByID(id string) (Source, bool) {
	for _, s := range sources {
		if s.ID == id {
			return s, true
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
		sum += math.Pow(10, (l+aWeight[i])/10)
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
}

// listeners: a sleeper, 30 dB, and a living room, 35 dB (WHO 1999, Table 4.1);
// a studio's background, 25 dB (common practice).
var listeners = []Listener{
	{"sleeper", 30, "WHO1999"},
	{"living", 35, "WHO1999"},
	{"studio", 25, "common practice"},
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
			total += math.Pow(10, (out[i]+aWeight[i+1])/10)
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
