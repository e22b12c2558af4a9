package plan

import (
	"context"
	"errors"
	"fmt"
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
	for _, s := range m.job.Room.Sheets {
		widest = fraction.Max(widest, s.Width)
	}
	widths := []fraction.Length{widest.Mul(3).Div(4), widest.Mul(2).Div(3), widest.Div(2)}
	for _, s := range m.job.Stock {
		if s.Limited && s.Width.Less(widest) && !s.Width.Less(widest.Div(3)) {
			widths = append(widths, s.Width)
		}
	}
	var rooms []wall.Room
	for _, width := range widths {
		room := m.job.Room
		room.Sheets = slices.Clone(room.Sheets)
		for i := range room.Sheets {
			room.Sheets[i].Width = fraction.Min(room.Sheets[i].Width, width)
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
	ctx   context.Context
	least need
	seen  map[string]bool // parts that have been nested
	all   bool            // the last room had no more layouts
	// broken counts the hard rules that the first layout had to break. No
	// layout may break more, for narrower panels either.
	broken int
}

// proved reports whether nothing can need less than the last one found.
func (e *explorer) proved() bool {
	n := len(e.found)
	return n > 0 && !e.least.less(e.found[n-1].need)
}

// explore looks at no more than budget layouts of the room.
func (e *explorer) explore(room wall.Room, budget int) error {
	n := 0
	e.all = false
	for layout, err := range wall.Layouts(room) {
		if err != nil {
			return err
		}
		if e.search.Layouts == 0 {
			e.broken = layout.Broken
		}
		if layout.Broken > e.broken {
			return nil
		}
		e.search.Layouts++
		problem := e.problem(&layout, e.job.Notches)
		if key := partsKey(problem); !e.seen[key] {
			e.seen[key] = true
			if err := e.consider(e.ctx, layout, problem); err != nil {
				return err
			}
		}
		if n++; e.proved() || n >= budget || e.ctx.Err() != nil {
			return nil
		}
	}
	e.all = true
	return nil
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

// leastNeed returns what no layout of the room can need less than, and why.
func (m *maker) leastNeed() (least need, how string, err error) {
	strips, err := m.job.Room.Strips()
	if err != nil {
		return need{}, "", err
	}
	of := make([]nest.Strip, len(strips))
	for i, s := range strips {
		of[i] = nest.Strip(s)
	}
	l, err := nest.LowerStrips(m.problem(&wall.Layout{}, false), m.job.Room.Gaps.Seam, of)
	return need{cost: l.Cost, bought: l.Bought, sheets: l.Sheets}, l.How, err
}
