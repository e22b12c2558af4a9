package wall

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// program covers a stretch with panels, in one search: for a pattern with an origin, dynamic
// programming from the right finds the best way to go on from every place where a seam may fall.
type program struct {
	*stretch
	search *search
	sheets []nest.Stock    // of the search
	widest fraction.Length // of the sheets
	short  bool            // some sheet is shorter than the tallest panel

	known   []bool // by residue
	bests   []cost // of the whole stretch, where known; infinite where it cannot be covered
	solved  map[int]*solution
	tallest map[span]fraction.Length
	priced  [][][]pricedPart // of the region, by the slots in which a panel starts and stops, nil where not known yet

	columnStarts, columnStops []int64 // where a part starts and stops that does so inside its panel, by column, in steps
}

// program returns the program of a stretch, made once in each search.
func (s *search) program(st *stretch) *program {
	if p, ok := s.programs[st]; ok {
		return p
	}
	n := len(st.residues[st.run])
	p := &program{stretch: st, search: s, sheets: s.m.sheets, known: make([]bool, n), bests: make([]cost, n),
		solved: map[int]*solution{}, tallest: map[span]fraction.Length{}, priced: s.priced[st.region]}
	if s.priced == nil {
		s.priced = map[*region][][][]pricedPart{}
	}
	if p.priced == nil {
		p.priced = make([][][]pricedPart, len(st.region.slots))
		s.priced[st.region] = p.priced
	}
	for _, sheet := range p.sheets {
		p.widest = fraction.Max(p.widest, sheet.Width)
		p.short = p.short || sheet.Length.Less(p.most)
	}
	s.programs[st] = p
	return p
}

// solution is a stretch whose pattern has an origin, with the tables of its program.
type solution struct {
	*program
	origin fraction.Length
	base   cost // of the edges, and of the seams that are given
	bays   []cover
}

// cover holds the nodes of one bay: node 0 is its left edge, the last one its right edge, those
// between are seams.
type cover struct {
	at          []fraction.Length
	left, right []fraction.Length // of the panel that starts, and of the one that stops at a node
	first, last []int             // the columns in which these panels start and stop
	from, to    []int             // and the slots, for an objective; else the columns too
	low, high   []int64           // left in steps, rounded up, and right, rounded down
	upright     []fraction.Length // the widest panel that starts at a node and comes from a sheet long enough for all
	turned      []fraction.Length // and the widest that stops at a node and is turned
	sheet       []fraction.Length // the width of a sheet that starts at a node and shows the pattern, 0 if none does
	whole       []int             // the node where the panel stops that is this whole sheet, -1 if there is none
	seam        []cost
	rest        []cost  // the best of everything right of a node in the stretch, its own seam left out
	ahead       []cost  // the same with its seam
	queues      [][]int // see cover

	// For an objective, where the parts of panels start and stop, by node, and the origin rounded down and up; all in steps.
	starts, stops         []int64
	starting, stopping    []int // slots
	originLow, originHigh int64
}

// best returns the cost of the stretch with residue i: of its edges and of the best cover of every
// bay, infinite where one cannot be covered.
func (p *program) best(i int) *cost {
	if !p.known[i] && p.whole != nil {
		p.search.program(p.whole).best(i)
	}
	if !p.known[i] {
		p.bests[i], p.known[i] = p.solve(i, nil), true
	}
	return &p.bests[i]
}

