package trial

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"twoleaf/core/evidence"
)

// behind are the packages that computed figures come from, beside the evidence.
var behind = []string{"core/band", "core/rating", "core/transmission", "core/internal/fit", "core/internal/trial"}

// Fingerprint returns a hash of the evidence, as it was read into build-ups,
// and of the code behind computed figures, constants included: Go without
// comments and tests.
func Fingerprint(root string) (string, error) {
	h := sha256.New()
	for _, t := range evidence.Ratings() {
		fmt.Fprintf(h, "%+v\n", t)
	}
	for _, t := range evidence.ThirdSpectra() {
		fmt.Fprintf(h, "%+v\n", t)
	}
	for _, t := range evidence.OctaveSpectra() {
		fmt.Fprintf(h, "%+v\n", t)
	}
	for _, dir := range behind {
		files, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(dir), "*"))
		if err != nil {
			return "", err
		}
		slices.Sort(files)
		for _, f := range files {
			name := filepath.Base(f)
			if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
				continue
			}
			text, err := os.ReadFile(f)
			if err != nil {
				return "", err
			}
			if text, err = withoutComments(text); err != nil {
				return "", err
			}
			h.Write([]byte(dir + "/" + name + "\n"))
			h.Write(text)
		}
	}
	return hex.EncodeToString(h.Sum(nil))[:16], nil
}

func withoutComments(text []byte) ([]byte, error) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, "", text, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch x := n.(type) {
		case *ast.GenDecl:
			x.Doc = nil
		case *ast.FuncDecl:
			x.Doc = nil
		case *ast.Field:
			x.Doc, x.Comment = nil, nil
		case *ast.ValueSpec:
			x.Doc, x.Comment = nil, nil
		case *ast.TypeSpec:
			x.Doc, x.Comment = nil, nil
		}
		return true
	})
	file.Doc, file.Comments = nil, nil
	var out bytes.Buffer
	// Without the positions of what was taken away the layout is the printer's own.
	err = (&printer.Config{Mode: printer.RawFormat}).Fprint(&out, token.NewFileSet(), file)
	return out.Bytes(), err
}
