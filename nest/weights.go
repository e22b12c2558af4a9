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
	kinds   []int // usable kinds of stock
	all     []weighing
	each    []tally // of one piece, by group
	whole   []tally // of one sheet, by kind of stock
	price   []int64 // by kind of stock
	byPrice []int   // kinds, the cheapest first
	limited []bool  // by kind of stock
	relax   relaxed
	learned bool // the last of all was learned
}

// weighing is one of the weights.
type weighing struct {
	how   string
	large []int // kinds by what a sheet holds, falling
	cheap []int // kinds of which a sheet holds any, by price for what it holds, rising
}

// mostWeights is how many weights the search uses: the best pairs of functions,
// the area first, and one that is learned.
const mostWeights = 12

// tally is a sum of each weight.
type tally [mostWeights]uint64

func (t tally) plus(u tally) tally {
	for i := range t {
		t[i] += u[i]
	}
	return t
}

func (t tally) times(n int) tally {
	for i := range t {
		t[i] *= uint64(n)
	}
	return t
}

func (t *tally) within(u *tally) bool {
	for i := range t {
		if t[i] > u[i] {
			return false
		}
	}
	return true
}

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
		w.limited = append(w.limited, k.limited)
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
	w.each, w.whole = make([]tally, len(groups)), make([]tally, len(j.kinds))
	for i, p := range pairs[:min(len(pairs), mostWeights-1)] {
		each, whole := make([]uint64, len(groups)), make([]uint64, len(j.kinds))
		for n, g := range groups {
			each[n] = uint64(p.across.size[g.start]) * uint64(p.along.size[g.start])
		}
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

// add adds a weighing: by group what a piece weighs, by kind what a sheet holds.
func (w *weights) add(how string, each, whole []uint64) {
	i := len(w.all)
	for g := range each {
		w.each[g][i] = each[g]
	}
	for kind := range whole {
		w.whole[kind][i] = whole[kind]
	}
	g := weighing{how: how, large: slices.Clone(w.kinds), cheap: slices.Clone(w.kinds)}
	slices.SortStableFunc(g.large, func(a, b int) int { return cmp.Compare(whole[b], whole[a]) })
	g.cheap = slices.DeleteFunc(g.cheap, func(kind int) bool { return whole[kind] == 0 })
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

// bound returns a merit that no nest of pieces with that tally from the stock can
// better.
func (w *weights) bound(total *tally, stock []int) (m merit) {
	for i := range w.all {
		m.sheets = max(m.sheets, w.sheets(i, total[i], stock))
	}
	if len(w.kinds) == 1 && !w.limited[w.kinds[0]] {
		return merit{cost: int64(m.sheets) * w.price[w.kinds[0]], bought: m.sheets, sheets: m.sheets}
	}
	for i := range w.all {
		m.cost = max(m.cost, w.cost(i, total[i], stock))
		m.bought = max(m.bought, w.bought(i, total[i], stock))
	}
	m.cost = max(m.cost, w.cheapest(m.sheets, stock))
	return m
}

// sheets returns the least number of sheets that hold the weight, of those in
// stock; if they do not, the number of all.
func (w *weights) sheets(i int, total uint64, stock []int) (n int) {
	for _, kind := range w.all[i].large {
		whole := w.whole[kind][i]
		if whole == 0 || total == 0 {
			break
		}
		take := min((total+whole-1)/whole, uint64(stock[kind]))
		n += int(take)
		total -= min(total, take*whole)
	}
	return n
}

// cost returns the least money for which sheets in stock hold the weight, sheets
// taken by the fraction.
func (w *weights) cost(i int, total uint64, stock []int) (cost int64) {
	for _, kind := range w.all[i].cheap {
		whole := w.whole[kind][i]
		if total == 0 {
			break
		}
		take := min(total/whole, uint64(stock[kind]))
		cost += int64(take) * w.price[kind]
		total -= take * whole
		if take < uint64(stock[kind]) {
			return cost + scaled(w.price[kind], total, whole)
		}
	}
	return cost
}

// bought returns how many sheets must be bought if all limited ones are used.
func (w *weights) bought(i int, total uint64, stock []int) int {
	var most uint64
	for _, kind := range w.all[i].large {
		whole := w.whole[kind][i]
		if w.limited[kind] {
			total -= min(total, uint64(stock[kind])*whole)
		} else {
			most = max(most, whole)
		}
	}
	if most == 0 {
		return 0
	}
	return int((total + most - 1) / most)
}

// cheapest returns what that many sheets in stock cost at least.
func (w *weights) cheapest(sheets int, stock []int) (cost int64) {
	for _, kind := range w.byPrice {
		n := min(sheets, stock[kind])
		cost += int64(n) * w.price[kind]
		sheets -= n
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