// shear finds the best cost of the shorn stretch, given the tables for the first bay of the whole one.
func (p *program) shear(c *cover, i int) {
	q := p.search.program(p.shorn)
	o := q.origin(q.run, i)
	left := q.bays[0].left
	c.left[0], c.low[0], c.first[0] = left, up(left, steps), p.region.columnFrom(0, left, false)
	c.upright[0], _ = q.widestAt(o, left, left)
	if p.search.objective != nil {
		c.starts[0], c.from[0] = q.startOf(left, 0), p.region.slotFrom(0, left, false)
	}
	c.rest[0] = infinite
	c.sheet[0] = q.sheetAt(o, left)
	c.whole[0] = c.stopOfSheet(0)
	s := p.stops(c, 0, len(c.at)-1)
	for j := s.far; j >= s.near; j-- {
		if j <= s.upright || p.gives(c, o, 0, j) {
			p.try(c, &s, 0, j, &c.rest[0])
		}
	}
	if c.rest[0].feasible() && q.agrees(o) {
		q.bests[i], q.known[i] = q.edgeCost(i).plus(c.rest[0]), true
	}
}

// solution returns the tables for residue i, with which the stretch can be covered.
func (p *program) solution(i int) *solution {
	sol, ok := p.solved[i]
	if !ok {
		o := p.origin(p.run, i)
		sol = &solution{program: p, origin: o, base: p.edgeCost(i), bays: make([]cover, len(p.bays))}
		p.solve(i, sol)
		p.solved[i] = sol
	}
	return sol
}

// solve runs the program for residue i and returns the best cost. It fills the tables of a solution,
// if there is one.
func (p *program) solve(i int, sol *solution) cost {
	o, after := p.origin(p.run, i), zeroCost
	if !p.agrees(o) {
		return infinite
	}
	for k := len(p.bays) - 1; k >= 0; k-- {
		c := &p.search.scratch
		if sol != nil {
			c = &sol.bays[k]
		}
		lines, seams := p.seamsOn(i, p.bays[k])
		period := len(p.phases)
		if len(p.room.Runs[p.run].Keep.Clear) > 0 {
			period = 0 // lines of a repeat may be left out
		}
		p.place(c, o, p.bays[k], lines, period)
		for n, seam := range seams {
			c.seam[n+1].blemish, c.seam[n+1].broken = seam.blemish, seam.broken
		}
		p.cover(c, o, after)
		best := c.rest[0]
		if k == 0 && sol == nil && p.shorn != nil {
			p.shear(c, i)
		}
		if !best.feasible() && !p.room.Profile.Boards && p.reaches(o, p.bays[k]) {
			marks := p.marks(lines, p.bays[k])
			p.place(c, o, p.bays[k], marks, 0)
			for n, x := range marks {
				seam := p.seamAt(o, x, false)
				c.seam[n+1].blemish, c.seam[n+1].broken = seam.blemish, seam.broken
			}
			p.cover(c, o, after)
			best = c.rest[0]
		}
		if after = best; !after.feasible() {
			return infinite
		}
	}
	return p.edgeCost(i).plus(after)
}

// reaches reports false only where sheets side by side cannot cover a bay, wherever the seams are and
// however long the sheets, the pattern's origin at o: from the last place where a panel may start it
// finds how far the sheets reach that start no later, each where it shows the pattern.
func (p *program) reaches(o fraction.Length, b span) bool {
	for start := b.left; ; {
		end := b.left
		for _, sheet := range p.sheets {
			phases := []fraction.Length{sheet.LeftPhase}
			if p.turns {
				phases = append(phases, p.axis.Mul(2).Sub(sheet.LeftPhase).Sub(sheet.Width))
			}
			for _, phase := range phases {
				end = fraction.Max(end, start.Sub(groove.Modulo(start.Sub(o).Sub(phase), p.pitch)).Add(sheet.Width))
			}
		}
		if b.right.Compare(end) <= 0 {
			return true
		}
		seam := end.Add(p.half)
		for _, c := range p.room.Runs[p.run].Keep.Clear {
			if c.From.Less(seam) && seam.Less(c.To) {
				seam = c.From
			}
		}
		if seam = seam.Add(p.half); seam.Compare(start) <= 0 {
			return false
		}
		start = seam
	}
}

