package wall

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

func inches(s string) fraction.Length { return fraction.MustParse(s) }

// ring reads corners written as "x,y x,y …".
func ring(s string) []cutout.Point {
	var out []cutout.Point
	for _, p := range strings.Split(s, "; ") {
		x, y, _ := strings.Cut(p, ",")
		out = append(out, cutout.Point{X: inches(x), Y: inches(y)})
	}
	return out
}

func heights(s string) []Height {
	var out []Height
	for _, h := range strings.Split(s, "; ") {
		f := strings.Split(h, ",")
		out = append(out, Height{At: inches(f[0]), Bottom: inches(f[1]), Top: inches(f[2])})
	}
	return out
}

// trim is one that covers so much.
func trim(covers string) *EdgeTrim { return &EdgeTrim{"trim", inches(covers)} }

// TestRegion pins down how gaps, leans, steps and corners shape what is panelled. The wanted
// corners were worked out by hand from the rules in DEVELOPERS.md.
func TestRegion(t *testing.T) {
	gaps := Gaps{Top: inches("1/8"), Bottom: inches("1/4"), Side: inches("1/16"), Box: inches("1/8"), Window: inches("1/4")}
	for _, test := range []struct {
		name  string
		run   Run
		gaps  Gaps
		fit   fitting
		want  []string
		edges []string // x, height, kind
	}{
		{name: "plain, no gaps", run: Run{Heights: heights("0,0,18; 40,0,18")},
			want:  []string{"0,0; 40,0; 40,18; 0,18"},
			edges: []string{"0 18 exposed end", "40 18 exposed end"}},
		{name: "gaps on all sides", gaps: gaps, run: Run{Heights: heights("0,0,18; 40,0,18")},
			want:  []string{"1/16,1/4; 39 15/16,1/4; 39 15/16,17 7/8; 1/16,17 7/8"},
			edges: []string{"1/16 17 5/8 exposed end", "39 15/16 17 5/8 exposed end"}},
		{name: "butting at the left, a long point at the right", gaps: gaps,
			run: Run{Left: End{Kind: InsideCorner}, Right: End{Kind: OutsideCorner}, Heights: heights("0,0,18; 40,0,18")}, fit: fitting{buttsLeft: true},
			want:  []string{"5/16,1/4; 40 1/4,1/4; 40 1/4,17 7/8; 5/16,17 7/8"},
			edges: []string{"5/16 17 5/8 inside corner", "40 1/4 17 5/8 outside corner"}},
		{name: "a steep line and a leaning end: carried on, top and bottom meet just beyond the wall",
			run:   Run{Left: End{Lean: inches("-1/4")}, Heights: heights("0,0,1; 40,0,81 1/2")},
			want:  []string{"-1/4,1; 0,0; 40,0; 40,81 1/2"},
			edges: []string{"-1/8 1 exposed end", "40 81 1/2 exposed end"}},
		{name: "a steep line and a leaning end at the right",
			run:   Run{Right: End{Lean: inches("1/4")}, Heights: heights("0,0,81 1/2; 40,0,1")},
			want:  []string{"0,0; 40,0; 40 1/4,1; 0,81 1/2"},
			edges: []string{"0 81 1/2 exposed end", "40 1/8 1 exposed end"}},
		{name: "a step up moves toward the taller part", gaps: gaps, run: Run{Heights: heights("0,0,18; 15,0,18; 15,0,30; 40,0,30")},
			want:  []string{"1/16,1/4; 39 15/16,1/4; 39 15/16,29 7/8; 15 1/16,29 7/8; 15 1/16,17 7/8; 1/16,17 7/8"},
			edges: []string{"1/16 17 5/8 exposed end", "15 1/16 12 step side", "39 15/16 29 5/8 exposed end"}},
		{name: "a step down, and a deeper bottom behind the range", gaps: gaps, run: Run{Heights: heights("0,0,30; 15,0,30; 15,-4,18; 40,-4,18")},
			want:  []string{"1/16,1/4; 15 1/16,1/4; 15 1/16,-3 3/4; 39 15/16,-3 3/4; 39 15/16,17 7/8; 14 15/16,17 7/8; 14 15/16,29 7/8; 1/16,29 7/8"},
			edges: []string{"1/16 29 5/8 exposed end", "14 15/16 12 step side", "15 1/16 4 step side", "39 15/16 21 5/8 exposed end"}},
		{name: "a slope met by the side gap is rounded down", gaps: Gaps{Side: inches("1/16")}, run: Run{Heights: heights("0,0,18; 40,0,19")},
			want:  []string{"1/16,0; 39 15/16,0; 39 15/16,18 15/16; 1/16,18"},
			edges: []string{"1/16 18 exposed end", "39 15/16 18 15/16 exposed end"}},
		{name: "a baseboard hides a quarter: the bottom is cut level at its highest", run: Run{Trim: Trims{Bottom: trim("1/2")}, Heights: heights("0,0,18; 20,1/8,18; 40,1/4,18")},
			want:  []string{"0,1/4; 40,1/4; 40,18; 0,18"},
			edges: []string{"0 17 3/4 exposed end", "40 17 3/4 exposed end"}},
		{name: "a bottom that rises by more stays", run: Run{Trim: Trims{Bottom: trim("1/2")}, Heights: heights("0,0,18; 40,5/16,18")},
			want:  []string{"0,0; 40,5/16; 40,18; 0,18"},
			edges: []string{"0 18 exposed end", "40 17 11/16 exposed end"}},
		{name: "a gap takes from what the trim hides: 1/2 less 3/16 and the margin is less than 1/8", gaps: Gaps{Bottom: inches("3/16")},
			run:   Run{Trim: Trims{Bottom: trim("1/2")}, Heights: heights("0,0,18; 40,1/8,18")},
			want:  []string{"0,3/16; 40,5/16; 40,18; 0,18"},
			edges: []string{"0 17 13/16 exposed end", "40 17 11/16 exposed end"}},
		// Each part between steps by itself: 18 to 18 1/4 is hidden, 30 to 30 1/2 is not; its top is 30.001
		// high at 15 1/16, which goes down to 30, and 30.499 at the end.
		{name: "a cap rail, each part by itself", gaps: Gaps{Side: inches("1/16")},
			run:   Run{Trim: Trims{Top: trim("1/2")}, Heights: heights("0,0,18; 15,0,18 1/4; 15,0,30; 40,0,30 1/2")},
			want:  []string{"1/16,0; 39 15/16,0; 39 15/16,30 7/16; 15 1/16,30; 15 1/16,18; 1/16,18"},
			edges: []string{"1/16 18 exposed end", "15 1/16 12 step side", "39 15/16 30 7/16 exposed end"}},
		{name: "the lowest place of a part lies beside its step, and goes down to a mark", gaps: Gaps{Side: inches("1/16")},
			run:   Run{Trim: Trims{Top: trim("1/2")}, Heights: heights("0,0,18; 15,0,18 1/4; 15,0,30; 40,0,30 1/4")},
			want:  []string{"1/16,0; 39 15/16,0; 39 15/16,30; 15 1/16,30; 15 1/16,18; 1/16,18"},
			edges: []string{"1/16 18 exposed end", "15 1/16 12 step side", "39 15/16 30 exposed end"}},
		{name: "a leaning right end, foot at the width", run: Run{Right: End{Lean: inches("1/4")}, Heights: heights("0,0,18; 40,0,18")},
			want:  []string{"0,0; 40,0; 40 1/4,18; 0,18"},
			edges: []string{"0 18 exposed end", "40 1/8 18 exposed end"}},
		{name: "a left end that leans into the room, with gaps", gaps: Gaps{Top: inches("1/8"), Side: inches("1/8")}, run: Run{Left: End{Lean: inches("1/4")}, Heights: heights("0,0,16; 40,0,16")},
			// At 15-7/8 in the line stands 1/8 + 1/4 x 15.875/16 = 0.373 in in: rounded right to
			// 3/8.
			want:  []string{"1/8,0; 39 7/8,0; 39 7/8,15 7/8; 3/8,15 7/8"},
			edges: []string{"1/4 15 7/8 exposed end", "39 7/8 15 7/8 exposed end"}},
		{name: "a box is a hole", gaps: Gaps{Box: inches("1/8")},
			run:   Run{Heights: heights("0,0,18; 40,0,18"), Openings: []Opening{{Name: "b", Kind: Box, Outline: ring("10,5; 12 1/4,5; 12 1/4,9; 10,9")}}},
			want:  []string{"0,0; 40,0; 40,18; 0,18 - 9 7/8,4 7/8; 9 7/8,9 1/8; 12 3/8,9 1/8; 12 3/8,4 7/8"},
			edges: []string{"0 18 exposed end", "9 7/8 4 1/4 box side", "12 3/8 4 1/4 box side", "40 18 exposed end"}},
		{name: "a window past the top is a notch", gaps: Gaps{Window: inches("1/4")},
			run:   Run{Heights: heights("0,0,18; 40,0,18"), Openings: []Opening{{Name: "w", Kind: Window, Outline: ring("10,6; 20,6; 20,40; 10,40")}}},
			want:  []string{"0,0; 40,0; 40,18; 20 1/4,18; 20 1/4,5 3/4; 9 3/4,5 3/4; 9 3/4,18; 0,18"},
			edges: []string{"0 18 exposed end", "9 3/4 12 1/4 opening side", "20 1/4 12 1/4 opening side", "40 18 exposed end"}},
		{name: "a door parts the run", gaps: Gaps{Window: inches("1/4")},
			run:   Run{Heights: heights("0,0,18; 40,0,18"), Openings: []Opening{{Name: "d", Kind: Other, Outline: ring("10,-1; 20,-1; 20,40; 10,40")}}},
			want:  []string{"0,0; 9 3/4,0; 9 3/4,18; 0,18", "20 1/4,0; 40,0; 40,18; 20 1/4,18"},
			edges: []string{"0 18 exposed end", "9 3/4 18 opening side", "20 1/4 18 opening side", "40 18 exposed end"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			test.run.Width = inches("40")
			room := Room{Profile: profiles[0], Mark: inches("1/16"), Gaps: test.gaps, Runs: []Run{test.run}, Priorities: Priorities{TrimMargin: inches("1/4")}}
			g, err := newRegion(context.Background(), &room, 0, test.fit)
			if err != nil {
				t.Fatal(err)
			}
			var want []cutout.Shape
			for _, s := range test.want {
				outline, holes, _ := strings.Cut(s, " - ")
				var rings [][]cutout.Point
				if holes != "" {
					rings = append(rings, ring(holes))
				}
				shape, err := cutout.NewShape(ring(outline), rings...)
				if err != nil {
					t.Fatal(err)
				}
				want = append(want, shape)
			}
			if diff := cmp.Diff(want, g.shapes, cmpopts.EquateComparable(fraction.Length{})); diff != "" {
				t.Errorf("shapes (-want +got):\n%s", diff)
			}
			var edges []string
			for _, e := range g.edges {
				edges = append(edges, fmt.Sprint(e.x, " ", e.height, " ", e.kind))
			}
			less := func(a, b string) bool { return a < b }
			if diff := cmp.Diff(test.edges, edges, cmpopts.SortSlices(less)); diff != "" {
				t.Errorf("edges (-want +got):\n%s", diff)
			}
		})
	}
}

