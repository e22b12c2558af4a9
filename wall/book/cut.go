package book

import (
	"fmt"
	"slices"

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

// halves returns the parts that a cut leaves. One of them may be no part at all, where the blade
// runs along the edge and trims it.
func halves(p plan.Plan, c nest.Cut) [2]half {
	way, near, beyond := 1, half{c.Rect, "below", "below"}, half{c.Rect, "above", "above"}
	if c.Kind == nest.Rip {
		way, near, beyond = 0, half{c.Rect, "left", "left of"}, half{c.Rect, "right", "right of"}
	}
	past := c.At.Add(p.Saw.Kerf)
	near.rect[way+2] = c.At
	beyond.rect[way], beyond.rect[way+2] = c.Rect[way].Add(past), c.Rect[way+2].Sub(past)
	return [2]half{near, beyond}
}

// cut says what to cut from a sheet, where, and what stands free after it. What is measured is what
// has to be right: the edge of the part that pieces are cut from.
func (t *text) cut(p plan.Plan, s plan.Sheet, index int) string {
	c := s.Cuts[index]
	edge, far := "its lower end", c.Rect[3]
	if c.Kind == nest.Rip {
		edge, far = "its left edge", c.Rect[2]
	}
	says := c.Kind.String() + " " + t.part(p, s, index)
	parts := halves(p, c)
	switch rest := far.Sub(c.At); {
	case !holds(p, s, parts[0]):
		says += fmt.Sprintf(": take %s off along %s", t.length(c.At.Add(p.Saw.Kerf)), edge)
	case rest.Compare(p.Saw.Kerf) <= 0:
		says += fmt.Sprintf(" at %s from %s (trims %s off)", t.length(c.At), edge, t.length(rest))
	default:
		says += fmt.Sprintf(" at %s from %s", t.length(c.At), edge)
	}
	switch near, beyond := freed(p, s, parts[0]), freed(p, s, parts[1]); {
	case near != "" && beyond != "":
		says += fmt.Sprintf("; frees %s %s and %s %s", near, parts[0].side, beyond, parts[1].side)
	case near+beyond != "":
		says += "; frees " + near + beyond
	}
	return says
}

// freed names the piece that is exactly a part, or none.
func freed(p plan.Plan, s plan.Sheet, h half) string {
	for _, pl := range s.Placements {
		piece, _ := p.Piece(pl.Piece)
		if h.rect == [4]fraction.Length{pl.X, pl.Y, piece.Width, piece.Height} {
			return either(piece.Closing, "closing piece ", "piece ") + label(p, pl.Piece)
		}
	}
	return ""
}

// part names the part on the bench by its size, and by the cut that it comes from where another
// part of the sheet has the same size: their patterns may differ.
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
	return "the part " + t.size(rect[2], rect[3]) + either(twins, from, "")
}

// holds reports whether a piece lies within a part.
func holds(p plan.Plan, s plan.Sheet, h half) bool {
	within := func(at, size, low, room fraction.Length) bool {
		return !at.Less(low) && !low.Add(room).Less(at.Add(size))
	}
	return slices.ContainsFunc(s.Placements, func(pl plan.Placement) bool {
		piece, _ := p.Piece(pl.Piece)
		return within(pl.X, piece.Width, h.rect[0], h.rect[2]) && within(pl.Y, piece.Height, h.rect[1], h.rect[3])
	})
}
