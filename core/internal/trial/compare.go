package trial

import (
	"fmt"
	"io"
	"math"
	"slices"
	"sort"
	"strings"

	"twoleaf/core/band"
	"twoleaf/core/evidence"
)

// Evidence is what to compare with.
type Evidence struct {
	Ratings []evidence.Test
	Thirds  []evidence.Thirds
	Octaves []evidence.Octaves
}

// Family is one kind of construction. Its figures are of its tier A rows; of a
// family that has none, of tier B, else of tier C. The others are beside.
type Family struct {
	Name string `json:"name"`
	Figures
	Worst string   `json:"worst"`
	Tier  string   `json:"tier"`
	CV    *Figures `json:"cv,omitempty"`
	B     *Figures `json:"b,omitempty"`
	C     *Figures `json:"c,omitempty"`
}

// Band is one band of the spectra of a family; Octave tells an octave from a third.
type Band struct {
	Hz     float64 `json:"hz"`
	Octave bool    `json:"octave,omitempty"`
	N      int     `json:"n"`
	RMS    float64 `json:"rms"`
	Bias   float64 `json:"bias"`
}

// Spectrum is the spectra of a family.
type Spectrum struct {
	Family string  `json:"family"`
	N      int     `json:"n"` // values in bands
	RMS    float64 `json:"rms"`
	Bias   float64 `json:"bias"`
	Bands  []Band  `json:"bands"`
}

// Unread is a row that could not be read or computed.
type Unread struct {
	ID  string `json:"id"`
	Why string `json:"why"`
}

// Spacings is how far the constructions that one text allows lie apart, of a family.
type Spacings struct {
	Family string  `json:"family"`
	N      int     `json:"n"`
	Mean   float64 `json:"mean"` // highest minus lowest, STC
	Most   float64 `json:"most"`
	Where  string  `json:"where"`
}

// Pair is two rows that contradict each other.
type Pair struct {
	A    string `json:"a"`
	B    string `json:"b"`
	STCA int    `json:"stcA"`
	STCB int    `json:"stcB"`
}

// Report is what make accuracy prints.
type Report struct {
	Families []Family   `json:"families"`
	All      Family     `json:"all"` // tier A
	Steps    []Step     `json:"steps"`
	Spectra  []Spectrum `json:"spectra"`
	Pooled   []Spectrum `json:"pooled"` // single panels, all walls
	// Contradictions are pairs of rows of different sources that say the same in words and not in figures.
	Contradictions []Pair     `json:"contradictions"`
	Spacings       []Spacings `json:"spacings"`
	Unread         []Unread   `json:"unread"`
	// Stale says that left-out predictions are of other evidence, code or constants; "" if not.
	Stale string `json:"stale,omitempty"`

	results []Result
	spectra []measured
}

// measured is one spectrum with what was computed.
type measured struct {
	Test     evidence.Test
	octave   bool
	Hz       []float64
	Loss     []float64 // measured, NaN where not printed
	Computed []float64
	Err      error
}

// tierOf takes a row without a tier as stated in full.
func tierOf(t evidence.Test) string {
	if t.Tier == "" {
		return "A"
	}
	return t.Tier
}

