package verify_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
	"example.com/groovewright/wall/verify"
)

// room fills in what rooms of the table below have in common.
func room(runs, more string) []byte {
	return []byte(`{"profile": {"features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8"}], "thickness": "1/4"},
		"stock": [{"name": "sheet", "width": "48", "length": "96"}], "runs": [` + runs + `]` + more + `}`)
}

// wall is a run 60 in wide and 24 in high, its left end exposed, with more in it.
func wallWith(more string) string {
	return `{"name": "A", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
		"heights": [{"at": "0", "top": "24"}, {"at": "60", "top": "24"}]` + more + `}`
}

// corridor is three runs, of which a door covers the middle one, with these ends and more in it.
func corridor(left, right, more string) string {
	run := func(name, left, right, more string) string {
		return `{"name": "` + name + `", "width": "38", "left": {"kind": ` + left + `}, "right": {"kind": ` + right + `}, "heights": [{"at": "0", "top": "24"}, {"at": "38", "top": "24"}]` + more + `}`
	}
	const door = `, "openings": [{"name": "door", "kind": "other", "left": "0", "bottom": "-1", "width": "38", "height": "26"}]`
	return run("A", right, left, "") + `, ` + run("B", left, right, door+more) + `, ` + run("C", right, left, "")
}

// atEnds is a run 95 in wide and 40 in high with ends of these kinds and these openings.
func atEnds(left, right, openings string) string {
	return fmt.Sprintf(`{"name": %q, "width": "95", "left": {"kind": %s}, "right": {"kind": %s},
		"heights": [{"at": "0", "top": "40"}, {"at": "95", "top": "40"}], "openings": [%s]}`, "from "+strings.Trim(left, `"`), left, right, openings)
}

// door is an opening from bottom to top.
func door(left, width string) string {
	return fmt.Sprintf(`{"name": "door at %s", "kind": "other", "left": %q, "bottom": "-1", "width": %q, "height": "80"}`, left, left, width)
}

const (
	aDoor   = `{"name": "door", "kind": "other", "left": "20", "bottom": "-1", "width": "20", "height": "40"}`
	aWindow = `{"name": "window", "kind": "window", "left": "20", "bottom": "10", "width": "12", "height": "20"}`
	aBox    = `{"name": "box", "kind": "box", "left": "20", "bottom": "5", "width": "3", "height": "5"}`
	steps   = `{"name": "A", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "heights":
		[{"at": "0", "top": "30"}, {"at": "30", "top": "30"}, {"at": "30", "top": "20"}, {"at": "60", "top": "20"}]`
	boards = `{"profile": {"features": [{"kind": "flat", "width": "3 3/4"}, {"kind": "groove", "width": "1/4"}], "thickness": "3/8", "boards": true},
		"stock": [{"name": "board", "width": "4", "length": "96"}], "runs": [`
)

