package verify

import (
	"slices"
	"testing"
)

// The gap between two sheets is that of the seams, and between two boards that or none; what an opening parts, or what was on
// the wall before, has the gap that it has. None is less than nothing.
func TestGapsBetweenPanels(t *testing.T) {
	for _, row := range []struct {
		boards, open, old bool
		gap               rat
		want              []Kind
	}{
		{false, false, false, ratio(1, 8), nil},
		{false, false, false, zero(), []Kind{SeamGap}},
		{false, false, false, ratio(1, 4), []Kind{SeamGap}},
		{false, true, false, ratio(1, 4), nil},
		{false, false, true, ratio(1, 4), nil},
		{false, true, true, zero(), nil},
		{false, false, false, ratio(-1, 8), []Kind{Panels}},
		{false, true, false, ratio(-1, 8), []Kind{Panels}},
		{true, false, false, ratio(1, 8), nil},
		{true, false, false, zero(), nil},
		{true, false, false, ratio(1, 4), []Kind{SeamGap}},
		{true, true, false, ratio(1, 4), nil},
		{true, false, true, ratio(1, 4), nil},
		{true, false, false, ratio(-1, 8), []Kind{Panels}},
	} {
		c := newChecker()
		c.job = &room{pattern: &pattern{profile: profile{Boards: row.boards}, pitch: whole(1)}}
		c.job.Runs, c.plan.Runs = make([]run, 1), make([]planRun, 1)
		c.job.Gaps.Seam = ratio(1, 8)
		left := whole(10)
		right := sum(left, row.gap)
		before := board{left: zero(), right: left, leftPhase: zero()}
		after := board{left: right, right: whole(20), leftPhase: mod(right, whole(1)), path: "runs[0].panels[1]"}
		c.boards, c.joints = [][]board{{before, after}}, [][]joint{{{left: left, right: right, open: row.open, old: row.old}}}
		c.acrossJoints(0)
		var got []Kind
		for _, f := range c.faults {
			got = append(got, f.Kind)
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%+v: faults %v", row, c.faults)
		}
	}
}