// TestGrowSlopedOutline checks that a grown outline keeps its gap everywhere.
func TestGrowSlopedOutline(t *testing.T) {
	for _, outline := range []string{"0,0; 10,0; 5,8", "0,0; 10,0; 10,10; 5,4; 0,10"} {
		corners := ring(outline)
		gap := inches("1/4")
		shape, err := cutout.NewShape(ring("-20,-20; 30,-20; 30,30; -20,30"))
		if err != nil {
			t.Fatal(err)
		}
		left := []cutout.Shape{shape}
		for _, clip := range fraction.Must(cutout.Grow(corners, gap)) {
			left = each(left, func(s cutout.Shape) ([]cutout.Shape, error) { return s.Minus(clip) })
		}
		for _, p := range corners {
			for _, d := range []cutout.Point{{X: gap}, {X: gap.Neg()}, {Y: gap}, {Y: gap.Neg()}} {
				near := cutout.Point{X: p.X.Add(d.X.Mul(3).Div(4)), Y: p.Y.Add(d.Y.Mul(3).Div(4))}
				if within(left, near) {
					t.Errorf("outline %s: %v is left, nearer than the gap", outline, near)
				}
			}
		}
	}
}

func TestRoomFaults(t *testing.T) {
	good := func() Room {
		return Room{Profile: profiles[0], Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
			Runs: []Run{
				{Name: "a", Width: inches("40"), Right: End{Kind: InsideCorner}, Heights: heights("0,0,18; 40,0,18")},
				{Name: "b", Width: inches("40"), Left: End{Kind: InsideCorner}, Heights: heights("0,0,18; 40,0,18")},
			}}
	}
	if err := new(Room).Validate(); err == nil {
		t.Error("the zero Room is valid")
	}
	room := good()
	if err := room.Validate(); err != nil {
		t.Fatalf("the good room: %v", err)
	}
	for _, test := range []struct {
		path  string
		spoil func(*Room)
	}{
		{"Profile.Features", func(r *Room) { r.Profile.Features, r.Profile.Boards = nil, true }},
		{"Mark", func(r *Room) { r.Mark = inches("-1/16") }},
		{"Stock", func(r *Room) { r.Stock = nil }},
		{"Stock[0].Width", func(r *Room) { r.Stock[0].Width = inches("0") }},
		{"Stock[0].Length", func(r *Room) { r.Stock[0].Length = inches("-1") }},
		{"Stock[0].LeftPhase", func(r *Room) { r.Stock[0].LeftPhase = r.Profile.Pitch() }},
		{"Gaps.Seam", func(r *Room) { r.Gaps.Seam = inches("-1/8") }},
		{"Priorities.Seam", func(r *Room) { r.Priorities.Seam = inches("-1/8") }},
		{"Priorities.ExposedEnd", func(r *Room) { r.Priorities.ExposedEnd = fraction.NewRatio(-1, 1) }},
		{"Runs", func(r *Room) { r.Runs = nil }},
		{"Runs[0].Width", func(r *Room) { r.Runs[0].Width = inches("0") }},
		{"Runs[0].Heights", func(r *Room) { r.Runs[0].Heights = r.Runs[0].Heights[:1] }},
		{"Runs[0].Heights[0].At", func(r *Room) { r.Runs[0].Heights[0].At = inches("1") }},
		{"Runs[0].Heights[1].At", func(r *Room) { r.Runs[0].Heights[1].At = inches("41") }},
		{"Runs[0].Heights[1].Top", func(r *Room) { r.Runs[0].Heights[1].Top = inches("-1") }},
		{"Runs[0].Heights[2].At", func(r *Room) { r.Runs[0].Heights = heights("0,0,18; 20,0,18; 10,0,18; 40,0,18") }},
		{"Runs[0].Heights[1].At", func(r *Room) { r.Runs[0].Heights = heights("0,0,18; 0,0,20; 40,0,18") }},
		{"Runs[0].Left.Lean", func(r *Room) { r.Runs[0].Left.Lean = inches("40") }},
		{"Runs[0].Right.Lean", func(r *Room) { r.Runs[0].Right.Lean = inches("-40") }},
		{"Runs[0].Left.Prominence", func(r *Room) { p := fraction.NewRatio(-1, 1); r.Runs[0].Left.Prominence = &p }},
		{"Runs[0].Openings[0].Outline[0]", func(r *Room) { r.Runs[0].Openings = []Opening{{Name: "hole", Outline: ring("0,0; 1,1")}} }},
		{"Runs[0].Openings[0].Kind", func(r *Room) { r.Runs[0].Openings = []Opening{{Name: "hole", Kind: 9, Outline: ring("1,1; 2,1; 2,2")}} }},
		{"Runs[0].Openings[0].Gangs", func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "hole", Gangs: 1, Outline: ring("1,1; 2,1; 2,2")}}
		}},
		{"Runs[0].Openings[1].Name", func(r *Room) {
			hole := Opening{Name: "hole", Outline: ring("1,1; 2,1; 2,2")}
			r.Runs[0].Openings = []Opening{hole, hole}
		}},
		{"Runs[0].Name", func(r *Room) { r.Runs[0].Name = " " }},
		{"Runs[1].Name", func(r *Room) { r.Runs[1].Name = "a" }},
		{"Runs[0].Width", func(r *Room) { r.Mark = fraction.Of(1, 1<<40) }},
		{"Runs[0].Right.Kind", func(r *Room) { r.Runs[0].Right.Kind = 9 }},
		{"Runs[0].Focal[0].To", func(r *Room) { r.Runs[0].Focal = []Focal{{From: inches("3"), To: inches("2")}} }},
		{"Runs[0].Breaks[0].At", func(r *Room) { r.Runs[0].Breaks = []Break{{At: inches("40")}} }},
		{"Runs[1].Left.Kind", func(r *Room) { r.Runs[1].Left.Kind = OutsideCorner }},
		{"Runs[0].Left.Kind", func(r *Room) { r.Closed = true; r.Runs[1].Right.Kind = InsideCorner }},
		{"Installed[0].Run", func(r *Room) { r.Installed = []Installed{{Run: 2}} }},
		{"Installed[0].Right", func(r *Room) { r.Installed = []Installed{{Left: inches("2"), Right: inches("1")}} }},
		{"Installed[1].Left", func(r *Room) {
			r.Installed = []Installed{{Left: inches("1"), Right: inches("9")}, {Left: inches("5"), Right: inches("12")}}
		}},
	} {
		room := good()
		test.spoil(&room)
		var field *fault.Fault
		err := room.Validate()
		if !errors.As(err, &field) || field.Path.String() != test.path {
			t.Errorf("want a fault at %s, got %v", test.path, err)
		}
		for _, err := range Layouts(context.Background(), room) {
			if !errors.As(err, &field) {
				t.Errorf("%s: Layouts gives %v", test.path, err)
			}
		}
	}
}

