package core

import (
	"reflect"
	"strconv"
)

// digits is how many of a figure travel to the page: the libraries of two
// machines part from the fifteenth on, and nothing is known to the twelfth.
const digits = 12

// tidy rounds every float that can be reached, so that a report is the same to
// the digit on every machine.
func tidy(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			tidy(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			tidy(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			tidy(v.Index(i))
		}
	case reflect.Map:
		if v.Type().Elem().Kind() == reflect.Float64 {
			for _, name := range v.MapKeys() {
				v.SetMapIndex(name, reflect.ValueOf(rounded(v.MapIndex(name).Float())).Convert(v.Type().Elem()))
			}
		}
	case reflect.Float64:
		if v.CanSet() {
			v.SetFloat(rounded(v.Float()))
		}
	}
}

func rounded(x float64) float64 {
	r, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	if err != nil {
		return x
	}
	return r
}
