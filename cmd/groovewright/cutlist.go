package main

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/fraction"
)

// The least width and length of a leftover that is listed; a narrower one is no
// use on a wall. The JSON plan has them all.
var (
	leastListed       = fraction.Inches(1)
	leastMetricListed = fraction.Millimetres(25, 1)
)

// sheets prints each sheet's cuts in sawing order.
func (t *text) sheets(p plan.Plan) {
	if len(p.Sheets) == 0 {
		return
	}
	t.heading(2, "Cut list")
	t.para(fmt.Sprintf("Face up, the lower end of the sheet toward you. The blade takes %s. Where a cut is at a measure, the blade runs just past it, seen from the edge named; what is taken off includes the blade. An arrow shows which way the top of a piece lies; up is away from you. An offcut's phase is the exact left_phase that it has as stock of another job.", t.length(p.Saw.Kerf)))
	exact := fraction.Tape{Unit: t.tape.Unit}
	for _, s := range p.Sheets {
		t.gap()
		t.para(fmt.Sprintf("Sheet %d: %s", s.Number, t.stock(p, s.Stock)))
		for i, c := range s.Cuts {
			t.hang(fmt.Sprintf("  %2d [ ] ", c.Step), t.cut(p, s, i))
		}
		rows := [][]string{{"", "size", "across", "up", ""}}
		for _, pl := range s.Placements {
			way := "arrow up"
			if pl.Turned {
				way = "arrow down"
			}
			rows = append(rows, []string{"piece " + label(p, pl.Piece), t.pieceSize(p, pl.Piece), t.length(pl.X), t.length(pl.Y), way})
		}
		narrow, least := 0, leastListed
		if t.tape.Unit != fraction.Inch {
			least = leastMetricListed
		}
		for _, o := range s.Offcuts {
			if o.Width.Less(least) || o.Length.Less(least) {
				narrow++
				continue
			}
			rows = append(rows, []string{"offcut", t.size(o.Width, o.Length), t.length(o.X), t.length(o.Y), "phase " + exact.Format(o.LeftPhase)})
		}
		t.table(4, rows)
		if narrow > 0 {
			t.hang("    ", fmt.Sprintf("%s narrower than %s.", count(narrow, "offcut"), t.length(least)))
		}
	}
}

// stock describes a kind of sheet by its name.
func (t *text) stock(p plan.Plan, name string) string {
	for _, s := range p.Stock {
		if s.Name == name {
			return fmt.Sprintf("%s, %s", s.Name, t.size(s.Width, s.Length))
		}
	}
	return name
}

// pieceSize returns the bounding rectangle of a piece.
func (t *text) pieceSize(p plan.Plan, number int) string {
	piece := pieceOf(p, number)
	return t.size(piece.Width, piece.Height)
}

// A half is one of the two parts that a cut leaves: the lower or left one, or
// the one beyond the blade.
type half struct {
	rect [4]fraction.Length // x, y, width, height on the sheet
	side string             // the side of the cut on which it lies
	from string             // the same, before the number of the cut
}

// halves returns the two parts that a cut leaves. One of them may be no part at
// all, where the blade runs along the edge and trims it.
func halves(p plan.Plan, c plan.Cut) (near, beyond half) {
	k := 1 // a crosscut divides the height
	near, beyond = half{c.Rect, "below", "below"}, half{c.Rect, "above", "above"}
	if c.Kind == "rip" {
		k, near, beyond = 0, half{c.Rect, "left", "left of"}, half{c.Rect, "right", "right of"}
	}
	past := c.At.Add(p.Saw.Kerf)
	near.rect[k+2] = c.At
	beyond.rect[k], beyond.rect[k+2] = c.Rect[k].Add(past), c.Rect[k+2].Sub(past)
	return near, beyond
}