func TestNoLayout(t *testing.T) {
	room := Room{Profile: profiles[0], Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("15")}},
		Runs:  []Run{{Name: "wall", Width: inches("40"), Heights: heights("0,0,18; 40,0,18")}}}
	for name, spoil := range map[string]func(*Room){
		"taller": func(*Room) {},
		"wide":   func(r *Room) { r.Stock[0] = nest.Stock{Width: inches("1"), Length: inches("96")}; r.Mark = inches("2") },
		"unbroken": func(r *Room) {
			r.Stock[0].Length = inches("96")
			r.Installed = []Installed{{Left: inches("2"), Right: inches("9")}, {Left: inches("12"), Right: inches("20"), LeftPhase: inches("1/16")}}
		},
		"installed": func(r *Room) {
			r.Stock[0].Length = inches("96")
			r.Installed = []Installed{{Left: inches("-2"), Right: inches("9")}}
		},
	} {
		r := room
		r.Stock = append([]nest.Stock(nil), room.Stock...)
		spoil(&r)
		for _, err := range Layouts(context.Background(), r) {
			var none *NoLayoutError
			var field *fault.Fault
			if !errors.As(err, &none) && !errors.As(err, &field) {
				t.Fatalf("%s: %v", name, err)
			}
			if !strings.Contains(err.Error(), name) {
				t.Errorf("%s: the reason is %q", name, err)
			}
		}
	}
}

