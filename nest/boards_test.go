package nest_test

import (
	"context"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// plank is a kind of board one inch wide: its length, its price, and how many there are, -1 for as
// many as needed.
type plank struct {
	length, price int64
	count         int
}

// planks is the job of cutting the sizes from boards.
func planks(kinds []plank, sizes []int64) nest.Problem {
	var p nest.Problem
	for _, k := range kinds {
		s := nest.Stock{Width: fraction.Inches(1), Length: fraction.Inches(k.length), Price: money.Of(decimal.NewFromInt(k.price))}
		if k.count >= 0 {
			s.Count = &k.count
		}
		p.Stock = append(p.Stock, s)
	}
	for i, size := range sizes {
		p.Parts = append(p.Parts, nest.Part{Number: i, Width: fraction.Inches(1), Height: fraction.Inches(size)})
	}
	return p
}

// cheapest is the least money, then the fewest boards to buy, then the fewest boards, by plain
// enumeration; false if the boards do not hold the items.
func cheapest(kinds []plank, sizes []int64) (best [3]int64, ok bool) {
	var rooms []int64
	used := make([]int, len(kinds))
	var place func(item int, spent [3]int64)
	place = func(item int, spent [3]int64) {
		if item == len(sizes) {
			if !ok || slices.Compare(spent[:], best[:]) < 0 {
				best, ok = spent, true
			}
			return
		}
		for b := range rooms {
			if rooms[b] >= sizes[item] {
				rooms[b] -= sizes[item]
				place(item+1, spent)
				rooms[b] += sizes[item]
			}
		}
		for i, k := range kinds {
			if k.length < sizes[item] || used[i] == k.count {
				continue
			}
			used[i]++
			rooms = append(rooms, k.length-sizes[item])
			next := [3]int64{spent[0] + k.price, spent[1], spent[2] + 1}
			if k.count < 0 {
				next[1]++
			}
			place(item+1, next)
			rooms = rooms[:len(rooms)-1]
			used[i]--
		}
	}
	place(0, [3]int64{})
	return best, ok
}

// checkPlanks searches a job of boards and compares it with what is known to be best.
func checkPlanks(t *testing.T, name string, kinds []plank, sizes []int64, want [3]int64) {
	t.Helper()
	p := planks(kinds, sizes)
	r, err := nest.Search(context.Background(), p, nest.Budget{})
	if err == nil {
		err = nest.Verify(p, r)
	}
	got := [3]int64{r.Cost.Num() / r.Cost.Den(), int64(bought(p, r)), int64(len(r.Sheets))}
	if err != nil || len(r.Unplaced) > 0 || got != want || !r.Bound.Proved {
		t.Errorf("%s: %v from %v: cost, bought, boards %v, %d unplaced, %+v, %v; want %v, proved", name, sizes, kinds, got, len(r.Unplaced), r.Bound, err, want)
	}
}

func TestBoards(t *testing.T) {
	for _, tt := range []struct {
		name  string
		kinds []plank
		sizes []int64
		want  [3]int64
	}{
		{"the short board is enough", []plank{{12, 9, -1}, {8, 7, -1}}, []int64{3, 5}, [3]int64{7, 1, 1}},
		{"one long beats two short", []plank{{8, 7, -1}, {12, 9, -1}}, []int64{6, 6}, [3]int64{9, 1, 1}},
		{"offcuts on hand cost nothing", []plank{{12, 9, -1}, {5, 0, 1}}, []int64{4, 12}, [3]int64{9, 1, 2}},
		{"of equal price the fewer boards", []plank{{5, 5, -1}, {10, 10, -1}}, []int64{5, 5}, [3]int64{10, 1, 1}},
		{"one state reached at several prices", []plank{{12, 12, -1}, {24, 25, -1}}, []int64{4, 5, 6, 7, 8, 8, 9, 11}, [3]int64{61, 4, 4}},
		{"only one long board left", []plank{{12, 1, 1}, {6, 6, -1}}, []int64{6, 6, 6}, [3]int64{7, 1, 2}},
	} {
		checkPlanks(t, tt.name, tt.kinds, tt.sizes, tt.want)
	}
}

// TestBoardsEqualEnumeration: two kinds of board to buy and up to two offcuts on hand.
func TestBoardsEqualEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	for range *jobs {
		kinds := []plank{
			{20 + r.Int64N(20), 10 + r.Int64N(20), -1},
			{40 + r.Int64N(20), 25 + r.Int64N(30), -1},
			{5 + r.Int64N(20), r.Int64N(5), r.IntN(3)},
		}
		var sizes []int64
		for range 4 + r.IntN(3) {
			sizes = append(sizes, 3+r.Int64N(22))
		}
		if want, ok := cheapest(kinds, sizes); ok {
			checkPlanks(t, "random", kinds, sizes, want)
		}
	}
}

