package drawing

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// words is all text of a node.
func (n *node) words() string {
	s := n.text
	for _, k := range n.kids {
		s += k.words()
	}
	return s
}

// named returns all nodes below n of a name and class.
func (n *node) named(name, class string) (all []*node) {
	for _, k := range n.kids {
		if k.name == name && k.value("class") == class {
			all = append(all, k)
		}
		all = append(all, k.named(name, class)...)
	}
	return all
}

// number is an attribute of a node that is one.
func (n *node) number(name string) float64 {
	v, err := strconv.ParseFloat(n.value(name), 64)
	if err != nil {
		panic(err)
	}
	return v
}

// The bar of the scale shows twice the least whole inches, feet or round metric sizes that take more than 44 of ink, true to
// scale.
func TestBarOfTheScale(t *testing.T) {
	for _, unit := range []fraction.Unit{fraction.Inch, fraction.Millimetre, fraction.Centimetre} {
		inches, sizes := 1.0, []float64{1, 2, 3, 6, 12, 24, 48, 96, 192}
		if unit != fraction.Inch {
			inches, sizes = 1/25.4, nil
			if unit == fraction.Centimetre {
				inches = 1 / 2.54
			}
			for ten := 1.0; ten < 1e4; ten *= 10 {
				sizes = append(sizes, ten, 2*ten, 5*ten)
			}
		}
		for scale := .25; scale < 96; scale *= 1.03 {
			c := newCanvas(kitchen(), wideInk, "x", "x")
			c.tape.Unit, c.scale = unit, scale
			c.bar(8, 0)
			want := sizes[slices.IndexFunc(sizes, func(s float64) bool { return s*inches*scale > 44 })]
			texts, bar := c.named("text", ""), c.named("path", "edge")
			if len(texts) != 3 || len(bar) != 1 {
				t.Fatalf("%d texts at %d bars", len(texts), len(bar))
			}
			var x, y, long float64
			if _, err := fmt.Sscanf(strings.NewReplacer("M", "", "h", " ", "v", " ").Replace(bar[0].value("d")), "%g %g %g", &x, &y, &long); err != nil {
				t.Fatal(bar[0].value("d"), err)
			}
			if math.Abs(long-2*want*inches*scale) > .02 || x+long > wideInk {
				t.Errorf("%v, %v to the inch: a bar of %v, want twice %v", unit, scale, long, want)
			}
			for n, text := range texts {
				if text.words() != fmt.Sprint(float64(n)*want) || math.Abs(text.number("x")-x-float64(n)*long/2) > .02 {
					t.Errorf("%v, %v to the inch: %q at %v of a bar of %v from %v, want %v", unit, scale, text.words(), text.number("x"), long, x, float64(n)*want)
				}
			}
		}
	}
}

// A sheet is drawn at the largest whole scale at which it has room beside the lane of its measurements and is no longer than a
// page has room for; a narrow one is stretched.
func TestSheetsAreAsLargeAsTheyHaveRoom(t *testing.T) {
	for wide := int64(100); wide < 600; wide++ {
		d := &sheetDrawing{canvas: newCanvas(kitchen(), halfInk, "x", "x")}
		d.stock.Stock = nest.Stock{Width: fraction.Of(wide, 8), Length: fraction.Inches(20)}
		d.lay()
		_, room := sheetLeft, halfInk-sheetLeft-14
		fits := func(part float64) bool {
			return d.stock.Width.Float64()*perInch/part <= room+1e-6 && 20*perInch/part <= sheetTall+1e-6
		}
		part := perInch / d.scale
		if math.Abs(part-math.Round(part)) > 1e-9 || !fits(part) || part > 1 && fits(part-1) || d.area.x < sheetLeft-1e-6 || d.area.x+d.area.w > halfInk-14+1e-6 {
			t.Errorf("%v wide: 1 to %v, from %v to %v", d.stock.Width, part, d.area.x, d.area.x+d.area.w)
		}
	}
}

// crossing is a room whose last run would cross the first.
func crossing() plan.Plan { return around("iiioi", "100", "300", "80", "100", "10", "300") }

