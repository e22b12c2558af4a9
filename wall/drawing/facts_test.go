package drawing

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// A single straight wall has its name before it, below; walls round a corner have theirs beside them, whichever way the
// corner turns and however short the second is.
func TestOneStraightWallHasRoomForItsName(t *testing.T) {
	for _, row := range []struct {
		corners string
		widths  []string
		below   float64
	}{
		{"", []string{"100"}, 50},
		{"o", []string{"100", "80"}, 0},
		{"i", []string{"100", "80"}, 0},
		{"i", []string{"100", "1"}, 0},
	} {
		d := &roomDrawing{canvas: newCanvas(around(row.corners, row.widths...), wideInk, "room", "room")}
		d.lay()
		lowest := 0.0
		for _, c := range d.courses {
			lowest = max(lowest, imag(c.start), imag(c.at(c.long, 0)))
		}
		if got := d.Height - lowest - roomLane - 24; math.Abs(got-row.below) > 1e-6 {
			t.Errorf("corners %q, %v: %v more below, want %v", row.corners, row.widths, got, row.below)
		}
	}
}

// Strips are drawn from the wall to the backs of the panels, and are covered by them at head and foot alike.
func TestStripsLieBehindThePanels(t *testing.T) {
	p := kitchen()
	p.Fixing.Strips = in("3/4")
	drawn, err := Section(p, 0)
	if err != nil {
		t.Fatal(err)
	}
	panel := drawn.named("rect", "tag")[0].box()
	for _, n := range drawn.named("rect", "edge") {
		strip := n.box()
		if math.Abs(strip.x+strip.w-panel.x) > .02 {
			continue
		}
		over, under := strip.y-panel.y, panel.y+panel.h-strip.y-strip.h
		if over <= 0 || math.Abs(over-under) > .02 {
			t.Errorf("strips %v behind a panel %v", strip, panel)
		}
		return
	}
	t.Error("no strips")
}

// The words of a start that have no room beside its arrow, in the middle of the page, stand over it, under what is seen at the ends.
func TestWordsOverTheStart(t *testing.T) {
	p := kitchen()
	p.Profile.Boards, p.Profile.Edges = true, groove.Tongued
	run := &p.Runs[0]
	run.Width, run.SetOut.From, run.Outline = in("8"), in("-11/16"), ring("0", "0", "8", "0", "8", "42", "0", "42")
	run.Limits, run.Panels, run.Openings, p.Pieces = [2]fraction.Length{in("-11/16"), in("8")}, nil, nil, nil
	e := newElevation(p, 0, wideInk, "x", "x")
	e.lay()
	if top := e.begin - laneHigh - typeSize; top < e.callouts() {
		t.Errorf("they begin at %.0f, over %.0f", top, e.callouts())
	}
}

// A mark on the other side of the start, as of an opening at the end of a wall where panels start beyond a gap, is below 0.
func TestDistancesFromTheStart(t *testing.T) {
	for way, want := range map[wall.Direction]string{wall.Right: "-1/8", wall.Left: "1/8"} {
		p := kitchen()
		p.Runs[0].SetOut.From, p.Runs[0].SetOut.Direction, p.Runs[0].StoryPole = in("1/8"), way, []plan.Mark{{}}
		if got := newElevation(p, 0, 340, "x", "x").fromStart(0).text; got != want {
			t.Errorf("to the %v: %s, want %s", way, got, want)
		}
	}
}

// A joint of tongued boards is one line from the face, or the bottom of the groove there, to the back at the same place,
// and steps toward the tongue.
func TestTonguedJoints(t *testing.T) {
	p := readPlan("testdata/boards.json")
	thick := p.Profile.Thickness.Float64() * cornerScale
	for _, way := range []wall.Direction{wall.Left, wall.Right} {
		p.Runs[0].SetOut.Direction = way
		c := newCanvas(p, halfInk, "x", "x")
		c.scale = cornerScale
		c.legs(leg{course: course{along: 1}, tip: c.tip(0, false, in("12"))})
		joints := c.named("path", "edge")
		if len(joints) < 2 {
			t.Fatalf("%d joints of boards in 12 in", len(joints))
		}
		for _, joint := range joints {
			steps := strings.Split(joint.value("d"), "L")
			var x, y []float64
			for _, step := range steps {
				at := (&node{attrs: []string{"x", strings.Fields(strings.TrimPrefix(step, "M"))[0], "y", strings.Fields(step)[1]}})
				x, y = append(x, at.number("x")), append(y, at.number("y"))
			}
			toward := map[wall.Direction]float64{wall.Left: -1, wall.Right: 1}[way]
			if n := len(x); n != 6 || !strings.HasPrefix(steps[0], "M") || x[0] != x[5] || x[1] != x[0] || x[4] != x[0] || (x[2]-x[0])*toward <= 0 || y[0] < y[1] || y[5] != 0 || y[0] > math.Round(thick*100)/100 {
				t.Errorf("to the %v: a joint through %v, %v", way, x, y)
			}
		}
	}
}

