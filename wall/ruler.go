package wall

import "example.com/groovewright/fraction"

// ruler measures the nodes of a bay in whole steps so small that every length
// concerned is a whole number of them, which makes the inner loop of the
// dynamic programme a matter of integers.
type ruler struct {
	stretch     *stretch
	origin      fraction.Length
	cover       *cover
	steps       int64             // to the inch
	lefts       []fraction.Length // left edges of the panels that start at each node
	rights      []fraction.Length // right edges of those that stop there
	left, right []int64           // the same in steps
	first, last []int             // columns in which those panels start and stop
	widest      int64             // of the sheets
	least       int64             // narrower panels break a rule
	node        int               // where the panel starts
	upright     int64             // the widest panel from there that a sheet long enough for every panel gives upright
}

func (s *stretch) newRuler(o fraction.Length, c *cover) *ruler {
	n := len(c.at)
	w := &ruler{stretch: s, origin: o, cover: c, steps: 1,
		left: make([]int64, n), right: make([]int64, n), first: make([]int, n), last: make([]int, n)}
	lefts, rights := make([]fraction.Length, n), make([]fraction.Length, n)
	w.lefts, w.rights = lefts, rights
	for i := range c.at {
		lefts[i], rights[i] = s.panelEdges(c, i, i)
		w.refine(lefts[i])
		w.refine(rights[i])
	}
	least := s.leastPanel()
	w.refine(least)
	w.refine(s.pitch)
	w.refine(o)
	for _, sheet := range s.sheets {
		w.refine(sheet.width)
		w.refine(sheet.leftPhase)
	}
	for _, sheet := range s.sheets {
		w.widest = max(w.widest, w.scaled(sheet.width))
	}
	w.least = w.scaled(least)
	for i := range c.at {
		w.left[i], w.right[i] = w.scaled(lefts[i]), w.scaled(rights[i])
		if i < n-1 {
			w.first[i] = s.region.columnAt(lefts[i], false)
		}
		if i > 0 {
			w.last[i] = s.region.columnAt(rights[i], true)
		}
	}
	return w
}

// refine makes the steps small enough for x.
func (w *ruler) refine(x fraction.Length) {
	if w.steps%x.Den() != 0 {
		// The least common multiple is the denominator of a sum of unit
		// fractions; arithmetic on lengths checks it for overflow.
		a, b := w.steps, x.Den()
		for b != 0 {
			a, b = b, a%b
		}
		w.steps = fraction.Inches(w.steps / a).Mul(x.Den()).Num()
	}
}

// scaled measures x, for which the steps were made small enough.
func (w *ruler) scaled(x fraction.Length) int64 {
	return x.Mul(w.steps).Num()
}

// halves measures a width in half steps: whole steps are even, and the odd
// number between two of them is any width between them. The narrowest panel
// beyond the bay need not be a whole number of steps, and there is only one, so
// that widths are still ordered as their halves are.
func (w *ruler) halves(x fraction.Length) int64 {
	if x == far {
		return 1<<63 - 1
	}
	steps, over := x.Mul(w.steps).DivMod(fraction.Inches(1))
	if over.IsZero() {
		return 2 * steps
	}
	return 2*steps + 1
}

// width returns what n halves measure; beyond is the narrowest panel beyond the
// bay.
func (w *ruler) width(n int64, beyond fraction.Length) fraction.Length {
	if n%2 != 0 {
		return beyond
	}
	return fraction.Of(n/2, w.steps)
}

// from sets the node where the next panels start.
func (w *ruler) from(i int) {
	w.node = i
	s := w.stretch
	pitch := s.pitch
	left, _ := s.panelEdges(w.cover, i, i)
	need := left.Sub(w.origin).Mod(pitch)
	w.upright = 0
	for _, sheet := range s.sheets {
		if sheet.length.Less(s.most) {
			continue
		}
		at := need.Sub(sheet.leftPhase).Mod(pitch)
		w.upright = max(w.upright, w.scaled(sheet.width.Sub(at)))
	}
}

// fits reports whether some sheet gives the panel that stops at node j, which
// is wider than a sheet long enough for every panel gives upright.
func (w *ruler) fits(j int) bool {
	left, right := w.stretch.panelEdges(w.cover, w.node, j)
	return w.stretch.fits(w.origin, left, right)
}

// worth returns what the panel that stops at node j is worth.
func (w *ruler) worth(j int) fraction.Length {
	return w.stretch.worth(w.first[w.node], w.last[j], w.lefts[w.node], w.rights[j])
}
