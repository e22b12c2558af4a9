package main

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
)

var built = sync.OnceValues(build)

// written returns the path of the page.
func written(t *testing.T) string {
	t.Helper()
	page, err := built()
	if err != nil {
		t.Fatal(err)
	}
	file, err := filepath.Abs(filepath.Join(t.TempDir(), "page.html"))
	if err == nil {
		err = os.WriteFile(file, page, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	return file
}
