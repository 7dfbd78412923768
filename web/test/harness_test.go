// Package test opens the built site in a real browser and uses it as people
// do. It needs `make dist` and a Chromium (found by web/test/chromium.sh);
// without them it skips, and fails where CI is set.
package test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/device"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"twoleaf/web/serve/site"
)

const (
	root = "../.."
	dist = root + "/.dist"
	// patience is how long anything on the page may take before a test gives up.
	patience = 20 * time.Second
)

// chromium is started by the first test that opens a page and shared by all.
var chromium = struct {
	once    sync.Once
	context context.Context
	err     error
	end     []func()
}{}

func TestMain(m *testing.M) {
	code := m.Run()
	for i := len(chromium.end) - 1; i >= 0; i-- {
		chromium.end[i]()
	}
	os.Exit(code)
}

// lacking ends a test that cannot run here; where CI is set that is a failure.
func lacking(t *testing.T, what string) {
	t.Helper()
	if os.Getenv("CI") != "" {
		t.Fatal(what)
	}
	t.Skip(what)
}

// browser returns the context of the shared browser.
func browser(t *testing.T) context.Context {
	t.Helper()
	if _, err := os.Stat(dist + "/index.html"); err != nil {
		lacking(t, "there is no built site: run `make dist`")
	}
	chromium.once.Do(func() {
		found, err := exec.Command("sh", "chromium.sh").Output()
		if err != nil {
			chromium.err = fmt.Errorf("no Chromium was found: %w", err)
			return
		}
		profile, err := os.MkdirTemp("", "twoleaf-browser-")
		if err != nil {
			chromium.err = err
			return
		}
		allocator, end := chromedp.NewExecAllocator(context.Background(),
			chromedp.ExecPath(strings.TrimSpace(string(found))), chromedp.UserDataDir(profile),
			chromedp.NoFirstRun, chromedp.NoDefaultBrowserCheck, chromedp.Headless, chromedp.NoSandbox, chromedp.DisableGPU,
			chromedp.Flag("disable-background-networking", true), chromedp.Flag("disable-component-update", true),
			chromedp.Flag("disable-sync", true), chromedp.Flag("disable-quic", true),
			// Nothing but this machine can be reached, whatever the page tries.
			chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost"),
			chromedp.Flag("hide-scrollbars", true), chromedp.Flag("font-render-hinting", "none"),
		)
		ctx, cancel := chromedp.NewContext(allocator)
		chromium.end = append(chromium.end, func() { _ = os.RemoveAll(profile) }, end, cancel)
		chromium.context, chromium.err = ctx, chromedp.Do(ctx)
	})
	if chromium.err != nil {
		lacking(t, chromium.err.Error())
	}
	return chromium.context
}

// deployment is a site on a server of its own, whose files a test can change.
type deployment struct {
	server *httptest.Server
	prefix string
	mu     sync.Mutex
	files  fstest.MapFS // instead of the built ones; a nil Data takes a file away
	asked  []string
	once   sync.Once
	// untyped serves the core as a host does that has never heard of WebAssembly.
	untyped bool
}

// untyped takes the type from an answer's head.
type untyped struct{ http.ResponseWriter }

func (w untyped) WriteHeader(status int) {
	w.Header().Set("Content-Type", "application/octet-stream")
	w.ResponseWriter.WriteHeader(status)
}

// deploy serves the built site under a path.
func deploy(t *testing.T, prefix string) *deployment {
	t.Helper()
	d := &deployment{prefix: "/" + strings.Trim(prefix, "/"), files: fstest.MapFS{}}
	if d.prefix != "/" {
		d.prefix += "/"
	}
	handler := site.Handler(d, prefix)
	d.server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		d.mu.Lock()
		d.asked = append(d.asked, r.URL.Path)
		if d.untyped && strings.HasSuffix(r.URL.Path, ".wasm") {
			w = untyped{w}
		}
		d.mu.Unlock()
		handler.ServeHTTP(w, r)
	}))
	t.Cleanup(d.stop)
	return d
}

// Open gives a changed file before the built one.
func (d *deployment) Open(name string) (fs.File, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	plain := strings.TrimSuffix(strings.TrimSuffix(name, ".br"), ".gz")
	file, changed := d.files[plain]
	if !changed {
		return os.DirFS(dist).Open(name)
	}
	if plain != name || file.Data == nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return fstest.MapFS{name: file}.Open(name)
}

