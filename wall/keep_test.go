package wall

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// keptRoom returns a room of one run, 96 in wide and 20 in high, with a repeat of 3 in, sheets of 48
// in, a box from 30 to 32 in, a door from 60 to 70 in and a break at 80 in.
func keptRoom(keep Keep) Room {
	return Room{Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}},
		Gaps:  Gaps{Seam: fraction.Of(1, 8)},
		Runs: []Run{{Name: "run", Width: fraction.Inches(96), Left: End{Kind: Exposed}, Right: End{Kind: Covered}, Heights: heights("0,0,20; 96,0,20"), Keep: keep,
			Breaks: []Break{{At: inches("80"), Prominence: fraction.NewRatio(1, 1)}},
			Openings: []Opening{
				{Name: "box", Kind: Box, Outline: cutout.Rectangle(inches("30"), inches("4"), inches("2"), inches("4"))},
				{Name: "door", Kind: Other, Outline: cutout.Rectangle(inches("60"), inches("-1"), inches("10"), inches("30"))}}}}}
}

// lengthsOf reads lengths between blanks.
func lengthsOf(s string) (out []fraction.Length) {
	for _, word := range strings.Fields(s) {
		out = append(out, inches(word))
	}
	return out
}

// first returns the first layout of a room.
func first(room Room) (Layout, error) {
	for l, err := range Layouts(context.Background(), room) {
		return l, err
	}
	return Layout{}, errors.New("nothing")
}

func TestKnownKeeps(t *testing.T) {
	origin := func(s string) *fraction.Length { return new(inches(s)) }
	for _, test := range []struct {
		name   string
		keep   Keep
		seams  string // of the best layout
		origin string // modulo the repeat of 3 in
		broken int
	}{
		{"nothing", Keep{}, "27", "1/2", 0},
		{"a seam", Keep{Seams: lengthsOf("24")}, "24", "1/2", 0},
		{"a seam off its line, through the box", Keep{Seams: lengthsOf("31")}, "31", "1/2", 0},
		{"two seams, out of order", Keep{Seams: lengthsOf("45 24")}, "24 45", "1/2", 0},
		{"a seam where the pattern may be broken", Keep{Seams: lengthsOf("80")}, "12 80", "1/2", 0},
		{"an origin, for which the exposed end is cut", Keep{Origin: origin("-100 1/2")}, "28", "1 1/2", 1},
		{"a stretch without seams", Keep{Clear: []Clear{{inches("12"), inches("42")}}}, "42", "1/2", 0},
		{"a seam at the end of one", Keep{Seams: lengthsOf("24"), Clear: []Clear{{inches("24"), inches("60")}}}, "24", "1/2", 0},
		{"no break", Keep{Clear: []Clear{{inches("79"), inches("81")}}}, "27", "1/2", 0},
	} {
		l, err := first(keptRoom(test.keep))
		if err != nil {
			t.Errorf("%s: %v", test.name, err)
			continue
		}
		if got, o := seamsIn(&l, 0), l.Runs[0].SetOut.Origin.Mod(inches("3")); !slices.Equal(got, lengthsOf(test.seams)) || o != inches(test.origin) || l.Broken != test.broken {
			t.Errorf("%s: seams at %v, origin %v, %d rules broken; want %s, %s, %d", test.name, got, o, l.Broken, test.seams, test.origin, test.broken)
		}
	}
}

func TestKeptDirection(t *testing.T) {
	for _, d := range []Direction{Right, Left} {
		l, err := first(keptRoom(Keep{Direction: &d}))
		if err != nil || l.Runs[0].SetOut.Direction != d {
			t.Errorf("to the %s: set out to the %s, %v", d, l.Runs[0].SetOut.Direction, err)
		}
	}
}

