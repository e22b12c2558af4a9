package verify

import (
	"fmt"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
)

// Every number of a kind has a word or is shown.
func TestKindsHaveWords(t *testing.T) {
	for n := range 256 {
		want := fmt.Sprintf("(%d)", n)
		if n < len(kinds) {
			want = kinds[n]
		}
		if got := Kind(n).String(); got != want || got == "" {
			t.Errorf("kind %d is %q, want %q", n, got, want)
		}
	}
}

// faultsOf returns what is said of a fixture's plan with changes.
func faultsOf(t *testing.T, name string, changes ...string) (said string) {
	t.Helper()
	job, plan := fixture(t, name)
	plan = spaced(plan)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(plan, changes[i]) {
			t.Fatalf("%s does not stand in %s", changes[i], name)
		}
		plan = strings.Replace(plan, changes[i], changes[i+1], 1)
	}
	for _, f := range Plan([]byte(job), []byte(plan)) {
		said += fmt.Sprintln(f)
	}
	return said
}

// A point that agrees with only one of its distances is a fault, however far off it is said to be.
func TestTapedPointAgreesWithTwoDistances(t *testing.T) {
	const said = "agrees with fewer than two of the distances"
	if faults := faultsOf(t, "niche", `"at": ["40", "24"], "exact": true, "within": "0", "closing": "0"`, `"at": ["40", "26"], "exact": true, "within": "0", "closing": "4"`); !strings.Contains(faults, said) {
		t.Errorf("faults %s", faults)
	}
	if faults := faultsOf(t, "niche"); faults != "" {
		t.Errorf("faults of a right plan: %s", faults)
	}
}

// An offcut has a size.
func TestOffcutsHaveASize(t *testing.T) {
	for size, fault := range map[string]bool{`"width": "0", "length": "9"`: true, `"width": "9", "length": "0"`: true, `"width": "-1", "length": "9"`: true, `"width": "9", "length": "9"`: false} {
		faults := faultsOf(t, "niche", `"offcuts": []`, `"offcuts": [{"x": "0", "y": "30", `+size+`, "left_phase": "0"}]`)
		if strings.Contains(faults, "an offcut of no size") != fault {
			t.Errorf("%s: %s", size, faults)
		}
	}
}

// A plan without an opening of the job is judged, also where it has an arched head that was taped.
func TestMissingOpeningIsJudged(t *testing.T) {
	job, plan := fixture(t, "niche")
	plan = spaced(plan)
	from, to := strings.Index(plan, `, {"name": "niche"`), strings.Index(plan, `], "panels": [`)
	if from < 0 || to < from {
		t.Fatal("the plan has other openings now")
	}
	caught(t, job, plan[:from]+plan[to:], "taped")
}

// A station stands at x: those between the ends at both lines, an end at the top where it leans to.
func TestStations(t *testing.T) {
	r := &run{Heights: []station{{At: whole(0)}, {At: whole(12)}, {At: whole(40)}}}
	r.Left.Lean, r.Right.Lean = whole(2), whole(-3)
	g := &region{run: r}
	for x, want := range map[int64][2]bool{0: {true, false}, 2: {false, true}, 12: {true, true}, 13: {}, 37: {false, true}, 40: {true, false}} {
		if got := [2]bool{g.station(whole(x), false), g.station(whole(x), true)}; got != want {
			t.Errorf("a station at %d, of the bottom and of the top: %v, want %v", x, got, want)
		}
	}
}

// The weights and least sizes by which a plan is judged are those that a job has by default, in inches and in metric.
func TestWeightsAreTheDefaults(t *testing.T) {
	for units, list := range map[string][]wall.Priority{"in": wall.DefaultPriorities(fraction.Inch).List(), "mm": wall.DefaultPriorities(fraction.Millimetre).List()} {
		known, j := 0, room{}
		j.Units = units
		weights := j.weights()
		for _, p := range list {
			if w, ok := weights[p.Name]; ok {
				if known++; w.Cmp(p.Value.Rat()) != 0 {
					t.Errorf("%s in %s is %v, want %v", p.Name, units, w, p.Value)
				}
			}
		}
		if known != len(weights) {
			t.Errorf("%d of %d are priorities of a job in %s", known, len(weights), units)
		}
	}
}

// A run of which a mark of the tape is left beside a door stays bare, unless the plan panels it.
func TestSliversAreBareUnlessPanelled(t *testing.T) {
	for panels, bare := range map[int]bool{0: true, 1: false} {
		c := newChecker()
		c.job, c.faults = readJob([]byte(`{"profile": {"name": "flats", "features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"},
			"stock": [{"name": "sheet", "width": "48", "length": "96"}], "runs": [{"name": "wall", "width": "40", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "18"}, {"at": "40", "top": "18"}], "openings": [{"name": "door", "kind": "other", "left": "0", "bottom": "-1", "width": "39 15/16", "height": "20"}]}]}`))
		if len(c.faults) > 0 {
			t.Fatal(c.faults)
		}
		c.plan.Runs = []planRun{{Panels: make([]planPanel, panels)}}
		if c.corners(); c.job.bare[0] != bare {
			t.Errorf("with %d panels bare is %v", panels, c.job.bare[0])
		}
	}
}
