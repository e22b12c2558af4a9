package plan_test

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.com/groovewright/finish"
)

// A wall whose only panel is up leaves nothing to cut: every list of the plan is still a list. Its
// left end leans outward, so the panel reaches past the foot.
func TestNothingLeftToPanel(t *testing.T) {
	p := makeFrom(t, `{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "wall", "width": "36", "left": {"kind": "exposed", "lean": "-1/2"}, "right": {"kind": "exposed"},
			"heights": [{"at": "0", "top": "18"}, {"at": "36", "top": "18"}]}],
		"installed": [{"run": "wall", "left": "-1/2", "right": "36", "left_phase": "3/4"}]}`)
	if len(p.Pieces) != 0 {
		t.Errorf("%d pieces, want none", len(p.Pieces))
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	var read map[string]any
	if err := json.Unmarshal(text, &read); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"runs", "pieces", "sheets", "blemishes", "choices", "takeoff", "warnings", "order", "cautions"} {
		if _, ok := read[name].([]any); !ok {
			t.Errorf("%s is %v, want a list", name, read[name])
		}
	}
}

// Boards stand joint to joint, also beside those that are up, whatever the seam gap of the job is.
func TestBoardsBesideInstalledOnes(t *testing.T) {
	p := makeFrom(t, `{"profile": {"name": "boards 5 1/4", "features": [{"kind": "flat", "width": "5"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}], "thickness": "3/4", "boards": true},
		"stock": [{"name": "board", "width": "5 1/4", "length": "96"}],
		"gaps": {"seam": "1/16"},
		"runs": [{"name": "wall", "width": "21", "left": {"kind": "exposed"}, "right": {"kind": "exposed"},
			"heights": [{"at": "0", "top": "36"}, {"at": "21", "top": "36"}]}],
		"installed": [{"run": "wall", "left": "5 1/4", "right": "10 1/2", "left_phase": "0"}, {"run": "wall", "left": "10 1/2", "right": "15 3/4", "left_phase": "0"}]}`)
	for i, want := range []string{"0 to 5 1/4", "15 3/4 to 21"} {
		panels := p.Runs[0].Panels
		if got := fmt.Sprintf("%v to %v", panels[i].Left, panels[i].Right); got != want || len(panels) != 2 {
			t.Errorf("board %d of %d stands from %s, want %s", i, len(panels), got, want)
		}
	}
}

// The trim of an end whose panel is up was bought with it: only the other end's is on the list.
func TestTrimOfAnEndThatIsUpIsNotBoughtAgain(t *testing.T) {
	const job = `{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "wall", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "exposed"},
			"heights": [{"at": "0", "top": "18"}, {"at": "60", "top": "18"}]}]%s}`
	for installed, want := range map[string]string{
		"": "3", `, "installed": [{"run": "wall", "left": "0", "right": "30", "left_phase": "0"}]`: "1.5",
	} {
		got := ""
		for _, row := range makeFrom(t, fmt.Sprintf(job, installed)).List.Rows {
			if row.Item == finish.ItemEdgeTrim {
				got += row.Quantity.String()
			}
		}
		if got != want {
			t.Errorf("installed %q: %v ft of edge trim, want %v", installed, got, want)
		}
	}
}
