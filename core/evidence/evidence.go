// Package evidence holds published measurements of airborne sound insulation,
// reads the text in which they state their constructions into build-ups, and
// finds the measured construction nearest to another. The embedded tables are
// read once and never change; files of one's own with the same columns are read
// by the same functions.
//
// Two ways lead to the rows. Ratings, ThirdSpectra and OctaveSpectra read every
// text: for fits, figures of accuracy and tests. Nearest, Printed and the
// residuals take what has been read beforehand from one small table (preread.csv,
// written by core/internal/preread): the page asks no more, and neither carries
// the reader nor waits for it.
package evidence

import (
	_ "embed"
	"math"
	"sync"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
)

//go:embed ratings.csv
var ratingsCSV string

//go:embed spectra.csv
var thirdsCSV string

//go:embed spectra_octave.csv
var octavesCSV string

// Text is a construction as a source states it, in the words of the tables.
type Text struct {
	Leaf1, Framing, Spacing, Cavity, Fill, Leaf2 string
	Kind                                         string
	Mass                                         string // total mass as printed, kg/m², if any
}

// Test is one measured construction.
type Test struct {
	ID          string
	Source      string // key in testdata/SOURCES.md
	Table       string // table or page in that source
	Description string
	Kind        string // family, as the table has it: "wall wood single", "floor steel joist RC"
	Tier        string // A stated in full, B a detail missing, C for orientation; "" is taken as A
	Note        string
	Series      string // one wall or floor number of the code table, or one table of a handbook
	Text        Text
	STC         int // 0 where none is printed
	IIC         int // 0 where none is printed
	// BuildUps are the constructions that the text allows, at least one unless
	// Unread says why there is none: "400 or 600" gives two.
	BuildUps []assembly.BuildUp
	// Assumed are the details that the source leaves out, as they were taken.
	Assumed []string
	Unread  string
}

// Read reports whether the construction could be read.
func (t Test) Read() bool { return len(t.BuildUps) > 0 }

// Thirds is a measured spectrum in one-third-octave bands, dB; NaN where a band was not printed.
type Thirds struct {
	Test
	Loss band.Spectrum
}

// Octaves is a measured spectrum in the octave bands of band.Octaves, dB; NaN where a band was not printed.
type Octaves struct {
	Test
	Loss [len(band.Octaves)]float64
}

// missing is what a band holds that was not printed.
var missing = math.NaN()

// once is a value that is worked out when it is first asked for. Unlike one that
// a package makes ready at its start, it is left out of a program that never asks.
type once[T any] struct {
	do sync.Once
	v  T
}

func (o *once[T]) get(f func() T) T {
	o.do.Do(func() { o.v = f() })
	return o.v
}

var (
	ratingsRead once[[]Test]
	thirdsRead  once[[]Thirds]
	octavesRead once[[]Octaves]
)

func ratings() []Test {
	return ratingsRead.get(func() []Test { return must(ReadRatings(ratingsCSV)) })
}

func thirds() []Thirds {
	return thirdsRead.get(func() []Thirds { return must(ReadThirds(thirdsCSV)) })
}

func octaves() []Octaves {
	return octavesRead.get(func() []Octaves { return must(ReadOctaves(octavesCSV)) })
}

// Ratings returns the embedded constructions with a single-number rating, in the order of the table.
func Ratings() []Test { return append([]Test(nil), ratings()...) }

// ThirdSpectra returns the embedded one-third-octave spectra.
func ThirdSpectra() []Thirds { return append([]Thirds(nil), thirds()...) }

// OctaveSpectra returns the embedded octave spectra.
func OctaveSpectra() []Octaves { return append([]Octaves(nil), octaves()...) }

// Tables returns the text of the embedded tables, for a fingerprint of the evidence.
func Tables() []string { return []string{ratingsCSV, thirdsCSV, octavesCSV, boardsCSV} }

// must is for embedded text: a mistake in it is ours, and a test reads it all.
func must[T any](v T, err error) T {
	if err != nil {
		panic("evidence: " + err.Error())
	}
	return v
}
