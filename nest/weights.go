package nest

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// supply is the stock as bounds see it. Each bound is of one form: pieces have weights, and the sum
// of them that a sheet of each kind can hold is known.
type supply struct {
	job     *job
	kinds   []int // usable kinds of stock
	byPrice []int // kinds, the cheapest first
	unit    int64 // every sum of prices is a multiple
}

func (j *job) supply(kinds []int) supply {
	s := supply{job: j, kinds: kinds, byPrice: slices.Clone(kinds)}
	for _, kind := range kinds {
		s.unit = gcd(s.unit, s.job.kinds[kind].price)
	}
	s.unit = max(1, s.unit)
	slices.SortStableFunc(s.byPrice, func(a, b int) int { return cmp.Compare(s.job.kinds[a].price, s.job.kinds[b].price) })
	return s
}

// weighing is what a sheet of each kind holds of one set of weights.
type weighing struct {
	how   Argument
	holds []uint64 // by kind
	large []int    // kinds by what a sheet holds, falling
	cheap []int    // kinds whose sheets hold any, by price for what they hold, rising
}

func (s *supply) weighing(how Argument, holds []uint64) weighing {
	g := weighing{how: how, holds: holds, large: slices.Clone(s.kinds)}
	slices.SortStableFunc(g.large, func(a, b int) int { return cmp.Compare(holds[b], holds[a]) })
	g.cheap = slices.DeleteFunc(slices.Clone(s.kinds), func(kind int) bool { return holds[kind] == 0 })
	slices.SortStableFunc(g.cheap, func(a, b int) int {
		return compareProducts(uint64(s.job.kinds[a].price), holds[b], uint64(s.job.kinds[b].price), holds[a])
	})
	return g
}

// sheets returns how many sheets in stock hold the weight at least; all of them if they do not.
func (s *supply) sheets(g *weighing, total uint64, stock []int) (n int) {
	for _, kind := range g.large {
		if holds := g.holds[kind]; holds > 0 {
			take := min((total+holds-1)/holds, uint64(stock[kind]))
			n += int(take)
			total -= min(total, take*holds)
		}
	}
	return n
}

// cost returns the least money for which sheets in stock, or fractions of them, hold the weight.
func (s *supply) cost(g *weighing, total uint64, stock []int) (cost int64) {
	for _, kind := range g.cheap {
		if total == 0 {
			break
		}
		take := min(total/g.holds[kind], uint64(stock[kind]))
		cost += int64(take) * s.job.kinds[kind].price
		total -= take * g.holds[kind]
		if take < uint64(stock[kind]) {
			return cost + scaled(s.job.kinds[kind].price, total, g.holds[kind])
		}
	}
	return cost
}

// bought returns how many sheets must be bought if all limited ones are used.
func (s *supply) bought(g *weighing, total uint64, stock []int) int {
	var most uint64
	for _, kind := range g.large {
		switch holds := g.holds[kind]; {
		case !s.job.kinds[kind].limited:
			most = max(most, holds)
		case holds > 0 && total/holds < uint64(stock[kind]):
			total = 0
		default:
			total -= uint64(stock[kind]) * holds
		}
	}
	if most == 0 {
		return 0
	}
	return int((total + most - 1) / most)
}

// leastSteps is the effort that least may take.
const leastSteps = 10_000

// least returns the least money, then the fewest bought sheets, then the fewest sheets in all, for
// which whole sheets in stock hold the weight; false if none do or that takes too many steps.
func (s *supply) least(g *weighing, total uint64, stock []int) (need [3]int64, ok bool) {
	need[0] = math.MaxInt64
	steps := 0
	var take func(cheap []int, total uint64, so [3]int64)
	take = func(cheap []int, total uint64, so [3]int64) {
		if total == 0 && slices.Compare(so[:], need[:]) < 0 {
			need = so
		}
		if steps++; steps > leastSteps || total == 0 || len(cheap) == 0 {
			return
		}
		lower := so
		lower[0] += s.cost(&weighing{holds: g.holds, cheap: cheap}, total, stock)
		if slices.Compare(lower[:], need[:]) >= 0 {
			return
		}
		kind, fewest := &s.job.kinds[cheap[0]], int64(0)
		holds := g.holds[cheap[0]]
		most := int64(min((total+holds-1)/holds, uint64(stock[cheap[0]])))
		if len(cheap) == 1 {
			fewest = most
		}
		for n := most; n >= fewest; n-- {
			with := [3]int64{so[0] + n*kind.price, so[1], so[2] + n}
			if !kind.limited {
				with[1] += n
			}
			take(cheap[1:], total-min(total, uint64(n)*holds), with)
		}
	}
	take(g.cheap, total, [3]int64{})
	return need, need[0] < math.MaxInt64 && steps <= leastSteps
}