// around is a room of runs of these widths, between them inside or outside corners.
func around(corners string, widths ...string) plan.Plan {
	p := kitchen()
	p.Closed = false
	p.Runs = slices.Repeat(p.Runs[:1], len(widths))
	for i, width := range widths {
		r := &p.Runs[i]
		r.Name, r.Width, r.CornerRight = fmt.Sprint("run ", i), in(width), nil
		if i+1 < len(widths) {
			kind := map[byte]wall.EndKind{'i': wall.InsideCorner, 'o': wall.OutsideCorner}[corners[i]]
			r.CornerRight = &plan.Corner{Kind: kind, Next: fmt.Sprint("run ", i+1)}
		}
	}
	return p
}

// The room from above is as large as it has room, and no run crosses another.
func TestRoomFillsItsDrawing(t *testing.T) {
	judge := func(t *testing.T, p plan.Plan) {
		for _, width := range []float64{wideInk, halfInk} {
			d := &roomDrawing{canvas: newCanvas(p, width, "room", "room")}
			d.lay()
			var xs, ys []float64
			for _, c := range d.courses {
				for _, at := range []complex128{c.start, c.at(c.long, 0)} {
					xs, ys = append(xs, real(at)), append(ys, imag(at))
				}
			}
			across, down := slices.Max(xs)-slices.Min(xs), slices.Max(ys)-slices.Min(ys)
			larger := perInch / (perInch/d.scale - 1) // the next scale of one to a whole number
			if full := max(across/(width-2*roomLane), down/roomTall); full > 1+1e-6 || full*larger/d.scale <= 1 {
				t.Errorf("%v wide: %v by %v, which is %v of the room there is", width, across, down, full)
			}
			if left, right := slices.Min(xs), d.Width-slices.Max(xs); left < roomLane-1e-6 || math.Abs(left-right) > 1e-6 || slices.Min(ys) < roomLane-1e-6 || slices.Max(ys) > d.Height-roomLane {
				t.Errorf("from %v to %v of %v, from %v to %v of %v", left, right, d.Width, slices.Min(ys), slices.Max(ys), d.Height)
			}
		}
	}
	forEachPlan(t, judge)
	judge(t, crossing())
	for _, corners := range []string{"iiii", "oooo", "ioio", "oiio"} {
		judge(t, around(corners, "60", "80", "100"))
		judge(t, around(corners, "60", "80", "100", "70", "30"))
		judge(t, around(corners, "10", "200", "30"))
	}
}

// The letter of a corner whose runs are drawn apart stands at both, outside their walls.
func TestLettersOfRunsDrawnApart(t *testing.T) {
	p := crossing()
	drawn, err := Room(p)
	if err != nil {
		t.Fatal(err)
	}
	d := &roomDrawing{canvas: newCanvas(p, wideInk, "room", "room")}
	d.lay()
	if fmt.Sprint(d.apart) != "[false false false false false true]" {
		t.Fatalf("drawn apart: %v", d.apart)
	}
	var letters string
	var last []complex128
	for _, text := range drawn.named("text", "bold") {
		if s := text.words(); len(s) == 1 {
			letters += s
			if s == "E" {
				last = append(last, complex(text.number("x"), text.number("y")-typeSize*.36))
			}
		}
	}
	if letters != "ABCDEE" {
		t.Fatalf("letters %q", letters)
	}
	for i, want := range []complex128{d.courses[4].at(d.courses[4].long+23, -23), d.courses[5].at(-23, -23)} {
		if cmplx.Abs(last[i]-want) > .02 {
			t.Errorf("letter %d of the last corner stands at %v, want %v", i, last[i], want)
		}
	}
}

// The lead of a trim's label begins in the middle of the trim.
func TestTrimsAreNamedAtTheirMiddle(t *testing.T) {
	d := &sectionDrawing{canvas: newCanvas(kitchen(), halfInk, "x", "x"), face: 60, next: 10}
	d.scale = 10
	d.trim(&wall.EdgeTrim{Name: "rail", Covers: in("3")}, "x", 40, 1)
	rect, dot := d.named("rect", "tag"), d.named("circle", "startmark")
	if len(rect) != 1 || len(dot) != 1 {
		t.Fatalf("%d trims, %d leads", len(rect), len(dot))
	}
	if at := complex(dot[0].number("cx"), dot[0].number("cy")); rect[0].box() != (box{60, 40, trimInk, 30}) || rect[0].box().middle() != at {
		t.Errorf("the trim is %v, its label points to %v, %v", rect[0].box(), dot[0].number("cx"), dot[0].number("cy"))
	}
	if d.trim(nil, "x", 40, 1); len(d.named("rect", "tag")) != 1 {
		t.Error("no trim is drawn")
	}
}

