package wire

import (
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// Number is a number as it stands in a text, in a document whose shape is not known.
type Number string

// SyntaxError says that a text is no JSON.
type SyntaxError struct {
	Offset int  // the character at fault, from 1; the length where the text breaks off
	Cut    bool // it breaks off
	More   bool // something follows after the value
}

// Error returns it in words.
func (e *SyntaxError) Error() string {
	at := strconv.Itoa(e.Offset)
	switch {
	case e.Cut:
		return "it breaks off after character " + at
	case e.More:
		return "something follows after the end, at character " + at
	}
	return "character " + at + " does not belong there"
}

// TypeError says that a value is not of the kind that its field has.
type TypeError struct {
	Field string // names from the outside inwards, with points between: "surfaces.width"
	Value string // what stands there: "string", "number 1.5", "array", "object", "bool"
}

// Error returns it in words.
func (e *TypeError) Error() string {
	return e.Field + " is a " + e.Value + ", which does not belong there"
}

// Unmarshal reads JSON into what a pointer points to. The names of an object are
// matched to the fields of a struct exactly, or else whatever their case; null
// changes nothing but pointers, slices, maps and any. Of maps only map[string]any
// can be read into. unread are the paths of
// what no field is for, in the text's order, each once and at most maxUnread. The error is
// a *SyntaxError, or else the first *TypeError: what comes after it is still read.
func Unmarshal(text []byte, into any) (unread []string, err error) {
	r := reader{text: text, fields: fields{}}
	if !r.value(reflect.ValueOf(into).Elem()) {
		return nil, &r.bad
	}
	r.blank()
	if r.at < len(text) {
		return nil, &SyntaxError{Offset: r.at + 1, More: true}
	}
	if r.wrong != nil {
		return r.unread, r.wrong
	}
	return r.unread, nil
}

// maxUnread bounds how many fields that nothing is for are named.
const maxUnread = 20

type reader struct {
	fields
	text   []byte
	at     int
	depth  int
	path   string // of the field being read, each name followed by a point
	unread []string
	bad    SyntaxError
	wrong  *TypeError
}

// fail notes that the text is no JSON at the byte being looked at.
func (r *reader) fail() bool {
	r.bad = SyntaxError{Offset: min(r.at+1, len(r.text)), Cut: r.at >= len(r.text)}
	return false
}

func (r *reader) blank() {
	for r.at < len(r.text) && strings.IndexByte(" \t\r\n", r.text[r.at]) >= 0 {
		r.at++
	}
}

// next skips blanks and returns the byte after them, 0 at the end.
func (r *reader) next() byte {
	r.blank()
	return r.peek()
}

func (r *reader) peek() byte {
	if r.at < len(r.text) {
		return r.text[r.at]
	}
	return 0
}

// mismatch notes that a value is not what its field is for.
func (r *reader) mismatch(value string) {
	if r.wrong == nil {
		r.wrong = &TypeError{strings.TrimSuffix(r.path, "."), value}
	}
}

// value reads one value into a place; an invalid one is for what is not wanted.
func (r *reader) value(v reflect.Value) bool {
	c := r.next()
	for c != 'n' && v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		v = v.Elem()
	}
	if v.Kind() == reflect.Interface && c != 'n' || v.Kind() == reflect.Map && c == '{' && v.Type() == reflect.TypeFor[map[string]any]() {
		tree, ok := r.tree(c)
		if ok {
			v.Set(reflect.ValueOf(tree))
		}
		return ok
	}
	switch c {
	case '{':
		return r.nested(func() bool { return r.object(v) })
	case '[':
		return r.nested(func() bool { return r.list(v) })
	case '"':
		s, ok := r.quoted()
		if v.Kind() == reflect.String {
			v.SetString(s)
		} else if v.IsValid() {
			r.mismatch("string")
		}
		return ok
	case 't', 'f':
		if v.Kind() == reflect.Bool {
			v.SetBool(c == 't')
		} else if v.IsValid() {
			r.mismatch("bool")
		}
		return r.boolean(c)
	case 'n':
		switch v.Kind() {
		case reflect.Pointer, reflect.Interface, reflect.Slice, reflect.Map:
			v.SetZero()
		}
		return r.literal("null")
	}
	s, ok := r.number()
	if ok && v.IsValid() {
		r.setNumber(v, s)
	}
	return ok
}

