package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// pieces prints what is marked, drilled and sawn on each piece; pieces that are sawn alike share a
// line.
func (t *text) pieces(p plan.Plan) {
	if len(p.Pieces) == 0 {
		return
	}
	t.begin("Pieces, in order of fitting")
	some := func(sort func(plan.Piece) bool) bool { return slices.ContainsFunc(p.Pieces, sort) }
	says := "Measures are on the face, from its left and its lower edge; on the back, left and right change places. After \"at\" stands where " +
		"the lower left corner comes." + either(boxed(p), " Saw the long sides of a box first.", "")
	if some(func(piece plan.Piece) bool { return len(piece.Marks.Order) > 0 }) {
		says += " Hold the waste at its last cut."
	}
	if i := slices.IndexFunc(p.Pieces, func(piece plan.Piece) bool { return len(piece.Marks.Drill) > 0 }); i >= 0 {
		says += fmt.Sprintf(" Drill %s in the waste of inside corners, touching both lines.", t.given(p.Pieces[i].Marks.Drill[0].Diameter))
	}
	if some(func(piece plan.Piece) bool { return piece.Closing }) {
		scribed := some(func(piece plan.Piece) bool { return piece.Scribe != nil })
		says += " Saw a closing edge last, as measured on the wall" + either(scribed, "; till then the + is left on, and lines run on across it.", ".")
	}
	if some(func(piece plan.Piece) bool { return mitered(p, piece) != "" }) {
		says += " Miter an edge " + t.mitering(p, "") + "."
	}
	t.para(says + either(p.Up(), " "+capital(panelWord(p))+"s on the wall have no number here: pieces are numbered anew.", ""))
	for _, g := range alike(p) {
		t.piece(p, *g)
	}
}

// piece prints a piece, or pieces that are alike, with its marks.
func (t *text) piece(p plan.Plan, g group) {
	says := plural("piece", g.Labels) + ", " + g.Run
	if g.Closing {
		says += ", closing " + p.ClosingEdge(g.Piece).String()
		if s := g.Scribe; s != nil {
			says += " + " + t.length(s.Width)
		}
	}
	says += ": " + t.size(g.Width, g.Height)
	if g.single() {
		run, _ := p.Run(g.Run)
		says += ", at " + t.along(g.At.X, run.Width) + ", " + t.above(g.At.Y)
	}
	t.para(capital(says))
	if edges := mitered(p, g.Piece); edges != "" {
		t.hang("  ", "miter its "+edges)
	}
	t.marks(p, g.Piece, measuredSide(p, g.Piece))
}

// measuredSide returns the edge that the marks of a piece are measured from: the left one, if that is
// not left too wide to be sawn to the wall.
func measuredSide(p plan.Plan, piece plan.Piece) side {
	if piece.Closing && p.ClosingEdge(piece) == wall.Left {
		return side{piece.Width, "from right"}
	}
	return fromLeft
}

// miter says how the edges of a piece at outside corners are mitered, nothing where it has none.
func (t *text) miter(p plan.Plan, piece plan.Piece) string {
	edges := mitered(p, piece)
	each := either(strings.Contains(edges, "edges"), " at each mitered edge", "")
	return either(edges == "", "", "miter its "+edges+" "+t.mitering(p, each))
}

// mitering says how an edge is mitered, and where each time the back comes out narrower.
func (t *text) mitering(p plan.Plan, each string) string {
	return fmt.Sprintf("after all other cuts of the piece, at half the angle of the corner, 45 degrees where it is square; measures "+
		"reach to the long point, on the face; the back comes out narrower by the thickness%s, %s; glue it with miter glue (wood glue for wood)", each, t.given(p.Profile.Thickness))
}

// mitered names the edges of a piece that are mitered.
func mitered(p plan.Plan, piece plan.Piece) string {
	run, _ := p.Run(piece.Run)
	edges := fraction.Must(run.MitredEdges(piece))
	return map[[2]bool]string{{true, false}: "left edge", {false, true}: "right edge", {true, true}: "left and right edges"}[edges]
}

