package book

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// A half is a part that a cut leaves: the lower or left one, or the one beyond the blade.
type half struct {
	rect [4]fraction.Length // x, y, width, height on the sheet
	side string             // the side of the cut on which it lies
	from string             // the same, before the number of the cut
}

// halves returns the parts that a cut leaves. One of them may be no part at all, where the blade runs
// along the edge and trims it.
func halves(p plan.Plan, c nest.Cut) []half {
	if c.Kind == nest.Rip {
		left, right := split(p, c, 0)
		return []half{{left, "left", "left of"}, {right, "right", "right of"}}
	}
	below, above := split(p, c, 1)
	return []half{{below, "below", "below"}, {above, "above", "above"}}
}

// split divides a cut's rectangle across (0) or up (1).
func split(p plan.Plan, c nest.Cut, way int) (near, beyond [4]fraction.Length) {
	near, beyond = c.Rect, c.Rect
	past := c.At.Add(p.Saw.Kerf)
	near[way+2] = c.At
	beyond[way], beyond[way+2] = c.Rect[way].Add(past), c.Rect[way+2].Sub(past)
	return near, beyond
}

// cut tells a cut of a sheet, and what stands free after it. What is measured
// is what has to be right: the edge of the part that pieces are cut from.
func (t *text) cut(p plan.Plan, s plan.Sheet, index int) string {
	c := s.Cuts[index]
	says := c.Kind.String() + " " + t.part(p, s, index) + t.at(p, s, c)
	var free []string
	var sides []string
	for _, h := range halves(p, c) {
		if name := freed(p, s, h); name != "" {
			free, sides = append(free, name), append(sides, h.side)
		}
	}
	switch len(free) {
	case 1:
		says += "; frees " + free[0]
	case 2:
		says += fmt.Sprintf("; frees %s %s and %s %s", free[0], sides[0], free[1], sides[1])
	}
	return says
}

// at says where a cut runs.
func (t *text) at(p plan.Plan, s plan.Sheet, c nest.Cut) string {
	edge, far := "its lower end", c.Rect[3]
	if c.Kind == nest.Rip {
		edge, far = "its left edge", c.Rect[2]
	}
	switch rest := far.Sub(c.At); {
	case !holds(p, s, halves(p, c)[0]):
		return fmt.Sprintf(": take %s off along %s", t.length(c.At.Add(p.Saw.Kerf)), edge)
	case rest.Compare(p.Saw.Kerf) <= 0:
		return fmt.Sprintf(" at %s from %s (trims %s off)", t.length(c.At), edge, t.length(rest))
	}
	return fmt.Sprintf(" at %s from %s", t.length(c.At), edge)
}

// freed names the piece that is exactly a part, or none.
func freed(p plan.Plan, s plan.Sheet, h half) string {
	for _, pl := range s.Placements {
		piece, _ := p.Piece(pl.Piece)
		if h.rect != [4]fraction.Length{pl.X, pl.Y, piece.Width, piece.Height} {
			continue
		}
		if piece.Closing {
			return "closing piece " + label(p, pl.Piece)
		}
		return "piece " + label(p, pl.Piece)
	}
	return ""
}

// part names the part on the bench by its size, and by the cut that it comes
// from where another part of the sheet has the same size: their patterns may
// differ.
func (t *text) part(p plan.Plan, s plan.Sheet, index int) string {
	rect := s.Cuts[index].Rect
	if index == 0 {
		return "the " + sheetWord(p)
	}
	from, twins := "", false
	for i, c := range s.Cuts {
		for _, h := range halves(p, c) {
			switch {
			case h.rect == rect && i < index:
				from = fmt.Sprintf(" %s cut %d", h.from, c.Step)
			case h.rect != rect && h.rect[2] == rect[2] && h.rect[3] == rect[3]:
				twins = true
			}
		}
	}
	name := "the part " + t.size(rect[2], rect[3])
	if twins {
		name += from
	}
	return name
}

// holds reports whether a piece lies within a part.
func holds(p plan.Plan, s plan.Sheet, h half) bool {
	within := func(at, size, low, room fraction.Length) bool {
		return !at.Less(low) && !low.Add(room).Less(at.Add(size))
	}
	for _, pl := range s.Placements {
		piece, _ := p.Piece(pl.Piece)
		if within(pl.X, piece.Width, h.rect[0], h.rect[2]) && within(pl.Y, piece.Height, h.rect[1], h.rect[3]) {
			return true
		}
	}
	return false
}
