package test

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The single file, opened from a disk, gives the figures that the site gives,
// and asks for nothing.
func TestSingleFile(t *testing.T) {
	server := deploy(t, "/")
	onSite := open(t, server.address(), phone)
	onSite.assessed()
	typeWeight(onSite, "61.5")
	onSite.assessed()

	path, err := filepath.Abs(dist + "/twoleaf.html")
	require.NoError(t, err)
	fromDisk := open(t, "file://"+path, phone)
	fromDisk.assessed()
	typeWeight(fromDisk, "61.5")
	want := onSite.words(strip)
	fromDisk.until("document.querySelector($0).innerText.replace(/\\s+/g, ' ').trim() === $1", strip, want)
	fromDisk.noErrors()
	for _, address := range fromDisk.sent() {
		own := strings.HasPrefix(address, "file://") || strings.HasPrefix(address, "data:") || strings.HasPrefix(address, "blob:")
		assert.True(t, own, "the single file asks for %s", address)
	}
}
