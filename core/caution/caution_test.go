package caution_test

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"regexp"
	"slices"
	"strconv"
	"testing"

	"twoleaf/core/caution"
)

// Every code that is declared stands once in the list, with a severity.
func TestEveryCodeIsListed(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "caution.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var declared []caution.Code
	ast.Inspect(file, func(n ast.Node) bool {
		if v, ok := n.(*ast.ValueSpec); ok && len(v.Values) == 1 {
			if id, ok := v.Type.(*ast.Ident); ok && id.Name == "Code" {
				text, err := strconv.Unquote(v.Values[0].(*ast.BasicLit).Value)
				if err != nil {
					t.Fatal(err)
				}
				declared = append(declared, caution.Code(text))
			}
		}
		return true
	})
	listed := caution.Codes()
	// Packages that find them declare some codes themselves.
	for _, c := range listed {
		if !slices.Contains(declared, c) && !slices.Contains(elsewhere, c) {
			t.Errorf("%s is declared nowhere", c)
		}
	}
	shape := regexp.MustCompile(`^[a-z][a-z0-9-]*$`)
	for _, c := range declared {
		if !slices.Contains(listed, c) {
			t.Errorf("%s is in no list", c)
		}
		if !shape.MatchString(string(c)) {
			t.Errorf("%q is no code", c)
		}
	}
}

// elsewhere are the codes that packages load and plan declare.
var elsewhere = []caution.Code{
	"channel-sags", "channel-bends", "joist-over", "rated-other-way", "needs-blocking", "loose-strip", "lifted-clip", "dead-passed", "joists-cut",
	"joists-sag", "long-span", "wall-out", "old-frame", "frame-on-floor", "corner-backing", "pilot-holes", "one-row", "one-clip", "panel-gap",
	"coarse-thread", "fine-thread", "drill-point", "half-load", "table-newer", "unread-fields",
}

func TestGravestFirst(t *testing.T) {
	rank := map[caution.Severity]int{caution.Over: 0, caution.Care: 1, caution.Info: 2}
	last := 0
	for _, c := range caution.Codes() {
		r, ok := rank[c.Severity()]
		if !ok || r < last {
			t.Errorf("%s (%q) stands out of order", c, c.Severity())
		}
		last = r
	}
	if caution.Code("none such").Severity() != "" || caution.Code("none such").Names() != nil {
		t.Error("an unknown code has a severity")
	}
}

func TestSortSaysEachOnce(t *testing.T) {
	a := caution.Caution{Code: caution.Below50Hz}
	b := caution.Caution{Code: caution.OverRating, Where: "e/b1/0", Args: map[string]float64{"share": 1.41}}
	c := caution.Caution{Code: caution.WoodAtFace, Text: map[string]string{"board": "p1"}}
	d := caution.Caution{Code: caution.WoodAtFace, Text: map[string]string{"board": "p2"}}
	got := caution.Sort([]caution.Caution{a, c, b, d, a, c})
	var order []caution.Code
	for _, x := range got {
		order = append(order, x.Code)
	}
	want := []caution.Code{caution.OverRating, caution.WoodAtFace, caution.WoodAtFace, caution.Below50Hz}
	if !slices.Equal(order, want) || got[1].Text["board"] != "p1" {
		t.Errorf("%v, want %v", order, want)
	}
}

func TestAsJSON(t *testing.T) {
	text, err := json.Marshal(caution.Caution{Code: caution.CloseToRating, Where: "b", Args: map[string]float64{"share": 0.93}})
	if want := `{"code":"close-to-rating","where":"b","args":{"share":0.93}}`; err != nil || string(text) != want {
		t.Errorf("%s, %v", text, err)
	}
}
