package plan_test

import (
	"os"
	"path/filepath"
	"strings"
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

// forEachExample runs a test on the plan of each example.
func forEachExample(t *testing.T, test func(t *testing.T, p plan.Plan)) {
	t.Helper()
	paths, err := filepath.Glob("../../examples/*.json")
	if err != nil || len(paths) < 6 {
		t.Fatalf("%d examples, %v", len(paths), err)
	}
	for _, path := range paths {
		t.Run(filepath.Base(path), func(t *testing.T) { test(t, makeFrom(t, readText(t, path))) })
	}
}
