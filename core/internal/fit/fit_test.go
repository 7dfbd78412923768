package main

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/evidence"
	"twoleaf/core/material"
	"twoleaf/core/transmission"
)

// small is a problem of some rows and some constants.
func small(t testing.TB, keep func(evidence.Test) bool, names ...string) (*problem, []float64) {
	only := map[string]bool{}
	for _, n := range names {
		only[n] = true
	}
	free, at, err := parameters(only)
	require.NoError(t, err)
	p := newProblem(free, transmission.Ranking)
	q := &problem{free: free, base: p.base, accuracy: p.accuracy}
	for k, x := range p.tests[:p.ratings] {
		if keep(x) {
			q.tests = append(q.tests, x)
			q.weight = append(q.weight, p.weight[k])
			q.series = append(q.series, x.Series)
			q.offset = append(q.offset, q.length)
			q.length++
		}
	}
	q.offset = append(q.offset, q.length)
	q.ratings = len(q.tests)
	require.NotZero(t, q.ratings)
	return q, at
}

func light(x evidence.Test) bool { return x.Kind == "wall steel single" && x.Tier == "A" }

// Rows made with other constants lead the search back to those constants.
func TestLawSearchFindsWhatMadeTheRows(t *testing.T) {
	p, at := small(t, light, "Stud", "StudDepth")
	truth := append([]float64(nil), at...)
	for i, f := range p.free {
		switch f.Name {
		case "Stud":
			truth[i] = f.share(8e5)
		case "StudDepth":
			truth[i] = f.share(1.1)
		}
	}
	for k, r := range p.compute(truth, nil) {
		p.tests[k].STC = int(math.Floor(r.Fine))
	}
	s, _ := p.search(p.start(at, nil), nil, 10, nil, nil)
	for i := range p.free {
		assert.InDelta(t, truth[i], s.at[i], 0.05, p.free[i].Name)
	}
}

// The same again gives the same digits, and no round makes it worse.
func TestLawSearchIsReproducible(t *testing.T) {
	p, at := small(t, light, "Stud", "StudGrowth", "BayLoss")
	last := math.Inf(1)
	a, _ := p.search(p.start(at, nil), nil, 4, nil, func(_ int, cost float64) {
		assert.LessOrEqual(t, cost, last)
		last = cost
	})
	b, _ := p.search(p.start(at, nil), nil, 4, nil, nil)
	assert.Equal(t, a.at, b.at)
	assert.Equal(t, a.cost, b.cost)
	for _, u := range a.at {
		assert.GreaterOrEqual(t, u, 0.0)
		assert.LessOrEqual(t, u, 1.0)
	}
}

// A series that is left out has no say.
func TestLawLeftOutHasNoSay(t *testing.T) {
	p, at := small(t, light, "Stud", "BayLoss")
	out := func(k int) bool { return p.series[k] == "NBC-S6" }
	a, _ := p.search(p.start(at, out), nil, 4, out, nil)
	for k := range p.tests {
		if out(k) {
			p.tests[k].STC += 20
		}
	}
	b, _ := p.search(p.start(at, out), nil, 4, out, nil)
	assert.Equal(t, a.at, b.at)
	c, _ := p.search(p.start(at, nil), nil, 4, nil, nil)
	assert.NotEqual(t, a.at, c.at)
}

func TestGentle(t *testing.T) {
	assert.InDelta(t, 2, gentle(2, 3), 1e-12)
	assert.InDelta(t, -2, gentle(-2, 3), 1e-12)
	// Its square is Huber's: k² + 2k(|d| − k) beyond k.
	assert.InDelta(t, 9+6*4, sq(gentle(7, 3)), 1e-12)
}

// What stays within the bounds when a step would leave them.
func TestSolveWithinBounds(t *testing.T) {
	a := [][]float64{{2, 0.5}, {0.5, 1}}
	x := solve(a, []float64{1, 1}, 0, []bool{false, false})
	assert.InDelta(t, -1, a[0][0]*x[0]+a[0][1]*x[1], 1e-12)
	assert.InDelta(t, -1, a[1][0]*x[0]+a[1][1]*x[1], 1e-12)
	x = solve(a, []float64{1, 1}, 0, []bool{true, false})
	assert.Zero(t, x[0])
	assert.InDelta(t, -1, x[1], 1e-12)
}

func TestWriteConstants(t *testing.T) {
	root := t.TempDir()
	dir := filepath.Join(root, "core", "transmission")
	require.NoError(t, os.MkdirAll(dir, 0o755))
	file := filepath.Join(dir, "constants.go")
	text := "package x\n\t{\"Stud\", \"N/m²\", 5.8e5, 2e5, 1e6, \"calibrated\", \"a stud\", f},\n\t{\"BayLoss\", \"\", 59, 1, 2, \"x\", \"y\", f},\n"
	require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	require.NoError(t, writeConstants(root, map[string]float64{"Stud": 612300}))
	got, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(text, "5.8e5", "612300", 1), string(got))
	assert.Error(t, writeConstants(root, map[string]float64{"Nothing": 1}))
}

// The channel of the table of fixings is the method's, so that a typical one changes nothing.
func TestChannelOfTheTable(t *testing.T) {
	f, ok := material.FixingByID("channel")
	require.True(t, ok)
	assert.InEpsilon(t, transmission.Defaults().Channel, f.Stiffness, 1e-6)
}

// Every free constant is in the table, once, between its bounds, and is written as it was computed.
func TestFree(t *testing.T) {
	ps, at, err := parameters(nil)
	require.NoError(t, err)
	assert.Len(t, ps, len(free))
	for i, p := range ps {
		assert.InDelta(t, p.Value, p.value(at[i]), 1e-9*math.Abs(p.Value), p.Name)
		assert.NotEmpty(t, p.Meaning)
		v := figures(p.value(0.4321))
		assert.InEpsilon(t, p.value(0.4321), v, 1e-3)
	}
}
