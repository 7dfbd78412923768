package room

import (
	"math"
	"sort"
)

// Change is one thing that may be done with money.
type Change struct {
	ID string
	// Group: of the changes of one group at most one is made; empty: no group.
	// Changes of one path exclude each other as well, for each says what the path
	// becomes: to offer both, offer a third that is the two together.
	Group           string
	Cost            float64
	Unpriced        bool // its cost is not known: ranked by dB alone, never in a plan for a budget
	Mass, Thickness float64
	Ways            []Replaced
	Over            string // code of a limit that forbids it; empty: none
	Why             string // the caller's own reason why it brings nothing; empty: none
}

// Replaced is what a path becomes.
type Replaced struct {
	Path  int // index in Report.Paths; −1: a new one
	Space int // of a new one
	Open  Levels
}

// Changed returns what becomes of the paths of one report in another one of a
// changed room: surfaces and openings keep their places, new ones come after.
func Changed(before, after Report) (out []Replaced) {
	same := func(a, b *Path) bool { return a.Surface == b.Surface && a.Opening == b.Opening && a.Way == b.Way }
	for i := range before.Paths {
		p := &before.Paths[i]
		var now Levels
		for j := range after.Paths {
			if same(p, &after.Paths[j]) {
				now = after.Paths[j].Open
				break
			}
		}
		if now != p.Open {
			out = append(out, Replaced{i, p.Space, now})
		}
	}
	for j := range after.Paths {
		p, known := &after.Paths[j], false
		for i := range before.Paths {
			known = known || same(&before.Paths[i], p)
		}
		if !known {
			out = append(out, Replaced{-1, p.Space, p.Open})
		}
	}
	return out
}

// Goal is what the money is to bring down in the worst space.
type Goal string

// The goals.
const (
	ByLevel Goal = ""     // the A-weighted level
	ByBass  Goal = "bass" // octaves 63 and 125 Hz
)

// Reason says why a change brings nothing.
type Reason string

// The reasons; a change may also come with the caller's own.
const (
	Masked    Reason = "masked"    // By lets through Times more than what it changes
	Small     Reason = "small"     // what it changes is no more than Share of all there
	Elsewhere Reason = "elsewhere" // none of its ways leads to the worst space
	Worsens   Reason = "worse"     // it lets through more
	Nothing   Reason = "same"      // it changes next to nothing on its way
	Forbidden Reason = "over"      // a limit forbids it
)

// Gain is what one change brings the worst space, all else left as it is.
type Gain struct {
	ID      string
	Gain    float64 // A-weighted, dB
	Bass    float64 // octaves 63 and 125 Hz, dB
	All     float64 // A-weighted, of all that gets out, dB
	PerCost float64 // dB of the goal for one unit of money; 0 without a cost
	Why     Reason  // empty: it brings something
	Own     string  // the caller's reason, or the limit
	By      int     // path that masks it; −1: none
	Times   float64 // how much more By lets through
	Share   float64 // of what it changes, of all in the worst space, by the goal
}

// Spend is where the next money goes.
type Spend struct {
	Worst int     // index of the space that is worst off; −1 without spaces
	Over  float64 // what its level is over its target by the goal, dB
	Gains []Gain  // in the order of the changes
	// ByCost and ByGain are indices of Gains that bring something: by dB for the
	// money, and by dB alone.
	ByCost, ByGain []int
	Best           Plan
}

// Plan is changes made together.
type Plan struct {
	Changes []int // indices of the changes, in their order
	Cost    float64
	Gain    float64 // A-weighted in the space that was worst off, dB
	Bass    float64
	Over    float64 // of the space that is then worst off, by the goal, dB
	Worst   int
	Tried   int     // sets looked at
	Exact   bool    // no better set within the budget exists
	found   float64 // Over before what hardly brings anything was left out, dB
}

const (
	worthGain = 0.2    // dB under which a change brings nothing that anybody hears (our choice)
	worthPlan = 0.05   // dB for which a change stays in a plan (our choice)
	mostSets  = 300000 // looked at before the search gives up
	mostItems = 64
)

// sums are energies per space, A-weighted and bass, and the last is of all that gets out.
type sums struct{ all, bass []float64 }

