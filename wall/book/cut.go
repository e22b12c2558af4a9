package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// The first word of a cut that does not run through.
const stopped = "stopped "

// A half is a part that a cut leaves: the lower or left one, the one beyond the
// blade, or what comes free from a notch.
type half struct {
	rect [4]fraction.Length // x, y, width, height on the sheet
	side string             // the side of the cut on which it lies
	from string             // the same, before the number of the cut
}

// halves returns the parts that a cut of a sheet leaves. One of them may be no
// part at all, where the blade runs along the edge and trims it. Of the two
// stopped cuts that free a notch, the second leaves what comes from it.
func halves(p plan.Plan, s plan.Sheet, index int) []half {
	c := s.Cuts[index]
	if strings.HasPrefix(c.Kind, stopped) {
		if n, second := notchOf(p, s, index); second {
			return []half{n.half}
		}
		return nil
	}
	if c.Kind == "rip" {
		left, right := split(p, c, 0)
		return []half{{left, "left", "left of"}, {right, "right", "right of"}}
	}
	below, above := split(p, c, 1)
	return []half{{below, "below", "below"}, {above, "above", "above"}}
}

// split divides a cut's rectangle across (0) or up (1).
func split(p plan.Plan, c plan.Cut, way int) (near, beyond [4]fraction.Length) {
	near, beyond = c.Rect, c.Rect
	past := c.At.Add(p.Saw.Kerf)
	near[way+2] = c.At
	beyond[way], beyond[way+2] = c.Rect[way].Add(past), c.Rect[way+2].Sub(past)
	return near, beyond
}

// A notch is the corner of a part that two stopped cuts free, for other pieces
// to be cut from.
type notch struct {
	half
	right, high bool // which corner
}

// notchOf returns the notch of a stopped cut, and whether the cut is the second
// of its pair; it is found by the ends at which the two cuts begin.
func notchOf(p plan.Plan, s plan.Sheet, index int) (n notch, second bool) {
	second = s.Cuts[index].Kind == stopped+"crosscut"
	if second {
		index--
	}
	if index < 0 || index+1 >= len(s.Cuts) {
		return notch{}, second
	}
	rip, across := s.Cuts[index], s.Cuts[index+1]
	left, right := split(p, rip, 0)
	below, above := split(p, across, 1)
	n = notch{right: across.From.Sign() > 0, high: rip.From.Sign() > 0}
	column, row := left, below
	if n.right {
		column = right
	}
	if n.high {
		row = above
	}
	n.half = half{[4]fraction.Length{column[0], row[1], column[2], row[3]}, "out of the notch", "out of"}
	return n, second
}

// cut tells a cut of a sheet, and what stands free after it. What is measured
// is what has to be right: the edge of the part that pieces are cut from.
func (t *text) cut(p plan.Plan, s plan.Sheet, index int) string {
	c := s.Cuts[index]
	says := c.Kind + " " + t.part(p, s, index)
	if strings.HasPrefix(c.Kind, stopped) {
		says += t.stoppedAt(p, s, index)
	} else {
		says += t.throughAt(p, s, index)
	}
	var free []string
	var sides []string
	for _, h := range halves(p, s, index) {
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

// throughAt says where a cut runs that goes from edge to edge.
func (t *text) throughAt(p plan.Plan, s plan.Sheet, index int) string {
	c := s.Cuts[index]
	edge, far := "its lower end", c.Rect[3]
	if c.Kind == "rip" {
		edge, far = "its left edge", c.Rect[2]
	}
	switch rest := far.Sub(c.At); {
	case !holds(p, s, halves(p, s, index)[0]):
		return fmt.Sprintf(": take %s off along %s", t.length(c.At.Add(p.Saw.Kerf)), edge)
	case rest.Compare(p.Saw.Kerf) <= 0:
		return fmt.Sprintf(" at %s from %s (trims %s off)", t.length(c.At), edge, t.length(rest))
	}
	return fmt.Sprintf(" at %s from %s", t.length(c.At), edge)
}

// stoppedAt says where a stopped cut runs. Its lines are those of the step, and
// the blade stays in the notch.
func (t *text) stoppedAt(p plan.Plan, s plan.Sheet, index int) string {
	c := s.Cuts[index]
	n, second := notchOf(p, s, index)
	upright, level := n.rect[0].Sub(c.Rect[0]), n.rect[1].Sub(c.Rect[1])
	side, column := "right", "right edge"
	if upright = upright.Sub(p.Saw.Kerf); !n.right {
		side, column, upright = "left", "left edge", n.rect[2].Add(p.Saw.Kerf)
	}
	over, row := "above", "upper end"
	if level = level.Sub(p.Saw.Kerf); !n.high {
		over, row, level = "below", "lower end", n.rect[3].Add(p.Saw.Kerf)
	}
	if !second {
		return fmt.Sprintf(" along the line %s from its left edge, blade %s of it, from its %s as far as the line %s from its lower end", t.length(upright), side, row, t.length(level))
	}
	return fmt.Sprintf(" along the line %s from its lower end, blade %s it, from its %s as far as the cut before; finish the corner with a handsaw, and the notch comes free", t.length(level), over, column)
}

// freed names the piece that is exactly a part, or none.
func freed(p plan.Plan, s plan.Sheet, h half) string {
	for _, pl := range s.Placements {
		piece := pieceOf(p, pl.Piece)
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
		for _, h := range halves(p, s, i) {
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
		piece := pieceOf(p, pl.Piece)
		if within(pl.X, piece.Width, h.rect[0], h.rect[2]) && within(pl.Y, piece.Height, h.rect[1], h.rect[3]) {
			return true
		}
	}
	return false
}

// stoppedIn returns the numbers of the stopped cuts into a piece.
func stoppedIn(s plan.Sheet, pl plan.Placement, piece plan.Piece) []string {
	var steps []string
	for _, c := range s.Cuts {
		if strings.HasPrefix(c.Kind, stopped) && c.Rect == [4]fraction.Length{pl.X, pl.Y, piece.Width, piece.Height} {
			steps = append(steps, strconv.Itoa(c.Step))
		}
	}
	return steps
}
