package line

import (
	"context"
	"iter"
	"slices"
	"sort"
)

// Dual is a dual feasible function: a map of sizes such that the values of any items that together
// fit the capacity add up to at most Most. Then
//
//	bins >= (sum of At(size)) / Most,
//
// and in two dimensions, with one function on widths and one on heights, the products of the values
// bound the number of sheets the same way. (G. S. Lueker 1983; S. P. Fekete and J. Schepers, "New
// classes of fast lower bounds for bin packing problems", Mathematical Programming 91, 2001; F.
// Clautiaux, C. Alves, J. Valerio de Carvalho, "A survey of dual-feasible and superadditive
// functions", Annals of Operations Research 179, 2010.) The zero Dual bounds nothing.
type Dual struct {
	Most int64 // the largest total value of items that fit the capacity

	family   family
	capacity int64
	step     int64
	fits     []int64 // counting: fits[k] is the total size of the k+1 smallest counted items
	sizes    []int64 // programme: falling
	values   []int64 // programme: of items of each of the sizes or between it and the next larger one
}

// family is a kind of function; each takes a step.
type family int

const (
	// identity maps every size to itself: the area bound.
	identity family = iota
	// threshold drops the sizes below step and rounds those above capacity-step up to the capacity,
	// for 0 <= step <= (capacity+1)/2. The best of these functions is the bound L2 of S. Martello
	// and P. Toth, "Knapsack Problems" (1990), ch. 8.
	threshold
	// rounding rounds sizes down to multiples of capacity/(step+1), except sizes that are such
	// multiples, for step >= 1 (Fekete and Schepers, u with k = step).
	rounding
	// splitting counts steps, down for sizes up to half the capacity, else up, for 1 <= step <=
	// capacity/2 (J. Carlier, F. Clautiaux, A. Moukrim, "New reduction procedures and lower bounds
	// for the two-dimensional bin packing problem", Computers and Operations Research 34, 2007).
	splitting
	// remainder rounds down to multiples of step but credits what exceeds the capacity's remainder,
	// for 1 <= step <= capacity (C. A. Burdett and E. L. Johnson, "A subadditive approach to solve
	// linear integer programs", Annals of Discrete Mathematics 1, 1977).
	remainder
	// counting counts the items of at least step up to half the capacity as one each and larger
	// items as the number of those that they displace, for step >= 1. It holds for the given items
	// only (Carlier, Clautiaux, Moukrim; a form of Martello and Toth's argument).
	counting
	// programme values sizes by the linear programme of the cutting stock over given sizes, and those
	// between two as the smaller one; see [BestDual].
	programme
)

// newDual returns the function of a family other than counting.
func newDual(f family, capacity, step int64) Dual {
	most := capacity
	switch f {
	case rounding:
		most = capacity * step
	case splitting:
		most = 2 * (capacity / step)
	case remainder:
		most = (capacity / step) * (step - capacity%step)
	}
	return Dual{Most: most, family: f, capacity: capacity, step: step}
}

// newCounting returns the function counting for items of these falling sizes, with their counts.
func newCounting(capacity, step int64, sizes []int64, counts []int) Dual {
	d := Dual{family: counting, capacity: capacity, step: step}
	var sum int64
	for i := len(sizes) - 1; i >= 0; i-- {
		if sizes[i] < step || 2*sizes[i] > capacity {
			continue
		}
		for range counts[i] {
			if sum += sizes[i]; sum > capacity {
				break
			}
			d.fits = append(d.fits, sum)
		}
	}
	d.Most = d.number(capacity)
	return d
}

// number is how many of the smallest counted items fit the room.
func (d *Dual) number(room int64) int64 {
	n := 0
	for n < len(d.fits) && d.fits[n] <= room {
		n++
	}
	return int64(n)
}

// At is the value of a size between 0 and the capacity.
func (d *Dual) At(size int64) int64 {
	c, step := d.capacity, d.step
	switch d.family {
	case identity:
		return size
	case threshold:
		switch {
		case size > c-step:
			return c
		case size < step:
			return 0
		}
		return size
	case rounding:
		if (step+1)*size%c == 0 {
			return step * size
		}
		return (step + 1) * size / c * c
	case splitting:
		switch {
		case 2*size > c:
			return 2 * (c/step - (c-size)/step)
		case 2*size == c:
			return c / step
		}
		return 2 * (size / step)
	case remainder:
		rest := c % step
		return size/step*(step-rest) + max(0, size%step-rest)
	case counting:
		switch {
		case 2*size > c:
			return d.Most - d.number(c-size)
		case size >= step:
			return 1
		}
	case programme:
		if i := sort.Search(len(d.sizes), func(i int) bool { return d.sizes[i] <= size }); i < len(d.sizes) {
			return d.values[i]
		}
	}
	return 0
}

