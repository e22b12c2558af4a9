package nest

import (
	"cmp"
	"math/bits"
	"slices"
)

// weights are values of the pieces of which it is known how much one sheet of
// each kind can hold. Each bounds the number of sheets and the money, and tells
// sets that cannot be cut from one sheet without a closer look.
type weights struct {
	kinds   []int      // usable kinds of stock
	all     []weighing // the area first
	price   []int64    // by kind of stock
	byPrice []int      // kinds, the cheapest first
	relax   relaxed
	learned bool // the last of all was learned
}

// weighing is one of the weights.
type weighing struct {
	how   string
	each  []uint64 // by piece number
	whole []uint64 // what a sheet holds, by kind of stock
	large []int    // kinds by whole, falling
	cheap []int    // kinds by price for whole, rising
}

// mostWeights is how many of the best pairs of functions the search uses.
const mostWeights = 32

// mostWhole bounds what a sheet holds, so that sums over a set fit 64 bits.
const mostWhole = 1 << 54

// newWeights returns the pairs of dual feasible functions that bound the whole
// job best. The pieces are numbered as the groups number them.
func newWeights(j *job, groups []group) weights {
	var order []int
	for _, g := range groups {
		order = append(order, g.pieces...)
	}
	w := weights{relax: j.relaxOf(order)}
	w.kinds = w.relax.kinds
	for _, k := range j.kinds {
		w.price = append(w.price, k.price)
	}
	w.byPrice = slices.Clone(w.kinds)
	slices.SortStableFunc(w.byPrice, func(a, b int) int { return cmp.Compare(w.price[a], w.price[b]) })
	type pair struct {
		across, along dual
		permille      int
	}
	var pairs []pair
	across := dualsOf(w.relax.pace, slices.Max(w.relax.span))
	along := dualsOf(w.relax.height, slices.Max(w.relax.tall))
	for _, f := range across {
		for _, g := range along {
			if hi, whole := bits.Mul64(uint64(f.whole), uint64(g.whole)); hi == 0 && whole < mostWhole {
				pairs = append(pairs, pair{f, g, permille(f, g, whole)})
			}
		}
	}
	if len(pairs) > 1 {
		slices.SortStableFunc(pairs[1:], func(a, b pair) int { return cmp.Compare(b.permille, a.permille) })
	}
	for i, p := range pairs[:min(len(pairs), mostWeights)] {
		each := make([]uint64, len(order))
		for n := range each {
			each[n] = uint64(p.across.size[n]) * uint64(p.along.size[n])
		}
		whole := make([]uint64, len(j.kinds))
		for n, kind := range w.kinds {
			whole[kind] = uint64(p.across.whole) * uint64(p.along.whole)
			if i == 0 {
				whole[kind] = uint64(w.relax.span[n]) * uint64(w.relax.tall[n])
			}
		}
		w.add(pairName(p.across, p.along), each, whole)
	}
	return w
}

// add adds a weighing.
func (w *weights) add(how string, each, whole []uint64) {
	g := weighing{how: how, each: each, whole: whole, large: slices.Clone(w.kinds), cheap: slices.Clone(w.kinds)}
	slices.SortStableFunc(g.large, func(a, b int) int { return cmp.Compare(whole[b], whole[a]) })
	slices.SortStableFunc(g.cheap, func(a, b int) int {
		return compareProducts(w.price[a], int64(whole[b]), w.price[b], int64(whole[a]))
	})
	w.all = append(w.all, g)
}

// learn adds a weighing in the place of one that was learned before.
func (w *weights) learn(how string, each, whole []uint64) {
	if w.learned {
		w.all = w.all[:len(w.all)-1]
	}
	w.learned = true
	w.add(how, each, whole)
}

// permille returns the bound of a pair in thousandths of a sheet.
func permille(f, g dual, whole uint64) (total int) {
	for i := range f.size {
		hi, lo := bits.Mul64(uint64(f.size[i])*uint64(g.size[i]), 1000)
		q, _ := bits.Div64(hi, lo, whole)
		total += int(q)
	}
	return total
}

// mayFit reports whether no weight forbids that the set comes from one sheet.
func (w *weights) mayFit(s set, kind int) bool {
	for i := range w.all {
		if w.all[i].of(s) > w.all[i].whole[kind] {
			return false
		}
	}
	return true
}

// of returns the weight of a set.
func (g *weighing) of(s set) (total uint64) {
	for b, word := range s {
		for ; word != 0; word &= word - 1 {
			total += g.each[b*64+bits.TrailingZeros64(word)]
		}
	}
	return total
}

// sheets returns the least number of sheets that hold the weight, of those in
// stock; if they do not, the number of all.
func (g *weighing) sheets(total uint64, stock []int) (n int) {
	for _, kind := range g.large {
		whole := g.whole[kind]
		if whole == 0 {
			break
		}
		take := min((total+whole-1)/whole, uint64(stock[kind]))
		n += int(take)
		if take*whole >= total {
			return n
		}
		total -= take * whole
	}
	return n
}

// cost returns the least money for which sheets in stock hold the weight, sheets
// taken by the fraction.
func (g *weighing) cost(total uint64, stock []int, price []int64) (cost int64) {
	for _, kind := range g.cheap {
		whole := g.whole[kind]
		if whole == 0 {
			break
		}
		take := min(total/whole, uint64(stock[kind]))
		cost += int64(take) * price[kind]
		total -= take * whole
		if total == 0 || take < uint64(stock[kind]) {
			return cost + scaled(price[kind], total, whole)
		}
	}
	return cost
}

// scaled returns ceil(x × part / whole), for part <= whole.
func scaled(x int64, part, whole uint64) int64 {
	hi, lo := bits.Mul64(uint64(x), part)
	q, rest := bits.Div64(hi, lo, whole)
	if rest > 0 {
		q++
	}
	return int64(q)
}

// bound returns a merit that no nest of the pieces from the stock can better.
func (w *weights) bound(s set, stock []int, limited []bool) (m merit) {
	for i := range w.all {
		g := &w.all[i]
		total := g.of(s)
		m.sheets = max(m.sheets, g.sheets(total, stock))
		m.cost = max(m.cost, g.cost(total, stock, w.price))
		if bought := g.bought(total, stock, limited); bought > m.bought {
			m.bought = bought
		}
	}
	m.cost = max(m.cost, w.cheapest(m.sheets, stock))
	return m
}

// cheapest returns what that many sheets in stock cost at least.
func (w *weights) cheapest(sheets int, stock []int) (cost int64) {
	for _, kind := range w.byPrice {
		n := min(sheets, stock[kind])
		cost += int64(n) * w.price[kind]
		if sheets -= n; sheets == 0 {
			break
		}
	}
	return cost
}

// bought returns how many sheets must be bought if all limited ones are used.
func (g *weighing) bought(total uint64, stock []int, limited []bool) int {
	var most uint64
	for _, kind := range g.large {
		if !limited[kind] {
			most = max(most, g.whole[kind])
			continue
		}
		whole := g.whole[kind]
		if take := uint64(stock[kind]); take > 0 && whole > 0 {
			if total <= take*whole {
				return 0
			}
			total -= take * whole
		}
	}
	if most == 0 {
		return 0
	}
	return int((total + most - 1) / most)
}
