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
		s = row.ReplaceAllString(s, "${1}"+plain(v)+"${2}")
	}
	if err := os.WriteFile(file, []byte(s), 0o644); err != nil {
		return err
	}
	v, ok := fitted["Channel"]
	if !ok {
		return nil
	}
	return writeFixing(root, v)
}

// plain writes a number as a person would: 629400, 5.754e6, 0.0111.
func plain(v float64) string {
	s := strconv.FormatFloat(v, 'f', -1, 64)
	if v >= 1e6 {
		s = strconv.FormatFloat(v/1e6, 'f', -1, 64) + "e6"
	}
	return s
}

// writeFixing writes the stiffness of resilient channel into the table of
// fixings, which must be the method's: what is typed is compared with it.
func writeFixing(root string, stiffness float64) error {
	file := filepath.Join(root, "core", "material", "fixings.csv")
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	row := regexp.MustCompile(`(?m)^(channel,(?:[^,]*,){6})\d+(,)`)
	if len(row.FindAll(text, 2)) != 1 {
		return fmt.Errorf("%s: no one row of channel", file)
	}
	return os.WriteFile(file, row.ReplaceAll(text, []byte("${1}"+plain(stiffness)+"${2}")), 0o644)
}
