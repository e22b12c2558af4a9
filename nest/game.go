package nest

import (
	"cmp"
	"math"
	"slices"

	"example.com/groovewright/fraction"
)

// Game is played by a measure of widths, which wants the parts of a layout to count much, against layouts, which want to count
// little; the values of heights stay as they are. It is solved by cutting planes: of the layouts met so far the best measure is
// found, and who plays meets the layout next that counts least by it (J. E. Kelley, "The cutting-plane method for solving
// convex programs", Journal of the Society for Industrial and Applied Mathematics 8, 1960). It proves nothing, but each
// measure that comes of it does.
type Game struct {
	w       DualWeight
	kind    int // of sheets, by which all is counted
	a       *across
	cost    []float64 // what each cell may count at most where all count as one sheet of the kind
	layouts [][]counted
	cuts    packing
	best    []float64 // shares of the cells by which a sheet counts 1
	value   float64   // no measure makes every layout met count more
}

// counted is a part of a layout.
type counted struct {
	from, to int64   // places of the pattern
	value    float64 // of its height, a stack as high as a sheet being 1
}

// A repeat is parted into cellsOfRepeat cells, or as many fewer that there are no more than about mostCells, and where at least
// sharedPhase of the first parts begin or end.
const (
	cellsOfRepeat, mostCells = 32, 128
	sharedPhase              = 2
)

// Game returns the game that is played with these values of heights. The parts are those of some layout: where they begin and
// end is where cells part. It is nil where there is no pattern, or the numbers are too fine.
func (w DualWeight) Game(parts []Part) (game *Game) {
	var fine error
	defer fraction.Catch(&fine)
	kind := w.buys()
	if kind < 0 {
		return nil
	}
	a, ok := w.s.job.across()
	if !ok {
		return nil
	}
	g := &Game{w: w, kind: kind, a: a}
	a.part(g.counted(parts))
	for i, from := range a.bounds[1:] {
		g.cost = append(g.cost, g.costOf(span{a.bounds[i], from}))
	}
	g.cuts.start(g.cost)
	return g
}

// part finds the cells.
func (a *across) part(parts []counted) {
	low, high := a.kinds[0].from, a.kinds[0].to+a.kerf
	for _, k := range a.kinds {
		low, high = min(low, k.from), max(high, k.to+a.kerf)
		a.bounds = append(a.bounds, k.from, k.to+a.kerf)
	}
	cells := max(1, min(cellsOfRepeat, mostCells/((high-low)/a.pitch+1)))
	often := map[int64]int{}
	for i := range cells {
		often[i*a.pitch/cells] = sharedPhase
	}
	for _, q := range parts {
		often[floorMod(q.from, a.pitch)]++
		often[floorMod(q.to+a.kerf, a.pitch)]++
		if a.turns {
			often[floorMod(a.axes-q.to, a.pitch)]++
			often[floorMod(a.axes-q.from+a.kerf, a.pitch)]++
		}
	}
	for phase, times := range often {
		for x := phase; x < high && times >= sharedPhase; x += a.pitch {
			if low < x {
				a.bounds = append(a.bounds, x)
			}
		}
	}
	slices.Sort(a.bounds)
	a.bounds = slices.Compact(a.bounds)
}

// costOf returns what a cell takes of a sheet of the kind that g counts by: the most that it takes of any kind, for its price.
func (g *Game) costOf(cell span) (most float64) {
	one := g.w.s.job.kinds[g.kind].price
	for k, s := range g.a.kinds {
		if s.from > cell.from || cell.to > s.to+g.a.kerf {
			continue
		}
		cost := float64(g.w.most[k]) / float64(g.w.most[g.kind])
		if price := g.w.s.job.kinds[k].price; one > 0 && price > 0 {
			cost = float64(cost * float64(one) / float64(price))
		}
		most = max(most, cost)
	}
	if most == 0 {
		return 1 // between sheets: nothing lies there
	}
	return most
}

// counted returns the parts of a layout as the game sees them.
func (g *Game) counted(parts []Part) (l []counted) {
	for _, p := range parts {
		from := floorMod(placeOf(p.LeftPhase), g.a.pitch)
		l = append(l, counted{from, from + placeOf(p.Width), float64(g.w.Of(p.Height)) / float64(g.w.most[g.kind])})
	}
	return l
}

// together returns parts with those that lie alike as one.
func together(parts []counted) (l []counted) {
	at := map[span]int{}
	for _, q := range parts {
		i, known := at[span{q.from, q.to}]
		if !known {
			i = len(l)
			at[span{q.from, q.to}], l = i, append(l, counted{q.from, q.to, 0})
		}
		l[i].value += q.value
	}
	return l
}

// Meet adds the parts of a layout; one whose numbers are too fine does not count.
func (g *Game) Meet(parts []Part) {
	var fine error
	defer fraction.Catch(&fine)
	g.layouts = append(g.layouts, together(g.counted(parts)))
}

