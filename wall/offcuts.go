package wall

import (
	"cmp"
	"context"
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"sync"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// Offcuts says what sheets are worth to [Seams.FromOffcuts]. Strips run across a sheet, panels are cut
// from strips one after another, and what a strip has left is held for the panels that follow.
type Offcuts struct {
	// Stock is the kind of stock that strips are cut from.
	Stock nest.Stock

	// Of is the value of a strip of this height, and Sheet that of a whole sheet, above 0.
	Of    func(height fraction.Length) int64
	Sheet int64

	// Weight is the blemish that a sheet counts as.
	Weight fraction.Ratio

	Order    OffcutOrder
	Leftward bool // runs are covered from right to left, and strips used from the right

	// Shuffle, where it is not 0, is the seed of another layout: bays take their panels in a random order in place of Order,
	// and strips are worth up to varied permille more or less.
	Shuffle uint64
}

// varied is what a shuffle makes strips worth more or less at most, in permille.
const varied = 200

// OffcutOrder is the order in which the bays of the runs take their panels.
type OffcutOrder uint8

// The orders. Equal heights go as the runs do.
const (
	ByRun OffcutOrder = iota
	TallestFirst
	LowestFirst
)

// Seams is a layout whose origins and fittings stay and whose seams can be chosen anew. It may be
// used by several goroutines at once.
type Seams struct {
	m       *Model
	legs    []leg
	bays    []offcutBay
	heights []fraction.Length // of pieces
	high    []int64           // the same in steps
	pitch   int64             // in steps
	kerf    int64
	spare   sync.Pool // of *buffers
}

// offcutBay is a bay with the panels that can cover it, in the order of their left nodes.
type offcutBay struct {
	leg, bay           int
	tallest            fraction.Length
	turns              bool
	origin, doubleAxis int64
	seam               []int64 // penalty of a seam, by node
	low, high          []int64 // where a panel starts and stops, by node
	panels             []offcutPanel
	pieces             [][]offcutPart
}

// offcutPanel is a panel from node i to node j. There can be millions.
type offcutPanel struct {
	i, j   int32
	pieces int32 // a number in pieces of the bay
	broken bool  // it is narrower than the least
}

// offcutPart is a piece of panels, the tallest first: that is cut from an offcut or a new strip, others
// are valued by their width. It is no wider than the panel and lies between left and right.
type offcutPart struct {
	height      int32 // a number in heights
	left, right int64
}

// within returns where a piece of a panel starts and stops.
func (b *offcutBay) within(p *offcutPanel, q *offcutPart) (left, right int64) {
	return max(b.low[p.i], q.left), min(b.high[p.j], q.right)
}

// Penalties count in 1/coarse grains. A hard rule that is broken counts as more than any layout's
// blemish, a panel as hardly anything: of equal layouts the one of fewer panels is found.
const (
	coarse        = 1 << 12
	brokenPenalty = 1 << 48
	panelPenalty  = grains / coarse >> 13
	mostLabels    = 12 // kept at a node, those of least penalty
)

// Seams returns the seams of a layout of the room, to be chosen anew. It takes time in proportion to
// the seam lines times those within one sheet.
func (m *Model) Seams(ctx context.Context, l *Layout) (x *Seams, err error) {
	defer fraction.Catch(&err)
	if m == nil || m.room == nil {
		return nil, noModel()
	}
	if l == nil || len(l.Runs) != len(m.room.Runs) {
		return nil, notItsLayout()
	}
	if ctx == nil {
		ctx = context.Background()
	}
	s := &search{ctx: ctx, m: m, least: -1, programs: map[*stretch]*program{}}
	x = &Seams{m: m, pitch: down(m.room.Profile.Pitch(), steps), kerf: up(m.room.Saw.Kerf, steps)}
	if x.legs, err = s.legsOf(l); err != nil {
		return nil, err
	}
	known := map[fraction.Length]int32{}
	for n, leg := range x.legs {
		for k := range leg.sol.bays {
			check(ctx)
			x.bays = append(x.bays, x.bayOf(n, k, known))
		}
	}
	return x, nil
}

func notItsLayout() error { return &fault.Fault{Want: "a layout of the room of the model"} }

// legsOf returns the stretches of a layout, without its seams.
func (s *search) legsOf(l *Layout) (legs []leg, err error) {
	m, pitch := s.m, s.m.room.Profile.Pitch()
	butts := func(corner, r int) bool {
		return m.sharesInside(corner) && l.Runs[corner].Corner != nil && l.Runs[corner].Corner.Butts == r
	}
	for r := range l.Runs {
		run, fit := &l.Runs[r], fitting{buttsLeft: butts(m.before(r), r), buttsRight: butts(r, r)}
		ends := []int{-1}
		for k, b := range m.room.Runs[r].Breaks {
			if slices.ContainsFunc(run.Restarts, func(x Restart) bool { return x.At == b.At }) {
				ends = append(ends, k)
			}
		}
		ends = append(ends, len(m.room.Runs[r].Breaks))
		last := len(ends) - 2
		for k := range last + 1 {
			st := fraction.Must(m.stretch(r, ends[k], ends[k+1], fit))
			var origin fraction.Length
			switch {
			case k == 0:
				foot, _ := st.region.endAt(true)
				origin = foot.Sub(run.EndPhases[0])
			case k == last:
				foot, _ := st.region.endAt(false)
				origin = foot.Sub(run.EndPhases[1])
			case run.SetOut.Direction == Left: // from right to left, each with the origin to its left
				origin = run.Restarts[last-1-k].Origin
			default:
				origin = run.Restarts[k-1].Origin
			}
			p, i := s.program(st), slices.Index(m.origins[r], groove.Modulo(origin, pitch))
			if i < 0 || !p.best(i).feasible() {
				return nil, notItsLayout()
			}
			next := junction{run: r, from: ends[k+1], butts: fit.buttsLeft}
			if k == last {
				next = junction{run: r + 1, from: -1, butts: m.sharesInside(r) && !fit.buttsRight}
			}
			legs = append(legs, leg{sol: p.solution(i), residue: i, next: next})
		}
	}
	return legs, nil
}

// bayOf returns bay k of leg n with all panels that can cover it.
func (x *Seams) bayOf(n, k int, known map[fraction.Length]int32) offcutBay {
	p, o, c := x.legs[n].sol.program, x.legs[n].sol.origin, &x.legs[n].sol.bays[k]
	b := offcutBay{leg: n, bay: k, tallest: p.most, turns: p.turns, origin: down(o, steps), doubleAxis: 2 * down(p.axis, steps),
		seam: make([]int64, len(c.at)), low: c.low, high: c.high}
	for j := 1; j < len(c.at)-1; j++ {
		b.seam[j] = int64(c.seam[j].broken)*brokenPenalty + c.seam[j].blemish/coarse
	}
	numbers := map[[2]int]int32{} // of the pieces of panels by the columns in which these start and stop
	s := stops{far: len(c.at) - 1}
	for i := range len(c.at) - 1 {
		if !c.rest[i].feasible() {
			continue
		}
		s = p.stops(c, i, len(c.at)-1)
		for j := s.near; j <= s.far; j++ {
			if !c.rest[j].feasible() || j > s.upright && !p.gives(c, o, i, j) {
				continue
			}
			first, last := c.first[i], c.last[j]
			number, ok := numbers[[2]int{first, last}]
			if !ok {
				parts := p.region.parts(first, last, c.left[i], c.right[j], p.room.Mark)
				slices.SortStableFunc(parts, func(a, b part) int { return atMost(b.top, b.bottom).Compare(atMost(a.top, a.bottom)) })
				number = int32(len(b.pieces))
				b.pieces = append(b.pieces, x.pieces(p, first, last, parts, known))
				if !slices.ContainsFunc(parts, p.slopes) {
					numbers[[2]int{first, last}] = number
				}
			}
			b.panels = append(b.panels, offcutPanel{int32(i), int32(j), number, j < s.whole})
		}
	}
	return b
}

// pieces returns the pieces of panels that start in column first and stop in column last.
func (x *Seams) pieces(p *program, first, last int, parts []part, known map[fraction.Length]int32) (pieces []offcutPart) {
	columns := p.region.columns
	for _, q := range parts {
		piece := offcutPart{left: math.MinInt64, right: math.MaxInt64}
		if first < q.first {
			piece.left = down(columns[q.first].left, steps)
		}
		if q.last < last {
			piece.right = up(columns[q.last].right, steps)
		}
		h, ok := atMost(q.top, q.bottom), false
		if piece.height, ok = known[h]; !ok {
			piece.height = int32(len(x.heights))
			known[h], x.heights, x.high = piece.height, append(x.heights, h), append(x.high, up(h, steps))
		}
		pieces = append(pieces, piece)
	}
	return pieces
}

// Panels returns how many panels can cover a part of the room, where lines slope with their pieces: the memory that x takes
// grows with it.
func (x *Seams) Panels() (n int) {
	if x == nil {
		return 0
	}
	for i := range x.bays {
		n += len(x.bays[i].panels)
		for _, pieces := range x.bays[i].pieces {
			n += 2 * (1 + len(pieces)) // each is as large as two panels
		}
	}
	return n
}

// FromOffcuts returns the layout with the same origins and fittings whose seams are chosen so that
// panels come from what others leave over: of the ways to take panel after panel from the offcut at
// hand or from a new strip, the one of least blemish and weighted sheets. It is false where no way
// is found. This is a shortest path with resources by label setting (M. Desrochers and F. Soumis, "A
// generalized permanent labelling algorithm for the shortest path problem with time windows", INFOR
// 26, 1988), with only so many labels at a node and one offcut held: what it finds is no bound, and
// Layout.Floor is 0.
//
// It takes time in proportion to the seam lines times those within one sheet.
func (x *Seams) FromOffcuts(ctx context.Context, o Offcuts) (layout Layout, found bool, err error) {
	defer fraction.Catch(&err)
	if x == nil || x.m == nil {
		return Layout{}, false, noModel()
	}
	if o.Of == nil || o.Sheet <= 0 {
		return Layout{}, false, &fault.Fault{Path: fault.Of("Of"), Want: "a function that says what a strip is worth, and the worth of a sheet"}
	}
	if ctx == nil {
		ctx = context.Background()
	}
	t := &taking{Seams: x, Offcuts: o, dice: rand.New(rand.NewPCG(o.Shuffle, 0)), width: down(o.Stock.Width, steps), phase: down(o.Stock.LeftPhase, steps), whole: inGrains(o.Weight) / coarse}
	for _, h := range x.heights {
		hi, lo := bits.Mul64(uint64(max(0, t.whole)), uint64(max(0, o.Of(h))))
		if hi >= uint64(o.Sheet) {
			tooMuch("*", t.whole, o.Of(h))
		}
		strip, _ := bits.Div64(hi, lo, uint64(o.Sheet))
		t.strip = append(t.strip, t.worth(int64(strip)))
	}
	if b, ok := x.spare.Get().(*buffers); ok {
		t.buffers = *b
	}
	defer func() { x.spare.Put(&t.buffers) }()
	t.steps = append(t.steps[:0], step{before: -1})
	ends := []label{{used: t.width + t.kerf, phase: modulo(t.width+t.kerf, t.pitch)}}
	for _, n := range t.order() {
		check(ctx)
		if ends = t.cover(n, ends); len(ends) == 0 {
			return Layout{}, false, nil
		}
	}
	legs := t.legsTo(slices.MinFunc(ends, func(a, b label) int { return cmp.Compare(a.penalty, b.penalty) }).step)
	layout = x.m.build(ctx, legs)
	layout.Broken = broken(legs)
	return layout, true, nil
}

// worth returns what a strip is worth, in a shuffle by chance more or less.
func (t *taking) worth(usual int64) int64 {
	if t.Shuffle == 0 {
		return usual
	}
	return inUnits(usual, 1000, 1000-varied+t.dice.Int64N(2*varied+1))
}

// taking is one run of FromOffcuts.
type taking struct {
	*Seams
	Offcuts
	dice         *rand.Rand
	width, phase int64   // of a sheet
	whole        int64   // penalty of a sheet
	strip        []int64 // penalty of a strip, by height
	buffers
}

// buffers is what one run leaves for the next.
type buffers struct {
	steps []step
	at    []stop // by node of the bay
}

// stop is a node with its labels, the least penalty of them, the penalty above which no label is
// kept, the most of a full list, and the numbers of the labels that were as good as the last ones: those of
// each way to take a panel after each label of another node.
type stop struct {
	n           int
	least, most int64
	labels      [mostLabels]label // those beyond n have more penalty than any
	better      [takings][mostLabels]uint8
}

// clear takes all labels away.
func (s *stop) clear() {
	*s = stop{least: math.MaxInt64, most: math.MaxInt64}
	for k := range s.labels {
		s.labels[k].penalty = math.MaxInt64
	}
}

// label is a way to cover bays up to a node: its penalty, and the offcut that it holds, which is used
// up to a place and so high.
type label struct {
	penalty, used, high int64
	phase               int64 // used modulo the pitch
	step                int32 // the last one
}

// step is a panel of the way to a label.
type step struct {
	before    int32 // the step before, -1 for none
	bay, node int32
}

// asGood reports whether the label is no worse than another in anything.
func (l *label) asGood(penalty, used, high int64) bool {
	return (penalty-l.penalty)|(used-l.used)|(l.high-high) >= 0 // no sign is set
}

// order returns the numbers of the bays in the order in which they are covered.
func (t *taking) order() []int {
	order := make([]int, len(t.bays))
	for i := range order {
		order[i] = i
	}
	if t.Leftward {
		slices.Reverse(order)
	}
	if t.Shuffle != 0 {
		t.dice.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
		return order
	}
	slices.SortStableFunc(order, func(a, b int) int {
		switch c := t.bays[a].tallest.Compare(t.bays[b].tallest); t.Order {
		case TallestFirst:
			return -c
		case LowestFirst:
			return c
		}
		return 0
	})
	return order
}

// cover returns the labels beyond bay n, from those before it.
func (t *taking) cover(n int, before []label) []label {
	b := &t.bays[n]
	last := len(b.seam) - 1
	t.at = slices.Grow(t.at[:0], last+1)[:last+1]
	for i := range t.at {
		t.at[i].clear()
	}
	from, to := 0, last
	if t.Leftward {
		from, to = last, 0
	}
	t.at[from].n, t.at[from].least = copy(t.at[from].labels[:], before), 0
	for k := range b.panels {
		if p := &b.panels[k]; !t.Leftward {
			t.take(n, p, p.i, p.j)
		}
	}
	for k := len(b.panels) - 1; k >= 0 && t.Leftward; k-- {
		t.take(n, &b.panels[k], b.panels[k].j, b.panels[k].i)
	}
	return slices.Clone(t.at[to].labels[:t.at[to].n])
}

// The ways to take a panel: from the offcut at hand, from a new strip that leaves none, and from one whose offcut is held.
const (
	fromOffcut = iota
	beside
	anew
	takings
)

// take adds the labels of a panel that goes on from one node to another.
func (t *taking) take(bay int, p *offcutPanel, from, to int32) {
	b, stop := &t.bays[bay], &t.at[to]
	penalty := panelPenalty + b.seam[to]
	if p.broken {
		penalty += brokenPenalty
	}
	before := &t.at[from]
	if before.n == 0 || before.least+penalty > stop.most {
		return
	}
	tallest := &b.pieces[p.pieces][0]
	for k := range b.pieces[p.pieces][1:] {
		q := &b.pieces[p.pieces][1+k]
		left, right := b.within(p, q)
		penalty += int64(float64(t.strip[q.height]) * (float64(right-left+t.kerf) / float64(t.width+t.kerf)))
	}
	left, right := b.within(p, tallest)
	upright, turned := t.places(b, left-b.origin, right-b.origin)
	width, high := right-left, t.high[tallest.height]
	start, strip, fresh := min(upright, turned)+width, t.strip[tallest.height], int64(math.MaxInt64) // least penalty with the offcut of a new strip
	last, sheet, kerf, pitch := step{0, int32(bay), to}, t.width, t.kerf, t.pitch
	for k := range before.labels[:before.n] {
		q := &before.labels[k]
		cost := q.penalty + penalty
		if cost > stop.most {
			continue
		}
		last.before = q.step
		if high <= q.high && q.used+width <= sheet {
			if used := q.used + min(beyond(upright-q.phase, pitch), beyond(turned-q.phase, pitch)) + width; used <= sheet {
				if better := &stop.better[fromOffcut][k]; !stop.labels[*better].asGood(cost, used+kerf, q.high) {
					t.add(stop, better, cost, used+kerf, q.high, &last)
				}
			}
		}
		if start > sheet {
			if better := &stop.better[beside][k]; !stop.labels[*better].asGood(cost+t.whole, q.used, q.high) { // it comes from another kind of stock
				t.add(stop, better, cost+t.whole, q.used, q.high, &last)
			}
			continue
		}
		if cost += strip; cost > stop.most {
			continue
		}
		if better := &stop.better[beside][k]; !stop.labels[*better].asGood(cost, q.used, q.high) { // the offcut at hand is kept
			t.add(stop, better, cost, q.used, q.high, &last)
		}
		if cost < fresh {
			fresh = cost
			if better := &stop.better[anew][k]; !stop.labels[*better].asGood(cost, start+kerf, high) {
				t.add(stop, better, cost, start+kerf, high, &last)
			}
		}
	}
}

// places returns how far from the side where strips begin the piece can be cut, in [0, pitch):
// upright, and turned where that shows the pattern too.
func (t *taking) places(b *offcutBay, left, right int64) (upright, turned int64) {
	if t.Leftward {
		upright, turned = t.mod(t.phase+t.width-right), t.mod(t.phase+t.width-b.doubleAxis+left)
	} else {
		upright, turned = t.mod(left-t.phase), t.mod(b.doubleAxis-right-t.phase)
	}
	if !b.turns {
		turned = upright
	}
	return upright, turned
}

// mod returns x modulo the pitch; what rounding leaves just below the pitch counts as 0.
func (t *taking) mod(x int64) int64 { return beyond(modulo(x, t.pitch), t.pitch) }

// beyond is mod of what is less than the pitch away from 0.
func beyond(x, pitch int64) int64 {
	const rounding = 8 // more than a sum of rounded lengths is off, in steps
	if x += x >> 63 & pitch; x >= pitch-rounding {
		return 0
	}
	return x
}

// modulo returns x modulo the pitch, in [0, pitch), or 0 if there is none.
func modulo(x, pitch int64) int64 {
	if pitch == 0 {
		return 0
	}
	if x < -pitch || pitch <= x { // the division takes longer than all else
		x %= pitch
	}
	if x < 0 {
		x += pitch
	}
	return x
}

// add adds a label at its node unless one there is as good in all, and takes those away that are
// better in nothing.
func (t *taking) add(stop *stop, better *uint8, penalty, used, high int64, last *step) {
	list := stop.labels[:stop.n]
	if penalty > stop.most {
		return
	}
	for k := range list {
		if list[k].asGood(penalty, used, high) {
			*better = uint8(k)
			return
		}
	}
	l := label{penalty: penalty, used: used, high: high}
	for k := 0; k < len(list); k++ {
		if q := &list[k]; l.asGood(q.penalty, q.used, q.high) {
			*q = list[len(list)-1]
			list[len(list)-1].penalty = math.MaxInt64
			list = list[:len(list)-1]
			k--
		}
	}
	at := len(list)
	if at < mostLabels {
		list = list[:at+1]
	} else if penalty == stop.most {
		return // a full list has lost none
	} else {
		for at = 0; list[at].penalty < stop.most; {
			at++
		}
	}
	l.step, l.phase = int32(len(t.steps)), modulo(l.used, t.pitch)
	t.steps, list[at], *better = append(t.steps, *last), l, uint8(at)
	stop.n, stop.least, stop.most = len(list), min(stop.least, l.penalty), math.MaxInt64
	if len(list) == mostLabels {
		stop.most = list[0].penalty
		for k := range list {
			stop.most = max(stop.most, list[k].penalty)
		}
	}
}

// legsTo returns the stretches with the seams that lead to a label.
func (t *taking) legsTo(last int32) []leg {
	legs := slices.Clone(t.legs)
	for i := range legs {
		legs[i].nodes = make([][]int, len(legs[i].sol.bays))
	}
	for l := &t.steps[last]; l.before >= 0; l = &t.steps[l.before] {
		b := &t.bays[l.bay]
		nodes := &legs[b.leg].nodes[b.bay]
		*nodes = append(*nodes, int(l.node))
	}
	for i := range legs {
		for k, nodes := range legs[i].nodes {
			slices.Sort(nodes)
			if t.Leftward { // nodes are left ends of panels, where others hold right ends
				legs[i].nodes[k] = append(nodes[1:], len(legs[i].sol.bays[k].at)-1)
			}
		}
	}
	return legs
}

// broken returns how many hard rules the stretches break.
func broken(legs []leg) (n int) {
	for _, l := range legs {
		n += int(l.sol.base.broken)
		if l.next.from >= 0 {
			n += int(l.sol.coupler(l.next).fixed.broken)
		}
		for k, nodes := range l.nodes {
			c, i := &l.sol.bays[k], 0
			for _, j := range nodes {
				if n += int(c.seam[j].broken); c.right[j].Sub(c.left[i]).Less(l.sol.leastPanel) {
					n++
				}
				i = j
			}
		}
	}
	return n
}