// tree reads one value of a shape that is not known.
func (r *reader) tree(c byte) (tree any, ok bool) {
	switch c {
	case '{':
		object := map[string]any{}
		ok = r.nested(func() bool {
			return r.members(func(key string) (ok bool) {
				object[key], ok = r.tree(r.next())
				return ok
			})
		})
		return object, ok
	case '[':
		list := []any{}
		ok = r.nested(func() bool {
			return r.elements(func() bool {
				element, ok := r.tree(r.next())
				list = append(list, element)
				return ok
			})
		})
		return list, ok
	case '"':
		return r.quoted()
	case 't', 'f':
		return c == 't', r.boolean(c)
	case 'n':
		return nil, r.literal("null")
	}
	s, ok := r.number()
	return Number(s), ok
}

// nested reads an object or a list, unless there are too many around it.
func (r *reader) nested(read func() bool) bool {
	if r.depth++; r.depth > deepest {
		return r.fail()
	}
	ok := read()
	r.depth--
	return ok
}

func (r *reader) object(v reflect.Value) bool {
	var known []field
	if v.Kind() == reflect.Struct {
		known = r.of(v.Type())
	} else if v.IsValid() {
		r.mismatch("object")
		v = reflect.Value{}
	}
	return r.members(func(key string) bool {
		var into reflect.Value
		around := r.path
		if f, ok := match(known, key); ok {
			into = v.Field(f.index)
			r.path += f.name + "."
		} else if v.IsValid() && len(r.unread) < maxUnread && !slices.Contains(r.unread, r.path+key) {
			r.unread = append(r.unread, r.path+key)
		}
		ok := r.value(into)
		r.path = around
		return ok
	})
}

// match returns the field that has a name, or else the first that has it in other case.
func match(known []field, key string) (field, bool) {
	for _, f := range known {
		if f.name == key {
			return f, true
		}
	}
	for _, f := range known {
		if strings.EqualFold(f.name, key) {
			return f, true
		}
	}
	return field{}, false
}

func (r *reader) list(v reflect.Value) bool {
	if v.Kind() != reflect.Slice {
		if v.IsValid() {
			r.mismatch("array")
		}
		return r.elements(func() bool { return r.value(reflect.Value{}) })
	}
	n := 0
	ok := r.elements(func() bool {
		if n == v.Cap() {
			v.Grow(1)
		}
		n++
		v.SetLen(n)
		return r.value(v.Index(n - 1))
	})
	v.SetLen(n)
	if n == 0 {
		v.Set(reflect.MakeSlice(v.Type(), 0, 0))
	}
	return ok
}

// members reads an object, each value by the function given.
func (r *reader) members(read func(key string) bool) bool {
	return r.series('}', func() bool {
		if r.peek() != '"' {
			return r.fail()
		}
		key, ok := r.quoted()
		if !ok {
			return false
		}
		if r.next() != ':' {
			return r.fail()
		}
		r.at++
		return read(key)
	})
}

// elements reads a list, each element by the function given.
func (r *reader) elements(read func() bool) bool { return r.series(']', read) }

// series reads what stands between brackets with commas in between.
func (r *reader) series(end byte, read func() bool) bool {
	r.at++
	if r.next() == end {
		r.at++
		return true
	}
	for {
		r.blank()
		if !read() {
			return false
		}
		switch r.next() {
		case end:
			r.at++
			return true
		case ',':
			r.at++
		default:
			return r.fail()
		}
	}
}

