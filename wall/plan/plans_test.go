package plan_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// jobFrom reads the job in a text.
func jobFrom(t testing.TB, text string) plan.Job {
	t.Helper()
	j, err := jobfile.Read(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// makeFrom plans the job in a text.
func makeFrom(t testing.TB, text string) plan.Plan {
	t.Helper()
	p, err := plan.Make(t.Context(), jobFrom(t, text), plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// readText returns the text of a file.
func readText(t testing.TB, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// examplePlans are the plans of the examples by the names of their files, made once.
var examplePlans = sync.OnceValues(func() (plans map[string]plan.Plan, err error) {
	paths, err := filepath.Glob("../../examples/*.json")
	if err != nil || len(paths) < 6 {
		return nil, fmt.Errorf("%d examples, %w", len(paths), err)
	}
	plans = map[string]plan.Plan{}
	for _, path := range paths {
		file, err := os.Open(path)
		if err != nil {
			return nil, err
		}
		defer file.Close()
		j, err := jobfile.Read(file)
		if err != nil {
			return nil, err
		}
		if plans[filepath.Base(path)], err = plan.Make(context.Background(), j, plan.Options{}); err != nil {
			return nil, err
		}
	}
	return plans, nil
})

// forEachExample runs a test on the plan of each example.
func forEachExample(t *testing.T, test func(t *testing.T, p plan.Plan)) {
	t.Helper()
	plans, err := examplePlans()
	if err != nil {
		t.Fatal(err)
	}
	for name, p := range plans {
		t.Run(name, func(t *testing.T) { test(t, p) })
	}
}

// examplePlan returns the plan of one example.
func examplePlan(t testing.TB, name string) plan.Plan {
	t.Helper()
	plans, err := examplePlans()
	if err != nil {
		t.Fatal(err)
	}
	return plans[name]
}
