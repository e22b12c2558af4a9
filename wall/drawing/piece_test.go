package drawing

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// TestLettersAreNearestToTheirCorners: each letter on a piece has its middle much nearer to its own
// corner than to any other, or a lead to it, and every corner that is on no arc has one. Letters that
// share a label are of corners that ink cannot part.
func TestLettersAreNearestToTheirCorners(t *testing.T) {
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, piece := range p.Pieces {
			for _, back := range []bool{false, true} {
				large, err := Piece(p, i, back, 250)
				if err != nil {
					t.Fatal(err)
				}
				pictures := []Picture{large}
				if small, ok := large.Narrow(); ok {
					pictures = append(pictures, small)
				}
				for _, pic := range pictures {
					d := drawSide(p, i, back, pic.Width, 250, "x")
					at := map[string]*node{}
					for _, n := range pic.kids {
						if n.name == "text" && strings.HasPrefix(n.value("class"), "bold halo") {
							for _, kid := range n.kids {
								if kid.name == "tspan" {
									at[kid.kids[0].text] = n
								}
							}
						}
					}
					for _, c := range d.corners {
						letter := at[c.name]
						if c.name == "" {
							continue
						}
						if letter == nil {
							t.Errorf("piece %s, back %v: no letter %s", piece.Label, back, c.name)
							continue
						}
						looked++
						spot := letter.box()
						x, y := spot.x, spot.y-typeSize*.36
						d := *d
						frames := pic.named("rect", "ring") // what is drawn again, and then the details in the same order
						for n, from := range d.insets {
							if from.holds(d.at(c.at)) {
								detail := frames[len(d.insets)+n]
								gain := detail.number("width") / from.w
								d.left, d.top = detail.number("x")+(d.left-from.x)*gain, detail.number("y")+(d.top-from.y)*gain
								d.scale *= gain
								break
							}
						}
						away := func(c corner) float64 { return math.Hypot(d.x(c.at.X)-x, d.y(c.at.Y)-y) }
						lead := false // to one of the corners of the label
						for _, other := range d.corners {
							lead = lead || other.name != "" && at[other.name] == letter && leads(pic, d.x(other.at.X), d.y(other.at.Y))
						}
						if far := away(c); len(letter.kids) == 1 && far > 18.5 && !lead {
							t.Errorf("piece %s, back %v: letter %s is %.1f off its corner", piece.Label, back, c.name, far)
						}
						for _, other := range d.corners {
							shared := other.name != "" && at[other.name] == letter
							if shared && math.Hypot(d.x(c.at.X)-d.x(other.at.X), d.y(c.at.Y)-d.y(other.at.Y)) > 2*closer {
								t.Errorf("piece %s, back %v: %s and %s share a label", piece.Label, back, c.name, other.name)
							}
							if other.name != "" && !lead && !shared && away(other) < 1.25*away(c) {
								t.Errorf("piece %s, back %v: letter %s is nearer to %s", piece.Label, back, c.name, other.name)
							}
						}
					}
				}
			}
		}
	})
	if looked < 100 {
		t.Errorf("only %d letters were looked at", looked)
	}
}

// leads reports whether a lead ends at a place.
func leads(pic Picture, x, y float64) bool {
	return slices.ContainsFunc(pic.kids, func(n *node) bool {
		return slices.ContainsFunc(n.kids, func(l *node) bool {
			return l.value("class") == "lead" && strings.HasSuffix(l.value("d"), pen("L", x, y))
		})
	})
}

