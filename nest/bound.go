package nest

import (
	"cmp"
	"math"
	"math/bits"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest/internal/line"
)

// Bounds that hold for every nest by straight cuts, by one relaxation. The parts on a horizontal
// line through a sheet lie at least a kerf apart, each at its phase. So each but the last takes its
// pace, its own width and the least gap to where any other part may begin, and all paces fit the
// span: the sheet's width, less the least place where a row can begin, plus the gap that the last
// part does not need. In height each part takes a kerf more, and so has the sheet.
//
// What fits side by side still does after a dual feasible function f of the paces. With another
// function g of the heights, the sum of f × g over the parts of one sheet is at most that of the
// sheet (parts as intervals of height with weights f make an interval graph; those are perfect, so
// columns of disjoint parts with total weight f(span) exist): S. P. Fekete and J. Schepers, "A
// general framework for bounds for higher-dimensional orthogonal packing problems", Mathematical
// Methods of Operations Research 60 (2004) 311-329.

// relaxed is the problem that the bounds speak of.
type relaxed struct {
	pieces       []int
	kinds        []int   // usable kinds of stock
	span, tall   []int64 // of each of kinds
	pace, height []int64 // of each of pieces
	paces, highs distinct
	pairs        []pair // of functions that bound the whole job best, the best first; set by lower
}

// pair is a function of the paces and one of the heights.
type pair struct {
	across, along *dual
	permille      uint64 // of a sheet: the bound
	order         int    // of equal bounds the one of less is better
}

// distinct is the different ones of some sizes, falling, with how many there are of each, and the
// number of each size among them.
type distinct struct {
	sizes  []int64
	counts []int
	number []int
}

func distinctOf(sizes []int64) distinct {
	m := distinct{sizes: falling(slices.Clone(sizes)), number: make([]int, len(sizes))}
	m.counts = make([]int, len(m.sizes))
	for i, x := range sizes {
		n, _ := slices.BinarySearchFunc(m.sizes, x, func(a, b int64) int { return cmp.Compare(b, a) })
		m.number[i] = n
		m.counts[n]++
	}
	return m
}

// LowerBound returns a lower bound on the sheets and the money of every guillotine nest of the
// parts that can be cut at all. Its cost grows with the square of the number of different widths
// and heights. The errors are those of [Problem.Validate], and others with [ErrRange] as the cause.
func LowerBound(p Problem) (b Bound, err error) {
	defer fraction.Catch(&err)
	j, err := prepare(&p)
	if err != nil {
		return Bound{}, err
	}
	b, _ = j.lower(never)
	return b, nil
}

// never is the test of a bound where none is enough.
func never(Bound) bool { return false }

// prepare checks a problem and puts it on whole numbers.
func prepare(p *Problem) (*job, error) {
	if err := p.Validate(); err != nil {
		return nil, err
	}
	return newJob(p)
}

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

// relax returns the relaxation for the given pieces.
func (j *job) relax(pieces []int) *relaxed {
	r := &relaxed{pieces: pieces}
	var most int64
	for _, i := range pieces {
		q := &j.pieces[i]
		gap := j.leastGap(q, pieces)
		most = max(most, gap)
		r.pace, r.height = append(r.pace, q.w+gap), append(r.height, q.h+j.kerf)
	}
	r.paces, r.highs = distinctOf(r.pace), distinctOf(r.height)
	for i := range j.kinds {
		k := &j.kinds[i]
		if !k.usable {
			continue
		}
		start := k.w
		for _, i := range pieces {
			start = min(start, j.next(k.phase, 0, &j.pieces[i]))
		}
		r.kinds = append(r.kinds, i)
		r.span = append(r.span, k.w-start+most)
		r.tall = append(r.tall, k.h+j.kerf)
	}
	return r
}

// leastGap returns the least room between the piece and one of the others to its right.
func (j *job) leastGap(q *piece, others []int) int64 {
	if j.pitch == 0 {
		return j.kerf
	}
	gap := j.kerf + j.pitch
	for _, i := range others {
		for _, at := range q.at[:q.ways] {
			gap = min(gap, j.next(at+q.w+j.kerf, 0, &j.pieces[i])+j.kerf)
		}
	}
	return gap
}

