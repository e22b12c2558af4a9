package drawing

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// in reads a length in inches.
func in(s string) fraction.Length { return fraction.MustParse(s) }

// ring reads the corners of an outline, x and y in turn.
func ring(at ...string) []plan.Point {
	var points []plan.Point
	for i := 0; i+1 < len(at); i += 2 {
		points = append(points, plan.Point{X: in(at[i]), Y: in(at[i+1])})
	}
	return points
}

// kitchen is an invented kitchen of three runs, made by hand: every name and figure in it is made
// up, and it only serves to draw.
func kitchen() plan.Plan { return readPlan("testdata/fixture.json") }

// readPlan reads a plan from a file of the tests.
func readPlan(name string) (p plan.Plan) {
	data, err := os.ReadFile(name)
	if err == nil {
		err = json.Unmarshal(data, &p)
	}
	if err != nil {
		panic(err)
	}
	return p
}

// forEachPlan runs a test on the made-up kitchen and on the plans of the examples. The last is the
// example's kitchen in tongue-and-groove boards of 5 1/4 by 96 in, as the command once planned it:
// many narrow panels, many narrow sheets.
func forEachPlan(t *testing.T, test func(t *testing.T, p plan.Plan)) {
	t.Helper()
	jobs, err := filepath.Glob("../../examples/*.json")
	if err != nil || len(jobs) < 6 {
		t.Fatalf("%d examples found: %v", len(jobs), err)
	}
	for _, name := range jobs {
		t.Run(filepath.Base(name), func(t *testing.T) {
			file, err := os.Open(name)
			if err != nil {
				t.Fatal(err)
			}
			defer file.Close()
			j, err := jobfile.Read(file)
			if err != nil {
				t.Fatal(err)
			}
			p, err := plan.Make(t.Context(), j, plan.Options{})
			if err != nil {
				t.Fatal(err)
			}
			test(t, p)
		})
	}
	for _, file := range []string{"testdata/fixture.json", "testdata/boards.json"} {
		t.Run(filepath.Base(file), func(t *testing.T) { test(t, readPlan(file)) })
	}
}
