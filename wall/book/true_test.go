package book

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/wall/plan"
)

// off is how far a point of a drawing may lie from where it belongs: 0.1 mm in print, in ink.
const off = 0.1 / 25.4 * 96

// spot is a place of ink.
type spot struct{ x, y float64 }

// stroke is a straight or an arc to a place of ink; the first one of a ring is a straight.
type stroke struct {
	to     spot
	rx, ry float64
	sweep  bool
}

var pathWords = regexp.MustCompile(`[A-Za-z]|-?[\d.]+`)

// strokesOf reads the rings of a path of the commands M, L, A and Z.
func strokesOf(d string) (rings [][]stroke, err error) {
	words := pathWords.FindAllString(d, -1)
	next := func() (v float64) {
		if len(words) > 0 {
			v, err = strconv.ParseFloat(words[0], 64)
			words = words[1:]
		}
		return v
	}
	for len(words) > 0 && err == nil {
		command := words[0]
		words = words[1:]
		var s stroke
		switch command {
		case "Z":
			continue
		case "M":
			rings = append(rings, nil)
		case "A":
			s.rx, s.ry = next(), next()
			next()
			if next() != 0 {
				return nil, fmt.Errorf("an arc of more than a half turn")
			}
			s.sweep = next() != 0
		case "L":
		default:
			return nil, fmt.Errorf("the command %q", command)
		}
		s.to = spot{next(), next()}
		if len(rings) == 0 {
			return nil, fmt.Errorf("no M at the start")
		}
		rings[len(rings)-1] = append(rings[len(rings)-1], s)
	}
	return rings, err
}

// centre is that of the circle of an arc from a place (SVG 2, appendix B.2.4, for equal radii and no
// rotation). Ink has y downwards.
func (s stroke) centre(from spot) spot {
	dx, dy := s.to.x-from.x, s.to.y-from.y
	half := math.Hypot(dx, dy) / 2
	rise := math.Sqrt(max(0, s.rx*s.rx-half*half))
	if !s.sweep {
		rise = -rise
	}
	return spot{(from.x+s.to.x)/2 - dy/(2*half)*rise, (from.y+s.to.y)/2 + dx/(2*half)*rise}
}

// inkOf is where inches lie in ink.
type inkOf func(x, y float64) spot

// untrue says what of a path is not where the plan has it: its corners are those of the rings in
// their order, or lie on one of the arcs, and its arcs are these arcs.
func untrue(d string, rings [][]plan.Point, arcs []plan.Arc, scale float64, at inkOf) (faults []string) {
	drawn, err := strokesOf(d)
	if err != nil {
		return []string{err.Error()}
	}
	if len(drawn) != len(rings) {
		return []string{fmt.Sprintf("%d rings, want %d", len(drawn), len(rings))}
	}
	far := func(a, b spot) float64 { return math.Hypot(a.x-b.x, a.y-b.y) }
	onArc := func(s spot) bool {
		for _, a := range arcs {
			if math.Abs(far(s, at(a.Centre.X.Float64(), a.Centre.Y.Float64()))-a.Radius.Float64()*scale) <= off {
				return true
			}
		}
		return false
	}
	for r, ring := range rings {
		found := 0
		for i, s := range drawn[r] {
			isCorner := false
			for _, p := range ring {
				isCorner = isCorner || far(s.to, at(p.X.Float64(), p.Y.Float64())) <= off
			}
			if isCorner {
				found++
			} else if !onArc(s.to) {
				faults = append(faults, fmt.Sprintf("ring %d has a corner at %v that the plan lacks", r, s.to))
			}
			if s.rx == 0 {
				continue
			}
			isArc := false
			for _, a := range arcs {
				centre := at(a.Centre.X.Float64(), a.Centre.Y.Float64())
				isArc = isArc || s.rx == s.ry && math.Abs(s.rx-a.Radius.Float64()*scale) <= off && far(s.centre(drawn[r][i-1].to), centre) <= 3*off
			}
			if !isArc {
				faults = append(faults, fmt.Sprintf("ring %d has an arc to %v that the plan lacks", r, s.to))
			}
		}
		want := 0
		for _, p := range ring {
			if plan.ArcAt(arcs, p) == nil {
				want++
			}
		}
		if found < want {
			faults = append(faults, fmt.Sprintf("ring %d has %d of the plan's %d corners", r, found, want))
		}
	}
	return faults
}