// TestArcsAreTrue draws the head of a hole in a view and measures what its path goes through: every
// point of the arcs within 0.1 mm of the circle at full size, which is as large as anything is drawn.
func TestArcsAreTrue(t *testing.T) {
	arc := plan.Arc{Centre: plan.Point{X: in("23"), Y: in("5")}, Radius: in("13"), Springs: in("10")}
	head := ring("11", "2", "35", "2", "35", "10 1/8", "30", "16", "23", "18 1/8", "16", "16", "11", "10 1/8")
	v := view{scale: perInch, y1: 20}
	path := v.curved([]plan.Arc{arc}, head)
	if strings.Count(path, "A") != 4 {
		t.Fatalf("want arcs between the five corners from springing to springing in %s", path)
	}
	ends := strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("MLAZ", r) })
	for _, part := range ends[2:7] {
		var xy [2]float64
		fields := strings.Fields(part)
		for i := range xy {
			var err error
			if xy[i], err = strconv.ParseFloat(fields[len(fields)-2+i], 64); err != nil {
				t.Fatal(err)
			}
		}
		off := math.Hypot(xy[0]/perInch-23, 20-xy[1]/perInch-5) - 13
		if math.Abs(off)*25.4 > .1 {
			t.Errorf("%s lies %.3f mm off the circle", part, off*25.4)
		}
	}
}

// TestSignsOfNails: every nail of a back stands on its piece, at least as far from the edges as the plan says,
// and a picture for a phone has them at the same places of the piece.
func TestSignsOfNails(t *testing.T) {
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, piece := range p.Pieces {
			var nails [2][]point // in inches, of both widths
			for k, width := range []float64{wideInk, halfInk} {
				d := drawSide(p, i, true, width, 250, "x")
				far := p.Fixing.Inset.Float64()*d.scale - .02 // ink is written to a hundredth
				for _, n := range d.named("path", "nail") {
					var x, y float64
					if _, err := fmt.Sscanf(n.value("d"), "M%f %f", &x, &y); err != nil {
						t.Fatal(n.value("d"), err)
					}
					x, y = x+2.5, y+2.5
					nails[k] = append(nails[k], complex((x-d.left)/d.scale, (y-d.top)/d.scale))
					ways := []point{0, complex(-far, 0), complex(far, 0), complex(0, -far), complex(0, far)}
					if at := (x - d.left) / d.scale; p.Profile.Edges == groove.Tongued && min(at, piece.Width.Float64()-at) < .01 { // through the tongue, which no drawing of a side shows
						within := .1 * either[point](at < .01, 1, -1)
						ways = []point{within, within + complex(0, -far), within + complex(0, far)}
					}
					for _, way := range ways {
						if !inside(complex(x, y)+way, d.view.edges(piece.Rings()...)) {
							t.Errorf("piece %s: a nail at %.1f %.1f is less than %.1f from an edge", piece.Label, x, y, far)
							break
						}
					}
				}
			}
			looked += len(nails[0])
			if !slices.EqualFunc(nails[0], nails[1], func(a, b point) bool { return cmplx.Abs(a-b) < .2 }) {
				t.Errorf("piece %s: nails at %.1f in a wide picture, at %.1f in a narrow one", piece.Label, nails[0], nails[1])
			}
		}
	})
	if looked < 100 {
		t.Errorf("only %d nails were looked at", looked)
	}
}

// TestScribeLeads: the text of what is left on to scribe stands upright beside the edge that it is left at, or is led to it.
func TestScribeLeads(t *testing.T) {
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, piece := range p.Pieces {
			for _, back := range []bool{false, true} {
				pic, err := Piece(p, i, back, 250)
				if err != nil {
					t.Fatal(err)
				}
				on := false
				for _, edge := range pic.named("path", "finish") {
					var x0, y0, x1, y1 float64
					if _, err := fmt.Sscanf(strings.Replace(edge.value("d"), "L", " ", 1), "M%f %f %f %f", &x0, &y0, &x1, &y1); err != nil {
						t.Fatal(edge.value("d"), err)
					}
					for _, text := range pic.named("text", "halo") {
						var x, y float64
						if _, err := fmt.Sscanf(text.value("transform"), "translate(%f %f)", &x, &y); err == nil && strings.Contains(text.words(), "scribe") {
							on = on || y > min(y0, y1) && y < max(y0, y1) && math.Abs(x0+(y-y0)/(y1-y0)*(x1-x0)-x+typeSize*.36) < 1.5*laneHigh
						}
					}
					for _, lead := range pic.named("path", "lead") {
						var x, y, toX, toY float64
						_, err := fmt.Sscanf(strings.Replace(lead.value("d"), "L", " ", 1), "M%f %f %f %f", &x, &y, &toX, &toY)
						on = on || err == nil && toY > min(y0, y1) && toY < max(y0, y1) && math.Abs(x0+(toY-y0)/(y1-y0)*(x1-x0)-toX) < .1
					}
				}
				if looked++; piece.Scribe != nil && !on {
					t.Errorf("piece %s, back %v: its edge to scribe has no text beside it, nor a lead", piece.Label, back)
				}
			}
		}
	})
	if looked < 20 {
		t.Errorf("only %d leaves were looked at", looked)
	}
}

