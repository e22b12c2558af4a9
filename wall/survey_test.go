package wall_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// taped is a room of runs that are given by their heights, "at bottom top" by commas, each between the
// kinds of its ends.
func taped(t *testing.T, closed bool, runs ...string) *wall.Room {
	t.Helper()
	profile, _ := groove.Find("beadboard 1-1/2")
	room := &wall.Room{Mark: fraction.Of(1, 16), Closed: closed, Profile: profile, Priorities: wall.DefaultPriorities(fraction.Inch),
		Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(48), Length: fraction.Inches(96)}}}
	for i, text := range runs {
		ends, heights, _ := strings.Cut(text, ": ")
		run := wall.Run{Name: fmt.Sprint("run ", i+1)}
		for k, end := range [2]*wall.End{&run.Left, &run.Right} {
			end.Kind = map[byte]wall.EndKind{'e': wall.Exposed, 'i': wall.InsideCorner, 'o': wall.OutsideCorner}[ends[k]]
		}
		for _, station := range strings.Split(heights, ", ") {
			var at, bottom, top int64
			if n, err := fmt.Sscan(station, &at, &bottom, &top); n != 3 {
				t.Fatal(err)
			}
			run.Heights = append(run.Heights, wall.Height{At: fraction.Inches(at), Bottom: fraction.Inches(bottom), Top: fraction.Inches(top)})
			run.Width = fraction.Inches(at)
		}
		room.Runs = append(room.Runs, run)
	}
	return room
}

// Each row is the smallest room for a doubt about heights, or one beside it in which nothing is
// doubtful: no slope is, however it lies.
func TestHeightsThatLookMistaken(t *testing.T) {
	for _, row := range []struct {
		name string
		runs []string
		want []string
	}{
		{"level", []string{"ee: 0 0 18, 40 0 18"}, nil},
		{"a slope under a stair", []string{"ee: 0 0 36, 12 0 36, 42 22 58, 72 44 80"}, nil},
		{"a plain slope from end to end", []string{"ee: 0 0 18, 40 0 58"}, nil},
		{"a gable", []string{"ee: 0 0 18, 40 0 60, 80 0 18"}, nil},
		{"a gable with a station on each side", []string{"ee: 0 0 18, 20 0 39, 40 0 60, 60 0 39, 80 0 18"}, nil},
		{"a mansard roof", []string{"ee: 0 0 18, 30 0 60, 60 0 60, 90 0 18"}, nil},
		{"a step", []string{"ee: 0 0 18, 40 0 18, 40 0 58, 80 0 58"}, nil},
		{"a step taped at two places", []string{"ee: 0 0 18, 40 0 18, 41 0 58, 80 0 58"}, []string{"Runs[0].Heights[2].Top top jump [] [40]"}},
		{"and at the bottom", []string{"ee: 0 0 18, 40 0 18, 41 4 18, 80 4 18"}, []string{"Runs[0].Heights[2].Bottom bottom jump [] [4]"}},
		{"one height off a level line", []string{"ee: 0 0 18, 20 0 28, 40 0 18, 60 0 18"}, []string{"Runs[0].Heights[1].Top top off [] [10]"}},
		{"the last but one", []string{"ee: 0 0 18, 20 0 18, 40 0 28, 60 0 18"}, []string{"Runs[0].Heights[2].Top top off [] [10]"}},
		{"one off a slope, at the bottom", []string{"ee: 0 0 40, 20 2 40, 40 8 40, 60 6 40"}, []string{"Runs[0].Heights[2].Bottom bottom off [] [4]"}},
		{"an inch off", []string{"ee: 0 0 18, 20 0 19, 40 0 18, 60 0 18"}, nil},
		{"an inside corner, 2 in apart", []string{"ei: 0 0 18, 40 0 18", "ie: 0 0 20, 40 0 20"}, []string{"Runs[1].Heights[0].Top corner heights [run 1] [2 1]"}},
		{"an inside corner, the bottoms apart", []string{"ei: 0 0 18, 40 0 18", "ie: 0 3 18, 40 3 18"}, []string{"Runs[1].Heights[0].Bottom corner heights [run 1] [3 1]"}},
		{"an inside corner, an inch apart", []string{"ei: 0 0 18, 40 0 18", "ie: 0 0 19, 40 0 19"}, nil},
		{"an outside corner may have two heights", []string{"eo: 0 0 18, 40 0 18", "oe: 0 0 20, 40 0 20"}, nil},
	} {
		if got := surveyed(t, taped(t, false, row.runs...)); !slices.Equal(got, row.want) {
			t.Errorf("%s: %q, want %q", row.name, got, row.want)
		}
	}
}

