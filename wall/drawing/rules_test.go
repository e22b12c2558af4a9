package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/jobfile"
	"example.com/groovewright/wall/plan"
)

// texts are the words of all texts of a picture.
func (p Picture) texts() (all []string) {
	var walk func(n *node)
	walk = func(n *node) {
		if n.name == "text" {
			all = append(all, n.words())
		}
		for _, k := range n.kids {
			walk(k)
		}
	}
	walk(&p.node)
	return all
}

// TestEndsHaveTheirGap: each end that is no mitre says how far the panels stay off the wall's end where they
// reach farthest, leaning or not: the side gap of the job, which panels keep from both ends of a run. Where
// the take-off has edge trim for an end that is seen, it is drawn and named.
func TestEndsHaveTheirGap(t *testing.T) {
	looked, lean, trimmed := 0, 0, 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, run := range p.Runs {
			for _, right := range []bool{false, true} {
				end := []plan.End{run.Left, run.Right}[map[bool]int{true: 1}[right]]
				pic, err := End(p, i, right)
				if err != nil || end.Kind != wall.Exposed && end.Kind != wall.Covered || strings.HasSuffix(t.Name(), "fixture.json") {
					continue
				}
				looked++
				texts := strings.Join(pic.texts(), "\n")
				if want := "stay off it by " + (&canvas{tape: p.TapeMeasure()}).length(p.Gaps.Side, "").text; !strings.Contains(texts+"\n", want+"\n") {
					t.Errorf("%s, right %v: no %q in\n%s", run.Name, right, want, texts)
				}
				if end.Lean.Sign() != 0 {
					lean++
				}
				bought := slices.ContainsFunc(p.Rows, func(r finish.Row) bool { return r.Item == finish.ItemEdgeTrim })
				if strip := strings.Contains(texts, "edge trim"); strip != (bought && end.Kind == wall.Exposed) {
					t.Errorf("%s, right %v: edge trim %v, bought %v", run.Name, right, strip, bought)
				} else if strip {
					trimmed++
				}
			}
		}
	})
	if looked < 8 || lean < 3 || trimmed < 3 {
		t.Errorf("%d ends were looked at, %d of them lean, %d have trim", looked, lean, trimmed)
	}
}

// TestLeaningCornersHaveTheirGap: at a corner that leans each wall says how far its panels stay off the corner where they
// reach farthest, which is at the top where the wall's end leans out, and no distance is negative. The panels that pass are
// drawn as far off the other wall as the gap.
func TestLeaningCornersHaveTheirGap(t *testing.T) {
	out, back := 0, 0
	for _, lean := range []string{"3/8", "-3/8"} {
		for _, next := range []string{"3/8", "-3/8"} {
			file := `{"profile": "beadboard 2", "stock": [{"name": "s", "width": "48", "length": "96"}], "gaps": {"side": "1/8"}, "runs": [
				{"name": "a", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "inside corner", "lean": "` + lean + `"}, "heights": [{"at": "0", "top": "40"}, {"at": "60", "top": "40"}]},
				{"name": "b", "width": "60", "left": {"kind": "inside corner", "lean": "` + next + `"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "40"}, {"at": "60", "top": "40"}]}]}`
			j, err := jobfile.Read(strings.NewReader(file))
			if err != nil {
				t.Fatal(err)
			}
			p, err := plan.Make(t.Context(), j, plan.Options{})
			if err != nil {
				t.Fatal(err)
			}
			pic, err := Corner(p, 0)
			if err != nil {
				t.Fatal(err)
			}
			texts := strings.Join(pic.texts(), "\n") + "\n"
			behind := (&canvas{tape: p.TapeMeasure()}).length(p.Gaps.Side.Add(p.Profile.Thickness), "").text
			for i, leans := range []bool{lean == "3/8", next == "-3/8"} { // out, past the foot of the wall's end
				want := either(p.Runs[0].CornerRight.Passes == p.Runs[i].Name, "passes, stays off the corner by 1/8", "butts, stays off the corner by "+behind) + either(leans, " at its top\n", " at its foot\n")
				if !strings.Contains(texts, want) || strings.Contains(texts, "by -") {
					t.Errorf("leans %s and %s: no %q in\n%s", lean, next, want, texts)
				}
				out, back = out+either(leans, 1, 0), back+either(leans, 0, 1)
				if p.Runs[0].CornerRight.Passes == p.Runs[i].Name {
					lo, hi := reach(pic.named("path", "tag")[i])
					corner := complex(halfInk/2+cornerLeg/2, 46)
					if gap := []float64{real(corner - hi), imag(lo - corner)}[i]; math.Abs(gap-cornerScale/8) > .02 {
						t.Errorf("leans %s and %s: the panels that pass are drawn %v off the corner, want %v", lean, next, gap, cornerScale/8)
					}
				}
			}
		}
	}
	if out != 4 || back != 4 {
		t.Errorf("%d ends lean out, %d back", out, back)
	}
}

