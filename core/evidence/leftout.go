package evidence

import (
	_ "embed"
	"strings"

	"twoleaf/core/band"
)

// What the method computed for every row with the series it belongs to left
// out of the fit; written by make fit.
//
//go:embed leftout.csv
var leftOutCSV string

//go:embed leftout_bands.csv
var leftOutBandsCSV string

// LeftOut is what was computed for one row with its series left out of the fit.
type LeftOut struct {
	ID  string
	STC int
	// Fine is STC without its roundings.
	Fine float64
}

// LeftOutBands is the same for a spectrum.
type LeftOutBands struct {
	ID   string
	Loss band.Spectrum // bands that were not computed are NaN
}

func leftOut() (out []LeftOut) {
	for _, r := range must(records(leftOutCSV, "id", "stc", "fine")) {
		stc, _, err := r.number("stc")
		fine, _, err2 := r.number("fine")
		out = append(out, LeftOut{r.cell["id"], int(must(stc, err)), must(fine, err2)})
	}
	return out
}

func leftOutBands() (out []LeftOutBands) {
	for _, r := range must(records(leftOutBandsCSV, "id")) {
		x := LeftOutBands{ID: r.cell["id"]}
		for i, hz := range band.Nominal {
			v, err := r.level(hz)
			x.Loss[i] = must(v, err)
		}
		out = append(out, x)
	}
	return out
}

// LeftOutRatings returns the left-out predictions of the rows with a rating.
func LeftOutRatings() []LeftOut { return leftOut() }

// LeftOutSpectra returns those of the spectra, thirds and octaves alike in thirds.
func LeftOutSpectra() []LeftOutBands { return leftOutBands() }

// LeftOutFingerprint returns the fingerprint of the evidence and code that the
// left-out predictions were made with.
func LeftOutFingerprint() string {
	for line := range strings.Lines(leftOutCSV) {
		if f, ok := strings.CutPrefix(strings.TrimSpace(line), "# fingerprint "); ok {
			return f
		}
	}
	return ""
}
