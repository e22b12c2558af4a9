package plan_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/wall/plan"
)

// A term that counts by height has its height in the plan, also where that is 0: the doorway takes the
// end of the second run where that butts. One that does not has none.
func TestHeightOfNothingIsWritten(t *testing.T) {
	p := makeFrom(t, `{
		"profile": {"features": [{"kind": "flat", "width": "1 1/4"}, {"kind": "bead", "width": "1/4"}], "thickness": "1/4"},
		"stock": [{"name": "sheet", "width": "8 1/16", "length": "96"}],
		"runs": [
			{"name": "first", "width": "20", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"}, "heights": [{"at": "0", "top": "20"}, {"at": "20", "top": "20"}]},
			{"name": "second", "width": "20", "left": {"kind": "inside corner"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "20"}, {"at": "20", "top": "20"}],
			 "openings": [{"name": "doorway", "kind": "other", "left": "1/8", "bottom": "-1", "width": "6", "height": "30"}]}]}`)
	data, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	var written struct {
		Blemishes []struct {
			Kind   string
			Height *string
		}
	}
	if err := json.Unmarshal(data, &written); err != nil {
		t.Fatal(err)
	}
	got := map[string]bool{}
	for _, b := range written.Blemishes {
		height := "none"
		if b.Height != nil {
			height = *b.Height
		}
		got[b.Kind+": "+height] = true
	}
	want := map[string]bool{"exposed end: 20": true, "inside corner: 0": true, "opening side: 20": true, "seam: 20": true}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// What an end shows, by hand. The repeat is 3 1/4 of flat and 1/4 of groove. The first run stands 38
// wide, both ends of it seen: 38 = 10 x 3 1/2 + 3, so that one of them is whole and the other loses 1/4.
// A leaning end is called by what it crosses.
func TestEndsAreCalledByWhatTheyShow(t *testing.T) {
	for _, test := range []struct {
		width, left, right string
		want               string
	}{
		{"38 1/4", `{"kind": "exposed"}`, `{"kind": "exposed"}`, "whole flat, whole flat"},
		{"38 1/2", `{"kind": "exposed"}`, `{"kind": "covered"}`, "whole flat, open groove"},
		{"38", `{"kind": "exposed"}`, `{"kind": "covered"}`, "whole flat, flat cut to 3 of 3 1/4"},
		{"38", `{"kind": "exposed", "lean": "1/2"}`, `{"kind": "covered"}`, "flat cut aslant, to 2 3/4 of 3 1/4 at its narrowest, flat cut to 3 of 3 1/4"},
		{"38", `{"kind": "exposed", "lean": "4", "prominence": 1}`, `{"kind": "exposed"}`, "flat, groove and flat cut aslant, whole flat"},
	} {
		p := makeFrom(t, fmt.Sprintf(`{
			"profile": {"features": [{"kind": "flat", "width": "3 1/4"}, {"kind": "groove", "width": "1/4"}], "thickness": "1/4"},
			"stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"runs": [{"name": "run", "width": %q, "left": %s, "right": %s, "heights": [{"at": "0", "top": "20"}, {"at": %[1]q, "top": "20"}]}]}`,
			test.width, test.left, test.right))
		var got []string
		for _, e := range []plan.End{p.Runs[0].Left, p.Runs[0].Right} {
			got = append(got, e.Cut.Name(p.TapeMeasure()))
		}
		if got := strings.Join(got, ", "); got != test.want {
			t.Errorf("%s wide, %s, %s: %s, want %s", test.width, test.left, test.right, got, test.want)
		}
	}
}

// Which ends are seen follows the weights, and what is left of an end: a doorway may take it.
func TestWhyFollowsTheWeights(t *testing.T) {
	const doorway = `[{"name": "doorway", "kind": "other", "left": "0", "bottom": "-1", "width": "10", "height": "40"}]`
	for _, test := range []struct {
		priorities, openings string
		want                 plan.Why
	}{
		{`{}`, `[]`, plan.LeftSeen},
		{`{"exposed_end": 0}`, `[]`, plan.NeitherSeen},
		{`{"covered_end": 1}`, `[]`, plan.BothSeen},
		{`{}`, doorway, plan.NeitherSeen},
		{`{"covered_end": 1}`, doorway, plan.RightSeen},
	} {
		p := makeFrom(t, fmt.Sprintf(`{"profile": "beadboard 1-1/2", "priorities": %s, "stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"runs": [{"name": "wall", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "36"}, {"at": "60", "top": "36"}], "openings": %s}]}`, test.priorities, test.openings))
		if got := p.Runs[0].SetOut.Why; got != test.want {
			t.Errorf("%s, %s: %v, want %v", test.priorities, test.openings, got, test.want)
		}
	}
}
