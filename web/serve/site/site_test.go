package site

import (
	"net/http"
	"net/http/httptest"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
)

func TestHandler(t *testing.T) {
	files := fstest.MapFS{
		"index.html":              {Data: []byte("<p>")},
		"core-0123456789.wasm":    {Data: []byte("plain")},
		"core-0123456789.wasm.br": {Data: []byte("brotli")},
		"core-0123456789.wasm.gz": {Data: []byte("gzip")},
		"icons/icon.svg":          {Data: []byte("<svg/>")},
		"secret.txt":              {Data: []byte("no")},
	}
	for _, c := range []struct {
		path, accepts          string
		status                 int
		kind, encoding, cached string
		body                   string
	}{
		{"/a/b/", "", 200, "text/html; charset=utf-8", "", "no-cache", "<p>"},
		{"/a/b/index.html", "", 200, "text/html; charset=utf-8", "", "no-cache", "<p>"},
		{"/a/b/core-0123456789.wasm", "gzip, deflate, br", 200, "application/wasm", "br", "public, max-age=31536000, immutable", "brotli"},
		{"/a/b/core-0123456789.wasm", "gzip", 200, "application/wasm", "gzip", "public, max-age=31536000, immutable", "gzip"},
		{"/a/b/core-0123456789.wasm", "", 200, "application/wasm", "", "public, max-age=31536000, immutable", "plain"},
		{"/a/b/icons/icon.svg", "br", 200, "image/svg+xml", "", "no-cache", "<svg/>"},
		{"/a/b/core-0123456789.wasm.br", "", 404, "text/plain; charset=utf-8", "", "", "404 page not found\n"},
		{"/a/b/secret.txt", "", 404, "text/plain; charset=utf-8", "", "", "404 page not found\n"},
		{"/a/b/missing.js", "", 404, "text/plain; charset=utf-8", "", "", "404 page not found\n"},
		{"/a/b/../index.html", "", 404, "text/plain; charset=utf-8", "", "", "404 page not found\n"},
		{"/a/", "", 404, "text/plain; charset=utf-8", "", "", "404 page not found\n"},
	} {
		r := httptest.NewRequest(http.MethodGet, c.path, nil)
		r.Header.Set("Accept-Encoding", c.accepts)
		w := httptest.NewRecorder()
		Handler(files, "a/b").ServeHTTP(w, r)
		assert.Equal(t, c.status, w.Code, "%s", c.path)
		assert.Equal(t, c.kind, w.Header().Get("Content-Type"), "%s", c.path)
		assert.Equal(t, c.encoding, w.Header().Get("Content-Encoding"), "%s", c.path)
		assert.Equal(t, c.cached, w.Header().Get("Cache-Control"), "%s", c.path)
		assert.Equal(t, c.body, w.Body.String(), "%s", c.path)
	}
}
