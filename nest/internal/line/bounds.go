package line

import (
	"fmt"
	"slices"
)

// roundingSteps is the largest step tried with [Rounding], and fractions the
// number of unit fractions of the capacity tried as a step: beyond a hundred
// the functions hardly differ from the area.
const (
	roundingSteps = 100
	fractions     = 100
)

// Lower returns a number of bins that no packing can go below and names the
// argument that gives it: "area" or the dual feasible function. The argument
// named is the simplest of those that give the most.
//
// Sizes that [Check] would refuse are left out. The cost grows with the square
// of the number of distinct sizes.
func Lower(capacity int64, sizes []int64) (bins int, how string) {
	fitting := slices.DeleteFunc(slices.Clone(sizes), func(size int64) bool {
		return size < 1 || size > capacity
	})
	if len(fitting) == 0 || capacity > MaxCapacity || len(fitting) > MaxItems {
		return 0, "area"
	}
	j := newJob(capacity, fitting)
	return j.lower(j.counts)
}

// lower is [Lower] for some of the items of a job.
func (j *job) lower(need []int) (bins int, how string) {
	how = Identity(j.capacity).String()
	for _, d := range Duals(j.capacity, j.sizes, need) {
		var sum int64
		for kind, count := range need {
			if count > 0 {
				sum += int64(count) * d.At(j.sizes[kind])
			}
		}
		if b := int(ceilDiv(sum, d.Most)); b > bins {
			bins, how = b, d.String()
			if d.family != identity {
				how = fmt.Sprintf("dual feasible function (%v)", d)
			}
		}
	}
	return bins, how
}

// ceilDiv is a/b rounded up, for a >= 0 and b > 0.
func ceilDiv(a, b int64) int64 {
	return (a + b - 1) / b
}

// steps lists the steps worth trying with the functions, rising: sizes, what
// sizes leave of the capacity, one more than either, and unit fractions.
func steps(capacity int64, sizes []int64) []int64 {
	var list []int64
	for _, size := range sizes {
		list = append(list, size, size+1, capacity-size, capacity-size+1)
	}
	for k := int64(2); k <= fractions; k++ {
		list = append(list, capacity/k, capacity/k+1)
	}
	slices.Sort(list)
	list = slices.Compact(list)
	return slices.DeleteFunc(list, func(step int64) bool { return step < 1 || step > capacity })
}
