package trial

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"go/ast"
	"go/parser"
	"go/printer"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// behind are the packages that computed figures come from.
var behind = []string{"core/band", "core/evidence", "core/material", "core/rating", "core/transmission", "core/internal/fit", "core/internal/trial"}

// Fingerprint returns a hash of the evidence and of the code behind computed
// figures, constants included: Go without comments and tests, and tables as
// they are, but what was left out last time.
func Fingerprint(root string) (string, error) {
	h := sha256.New()
	for _, dir := range behind {
		files, err := filepath.Glob(filepath.Join(root, filepath.FromSlash(dir), "*"))
		if err != nil {
			return "", err
		}
		slices.Sort(files)
		for _, f := range files {
			name := filepath.Base(f)
			if strings.HasSuffix(name, "_test.go") || strings.HasPrefix(name, "leftout") && strings.HasSuffix(name, ".csv") {
				continue
			}
			text, err := os.ReadFile(f)
			if err != nil {
				return "", err
			}
			switch filepath.Ext(name) {
			case ".go":
				if text, err = withoutComments(text); err != nil {
					return "", err
				}
			case ".csv":
			default:
				continue
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