// side is the edge from which places on a piece are measured: the left one, or the right one of a piece
// of this width. word stands behind such a measure.
type side struct {
	width fraction.Length // 0 from the left
	word  string
}

var fromLeft = side{word: "across"}

func (s side) place(x fraction.Length) fraction.Length {
	if s.width.IsZero() {
		return x
	}
	return s.width.Sub(x)
}

// across writes how far a place is from the edge that it is measured from, which may be beyond it.
func (t *text) across(x fraction.Length, from side) string {
	return t.off(from.place(x), from.word, either(from.width.IsZero(), "left", "right"))
}

// off writes how far a place is from an edge, which may be beyond it.
func (t *text) off(x fraction.Length, word, edge string) string {
	return t.about(x.Abs()) + " " + either(x.Sign() < 0, "beyond the "+edge+" edge", word)
}

// above writes a height over the level line of a run.
func (t *text) above(y fraction.Length) string {
	return t.length(y.Abs()) + either(y.Sign() < 0, " below level", " up")
}

// marks prints what is drilled and sawn on a piece, and in the full text the corners on its face and
// its back. A plain rectangle needs
// nothing beyond its size.
func (t *text) marks(p plan.Plan, piece plan.Piece, from side) {
	m := piece.Marks
	for _, says := range t.weakSpots(p, piece, from, t.full) {
		t.hang("  weak: ", says)
	}
	if piece.Plain() {
		return
	}
	for _, a := range m.Arcs {
		t.hang("  ", t.trammel(piece, a, from))
	}
	for _, s := range t.sawing(p, piece, from) {
		t.hang("  ", s)
	}
	if !t.full && !curved(m) {
		return
	}
	t.hang("  ", "corners, measured from: "+measuredFrom(p, piece, t.length))
	var rows [][]string
	for r, ring := range m.Named(p.Snap) {
		opening := ""
		if r > 0 {
			opening = ", " + m.Holes[r-1].Opening
		}
		for _, c := range ring {
			if c.Name != "" && (r > 0 || !piece.Rectangular()) {
				rows = append(rows, []string{c.Name + opening, t.length(c.Face.X), t.length(c.Face.Y), t.length(c.Back.X)})
			}
		}
	}
	for _, d := range m.Drill {
		rows = append(rows, []string{"drill " + t.given(d.Diameter) + ", " + waste(d.Waste), t.length(d.At.X), t.length(d.At.Y), t.length(d.Back.X)})
	}
	t.table(4, []string{"corner", "from left", "up", "on the back, from left"}, rows)
}

// weak says what a weak spot is, and where.
func (t *text) weak(w plan.Weak, from side) string {
	return fmt.Sprintf("%s at %s, %s up, with %s of material left", w.Kind, t.across(w.At.X, from), t.about(w.At.Y), t.about(w.Width))
}

// weakSpots says what the weak spots of a piece are, those one after the other with one way out together, which may be said too.
func (t *text) weakSpots(p plan.Plan, piece plan.Piece, from side, wayOut bool) (all []string) {
	for i, w := range piece.Weak {
		if i > 0 && piece.Weak[i-1].WayOut == w.WayOut {
			all[len(all)-1] += "; " + t.weak(w, from)
		} else {
			all = append(all, t.weak(w, from))
		}
		if wayOut && (i+1 == len(piece.Weak) || piece.Weak[i+1].WayOut != w.WayOut) {
			all[len(all)-1] += ": " + joined(p, wayOutWords[w.WayOut])
		}
	}
	return all
}