var (
	drawingName = regexp.MustCompile(`<title id="(.*?)-title">`)
	scaleOf     = regexp.MustCompile(`Scale <tspan data-plan="count">1:(\d+)<`)
	boardPath   = regexp.MustCompile(`<path class="board" d="([^"]*)"`)
	wallPath    = regexp.MustCompile(`<path class="wall" d="([^"]*)"`)
	openingPath = regexp.MustCompile(`<path class="opening" fill="[^"]*" d="(M[^"]*)"`)
	sheetRect   = regexp.MustCompile(`<rect class="board" x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)" height="([\d.]+)"`)
)

// anchored is the place of inches at a scale for a drawing whose first corner is known.
func anchored(d string, p plan.Point, scale float64, flip bool) (inkOf, error) {
	rings, err := strokesOf(d)
	if err != nil || len(rings) == 0 || len(rings[0]) == 0 {
		return nil, fmt.Errorf("no path: %v", err)
	}
	first, way := rings[0][0].to, 1.0
	if flip {
		way = -1
	}
	return func(x, y float64) spot {
		return spot{first.x + way*(x-p.X.Float64())*scale, first.y - (y-p.Y.Float64())*scale}
	}, nil
}

// untrueRun holds an elevation against a run: its wall, its pieces and its openings by the scale that
// it states.
func untrueRun(p plan.Plan, run plan.Run, svg string) (faults []string, looked int) {
	walls, m := wallPath.FindStringSubmatch(svg), scaleOf.FindStringSubmatch(svg)
	if walls == nil || m == nil {
		return []string{"no wall or no scale"}, 0
	}
	n, _ := strconv.ParseFloat(m[1], 64)
	scale := 96 / n
	at, err := anchored(walls[1], run.Outline[0], scale, false)
	if err != nil {
		return []string{err.Error()}, 0
	}
	faults = untrue(walls[1], [][]plan.Point{run.Outline}, nil, scale, at)
	boards := boardPath.FindAllStringSubmatch(svg, -1)
	for _, piece := range p.Pieces {
		if piece.Run != run.Name {
			continue
		}
		if len(boards) == 0 {
			return append(faults, "piece "+piece.Label+" is not drawn"), looked
		}
		x, y := piece.At.X.Float64(), piece.At.Y.Float64()
		for _, f := range untrue(boards[0][1], ringsOf(piece), piece.Marks.Arcs, scale, func(px, py float64) spot { return at(x+px, y+py) }) {
			faults = append(faults, "piece "+piece.Label+": "+f)
		}
		boards = boards[1:]
		looked++
	}
	for i, m := range openingPath.FindAllStringSubmatch(svg, -1) {
		if i >= len(run.Openings) || strings.Contains(m[1], "A") {
			continue // a true arc of an opening is in none of the plan's fields; that of its piece is above
		}
		for _, f := range untrue(m[1], [][]plan.Point{run.Openings[i].Outline}, nil, scale, at) {
			faults = append(faults, run.Openings[i].Name+": "+f)
		}
		looked++
	}
	return faults, looked
}

// untruePiece holds the drawing of a piece's face or back against the plan.
func untruePiece(piece plan.Piece, svg string, back bool) (faults []string) {
	if plan.ArcAt(piece.Marks.Arcs, piece.Outline[0]) != nil {
		return nil
	}
	for n, m := range boardPath.FindAllStringSubmatch(svg, -1) {
		at, scale, err := inkOfPiece(piece, svg, n, back)
		if err != nil {
			return []string{err.Error()}
		}
		faults = append(faults, untrue(m[1], ringsOf(piece), piece.Marks.Arcs, scale, at)...)
	}
	return faults
}

// detailScale is that over a detail of a piece.
var detailScale = regexp.MustCompile(`>detail.*? at (?:<[^>]*>)*1:(\d+)<`)

