package warning_test

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
)

func TestWarningReadsBack(t *testing.T) {
	want := []warning.Warning{{Path: fault.Of("Runs", 1, "LeftPhase"), Kind: "height jump", Names: []string{"sink wall"},
		Lengths: []fraction.Length{fraction.Of(9, 4)}}}
	data, err := json.Marshal(want)
	if err != nil || string(data) != `[{"path":"runs[1].left_phase","kind":"height jump","names":["sink wall"],"lengths":["2 1/4"]}]` {
		t.Fatalf("%s, %v", data, err)
	}
	var got []warning.Warning
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got, cmp.Comparer(func(a, b fraction.Length) bool { return a == b })); diff != "" {
		t.Errorf("read back (-want +got):\n%s", diff)
	}
}
