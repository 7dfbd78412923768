package room

import (
	"math"
	"math/rand"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
)

// spoil puts an odd number in one random field of a room.
func spoil(rnd *rand.Rand, v reflect.Value) {
	odd := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e300, 1e-300, 1e9}
	var numbers []reflect.Value
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			numbers = append(numbers, v)
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		case reflect.Pointer:
			if !v.IsNil() {
				walk(v.Elem())
			}
		}
	}
	walk(v)
	numbers[rnd.Intn(len(numbers))].SetFloat(odd[rnd.Intn(len(odd))])
}

// endless returns where in a report a number is none.
func endless(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if !finite(v.Float()) {
			return path
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if p := endless(v.Field(i), path+"."+v.Type().Field(i).Name); p != "" {
				return p
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if p := endless(v.Index(i), path+"[]"); p != "" {
				return p
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return endless(v.Elem(), path)
		}
	}
	return ""
}

// Whatever numbers are in a room, its report holds none that is no number but in
// what was given and in the faults that name it.
func TestOddNumbers(t *testing.T) {
	rnd := rand.New(rand.NewSource(21))
	places := map[string]int{}
	for n := range 400 {
		r := anyRoom(rnd)
		r.Measured = []Measured{{Beyond: "hall", InA: 100, OutA: 60, InC: 105, OutC: 80}}
		r.Use = Use{People: 3, Minutes: 50, Watts: 100, Air: 0.01}
		r.Surfaces[0].Dips = []Dip{{2500, "a"}}
		r.Surfaces[1].Dips = []Dip{{2500, "a"}}
		for range 1 + n%3 {
			spoil(rnd, reflect.ValueOf(&r).Elem())
		}
		rep := Assess(r)
		sp := Money(r, rep, invented(rnd, rep, 4), 500, ByLevel)
		rep.Faults = nil
		for i := range rep.Surfaces {
			rep.Surfaces[i].Lab = even(0) // comes as it was given
		}
		if p := endless(reflect.ValueOf(rep), ""); p != "" {
			places[p]++
		}
		if p := endless(reflect.ValueOf(sp), ""); p != "" {
			places["money"+p]++
		}
	}
	assert.Empty(t, places)
}
