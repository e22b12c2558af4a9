package wall

import (
	"example.com/groovewright/fraction"
)

// solution is what is known of a stretch once its pattern has an origin: the
// cost of its edges and, by dynamic programming from the right, the best way to
// go on from every place where a seam may fall.
type solution struct {
	stretch *stretch
	origin  fraction.Length
	base    rank // of the edges, and of seams to installed panels
	bays    []cover
	best    rank // base and the best cover of every bay
	ok      bool // whether the bays can be covered at all
}

// cover holds the nodes of one bay: node 0 is its left edge, the last one its
// right edge, those between are seams. rest is the best rank of everything
// right of a node in the stretch, the node's own seam left out.
type cover struct {
	span
	at    []fraction.Length
	seam  []rank
	rest  []rank
	alive []bool
}

// solve returns the solution for the pattern with its origin at o. It is kept,
// so that each is computed once.
func (s *stretch) solve(o fraction.Length) *solution {
	if sol, ok := s.solved[o]; ok {
		return sol
	}
	sol := &solution{stretch: s, origin: o, base: s.edgeRank(o), bays: make([]cover, len(s.bays)), ok: true}
	s.solved[o] = sol
	after := noRank
	for k := len(s.bays) - 1; k >= 0; k-- {
		b := s.bays[k]
		lines := s.lines(o, b)
		sol.bays[k] = s.cover(o, b, lines, true, after)
		if !sol.bays[k].alive[0] && !s.room.Profile.Boards {
			sol.bays[k] = s.cover(o, b, s.marks(lines, b), false, after)
		}
		if !sol.bays[k].alive[0] {
			sol.ok = false
			return sol
		}
		after = sol.bays[k].rest[0]
	}
	sol.best = sol.base.plus(after)
	return sol
}

// edgeRank returns the cost of the stretch's edges, and of its seams to
// installed panels, with the pattern's origin at o.
func (s *stretch) edgeRank(o fraction.Length) rank {
	r := noRank
	for _, t := range s.edgeTerms(o) {
		r.blemish = r.blemish.Add(t.Cost())
		if t.Kind == ExposedEnd && s.wantsWholeEnd() && !t.Amount.IsZero() {
			r.broken = 1 // one rule, also where an opening parts the end
		}
	}
	r.uneven = s.uneven(o)
	for _, x := range s.beside {
		seam := s.seamRank(o, x, false)
		seam.broken = 0 // it is there already
		r = r.plus(seam)
	}
	return r
}

// seamRank returns the cost of a seam at x; onLine says that x is known to be
// a seam line.
func (s *stretch) seamRank(o, x fraction.Length, onLine bool) rank {
	if s.room.Profile.Boards {
		return noRank
	}
	r := s.seamCost(x)
	if onLine {
		return r
	}
	if t := s.lineTerm(o, x); !t.Amount.IsZero() {
		r.blemish = r.blemish.Add(t.Cost())
	}
	return r
}