func TestWhatCannotBeKept(t *testing.T) {
	for _, test := range []struct {
		name, path string
		keep       Keep
		change     func(*Room)
	}{
		{"a seam left of the run", "Runs[0].Keep.Seams[0]", Keep{Seams: lengthsOf("0")}, nil},
		{"a seam right of the run", "Runs[0].Keep.Seams[1]", Keep{Seams: lengthsOf("24 96")}, nil},
		{"a seam in the door", "Runs[0].Keep.Seams[0]", Keep{Seams: lengthsOf("65")}, nil},
		{"a seam past the side gap", "Runs[0].Keep.Seams[0]", Keep{Seams: lengthsOf("0.25")}, func(r *Room) { r.Gaps.Side = inches("1/2") }},
		{"a seam in an installed panel", "Runs[0].Keep.Seams[0]", Keep{Seams: lengthsOf("12")},
			func(r *Room) { r.Installed = []Installed{{Right: inches("24")}} }},
		{"a seam where there is to be none", "Runs[0].Keep.Seams[0]", Keep{Seams: lengthsOf("24"), Clear: []Clear{{inches("23"), inches("25")}}}, nil},
		{"a seam of boards", "Runs[0].Keep.Seams", Keep{Seams: lengthsOf("24")}, func(r *Room) { r.Profile.Boards = true }},
		{"a stretch without length", "Runs[0].Keep.Clear[0].To", Keep{Clear: []Clear{{inches("12"), inches("12")}}}, nil},
		{"a stretch before the run", "Runs[0].Keep.Clear[1].From", Keep{Clear: []Clear{{inches("1"), inches("2")}, {inches("-1"), inches("2")}}}, nil},
		{"a stretch past the run", "Runs[0].Keep.Clear[0].To", Keep{Clear: []Clear{{inches("12"), inches("97")}}}, nil},
		{"an origin that the wall does not show", "Runs[0].Keep.Origin", Keep{Origin: new(inches("1"))},
			func(r *Room) { r.Installed = []Installed{{Right: inches("24")}} }},
		{"no direction", "Runs[0].Keep.Direction", Keep{Direction: new(Direction(2))}, nil},
	} {
		room := keptRoom(test.keep)
		if test.change != nil {
			test.change(&room)
		}
		all := fault.All(room.Validate())
		if len(all) != 1 || all[0].Path.String() != test.path || all[0].Want == "" {
			t.Errorf("%s: %v, want one fault at %s", test.name, all, test.path)
		}
	}
}

// A panel on the wall, its edges included, has no seam that is to come; one on another run is no matter.
func TestSeamsToKeepBesidePanelsOnTheWall(t *testing.T) {
	for _, at := range []string{"9", "12", "18", "24", "27"} {
		room := keptRoom(Keep{Seams: lengthsOf(at)})
		room.Runs = append(room.Runs, keptRoom(Keep{}).Runs[0])
		room.Runs[0].Right, room.Runs[1].Left, room.Runs[1].Name = End{Kind: OutsideCorner}, End{Kind: OutsideCorner}, "next"
		for run := range 2 {
			room.Installed = []Installed{{Run: run, Left: inches("12"), Right: inches("24")}}
			x, in := room.Runs[0].Keep.Seams[0], room.Installed[0]
			if err, want := room.Validate(), run == 0 && x.Compare(in.Left) >= 0 && x.Compare(in.Right) <= 0; (err != nil) != want {
				t.Errorf("a seam at %s, the panel on run %d: %v", at, run, err)
			}
		}
	}
}

// What is sound by itself and cannot be kept by any layout names the run and its keep.
func TestNoLayoutKeepsIt(t *testing.T) {
	for name, keep := range map[string]Keep{
		"sheets are not as wide as the stretch without seams": {Clear: []Clear{{inches("1"), inches("59")}}},
		"two seams in one gap":                                {Seams: lengthsOf("24 24.0625")},
		"a seam in the corner of the door":                    {Seams: lengthsOf("59.96875")},
	} {
		_, err := first(keptRoom(keep))
		none := new(NoLayoutError)
		if !errors.As(err, &none) || none.Reason != KeepUnmet || none.Run != "run" || none.Path.String() != "Runs[0].Keep" || !strings.Contains(err.Error(), "runs[0].keep") {
			t.Errorf("%s: %v", name, err)
		}
	}
	room := keptRoom(Keep{Direction: new(Left)})
	room.Stock[0].Length = inches("19")
	none := new(NoLayoutError)
	if _, err := first(room); !errors.As(err, &none) || none.Reason != TooTall {
		t.Errorf("sheets too short: %v", err)
	}
}

// drawKeep takes over some of what a layout has, so that it keeps that.
func drawKeep(t *rapid.T, room *Room, l *Layout) {
	for r := range room.Runs {
		keep, laid := &room.Runs[r].Keep, &l.Runs[r]
		if len(laid.Restarts) == 0 && rapid.Bool().Draw(t, "origin") {
			keep.Origin = &laid.SetOut.Origin
		}
		at := fraction.Length{}
		for _, x := range append(seamsIn(l, r), room.Runs[r].Width) {
			if c := (Clear{at, x}); rapid.Bool().Draw(t, "clear") && at.Less(x) {
				keep.Clear = append(keep.Clear, c)
			}
			if x.Less(room.Runs[r].Width) && rapid.Bool().Draw(t, "seam") {
				keep.Seams = append(keep.Seams, x)
			}
			at = x
		}
	}
}

// kept says what of the room's keeps a layout does not keep.
func kept(room *Room, l *Layout) string {
	for r, run := range room.Runs {
		laid, pitch := &l.Runs[r], room.Profile.Pitch()
		if o := run.Keep.Origin; o != nil && (len(laid.Restarts) > 0 || laid.SetOut.Origin.Sub(*o).Mod(pitch).Sign() != 0) {
			return fmt.Sprintf("run %d starts at %v and not at %v", r, laid.SetOut.Origin, *o)
		}
		var seams []fraction.Length // where one panel stops and the next one starts
		for i := 1; i < len(laid.Panels); i++ {
			if left, right := laid.Panels[i-1].Right, laid.Panels[i].Left; right.Sub(left) == room.Gaps.Seam {
				seams = append(seams, left.Add(right).Div(2))
			}
		}
		for _, x := range run.Keep.Seams {
			if !slices.Contains(seams, x) {
				return fmt.Sprintf("run %d has seams at %v and none at %v", r, seams, x)
			}
		}
		for _, c := range run.Keep.Clear {
			for _, x := range seams {
				if c.From.Less(x) && x.Less(c.To) {
					return fmt.Sprintf("run %d has a seam at %v between %v and %v", r, x, c.From, c.To)
				}
			}
		}
	}
	return ""
}

