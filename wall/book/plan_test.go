package book

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// examples returns the paths of the example jobs by name.
func examples(t *testing.T) map[string]string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("..", "..", "examples", "*.json"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	all := map[string]string{}
	for _, path := range paths {
		all[strings.TrimSuffix(filepath.Base(path), ".json")] = path
	}
	return all
}

// planOf plans the job at a path.
func planOf(t *testing.T, path string) plan.Plan {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	j, err := jobfile.Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(t.Context(), j, plan.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// planned returns the text of the plan of the job at a path.
func planned(t *testing.T, path string) string {
	t.Helper()
	return Text(planOf(t, path))
}
