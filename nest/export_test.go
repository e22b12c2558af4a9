package nest

import (
	"context"
)

// SearchExactly runs the exact search alone, without a nest to start from and without learned
// prices; without any bound too, if bounds is false. So whatever it finds is its own work, which in
// Search mostly proves what others found.
func SearchExactly(p Problem, bounds bool) (Result, error) {
	j, err := newJob(&p)
	if err != nil {
		return Result{}, err
	}
	_, relax := j.lower(never)
	possible := relax.pieces
	if len(possible) == 0 {
		return j.result(plan{left: j.except(possible)}, maxNodes)
	}
	groups := j.groups(possible)
	e := newExact(context.Background(), j, groups, newWeights(j, groups, relax), objective{left: -1})
	if !bounds {
		clear(e.weigh.each)
		e.weigh.all = nil
	}
	e.best = objective{left: len(j.pieces) + 1}
	e.limit, e.seen = 100_000_000, map[string]objective{}
	e.search(setOf(e.groups), objective{left: len(j.pieces) - len(possible)})
	if e.stopped || e.inconclusive {
		panic("a small job must be searched to the end")
	}
	return j.result(e.plan(), maxNodes)
}