// Money returns what single changes bring the worst space, and the changes within
// a budget that together leave the worst space best off.
//
// Energies add: a change is, for each space, a difference of energy, and changes on
// different ways add up exactly. The plan minimises, over the spaces with a target,
//
//	max over spaces of ( E0 + Σ d )/T,  Σ cost ≤ budget
//
// E0 is what arrives now, d what a change adds (less than 0), T the target's energy.
// The search is exact: it decides change by change, and gives up a branch when even the
// best that its remaining money could buy by the piece, as if changes could be bought in
// part and did not exclude each other, leaves the worst space no better than the best
// found. Of equal plans the cheaper; what then brings under 0.05 dB is left out.
// With more than 64 changes the 64 with the largest single gains are looked at.
func Money(r Room, rep Report, changes []Change, budget float64, goal Goal) Spend {
	a := again(&r, rep)
	weighted, plain := a.weights()
	n := len(r.Spaces)
	now := sums{make([]float64, n+1), make([]float64, n+1)}
	factor := make([]float64, n)
	for i := range factor {
		factor[i] = a.factor(i)
	}
	add := func(s *sums, space int, p *Path, sign float64) {
		all, bass := p.passes(&weighted, &plain)
		s.all[n] += sign * all
		s.bass[n] += sign * bass
		if space >= 0 {
			s.all[space] += sign * all * factor[space]
			s.bass[space] += sign * bass * factor[space]
		}
	}
	for i := range rep.Paths {
		add(&now, rep.Paths[i].Space, &rep.Paths[i], 1)
	}
	// What each change adds.
	delta := make([]sums, len(changes))
	for c := range changes {
		d := sums{make([]float64, n+1), make([]float64, n+1)}
		for _, w := range changes[c].Ways {
			space := w.Space
			if w.Path >= 0 {
				space = rep.Paths[w.Path].Space
				add(&d, space, &rep.Paths[w.Path], -1)
			}
			add(&d, space, &Path{Open: w.Open}, 1)
		}
		delta[c] = d
	}
	of := func(s *sums) []float64 {
		if goal == ByBass {
			return s.bass
		}
		return s.all
	}
	target := a.targets(n, goal)
	out := Spend{Worst: -1}
	worst := math.Inf(-1)
	for s := range n {
		if o := level(of(&now)[s]) - target[s]; o > worst {
			out.Worst, out.Over, worst = s, o, o
		}
	}
	at := out.Worst
	if at < 0 {
		at = n // no space: all that gets out
	}
	out.Gains = make([]Gain, len(changes))
	for c := range changes {
		out.Gains[c] = gainOf(&rep, &changes[c], &now, &delta[c], at, n, of, goal, &weighted, &plain)
	}
	out.rank(changes, goal)
	if n > 0 {
		s := search{budget: budget, spaces: n}
		s.run(changes, out.Gains, of(&now), delta, of, target)
		out.Best = s.told(changes, &now, delta, of, target, out.Worst)
	}
	return out
}

// targets returns what the levels of each space are held against, dB: its target
// by the goal; where nobody listens far above any, so that it never counts,
// unless nobody listens anywhere.
func (a *assessment) targets(n int, goal Goal) []float64 {
	out := make([]float64, n)
	any := false
	for i := range out {
		s := &a.room.Spaces[i]
		t := s.Target
		if t <= 0 {
			l, _ := ListenerByID(s.Listener)
			t = l.DBA
		}
		if t <= 0 {
			continue
		}
		any = true
		out[i] = t
		if goal == ByBass {
			l := a.allowed(t)
			out[i] = level(ten(l[1]) + ten(l[2]))
		}
	}
	for i := range out {
		if any && out[i] == 0 {
			out[i] = 1000
		}
	}
	return out
}

