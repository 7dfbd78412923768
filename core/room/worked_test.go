package room

import (
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core/band"
	"twoleaf/core/internal/refdata"
)

// printed is a figure of the page, and half its last digit.
type printed struct{ value, half float64 }

var number = regexp.MustCompile(`^(-?\d+)(\.\d+)?(e[-+]\d+)?`)

func readFigure(t *testing.T, text string) printed {
	text = strings.ReplaceAll(strings.TrimSpace(text), "−", "-")
	m := number.FindStringSubmatch(text)
	require.NotNil(t, m, text)
	v, err := strconv.ParseFloat(m[0], 64)
	require.NoError(t, err)
	half := 0.5 * math.Pow(10, -float64(max(0, len(m[2])-1)))
	if m[3] != "" {
		e, _ := strconv.Atoi(m[3][1:])
		half *= math.Pow(10, float64(e))
	}
	return printed{v, half}
}

// readWorked returns the figures of the page by what stands before them in `ticks`.
func readWorked(t *testing.T) map[string][]printed {
	text, err := os.ReadFile(refdata.Path(t, "room", "worked.md"))
	require.NoError(t, err)
	out := map[string][]printed{}
	for _, line := range strings.Split(string(text), "\n") {
		name, rest := "", ""
		if row, ok := strings.CutPrefix(line, "| `"); ok {
			name, rest, _ = strings.Cut(row, "` | ")
			for _, cell := range strings.Split(strings.Trim(rest, " |"), "|") {
				out[name] = append(out[name], readFigure(t, cell))
			}
		} else if row, ok := strings.CutPrefix(line, "- `"); ok {
			name, rest, _ = strings.Cut(row, "` = ")
			out[name] = append(out[name], readFigure(t, rest))
		}
	}
	return out
}

// workedRoom is the room of the page, as it is given there.
func workedRoom() Room {
	even := func(o ...float64) (s band.Spectrum) {
		for i := range s {
			s[i] = o[octaveAt(i)]
		}
		return s
	}
	r := Room{
		Length: 4, Width: 3, Height: 2.5, Listener: "studio",
		Playing: []Playing{{Source: "drums", Level: 100}, {Source: "singing"}},
		Use:     Use{People: 4, Playing: true, Minutes: 60, Watts: 500},
		Spaces: []Space{
			{ID: "bedroom", Volume: 35, Listener: "sleeper"},
			{ID: "hall", Volume: 20, Soft: Bare, Listener: "living", Noise: []Playing{{Source: "tv", Level: 64}}},
			{ID: "yard", Outdoors: true},
		},
	}
	yard := even(12, 16, 24, 36, 46, 52, 48, 54)
	for i, s := range []Surface{
		{TL: even(14, 18, 26, 38, 48, 54, 50, 55), Beyond: "hall", Openings: []Opening{
			{ID: "door", Kind: "doorSolid", Seal: "all", Width: 0.8, Height: 2, Octaves: []float64{20, 22, 24, 27, 29, 31, 33}}, {ID: "box", Kind: "box"}}},
		{TL: even(16, 20, 30, 42, 52, 58, 56, 60), Beyond: "bedroom", Flank: "joists"},
		{TL: yard, Beyond: "yard"}, {TL: yard, Beyond: "yard"},
		{TL: even(15, 19, 28, 40, 50, 56, 52, 58), Beyond: "bedroom"},
		{TL: even(38, 40, 42, 45, 50, 56, 60, 62)},
	} {
		s.ID, s.Face = string(rune('A'+i)), []Face{Wall, Wall, Wall, Wall, Ceiling, Floor}[i]
		s.Mass, s.Inside, s.Thickness = 40, 0.05, 0.2
		for k := range s.Spread {
			s.Spread[k] = 3
		}
		r.Surfaces = append(r.Surfaces, s)
	}
	return r
}

