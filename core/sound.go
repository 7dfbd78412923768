package core

import (
	"math"
	"slices"
	"sort"

	"twoleaf/core/appraise"
	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/room"
	"twoleaf/core/transmission"
)

func (a *assessment) sound(advice []appraise.Advice) *SoundReport {
	y := a.yours
	s := &SoundReport{
		Hz: append([]float64(nil), band.Nominal[:]...), TL: y.TL, Ref: a.ref.TL,
		STC: y.STC.Value, Rw: y.Rw.Rw, C: y.Rw.C, Ctr: y.Rw.Ctr, C50: y.Rw.C50_5000, Ctr50: y.Rw.Ctr50_5000, OITC: y.OITC.Value,
		Spread:     Spread{Rating: y.Spread.Rating, Bass: y.Spread.Bass, Family: string(y.Spread.Family), Tests: y.Spread.Tests, Near: y.Spread.Nearest, Widest: string(y.Spread.Widest)},
		Resonances: transmission.Resonances(a.here.Assembly), Decides: y.STC.DecidedBy, EightRule: y.STC.EightdB,
		Dips: a.dips(), Sentences: []Sentence{},
	}
	if a.rw {
		s.Decides, s.EightRule = y.Rw.DecidedBy, false
	}
	s.Need = a.need()
	for i := range s.TL {
		s.Low[i], s.High[i] = math.Max(0, y.TL[i]-y.Spread.Band[i]), y.TL[i]+y.Spread.Band[i]
	}
	for k := 1; k < len(band.Octaves); k++ {
		s.Octaves = append(s.Octaves, Octave{Hz: band.Octaves[k], TL: y.TL.Octave(k), Spread: y.Spread.Band[3*k], Ref: a.ref.TL.Octave(k)})
	}
	for _, d := range advice {
		said := Sentence{Code: string(d.Trap), Args: nums("bass", d.Bass).and("rating", d.Rating).and("leaf", float64(d.Leaf)).and("gap", float64(d.Gap))}
		switch d.Trap {
		case appraise.SameBoards:
			said.Args["hz"], said.Args["at"], said.Args["other"] = d.Hz, d.At, float64(d.Other)
			said.Args["thickness"] = float64(d.Board.Thickness)
			said.Text = texts("board", d.Board.ID).and("short", d.Board.Short).and("nominal", d.Board.Nominal)
		case appraise.CloseScrews:
			_, apart := evidence.ScrewAllowance(a.here.Assembly)
			said.Args["screws"] = float64(apart)
		case appraise.EmptyGap:
			said.Text = texts("gap", a.here.BuildUp.Gaps[d.Gap].ID)
			said.Edit = "fill"
		}
		s.Sentences = append(s.Sentences, said)
	}
	return s
}

// dips returns the coincidence of every kind of board in the build-up that
// falls into the bands shown, lowest first.
func (a *assessment) dips() []Dip {
	out := []Dip{}
	for i, l := range a.here.Assembly.Leaves {
		for k, y := range l.Layers {
			fc := transmission.Critical(y.Board)
			if _, top := band.Edges(band.Count - 1); !(fc > 0) || fc > top {
				continue
			}
			n := slices.IndexFunc(out, func(d Dip) bool { return d.Leaf == i && d.Short == y.Board.Short && math.Abs(d.Hz-fc) < 1 })
			if n >= 0 {
				out[n].Layers = append(out[n].Layers, k)
				continue
			}
			out = append(out, Dip{Hz: fc, Leaf: i, Layers: []int{k}, Short: y.Board.Short, Kind: string(y.Board.Kind)})
		}
	}
	for i := range out {
		for j := range out {
			if out[i].Leaf != out[j].Leaf && appraise.DipTogether(out[i].Hz, out[j].Hz) {
				out[i].Both = true
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		return a.Hz < b.Hz || a.Hz == b.Hz && a.Leaf < b.Leaf
	})
	return out
}

// need returns the loss needed from what plays to who is beyond, and what is
// short of it; nil while either is not chosen.
func (a *assessment) need() *Need {
	source, ok := room.SourceByID(a.plan.Source)
	listener, listens := room.ListenerByID(a.here.Surface.Listener)
	if !ok || !listens {
		return nil
	}
	level := room.DBA(source.Levels)
	if v, typed := a.plan.Level.Value(); typed {
		level = v
	}
	n := &Need{Source: source.ID, Level: level, Listener: listener.ID, Allowed: listener.DBA, Worst: -1, Floor: source.Floor}
	needed := room.Needed(source.At(level), room.Allowed(listener.DBA))
	for i, need := range needed {
		o := NeedOctave{Hz: band.Octaves[i+1], Need: need, Got: a.yours.TL.Octave(i + 1)}
		o.Short = math.Max(0, o.Need-o.Got)
		if o.Short > 0 && (n.Worst < 0 || o.Short > n.Octaves[n.Worst].Short) {
			n.Worst = i
		}
		n.Octaves = append(n.Octaves, o)
	}
	return n
}