// inkOfPiece is where inches of a piece lie on the drawing of its face or back, or after it on detail n, and
// its scale. The back states none.
func inkOfPiece(piece plan.Piece, svg string, n int, back bool) (at inkOf, scale float64, err error) {
	boards := boardPath.FindAllStringSubmatch(svg, -1)
	if n >= len(boards) {
		return nil, 0, errors.New("no piece")
	}
	m := boards[n]
	rings, err := strokesOf(m[1])
	if err != nil || len(rings) == 0 {
		return nil, 0, errors.New("no rings")
	}
	left, right := math.Inf(1), math.Inf(-1)
	for _, s := range rings[0] {
		left, right = min(left, s.to.x), max(right, s.to.x)
	}
	scale = (right - left) / piece.Width.Float64()
	if details := detailScale.FindAllStringSubmatch(svg, -1); n > 0 {
		if len(details) != len(boards)-1 {
			return nil, 0, fmt.Errorf("%d details, %d scales", len(boards)-1, len(details))
		}
		stated, _ := strconv.ParseFloat(details[n-1][1], 64)
		scale = 96 / stated
	} else if s := scaleOf.FindStringSubmatch(svg); !back && s != nil {
		n, _ := strconv.ParseFloat(s[1], 64)
		scale = 96 / n
	} else if !back {
		return nil, 0, errors.New("no scale")
	}
	at, err = anchored(m[1], piece.Outline[0], scale, back)
	return at, scale, err
}

func ringsOf(piece plan.Piece) (rings [][]plan.Point) {
	rings = append(rings, piece.Outline)
	for _, h := range piece.Holes {
		rings = append(rings, h.Outline)
	}
	return rings
}

// TestPointsAreTrue holds the corners and the arcs of walls, openings and pieces in all books, on wide
// pages and on phones, against the plan, at the scale that the title block of the drawing states.
func TestPointsAreTrue(t *testing.T) {
	drawnPiece := regexp.MustCompile(`^piece-(.*?)-(face|back)(-small)?$`)
	drawnRun := regexp.MustCompile(`^run-(\d+)(-small)?$`)
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		looked := 0
		for _, svg := range drawn.FindAllString(string(files[0].Body), -1) {
			name := drawingName.FindStringSubmatch(svg)
			if name == nil {
				continue // a sign of a legend
			}
			var faults []string
			if m := drawnRun.FindStringSubmatch(name[1]); m != nil {
				i, _ := strconv.Atoi(m[1])
				more := 0
				faults, more = untrueRun(p, p.Runs[i-1], svg)
				looked += more
			} else if m := drawnPiece.FindStringSubmatch(name[1]); m != nil {
				for _, piece := range p.Pieces {
					if strings.EqualFold(piece.Label, m[1]) {
						faults = untruePiece(piece, svg, m[2] == "back")
						looked++
					}
				}
			} else if s := sheetRect.FindStringSubmatch(svg); strings.HasPrefix(name[1], "sheet-") {
				number, _ := strconv.Atoi(strings.TrimPrefix(name[1], "sheet-"))
				faults = untrueSheet(p, number, s, scaleOf.FindStringSubmatch(svg))
				looked++
			}
			for _, f := range faults {
				t.Errorf("%s: %s", name[1], f)
			}
		}
		if looked < len(p.Pieces) {
			t.Errorf("only %d shapes were looked at, of %d pieces", looked, len(p.Pieces))
		}
	})
}

var (
	cutCircle = regexp.MustCompile(`<circle class="cutnumber" cx="([-\d.]+)" cy="([-\d.]+)" r="[\d.]+"/>\s*<text class="cuttext"[^>]*><tspan data-plan="count">(\d+)<`)
	cutLead   = regexp.MustCompile(`<path class="cutlead" d="M([-\d.]+) ([-\d.]+)L([-\d.]+) ([-\d.]+)"/>`)
)

// unnumbered says which strokes of a piece have no circle with their number on its face, or on a detail of it,
// led to their line by a lead that comes to it across no hole.
func unnumbered(piece plan.Piece, svg string) (faults []string) {
	wrong := map[int]int{} // on how many of these
	boards := len(boardPath.FindAllString(svg, -1))
	for n := range boards {
		ats, said := unnumberedOn(piece, svg, n)
		for i, at := range ats {
			if wrong[at]++; wrong[at] == boards {
				faults = append(faults, said[i])
			}
		}
	}
	return faults
}

