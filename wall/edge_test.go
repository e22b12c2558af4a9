package wall

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// What is seen of an edge, worked out by hand: each part of it counts as what bounds it there, and
// where two claim a part what weighs more. The order of the openings does not matter.
func TestEdgesByPart(t *testing.T) {
	box := func(ring string) Opening { return rectangle("box", Box, ring) }
	window := func(ring string) Opening { return rectangle("window", Window, ring) }
	other := func(ring string) Opening { return rectangle("other", Other, ring) }
	const stepUp = "0,0,18; 15,0,18; 15,0,30; 40,0,30"
	for _, test := range []struct {
		name     string
		heights  string
		openings []Opening
		gaps     Gaps
		mark     string
		weights  func(*Priorities)
		left     End
		want     []string // x, foot's height, height, kind; of a leaning edge x of both ends
	}{
		{name: "a box under a window, their sides in line", openings: []Opening{window("4,8,6,6"), box("8,4,2,4")},
			want: []string{"0 0 18 exposed end", "4 8 6 opening side", "8 4 4 box side", "10 4 4 box side", "10 8 6 opening side", "40 0 18 exposed end"}},
		{name: "a box that reaches into a window", openings: []Opening{window("4,6,6,8"), box("8,4,2,4")},
			want: []string{"0 0 18 exposed end", "4 6 8 opening side", "8 4 2 box side", "10 4 2 box side", "10 6 8 opening side", "40 0 18 exposed end"}},
		{name: "a box that weighs more than the window", openings: []Opening{window("4,6,6,8"), box("8,4,2,4")},
			weights: func(p *Priorities) { p.BoxSide = fraction.NewRatio(3, 1) },
			want:    []string{"0 0 18 exposed end", "4 6 8 opening side", "8 4 2 box side", "10 4 4 box side", "10 8 6 opening side", "40 0 18 exposed end"}},
		{name: "a covered end", left: End{Kind: Covered}, want: []string{"0 0 18 covered end", "40 0 18 exposed end"}},
		{name: "an opening along a step", heights: stepUp, openings: []Opening{other("11,10,4,12")},
			want: []string{"0 0 18 exposed end", "11 10 8 opening side", "15 10 8 opening side", "15 18 12 step side", "40 0 30 exposed end"}},
		{name: "an opening that weighs more than the step", heights: stepUp, openings: []Opening{other("11,10,4,12")},
			weights: func(p *Priorities) { p.OpeningSide = fraction.NewRatio(4, 1) },
			want:    []string{"0 0 18 exposed end", "11 10 8 opening side", "15 10 12 opening side", "15 22 8 step side", "40 0 30 exposed end"}},
		{name: "a box beside a step does not hide it", heights: stepUp, openings: []Opening{box("12,14,3,4")},
			want: []string{"0 0 18 exposed end", "12 14 4 box side", "15 14 4 box side", "15 18 12 step side", "40 0 30 exposed end"}},
		{name: "a box up the side of a step", heights: stepUp, openings: []Opening{box("12,14,3,8")},
			want: []string{"0 0 18 exposed end", "12 14 4 box side", "15 14 4 box side", "15 18 12 step side", "40 0 30 exposed end"}},
		{name: "the gap beside a step is level: no height of it is rounded", heights: "0,0,18 1/16; 15,0,18 1/16; 15,0,30; 40,0,30",
			gaps: Gaps{Side: inches("1/16")}, mark: "1/8",
			want: []string{"1/16 0 18 1/16 exposed end", "15 1/16 18 1/16 11 15/16 step side", "39 15/16 0 30 exposed end"}},
		// The end stands 1/4 x 6/16 = 3/32 in at the window's sill and 5/32 at its head: 1/8 and 3/16 into the space.
		{name: "a window parts a leaning end", heights: "0,0,16; 40,0,16", left: End{Lean: inches("1/4")}, openings: []Opening{window("-1,6,5,4")},
			want: []string{"0-1/8 0 6 exposed end", "3/16-1/4 10 6 exposed end", "4 6 4 opening side", "40 0 16 exposed end"}},
	} {
		for _, openings := range [][]Opening{test.openings, backward(test.openings)} {
			t.Run(test.name, func(t *testing.T) {
				if test.heights == "" {
					test.heights = "0,0,18; 40,0,18"
				}
				if test.mark == "" {
					test.mark = "1/16"
				}
				room := Room{Profile: profiles[0], Mark: inches(test.mark), Gaps: test.gaps, Priorities: DefaultPriorities(fraction.Inch),
					Runs: []Run{{Width: inches("40"), Heights: heights(test.heights), Left: test.left, Openings: openings}}}
				if test.weights != nil {
					test.weights(&room.Priorities)
				}
				g, err := newRegion(context.Background(), &room, 0, fitting{})
				if err != nil {
					t.Fatal(err)
				}
				var got []string
				for _, e := range g.edges {
					x := e.foot.String()
					if e.top != e.foot {
						x += "-" + e.top.String()
					}
					got = append(got, fmt.Sprint(x, " ", e.bottom, " ", e.height, " ", e.kind))
				}
				if diff := cmp.Diff(test.want, got); diff != "" {
					t.Errorf("(-want +got):\n%s", diff)
				}
			})
		}
	}
}

