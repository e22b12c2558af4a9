package nest

import (
	"cmp"
	"slices"
)

// objective is what a nest is judged by, the first term that differs decides; less is better.
type objective struct {
	left   int   // pieces on no sheet
	cost   int64 // coins
	bought int   // sheets that are not limited
	sheets int
}

func (m objective) compare(n objective) int {
	return cmp.Or(cmp.Compare(m.left, n.left), cmp.Compare(m.cost, n.cost),
		cmp.Compare(m.bought, n.bought), cmp.Compare(m.sheets, n.sheets))
}

func (m objective) plus(n objective) objective {
	return objective{m.left + n.left, m.cost + n.cost, m.bought + n.bought, m.sheets + n.sheets}
}

// objective of one sheet of a kind.
func (k *sheetKind) objective() objective {
	m := objective{cost: k.price, sheets: 1}
	if !k.limited {
		m.bought = 1
	}
	return m
}

// spot is a piece at its place on a sheet.
type spot struct {
	piece int // index into job.pieces
	x, y  int64
}

// layout is a filled sheet.
type layout struct {
	kind  int // index into job.kinds
	spots []spot
}

// plan is a nest on whole numbers.
type plan struct {
	sheets []layout
	left   []int
}

func (j *job) objective(p *plan) objective {
	m := objective{left: len(p.left)}
	for _, s := range p.sheets {
		m = m.plus(j.kinds[s.kind].objective())
	}
	return m
}

func (p *plan) clone() plan {
	c := plan{left: slices.Clone(p.left)}
	for _, s := range p.sheets {
		c.sheets = append(c.sheets, layout{s.kind, slices.Clone(s.spots)})
	}
	return c
}

// spare returns how many sheets of each kind there are beside those.
func (j *job) spare(sheets []layout) []int {
	spare := make([]int, len(j.kinds))
	for i, k := range j.kinds {
		spare[i] = k.count
	}
	for _, l := range sheets {
		spare[l.kind]--
	}
	return spare
}

// downsize changes sheets for the cheapest kinds of the spare ones that hold what is on them.
func (j *job) downsize(sheets []layout, spare []int) {
	for i := range sheets {
		l := &sheets[i]
		for kind := range j.kinds {
			k, now := &j.kinds[kind], &j.kinds[l.kind]
			over := func(s spot) bool { return s.x+j.pieces[s.piece].w > k.w || s.y+j.pieces[s.piece].h > k.h }
			better := spare[kind] > 0 && k.phase == now.phase && k.objective().compare(now.objective()) < 0
			if better && !slices.ContainsFunc(l.spots, over) {
				spare[l.kind]++
				spare[kind]--
				l.kind = kind
			}
		}
	}
}