// Compare computes everything and compares it.
func Compare(m Method, e Evidence) *Report {
	r := &Report{}
	r.results = m.Compute(e.Ratings)
	byFamily := map[string]map[string][]Result{}
	for _, x := range r.results {
		r.unread(x.Test, x.Err)
		if _, ok := x.Deviation(); !ok {
			continue
		}
		k := x.Test.Kind
		if byFamily[k] == nil {
			byFamily[k] = map[string][]Result{}
		}
		byFamily[k][tierOf(x.Test)] = append(byFamily[k][tierOf(x.Test)], x)
	}
	for name, tiers := range byFamily {
		r.Families = append(r.Families, family(name, tiers))
	}
	slices.SortFunc(r.Families, func(a, b Family) int { return strings.Compare(a.Name, b.Name) })
	all := map[string][]Result{}
	for _, x := range r.results {
		if _, ok := x.Deviation(); ok {
			all[tierOf(x.Test)] = append(all[tierOf(x.Test)], x)
		}
	}
	r.All = family("all", all)
	r.Steps = Steps(r.results)
	r.Spacings = spacings(r.results)
	for _, c := range evidence.Contradictions(e.Ratings, 3) {
		r.Contradictions = append(r.Contradictions, Pair{c.A.ID, c.B.ID, c.A.STC, c.B.STC})
	}
	r.measure(m, e)
	r.Spectra, r.Pooled = r.perFamily(), r.pooled()
	for _, list := range []any{&r.Families, &r.Steps, &r.Spectra, &r.Unread, &r.Pooled, &r.Spacings, &r.Contradictions} {
		notNull(list)
	}
	return r
}

// notNull makes an empty list print as [] and not as null.
func notNull(list any) {
	switch l := list.(type) {
	case *[]Family:
		if *l == nil {
			*l = []Family{}
		}
	case *[]Step:
		if *l == nil {
			*l = []Step{}
		}
	case *[]Spectrum:
		if *l == nil {
			*l = []Spectrum{}
		}
	case *[]Unread:
		if *l == nil {
			*l = []Unread{}
		}
	case *[]Spacings:
		if *l == nil {
			*l = []Spacings{}
		}
	case *[]Pair:
		if *l == nil {
			*l = []Pair{}
		}
	}
}

func (r *Report) unread(t evidence.Test, err error) {
	why := t.Unread
	if err != nil {
		why = "not computed: " + err.Error()
	}
	if why != "" && !slices.ContainsFunc(r.Unread, func(u Unread) bool { return u.ID == t.ID }) {
		r.Unread = append(r.Unread, Unread{t.ID, why})
	}
}

func deviations(of []Result) (d []float64) {
	for _, x := range of {
		if v, ok := x.Deviation(); ok {
			d = append(d, v)
		}
	}
	return d
}

func family(name string, tiers map[string][]Result) Family {
	f := Family{Name: name}
	for _, t := range []string{"A", "B", "C"} {
		rows := tiers[t]
		if len(rows) == 0 {
			continue
		}
		figures := Sum(deviations(rows))
		switch {
		case f.Tier == "":
			f.Tier, f.Figures = t, figures
			far := -1.0
			for _, x := range rows {
				if d, _ := x.Deviation(); math.Abs(d) > far {
					far, f.Worst = math.Abs(d), fmt.Sprintf("%s %+.0f", x.Test.ID, d)
				}
			}
		case t == "B":
			f.B = &figures
		default:
			f.C = &figures
		}
	}
	return f
}

// spacings tells how far apart the constructions of one text are computed.
func spacings(results []Result) (out []Spacings) {
	for _, x := range results {
		if len(x.Each) < 2 {
			continue
		}
		i := slices.IndexFunc(out, func(s Spacings) bool { return s.Family == x.Test.Kind })
		if i < 0 {
			i = len(out)
			out = append(out, Spacings{Family: x.Test.Kind})
		}
		d := slices.Max(x.Each) - slices.Min(x.Each)
		s := &out[i]
		s.N++
		s.Mean += d
		if d > s.Most {
			s.Most, s.Where = d, x.Test.ID
		}
	}
	for i := range out {
		out[i].Mean /= float64(out[i].N)
	}
	return out
}

// measure computes the spectra.
func (r *Report) measure(m Method, e Evidence) {
	var tests []evidence.Test
	for _, s := range e.Thirds {
		tests = append(tests, s.Test)
	}
	for _, s := range e.Octaves {
		tests = append(tests, s.Test)
	}
	got := m.Compute(tests)
	for i, s := range e.Thirds {
		x := measured{Test: s.Test, Hz: band.Nominal[:], Loss: s.Loss[:], Err: got[i].Err}
		x.Computed = got[i].Loss[:]
		r.keep(x)
	}
	for i, s := range e.Octaves {
		g := got[len(e.Thirds)+i]
		x := measured{Test: s.Test, octave: true, Hz: band.Octaves[:], Loss: s.Loss[:], Err: g.Err}
		for k := range band.Octaves {
			x.Computed = append(x.Computed, g.Loss.Octave(k))
		}
		r.keep(x)
	}
}

