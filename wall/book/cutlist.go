package book

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// sheets prints each sheet's cuts in sawing order, and its pieces and offcuts.
func (t *text) sheets(p plan.Plan) {
	if len(p.Sheets) == 0 {
		return
	}
	t.heading("-", "Cut list")
	t.para(fmt.Sprintf("Face up, the lower end of the %s toward you. The blade takes %s. Where a cut is at a measure, the blade runs just past it, seen from the edge named; what is taken off includes the blade. An arrow shows which way the top of a piece lies; up is away from you. An offcut's phase is the exact left_phase that it has as stock of another job.", sheetWord(p), t.length(p.Saw.Kerf)))
	exact := fraction.Tape{Unit: t.tape.Unit}
	// A narrower leftover is no use on a wall, and is not listed. The JSON plan has them all.
	least := fraction.Inches(1)
	if t.tape.Unit != fraction.Inch {
		least = fraction.Millimetres(25, 1)
	}
	for _, s := range p.Sheets {
		t.gap()
		name := s.Stock
		if i := slices.IndexFunc(p.Stock, func(kind plan.Stock) bool { return kind.Name == name }); i >= 0 {
			name += ", " + t.size(p.Stock[i].Width, p.Stock[i].Length)
		}
		t.para(fmt.Sprintf("%s %d: %s", p.Profile.Word("Sheet", "Board"), s.Number, name))
		for i, c := range s.Cuts {
			t.step("  ", c.Step, t.cut(p, s, i))
		}
		var rows [][]string
		for _, pl := range s.Placements {
			piece, _ := p.Piece(pl.Piece)
			rows = append(rows, []string{"piece " + label(p, pl.Piece), t.size(piece.Width, piece.Height),
				t.length(pl.X), t.length(pl.Y), either(pl.Turned, "arrow down", "arrow up")})
		}
		narrow := 0
		for _, o := range s.Offcuts {
			if o.Width.Less(least) || o.Length.Less(least) {
				narrow++
				continue
			}
			rows = append(rows, []string{"offcut", t.size(o.Width, o.Length), t.length(o.X), t.length(o.Y), "phase " + exact.Format(o.LeftPhase)})
		}
		t.table(4, []string{"", "size", "across", "up", ""}, rows)
		if narrow > 0 {
			t.hang("    ", fmt.Sprintf("%s narrower than %s.", count(narrow, "offcut"), t.length(least)))
		}
	}
}

// sheetOf returns the number of the sheet that a piece is cut from, or 0.
func sheetOf(p plan.Plan, number int) int {
	for _, sheet := range p.Sheets {
		for _, placed := range sheet.Placements {
			if placed.Piece == number {
				return sheet.Number
			}
		}
	}
	return 0
}

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