// unnumberedOn says so by the places of one of these, with the stroke of each fault, each stroke once.
func unnumberedOn(piece plan.Piece, svg string, board int) (strokes []int, faults []string) {
	number := func(s string) (v float64) {
		v, _ = strconv.ParseFloat(s, 64)
		return v
	}
	at, scale, err := inkOfPiece(piece, svg, board, false)
	if err != nil {
		return []int{-1}, []string{err.Error()}
	}
	leads, circles := map[spot]spot{}, map[string]spot{}
	for _, m := range cutLead.FindAllStringSubmatch(svg, -1) {
		leads[spot{number(m[1]), number(m[2])}] = spot{number(m[3]), number(m[4])}
	}
	for _, m := range cutCircle.FindAllStringSubmatch(svg, -1) {
		circles[m[3]] = spot{number(m[1]), number(m[2])}
	}
	for n, stroke := range plan.Strokes(piece.Marks.Order...) {
		fault := func(format string, args ...any) {
			if !slices.Contains(strokes, n) {
				strokes, faults = append(strokes, n), append(faults, fmt.Sprintf(format, args...))
			}
		}
		circle, drawn := circles[strconv.Itoa(n+1)]
		if stroke.Sides() { // in its hole, or nearer to it than to any other
			far := func(h plan.Hole) float64 {
				lo, hi := cutout.Bounds(h.Outline)
				a, b := at(lo.X.Float64(), lo.Y.Float64()), at(hi.X.Float64(), hi.Y.Float64())
				return math.Hypot(max(0, a.x-circle.x, circle.x-b.x), max(0, b.y-circle.y, circle.y-a.y))
			}
			nearest := slices.MinFunc(piece.Holes, func(a, b plan.Hole) int { return cmp.Compare(far(a), far(b)) })
			if !drawn || nearest.Opening != stroke.Opening {
				fault("the number %d of %s: circle %v, nearest to %s", n+1, stroke.Opening, drawn, nearest.Opening)
			}
			continue
		}
		end, led := leads[circle]
		if !drawn || !led {
			fault("stroke %d: circle %v, lead %v", n+1, drawn, led)
			continue
		}
		off := math.Inf(1)
		for points := stroke.Saw[0].Points; len(points) > 1; points = points[1:] {
			p, q := points[0], points[1]
			off = min(off, apart(end, at(p.X.Float64(), p.Y.Float64()), at(q.X.Float64(), q.Y.Float64())))
		}
		for _, a := range piece.Marks.Arcs {
			off = min(off, math.Abs(math.Hypot(end.x-at(a.Centre.X.Float64(), 0).x, end.y-at(0, a.Centre.Y.Float64()).y)-a.Radius.Float64()*scale))
		}
		if off > .5 {
			fault("the lead of stroke %d ends %.1f off its line", n+1, off)
		}
		for _, h := range piece.Holes {
			for i, p := range h.Outline {
				q, c := h.Outline[(i+1)%len(h.Outline)], spot{circle.x + (end.x-circle.x)*.999, circle.y + (end.y-circle.y)*.999}
				a, b := at(p.X.Float64(), p.Y.Float64()), at(q.X.Float64(), q.Y.Float64())
				side := func(a, b, c spot) bool { return (b.x-a.x)*(c.y-a.y) > (b.y-a.y)*(c.x-a.x) }
				if apart(end, a, b) > 1 && side(a, b, circle) != side(a, b, c) && side(circle, c, a) != side(circle, c, b) {
					fault("the lead of stroke %d crosses an edge of %s", n+1, h.Opening)
				}
			}
		}
	}
	return strokes, faults
}

// apart is how far a spot is from what lies between two others.
func apart(s, a, b spot) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	share := 0.0
	if long := dx*dx + dy*dy; long > 0 {
		share = max(0, min(1, ((s.x-a.x)*dx+(s.y-a.y)*dy)/long))
	}
	return math.Hypot(a.x+share*dx-s.x, a.y+share*dy-s.y)
}

