package drawing

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"example.com/groovewright/fraction"
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

// kitchen is an invented kitchen of three runs, made by hand: every name and
// figure in it is made up, and it only serves to draw.
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

// forEachPlan runs a test on the made-up kitchen and on the plans of the examples
// as the command's own golden files hold them. The last is the example's kitchen
// in tongue-and-groove boards of 5 1/4 by 96 in, as the command once planned it:
// many narrow panels, many narrow sheets.
func forEachPlan(t *testing.T, test func(t *testing.T, p plan.Plan)) {
	t.Helper()
	files, err := filepath.Glob("../../testdata/*.json")
	if err != nil || len(files) < 2 {
		t.Fatalf("no golden plans found: %v", err)
	}
	for _, file := range append(files, "testdata/fixture.json", "testdata/boards.json") {
		t.Run(filepath.Base(file), func(t *testing.T) { test(t, readPlan(file)) })
	}
}