// cover runs the dynamic programme over one bay whose seams may fall at xs,
// which are seam lines if onLines is set.
// after is the best rank of the bays to its right. It takes time in the number
// of places times those within one sheet's width.
func (s *stretch) cover(o fraction.Length, b span, xs []fraction.Length, onLines bool, after rank) cover {
	n := len(xs) + 2
	c := cover{span: b, at: make([]fraction.Length, 0, n), seam: make([]rank, n), rest: make([]rank, n), alive: make([]bool, n)}
	c.at = append(append(append(c.at, b.left), xs...), b.right)
	for i := range c.seam {
		c.seam[i] = noRank
		if i > 0 && i < n-1 {
			c.seam[i] = s.seamRank(o, c.at[i], onLines)
		}
	}
	c.rest[n-1], c.alive[n-1] = after, true

	w := s.newRuler(o, &c)
	ahead := make([]rank, n)   // the seam at a node and all beyond it
	narrow := make([]int64, n) // in halves
	ahead[n-1], narrow[n-1] = after, w.halves(after.narrow)
	for i := n - 2; i >= 0; i-- {
		check(s.ctx)
		best, bestNarrow := -1, int64(0)
		bestBroken, bestPieces := 0, 0
		var bestPrice cost
		w.from(i)
		row := s.pieces[w.first[i]]
		until := n
		if s.room.Profile.Boards {
			until = i + 2 // each board ends at the next joint
		}
		for j := i + 1; j < until; j++ {
			width := w.right[j] - w.left[i]
			if width > w.widest {
				break
			}
			if !c.alive[j] || width <= 0 || width > w.upright && !w.fits(j) {
				continue
			}
			broken := ahead[j].broken
			if width < w.least {
				broken++
			}
			pieces := ahead[j].pieces + row[w.last[j]]
			thin := min(narrow[j], 2*width)
			var price cost // beyond the node, with what the panel is worth
			if s.objective != nil && (best < 0 || broken <= bestBroken) {
				price = s.objective.add(cost{ahead[j].worth, ahead[j].blemish}, w.worth(j))
			}
			if best >= 0 {
				switch {
				case broken != bestBroken:
					if broken > bestBroken {
						continue
					}
				default:
					order := 0
					if s.objective != nil {
						order = price.compare(&bestPrice)
					} else {
						order = ahead[j].blemish.Compare(ahead[best].blemish)
					}
					if order > 0 || order == 0 && (pieces > bestPieces || pieces == bestPieces && thin <= bestNarrow) {
						continue
					}
				}
			}
			best, bestBroken, bestPieces, bestNarrow, bestPrice = j, broken, pieces, thin, price
		}
		if best < 0 {
			continue
		}
		c.alive[i] = true
		if s.objective == nil {
			bestPrice.blemish = ahead[best].blemish
		}
		c.rest[i] = rank{bestBroken, bestPrice.worth, bestPrice.blemish, bestPieces, ahead[best].uneven, w.width(bestNarrow, after.narrow)}
		ahead[i] = c.seam[i].plus(c.rest[i])
		narrow[i] = bestNarrow
	}
	return c
}

// panel returns the rank of the panel between nodes i and j of a bay, or false
// if no sheet gives it.
func (s *stretch) panel(o fraction.Length, c *cover, i, j int) (rank, bool) {
	left, right := s.panelEdges(c, i, j)
	width := right.Sub(left)
	if !s.fits(o, left, right) {
		return rank{}, false
	}
	first, last := s.region.columnAt(left, false), s.region.columnAt(right, true)
	r := rank{narrow: width, pieces: s.pieces[first][last]}
	if width.Less(s.leastPanel()) {
		r.broken++
	}
	if s.objective != nil {
		c := s.objective.add(cost{}, s.worth(first, last, left, right))
		r.worth, r.blemish = c.worth, c.blemish
	}
	return r, true
}

// panelEdges returns the edges of the panel between nodes i and j of a bay.
func (s *stretch) panelEdges(c *cover, i, j int) (left, right fraction.Length) {
	half := s.room.Gaps.Seam.Div(2)
	if s.room.Profile.Boards {
		half = fraction.Length{}
	}
	left, right = c.at[i], c.at[j]
	if i > 0 {
		left = left.Add(half)
	}
	if j < len(c.at)-1 {
		right = right.Sub(half)
	}
	return left, right
}

// leastPanel returns the width under which a panel is made only if forced.
func (s *stretch) leastPanel() fraction.Length {
	if s.room.Profile.Boards {
		return fraction.Length{}
	}
	return s.pitch.Scale(s.room.Priorities.LeastPanel)
}

// fits reports whether some sheet gives a panel from left to right with the
// pattern's origin at o, upright or turned.
func (s *stretch) fits(o, left, right fraction.Length) bool {
	width, need := right.Sub(left), left.Sub(o).Mod(s.pitch)
	for i := range s.sheets {
		sheet := &s.sheets[i]
		at := need.Sub(sheet.leftPhase).Mod(s.pitch)
		wide := at.Add(width).Compare(sheet.width) <= 0
		if !wide && s.turns {
			at = s.axis.Mul(2).Sub(need).Sub(sheet.leftPhase).Sub(width).Mod(s.pitch)
			wide = at.Add(width).Compare(sheet.width) <= 0
		}
		if wide && (s.most.Compare(sheet.length) <= 0 || s.tallestIn(left, right).Compare(sheet.length) <= 0) {
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

// wantsWholeEnd reports whether the run has one exposed end that is seen, which
// then has to be whole.
func (s *stretch) wantsWholeEnd() bool {
	seen := func(e End) bool { return e.Kind == Exposed && (e.Prominence == nil || e.Prominence.Sign() > 0) }
	run := &s.room.Runs[s.run]
	return !s.room.Priorities.WholeEnd.IsZero() && seen(run.Left) != seen(run.Right)
}
