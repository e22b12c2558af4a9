package nest

import (
	"cmp"
	"fmt"
	"math/bits"
	"slices"

	"example.com/groovewright/fraction"
)

// Bounds that hold for every nest by straight cuts, whatever its rows look like.
//
// They rest on one relaxation. Draw a horizontal line anywhere through a sheet:
// the parts it meets lie side by side, at least a kerf apart and each at its
// phase. So each part but the last takes its own width and the least gap to
// where any other part may begin (its pace); all paces together fit into the
// sheet's width, less the least place where a row can begin, plus the one gap
// that the last part does not need (the span). In height each part takes a kerf
// more, and so has the sheet. With no pattern this is the old trick of growing
// parts and stock by one kerf.
//
// A dual feasible function f of the paces keeps the law of the lines: what fits
// side by side still does after f. Heights treated by another function g, the
// sum of f × g over the parts of one sheet is at most that of the sheet. (Parts
// as intervals of height with weights f make an interval graph; those are
// perfect, so columns of disjoint parts with total weight f(span) exist.) That
// is the bound of S. P. Fekete and J. Schepers, "A general framework for bounds
// for higher-dimensional orthogonal packing problems", Mathematical Methods of
// Operations Research 60 (2004) 311-329.

// relaxed is the problem that the bounds speak of.
type relaxed struct {
	kinds  []int // usable kinds of stock
	pace   []int64
	height []int64
	span   []int64 // by kind of stock, as kinds
	tall   []int64 // by kind of stock, as kinds
}

// Lower returns a lower bound on the sheets and the money of every guillotine
// nest of the parts that can be cut at all.
func Lower(p Problem) (b Bound, err error) {
	defer fraction.Catch(&err)
	if err := p.Validate(); err != nil {
		return Bound{}, err
	}
	j, err := newJob(&p)
	if err != nil {
		return Bound{}, err
	}
	return j.lower(), nil
}

// relax returns the relaxation for the pieces that some stock can give.
func (j *job) relax() relaxed { return j.relaxOf(j.possible()) }

// possible returns the pieces that some stock can give.
func (j *job) possible() (some []int) {
	for i := range j.pieces {
		if slices.ContainsFunc(j.kinds, func(k sheetKind) bool { return k.count > 0 && j.fits(&k, &j.pieces[i]) }) {
			some = append(some, i)
		}
	}
	return some
}

// except returns the pieces that are not among the given ones, which rise.
func (j *job) except(pieces []int) (others []int) {
	for i := range j.pieces {
		if _, in := slices.BinarySearch(pieces, i); !in {
			others = append(others, i)
		}
	}
	return others
}

// relaxOf returns the relaxation for the given pieces.
func (j *job) relaxOf(pieces []int) relaxed {
	var r relaxed
	some := make([]*piece, len(pieces))
	for n, i := range pieces {
		some[n] = &j.pieces[i]
	}
	var most int64
	for _, q := range some {
		gap := j.leastGap(q, some)
		most = max(most, gap)
		r.pace = append(r.pace, q.w+gap)
		r.height = append(r.height, q.h+j.kerf)
	}
	for i := range j.kinds {
		k := &j.kinds[i]
		if !k.usable {
			continue
		}
		start := k.w
		for _, q := range some {
			start = min(start, j.next(k.phase, 0, q))
		}
		r.kinds = append(r.kinds, i)
		r.span = append(r.span, k.w-start+most)
		r.tall = append(r.tall, k.h+j.kerf)
	}
	return r
}

// leastGap returns the least room between the piece and one to its right.
func (j *job) leastGap(q *piece, all []*piece) int64 {
	if j.pitch == 0 {
		return j.kerf
	}
	gap := j.kerf + j.pitch
	for _, right := range all {
		for _, at := range q.at[:q.ways] {
			end := at + q.w + j.kerf
			gap = min(gap, j.next(end, 0, right)+j.kerf)
		}
	}
	return gap
}

// lower returns the best bound there is without searching.
func (j *job) lower() Bound {
	r := j.relax()
	if len(r.pace) == 0 {
		return Bound{How: "no part fits any stock"}
	}
	b := Bound{Sheets: r.cover(j), How: "area of the parts with their kerfs and the gaps that phase leaves"}
	if n, how := r.dual(); n > b.Sheets {
		b.Sheets, b.How = n, how
	}
	b.Cost = j.money(max(r.leastCost(j, r.area(), j.counts()), j.cheapest(b.Sheets)))
	return b
}