// A room is valid at each limit and refused beyond it, at the path where it is exceeded.
func TestLimitsOfARoom(t *testing.T) {
	type change func(r *Room, more int)
	run := func(name string) Run {
		return Run{Name: name, Width: inches("4000"), Heights: heights("0,0,18; 4000,0,18")}
	}
	for _, test := range []struct {
		path   string
		change change
	}{
		{"Stock", func(r *Room, more int) { r.Stock = slices.Repeat(r.Stock, 64+more) }},
		{"Runs", func(r *Room, more int) {
			for i := range 98 + more {
				r.Runs = append(r.Runs, run(fmt.Sprint(i)))
				r.Runs[len(r.Runs)-1].Width, r.Runs[len(r.Runs)-1].Heights = inches("40"), heights("0,0,18; 40,0,18")
			}
		}},
		{"Installed", func(r *Room, more int) {
			for i := range int64(1000 + more) {
				r.Installed = append(r.Installed, Installed{Left: fraction.Inches(i), Right: fraction.Inches(i + 1)})
			}
		}},
		{"Profile.Features", func(r *Room, more int) {
			r.Mark = inches("4")                     // or there are too many along both
			for len(r.Profile.Features) < 150+more { // for each of two runs
				r.Profile.Features = append(slices.Clone(r.Profile.Features), groove.Feature{Kind: groove.Flat, Width: inches("1")})
			}
		}},
		{"Profile.Features", func(r *Room, more int) { // times four stations and 96 openings
			r.Mark = inches("1/2")
			for len(r.Profile.Features) < 25 {
				r.Profile.Features = append(slices.Clone(r.Profile.Features), groove.Feature{Kind: groove.Flat, Width: inches("1")})
			}
			for i := range int64(96 + more) {
				o := Opening{Name: fmt.Sprint(i), Outline: cutout.Rectangle(fraction.Inches(3*i+1), inches("1"), inches("1"), inches("1"))}
				r.Runs[0].Openings = append(r.Runs[0].Openings, o)
			}
		}},
		{"Runs[1].Width", func(r *Room, more int) { // 8000 in hold 250,000 marks, of two features each
			r.Mark = fraction.Of(4, 125)
			r.Runs[1].Width = inches("4000").Add(fraction.Of(int64(more), 8))
			r.Runs[1].Heights[1].At = r.Runs[1].Width
		}},
		{"Runs[1].Heights", func(r *Room, more int) {
			for i := range int64(996 + more) { // two in the first run, one at the other end of this
				r.Runs[1].Heights = append(r.Runs[1].Heights, Height{At: fraction.Inches(i + 1), Top: inches("18")})
			}
			r.Runs[1].Heights = append(heights("0,0,18"), append(r.Runs[1].Heights[2:], heights("4000,0,18")...)...)
		}},
		{"Runs[1].Openings", func(r *Room, more int) {
			for i := range int64(200 + more) {
				o := Opening{Name: fmt.Sprint(i), Outline: cutout.Rectangle(fraction.Inches(3*i+1), inches("1"), inches("1"), inches("1"))}
				r.Runs[i%2].Openings = append(r.Runs[i%2].Openings, o)
			}
			if more > 0 { // the one too many is of the second run
				r.Runs[1].Openings, r.Runs[0].Openings = r.Runs[0].Openings, r.Runs[1].Openings
			}
		}},
		{"Runs[1].Breaks", func(r *Room, more int) {
			for i := range int64(10 + more) {
				r.Runs[1].Breaks = append(r.Runs[1].Breaks, Break{At: fraction.Inches(i + 1)})
			}
		}},
		{"Runs[1].Focal", func(r *Room, more int) {
			for i := range int64(500 + more) {
				r.Runs[1].Focal = append(r.Runs[1].Focal, Focal{From: fraction.Inches(i), To: fraction.Inches(i)})
			}
		}},
		{"Runs[0].Openings", func(r *Room, more int) { // a comb of 5000 corners
			var comb []cutout.Point
			for i := range int64(2499) {
				up := fraction.Inches(1 + i%2)
				comb = append(comb, cutout.Point{X: fraction.Of(i, 4), Y: up}, cutout.Point{X: fraction.Of(i+1, 4), Y: up})
			}
			comb = append(comb, cutout.Point{X: fraction.Of(2499, 4), Y: inches("9")}, cutout.Point{Y: inches("9")})
			if more > 0 {
				comb = append(comb, cutout.Point{Y: inches("5")})
			}
			r.Runs[0].Openings = []Opening{{Name: "comb", Outline: comb}}
		}},
		{"Runs[1].Width", func(r *Room, more int) { // 1000 sheets of 8 side by side
			r.Stock = append([]nest.Stock{{Name: "narrow", Width: inches("2"), Length: inches("96")}}, r.Stock...)
			r.Stock[1].Width = inches("8")
			r.Runs[1].Width = inches("4000").Add(fraction.Of(int64(more), 8))
			r.Runs[1].Heights[1].At = r.Runs[1].Width
		}},
	} {
		for more := range 2 {
			room := Room{Profile: profiles[0], Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch),
				Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}}, Runs: []Run{run("a"), run("b")}}
			test.change(&room, more)
			err := room.Validate()
			var f *fault.Fault
			if more == 0 && err != nil || more == 1 && (!errors.As(err, &f) || f.Path.String() != test.path) {
				t.Errorf("%s, %d beyond the limit: %v", test.path, more, err)
			}
		}
	}
}

