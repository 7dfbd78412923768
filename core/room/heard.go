package room

import (
	"math"

	"twoleaf/core/rating"
)

const (
	// Peaks are over the mean level by this, dB: kick and snare by 10 to 20 (common practice).
	Peaks = 10.0
	// FeltFrom is a peak that is felt at 31.5 and 63 Hz, dB (from memory: a body
	// feels 63 Hz from about 80 to 90 dB).
	FeltFrom = 85.0
	// LoudFrom is an A-weighted level that anybody calls loud, dB (our choice).
	LoudFrom = 65.0
	// modes is how much levels vary below the Schroeder frequency with place and
	// note, ± 10 dB, as one standard deviation.
	modes = 5.0
	// smallRoom is the absorption of a small furnished room, m² (common practice).
	smallRoom = 10.0
	// OutdoorDistance is of somebody outdoors, m, where nobody said it (our choice).
	OutdoorDistance = 5.0
	// typedSource is the spread of octaves that somebody typed, dB (common practice).
	typedSource = 2.0
)

// Time returns the reverberation time of a furnishing, s.
func Time(s Soft) float64 {
	switch s {
	case Bare:
		return 1.0
	case Treated:
		return 0.3
	}
	return 0.5
}

// Absorption returns the equivalent absorption area of a room, m²:
//
//	A = 0.161 V/T
//
// V is its volume [m³], T its reverberation time [s]. Source: Sabine, e.g. VIGRAN2008.
func Absorption(volume, time float64) float64 { return 0.161 * volume / time }

// Schroeder returns the frequency under which a room's single modes stand apart
// and a mean level says little, Hz:
//
//	f = 2000 √(T/V)
//
// Source: Schroeder, e.g. VIGRAN2008.
func Schroeder(volume, time float64) float64 {
	if volume <= 0 {
		return 0
	}
	return 2000 * math.Sqrt(time/volume)
}

// Facade returns the apparent loss of a façade element from the level at its surface, dB:
//
//	R' = L1,s − L2 + 10 lg(S/A) − C
//
// C is 1.5 dB for a loudspeaker at 45°, 3 dB for traffic. Source: ISO16283.
func Facade(l1s, l2, area, absorption, c float64) float64 {
	return l1s - l2 + 10*math.Log10(area/absorption) - c
}

const traffic = 3.0

// ear is where somebody listens: what a square metre of opening there becomes
// as energy, and what the level is held against.
type ear struct {
	factor     float64
	schroeder  float64
	absorption float64
	assumed    bool
	target     float64
	background float64
	allowed    Levels
	masked     Levels
}

// receive returns the ear of a room: its absorption and its modes.
func (a *assessment) receive(volume, time, absorption float64, soft Soft) (e ear) {
	if time <= 0 {
		time = Time(soft)
	}
	switch {
	case absorption > 0:
		e.absorption = absorption
	case volume > 0:
		e.absorption = Absorption(volume, time)
	default:
		e.absorption, e.assumed = smallRoom, true
	}
	e.schroeder = Schroeder(volume, time)
	e.factor = 1 / e.absorption
	return e
}

// judge gives an ear what levels there are held against.
func (a *assessment) judge(e *ear, id string, target, background float64) {
	l, known := ListenerByID(id)
	e.target, e.background = target, background
	if e.target == 0 && known {
		e.target = l.DBA
	}
	if e.background == 0 {
		e.background = l.Background
		if !known {
			e.background = quiet
		}
	}
	if e.target > 0 {
		e.allowed = a.allowed(e.target)
	}
	e.masked = a.allowed(e.background)
}

// quiet is a house at night, A-weighted, dB (from memory: 20 to 25).
const quiet = 25.0

// allowed is Allowed over nine octaves, each drawn up once: 8000 Hz as the noise
// criterion curves have it under 4000 Hz, 31.5 Hz as the noise rating curves
// have it over 63 Hz.
func (a *assessment) allowed(dba float64) Levels {
	for i := range a.memo.targets {
		if t := &a.memo.targets[i]; t.dba == dba {
			return t.lev
		}
	}
	var l Levels
	seven := Allowed(dba)
	copy(l[1:], seven[:])
	nr, _ := rating.NR(Levels{silent, silent, silent, silent, silent, l[5], silent, silent, silent})
	curve := rating.NRCurve(nr)
	l[0] = l[1] + curve[0] - curve[1]
	l[8] = l[7] - 1
	if len(a.memo.targets) >= mostKept {
		a.memo.targets = nil
	}
	a.memo.targets = append(a.memo.targets, shaped{dba, l})
	return l
}

// arrives is what comes to an ear by several ways.
type arrives struct {
	energy Levels
	doubt  Levels // energy times spread of each way
	flank  Levels // what flanking would bring more at its worse edge
	area   float64
}