// An end is bare where a door takes it, whole or in the gap beside it, not where a window leaves some of it.
func TestBareEnds(t *testing.T) {
	for ring, want := range map[string][2]bool{
		"0,-1,5,20": {true, false}, "35,-1,5,20": {false, true}, "1/16,-1,5,20": {true, false}, "1/8,-1,5,20": {false, false}, "0,0,5,17": {false, false},
	} {
		room := Room{Profile: profiles[0], Mark: inches("1/16"), Gaps: Gaps{Side: inches("1/16")}, Priorities: DefaultPriorities(fraction.Inch),
			Runs: []Run{{Width: inches("40"), Heights: heights("0,0,18; 40,0,18"), Openings: []Opening{rectangle("door", Other, ring)}}}}
		g, err := newRegion(context.Background(), &room, 0, fitting{})
		if err != nil || g.bareEnds() != want {
			t.Errorf("a door at %s: bare ends %v, %v", ring, g, err)
		}
	}
}

func backward(openings []Opening) []Opening {
	out := slices.Clone(openings)
	slices.Reverse(out)
	return out
}

// rectangle makes an opening of "left,bottom,width,height".
func rectangle(name string, kind OpeningKind, size string) Opening {
	f := strings.Split(size, ",")
	return Opening{Name: name, Kind: kind, Outline: cutout.Rectangle(inches(f[0]), inches(f[1]), inches(f[2]), inches(f[3]))}
}

// With a tape of eighths and heights in sixteenths the side of a step counts as high as its piece is
// cut there.
func TestStepCountsAsItsPieceIsCut(t *testing.T) {
	room := Room{Profile: profiles[0], Mark: inches("1/8"), Gaps: Gaps{Side: inches("1/16")}, Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
		Runs: []Run{{Name: "run", Width: inches("40"), Left: End{Kind: Covered}, Right: End{Kind: Covered},
			Heights: heights("0,0,18 1/16; 15,0,18 1/16; 15,0,30; 40,0,30")}}}
	l := firstOf(t, room)
	var cut, counted fraction.Length
	for _, p := range l.Pieces {
		for _, u := range p.Shape.Uprights() {
			if u.X.Add(p.At.X) == inches("15 1/16") {
				cut = cut.Add(u.Top.Sub(u.Bottom))
			}
		}
	}
	for _, b := range l.Blemishes {
		if b.Kind == StepSide {
			counted = counted.Add(b.Height)
		}
	}
	if want := inches("11 15/16"); cut != want || counted != want {
		t.Errorf("the step is cut %v high and counts %v, want %v", cut, counted, want)
	}
}