// change puts other content in place of a built file, or takes it away.
func (d *deployment) change(name string, data []byte) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.files[name] = &fstest.MapFile{Data: data, ModTime: time.Now()}
}

func (d *deployment) address() string { return d.server.URL + d.prefix }

// requests returns the paths asked for so far.
func (d *deployment) requests() []string {
	d.mu.Lock()
	defer d.mu.Unlock()
	return append([]string(nil), d.asked...)
}

// stop takes the server away, as a dead spot does.
func (d *deployment) stop() {
	d.once.Do(func() {
		d.server.CloseClientConnections()
		d.server.Close()
	})
}

// built returns the one built file of that pattern, as named in the site.
func built(t *testing.T, pattern string) (name string, data []byte) {
	t.Helper()
	found, err := filepath.Glob(filepath.Join(dist, pattern))
	require.NoError(t, err)
	require.Len(t, found, 1, "%s in the built site", pattern)
	data, err = os.ReadFile(found[0])
	require.NoError(t, err)
	return filepath.Base(found[0]), data
}

// view is a size of glass.
type view struct {
	name          string
	width, height int64
	scale         float64
	touch         bool
}

var (
	phone  = view{"phone", 390, 844, 3, true}
	narrow = view{"narrow", 360, 740, 3, true}
	desk   = view{"desk", 1280, 800, 1, false}
)

// page is a tab in a profile of its own.
type page struct {
	t    *testing.T
	ctx  context.Context
	view view
	// taps counts what a thumb has done.
	taps int

	mu       sync.Mutex
	requests []string
	errors   []string
	allowed  []string // parts of error messages that a test brings about on purpose
}

// open shows an address in a fresh profile.
func open(t *testing.T, address string, v view) *page {
	t.Helper()
	parent := browser(t)
	ctx, cancel := chromedp.NewContext(parent, chromedp.WithNewBrowserContext())
	p := &page{t: t, ctx: ctx, view: v}
	t.Cleanup(func() {
		if t.Failed() && ctx.Err() == nil {
			p.shot("failed-" + strings.ReplaceAll(t.Name(), "/", "-"))
		}
		cancel()
	})
	p.watch()
	p.do(chromedp.Emulate(device.Info{Width: v.width, Height: v.height, Scale: v.scale, Mobile: v.touch, Touch: v.touch}))
	p.visit(address)
	return p
}

// watch notes every request, and every error for noErrors.
func (p *page) watch() {
	p.t.Helper()
	requests := chromedp.Events(p.ctx, network.RequestWillBeSent)
	console := chromedp.Console(p.ctx)
	_, err := chromedp.Call(p.ctx, network.Enable, network.EnableParams{})
	require.NoError(p.t, err)
	go func() {
		for event, err := range requests {
			if err != nil {
				return
			}
			p.mu.Lock()
			p.requests = append(p.requests, event.Request.URL)
			p.mu.Unlock()
		}
	}()
	go func() {
		for message, err := range console {
			if err != nil {
				return
			}
			if message.IsException() || message.Type == chromedp.ConsoleError {
				p.mu.Lock()
				p.errors = append(p.errors, message.Text+" "+message.URL)
				p.mu.Unlock()
			}
		}
	}()
}

// noErrors fails for every error and refused request of the page that was not allowed.
func (p *page) noErrors() {
	p.t.Helper()
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, text := range p.errors {
		expected := false
		for _, part := range p.allowed {
			expected = expected || strings.Contains(text, part)
		}
		if !expected {
			p.t.Errorf("the page reports: %s", text)
		}
	}
}

// sent returns the addresses the page has asked for.
func (p *page) sent() []string {
	p.mu.Lock()
	defer p.mu.Unlock()
	return append([]string(nil), p.requests...)
}

// do runs steps of the browser.
func (p *page) do(steps ...chromedp.Action[chromedp.Void]) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	require.NoError(p.t, chromedp.Do(ctx, steps...))
}

func (p *page) visit(address string) { p.t.Helper(); p.do(chromedp.Navigate(address)) }

func (p *page) reload() { p.t.Helper(); p.do(chromedp.Reload()) }

// eval returns the value of a JavaScript expression, awaited.
func eval[T any](p *page, expression string, args ...any) T {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](script(p.t, expression, args), chromedp.EvalAwaitPromise))
	require.NoError(p.t, err, "%s", expression)
	return value
}