// onSlopes says to which marks the corners of a piece with a sloped edge go, which were not taped, and that some have no letter.
func (t *text) onSlopes(p plan.Plan, piece plan.Piece) string {
	straight := slices.ContainsFunc(piece.Marks.Named(p.Snap)[0], func(c plan.NamedCorner) bool {
		return c.Name == "" && plan.ArcAt(piece.Marks.Arcs, c.Face) == nil
	})
	for i, a := range piece.Outline {
		if b := piece.Outline[(i+1)%len(piece.Outline)]; a.X != b.X && a.Y != b.Y {
			return "A corner on a slope or an arc is on the " + either(p.Snap.IsZero(), "", "nearest mark where that is within "+t.length(p.Snap)+", else on the ") + "next mark toward the inside." +
				either(straight, " One nearly in line with its neighbors has no letter: saw straight on.", "")
		}
	}
	return ""
}

// trammel says how to draw an arc: its center, which may lie off the piece, its radius, and its top where
// that is on the piece.
func (t *text) trammel(piece plan.Piece, a plan.Arc, from side) string {
	says := fmt.Sprintf("trammel for %s: center %s, %s, radius %s", a.Opening, t.across(a.Centre.X, from), t.off(a.Centre.Y, "up", "lower"), t.about(a.Radius))
	if top, err := a.Top(); err == nil && piece.Holds(top) {
		says += ", top at " + t.about(top.Y) + " up"
	}
	if x, y := a.Centre.X, a.Centre.Y; t.full && (x.Sign() < 0 || y.Sign() < 0 || piece.Width.Less(x) || piece.Height.Less(y)) {
		says += ", on scrap of the same thickness clamped beside the piece"
	}
	return says + either(t.full, "; on the back the center is "+t.off(a.Back.X, "from "+startOf(piece, true), "left"), "")
}

// mostPoints is the most points of a line to saw that are all written; a line of more is a curve, which
// is drawn with a trammel or through the corners of the piece.
const mostPoints = 8

// curved reports whether a line to saw is a curve without an arc to draw it by.
func curved(m plan.Marks) bool {
	return len(m.Arcs) == 0 && slices.ContainsFunc(m.Strokes(), func(c plan.SawCut) bool { return len(c.Points) > mostPoints })
}

// wayOutWords has the sentence for each way out of a weak spot.
var wayOutWords = map[cutout.WayOut]string{
	cutout.PartLeg:     "saw the leg as a piece of its own, with a seam at its root, or tape a batten across it until it is fixed",
	cutout.DrillCorner: "drill the corner round before sawing and carry the piece flat, or move the seam to the corner",
	cutout.JoinCutouts: "saw both cutouts as one if their plates still cover it, or let a seam run through them",
	cutout.RunOut:      "let the cutout run out there if its plate or trim still covers what falls away, or tape a batten across the strip before both sides of it are sawn, and leave it on until the piece is fixed",
	cutout.PartStrip:   "saw the strip as a piece of its own, or tape a batten across it until the piece is fixed",
	cutout.MoveSeam:    "move the seam so that the cutout runs out at the edge or lies further in, or saw the piece in two at the cutout",
	cutout.WidenPiece:  "let the pattern start elsewhere, as the whole piece is no wider, or cover its place with trim",
	cutout.WidenStrip:  "move the seam so that more is left beside the notch, or saw the strip as a piece of its own",
}

// boardWords has what is said of seams and sheets in the words for boards, whose joints are where they are.
var boardWords = strings.NewReplacer("move the seam to the corner", "start the boards elsewhere", "move the seam", "start the boards elsewhere",
	"let a seam run", "let a joint run", "its sheet", "its board", "the panel of", "the board of", "panels that burn", "boards that burn")

// joined says of the joints of boards what is said of seams.
func joined(p plan.Plan, says string) string {
	return either(p.Profile.Boards, boardWords.Replace(says), says)
}

