package nest

import (
	"iter"
	"math/big"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
	oneway "example.com/groovewright/nest/internal/line"
)

// Strip is an upright strip that has to be covered by parts, wherever they are
// cut across its width: Width wide, of Height in all, of which one part is
// Tallest high.
type Strip struct {
	Width, Height, Tallest fraction.Length
}

// Least is what no nest can do with less of, however the strips are parted.
type Least struct {
	Cost   fraction.Ratio // money
	Bought int            // sheets of stock that is not limited
	Sheets int            // sheets in all
	How    string
}

// LowerStrips returns a lower bound for every way to part the strips into parts
// with a gap of at most one kerf between neighbours, and every way to nest
// those, notches used or not.
//
// Let f be a dual feasible function of heights. On any upright line through a
// sheet the parts met, each with a kerf above it, add up to no more than the
// sheet's length and a kerf, so their values under f to no more than f allows
// for it. Each part, with a kerf to its right, covers at least its own width of
// the strips with its gap; so the strips' widths times the values of their
// heights, added up, are at most the sheets' widths (each with a kerf) times
// what f allows. With f the height itself, that is the area bound.
//
// Where the gap is wider than the kerf, only "one sheet, if there is anything
// to cut" is claimed.
func LowerStrips(p Problem, gap fraction.Length, strips []Strip) (l Least, err error) {
	defer fraction.Catch(&err)
	p.Parts = nil
	if err := p.Validate(); err != nil {
		return Least{}, err
	}
	strips = usable(strips)
	if len(strips) == 0 {
		return Least{How: "nothing to cut"}, nil
	}
	l = Least{Sheets: 1, How: "there is something to cut"}
	if p.Saw.Kerf.Less(gap) {
		return l, nil
	}
	s := newStripper(&p, strips)
	s.bound(&l, "area of the walls with kerfs", s.need(s.heights), s.tall)
	for d, most := range s.duals(s.sizes) {
		values := make([]int64, len(s.tallest))
		for i, h := range s.tallest {
			values[i] = d.At(h)
		}
		s.bound(&l, "heights of the walls "+under(d), s.need(values), most)
	}
	return l, nil
}

// under names a dual feasible function for Least.How.
func under(d oneway.Dual) string {
	return "under a dual feasible function (" + strings.Fields(d.String())[0] + ")"
}

// duals yields dual feasible functions for heights of the given sizes, which fall,
// with what they allow on an upright line through each kind of stock.
func (s *stripper) duals(sizes []int64) iter.Seq2[oneway.Dual, []int64] {
	return func(yield func(oneway.Dual, []int64) bool) {
		counts := make([]int, len(sizes))
		for i, size := range sizes {
			counts[i] = int(s.longest()/size) + 1 // a strip can be parted so often
		}
		stacks := make([][][]int, len(s.tall))
		for k, tall := range s.tall {
			stacks[k] = stacksOf(sizes, tall)
		}
		for _, d := range oneway.Duals(s.longest(), sizes, counts) {
			most := make([]int64, len(s.tall))
			for k := range s.tall {
				most[k] = mostIn(d, sizes, stacks[k])
			}
			if !yield(d, most) {
				return
			}
		}
	}
}

// need adds up the values of the strips' heights over their widths.
func (s *stripper) need(values []int64) *big.Int {
	need := new(big.Int)
	for i, w := range s.widths {
		need.Add(need, product(w, values[i]))
	}
	return need
}

// usable returns the strips of which there is anything to cut.
func usable(strips []Strip) []Strip {
	return slices.DeleteFunc(slices.Clone(strips), func(s Strip) bool { return s.Width.Sign() <= 0 || s.Tallest.Sign() <= 0 })
}

// stripper holds strips and stock in whole steps of 1/steps in.
type stripper struct {
	p       *Problem
	steps   int64
	widths  []int64 // of the strips
	heights []int64 // of the strips, a kerf added
	tallest []int64 // a kerf added
	sizes   []int64 // the different tallest, falling
	wide    []int64 // of the stock, a kerf added
	tall    []int64 // of the stock after squaring, a kerf added
}

func newStripper(p *Problem, strips []Strip) *stripper {
	s := &stripper{p: p, steps: 1}
	all := []fraction.Length{p.Saw.Kerf, p.Saw.SquareUp}
	for _, k := range p.Stock {
		all = append(all, k.Width, k.Length)
	}
	for _, x := range strips {
		all = append(all, x.Width, x.Height, x.Tallest)
	}
	for _, x := range all {
		a, b := s.steps, x.Den()
		for b != 0 {
			a, b = b, a%b
		}
		s.steps = fraction.Inches(s.steps / a).Mul(x.Den()).Num()
	}
	scaled := func(x fraction.Length) int64 { return x.Mul(s.steps).Num() }
	kerf := scaled(p.Saw.Kerf)
	for _, k := range p.Stock {
		s.wide = append(s.wide, scaled(k.Width)+kerf)
		s.tall = append(s.tall, scaled(k.Usable(p.Saw))+kerf)
	}
	for _, x := range strips {
		s.widths = append(s.widths, scaled(x.Width))
		s.heights = append(s.heights, scaled(x.Height)+kerf)
		s.tallest = append(s.tallest, scaled(x.Tallest)+kerf)
	}
	s.sizes = falling(slices.Clone(s.tallest))
	return s
}