// surveyed returns what is doubted, but for stations apart.
func surveyed(t *testing.T, room *wall.Room) (all []string) {
	t.Helper()
	doubts, err := room.Survey()
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range doubts {
		if d.Kind != wall.StationsApart {
			all = append(all, fmt.Sprint(d.Path, " ", d.Kind, " ", d.Names, " ", d.Lengths))
		}
	}
	return all
}

// A closed room's walls lead back to where they begin, by the widths on a plan of a square room drawn
// by hand.
func TestWallsThatDoNotClose(t *testing.T) {
	in := func(width int) string { return fmt.Sprintf("ii: 0 0 30, %d 0 30", width) }
	to := func(ends string, width int) string { return fmt.Sprintf("%s: 0 0 30, %d 0 30", ends, width) }
	for _, row := range []struct {
		name string
		runs []string
		want []string
	}{
		{"a rectangle", []string{in(120), in(80), in(120), in(80)}, nil},
		{"out of square by an inch", []string{in(120), in(80), in(121), in(80)}, nil},
		{"one wall a foot short", []string{in(120), in(80), in(108), in(80)}, []string{"Closed walls apart [run 1] [12 0 3 22/25]"}},
		{"a room with a chimney breast", []string{in(120), in(80), in(50), to("io", 10), to("oo", 20), to("oi", 10), in(50), in(80)}, nil},
		{"a pier in the room, seen from outside", []string{to("oo", 12), to("oo", 16), to("oo", 12), to("oo", 16)}, nil},
		{"a pier that does not close", []string{to("oo", 12), to("oo", 16), to("oo", 22), to("oo", 16)}, []string{"Closed walls apart [run 1] [10 0 33/50]"}},
		{"an L", []string{in(100), in(40), to("io", 60), to("oi", 30), in(40), in(70)}, nil},
		{"an L with a wall left out of the sum", []string{in(100), in(40), to("io", 60), to("oi", 30), in(40), in(50)}, []string{"Closed walls apart [run 1] [0 20 3 1/5]"}},
		{"three walls at any angle", []string{in(80), in(60), in(50)}, []string{"Closed turns off [] []"}},
		{"three that cannot meet", []string{in(120), in(60), in(50)}, []string{"Closed walls too short [run 1] [120 110]"}},
		{"five walls: a corner cut off", []string{in(100), in(60), in(56), in(60), in(100)}, []string{"Closed turns off [] []"}},
		{"an L with a wall left out", []string{in(100), in(40), to("io", 60), to("oi", 70)}, []string{"Closed turns off [] []"}},
	} {
		if got := surveyed(t, taped(t, true, row.runs...)); !slices.Equal(got, row.want) {
			t.Errorf("%s: %q, want %q", row.name, got, row.want)
		}
	}
	open := taped(t, true, to("ie", 120), to("ei", 60), in(50))
	if got := surveyed(t, open); len(got) > 0 {
		t.Errorf("part of the room is not taped: %q", got)
	}
}

