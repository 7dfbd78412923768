// Package refdata opens the files of testdata for tests. Only _test.go files import it.
package refdata

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// Path returns the path of a file of testdata, found upwards from the test's
// folder beside go.mod, so that it is the same natively and on js/wasm.
func Path(t testing.TB, elem ...string) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return filepath.Join(append([]string{dir, "testdata"}, elem...)...)
		}
		up := filepath.Dir(dir)
		if up == dir {
			t.Fatal("no go.mod above the test")
		}
		dir = up
	}
}

// Row is a record of a csv by column name.
type Row map[string]string

// Num returns the number in a column; false where the column is empty.
func (r Row) Num(t testing.TB, column string) (float64, bool) {
	t.Helper()
	text, ok := r[column]
	if !ok {
		t.Fatalf("no column %s", column)
	}
	if text == "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatalf("column %s: %v", column, err)
	}
	return v, true
}

// CSV returns the records of a csv whose head of # lines says where it is from.
func CSV(t testing.TB, elem ...string) []Row {
	t.Helper()
	f, err := os.Open(Path(t, elem...))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 2 {
		t.Fatalf("%v holds nothing", elem)
	}
	rows := make([]Row, 0, len(all)-1)
	for _, record := range all[1:] {
		row := Row{}
		for i, name := range all[0] {
			row[name] = record[i]
		}
		rows = append(rows, row)
	}
	return rows
}
