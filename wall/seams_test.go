package wall

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// seamsIn returns where the seams of a run are, used breaks among them.
func seamsIn(l *Layout, run int) (at []fraction.Length) {
	for _, b := range l.Blemishes {
		if b.Kind == Seam && b.Run == run {
			at = append(at, b.At)
		}
	}
	return at
}

// A seam through the middle of a wide box is as bad as one at its side: it is made only if there is
// no other.
func TestSeamsStayOutOfBoxes(t *testing.T) {
	for _, test := range []struct {
		name, left, width string
		breakAt           string
		seams, broken     int
	}{
		{"one seam would fall into the box, two do not", "24", "12", "", 2, 0},
		{"a box too wide to be passed by", "4", "52", "", 1, 1},
		{"just one inch from the box", "17", "11 3/4", "", 1, 0},
		{"a break in the box is a seam too", "4", "52", "30", 1, 1},
	} {
		left, width := fraction.MustParse(test.left), fraction.MustParse(test.width)
		room := Room{Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(33), Length: fraction.Inches(96)}},
			Runs: []Run{{Name: "run", Width: fraction.Inches(60), Left: End{Kind: Exposed}, Right: End{Kind: Exposed}, Heights: heights("0,0,20; 60,0,20"),
				Openings: []Opening{{Name: "box", Kind: Box, Outline: cutout.Rectangle(left, fraction.Inches(4), width, fraction.Inches(4))}}}}}
		if test.breakAt != "" {
			room.Runs[0].Breaks = []Break{{At: fraction.MustParse(test.breakAt)}}
		}
		for l, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Fatal(err)
			}
			seams, in := seamsIn(&l, 0), 0
			for _, x := range seams {
				in += len(room.BoxesAt(0, x))
			}
			if len(seams) != test.seams || l.Broken != test.broken || in != test.broken {
				t.Errorf("%s: seams at %v, %d of them at the box, %d rules broken; want %d seams and %d rules", test.name, seams, in, l.Broken, test.seams, test.broken)
			}
			break
		}
	}
}

// Beside a seam at 20 in with a gap of 1/8, a strip of 1/2 in, and a tab of as much under or over an
// opening, fall short of 3/4 in by 1/4. Heights by hand.
func TestWeakStripsAndTabs(t *testing.T) {
	half := fraction.Of(1, 16)
	left, right := inches("20").Sub(half), inches("20").Add(half) // edges of the panels
	apart := inches("1/2")
	for _, test := range []struct {
		name    string
		opening []cutout.Point
		heights []Height
		want    string // heights of the terms
	}{
		{"a window left of the seam, the panel's strip beside it", cutout.Rectangle(left.Sub(apart).Sub(inches("8")), inches("6"), inches("8"), inches("5")), nil, "5"},
		{"a window over the seam, the tab below and above it", cutout.Rectangle(left.Sub(apart), inches("6"), inches("8"), inches("5")), nil, "15"},
		{"a window up to the top, its sill tab", cutout.Rectangle(left.Sub(apart), inches("6"), inches("8"), inches("30")), nil, "6"},
		{"the same at the panel on the right", cutout.Rectangle(right.Add(apart).Sub(inches("8")), inches("6"), inches("8"), inches("30")), nil, "6"},
		{"strips of both panels", cutout.Rectangle(left.Sub(apart).Sub(inches("8")), inches("6"), inches("8"), inches("5")),
			[]Height{{Top: inches("20")}, {At: right.Add(apart), Top: inches("20")}, {At: right.Add(apart), Top: inches("12")}, {At: inches("40"), Top: inches("12")}}, "5 8"},
		{"a step down, under which a tab ends", nil,
			[]Height{{Top: inches("20")}, {At: left.Sub(apart), Top: inches("20")}, {At: left.Sub(apart), Top: inches("12")}, {At: inches("40"), Top: inches("12")}}, "12"},
		{"a door leaves no tab", cutout.Rectangle(left.Sub(apart), inches("-1"), inches("8"), inches("30")), nil, ""},
		{"far enough", cutout.Rectangle(left.Sub(inches("3/4")), inches("6"), inches("8"), inches("5")), nil, ""},
	} {
		room := Room{Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch), Gaps: Gaps{Seam: half.Mul(2)},
			Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
			Runs:  []Run{{Name: "run", Width: inches("40"), Left: End{Kind: Covered}, Right: End{Kind: Covered}, Heights: heights("0,0,20; 40,0,20")}}}
		if test.heights != nil {
			room.Runs[0].Heights = test.heights
		}
		if test.opening != nil {
			room.Runs[0].Openings = []Opening{{Name: "opening", Kind: Window, Outline: test.opening}}
		}
		m, err := NewModel(context.Background(), room)
		if err != nil {
			t.Fatal(err)
		}
		g, err := m.region(0, fitting{})
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, b := range m.weakStrips(0, inches("20"), g) {
			if b.Height.Sign() == 0 {
				continue
			}
			if got = append(got, b.Height.String()); b.Amount != fraction.Of(1, 4) {
				t.Errorf("%s: too narrow by %v, want 1/4", test.name, b.Amount)
			}
		}
		if s := strings.Join(got, " "); s != test.want {
			t.Errorf("%s: heights %q, want %q", test.name, s, test.want)
		}
	}
}

