package wall

import (
	"errors"
	"math"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/nest"
)

// Lines that go on past the end of the wall end where they meet, if that is beyond the end.
func TestLinesMeetBeyondTheEnd(t *testing.T) {
	for _, row := range []struct{ bottom, nextBottom, top, nextTop, want string }{
		{"-20,20", "0,0", "-20,0", "0,10", "-20/3,20/3"}, // 1 down and 1/2 up on an inch
		{"20,20", "0,0", "20,0", "0,10", "20/3,20/3"},
		{"-20,4", "0,0", "-20,10", "0,10", ""},  // apart
		{"-20,20", "0,10", "-20,10", "0,0", ""}, // alike
		{"-20,10", "0,20", "-20,5", "0,30", "-40/3,40/3"},
		{"-20,40", "0,10", "-20,0", "0,10", ""}, // at the end itself
		{"-20,40", "0,12", "-20,0", "0,10", ""}, // within
	} {
		bottom, top := ring(row.bottom)[0], ring(row.top)[0]
		want := [2]cutout.Point{bottom, top}
		if row.want != "" {
			want = [2]cutout.Point{ring(row.want)[0], ring(row.want)[0]}
		}
		if meetBeyond(&bottom, &top, ring(row.nextBottom)[0], ring(row.nextTop)[0]); bottom != want[0] || top != want[1] {
			t.Errorf("%+v: %v and %v", row, bottom, top)
		}
	}
}

// Panels a seam's gap apart are neighbors, on the first run as on any, but not across an opening that parts the run there.
func TestNeighborsAcrossAnOpening(t *testing.T) {
	slit := rectangle("slit", Other, "10,0,1/8,20")
	room := &Room{Gaps: Gaps{Seam: inches("1/8")}}
	for i := range 2 {
		room.Runs = append(room.Runs, Run{Width: inches("40"), Heights: heights("0,0,20; 40,0,20")})
		if i == 0 {
			room.Runs[0].Openings = []Opening{slit}
		}
	}
	panels := []Panel{{Left: inches("0"), Right: inches("10")}, {Left: inches("10 1/8"), Right: inches("20")}, {Left: inches("20 1/8"), Right: inches("30")}, {Left: inches("31"), Right: inches("40")}}
	for run, want := range map[int]int{-1: 2, 0: 1, 1: 2, 2: 2} {
		got := 0
		for range room.Neighbors(run, panels) {
			got++
		}
		if got != want {
			t.Errorf("run %d: %d pairs, want %d", run, got, want)
		}
	}
}

// A path is as deep as it has paths before it, by which ties are told in order.
func TestPathsAreAsDeepAsTheyAreLong(t *testing.T) {
	room := keptRoom(Keep{})
	m, err := NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	s, err := m.newSearch(t.Context(), nil)
	if err != nil {
		t.Fatal(err)
	}
	most := 0
	for range 5 {
		if _, more, err := s.next(); err != nil || !more {
			t.Fatal(more, err)
		}
		for _, p := range s.frontier {
			n := 0
			for q := p; q.parent != nil; q = q.parent {
				n++
			}
			if most = max(most, n); p.depth != n {
				t.Fatalf("depth %d after %d paths", p.depth, n)
			}
		}
	}
	if most < 3 {
		t.Errorf("no path is longer than %d", most)
	}
}

// What strips are worth is refused where it is more than can be counted in sheets.
func TestOffcutsWorthTooMuch(t *testing.T) {
	room := keptRoom(Keep{})
	m, err := NewModel(t.Context(), room)
	if err != nil {
		t.Fatal(err)
	}
	l := firstOf(t, room)
	seams, err := m.Seams(t.Context(), &l)
	if err != nil {
		t.Fatal(err)
	}
	_, _, err = seams.FromOffcuts(t.Context(), Offcuts{Stock: room.Stock[0], Sheet: 1, Weight: fraction.NewRatio(1<<10, 1), Of: func(fraction.Length) int64 { return math.MaxInt64 }})
	var overflow *fraction.OverflowError
	if !errors.As(err, &overflow) {
		t.Errorf("no overflow: %v", err)
	}
}

// A run may be as long as there are marks and repeats for, and no longer.
func TestLongestRun(t *testing.T) {
	for _, row := range []struct {
		mark, width int64
		good        bool
	}{
		{1, mostMarks, true}, {1, mostMarks + 1, false},
		{1 << 10, 3 * mostRepeats, true}, {1 << 10, 3*mostRepeats + 3, false},
	} {
		profile := profiles[0] // repeats each 3 in
		width := fraction.Inches(row.width)
		if row.mark == 1 {
			profile.Features = nil
		}
		room := Room{Profile: profile, Mark: fraction.Inches(row.mark), Stock: []nest.Stock{{Width: inches("48"), Length: inches("96")}},
			Runs: []Run{{Width: width, Heights: []Height{{Top: inches("20")}, {At: width, Top: inches("20")}}}}}
		var f faults
		room.checkRun(&f, 0)
		if found := fault.All(f.Err()); (len(found) == 0) != row.good {
			t.Errorf("%+v: %v", row, found)
		}
	}
}

// An opening may reach past an end that leans, which leaves nothing between the two; within the wall it keeps clear of it.
func TestOpeningsWhereEndsLean(t *testing.T) {
	for opening, good := range map[string]bool{"-3,2,8,10": true, "38,2,8,10": true, "-3,2,50,10": true, "1/2,2,8,10": false, "32,2,15/2,10": false, "10,2,20,10": true} {
		room := Room{Profile: profiles[0], Mark: inches("1/16"), Runs: []Run{{Width: inches("40"), Heights: heights("0,0,20; 40,0,20"),
			Left: End{Kind: Exposed, Lean: inches("1")}, Right: End{Kind: Exposed, Lean: inches("-1")}, Openings: []Opening{rectangle("o", Other, opening)}}}}
		var f faults
		if room.checkLeans(&f, 0); (f.Err() == nil) != good {
			t.Errorf("an opening of %s: %v", opening, f.Err())
		}
	}
}