// TestStrokesAreNumbered: every stroke that the list of a piece numbers has its circle on the drawing of
// the face, wide and on a phone, led to its own line. A drawing that has lost a circle or a lead, or
// whose lead ends elsewhere, is found.
func TestStrokesAreNumbered(t *testing.T) {
	face := regexp.MustCompile(`^piece-(.*?)-face(-small)?$`)
	forEachPlan(t, func(t *testing.T, p plan.Plan, files []File) {
		for _, svg := range drawn.FindAllString(string(files[0].Body), -1) {
			name := drawingName.FindStringSubmatch(svg)
			if name == nil || face.FindStringSubmatch(name[1]) == nil {
				continue
			}
			for _, piece := range p.Pieces {
				if !strings.EqualFold(piece.Label, face.FindStringSubmatch(name[1])[1]) || len(piece.Marks.Strokes()) == 0 {
					continue
				}
				for _, f := range unnumbered(piece, svg) {
					t.Errorf("%s: %s", name[1], f)
				}
				for what, spoilt := range map[string]string{
					"a circle":       strings.Replace(svg, `class="cutnumber"`, `class="cut"`, 1),
					"a lead":         strings.Replace(svg, `class="cutlead"`, `class="lead"`, 1),
					"the lead's end": cutLead.ReplaceAllString(svg, `<path class="cutlead" d="M$1 ${2}L-50 -50"/>`),
				} {
					if spoilt != svg && len(unnumbered(piece, spoilt)) == 0 {
						t.Errorf("%s: %s that is spoilt is not found", name[1], what)
					}
				}
			}
		}
	})
}

// untrueSheet holds the size of a sheet against its stock; a board is drawn too wide, and says so.
func untrueSheet(p plan.Plan, number int, rect, scale []string) []string {
	if rect == nil || scale == nil {
		return []string{"no sheet or no scale"}
	}
	n, _ := strconv.ParseFloat(scale[1], 64)
	w, _ := strconv.ParseFloat(rect[3], 64)
	h, _ := strconv.ParseFloat(rect[4], 64)
	for _, s := range p.Sheets {
		if s.Number != number {
			continue
		}
		stock, _ := p.StockNamed(s.Stock)
		wide, long := stock.Width.Float64()*96/n, stock.Length.Float64()*96/n
		if math.Abs(h-long) > off || math.Abs(w-wide) > off && w < 96-off {
			return []string{fmt.Sprintf("%v by %v, want %v by %v", w, h, wide, long)}
		}
		return nil
	}
	return []string{"no such sheet"}
}

// TestUntruePointsAreFound shows that the check above can fail: on a corner, a radius and a scale.
func TestUntruePointsAreFound(t *testing.T) {
	p := examplePlans(t)["odd-arch"]
	files, err := Files(p)
	if err != nil {
		t.Fatal(err)
	}
	var svg string
	for _, f := range files {
		if f.Name == "run-1.svg" {
			svg = string(f.Body)
		}
	}
	if faults, looked := untrueRun(p, p.Runs[0], svg); len(faults) > 0 || looked < 2 {
		t.Fatalf("%d shapes: %v", looked, faults)
	}
	first := boardPath.FindStringSubmatch(svg)[1]
	arc := regexp.MustCompile(`A([\d.]+) ([\d.]+) `).FindStringSubmatch(first)
	corner := regexp.MustCompile(`^M([\d.]+) `).FindStringSubmatch(first)
	if arc == nil || corner == nil {
		t.Fatalf("no arc or no corner in %s", first)
	}
	more := func(text string) string {
		v, _ := strconv.ParseFloat(text, 64)
		return strconv.FormatFloat(v+2*off, 'f', 2, 64)
	}
	for what, spoilt := range map[string]string{
		"a corner": strings.Replace(svg, "M"+corner[1]+" ", "M"+more(corner[1])+" ", -1),
		"a radius": strings.Replace(svg, arc[0], "A"+more(arc[1])+" "+more(arc[2])+" ", -1),
		"a scale":  scaleOf.ReplaceAllString(svg, `Scale <tspan data-plan="count">1:99<`),
	} {
		if spoilt == svg {
			t.Errorf("%s is not spoilt", what)
		}
		if faults, _ := untrueRun(p, p.Runs[0], spoilt); len(faults) == 0 {
			t.Errorf("%s that is spoilt is not found", what)
		}
	}
}