// TestArchesAreMeasured: what a trammel needs stands in the chains of a piece with an arch, from the left
// and up: both ends of the arc and its middle, which is marked, and an arrow as long as the radius points
// to it. The letters of the corners run on without a gap. By hand from the job: the seam at 43 3/4 and
// 43 7/8 cuts the circle of radius 13 1/8 round 42, 6 at 6 + sqrt(13.125² - 1.75²) = 19.13 and, 1 7/8 off,
// at 18.99; piece 1 begins at 1/16, -1/8, piece 2 at 43 7/8, -1/2.
func TestArchesAreMeasured(t *testing.T) {
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		want := [][]string{
			{"7 13/16", "20 1/16", "13 15/16", "41 15/16", "11 1/8", "6 1/8", "19 1/8", "radius 13 1/8", "radius 6 1/8"},
			{"1 7/8 beyond", "6 1/2", "11 9/16", "19 1/2", "radius 13 1/8"},
		}
		for i, piece := range p.Pieces {
			pic, err := Piece(p, i, false, 250)
			if err != nil {
				t.Fatal(err)
			}
			letters := 0
			for _, n := range pic.named("text", "bold halo") {
				letters += strings.Count(n.words(), ", ") + 1
			}
			if slices.ContainsFunc(pic.named("text", "bold halo"), func(n *node) bool { return strings.Contains(", "+n.words()+",", ", "+plan.CornerName(letters)+",") }) {
				t.Errorf("piece %s: %d letters, and one of them %s", piece.Label, letters, plan.CornerName(letters))
			}
			if len(piece.Marks.Arcs) == 0 || !strings.HasSuffix(t.Name(), "odd-arch.json") {
				continue
			}
			looked++
			var texts []string
			for _, n := range append(pic.named("text", ""), pic.named("text", "halo")...) {
				texts = append(texts, n.words())
			}
			for _, text := range want[i] {
				if !slices.Contains(texts, text) {
					t.Errorf("piece %s: %q is in none of %q", piece.Label, text, texts)
				}
			}
			if middles := len(pic.named("circle", "edge")); middles != len(piece.Marks.Arcs) {
				t.Errorf("piece %s: %d middles of %d arcs", piece.Label, middles, len(piece.Marks.Arcs))
			}
		}
	})
	if looked != 2 {
		t.Errorf("%d pieces of the arched job were looked at", looked)
	}
}

// The word beside the section of a mitered edge stands clear of the section of the other edge, or is left out, however
// narrow the piece is.
func TestMiterWordsAreClear(t *testing.T) {
	words := 0
	for width := int64(4); width < 100; width += 3 {
		p := kitchen()
		piece := &p.Pieces[len(p.Pieces)-1]
		run, at := p.Run(piece.Run)
		run.Left.Kind, run.Right.Kind = wall.OutsideCorner, wall.OutsideCorner
		piece.Width, piece.At.X = fraction.Inches(width), run.Limits[0]
		run.Limits[1] = piece.At.X.Add(piece.Width)
		p.Runs[at] = run
		for _, back := range []bool{false, true} {
			d := drawSide(p, len(p.Pieces)-1, back, halfInk, 250, "x")
			sections := d.named("path", "miter")
			if len(sections) != 2 {
				t.Fatalf("%d sections of two miters", len(sections))
			}
			for _, n := range d.named("text", "") {
				if len(n.kids) == 0 || n.kids[0].text != "miter" {
					continue
				}
				words++
				from, to := n.number("x"), n.number("x")+textWidth("miter", typeSize)
				if n.value("text-anchor") == "end" {
					from, to = n.number("x")-textWidth("miter", typeSize), n.number("x")
				}
				for _, s := range sections {
					var x, y, end float64
					if _, err := fmt.Sscanf(s.value("d"), "M%f %fH%f", &x, &y, &end); err != nil {
						t.Fatal(err, s.value("d"))
					}
					if from < max(x, end) && min(x, end) < to {
						t.Errorf("%d wide, back %v: a word from %.0f to %.0f, a section from %.0f to %.0f", width, back, from, to, x, end)
					}
				}
			}
		}
	}
	if words < 20 {
		t.Errorf("only %d words", words)
	}
}

