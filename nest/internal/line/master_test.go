package line

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Where the inverse has drifted the programme starts again from its first basis, and its levels meet the needs.
func TestDriftEndsInARestart(t *testing.T) {
	for spoilt, want := range map[float64]bool{0: false, .01: true} {
		m := NewMaster([]int{4, 6}, []int{2, 2})
		m.Add([]int{2, 1})
		m.inverse[3] += spoilt
		m.pivots = refresh - 1
		if !m.step() || m.drift() > drifted {
			t.Errorf("spoilt by %v: levels are %v off", spoilt, m.drift())
		}
		if restarted := m.row[0] == 0 && m.row[1] == 1; restarted != want {
			t.Errorf("spoilt by %v: started again: %v", spoilt, restarted)
		}
	}
}

// Error that gathers in levels and prices is gone after some pivots, with no start from the first basis.
func TestLevelsAndPricesAreRefreshed(t *testing.T) {
	m := NewMaster([]int{4, 6}, []int{2, 2})
	m.Add([]int{2, 1})
	m.level[1], m.dual[1] = m.level[1]+.01, m.dual[1]+.01
	m.pivots = refresh - 1
	if !m.step() || m.drift() > drifted || m.row[0] == 0 {
		t.Errorf("levels are %v off, the first pattern is basic in row %d", m.drift(), m.row[0])
	}
	for r, column := range m.basis {
		if cost := m.reduced(m.pool[column]); math.Abs(cost) > tight {
			t.Errorf("the pattern of row %d has a reduced cost of %v", r, cost)
		}
	}
}

// When fewer are needed, the dual simplex goes from one optimum to the next, as every reduced cost stays above zero on
// its way: no pivot of the primal is left, and the value is that of a programme of these needs from its start.
func TestRepairKeepsPricesOptimal(t *testing.T) {
	repaired := 0
	rapid.Check(t, func(t *rapid.T) {
		kinds := rapid.IntRange(2, 6).Draw(t, "kinds")
		counts := func(least, most int, name string) []int {
			return rapid.SliceOfN(rapid.IntRange(least, most), kinds, kinds).Draw(t, name)
		}
		need, most := counts(6, 40, "need"), counts(1, 3, "most")
		m := NewMaster(need, most)
		var added [][]int
		for range rapid.IntRange(1, 12).Draw(t, "patterns") {
			added = append(added, counts(0, 3, "pattern"))
			m.Add(added[len(added)-1])
		}
		m.Optimize()
		less := counts(3, 6, "less")
		m.cover(less)
		m.relevel()
		negative := false
		for _, level := range m.level {
			negative = negative || level < -tight
		}
		if !m.repair(1000) {
			t.Skip("not within its pivots")
		}
		if negative {
			repaired++
		}
		bins, pivots := m.Optimize()
		fresh := NewMaster(less, most)
		for _, counts := range added {
			fresh.Add(counts)
		}
		if want, _ := fresh.Optimize(); pivots != 0 || math.Abs(bins-want) > 1e-6 {
			t.Fatalf("%d pivots after the repair to %v bins, want %v", pivots, bins, want)
		}
	})
	if repaired < 10 {
		t.Errorf("only %d programmes were repaired", repaired)
	}
}

// The bound of the complete search counts items that share no bin with any before them, and of what is left no more than is
// still needed.
func TestThresholdOfWhatIsLeft(t *testing.T) {
	for _, row := range []struct {
		sizes []int64
		need  []int
		want  int
	}{
		{[]int64{6, 5}, []int{3, 1}, 4},
		{[]int64{6, 4}, []int{3, 1}, 3},
		{[]int64{6, 5, 3}, []int{1, 0, 4}, 2},
		{[]int64{7, 6, 4, 3}, []int{1, 1, 2, 0}, 3},
		{[]int64{5}, []int{0}, 0},
	} {
		j := newJob(10, row.sizes)
		if got := newCompletion(j, row.need, nil).threshold(); got != row.want {
			t.Errorf("%d of %d: at least %d bins of 10, want %d", row.need, row.sizes, got, row.want)
		}
	}
}

// A bin holds no more of its pattern than is needed, there is none where nothing is, and what it holds can be given back.
func TestFixedBinsHoldWhatIsNeeded(t *testing.T) {
	d := &dive{need: []int{0, 2, 1}}
	d.fix(pattern{{1, 1}})
	for _, p := range []pattern{{{0, 1}, {1, 3}}, {{0, 2}}, {{1, 1}}} {
		d.fix(p)
	}
	if got := fmt.Sprint(d.fixed, d.need); got != "[[{1 1}] [{1 1}]] [0 0 1]" {
		t.Errorf("bins and what is needed: %s", got)
	}
	if d.undo(1); fmt.Sprint(d.fixed, d.need) != "[[{1 1}]] [0 1 1]" {
		t.Errorf("after all but the first are given back: %v, %v", d.fixed, d.need)
	}
}
