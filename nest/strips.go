package nest

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest/internal/line"
)

// Bounds for walls, before it is known how they are parted into pieces. Let f be a dual feasible
// function of heights. The parts on any upright line through a sheet, each with a kerf above it,
// add up to no more than the sheet's length and a kerf, so their values under f to no more than f
// allows for that. Each part, with a kerf to its right, covers at least its own width of the
// strips; so the sum of the strips' widths times the values of their heights is at most the sheets'
// widths (each with a kerf) times what f allows. With f the height itself, that is the area bound.

// Strip is an upright strip that has to be covered by parts, wherever they are cut across its
// width: Width wide, of Height in all, its tallest part Tallest high, all in inches. A strip with
// no width or no such part needs nothing.
type Strip struct {
	Width, Height, Tallest fraction.Length
}

// StripBound returns a lower bound for every way to part the strips into parts with a gap of at
// most one kerf between neighbours, and every way to nest those. Where the gap is wider than the
// kerf, only "one sheet, if there is anything to cut" is claimed. The parts of the problem are not
// read. The errors are those of [LowerBound].
func StripBound(p Problem, gap fraction.Length, strips []Strip) (b Bound, err error) {
	defer fraction.Catch(&err)
	s, err := newStripper(p, strips)
	if s == nil {
		return b, err
	}
	b = Bound{Sheets: 1, How: SomethingToCut}
	if p.Saw.Kerf.Less(gap) || s.longest <= 0 {
		return b, nil
	}
	for _, w := range s.weights(s.sizes, StripArea, StripHeights) {
		if w.how == StripArea {
			w.need = s.need(s.heights)
		}
		b = w.raise(b, w.need)
	}
	return b, nil
}

// DualWeight is a value for parts by their height, such that the parts on any upright line through
// a sheet are worth no more than a certain sum. So what parts are worth in all, each with a kerf to
// its right, says how many sheets they need at least. The zero DualWeight values everything at 0.
type DualWeight struct {
	weighing
	Measure Measure // of widths
	s       *stripper
	most    []int64 // that the heights on an upright line through each kind of stock are worth
	sizes   []int64 // with a kerf, in marks; falling
	each    []int64 // values of parts at least so high
	need    uint64  // value of the strips' tallest parts
}

// DualWeights returns the dual weights that give the strips the highest bounds, first that which asks for most money and
// then those that ask for most sheets, the best first; no more than so many. They value parts by the heights of the strips and by
// those in heights. The errors are those of [LowerBound].
func DualWeights(p Problem, strips []Strip, heights []fraction.Length, number int) (all []DualWeight, err error) {
	defer fraction.Catch(&err)
	s, err := newStripper(p, strips)
	if s == nil || s.longest <= 0 {
		return nil, err
	}
	sizes := slices.Clone(s.sizes)
	for _, h := range heights {
		if h.Sign() > 0 {
			sizes = append(sizes, max(1, s.whole(h.Add(p.Saw.Kerf))))
		}
	}
	all = s.weights(falling(sizes), PartArea, PartHeights)
	all = slices.DeleteFunc(all, func(w DualWeight) bool { return slices.Max(w.holds) == 0 })
	sort.SliceStable(all, func(i, j int) bool {
		a, b := &all[i], &all[j]
		return compareProducts(b.need, slices.Max(a.holds), a.need, slices.Max(b.holds)) < 0
	})
	all = slices.CompactFunc(all, func(a, b DualWeight) bool { return slices.Equal(a.each, b.each) })
	dearest, most := 0, int64(-1)
	for i, w := range all {
		if cost := s.cost(&w.weighing, w.claimed(w.need), s.stock); cost > most {
			dearest, most = i, cost
		}
	}
	if dearest > 0 {
		w := all[dearest]
		all = slices.Insert(slices.Delete(all, dearest, dearest+1), 0, w)
	}
	return all[:max(0, min(number, len(all)))], nil
}