func gainOf(rep *Report, c *Change, now, d *sums, at, n int, of func(*sums) []float64, goal Goal, weighted, plain *Levels) Gain {
	gain := func(e, d float64) float64 {
		if e <= 0 {
			return 0
		}
		return math.Max(-most, math.Min(most, -level((e+d)/e)))
	}
	g := Gain{ID: c.ID, By: -1, Gain: gain(now.all[at], d.all[at]), Bass: gain(now.bass[at], d.bass[at]), All: gain(now.all[n], d.all[n])}
	main := g.Gain
	if goal == ByBass {
		main = g.Bass
	}
	if c.Cost > 0 && !c.Unpriced {
		g.PerCost = main / c.Cost
	}
	// What it changes there, and the strongest of what it leaves.
	touched, strongest := 0.0, 0.0
	leads := false
	for i := range rep.Paths {
		p := &rep.Paths[i]
		if at < n && p.Space != at {
			continue
		}
		all, bass := p.passes(weighted, plain)
		if goal == ByBass {
			all = bass
		}
		hit := false
		for _, w := range c.Ways {
			hit = hit || w.Path == i
		}
		switch {
		case hit:
			leads = true
			touched += all
		case all > strongest:
			strongest, g.By = all, i
		}
	}
	for _, w := range c.Ways {
		leads = leads || w.Path < 0 && w.Space == at
	}
	sum := of(now)[at]
	if at < n {
		sum = 0
		for i := range rep.Paths {
			if p := &rep.Paths[i]; p.Space == at {
				all, bass := p.passes(weighted, plain)
				if goal == ByBass {
					all = bass
				}
				sum += all
			}
		}
	}
	if sum > 0 {
		g.Share = touched / sum
	}
	if touched > 0 {
		g.Times = strongest / touched
	}
	switch {
	case c.Over != "":
		g.Why, g.Own = Forbidden, c.Over
	case g.Gain >= worthGain || g.Bass >= worthGain:
		g.By = -1
		return g
	case c.Why != "":
		g.Own, g.Why = c.Why, Nothing
	case !leads:
		g.Why = Elsewhere
	case g.Gain < -worthGain || g.Bass < -worthGain:
		g.Why = Worsens
	case without(g.Share) >= worthGain:
		g.Why = Nothing // its way matters, but it leaves it as it is
	case g.By >= 0 && g.Times > 1:
		g.Why = Masked
	default:
		g.Why = Small
	}
	if g.Why != Masked {
		g.By = -1
	}
	return g
}

// rank puts what brings something in order.
func (s *Spend) rank(changes []Change, goal Goal) {
	main := func(i int) float64 {
		if goal == ByBass {
			return s.Gains[i].Bass
		}
		return s.Gains[i].Gain
	}
	for i := range s.Gains {
		if s.Gains[i].Why != "" {
			continue
		}
		s.ByGain = append(s.ByGain, i)
		if !changes[i].Unpriced {
			s.ByCost = append(s.ByCost, i)
		}
	}
	sort.SliceStable(s.ByGain, func(x, y int) bool { return main(s.ByGain[x]) > main(s.ByGain[y]) })
	per := func(i int) float64 {
		if changes[i].Cost <= 0 {
			return math.Inf(1) // for nothing: before all else
		}
		return main(i) / changes[i].Cost
	}
	sort.SliceStable(s.ByCost, func(x, y int) bool {
		a, b := s.ByCost[x], s.ByCost[y]
		if per(a) == per(b) {
			return main(a) > main(b)
		}
		return per(a) > per(b)
	})
}

// search is the choice of changes for a budget.
type search struct {
	budget float64
	spaces int

	items    []int // changes that may be in a plan, best first
	cost     []float64
	share    [][]float64 // by item and space: energy added over the target's
	conflict []uint64
	order    [][]int // by space: items that help, by what they bring for the money

	best     float64
	bestCost float64
	bestSet  uint64
	tried    int
	exact    bool
}

func (s *search) run(changes []Change, gains []Gain, now []float64, delta []sums, of func(*sums) []float64, target []float64) {
	s.exact = true
	for c := range changes {
		ch := &changes[c]
		if ch.Over != "" || ch.Unpriced || ch.Cost < 0 || !finite(ch.Cost) || ch.Cost > s.budget {
			continue
		}
		for x := range s.spaces {
			if of(&delta[c])[x] < 0 {
				s.items = append(s.items, c)
				break
			}
		}
	}
	gain := func(c int) float64 { return math.Max(gains[c].Gain, gains[c].Bass) }
	sort.SliceStable(s.items, func(x, y int) bool { return gain(s.items[x]) > gain(s.items[y]) })
	if len(s.items) > mostItems {
		s.items, s.exact = s.items[:mostItems], false
	}
	n := len(s.items)
	s.cost, s.share, s.conflict = make([]float64, n), make([][]float64, n), make([]uint64, n)
	start := make([]float64, s.spaces)
	for x := range start {
		start[x] = now[x] / ten(target[x])
	}
	for i, c := range s.items {
		s.cost[i] = changes[c].Cost
		s.share[i] = make([]float64, s.spaces)
		for x := range s.share[i] {
			s.share[i][x] = of(&delta[c])[x] / ten(target[x])
		}
		for j := range i {
			if clash(&changes[c], &changes[s.items[j]]) {
				s.conflict[i] |= 1 << j
				s.conflict[j] |= 1 << i
			}
		}
	}
	s.order = make([][]int, s.spaces)
	for x := range s.order {
		for i := range n {
			if s.share[i][x] < 0 {
				s.order[x] = append(s.order[x], i)
			}
		}
		o := s.order[x]
		// a/ca < b/cb without dividing, so that what costs nothing comes first.
		sort.SliceStable(o, func(p, q int) bool { return s.share[o[p]][x]*s.cost[o[q]] < s.share[o[q]][x]*s.cost[o[p]] })
	}
	s.best, s.bestCost = highest(start), 0
	s.try(0, start, 0, 0, 0)
}

