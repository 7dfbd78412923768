package room

import (
	"math"

	"twoleaf/core/band"
)

// Flank is what a surface shares with the house: a way by the structure.
type Flank struct {
	ID        string
	Rating    float64 // STC that the structure alone would let a wall reach, dB
	Low, High float64 // of it
	Origin    string
}

// flanks are common practice: figures that built rooms with such a structure
// reach, not predictions.
var flanks = []Flank{
	{"joists", 50, 48, 52, "common practice"},   // joists running through under or over the wall
	{"plate", 53, 50, 57, "common practice"},    // studs of both leaves on one plate
	{"slab", 56, 55, 58, "common practice"},     // a common concrete slab
	{"separate", 65, 62, 68, "common practice"}, // a separate structure on its own floor
}

// Flanks returns what a surface may share with the house.
func Flanks() []Flank { return append([]Flank(nil), flanks...) }

// FlankByID returns a flank.
func FlankByID(id string) (Flank, bool) {
	for _, f := range flanks {
		if f.ID == id {
			return f, true
		}
	}
	return Flank{}, false
}

// flankSpread is one standard deviation of a flanking figure, dB, 31.5 to 8000 Hz:
// 8 below 125 Hz, where nothing is known of it (common practice).
var flankSpread = Levels{8, 8, 6, 4, 4, 4, 4, 4, 4}

// flankLoss returns the loss of the path by the structure, over all of a
// surface's area: of the shape of the reference curve, falling by 6 dB an octave
// below 125 Hz; false where nothing was said.
func flankLoss(s *Surface) (band.Spectrum, bool) {
	value := s.FlankLoss
	if !positive(value) {
		f, ok := FlankByID(s.Flank)
		if !ok {
			return band.Spectrum{}, false
		}
		value = f.Rating
	}
	return OfRating(value, false), true
}

// Flanking is an element beside the separating one, with what its junctions stop.
type Flanking struct {
	R             float64 // weighted loss of the element on either side, dB
	KFf, KFd, KDf float64 // vibration reduction of the junction, dB
	Length        float64 // of the junction, m
}

// Built returns the weighted loss of a separating element with its flanking ways, dB:
//
//	R'w = −10 lg( 10^(−Rw/10) + Σ 10^(−Rij,w/10) )
//	Rij,w = (Ri + Rj)/2 + Kij + 10 lg(S/(l0 lij)),  l0 = 1 m
//
// over Ff, Fd and Df of every flanking element; S is the separating element's area, m².
// For heavy elements without linings, simplified model. Source: ISO12354, annex H.3.
func Built(rw, area float64, flanking []Flanking) float64 {
	sum := ten(-rw)
	for _, f := range flanking {
		corner := 10 * math.Log10(area/f.Length)
		sum += ten(-(f.R + f.KFf + corner)) + ten(-((f.R+rw)/2 + f.KFd + corner)) + ten(-((f.R+rw)/2 + f.KDf + corner))
	}
	return -level(sum)
}
