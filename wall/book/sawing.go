package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

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
				lines = append(lines, fmt.Sprintf("%sdrill %s, centre %s", name, t.tape.Format(m.Drill[i].Diameter), t.place(m.Drill[i].At)))
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

// curvePoints is the most points of a line that are all written; one of more is a curve, whose
// marks are in the list of corners.
const curvePoints = 8

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
	switch straight := len(cut.Points) == 2; {
	case straight && first.X == last.X:
		return along("across", "up", "down", first.X, first.Y, last.Y)
	case straight && first.Y == last.Y:
		return along("up", "right", "left", first.Y, first.X, last.X)
	case len(cut.Points) > curvePoints:
		return fmt.Sprintf("along the curve from %s, by %s, to %s%s", t.place(first), t.place(cut.Points[len(cut.Points)/2]), t.place(last), corners)
	}
	places := make([]string, len(cut.Points))
	for i, p := range cut.Points {
		places[i] = t.place(p)
	}
	return "from " + strings.Join(places, ", to ") + corners
}
