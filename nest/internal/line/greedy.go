package line

// greedy starts the search of [Boards] with simple choices: for each kind of board as the
// favourite, the items by falling size, each into the first opened board with room, else into a new
// one: the favourite if it is long enough and there is one left, else the cheapest that is. In the
// end each board is changed for the cheapest that holds what is on it.
func (b *branching) greedy() {
	for favourite := range b.boards {
		b.start(favourite)
	}
}

// opened is a board with its items and the room left.
type opened struct {
	chosen
	load int64
}

// start tries one favourite.
func (b *branching) start(favourite int) {
	left := append([]int(nil), b.left...)
	var open []opened
	for kind, count := range b.job.counts {
		for range count {
			at := b.place(open, b.job.sizes[kind])
			if at < 0 {
				board := b.cheapest(left, b.job.sizes[kind], favourite)
				if board < 0 {
					return
				}
				left[board]--
				at = len(open)
				open = append(open, opened{chosen: chosen{board: board}})
			}
			open[at].add(kind, b.job.sizes[kind])
		}
	}
	var cost int64
	list := make([]chosen, len(open))
	for i, o := range open {
		left[o.board]++
		o.board = b.cheapest(left, o.load, -1)
		left[o.board]--
		cost += b.cost(o.board)
		list[i] = o.chosen
	}
	if cost < b.bestCost {
		b.best, b.bestCost = list, cost
	}
}

// add cuts one more item from the board; kinds never fall.
func (o *opened) add(kind int, size int64) {
	o.load += size
	if last := len(o.pattern) - 1; last >= 0 && o.pattern[last].kind == kind {
		o.pattern[last].count++
		return
	}
	o.pattern = append(o.pattern, take{kind, 1})
}

// place is the first opened board with room for the size, -1 if there is none.
func (b *branching) place(open []opened, size int64) int {
	for i, o := range open {
		if o.load+size <= b.boards[o.board].Length {
			return i
		}
	}
	return -1
}

// cheapest is the favourite if it can be had and is long enough, else the cheapest such board, the
// first of equals; -1 if there is none.
func (b *branching) cheapest(left []int, length int64, favourite int) int {
	found := -1
	for board, kind := range b.boards {
		if left[board] == 0 || kind.Length < length {
			continue
		}
		if board == favourite {
			return board
		}
		if found < 0 || kind.Price < b.boards[found].Price {
			found = board
		}
	}
	return found
}
