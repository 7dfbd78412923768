package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"twoleaf/core/band"
	"twoleaf/core/internal/trial"
	"twoleaf/core/transmission"
)

// foldRounds is how often slopes are taken anew while one series is out; the
// search begins where the fit to all of them ended.
const foldRounds = 4

// leaveOut fits without each series in turn and writes what is computed for
// the rows of that series then.
func leaveOut(p *problem, at []float64, root string, dry bool) error {
	whole := p.start(at, nil)
	moved := p.slopes(whole, differences[0], nil)
	got := make([]trial.Result, len(p.tests))
	seen := map[string]bool{}
	least, most := append([]float64(nil), at...), append([]float64(nil), at...)
	by1, by2 := make([]string, len(at)), make([]string, len(at))
	for _, name := range p.series {
		if seen[name] {
			continue
		}
		seen[name] = true
		out := func(test int) bool { return p.series[test] == name }
		s := &state{at: whole.at, res: whole.res, slope: whole.slope, cost: p.cost(whole.res, whole.at, out)}
		s, _ = p.search(s, moved, foldRounds, out, nil)
		for i, u := range s.at {
			if u < least[i] {
				least[i], by1[i] = u, name
			}
			if u > most[i] {
				most[i], by2[i] = u, name
			}
		}
		var rows []int
		for k := range p.tests {
			if out(k) {
				rows = append(rows, k)
			}
		}
		fine := *p
		fine.accuracy = transmission.Converged
		for i, r := range fine.compute(s.at, rows) {
			got[rows[i]] = r
		}
	}
	fmt.Printf("\n%-14s %10s %10s %10s  where constants go while a series is out\n", "constant", "least", "all in", "most")
	for i, f := range p.free {
		fmt.Printf("%-14s %10.4g %10.4g %10.4g  %s, %s\n", f.Name, f.value(least[i]), f.value(at[i]), f.value(most[i]), by1[i], by2[i])
	}
	by := map[string][]float64{}
	var order []string
	for _, r := range got[:p.ratings] {
		if d, ok := r.Deviation(); ok {
			for _, k := range []string{r.Test.Kind + " " + r.Test.Tier, "all " + r.Test.Tier} {
				if by[k] == nil {
					order = append(order, k)
				}
				by[k] = append(by[k], d)
			}
		}
	}
	fmt.Printf("\nleft out by series\n%-34s %4s %6s %5s %5s %5s\n", "family and tier", "n", "bias", "sd", "rms", "±3 %")
	for _, k := range order {
		f := trial.Sum(by[k])
		fmt.Printf("%-34s %4d %+6.1f %5.1f %5.1f %5.0f\n", k, f.N, f.Bias, f.SD, f.RMS, f.Within3)
	}
	if dry {
		return nil
	}
	print, err := trial.Fingerprint(root)
	if err != nil {
		return err
	}
	var s strings.Builder
	s.WriteString("# STC computed for every row with the series it belongs to left out of the fit. Written by make fit; golden, no measurement.\n")
	fmt.Fprintf(&s, "# fingerprint %s\nid,stc,fine\n", print)
	for k, r := range got[:p.ratings] {
		if r.Err == nil {
			fmt.Fprintf(&s, "%s,%d,%.2f\n", p.tests[k].ID, r.STC, r.Fine)
		}
	}
	dir := filepath.Join(root, "core", "evidence")
	if err := os.WriteFile(filepath.Join(dir, "leftout.csv"), []byte(s.String()), 0o644); err != nil {
		return err
	}
	s.Reset()
	s.WriteString("# Transmission loss computed for every spectrum with the series it belongs to left out of the fit, dB in thirds,\n# of octave rows too. Written by make fit; golden, no measurement.\nid")
	for _, hz := range band.Nominal[band.First50:] {
		fmt.Fprintf(&s, ",%g", hz)
	}
	s.WriteString("\n")
	for k := p.ratings; k < len(p.tests); k++ {
		if got[k].Err != nil {
			continue
		}
		s.WriteString(p.tests[k].ID)
		for _, v := range got[k].Loss[band.First50:] {
			fmt.Fprintf(&s, ",%.1f", v)
		}
		s.WriteString("\n")
	}
	return os.WriteFile(filepath.Join(dir, "leftout_bands.csv"), []byte(s.String()), 0o644)
}
