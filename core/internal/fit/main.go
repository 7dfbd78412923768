// Command fit moves the free constants of the method so that it meets the
// measured constructions of core/evidence, writes them into the table of
// constants, and writes what is computed for every row with its own series left
// out of the fit. The same evidence and code give the same digits. make fit runs it.
package main

import (
	"flag"
	"fmt"
	"os"
	"strings"

	"twoleaf/core/internal/trial"
	"twoleaf/core/transmission"
)

func main() {
	dry := flag.Bool("dry", false, "write nothing")
	only := flag.String("only", "", "free constants to move, by name, with commas; the rest stay")
	rounds := flag.Int("rounds", 40, "most rounds of the search")
	converged := flag.Int("converged", 0, "rounds at converged accuracy after them")
	without := flag.String("without", "", "a series to leave out, to see what it says")
	current := flag.Bool("current", false, "begin at the constants as they are, not in the middle of their bounds")
	left := flag.Bool("leftout", true, "leave out each series in turn")
	flag.Parse()
	names := map[string]bool{}
	for _, n := range strings.Split(*only, ",") {
		if n != "" {
			names[n] = true
		}
	}
	if err := run(names, *without, *current, *rounds, *converged, *left, *dry || *without != ""); err != nil {
		fmt.Fprintln(os.Stderr, "fit:", err)
		os.Exit(1)
	}
}

func run(only map[string]bool, without string, current bool, rounds, converged int, left, dry bool) error {
	root, err := trial.Root()
	if err != nil {
		return err
	}
	free, at, err := parameters(only)
	if err != nil {
		return err
	}
	p := newProblem(free, transmission.Ranking)
	var out func(int) bool
	if without != "" {
		out = func(k int) bool { return p.series[k] == without }
	}
	if !current {
		// From the middle of the bounds: the result must not hang on the fit before.
		for i := range at {
			at[i] = 0.5
		}
	}
	s := p.start(at, out)
	fmt.Printf("%d rows, %d residuals, %d free constants\ncost %.2f\n", len(p.tests), p.length, len(free), s.cost)
	say := func(round int, cost float64) { fmt.Printf("round %d: cost %.2f\n", round, cost) }
	s, moved := p.search(s, nil, rounds, out, say)
	if out == nil {
		s = p.polish(s, moved, func(round int, cost float64) { fmt.Printf("one by one %d: cost %.2f\n", round, cost) })
		s, _ = p.search(s, moved, rounds, out, say)
	}
	if converged > 0 {
		p.accuracy = transmission.Converged
		s = p.start(s.at, out)
		fmt.Printf("converged grid: cost %.2f\n", s.cost)
		s, _ = p.search(s, nil, converged, out, say)
	}
	fmt.Printf("\n%-14s %-9s %10s %10s  %s\n", "constant", "unit", "was", "is", "bounds and meaning")
	fitted := map[string]float64{}
	for i, f := range free {
		v := figures(f.value(s.at[i]))
		fitted[f.Name] = v
		if f.also != "" {
			fitted[f.also] = v
		}
		mark := ""
		if s.at[i] < 0.01 || s.at[i] > 0.99 {
			mark = " (at its bound)"
		}
		fmt.Printf("%-14s %-9s %10.4g %10.4g  %g to %g, %s%s\n", f.Name, f.Unit, f.Value, v, f.Low, f.High, f.Meaning, mark)
	}
	p.accuracy = transmission.Ranking
	if !dry {
		if err := writeConstants(root, fitted); err != nil {
			return err
		}
	}
	report(p, s.at)
	if !left {
		return nil
	}
	return leaveOut(p, s.at, root, dry)
}

// report prints the families at a point.
func report(p *problem, at []float64) {
	by := map[string][]float64{}
	var order []string
	for _, r := range p.compute(at, nil)[:p.ratings] {
		d, ok := r.Deviation()
		if !ok {
			continue
		}
		for _, k := range []string{r.Test.Kind + " " + r.Test.Tier, "all " + r.Test.Tier} {
			if by[k] == nil {
				order = append(order, k)
			}
			by[k] = append(by[k], d)
		}
	}
	fmt.Printf("\n%-34s %4s %6s %5s %5s %5s\n", "family and tier", "n", "bias", "sd", "rms", "±3 %")
	for _, k := range order {
		f := trial.Sum(by[k])
		fmt.Printf("%-34s %4d %+6.1f %5.1f %5.1f %5.0f\n", k, f.N, f.Bias, f.SD, f.RMS, f.Within3)
	}
}