// script puts args, as JSON, where an expression has $0, $1 …
func script(t *testing.T, expression string, args []any) string {
	t.Helper()
	for i := len(args) - 1; i >= 0; i-- {
		text, err := json.Marshal(args[i])
		require.NoError(t, err)
		expression = strings.ReplaceAll(expression, fmt.Sprintf("$%d", i), string(text))
	}
	return expression
}

// until waits for a JavaScript expression, awaited, to be true. One that fails,
// as between two documents, is not true yet.
func (p *page) until(expression string, args ...any) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	asked := script(p.t, "(async () => !!(await ("+expression+")))()", args)
	for {
		come, err := chromedp.Run(ctx, chromedp.Evaluate[bool](asked, chromedp.EvalAwaitPromise))
		if come && err == nil {
			return
		}
		if ctx.Err() != nil {
			require.FailNow(p.t, "this did not come true: "+script(p.t, expression, args), "%v; the page says: %s", err, p.words("body"))
		}
		time.Sleep(15 * time.Millisecond)
	}
}

// words returns the text of an element as it is read, with plain spaces.
func (p *page) words(selector string) string {
	p.t.Helper()
	text := eval[string](p, "(document.querySelector($0) ?? {innerText: ''}).innerText", selector)
	return strings.Join(strings.Fields(text), " ")
}

// assessed waits until the core has answered what was last asked, and the page has drawn it.
func (p *page) assessed() {
	p.t.Helper()
	p.until("performance.getEntriesByName('assessed').length > 0 && !document.querySelector('main [aria-busy=true]')")
	eval[bool](p, "new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0, true)))")
}

// settled waits until what the page says has not changed for a while.
func (p *page) settled() {
	p.t.Helper()
	p.assessed()
	before, since := "", time.Now()
	for time.Since(since) < 250*time.Millisecond {
		if now := p.words("body"); now != before {
			before, since = now, time.Now()
		}
		time.Sleep(20 * time.Millisecond)
	}
}

// spot is where an element can be hit, in CSS pixels.
type spot struct {
	X, Y          float64
	Width, Height float64
	Hit           bool   // nothing lies over it
	Over          string // what does
	Found         int
}

// look scrolls to the first visible element of a list and says where it is.
const look = `((all) => {
	const seen = all.filter((e) => e.checkVisibility({visibilityProperty: true}) && e.getClientRects().length);
	if (!seen.length) return {Found: 0};
	const e = seen[0];
	let r = e.getBoundingClientRect();
	const inside = () => {
		const top = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
		return top && (top === e || e.contains(top) || top.contains(e) && top.tagName === 'LABEL' || top.closest('label')?.control === e);
	};
	if (!inside()) { e.scrollIntoView({block: 'center', behavior: 'instant'}); r = e.getBoundingClientRect(); }
	const top = document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2);
	return {X: r.x + r.width / 2, Y: r.y + r.height / 2, Width: r.width, Height: r.height, Hit: !!inside(), Over: top?.outerHTML.slice(0, 120) ?? '', Found: seen.length};
})`

// named finds what can be used by the words on it or read out for it.
const named = `((words) => {
	const plain = (text) => (text ?? '').replace(/\s+/g, ' ').trim();
	const usable = [...document.querySelectorAll('button, a[href], input, select, textarea, summary, label, [role=button], [role=tab], [role=option], [role=link], [role=menuitem], [tabindex]')];
	const texts = (e) => [plain(e.innerText), plain(e.getAttribute('aria-label')), plain(e.title), ...[...(e.labels ?? [])].map((l) => plain(l.innerText))];
	const whole = usable.filter((e) => texts(e).includes(words));
	const part = usable.filter((e) => texts(e).some((text) => text.includes(words))).sort((a, b) => a.innerText.length - b.innerText.length);
	return whole.length ? whole : part;
})`

