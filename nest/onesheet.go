package nest

import (
	"iter"
	"slices"
)

// Whether a set of parts can be cut from one sheet, by straight cuts in any number of stages.
//
// For each set and each phase at which its rectangle may begin, boxes holds the smallest rectangles
// from which the set can be cut, none both narrower and lower than another. The first cut divides
// the set into two, whose boxes are known: a crosscut stacks them one kerf apart, a rip puts the
// second a kerf beyond the end of the first, which decides its phase. What is too much of a
// rectangle is trimmed, so of each side only the smallest boxes matter. A set's rectangle is moved
// to the next phase at which any of its parts can begin, so few phases occur.
//
// All divisions of all subsets are tried: some 3^m steps for m parts, far fewer if parts are alike.

// box is a rectangle from which a set can be cut at the phase where it begins, and the first cut.
type box struct {
	w, h    int64
	near    set // the lower or left side; empty if the set is one piece
	nearBox int32
	farBox  int32
	kind    CutKind
}

type boxKey struct {
	set   set
	phase int64
}

type oneSheet struct {
	*job
	groups  []group
	groupOf []int   // of each piece number
	leads   []alike // the group of each piece number
	w, h    int64   // no box is larger than this
	known   boxTable
	steps   int // divisions looked at
	limit   int // of steps; above it, spent is set and nothing more is found
	spent   bool
}

// mostKnown bounds the memory of boxes; what is not kept is found again.
const mostKnown = 1 << 21

// alike has of a group what [oneSheet.gap] asks for.
type alike struct {
	at  [2]int64 // where there is one phase alone it is there twice
	all set
}

// boxTable holds boxes by their keys: a hash table with open addressing, of which at most three quarters are filled. An
// entry without a set is none.
type boxTable struct {
	entries []boxEntry
	n       int
}

type boxEntry struct {
	boxKey
	boxes []box
}

// at returns where a key stands or would stand.
func (t *boxTable) at(key boxKey) *boxEntry {
	h := key.set[0]*0x9e3779b97f4a7c15 + key.set[1]*0xd1342543de82ef95 + uint64(key.phase)*0xaef17502108ef2d9
	h ^= h >> 32
	for i := h * 0x9e3779b97f4a7c15 >> 33; ; i++ {
		if e := &t.entries[i&uint64(len(t.entries)-1)]; e.boxKey == key || e.set.empty() {
			return e
		}
	}
}

// add adds the boxes of a key that is not there.
func (t *boxTable) add(key boxKey, boxes []box) {
	if 4*t.n >= 3*len(t.entries) {
		before := t.entries
		t.entries = make([]boxEntry, max(64, 2*len(before)))
		for _, e := range before {
			if !e.set.empty() {
				*t.at(e.boxKey) = e
			}
		}
	}
	*t.at(key) = boxEntry{key, boxes}
	t.n++
}

func newOneSheet(j *job, groups []group) *oneSheet {
	o := &oneSheet{job: j, groups: groups}
	for i := range groups {
		g := alike{groups[i].at, groups[i].all}
		if groups[i].ways == 1 {
			g.at[1] = g.at[0]
		}
		for range groups[i].pieces {
			o.groupOf, o.leads = append(o.groupOf, i), append(o.leads, g)
		}
	}
	for _, k := range j.kinds {
		if k.usable {
			o.w, o.h = max(o.w, k.w), max(o.h, k.h)
		}
	}
	return o
}

// in yields the groups that have pieces in a set.
func (o *oneSheet) in(s set) iter.Seq2[int, *group] {
	return func(yield func(int, *group) bool) {
		for !s.empty() {
			i := o.groupOf[s.first()]
			if !yield(i, &o.groups[i]) {
				return
			}
			s = s.minus(o.groups[i].all)
		}
	}
}

// gap returns how far right of the phase, in [0, pitch), the first piece of the set may begin.
func (o *oneSheet) gap(s set, phase int64) int64 {
	if o.pitch == 0 {
		return 0
	}
	least := o.pitch
	for !s.empty() && least > 0 {
		g := &o.leads[s.first()]
		first, second := g.at[0]-phase, g.at[1]-phase // less than a pitch from 0
		least = min(least, first+first>>63&o.pitch, second+second>>63&o.pitch)
		s = s.minus(g.all)
	}
	return least
}

// boxes returns the smallest rectangles from which the set can be cut, the narrowest first. Each
// begins gap to the right of the phase.
func (o *oneSheet) boxes(s set, phase int64) (all []box, gap int64) {
	phase = floorMod(phase, o.pitch)
	gap = o.gap(s, phase)
	key := boxKey{s, phase + gap}
	if key.phase >= o.pitch {
		key.phase -= o.pitch // no division: it would take longer than all else
	}
	if o.known.n > 0 {
		if e := o.known.at(key); !e.set.empty() {
			return e.boxes, gap
		}
	}
	all = o.find(s, key.phase)
	if o.spent {
		return nil, gap
	}
	if o.known.n < mostKnown {
		o.known.add(key, all)
	}
	return all, gap
}