// cut tells a cut of a sheet, and what stands free after it. What is measured
// is what has to be right: the edge of the part that pieces are cut from.
func (t *text) cut(p plan.Plan, s plan.Sheet, index int) string {
	c := s.Cuts[index]
	near, beyond := halves(p, c)
	edge, far := "its lower end", c.Rect[3]
	if c.Kind == "rip" {
		edge, far = "its left edge", c.Rect[2]
	}
	says := c.Kind + " " + t.part(p, s, index)
	switch rest := far.Sub(c.At); {
	case !holds(p, s, near):
		says += fmt.Sprintf(": take %s off along %s", t.length(c.At.Add(p.Saw.Kerf)), edge)
	case rest.Compare(p.Saw.Kerf) <= 0:
		says += fmt.Sprintf(" at %s from %s (trims %s off)", t.length(c.At), edge, t.length(rest))
	default:
		says += fmt.Sprintf(" at %s from %s", t.length(c.At), edge)
	}
	first, second := freed(p, s, near), freed(p, s, beyond)
	switch {
	case first != "" && second != "":
		says += fmt.Sprintf("; frees %s %s and %s %s", first, near.side, second, beyond.side)
	case first+second != "":
		says += "; frees " + first + second
	}
	return says
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
		return "the sheet"
	}
	from, twins := "", false
	for i, c := range s.Cuts {
		near, beyond := halves(p, c)
		for _, h := range []half{near, beyond} {
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

// pieceOf returns the piece of that number.
func pieceOf(p plan.Plan, number int) plan.Piece {
	for _, piece := range p.Pieces {
		if piece.Number == number {
			return piece
		}
	}
	return plan.Piece{}
}

// pieces prints each piece with its marks.
func (t *text) pieces(p plan.Plan) {
	if len(p.Pieces) == 0 {
		return
	}
	t.heading(2, "Pieces, in order of fitting")
	for _, piece := range p.Pieces {
		t.gap()
		from := ""
		for _, s := range p.Sheets {
			if slices.ContainsFunc(s.Placements, func(pl plan.Placement) bool { return pl.Piece == piece.Number }) {
				from = fmt.Sprintf(", from sheet %d", s.Number)
			}
		}
		t.para(fmt.Sprintf("Piece %s: %s%s, on %s, panel %d, lower left at %s and %s up", label(p, piece.Number),
			t.size(piece.Width, piece.Height), from, piece.Run, piece.Panel, t.length(piece.At[0]), t.length(piece.At[1])))
		for _, run := range p.Runs {
			if run.Name == piece.Run {
				t.fitted(p, run, piece)
			}
		}
		t.marks(piece)
		for _, w := range piece.Weak {
			t.hang("  weak: ", fmt.Sprintf("%s at %s, %s wide: %s", w.Kind, t.point(w.At), t.length(w.Width), w.WayOut))
		}
	}
}

// fitted tells what is left to do at a piece's ends: the closing piece of a run
// is cut to what the wall turns out to be, at the end toward which the run is
// worked, since its pattern is right at the other end; and an edge at an outside
// corner is mitred.
func (t *text) fitted(p plan.Plan, run plan.Run, piece plan.Piece) {
	if piece.Closing {
		says := fmt.Sprintf("closing piece: measure its space again on the wall before you saw it; what is more or less there goes to its %s edge", run.SetOut.Direction)
		if run.SetOut.Direction == "left" && !plain(piece) {
			says += ", so mark the face from its right edge, by the last column"
		}
		t.hang("  ", says)
	}
	const corner = "outside corner"
	var mitred []string
	if run.Left.Kind == corner && piece.At[0] == run.Limits[0] {
		mitred = append(mitred, "left")
	}
	if run.Right.Kind == corner && piece.At[0].Add(piece.Width) == run.Limits[1] {
		mitred = append(mitred, "right")
	}
	for _, edge := range mitred {
		t.hang("  ", fmt.Sprintf("mitre its %s edge, at half the angle of the corner (45 degrees at a square one), after all other marks and cuts: its measures reach to the long point, on the face; the back comes out narrower by the thickness, %s", edge, t.length(p.Profile.Thickness)))
	}
}

// point writes a place on a piece.
func (t *text) point(at plan.Point) string {
	return fmt.Sprintf("%s across, %s up", t.length(at[0]), t.length(at[1]))
}

// marks prints the lines to draw on a piece. A plain rectangle needs none
// beyond its size.
func (t *text) marks(piece plan.Piece) {
	if plain(piece) {
		t.hang("  ", "plain rectangle")
		return
	}
	m := piece.Marks
	if m.From != "" {
		t.hang("  ", "marks: "+m.From)
	}
	rows := [][]string{{"corner", "across", "up", "across, on the back"}}
	if !rectangular(piece) {
		rows = append(rows, t.corners("edge", m.Face, m.Back)...)
	}
	for _, h := range m.Holes {
		rows = append(rows, t.corners(h.Opening, h.Face, h.Back)...)
	}
	for _, d := range m.Drill {
		rows = append(rows, []string{"drill " + t.length(d.Diameter) + ", " + d.Opening, t.length(d.At[0]), t.length(d.At[1]), t.length(d.Back[0])})
	}
	if len(rows) > 1 {
		t.table(4, rows)
	}
	for i, s := range m.Order {
		t.hang(fmt.Sprintf("    %2d [ ] ", i+1), s)
	}
}

// corners writes the corners of one outline as rows.
func (t *text) corners(what string, face, back []plan.Point) [][]string {
	var rows [][]string
	for i, f := range face {
		row := []string{what + " " + strconv.Itoa(i+1), t.length(f[0]), t.length(f[1]), ""}
		if i < len(back) {
			row[3] = t.length(back[i][0])
		}
		rows = append(rows, row)
	}
	return rows
}

// plain reports whether a piece is done when its rectangle is sawn.
func plain(piece plan.Piece) bool { return rectangular(piece) && len(piece.Holes) == 0 }

// rectangular reports whether a piece is its own bounding rectangle.
func rectangular(piece plan.Piece) bool {
	for _, c := range piece.Outline {
		if !c[0].IsZero() && c[0] != piece.Width || !c[1].IsZero() && c[1] != piece.Height {
			return false
		}
	}
	return len(piece.Outline) <= 4
}