// reach are the least and the greatest of the places of a path of absolute commands, each of places alone.
func reach(path *node) (lo, hi point) {
	lo, hi = complex(math.Inf(1), math.Inf(1)), complex(math.Inf(-1), math.Inf(-1))
	for n, field := range strings.FieldsFunc(path.value("d"), func(r rune) bool { return strings.ContainsRune("MLQZ ", r) }) {
		v := (&node{attrs: []string{"v", field}}).number("v")
		if n%2 == 0 {
			lo, hi = complex(min(real(lo), v), imag(lo)), complex(max(real(hi), v), imag(hi))
		} else {
			lo, hi = complex(real(lo), min(imag(lo), v)), complex(real(hi), max(imag(hi), v))
		}
	}
	return lo, hi
}

// TestElevationsSayWhatIsSeen: no start is a negative place or one past the wall, an edge behind the panels of
// the next wall is called hidden, the lengths between the breaks of the wall and the sides of its openings add up
// to the wall, and every corner of an opening that was found from taped distances has its number.
func TestElevationsSayWhatIsSeen(t *testing.T) {
	passing, past, taped, behind := 0, 0, 0, 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, run := range p.Runs {
			pic, err := Elevation(p, i)
			if err != nil {
				t.Fatal(err)
			}
			texts := pic.texts()
			hidden, started := 0, run.Bare()
			for side, end := range []plan.End{run.Left, run.Right} {
				if p.Passes(i, side == 1) {
					passing++
					hidden++
					if end.Kind != wall.InsideCorner {
						t.Errorf("%s: a %s passes", run.Name, end.Kind)
					}
				}
			}
			for _, text := range texts {
				if text == hiddenEdge {
					hidden--
				}
				if strings.HasPrefix(text, "Start") {
					started = true
					from := run.SetOut.From
					if out := from.Sign() < 0 || run.Width.Less(from); out != strings.Contains(text, " past the ") || strings.Contains(text, "-") {
						t.Errorf("%s: %q for a start at %v", run.Name, text, from)
					} else if out {
						past++
					}
				}
			}
			if hidden != 0 || !started {
				t.Errorf("%s: %d ends that pass are not called so, started %v, in %q", run.Name, hidden, started, texts)
			}
			e := newElevation(p, i, wideInk, "x", "x")
			var total fraction.Length
			ends := []fraction.Length{}
			corners, sides := e.breaks()
			for _, at := range [][]term{corners, sides} {
				total = fraction.Length{}
				for _, s := range e.between(append(at, term{}, plus(run.Width, e.path+"width"))) {
					total = total.Add(s.hi.Sub(s.lo))
					ends = append(ends, s.hi)
				}
				if total != run.Width {
					t.Errorf("%s: breaks of %v in all, want %v", run.Name, total, run.Width)
				}
			}
			e.lay()
			tops, hiddenTops := e.corners(true)
			feet, hiddenFeet := e.corners(false)
			for _, s := range slices.Concat(hiddenTops, hiddenFeet) {
				if behind++; !slices.Contains(texts, s.text.String()) {
					t.Errorf("%s: %q, behind an opening, is not among %q", run.Name, s.text, texts)
				}
			}
			for n, s := range append(tops, feet...) {
				for y, step := s.y, either(n < len(tops), -1.0, 1); y > e.top-1 && y < e.floor+1; y += step {
					if e.open(s.ink, y+step/2) {
						t.Fatalf("%s: the line to the height %s runs across an opening", run.Name, s.text)
					}
				}
			}
			for _, s := range slices.Concat(tops, feet, hiddenTops, hiddenFeet) {
				stands := slices.Contains(ends, s.at)
				if level := math.Abs(s.ink-e.x(s.at)) > .01; level != (s.class == levelPart) || !stands {
					t.Errorf("%s: the height %s at %v, of a level part: %v, called %q, in a chain: %v", run.Name, s.text, s.at, level, s.class, stands)
				}
			}
			for _, o := range run.Openings {
				lo, hi := cutout.Bounds(o.Outline)
				for _, x := range []fraction.Length{lo.X, hi.X} {
					if o.Kind != wall.Box && x.Sign() > 0 && x.Less(run.Width) && !slices.Contains(ends, x) {
						t.Errorf("%s: the side of %s at %v is in no chain", run.Name, o.Name, x)
					}
				}
			}
			var numbers []string
			for _, n := range pic.named("text", "halo taped") {
				numbers = append(numbers, n.words())
			}
			for _, at := range p.Taped {
				if at.Run == run.Name && at.Opening != "" {
					if taped++; !slices.Contains(numbers, ref("c%d", at.Number)) {
						t.Errorf("%s: corner c%d of %s has no number among %q", run.Name, at.Number, at.Opening, numbers)
					}
				}
			}
		}
	})
	if passing < 8 || past < 2 || taped < 8 || behind < 3 {
		t.Errorf("%d ends that pass, %d starts past the wall, %d taped corners, %d heights behind openings", passing, past, taped, behind)
	}
}