// The same room with its openings in another order has the same layouts, with the same terms.
func TestOrderOfOpeningsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		run := &room.Runs[0]
		at := func(label string, lo, hi int64) fraction.Length { // coarse, so that sides stand in line
			return fraction.Inches(2 * rapid.Int64Range(lo, hi).Draw(t, label))
		}
		run.Openings = nil
		for i := range rapid.IntRange(2, 4).Draw(t, "openings") {
			run.Openings = append(run.Openings, Opening{Name: fmt.Sprint("opening ", i), Kind: OpeningKind(rapid.IntRange(0, 2).Draw(t, "kind")),
				Outline: cutout.Rectangle(at("left", 0, 3), at("bottom", 0, 4), at("width", 1, 2), at("height", 1, 3))})
		}
		want := firstLayouts(t, Layouts(context.Background(), room), 3)
		run.Openings = rapid.Permutation(run.Openings).Draw(t, "order")
		got := firstLayouts(t, Layouts(context.Background(), room), 3)
		terms := func(layouts []Layout) (all [][]Blemish) {
			for _, l := range layouts {
				all = append(all, l.Blemishes)
			}
			return all
		}
		if diff := cmp.Diff(terms(want), terms(got), cmpopts.EquateComparable(fraction.Length{}, fraction.Ratio{})); diff != "" {
			t.Fatalf("(-as given +in another order):\n%s", diff)
		}
	})
}

// Boards with a tongue or a lap start where the next one goes on, on every run; sheets and others at
// the end that is seen more.
func TestBoardsStartAwayFromTheirTongue(t *testing.T) {
	room := Room{Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch), Stock: []nest.Stock{{Name: "board", Width: inches("3 1/4"), Length: inches("96")}},
		Profile: groove.Profile{Name: "board", Boards: true, Features: []groove.Feature{{Kind: groove.Flat, Width: inches("3")}, {Kind: groove.Groove, Width: inches("1/4")}}},
		Runs: []Run{
			{Name: "first", Width: inches("40"), Left: End{Kind: Exposed}, Right: End{Kind: InsideCorner}, Heights: heights("0,0,20; 40,0,20")},
			{Name: "second", Width: inches("41"), Left: End{Kind: InsideCorner}, Right: End{Kind: Exposed}, Heights: heights("0,0,20; 41,0,20")},
		}}
	for _, test := range []struct {
		edges  groove.Edges
		tongue groove.Tongue
		want   string // of both runs
	}{
		{groove.Tongued, groove.TongueUnknown, "right by tongue, right by tongue"},
		{groove.Tongued, groove.TongueRight, "right by tongue, right by tongue"},
		{groove.Tongued, groove.TongueLeft, "left by tongue, left by tongue"},
		{groove.Lapped, groove.TongueUnknown, "right by lap, right by lap"},
		{groove.Square, groove.TongueUnknown, "right by seen end, left by seen end"},
		{groove.EdgesUnknown, groove.TongueUnknown, "right by seen end, left by seen end"},
	} {
		room.Profile.Edges, room.Profile.Tongue = test.edges, test.tongue
		l := firstOf(t, room)
		var got []string
		for r, run := range l.Runs {
			s, first, from := run.SetOut, run.Panels[0], run.Limits[0]
			if s.Direction == Left {
				first, from = run.Panels[len(run.Panels)-1], run.Limits[1]
			}
			got = append(got, fmt.Sprint(s.Direction, " by ", s.DirectionBy))
			least := slices.MinFunc(run.Panels, func(a, b Panel) int { return a.Number - b.Number })
			if s.From != from || least.Number != first.Number {
				t.Errorf("%v %v: run %d is set out from %v, with board %d; want %v, %d", test.edges, test.tongue, r, s.From, least.Number, from, first.Number)
			}
		}
		if got := strings.Join(got, ", "); got != test.want {
			t.Errorf("%v %v: %s, want %s", test.edges, test.tongue, got, test.want)
		}
	}
}

// Half a wide flat at the only end that is seen costs nothing, but of layouts that are as good else the
// one with a whole board there comes first. 84 is 16 boards of 5 1/8 and 2 over: with half a flat of
// 2 7/16 at the left end the narrowest board would be wider.
func TestWholeBoardAtTheOnlySeenEnd(t *testing.T) {
	board, _ := groove.Find("tongue and groove 5-1/8")
	for _, test := range []struct {
		left, right EndKind
		want        string // the first and the last board
	}{
		{Exposed, Covered, "0-5 1/8 82-84"},
		{Covered, Exposed, "0-2 1/4 79 1/8-84"}, // the last one shows its flat of 4 7/8 whole
	} {
		room := Room{Profile: board, Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "board", Width: inches("5 1/8"), Length: inches("96")}},
			Runs:  []Run{{Name: "hall", Width: inches("84"), Left: End{Kind: test.left}, Right: End{Kind: test.right}, Heights: heights("0,0,42; 84,0,42")}}}
		panels := firstOf(t, room).Runs[0].Panels
		first, last := panels[0], panels[len(panels)-1]
		if got := fmt.Sprintf("%v-%v %v-%v", first.Left, first.Right, last.Left, last.Right); got != test.want {
			t.Errorf("%v, %v: %s, want %s", test.left, test.right, got, test.want)
		}
	}
}

