// Package text has two small tools for texts, in place of larger ones of the
// standard library: the size of the core is held to a limit when the page is built.
package text

import (
	"fmt"
	"strings"
)

// Records returns the fields of a table of comma-separated values, line by line.
// A field may stand in quotes, on one line, with quotes in it doubled. Empty
// lines and those that begin with # are left out. An error names the line.
func Records(table string) ([][]string, error) {
	var out [][]string
	for n, line := range strings.Split(table, "\n") {
		line = strings.TrimSuffix(line, "\r")
		if line == "" || line[0] == '#' {
			continue
		}
		var fields []string
		for more := true; more; {
			var field string
			rest, quoted := strings.CutPrefix(line, `"`)
			for quoted {
				part, after, closed := strings.Cut(rest, `"`)
				if !closed {
					return nil, fmt.Errorf("line %d: a quote does not end", n+1)
				}
				field += part
				if rest, quoted = strings.CutPrefix(after, `"`); quoted {
					field += `"`
				} else if line = rest; line != "" && line[0] != ',' {
					return nil, fmt.Errorf("line %d: something stands behind a quote", n+1)
				}
			}
			part, after, next := strings.Cut(line, ",")
			if strings.Contains(part, `"`) {
				return nil, fmt.Errorf("line %d: a quote within a field", n+1)
			}
			fields, line, more = append(fields, field+part), after, next
		}
		out = append(out, fields)
	}
	return out, nil
}

// Replace returns a text with the first of each pair replaced by the second,
// from left to right and each place once; of pairs that fit, the first counts.
func Replace(s string, pairs []string) string {
	var out strings.Builder
next:
	for s != "" {
		for i := 0; i < len(pairs); i += 2 {
			if rest, fits := strings.CutPrefix(s, pairs[i]); fits {
				out.WriteString(pairs[i+1])
				s = rest
				continue next
			}
		}
		out.WriteByte(s[0])
		s = s[1:]
	}
	return out.String()
}