// cheapest returns what that many sheets in stock cost at least.
func (s *supply) cheapest(sheets int, stock []int) (cost int64) {
	for _, kind := range s.byPrice {
		n := min(sheets, stock[kind])
		cost += int64(n) * s.job.kinds[kind].price
		sheets -= n
	}
	return cost
}

// compareProducts compares a × b with c × d without overflow.
func compareProducts(a, b, c, d uint64) int {
	h1, l1 := bits.Mul64(a, b)
	h2, l2 := bits.Mul64(c, d)
	return cmp.Or(cmp.Compare(h1, h2), cmp.Compare(l1, l2))
}

// scaled returns ceil(x × part / whole), for part <= whole.
func scaled(x int64, part, whole uint64) int64 {
	hi, lo := bits.Mul64(uint64(x), part)
	q, rest := bits.Div64(hi, lo, whole)
	return int64(q + min(rest, 1))
}

// weights are the weighings of the exact search: they bound the rest of a job, and show without a
// closer look that a set cannot be cut from one sheet.
type weights struct {
	supply
	all       []weighing
	each      []tally // of one piece, by group
	whole     []tally // of one sheet, by kind of stock
	generated bool    // the last of all is from column generation
}

// mostWeights is how many weights the search uses: the area, the best pairs of functions, and one
// from column generation. mostWhole bounds what a sheet holds: the most that 128 of them hold, or one
// for each piece, has to fit 64 bits.
const mostWeights, mostPaired, mostWhole = 12, mostWeights - 2, 1 << 54

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

// newWeights returns the area and the pairs of dual feasible functions that bound the whole job
// best. The pieces are numbered as the groups number them.
func newWeights(j *job, groups []group, relax *relaxed) *weights {
	w := &weights{supply: j.supply(relax.kinds), each: make([]tally, len(groups)), whole: make([]tally, len(j.kinds))}
	at := make([]int, len(groups)) // of the group's first piece in relax
	area := make([]uint64, len(groups))
	for g := range groups {
		at[g], _ = slices.BinarySearch(relax.pieces, groups[g].pieces[0])
		area[g] = uint64(relax.pace[at[g]] * relax.height[at[g]])
	}
	w.add(PartArea, area, relax.areas(len(j.kinds)))
	stacks := make([][][]layer, len(w.kinds)) // a function made for the one kind there is needs none
	if len(stacks) > 1 {
		stacks = stacksOf(relax.highs.sizes, relax.tall)
	}
	for _, p := range relax.pairs {
		each, holds := make([]uint64, len(groups)), make([]uint64, len(j.kinds))
		for g, n := range at {
			each[g] = uint64(p.across.size[relax.paces.number[n]]) * uint64(p.along.size[relax.highs.number[n]])
		}
		for n, most := range mostOf(p.along.size, stacks, p.along.whole) {
			holds[w.kinds[n]] = uint64(p.across.whole) * uint64(most)
		}
		w.add(DualFunctions, each, holds)
	}
	return w
}

// add adds a weighing: by group what a piece weighs, by kind what a sheet holds.
func (w *weights) add(how Argument, each, holds []uint64) {
	i := len(w.all)
	for g := range each {
		w.each[g][i] = each[g]
	}
	for kind := range holds {
		w.whole[kind][i] = holds[kind]
	}
	w.all = append(w.all, w.weighing(how, holds))
}

// atLeast returns the bound on the whole job, and which weights give it.
func (w *weights) atLeast(groups []group) (sheets int, coins int64, how Argument) {
	var total tally
	for i := range groups {
		total = total.plus(w.each[i].times(len(groups[i].pieces)))
	}
	stock := w.job.spare(nil)
	for i := range w.all {
		if n := w.sheets(&w.all[i], total[i], stock); n > sheets {
			sheets, how = n, w.all[i].how
		}
	}
	return sheets, w.bound(&total, stock).cost, how
}

// bound returns an objective that no nest of pieces with that tally from the stock can better.
func (w *weights) bound(total *tally, stock []int) (m objective) {
	for i := range w.all {
		m.sheets = max(m.sheets, w.sheets(&w.all[i], total[i], stock))
	}
	if only := &w.job.kinds[w.kinds[0]]; len(w.kinds) == 1 && !only.limited {
		return objective{cost: int64(m.sheets) * only.price, bought: m.sheets, sheets: m.sheets}
	}
	for i := range w.all {
		m.cost = max(m.cost, w.cost(&w.all[i], total[i], stock))
		m.bought = max(m.bought, w.bought(&w.all[i], total[i], stock))
	}
	m.cost = max(m.cost, w.cheapest(m.sheets, stock))
	m.cost = (m.cost + w.unit - 1) / w.unit * w.unit
	return m
}
