package plan

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// narrower returns the room with its sheets as if they were narrower: by a
// quarter, a third, a half, and as wide as each kind of limited stock that is not
// less than a third. What fits a narrower sheet fits the whole one. Panels
// narrower than that are no panelling but strips, whatever they save: common
// practice, no source.
func (m *maker) narrower() []wall.Room {
	if m.job.Room.Profile.Boards {
		return nil // a board is as wide as it is
	}
	var widest fraction.Length
	for _, s := range m.job.Room.Stock {
		widest = fraction.Max(widest, s.Width)
	}
	widths := []fraction.Length{widest.Mul(3).Div(4), widest.Mul(2).Div(3), widest.Div(2)}
	for _, s := range m.job.Room.Stock {
		if s.Count != nil && s.Width.Less(widest) && !s.Width.Less(widest.Div(3)) {
			widths = append(widths, s.Width)
		}
	}
	var rooms []wall.Room
	for _, width := range widths {
		room := m.job.Room
		room.Stock = slices.Clone(room.Stock)
		for i := range room.Stock {
			room.Stock[i].Width = fraction.Min(room.Stock[i].Width, width)
		}
		rooms = append(rooms, room)
	}
	return rooms
}

func isNoLayout(err error) bool {
	var none *wall.NoLayoutError
	return errors.As(err, &none)
}

// explorer looks at the layouts of rooms for one plan.
type explorer struct {
	*maker
	ctx    context.Context
	strips []nest.Strip    // that every layout covers
	least  need            // no layout needs less
	how    string          // which bound says so
	seen   map[string]bool // parts that have been nested
	all    bool            // the last room had no more layouts
	// broken counts the hard rules that the first layout had to break. No
	// layout may break more, for narrower panels either.
	broken  int
	thrifty []thrifty
}

// proved reports whether nothing can need less than the last one found.
func (e *explorer) proved() bool {
	n := len(e.found)
	return n > 0 && !e.least.less(e.found[n-1].need)
}

// unlessStopped returns nil for the error of a context that ended after a layout was
// found: that only ends the search.
func (e *explorer) unlessStopped(err error) error {
	if len(e.found) > 0 && e.ctx.Err() != nil && errors.Is(err, e.ctx.Err()) {
		return nil
	}
	return err
}

// explore looks at no more than budget layouts of the room in order of blemish.
func (e *explorer) explore(room wall.Room, budget int) error {
	n := 0
	e.all = false
	for layout, err := range wall.Layouts(e.ctx, room) {
		if err != nil {
			return e.unlessStopped(err)
		}
		if e.search.Layouts == 0 {
			e.broken = layout.Broken
		}
		if layout.Broken > e.broken {
			return nil
		}
		if err := e.look(layout); err != nil {
			return err
		}
		if n++; n == 1 && e.thrifty == nil && !e.proved() {
			if err := e.startThrifty(); err != nil {
				return err
			}
		}
		if e.proved() || n >= budget || e.ctx.Err() != nil {
			return nil
		}
	}
	e.all = true
	return nil
}

// thrifty is the layouts in the order of what their pieces are worth. Of them the
// first has been met.
type thrifty struct {
	worth nest.Worth
	first wall.Layout
	next  func() (wall.Layout, error, bool)
	stop  func()
}

// startThrifty starts on the layouts in the order of each of the worths that say
// most of the walls. What the first is worth no layout goes below: that may raise
// the bound.
func (e *explorer) startThrifty() error {
	if e.job.Room.Profile.Boards {
		return nil // a board is as wide as it is
	}
	var heights []fraction.Length
	for _, p := range e.found[0].layout.Pieces {
		low, high := p.Shape.Bounds()
		heights = append(heights, high.Y.Sub(low.Y))
	}
	worths, err := nest.Worths(e.problem(&wall.Layout{}, false), e.strips, heights, worthsTried)
	if err != nil {
		return err
	}
	for _, worth := range worths {
		t := thrifty{worth: worth}
		t.next, t.stop = iter.Pull2(wall.LayoutsByCost(e.ctx, e.job.Room, e.thrift(worth)))
		var err error
		t.first, err, _ = t.next()
		if err != nil {
			t.stop()
			return e.unlessStopped(err)
		}
		e.thrifty = append(e.thrifty, t)
		if !e.job.Notches {
			if err := e.raise(worth, t.first.Cost); err != nil {
				return err
			}
		}
		if e.proved() {
			return nil
		}
	}
	return nil
}

// thrift orders layouts by the worth of their pieces, each with its kerf.
func (m *maker) thrift(worth nest.Worth) wall.Objective {
	return wall.Objective{Of: worth.Of, Extra: m.job.Room.Saw.Kerf}
}

// exploreThrifty looks at no more than budget of the thrifty layouts of each kind,
// in turn.
func (e *explorer) exploreThrifty(budget int) error {
	for n := range budget {
		for i := range e.thrifty {
			layout, more := e.thrifty[i].first, true
			if n > 0 {
				var err error
				if layout, err, more = e.thrifty[i].next(); err != nil {
					return e.unlessStopped(err)
				}
			}
			if !more {
				continue
			}
			if err := e.look(layout); err != nil {
				return err
			}
			if e.proved() || e.ctx.Err() != nil {
				return nil
			}
		}
	}
	return nil
}

