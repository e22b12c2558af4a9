package line_test

import (
	"encoding/json"
	"os"
	"testing"
)

// instance is one of E. Falkenauer's bin packing problems; the README beside the file says where
// they come from and what each field means.
type instance struct {
	ID       string  `json:"id"`
	File     string  `json:"file"`
	Capacity int64   `json:"capacity"`
	Best     int     `json:"orlib_best"`
	Optimum  int     `json:"optimum"`
	Area     int     `json:"lb_size"`
	FirstFit int     `json:"ffd"`
	BestFit  int     `json:"bfd"`
	Sizes    []int64 `json:"sizes"`
}

// readJSON decodes a file of the folder of the open data.
func readJSON(t testing.TB, name string, into any) {
	t.Helper()
	data, err := os.ReadFile("../../testdata/binpack1d/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
}

// instances reads all 160 problems.
func instances(t testing.TB) []instance {
	t.Helper()
	var file struct{ Instances []instance }
	readJSON(t, "falkenauer.json", &file)
	if len(file.Instances) != 160 {
		t.Fatalf("%d instances, want 160", len(file.Instances))
	}
	return file.Instances
}
