package plan_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/plan"
)

// A plan that is read back from its JSON equals the plan written.
func TestPlanReadsBackEqual(t *testing.T) {
	forEachExample(t, func(t *testing.T, want plan.Plan) {
		data, err := json.Marshal(want)
		if err != nil {
			t.Fatal(err)
		}
		var got plan.Plan
		if err := json.Unmarshal(data, &got); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, got, cmpopts.EquateComparable(fraction.Length{}, fraction.Ratio{})); diff != "" {
			t.Errorf("(-written +read):\n%s", diff)
		}
	})
}

// Signs that HTML has a use for stand in the JSON as they are.
func TestNamesStayAsTheyAre(t *testing.T) {
	const name = "nook & <hall>"
	data, err := plan.Plan{Runs: []plan.Run{{Name: name}}}.JSON()
	if err != nil || !strings.Contains(string(data), `"name": "`+name+`"`) {
		t.Errorf("%s, %v", data, err)
	}
}

// TestPlansAreGolden: the plans are those that the command writes, which its tests hold.
func TestPlansAreGolden(t *testing.T) {
	for _, name := range []string{"kitchen", "mudroom-metric"} {
		data, err := examplePlan(t, name+".json").JSON()
		if err != nil {
			t.Fatal(err)
		}
		fractiontest.Golden(t, "../../testdata/"+name+".json", string(data))
	}
}
