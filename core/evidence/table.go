package evidence

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"twoleaf/core/band"
	"twoleaf/core/internal/text"
)

// record is a line of a table by column name.
type record struct {
	line int
	cell map[string]string
}

// records reads a table with a head of column names; lines that begin with #
// are notes. An error names the line or the columns that are missing.
func records(table string, needed ...string) ([]record, error) {
	all, err := text.Records(strings.TrimPrefix(table, "\ufeff"))
	if err != nil {
		return nil, err
	}
	if len(all) == 0 {
		return nil, fmt.Errorf("the table is empty: columns %s are needed", strings.Join(needed, ", "))
	}
	var lacking []string
	for _, n := range needed {
		if !slices.Contains(all[0], n) {
			lacking = append(lacking, n)
		}
	}
	if len(lacking) > 0 {
		return nil, fmt.Errorf("no column %s; there are %s", strings.Join(lacking, ", "), strings.Join(all[0], ", "))
	}
	var out []record
	for i, fields := range all[1:] {
		rec := record{line: i + 2, cell: map[string]string{}}
		for k, name := range all[0] {
			if k < len(fields) {
				rec.cell[strings.TrimSpace(name)] = strings.TrimSpace(fields[k])
			}
		}
		out = append(out, rec)
	}
	return out, nil
}

// number returns the number of a cell; ok is false where it is empty.
func (r record) number(column string) (v float64, ok bool, err error) {
	s := r.cell[column]
	if s == "" {
		return 0, false, nil
	}
	v, err = strconv.ParseFloat(s, 64)
	if err != nil {
		return 0, false, fmt.Errorf("row %d (%s): %s is %q, which is no number", r.line, r.cell["id"], column, s)
	}
	return v, true, nil
}

// construction columns that every table must have.
var needed = []string{"id", "leaf1", "framing", "cavity_mm", "fill", "leaf2", "kind"}

// test reads what the tables have in common.
func (r record) test(rated string) (Test, error) {
	c := r.cell
	t := Test{
		ID: c["id"], Source: c["source"], Table: c["table"], Description: c["description"],
		Kind: c["kind"], Tier: c["tier"], Note: c["note"],
		Text: Text{
			Leaf1: c["leaf1"], Framing: c["framing"], Spacing: c["spacing_mm"], Cavity: c["cavity_mm"],
			Fill: c["fill"], Leaf2: c["leaf2"], Kind: c["kind"], Mass: c["total_kg_m2"],
		},
	}
	if t.Table == "" {
		t.Table = c["source_table_or_page"]
	}
	t.Series = series(t.ID, t.Source, t.Table)
	for column, to := range map[string]*int{rated: &t.STC, "IIC": &t.IIC} {
		v, ok, err := r.number(column)
		if err != nil {
			return t, err
		}
		if ok {
			*to = int(v)
		}
	}
	built, err := ReadText(t.Text)
	if err != nil {
		t.Unread = err.Error()
	}
	t.BuildUps, t.Assumed = built.BuildUps, built.Assumed
	return t, nil
}

// series returns what a row is left out together with when the method is
// tried on what it was not fitted to: one wall or floor number of a code table,
// or one table of a handbook.
func series(id, source, table string) string {
	if n, ok := numbered(id); ok {
		return n
	}
	name, _, _ := strings.Cut(table, ",")
	return strings.TrimSpace(source + " " + name)
}

// ReadRatings reads a table of constructions with a single-number rating
// (columns id, leaf1, framing, spacing_mm, cavity_mm, fill, leaf2, STC, kind, and
// optionally source, table, description, IIC, tier, note).
func ReadRatings(text string) ([]Test, error) {
	recs, err := records(text, append(needed, "spacing_mm", "STC")...)
	if err != nil {
		return nil, err
	}
	var out []Test
	for _, r := range recs {
		t, err := r.test("STC")
		if err != nil {
			return nil, err
		}
		out = append(out, t)
	}
	return out, nil
}

// ReadThirds reads a table of one-third-octave spectra: the columns of
// ReadRatings without STC (STC_reported if known), and one for each band by its nominal frequency, Hz.
func ReadThirds(text string) ([]Thirds, error) {
	recs, err := records(text, needed...)
	if err != nil {
		return nil, err
	}
	var out []Thirds
	for _, r := range recs {
		t, err := r.test("STC_reported")
		if err != nil {
			return nil, err
		}
		s := Thirds{Test: t}
		for i, hz := range band.Nominal {
			if s.Loss[i], err = r.level(hz); err != nil {
				return nil, err
			}
		}
		out = append(out, s)
	}
	return out, nil
}

// ReadOctaves reads a table of octave spectra, otherwise as ReadThirds.
func ReadOctaves(text string) ([]Octaves, error) {
	recs, err := records(text, needed...)
	if err != nil {
		return nil, err
	}
	var out []Octaves
	for _, r := range recs {
		t, err := r.test("STC_reported")
		if err != nil {
			return nil, err
		}
		s := Octaves{Test: t}
		for i, hz := range band.Octaves {
			if s.Loss[i], err = r.level(hz); err != nil {
				return nil, err
			}
		}
		out = append(out, s)
	}
	return out, nil
}

func (r record) level(hz float64) (float64, error) {
	v, ok, err := r.number(strconv.FormatFloat(hz, 'f', -1, 64))
	if err != nil || !ok {
		return missing, err
	}
	return v, nil
}