// Value returns about the most that any measure says of all layouts met, in terms of [DualWeight.Relaxed].
func (g *Game) Value() float64 { return g.w.priced(g.value, g.kind) }

// measured returns the dual weight by whose measure each cell counts its share, 0 or more, of what all do; one is above 0.
func (g *Game) measured(shares []float64) DualWeight {
	return g.w.measured(Measure{Extra: g.w.s.job.p.Saw.Kerf, potentials: g.a.scaledUp(shares)})
}

// How cuts are made: next to where the best measure so far is rather than where the cuts allow most (W. Ben-Ameur and J. Neto,
// "Acceleration of cutting-plane and column generation algorithms", Networks 49, 2007), from few layouts at once, so often
// at most.
const (
	nearBest   = 0.8
	cutsAtOnce = 4
	mostRounds = 25
)

// Best returns a dual weight by which each layout met counts as much as by any, but for a part of at most slack; less in
// numbers that do not settle.
func (g *Game) Best(slack float64) DualWeight {
	if g.best == nil {
		for i, from := range g.a.bounds[1:] {
			g.best = append(g.best, float64(from-g.a.bounds[i]))
		}
		g.normalize(g.best)
	}
	_, least := g.answers(g.best)
	near, far, between := nearBest, make([]float64, len(g.best)), make([]float64, len(g.best))
	for range mostRounds {
		g.value = math.Inf(1)
		if copy(far, g.cuts.prices); g.normalize(far) {
			g.value = g.cuts.value()
		} else {
			copy(far, g.best)
		}
		if least >= float64(g.value*(1-slack)) {
			break
		}
		for i, b := range g.best {
			between[i] = float64(near*b) + float64((1-near)*far[i])
		}
		answers, count := g.answers(between)
		if count > least {
			least = count
			copy(g.best, between)
		}
		before := len(g.cuts.columns)
		for _, x := range answers {
			if len(g.cuts.columns) < before+cutsAtOnce && dot(x.cells, far) < float64(g.value*(1-slack/2)) {
				g.cuts.columns = append(g.cuts.columns, x.cells)
			}
		}
		switch {
		case len(g.cuts.columns) > before:
			g.cuts.optimize()
			near = nearBest
		case near == 0:
			return g.measured(g.best)
		default:
			near = 0 // the cuts do not reach as far
		}
	}
	return g.measured(g.best)
}

// normalize makes a sheet count 1; false where nothing counts.
func (g *Game) normalize(shares []float64) bool {
	all := dot(shares, g.cost)
	if all <= 0 {
		return false
	}
	for i := range shares {
		shares[i] /= all
	}
	return true
}

// answer is how a layout counts least.
type answer struct {
	count float64
	cells []float64 // how often each cell counts
}

// answers returns those of the layouts met, the least first, and its count.
func (g *Game) answers(shares []float64) (all []answer, least float64) {
	upTo := make([]float64, len(shares)+1)
	for i, s := range shares {
		upTo[i+1] = upTo[i] + s
	}
	for _, l := range g.layouts {
		all = append(all, g.a.answer(l, upTo))
	}
	slices.SortStableFunc(all, func(a, b answer) int { return cmp.Compare(a.count, b.count) })
	if len(all) == 0 {
		return nil, math.Inf(1)
	}
	return all, all[0].count
}

// answer puts each part of a layout where it counts least; what no sheet gives counts everywhere.
func (a *across) answer(l []counted, upTo []float64) answer {
	x := answer{cells: make([]float64, len(upTo)-1)}
	at := func(place int64) float64 {
		i, exact := slices.BinarySearch(a.bounds, place)
		if exact {
			return upTo[i]
		}
		return upTo[i-1] + float64((upTo[i]-upTo[i-1])*a.within(i-1, span{a.bounds[i-1], place}))
	}
	for _, q := range l {
		least, there := upTo[len(upTo)-1], span{a.bounds[0], a.bounds[len(a.bounds)-1]}
		a.each(q.from, q.to, func(from int64) {
			s := span{from, from + q.to - q.from + a.kerf}
			if count := at(s.to) - at(s.from); count < least {
				least, there = count, s
			}
		})
		x.count += float64(least * q.value)
		first, exact := slices.BinarySearch(a.bounds, there.from)
		if !exact {
			first--
		}
		for i := first; i < len(x.cells) && a.bounds[i] < there.to; i++ {
			x.cells[i] += float64(q.value * a.within(i, there))
		}
	}
	return x
}

// within returns how much of a cell lies in a span, 1 being all.
func (a *across) within(cell int, s span) float64 {
	from, to := a.bounds[cell], a.bounds[cell+1]
	return float64(min(to, s.to)-max(from, s.from)) / float64(to-from)
}

// dot returns the sum of products.
func dot(a, b []float64) (sum float64) {
	for i, x := range a {
		sum += float64(x * b[i])
	}
	return sum
}
