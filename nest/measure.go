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
// Research 60, 2004). The zero Measure counts the width itself; one with windows counts what lies in them; one that comes of a
// [Game] counts by where on a sheet the part can lie.
type Measure struct {
	Extra      fraction.Length // a part counts from half of it before its left edge to half of it beyond its right one: at most a kerf, may be less than 0
	Pitch      fraction.Length // one repeat, a whole number of places; read only if there are windows
	Windows    []Window        // the count is the sum of theirs
	potentials *potentials     // in place of all that
}

// Window counts of each repeat of the pattern only what lies between two phases, as much as Weight whole repeats.
type Window struct {
	From   fraction.Length // the phase at which it begins: at least 0, less than a pitch
	Width  fraction.Length // above 0, at most a pitch
	Weight int64           // above 0
}

// Additive reports whether what a part counts is the difference between its two edges wherever they are, and so wherever the
// other lies.
func (m Measure) Additive() bool { return m.potentials == nil }

// Counter returns a function that says what a part counts that shows the pattern from one place to another, in places too and
// rounded down. A part within another counts no more, and none more than a sheet, a repeat and Extra are wide where the
// measure comes of a [Game]. The function remembers what it was asked: it is for one goroutine.
func (m Measure) Counter() func(from, to int64) int64 {
	if m.potentials == nil {
		start, stop := m.edge(func(x fraction.Length) int64 { return -placeOf(m.start(x).Neg()) }), m.edge(func(x fraction.Length) int64 { return placeOf(m.stop(x)) })
		return func(from, to int64) int64 { return stop(to) - start(from) }
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

// edge returns a function that says what counts up to a place, as one in inches does.
func (m Measure) edge(of func(x fraction.Length) int64) func(place int64) int64 {
	pitch, whole := placeOf(m.Pitch), of(m.Pitch)-of(fraction.Length{})
	if len(m.Windows) == 0 || pitch <= 0 {
		none := of(fraction.Length{})
		return func(place int64) int64 { return place + none }
	}
	known := map[int64]int64{}
	return func(place int64) int64 {
		phase := floorMod(place, pitch)
		n, ok := known[phase]
		if !ok {
			n = of(fraction.Of(phase, PlacesPerInch))
			known[phase] = n
		}
		return n + (place-phase)/pitch*whole
	}
}

// start returns what counts up to a part that starts at x; left of where the pattern begins it is less than 0.
func (m Measure) start(x fraction.Length) fraction.Length { return m.upTo(x.Sub(m.Extra.Div(2))) }

// stop returns what counts up to the end of a part that stops at x.
func (m Measure) stop(x fraction.Length) fraction.Length { return m.upTo(x.Add(m.Extra.Div(2))) }

func (m Measure) upTo(x fraction.Length) (sum fraction.Length) {
	if len(m.Windows) == 0 {
		return x
	}
	repeats, phase := x.DivMod(m.Pitch)
	var whole int64
	for _, w := range m.Windows {
		in := phase.Sub(w.From)
		whole += repeats * w.Weight
		if in.Sign() < 0 {
			in = in.Add(m.Pitch) // beyond the window of the repeat before
			whole -= w.Weight
		}
		if in.Less(w.Width) {
			sum = sum.Add(in.Scale(m.Pitch.Over(w.Width)).Mul(w.Weight))
		} else {
			whole += w.Weight
		}
	}
	return sum.Add(m.Pitch.Mul(whole))
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

// windowsOfRepeat is how many windows a repeat is parted into.
const windowsOfRepeat = 32

// Windowed returns the same values of heights with widths counted by one window of a repeat each; where the pattern can be
// turned, by a window and its image. The windows of the first family count parts with the kerf. Those of the second
// count only parts that reach past them, so far that a sheet does not count for what it is wider than so many repeats.
// There are none where there is no pattern, or where the repeat is too fine.
func (w DualWeight) Windowed() (families [][]DualWeight) {
	if w.s == nil || w.s.job.pitch == 0 || PlacesPerInch%w.s.job.p.Pattern.Pitch.Den() != 0 {
		return nil
	}
	j := w.s.job
	over := j.pitch
	for _, k := range j.kinds {
		over = min(over, k.w%j.pitch)
	}
	for _, extra := range []int64{j.kerf, -(over + 1)} {
		var family []DualWeight
		for _, windows := range j.windows(extra) {
			if v := w.measured(Measure{Extra: j.length(extra), Pitch: j.length(j.pitch), Windows: windows}); v.buys() >= 0 {
				family = append(family, v)
			}
		}
		if len(family) > 0 {
			families = append(families, family)
		}
	}
	return families
}

// windows returns the windows of measures with this much extra: those that miss the phases which a kind of sheets shows once
// more than the others, then the parts of a repeat.
func (j *job) windows(extra int64) (all [][]Window) {
	window := func(from, width int64) Window { // in halves of marks
		return Window{j.length(floorMod(from, 2*j.pitch)).Div(2), j.length(width).Div(2), 1}
	}
	for _, k := range j.kinds {
		if k.w+extra <= 0 {
			continue
		}
		rest := (k.w + extra) % j.pitch // the phases from the left edge on are shown once more as far as this goes
		from, width := 2*k.phase-extra+2*rest, 2*(j.pitch-rest)
		if j.p.Pattern.Mirrored {
			from, width = j.symmetric(from, width)
		}
		if width > 0 {
			all = append(all, []Window{window(from, width)})
		}
	}
	width := max(1, j.pitch/windowsOfRepeat)
	for i := range int64(windowsOfRepeat) {
		from := 2 * (i * j.pitch / windowsOfRepeat)
		switch axis := 2 * j.marks(j.p.Pattern.Axis); {
		case !j.p.Pattern.Mirrored:
			all = append(all, []Window{window(from, 2*width)})
		case from+2*width <= j.pitch:
			all = append(all, []Window{window(axis+from, 2*width), window(axis-from-2*width, 2*width)})
		}
	}
	return all
}

// symmetric returns the widest part of a window that is its own image about an axis of the pattern, in halves
// of marks.
func (j *job) symmetric(from, width int64) (first, widest int64) {
	axis, turn := 2*j.marks(j.p.Pattern.Axis), 2*j.pitch
	for _, a := range []int64{axis, axis + j.pitch} {
		before := floorMod(a-from, turn) // the axis lies so far beyond the window's start
		if half := min(before, width-before); 2*half > widest {
			first, widest = a-half, 2*half
		}
	}
	return first, widest
}

// measured returns the same values of heights with another measure of widths.
func (w DualWeight) measured(m Measure) DualWeight {
	s, wide := w.s, make([]int64, len(w.s.wide))
	for i, k := range s.job.kinds {
		left := s.job.length(k.phase)
		right := left.Add(s.job.length(k.w))
		var less fraction.Length // what a sheet counts, less than 0
		if m.potentials == nil {
			less = m.start(left).Sub(m.stop(right))
		} else {
			less = fraction.Of(-m.potentials.whole(m.potentials.kinds[i]), PlacesPerInch)
		}
		wide[i] = max(0, -s.whole(less)) // rounded up
	}
	w.Measure, w.weighing = m, s.times(w.how, wide, w.most)
	return w
}

// whole returns what a sheet counts, rounded up.
func (p *potentials) whole(s span) int64 {
	low, _ := p.at(s.from)
	_, high := p.at(s.to + p.kerf)
	return high - low
}

// finestMix is how often the windows of a mixture count together, about.
const finestMix = 512

// Mixed returns the same values of heights as those of a family with the windows of all of it, each of which makes up
// a share of what a sheet holds.
func Mixed(family []DualWeight, shares []float64) DualWeight {
	var all float64
	often := make([]float64, len(family))
	for i := range family {
		often[i] = shares[i] / float64(family[i].holds[family[i].buys()])
		all += often[i]
	}
	m := family[0].Measure
	m.Windows = nil
	for i, v := range family {
		if weight := int64(math.Round(finestMix * often[i] / all)); weight > 0 {
			for _, w := range v.Measure.Windows {
				w.Weight = weight
				m.Windows = append(m.Windows, w)
			}
		}
	}
	return family[0].measured(m)
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
