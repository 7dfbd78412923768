// Package wire writes values as JSON and reads them back: structs with json
// tags, pointers, slices, arrays, maps by text, and any for a document whose
// shape is not known.
//
// It stands here in place of the standard library's package for the size of the
// core, which is held to a limit when the page is built: it takes 46 kB less,
// compressed, of 900 kB for everything. What it writes is the same to the
// byte, what it reads has the same values, and what the one refuses the other
// does: the tests hold both side by side. It differs in four things: fields
// without a tag begin with a small letter, numbers
// without a place of their own are kept as Number, what cannot be written is
// named by its place, and shapes that the core does not have (embedded structs,
// own ways to marshal, bytes, complex numbers, unsigned ones) are errors.
package wire

import (
	"reflect"
	"strings"
)

// deepest is how far objects and lists may be nested, as in the standard library.
const deepest = 10000

// field is one field of a struct as it stands in JSON.
type field struct {
	name  string
	key   string // the name in quotes with its colon
	index int
	omit  bool // left out while empty
}

// fields are the fields of the structs met in one call, so that a tag is read
// once and nothing is kept from call to call.
type fields map[reflect.Type][]field

// of returns the fields of a struct in their order.
func (known fields) of(t reflect.Type) []field {
	list, ok := known[t]
	if ok {
		return list
	}
	list = make([]field, 0, t.NumField())
	for i := range t.NumField() {
		f := t.Field(i)
		if !f.IsExported() {
			continue
		}
		name, omit := small(f.Name), false
		if tag, tagged := strings.CutPrefix(string(f.Tag), `json:"`); tagged {
			tag, _, _ = strings.Cut(tag, `"`)
			if tag == "-" {
				continue
			}
			tag, omit = strings.CutSuffix(tag, ",omitempty")
			if tag != "" {
				name = tag
			}
		}
		list = append(list, field{name, string(append(quote(nil, name), ':')), i, omit})
	}
	known[t] = list
	return list
}

// small begins a field's name with a small letter, a leading row of capitals up
// to its last: Hz hz, TL tl, NCBy ncBy, InA inA.
func small(name string) string {
	n := 0
	for n < len(name) && name[n] >= 'A' && name[n] <= 'Z' {
		n++
	}
	if n > 1 && n < len(name) && name[n] >= 'a' && name[n] <= 'z' {
		n--
	}
	return strings.ToLower(name[:n]) + name[n:]
}
