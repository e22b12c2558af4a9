package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall/plan"
)

var sixteenths = &text{tape: fraction.Tape{Mark: fraction.Of(1, 16)}}

// A fact of a warning has words where the warning has it, and none where its list ends before it.
func TestMissingFactsAreLeftOut(t *testing.T) {
	for _, kind := range []string{"name", "quoted", "way", "length", "about", "across", "wide", "overlap", "count"} {
		for i := range 3 {
			w := warning.Warning{Names: slices.Repeat([]string{"n"}, i), Lengths: slices.Repeat([]fraction.Length{fraction.Inches(5)}, i), Counts: slices.Repeat([]int{4}, i)}
			words := fmt.Sprintf("a{%s%d}b", kind, i)
			if got := sixteenths.fill(words, w, fromLeft); got != "ab" {
				t.Errorf("%s without the fact gives %q", words, got)
			}
			w.Names, w.Lengths, w.Counts = append(w.Names, "n"), append(w.Lengths, fraction.Inches(5)), append(w.Counts, 4)
			if got := sixteenths.fill(words, w, fromLeft); len(got) < 3 {
				t.Errorf("%s with the fact gives %q", words, got)
			}
		}
	}
}

// A place on an edge lies not beyond it.
func TestPlacesOnAnEdge(t *testing.T) {
	wide := side{fraction.Inches(10), "from the right edge"}
	for _, row := range []struct {
		at   int64
		from side
		want string
	}{
		{0, fromLeft, "0 across"}, {3, fromLeft, "3 across"}, {-3, fromLeft, "3 beyond the left edge"},
		{10, wide, "0 from the right edge"}, {3, wide, "7 from the right edge"}, {13, wide, "3 beyond the right edge"},
	} {
		if got := sixteenths.across(fraction.Inches(row.at), row.from); got != row.want {
			t.Errorf("%d: %q, want %q", row.at, got, row.want)
		}
	}
}

func TestHowASheetIsSold(t *testing.T) {
	in := fraction.Inches
	for _, row := range []struct {
		profile groove.Profile
		want    string
	}{
		{groove.Profile{}, ""},
		{groove.Profile{Cover: in(5)}, "covers 5"},
		{groove.Profile{Cover: in(5), Width: in(5)}, "covers 5"},
		{groove.Profile{Cover: in(5), Width: in(6), Lap: in(1), Lengths: []fraction.Length{in(96), in(120)}}, "covers 5, 6 wide overall, lap 1, sold in lengths of 96, 120"},
	} {
		if got := sold(sixteenths, row.profile); got != row.want {
			t.Errorf("%q, want %q", got, row.want)
		}
	}
}

// Parts of a leaf stand in two columns so that the higher one ends as high as it can, the first part left.
func TestPartsStandInTwoColumns(t *testing.T) {
	for _, row := range []struct{ high, left, right []float64 }{
		{nil, nil, nil}, {[]float64{7}, []float64{7}, nil}, {[]float64{3, 4}, []float64{3}, []float64{4}},
		{[]float64{500, 200, 100, 250}, []float64{500}, []float64{200, 100, 250}},
		{[]float64{500, 300, 90, 290}, []float64{500, 90}, []float64{300, 290}},
		{[]float64{100, 300, 150, 50}, []float64{100, 150, 50}, []float64{300}},
	} {
		var parts []part
		for i, high := range row.high {
			parts = append(parts, part{Name: strconv.Itoa(i), high: high})
		}
		highs := func(side []part) (all []float64) {
			for _, p := range side {
				all = append(all, p.high)
			}
			return all
		}
		if got := beside(parts...).Sides; !slices.Equal(highs(got[0]), row.left) || !slices.Equal(highs(got[1]), row.right) {
			t.Errorf("%v: %v and %v, want %v and %v", row.high, highs(got[0]), highs(got[1]), row.left, row.right)
		}
	}
}

// A table in parts goes on to the right, not to the left, though a column ends lower then.
func TestATableGoesOnToTheRight(t *testing.T) {
	got := beside(part{Name: "picture", high: 100}, part{Name: "marks", high: 250}, part{Name: "marks", high: 90}).Sides
	if len(got[0]) != 1 || len(got[1]) != 2 {
		t.Errorf("%d left, %d right, want 1 and 2", len(got[0]), len(got[1]))
	}
}

