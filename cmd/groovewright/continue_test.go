package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/plan"
)

// spoiltAt is where on the first run, the sink wall, the panel stands that was sawn wrong in the
// story of the README: right of the window.
var spoiltAt = fraction.Inches(90)

// planOf returns the plan of an example as a value.
func planOf(t *testing.T, path string) plan.Plan {
	t.Helper()
	var p plan.Plan
	if err := json.Unmarshal([]byte(planned(t, path, "--json")), &p); err != nil {
		t.Fatal(err)
	}
	return p
}

// The second part of the kitchen's story is the first part's plan: all panels but one are on the
// wall, and what was left over is stock. With -update the example is written anew from the
// kitchen's plan.
func TestReplanExampleFollowsTheKitchen(t *testing.T) {
	all := examples(t)
	want := replanned(t, all["kitchen"], planOf(t, all["kitchen"]))
	path := all["kitchen-replan"]
	fractiontest.Golden(t, path, string(want))
	p := planOf(t, path)
	for _, s := range p.Stock {
		if s.Count == nil && s.Used > 0 {
			t.Errorf("another %q has to be bought; the story says that the offcuts do", s.Name)
		}
	}
	if len(p.Runs[0].Panels) != 1 || len(p.Runs[1].Panels)+len(p.Runs[2].Panels) != 0 {
		t.Error("more than the spoiled panel is planned")
	}
}

// replanned returns the kitchen's job file with installed panels, and its offcuts as stock before
// the sheets to buy.
func replanned(t *testing.T, path string, p plan.Plan) []byte {
	t.Helper()
	file, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var stock, installed []string
	for _, s := range p.Sheets {
		for i, o := range s.Offcuts {
			if o.Width.Less(p.Profile.Pitch.Mul(2)) {
				continue // too narrow to be of use
			}
			stock = append(stock, fmt.Sprintf(`{"name": "offcut %d of sheet %d", "width": %q, "length": %q, "left_phase": %q, "count": 1, "squared": true}`,
				i+1, s.Number, o.Width, o.Length, o.LeftPhase))
		}
	}
	for i, run := range p.Runs {
		for _, panel := range run.Panels {
			if i == 0 && panel.Left.Less(spoiltAt) && spoiltAt.Less(panel.Right) {
				continue
			}
			installed = append(installed, fmt.Sprintf(`{"run": %q, "left": %q, "right": %q, "left_phase": %q}`, run.Name, panel.Left, panel.Right, panel.LeftPhase))
		}
	}
	text := string(file)
	sheet := `{"name": "beaded sheet"`
	for _, change := range [][2]string{
		{`"title": "Kitchen backsplash (`, `"title": "Kitchen backsplash, the spoiled panel once more (`},
		{"    " + firstStock(t, file) + ",\n", ""},
		{"    " + sheet, "    " + strings.Join(stock, ",\n    ") + ",\n    " + sheet},
		{"  \"built\"", "  \"installed\": [\n    " + strings.Join(installed, ",\n    ") + "\n  ],\n  \"built\""},
	} {
		if !strings.Contains(text, change[0]) {
			t.Fatalf("the kitchen's job has no %s", change[0])
		}
		text = strings.Replace(text, change[0], change[1], 1)
	}
	if !json.Valid([]byte(text)) {
		t.Fatalf("not JSON:\n%s", text)
	}
	return []byte(text)
}

// firstStock returns the line of the kitchen's offcut, which the first plan had a choice to use up.
func firstStock(t *testing.T, file []byte) string {
	t.Helper()
	for line := range bytes.Lines(file) {
		if bytes.Contains(line, []byte(`"offcut from the porch"`)) {
			return strings.TrimSuffix(strings.TrimSpace(string(line)), ",")
		}
	}
	t.Fatal("the kitchen's job has no offcut")
	return ""
}