// DualWeightOf returns the dual weight that by heights bounds these parts best, or nearly so where the
// kinds of stock differ in length. The zero value says that none is found. The errors are those of
// [LowerBound].
func DualWeightOf(p Problem, strips []Strip, parts []Part) (w DualWeight, err error) {
	defer fraction.Catch(&err)
	s, err := newStripper(p, strips)
	if s == nil || s.longest <= 0 {
		return w, err
	}
	s.tallest, s.widths = nil, nil
	for _, part := range parts {
		s.tallest = append(s.tallest, max(1, s.whole(part.Height.Add(p.Saw.Kerf))))
		s.widths = append(s.widths, s.whole(part.Width.Add(p.Saw.Kerf)))
	}
	sizes := falling(append(s.sizes, s.tallest...))
	if d, ok := line.BestDual(s.longest, sizes, s.amounts(sizes)); ok {
		w = s.dual(d, PartHeights, sizes, stacksOf(sizes, s.tall))
	}
	return w, nil
}

// Of returns the value of an inch of width of a part of this height, which never falls as the
// height grows. A height that is too fine to be calculated with the sheets has the value 0.
func (w DualWeight) Of(height fraction.Length) (value int64) {
	if w.s == nil {
		return 0
	}
	var fine error
	defer fraction.Catch(&fine)
	return w.at(w.s.whole(height.Add(w.s.job.p.Saw.Kerf)))
}

// LowerBound returns a lower bound on what parts of this total value need. The total is the sum
// over the parts of their width and a kerf, times Of their height.
func (w DualWeight) LowerBound(total fraction.Length) Bound {
	need := w.marks(total)
	if need == 0 {
		return Bound{}
	}
	return w.raise(Bound{}, need)
}

// Least returns what parts of this total value need at least, compared as results are: less money,
// else fewer bought sheets, else fewer sheets. So the sheets, other than those of LowerBound, count
// beside this money only. Where too many kinds of stock would have to be tried it is LowerBound.
func (w DualWeight) Least(total fraction.Length) (cost fraction.Ratio, bought, sheets int) {
	need := w.marks(total)
	if need == 0 {
		return cost, 0, 0
	}
	if least, ok := w.s.least(&w.weighing, need, w.s.stock); ok {
		return w.s.job.money(least[0]), int(least[1]), int(least[2])
	}
	b := w.raise(Bound{}, need)
	return b.Cost, b.Bought, b.Sheets
}

// marks returns a total value in marks, rounded down; see claimed.
func (w *DualWeight) marks(total fraction.Length) uint64 {
	if w.s == nil || total.Sign() <= 0 {
		return 0
	}
	hi, lo := bits.Mul64(uint64(total.Num()), uint64(w.s.job.den))
	whole := uint64(math.MaxUint64)
	if den := uint64(total.Den()); hi < den {
		whole, _ = bits.Div64(hi, lo, den)
	}
	return w.claimed(whole)
}

// at returns the value of a part that is so many marks high with a kerf.
func (w *DualWeight) at(height int64) int64 {
	i, _ := slices.BinarySearchFunc(w.sizes, height, func(size, height int64) int { return cmp.Compare(height, size) })
	if i == len(w.sizes) {
		return 0
	}
	return w.each[i]
}

// mostClaimed is the most sheets that a bound for strips claims; no wall needs as many.
const mostClaimed = 1 << 20

// claimed returns a weight, or what as many sheets hold as a bound claims at most.
func (w *DualWeight) claimed(need uint64) uint64 {
	for _, holds := range w.holds {
		if holds > 0 && need/holds > mostClaimed {
			need = holds * mostClaimed
		}
	}
	return need
}