// A panic of a worker reaches the one who waits for the pictures, once all others are made.
func TestPanicOfAPictureIsCaught(t *testing.T) {
	made := make([]bool, 20)
	defer func() {
		if caught := recover(); caught != "spilled ink" || slices.Contains(made[1:], false) {
			t.Errorf("%v; made: %v", caught, made)
		}
	}()
	inParallel([]int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19}, func(i int) {
		if i == 0 {
			panic("spilled ink")
		}
		made[i] = true
	})
}

// Plans side by side: sheets used, money, flaws, pieces and cuts are the sums of each plan; a plan without a name has its title.
func TestPlansSideBySide(t *testing.T) {
	p := kitchen()
	used, cuts := 0, 0
	for _, s := range p.Stock {
		used += s.Used
	}
	for _, s := range p.Sheets {
		cuts += len(s.Cuts)
	}
	lines := strings.Split(Compare([]string{"first"}, []plan.Plan{p, p, {}}), "\n")
	total, _ := p.Total.Decimal()
	for i, name := range []string{"first", p.Title} {
		want := fmt.Sprintln(used, total.StringFixed(2), rounded(p.BlemishTotal), len(p.Pieces), cuts, name)
		if got := strings.Join(strings.Fields(lines[i+1]), " "); got != strings.TrimSpace(want) {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if got := strings.Join(strings.Fields(lines[3]), " "); got != "0 no prices 0 0 0" {
		t.Errorf("a plan of nothing: %q", got)
	}
}

// The level line itself is no height under it; a place that was taped is named by its height or opening; a mark on no
// character takes no column.
func TestWordsAtTheirEdges(t *testing.T) {
	for _, row := range []struct{ got, want string }{
		{sixteenths.above(fraction.Length{}), "0 up"},
		{sixteenths.above(fraction.Inches(-2)), "2 below level"},
		{pointName(plan.Taped{Run: "north", Number: 2}), "height 2 of north"},
		{pointName(plan.Taped{Run: "north", Opening: "niche", Number: 3}), "corner c3 of niche"},
		{sixteenths.given(fraction.Of(129, fraction.FinestError)), "1 1/128"},
		{sixteenths.given(fraction.MustParse("2 mm")), "1/16 plus 0.017"},
		{sixteenths.given(fraction.Of(1, 10)), "1/10"},
		{sixteenths.given(fraction.Of(1, 1000)), sixteenths.length(fraction.Of(1, 1000))},
		{fmt.Sprint(columns("\ufe0f"), columns("a"), columns("a\ufe0f"), columns("\u0301")), "0 1 2 0"},
	} {
		if row.got != row.want {
			t.Errorf("%q, want %q", row.got, row.want)
		}
	}
}

// Panels that are up already are said to be, also where it is one.
func TestPanelsThatAreUp(t *testing.T) {
	p := kitchen()
	const said = "Panels are up already"
	if slices.ContainsFunc(besides(p), func(s string) bool { return strings.Contains(s, said) }) {
		t.Fatal("the kitchen has panels on the wall")
	}
	p.Runs[0].Installed = make([]plan.Installed, 1)
	if !slices.ContainsFunc(besides(p), func(s string) bool { return strings.Contains(s, said) }) {
		t.Errorf("not said: %q", besides(p))
	}
	if p.Profile.Boards = true; !slices.ContainsFunc(besides(p), func(s string) bool { return strings.Contains(s, "Boards are up already") }) {
		t.Errorf("not said of boards: %q", besides(p))
	}
	trims := finish.Step{Stage: finish.StageTrim, Acts: []finish.Act{{Kind: finish.ActTrimsUp}}}
	for says, want := range map[string]string{step(p, trims, true): "boards which are up", offFirst(p, 0): "the board that is up", behindIt(p, 0): "its board off",
		joined(p, doubtWords[plan.ComesOff]): "the board of", joined(p, doubtWords[plan.BurnsAtCooking]): "boards that burn"} {
		if !strings.Contains(says, want) || strings.Contains(says, "panel") {
			t.Errorf("%q lacks %q", says, want)
		}
	}
}

// A plan that cannot be drawn gives no book.
func TestPlanThatCannotBeDrawn(t *testing.T) {
	p := kitchen()
	p.Runs[0].Outline = nil
	if files, err := Files(p); err == nil || files != nil {
		t.Errorf("%d files, error %v", len(files), err)
	}
}
