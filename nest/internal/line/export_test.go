package line

import (
	"context"
	"fmt"
)

// Programme is the linear programme over patterns of a problem, for tests.
type Programme struct {
	columns *columns
	need    []int
}

// NewProgramme prepares the programme with a budget of nodes.
func NewProgramme(capacity int64, sizes []int64, nodes int) *Programme {
	j := newJob(capacity, sizes)
	return &Programme{newColumns(j, &meter{ctx: context.Background(), limit: nodes}), j.counts}
}

// Solve returns the value and the proved bound.
func (p *Programme) Solve() (float64, int) { return p.columns.solve(p.need, 0) }

// Dive returns a packing into so many bins, or nil.
func (p *Programme) Dive(bins, round int) [][]int {
	found := p.columns.dive(p.need, bins, round)
	if found == nil {
		return nil
	}
	return p.columns.job.bins(found)
}

// Best is the greatest value of a pattern at the given values of the items.
func (p *Programme) Best(value func(size int64) int64) int64 {
	values := make([]int64, len(p.need))
	for kind := range values {
		values[kind] = value(p.columns.job.sizes[kind])
	}
	best, _ := p.columns.knapsack.solve(values, p.need, 0, 0)
	return best
}

// ThresholdBound is the bound that the complete search uses in each node.
func ThresholdBound(capacity int64, sizes []int64) int {
	j := newJob(capacity, sizes)
	return newCompletion(j, j.counts, nil).threshold()
}

// Complete searches for a packing into so many bins without any other means.
func Complete(capacity int64, sizes []int64, bins int) (packed [][]int, proved bool) {
	j := newJob(capacity, sizes)
	s := newCompletion(j, j.counts, &meter{ctx: context.Background(), limit: DefaultNodes})
	if s.search(bins) {
		return j.bins(s.chosen), true
	}
	return nil, s.proved()
}

// Lower is the bound of the dual feasible functions.
func Lower(capacity int64, sizes []int64) (bins int, how Argument) {
	return newJob(capacity, sizes).lower()
}

// Verify judges a packing without looking at how it was found: each item in exactly one bin, no bin
// empty, none above the capacity.
func Verify(capacity int64, sizes []int64, bins [][]int) error {
	held := make([]bool, len(sizes))
	count := 0
	for b, bin := range bins {
		if len(bin) == 0 {
			return fmt.Errorf("bins[%d]: empty", b)
		}
		room := capacity
		for _, item := range bin {
			if item < 0 || item >= len(sizes) {
				return fmt.Errorf("bins[%d]: no item %d", b, item)
			}
			if held[item] {
				return fmt.Errorf("bins[%d]: item %d is packed twice", b, item)
			}
			held[item] = true
			count++
			if sizes[item] < 0 || sizes[item] > room {
				return fmt.Errorf("bins[%d]: item %d of size %d does not fit the room %d", b, item, sizes[item], room)
			}
			room -= sizes[item]
		}
	}
	if count != len(sizes) {
		return fmt.Errorf("%d of %d items are packed", count, len(sizes))
	}
	return nil
}

// FirstFit and BestFit pack by first-fit and best-fit decreasing.
func FirstFit(capacity int64, sizes []int64) [][]int { return fitted(capacity, sizes, false) }
func BestFit(capacity int64, sizes []int64) [][]int  { return fitted(capacity, sizes, true) }

func fitted(capacity int64, sizes []int64, best bool) [][]int {
	j := newJob(capacity, sizes)
	return j.bins(j.fit(j.counts, best))
}

// Identity, Threshold, Rounding, Splitting and Remainder are single dual feasible functions.
func Identity(capacity int64) Dual        { return newDual(identity, capacity, 0) }
func Threshold(capacity, step int64) Dual { return newDual(threshold, capacity, step) }
func Rounding(capacity, step int64) Dual  { return newDual(rounding, capacity, step) }
func Splitting(capacity, step int64) Dual { return newDual(splitting, capacity, step) }
func Remainder(capacity, step int64) Dual { return newDual(remainder, capacity, step) }

func (f family) String() string {
	return [...]string{"area", "threshold", "rounding", "splitting", "remainder", "counting"}[f]
}

// String names the function, as "remainder 27".
func (d Dual) String() string {
	if d.family == identity {
		return d.family.String()
	}
	return fmt.Sprintf("%v %d", d.family, d.step)
}

// DefaultNodes is a budget of a few seconds at most.
const DefaultNodes = 400_000