// TestFaultsOnceFound keeps the faults of plans that were found from outside, each in a small room.
func TestFaultsOnceFound(t *testing.T) {
	for _, test := range []struct {
		name, fault string
		job         []byte
		exit        int
		message     string
	}{
		{"gaps higher than the wall", "a piece of -1 in was planned",
			room(`{"name": "A", "width": "40", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "2"}, {"at": "40", "top": "2"}]}`,
				`, "gaps": {"top": "2", "bottom": "1"}`), 2, "runs[0].heights"},
		{"gaps wider than the wall", "a piece of -2 in was planned",
			room(`{"name": "A", "width": "2", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "20"}, {"at": "2", "top": "20"}]}`,
				`, "gaps": {"side": "2"}`), 2, "runs[0].heights"},
		{"break at a door's side", "a seam was charged that is not there", room(wallWith(`, "openings": [`+aDoor+`], "breaks": [{"at": "40", "prominence": 0.1}]`), ""), 0, ""},
		{"a door in the side gap", "the work began at an end of which the door's side claims the edge", room(`{"name": "A", "width": "60", "left": {"kind": "exposed", "prominence": 1},
			"right": {"kind": "exposed", "prominence": 0.5}, "heights": [{"at": "0", "top": "24"}, {"at": "60", "top": "24"}], "openings": [`+door("0", "1/16")+`]}`,
			`, "gaps": {"side": "1/16", "window": "0"}`), 0, ""},
		{"break close to a box", "the seam at the break was 1/4 in from the box",
			room(wallWith(`, "openings": [{"name": "b", "kind": "box", "left": "40 1/4", "bottom": "5", "width": "2", "height": "4"}], "breaks": [{"at": "40", "prominence": 0.1}]`), ""), 0, ""},
		{"box and window share a line", "one weight for the whole edge", room(wallWith(`, "openings": [`+aWindow+`, `+aBox+`]`), `, "priorities": {"box_side": 1}`), 0, ""},
		{"window and box share a line", "the order of the openings mattered", room(wallWith(`, "openings": [`+aBox+`, `+aWindow+`]`), `, "priorities": {"box_side": 1}`), 0, ""},
		{"box beside a step", "the step's side was hidden",
			room(steps+`, "openings": [{"name": "box", "kind": "box", "left": "30", "bottom": "18", "width": "3", "height": "5"}]}`, ""), 0, ""},
		{"box and window beside a step", "one weight for the whole edge",
			room(steps+`, "openings": [{"name": "box", "kind": "box", "left": "30", "bottom": "18", "width": "3", "height": "5"},
				{"name": "window", "kind": "window", "left": "30", "bottom": "10", "width": "13", "height": "8"}]}`, `, "priorities": {"box_side": 1}`), 0, ""},
		{"heights between the marks", "the step's side was counted other than its piece is cut",
			room(`{"name": "A", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "heights":
				[{"at": "0", "top": "20 1/16"}, {"at": "30", "top": "20 3/16"}, {"at": "30", "top": "30 3/16"}, {"at": "60", "top": "30 5/16"}]}`,
				`, "tape": "1/8", "gaps": {"side": "1/16"}`), 0, ""},
		{"boards under an arch", "a board without a piece, and an edge off the marks",
			[]byte(boards + wallWith(`, "openings": [{"name": "n", "kind": "window", "left": "10", "bottom": "8", "width": "13", "height": "10", "rise": "4"}]`) + `]}`), 0, ""},
		{"boards over an arch from the floor", "a board without a piece, and an edge off the marks",
			[]byte(boards + wallWith(`, "openings": [{"name": "n", "kind": "window", "left": "10", "bottom": "-1", "width": "13", "height": "20", "rise": "4"}]`) + `]}`), 0, ""},
		{"foot of a leaning end between the marks", "the corner was called off the marks",
			room(`{"name": "A", "width": "19 7/8", "left": {"kind": "covered"}, "right": {"kind": "exposed", "lean": "3/8"}, "heights": [{"at": "0", "top": "12 7/8"}, {"at": "19 7/8", "top": "13 3/16"}]}`,
				`, "tape": "1/8", "gaps": {"side": "1/16"}`), 0, ""},
		{"box under a window", "the hole of both was called unknown",
			room(`{"name": "A", "width": "40", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "heights": [{"at": "0", "top": "24"}, {"at": "40", "top": "24"}], "openings": [
				{"name": "window", "kind": "window", "left": "10", "bottom": "10", "width": "12", "height": "8"},
				{"name": "box", "kind": "box", "left": "12", "bottom": "6", "width": "3", "height": "4"}]}`, ""), 0, ""},
		{"level part beside a step, between the marks", "a top that the tape gave was cut lower",
			room(`{"name": "A", "width": "60", "left": {"kind": "exposed"}, "right": {"kind": "covered"}, "trim": {"top": {"name": "cap", "covers": "7/8"}}, "heights":
				[{"at": "0", "top": "30"}, {"at": "30", "top": "30"}, {"at": "30", "top": "20 7/16"}, {"at": "60", "top": "20 7/16"}]}`, `, "tape": "1/8", "gaps": {"side": "1/4"}`), 0, ""},
		{"board that a mirror image would serve", "more was to be left to scribe than a board has that is not turned",
			[]byte(boards + `{"name": "A", "width": "32 1/16", "left": {"kind": "inside corner"}, "right": {"kind": "outside corner"}, "heights": [{"at": "0", "top": "34"}, {"at": "32 1/16", "top": "34"}],
				"openings": [{"name": "door", "kind": "other", "left": "3 15/16", "bottom": "-1", "width": "20 3/16", "height": "38"}]}], "gaps": {"side": "1/4"}}`), 0, ""},
		{"tab under a step that a window covers", "a weak strip was charged where nothing ends",
			room(`{"name": "A", "width": "137 3/4", "left": {"kind": "outside corner"}, "right": {"kind": "outside corner"}, "heights":
				[{"at": "0", "top": "36"}, {"at": "45 7/8", "top": "36"}, {"at": "45 7/8", "top": "12"}, {"at": "137 3/4", "top": "12"}],
				"openings": [{"name": "window", "kind": "window", "left": "44 3/8", "bottom": "2", "width": "6 7/16", "height": "38"}]}`, ""), 0, ""},
		{"lean that rounding takes away", "a bead cut upright was charged its whole width",
			[]byte(`{"gaps": {"bottom": "1/8"}, "profile": {"features": [{"kind": "flat", "width": "1 3/4"}, {"kind": "bead", "width": "1/4"}], "thickness": "5/16"}, "snap": "0", "stock": [{"name": "sheet", "width": "48", "length": "96"}], "runs": [
				{"name": "A", "width": "22 5/16", "left": {"kind": "exposed", "lean": "1/8"}, "right": {"kind": "exposed", "lean": "-1/16"}, "heights": [{"at": "0", "top": "12 1/4"}, {"at": "22 5/16", "top": "11 1/4"}]}]}`), 0, ""},
		{"box at a sloped top", "the mark beside where they meet was called open",
			room(`{"name": "A", "width": "55 11/16", "left": {"kind": "inside corner"}, "right": {"kind": "inside corner"}, "heights":
				[{"at": "0", "top": "19 15/16"}, {"at": "27 13/16", "top": "20 7/8"}, {"at": "27 13/16", "top": "60"}, {"at": "55 11/16", "top": "60"}],
				"openings": [{"name": "box", "kind": "box", "left": "24 13/16", "bottom": "20 3/4", "width": "3", "height": "4"}]}`, `, "gaps": {"top": "1/8", "side": "1/16", "box": "1/16"}`), 0, ""},
		{"sliver over a window beside a door", "the edge that it does not reach was to be scribed",
			[]byte(`{"profile": {"features": [{"kind": "bead", "width": "5/16"}], "thickness": "1/2"}, "stock": [{"name": "sheet", "width": "48", "length": "96"}], "tape": "1/32", "runs": [
				{"name": "A", "width": "147 3/8", "left": {"kind": "inside corner"}, "right": {"kind": "exposed"}, "heights": [{"at": "0", "top": "28 15/16"}, {"at": "147 3/8", "top": "28 3/4"}], "openings": [
					{"name": "door", "kind": "other", "left": "61 1/8", "bottom": "-1", "width": "20 1/16", "height": "33"},
					{"name": "window", "kind": "window", "left": "82 3/8", "bottom": "22 1/8", "outline": [["21 3/16", "0"], ["3 1/2", "25 11/16"], ["3 1/2", "6 3/8"], ["0", "6 3/8"]]}]}]}`), 0, ""},
		{"run that a door covers", "the room was refused", room(corridor(`"inside corner"`, `"inside corner"`, ""), ""), 0, ""},
		{"closed room with a run that a door covers", "the room was refused", room(corridor(`"inside corner"`, `"inside corner"`, "")+`, `+
			`{"name": "D", "width": "38", "left": {"kind": "inside corner"}, "right": {"kind": "inside corner"}, "heights": [{"at": "0", "top": "24"}, {"at": "38", "top": "24"}]}`,
			`, "closed": true, "gaps": {"side": "1/16", "seam": "1/8"}`), 0, ""},
		{"run that a door covers, between outside corners", "the room was refused", room(corridor(`"outside corner"`, `"outside corner"`, ""), `, "gaps": {"window": "1/4"}`), 0, ""},
		{"run that a door covers, with leaning ends and a break", "the room was refused",
			room(corridor(`"inside corner", "lean": "1/4"`, `"inside corner", "lean": "-1/4"`, `, "breaks": [{"at": "20", "prominence": 1}]`), ""), 0, ""},
		{"door over a run's own end", "it was set out from that end's kind, and no piece closed at the door", room(atEnds(`"exposed"`, `"covered"`, door("0", "32")), `, "gaps": {"side": "1/16", "seam": "1/8"}`), 0, ""},
		{"door over the other end", "the end that nobody sees was the one to scribe", room(atEnds(`"exposed"`, `"exposed"`, door("63", "32")), `, "gaps": {"side": "1/16"}`), 0, ""},
		{"doors over both ends", "the run was set out from them", room(atEnds(`"exposed"`, `"covered"`, door("0", "20")+", "+door("70", "25")), ""), 0, ""},
		{"door over an outside corner", "a strip as wide as the panel is thick was planned beside the door",
			room(atEnds(`"exposed"`, `"outside corner"`, door("63", "32"))+`, `+atEnds(`"outside corner"`, `"covered"`, ""), ""), 0, ""},
		{"door in an inside corner", "the neighbor butted against nothing",
			room(atEnds(`"exposed"`, `"inside corner"`, door("63", "32"))+`, `+atEnds(`"inside corner"`, `"covered"`, ""), `, "gaps": {"side": "1/16"}`), 0, ""},
		{"door's side in line with an end", "the end and the door's side were both counted",
			room(atEnds(`"exposed"`, `"covered"`, door("0", "1/16")), `, "gaps": {"side": "1/16"}`), 0, ""},
		{"window over a part of an end", "the end and the window's side were both counted", room(atEnds(`"covered"`, `"covered"`,
			`{"name": "window", "kind": "window", "left": "0", "bottom": "10", "width": "1/16", "height": "20"}`), `, "gaps": {"side": "1/16"}`), 0, ""},
		{"door over a whole room", "exit 1 without a path", room(wallWith(`, "openings": [{"name": "door", "kind": "other", "left": "0", "bottom": "0", "width": "60", "height": "24"}]`), ""),
			2, "runs[0].openings"},
		{"window over a part of an end that leans", "planner and checker rounded the sliver between them in two ways",
			room(atEnds(`"exposed", "lean": "5/16"`, `"covered"`, `{"name": "window", "kind": "window", "left": "0", "bottom": "10", "width": "3/16", "height": "20"}`), ""), 2, "runs[0].openings[0]"},
		{"door over an end that leans", "its side close to the end was an end too",
			room(atEnds(`"exposed", "lean": "1/8"`, `"covered"`, door("0", "5/16")), ""), 0, ""},
		{"arch at a steep slope", "a corner less than a mark off the top, across and up, was called open", room(`{"name": "A", "width": "43 5/8", "left": {"kind": "exposed"}, "right": {"kind": "covered"},
			"heights": [{"at": "0", "top": "10 1/2"}, {"at": "43 5/8", "top": "17 9/16"}],
			"openings": [{"name": "n", "kind": "window", "left": "10 11/16", "bottom": "4", "width": "9 5/8", "height": "7 5/8", "rise": "2 1/16"}]}`, `, "snap": "0"`), 0, ""},
		{"arc beyond its outline", "the arc was drawn outside of it",
			room(wallWith(`, "openings": [{"name": "n", "kind": "other", "left": "20", "bottom": "8", "width": "10", "height": "2", "rise": "8"}]`), ""), 2, "runs[0].openings[0].rise"},
	} {
		t.Run(test.name, func(t *testing.T) {
			data, message, exit := planned(t, test.job, plan.Sheets, small)
			if exit != test.exit || !strings.Contains(message, test.message) {
				t.Fatalf("%s: exit %d, %q; want %d and a message with %q", test.fault, exit, message, test.exit, test.message)
			}
			for _, f := range verify.Plan(test.job, data) {
				if exit == 0 {
					t.Errorf("%s: %v", test.fault, f)
				}
			}
		})
	}
}

