package verify

import (
	"fmt"
	"strings"
	"testing"
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
