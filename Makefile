# Needs Go 1.26, Node 20, git and make. The browser tests find a Chromium and a
# LibreOffice, or install them on Debian as root, or are told:
# make test CHROME=/path/to/chrome OFFICE=/path/to/soffice

PORT ?= 8080
PACKAGES = web/node_modules/.package-lock.json
WASM = GOOS=js GOARCH=wasm
# Under Node the core gets a short environment, which is all that fits.
UNDER_NODE = -exec="env -i 'PATH=$(PATH)' $$(go env GOROOT)/lib/wasm/go_js_wasm_exec"

.PHONY: run test lint dist bench

# Builds the page, serves it on this machine and prints the address.
run: dist
	go run ./web/serve -port $(PORT)

# Everything there is: rules, the core here and under Node, the page's modules, the built page in Chromium.
test: lint dist
	go test $$(go list ./... | grep -v /web/test)
	$(WASM) go test $(UNDER_NODE) ./core/... ./wasm
	cd web && node --test --test-reporter=spec js
	CHROME="$$(sh web/test/chromium.sh)" OFFICE="$$(sh web/test/office.sh)" go test -v -timeout 14m ./web/test

# The rules that are not tests.
lint: $(PACKAGES)
	@unformatted=$$(gofmt -l core wasm web/serve web/test); [ -z "$$unformatted" ] || { echo "gofmt -w $$unformatted"; exit 1; }
	go vet ./... && $(WASM) go vet ./core/... ./wasm
	cd web && npm run --silent check

# The static site and the single file, in .dist; prints their sizes.
dist: $(PACKAGES)
	node web/build.mjs

# How fast and how large: the core here and under Node, the page in Chromium.
bench: dist
	go test -run '^$$' -bench . -benchmem ./core/...
	$(WASM) go test $(UNDER_NODE) -run '^$$' -bench . ./core/...
	CHROME="$$(sh web/test/chromium.sh)" go test -count=1 -v -run Measure ./web/test

$(PACKAGES): web/package.json web/package-lock.json
	cd web && npm ci --ignore-scripts --no-audit --no-fund && touch node_modules/.package-lock.json

.PHONY: accuracy fit

# How far off the method is, family by family, band by band and step by step, against core/evidence; or against
# files of your own with the same columns: make accuracy RATINGS=file SPECTRA=file OCTAVES=file JSON=file
accuracy:
	@go run ./core/internal/accuracy $(if $(RATINGS),-ratings '$(RATINGS)') $(if $(SPECTRA),-spectra '$(SPECTRA)') $(if $(OCTAVES),-octaves '$(OCTAVES)') $(if $(JSON),-json '$(JSON)') $(if $(ROWS),-rows)

# Fits the free constants to core/evidence, writes them into the table of constants, and every series' rows without it;
# then what core/evidence has read and what is left over into the table that the page takes.
fit:
	go run ./core/internal/fit
	go run ./core/internal/preread