// clash reports whether two changes exclude each other.
func clash(a, b *Change) bool {
	if a.Group != "" && a.Group == b.Group {
		return true
	}
	for _, x := range a.Ways {
		for _, y := range b.Ways {
			if x.Path >= 0 && x.Path == y.Path {
				return true
			}
		}
	}
	return false
}

func highest(x []float64) float64 {
	m := math.Inf(-1)
	for _, v := range x {
		m = math.Max(m, v)
	}
	return m
}

// try decides item i: e is what each space then hears over its target, as a ratio.
func (s *search) try(i int, e []float64, cost float64, set, barred uint64) {
	if s.tried >= mostSets {
		s.exact = false
		return
	}
	s.tried++
	const hair = 1e-12
	if h := highest(e); h < s.best*(1-hair) || h <= s.best*(1+hair) && cost < s.bestCost {
		s.best, s.bestCost, s.bestSet = h, cost, set
	}
	if i == len(s.items) || s.bound(i, e, s.budget-cost, barred) >= s.best*(1-hair) {
		return
	}
	if barred>>i&1 == 0 && cost+s.cost[i] <= s.budget*(1+hair) {
		with := make([]float64, len(e))
		for x := range e {
			with[x] = e[x] + s.share[i][x]
		}
		s.try(i+1, with, cost+s.cost[i], set|1<<i, barred|s.conflict[i])
	}
	s.try(i+1, e, cost, set, barred)
}

// bound returns the least that the worst space can come to with the items from
// the i-th on and so much money, if items could be bought in part and did not
// exclude each other.
func (s *search) bound(i int, e []float64, money float64, barred uint64) float64 {
	worst := math.Inf(-1)
	for x := range e {
		left, low := money, e[x]
		for _, j := range s.order[x] {
			if j < i || barred>>j&1 == 1 {
				continue
			}
			if s.cost[j] <= left {
				left -= s.cost[j]
				low += s.share[j][x]
				continue
			}
			low += s.share[j][x] * left / s.cost[j]
			break
		}
		worst = math.Max(worst, math.Max(0, low))
	}
	return worst
}

// told turns the best set into a plan.
func (s *search) told(changes []Change, now *sums, delta []sums, of func(*sums) []float64, target []float64, was int) Plan {
	in := make([]bool, len(changes))
	for i, c := range s.items {
		in[c] = s.bestSet>>i&1 == 1
	}
	after := func(v func(*sums) []float64, x int, but int) float64 {
		e := v(now)[x]
		for c := range changes {
			if in[c] && c != but {
				e += v(&delta[c])[x]
			}
		}
		return math.Max(0, e)
	}
	over := func(but int) (worst float64, at int) {
		worst = math.Inf(-1)
		for x := range s.spaces {
			if o := level(after(of, x, but)) - target[x]; o > worst {
				worst, at = o, x
			}
		}
		return worst, at
	}
	// What does not earn its place goes, dearest first.
	for {
		have, _ := over(-1)
		out := -1
		for c := range changes {
			if in[c] && (out < 0 || changes[c].Cost > changes[out].Cost) {
				if without, _ := over(c); without-have < worthPlan {
					out = c
				}
			}
		}
		if out < 0 {
			break
		}
		in[out] = false
	}
	p := Plan{Tried: s.tried, Exact: s.exact, found: level(s.best)}
	for c := range changes {
		if in[c] {
			p.Changes = append(p.Changes, c)
			p.Cost += changes[c].Cost
		}
	}
	p.Over, p.Worst = over(-1)
	gain := func(v func(*sums) []float64) float64 {
		e := v(now)[was]
		if e <= 0 {
			return 0
		}
		return math.Min(most, -level(after(v, was, -1)/e))
	}
	p.Gain = gain(func(s *sums) []float64 { return s.all })
	p.Bass = gain(func(s *sums) []float64 { return s.bass })
	return p
}
