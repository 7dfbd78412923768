// Command accuracy compares the method with published measurements, family by
// family, band by band and step by step. make accuracy runs it.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"

	"twoleaf/core/evidence"
	"twoleaf/core/internal/trial"
	"twoleaf/core/transmission"
)

func main() {
	ratings := flag.String("ratings", "", "file of constructions with STC instead of the embedded one")
	thirds := flag.String("spectra", "", "file of one-third-octave spectra instead of the embedded one")
	octaves := flag.String("octaves", "", "file of octave spectra instead of the embedded one")
	out := flag.String("json", "", "file to write the figures to")
	ranking := flag.Bool("ranking", false, "ranking accuracy instead of converged")
	rows := flag.Bool("rows", false, "print every row and spectrum as well")
	flag.Parse()
	if err := run(os.Stdout, *ratings, *thirds, *octaves, *out, *ranking, *rows); err != nil {
		fmt.Fprintln(os.Stderr, "accuracy:", err)
		os.Exit(1)
	}
}

// own reads a file of one's own, or gives the embedded rows where there is
// none; with any file of one's own the other tables are empty unless given too.
func own[T any](file string, embedded func() []T, read func(string) ([]T, error), alone bool) ([]T, error) {
	if file == "" {
		if alone {
			return nil, nil
		}
		return embedded(), nil
	}
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	rows, err := read(string(text))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	return rows, nil
}

func run(w *os.File, ratings, thirds, octaves, out string, ranking, rows bool) error {
	alone := ratings != "" || thirds != "" || octaves != ""
	var e trial.Evidence
	var err error
	if e.Ratings, err = own(ratings, evidence.Ratings, evidence.ReadRatings, alone); err != nil {
		return err
	}
	if e.Thirds, err = own(thirds, evidence.ThirdSpectra, evidence.ReadThirds, alone); err != nil {
		return err
	}
	if e.Octaves, err = own(octaves, evidence.OctaveSpectra, evidence.ReadOctaves, alone); err != nil {
		return err
	}
	m := trial.Method{Constants: transmission.Defaults(), Accuracy: transmission.Converged}
	if ranking {
		m.Accuracy = transmission.Ranking
	}
	report := trial.Compare(m, e)
	if !alone {
		report.LeftOut()
	}
	report.Print(w, rows)
	if out == "" {
		return nil
	}
	text, err := json.MarshalIndent(report, "", " ")
	if err != nil {
		return err
	}
	return os.WriteFile(out, append(text, '\n'), 0o644)
}