func (r *Report) keep(x measured) {
	r.unread(x.Test, x.Err)
	if x.Test.Read() && x.Err == nil {
		r.spectra = append(r.spectra, x)
	}
}

// sumUp gathers the spectra that a filter lets through, in the bands it lets through.
func (r *Report) sumUp(name string, test func(measured) bool, in func(hz float64) bool) (Spectrum, bool) {
	type key struct {
		hz     float64
		octave bool
	}
	s := Spectrum{Family: name}
	by := map[key][]float64{}
	var all []float64
	for _, x := range r.spectra {
		if !test(x) {
			continue
		}
		for i, hz := range x.Hz {
			d := x.Computed[i] - x.Loss[i]
			if math.IsNaN(d) || !in(hz) {
				continue
			}
			by[key{hz, x.octave}] = append(by[key{hz, x.octave}], d)
			all = append(all, d)
		}
	}
	for k, d := range by {
		f := Sum(d)
		s.Bands = append(s.Bands, Band{k.hz, k.octave, f.N, f.RMS, f.Bias})
	}
	slices.SortFunc(s.Bands, func(a, b Band) int {
		switch {
		case a.Octave != b.Octave && b.Octave, a.Octave == b.Octave && a.Hz < b.Hz:
			return -1
		}
		return 1
	})
	f := Sum(all)
	s.N, s.RMS, s.Bias = f.N, f.RMS, f.Bias
	return s, f.N > 0
}

func everywhere(float64) bool { return true }

func (r *Report) perFamily() (out []Spectrum) {
	var names []string
	for _, x := range r.spectra {
		if !slices.Contains(names, x.Test.Kind) {
			names = append(names, x.Test.Kind)
		}
	}
	sort.Strings(names)
	for _, n := range names {
		if s, ok := r.sumUp(n, func(x measured) bool { return x.Test.Kind == n }, everywhere); ok {
			out = append(out, s)
		}
	}
	return out
}

func (r *Report) pooled() (out []Spectrum) {
	begins := func(words ...string) func(measured) bool {
		return func(x measured) bool {
			return slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(x.Test.Kind, w) })
		}
	}
	bass := func(hz float64) bool { return hz >= 50 && hz <= 125 }
	for _, p := range []struct {
		name string
		test func(measured) bool
		in   func(float64) bool
	}{
		{"all single panels", begins("single panel"), everywhere},
		{"all walls, 50-125 Hz", begins("wall"), bass},
		{"everything, 50-125 Hz", begins(""), bass},
		{"everything", begins(""), everywhere},
	} {
		if s, ok := r.sumUp(p.name, p.test, p.in); ok {
			out = append(out, s)
		}
	}
	return out
}

