package room

import "math"

const (
	// readA and readOctave are how far a reading of a level difference may be off,
	// one standard deviation, dB: a telephone or a cheap meter (common practice;
	// ISO12999 has 0.9 dB for trained teams, so never under that).
	readA      = 3.0
	readOctave = 2.0
	// overBackground is how far a level must stand over the background to be one, dB.
	overBackground = 3.0
	betterBy       = 1.0 // dB of the root mean square by which a path must fit better
	asGood         = 0.1 // dB within which two paths fit alike: the one that needs less goes
	raiseLow       = -10.0
	raiseHigh      = 30.0
)

func (a *assessment) fit(m Measured) (Fit, bool) {
	at := a.spaceAt(m.Beyond)
	if at < 0 {
		a.fault(Fault{Code: Unknown, Space: m.Beyond, Field: "measured", Typed: m.Beyond})
		return Fit{}, false
	}
	return FitMeasured(*a.room, a.report, m)
}

// term is one level difference: as energy of what plays and of what arrives, by
// octave, each with its weight.
type term struct {
	diff   Diff
	weight Levels
}

// FitMeasured sets levels that somebody read in the room and beyond against what
// was predicted for that room; false if nothing was read in both. Octaves go
// before A and C. Which path fits best: each in turn is raised by what brings
// predicted and measured differences together best in the least squares,
//
//	min over x of Σ ( D − 10 lg( L1/(E + (10^(x/10) − 1) Ep) ) )²
//
// x between −10 and +30 dB; −1 where none mends 1 dB of the root mean square, and
// of two that fit alike the one that needs the smaller x; at least two figures. The
// spread of both together is that of two independent figures, weighed by their variance,
//
//	σ² = σp² σm²/(σp² + σm²) · max(1, r²/(σp² + σm²)),  shift = r σp²/(σp² + σm²)
//
// r is predicted less measured difference: as long as they agree it narrows, where
// they contradict each other it widens by their contradiction (BIRGE1932).
// Levels less than 3 dB over the background beyond are left out.
func FitMeasured(r Room, rep Report, m Measured) (Fit, bool) {
	a := again(&r, rep)
	at := a.spaceAt(m.Beyond)
	if at < 0 || at >= len(rep.Out) {
		return Fit{}, false
	}
	h := &rep.Out[at]
	f := Fit{Space: at, After: m.After, Path: -1, Reading: readA}
	var terms []term
	read := func(x float64) bool { return finite(x) && x != 0 }
	add := func(what string, hz, in, out, background float64, w Levels) {
		if read(in) && read(out) && out >= background+overBackground {
			terms = append(terms, term{Diff{What: what, Hz: hz, Measured: in - out}, w})
		}
	}
	for o := 1; o <= 7; o++ {
		if o-1 < len(m.In) && o-1 < len(m.Out) {
			var w Levels
			w[o] = 1
			add("octave", Octaves[o], m.In[o-1], m.Out[o-1], h.Octave[o].Background, w)
		}
	}
	if f.Octaves = len(terms) > 0; f.Octaves {
		f.Reading = readOctave
	} else {
		var wa, wc Levels
		for o := range wa {
			wa[o], wc[o] = ten(aWeight[o]), ten(cWeight[o])
		}
		add("A", 0, m.InA, m.OutA, h.Background, wa)
		add("C", 0, m.InC, m.OutC, 0, wc)
	}
	if len(terms) == 0 {
		return Fit{}, false
	}
	// Without anything playing an octave's difference still stands, A and C do not.
	source := rep.Level
	if len(r.Playing) == 0 {
		if !f.Octaves {
			return Fit{}, false
		}
		source = Levels{}
	}
	factor := a.factor(at)
	var g, all Levels
	for o, l := range source {
		g[o] = ten(l)
	}
	for i := range rep.Paths {
		if p := &rep.Paths[i]; p.Space == at {
			for o, open := range p.Open {
				all[o] += open * g[o] * factor
			}
		}
	}
	predicted := func(t *term, p *Path, more float64) float64 {
		in, out := 0.0, 0.0
		for o, w := range t.weight {
			if w == 0 {
				continue
			}
			e := all[o]
			if p != nil {
				e += more * p.Open[o] * g[o] * factor
			}
			in += w * g[o]
			out += w * e
		}
		return level(in) - level(out)
	}
	rms := func(p *Path, x float64) float64 {
		sum := 0.0
		for i := range terms {
			sum += square(predicted(&terms[i], p, ten(x)-1) - terms[i].diff.Measured)
		}
		return math.Sqrt(sum / float64(len(terms)))
	}
	for i := range terms {
		t := &terms[i]
		t.diff.Predicted = predicted(t, nil, 0)
		f.Residual += (t.diff.Predicted - t.diff.Measured) / float64(len(terms))
		f.Got = append(f.Got, t.diff)
	}
	f.RMS = rms(nil, 0)
	f.RMSAfter = f.RMS
	for i := range rep.Paths {
		p := &rep.Paths[i]
		if p.Space != at || len(terms) < 2 {
			continue // one figure fits every path
		}
		best, x := math.Inf(1), 0.0
		for y := raiseLow; y <= raiseHigh; y++ {
			if e := rms(p, y); e < best {
				best, x = e, y
			}
		}
		for step := 0.5; step > 0.005; step /= 2 {
			for _, y := range [2]float64{x - step, x + step} {
				if e := rms(p, y); e < best {
					best, x = e, y
				}
			}
		}
		alike := f.Path >= 0 && math.Abs(best-f.RMSAfter) < asGood
		if f.RMS-best >= betterBy && (best < f.RMSAfter && !alike || alike && math.Abs(x) < math.Abs(f.Raised)) {
			f.Path, f.Raised, f.RMSAfter = i, x, best
		}
	}
	f.Prior = h.SpreadA
	if f.Octaves {
		f.Prior = 0
		for _, d := range f.Got {
			for o := range h.Octave {
				if h.Octave[o].Hz == d.Hz {
					f.Prior += (h.Octave[o].High - h.Octave[o].Level) / float64(len(f.Got))
				}
			}
		}
	}
	// The source's own spread is not in a difference.
	f.Prior = math.Sqrt(math.Max(1, square(f.Prior)-square(SourceSpread)))
	both := square(f.Prior) + square(f.Reading)
	f.Spread = f.Prior * f.Reading / math.Sqrt(both) * math.Max(1, math.Abs(f.Residual)/math.Sqrt(both))
	f.Shift = f.Residual * square(f.Prior) / both
	f.Unlikely = square(f.Residual) > 4*both
	return f, true
}

// factor returns what a square metre of opening becomes in a space.
func (a *assessment) factor(space int) float64 {
	s := &a.room.Spaces[space]
	if s.Outdoors {
		return outdoors(s.Distance)
	}
	return a.receive(s.Volume, s.Time, s.Absorption, s.Soft).factor
}
