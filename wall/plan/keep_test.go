package plan_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// What is kept stands in the plan, and a seam that is kept in a box is a warning and no rule broken.
func TestKeptSeamInABox(t *testing.T) {
	p := makeFrom(t, `{"profile": "beadboard 1-1/2", "stock": [{"name": "sheet", "width": "48", "length": "96"}],
		"runs": [{"name": "wall", "width": "90", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "18"}, {"at": "90", "top": "18"}],
			"openings": [{"name": "box", "kind": "box", "left": "44", "bottom": "6", "width": "2", "height": "4"}],
			"keep": {"seams": ["45"], "direction": "left", "clear": [{"from": "1", "to": "44"}]}}]}`)
	kinds := map[string]int{}
	for _, w := range p.Warnings {
		kinds[string(w.Kind)]++
		if w.Kind == plan.SeamAtBox {
			if diff := cmp.Diff(w.Names, []string{"wall", "box"}); diff != "" || w.Path.String() != "Runs[0].Openings[0]" || w.Lengths[0] != fraction.Inches(45) {
				t.Errorf("the warning is %+v", w)
			}
		}
	}
	if kinds["seam at box"] != 1 || kinds["rules broken"] != 0 {
		t.Errorf("warnings: %v", kinds)
	}
	run := p.Runs[0]
	if run.SetOut.Direction.String() != "left" || len(run.Panels) != 2 || len(run.Keep.Seams) != 1 || run.Keep.Clear[0].To != fraction.Inches(44) {
		t.Errorf("set out %v, panels %v, keep %v", run.SetOut, run.Panels, run.Keep)
	}
	text, err := p.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var again plan.Plan
	if err := json.Unmarshal(text, &again); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p.Runs[0].Keep, again.Runs[0].Keep, cmpopts.EquateComparable(fraction.Length{})); diff != "" {
		t.Error(diff)
	}
}

// A whole sheet meets the next one with its lap, also where the pattern has both turned; a panel that ends within a repeat has none.
func TestLapsAtSeams(t *testing.T) {
	for _, c := range []struct {
		origin, at, width string
		kept              bool
	}{{"0", "48", "90", true}, {"0", "45 3/4", "90", false}, {"1/4", "48", "96", true}} {
		at, kept := c.at, c.kept
		p := makeFrom(t, `{"profile": {"name": "lapped sheet", "features": [{"kind": "flat", "width": "1 1/4"}, {"kind": "groove", "width": "1/4", "depth": "1/8"}],
			"thickness": "1/2", "edges": "lapped"}, "stock": [{"name": "sheet", "width": "48", "length": "96"}],
			"runs": [{"name": "wall", "width": "`+c.width+`", "left": {"kind": "covered"}, "right": {"kind": "covered"},
				"heights": [{"at": "0", "top": "60"}, {"at": "`+c.width+`", "top": "60"}], "keep": {"origin": "`+c.origin+`", "seams": ["`+at+`"]}}]}`)
		seams := p.Runs[0].Seams
		if len(seams) != 1 || seams[0].At != fraction.MustParse(at) || seams[0].LapKept == nil || *seams[0].LapKept != kept {
			t.Errorf("seams: %+v, want the lap at %s kept: %v", seams, at, kept)
		}
		lost := false
		for _, w := range p.Warnings {
			if w.Kind == plan.LapLost {
				lost = w.Names[0] == "wall" && w.Lengths[0] == fraction.MustParse(at)
			}
		}
		if lost == kept {
			t.Errorf("at %s warned of a lost lap: %v", at, lost)
		}
	}
}

// A wall that is too tall says by how much, in the unit of the job: 2600 mm less gaps of 2 and 5, of sheets of 2440 with 5 off either end, are 163 too much, and at least so much but for what corners may be snapped by.
func TestTooTallByHowMuch(t *testing.T) {
	j, err := jobfile.Read(strings.NewReader(`{"profile": "plain sheet", "units": "mm", "stock": [{"name": "sheet", "width": "1220", "length": "2440"}], "gaps": {"top": "2", "bottom": "5"},
		"saw": {"square_up": "5"}, "runs": [{"name": "wall", "width": "1000", "left": {"kind": "covered"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "2600"}, {"at": "1000", "top": "2600"}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	if _, err = plan.Make(t.Context(), j, plan.Options{}); err == nil || !strings.HasSuffix(err.Error(), ": by 162 mm at least") {
		t.Errorf("%v", err)
	}
}