// A whole board has a tongue where another goes on beyond it, and none at an end, neither on its own drawing nor where the
// end is drawn.
func TestNoTongueAtAnEnd(t *testing.T) {
	p := readPlan("testdata/boards.json")
	i := slices.IndexFunc(p.Pieces, func(piece plan.Piece) bool {
		return piece.Width == p.Profile.Pitch && p.Meets(piece, true) && p.Meets(piece, false)
	})
	edges := func() int {
		pic, err := Piece(p, i, true, 250)
		if err != nil {
			t.Fatal(err)
		}
		return len(pic.named("path", "miter"))
	}
	if n := edges(); n != 2 {
		t.Errorf("between boards %d sections of edges, want those of tongue and groove", n)
	}
	run := slices.IndexFunc(p.Runs, func(r plan.Run) bool { return r.Name == p.Pieces[i].Run })
	p.Runs[run].Panels = slices.DeleteFunc(p.Runs[run].Panels, func(panel wall.Panel) bool { return panel.Number != p.Pieces[i].Panel })
	if n := edges(); n != 1 {
		t.Errorf("alone %d sections of edges, want that of the groove", n)
	}
	for _, way := range []wall.Direction{wall.Left, wall.Right} {
		p.Runs[run].SetOut.Direction = way
		c, right := newCanvas(p, halfInk, "x", "x"), way == wall.Right
		c.scale = cornerScale
		end := c.tip(run, right, p.Profile.Pitch)
		x := func(x fraction.Length) float64 { return x.Sub(either(right, end.to, end.from)).Float64() * cornerScale }
		c.section(end, 30, x, func(along, deep float64) point { return complex(along, deep) })
		path := c.named("path", "tag")[0].value("d")
		for _, at := range regexp.MustCompile(`[ML](-?[\d.]+) `).FindAllStringSubmatch(path, -1) {
			if past, err := strconv.ParseFloat(at[1], 64); err != nil || right && past > 0 || !right && past < 0 {
				t.Errorf("%v: past the end in %s", way, path)
			}
		}
	}
}

// The drawing of a joint is to scale across the board: from one joint to the next is the face, and the tongue reaches as far
// past it as the board is wider than that, to the side toward which one works. Boards without a known joint have none.
func TestJointIsToScale(t *testing.T) {
	p := readPlan("testdata/boards.json") // 5 1/8 shows of 5 3/8
	unknown := p
	unknown.Profile.Edges = groove.EdgesUnknown
	if _, err := Joint(unknown); err == nil {
		t.Error("a joint of edges that are not known")
	}
	for work, way := range map[wall.Direction]float64{wall.Right: 1, wall.Left: -1} {
		p.Runs[0].SetOut.Direction = work
		pic, err := Joint(p)
		if err != nil {
			t.Fatal(err)
		}
		scale := 96. / 3 // 5 1/8 in within jointLong
		var tops, tips []float64
		for _, joint := range pic.named("path", "edge") {
			if !strings.Contains(joint.value("d"), "h") { // of the bar of the scale
				var x [3]float64
				if _, err := fmt.Sscanf(strings.ReplaceAll(joint.value("d"), "L", " "), "M%g %g %g %g %g", &x[0], &x[1], &x[1], &x[1], &x[2]); err != nil {
					t.Fatal(err)
				}
				tops, tips = append(tops, x[0]), append(tips, x[2])
			}
		}
		if len(tops) != 2 || math.Abs(tops[1]-tops[0]-5.125*scale) > .02 || math.Abs(tips[0]-tops[0]-way*.25*scale) > .02 {
			t.Errorf("%v: joints at %v, tongues to %v", work, tops, tips)
		}
		breaks := 0
		for _, pole := range pic.named("path", "pole") {
			if strings.Count(pole.value("d"), "L") > 3 { // of six places, not a dimension's line
				breaks++
			}
		}
		if breaks != 2 {
			t.Errorf("%v: %d lines of a break, want one at either side of the board", work, breaks)
		}
	}
}

// The figures of the bar of the scale stand within the frame of the title block, and that on the drawing, however few lines the block has.
func TestFiguresOfTheBarAreInTheFrame(t *testing.T) {
	for _, title := range []string{"", "A kitchen"} {
		for _, width := range []float64{halfInk, wideInk} {
			p := kitchen()
			p.Title = title
			c := newCanvas(p, width, "x", "x")
			c.scale = 10
			end := c.block(0, true, line{"Elevation"})
			frame := c.named("rect", "frame")[0].box()
			for _, text := range c.named("text", "") {
				if y := text.number("y"); y+4 > frame.y+frame.h || frame.y+frame.h >= end {
					t.Errorf("title %q, %v wide: %q stands at %v, the frame from %v to %v, the drawing ends at %v", title, width, text.words(), y, frame.y, frame.y+frame.h, end)
				}
			}
		}
	}
}