// measuredFrom says from which edges the marks of a piece are measured, and what made these. What is
// left on to scribe lies outside the line that they are measured from.
func measuredFrom(p plan.Plan, piece plan.Piece, length func(fraction.Length) string) string {
	name := func(edge string, kind plan.EdgeKind) string {
		return edge + either(kind == plan.AnyEdge, "", " ("+kind.String()+")")
	}
	from := piece.Marks.From
	left, lower := name("left edge"+either(from.Left != plan.SawnEdge && p.Profile.Boards && p.Profile.Edges >= groove.Lapped, " of its face", ""), from.Left), name("lower edge", from.Lower)
	switch s := piece.Scribe; {
	case s == nil:
		return left + " and " + lower
	case s.Edge == wall.Left:
		return "the finish line, " + length(s.Width) + " in from the " + left + ", and " + lower
	default:
		return left + " and " + lower + "; on the back from the finish line, " + length(s.Width) + " in from its left edge"
	}
}

// startOf names what is at the left of the face or the back, from which marks are measured.
func startOf(piece plan.Piece, back bool) string {
	return either(piece.Scribe != nil && (piece.Scribe.Edge == wall.Left) != back, "finish line at left", "left")
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

// sawing returns what is drilled and sawn out of a piece, a line for each part of the waste: an
// upright rectangle by its sides, and in the full text, or of other shapes, by its holes and cuts.
func (t *text) sawing(p plan.Plan, piece plan.Piece, from side) (lines []string) {
	m := piece.Marks
	for _, c := range m.Order {
		var says, saw []string
		lo, hi, plain := rectangle(c)
		if plain {
			left, right := from.place(lo.X), from.place(hi.X)
			says = append(says, fmt.Sprintf("%s to %s %s, %s to %s up", t.length(fraction.Min(left, right)), t.length(fraction.Max(left, right)), from.word, t.length(lo.Y), t.length(hi.Y)))
		}
		if holes := t.drilling(m, c, from); holes != "" && (t.full || !plain) {
			says = append(says, holes)
		}
		for _, at := range c.Tight {
			says = append(says, fmt.Sprintf("no starter hole fits at %s, use a smaller bit or cut in from both sides", t.spot(at, from)))
		}
		before := ""
		for i, cut := range c.Saw {
			verb := either(p.Planed(piece, cut), "plane ", "saw ")
			saw = append(saw, either(verb != before, verb, "")+either(i > 0 && i == len(c.Saw)-1, "last ", "")+t.sawCut(p, piece, cut, from))
			before = verb
		}
		if t.full || !plain {
			says = append(says, strings.Join(saw, "; "))
		}
		lines = append(lines, waste(c.Waste)+": "+strings.Join(says, "; "))
	}
	return lines
}

// rectangle returns the lower left and the upper right corner of waste that is an upright rectangle
// with a hole drilled in each of its inside corners: every cut is along one of its sides, and no two
// along the same.
func rectangle(c plan.Cutting) (lo, hi plan.Point, ok bool) {
	var points []plan.Point
	corners := map[plan.Point]int{} // how many cuts end there
	for _, cut := range c.Saw {
		if len(cut.Points) != 2 {
			return lo, hi, false
		}
		points = append(points, cut.Points...)
		corners[cut.Points[0]]++
		corners[cut.Points[1]]++
	}
	lo, hi = cutout.Bounds(points)
	inside := 0
	for p, ends := range corners {
		if p.X != lo.X && p.X != hi.X || p.Y != lo.Y && p.Y != hi.Y || ends > 2 {
			return lo, hi, false
		}
		inside += ends - 1
	}
	for _, cut := range c.Saw {
		ok = cut.Points[0].X == cut.Points[1].X || cut.Points[0].Y == cut.Points[1].Y
		if !ok {
			return lo, hi, false
		}
	}
	return lo, hi, ok && inside == len(c.Drill) && inside > 0
}

// drilling says where to drill for the waste: four holes in the corners of a rectangle by the two
// lines that each way has them.
func (t *text) drilling(m plan.Marks, c plan.Cutting, from side) string {
	var across, up, places []string
	bit := ""
	add := func(to *[]string, s string) {
		if !slices.Contains(*to, s) {
			*to = append(*to, s)
		}
	}
	for _, i := range c.Drill {
		if i < 0 || i >= len(m.Drill) {
			continue
		}
		d := m.Drill[i]
		bit = t.given(d.Diameter)
		add(&across, t.length(from.place(d.At.X)))
		add(&up, t.length(d.At.Y))
		places = append(places, t.spot(d.At, from))
	}
	switch {
	case bit == "":
		return ""
	case len(places) == len(across)*len(up):
		return "drill " + bit + " at " + strings.Join(across, " and ") + " " + from.word + ", " + strings.Join(up, " and ") + " up"
	}
	return "drill " + bit + " at " + strings.Join(places, " and at ")
}

// spot writes a place on a piece.
func (t *text) spot(p plan.Point, from side) string {
	return t.length(from.place(p.X)) + " " + from.word + ", " + t.length(p.Y) + " up"
}

// straightened is a line to saw without the corners between its ends that drawings leave out, as they are nearly in line.
func straightened(p plan.Plan, m plan.Marks, cut plan.SawCut) plan.SawCut {
	out := map[int]bool{}
	n := 0
	for r, ring := range m.Named(p.Snap) {
		for _, c := range ring {
			out[n] = c.Name == "" && plan.ArcAt(m.Arcs, c.Face) == nil && !(r > 0 && plan.Level(m.Holes[r-1].Face))
			n++
		}
	}
	all := cut
	cut.Points, cut.Corners = nil, nil
	for i, at := range all.Points {
		if between := 0 < i && i < len(all.Points)-1; i >= len(all.Corners) || !between || !out[all.Corners[i]] {
			cut.Points = append(cut.Points, at)
			cut.Corners = append(cut.Corners, all.Corners[min(i, len(all.Corners)):min(i+1, len(all.Corners))]...)
		}
	}
	return cut
}

// sawCut says where to saw: a straight upright or level line by its place and from where to where
// on it, an arc by its trammel; in the full text with the letters of its corners.
func (t *text) sawCut(p plan.Plan, piece plan.Piece, cut plan.SawCut, from side) string {
	if len(cut.Points) == 0 {
		return ""
	}
	cut = straightened(p, piece.Marks, lettered(p, piece.Marks, cut))
	corners := ""
	if name := wayName(p, piece.Marks, cut); t.full && name != "" {
		corners = " (" + name + ")"
	}
	start, parts, err := piece.Stretches(cut, t.tape.Mark, p.Snap)
	first, last := fraction.Must(start, err), start
	if len(parts) > 0 {
		last = parts[len(parts)-1].To
	}
	switch straight := len(cut.Points) == 2; {
	case straight && first.X == last.X:
		return fmt.Sprintf("%s at %s %s, %s to %s%s", either(last.Y.Less(first.Y), "down", "up"), t.length(from.place(first.X)), from.word, t.length(first.Y), t.length(last.Y), corners)
	case straight && first.Y == last.Y:
		return fmt.Sprintf("%s at %s up, %s to %s %s%s", either(last.X.Less(first.X), "left", "right"), t.length(first.Y), t.length(from.place(first.X)), t.length(from.place(last.X)), from.word, corners)
	}
	curved := slices.ContainsFunc(parts, func(s plan.Stretch) bool { return s.Arc != nil })
	if !curved && len(cut.Points) > mostPoints {
		return fmt.Sprintf("along the curve from %s, by %s, to %s%s", t.spot(first, from), t.spot(cut.Points[len(cut.Points)/2], from), t.spot(last, from), corners)
	}
	says := either(from.width.IsZero(), "from ", "") + t.spot(start, from)
	for i, part := range parts {
		before := start
		if i > 0 {
			before = parts[i-1].To
		}
		switch {
		case part.Arc != nil:
			says += ", by the trammel for " + part.Arc.Opening + " to " + t.spot(part.To, from)
		case curved && part.To.X == before.X:
			says += ", straight " + either(part.To.Y.Less(before.Y), "down", "up") + " to " + t.length(part.To.Y)
		default:
			says += ", to " + t.spot(part.To, from)
		}
	}
	return says + corners
}