// hit presses what an expression finds, with a finger or the mouse.
func (p *page) hit(what, find string, arg string) {
	p.t.Helper()
	s := eval[spot](p, find, arg)
	for end := time.Now().Add(5 * time.Second); (s.Found == 0 || !s.Hit) && time.Now().Before(end); {
		time.Sleep(30 * time.Millisecond) // it may be on its way
		s = eval[spot](p, find, arg)
	}
	require.NotZero(p.t, s.Found, "%s is not on the page, which says: %s", what, p.words("body"))
	require.True(p.t, s.Hit, "%s is covered by %s", what, s.Over)
	p.taps++
	if p.view.touch {
		p.do(chromedp.TapXY(s.X, s.Y))
	} else {
		p.do(chromedp.MouseClickXY(s.X, s.Y))
	}
}

// tap presses the first visible element of a selector.
func (p *page) tap(selector string) {
	p.t.Helper()
	p.hit(selector, look+"([...document.querySelectorAll($0)])", selector)
}

// press presses the control with these words.
func (p *page) press(words string) {
	p.t.Helper()
	p.hit("“"+words+"”", look+"("+named+"($0))", words)
}

// write replaces what stands in a field, key by key.
func (p *page) write(selector, text string) {
	p.t.Helper()
	p.focus(selector)
	p.keys(text)
}

// focus taps a field and selects what stands in it.
func (p *page) focus(selector string) {
	p.t.Helper()
	p.tap(selector)
	p.until("document.activeElement.matches($0)", selector)
	// The page selects what is in a field a frame after the focus came.
	eval[bool](p, "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(true))))")
	eval[bool](p, "(document.activeElement.select(), true)")
}

// paste replaces what stands in a field at once.
func (p *page) paste(selector, text string) {
	p.t.Helper()
	p.focus(selector)
	_, err := chromedp.Call(p.ctx, input.InsertText, input.InsertTextParams{Text: text})
	require.NoError(p.t, err)
}

// keys types into whatever has the focus.
func (p *page) keys(text string) { p.t.Helper(); p.do(chromedp.KeyEvent(text)) }

// theme asks for the light or the dark form of the page.
func (p *page) theme(name string) {
	p.t.Helper()
	_, err := chromedp.Call(p.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "prefers-color-scheme", Value: name}, {Name: "prefers-reduced-motion", Value: "reduce"},
	}})
	require.NoError(p.t, err)
}

// shot keeps a picture of the glass in .dist/shots.
func (p *page) shot(name string) {
	p.t.Helper()
	ctx, cancel := context.WithTimeout(p.ctx, patience)
	defer cancel()
	picture, err := chromedp.Run(ctx, chromedp.CaptureScreenshot())
	if err != nil {
		p.t.Logf("no picture of %s: %v", name, err)
		return
	}
	file := path.Join(dist, "shots", name+".png")
	require.NoError(p.t, os.MkdirAll(path.Dir(file), 0o755))
	require.NoError(p.t, os.WriteFile(file, picture, 0o644))
}

// accessible fails for every violation that axe-core finds in what is on screen, in both themes.
func (p *page) accessible(name string) {
	p.t.Helper()
	axe, err := os.ReadFile(root + "/web/node_modules/axe-core/axe.min.js")
	require.NoError(p.t, err, "axe-core is missing: run `npm ci` in web")
	if !eval[bool](p, "'axe' in globalThis") {
		eval[bool](p, string(axe)+"; true")
	}
	type violation struct {
		ID, Help string
		Targets  []string
	}
	for _, theme := range []string{"light", "dark"} {
		p.theme(theme)
		found := eval[[]violation](p, `axe.run(document, {resultTypes: ['violations']}).then((r) => r.violations.map((v) => ({ID: v.id, Help: v.help,
			Targets: v.nodes.map((n) => n.target.join(' ') + ' — ' + n.failureSummary)})))`)
		for _, v := range found {
			assert.Fail(p.t, fmt.Sprintf("%s, %s, %s: %s (%s)", name, p.view.name, theme, v.Help, v.ID), strings.Join(v.Targets, "\n"))
		}
	}
	p.theme("light")
}

// kept waits until the service worker holds the whole site.
func (p *page) kept() {
	p.t.Helper()
	p.until("navigator.serviceWorker.controller?.state === 'activated'")
}

// measured prints a figure for the README.
func measured(t *testing.T, format string, args ...any) {
	t.Helper()
	t.Logf("measured: "+format, args...)
}

// replaced returns data with one text in place of another that must be there.
func replaced(t *testing.T, data []byte, old, new string) []byte {
	t.Helper()
	require.Contains(t, string(data), old)
	return bytes.ReplaceAll(data, []byte(old), []byte(new))
}