// Letters of corners lie wholly on the unfolded walls' drawing; a run that stays bare is said to.
func TestUnfoldedWords(t *testing.T) {
	p := crossing()
	p.Runs[1].StoryPole = nil
	drawn, err := Unfolded(p)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(drawn.Desc, "stays bare"); n != 1 || !strings.Contains(drawn.Desc, "run 1: stays bare.") {
		t.Errorf("%q", drawn.Desc)
	}
	texts, dots := drawn.named("text", "bold"), drawn.named("circle", "tag")
	letters := slices.DeleteFunc(texts, func(n *node) bool { return len(n.words()) != 1 })
	if len(letters) != 5 || len(dots) != 5 {
		t.Fatalf("%d letters on %d discs", len(letters), len(dots))
	}
	for i, dot := range dots {
		if x, r := dot.number("cx"), dot.number("r"); x+r > drawn.Width || letters[i].number("x") != x {
			t.Errorf("%s at %v on a disc of %v at %v of %v", letters[i].words(), letters[i].number("x"), r, x, drawn.Width)
		}
	}
}

// What is on the wall already is said so on its panels.
func TestPanelsOnTheWallAreNamed(t *testing.T) {
	p := kitchen()
	run := &p.Runs[1]
	run.Installed = []plan.Installed{{Left: in("1"), Right: in("40")}}
	drawn, err := Elevation(p, 1)
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(drawn.words(), "on the wall"); n != 1 {
		t.Errorf("said %d times", n)
	}
}

// What is on the wall already is hatched in each picture of the order of fitting, at its place and as in the elevation.
func TestOrderOfFittingHasWhatIsOnTheWall(t *testing.T) {
	p := kitchen()
	run := &p.Runs[0]
	run.Installed = []plan.Installed{{Left: in("10"), Right: in("30")}}
	drawn, err := FittingStrip(p, 0)
	if err != nil {
		t.Fatal(err)
	}
	walls, up := drawn.named("path", "wall"), drawn.named("rect", "opening")
	if len(walls) < 2 || len(up) != len(walls) {
		t.Fatalf("%d walls, %d panels on them", len(walls), len(up))
	}
	for i, n := range up {
		var x, y float64
		if _, err := fmt.Sscanf(walls[i].value("d"), "M%g %g", &x, &y); err != nil {
			t.Fatal(err)
		}
		scale := n.number("width") / 20
		if at := (n.number("x") - x) / scale; math.Abs(at-10) > .1 || n.value("fill") != "url(#run-1-fitting-installed)" {
			t.Errorf("picture %d: %q at %v, want 10", i+1, n.value("fill"), at)
		}
	}
}

// The words of the start are on the drawing also where it is narrower than they are estimated: what ends at a place ends on it.
func TestStartIsOnTheDrawing(t *testing.T) {
	p := readPlan("testdata/boards.json")
	run := &p.Runs[0]
	run.SetOut.From, run.SetOut.Direction = in("-11/16"), wall.Right
	for _, width := range []float64{halfInk, wideInk} {
		e, _ := fitElevation(p, 0, width, math.Inf(1), false)
		found := false
		for _, n := range e.named("text", "starttext") {
			if strings.HasPrefix(n.words(), "Start ") {
				found = true
				if x := n.number("x"); x < 4 || n.value("text-anchor") == "end" && x > width-4 {
					t.Errorf("%q, anchored at its %s, at %.1f of %v", n.words(), n.value("text-anchor"), x, width)
				}
			}
		}
		if !found {
			t.Errorf("%v wide: no start", width)
		}
	}
}

// Of more groups of marks than have room the first and the last are written.
func TestFirstAndLastMarkOfACrowdAreWritten(t *testing.T) {
	for n := int64(30); n < 150; n += 7 {
		p := kitchen()
		run := &p.Runs[1]
		run.StoryPole = nil
		for i := range n {
			run.StoryPole = append(run.StoryPole, plan.Mark{At: in("1").Mul(i), Kind: plan.PanelsMeet})
		}
		texts, _ := newElevation(p, 1, halfInk, "x", "x").texts(run.PolePlaces())
		if len(texts[0]) == 0 || len(texts[len(texts)-1]) == 0 {
			t.Errorf("%d marks: the first says %v, the last %v", n, texts[0], texts[len(texts)-1])
		}
	}
}
