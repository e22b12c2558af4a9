package book

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
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
	t.para(fmt.Sprintf("Face up, the lower end of the %s toward you. The blade takes %s. Where a cut is at a measure, the blade runs just past it, seen from the edge named; what is taken off includes the blade. An arrow shows which way the top of a piece lies; up is away from you. An offcut's phase is the exact left_phase that it has as stock of another job.", sheetWord(p), t.length(p.Saw.Kerf)))
	exact := fraction.Tape{Unit: t.tape.Unit}
	for _, s := range p.Sheets {
		t.gap()
		t.para(fmt.Sprintf("%s %d: %s", map[string]string{"sheet": "Sheet", "board": "Board"}[sheetWord(p)], s.Number, t.stock(p, s.Stock)))
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
	piece, _ := p.Piece(number)
	return t.size(piece.Width, piece.Height)
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
			for _, pl := range s.Placements {
				if pl.Piece == piece.Number {
					from = fmt.Sprintf(", from %s %d", sheetWord(p), s.Number)
				}
			}
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
}

// fitted tells what is left to do at a piece's ends: the closing piece of a run
// is cut to what the wall turns out to be, at the end toward which the run is
// worked, since its pattern is right at the other end; and an edge at an outside
// corner is mitred.
func (t *text) fitted(p plan.Plan, run plan.Run, piece plan.Piece) {
	if piece.Closing {
		says := fmt.Sprintf("closing piece: measure its space again on the wall before you saw it; what is more or less there goes to its %s edge", run.SetOut.Direction)
		if run.SetOut.Direction == wall.Left && !piece.Plain() {
			says += ", so mark the face from its right edge, by the last column"
		}
		t.hang("  ", says)
	}
	var mitred []string
	if run.Left.Kind == wall.OutsideCorner && piece.At.X == run.Limits[0] {
		mitred = append(mitred, "left")
	}
	if run.Right.Kind == wall.OutsideCorner && piece.At.X.Add(piece.Width) == run.Limits[1] {
		mitred = append(mitred, "right")
	}
	for _, edge := range mitred {
		t.hang("  ", fmt.Sprintf("mitre its %s edge, at half the angle of the corner (45 degrees at a square one), after all other marks and cuts: its measures reach to the long point, on the face; the back comes out narrower by the thickness, %s", edge, t.length(p.Profile.Thickness)))
	}
}

// across writes how far a place is from the left edge, which may be the other
// way.
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

// marks prints the lines to draw on a piece. A plain rectangle needs none
// beyond its size.
func (t *text) marks(piece plan.Piece) {
	if piece.Plain() {
		t.hang("  ", "plain rectangle")
		return
	}
	m := piece.Marks
	t.hang("  ", "marks: "+measuredFrom(m.From))
	rows := [][]string{{"corner", "across", "up", "across, on the back"}}
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
	if len(rows) > 1 {
		t.table(4, rows)
	}
	for _, a := range m.Arcs {
		t.hang("    ", fmt.Sprintf("arc of %s, for a trammel: centre %s, %s up, radius %s; on the back the centre is %s",
			a.Opening, t.across(a.Centre.X), t.about(a.Centre.Y), t.about(a.Radius), t.across(a.Back.X)))
	}
	for i, s := range t.sawing(m) {
		t.hang(fmt.Sprintf("    %2d [ ] ", i+1), s)
	}
}

// corners writes the corners of one outline as rows; the first of them has the
// number first among those of the piece.
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