// What is just right beside what TestRoomFaults refuses.
func TestRoomsThatAreJustRight(t *testing.T) {
	for _, test := range []struct {
		name   string
		valid  bool
		change func(*Room)
	}{
		{"a snap of half a mark", true, func(r *Room) { r.Snap = inches("1/32") }},
		{"more", false, func(r *Room) { r.Snap = inches("1/31") }},
		{"a phase just below the repeat", true, func(r *Room) { r.Stock[0].LeftPhase = r.Profile.Pitch().Sub(inches("1/16")) }},
		{"one below 0", false, func(r *Room) { r.Stock[0].LeftPhase = inches("-1/16") }},
		{"stock that squaring up leaves a little of", true, func(r *Room) { r.Saw.SquareUp = inches("47 15/16") }},
		{"or nothing", false, func(r *Room) { r.Saw.SquareUp = inches("48") }},
		{"a scribe below 0", false, func(r *Room) { r.Scribe = inches("-1/4") }},
		{"a focal zone of no width", true, func(r *Room) { r.Runs[0].Focal = []Focal{{From: inches("3"), To: inches("3")}} }},
		{"one that is seen less than not", false, func(r *Room) { r.Runs[0].Focal = []Focal{{To: inches("3"), Prominence: fraction.NewRatio(-1, 2)}} }},
		{"breaks a little more than a seam apart", true, func(r *Room) {
			r.Gaps.Seam = inches("1/8")
			r.Runs[0].Breaks = []Break{{At: inches("3/16")}, {At: inches("3/8")}, {At: inches("39 13/16")}}
		}},
		{"a seam from the left end", false, func(r *Room) { r.Gaps.Seam, r.Runs[0].Breaks = inches("1/8"), []Break{{At: inches("1/8")}} }},
		{"a seam from the right end", false, func(r *Room) { r.Gaps.Seam, r.Runs[0].Breaks = inches("1/8"), []Break{{At: inches("39 7/8")}} }},
		{"a seam apart", false, func(r *Room) {
			r.Gaps.Seam, r.Runs[0].Breaks = inches("1/8"), []Break{{At: inches("3")}, {At: inches("3 1/8")}}
		}},
		{"a break that is seen less than not", false, func(r *Room) { r.Runs[0].Breaks = []Break{{At: inches("3"), Prominence: fraction.NewRatio(-1, 2)}} }},
		{"a box for ten devices", true, func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "o", Kind: Box, Gangs: 10, Outline: ring("1,1; 2,1; 2,2")}}
		}},
		{"for eleven", false, func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "o", Kind: Box, Gangs: 11, Outline: ring("1,1; 2,1; 2,2")}}
		}},
		{"for fewer than none", false, func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "o", Kind: Box, Gangs: -1, Outline: ring("1,1; 2,1; 2,2")}}
		}},
		{"the last kind of opening", true, func(r *Room) { r.Runs[0].Openings = []Opening{{Name: "o", Kind: Box, Outline: ring("1,1; 2,1; 2,2")}} }},
		{"a step", true, func(r *Room) { r.Runs[0].Heights = heights("0,0,18; 20,0,18; 20,0,28; 40,0,28") }},
		{"one at the right end", false, func(r *Room) { r.Runs[0].Heights = heights("0,0,18; 40,0,18; 40,0,28") }},
		{"three stations at one place", false, func(r *Room) { r.Runs[0].Heights = heights("0,0,18; 20,0,18; 20,0,28; 20,0,38; 40,0,28") }},
		{"stations a little more than two side gaps apart", true, func(r *Room) {
			r.Gaps.Side = inches("1/2")
			r.Runs[0].Heights = heights("0,0,18; 1 1/16,0,18; 40,0,18")
		}},
		{"just two side gaps", false, func(r *Room) { r.Gaps.Side, r.Runs[0].Heights = inches("1/2"), heights("0,0,18; 1,0,18; 40,0,18") }},
		{"a wall a little higher than its gaps", true, func(r *Room) {
			r.Gaps.Top, r.Gaps.Bottom = inches("10"), inches("7 15/16")
		}},
		{"just as high", false, func(r *Room) { r.Gaps.Top, r.Gaps.Bottom = inches("10"), inches("8") }},
		{"just nothing high", false, func(r *Room) { r.Runs[0].Heights[0].Bottom = inches("18") }},
		{"a lean to just before the next station", true, func(r *Room) { r.Runs[0].Left.Lean = inches("39 15/16") }},
		{"at the other end", true, func(r *Room) { r.Runs[1].Right.Lean = inches("-39 15/16") }},
		{"panels that are up and touch", true, func(r *Room) {
			r.Installed = []Installed{{Left: inches("3"), Right: inches("9")}, {Left: inches("9"), Right: inches("12")}, {Run: 1, Left: inches("3"), Right: inches("9")}}
		}},
		{"one of no width", false, func(r *Room) { r.Installed = []Installed{{Left: inches("3"), Right: inches("3")}} }},
		{"one on a run before the first", false, func(r *Room) { r.Installed = []Installed{{Run: -1, Left: inches("3"), Right: inches("9")}} }},
		{"one out of phase", false, func(r *Room) {
			r.Installed = []Installed{{Left: inches("3"), Right: inches("9"), LeftPhase: inches("-1")}}
		}},
		{"the last kind of end", true, func(r *Room) { r.Runs[0].Left.Kind = Covered }},
		{"one kind more", false, func(r *Room) { r.Runs[0].Left.Kind = EndKind(len(endKinds)) }},
		{"a corner that only one names", true, func(r *Room) { r.Runs[1].Left.Kind = Exposed }},
		{"a closed room", true, func(r *Room) {
			r.Closed, r.Runs[0].Left.Kind, r.Runs[1].Right.Kind = true, OutsideCorner, OutsideCorner
		}},
		{"a closed room with a bare wall between its ends", true, func(r *Room) { r.Closed = true }},
		{"a door that takes one run", true, func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "door", Outline: ring("0,-1; 40,-1; 40,19; 0,19")}}
		}},
		{"doors that take both", false, func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "door", Outline: ring("0,-1; 40,-1; 40,19; 0,19")}}
			r.Runs[1].Openings = r.Runs[0].Openings
		}},
		{"doors that leave a mark's strip of one", true, func(r *Room) {
			r.Runs[0].Openings = []Opening{{Name: "door", Outline: ring("0,-1; 40,-1; 40,19; 0,19")}}
			r.Runs[1].Openings = []Opening{{Name: "door", Outline: ring("0,-1; 39,-1; 39,19; 0,19")}}
		}},
	} {
		room := Room{Profile: profiles[0], Mark: inches("1/16"), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
			Runs: []Run{
				{Name: "a", Width: inches("40"), Right: End{Kind: InsideCorner}, Heights: heights("0,0,18; 40,0,18")},
				{Name: "b", Width: inches("40"), Left: End{Kind: InsideCorner}, Heights: heights("0,0,18; 40,0,18")},
			}}
		test.change(&room)
		if err := room.Validate(); err == nil != test.valid {
			t.Errorf("%s: %v", test.name, err)
		}
	}
}

// A place half way between two marks goes the way that leads into the space, whatever the tolerance.
func TestSnappedHalfWay(t *testing.T) {
	g := &region{tolerance: fraction.Of(1, 32)}
	for _, row := range []struct {
		y    fraction.Length
		way  fraction.Direction
		want fraction.Length
	}{
		{fraction.Of(1, 32), fraction.Down, fraction.Length{}}, {fraction.Of(1, 32), fraction.Up, fraction.Of(1, 16)},
		{fraction.Of(1, 64), fraction.Up, fraction.Length{}}, {fraction.Of(3, 64), fraction.Down, fraction.Of(1, 16)},
	} {
		if got := g.snapped(row.y, fraction.Of(1, 16), row.way); got != row.want {
			t.Errorf("%s %v: %s, want %s", row.y, row.way, got, row.want)
		}
	}
}
