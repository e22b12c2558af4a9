package wall

import (
	"cmp"
	"container/heap"
	"context"
	"flag"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

// exactCost is a cost without any rounding.
type exactCost struct {
	broken  int
	blemish fraction.Ratio
	pieces  int
	uneven  fraction.Length
	whole   int
	narrow  fraction.Length
}

// wide is wider than any panel.
var wide = fraction.Inches(1 << 30)

func (a exactCost) plus(b exactCost) exactCost {
	return exactCost{a.broken + b.broken, a.blemish.Add(b.blemish), a.pieces + b.pieces, a.uneven.Add(b.uneven), a.whole + b.whole, fraction.Min(a.narrow, b.narrow)}
}

func (a exactCost) compare(b exactCost) int {
	return cmp.Or(cmp.Compare(a.broken, b.broken), a.blemish.Compare(b.blemish), cmp.Compare(a.pieces, b.pieces),
		a.uneven.Compare(b.uneven), cmp.Compare(b.whole, a.whole), b.narrow.Compare(a.narrow))
}

// add adds the terms to the blemish.
func (a exactCost) add(terms ...Blemish) exactCost {
	for _, t := range terms {
		a.blemish = a.blemish.Add(t.cost())
	}
	return a
}

// enumerate returns the costs of all layouts of a room that break no more rules than they must, in
// order, or false if there are too many. It uses none of the search: it walks through every choice
// of origins, breaks, corners and seams.
func enumerate(m *Model, most int) ([]exactCost, bool) {
	e := &enumeration{m: m, most: most, search: &search{ctx: context.Background(), m: m, programs: map[*stretch]*program{}}, seam: map[placed]exactCost{}}
	var butts []bool
	for _, first := range []bool{false, true} {
		if first && !(m.room.Closed && m.sharesInside(len(m.room.Runs)-1)) {
			continue
		}
		e.run(0, append(butts, first), nil, exactCost{narrow: wide})
	}
	if e.met > most {
		return nil, false
	}
	slices.SortFunc(e.costs, exactCost.compare)
	for i, r := range e.costs {
		if r.broken > e.costs[0].broken {
			return e.costs[:i], true
		}
	}
	return e.costs, true
}

type enumeration struct {
	m      *Model
	most   int
	search *search // has the programs, not run
	costs  []exactCost
	met    int                  // layouts, those too that no left limit asks for
	steps  int                  // calls of seams
	first  int                  // residue of the first stretch
	used   [][2]int             // run and residue of each stretch so far
	seam   map[placed]exactCost // what exactSeam gave
}

// placed is a place on a stretch whose origin is given.
type placed struct {
	s    *stretch
	o, x fraction.Length
}

// run goes on with run r; butts[r] says whether it butts at its left end, before is the residue at
// the right end of the run before.
func (e *enumeration) run(r int, butts []bool, before *int, sofar exactCost) {
	m := e.m
	if e.met > e.most {
		return
	}
	if r == len(m.room.Runs) {
		if m.ring() && !slices.Contains(butts, !butts[0]) {
			return // each run would come after the one before it, all round
		}
		e.met++
		for _, u := range e.used {
			if len(m.varying) > 0 && !slices.ContainsFunc(m.limits[u[0]][u[1]], func(l limit) bool {
				return l.run == everyLayout || l.butts == butts[l.run]
			}) {
				return // no left limit of this layout asks for it
			}
		}
		if m.room.Closed && m.sharesInside(r-1) {
			u := m.residues[r-1][*before].Add(m.shift[r])
			mismatch := fraction.Circular(u, m.residues[0][e.first], m.room.Profile.Pitch())
			term, err := m.cornerTerm(r-1, butts[0], mismatch)
			if err != nil {
				return
			}
			sofar = sofar.add(term)
		}
		e.costs = append(e.costs, sofar)
		return
	}
	rights := []bool{false}
	switch {
	case m.sharesInside(r) && r == len(m.room.Runs)-1:
		rights = []bool{!butts[0]}
	case m.sharesInside(r):
		rights = []bool{false, true}
	}
	breaks := len(m.room.Runs[r].Breaks)
	for _, right := range rights {
		for used := range 1 << breaks {
			cuts := []int{-1}
			for k := range breaks {
				if used>>k&1 == 1 {
					cuts = append(cuts, k)
				}
			}
			e.stretches(r, append(cuts, breaks), butts, right, before, sofar)
		}
	}
}

// stretches goes through the origins of the stretches between the used breaks.
func (e *enumeration) stretches(r int, cuts []int, butts []bool, right bool, before *int, sofar exactCost) {
	m := e.m
	if len(cuts) == 1 {
		e.run(r+1, append(slices.Clone(butts), m.sharesInside(r) && !right), before, sofar)
		return
	}
	s, err := m.stretch(r, cuts[0], cuts[1], fitting{buttsLeft: butts[r], buttsRight: right})
	if err != nil {
		return
	}
	for i := range m.residues[r] {
		joint := exactCost{narrow: wide}
		switch {
		case cuts[0] >= 0:
			if i == *before {
				continue
			}
			terms, err := m.breakTerms(r, cuts[0], fraction.Circular(m.residues[r][i], m.residues[r][*before], m.room.Profile.Pitch()))
			if err != nil {
				continue
			}
			at := m.room.Runs[r].Breaks[cuts[0]].At
			if joint = joint.add(terms...); len(terms) > 1 { // there is a seam
				joint.broken = atBoxes(m.room, r, at)
			}
		case r > 0 && m.sharesInside(r-1):
			term, err := m.cornerTerm(r-1, butts[r], fraction.Circular(m.residues[r][i], m.residues[r-1][*before], m.room.Profile.Pitch()))
			if err != nil {
				continue
			}
			joint = joint.add(term)
		}
		if r == 0 && cuts[0] < 0 {
			e.first = i
		}
		o := m.origin(r, i)
		e.used = append(e.used, [2]int{r, i})
		e.bays(e.search.program(s), o, 0, sofar.plus(joint).plus(exactEdges(s, o)), func(all exactCost) {
			e.stretches(r, cuts[1:], butts, right, &i, all)
		})
		e.used = e.used[:len(e.used)-1]
	}
}

// bays goes through the seams of bay k and those after it.
func (e *enumeration) bays(s *program, o fraction.Length, k int, sofar exactCost, then func(exactCost)) {
	if k == len(s.bays) {
		then(sofar)
		return
	}
	b := s.bays[k]
	xs := s.lines(o, b)
	found := false
	next := func(all exactCost) {
		found = true
		e.bays(s, o, k+1, all, then)
	}
	e.seams(s, o, b, xs, b.left, sofar, next)
	if !found {
		e.seams(s, o, b, s.marks(xs, b), b.left, sofar, next)
	}
}

// seams covers the rest of a bay from left with panels that end at one of xs.
func (e *enumeration) seams(s *program, o fraction.Length, b span, xs []fraction.Length, left fraction.Length, sofar exactCost, then func(exactCost)) {
	if e.steps++; e.steps > 1000*e.most { // seams at every mark, and hardly a way to the end
		e.met = e.most + 1
	}
	if e.met > e.most {
		return
	}
	half := s.room.Gaps.Seam.Div(2)
	panel := func(right fraction.Length) (exactCost, bool) {
		if !left.Less(right) || !s.fits(o, left, right) {
			return exactCost{}, false
		}
		pieces := len(s.region.band(left, right, s.room.Mark))
		r := exactCost{pieces: pieces, narrow: right.Sub(left)}
		if right.Sub(left).Less(s.leastPanel) {
			r.broken = 1
		}
		if right.Sub(left) == s.sheets[0].Width { // the room has one kind of sheets, as long as all its walls
			r.whole = 1
		}
		return r, true
	}
	for i, x := range xs {
		if r, ok := panel(x.Sub(half)); ok {
			e.seams(s, o, b, xs[i+1:], x.Add(half), sofar.plus(r).plus(e.seamCost(placed{s.stretch, o, x})), then)
		}
	}
	if r, ok := panel(b.right); ok {
		then(sofar.plus(r))
	}
}

// atBoxes counts the boxes of a run that a seam at x goes through, or comes nearer to than it should.
func atBoxes(room *Room, r int, x fraction.Length) (n int) {
	for _, o := range room.Runs[r].Openings {
		left, right := o.Outline[0].X, o.Outline[0].X
		for _, p := range o.Outline {
			left, right = fraction.Min(left, p.X), fraction.Max(right, p.X)
		}
		if o.Kind == Box && x.Sub(left).Compare(room.Priorities.BoxClear.Neg()) > 0 && x.Sub(right).Compare(room.Priorities.BoxClear) < 0 {
			n++
		}
	}
	return n
}

// seamCost returns the cost of a seam, which the same panels to its left meet again and again.
func (e *enumeration) seamCost(at placed) exactCost {
	c, ok := e.seam[at]
	if !ok {
		c = exactSeam(at.s, at.o, at.x)
		e.seam[at] = c
	}
	return c
}

// exactSeam returns the cost of a seam at x.
func exactSeam(s *stretch, o, x fraction.Length) exactCost {
	c := exactCost{broken: atBoxes(s.room, s.run, x), narrow: wide}
	return c.add(s.seamTerms(x)...).add(s.lineTerm(o, x))
}

// exactEdges returns the cost of the edges and of seams to installed panels, the origin at o.
func exactEdges(s *stretch, o fraction.Length) exactCost {
	c := exactCost{broken: int(s.edgeCostAt(o).broken), uneven: s.uneven(o), narrow: wide}
	c = c.add(s.edgeTerms(o)...)
	for _, x := range s.beside {
		c = c.add(s.seamTerms(x)...).add(s.lineTerm(o, x))
	}
	return c
}

var (
	mostLayouts = flag.Int("enumerate", 2_000, "layouts of one room to enumerate at most")
	firstOnes   = flag.Int("first", 50, "layouts of each room to compare with the enumeration")
)

// TestBoundsAreMet is the law that makes the search quick: what the dynamic programmes promise of
// the best way to go on is what it costs, to the last tie-break, so that no path is followed in
// vain. A closed room's first bound leaves out the corner where it closes.
func TestBoundsAreMet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		keepSome(t, &room)
		m, err := NewModel(context.Background(), room)
		if err != nil || room.Closed {
			t.Skip("no room, or a closed one")
		}
		s, err := m.newSearch(context.Background(), nil)
		if err != nil {
			t.Skip("no room, or a closed one")
		}
		promised := s.frontier[0].bound
		for {
			p := s.frontier[0]
			if p.bound != promised {
				t.Fatalf("the best path left is %+v; promised were %+v", p.bound, promised)
			}
			if p.program == nil && p.j.run == len(room.Runs) {
				return
			}
			heap.Pop(&s.frontier)
			p.grow(&s.frontier)
		}
	})
}