// Of layouts that look alike one that leaves a sheet whole comes first, not one of two panels of 45 in:
// also of plain sheets and of sheets that have to be turned for it.
func TestWholeSheetsFirst(t *testing.T) {
	for _, test := range []struct {
		name    string
		profile int // of profiles, -1 for none
		phase   string
		short   bool // sheets too short for the run come first
		want    string
	}{
		{"a bead", 0, "0", false, "0 to 42, 42 to 90"},
		{"plain sheets", -1, "0", false, "0 to 42, 42 to 90"},
		{"turned sheets start with a whole flat", 0, "2 1/2", false, "0 to 42, 42 to 90"},
		{"beside short sheets", 0, "0", true, "0 to 42, 42 to 90"},
	} {
		room := Room{Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96"), LeftPhase: inches(test.phase)}},
			Runs: []Run{{Name: "run", Width: inches("90"), Left: End{Kind: Covered}, Right: End{Kind: Covered}, Heights: heights("0,0,20; 90,0,20"),
				Keep: Keep{Origin: new(inches("0"))}}}}
		if test.short {
			room.Stock = slices.Insert(room.Stock, 0, nest.Stock{Name: "short", Width: inches("48"), Length: inches("19"), Count: new(1)})
		}
		if room.Profile.Thickness = fraction.Of(1, 4); test.profile >= 0 {
			room.Profile = profiles[test.profile]
		}
		l, err := first(room)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, p := range l.Runs[0].Panels {
			got = append(got, fmt.Sprintf("%v to %v", p.Left, p.Right))
		}
		if s := strings.Join(got, ", "); s != test.want {
			t.Errorf("%s: panels %s, want %s", test.name, s, test.want)
		}
	}
}

// Where panels stop that start at node 1, at 10 1/16, half of a gap of 1/8 off each node: node 2 would stop one before it starts, node 3 where
// it does. From node 5, 2 off, one is as wide as the least, from node 6, 3 off, all its parts count; sheets of 4 reach to node 8, upright ones of
// 3 1/2 to node 6.
func TestStops(t *testing.T) {
	p := &program{stretch: &stretch{Model: &Model{room: &Room{}}, leastPanel: inches("2"), settled: inches("3")}, widest: inches("4")}
	c := &cover{}
	for _, at := range []string{"0", "10", "10 1/16", "10 1/8", "10 1/4", "12 1/8", "13 1/8", "13 3/4", "14 1/8", "14 1/4"} {
		c.left, c.right = append(c.left, inches(at).Add(fraction.Of(1, 16))), append(c.right, inches(at).Sub(fraction.Of(1, 16)))
		c.upright = append(c.upright, inches("3 1/2"))
	}
	if got, want := p.stops(c, 1, 9), (stops{near: 4, whole: 5, settled: 6, upright: 6, far: 8}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	if got, want := p.stops(c, 1, 3), (stops{near: 4, whole: 4, settled: 4, upright: 3, far: 3}); got != want {
		t.Errorf("up to node 3: %+v, want %+v", got, want)
	}
	p.room.Profile.Boards = true
	if got := p.stops(c, 4, 9); got.near != 5 || got.far != 5 {
		t.Errorf("boards: %+v", got)
	}
}