// Sizes at which a doubt begins, and just before: leans, distances of stations, boxes that differ and strips beside openings
// of a wall of 60 by 20, with these priorities.
func TestDoubtsBeginBeyondTheirPriority(t *testing.T) {
	in := fraction.MustParse
	opening := func(name string, kind wall.OpeningKind, left, bottom, width, height string) wall.Opening {
		return wall.Opening{Name: name, Kind: kind, Outline: cutout.Rectangle(in(left), in(bottom), in(width), in(height))}
	}
	box := func(name, left, width, height string, gangs int) wall.Opening {
		o := opening(name, wall.Box, left, "5", width, height)
		o.Gangs = gangs
		return o
	}
	for _, row := range []struct {
		name   string
		change func(*wall.Room)
		want   []string
	}{
		{"leans of the most", func(r *wall.Room) { r.Runs[0].Left.Lean, r.Runs[0].Right.Lean = in("-1/2"), in("1/2") }, nil},
		{"leans of more", func(r *wall.Room) { r.Runs[0].Left.Lean, r.Runs[0].Right.Lean = in("-9/16"), in("5/8") },
			[]string{"Runs[0].Left.Lean out of plumb [] [9/16 1/2]", "Runs[0].Right.Lean out of plumb [] [5/8 1/2]"}},
		{"stations farther apart", func(r *wall.Room) { r.Priorities.StationDistance = in("59") }, []string{"Runs[0].Heights[1].At stations apart [] [60 59]"}},
		{"boxes that differ by the most", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 0), box("b", "30", "2 1/4", "3 3/4", 0)}
		}, nil},
		{"in width by more", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 0), box("b", "30", "2 3/8", "4", 0)}
		}, []string{"Runs[0].Openings[1] boxes differ [b a] [2 3/8 4 2 4 1/4]"}},
		{"in height by more, named once", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 0), box("b", "20", "2", "4", 0), box("c", "30", "2", "3 1/2", 0)}
		}, []string{"Runs[0].Openings[2] boxes differ [c a] [2 3 1/2 2 4 1/4]"}},
		{"one as wide as one and a half", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 0), box("b", "30", "3", "4", 0)}
		}, nil},
		{"of as many gangs", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 1), box("b", "30", "4", "4", 1)}
		}, []string{"Runs[0].Openings[1] boxes differ [b a] [4 4 2 4 1/4]"}},
		{"of other gangs", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 1), box("b", "30", "2 3/8", "4", 2)}
		}, nil},
		{"gangs of one alone", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{box("a", "10", "2", "4", 1), box("b", "30", "2 3/8", "4", 0)}
		}, []string{"Runs[0].Openings[1] boxes differ [b a] [2 3/8 4 2 4 1/4]"}},
		// The gaps are 1/2 at the sides, 1/4 at the top, 1/8 at the bottom and 1/16 round a window.
		{"strips of the least", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "1 9/16", "1 3/16", "56 7/8", "17 1/2")}
		}, nil},
		{"narrower ones", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "1 1/2", "1 1/8", "57", "17 5/8")}
		}, []string{"Runs[0].Openings[0] narrow strip left [w] [15/16 1]", "Runs[0].Openings[0] narrow strip right [w] [15/16 1]",
			"Runs[0].Openings[0] narrow strip above [w] [15/16 1]", "Runs[0].Openings[0] narrow strip below [w] [15/16 1]"}},
		{"none is left", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "9/16", "3/16", "30", "5")}
		}, nil},
		{"strips between", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{opening("a", wall.Window, "10", "5", "4", "4"), opening("b", wall.Window, "15", "5", "4", "4"),
				opening("c", wall.Window, "20 1/8", "5", "4", "4")}
		}, []string{"Runs[0].Openings[1] narrow strip between [b a] [7/8 1]"}},
		{"listed the other way round", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{opening("a", wall.Window, "15", "5", "4", "4"), opening("b", wall.Window, "10", "5", "4", "4")}
		}, []string{"Runs[0].Openings[1] narrow strip between [b a] [7/8 1]"}},
		{"beside, but one above the other", func(r *wall.Room) {
			r.Runs[0].Openings = []wall.Opening{opening("a", wall.Window, "10", "3", "4", "4"), opening("b", wall.Window, "14 1/2", "7", "4", "4")}
		}, nil},
		{"under the lower side of a step", func(r *wall.Room) {
			r.Runs[0].Heights = []wall.Height{{Top: in("20")}, {At: in("30"), Top: in("20")}, {At: in("30"), Top: in("30"), Bottom: in("2")}, {At: in("60"), Top: in("30"), Bottom: in("2")}}
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "25", "3", "10", "16")}
		}, []string{"Runs[0].Openings[0] narrow strip above [w] [11/16 1]", "Runs[0].Openings[0] narrow strip below [w] [13/16 1]"}},
		{"wedges over and under a part of it", func(r *wall.Room) { // 1/4 less at its left end than is taken, 3/4 more at its right end
			r.Runs[0].Heights = []wall.Height{{Top: in("20"), Bottom: in("2")}, {At: in("60"), Top: in("21"), Bottom: in("1")}}
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "0", "1 15/16", "60", "17 15/16")}
		}, []string{"Runs[0].Openings[0] narrow strip above [w] [13/16 1]", "Runs[0].Openings[0] narrow strip below [w] [3/4 1]"}},
		{"cut through by a slope", func(r *wall.Room) {
			r.Runs[0].Heights = []wall.Height{{Top: in("20")}, {At: in("60"), Top: in("50")}}
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "10", "10", "30", "20")}
		}, nil},
		{"under the higher one only", func(r *wall.Room) {
			r.Runs[0].Heights = []wall.Height{{Top: in("20")}, {At: in("30"), Top: in("20")}, {At: in("30"), Top: in("30")}, {At: in("60"), Top: in("30")}}
			r.Runs[0].Openings = []wall.Opening{opening("w", wall.Window, "30", "3", "10", "16")}
		}, nil},
	} {
		room := taped(t, false, "ee: 0 0 20, 60 0 20")
		room.Gaps = wall.Gaps{Side: in("1/2"), Top: in("1/4"), Bottom: in("1/8"), Window: in("1/16")}
		room.Priorities.OutOfPlumb, room.Priorities.StationDistance, room.Priorities.BoxDifference, room.Priorities.LeastStrip = in("1/2"), in("60"), in("1/4"), in("1")
		row.change(room)
		doubts, err := room.Survey()
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		var got []string
		for _, d := range doubts {
			got = append(got, fmt.Sprint(d.Path, " ", d.Kind, " ", d.Names, " ", d.Lengths))
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%s:\ngot  %q\nwant %q", row.name, got, row.want)
		}
	}
}
