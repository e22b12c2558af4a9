package wall

import (
	"cmp"
	"context"
	"slices"
	"sort"
	"sync"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// stretch is the part of a run in which one pattern runs on unbroken: between two breaks that are
// used, or the ends of the run.
type stretch struct {
	*Model
	run         int
	from, to    int // the breaks at its ends; -1 and the number of breaks for the run's own ends
	fit         fitting
	region      *region
	left, right fraction.Length // where its first panel starts and its last one stops
	edges       []edge
	bays        []span            // what panels cover without a break or a seam that is given
	beside      []fraction.Length // middles of the seam gaps beside installed panels, and of seams that are kept

	half       fraction.Length // of a seam's gap; boards stand joint to joint
	leastPanel fraction.Length // a narrower panel is made only if forced
	settled    fraction.Length // of a panel this wide the cost grows evenly with its width
	wholeEnd   bool            // the run has one exposed end that is seen, which then has to be whole
	pitch      fraction.Length
	phases     []fraction.Length // of the seam lines; of the joints of boards
	axis       fraction.Length   // of the pattern, if pieces can be turned
	turns      bool
	most       fraction.Length // no panel is taller

	keeper *stretch // of the run, has what seams cost
	shorn  *stretch // the one that this is but for a left end that butts, where all else is alike
	whole  *stretch // that of which this is shorn
	lock   sync.Mutex
	seams  []seams // by residue, behind the lock
	edged  []cost  // what edgeCost returns, by residue, behind the lock; no cost has narrow 0
}

// seams is what seams cost at the seam lines of a stretch.
type seams struct {
	at    []fraction.Length
	costs []seam
}

// seam is what a seam costs.
type seam struct {
	blemish int64
	broken  int32
}

func (m *Model) newStretch(ctx context.Context, r, from, to int, f fitting) (*stretch, error) {
	g, err := m.region(r, f)
	if err != nil {
		return nil, err
	}
	run, profile := &m.room.Runs[r], &m.room.Profile
	axis, _ := profile.Mirror()
	s := &stretch{Model: m, run: r, from: from, to: to, fit: f, region: g, left: g.left, right: g.right,
		pitch: profile.Pitch(), axis: axis, turns: profile.Turns(),
		phases: []fraction.Length{{}}, seams: make([]seams, len(m.residues[r])), edged: make([]cost, len(m.residues[r]))}
	s.keeper = s
	half := m.room.Gaps.Seam.Div(2)
	if !profile.Boards {
		s.half, s.leastPanel, s.phases = half, m.room.Narrowest(), profile.SeamLines()
	}
	s.settled = s.pitch.Add(m.room.Mark.Mul(4)) // beyond what rounding takes, and a measure leaves out
	bare := g.bareEnds()
	seen := func(e End, bare bool) bool {
		return e.Kind == Exposed && !bare && (e.Prominence == nil || e.Prominence.Sign() > 0)
	}
	s.wholeEnd = !m.room.Priorities.WholeEnd.IsZero() && seen(run.Left, bare[0]) != seen(run.Right, bare[1])
	if from >= 0 {
		_, s.left, _ = g.besideBreak(run.Breaks[from].At, half)
	}
	if to < len(run.Breaks) {
		s.right, _, _ = g.besideBreak(run.Breaks[to].At, half)
	}
	if s.left.Less(g.left) || g.right.Less(s.right) || !s.left.Less(g.right) || !g.left.Less(s.right) ||
		len(g.columns) == 0 && (from >= 0 || to < len(run.Breaks)) {
		return nil, &NoLayoutError{Run: run.Name, Reason: BreakOutside}
	}
	for _, e := range g.edges {
		if s.holds(run, e) {
			s.edges = append(s.edges, e)
		}
	}
	check(ctx)
	s.most = tallest(g.parts(0, len(g.columns)-1, g.left, g.right, m.room.Mark))
	return s, s.findBays()
}

// besideBreak returns where the panels beside a used break may reach to and start from: half a seam's
// gap from it. Where it stands at an opening that parts the run there is no seam, and what is
// panelled of the run on one side reaches to the opening.
func (g *region) besideBreak(at, half fraction.Length) (left, right fraction.Length, seam bool) {
	left, right = at.Sub(half), at.Add(half)
	switch before, after := g.columnAt(left, true) >= 0, g.columnAt(right, false) >= 0; {
	case before && after:
		return left, right, true
	case before:
		return right, right, false
	}
	return left, left, false
}

// holds reports whether the edge stands in this stretch: at a break itself the panelling that the
// edge bounds decides.
func (s *stretch) holds(run *Run, e edge) bool {
	side := 1 // of the edge, on which its panelling is
	if e.keepsLeft() {
		side = -1
	}
	beyond := func(k int) int { // of break k, as the edge lies
		left, right, _ := s.region.besideBreak(run.Breaks[k].At, s.room.Gaps.Seam.Div(2))
		return cmp.Or(e.x.Compare(left.Add(right).Div(2)), side)
	}
	return (s.from < 0 || beyond(s.from) > 0) && (s.to == len(run.Breaks) || beyond(s.to) < 0)
}

// findBays parts the spans of the stretch at the installed panels and the seams that are kept.
func (s *stretch) findBays() error {
	gap := s.half.Mul(2)
	for _, rest := range s.region.spans(s.left, s.right) {
		first := rest.left
		for _, in := range s.installed() {
			if !in.Left.Less(rest.right) || !first.Less(in.Right) {
				continue
			}
			if in.Left.Add(s.room.Snap).Less(rest.left) || rest.right.Add(s.room.Snap).Less(in.Right) {
				return &NoLayoutError{Run: s.room.Runs[s.run].Name, Reason: InstalledOutside, Path: fault.Of("Installed", slices.Index(s.room.Installed, in))}
			}
			if before := (span{rest.left, in.Left.Sub(gap)}); s.panelled(before) {
				s.bays = append(s.bays, before)
			}
			if s.panelled(span{first, in.Left}) {
				s.beside = append(s.beside, in.Left.Sub(s.half))
			}
			if s.panelled(span{in.Right, rest.right}) {
				s.beside = append(s.beside, in.Right.Add(s.half))
			}
			rest.left = in.Right.Add(gap)
		}
		if s.panelled(rest) {
			s.bays = append(s.bays, rest)
		}
	}
	s.beside = slices.Compact(s.beside) // two installed panels share their seam
	return s.keepSeams()
}

// panelled reports whether a piece is left in b. Between a sloping side and an installed panel that
// stops on a mark beside it there is none.
func (s *stretch) panelled(b span) bool {
	return b.left.Less(b.right) && len(s.region.band(b.left, b.right, s.room.Mark)) > 0
}

// installed returns the installed panels of the stretch from left to right.
func (s *stretch) installed() []Installed {
	var out []Installed
	for _, in := range s.room.Installed {
		if in.Run == s.run && s.left.Less(in.Right) && in.Left.Less(s.right) {
			out = append(out, in)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Left.Less(out[j].Left) })
	return out
}

// agrees reports whether the installed panels of the stretch show the pattern with its origin at o.
func (s *stretch) agrees(o fraction.Length) bool {
	return !slices.ContainsFunc(s.installed(), func(in Installed) bool { return fraction.Must(s.room.Profile.Phase(in.Left, o)) != in.LeftPhase })
}

// edgeCost returns the cost of the edges and of the seams that are given with residue i.
func (s *stretch) edgeCost(i int) cost {
	s.lock.Lock()
	defer s.lock.Unlock()
	if s.edged[i] == (cost{}) {
		s.edged[i] = s.edgeCostAt(s.origin(s.run, i))
	}
	return s.edged[i]
}

// edgeCostAt returns the same, the origin at o.
func (s *stretch) edgeCostAt(o fraction.Length) cost {
	c := zeroCost
	for _, t := range s.edgeTerms(o) {
		c.blemish = total(c.blemish, inGrains(t.cost()))
	}
	if s.wholeEnd && slices.ContainsFunc(s.edges, func(e edge) bool {
		return e.kind == ExposedEnd && !e.weight.IsZero() && !e.whole(&s.room.Profile, o)
	}) {
		c.broken = 1 // one rule, also where an opening parts the end
	}
	c.uneven = down(s.uneven(o), steps)
	for _, x := range s.beside {
		c.blemish = total(c.blemish, s.seamAt(o, x, false).blemish) // what it breaks is there already
	}
	return c
}

// seamAt returns what a seam at x costs; onLine says that x is known to be a seam line.
func (s *stretch) seamAt(o, x fraction.Length, onLine bool) (c seam) {
	if s.room.Profile.Boards {
		return c
	}
	for _, t := range s.seamTerms(x) {
		c.blemish = total(c.blemish, inGrains(t.cost()))
	}
	if !onLine {
		term := s.lineTerm(o, x)
		c.blemish = total(c.blemish, inGrains(term.cost()))
	}
	c.broken = int32(len(s.room.BoxesAt(s.run, x)))
	return c
}

// BoxesAt returns the indices of the openings of a run that are boxes through which a seam at x goes,
// or to which it comes nearer than box_clear; none where there is no such run or x is beyond all
// numbers.
func (room *Room) BoxesAt(run int, x fraction.Length) (boxes []int) {
	if room == nil || run < 0 || run >= len(room.Runs) {
		return nil
	}
	var err error
	defer fraction.Catch(&err)
	clear := room.Priorities.BoxClear
	for i := range room.Runs[run].Openings {
		o := &room.Runs[run].Openings[i]
		if o.Kind != Box {
			continue
		}
		if lo, hi := o.Bounds(); lo.X.Sub(clear).Less(x) && x.Less(hi.X.Add(clear)) {
			boxes = append(boxes, i)
		}
	}
	return boxes
}

// seamsAt returns what seams cost at the seam lines xs, the pattern's origin at o.
func (s *stretch) seamsAt(o fraction.Length, xs []fraction.Length) []seam {
	costs := make([]seam, len(xs))
	for n, x := range xs {
		costs[n] = s.seamAt(o, x, true)
	}
	return costs
}

// seamsOn returns the seam lines of a bay with residue i, and what seams cost there.
func (s *stretch) seamsOn(i int, b span) (at []fraction.Length, costs []seam) {
	if s.pitch.IsZero() { // where seams of plain sheets are tried depends on the bay
		at = s.lines(fraction.Length{}, b)
		return at, s.seamsAt(fraction.Length{}, at)
	}
	k := s.keeper
	k.lock.Lock()
	defer k.lock.Unlock()
	kept := &k.seams[i]
	if kept.costs == nil {
		o := k.origin(k.run, i)
		at := k.lines(o, span{k.left, k.right})
		*kept = seams{at, k.seamsAt(o, at)}
	}
	from, found := slices.BinarySearchFunc(kept.at, b.left.Add(s.half), fraction.Length.Compare)
	if found {
		from++
	}
	to, _ := slices.BinarySearchFunc(kept.at, b.right.Sub(s.half), fraction.Length.Compare)
	to = max(from, to)
	return kept.at[from:to], kept.costs[from:to]
}

// seesAsDoes reports whether a seam anywhere in s costs what it does in t, which reaches as far or
// farther: whether no edge that is farther from the wall's ends differs.
func (s *stretch) seesAsDoes(t *stretch) bool {
	run := &s.room.Runs[s.run]
	inner := func(g *region) []edge {
		return slices.DeleteFunc(slices.Clone(g.edges), func(e edge) bool { return e.end })
	}
	return run.Left.Lean.IsZero() && run.Right.Lean.IsZero() && slices.Equal(inner(s.region), inner(t.region))
}

// shearsTo reports whether t, whose left end butts, is s but for where its first panel starts, and
// has the same seam lines: plain sheets have others.
func (s *stretch) shearsTo(t *stretch) bool {
	if s.pitch.IsZero() || !t.seesAsDoes(s) || len(s.bays) == 0 || len(t.bays) != len(s.bays) || t.most != s.most ||
		t.bays[0].right != s.bays[0].right || !slices.Equal(t.bays[1:], s.bays[1:]) {
		return false
	}
	left := t.bays[0].left
	same, cut := t.region.columns, s.region.columns[s.region.columnFrom(0, left, false):]
	return len(same) == len(cut) && same[0].left == left && same[0].level() && cut[0].level() && same[0].alike(&cut[0]) &&
		slices.EqualFunc(same[1:], cut[1:], func(a, b column) bool { return a.left == b.left && a.alike(&b) })
}

// lines returns the seam lines within the bay that no stretch without seams has, from left to right,
// the pattern's origin at o.
func (s *stretch) lines(o fraction.Length, b span) (out []fraction.Length) {
	from, to := b.left.Add(s.half), b.right.Sub(s.half)
	if s.pitch.IsZero() {
		return s.open(s.plain(from, to))
	}
	var next []fraction.Length // the first of each phase, then those a pitch on
	for _, phase := range s.phases {
		x := from.Add(o.Add(phase).Sub(from).Mod(s.pitch))
		if x == from {
			x = x.Add(s.pitch)
		}
		next = append(next, x)
	}
	slices.SortFunc(next, fraction.Length.Compare)
	for len(next) > 0 {
		for i, x := range next {
			if !x.Less(to) {
				return s.open(out)
			}
			out, next[i] = append(out, x), x.Add(s.pitch)
		}
	}
	return out
}

// plainStep is how many marks of the tape lie between the places that are tried on plain sheets, and
// plainLeast what lies between them at least.
const plainStep = 4

var plainLeast = fraction.Of(1, 8)

// plain returns where seams of plain sheets are tried, as one place is as good as the next: what
// whole sheets reach from both ends, clear of boxes by as much as is wanted, at the ends of stretches
// without seams, and some marks between.
func (s *stretch) plain(from, to fraction.Length) (out []fraction.Length) {
	add := func(x, step fraction.Length) {
		for n := 0; n < mostRepeats && from.Less(x) && x.Less(to) && !step.IsZero(); n++ {
			out = append(out, x)
			x = x.Add(step)
		}
	}
	once, step := to.Sub(from), s.room.Mark.Mul(plainStep)
	for step.Sign() > 0 && step.Less(plainLeast) {
		step = step.Mul(2)
	}
	for _, sheet := range s.sheets {
		whole := sheet.Width.Add(s.half.Mul(2))
		add(from.Add(sheet.Width), whole)
		add(to.Sub(sheet.Width), whole.Neg())
	}
	add(floor(from, step).Add(step), step)
	clear := s.room.Priorities.BoxClear
	for _, o := range s.room.Runs[s.run].Openings {
		if lo, hi := o.Bounds(); o.Kind == Box {
			add(lo.X.Sub(clear), once)
			add(hi.X.Add(clear), once)
		}
	}
	for _, c := range s.room.Runs[s.run].Keep.Clear {
		add(c.From, once)
		add(c.To, once)
	}
	slices.SortFunc(out, fraction.Length.Compare)
	return slices.Compact(out)
}

// marks returns the tape's marks in the bay together with the seam lines: the places that are tried
// where the lines alone cannot cover it.
func (s *stretch) marks(lines []fraction.Length, b span) []fraction.Length {
	mark := s.room.Mark
	if mark.IsZero() {
		return lines
	}
	out := slices.Clone(lines)
	from, to := b.left.Add(s.half), b.right.Sub(s.half)
	for x := floor(from, mark).Add(mark); x.Less(to); x = x.Add(mark) {
		out = append(out, x)
	}
	slices.SortFunc(out, fraction.Length.Compare)
	return s.open(slices.Compact(out))
}