// Every figure of testdata/room/worked.md, to its last printed digit.
func TestWorkedRoom(t *testing.T) {
	page := readWorked(t)
	r := workedRoom()
	rep := Assess(r)
	require.Empty(t, rep.Faults)
	got := map[string][]float64{}
	nine := func(name string, l Levels) { got[name] = l[:] }
	one := func(name string, v ...float64) { got[name] = v }
	octaves := func(s band.Spectrum) (l Levels) {
		for k := range band.Octaves {
			l[k] = s.Octave(k)
		}
		l[8] = l[7]
		return l
	}

	drums, _ := SourceByID("drums")
	one("drums, own", DBA(drums.Levels))
	nine("drums at 100", drums.At(100))
	nine("L1", rep.Level)
	one("LA1", rep.LevelA)
	nine("flank loss", octaves(OfRating(50, false)))
	nine("A holed", octaves(rep.Surfaces[0].Holed))
	nine("B built", octaves(rep.Surfaces[1].Built))

	weighted, _ := (&assessment{room: &r, report: rep}).weights()
	at := map[string]int{}
	for i := range rep.Paths {
		p := &rep.Paths[i]
		name := r.Surfaces[p.Surface].ID + " boards"
		switch {
		case p.Way == ByFlank:
			name = r.Surfaces[p.Surface].ID + " joists"
		case p.Opening >= 0:
			name = r.Surfaces[p.Surface].ID + " " + r.Surfaces[p.Surface].Openings[p.Opening].ID
		}
		at[name] = i
		nine("open "+name, p.Open)
		all, _ := p.passes(&weighted, &weighted)
		one("share "+name, all, p.Share, p.Perfect, p.Bass, p.PerfectBass, p.ShareThere, p.PerfectThere)
	}
	a := assessment{room: &r, memo: &Memo{}}
	for _, dba := range []float64{20, 25, 30, 35} {
		nine("allowed "+strconv.Itoa(int(dba)), a.allowed(dba))
	}
	heard := func(name string, h Heard) {
		var level, spread, over, need Levels
		for o, x := range h.Octave {
			level[o], spread[o], over[o], need[o] = x.Level, x.High-x.Level, x.Over, x.Need
		}
		nine(name+" level", level)
		nine(name+" spread", spread)
		one(name+" LA", h.A)
		one(name+" LC", h.C)
		one(name+" spread A", h.SpreadA)
		one(name+" NC", h.NC)
		one(name+" NR", h.NR)
		if h.Schroeder > 0 {
			one(name+" Schroeder", h.Schroeder)
		}
		if h.Target > 0 {
			nine(name+" over", over)
			nine(name+" need", need)
			one(name+" over A", h.OverA)
			one(name+" worst", Octaves[h.Worst])
		}
	}
	heard("bedroom", rep.Out[0])
	heard("hall", rep.Out[1])
	heard("yard", rep.Out[2])
	require.Len(t, rep.In, 1)
	heard("television", rep.In[0])

	one("CO2 end", rep.Air.End)
	one("CO2 minutes", rep.Air.MinutesTo)
	one("air want", 1000*rep.Air.Want)
	one("duct area", rep.Air.DuctArea)
	one("duct round", rep.Air.DuctRound)
	one("heat", rep.Air.Heat)
	one("rise", rep.Air.Rise)
	one("cooling", rep.Air.Cooling)
	s := rep.Shape
	one("inside length", s.InsideLength)
	one("inside width", s.InsideWidth)
	one("inside height", s.InsideHeight)
	one("lost floor", s.LostFloor)
	one("headroom left", s.HeightLeft)
	one("stand left", s.StandLeft)

	better := func(id, path string, by, cost float64) Change {
		open := rep.Paths[at[path]].Open
		for o := range open {
			open[o] *= ten(-by)
		}
		return Change{ID: id, Cost: cost, Ways: []Replaced{{Path: at[path], Open: open}}}
	}
	sp := Money(r, rep, []Change{
		better("door", "A door", 15, 390), better("pad", "A box", 15, 12), better("board", "E boards", 3, 140), better("joists", "B joists", 10, 260),
	}, 420, ByLevel)
	assert.Equal(t, 1, sp.Worst)
	for i, g := range sp.Gains {
		one("gain "+g.ID, []float64{390, 12, 140, 260}[i], g.Gain, g.Bass)
	}
	assert.Equal(t, []int{0}, sp.Best.Changes)
	assert.Equal(t, []Reason{"", Masked, Elsewhere, Elsewhere}, []Reason{sp.Gains[0].Why, sp.Gains[1].Why, sp.Gains[2].Why, sp.Gains[3].Why})
	one("plan cost", sp.Best.Cost)
	one("plan over", sp.Best.Over)
	one("plan gain", sp.Best.Gain)

	f, ok := FitMeasured(r, rep, Measured{Beyond: "hall", InA: rep.LevelA, OutA: rep.Out[1].A + 6})
	require.True(t, ok)
	one("fit residual", f.Residual)
	one("fit prior", f.Prior)
	one("fit spread", f.Spread)
	one("fit shift", f.Shift)

	k := 2 * math.Pi * 500 / airSpeed * 0.005
	tau := slitAt(500, 0.005, 0.045, diffuse, inFace, 0)
	one("slit K", k)
	one("slit e", (math.Log(8/k)-0.57722)/math.Pi)
	one("slit tau", tau)
	one("slit R", loss(tau))

	figures := 0
	for name, want := range page {
		have, ok := got[name]
		if !assert.True(t, ok, "%s is on the page and was not computed", name) || !assert.Len(t, have, len(want), name) {
			continue
		}
		for i, w := range want {
			assert.InDelta(t, w.value, have[i], w.half*(1+1e-6), "%s, figure %d", name, i+1)
			figures++
		}
	}
	for name := range got {
		assert.Contains(t, page, name, "computed and not on the page")
	}
	assert.Greater(t, figures, 300)
}
