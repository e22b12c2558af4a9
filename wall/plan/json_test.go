package plan_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// A plan that is read back from its JSON equals the plan written.
func TestPlanReadsBackEqual(t *testing.T) {
	paths, err := filepath.Glob("../../examples/*.json")
	if err != nil || len(paths) < 6 {
		t.Fatalf("%d examples, %v", len(paths), err)
	}
	for _, path := range paths {
		file, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		job, err := jobfile.Read(file)
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		want, err := plan.Make(t.Context(), job, plan.Options{})
		if err != nil {
			t.Fatal(err)
		}
		data, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var got plan.Plan
		if err := json.Unmarshal(data, &got); err != nil {
			t.Fatalf("%s: %v", path, err)
		}
		if diff := cmp.Diff(want, got, cmpopts.EquateComparable(fraction.Length{}, fraction.Ratio{})); diff != "" {
			t.Errorf("%s (-written +read):\n%s", path, diff)
		}
	}
}