// lower returns the best bound there is without searching, and the relaxation that gives it. It ends
// as soon as a bound is enough.
func (j *job) lower(enough func(Bound) bool) (b Bound, r *relaxed) {
	r = j.relax(j.possible())
	if len(r.pace) == 0 {
		return b, r
	}
	s, stock := j.supply(r.kinds), j.spare(nil)
	area := s.weighing(PartArea, r.areas(len(j.kinds)))
	var total uint64
	for i := range r.pace {
		total += uint64(r.pace[i] * r.height[i])
	}
	least := s.cost(&area, total, stock)
	raise := func(sheets int, how Argument) bool {
		if sheets <= b.Sheets {
			return false
		}
		b.Sheets, b.How, b.Bought = sheets, how, j.leastBought(sheets)
		b.Cost = j.money(max(least, s.cheapest(sheets, stock)))
		return enough(b)
	}
	if raise(s.sheets(&area, total, stock), PartArea) {
		return b, r
	}
	across, along := r.duals(j.memory)
	if r.pairUp(across, along, 0, raise) || !j.stacked(r.pieces) {
		return b, r
	}
	if f, ok := j.memory.line.BestDual(slices.Max(r.tall), r.highs.sizes, r.highs.counts); ok { // the sharpest function of the heights is worth its time
		sharpest := dual{after(f, r.highs.sizes, nil), f.Most}
		r.pairUp(across, append(along, sharpest), len(along), raise)
	}
	return b, r
}

// pairUp bounds the job by pairs of functions, those of the heights from one on, and keeps the best
// pairs, until raise says that the sheets which a pair proves are enough. Pairs come by what their function of the paces
// promises, where each height takes the largest part that any function makes of it; what promises too little, also as a
// function of the heights, is left out.
func (r *relaxed) pairUp(across, along []dual, from int, raise func(sheets int, how Argument) bool) bool {
	most, known := min(mostWhole, math.MaxInt64/uint64(len(r.pieces))), uint64(0) // sheets
	n := len(r.highs.sizes)
	sums, promised := make([]uint64, len(across)*n), make([]float64, len(across)+len(along))
	part, wide := make([]float64, n), make([]float64, n) // the largest by height, of a function of the heights and of the paces
	for _, g := range along[from:] {
		for h, x := range g.size {
			part[h] = max(part[h], float64(x)/float64(g.whole))
		}
	}
	for f := range across {
		for h, x := range r.across(&across[f], sums[f*n:][:n]) {
			x := float64(x) / float64(across[f].whole) * (1 + tiny)
			promised[f] += float64(x * part[h])
			wide[h] = max(wide[h], x)
		}
	}
	for g := from; g < len(along); g++ {
		for h, x := range along[g].size {
			promised[len(across)+g] += float64(wide[h] * (float64(x) / float64(along[g].whole)))
		}
	}
	tooLittle := func(promise float64) bool {
		return len(r.pairs) == mostPaired && promise <= float64(known) && 1000*promise < float64(r.pairs[mostPaired-1].permille)
	}
	for range across {
		f := 0
		for other, p := range promised[:len(across)] {
			if p > promised[f] {
				f = other
			}
		}
		if tooLittle(promised[f]) {
			break // and so do all that are left
		}
		promised[f] = -1
		for g := from; g < len(along); g++ {
			if tooLittle(promised[len(across)+g]) {
				continue
			}
			hi, lo, whole := pairSum(sums[f*n:][:n], len(r.pieces), across[f].whole, &along[g])
			if whole == 0 {
				continue
			}
			if exceeds(hi, lo, known, whole) {
				known, _ = bits.Div64(hi, lo, whole)
				if exceeds(hi, lo, known, whole) {
					known++
				}
				if raise(int(known), DualFunctions) {
					return true
				}
			}
			if hi > 0 || whole >= most || f+g == 0 {
				continue
			}
			hi, lo = bits.Mul64(lo, 1000)
			if n := len(r.pairs); n < mostPaired || exceeds(hi, lo+1, r.pairs[n-1].permille, whole) {
				permille, _ := bits.Div64(hi, lo, whole)
				r.rank(pair{&across[f], &along[g], permille, (from*len(across)+f)*len(along) + g})
			}
		}
	}
	return false
}

// tiny is more than what rounding takes from a sum of promises.
const tiny = 1e-9

// exceeds reports whether a number of 128 bits is more than a product.
func exceeds(hi, lo, a, b uint64) bool {
	over, product := bits.Mul64(a, b)
	return hi > over || hi == over && lo > product
}

// across adds up the values of the paces by height.
func (r *relaxed) across(f *dual, sums []uint64) []uint64 {
	for i, n := range r.paces.number {
		sums[r.highs.number[i]] += uint64(f.size[n])
	}
	return sums
}

