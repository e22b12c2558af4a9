package line

import (
	"context"
	"errors"
	"fmt"
	"slices"
)

// Board is a length of stock. Length and the sizes of the items are in one unit; Price is in any
// whole unit of money. Boards not Limited are bought as needed.
type Board struct {
	Length  int64
	Price   int64
	Limited bool
	Count   int // how many there are, if Limited
}

// MaxPrice is the largest price of a [Board].
const MaxPrice int64 = 1 << 30

// ErrTooFew is the error of [Boards] if the search proved that the boards do not hold all items.
var ErrTooFew = errors.New("the boards are too few for the items")

// Cut is one board that is cut: the index of its kind and of the items on it, larger items first.
type Cut struct {
	Board int
	Items []int
}

// Cutting is a choice of boards and what is known about it.
type Cutting struct {
	// Cuts lists the boards. It is empty if none was found before the budget was spent.
	Cuts []Cut
	// Price is the price of all boards, Lower a price that none can go below, Fewest a number of
	// boards that none can go below.
	Price, Lower int64
	Fewest       int
	// Proved says that no choice costs less, and none of the same price has fewer boards.
	Proved bool
	// How names the argument that gives Lower.
	How Argument
	// Nodes is the effort spent, as [Budget] counts it.
	Nodes int
}

// Boards cuts the items from boards of several lengths for the least money, and then with the
// fewest boards.
//
// It is exact where it says Proved: usual up to some twenty-five items. Beyond that it returns the
// best of several greedy choices that the search could not improve, with a lower bound. Boards of
// one unlimited kind are left to [Pack].
//
// It fails if a board or an item is out of range or no board is long enough for an item, and with
// [ErrTooFew].
func Boards(ctx context.Context, boards []Board, sizes []int64, budget Budget) (Cutting, error) {
	longest, err := checkBoards(boards, sizes)
	if err != nil {
		return Cutting{}, err
	}
	if len(sizes) == 0 {
		return Cutting{Proved: true, How: Area}, nil
	}
	if len(boards) == 1 && !boards[0].Limited {
		return packOne(ctx, boards[0], sizes, budget)
	}
	b := newBranching(boards, newJob(longest, sizes), &meter{ctx: ctx, limit: budget.nodes()})
	b.run()
	if b.best == nil && (b.lower == never || b.proved()) {
		return Cutting{}, ErrTooFew
	}
	return b.cutting(), nil
}

// checkBoards reports the first fault and returns the length of the longest board of which there is
// one.
func checkBoards(boards []Board, sizes []int64) (longest int64, err error) {
	for i, b := range boards {
		switch {
		case b.Length < 1 || b.Length > MaxCapacity:
			return 0, fmt.Errorf("boards[%d].length: %d is not between 1 and %d", i, b.Length, MaxCapacity)
		case b.Price < 0 || b.Price > MaxPrice:
			return 0, fmt.Errorf("boards[%d].price: %d is not between 0 and %d", i, b.Price, MaxPrice)
		case b.Limited && b.Count < 0:
			return 0, fmt.Errorf("boards[%d].count: %d is below 0", i, b.Count)
		case !b.Limited || b.Count > 0:
			longest = max(longest, b.Length)
		}
	}
	if len(sizes) == 0 {
		return longest, nil
	}
	if longest == 0 {
		return 0, fmt.Errorf("boards: none for %d items", len(sizes))
	}
	return longest, Check(longest, sizes)
}

// packOne is [Boards] for one unlimited kind.
func packOne(ctx context.Context, board Board, sizes []int64, budget Budget) (Cutting, error) {
	packed, err := Pack(ctx, board.Length, sizes, budget)
	if err != nil {
		return Cutting{}, err
	}
	c := Cutting{
		Price: int64(len(packed.Bins)) * board.Price, Lower: int64(packed.Lower) * board.Price,
		Fewest: packed.Lower, Proved: packed.Proved, How: packed.How, Nodes: packed.Nodes,
	}
	for _, bin := range packed.Bins {
		c.Cuts = append(c.Cuts, Cut{Items: bin})
	}
	return c, nil
}

// chosen is a board with its pattern.
type chosen struct {
	board   int
	pattern pattern
}

// cutting turns the best choice into the caller's indices.
func (b *branching) cutting() Cutting {
	c := Cutting{
		Lower: b.lower / b.weight, How: b.how, Nodes: min(b.meter.used, b.meter.limit),
		Proved: b.best != nil && b.lower == b.bestCost,
	}
	best := slices.Clone(b.best)
	slices.SortStableFunc(best, func(x, y chosen) int { return comparePatterns(x.pattern, y.pattern) })
	patterns := make([]pattern, len(best))
	for i, ch := range best {
		patterns[i] = ch.pattern
		c.Price += b.boards[ch.board].Price
	}
	for i, items := range b.job.bins(patterns) {
		c.Cuts = append(c.Cuts, Cut{Board: best[i].board, Items: items})
	}
	return c
}