// Figures of many corners close to the right edge of a piece stay on its drawing.
func TestFiguresStayOnTheDrawing(t *testing.T) {
	p := kitchen()
	piece := &p.Pieces[0]
	right, up := piece.Width, piece.Height.Div(32)
	ring := []plan.Point{{}, {X: right}}
	for n := range int64(14) { // stairs
		x := right.Sub(fraction.Of(n, 8))
		ring = append(ring, plan.Point{X: x, Y: up.Mul(n + 1)}, plan.Point{X: x.Sub(fraction.Of(1, 8)), Y: up.Mul(n + 1)})
	}
	ring = append(ring, plan.Point{X: ring[len(ring)-1].X, Y: piece.Height}, plan.Point{Y: piece.Height})
	var back []plan.Point
	for _, at := range ring {
		back = append(back, plan.Point{X: right.Sub(at.X), Y: at.Y})
	}
	piece.Outline, piece.Holes, piece.Marks = ring, nil, plan.Marks{Corners: cutout.Corners{Face: ring, Back: back}}
	pic, err := Piece(p, 0, false, 250)
	if err != nil {
		t.Fatal(err)
	}
	uprights := 0
	for _, text := range pic.named("text", "") {
		var x, y float64
		if n, _ := fmt.Sscanf(text.value("transform"), "translate(%g %g) rotate(-90)", &x, &y); n == 2 {
			if uprights++; x > pic.Width {
				t.Errorf("%q is at %.1f of %.1f", text.words(), x, pic.Width)
			}
		}
	}
	if uprights < 12 {
		t.Errorf("%d figures across the piece", uprights)
	}
}

// A narrow board with a notch at its edge, round half a pipe, has it as a detail, where all letters stand at their corners: the
// drawing across the page, which has none, would lead some to far away.
func TestNotchOfANarrowBoardIsADetail(t *testing.T) {
	p := kitchen()
	p.Pieces = p.Pieces[:1]
	piece := &p.Pieces[0]
	outline := ring("0", "0", "3 1/8", "0", "3 1/8", "41 3/4", "0", "41 3/4", "0", "18 5/8", "1/16", "18 5/8", "9/16", "18 1/8", "9/16", "17 1/8", "1/16", "16 5/8", "0", "16 5/8")
	piece.Width, piece.Height, piece.Outline, piece.Holes = in("3 1/8"), in("41 3/4"), outline, nil
	var saw plan.Cutting
	for _, at := range [][2]int{{4, 5}, {9, 8}, {5, 6}, {6, 7}, {7, 8}} {
		saw.Saw = append(saw.Saw, plan.SawCut{Points: []plan.Point{outline[at[0]], outline[at[1]]}, Corners: at[:]})
	}
	piece.Marks = plan.Marks{Corners: cutout.Corners{Face: outline, Back: outline}, Order: []plan.Cutting{saw},
		Drill: []plan.Drill{{At: ring("3/8", "18")[0], Diameter: in("3/8")}, {At: ring("3/8", "17 1/4")[0], Diameter: in("3/8")}}}
	for _, tall := range []float64{250, 500} {
		pic, err := Piece(p, 0, false, tall)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(pic.texts(), func(text string) bool { return strings.HasPrefix(text, "detail 1 at ") }) {
			t.Errorf("%v tall: no detail", tall)
		}
	}
}