// rank keeps a pair if it is among the best.
func (r *relaxed) rank(p pair) {
	i := len(r.pairs)
	for i > 0 && (r.pairs[i-1].permille < p.permille || r.pairs[i-1].permille == p.permille && p.order < r.pairs[i-1].order) {
		i--
	}
	if i < mostPaired {
		r.pairs = slices.Insert(r.pairs[:min(len(r.pairs), mostPaired-1)], i, p)
	}
}

// areas returns the relaxed area of a sheet of each kind, of so many kinds.
func (r *relaxed) areas(kinds int) []uint64 {
	areas := make([]uint64, kinds)
	for i, kind := range r.kinds {
		areas[kind] = uint64(r.span[i] * r.tall[i])
	}
	return areas
}

// leastBought returns how many sheets must be bought at least when so many are needed in all.
func (j *job) leastBought(sheets int) int {
	for _, k := range j.kinds {
		if k.limited && k.usable {
			sheets -= k.count
		}
	}
	return max(0, sheets)
}

// dual is what a dual feasible function makes of different sizes: whichever fitted together into the
// whole before still fit into whole now.
type dual struct {
	size  []int64
	whole int64
}

// mostRounding is the largest step of rounding that is tried; larger ones hardly ever give more.
const mostRounding = 32

// duals returns the functions to try on sheets as wide as the widest and as long as the longest. Layouts of a room have
// the same heights over and over.
func (r *relaxed) duals(m *Memory) (across, along []dual) {
	tall := slices.Max(r.tall)
	key := line.KeyOf(tall, r.highs.sizes, r.highs.counts, 0)
	along, known := m.duals[key]
	if !known {
		along = slices.Clip(r.highs.duals(tall))
		line.Remember(&m.duals, key, along)
	}
	return r.paces.duals(slices.Max(r.span)), along
}

// after adds to the values what the function makes of sizes.
func after(f line.Dual, sizes, values []int64) []int64 {
	for _, x := range sizes {
		values = append(values, f.At(x))
	}
	return values
}

// duals returns the sizes as they are and after each function worth trying, with the steps up to
// half the whole at which a size changes sides.
func (m *distinct) duals(whole int64) (all []dual) {
	steps := slices.DeleteFunc(line.Thresholds(whole, m.sizes), func(step int64) bool { return 2*step > whole })
	var values []int64
	for f := range line.DualsAt(whole, m.sizes, m.counts, spread(steps, len(m.number)), mostRounding) {
		values = after(f, m.sizes, values[:0])
		if !slices.ContainsFunc(all, func(e dual) bool { return e.whole == f.Most && slices.Equal(e.size, values) }) {
			all = append(all, dual{slices.Clone(values), f.Most})
		}
	}
	return all
}

// mostPairs bounds the work on all pairs of functions, in values added up.
const mostPairs = 20_000_000

// spread returns as many of the thresholds, evenly chosen, as can be tried on so many sizes.
func spread(all []int64, sizes int) []int64 {
	const functions = 4 // at each threshold
	n := 1
	for (functions*n+mostRounding)*(functions*n+mostRounding)*sizes < mostPairs {
		n++
	}
	if len(all) <= n {
		return all
	}
	some := make([]int64, n)
	for i := range some {
		some[i] = all[i*len(all)/n]
	}
	return some
}

// falling sorts sizes from the largest down and leaves each but once.
func falling(sizes []int64) []int64 {
	slices.Sort(sizes)
	slices.Reverse(sizes)
	return slices.Compact(sizes)
}

// pairSum returns the sum of the values of so many pieces in 128 bits, across by height times g, and
// what a sheet holds of it, 0 where that is too large to divide by.
func pairSum(across []uint64, pieces int, most int64, g *dual) (hi, lo, whole uint64) {
	over, whole := bits.Mul64(uint64(most), uint64(g.whole))
	sizes := g.size[:len(across)]
	if over == 0 && whole < math.MaxUint64/uint64(pieces+1) {
		for i, x := range across { // no size is above its whole: the sum fits 64 bits
			lo += x * uint64(sizes[i])
		}
		return 0, lo, whole
	}
	for i, x := range across {
		h, l := bits.Mul64(x, uint64(sizes[i]))
		var carry uint64
		lo, carry = bits.Add64(lo, l, 0)
		hi += h + carry
	}
	if over > 0 {
		whole = 0
	}
	return hi, lo, whole
}
