package nest

import "testing"

// A grid that costs too much gets a coarser unit on the side of more sums, as large as the least item is at most. Heights of 2 and 3
// have all sums up to 1000 but 1, widths of 100 and 110 few up to 320; those of 2 alone have all even ones.
func TestUnitsOfAGrid(t *testing.T) {
	for _, row := range []struct {
		items []item
		w, h  int64
		steps int
		want  [2]int64 // the units; zero for no grid
	}{
		{[]item{{w: 100, h: 2}, {w: 110, h: 3}}, 320, 1000, 1 << 30, [2]int64{1, 1}},
		{[]item{{w: 100, h: 2}, {w: 110, h: 3}}, 320, 1000, 5_000_000, [2]int64{1, 2}}, // about 8 x 1000 x 1000 by units of 1, a quarter of that by those of 2
		{[]item{{w: 100, h: 2}, {w: 110, h: 3}}, 320, 1000, 100, [2]int64{}},
		{[]item{{w: 100, h: 2}}, 100, 8, 70, [2]int64{1, 1}}, // 2 x 5 x 7 steps
		{[]item{{w: 100, h: 2}}, 100, 2 * (mostSums - 1), 1 << 30, [2]int64{1, 1}},
		{[]item{{w: 100, h: 2}, {w: 100, h: 3}}, 100, mostSums + 1, 1 << 30, [2]int64{1, 2}},
	} {
		g := newGrid(row.items, row.w, row.h, row.steps)
		var got [2]int64
		if g != nil {
			got = g.unit
		}
		if got != row.want || g != nil && g.cost() > row.steps {
			t.Errorf("%+v on %d by %d in %d steps: units %v, want %v", row.items, row.w, row.h, row.steps, got, row.want)
		}
	}
}
