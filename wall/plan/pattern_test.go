package plan_test

import (
	"fmt"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

// Flats of 1 1/8 and beads of 3/8 from a place on, of which the phase is known: what lies between is listed whole, what
// only touches is not.
func TestStripes(t *testing.T) {
	profile := plan.Profile{Profile: groove.Profile{Features: []groove.Feature{{Kind: groove.Flat, Width: in("1 1/8")}, {Kind: groove.Bead, Width: in("3/8")}}}}
	for _, row := range []struct{ from, to, phase, want string }{
		{"0", "2", "0", "0: 0-1 1/8, 1: 1 1/8-1 1/2, 0: 1 1/2-2 5/8, "},
		{"10", "11 7/8", "3/4", "0: 9 1/4-10 3/8, 1: 10 3/8-10 3/4, 0: 10 3/4-11 7/8, "},
		{"10", "12", "1 1/8", "1: 10-10 3/8, 0: 10 3/8-11 1/2, 1: 11 1/2-11 7/8, 0: 11 7/8-13, "},
		{"5", "5", "0", ""},
	} {
		got := ""
		for _, s := range profile.Stripes(in(row.from), in(row.to), in(row.phase)) {
			got += fmt.Sprintf("%d: %v-%v, ", s.Index, s.Left, s.Right)
			if s.Feature != profile.Features[s.Index] {
				t.Errorf("feature %d is %+v", s.Index, s.Feature)
			}
		}
		if got != row.want {
			t.Errorf("from %s to %s, phase %s: %s, want %s", row.from, row.to, row.phase, got, row.want)
		}
	}
	if n := len(profile.Stripes(fraction.Length{}, in("14999"), fraction.Length{})); n != 19999 { // 14999 = 9999 x 1 1/2 + 1/2
		t.Errorf("%d features in 14999", n)
	}
	if got := profile.Stripes(fraction.Length{}, in("15001"), fraction.Length{}); got != nil {
		t.Errorf("more than 20000 features are %d", len(got))
	}
	if got := (plan.Profile{}).Stripes(fraction.Length{}, in("9"), fraction.Length{}); got != nil {
		t.Errorf("no features: %v", got)
	}
	profile.Features[1].Width = in("-3/8")
	if got := profile.Stripes(fraction.Length{}, in("9"), fraction.Length{}); got != nil {
		t.Errorf("a width below 0: %v", got)
	}
}
