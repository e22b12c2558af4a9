package draw

import (
	"os"
	"testing"
)

func TestDump(t *testing.T) {
	dir := os.Getenv("DUMP")
	if dir == "" {
		t.Skip()
	}
	files, err := Book(kitchen())
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		os.WriteFile(dir+"/"+f.Name, f.Body, 0o644)
	}
}
