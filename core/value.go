package core

import (
	"sort"

	"twoleaf/core/plan"
)

// The kinds of a Value, as the page formats them.
const (
	kindLength      = "length"
	kindArea        = "area"
	kindMass        = "mass"
	kindSurfaceMass = "surfaceMass"
	kindLineMass    = "lineMass"
	kindMoney       = "money"
	kindMoneyRate   = "moneyRate"
	kindShare       = "share"
	kindDecibel     = "decibel"
	kindFrequency   = "frequency"
	kindCount       = "count"
	kindNumber      = "number"
)

func value[T ~float64](v T, kind, trace string) *Value {
	return &Value{V: float64(v), Kind: kind, Origin: Computed, Trace: trace}
}

// spread is a figure that may be off by so much; 0 is not known.
func spread(v, by float64, trace string) *Value {
	if by == 0 {
		return value(v, kindDecibel, trace)
	}
	low, high := v-by, v+by
	return &Value{V: v, Kind: kindDecibel, Low: &low, High: &high, Origin: Computed, Trace: trace}
}

func count(n int, o Origin) *Value { return &Value{V: float64(n), Kind: kindCount, Origin: o} }

func from[T ~float64](v T, kind string, f plan.From) *Value {
	return &Value{V: float64(v), Kind: kind, Origin: origin(f), As: string(f.As)}
}

func origin(f plan.From) Origin {
	if f.Origin == plan.Unknown {
		return Typical
	}
	return Origin(f.Origin)
}

func sortValues(v []Value) {
	sort.SliceStable(v, func(i, j int) bool { return v[i].V < v[j].V })
}

// numbers are what a sentence or a caution is about, by name, as the page has them.
type numbers map[string]float64

// nums begins them; one call for each is a third of the code of a literal.
func nums(name string, v float64) numbers { return numbers{name: v} }

func (n numbers) and(name string, v float64) numbers {
	n[name] = v
	return n
}

// words are ids and names that a sentence or a caution is about, by name.
type words map[string]string

func texts(name, s string) words { return words{name: s} }

func (w words) and(name, s string) words {
	w[name] = s
	return w
}

// fixed is a figure of the method itself.
func fixed(v float64, kind string) *Value { return &Value{V: v, Kind: kind, Origin: Typical} }
