// Package trial computes measured constructions and compares them: what the
// programs behind make accuracy and make fit have in common.
package trial

import (
	"math"
	"runtime"
	"sync"
	"sync/atomic"

	"twoleaf/core/band"
	"twoleaf/core/evidence"
	"twoleaf/core/rating"
	"twoleaf/core/transmission"
)

// Result is what the method says of one measured construction.
type Result struct {
	Test evidence.Test
	Loss band.Spectrum // of the build-up that counts
	STC  int
	Fine float64 // STC without rounding, see Fine
	Each []float64
	Err  error // of the method; nil where it could be computed
}

// Deviation is computed minus measured STC; ok is false where one is missing.
func (r Result) Deviation() (d float64, ok bool) {
	if !r.Test.Read() || r.Err != nil || r.Test.STC == 0 {
		return 0, false
	}
	return float64(r.STC - r.Test.STC), true
}

// Method is how to compute.
type Method struct {
	Constants transmission.Constants
	Accuracy  transmission.Accuracy
	// Bands wanted; 0, 0 is all.
	From, To int
}

// Compute computes every construction that could be read, on all processors.
// Where a text allows more than one, the one with the lowest rating counts: a
// value that holds for 400 and 600 mm is the lower of the two.
func (m Method) Compute(tests []evidence.Test) []Result {
	out := make([]Result, len(tests))
	workers := min(runtime.GOMAXPROCS(0), max(1, len(tests)/8))
	var next atomic.Int64
	var all sync.WaitGroup
	for range workers {
		all.Add(1)
		go func() {
			defer all.Done()
			tables := transmission.NewTablesWith(m.Constants)
			for {
				i := int(next.Add(1)) - 1
				if i >= len(tests) {
					return
				}
				out[i] = m.one(tests[i], tables)
			}
		}()
	}
	all.Wait()
	return out
}

func (m Method) one(t evidence.Test, tables *transmission.Tables) Result {
	r := Result{Test: t}
	o := transmission.Options{Accuracy: m.Accuracy, Limit: transmission.LaboratoryLimit, From: m.From, To: m.To}
	for _, b := range t.BuildUps {
		loss, err := transmission.LossOf(b, o, tables)
		if err != nil {
			r.Err = err
			continue
		}
		fine := Fine(loss)
		if len(r.Each) == 0 || fine < r.Fine {
			r.Loss, r.Fine, r.STC = loss, fine, rating.STC(loss).Value
		}
		r.Each = append(r.Each, fine)
	}
	return r
}

// contour of ASTM E413, 125 to 4000 Hz, re 500 Hz, dB.
var contour = [16]float64{-16, -13, -10, -7, -4, -1, 0, 1, 2, 3, 4, 4, 4, 4, 4, 4}

// Fine returns the sound transmission class without its roundings: the highest
// s for which no band is short of contour + s by more than 8 dB and all
// together by no more than 32 dB. It moves with every change of the loss, as a
// fit needs it; a whole class is on the average half a decibel under it.
func Fine(loss band.Spectrum) float64 {
	s8 := math.Inf(1)
	for i, c := range contour {
		s8 = math.Min(s8, loss[band.First125+i]-c+8)
	}
	short := func(s float64) (sum float64) {
		for i, c := range contour {
			sum += math.Max(0, s+c-loss[band.First125+i])
		}
		return sum
	}
	if short(s8) <= 32 {
		return s8
	}
	lo, hi := s8-60, s8
	for range 50 {
		if mid := (lo + hi) / 2; short(mid) <= 32 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}