// The scale stands beside the last words of a title block wherever it has room there, in a plan without a title too, else
// on a line of its own.
func TestScaleStandsBesideTheTitle(t *testing.T) {
	p := kitchen()
	last := func(title string) (string, float64) {
		p.Title = title
		c := newCanvas(p, halfInk, "x", "x")
		c.scale = 10
		c.block(0, false, line{"End of run"})
		texts := c.texts()
		return texts[len(texts)-1], c.Width - 16
	}
	if got, _ := last(""); !strings.HasPrefix(got, "End of run · Scale") {
		t.Errorf("without a title: %q", got)
	}
	beside := 0
	for wide := range 12 {
		for thin := range 30 {
			title := "x" + strings.Repeat("n", wide) + strings.Repeat("i", thin)
			got, room := last(title)
			all := title + " · " + got[strings.Index(got, "Scale"):]
			fits := textWidth(all, typeSize) < room-.1
			if joined := got == all; joined != fits {
				t.Errorf("%q stands alone though it takes %v of %v with the title: %v", got, textWidth(all, typeSize), room, fits)
			} else if joined {
				beside++
			}
		}
	}
	if beside == 0 {
		t.Error("never beside")
	}
}

// Where ticks of crosscuts run together each figure has the number of its cut, the first and the last too; one that stands
// alone has none.
func TestCrowdedCrosscutsAreNumbered(t *testing.T) {
	d := &sheetDrawing{canvas: newCanvas(kitchen(), halfInk, "x", "x")}
	d.stock.Stock = nest.Stock{Width: in("48"), Length: in("96")}
	for i, at := range []string{"10", "10 1/4", "50", "95 3/4"} {
		d.sheet.Cuts = append(d.sheet.Cuts, plan.Cut{Cut: nest.Cut{Step: i + 1, Kind: nest.Crosscut, At: in(at)}})
	}
	d.lay()
	var got []string
	for _, s := range d.stops(nest.Crosscut) {
		got = append(got, s.text.String())
	}
	if want := []string{"10 (1)", "10 1/4 (2)", "50", "95 3/4 (4)", "96"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// A piece without width or height, which no plan has, is an error and no drawing.
func TestPieceOfNoSizeIsAnError(t *testing.T) {
	for _, size := range [][2]string{{"0", "20"}, {"20", "0"}, {"0", "0"}} {
		p := kitchen()
		p.Pieces[0].Width, p.Pieces[0].Height = in(size[0]), in(size[1])
		if _, err := Piece(p, 0, false, 250); err == nil {
			t.Errorf("a piece of %v is drawn", size)
		}
	}
}

// The lane beside a wall is as wide as the heights that stand there need: of the ends, the openings and the supports, and of no
// corner between the ends.
func TestLaneTakesTheHeightsInIt(t *testing.T) {
	at := func(x, y string) plan.Point { return plan.Point{X: in(x), Y: in(y)} }
	lane := func(end, between, opening, support string) float64 {
		e := newElevation(kitchen(), 1, wideInk, "x", "x")
		e.run.Width, e.run.Left, e.run.Right = in("100"), plan.End{}, plan.End{}
		e.run.Outline = []plan.Point{at("0", "0"), at("100", "0"), at("100", end), at("50", between), at("0", "30")}
		e.run.Openings, e.run.Supports = []plan.Opening{{Outline: ring("10", "5", "20", "5", "20", opening, "10", opening)}}, []fraction.Length{in(support)}
		_, right := e.lanes()
		return right
	}
	plain, long := lane("30", "30", "10", "20"), "31 15/16"
	if got := lane("30", long, "10", "20"); got != plain {
		t.Errorf("a height between the ends makes a lane of %v, want %v", got, plain)
	}
	for name, got := range map[string]float64{"an end": lane(long, "30", "10", "20"), "an opening": lane("30", "30", long, "20"), "a support": lane("30", "30", "10", long)} {
		if want := plain + textWidth(long, typeSize) - textWidth("30", typeSize); math.Abs(got-want) > 1e-6 {
			t.Errorf("a long height of %s makes a lane of %v, want %v", name, got, want)
		}
	}
}

// What stands over a sheet that lies face down is whole in its drawing, however long the measurements beside it are.
func TestWordsOverASheetAreWhole(t *testing.T) {
	p := kitchen()
	p.Saw.Face, p.Tape = plan.FaceDown, in("1/2")
	for i := range p.Sheets {
		pic, err := Sheet(p, i)
		words := pic.named("text", "soft")
		if err != nil || len(words) == 0 || !strings.HasSuffix(words[0].words(), ", from the back") {
			t.Fatalf("sheet %d: %d texts: %v", i+1, len(words), err)
		}
		middle, half := words[0].number("x"), textWidth(words[0].words(), typeSize)/2
		if middle < half || pic.Width < middle+half {
			t.Errorf("sheet %d: %q from %.1f to %.1f in %v", i+1, words[0].words(), middle-half, middle+half, pic.Width)
		}
	}
}
