package wire

import (
	"errors"
	"math"
	"reflect"
	"sort"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Marshal returns a value as JSON. Markup in texts is escaped, so that it stays
// text wherever it lands; bytes that are no UTF-8 become U+FFFD. Fields stand in
// the order of the struct, keys of a map sorted. An error names the place of
// what cannot be written: "report.sound.tl.3: NaN is no number".
func Marshal(v any) ([]byte, error) {
	w := writer{fields: fields{}}
	text := w.value(make([]byte, 0, 4096), reflect.ValueOf(v))
	if w.wrong != "" {
		return nil, errors.New(w.place + ": " + w.wrong)
	}
	return text, nil
}

type writer struct {
	fields
	wrong string // what cannot be written
	place string // where, from the outside inwards
	depth int
}

// value appends a value to a text.
func (w *writer) value(b []byte, v reflect.Value) []byte {
	switch v.Kind() {
	case reflect.Invalid:
		return put(b, "null")
	case reflect.Bool:
		return strconv.AppendBool(b, v.Bool())
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return strconv.AppendInt(b, v.Int(), 10)
	case reflect.Float64:
		return w.number(b, v.Float())
	case reflect.String:
		if v.Type() == reflect.TypeFor[Number]() {
			return put(b, v.String())
		}
		return quote(b, v.String())
	}
	// Only what holds other values can be without end.
	if w.depth++; w.depth > deepest {
		w.wrong = "nested too deep"
		return b
	}
	b = w.holder(b, v)
	w.depth--
	return b
}

func (w *writer) holder(b []byte, v reflect.Value) []byte {
	switch k := v.Kind(); k {
	case reflect.Pointer, reflect.Interface:
		return w.value(b, v.Elem())
	case reflect.Struct:
		return w.object(b, v)
	case reflect.Map:
		return w.table(b, v)
	case reflect.Slice, reflect.Array:
		if k == reflect.Slice && v.IsNil() {
			return put(b, "null")
		}
		b = put(b, "[")
		for i := range v.Len() {
			if i > 0 {
				b = put(b, ",")
			}
			if b = w.value(b, v.Index(i)); w.wrong != "" {
				return w.within(strconv.Itoa(i))
			}
		}
		return put(b, "]")
	}
	w.wrong = "a " + v.Type().String() + " has no form in JSON"
	return b
}

// within says in what it is that something cannot be written.
func (w *writer) within(name string) []byte {
	if w.place != "" {
		name += "." + w.place
	}
	w.place = name
	return nil
}

func (w *writer) object(b []byte, v reflect.Value) []byte {
	b = put(b, "{")
	some := false
	for _, f := range w.of(v.Type()) {
		value := v.Field(f.index)
		if f.omit && empty(value) {
			continue
		}
		if some {
			b = put(b, ",")
		}
		some = true
		b = put(b, f.key)
		if b = w.value(b, value); w.wrong != "" {
			return w.within(f.name)
		}
	}
	return put(b, "}")
}

func (w *writer) table(b []byte, v reflect.Value) []byte {
	if v.Type().Key().Kind() != reflect.String {
		w.wrong = "a " + v.Type().String() + " has no form in JSON"
		return b
	}
	if v.IsNil() {
		return put(b, "null")
	}
	keys := v.MapKeys()
	sort.SliceStable(keys, func(i, j int) bool { return keys[i].String() < keys[j].String() })
	b = put(b, "{")
	for i, key := range keys {
		if i > 0 {
			b = put(b, ",")
		}
		b = put(quote(b, key.String()), ":")
		if b = w.value(b, v.MapIndex(key)); w.wrong != "" {
			return w.within(key.String())
		}
	}
	return put(b, "}")
}

// empty reports whether a field may be left out.
func empty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Array, reflect.Map, reflect.Slice, reflect.String:
		return v.Len() == 0
	case reflect.Pointer, reflect.Interface:
		return v.IsNil()
	case reflect.Bool:
		return !v.Bool()
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		return v.Int() == 0
	case reflect.Float64:
		return v.Float() == 0
	}
	return false
}

// number appends a number as JavaScript writes it.
func (w *writer) number(b []byte, f float64) []byte {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		w.wrong = strconv.FormatFloat(f, 'g', -1, 64) + " is no number"
		return b
	}
	size := math.Abs(f)
	if size == 0 || size >= 1e-6 && size < 1e21 {
		return strconv.AppendFloat(b, f, 'f', -1, 64)
	}
	b = strconv.AppendFloat(b, f, 'e', -1, 64)
	if n := len(b); b[n-2] == '0' && b[n-4] == 'e' { // e-09 is written e-9
		b[n-2] = b[n-1]
		b = b[:n-1]
	}
	return b
}

const digits = "0123456789abcdef"

// short are the bytes that have an escape of one letter, and the letters.
const short, letters = "\"\\\b\f\n\r\t", `"\bfnrt`

// quote appends a text in quotes.
func quote(b []byte, s string) []byte {
	b = put(b, `"`)
	from := 0
	for i := 0; i < len(s); {
		c := s[i]
		if c >= utf8.RuneSelf {
			r, size := utf8.DecodeRuneInString(s[i:])
			if r == utf8.RuneError && size == 1 {
				b = put(put(b, s[from:i]), `\ufffd`)
				from = i + 1
			} else if r == '\u2028' || r == '\u2029' { // ends a line of JavaScript
				b = put(put(b, s[from:i]), `\u202`+digits[r&15:r&15+1])
				from = i + size
			}
			i += size
			continue
		}
		i++
		if c >= ' ' && c != '"' && c != '\\' && c != '<' && c != '>' && c != '&' {
			continue
		}
		b = put(put(b, s[from:i-1]), `\`)
		from = i
		if k := strings.IndexByte(short, c); k >= 0 {
			b = put(b, letters[k:k+1])
		} else {
			b = put(b, "u00"+digits[c>>4:c>>4+1]+digits[c&15:c&15+1])
		}
	}
	return put(put(b, s[from:]), `"`)
}

// put appends a text; one place for all, which is smaller.
func put(b []byte, s string) []byte { return append(b, s...) }