// place makes the nodes of a bay with seams at xs, whose costs are not known yet. Seams a period
// apart are at the same phase of the pattern; 0 says that none need be.
func (p *program) place(c *cover, o fraction.Length, b span, xs []fraction.Length, period int) {
	n := len(xs) + 2
	c.at = append(append(append(c.at[:0], b.left), xs...), b.right)
	c.left, c.right = resized(c.left, n), resized(c.right, n)
	c.first, c.last = resized(c.first, n), resized(c.last, n)
	c.low, c.high = resized(c.low, n), resized(c.high, n)
	c.upright, c.turned = resized(c.upright, n), resized(c.turned, n)
	c.sheet, c.whole = resized(c.sheet, n), resized(c.whole, n)
	c.seam, c.rest, c.ahead = resized(c.seam, n), resized(c.rest, n), resized(c.ahead, n)
	first, last := 0, 0
	for i, x := range c.at {
		c.left[i], c.right[i] = x, x
		if i > 0 && i < n-1 {
			c.left[i], c.right[i] = x.Add(p.half), x.Sub(p.half)
		}
		first, last = p.region.columnFrom(first, c.left[i], false), p.region.columnFrom(last, c.right[i], true)
		c.first[i], c.last[i] = first, last
		c.low[i], c.high[i] = up(c.left[i], steps), down(c.right[i], steps)
		if period > 0 && i > period && i < n-1 {
			c.upright[i], c.turned[i], c.sheet[i] = c.upright[i-period], c.turned[i-period], c.sheet[i-period]
		} else {
			c.upright[i], c.turned[i] = p.widestAt(o, c.left[i], c.right[i])
			c.sheet[i] = p.sheetAt(o, c.left[i])
		}
		c.seam[i], c.rest[i], c.ahead[i] = zeroCost, infinite, infinite
	}
	for i := range n {
		c.whole[i] = c.stopOfSheet(i)
	}
	c.from, c.to = c.first, c.last
	if p.search.objective != nil {
		p.placeEnds(c, o)
	}
}

// sheetAt returns the width of the widest sheet long enough for all that shows the pattern, upright or
// turned, with its own edge at left; 0 where none does, and for boards, which are all whole.
func (p *program) sheetAt(o, left fraction.Length) (width fraction.Length) {
	for _, sheet := range p.sheets {
		if sheet.Length.Less(p.most) || p.room.Profile.Boards {
			continue
		}
		if groove.Modulo(left.Sub(o).Sub(sheet.LeftPhase), p.pitch).IsZero() || p.turns && p.turnedAt(o, left.Add(sheet.Width), &sheet).IsZero() {
			width = fraction.Max(width, sheet.Width)
		}
	}
	return width
}

// stopOfSheet returns the node at which the whole sheet stops that starts at node i, or -1.
func (c *cover) stopOfSheet(i int) int {
	if c.sheet[i].IsZero() {
		return -1
	}
	j, found := slices.BinarySearchFunc(c.right, c.left[i].Add(c.sheet[i]), fraction.Length.Compare)
	if !found {
		return -1
	}
	return j
}

