package room

import "twoleaf/core/band"

// Memo keeps what rooms asked again and again have in common: slits, holes and
// the shapes of targets. It is owned by the caller, for one thread; a report is
// the same to the last digit with it and without.
type Memo struct {
	gaps    map[throatKey]band.Spectrum
	targets []shaped
}

type throatKey struct {
	size, depth float64
	round, edge bool
}

type shaped struct {
	dba float64
	lev Levels
}

const mostKept = 256

func (m *Memo) at(k throatKey, compute func() band.Spectrum) band.Spectrum {
	if s, ok := m.gaps[k]; ok {
		return s
	}
	s := compute()
	if m.gaps == nil || len(m.gaps) >= mostKept {
		m.gaps = map[throatKey]band.Spectrum{}
	}
	m.gaps[k] = s
	return s
}

func (m *Memo) slit(w, d float64, edge bool) band.Spectrum {
	if w <= 0 {
		return band.Spectrum{}
	}
	return m.at(throatKey{w, d, false, edge}, func() band.Spectrum { return Slit(w, d, edge) })
}

func (m *Memo) hole(a, d float64) band.Spectrum {
	return m.at(throatKey{a, d, true, false}, func() band.Spectrum { return Hole(a, d) })
}