// Print writes the report as tables.
func (r *Report) Print(w io.Writer, rows bool) {
	p := func(format string, args ...any) { fmt.Fprintf(w, format, args...) }
	p("STC, computed minus measured\n")
	cv := slices.ContainsFunc(r.Families, func(f Family) bool { return f.CV != nil })
	head := fmt.Sprintf("%-32s %4s %4s %6s %5s %5s %5s  %-18s", "family", "tier", "n", "bias", "sd", "rms", "±3 %", "worst")
	if cv {
		head += fmt.Sprintf("  | left out %6s %5s %5s %5s", "bias", "sd", "rms", "±3 %")
	}
	p("%s\n", head)
	line := func(name, tier string, f Figures, worst string, c *Figures) {
		p("%-32s %4s %4d %+6.1f %5.1f %5.1f %5.0f  %-18s", name, tier, f.N, f.Bias, f.SD, f.RMS, f.Within3, worst)
		if c != nil {
			p("  |          %+6.1f %5.1f %5.1f %5.0f", c.Bias, c.SD, c.RMS, c.Within3)
		}
		p("\n")
	}
	for _, f := range append(slices.Clone(r.Families), r.All) {
		line(f.Name, f.Tier, f.Figures, f.Worst, f.CV)
		if f.B != nil {
			line("", "B", *f.B, "", nil)
		}
		if f.C != nil {
			line("", "C", *f.C, "", nil)
		}
	}
	if r.Stale != "" {
		p("left out: %s\n", r.Stale)
	}
	p("\nSteps between rows that differ in one thing, STC\n%-52s %4s %9s %9s %6s\n", "step", "n", "measured", "computed", "by")
	for _, s := range r.Steps {
		p("%-52s %4d %+9.1f %+9.1f %+6.1f%s\n", s.Name, s.N, s.Measured, s.Computed, s.Computed-s.Measured, s.remark())
	}
	p("\nRows that hold for two spacings or two fills: highest minus lowest computed, STC\n")
	for _, s := range r.Spacings {
		p("%-32s n %3d  mean %4.1f  most %4.1f  %s\n", s.Family, s.N, s.Mean, s.Most, s.Where)
	}
	p("\nRows that say the same and do not measure the same (more than 3)\n")
	for _, c := range r.Contradictions {
		p("  %-12s %d   %-12s %d\n", c.A, c.STCA, c.B, c.STCB)
	}
	p("\nSpectra, computed minus measured, dB: bias/rms (n) per band; octaves as the energy mean of their thirds\n")
	for _, s := range append(slices.Clone(r.Spectra), r.Pooled...) {
		p("%-32s n %3d  rms %4.1f  bias %+5.1f\n", s.Family, s.N, s.RMS, s.Bias)
		for _, octave := range []bool{false, true} {
			var cells []string
			for _, b := range s.Bands {
				if b.Octave == octave {
					cells = append(cells, fmt.Sprintf("%g: %+.1f/%.1f (%d)", b.Hz, b.Bias, b.RMS, b.N))
				}
			}
			if len(cells) > 0 {
				p("    %s  %s\n", map[bool]string{false: "thirds ", true: "octaves"}[octave], strings.Join(cells, "  "))
			}
		}
	}
	p("\nNot read or computed: %d\n", len(r.Unread))
	for _, u := range r.Unread {
		p("  %-20s %s\n", u.ID, u.Why)
	}
	if rows {
		r.rows(w)
	}
}

// rows prints every row by itself.
func (r *Report) rows(w io.Writer) {
	fmt.Fprintf(w, "\nRows: measured, computed, deviation, unrounded of every construction the text allows\n")
	for _, x := range r.results {
		d, ok := x.Deviation()
		if !ok {
			continue
		}
		fmt.Fprintf(w, "%-16s %s %-28s %3d %3d %+3.0f  %.1f  %s | %s | %s | %s\n", x.Test.ID, tierOf(x.Test), x.Test.Kind, x.Test.STC, x.STC, d, x.Each,
			x.Test.Text.Leaf1, x.Test.Text.Framing, x.Test.Text.Fill, x.Test.Text.Leaf2)
		fmt.Fprintf(w, "   ")
		for _, v := range x.Loss[band.First50:] {
			fmt.Fprintf(w, " %.0f", v)
		}
		fmt.Fprintf(w, "\n")
	}
	fmt.Fprintf(w, "\nSpectra: Hz measured computed\n")
	for _, x := range r.spectra {
		fmt.Fprintf(w, "%-10s %-26s %s %s\n   ", x.Test.ID, x.Test.Kind, x.Test.Text.Leaf1, x.Test.Text.Framing)
		for i, hz := range x.Hz {
			if !math.IsNaN(x.Loss[i]) {
				fmt.Fprintf(w, " %g:%.0f/%.0f", hz, x.Loss[i], x.Computed[i])
			}
		}
		fmt.Fprintf(w, "\n")
	}
}