func (r *reader) setNumber(v reflect.Value, s string) {
	switch v.Kind() {
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		n, err := strconv.ParseInt(s, 10, 64)
		if err != nil || v.OverflowInt(n) {
			r.mismatch("number " + s)
			return
		}
		v.SetInt(n)
	case reflect.Float64:
		f, err := strconv.ParseFloat(s, 64)
		if err != nil {
			r.mismatch("number " + s)
			return
		}
		v.SetFloat(f)
	default:
		r.mismatch("number")
	}
}

func (r *reader) boolean(c byte) bool {
	if c == 't' {
		return r.literal("true")
	}
	return r.literal("false")
}

func (r *reader) literal(word string) bool {
	for i := range len(word) {
		if r.peek() != word[i] {
			return r.fail()
		}
		r.at++
	}
	return true
}

// number returns a number as it stands there.
func (r *reader) number() (string, bool) {
	from := r.at
	if r.peek() == '-' {
		r.at++
	}
	if r.peek() == '0' {
		r.at++
	} else if !r.digits() {
		return "", r.fail()
	}
	if r.peek() == '.' {
		r.at++
		if !r.digits() {
			return "", r.fail()
		}
	}
	if c := r.peek(); c == 'e' || c == 'E' {
		r.at++
		if c := r.peek(); c == '+' || c == '-' {
			r.at++
		}
		if !r.digits() {
			return "", r.fail()
		}
	}
	return string(r.text[from:r.at]), true
}

func (r *reader) digits() bool {
	from := r.at
	for c := r.peek(); c >= '0' && c <= '9'; c = r.peek() {
		r.at++
	}
	return r.at > from
}

// quoted returns a text; what is no UTF-8 in it, and halves of surrogate pairs, become U+FFFD.
func (r *reader) quoted() (string, bool) {
	r.at++
	from := r.at
	for c := r.peek(); c != '"' && c != '\\' && c >= ' ' && c < utf8.RuneSelf; c = r.peek() {
		r.at++
	}
	if r.peek() == '"' { // nothing to undo
		r.at++
		return string(r.text[from : r.at-1]), true
	}
	s := append(make([]byte, 0, 2*(r.at-from)+16), r.text[from:r.at]...)
	for {
		c := r.peek()
		switch {
		case c == '"':
			r.at++
			return string(s), true
		case c < ' ':
			return "", r.fail()
		case c >= utf8.RuneSelf:
			one, size := utf8.DecodeRune(r.text[r.at:])
			s = utf8.AppendRune(s, one)
			r.at += size
		case c != '\\':
			s = append(s, c)
			r.at++
		default:
			one, ok := r.escape()
			if !ok {
				return "", false
			}
			s = utf8.AppendRune(s, one)
		}
	}
}

// escape reads what a backslash begins.
func (r *reader) escape() (rune, bool) {
	r.at++
	c := r.peek()
	if k := strings.IndexByte(letters, c); k >= 0 {
		r.at++
		return rune(short[k]), true
	}
	if c == '/' {
		r.at++
		return '/', true
	}
	if c != 'u' {
		return 0, r.fail()
	}
	one, ok := r.hex()
	if !ok || !utf16.IsSurrogate(one) {
		return one, ok
	}
	behind := r.at
	if r.peek() == '\\' {
		if r.at++; r.peek() == 'u' {
			two, ok := r.hex()
			if !ok {
				return 0, false
			}
			if pair := utf16.DecodeRune(one, two); pair != utf8.RuneError {
				return pair, true
			}
		}
	}
	r.at = behind
	return utf8.RuneError, true
}

// hex reads the u of an escape and its four digits.
func (r *reader) hex() (rune, bool) {
	n := rune(0)
	for range 4 {
		r.at++
		c := r.peek()
		if c >= 'A' && c <= 'F' {
			c |= 'a' - 'A'
		}
		k := strings.IndexByte(digits, c)
		if k < 0 {
			return 0, r.fail()
		}
		n = n<<4 | rune(k)
	}
	r.at++
	return n, true
}
