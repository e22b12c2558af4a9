package nest_test

import (
	"encoding/json"
	"os"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// class is one of the 500 open instances of two-dimensional bin packing, oriented, without kerf or
// pattern; testdata/binpack2d/README.md names the sources.
type class struct {
	ID    string
	Class int
	N     int
	W, H  int64
	Items [][2]int64
	HFF   int `json:"hff"`
	Low   int `json:"og_lb"`
	High  int `json:"og_ub"`
	Dual  int `json:"lb_dff"`
}

func (c class) problem() nest.Problem {
	p := nest.Problem{Stock: []nest.Stock{{Width: fraction.Inches(c.W), Length: fraction.Inches(c.H)}}}
	for i, item := range c.Items {
		p.Parts = append(p.Parts, nest.Part{Number: i, Width: fraction.Inches(item[0]), Height: fraction.Inches(item[1])})
	}
	return p
}

func readClasses(t testing.TB) []class {
	var file struct{ Instances []class }
	readJSON(t, "testdata/binpack2d/class.json", &file)
	return file.Instances
}

func readJSON(t testing.TB, name string, into any) {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(data, into); err != nil {
		t.Fatal(err)
	}
}

// inches reads a length that a test is written with.
func inches(s string) fraction.Length { return fraction.MustParse(s) }
