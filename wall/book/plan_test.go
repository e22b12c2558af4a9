package book

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// named is a plan, or why there is none, and what the tests call it.
type named struct {
	name string
	plan plan.Plan
	err  error
}

// books are the books by the names of their plans. Drawing takes long, and no test changes a file.
var books sync.Map

// files is the book of a plan that there must be.
func (n named) files(t *testing.T) []File {
	t.Helper()
	if n.err != nil {
		t.Fatalf("%s: %v", n.name, n.err)
	}
	once, _ := books.LoadOrStore(n.name, sync.OnceValues(func() ([]File, error) { return Files(n.plan) }))
	files, err := once.(func() ([]File, error))()
	if err != nil {
		t.Fatalf("%s: %v", n.name, err)
	}
	return files
}

// examples are the plans of the example jobs. Planning takes long, and no test changes a plan.
var examples = sync.OnceValue(func() []named { return plansIn("../../examples", 6) })

// plansIn are the plans of the jobs in a folder, at least so many.
func plansIn(folder string, least int) (all []named) {
	jobs, err := filepath.Glob(folder + "/*.json")
	if err != nil || len(jobs) < least {
		return []named{{name: folder, err: fmt.Errorf("%d jobs found: %v", len(jobs), err)}}
	}
	for _, job := range jobs {
		data, err := os.ReadFile(job)
		one := named{name: strings.TrimSuffix(filepath.Base(job), ".json"), err: err}
		if err == nil {
			one.plan, one.err = madePlan(bytes.NewReader(data))
		}
		all = append(all, one)
	}
	return all
}

// hardJobs are the plans of jobs that are hard to draw: ten runs, thirty feet, eight inches, a stair,
// forty boxes, long names in three scripts, boards, millimetres, arches, a closed room, runs that
// would cross, no price. Short runs, which go after other faults, do without them.
var hardJobs = sync.OnceValue(func() []named {
	if testing.Short() {
		return nil
	}
	return plansIn("testdata/hard", 12)
})

// hardJob returns the plan of the hard job of that name; short runs skip the test.
func hardJob(t *testing.T, name string) plan.Plan {
	t.Helper()
	if testing.Short() {
		t.Skip("not in short runs")
	}
	for _, n := range hardJobs() {
		if n.name == name {
			if n.err != nil {
				t.Fatal(n.err)
			}
			return n.plan
		}
	}
	t.Fatalf("no job %q", name)
	return plan.Plan{}
}

// examplePlans returns the plans of the example jobs by name.
func examplePlans(t *testing.T) map[string]plan.Plan {
	t.Helper()
	all := map[string]plan.Plan{}
	for _, n := range examples() {
		if n.err != nil {
			t.Fatalf("%s: %v", n.name, n.err)
		}
		all[n.name] = n.plan
	}
	return all
}

// madePlan plans a job.
func madePlan(job io.Reader) (plan.Plan, error) {
	j, err := jobfile.Read(job)
	if err != nil {
		return plan.Plan{}, err
	}
	return plan.Make(context.Background(), j, plan.Options{})
}

// storedPlan reads a plan from a file.
func storedPlan(file string) (p plan.Plan, err error) {
	data, err := os.ReadFile(file)
	if err == nil {
		err = json.Unmarshal(data, &p)
	}
	return p, err
}

// kitchen is an invented kitchen of three runs, made by hand to draw.
func kitchen() plan.Plan {
	p, err := storedPlan("../drawing/testdata/fixture.json")
	if err != nil {
		panic(err)
	}
	return p
}