// raise raises b to what strips or parts ask for that are worth so much.
func (w *DualWeight) raise(b Bound, need uint64) Bound {
	s := w.s
	need = w.claimed(need)
	sheets, bought := s.sheets(&w.weighing, need, s.stock), s.bought(&w.weighing, need, s.stock)
	coins := max(s.cost(&w.weighing, need, s.stock), s.cheapest(sheets, s.stock))
	if i := slices.IndexFunc(s.byPrice, func(kind int) bool { return !s.job.kinds[kind].limited }); i >= 0 {
		coins = max(coins, int64(bought)*s.job.kinds[s.byPrice[i]].price)
	}
	cost := s.job.money(coins)
	if b.Sheets < sheets || b.Bought < bought || b.Cost.Less(cost) {
		b.How = w.how
	}
	b.Sheets, b.Bought = max(b.Sheets, sheets), max(b.Bought, bought)
	if b.Cost.Less(cost) {
		b.Cost = cost
	}
	return b
}

// stripper holds strips and stock in marks, a kerf added to all but the strips' widths.
type stripper struct {
	supply
	stock                    []int // sheets of each kind
	widths, heights, tallest []int64
	wide, tall               []int64 // of the stock, squared up
	longest                  int64   // of tall
	sizes                    []int64 // the different tallest, falling
}

// newStripper puts the strips that ask for something on whole numbers; nil if there are none.
func newStripper(p Problem, strips []Strip) (*stripper, error) {
	p.Parts = nil
	if err := p.Validate(); err != nil {
		return nil, err
	}
	for _, x := range strips {
		if x.Width.Sign() > 0 && x.Tallest.Sign() > 0 {
			high := fraction.Max(x.Height, x.Tallest)
			p.Parts = append(p.Parts, Part{Width: x.Width, Height: x.Tallest}, Part{Width: x.Width, Height: high})
		}
	}
	if len(p.Parts) == 0 {
		return nil, nil
	}
	j, err := newJob(&p)
	if err != nil {
		return nil, err
	}
	s := &stripper{}
	for i := 0; i < len(j.pieces); i += 2 {
		s.widths = append(s.widths, j.pieces[i].w)
		s.tallest = append(s.tallest, j.pieces[i].h+j.kerf)
		s.heights = append(s.heights, j.pieces[i+1].h+j.kerf)
	}
	s.sizes = falling(slices.Clone(s.tallest))
	var kinds []int
	for i, k := range j.kinds {
		kinds = append(kinds, i)
		s.wide, s.tall = append(s.wide, k.w+j.kerf), append(s.tall, max(0, k.h)+j.kerf)
		s.longest = max(s.longest, s.tall[i])
		if s.stock = append(s.stock, math.MaxInt32); k.limited {
			s.stock[i] = min(*p.Stock[i].Count, math.MaxInt32)
		}
	}
	s.supply = j.supply(kinds)
	return s, nil
}

// whole returns x in marks, rounded down.
func (s *stripper) whole(x fraction.Length) int64 {
	n, _ := x.Mul(s.job.den).DivMod(fraction.Inches(1))
	return n
}

// need adds up values over the strips' widths.
func (s *stripper) need(values []int64) (need uint64) {
	for i, w := range s.widths {
		need += uint64(w) * uint64(values[i])
	}
	return need
}

// weights returns the area and dual feasible functions for heights of the given sizes, which fall,
// with what they allow on an upright line through each kind of stock.
func (s *stripper) weights(sizes []int64, area, heights Argument) []DualWeight {
	all := []DualWeight{s.weight(area, s.tall, sizes, sizes)}
	counts := make([]int, len(sizes))
	for i, size := range sizes {
		counts[i] = int(s.longest/size) + 1 // a strip can be parted so often
	}
	stacks := stacksOf(sizes, s.tall)
	duals := line.Duals(s.longest, sizes, counts)
	if d, ok := line.BestDual(s.longest, sizes, s.amounts(sizes)); ok {
		duals = append(duals, d)
	}
	for _, d := range duals {
		all = append(all, s.dual(d, heights, sizes, stacks))
	}
	return all
}

// dual returns the dual weight of a function of heights.
func (s *stripper) dual(d line.Dual, how Argument, sizes []int64, stacks [][][]layer) DualWeight {
	values := make([]int64, len(sizes))
	for i, size := range sizes {
		values[i] = d.At(size)
	}
	most := mostOf(values, stacks, d.Most)
	for i, all := range stacks {
		if all == nil && s.tall[i] < s.longest { // what the function allows is for the longest
			most[i] = mostIn(values, sizes, s.tall[i], d.Most)
		}
	}
	return s.weight(how, most, sizes, values)
}

