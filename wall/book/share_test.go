package book

import (
	"bytes"
	"fmt"
	"os"
	"sync"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// Values are safe to share between goroutines: sixteen use one job, one model, one plan and one shape
// at once, and each gets what one alone gets. With -race any writing to them is found.
func TestSharedValues(t *testing.T) {
	data, err := os.ReadFile("../../examples/kitchen.json")
	if err != nil {
		t.Fatal(err)
	}
	job, err := jobfile.Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	small := job
	small.Runs, small.Closed, small.Installed, small.Cooking, small.Taped = job.Runs[:1], false, nil, nil, nil
	model, err := wall.NewModel(t.Context(), job.Room)
	if err != nil {
		t.Fatal(err)
	}
	made := examplePlans(t)["kitchen"]
	var laid wall.Layout
	for layout, err := range model.Layouts(t.Context()) {
		if laid = layout; err != nil {
			t.Fatal(err)
		}
		break
	}
	problem, err := choice.Nesting(job.Room, &laid)
	if err != nil {
		t.Fatal(err)
	}
	use := func() (all string, err error) {
		keep := func(x any, wrong error) {
			if err == nil {
				err = wrong
			}
			all += fmt.Sprintln(x)
		}
		keep(nil, job.Validate())
		doubts, wrong := job.Doubts()
		keep(doubts, wrong)
		var written bytes.Buffer
		keep(&written, jobfile.Write(&written, job))
		p, wrong := plan.Make(t.Context(), small, plan.Options{Budget: choice.Budget{Layouts: 10, Nodes: 1000}})
		keep(p.BlemishTotal, wrong)
		n := 0
		for layout, wrong := range model.Layouts(t.Context()) {
			keep(layout.Total, wrong)
			if n++; n == 5 {
				break
			}
		}
		for _, piece := range laid.Pieces {
			shape, wrong := piece.Shape.Within(piece.Shape.Outline())
			keep(len(shape), wrong)
		}
		nested, wrong := nest.Search(t.Context(), problem, nest.Budget{Nodes: 1000, Draft: true})
		keep(len(nested.Sheets), wrong)
		text, wrong := made.JSON()
		keep(len(text), wrong)
		keep(verify.Plan(data, text), nil)
		if !testing.Short() { // the race detector makes it ten times as slow
			files, wrong := Files(made)
			keep(len(files), wrong)
			for _, f := range files {
				keep(len(f.Body), nil)
			}
		}
		picture, wrong := drawing.Elevation(made, 0)
		keep(len(picture.SVG()), wrong)
		return all + Text(made) + Check(job, doubts) + Profiles(groove.Builtin()) + fmt.Sprint(finish.Defaults(job.Units)), err
	}
	alone, err := use()
	if err != nil {
		t.Fatal(err)
	}
	var users sync.WaitGroup
	goroutines := 16
	if !testing.Short() { // the race detector, which wants many, runs the short ones
		goroutines = 3
	}
	for i := range goroutines {
		users.Go(func() {
			if got, err := use(); err != nil || got != alone {
				t.Errorf("user %d got something else: %v", i, err)
			}
		})
	}
	users.Wait()
}