// TestSheetsTellApart: figures whose ticks run together have the numbers of their cuts, an offcut that has
// room for it has its number, each piece has its own, and no number of a cut lies on a hole of a piece or over an edge of a notch.
func TestSheetsTellApart(t *testing.T) {
	close, offcuts, circles := 0, 0, 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, sheet := range p.Sheets {
			pic, err := Sheet(p, i)
			if err != nil {
				t.Fatal(err)
			}
			stock, n := p.StockNamed(sheet.Stock)
			d := &sheetDrawing{canvas: newCanvas(p, halfInk, "x", "x"), sheet: sheet, stock: stock, source: ref("stock[%d].", n), path: ref("sheets[%d].", i)}
			d.lay()
			for _, kind := range []nest.CutKind{nest.Rip, nest.Crosscut} {
				all := d.stops(kind)
				for k := 1; k < len(all); k++ {
					if a, b := all[k-1], all[k]; math.Abs(a.ink-b.ink) < 4 {
						close++
						if !strings.HasSuffix(a.text.String(), ")") {
							t.Errorf("sheet %d: %q and %q stand at one tick", sheet.Number, a.text, b.text)
						}
					}
				}
			}
			for k, o := range sheet.Offcuts {
				if area := d.rectangle(o.X, o.Y, o.Width, o.Length); min(area.w, area.h) > 40 && max(area.w, area.h) > 90 {
					offcuts++
					name := fmt.Sprintf("offcut %d", k+1)
					if !slices.ContainsFunc(pic.texts(), func(text string) bool { return text == name || strings.HasPrefix(text, name+":") }) {
						t.Errorf("sheet %d: no %s", sheet.Number, name)
					}
				}
			}
			for _, placed := range sheet.Placements {
				if piece, _ := p.Piece(placed.Part); !slices.Contains(pic.texts(), piece.Label) {
					t.Errorf("sheet %d: no number of piece %s", sheet.Number, piece.Label)
				}
			}
			for _, c := range pic.named("circle", "cutnumber") {
				circle := centered(complex(c.number("cx"), c.number("cy")), 2*numberSize, 2*numberSize)
				circles++
				for _, placed := range sheet.Placements {
					for _, hole := range fraction.Must(d.plan.Placed(placed))[1:] {
						if circle.overlaps(d.around(hole)) {
							t.Errorf("sheet %d: a number of a cut lies on a hole of piece %d", sheet.Number, placed.Part)
						}
					}
					ring := fraction.Must(d.plan.Placed(placed))[0]
					for k, a := range ring {
						b := ring[(k+1)%len(ring)]
						lo, hi := cutout.Bounds(ring)
						if inner := a.X == b.X && a.X != lo.X && a.X != hi.X || a.Y == b.Y && a.Y != lo.Y && a.Y != hi.Y; inner && circle.overlaps(d.view.area(a.X, a.Y, b.X, b.Y)) {
							t.Errorf("sheet %d: a number of a cut lies on a notch of piece %d", sheet.Number, placed.Part)
						}
					}
				}
			}
		}
	})
	if close < 4 || offcuts < 8 || circles < 60 {
		t.Errorf("%d pairs of close figures, %d offcuts, %d numbers of cuts", close, offcuts, circles)
	}
}