// resized returns a slice of n elements, s itself where it has room for them.
func resized[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// widestAt returns the widest panels that a sheet long enough for all gives: upright from left on,
// and turned as far as right.
func (p *program) widestAt(o, left, right fraction.Length) (upright, turned fraction.Length) {
	for _, sheet := range p.sheets {
		if sheet.Length.Less(p.most) {
			continue
		}
		upright = fraction.Max(upright, sheet.Width.Sub(groove.Modulo(left.Sub(o).Sub(sheet.LeftPhase), p.pitch)))
		if p.turns {
			turned = fraction.Max(turned, sheet.Width.Sub(p.turnedAt(o, right, &sheet)))
		}
	}
	return upright, turned
}

// turnedAt returns where on the sheet a panel starts that is turned and stops at right.
func (p *program) turnedAt(o, right fraction.Length, sheet *nest.Stock) fraction.Length {
	return groove.Modulo(p.axis.Mul(2).Sub(right.Sub(o)).Sub(sheet.LeftPhase), p.pitch)
}

// cover runs the dynamic program over one bay. after is the best cost of the bays to its right.
//
// Within two slots, the one in which a panel starts and the one in which it stops, stopping at one
// node rather than at another costs as much more or less wherever the panel starts. So a monotone
// queue for each slot of stops has the least of a sliding window (the queue is folklore of dynamic
// programming): the time is in proportion to the nodes, and to ties.
func (p *program) cover(c *cover, o fraction.Length, after cost) {
	last := len(c.at) - 1
	c.rest[last], c.ahead[last] = after, after
	c.queues = resized(c.queues, len(p.region.slots))
	var entered int
	s, slot := stops{far: last}, -1
	for i := last - 1; i >= 0; i-- {
		check(p.search.ctx)
		if s = p.stops(c, i, s.far); p.search.count != nil && !p.search.objective.Measure.Additive() {
			s.settled = s.far + 1
		}
		if slot != c.from[i] {
			slot, entered = c.from[i], s.far+1
			for k := range c.queues {
				c.queues[k] = c.queues[k][:0]
			}
		}
		for entered > s.settled {
			if entered--; c.ahead[entered].feasible() {
				p.enter(c, &s, i, entered)
			}
		}
		best := &c.rest[i]
		if s.settled <= s.far {
			for k := c.to[s.settled]; k <= c.to[s.far]; k++ {
				p.leastOfQueue(c, &s, i, &c.queues[k], best)
			}
		}
		for j := s.far; j > s.upright; j-- {
			if !c.ahead[j].exceeds(best) && p.gives(c, o, i, j) {
				p.try(c, &s, i, j, best)
			}
		}
		for j := min(s.settled-1, s.upright); j >= s.near; j-- {
			p.try(c, &s, i, j, best)
		}
		if j := c.whole[i]; s.settled <= j && j <= s.upright {
			p.try(c, &s, i, j, best) // the queue leaves out that it is a whole sheet
		}
		if i > 0 && best.feasible() {
			sum := c.seam[i].plus(*best)
			c.ahead[i].set(&sum)
		}
	}
}

// enter puts node j on the queue of its slot. As long as the window of panels reaches it, those
// farther that cost more are not needed.
func (p *program) enter(c *cover, s *stops, i, j int) {
	queue := &c.queues[c.to[j]]
	var sum, other cost
	p.panelCost(c, s, i, j, &c.ahead[j], &sum)
	for n := len(*queue); n > 0; n-- {
		far := (*queue)[n-1]
		p.panelCost(c, s, i, far, &c.ahead[far], &other)
		if other.narrow = sum.narrow; other.compare(&sum) <= 0 {
			break
		}
		*queue = (*queue)[:n-1]
	}
	*queue = append(*queue, j)
}

// leastOfQueue tries the panels from node i to those of a queue, of which each costs no less than the
// one before, but that one more width may make up for a tie.
func (p *program) leastOfQueue(c *cover, s *stops, i int, queue *[]int, best *cost) {
	for len(*queue) > 0 && (*queue)[0] > s.far {
		*queue = (*queue)[1:]
	}
	tried := false
	var sum cost
	for _, j := range *queue {
		if j > s.upright {
			continue
		}
		if tried && c.high[j]-c.low[i] <= best.narrow || c.ahead[j].exceeds(best) {
			break
		}
		if tried && c.ahead[j].narrow <= best.narrow {
			continue
		}
		if p.panelCost(c, s, i, j, &c.ahead[j], &sum); sum.compare(best) < 0 {
			best.set(&sum)
		} else if sum.narrow = best.narrow; sum.compare(best) > 0 {
			break
		}
		tried = true
	}
}

// try makes the panel from node i to node j the best of those tried, if it is.
func (p *program) try(c *cover, s *stops, i, j int, best *cost) {
	if c.ahead[j].exceeds(best) {
		return // a panel costs nothing less than zero
	}
	var sum cost
	if p.sheetCost(c, s, i, j, &c.ahead[j], &sum); sum.compare(best) < 0 {
		best.set(&sum)
	}
}

// sheetCost finds what panelCost does, and counts the panel if it is a whole sheet.
func (p *program) sheetCost(c *cover, s *stops, i, j int, beyond, sum *cost) {
	p.panelCost(c, s, i, j, beyond, sum)
	if c.whole[i] == j {
		sum.whole++
	}
}

// stops are nodes at which panels can stop that start at one node of a bay.
type stops struct {
	near    int // the first
	whole   int // the first that makes a panel as wide as the least
	settled int // the first that makes one as wide and wider than a repeat, so that all its parts count
	upright int // the last that every long enough sheet's phase allows upright
	far     int // the last within a sheet's width
}

// stops returns where a panel can stop that starts at node i, no later than at node far.
func (p *program) stops(c *cover, i, far int) stops {
	left := c.left[i]
	if p.room.Profile.Boards {
		far = i + 1
	}
	for limit := left.Add(p.widest); limit.Less(c.right[far]); {
		far--
	}
	s := stops{near: i + 1, upright: far, far: far}
	for s.near <= far && !left.Less(c.right[s.near]) {
		s.near++
	}
	s.whole = s.near
	for limit := left.Add(p.leastPanel); s.whole <= far && c.right[s.whole].Less(limit); {
		s.whole++
	}
	s.settled = s.whole
	for limit := left.Add(p.settled); s.settled <= far && c.right[s.settled].Less(limit); {
		s.settled++
	}
	for limit := left.Add(c.upright[i]); s.upright >= s.near && limit.Less(c.right[s.upright]); {
		s.upright--
	}
	return s
}

// gives reports whether some sheet gives the panel between nodes i and j, wider than those that all
// long enough ones give upright.
func (p *program) gives(c *cover, o fraction.Length, i, j int) bool {
	return p.turns && c.right[j].Sub(c.left[i]).Compare(c.turned[j]) <= 0 || p.short && p.fits(o, c.left[i], c.right[j])
}

// panelCost sets sum to the cost of the panel between nodes i and j of a bay and of what lies beyond.
func (p *program) panelCost(c *cover, s *stops, i, j int, beyond, sum *cost) {
	sum.set(beyond)
	if j < s.whole {
		sum.broken++
	}
	sum.pieces += p.region.counts[c.first[i]][c.last[j]]
	sum.narrow = min(sum.narrow, c.high[j]-c.low[i])
	if o := p.search.objective; o != nil {
		if price := p.price(c, i, j); o.Weight.Sign() > 0 {
			sum.blemish = total(sum.blemish, price)
		} else {
			sum.price = total(sum.price, price)
		}
	}
}

// fits reports whether some sheet gives a panel, upright or turned, with the origin at o.
func (p *program) fits(o, left, right fraction.Length) bool {
	width := right.Sub(left)
	for _, sheet := range p.sheets {
		at := groove.Modulo(left.Sub(o).Sub(sheet.LeftPhase), p.pitch)
		if p.turns {
			at = fraction.Min(at, p.turnedAt(o, right, &sheet))
		}
		if at.Add(width).Compare(sheet.Width) <= 0 &&
			(p.most.Compare(sheet.Length) <= 0 || p.tallestIn(left, right).Compare(sheet.Length) <= 0) {
			return true
		}
	}
	return false
}

func (p *program) tallestIn(left, right fraction.Length) fraction.Length {
	key := span{left, right}
	if t, ok := p.tallest[key]; ok {
		return t
	}
	t := tallest(p.region.parts(p.region.columnFrom(0, left, false), p.region.columnFrom(0, right, true), left, right, p.room.Mark))
	p.tallest[key] = t
	return t
}