// TestLayoutsComeInOrderOfEnumeration compares the search with plain enumeration over the same
// finite set of choices. For thousands of rooms run it with -rapid.checks=5000.
func TestLayoutsComeInOrderOfEnumeration(t *testing.T) {
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		keepSome(t, &room)
		if room.Validate() != nil {
			t.Skip("not a valid room")
		}
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Skip("gaps leave nothing")
		}
		want, ok := enumerate(m, *mostLayouts)
		if !ok {
			t.Skip("too many layouts to enumerate")
		}
		s, err := m.newSearch(context.Background(), nil)
		if err != nil {
			if len(want) > 0 {
				t.Fatalf("search found none (%v), enumeration %d", err, len(want))
			}
			return
		}
		compared++
		for i := range min(*firstOnes, len(want)) {
			got, more, err := s.next()
			if err != nil || !more {
				t.Fatalf("layout %d of %d: more %v, error %v", i, len(want), more, err)
			}
			// Beside a sloping door a panel stops a mark or less before the line, or within what is snapped
			// beyond it.
			narrow, most := narrowest(got), want[i].narrow
			if off := most.Sub(narrow); off.Less(room.Snap.Neg().Mul(2)) || room.Mark.Mul(2).Less(off) {
				t.Fatalf("layout %d: the narrowest panel is %v wide; enumeration gives %v", i, narrow, most)
			}
			if got.Total != want[i].blemish || got.Broken != want[i].broken || len(got.Pieces) != want[i].pieces {
				t.Fatalf("layout %d of %d has blemish %v, %d broken, %d pieces; enumeration gives %+v",
					i, len(want), got.Total, got.Broken, len(got.Pieces), want[i])
			}
		}
		if len(want) <= *firstOnes {
			if _, more, _ := s.next(); more {
				t.Fatalf("the search goes on after all %d layouts", len(want))
			}
		}
	})
	if compared == 0 {
		t.Error("no room was compared")
	}
	t.Logf("%d rooms compared", compared)
}

func narrowest(l Layout) fraction.Length {
	least := wide
	for _, run := range l.Runs {
		for _, p := range run.Panels {
			least = fraction.Min(least, p.Right.Sub(p.Left))
		}
	}
	return least
}