// find finds the boxes of a set that can begin right at the phase.
func (o *oneSheet) find(s set, phase int64) (all []box) {
	lead := s.first()
	if s == (set{}).with(lead) {
		g := &o.groups[o.groupOf[lead]]
		return []box{{w: g.w, h: g.h}}
	}
	for near, far := range o.divisions(s) {
		if o.steps++; o.steps > o.limit {
			o.spent = true
			return nil
		}
		nears, nearGap := o.boxes(near, phase)
		if len(nears) == 0 {
			continue
		}
		if near.has(lead) {
			all = o.join(all, Crosscut, near, far, nears, nearGap, phase)
		}
		if near.has(lead) || o.pitch > 0 {
			all = o.join(all, Rip, near, far, nears, nearGap, phase)
		}
		if o.spent {
			return nil
		}
	}
	return all
}

// join adds the boxes that a cut of the kind divides. Which side of a crosscut lies below does not
// matter, and a side that is divided by the same kind is met when it is taken apart.
func (o *oneSheet) join(all []box, kind CutKind, near, far set, nears []box, nearGap, phase int64) []box {
	var fars []box
	var farGap int64
	if kind == Crosscut {
		fars, farGap = o.boxes(far, phase)
	}
	for a := range nears {
		n := &nears[a]
		if n.kind == kind && !n.near.empty() {
			continue
		}
		end := nearGap + n.w + o.kerf
		if kind == Rip {
			if end >= o.w {
				continue
			}
			fars, farGap = o.boxes(far, phase+end)
		}
		for b := range fars {
			f := &fars[b]
			w, h := max(nearGap+n.w, farGap+f.w), n.h+o.kerf+f.h
			if kind == Rip {
				w, h = end+farGap+f.w, max(n.h, f.h)
			}
			all = o.keep(all, box{w, h, near, int32(a), int32(b), kind})
		}
	}
	return all
}

// keep adds a box unless it is too large or another is as small; boxes that it makes needless go.
func (o *oneSheet) keep(all []box, b box) []box {
	if b.w > o.w || b.h > o.h {
		return all
	}
	i := 0
	for i < len(all) && all[i].w <= b.w {
		if all[i].h <= b.h {
			return all
		}
		i++
	}
	end := i
	for end < len(all) && all[end].h >= b.h {
		end++
	}
	if i > 0 && all[i-1].w == b.w {
		i-- // as wide and higher
	}
	return slices.Replace(all, i, end, b)
}

// share is what a set has of a group, and how many pieces of that are on the near side.
type share struct {
	all               set
	start, most, near int
}

// divisions yields all ways to divide a set into two not empty, with groups filled from below.
func (o *oneSheet) divisions(s set) iter.Seq2[set, set] {
	return func(yield func(near, far set) bool) {
		shares := make([]share, 0, 8) // of most sets
		for rest := s; !rest.empty(); {
			start := rest.first()
			all := rest.and(o.leads[start].all)
			shares, rest = append(shares, share{all, start, all.size(), 0}), rest.minus(all)
		}
		// Counting: the first group that is not all on the near side has one piece more there, and
		// those before it have none again.
		near, far := set{}, s
		for {
			i := 0
			for ; i < len(shares) && shares[i].near == shares[i].most; i++ {
				near, far = near.minus(shares[i].all), far.plus(shares[i].all)
				shares[i].near = 0
			}
			if i == len(shares) {
				return
			}
			g := &shares[i]
			near = near.with(g.start + g.near)
			g.near++
			far = far.without(g.start + g.most - g.near)
			if near != s && !yield(near, far) {
				return
			}
		}
	}
}

// canonical returns the set with each group filled from below.
func (o *oneSheet) canonical(s set) (c set) {
	for _, g := range o.in(s) {
		c = c.plus(g.lowest(g.of(s)))
	}
	return c
}

// fit returns the number of a box that goes into the sheet, -1 if none does.
func (o *oneSheet) fit(s set, k *sheetKind) int {
	all, gap := o.boxes(s, k.phase)
	for i, b := range all {
		if gap+b.w <= k.w && b.h <= k.h {
			return i
		}
	}
	return -1
}

// place adds where the pieces of a set lie if its rectangle begins at x, y. Each spot names the
// group; which piece of it is for the caller to say.
func (o *oneSheet) place(out []spot, s set, phase, x, y int64, which int) []spot {
	all, gap := o.boxes(s, phase+x)
	b := all[which]
	if b.near.empty() {
		return append(out, spot{o.groupOf[s.first()], x + gap, y})
	}
	x += gap
	far := o.canonical(s.minus(b.near))
	nears, nearGap := o.boxes(b.near, phase+x)
	n := nears[b.nearBox]
	out = o.place(out, b.near, phase, x, y, int(b.nearBox))
	if b.kind == Crosscut {
		return o.place(out, far, phase, x, y+n.h+o.kerf, int(b.farBox))
	}
	return o.place(out, far, phase, x+nearGap+n.w+o.kerf, y, int(b.farBox))
}
