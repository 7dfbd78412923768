package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
)

// writeConstants writes the fitted values into the table of constants, each in
// the row of its name; nothing else of the file changes.
func writeConstants(root string, fitted map[string]float64) error {
	file := filepath.Join(root, "core", "transmission", "constants.go")
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	s := string(text)
	for name, v := range fitted {
		row := regexp.MustCompile(`(\{"` + name + `", "[^"]*", )[-+.\deE]+(,)`)
		if len(row.FindAllString(s, 2)) != 1 {
			return fmt.Errorf("%s: no one row of %s", file, name)
		}
		s = row.ReplaceAllString(s, "${1}"+strconv.FormatFloat(v, 'g', -1, 64)+"${2}")
	}
	return os.WriteFile(file, []byte(s), 0o644)
}
