package nest

import (
	"math"
	"math/bits"
	"slices"

	"example.com/groovewright/fraction"
)

// PlacesPerInch is how finely a [Measure] tells places across a sheet: 1/1024 in and 1/100 mm are whole numbers of them.
const PlacesPerInch = 1 << 10 * 25 * 127

// Measure says how the width of a part counts in a bound. Parts side by side on a sheet, at least a kerf apart and each where
// the sheet shows its pattern, count together no more than the sheet: a conservative scale (S. P. Fekete and J. Schepers, "A
// general framework for bounds for higher-dimensional orthogonal packing problems", Mathematical Methods of Operations
// Research 60, 2004). The zero Measure counts the width itself; a [Game] finds others.
type Measure struct {
	Extra      fraction.Length // 0 or more, at most a kerf: counts beside each width
	potentials *potentials     // nil where widths count
}

// Additive reports whether what a part counts is the difference between its two edges wherever they are, and so wherever the
// other lies.
func (m Measure) Additive() bool { return m.potentials == nil }

// Counter returns a function that says what a part counts that shows the pattern from one place to another, in places too and
// rounded down. A part within another counts no more, and none more than a sheet, a repeat and Extra are wide where the
// measure comes of a [Game]. The function remembers what it was asked: it is for one goroutine.
func (m Measure) Counter() func(from, to int64) int64 {
	if m.potentials == nil {
		extra := placeOf(m.Extra)
		return func(from, to int64) int64 { return to - from + extra }
	}
	known := map[sideways]int64{}
	return func(from, to int64) int64 {
		key := sideways{floorMod(from, m.potentials.pitch), to - from}
		count, ok := known[key]
		if !ok {
			count = m.potentials.count(from, to)
			known[key] = count
		}
		return count
	}
}

// sideways is what counts of a part: the phase of its left edge and its width.
type sideways struct{ phase, width int64 }

// placeOf returns a length in places, rounded down.
func placeOf(x fraction.Length) int64 {
	n, _ := x.Mul(PlacesPerInch).DivMod(fraction.Inches(1))
	return n
}

// across is what lies across the sheets of a problem, in places of the pattern: each kind of sheet lies where it shows it.
type across struct {
	pitch, kerf int64
	turns       bool    // parts may be turned
	axes        int64   // twice the place of an axis
	kinds       []span  // of sheets
	bounds      []int64 // of the cells, rising: from the first left edge to a kerf beyond the last right one
}

// span is from a left edge to a right one.
type span struct{ from, to int64 }

// across returns it in places; ok is false where there is no pattern, or the numbers are too fine.
func (j *job) across() (a *across, ok bool) {
	ok = j.pitch > 0
	place := func(marks int64) int64 {
		x := j.length(marks)
		ok = ok && PlacesPerInch%x.Den() == 0
		return placeOf(x)
	}
	a = &across{pitch: place(j.pitch), kerf: place(j.kerf), turns: j.p.Pattern.Mirrored, axes: 2 * place(j.marks(j.p.Pattern.Axis))}
	for _, k := range j.kinds {
		a.kinds = append(a.kinds, span{place(k.phase), place(k.phase + k.w)})
	}
	return a, ok
}

// each calls f for each place at which a sheet gives the left edge of a part.
func (a *across) each(from, to int64, f func(at int64)) {
	width, last := to-from, a.bounds[len(a.bounds)-1]-a.kerf
	try := func(phase int64) {
		for at := floorMod(phase, a.pitch); at+width <= last; at += a.pitch {
			if slices.ContainsFunc(a.kinds, func(k span) bool { return k.from <= at && at+width <= k.to }) {
				f(at)
			}
		}
	}
	try(from)
	if turned := a.axes - to; a.turns && floorMod(turned-from, a.pitch) != 0 {
		try(turned)
	}
}

// potentials are what counts up to each place; within a cell it rises evenly. A part counts the difference between its left
// edge and a kerf beyond its right one, at that place among those at which a sheet gives it where this is least: a dual
// solution of the arc-flow model (J. M. Valério de Carvalho, "Exact solution of bin-packing problems using column generation
// and branch-and-bound", Annals of Operations Research 86, 1999).
type potentials struct {
	*across
	upTo []int64 // each bound of the cells, never falling
}

// count returns what a part counts, in places; what no sheet gives counts as much as all.
func (p *potentials) count(from, to int64) int64 {
	least := p.upTo[len(p.upTo)-1]
	p.each(from, to, func(at int64) {
		_, low := p.at(at)
		high, _ := p.at(at + to - from + p.kerf)
		least = min(least, high-low)
	})
	return max(0, least)
}

// at returns what counts up to a place, rounded down and up.
func (p *potentials) at(x int64) (low, high int64) {
	i, exact := slices.BinarySearch(p.bounds, x)
	if exact {
		return p.upTo[i], p.upTo[i]
	}
	hi, lo := bits.Mul64(uint64(p.upTo[i]-p.upTo[i-1]), uint64(x-p.bounds[i-1]))
	whole, rest := bits.Div64(hi, lo, uint64(p.bounds[i]-p.bounds[i-1]))
	low = p.upTo[i-1] + int64(whole)
	return low, low + int64(min(rest, 1))
}

// measured returns the same values of heights with widths counted by potentials.
func (w DualWeight) measured(p *potentials) DualWeight {
	s, wide := w.s, make([]int64, len(w.s.wide))
	for i, k := range p.kinds {
		low, _ := p.at(k.from)
		_, high := p.at(k.to + p.kerf)
		wide[i] = -s.whole(fraction.Of(low-high, PlacesPerInch)) // rounded up
	}
	w.Measure, w.weighing = Measure{s.job.p.Saw.Kerf, p}, s.times(w.how, wide, w.most)
	return w
}

// Relaxed returns about what parts of this total value need if sheets can be bought in parts, of the kind that holds most
// of it for its price: the money, or the number of sheets where they have no price. It says which weights to try,
// and proves nothing.
func (w DualWeight) Relaxed(total fraction.Length) float64 {
	kind := w.buys()
	if kind < 0 {
		return 0
	}
	return w.priced(float64(w.marks(total))/float64(w.holds[kind]), kind)
}

// priced returns what so many sheets of a kind cost, or their number where they have no price.
func (w *DualWeight) priced(sheets float64, kind int) float64 {
	if price := w.s.job.kinds[kind].price; price > 0 {
		sheets = float64(sheets * float64(price) / float64(w.s.job.coin)) // the same on each machine: not fused with a sum
	}
	return sheets
}

// buys returns the kind of stock that holds most for its price and of which there is as much as needed, or else just the
// one that holds most for its price; -1 where none holds anything.
func (w *DualWeight) buys() int {
	if w.s == nil || len(w.cheap) == 0 {
		return -1
	}
	if i := slices.IndexFunc(w.cheap, func(kind int) bool { return !w.s.job.kinds[kind].limited }); i >= 0 {
		return w.cheap[i]
	}
	return w.cheap[0]
}

// scaledUp returns shares, each 0 or more, as potentials: all of them together count about as much as all cells are wide.
func (a *across) scaledUp(shares []float64) *potentials {
	var all float64
	for _, s := range shares {
		all += s
	}
	p, sum := &potentials{a, make([]int64, len(a.bounds))}, 0.0
	width := float64(a.bounds[len(a.bounds)-1] - a.bounds[0])
	for i, s := range shares {
		sum += s
		p.upTo[i+1] = int64(math.Round(sum / all * width))
	}
	return p
}