// Every layout keeps what is kept. Where one of the room's layouts shows that it can be kept, the best
// one is no worse than that, and no better than the best of all. For thousands of rooms run it with
// -rapid.checks=5000.
func TestLayoutsKeep(t *testing.T) {
	judged := 0
	rapid.Check(t, func(t *rapid.T) {
		room, layouts := someLayouts(t)
		model := layouts[rapid.IntRange(0, len(layouts)-1).Draw(t, "layout")]
		drawKeep(t, &room, &model)
		again := firstLayouts(t, Layouts(context.Background(), room), 20)
		for _, l := range again {
			if wrong := kept(&room, &l); wrong != "" {
				t.Fatal(wrong)
			}
		}
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Fatal(err)
		}
		// An origin that is kept is one more to carry round a closed room, and is tried whoever passes.
		carried := slices.ContainsFunc(room.Runs, func(r Run) bool { return r.Keep.Origin != nil }) && (room.Closed || len(m.varying) > 0)
		offLine := func(b Blemish) bool { return b.Kind == SeamOffLine }
		for r := range room.Runs {
			for _, x := range room.Runs[r].Keep.Seams {
				if len(room.BoxesAt(r, x)) > 0 {
					return // it breaks no rule any more
				}
			}
		}
		if slices.ContainsFunc(model.Blemishes, offLine) || slices.ContainsFunc(again[0].Blemishes, offLine) {
			return // seams off their lines are tried only where the lines do not do
		}
		judged++
		if best := &again[0]; best.Broken > model.Broken || best.Broken == model.Broken && model.Total.Less(best.Total) {
			t.Fatalf("kept is blemish %v with %d rules broken; the layout kept has %v, %d", best.Total, best.Broken, model.Total, model.Broken)
		} else if !carried && best.Broken < layouts[0].Broken || !carried && best.Broken == layouts[0].Broken && best.Total.Less(layouts[0].Total) {
			t.Fatalf("kept is blemish %v with %d rules broken; without there is none below %v, %d", best.Total, best.Broken, layouts[0].Total, layouts[0].Broken)
		}
	})
	if judged == 0 {
		t.Error("no room was judged")
	}
}

// A break that costs nothing is used where it may be; within a stretch without seams it is not, though the seam
// elsewhere costs.
func TestBreakInAStretchWithoutSeams(t *testing.T) {
	room := keptRoom(Keep{})
	room.Runs[0].Openings = nil
	room.Runs[0].Breaks = []Break{{At: inches("48"), Prominence: fraction.Ratio{}}}
	room.Runs[0].Focal = []Focal{{From: inches("47"), To: inches("49"), Prominence: fraction.Ratio{}}}
	for _, test := range []struct {
		clear []Clear
		used  bool
	}{{nil, true}, {[]Clear{{inches("47"), inches("48")}}, true}, {[]Clear{{inches("47"), inches("49")}}, false}} {
		room.Runs[0].Keep.Clear = test.clear
		l := firstOf(t, room)
		if got := slices.Contains(seamsIn(&l, 0), inches("48")); got != test.used {
			t.Errorf("without seams in %v: seams at %v", test.clear, seamsIn(&l, 0))
		}
	}
}

// A stretch without seams that is wider than a board cannot be kept, not by a break in its middle either: two boards
// would meet there.
func TestBoardsMeetAtABreakToo(t *testing.T) {
	room := keptRoom(Keep{Clear: []Clear{{inches("46.5"), inches("50")}}})
	room.Runs[0].Openings, room.Runs[0].Right.Kind, room.Gaps.Seam = nil, Exposed, fraction.Length{}
	room.Profile = groove.Profile{Name: "board", Boards: true, Features: []groove.Feature{{Kind: groove.Flat, Width: inches("3")}, {Kind: groove.Groove, Width: inches("1/4")}}}
	room.Stock[0].Width = inches("3 1/4")
	room.Runs[0].Breaks = []Break{{At: inches("48"), Prominence: fraction.Ratio{}}}
	none := new(NoLayoutError)
	if _, err := first(room); !errors.As(err, &none) || none.Reason != KeepUnmet {
		t.Errorf("%v, want no layout that keeps it", err)
	}
	room.Runs[0].Keep.Clear = nil
	if _, err := first(room); err != nil {
		t.Errorf("with seams anywhere: %v", err)
	}
}
