package engine

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

func kitchen(t *testing.T) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join("..", "..", "kitchen.json"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func quiet(time.Duration) {}

// A wall is drawn as it grows: as soon as it has its width and heights, whatever else is missing or
// wrong, and without an opening that is wrong.
func TestWallsAreDrawnAsTheyGrow(t *testing.T) {
	const measured = `"width": "60", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"}, "heights": [{"at": "0", "top": "18"}, {"at": "60", "top": "18"}]`
	for _, row := range []struct {
		name, run string
		shows     []string // none: not drawn yet
		hides     string
	}{
		{"nothing", `{}`, nil, ""},
		{"a width alone", `{"width": "60"}`, nil, ""},
		{"measured", `{` + measured + `}`, []string{">60<"}, ""},
		{"a box", `{"name": "hall", ` + measured + `, "openings": [{"name": "the box", "kind": "box", "left": "9", "bottom": "5", "width": "2", "height": "4"}]}`, []string{"the box", "hall"}, ""},
		{"half a box", `{` + measured + `, "openings": [{"name": "half", "kind": "box", "left": "9"}, {"name": "the box", "kind": "box", "left": "9", "bottom": "5", "width": "2", "height": "4"}]}`, []string{"the box"}, "half"},
		{"a seam that cannot be kept", `{` + measured + `, "keep": {"seams": ["900"]}}`, []string{">60<"}, ""},
	} {
		a := new(Engine).Answer(Request{Do: "check", Job: `{"runs": [` + row.run + `]}`}, quiet)
		if len(a.Walls) != 1 || (a.Walls[0] == "") != (row.shows == nil) || len(a.Faults) == 0 {
			t.Errorf("%s: %d walls, %d faults, %.60q", row.name, len(a.Walls), len(a.Faults), a.Walls)
			continue
		}
		for _, want := range row.shows {
			if !strings.Contains(a.Walls[0], want) {
				t.Errorf("%s: the drawing lacks %q", row.name, want)
			}
		}
		if row.hides != "" && strings.Contains(a.Walls[0], row.hides) {
			t.Errorf("%s: the drawing has %q", row.name, row.hides)
		}
	}
}

// What is wrong stands at its field in the form's own spelling, without the quotes of a file.
func TestFaultsStandAtTheirFields(t *testing.T) {
	a := new(Engine).Answer(Request{Do: "check", Job: strings.Replace(kitchen(t), `"96 1/2"`, `"63 1/0"`, 1)}, quiet)
	if len(a.Faults) == 0 || a.Faults[0].Path != "runs[0].width" || strings.Contains(a.Faults[0].Text, "in quotes") || a.Faults[0].Missing {
		t.Errorf("%+v", a.Faults)
	}
	a = new(Engine).Answer(Request{Do: "check", Job: `{"runs": [{}]}`}, quiet)
	for _, f := range a.Faults {
		if f.Path == "runs[0].width" && f.Missing {
			return
		}
	}
	t.Errorf("no missing width in %+v", a.Faults)
}

// The files are those of the command, and a job that is stopped or wrong leaves the engine ready.
func TestFilesAreThoseOfTheCommand(t *testing.T) {
	var e Engine
	for _, do := range []string{"files", "walls", "nonsense"} {
		if a := e.Answer(Request{Do: do}, quiet); len(a.Faults) != 1 {
			t.Errorf("%s before a plan: %+v", do, a)
		}
	}
	e.Answer(Request{Do: "stop"}, quiet)
	if a := e.Answer(Request{Do: "plan", Job: "{}"}, quiet); len(a.Faults) == 0 {
		t.Error("a job without anything is planned")
	}
	if a := e.Answer(Request{Do: "warm"}, quiet); len(a.Faults) > 0 || e.plans != nil {
		t.Errorf("warming up: %+v, %d plans", a.Faults, len(e.plans))
	}
	a := e.Answer(Request{Do: "plan", Job: kitchen(t)}, quiet)
	if len(a.Choices) == 0 || len(a.Faults) > 0 {
		t.Fatalf("%+v", a.Faults)
	}
	last := len(a.Choices) - 1
	j, err := jobfile.Read(strings.NewReader(kitchen(t)))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(t.Context(), j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if walls := e.Answer(Request{Do: "walls", Choice: last}, quiet).Runs; len(walls) != len(p.Runs) || walls[0].Origins[0] != p.Runs[0].SetOut.Origin.String() {
		t.Errorf("%d walls", len(walls))
	}
	want := map[string]string{"plan.txt": book.Text(p), "buy.csv": book.CSV(p, book.BuyTable)}
	for _, f := range e.Answer(Request{Do: "files", Choice: last}, quiet).Files {
		if text, ok := want[f.Name]; ok && text != f.Body {
			t.Errorf("%s is not what the command writes", f.Name)
		}
		delete(want, f.Name)
	}
	if len(want) > 0 {
		t.Errorf("%d files lack", len(want))
	}
}

// A search has its pauses, in which it can be stopped: then it ends with the best so far.
func TestStop(t *testing.T) {
	var e Engine
	paused := 0
	s := sliced{Context: t.Context(), progress: func(time.Duration) { paused++ }}
	if s.Err() != nil || paused != 1 || s.Err() != nil || paused != 1 {
		t.Errorf("%d pauses of one slice, want 1", paused)
	}
	wide := `{"profile": "beadboard 1-5/8", "stock": [{"name": "a", "width": "48", "length": "96"}], "runs": [` // minutes of searching
	for i := range 9 {
		run := `{"name": "r` + string(rune('1'+i)) + `", "width": "131 3/8", "left": {"kind": "covered"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "61"}, {"at": "20", "top": "61"},
			{"at": "20", "top": "52"}, {"at": "131 3/8", "top": "52"}]}`
		wide += strings.TrimSuffix(run+",", map[bool]string{true: ","}[i == 8])
	}
	stopped := false
	a := e.Answer(Request{Do: "plan", Job: wide + "]}", Effort: 1000}, func(since time.Duration) {
		if since > 2*time.Second && !stopped {
			stopped = true
			go e.Answer(Request{Do: "stop"}, quiet)
		}
	})
	if !stopped || !a.Stopped || len(a.Choices) == 0 {
		t.Errorf("stopped %v, %v with %d choices: %+v", stopped, a.Stopped, len(a.Choices), a.Faults)
	}
}
