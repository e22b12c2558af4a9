package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/fraction"
)

// sheets prints each sheet's cuts in sawing order.
func (t *text) sheets(p plan.Plan) {
	if len(p.Sheets) == 0 {
		return
	}
	t.heading(2, "Cut list")
	t.para(fmt.Sprintf("Face up, the lower end of the sheet toward you. The blade takes %s; each measure is to its near side, from the edge named. An offcut's phase is the left_phase that it has as stock of another job, in inches.", t.length(p.Saw.Kerf)))
	for _, s := range p.Sheets {
		t.gap()
		t.para(fmt.Sprintf("Sheet %d: %s", s.Number, t.stock(p, s.Stock)))
		for _, c := range s.Cuts {
			t.hang(fmt.Sprintf("  %2d [ ] ", c.Step), t.cut(p, s, c))
		}
		rows := [][]string{{"", "size", "across", "up", ""}}
		for _, pl := range s.Placements {
			way := "arrow up"
			if pl.Turned {
				way = "arrow down"
			}
			rows = append(rows, []string{"piece " + label(p, pl.Piece), t.pieceSize(p, pl.Piece), t.length(pl.X), t.length(pl.Y), way})
		}
		for _, o := range s.Offcuts {
			rows = append(rows, []string{"offcut", t.size(o.Width, o.Length), t.length(o.X), t.length(o.Y), "phase " + o.LeftPhase.String()})
		}
		t.table(4, rows)
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
	for _, piece := range p.Pieces {
		if piece.Number == number {
			return t.size(piece.Width, piece.Height)
		}
	}
	return ""
}

// cut tells one cut, and what stands free after it.
func (t *text) cut(p plan.Plan, s plan.Sheet, c plan.Cut) string {
	edge, far := "its lower end", c.Rect[3]
	if c.Kind == "rip" {
		edge, far = "its left edge", c.Rect[2]
	}
	part := fmt.Sprintf("%s the part %s", c.Kind, t.size(c.Rect[2], c.Rect[3]))
	if c.Step == 1 {
		part = c.Kind + " the sheet"
	}
	if c.At.Sign() <= 0 {
		return fmt.Sprintf("%s: trim %s off along %s", part, t.length(c.At.Add(p.Saw.Kerf)), edge)
	}
	where := fmt.Sprintf("%s at %s from %s", part, t.length(c.At), edge)
	if far.Sub(c.At).Compare(p.Saw.Kerf) <= 0 {
		where += fmt.Sprintf(" (trims %s off)", t.length(far.Sub(c.At)))
	}
	var free []string
	for _, pl := range s.Placements {
		if frees(p, c, pl) {
			free = append(free, label(p, pl.Piece))
		}
	}
	if len(free) > 0 {
		where += "; frees piece " + strings.Join(free, " and ")
	}
	return where
}

// frees reports whether one of the two parts that a cut leaves is exactly the
// rectangle of the placement.
func frees(p plan.Plan, c plan.Cut, pl plan.Placement) bool {
	for _, piece := range p.Pieces {
		if piece.Number != pl.Piece {
			continue
		}
		is := func(r [4]fraction.Length) bool {
			return r == [4]fraction.Length{pl.X, pl.Y, piece.Width, piece.Height}
		}
		near, beyond := c.Rect, c.Rect
		k := 1 // a crosscut divides the height
		if c.Kind == "rip" {
			k = 0
		}
		past := c.At.Add(p.Saw.Kerf)
		near[k+2] = c.At
		beyond[k], beyond[k+2] = c.Rect[k].Add(past), c.Rect[k+2].Sub(past)
		return is(near) || is(beyond)
	}
	return false
}

// pieces prints each piece with its marks.
func (t *text) pieces(p plan.Plan) {
	if len(p.Pieces) == 0 {
		return
	}
	t.heading(2, "Pieces, in order of fitting")
	for _, piece := range p.Pieces {
		t.gap()
		t.para(fmt.Sprintf("Piece %s: %s, on %s, panel %d, lower left at %s and %s up", label(p, piece.Number),
			t.size(piece.Width, piece.Height), piece.Run, piece.Panel, t.length(piece.At[0]), t.length(piece.At[1])))
		if piece.Closing {
			t.hang("  ", "closing piece: measure the space again on the wall before you cut it")
		}
		t.marks(piece)
		for _, w := range piece.Weak {
			t.hang("  weak: ", fmt.Sprintf("%s at %s, %s wide: %s", w.Kind, t.point(w.At), t.length(w.Width), w.WayOut))
		}
	}
}

// point writes a place on a piece.
func (t *text) point(at plan.Point) string {
	return fmt.Sprintf("%s across, %s up", t.length(at[0]), t.length(at[1]))
}

// marks prints the lines to draw on a piece. A plain rectangle needs none
// beyond its size.
func (t *text) marks(piece plan.Piece) {
	if rectangular(piece) && len(piece.Holes) == 0 {
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

// rectangular reports whether a piece is its own bounding rectangle.
func rectangular(piece plan.Piece) bool {
	for _, c := range piece.Outline {
		if !c[0].IsZero() && c[0] != piece.Width || !c[1].IsZero() && c[1] != piece.Height {
			return false
		}
	}
	return len(piece.Outline) <= 4
}
