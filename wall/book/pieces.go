package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// piece prints a piece with its marks.
func (t *text) piece(p plan.Plan, piece plan.Piece) {
	t.gap()
	from := ""
	if sheet := p.SheetOf(piece.Number); sheet > 0 {
		from = fmt.Sprintf(", from %s %d", sheetWord(p), sheet)
	}
	t.para(fmt.Sprintf("Piece %s: %s%s, on %s, %s %d, lower left at %s and %s", label(p, piece.Number),
		t.size(piece.Width, piece.Height), from, piece.Run, panelWord(p), piece.Panel, t.length(piece.At.X), t.above(piece.At.Y)))
	if run, i := p.Run(piece.Run); i >= 0 {
		t.fitted(p, run, piece)
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
	for i, mitred := range fraction.Must(run.MitredEdges(piece)) {
		if mitred {
			t.hang("  ", fmt.Sprintf("mitre its %s edge, at half the angle of the corner (45 degrees at a square one), after all other marks and cuts: its measures reach to the long point, on the face; the back comes out narrower by the thickness, %s",
				either(i == 0, "left", "right"), t.given(p.Profile.Thickness)))
		}
	}
}

// across writes how far a place is from the left edge, which may be the other way.
func (t *text) across(x fraction.Length) string {
	return t.about(x.Abs()) + either(x.Sign() < 0, " left of the left edge", " across")
}

// above writes a height over the level line of a run.
func (t *text) above(y fraction.Length) string {
	return t.length(y.Abs()) + either(y.Sign() < 0, " below the level line", " up")
}

// marks prints the lines to draw on a piece. A plain rectangle needs none beyond its size.
func (t *text) marks(piece plan.Piece) {
	if piece.Plain() {
		t.hang("  ", "plain rectangle")
		return
	}
	m := piece.Marks
	t.hang("  ", "marks: "+measuredFrom(m.From))
	outlines, corner := m.Holes, len(m.Face)
	if !piece.Rectangular() {
		outlines, corner = append([]plan.HoleMarks{{Corners: m.Corners}}, m.Holes...), 0
	}
	var rows [][]string
	for _, o := range outlines {
		for i, f := range o.Face {
			row := []string{plan.CornerName(corner) + either(o.Opening == "", "", ", "+o.Opening), t.length(f.X), t.length(f.Y), ""}
			if i < len(o.Back) {
				row[3] = t.length(o.Back[i].X)
			}
			rows = append(rows, row)
			corner++
		}
	}
	for _, d := range m.Drill {
		rows = append(rows, []string{"drill " + t.given(d.Diameter) + ", " + waste(d.Waste), t.length(d.At.X), t.length(d.At.Y), t.length(d.Back.X)})
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

// wayOutWords has the sentence for each way out of a weak spot.
var wayOutWords = map[cutout.WayOut]string{
	cutout.PartLeg:     "saw the leg as a piece of its own, with a seam at its root, or tape a batten across it until it is fixed",
	cutout.DrillCorner: "drill the corner round before sawing and carry the piece flat, or move the seam to the corner",
	cutout.JoinCutouts: "saw both cutouts as one if their plates still cover it, or let a seam run through them",
	cutout.RunOut:      "let the cutout run out there if its plate or trim still covers what falls away, or tape a batten across the strip until the piece is fixed, and saw this cutout last",
	cutout.PartStrip:   "saw the strip as a piece of its own, or tape a batten across it until the piece is fixed",
	cutout.MoveSeam:    "move the seam so that the cutout runs out at the edge or lies further in, or saw the piece in two at the cutout",
	cutout.WidenStrip:  "move the seam so that more is left beside the notch, or saw the strip as a piece of its own",
}

// measuredFrom says from which edges the marks of a piece are measured, and what made these.
func measuredFrom(from plan.MarkEdges) string {
	name := func(edge string, kind plan.EdgeKind) string {
		return edge + either(kind == plan.AnyEdge, "", " ("+kind.String()+")")
	}
	return name("left edge", from.Left) + " and " + name("lower edge", from.Lower)
}

// waste names what is sawn out: a hole by its opening.
func waste(w plan.Waste) string {
	switch {
	case w.Opening != "":
		return w.Opening
	case w.Number > 0:
		return w.Kind.String() + " " + strconv.Itoa(w.Number)
	}
	return w.Kind.String()
}

// sawing returns what is sawn out of a piece as instructions, one to a line, each beginning with
// the name of the waste. Places are on the face.
func (t *text) sawing(m plan.Marks) []string {
	var lines []string
	for _, c := range m.Order {
		name := waste(c.Waste) + ": "
		for _, i := range c.Drill {
			if i >= 0 && i < len(m.Drill) {
				lines = append(lines, fmt.Sprintf("%sdrill %s, centre %s", name, t.given(m.Drill[i].Diameter), t.place(m.Drill[i].At)))
			}
		}
		for _, p := range c.Tight {
			lines = append(lines, fmt.Sprintf("%sno starter hole fits at %s; use a smaller bit or cut in from both sides", name, t.place(p)))
		}
		for i, cut := range c.Saw {
			last := i > 0 && i == len(c.Saw)-1
			lines = append(lines, name+either(last, "hold the waste and last saw ", "saw ")+t.sawCut(cut))
		}
	}
	return lines
}

// place writes a place on a piece.
func (t *text) place(p plan.Point) string {
	return t.tape.Format(p.X) + " across, " + t.tape.Format(p.Y) + " up"
}

// sawCut says where to saw: a straight upright or level line by its place and from where to where
// on it.
func (t *text) sawCut(cut plan.SawCut) string {
	if len(cut.Points) == 0 {
		return ""
	}
	corners := ""
	if len(cut.Corners) == 2 {
		corners = fmt.Sprintf(" (%s to %s)", plan.CornerName(cut.Corners[0]), plan.CornerName(cut.Corners[1]))
	}
	first, last := cut.Points[0], cut.Points[len(cut.Points)-1]
	along := func(way, rising, falling string, at, from, to fraction.Length) string {
		return fmt.Sprintf("%s at %s %s, from %s to %s%s", either(to.Less(from), falling, rising),
			t.tape.Format(at), way, t.tape.Format(from), t.tape.Format(to), corners)
	}
	const most = 8 // points that are all written; a line of more is a curve, whose marks are in the list of corners
	switch straight := len(cut.Points) == 2; {
	case straight && first.X == last.X:
		return along("across", "up", "down", first.X, first.Y, last.Y)
	case straight && first.Y == last.Y:
		return along("up", "right", "left", first.Y, first.X, last.X)
	case len(cut.Points) > most:
		return fmt.Sprintf("along the curve from %s, by %s, to %s%s", t.place(first), t.place(cut.Points[len(cut.Points)/2]), t.place(last), corners)
	}
	places := make([]string, len(cut.Points))
	for i, p := range cut.Points {
		places[i] = t.place(p)
	}
	return "from " + strings.Join(places, ", to ") + corners
}
