package wall

import (
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// solution is a stretch whose pattern has an origin: the cost of its edges and, by dynamic
// programming from the right, the best way to go on from every place where a seam may fall.
type solution struct {
	stretch *stretch
	origin  fraction.Length
	base    cost // of the edges, and of seams to installed panels
	bays    []cover
	best    cost // base and the best cover of every bay; infinite where one cannot be covered
}

// cover holds the nodes of one bay: node 0 is its left edge, the last one its right edge, those
// between are seams.
type cover struct {
	span
	at          []fraction.Length
	left, right []fraction.Length // of the panel that starts, and of the one that stops at a node
	first, last []int             // the columns in which these panels start and stop
	seam        []cost
	rest        []cost // the best of everything right of a node in the stretch, its own seam left out
}

// solve returns the solution for the pattern with its origin at o, each computed once.
func (s *stretch) solve(o fraction.Length) *solution {
	if sol, ok := s.solved[o]; ok {
		return sol
	}
	sol := &solution{stretch: s, origin: o, base: s.edgeCost(o), bays: make([]cover, len(s.bays)), best: infinite}
	s.solved[o] = sol
	after := zeroCost
	for k := len(s.bays) - 1; k >= 0; k-- {
		b := s.bays[k]
		lines := s.lines(o, b)
		sol.bays[k] = s.cover(o, b, lines, true, after)
		if !sol.bays[k].rest[0].feasible() && !s.room.Profile.Boards {
			sol.bays[k] = s.cover(o, b, s.marks(lines, b), false, after)
		}
		if !sol.bays[k].rest[0].feasible() {
			return sol
		}
		after = sol.bays[k].rest[0]
	}
	sol.best = sol.base.plus(after)
	return sol
}

// edgeCost returns the cost of the edges and of seams to installed panels, the origin at o.
func (s *stretch) edgeCost(o fraction.Length) cost {
	c := zeroCost
	for _, t := range s.edgeTerms(o) {
		c.blemish = c.blemish.Add(t.cost())
		if t.Kind == ExposedEnd && s.wholeEnd && !t.Amount.IsZero() {
			c.broken = 1 // one rule, also where an opening parts the end
		}
	}
	c.uneven = s.uneven(o)
	for _, x := range s.beside {
		seam := s.seamCost(o, x, false)
		seam.broken = 0 // it is there already
		c = c.plus(seam)
	}
	return c
}

// seamCost returns the cost of a seam at x; onLine says that x is known to be a seam line.
func (s *stretch) seamCost(o, x fraction.Length, onLine bool) cost {
	if s.room.Profile.Boards {
		return zeroCost
	}
	c := s.anySeamCost(x)
	if !onLine {
		term := s.lineTerm(o, x)
		c.blemish = c.blemish.Add(term.cost())
	}
	return c
}

// nodes returns a cover of the bay with seams at xs, its costs unknown yet.
func (s *stretch) nodes(b span, xs []fraction.Length) cover {
	n := len(xs) + 2
	c := cover{span: b, at: make([]fraction.Length, 0, n), left: make([]fraction.Length, n), right: make([]fraction.Length, n),
		first: make([]int, n), last: make([]int, n), seam: slices.Repeat([]cost{zeroCost}, n), rest: slices.Repeat([]cost{infinite}, n)}
	c.at = append(append(append(c.at, b.left), xs...), b.right)
	for i, x := range c.at {
		c.left[i], c.right[i] = x, x
		if i > 0 && i < n-1 {
			c.left[i], c.right[i] = x.Add(s.half), x.Sub(s.half)
		}
		c.first[i], c.last[i] = s.region.columnAt(c.left[i], false), s.region.columnAt(c.right[i], true)
	}
	return c
}

// cover runs the dynamic programme over one bay whose seams may fall at xs, which are seam lines if
// onLines is set. after is the best cost of the bays to its right. It takes time in the number of
// places times those within one sheet's width.
func (s *stretch) cover(o fraction.Length, b span, xs []fraction.Length, onLines bool, after cost) cover {
	c := s.nodes(b, xs)
	last := len(c.at) - 1
	c.rest[last] = after
	ahead := slices.Clone(c.rest) // the seam at a node and all beyond it
	for i := last - 1; i >= 0; i-- {
		check(s.ctx)
		upright := s.widestAt(o, c.left[i])
		for j := s.reach(&c, i); j > i; j-- {
			if ahead[j].compare(&c.rest[i]) > 0 {
				continue // a panel costs nothing less than zero
			}
			if width, ok := s.panelWidth(o, &c, i, j, upright); ok {
				if beyond := s.panelCost(&c, i, j, width, ahead[j]); beyond.compare(&c.rest[i]) <= 0 {
					c.rest[i] = beyond
				}
			}
		}
		if i > 0 && c.rest[i].feasible() {
			c.seam[i] = s.seamCost(o, c.at[i], onLines)
			ahead[i] = c.seam[i].plus(c.rest[i])
		}
	}
	return c
}

// reach returns the last node at which a panel can stop that starts at node i of a bay.
func (s *stretch) reach(c *cover, i int) int {
	if s.room.Profile.Boards {
		return i + 1
	}
	far := c.left[i].Add(s.widest)
	return sort.Search(len(c.right), func(j int) bool { return far.Less(c.right[j]) }) - 1
}

// panelWidth returns the width of the panel between nodes i and j of a bay, and whether some sheet
// gives it; all up to the width upright do.
func (s *stretch) panelWidth(o fraction.Length, c *cover, i, j int, upright fraction.Length) (fraction.Length, bool) {
	width := c.right[j].Sub(c.left[i])
	return width, c.rest[j].feasible() && width.Sign() > 0 && (!upright.Less(width) || s.fits(o, c.left[i], c.right[j]))
}

// panelCost adds the cost of the panel between nodes i and j of a bay to that of what lies beyond.
func (s *stretch) panelCost(c *cover, i, j int, width fraction.Length, beyond cost) cost {
	if width.Less(s.leastPanel) {
		beyond.broken++
	}
	beyond.pieces += s.pieces[c.first[i]][c.last[j]]
	beyond.narrow = fraction.Min(beyond.narrow, width)
	if s.objective != nil {
		s.objective.add(&beyond, s.price(c.first[i], c.last[j], c.left[i], c.right[j]))
	}
	return beyond
}

// widestAt returns the widest panel from left on that a sheet long enough for all gives upright.
func (s *stretch) widestAt(o, left fraction.Length) (widest fraction.Length) {
	need := groove.Modulo(left.Sub(o), s.pitch)
	for _, sheet := range s.sheets {
		if !sheet.Length.Less(s.most) {
			widest = fraction.Max(widest, sheet.Width.Sub(groove.Modulo(need.Sub(sheet.LeftPhase), s.pitch)))
		}
	}
	return widest
}

// fits reports whether some sheet gives a panel, upright or turned, with the origin at o.
func (s *stretch) fits(o, left, right fraction.Length) bool {
	width, need := right.Sub(left), groove.Modulo(left.Sub(o), s.pitch)
	for _, sheet := range s.sheets {
		at := groove.Modulo(need.Sub(sheet.LeftPhase), s.pitch)
		wide := at.Add(width).Compare(sheet.Width) <= 0
		if !wide && s.turns {
			at = groove.Modulo(s.axis.Mul(2).Sub(need).Sub(sheet.LeftPhase).Sub(width), s.pitch)
			wide = at.Add(width).Compare(sheet.Width) <= 0
		}
		if wide && (s.most.Compare(sheet.Length) <= 0 || s.tallestIn(left, right).Compare(sheet.Length) <= 0) {
			return true
		}
	}
	return false
}

func (s *stretch) tallestIn(left, right fraction.Length) fraction.Length {
	key := span{left, right}
	if t, ok := s.tallest[key]; ok {
		return t
	}
	t := tallest(s.region.parts(s.region.columnAt(left, false), s.region.columnAt(right, true), left, right))
	s.tallest[key] = t
	return t
}
