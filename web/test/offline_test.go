package test

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The page is opened once; then the server is gone, and with it every way to
// fetch anything. It still opens, under any path, and computes.
func TestOffline(t *testing.T) {
	for _, prefix := range []string{"/", "/some/sub/path/"} {
		t.Run(prefix, func(t *testing.T) {
			server := deploy(t, prefix)
			p := open(t, server.address(), phone)
			p.assessed()
			p.kept()
			server.stop()

			for weight, address := range map[string]string{"61": "", "63": "index.html", "65.5": "?from=home"} {
				p.visit(server.address() + address)
				p.settled()
				before := p.words(strip)
				typeWeight(p, weight)
				p.until("document.querySelector($0).innerText.replace(/\\s+/g, ' ').trim() !== $1", strip, before)
			}
			p.noErrors()
		})
	}
}

// A host that does not know the type of the core only costs time.
func TestCoreOfUnknownType(t *testing.T) {
	server := deploy(t, "/")
	server.untyped = true
	p := open(t, server.address(), phone)
	p.assessed()
	p.noErrors()
}

// The browser offers to put the page on the home screen.
func TestInstallable(t *testing.T) {
	p := open(t, deploy(t, "/some/path/").address(), phone)
	p.kept()
	found, err := chromedp.Call(p.ctx, cdppage.GetInstallabilityErrors, cdp.Empty{})
	require.NoError(t, err)
	for _, e := range found.InstallabilityErrors {
		if e.ErrorID == "in-incognito" {
			continue // the tests' profiles are such windows
		}
		assert.Fail(t, e.ErrorID, "%v", e.ErrorArguments)
	}
	manifest, err := chromedp.Call(p.ctx, cdppage.GetAppManifest, cdppage.GetAppManifestParams{})
	require.NoError(t, err)
	assert.Empty(t, manifest.Errors)
	assert.Contains(t, manifest.URL, "/some/path/manifest.webmanifest")
}

// Two sites of one host keep out of each other's caches.
func TestTwoSitesOfOneHostKeepTheirCaches(t *testing.T) {
	server := deploy(t, "/one/")
	p := open(t, server.address(), phone)
	p.kept()
	names := eval[[]string](p, "caches.keys()")
	assert.Len(t, names, 1)
	assert.True(t, strings.HasPrefix(names[0], "twoleaf:/one/:"), "%s carries the path", names[0])
	eval[bool](p, "caches.open('twoleaf:/two/:1').then(() => true)")
	version := newVersion(t, server, "second")
	update(p)
	takeUpdate(p)
	p.until("caches.keys().then((names) => names.length === 2 && names.includes('twoleaf:/two/:1') && names.includes($0))", "twoleaf:/one/:"+version)
}

// A new version waits until the user takes it; half a version is never taken.
func TestUpdate(t *testing.T) {
	server := deploy(t, "/")
	p := open(t, server.address(), phone)
	p.assessed()
	p.kept()
	old := eval[[]string](p, "caches.keys()")

	// A file of the new version is missing: the old one stays whole.
	newVersion(t, server, "broken")
	_, icon := built(t, "icons/icon-512.png")
	server.change("icons/icon-512.png", nil)
	failed := eval[bool](p, `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => false, () => true)
		.then(() => navigator.serviceWorker.getRegistration()).then((r) => new Promise((done) => {
			const fresh = r.installing; if (!fresh) return done(!r.waiting);
			fresh.onstatechange = () => done(fresh.state === 'redundant'); }))`)
	assert.True(t, failed, "half a version was installed")
	assert.Equal(t, old, eval[[]string](p, "caches.keys()"))
	p.reload()
	p.assessed()
	assert.Empty(t, edition(p))

	// All of it is there: it waits beside the old one, which goes on.
	server.change("icons/icon-512.png", icon)
	version := newVersion(t, server, "second")
	update(p)
	time.Sleep(300 * time.Millisecond) // nothing may happen by itself
	p.reload()
	p.assessed()
	assert.Empty(t, edition(p), "the new version came unasked")

	// The page asks once a day; this is the next one.
	eval[bool](p, "(localStorage.clear(), true)")
	p.reload()
	takeUpdate(p)
	p.until("document.documentElement.dataset.edition === 'second'")
	p.assessed()
	p.until("caches.keys().then((names) => names.length === 1 && names[0].endsWith($0))", version)
	p.allowed = []string{"icons/icon-512.png", "404"}
	p.noErrors()
}

// edition is the mark of a page that newVersion deployed.
func edition(p *page) string {
	p.t.Helper()
	return eval[string](p, "document.documentElement.dataset.edition ?? ''")
}

// newVersion deploys the same site with a mark in the page, and returns its version.
func newVersion(t *testing.T, server *deployment, mark string) string {
	t.Helper()
	_, page := built(t, "index.html")
	_, sw := built(t, "sw.js")
	version := siteVersion(t, sw)
	server.change("index.html", replaced(t, page, `<html lang="en">`, `<html lang="en" data-edition="`+mark+`">`))
	server.change("sw.js", replaced(t, sw, version, mark))
	return mark
}

// siteVersion finds the version in the built service worker.
func siteVersion(t *testing.T, sw []byte) string {
	t.Helper()
	_, rest, found := strings.Cut(string(sw), `version:"`)
	assert.True(t, found, "the service worker has a version")
	version, _, _ := strings.Cut(rest, `"`)
	return version
}

// update asks for a new version and waits until it is there.
func update(p *page) {
	p.t.Helper()
	eval[bool](p, "navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true)")
	p.until("navigator.serviceWorker.getRegistration().then((r) => !!r.waiting)")
}