// weight returns the dual weight of parts of the given sizes.
func (s *stripper) weight(how Argument, most, sizes, each []int64) DualWeight {
	w := DualWeight{weighing: s.times(how, s.wide, most), Measure: Measure{Extra: s.job.p.Saw.Kerf}, s: s, most: most, sizes: sizes, each: each}
	values := make([]int64, len(s.tallest))
	for i, height := range s.tallest {
		values[i] = w.at(height)
	}
	w.need = s.need(values)
	return w
}

// times returns the weighing of sheets that hold most on every upright line through their width.
func (s *stripper) times(how Argument, wide, most []int64) weighing {
	holds := make([]uint64, len(most))
	for k := range most {
		var over uint64
		if over, holds[k] = bits.Mul64(uint64(wide[k]), uint64(most[k])); over > 0 {
			return s.weighing(how, make([]uint64, len(most))) // too large to say anything
		}
	}
	return s.weighing(how, holds)
}

// layer is how many pieces of one size a stack has.
type layer struct {
	size  int
	count int64
}

// stacksOf returns for each capacity every choice of sizes that fits it and takes no more, or nil
// where there are too many to go through.
func stacksOf(sizes, capacities []int64) (stacks [][][]layer) {
	const mostStacks = 500
	var all [][]layer
	var stack []layer
	var fill func(k int, room int64)
	fill = func(k int, room int64) {
		if k == len(sizes) || room < sizes[len(sizes)-1] {
			all = append(all, slices.Clone(stack))
			return
		}
		rest := len(stack)
		for n := room / sizes[k]; n >= 0 && len(all) <= mostStacks; n-- {
			if n > 0 {
				stack = append(stack, layer{k, n})
			}
			fill(k+1, room-n*sizes[k])
			if stack = stack[:rest]; k == len(sizes)-1 {
				return // fewer of the smallest would leave room for more
			}
		}
	}
	for _, capacity := range capacities {
		all = nil
		if fill(0, capacity); len(all) > mostStacks {
			all = nil
		}
		stacks = append(stacks, all)
	}
	return stacks
}

// mostOf returns the most a stack of each capacity is worth: limit at most, and if there are none.
func mostOf(values []int64, stacks [][][]layer, limit int64) []int64 {
	most := make([]int64, len(stacks))
	for i, all := range stacks {
		if all == nil {
			most[i] = limit
		}
		for _, stack := range all {
			var sum int64
			for _, l := range stack {
				sum += l.count * values[l.size]
			}
			most[i] = min(max(most[i], sum), limit)
		}
	}
	return most
}

// mostIn returns a value, at most limit, that no stack of a capacity exceeds, by the recursion of the unbounded knapsack
// (P. C. Gilmore and R. E. Gomory, "The theory and computation of knapsack functions", Operations Research 14, 1966). Sizes and
// capacity are rounded down to one in so many parts of it, which leaves room for more.
func mostIn(values, sizes []int64, capacity, limit int64) int64 {
	const parts = 1024
	part := capacity/parts + 1
	most := make([]int64, capacity/part+1)
	for k, size := range sizes {
		n := size / part
		if n == 0 {
			return limit
		}
		for room := n; size <= capacity && room < int64(len(most)); room++ {
			most[room] = min(max(most[room], most[room-n]+values[k]), limit)
		}
	}
	return slices.Max(most)
}

// amounts returns how wide the strips are in all whose tallest parts are so high; at least 1.
func (s *stripper) amounts(sizes []int64) []int {
	amounts := make([]int, len(sizes))
	for i, size := range sizes {
		amounts[i] = 1
		for k, tallest := range s.tallest {
			if tallest == size {
				amounts[i] += int(s.widths[k])
			}
		}
	}
	return amounts
}
