// Package site serves the built page as a plain static host would: whole files
// with their types, compressed where the build left a compressed copy.
package site

import (
	"errors"
	"io"
	"io/fs"
	"net/http"
	"path"
	"regexp"
	"strings"
)

// types by extension, so that the answer does not depend on the machine. A
// core that is not application/wasm cannot be compiled while it loads.
var types = map[string]string{
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".svg":         "image/svg+xml",
	".png":         "image/png",
}

// named matches a file that carries the hash of its content in its name.
var named = regexp.MustCompile(`-[0-9a-f]{10}\.\w+$`)

// Handler serves the files of dir under prefix ("/" or "/some/path/").
func Handler(dir fs.FS, prefix string) http.Handler {
	prefix = "/" + strings.Trim(prefix, "/")
	if prefix != "/" {
		prefix += "/"
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		name, under := strings.CutPrefix(r.URL.Path, prefix)
		if !under {
			http.NotFound(w, r)
			return
		}
		if name == "" {
			name = "index.html"
		}
		kind, known := types[path.Ext(name)]
		if !known || !fs.ValidPath(name) {
			http.NotFound(w, r)
			return
		}
		h := w.Header()
		h.Set("Content-Type", kind)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Vary", "Accept-Encoding")
		if named.MatchString(name) {
			h.Set("Cache-Control", "public, max-age=31536000, immutable")
		} else {
			h.Set("Cache-Control", "no-cache") // kept, but asked about each time
		}
		accepts := r.Header.Get("Accept-Encoding")
		for _, copy := range []struct{ encoding, extension string }{{"br", ".br"}, {"gzip", ".gz"}, {"", ""}} {
			if !strings.Contains(accepts, copy.encoding) {
				continue
			}
			file, err := dir.Open(name + copy.extension)
			if errors.Is(err, fs.ErrNotExist) {
				continue
			}
			if err != nil {
				http.Error(w, "the file cannot be read", http.StatusInternalServerError)
				return
			}
			defer file.Close()
			info, err := file.Stat()
			content, seeks := file.(io.ReadSeeker)
			if err != nil || info.IsDir() || !seeks {
				break
			}
			if copy.encoding != "" {
				h.Set("Content-Encoding", copy.encoding)
			}
			http.ServeContent(w, r, name, info.ModTime(), content)
			return
		}
		h.Del("Cache-Control")
		http.NotFound(w, r)
	})
}
