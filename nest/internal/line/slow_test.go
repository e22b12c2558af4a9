package line_test

import "example.com/groovewright/nest/internal/line"

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

// cheapest is the least price, and then the least number, of boards by plain enumeration; ok is
// false if the boards do not hold the items.
func cheapest(boards []line.Board, sizes []int64) (price int64, number int, ok bool) {
	type open struct{ room int64 }
	var opened []open
	used := make([]int, len(boards))
	var place func(item int, paid int64)
	place = func(item int, paid int64) {
		if item == len(sizes) {
			if !ok || paid < price || paid == price && len(opened) < number {
				price, number, ok = paid, len(opened), true
			}
			return
		}
		for b := range opened {
			if opened[b].room >= sizes[item] {
				opened[b].room -= sizes[item]
				place(item+1, paid)
				opened[b].room += sizes[item]
			}
		}
		for i, board := range boards {
			if board.Length < sizes[item] || board.Limited && used[i] == board.Count {
				continue
			}
			used[i]++
			opened = append(opened, open{board.Length - sizes[item]})
			place(item+1, paid+board.Price)
			opened = opened[:len(opened)-1]
			used[i]--
		}
	}
	place(0, 0)
	return price, number, ok
}

// cheapestUnlimited is the least price of unlimited boards for up to a dozen items, by recursion
// over subsets: the best board for one subset, and the rest.
func cheapestUnlimited(boards []line.Board, sizes []int64) int64 {
	const none = 1 << 60
	all := 1 << len(sizes)
	one := make([]int64, all) // price of one board that holds the subset
	best := make([]int64, all)
	for set := 1; set < all; set++ {
		var load int64
		for i, size := range sizes {
			if set>>i&1 == 1 {
				load += size
			}
		}
		one[set] = none
		for _, board := range boards {
			if board.Length >= load {
				one[set] = min(one[set], board.Price)
			}
		}
		best[set] = one[set]
		for part := (set - 1) & set; part > 0; part = (part - 1) & set {
			best[set] = min(best[set], one[part]+best[set&^part])
		}
	}
	return best[all-1]
}
