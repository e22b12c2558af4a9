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
	want := warning.Under([]warning.Warning{{Path: fault.Of("LeftPhase"), Kind: "height jump", Names: []string{"sink wall"},
		Lengths: []fraction.Length{fraction.Of(9, 4)}}}, "Runs", 1)
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

// FuzzUnder puts any steps before any path.
func FuzzUnder(f *testing.F) {
	f.Add([]byte("runs[1].left"), "Room", 3)
	f.Fuzz(func(t *testing.T, path []byte, name string, i int) {
		var w warning.Warning
		if err := w.Path.UnmarshalText(path); err != nil {
			t.Fatal(err)
		}
		all := warning.Under([]warning.Warning{w, {}}, name, i)
		if len(all) != 2 || len(all[0].Path) != 2+len(w.Path) || len(all[1].Path) != 2 {
			t.Fatalf("%v", all)
		}
		warning.Under(nil, name)
	})
}
