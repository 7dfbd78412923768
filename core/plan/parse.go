package plan

import (
	"bytes"
	"fmt"
	"strconv"

	"twoleaf/core/internal/wire"
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
	if _, err := wire.Unmarshal(text, &doc); err != nil {
		return Plan{}, unreadable(file, err)
	}
	number, ok := doc["format"].(wire.Number)
	format, err := strconv.Atoi(string(number))
	if !ok || err != nil || format < 1 {
		return Plan{}, file.fault("unreadable", "format", fmt.Sprint(doc["format"]), "this is not a plan: it names no format")
	}
	if format > Format {
		f := file.fault("newer", "format", fmt.Sprint(format), fmt.Sprintf("it was made by a newer version (format %d; this one reads up to %d)", format, Format))
		f.High = fmt.Sprint(Format)
		return Plan{}, f
	}
	doc = migrate(doc, format, migrations)
	carried, err := wire.Marshal(doc)
	if err != nil {
		return Plan{}, unreadable(file, err)
	}
	var p Plan
	p.Unread, err = wire.Unmarshal(carried, &p)
	if err != nil {
		return Plan{}, unreadable(file, err)
	}
	for i, name := range p.Unread {
		p.Unread[i] = clip(name)
	}
	return p, nil
}

// unreadable says what is wrong with a text that is no JSON of a plan.
func unreadable(at place, err error) *Fault {
	switch err := err.(type) {
	case *wire.TypeError:
		field := err.Field
		if field == "" {
			field = "file"
		}
		return at.fault("unreadable", field, err.Value, fmt.Sprintf("%s is a %s, which does not belong there", field, err.Value))
	case *wire.SyntaxError:
		switch {
		case err.More:
			return at.fault("unreadable", "file", "", "something follows after the plan")
		case !err.Cut:
			return at.fault("unreadable", "file", "", fmt.Sprintf("it breaks off or is damaged at character %d", err.Offset))
		}
	}
	return at.fault("unreadable", "file", "", "it breaks off or is damaged")
}
