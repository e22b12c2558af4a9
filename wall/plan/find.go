package plan

import (
	"bytes"
	"encoding/json"
	"math"
	"math/big"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// JSON returns the plan as JSON with one field a line and names as they are, which encoding/json reads back.
func (p Plan) JSON() ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(p); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// TapeMeasure returns the tape that people read the plan's lengths on: its unit and smallest mark.
func (p Plan) TapeMeasure() fraction.Tape { return fraction.Tape{Mark: p.Tape, Unit: p.Units} }

// Piece returns the piece of a number and its index in Pieces; the zero Piece and -1 for none.
func (p Plan) Piece(number int) (Piece, int) {
	return first(p.Pieces, func(piece Piece) bool { return piece.Number == number })
}

// Run returns the run of a name and its index in Runs; the zero Run and -1 for none.
func (p Plan) Run(name string) (Run, int) {
	return first(p.Runs, func(run Run) bool { return run.Name == name })
}

// StockNamed returns the stock of a name and its index in Stock; the zero Stock and -1 for none.
func (p Plan) StockNamed(name string) (Stock, int) {
	return first(p.Stock, func(s Stock) bool { return s.Name == name })
}

// first returns the first for which something holds, and its index.
func first[T any](all []T, holds func(T) bool) (one T, i int) {
	if i = slices.IndexFunc(all, holds); i >= 0 {
		one = all[i]
	}
	return one, i
}

// Rectangular reports whether the outline of a piece is its own bounding rectangle.
func (p Piece) Rectangular() bool {
	return len(p.Outline) == 4 && !slices.ContainsFunc(p.Outline, func(c Point) bool {
		return !c.X.IsZero() && c.X != p.Width || !c.Y.IsZero() && c.Y != p.Height
	})
}

// Plain reports whether a piece is done when its rectangle is sawn.
func (p Piece) Plain() bool { return p.Rectangular() && len(p.Holes) == 0 }

// Planed reports whether a line to saw round a piece leaves waste that is nowhere as wide as is sawn off, along
// one edge of the bounding rectangle and open at both ends, so that it is planed.
func (p Plan) Planed(piece Piece, cut SawCut) bool {
	shut := func(i int) bool { // an inside corner, or one of a hole
		n := len(piece.Outline)
		if i < 0 || i >= n {
			return true
		}
		return cutout.Orient(piece.Outline[(i+n-1)%n], piece.Outline[i], piece.Outline[(i+1)%n]) < 0
	}
	last := len(cut.Corners) - 1
	return len(cut.Points) > 0 && piece.beside(cut.Points, p.Saw.LeastRip) && (last < 0 || !shut(cut.Corners[0]) && !shut(cut.Corners[last]))
}

// beside reports whether places are all nearer than so much to one edge of the bounding rectangle.
func (p Piece) beside(places []Point, far fraction.Length) bool {
	near := [4]bool{true, true, true, true} // the left, the right, the lower, the upper edge
	for _, at := range places {
		inner := func(x, from fraction.Length) bool {
			return new(big.Rat).Abs(new(big.Rat).Sub(x.Rat(), from.Rat())).Cmp(far.Rat()) >= 0
		}
		for i, in := range [4]bool{inner(at.X, fraction.Length{}), inner(at.X, p.Width), inner(at.Y, fraction.Length{}), inner(at.Y, p.Height)} {
			near[i] = near[i] && !in
		}
	}
	return slices.Contains(near[:], true)
}

// Holds reports whether a place lies on the bounding rectangle of a piece.
func (p Piece) Holds(at Point) bool {
	return at.X.Sign() >= 0 && at.Y.Sign() >= 0 && !p.Width.Less(at.X) && !p.Height.Less(at.Y)
}

// Blank returns the width of what a piece is sawn from, with what is left on to scribe, and how far
// right of its left edge the piece itself begins. It fails where that is beyond exact arithmetic.
func (p Piece) Blank() (width, left fraction.Length, err error) {
	defer fraction.Catch(&err)
	if p.Scribe == nil {
		return p.Width, left, nil
	}
	if p.Scribe.Edge == wall.Left {
		left = p.Scribe.Width
	}
	return p.Width.Add(p.Scribe.Width), left, nil
}

// SheetOf returns the number of the sheet that a piece is cut from, 0 for none.
func (p Plan) SheetOf(number int) int {
	sheet, _ := first(p.Sheets, func(s Sheet) bool {
		return slices.ContainsFunc(s.Placements, func(placed nest.Placement) bool { return placed.Part == number })
	})
	return sheet.Number
}

// OnHand reports whether a row of the list is stock with a count and no price, which is there
// already.
func (p Plan) OnHand(r finish.Row) bool {
	stock, _ := p.StockNamed(r.Name)
	return r.Item == finish.ItemSheet && stock.OnHand()
}

// BoxIn returns the place in Fixing.Boxes of the first box that the panels of a run cover, -1 where there is none.
func (p Plan) BoxIn(r Run) int {
	return slices.IndexFunc(p.Fixing.Boxes, func(b finish.BoxFixing) bool {
		return slices.ContainsFunc(r.Openings, func(o Opening) bool { return o.Name == b.Name })
	})
}

// Chosen returns the choice that the plan takes; the zero Choice where there is none.
func (p Plan) Chosen() Choice {
	taken, _ := first(p.Choices, func(c Choice) bool { return c.Chosen })
	return taken
}

// LooksBetter reports whether a choice has less blemish than the chosen one.
func (p Plan) LooksBetter(c Choice) bool { return c.BlemishTotal.Less(p.Chosen().BlemishTotal) }

// ByPrice reports whether the money for sheets counts before their number, as prices of the stock differ.
func (p Plan) ByPrice() bool {
	prices := map[fraction.Ratio]bool{}
	for _, s := range p.Stock {
		if s.Count == nil || s.Price.Known() {
			price, _ := s.Price.Ratio()
			prices[price] = true
		}
	}
	return len(prices) > 1
}

// LeastOfAll reports whether it is proved that no layout of the room needs less than the chosen one,
// however it looks.
func (p Plan) LeastOfAll() bool {
	last := len(p.Choices) - 1
	return last >= 0 && p.Choices[last].Chosen && p.Search.Least
}

// OnHand returns how many sheets of the choice are not bought.
func (c Choice) OnHand() int { return c.Sheets - c.Bought }

// PolePlaces returns the places on the story pole from left to right, each as the indices of the
// marks at it.
func (r Run) PolePlaces() (places [][]int) {
	for i, mark := range r.StoryPole {
		if i == 0 || mark.At != r.StoryPole[i-1].At {
			places = append(places, nil)
		}
		last := len(places) - 1
		places[last] = append(places[last], i)
	}
	return places
}

// Course is a row of joints of boards at equal distances on a story pole.
type Course struct {
	Every fraction.Length
	Marks []int // indices in the story pole, from left to right
}

// The least joints of a course, and how many joints on its next check mark stands: common practice, no
// source.
const leastCourse, checkEvery = 5, 4

// Courses returns the rows of joints of boards on the story pole of a run. A mark at the first joint, at
// the last and at a few to check by is enough, as each board finds its place by the one before. There are
// none beyond exact arithmetic.
func (p Plan) Courses(r Run) (all []Course) {
	if !p.Profile.Boards {
		return nil
	}
	var err error
	defer fraction.Catch(&err)
	var c Course
	end := func() {
		if len(c.Marks) >= leastCourse {
			all = append(all, c)
		}
	}
	for i, m := range r.StoryPole {
		if m.Kind != PanelsMeet {
			continue
		}
		if n := len(c.Marks); n > 0 {
			every := m.At.Sub(r.StoryPole[c.Marks[n-1]].At)
			if n > 1 && every != c.Every {
				end()
				c.Marks = c.Marks[n-1:]
			}
			c.Every = every
		}
		c.Marks = append(c.Marks[:len(c.Marks):len(c.Marks)], i)
	}
	end()
	return all
}

// Checks returns the indices of the marks between the first and the last to check by.
func (c Course) Checks() (marks []int) {
	for i := checkEvery - 1; i < len(c.Marks)-1; i += checkEvery {
		marks = append(marks, c.Marks[i])
	}
	return marks
}

// PoleEntry is what a story pole has at one place or from one to another: marks at one place, an opening
// by its left mark, two panels that meet with a gap, or a course.
type PoleEntry struct {
	From, To fraction.Length
	Marks    []Mark
	Course   *Course
}

// PoleEntries returns what is on the story pole of a run as a person marks it: an opening, a seam and a
// course of boards once each. That a repeat starts at a joint of boards goes without saying.
func (p Plan) PoleEntries(r Run) (all []PoleEntry) {
	pole, courses, said := r.StoryPole, p.Courses(r), make([]bool, len(r.StoryPole))
	find := func(such func(m Mark) bool) int { return slices.IndexFunc(pole, such) }
	for i, m := range pole {
		entry := PoleEntry{From: m.At, To: m.At, Marks: []Mark{m}}
		span := func(to int) { entry.To, said[to] = pole[to].At, true }
		switch last := len(all) - 1; {
		case said[i]:
			continue
		case len(courses) > 0 && courses[0].Marks[0] == i:
			entry.Course, courses = &courses[0], courses[1:]
			for _, k := range entry.Course.Marks {
				span(k)
			}
		case m.Kind == RepeatStarts && p.Profile.Boards && find(func(o Mark) bool { return o.At == m.At && o.Kind == PanelsMeet }) >= 0:
			continue
		case m.Kind == OpeningLeft:
			for k, o := range pole {
				if o.Kind == OpeningRight && o.Opening == m.Opening {
					span(k)
				}
			}
		case m.Kind == PanelRight:
			next := find(func(o Mark) bool { return m.At.Less(o.At) })
			seam := func(o Mark) bool { // a wider space is a door's
				return o.Kind == PanelLeft && o.At == pole[next].At && !p.Gaps.Seam.Less(o.At.Sub(m.At))
			}
			if k := find(func(o Mark) bool { return next >= 0 && seam(o) }); k >= 0 {
				span(k)
				entry.Marks[0].Kind, entry.Marks[0].Next = PanelsMeet, pole[k].Panel
			}
		case last >= 0 && all[last].From == m.At && all[last].To == m.At:
			all[last].Marks = append(all[last].Marks, m)
			continue
		}
		all = append(all, entry)
	}
	return all
}

// ClosingEdge returns the edge at which a closing piece is sawn to the wall or to a door: the one with a
// scribe; else the far one in the direction of work, or the near one where a panel stands beside that.
func (p Plan) ClosingEdge(piece Piece) wall.Direction {
	if piece.Scribe != nil {
		return piece.Scribe.Edge
	}
	run, _ := p.Run(piece.Run)
	i := slices.IndexFunc(run.Panels, func(panel wall.Panel) bool { return panel.Number == piece.Panel })
	far := run.SetOut.Direction
	switch {
	case far == wall.Right && p.joined(run, i):
		return wall.Left
	case far == wall.Left && p.joined(run, i-1):
		return wall.Right
	}
	return far
}

// joined reports whether a panel of a run and the next one to its right share a seam.
func (p Plan) joined(run Run, left int) bool {
	if left < 0 || left+1 >= len(run.Panels) {
		return false
	}
	gap := new(big.Rat).Sub(run.Panels[left+1].Left.Rat(), run.Panels[left].Right.Rat())
	return gap.Cmp(p.Gaps.Seam.Rat()) <= 0
}

// Alone reports whether the space of a piece is the wall's own, so that it is measured before the piece is sawn: no panel
// stands beside it, and nothing is left on it to scribe.
func (p Plan) Alone(piece Piece) bool {
	run, _ := p.Run(piece.Run)
	i := slices.IndexFunc(run.Panels, func(panel wall.Panel) bool { return panel.Number == piece.Panel })
	return i >= 0 && !piece.Closing && !p.joined(run, i-1) && !p.joined(run, i)
}

// LeansOut reports whether an end of the run leans, and whether panels reach farthest at its top.
func (r Run) LeansOut(end wall.Direction) (leans, top bool) {
	if end == wall.Left {
		return !r.Left.Lean.IsZero(), r.Left.Lean.Sign() < 0
	}
	return !r.Right.Lean.IsZero(), r.Right.Lean.Sign() > 0
}

// Ambiguous reports whether a part on the bench cannot be told from another of its sheet by its size to
// the nearest mark of the tape. It fails where a size does not fit a Length.
func (p Plan) Ambiguous(s Sheet, c Cut) (same bool, err error) {
	defer fraction.Catch(&err)
	near := func(width, length fraction.Length) [2]fraction.Length {
		w, _ := width.Round(p.Tape, fraction.Nearest)
		l, _ := length.Round(p.Tape, fraction.Nearest)
		return [2]fraction.Length{w, l}
	}
	own := near(c.Rect[2], c.Rect[3])
	same = c.Alike
	for _, other := range s.Cuts {
		same = same || other.Rect != c.Rect && near(other.Rect[2], other.Rect[3]) == own
	}
	for _, o := range s.Offcuts {
		same = same || near(o.Width, o.Length) == own
	}
	for _, placed := range s.Placements {
		piece, _ := p.Piece(placed.Part)
		width, _, err := piece.Blank()
		same = same || near(fraction.Must(width, err), piece.Height) == own
	}
	return same, nil
}

// Strokes returns the lines to saw in the order of sawing.
func (m Marks) Strokes() (all []SawCut) {
	for _, c := range m.Order {
		all = append(all, c.Saw...)
	}
	return all
}

// Top returns the highest place of the circle on the face. It fails where that does not fit a Length.
func (a Arc) Top() (top Point, err error) {
	defer fraction.Catch(&err)
	return Point{X: a.Centre.X, Y: a.Centre.Y.Add(a.Radius)}, nil
}

// Meet returns where the circle meets the upright or level edge from q to p, or what of it is nearest to p, in inches.
func (a Arc) Meet(p, q Point) (x, y float64) {
	cx, cy, r := a.Centre.X.Float64(), a.Centre.Y.Float64(), a.Radius.Float64()
	x, y = p.X.Float64()-cx, p.Y.Float64()-cy
	switch far := math.Hypot(x, y); {
	case p.X == q.X && p.Y != q.Y && math.Abs(x) <= r:
		y = math.Copysign(math.Sqrt(r*r-x*x), y)
	case p.Y == q.Y && p.X != q.X && math.Abs(y) <= r:
		x = math.Copysign(math.Sqrt(r*r-y*y), x)
	case far > 0:
		x, y = x*r/far, y*r/far
	}
	return cx + x, cy + y
}

// DrillInset returns how far from both edges of a corner the middle of each starter hole lies, half its
// diameter, and reports whether that is so of them all and they are alike.
func (m Marks) DrillInset() (inset fraction.Length, all bool) {
	var err error
	defer fraction.Catch(&err)
	corners := slices.Concat(m.rings()...)
	for _, d := range m.Drill {
		inset = d.Diameter.Div(2)
		at := slices.ContainsFunc(corners, func(c Point) bool { return c.X.Sub(d.At.X).Abs() == inset && c.Y.Sub(d.At.Y).Abs() == inset })
		if !at || d.Diameter != m.Drill[0].Diameter {
			return inset, false
		}
	}
	return inset, len(m.Drill) > 0
}

// Up reports whether there are panels on the wall already.
func (p Plan) Up() bool {
	return slices.ContainsFunc(p.Runs, func(r Run) bool { return len(r.Installed) > 0 })
}

// upAt reports for the inside corner at the right end of run i, if there is one, whether panels that are
// up reach into it on the run that passes and on the one that butts.
func (p Plan) upAt(i int) (passes, butts, ok bool) {
	if i < 0 || i >= len(p.Runs) || p.Runs[i].CornerRight == nil || p.Runs[i].CornerRight.Mitred() {
		return false, false, false
	}
	c := p.Runs[i].CornerRight
	next, _ := p.Run(c.Next)
	left := slices.ContainsFunc(p.Runs[i].Installed, func(in Installed) bool { return !in.Right.Less(p.Runs[i].Limits[1]) })
	right := slices.ContainsFunc(next.Installed, func(in Installed) bool { return !next.Limits[0].Less(in.Left) })
	if c.Passes == c.Next {
		return right, left, true
	}
	return left, right, true
}

// Meets reports whether a panel, to be fitted or on the wall, goes on beyond the right or the left edge of a piece.
// Past that of a board at an end, or beside a door, a tongue or a lap would stand out.
func (p Plan) Meets(piece Piece, right bool) bool {
	run, _ := p.Run(piece.Run)
	return slices.ContainsFunc(run.upInTheEnd(), func(beside Installed) bool {
		if right {
			return beside.Left.Sub(p.Gaps.Seam) == piece.At.X.Add(piece.Width)
		}
		return beside.Right.Add(p.Gaps.Seam) == piece.At.X
	})
}

// upInTheEnd returns all panels of a run, to be fitted or on the wall.
func (r Run) upInTheEnd() []Installed {
	all := slices.Clone(r.Installed)
	for _, p := range r.Panels {
		all = append(all, Installed{Left: p.Left, Right: p.Right, LeftPhase: p.LeftPhase})
	}
	return all
}

// EndPanel returns the panel nearest to an end of the run, to be fitted or on the wall, if there is one.
func (r Run) EndPanel(right bool) (panel Installed, ok bool) {
	all := r.upInTheEnd()
	for i, p := range all {
		if order := p.Left.Compare(panel.Left); i == 0 || right && order > 0 || !right && order < 0 {
			panel = p
		}
	}
	return panel, len(all) > 0
}

// AtEnd returns 1 for a corner of the wall that belongs to its left end, 2 for its right end and 0 for
// neither: the outermost corners and those of a lean.
func (r Run) AtEnd(p Point) (end int) {
	var err error
	defer fraction.Catch(&err)
	switch {
	case !fraction.Max(fraction.Length{}, r.Left.Lean).Less(p.X):
		return 1
	case !p.X.Less(fraction.Min(r.Width, r.Width.Add(r.Right.Lean))):
		return 2
	}
	return 0
}

// Extent returns the corners of the box round a wall, its openings and the limits of its panels.
func (r Run) Extent() (lo, hi Point) {
	points := slices.Concat([]Point{{X: r.Limits[0]}, {X: r.Limits[1]}, {X: r.Width}, {}}, r.Outline)
	for _, o := range r.Openings {
		points = append(points, o.Outline...)
	}
	return cutout.Bounds(points)
}

// Upright is an upright edge of a piece on its run: at the side of a panel, a step or an opening.
type Upright struct {
	X, Low, High fraction.Length
	Panel        int
}

// Uprights returns the upright edges of the pieces of a run. It fails where one does not fit a Length.
func (p Plan) Uprights(r Run) (all []Upright, err error) {
	defer fraction.Catch(&err)
	for _, piece := range p.Pieces {
		if piece.Run != r.Name {
			continue
		}
		for _, ring := range piece.Rings() {
			for i, a := range ring {
				if b := ring[(i+1)%len(ring)]; a.X == b.X {
					all = append(all, Upright{piece.At.X.Add(a.X), piece.At.Y.Add(fraction.Min(a.Y, b.Y)), piece.At.Y.Add(fraction.Max(a.Y, b.Y)), piece.Panel})
				}
			}
		}
	}
	return all, nil
}

// Meetings returns where panels of a run, of sheets, have an edge on both sides of the gap between two that follow
// each other, but at a door: the middle of the gap, with the number of the left one. It fails where one does not fit a Length.
func (p Plan) Meetings(r Run) (all []Upright, err error) {
	defer fraction.Catch(&err)
	edges := fraction.Must(p.Uprights(r))
	for i := 1; i < len(r.Panels) && !p.Profile.Boards; i++ {
		left, right := r.Panels[i-1], r.Panels[i]
		if p.Gaps.Seam.Less(right.Left.Sub(left.Right)) { // a wider space is a door's
			continue
		}
		for _, a := range edges {
			for _, b := range edges {
				lo, hi := fraction.Max(a.Low, b.Low), fraction.Min(a.High, b.High)
				if a.Panel == left.Number && a.X == left.Right && b.Panel == right.Number && b.X == right.Left && lo.Less(hi) {
					all = append(all, Upright{X: a.X.Add(b.X).Div(2), Low: lo, High: hi, Panel: a.Panel})
				}
			}
		}
	}
	return all, nil
}

// ArcsOf returns the arc of an opening of a run as taped, without its gap, in the coordinates of the run;
// none where no piece has an edge of it. It fails where that does not fit a Length.
func (p Plan) ArcsOf(r Run, o Opening) (arcs []Arc, err error) {
	defer fraction.Catch(&err)
	for _, piece := range p.Pieces {
		for _, a := range piece.Marks.Arcs {
			if piece.Run == r.Name && a.Opening == o.Name {
				centre := Point{X: a.Centre.X.Add(piece.At.X), Y: a.Centre.Y.Add(piece.At.Y)}
				return []Arc{{Opening: o.Name, Centre: centre, Radius: a.Radius.Sub(p.Gaps.Around(o.Kind)), Springs: a.Springs.Add(piece.At.Y), Half: fraction.Max(a.Half.Sub(p.Gaps.Around(o.Kind)), fraction.Length{}), Near: a.Near}}, nil
			}
		}
	}
	return nil, nil
}

// Passes reports whether the panels at an end of run i pass into an inside corner, so that those of the
// other wall hide their edge.
func (p Plan) Passes(i int, right bool) bool {
	if i < 0 || i >= len(p.Runs) {
		return false
	}
	at := i
	if !right {
		at = (i + len(p.Runs) - 1) % len(p.Runs)
	}
	c := p.Runs[at].CornerRight
	return c != nil && c.Passes != "" && c.Passes == p.Runs[i].Name
}

// CornerLetter names the corner at the right end of run i, "" where there is none.
func (p Plan) CornerLetter(i int) string {
	if i < 0 || i >= len(p.Runs) || p.Runs[i].CornerRight == nil {
		return ""
	}
	n := 0
	for _, run := range p.Runs[:i] {
		if run.CornerRight != nil {
			n++
		}
	}
	return CornerName(n)
}

// BlemishNumber returns the number, from 1, of blemish i of those that cost something; 0 where it
// costs nothing, and where there is none.
func (p Plan) BlemishNumber(i int) (number int) {
	if i < 0 || i >= len(p.Blemishes) || p.Blemishes[i].Cost.Sign() <= 0 {
		return 0
	}
	for _, b := range p.Blemishes[:i+1] {
		if b.Cost.Sign() > 0 {
			number++
		}
	}
	return number
}

// Behind reports whether a piece to fit passes behind a panel that is up, into the inside corner at the
// right end of run i.
func (p Plan) Behind(i int) bool {
	passes, butts, _ := p.upAt(i)
	return butts && !passes
}

// Locked reports whether what passes behind a panel that is up, see [Plan.Behind], cannot come there from the side: there
// is less room between that panel and the corner than it is thick, or between it and the next one that is up on its
// own wall than it goes behind.
func (p Plan) Locked(i int) bool {
	var err error
	defer fraction.Catch(&err)
	if !p.Behind(i) {
		return false
	}
	thick, right := p.Profile.Thickness, p.Runs[i].CornerRight.Passes != p.Runs[i].CornerRight.Next
	run, _ := p.Run(p.Runs[i].CornerRight.Passes)
	other, _ := p.Run(p.Runs[i].CornerRight.Butts)
	behind, _ := run.EndPanel(right)
	up, _ := other.EndPanel(!right)
	gap, in := up.Left, thick.Sub(run.Width.Sub(behind.Right))
	if !right {
		gap, in = other.Width.Sub(up.Right), thick.Sub(behind.Left)
	}
	return gap.Less(thick) || slices.ContainsFunc(run.Installed, func(n Installed) bool {
		room := behind.Left.Sub(n.Right)
		if !right {
			room = n.Left.Sub(behind.Right)
		}
		return room.Sign() >= 0 && room.Less(in)
	})
}

// ClosesBefore reports whether pieces to fit pass into an inside corner before others butt against them.
func (p Plan) ClosesBefore() (closes bool) {
	for i := range p.Runs {
		passes, butts, ok := p.upAt(i)
		closes = closes || ok && !passes && !butts
	}
	return closes
}

// Mitred reports whether the panels meet in a mitre, and none passes.
func (c Corner) Mitred() bool { return c.Passes == "" }

// Word is the word of what is at the end: of its kind, but where an opening takes it.
func (e End) Word() string {
	if e.Bare {
		return "bare"
	}
	return e.Kind.String()
}

// End returns what is at the left or the right end of the run.
func (r Run) End(right bool) End {
	if right {
		return r.Right
	}
	return r.Left
}

// Mitred reports whether the panels at the end are mitred for an outside corner.
func (e End) Mitred() bool { return e.Kind == wall.OutsideCorner && !e.Bare }

// MitredEdges reports whether the left and the right edge of a piece of the run are mitred: those
// that reach an outside corner. It fails where the piece lies beyond exact arithmetic.
func (r Run) MitredEdges(p Piece) (edges [2]bool, err error) {
	defer fraction.Catch(&err)
	return [2]bool{
		r.Left.Mitred() && p.At.X == r.Limits[0],
		r.Right.Mitred() && p.At.X.Add(p.Width) == r.Limits[1],
	}, nil
}