// Duals lists the functions that bound anything for items of the given sizes, falling and distinct,
// with their counts. Steps are the [Thresholds] and unit fractions of the capacity.
func Duals(capacity int64, sizes []int64, counts []int) []Dual {
	steps := Thresholds(capacity, sizes)
	for k := int64(2); k <= fractions; k++ {
		steps = append(steps, capacity/k, capacity/k+1)
	}
	return slices.Collect(DualsAt(capacity, sizes, counts, rising(steps, capacity), roundingSteps))
}

// mostCounted is the number of items up to which counting is tried.
const mostCounted = 1 << 14

// DualsAt yields what [Duals] lists for the given steps, and for all steps of rounding up to roundings.
func DualsAt(capacity int64, sizes []int64, counts []int, steps []int64, roundings int64) iter.Seq[Dual] {
	items := 0
	for _, count := range counts {
		items += count
	}
	return func(yield func(Dual) bool) {
		add := func(d Dual) bool { return d.Most <= 0 || yield(d) }
		if !add(newDual(identity, capacity, 0)) {
			return
		}
		for _, step := range steps {
			if 2*step <= capacity+1 && !add(newDual(threshold, capacity, step)) ||
				2*step <= capacity && !add(newDual(splitting, capacity, step)) ||
				2*step <= capacity && items <= mostCounted && !add(newCounting(capacity, step, sizes, counts)) ||
				!add(newDual(remainder, capacity, step)) {
				return
			}
		}
		for step := int64(1); step <= roundings; step++ {
			if !add(newDual(rounding, capacity, step)) {
				return
			}
		}
	}
}

// roundingSteps is the largest step of rounding that [Duals] tries, and fractions the number of
// unit fractions of the capacity: beyond a hundred the functions hardly differ from the area.
const roundingSteps, fractions int64 = 100, 100

// ceilDiv is a/b rounded up, for a >= 0 and b > 0.
func ceilDiv(a, b int64) int64 {
	return (a + b - 1) / b
}

// Thresholds lists the steps from 1 to the capacity at which a value of some size changes sides,
// rising: sizes, what sizes leave of the capacity, and one more than either.
func Thresholds(capacity int64, sizes []int64) (list []int64) {
	for _, size := range sizes {
		list = append(list, size, size+1, capacity-size, capacity-size+1)
	}
	return rising(list, capacity)
}

// rising sorts steps and leaves each from 1 to the capacity once.
func rising(list []int64, capacity int64) []int64 {
	slices.Sort(list)
	return slices.DeleteFunc(slices.Compact(list), func(step int64) bool { return step < 1 || step > capacity })
}

// lower returns a number of bins that no packing can go below and the argument that gives it: the
// simplest of those that give the most.
func (j *job) lower() (bins int, how Argument) {
	for _, d := range Duals(j.capacity, j.sizes, j.counts) {
		var sum int64
		for kind, count := range j.counts {
			sum += int64(count) * d.At(j.sizes[kind])
		}
		if b := int(ceilDiv(sum, d.Most)); b > bins {
			if bins, how = b, DualFunction; d.family == identity {
				how = Area
			}
		}
	}
	return bins, how
}

// Argument says what a bound rests on.
type Argument uint8

const (
	Area          Argument = iota // the total of the sizes
	DualFunction                  // a dual feasible function
	LinearProgram                 // the linear programme over patterns
	Search                        // a search of all packings
)

// bestNodes is the effort that [BestDual] may take, and bestUnit what a bin is worth there.
const bestNodes, bestUnit = 20_000, 1 << 20

// BestDual returns a function that bounds items of the given sizes, falling and distinct, as well as
// any: the dual prices of the linear programme over all patterns (P. C. Gilmore and R. E. Gomory
// 1961), rounded to integers. Most is what an exact knapsack finds at these. A count, at least 1, may
// be any measure of how much there is of a size. It is false where that knapsack is too large, or where
// a size does not fit.
func BestDual(capacity int64, sizes []int64, counts []int) (d Dual, ok bool) {
	if len(sizes) == 0 || sizes[0] > capacity {
		return d, false
	}
	j, times := &job{capacity: capacity, sizes: sizes}, 1
	for kind, size := range sizes {
		fit := int(capacity / size)
		j.counts = append(j.counts, fit)
		times = max(times, (fit+counts[kind]-1)/counts[kind])
	}
	need := make([]int, len(counts)) // so many times the counts that no pattern holds more than is needed
	for kind, count := range counts {
		need[kind] = times * count
	}
	c := newColumns(j, &meter{ctx: context.Background(), limit: bestNodes})
	if c == nil {
		return d, false
	}
	c.solve(need, 0)
	d = Dual{family: programme, capacity: capacity, sizes: sizes, values: c.master.Prices(bestUnit)}
	for i := len(sizes) - 2; i >= 0; i-- {
		d.values[i] = max(d.values[i], d.values[i+1]) // a larger size takes the place of a smaller one
	}
	d.Most, _ = c.knapsack.solve(d.values, j.counts, 0, 0)
	return d, d.Most > 0
}