// An offcut that is too narrow to be of use, and that the table of the sheet leaves out, has no number; the others keep theirs.
func TestOffcutsOfNoUseHaveNoNumber(t *testing.T) {
	p := kitchen()
	p.Sheets, p.Stock = p.Sheets[:1], p.Stock[:1]
	p.Stock[0].Width, p.Sheets[0].Stock = in("4"), p.Stock[0].Name
	p.Sheets[0].Placements, p.Sheets[0].Cuts = nil, nil
	for _, row := range []struct{ first, want string }{{"7/8", "[offcut 2]"}, {"1", "[offcut 1 offcut 2]"}} {
		p.Sheets[0].Offcuts = []nest.Offcut{{Width: in(row.first), Length: in("54")}, {X: in("2"), Width: in("2"), Length: in("54")}}
		pic, err := Sheet(p, 0)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, text := range pic.texts() {
			if name, _, _ := strings.Cut(text, ":"); strings.HasPrefix(name, "offcut") {
				got = append(got, name)
			}
		}
		if fmt.Sprint(got) != row.want {
			t.Errorf("an offcut of %s and one of 2: %v, want %s", row.first, got, row.want)
		}
	}
}

// What stands over a board is as wide as its drawing at most: with the good face down the words go on in a second line.
func TestWordsOverABoardFit(t *testing.T) {
	p := kitchen()
	p.Sheets, p.Stock = p.Sheets[:1], p.Stock[:1]
	p.Stock[0].Width, p.Sheets[0].Stock = in("4"), p.Stock[0].Name
	p.Sheets[0].Placements, p.Sheets[0].Cuts, p.Sheets[0].Offcuts = nil, nil, nil
	p.Profile.Boards, p.Profile.Edges = true, groove.Tongued
	for face, want := range map[plan.Face]string{plan.FaceUp: "[upper end (drawn too wide, no tongue)]", plan.FaceDown: "[upper end, from the back (drawn too wide, no tongue)]"} {
		p.Saw.Face = face
		pic, err := Sheet(p, 0)
		if err != nil {
			t.Fatal(err)
		}
		var over []string
		for _, text := range pic.texts() {
			if strings.Contains(text, "upper end") || strings.HasSuffix(text, "tongue)") {
				if over = append(over, text); textWidth(text, typeSize) > pic.Width {
					t.Errorf("%q is wider than its drawing", text)
				}
			}
		}
		if got := fmt.Sprint(over); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// A blemish at an end of the wall, or past it, is shown at the wall's top there and not at the floor.
func TestBlemishAtAnEndIsOnTheWall(t *testing.T) {
	p := kitchen()
	for i, run := range p.Runs {
		e := newElevation(p, i, wideInk, "x", "x")
		e.lay()
		for _, at := range []fraction.Length{in("-1"), {}, run.Width, run.Width.Add(in("1"))} {
			if y := e.height(plan.Blemish{At: at}); y < e.top || y > (e.top+e.floor)/2 {
				t.Errorf("%s: a blemish at %v is shown at %v, between %v and %v", run.Name, at, y, e.top, e.floor)
			}
		}
	}
}

// The number of a part stands over the lines of the saw, which may go on under it where it has no other place.
func TestLinesOfTheSawLieUnderTheNumbersOfParts(t *testing.T) {
	p := kitchen()
	for i := range p.Sheets {
		pic, err := Sheet(p, i)
		if err != nil {
			t.Fatal(err)
		}
		svg := string(pic.SVG())
		if last, first := strings.LastIndex(svg, `class="cut"`), strings.Index(svg, `class="tag"`); last < 0 || first < last {
			t.Errorf("sheet %d: the last line of the saw at %d, the first number at %d", i+1, last, first)
		}
	}
}
