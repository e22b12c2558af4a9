package line_test

// fewest is the least number of bins by plain enumeration: each item into every bin so far and into
// a new one. No bound, no order, nothing in common with the package but the question.
func fewest(capacity int64, sizes []int64) int {
	best := len(sizes)
	var loads []int64
	var place func(item int)
	place = func(item int) {
		if len(loads) > best {
			return
		}
		if item == len(sizes) {
			best = len(loads)
			return
		}
		for b := range loads {
			if loads[b]+sizes[item] <= capacity {
				loads[b] += sizes[item]
				place(item + 1)
				loads[b] -= sizes[item]
			}
		}
		loads = append(loads, sizes[item])
		place(item + 1)
		loads = loads[:len(loads)-1]
	}
	place(0)
	return best
}
