package test

import (
	"bytes"
	"encoding/json"
	"html"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/core"
)

// question is a method and its arguments as JSON.
type question [2]string

// native asks the core as compiled for this machine.
func native(t *testing.T, questions []question) []string {
	t.Helper()
	replies := make([]string, len(questions))
	for i, q := range questions {
		replies[i] = string(core.Call(q[0], []byte(q[1]), nil))
	}
	return replies
}

// inNode asks the built core under Node.
func inNode(t *testing.T, questions []question) []string {
	t.Helper()
	name, _ := built(t, "core-*.wasm")
	text, err := json.Marshal(questions)
	require.NoError(t, err)
	var replies []string
	require.NoError(t, json.Unmarshal(node(t, text, "core.mjs", "../.dist/"+name), &replies))
	return replies
}

// node runs a script of web and returns what it prints.
func node(t *testing.T, input []byte, args ...string) []byte {
	t.Helper()
	run := exec.Command("node", args...)
	run.Dir = root + "/web"
	run.Stdin = bytes.NewReader(input)
	said := new(strings.Builder)
	run.Stderr = said
	printed, err := run.Output()
	require.NoError(t, err, "%s", said)
	return printed
}

// inBrowser asks the built core in a worker of its own in Chromium.
func inBrowser(t *testing.T, questions []question) []string {
	t.Helper()
	name, _ := built(t, "worker-*.js")
	p := open(t, deploy(t, "/").address(), phone)
	return eval[[]string](p, `new Promise((done) => {
		const questions = $0, replies = [];
		const worker = new Worker($1);
		const next = () => questions[replies.length]
			? worker.postMessage({id: replies.length, method: questions[replies.length][0], args: questions[replies.length][1]})
			: (worker.terminate(), done(replies));
		worker.onmessage = ({data}) => {
			if (data.fatal) done([data.fatal]);
			if ('reply' in data) replies.push(data.reply);
			next();
		};
		worker.postMessage({load: ''});
	})`, questions, name)
}

// Same plan, same digits: native, under Node and in the browser, byte by byte,
// with and without a cache kept between the calls.
func TestSameDigitsEverywhere(t *testing.T) {
	if testing.Short() {
		t.Skip("compares three machines")
	}
	var questions []question
	for _, region := range []string{"US", "CA", "UK", "EU", "AU"} {
		for _, which := range []string{"first", "demo"} {
			made := question{"new", `{"region":"` + region + `","which":"` + which + `"}`}
			questions = append(questions, made)
			var reply struct {
				OK   bool
				Plan json.RawMessage
			}
			require.NoError(t, json.Unmarshal([]byte(native(t, []question{made})[0]), &reply))
			require.True(t, reply.OK, "%s %s", region, which)
			for _, want := range []string{`{}`, `{"sound":true}`, `{"rows":true}`} {
				questions = append(questions, question{"assess", `{"plan":` + string(reply.Plan) + `,"want":` + want + `}`})
			}
		}
	}
	want := native(t, questions)
	for name, got := range map[string][]string{"Node": inNode(t, questions), "Chromium": inBrowser(t, questions)} {
		require.Len(t, got, len(want), "%s: %v", name, got)
		for i := range want {
			assert.Equal(t, want[i], got[i], "%s, question %d: %.80s", name, i, questions[i])
		}
	}
}

// The figures that stand in the page before the core runs are the core's own.
func TestFirstFiguresStandInThePage(t *testing.T) {
	if _, err := exec.LookPath("node"); err != nil {
		lacking(t, "there is no Node")
	}
	var made struct {
		Plan struct{ Units string }
	}
	var plan struct{ Plan json.RawMessage }
	reply := native(t, []question{{"new", `{"region":"US","which":"first"}`}})[0]
	require.NoError(t, json.Unmarshal([]byte(reply), &made))
	require.NoError(t, json.Unmarshal([]byte(reply), &plan))
	var first struct{ Report json.RawMessage }
	reply = native(t, []question{{"assess", `{"plan":` + string(plan.Plan) + `,"want":{}}`}})[0]
	require.NoError(t, json.Unmarshal([]byte(reply), &first))

	input, err := json.Marshal(map[string]any{"report": first.Report, "units": made.Plan.Units})
	require.NoError(t, err)
	var cells []map[string]string
	require.NoError(t, json.Unmarshal(node(t, input, "build.mjs", "--cells"), &cells))
	require.NotEmpty(t, cells)

	_, page := built(t, "index.html")
	text := html.UnescapeString(string(page))
	for i, cell := range cells {
		require.NotEmpty(t, cell["figure"], "cell %d", i)
		at := strings.Index(text, cell["figure"])
		if assert.GreaterOrEqual(t, at, 0, "cell %d: the page does not say %q, or not in this order", i, cell["figure"]) {
			text = text[at+len(cell["figure"]):]
		}
	}
	// And they are the ones that the running page shows.
	quiet := open(t, deploy(t, "/").address(), phone)
	quiet.assessed()
	for i, cell := range quiet.figures() {
		assert.Contains(t, cell, cells[i]["figure"], "cell %d", i)
	}
}
