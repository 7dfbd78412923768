package pattern

import (
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// inUse returns every pattern that a package of the core makes ready.
func inUse(t *testing.T) []string {
	t.Helper()
	var out []string
	files, err := filepath.Glob("../../*/*.go")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || len(call.Args) != 1 {
				return true
			}
			made, ok := call.Fun.(*ast.SelectorExpr)
			text, literal := call.Args[0].(*ast.BasicLit)
			if ok && literal && made.Sel.Name == "MustCompile" {
				s, err := strconv.Unquote(text.Value)
				require.NoError(t, err)
				out = append(out, s)
			}
			return true
		})
	}
	return out
}

var others = []string{
	`a`, `ab|c`, `(a)|(b)`, `(?:a|ab)(c|bcd)`, `(a+)(b+)?`, `x*y`, `a{2}`, `(ab){1,3}`, `^a`, `a$`, `\ba`, `a\b`, `[^a]b`, `[a-c-]+`, `[]x]+`, `(a|b)*c`, `(a(b)?)+`,
	`é+`, `[\d.]+x`, `\(\w+\)`, `(a|ab)(b?)$`, `(?:(a)|b)+`, `a?a?a?b`, `[^\s\d]+ `,
}

// same holds a pattern to the standard library's on a text, by every call.
func same(t *testing.T, text, s string) {
	t.Helper()
	want, got := regexp.MustCompile(text), MustCompile(text)
	require.Equal(t, want.FindStringSubmatchIndex(s), got.FindStringSubmatchIndex(s), "%s in %q", text, s)
	require.Equal(t, want.FindStringSubmatch(s), got.FindStringSubmatch(s), "%s in %q", text, s)
	require.Equal(t, want.FindString(s), got.FindString(s), "%s in %q", text, s)
	require.Equal(t, want.MatchString(s), got.MatchString(s), "%s in %q", text, s)
	require.Equal(t, want.FindAllString(s, -1), got.FindAllString(s, -1), "%s in %q", text, s)
	require.Equal(t, want.ReplaceAllString(s, "<>"), got.ReplaceAllString(s, "<>"), "%s in %q", text, s)
}

func TestFindsWhatTheLibraryFinds(t *testing.T) {
	used := inUse(t)
	require.NotEmpty(t, used)
	pieces := []string{
		"a", "b", "c", "d", "x", "y", "1", "12", "3.5", "200", " ", "  ", "\t", "@", "≤", "<=", "or", "mm", "mm steel", "plate", "gap", "block", "wall", "ga", "t", "air", "argon",
		"kg/m2", "(", ")", "-", ".", ";", "é", "\xff", "x ", " x", "AB-CD", "TL-", "-E", "]", "_",
	}
	r := rand.New(rand.NewPCG(3, 4))
	for _, text := range append(used, others...) {
		same(t, text, "")
		for range 300 {
			s := ""
			for range r.IntN(12) {
				s += pieces[r.IntN(len(pieces))]
			}
			same(t, text, s)
		}
	}
}

func TestWhatIsNotUnderstoodIsRefused(t *testing.T) {
	for _, text := range []string{
		"", "a*", "a?", "a|", "(a", "a)", "[a", "[é]", "[b-a]", "a{2", "a{,2}", "a{3,2}", "(?i)a", "a+?", "a**", "(a*)*b", ".", "*a", `\pL`, `\`, `[\`, `\xff`, "x{1000}", "(?P<n>a)",
	} {
		assert.Panics(t, func() { MustCompile(text) }, text)
	}
}