// falling sorts sizes from the largest down and leaves each but once.
func falling(sizes []int64) []int64 {
	slices.Sort(sizes)
	slices.Reverse(sizes)
	return slices.Compact(sizes)
}

// stepsIn returns x in whole steps, rounded down.
func (s *stripper) stepsIn(x fraction.Length) int64 {
	n, _ := x.Mul(s.steps).DivMod(fraction.Inches(1))
	return n
}

func (s *stripper) longest() int64 { return slices.Max(s.tall) }

// stacksOf returns every choice of sizes, as counts, that fits capacity and takes
// no more, or nil where there are too many to go through.
func stacksOf(sizes []int64, capacity int64) (all [][]int) {
	const mostStacks = 500
	counts := make([]int, len(sizes))
	var fill func(k int, room int64)
	fill = func(k int, room int64) {
		if k == len(sizes) {
			if len(sizes) > 0 && room < sizes[k-1] && len(all) <= mostStacks {
				all = append(all, slices.Clone(counts))
			}
			return
		}
		for n := int(room / sizes[k]); n >= 0 && len(all) <= mostStacks; n-- {
			counts[k] = n
			fill(k+1, room-int64(n)*sizes[k])
		}
		counts[k] = 0
	}
	if fill(0, capacity); len(all) > mostStacks {
		return nil
	}
	return all
}

// mostIn returns the most that one of the stacks is worth under d.
func mostIn(d oneway.Dual, sizes []int64, stacks [][]int) int64 {
	if stacks == nil {
		return d.Most
	}
	worth := make([]int64, len(sizes))
	for k, size := range sizes {
		worth[k] = d.At(size)
	}
	var most int64
	for _, counts := range stacks {
		var sum int64
		for k, n := range counts {
			sum += int64(n) * worth[k]
		}
		most = max(most, sum)
	}
	return min(most, d.Most)
}

// bound raises l to what the need asks for, where a sheet of kind k allows
// most[k] on every upright line. The products outgrow 64 bits, so math/big holds
// them.
func (s *stripper) bound(l *Least, how string, need *big.Int, most []int64) {
	holds := make([]*big.Int, len(s.p.Stock))
	var order []int
	for k := range s.p.Stock {
		holds[k] = product(s.wide[k], most[k])
		if holds[k].Sign() > 0 {
			order = append(order, k)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return holds[b].Cmp(holds[a]) })
	left := new(big.Int).Set(need) // after all limited stock
	best := new(big.Int)
	var perMoney *big.Rat // money for one unit of need, at the best rate
	for _, k := range order {
		stock := &s.p.Stock[k]
		if stock.limited() {
			left.Sub(left, new(big.Int).Mul(holds[k], big.NewInt(int64(*stock.Count))))
			continue
		}
		if best.Cmp(holds[k]) < 0 {
			best = holds[k]
		}
		rate := new(big.Rat).Quo(stock.price().Rat(), new(big.Rat).SetInt(holds[k]))
		if perMoney == nil || rate.Cmp(perMoney) < 0 {
			perMoney = rate
		}
	}
	sheets, bought, cost := s.fill(need, holds, order), 0, fraction.Ratio{}
	if left.Sign() > 0 && best.Sign() > 0 {
		bought = ceilQuotient(left, best)
		// Money in whole hundredths, rounded down, so that the bound holds.
		hundredths := new(big.Rat).Mul(perMoney, new(big.Rat).SetInt(left))
		hundredths.Mul(hundredths, big.NewRat(100, 1))
		cost = fraction.NewRatio(new(big.Int).Quo(hundredths.Num(), hundredths.Denom()).Int64(), 100)
		if price, one := s.onePrice(); one {
			cost = price.Mul(fraction.NewRatio(int64(bought), 1))
		}
	}
	if l.Sheets < sheets || l.Bought < bought || l.Cost.Less(cost) {
		l.How = how
	}
	l.Sheets, l.Bought = max(l.Sheets, sheets), max(l.Bought, bought)
	if l.Cost.Less(cost) {
		l.Cost = cost
	}
}

func product(a, b int64) *big.Int { return new(big.Int).Mul(big.NewInt(a), big.NewInt(b)) }

// ceilQuotient returns a / b rounded up, for a and b above 0. Walls and sheets
// are bounded so that it is a small number.
func ceilQuotient(a, b *big.Int) int {
	q, r := new(big.Int).QuoRem(a, b, new(big.Int))
	if r.Sign() > 0 {
		q.Add(q, big.NewInt(1))
	}
	return int(q.Int64())
}

// fill returns how many sheets, those that hold most first, hold the need.
func (s *stripper) fill(need *big.Int, holds []*big.Int, order []int) int {
	sheets := 0
	need = new(big.Int).Set(need)
	for _, k := range order {
		if need.Sign() <= 0 {
			break
		}
		count := ceilQuotient(need, holds[k])
		if stock := &s.p.Stock[k]; stock.limited() {
			count = min(count, *stock.Count)
		}
		sheets += count
		need.Sub(need, new(big.Int).Mul(holds[k], big.NewInt(int64(count))))
	}
	return sheets
}

// onePrice returns the price of the unlimited stock if it has but one.
func (s *stripper) onePrice() (price fraction.Ratio, one bool) {
	n := 0
	for _, k := range s.p.Stock {
		if !k.limited() {
			if n > 0 && k.price() != price {
				return price, false
			}
			price = k.price()
			n++
		}
	}
	return price, n > 0
}