// firstOf returns the first layout of a room.
func firstOf(t *testing.T, room Room) Layout {
	for l, err := range Layouts(context.Background(), room) {
		if err != nil {
			t.Fatal(err)
		}
		return l
	}
	t.Fatal("no layout")
	return Layout{}
}

// A used break is given with the first repeat that one meets beyond it, whichever way one works. Where
// an opening parts the run beside it there is no seam, and the panel reaches to the opening. The
// repeat is 2-1/2 flat and 1/2 bead.
//
// Without a door both ends are whole, with least out of step at 20, where a bead stands at each: with
// repeats at 1/2 + 3n left of the break and at 1 + 3n right of it, 1/2 apart. That costs 1/100 x 1-1/2
// ft x 1/2, and the seam 1-1/2 ft x 1/8. With a door both sides of it and both ends are whole, as
// all that is panelled is 15 = 5 x 3 wide: nothing is seen but, half a gap before the door, the break.
func TestBreaks(t *testing.T) {
	door := rectangle("door", Other, "15,-1,10,30")
	for _, test := range []struct {
		name     string
		at       string
		leftward bool
		openings []Opening
		origin   string // beyond the break; "": any first one, there are several as good
		panels   string
		total    fraction.Ratio
	}{
		{name: "worked rightward", at: "20", origin: "22", panels: "0-19 15/16 20 1/16-40", total: fraction.NewRatio(39, 200)},
		{name: "worked leftward", at: "20", leftward: true, origin: "18 1/2", panels: "0-19 15/16 20 1/16-40", total: fraction.NewRatio(39, 200)},
		{name: "at a door's left side", at: "15", openings: []Opening{door}, panels: "0-15 25-40"},
		{name: "in a door", at: "20", openings: []Opening{door}, panels: "0-15 25-40"},
		{name: "at a door's right side", at: "25", openings: []Opening{door}, panels: "0-15 25-40"},
		{name: "at a door's right side, worked leftward", at: "25", leftward: true, openings: []Opening{door}, panels: "0-15 25-40"},
		{name: "half a gap from a door", at: "14 15/16", openings: []Opening{door}, panels: "0-15 25-40", total: fraction.NewRatio(3, 400)},
	} {
		run := Run{Name: "run", Width: inches("40"), Openings: test.openings, Heights: heights("0,0,18; 40,0,18"),
			Breaks: []Break{{At: inches(test.at), Prominence: fraction.NewRatio(1, 100)}}}
		if test.leftward {
			less := fraction.NewRatio(1, 1)
			run.Left.Prominence = &less
		}
		l := firstOf(t, Room{Profile: profiles[0], Mark: inches("1/16"), Gaps: Gaps{Seam: inches("1/8")}, Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}}, Runs: []Run{run}})
		var panels []string
		for _, p := range l.Runs[0].Panels {
			panels = append(panels, p.Left.String()+"-"+p.Right.String())
		}
		if got := strings.Join(panels, " "); got != test.panels || l.Total != test.total || len(l.Runs[0].Restarts) != 1 {
			t.Errorf("%s: panels %s, blemish %v, restarts %v; want %s, %v", test.name, got, l.Total, l.Runs[0].Restarts, test.panels, test.total)
			continue
		}
		restart := l.Runs[0].Restarts[0]
		ahead := restart.Origin.Sub(restart.At)
		if test.leftward {
			ahead = ahead.Neg()
		}
		if test.origin != "" && restart.Origin != inches(test.origin) || ahead.Sign() < 0 || !ahead.Less(inches("3")) {
			t.Errorf("%s: beyond the break at %v the first repeat starts at %v, want %s", test.name, restart.At, restart.Origin, test.origin)
		}
	}
}