// gather sums what every way into (or out of) a space brings for one source.
func (a *assessment) gather(space int, source *Levels, factor float64) (x arrives) {
	var g Levels
	for o, l := range source {
		if l > silent {
			g[o] = ten(l) * factor
		}
	}
	for i := range a.report.Paths {
		p := &a.report.Paths[i]
		if p.Space != space {
			continue
		}
		for o, open := range p.Open {
			e := open * g[o]
			x.energy[o] += e
			x.doubt[o] += e * p.Spread[o]
			if p.Way == ByFlank {
				x.flank[o] += e * (ten(p.Spread[o]) - 1)
			}
		}
	}
	for i := range a.room.Surfaces {
		if !a.out[i] && a.spaceAt(a.room.Surfaces[i].Beyond) == space {
			x.area += a.report.Surfaces[i].Area
		}
	}
	return x
}

// rule says how a source is heard.
type rule struct {
	speech, floor bool
	spread        float64 // of its own level, dB
}

// hear tells what reaches an ear. Levels are
//
//	L2 = L1 − R' + 10 lg(S/A)
//
// summed as energy over all ways. Targets are held against the mean, hearing
// against the peaks, which must be over both background and threshold in an
// octave from 63 to 4000 Hz. A spread is the root of the sum of squares of the
// source's own, the ways' (weighed by their energy) and, below the Schroeder
// frequency, that of single modes.
// Source: ISO12354; threshold ISO226; masking by octaves common practice.
func (a *assessment) hear(h *Heard, e *ear, source *Levels, x *arrives, by rule) {
	h.Target, h.Background, h.Schroeder, h.Absorption, h.Assumed = e.target, e.background, e.schroeder, e.absorption, e.assumed
	h.State, h.Worst = NotHeard, -1
	var sumA, sumC, doubtA, doubtC, modeA, modeC float64
	heard, high, words := 0, false, false
	most := math.Inf(-1)
	var mean Levels
	flanked := false
	for o := range h.Octave {
		p := &h.Octave[o]
		p.Hz, p.Beyond = Octaves[o], o == 0 || o == 8
		p.Level = level(x.energy[o])
		mean[o] = p.Level
		own := 0.0
		if x.energy[o] > 0 {
			own = x.doubt[o] / x.energy[o]
		}
		p.Range = p.Hz < e.schroeder
		wide := 0.0
		if p.Range {
			wide = modes
		}
		spread := math.Sqrt(square(by.spread) + square(own) + square(wide))
		p.Low, p.High, p.Peak = p.Level-spread, p.Level+spread, p.Level+Peaks
		p.Target, p.Background, p.Threshold = e.allowed[o], e.masked[o], threshold[o]
		p.Over = p.Level - p.Target
		if e.target > 0 && x.area > 0 {
			p.Need = math.Max(0, source[o]+level(x.area*e.factor)-p.Target)
		}
		wa, wc := x.energy[o]*ten(aWeight[o]), x.energy[o]*ten(cWeight[o])
		sumA, sumC = sumA+wa, sumC+wc
		doubtA, doubtC = doubtA+wa*own, doubtC+wc*own
		modeA, modeC = modeA+wa*wide, modeC+wc*wide

		audible := math.Max(p.Background, p.Threshold)
		switch {
		case !over(p.Peak, audible):
			p.State = NotHeard
		case e.target == 0:
			p.State = NoTarget
		case over(p.Level, p.Target):
			p.State = Over
		case over(p.High, p.Target):
			p.State = MayOver
		default:
			p.State = Within
		}
		if p.Beyond {
			continue
		}
		if e.target > 0 && (h.Worst < 0 || p.Over > h.Octave[h.Worst].Over) {
			h.Worst = o
		}
		if p.Peak > audible {
			heard++
			high = high || o > bassTo
			words = words || by.speech && o >= 4 && o <= 6 && p.Level > audible
			most = math.Max(most, p.Peak-audible)
		}
		h.State = worse(h.State, p.State)
		if with := level(x.energy[o] + x.flank[o]); e.target > 0 && x.flank[o] > 0 && over(with, p.Target) && (p.State == Within || p.State == NotHeard) {
			flanked = true
		}
	}
	h.A, h.C = level(sumA), level(sumC)
	if sumA > 0 {
		h.SpreadA = math.Sqrt(square(by.spread) + square(doubtA/sumA) + square(modeA/sumA))
		h.SpreadC = math.Sqrt(square(by.spread) + square(doubtC/sumC) + square(modeC/sumC))
	}
	if h.Target > 0 {
		h.OverA = h.A - h.Target
		if over(h.A, h.Target) {
			h.State = Over
		} else if over(h.A+h.SpreadA, h.Target) && h.State == Within {
			h.State = MayOver
		}
	}
	if flanked {
		h.LeansOnFlank = true
		if h.State == Within || h.State == NotHeard {
			h.State = MayOver
		}
	}
	nc := rating.NC([8]float64(mean[1:]))
	h.NC, h.NCOutside, h.NCBy = nc.Value, nc.Outside, nc.DecidedBy+1
	h.NR, h.NRBy = rating.NR(mean)
	h.Felt = h.Octave[0].Peak >= FeltFrom || h.Octave[1].Peak >= FeltFrom
	h.FloorDriven = by.floor
	switch {
	case heard == 0:
		h.Word = WordNotHeard
	case !high:
		h.Word = WordKick
	case h.A >= LoudFrom:
		h.Word = WordLoud
	case words:
		h.Word = WordWords
	case most < 10:
		h.Word = WordFaint
	default:
		h.Word = WordHeard
	}
}