// weigh looks for a layout that needs as little as the last one found and looks
// better. Looks and worth are weighed against each other so that the last one found
// and the one before it, which looks better and needs more, would count the same:
// what comes first then lies between them. (So the corners of the curve of looks
// against worth are met one after another, each the best of its kind.) At most
// budget layouts are looked at for each weight, and at most weightsTried weights.
func (e *explorer) weigh(budget int) error {
	if len(e.found) < 2 || len(e.thrifty) == 0 {
		return nil
	}
	thrift, more := e.thrift(e.thrifty[0].worth), e.found[len(e.found)-2].layout
	for range weightsTried {
		last := e.found[len(e.found)-1].layout
		costsMore, err := thrift.Cost(&more)
		if err != nil {
			return err
		}
		costs, err := thrift.Cost(&last)
		if err != nil {
			return err
		}
		looks, takes := last.Total.Sub(more.Total), costsMore.Sub(costs)
		if looks.Sign() <= 0 || takes.Sign() <= 0 || e.ctx.Err() != nil {
			return nil
		}
		thrift.Weight = looks.Div(takes.Over(fraction.Inches(1)))
		var first *wall.Layout
		n := 0
		for layout, err := range wall.LayoutsByCost(e.ctx, e.job.Room, thrift) {
			if err != nil {
				return e.unlessStopped(err)
			}
			if first == nil {
				first = &layout
			}
			if err := e.look(layout); err != nil {
				return err
			}
			if n++; n >= budget {
				break
			}
		}
		if e.found[len(e.found)-1].layout.Total == last.Total {
			if first.Total == more.Total {
				return nil // nothing lies between
			}
			more = *first
		}
	}
	return nil
}

// close ends what startThrifty started.
func (e *explorer) close() {
	for _, t := range e.thrifty {
		t.stop()
	}
}

// raise raises the bound to what pieces need that are worth so much together.
func (e *explorer) raise(worth nest.Worth, total fraction.Length) error {
	l, err := worth.Least(total)
	if err != nil {
		return err
	}
	if e.least.cost.Less(l.Cost) || e.least.bought < l.Bought || e.least.sheets < l.Sheets {
		e.how = l.How
	}
	if e.least.cost.Less(l.Cost) {
		e.least.cost = l.Cost
	}
	e.least.bought, e.least.sheets = max(e.least.bought, l.Bought), max(e.least.sheets, l.Sheets)
	return nil
}

// look nests a layout unless one with the same parts was nested before.
func (e *explorer) look(layout wall.Layout) error {
	e.search.Layouts++
	problem := e.problem(&layout, e.job.Notches)
	key := partsKey(problem)
	if e.seen[key] {
		return nil
	}
	e.seen[key] = true
	return e.consider(e.ctx, layout, problem)
}

// partsKey tells problems apart that differ in more than the order of parts.
func partsKey(p nest.Problem) string {
	var b strings.Builder
	for _, part := range p.Parts {
		fmt.Fprint(&b, part.Width, part.Height, part.LeftPhase, ";")
	}
	return b.String()
}

// consider nests a layout and keeps it if it needs less than every layout that
// looks as good or better.
func (m *maker) consider(ctx context.Context, layout wall.Layout, problem nest.Problem) error {
	at, _ := slices.BinarySearchFunc(m.found, layout.Total, func(c candidate, total fraction.Ratio) int {
		if c.layout.Total.Compare(total) <= 0 {
			return -1
		}
		return 1
	})
	if at > 0 {
		// A bound is cheap: most layouts cannot need less and are not searched.
		lower, err := nest.Lower(problem)
		if err != nil {
			return err
		}
		best := m.found[at-1].need
		if best.unplaced == 0 && (best.cost.Less(lower.Cost) || best.cost == lower.Cost && best.sheets <= lower.Sheets) {
			return nil
		}
	}
	r, err := nest.Search(ctx, problem, nest.Budget{Nodes: m.options.nodes() / screenShare})
	if err != nil {
		return err
	}
	c := candidate{layout, r, m.needOf(r)}
	if at > 0 && !c.need.less(m.found[at-1].need) {
		return nil
	}
	for at > 0 && m.found[at-1].layout.Total == layout.Total {
		at-- // it looks no better and needs more
	}
	later := slices.DeleteFunc(slices.Clone(m.found[at:]), func(d candidate) bool { return !d.need.less(c.need) })
	m.found = append(append(m.found[:at:at], c), later...)
	return nil
}

// roomStrips returns what every layout of the room covers.
func (m *maker) roomStrips() ([]nest.Strip, error) {
	strips, err := m.job.Room.Strips()
	of := make([]nest.Strip, len(strips))
	for i, s := range strips {
		of[i] = nest.Strip(s)
	}
	return of, err
}

// leastNeed returns what no layout of the room can need less than, and why.
func (m *maker) leastNeed(strips []nest.Strip) (least need, how string, err error) {
	l, err := nest.LowerStrips(m.problem(&wall.Layout{}, false), m.job.Room.Gaps.Seam, strips)
	return need{cost: l.Cost, bought: l.Bought, sheets: l.Sheets}, l.How, err
}
