package plan

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"
)

// MaxText is the greatest length of a plan as text, bytes: 1 MB. The largest
// plan that passes Check has about a tenth of it.
const MaxText = 1 << 20

// Parse reads a plan's JSON as a file holds it. Older formats are carried
// forward (migrate.go), a newer one is refused. Fields that are not known are
// left out and their names kept in Unread, so that nothing vanishes unsaid.
// What the fields hold is not judged here: see Check.
func Parse(text []byte) (Plan, *Fault) {
	file := place{f: Fault{Leaf: -1}, words: "the file"}
	if len(text) > MaxText {
		f := file.fault("tooLong", "file", "", fmt.Sprintf("%d kB are too much; at most %d kB", len(text)>>10, MaxText>>10))
		f.High = fmt.Sprintf("%d kB", MaxText>>10)
		return Plan{}, f
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	var doc map[string]any
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	if err := d.Decode(&doc); err != nil {
		return Plan{}, unreadable(file, err)
	}
	if d.More() {
		return Plan{}, file.fault("unreadable", "file", "", "something follows after the plan")
	}
	number, ok := doc["format"].(json.Number)
	format, err := number.Int64()
	if !ok || err != nil || format < 1 {
		return Plan{}, file.fault("unreadable", "format", fmt.Sprint(doc["format"]), "this is not a plan: it names no format")
	}
	if format > Format {
		f := file.fault("newer", "format", fmt.Sprint(format), fmt.Sprintf("it was made by a newer version (format %d; this one reads up to %d)", format, Format))
		f.High = fmt.Sprint(Format)
		return Plan{}, f
	}
	doc = migrate(doc, int(format), migrations)
	carried, err := json.Marshal(doc)
	if err != nil {
		return Plan{}, unreadable(file, err)
	}
	var p Plan
	if err := json.Unmarshal(carried, &p); err != nil {
		return Plan{}, unreadable(file, err)
	}
	p.Unread = unknownFields(doc, reflect.TypeFor[Plan]())
	return p, nil
}

// unreadable says what is wrong with a text that is no JSON of a plan.
func unreadable(at place, err error) *Fault {
	var kind *json.UnmarshalTypeError
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &kind):
		field := kind.Field
		if field == "" {
			field = "file"
		}
		return at.fault("unreadable", field, kind.Value, fmt.Sprintf("%s is a %s, which does not belong there", field, kind.Value))
	case errors.As(err, &syntax):
		return at.fault("unreadable", "file", "", fmt.Sprintf("it breaks off or is damaged at character %d", syntax.Offset))
	}
	return at.fault("unreadable", "file", "", "it breaks off or is damaged")
}

// maxUnread bounds how many unknown fields are named.
const maxUnread = 20

// unknownFields returns the paths of what is in a document and in no field of a type, sorted.
func unknownFields(doc any, t reflect.Type) []string {
	seen := map[string]bool{}
	var walk func(v any, t reflect.Type, path string)
	walk = func(v any, t reflect.Type, path string) {
		switch v := v.(type) {
		case map[string]any:
			if t.Kind() != reflect.Struct {
				return
			}
			fields := map[string]reflect.Type{}
			for i := range t.NumField() {
				name, _, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
				if name != "" && name != "-" {
					fields[strings.ToLower(name)] = t.Field(i).Type
				}
			}
			for key, value := range v {
				if ft, ok := fields[strings.ToLower(key)]; ok {
					walk(value, ft, path+key+".")
				} else if len(seen) < maxUnread {
					seen[clip(path+key)] = true
				}
			}
		case []any:
			if t.Kind() == reflect.Slice {
				for _, value := range v {
					walk(value, t.Elem(), path)
				}
			}
		}
	}
	walk(doc, t, "")
	var out []string
	for name := range seen {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}