// area returns the relaxed area of all parts.
func (r *relaxed) area() (total int64) {
	for i := range r.pace {
		total += r.pace[i] * r.height[i]
	}
	return total
}

// cover returns how many sheets, the largest first, have the area of the parts.
func (r *relaxed) cover(j *job) int {
	need := r.area()
	order := make([]int, len(r.kinds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(r.span[b]*r.tall[b], r.span[a]*r.tall[a])
	})
	sheets := 0
	for _, i := range order {
		if need <= 0 {
			break
		}
		n := int((need + r.span[i]*r.tall[i] - 1) / (r.span[i] * r.tall[i]))
		n = min(n, j.kinds[r.kinds[i]].count)
		sheets += n
		need -= int64(n) * r.span[i] * r.tall[i]
	}
	return sheets
}

// counts returns how many sheets there are of each kind.
func (j *job) counts() []int {
	counts := make([]int, len(j.kinds))
	for i, k := range j.kinds {
		counts[i] = k.count
	}
	return counts
}

// leastCost returns what an area costs at least, sheets taken by the fraction
// from those that give most area for the money.
func (r *relaxed) leastCost(j *job, need int64, stock []int) int64 {
	order := make([]int, len(r.kinds))
	for i := range order {
		order[i] = i
	}
	price := func(i int) int64 { return j.kinds[r.kinds[i]].price }
	slices.SortStableFunc(order, func(a, b int) int {
		return compareProducts(price(a), r.span[b]*r.tall[b], price(b), r.span[a]*r.tall[a])
	})
	var cost int64
	for _, i := range order {
		size := r.span[i] * r.tall[i]
		n := min(need/size, int64(stock[r.kinds[i]]))
		cost += n * price(i)
		need -= n * size
		if need <= 0 {
			break
		}
		if n < int64(stock[r.kinds[i]]) {
			// ceil(need × price / size): all prices are whole coins.
			hi, lo := bits.Mul64(uint64(need), uint64(price(i)))
			q, rest := bits.Div64(hi, lo, uint64(size))
			if cost += int64(q); rest > 0 {
				cost++
			}
			break
		}
	}
	return cost
}

// cheapest returns what that many sheets cost at least.
func (j *job) cheapest(sheets int) (cost int64) {
	var all []int
	for i := range j.kinds {
		if j.kinds[i].usable {
			all = append(all, i)
		}
	}
	slices.SortStableFunc(all, func(a, b int) int { return cmp.Compare(j.kinds[a].price, j.kinds[b].price) })
	for _, i := range all {
		n := min(sheets, j.kinds[i].count)
		cost += int64(n) * j.kinds[i].price
		sheets -= n
	}
	return cost
}

// compareProducts compares a × b with c × d, none below 0, without overflow.
func compareProducts(a, b, c, d int64) int {
	h1, l1 := bits.Mul64(uint64(a), uint64(b))
	h2, l2 := bits.Mul64(uint64(c), uint64(d))
	return cmp.Or(cmp.Compare(h1, h2), cmp.Compare(l1, l2))
}

// dual returns the best bound from pairs of dual feasible functions, on sheets
// as wide as the widest and as long as the longest.
func (r *relaxed) dual() (sheets int, how string) {
	across := dualsOf(r.pace, slices.Max(r.span))
	along := dualsOf(r.height, slices.Max(r.tall))
	for _, f := range across {
		for _, g := range along {
			if n := pairBound(f, g); n > sheets {
				sheets, how = n, pairName(f, g)
			}
		}
	}
	return sheets, how
}

func pairName(across, along dual) string {
	return fmt.Sprintf("dual feasible functions: %s across, %s along", across.name, along.name)
}

// pairBound returns ceil(Σ f × g / (f(span) × g(span))).
func pairBound(f, g dual) int {
	var hi, lo uint64
	for i := range f.size {
		h, l := bits.Mul64(uint64(f.size[i]), uint64(g.size[i]))
		var carry uint64
		lo, carry = bits.Add64(lo, l, 0)
		hi += h + carry
	}
	h, whole := bits.Mul64(uint64(f.whole), uint64(g.whole))
	if h > 0 || hi >= whole {
		return 0 // too large to divide: this pair says nothing
	}
	q, rest := bits.Div64(hi, lo, whole)
	if rest > 0 {
		q++
	}
	return int(q)
}
