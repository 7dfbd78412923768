package room

import (
	"math"
	"sort"
)

// bassFrom and bassTo are the octaves of the bass: 63 and 125 Hz.
const bassFrom, bassTo = 1, 2

// most is what a gain is bounded by, dB, where a way is the only one.
const most = 60

// weights returns what a square metre of opening passes of what plays, in each
// octave, A-weighted and as it is. With nothing playing all octaves count alike.
func (a *assessment) weights() (weighted, plain Levels) {
	quiet := len(a.room.Playing) == 0
	for o := range plain {
		l := a.report.Level[o]
		if quiet {
			l = 0
		}
		plain[o], weighted[o] = ten(l), ten(l+aWeight[o])
	}
	return weighted, plain
}

// passes returns what a way lets through, A-weighted and in the bass.
func (p *Path) passes(weighted, plain *Levels) (all, bass float64) {
	for o, open := range p.Open {
		all += open * weighted[o]
		if o >= bassFrom && o <= bassTo {
			bass += open * plain[o]
		}
	}
	return all, bass
}

// shares tells every way's share of all that gets out and of what reaches its
// space, and what would be gained without it:
//
//	gain = −10 lg(1 − share)
func (a *assessment) shares() {
	weighted, plain := a.weights()
	paths := a.report.Paths
	sums := make([][2]float64, len(a.room.Spaces)+1) // the last is of all
	last := len(sums) - 1
	for i := range paths {
		p := &paths[i]
		p.Share, p.Bass = p.passes(&weighted, &plain)
		sums[last][0] += p.Share
		sums[last][1] += p.Bass
		if p.Space >= 0 {
			sums[p.Space][0] += p.Share
			sums[p.Space][1] += p.Bass
		}
	}
	part := func(x, of float64) float64 {
		if of <= 0 {
			return 0
		}
		return x / of
	}
	for i := range paths {
		p := &paths[i]
		all, bass := p.Share, p.Bass
		if p.Space >= 0 {
			p.ShareThere, p.BassThere = part(all, sums[p.Space][0]), part(bass, sums[p.Space][1])
		}
		p.Share, p.Bass = part(all, sums[last][0]), part(bass, sums[last][1])
		p.Perfect, p.PerfectBass = without(p.Share), without(p.Bass)
		p.PerfectThere, p.PerfectBassThere = without(p.ShareThere), without(p.BassThere)
		s := &a.report.Surfaces[p.Surface]
		s.Share += p.Share
		s.Bass += p.Bass
	}
}

// without returns what is gained if a share of the energy no longer comes, dB.
func without(share float64) float64 {
	return math.Min(most, -level(1-math.Min(1, share)))
}

// Rank returns the indices of paths, largest share first: of all that gets out
// (space −1) or of what reaches one space; by bass or A-weighted.
func Rank(paths []Path, space int, bass bool) []int {
	of := func(i int) float64 {
		p := &paths[i]
		switch {
		case space < 0 && bass:
			return p.Bass
		case space < 0:
			return p.Share
		case bass:
			return p.BassThere
		}
		return p.ShareThere
	}
	out := make([]int, 0, len(paths))
	for i := range paths {
		if space < 0 || paths[i].Space == space {
			out = append(out, i)
		}
	}
	sort.SliceStable(out, func(x, y int) bool { return of(out[x]) > of(out[y]) })
	return out
}

// Gap is what a crack under a door costs at one width.
type Gap struct {
	Width float64 // m
	Wall  float64 // of its surface's loss for what plays, A-weighted, against no crack, dB
	Bass  float64 // the same in octaves 63 and 125 Hz
	Room  float64 // more of all that gets out, A-weighted, dB
}

// Gaps returns what the crack of one opening costs over a range of widths; nil
// where the opening has none. The other ways stay as they are in the report.
func Gaps(r Room, rep Report, surface, opening int, widths []float64) []Gap {
	if surface < 0 || surface >= len(r.Surfaces) || opening < 0 || opening >= len(r.Surfaces[surface].Openings) {
		return nil
	}
	a := again(&r, rep)
	s := &r.Surfaces[surface]
	k, ok := KindByID(s.Openings[opening].Kind)
	if !ok || k.Gap == 0 || a.out[surface] || a.drop[surface][opening] {
		return nil
	}
	weighted, plain := a.weights()
	var wall, bass, all float64 // all but this opening
	for i := range rep.Paths {
		p := &rep.Paths[i]
		x, y := p.passes(&weighted, &plain)
		if p.Surface == surface && p.Opening == opening {
			continue
		}
		all += x
		if p.Surface == surface {
			wall += x
			bass += y
		}
	}
	at := func(width float64) (x, y float64) {
		o := s.Openings[opening]
		o.Crack, o.CrackSet = math.Min(width, widestSlit), true
		m := o.measure(&k, s)
		for _, e := range m.elements(&k, a.memo, nil) {
			p := Path{Open: octavesOf(&e.open)}
			ex, ey := p.passes(&weighted, &plain)
			x, y = x+ex, y+ey
		}
		return x, y
	}
	x0, y0 := at(0)
	out := make([]Gap, len(widths))
	for i, w := range widths {
		x, y := at(w)
		out[i] = Gap{w, level((wall + x) / (wall + x0)), level((bass + y) / (bass + y0)), level((all + x) / (all + x0))}
	}
	return out
}