// The figures up a piece stand on its drawing however long they are, such as the height of the middle of an arc that is on no
// mark of the tape, on the face and on the back, across the page and in half of it.
func TestFiguresUpAPieceHaveRoom(t *testing.T) {
	arc := plan.Arc{Centre: plan.Point{X: in("20"), Y: in("28 1/6")}, Radius: in("10"), Springs: in("30"), Opening: "niche"}
	for _, wide := range []string{"30", "40", "41"} {
		for _, x := range []string{"-1", "20"} { // of the middle of the arc
			p := kitchen()
			p.Pieces = p.Pieces[:1]
			piece := &p.Pieces[0]
			arc.Centre.X = in(x)
			arc.Back = plan.Point{X: in(wide).Sub(in(x)), Y: arc.Centre.Y}
			piece.Width, piece.Height, piece.Holes = in(wide), in("53 1/4"), nil
			piece.Outline = ring("0", "0", wide, "0", wide, "53 1/4", "0", "53 1/4")
			piece.Marks = plan.Marks{Corners: cutout.Corners{Face: piece.Outline, Back: piece.Outline}, Arcs: []plan.Arc{arc}}
			for _, width := range []float64{halfInk, wideInk} {
				for _, back := range []bool{false, true} {
					d := drawSide(p, 0, back, width, 400, "x")
					found := false
					for _, n := range d.named("text", "") {
						if text := n.words(); text == "28 3/16 less 0.021" && n.value("text-anchor") == "end" {
							found = true
							if start := n.number("x") - narrowest*textWidth(text, typeSize); start < 0 {
								t.Errorf("%s wide, middle at %s, back %v, on %v: %q begins at %.1f", wide, x, back, width, text, start)
							}
						}
					}
					if end := d.left + max(0, d.piece.Width.Float64())*d.scale; !found || end > width-pieceRight+.02 {
						t.Errorf("%s wide, middle at %s, back %v, on %v: has its height %v, ends at %.1f", wide, x, back, width, found, end)
					}
				}
			}
		}
	}
}

// A detail has room for the figures of all its corners up the piece, more than its own height has: none is missing, none stands
// on another or on the name of the detail.
func TestDetailsHaveRoomForTheirFigures(t *testing.T) {
	for steps := range int64(20) {
		p := kitchen()
		p.Pieces = p.Pieces[:1]
		piece := &p.Pieces[0]
		outline := []plan.Point{{}, {X: in("40")}, {X: in("40"), Y: in("20")}}
		for n := range steps + 2 { // a flight of steps up to the left, each of 1/4
			x, y := in("40").Sub(fraction.Of(n+1, 4)), in("20").Add(fraction.Of(n, 4))
			outline = append(outline, plan.Point{X: x, Y: y}, plan.Point{X: x, Y: y.Add(fraction.Of(1, 4))})
		}
		top := in("20").Add(fraction.Of(steps+2, 4))
		piece.Outline, piece.Holes, piece.Width, piece.Height = append(outline, plan.Point{Y: top}), nil, in("40"), top
		piece.Marks = plan.Marks{Corners: cutout.Corners{Face: piece.Outline, Back: piece.Outline}}
		d := drawParted(p, 0, false, halfInk, [2]float64{250, 36}, "x")
		if len(d.insets) != 1 {
			t.Fatalf("%d steps: %d details", steps, len(d.insets))
		}
		title, at := 0.0, map[string]float64{}
		for _, n := range d.kids {
			if n.name != "text" {
				continue
			}
			if strings.HasPrefix(n.words(), "detail 1 at") {
				title = n.number("y")
			} else if title > 0 && n.value("text-anchor") == "end" && n.value("transform") == "" {
				at[n.words()] = n.number("y")
			}
		}
		if highest := at[d.length(top, "").text]; highest > title+insetTall*.8 {
			t.Errorf("%d steps: the highest figure stands at %v, far under the title at %v", steps, highest, title)
		}
		before := title + 12 - poleGap    // which stands at its side
		for n := steps + 2; n >= 0; n-- { // from the top down
			up := d.length(in("20").Add(fraction.Of(n, 4)), "").text
			if y, ok := at[up]; !ok || y-before < poleGap-.05 {
				t.Errorf("%d steps: the figure %s of the detail stands at %v, %v, after %v", steps, up, y, ok, before)
			}
			before = at[up]
		}
	}
}