// over reports whether a level is more than a limit, by more than the arithmetic.
func over(db, limit float64) bool { return db > limit+1e-6 }

func worse(a, b State) State {
	rank := func(s State) int {
		switch s {
		case NotHeard:
			return 0
		case Within:
			return 1
		case NoTarget:
			return 2
		case MayOver:
			return 3
		}
		return 4
	}
	if rank(b) > rank(a) {
		return b
	}
	return a
}

// ruleOf returns how a thing that plays is heard.
func (a *assessment) ruleOf(p Playing) rule {
	s, _ := SourceByID(p.Source)
	r := rule{speech: s.Speech, floor: s.Floor, spread: SourceSpread}
	if p.Octave != nil {
		r.spread = typedSource
	}
	return r
}

// hearAll tells every space what it hears of the room, and the room what it
// hears of every space.
func (a *assessment) hearAll() {
	r := a.room
	var all rule
	all.speech = len(r.Playing) > 0
	for _, p := range r.Playing {
		by := a.ruleOf(p)
		all.floor = all.floor || by.floor
		all.speech = all.speech && by.speech
		all.spread = math.Max(all.spread, by.spread)
	}
	a.report.Out = make([]Heard, len(r.Spaces))
	for i := range r.Spaces {
		s := &r.Spaces[i]
		e := a.receive(s.Volume, s.Time, s.Absorption, s.Soft)
		if s.Outdoors {
			e = ear{factor: outdoors(s.Distance)}
		}
		a.judge(&e, s.Listener, s.Target, s.Background)
		h := &a.report.Out[i]
		h.Space = i
		x := a.gather(i, &a.report.Level, e.factor)
		a.hear(h, &e, &a.report.Level, &x, all)
		h.FlankUnknown = a.flankUnknown(i)
		h.FloorHangs = all.floor && !r.OnGround
		if len(r.Playing) > 1 {
			h.Each = make([]Each, len(r.Playing))
			for j, p := range r.Playing {
				var one Heard
				x := a.gather(i, &a.levels[j], e.factor)
				a.hear(&one, &e, &a.levels[j], &x, a.ruleOf(p))
				h.Each[j] = Each{p.Source, one.A, one.State, one.Word, one.Felt}
			}
		}
	}
	a.hearHouse()
}

// outdoors returns what a square metre of opening becomes at a distance in front
// of a face:
//
//	L2 = L1 − 6 − R' + 10 lg S − 10 lg(2π r²)
//
// Source: EN12354-4 (from memory).
func outdoors(distance float64) float64 {
	if distance <= 0 {
		distance = OutdoorDistance
	}
	return ten(-6) / (2 * math.Pi * distance * distance)
}

func (a *assessment) flankUnknown(space int) bool {
	for i := range a.room.Surfaces {
		s := &a.room.Surfaces[i]
		if !a.out[i] && s.Flank == "" && !positive(s.FlankLoss) && a.spaceAt(s.Beyond) == space {
			return true
		}
	}
	return false
}

// hearHouse tells what comes in: each noise of each space by the same ways.
func (a *assessment) hearHouse() {
	r := a.room
	base := a.receive(a.report.Volume, r.Time, 0, r.Soft)
	listener := r.Listener
	if listener == "" {
		listener = "studio"
	}
	var sum arrives
	var level Levels
	total := rule{speech: true}
	judged := false
	for i := range r.Spaces {
		s := &r.Spaces[i]
		for _, p := range s.Noise {
			l, _, ok := levelsOf(p)
			if !ok {
				continue
			}
			if !judged {
				a.judge(&base, listener, r.Target, r.Background)
				judged = true
			}
			e := base
			if s.Outdoors {
				e.factor *= ten(-traffic) // the level is that at the surface
			}
			x := a.gather(i, &l, e.factor)
			by := a.ruleOf(p)
			h := Heard{Space: i, Source: p.Source}
			a.hear(&h, &e, &l, &x, by)
			h.FlankUnknown = a.flankUnknown(i)
			a.report.In = append(a.report.In, h)
			for o := range x.energy {
				sum.energy[o] += x.energy[o]
				sum.doubt[o] += x.doubt[o]
				sum.flank[o] += x.flank[o]
				level[o] = math.Max(level[o], l[o])
			}
			sum.area = math.Max(sum.area, x.area)
			total.speech = total.speech && by.speech
			total.floor = total.floor || by.floor
			total.spread = math.Max(total.spread, by.spread)
		}
	}
	if len(a.report.In) > 0 {
		h := Heard{Space: -1}
		a.hear(&h, &base, &level, &sum, total)
		a.report.InAll = &h
	}
}
