package nest

import (
	"context"
	"encoding/binary"
)

// exact is one run of the exact search, which fills one sheet after another. The next sheet is the
// one that holds the first piece not yet cut, so sheets that differ only in their order are met
// once. Of all sets with that piece only those are tried to which no further piece can be added,
// and in which no piece can be replaced by a larger one that serves in its place: moving pieces to
// this sheet changes any other nest into such a one that is no worse. (Bin completion: R. E. Korf,
// "A new algorithm for optimal bin packing", AAAI (2002), after the dominance of S. Martello and P.
// Toth.) A branch ends where its sheets and a bound on the rest are no better than the best nest
// known, or where the same pieces were left over before at no more expense.
type exact struct {
	ctx        context.Context
	job        *job
	groups     []group
	one        *oneSheet
	stockOrder []int     // kinds of stock in the order in which they are tried
	stock      []int     // sheets left of each kind
	least      objective // no nest is better
	weigh      *weights  // bounds on the rest
	larger     [][]int   // groups that would serve in the place of each group

	best         objective
	found        []choice // sheets of the best nest; nil if none was better
	chosen       []choice
	seen         map[string]objective
	nodes        int
	calls        int // of over
	limit        int
	stopped      bool // out of budget, or the context ended
	inconclusive bool // a set was passed over because its check was too long
}

// newExact prepares the search for pieces that some stock can give.
func newExact(ctx context.Context, j *job, groups []group, weigh *weights, least objective) *exact {
	return &exact{
		ctx: ctx, job: j, groups: groups, one: newOneSheet(j, groups), stockOrder: j.stockOrder(), stock: j.spare(nil),
		least: least, weigh: weigh, larger: servesFor(j.pitch, groups),
	}
}

// run searches for a nest better than e.best for a number of nodes more; true if there is surely
// none better than the one it then has.
func (e *exact) run(nodes int) (sure bool) {
	e.limit = e.nodes + nodes
	e.stopped, e.inconclusive, e.seen = false, false, map[string]objective{}
	e.search(setOf(e.groups), objective{left: len(e.job.pieces) - len(e.one.groupOf)})
	return !e.stopped && !e.inconclusive
}

// choice is a sheet and the pieces cut from it.
type choice struct {
	kind int
	set  set
}

// mostSteps bounds the check of one set (9 different parts need less), mostSeen the sets
// remembered.
const mostSteps, mostSeen = 40_000, 1 << 20

// fits reports whether a set with that tally can be cut from a sheet of the kind. When the search
// is over it says no, and the search is not sure of anything.
func (e *exact) fits(s set, in *tally, kind int) bool {
	e.nodes++
	return !e.over() && in.within(&e.weigh.whole[kind]) && e.comesFrom(s, kind)
}

// comesFrom is fits without a look at the weights.
func (e *exact) comesFrom(s set, kind int) bool {
	from := e.one.steps
	e.one.limit, e.one.spent = from+mostSteps, false
	box := e.one.fit(s, &e.job.kinds[kind])
	e.nodes += e.one.steps - from
	if e.one.spent {
		e.inconclusive = true
		return false
	}
	return box >= 0
}

// over reports whether the search has to end, and notes it.
func (e *exact) over() bool {
	e.calls++
	e.stopped = e.stopped || e.nodes > e.limit || e.calls&255 == 0 && e.ctx.Err() != nil
	return e.stopped
}

// search fills sheets with the rest until nothing is left.
func (e *exact) search(rest set, used objective) {
	e.nodes++
	if e.over() || e.best.compare(e.least) <= 0 {
		return
	}
	if rest.empty() {
		if used.compare(e.best) < 0 {
			e.best = used
			e.found = append([]choice{}, e.chosen...)
		}
		return
	}
	total := e.tally(rest)
	if used.plus(e.weigh.bound(&total, e.stock)).compare(e.best) >= 0 {
		return
	}
	key := e.key(rest)
	if before, ok := e.seen[key]; ok && before.compare(used) <= 0 {
		return
	}
	if len(e.seen) < mostSeen {
		e.seen[key] = used
	}
	lead := rest.first()
	g := e.one.groupOf[lead]
	always := false
	for _, kind := range e.stockOrder {
		k := &e.job.kinds[kind]
		if e.stock[kind] == 0 || !e.job.fits(k, &e.groups[g].piece) {
			continue
		}
		always = always || !k.limited
		e.stock[kind]--
		f := filling{exact: e, kind: kind, rest: rest, used: used.plus(k.objective()), lead: g}
		f.extend((set{}).with(lead), g, e.weigh.each[g], tally{})
		e.stock[kind]++
	}
	if !always {
		// It may have to be left out, with all that are like it: one of those that are not could change places with it.
		e.search(rest.minus(e.groups[g].all), used.plus(objective{left: e.groups[g].of(rest)}))
	}
}

// key names what is left: pieces, and sheets of limited stock.
func (e *exact) key(rest set) string {
	b := binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(nil, rest[0]), rest[1])
	for kind, n := range e.stock {
		if e.job.kinds[kind].limited {
			b = binary.LittleEndian.AppendUint16(b, uint16(n))
		}
	}
	return string(b)
}

// tally sums the weights of a set.
func (e *exact) tally(s set) (total tally) {
	for i, g := range e.one.in(s) {
		total = total.plus(e.weigh.each[i].times(g.of(s)))
	}
	return total
}

// servesFor lists for each group the larger ones which would serve in its place.
func servesFor(pitch int64, groups []group) [][]int {
	larger := make([][]int, len(groups))
	for b := range groups {
		for a := range groups {
			p, q := &groups[a].piece, &groups[b].piece
			if a != b && p.w >= q.w && p.h >= q.h && (pitch == 0 || p.ways == q.ways && p.at == q.at) && p.w*p.h > q.w*q.h {
				larger[b] = append(larger[b], a)
			}
		}
	}
	return larger
}
