package trial

import (
	"errors"
	"os"
	"path/filepath"
)

// Root returns the folder of go.mod, at or above the working directory.
func Root() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("no go.mod here or above")
		}
		dir = up
	}
}