// The blemish of a room does not depend on the order in which its openings are listed.
func TestOrderOfOpeningsIsNothing(t *testing.T) {
	total := func(openings string) string {
		data, message, exit := planned(t, room(wallWith(`, "openings": [`+openings+`]`), `, "priorities": {"box_side": 1}`), plan.Looks, small)
		var p struct {
			Total string `json:"blemish_total"`
		}
		if err := json.Unmarshal(data, &p); err != nil || exit != 0 {
			t.Fatal(message, err)
		}
		return p.Total
	}
	if a, b := total(aWindow+", "+aBox), total(aBox+", "+aWindow); a != b {
		t.Errorf("blemish %s with the window first, %s with the box first", a, b)
	}
}

// Rooms of long runs whose plans had a fault, as they were drawn; the names say of what.
func TestRoomsOnceFound(t *testing.T) {
	t.Parallel()
	names, err := filepath.Glob("testdata/found/*.json")
	if err != nil || len(names) == 0 {
		t.Fatal("no rooms: ", err)
	}
	for _, name := range names {
		job, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		data, message, exit := planned(t, job, plan.Sheets, small)
		if exit != 0 {
			t.Errorf("%s: exit %d: %s", name, exit, message)
			continue
		}
		onlyClosingWaits(t, data)
		for _, f := range verify.Plan(job, data) {
			t.Errorf("%s: %v", name, f)
		}
	}
}
