package book

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
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

// piece prints a piece with its marks.
func (t *text) piece(p plan.Plan, piece plan.Piece) {
	t.gap()
	from := ""
	if sheet := sheetOf(p, piece.Number); sheet > 0 {
		from = fmt.Sprintf(", from %s %d", sheetWord(p), sheet)
	}
	t.para(fmt.Sprintf("Piece %s: %s%s, on %s, %s %d, lower left at %s and %s", label(p, piece.Number),
		t.size(piece.Width, piece.Height), from, piece.Run, panelWord(p), piece.Panel, t.length(piece.At.X), t.above(piece.At.Y)))
	for _, run := range p.Runs {
		if run.Name == piece.Run {
			t.fitted(p, run, piece)
		}
	}
	t.marks(piece)
	for _, w := range piece.Weak {
		t.hang("  weak: ", fmt.Sprintf("%s at %s across, %s up, %s wide: %s", w.Kind, t.about(w.At.X), t.about(w.At.Y), t.about(w.Width), wayOutWords[w.WayOut]))
	}
}

// fitted says what is left to do at a piece's ends: the closing piece of a run is cut to what the
// wall turns out to be, at the end toward which the run is worked, since its pattern is right at
// the other end; and an edge at an outside corner is mitred.
func (t *text) fitted(p plan.Plan, run plan.Run, piece plan.Piece) {
	if piece.Closing {
		says := fmt.Sprintf("closing piece: measure its space again on the wall before you saw it; what is more or less there goes to its %s edge", run.SetOut.Direction)
		if run.SetOut.Direction == wall.Left && !piece.Plain() {
			says += ", so mark the face from its right edge, by the last column"
		}
		t.hang("  ", says)
	}
	atLeft := run.Left.Kind == wall.OutsideCorner && piece.At.X == run.Limits[0]
	atRight := run.Right.Kind == wall.OutsideCorner && piece.At.X.Add(piece.Width) == run.Limits[1]
	for i, mitred := range []bool{atLeft, atRight} {
		if mitred {
			t.hang("  ", fmt.Sprintf("mitre its %s edge, at half the angle of the corner (45 degrees at a square one), after all other marks and cuts: its measures reach to the long point, on the face; the back comes out narrower by the thickness, %s",
				either(i == 0, "left", "right"), t.length(p.Profile.Thickness)))
		}
	}
}

// across writes how far a place is from the left edge, which may be the other way.
func (t *text) across(x fraction.Length) string {
	if x.Sign() < 0 {
		return t.about(x.Neg()) + " left of the left edge"
	}
	return t.about(x) + " across"
}

// above writes a height over the level line of a run.
func (t *text) above(y fraction.Length) string {
	if y.Sign() < 0 {
		return t.length(y.Neg()) + " below the level line"
	}
	return t.length(y) + " up"
}

// marks prints the lines to draw on a piece. A plain rectangle needs none beyond its size.
func (t *text) marks(piece plan.Piece) {
	if piece.Plain() {
		t.hang("  ", "plain rectangle")
		return
	}
	m := piece.Marks
	t.hang("  ", "marks: "+measuredFrom(m.From))
	var rows [][]string
	if !piece.Rectangular() {
		rows = append(rows, t.corners("", 0, m.Face, m.Back)...)
	}
	first := len(m.Face)
	for _, h := range m.Holes {
		rows = append(rows, t.corners(", "+h.Opening, first, h.Face, h.Back)...)
		first += len(h.Face)
	}
	for _, d := range m.Drill {
		rows = append(rows, []string{"drill " + t.length(d.Diameter) + ", " + waste(d.Waste), t.length(d.At.X), t.length(d.At.Y), t.length(d.Back.X)})
	}
	t.table(4, []string{"corner", "across", "up", "across, on the back"}, rows)
	for _, a := range m.Arcs {
		t.hang("    ", fmt.Sprintf("arc of %s, for a trammel: centre %s, %s up, radius %s; on the back the centre is %s",
			a.Opening, t.across(a.Centre.X), t.about(a.Centre.Y), t.about(a.Radius), t.across(a.Back.X)))
	}
	for i, s := range t.sawing(m) {
		t.step("    ", i+1, s)
	}
}

// corners writes the corners of one outline as rows; the first of them has the number first among
// those of the piece.
func (t *text) corners(what string, first int, face, back []plan.Point) [][]string {
	var rows [][]string
	for i, f := range face {
		row := []string{plan.CornerName(first+i) + what, t.length(f.X), t.length(f.Y), ""}
		if i < len(back) {
			row[3] = t.length(back[i].X)
		}
		rows = append(rows, row)
	}
	return rows
}