// byTable is cheapest for items of two sizes and boards of which there are as many as needed, however
// many the items: a table over what is left, from which each board takes what it can hold.
func byTable(kinds []plank, sizes [2]int64, counts [2]int) (best [3]int64) {
	table := make([][][3]int64, counts[0]+1)
	for a := range table {
		table[a] = make([][3]int64, counts[1]+1)
		for b := range table[a] {
			if a+b == 0 {
				continue
			}
			least := [3]int64{math.MaxInt64}
			for _, k := range kinds {
				for x := range min(a, int(k.length/sizes[0])) + 1 {
					y := min(b, int((k.length-int64(x)*sizes[0])/sizes[1]))
					if x+y == 0 {
						continue
					}
					with := table[a-x][b-y]
					for i, more := range [3]int64{k.price, 1, 1} {
						with[i] += more
					}
					if slices.Compare(with[:], least[:]) < 0 {
						least = with
					}
				}
			}
			table[a][b] = least
		}
	}
	return table[counts[0]][counts[1]]
}

// TestManyBoardsEqualTable: as many boards as a room takes, of three lengths at a price each.
func TestManyBoardsEqualTable(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range *jobs / 20 {
		var kinds []plank
		for _, feet := range []int64{8, 10, 12} {
			kinds = append(kinds, plank{12 * feet, 10*feet + r.Int64N(20), -1})
		}
		sizes, counts := [2]int64{32 + r.Int64N(24), 16 + r.Int64N(16)}, [2]int{r.IntN(30), 1 + r.IntN(30)}
		all := append(slices.Repeat(sizes[:1], counts[0]), slices.Repeat(sizes[1:], counts[1])...)
		checkPlanks(t, "many", kinds, all, byTable(kinds, sizes, counts))
	}
}

// TestNarrowBoards: a few boards that are ripped for the ends of walls do not hide that the others
// are a job of one dimension, where the linear programme of stacks is a proof.
func TestNarrowBoards(t *testing.T) {
	p := nest.Problem{Stock: []nest.Stock{{Name: "stick", Width: fraction.Of(11, 2), Length: fraction.Inches(96)}}}
	for _, x := range []struct {
		height fraction.Length
		whole  int
		eighth []int64 // widths of the narrow ones
	}{
		{fraction.Of(169, 8), 15, []int64{12, 16, 24, 5}},
		{fraction.Inches(25), 4, []int64{4, 23, 27}},
		{fraction.Of(139, 4), 18, []int64{9, 15, 15, 3, 40}},
		{fraction.Of(353, 8), 12, []int64{8, 30, 36, 37, 42, 42}},
	} {
		for _, width := range append(slices.Repeat([]int64{44}, x.whole), x.eighth...) {
			p.Parts = append(p.Parts, nest.Part{Number: len(p.Parts), Width: fraction.Of(width, 8), Height: x.height})
		}
	}
	r, err := nest.Search(t.Context(), p, nest.Budget{Nodes: 40_000})
	if err == nil {
		err = nest.Verify(p, r)
	}
	if err != nil || len(r.Sheets) != 22 || !r.Bound.Proved {
		t.Errorf("%d sheets, %+v, %v; want 22, proved", len(r.Sheets), r.Bound, err)
	}
}
