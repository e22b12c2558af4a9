package verify_test

import (
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
)

// badJob is an input that must be refused.
type badJob struct {
	name string
	json string
	exit int    // 2: the input is wrong; 1: it cannot be done as given
	path string // stands in the message; empty where the input has no fields
}

// soundJob is a job without a fault, from which most bad ones are made.
const soundJob = `{
 "title": "Nook (invented)", "units": "in", "tape": "1/16", "closed": false,
 "profile": {"name": "bead and flat", "features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8", "depth": "1/16"}], "thickness": "1/4"},
 "stock": [{"name": "sheet", "width": "48", "length": "96", "left_phase": "0", "price": "31.50"}, {"name": "rest", "width": "20", "length": "40", "count": 2}],
 "saw": {"kerf": "1/8", "square_up": "1/4"},
 "gaps": {"top": "1/16", "bottom": "1/4", "side": "1/8", "seam": "1/16", "box": "1/8", "window": "1/4"},
 "runs": [
  {"name": "north", "width": "96", "left": {"kind": "exposed", "lean": "1/8", "prominence": 6}, "right": {"kind": "inside corner"},
   "heights": [{"at": "0", "bottom": "0", "top": "18"}, {"at": "40", "top": "18 1/8"}, {"at": "40", "top": "24"}, {"at": "96", "top": "24"}],
   "openings": [{"name": "socket", "kind": "box", "left": "10", "bottom": "6", "width": "2", "height": "3"},
                {"name": "window", "kind": "window", "left": "60", "bottom": "15", "width": "20", "height": "30"}],
   "focal": [{"from": "20", "to": "30", "prominence": 2}, {"from": "30", "to": "36", "prominence": 3}],
   "breaks": [{"at": "50", "prominence": 1}]},
  {"name": "east", "width": "60", "left": {"kind": "inside corner"}, "right": {"kind": "covered"},
   "heights": [{"at": "0", "top": "24"}, {"at": "60", "top": "24"}]}],
 "installed": [{"run": "east", "left": "36", "right": "59 7/8", "left_phase": "1/2"}],
 "priorities": {"exposed_end": 9},
 "finish": {}
}`

// swap is a bad job that differs from soundJob in one place.
type swap struct {
	name, path string
	exit       int
	from, to   string
}

var swaps = []swap{
	// Fields and words.
	{"unknown field at the top", "colour", 2, `"units": "in",`, `"units": "in", "colour": "white",`},
	{"unknown field of a run", "runs[1].height", 2, `{"name": "east",`, `{"name": "east", "height": "24",`},
	{"unknown field of an opening", "runs[0].openings[0].depth", 2, `"bottom": "6",`, `"bottom": "6", "depth": "2",`},
	{"field given twice", "runs[1].width", 2, `"width": "60"`, `"width": "60", "width": "61"`},
	{"unknown units", "units", 2, `"units": "in"`, `"units": "furlong"`},
	{"unknown kind of end", "runs[1].right.kind", 2, `"kind": "covered"`, `"kind": "hidden"`},
	{"unknown kind of opening", "runs[0].openings[0].kind", 2, `"kind": "box"`, `"kind": "hatch"`},
	{"unknown kind of feature", "profile.features[0].kind", 2, `"kind": "flat"`, `"kind": "ogee"`},
	{"unknown profile", "profile", 2, `{"name": "bead and flat", "features": [{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8", "depth": "1/16"}], "thickness": "1/4"}`, `"no such pattern"`},
	{"unknown priority", "priorities.sparkle", 2, `"exposed_end": 9`, `"sparkle": 9`},
	{"unknown run of an installed panel", "installed[0].run", 2, `"run": "east"`, `"run": "west"`},
	{"null for a run", "runs[1]", 2, `{"name": "east", "width": "60", "left": {"kind": "inside corner"}, "right": {"kind": "covered"},
   "heights": [{"at": "0", "top": "24"}, {"at": "60", "top": "24"}]}`, `null`},
	{"text for a bool", "closed", 2, `"closed": false`, `"closed": "no"`},
	{"list for an object", "saw", 2, `{"kerf": "1/8", "square_up": "1/4"}`, `["1/8"]`},

	// Numbers.
	{"number for a length", "runs[1].width", 2, `"width": "60"`, `"width": 60`},
	{"number for a height", "runs[0].heights[3].top", 2, `{"at": "96", "top": "24"}`, `{"at": "96", "top": 24}`},
	{"text for a weight", "priorities.exposed_end", 2, `"exposed_end": 9`, `"exposed_end": "much"`},
	{"zero denominator", "runs[0].heights[1].top", 2, `"18 1/8"`, `"18 1/0"`},
	{"no number", "runs[0].heights[1].top", 2, `"18 1/8"`, `"NaN"`},
	{"infinite", "runs[0].width", 2, `"width": "96", "left"`, `"width": "Inf", "left"`},
	{"exponent", "runs[0].width", 2, `"width": "96", "left"`, `"width": "9.6e1", "left"`},
	{"hexadecimal", "runs[0].width", 2, `"width": "96", "left"`, `"width": "0x60", "left"`},
	{"empty length", "runs[1].width", 2, `"width": "60"`, `"width": ""`},
	{"two signs", "runs[0].left.lean", 2, `"lean": "1/8"`, `"lean": "--1/8"`},
	{"unknown unit of length", "runs[1].width", 2, `"width": "60"`, `"width": "60 ells"`},
	{"far too long", "runs[1].width", 2, `"width": "60"`, `"width": "99999999999999999999999999"`},
	{"far too fine", "runs[0].left.lean", 2, `"lean": "1/8"`, `"lean": "1/99999999999999999999999999"`},
	{"price malformed", "stock[0].price", 2, `"31.50"`, `"31,50 or so"`},
	{"price negative", "stock[0].price", 2, `"31.50"`, `"-31.50"`},
	{"count negative", "stock[1].count", 2, `"count": 2`, `"count": -2`},
	{"count not whole", "stock[1].count", 2, `"count": 2`, `"count": 1.5`},
	{"priority negative", "priorities.exposed_end", 2, `"exposed_end": 9`, `"exposed_end": -9`},
	{"prominence negative", "runs[0].left.prominence", 2, `"prominence": 6`, `"prominence": -6`},

	// Sizes.
	{"run without width", "runs[1].width", 2, `"name": "east", "width": "60"`, `"name": "east", "width": "0"`},
	{"run of negative width", "runs[1].width", 2, `"name": "east", "width": "60"`, `"name": "east", "width": "-60"`},
	{"tape of nothing", "tape", 2, `"tape": "1/16"`, `"tape": "0"`},
	{"kerf negative", "saw.kerf", 2, `"kerf": "1/8"`, `"kerf": "-1/8"`},
	{"square up negative", "saw.square_up", 2, `"square_up": "1/4"`, `"square_up": "-1/4"`},
	{"gap negative", "gaps.seam", 2, `"seam": "1/16"`, `"seam": "-1/16"`},
	{"sheet without width", "stock[0].width", 2, `"width": "48"`, `"width": "0"`},
	{"sheet without length", "stock[0].length", 2, `"length": "96"`, `"length": "0"`},
	{"no stock", "stock", 2, `[{"name": "sheet", "width": "48", "length": "96", "left_phase": "0", "price": "31.50"}, {"name": "rest", "width": "20", "length": "40", "count": 2}]`, `[]`},
	{"stock given twice", "stock[1].name", 2, `"name": "rest"`, `"name": "sheet"`},
	{"no pitch", "profile.features[0].width", 2, `[{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8", "depth": "1/16"}]`, `[{"kind": "flat", "width": "0"}]`},
	{"no features", "profile.features", 2, `[{"kind": "flat", "width": "1 1/8"}, {"kind": "bead", "width": "3/8", "depth": "1/16"}]`, `[], "boards": true`},
	{"feature of negative width", "profile.features[1].width", 2, `"width": "3/8"`, `"width": "-3/8"`},
	{"thickness negative", "profile.thickness", 2, `"thickness": "1/4"`, `"thickness": "-1/4"`},

	// Heights.
	{"heights not from 0", "runs[0].heights[0].at", 2, `{"at": "0", "bottom": "0", "top": "18"}`, `{"at": "1", "bottom": "0", "top": "18"}`},
	{"heights not to the width", "runs[0].heights[3].at", 2, `{"at": "96", "top": "24"}`, `{"at": "95", "top": "24"}`},
	{"heights out of order", "runs[0].heights[2].at", 2, `{"at": "40", "top": "24"}`, `{"at": "39", "top": "24"}`},
	{"three heights at one place", "runs[0].heights", 2, `{"at": "40", "top": "24"},`, `{"at": "40", "top": "24"}, {"at": "40", "top": "25"},`},
	{"top below bottom", "runs[0].heights[0]", 2, `"bottom": "0", "top": "18"`, `"bottom": "19", "top": "18"`},
	{"one height only", "runs[1].heights", 2, `[{"at": "0", "top": "24"}, {"at": "60", "top": "24"}]`, `[{"at": "0", "top": "24"}]`},
	{"gaps higher than the wall", "runs[0].heights[0].top", 2, `"gaps": {"top": "1/16"`, `"gaps": {"top": "18"`},
	{"top missing", "runs[1].heights[1].top", 2, `{"at": "60", "top": "24"}`, `{"at": "60"}`},

	// Things on the wall.
	{"opening outside the run", "runs[0].openings[1]", 2, `"left": "60"`, `"left": "90"`},
	{"opening left of the run", "runs[0].openings[0]", 2, `"left": "10"`, `"left": "-10"`},
	{"opening without width", "runs[0].openings[0].width", 2, `"width": "2", "height": "3"`, `"width": "0", "height": "3"`},
	{"openings overlap", "runs[0].openings[1]", 2, `"left": "60", "bottom": "15"`, `"left": "11", "bottom": "7"`},
	{"opening given twice", "runs[0].openings[1].name", 2, `{"name": "window"`, `{"name": "socket"`},
	{"outline of two points", "runs[0].openings[0].outline", 2, `"width": "2", "height": "3"`, `"outline": [["0", "0"], ["2", "0"]]`},
	{"outline that crosses itself", "runs[0].openings[0].outline", 2, `"width": "2", "height": "3"`, `"outline": [["0", "0"], ["2", "3"], ["2", "0"], ["0", "3"]]`},
	{"focal zones overlap", "runs[0].focal[1]", 2, `{"from": "30", "to": "36"`, `{"from": "29", "to": "36"`},
	{"focal zone backwards", "runs[0].focal[0]", 2, `"from": "20", "to": "30"`, `"from": "30", "to": "20"`},
	{"focal zone outside", "runs[0].focal[1]", 2, `"to": "36"`, `"to": "97"`},
	{"break outside", "runs[0].breaks[0].at", 2, `{"at": "50"`, `{"at": "97"`},
	{"installed panel outside", "installed[0]", 2, `"right": "59 7/8"`, `"right": "70"`},
	{"installed panel backwards", "installed[0]", 2, `"left": "36", "right"`, `"left": "60", "right"`},
	{"installed panels overlap", "installed[1]", 2, `"left_phase": "1/2"}]`, `"left_phase": "1/2"}, {"run": "east", "left": "30", "right": "40", "left_phase": "0"}]`},

	// The room.
	{"no runs", "runs", 2, "", ""},
	{"run given twice", "runs[1].name", 2, `"name": "east"`, `"name": "north"`},
	{"corner of two kinds", "runs[1].left", 2, `{"name": "east", "width": "60", "left": {"kind": "inside corner"}`, `{"name": "east", "width": "60", "left": {"kind": "outside corner"}`},
	{"closed with open ends", "runs", 2, `"closed": false`, `"closed": true`},

	// Sound, but not to be done.
	{"too few sheets", "", 1, `"price": "31.50"`, `"count": 1`},
	{"panel taller than the stock", "", 1, `"width": "48", "length": "96"`, `"width": "48", "length": "20"`},
	{"nothing fits", "", 1, `"width": "48", "length": "96"`, `"width": "1/2", "length": "96"`},
}

// badJobs returns the table of bad jobs.
func badJobs() []badJob {
	out := []badJob{
		{"empty file", "", 2, ""},
		{"blank file", " \n\t", 2, ""},
		{"not JSON", "runs: north", 2, ""},
		{"cut short", soundJob[:len(soundJob)/2], 2, ""},
		{"trailing garbage", soundJob + "]", 2, ""},
		{"two jobs", soundJob + soundJob, 2, ""},
		{"a list", "[" + soundJob + "]", 2, ""},
		{"a bare text", `"job"`, 2, ""},
		{"null", "null", 2, ""},
		{"empty object", "{}", 2, "runs"},
		{"deep nesting", strings.Repeat(`{"runs":[`, 20000), 2, ""},
		{"deep nesting, closed", strings.Repeat("[", 20000) + strings.Repeat("]", 20000), 2, ""},
		{"not Unicode", `{"title": "` + "\xff\xfe" + `", "runs": 7}`, 2, ""},
		{"bare NaN", strings.Replace(soundJob, `"exposed_end": 9`, `"exposed_end": NaN`, 1), 2, ""},
	}
	for _, s := range swaps {
		json := strings.Replace(soundJob, s.from, s.to, 1)
		switch s.name {
		case "no runs":
			from, to := strings.Index(soundJob, `"runs": [`), strings.Index(soundJob, ` "installed"`)
			json = soundJob[:from] + `"runs": [],` + "\n" + soundJob[to:]
		case "too few sheets":
			// One sheet and the rest are less than the walls' area.
			json = strings.Replace(json, `"length": "96"`, `"length": "40"`, 1)
		case "nothing fits":
			json = strings.Replace(json, `"width": "20", "length": "40", "count": 2`, `"width": "1/2", "length": "40", "count": 2`, 1)
		case "panel taller than the stock":
			json = strings.Replace(json, `"width": "20", "length": "40", "count": 2`, `"width": "20", "length": "20", "count": 2`, 1)
		}
		out = append(out, badJob{s.name, json, s.exit, s.path})
	}
	return out
}

// Every bad job is refused, as wrong or as not to be done, with the path of the field.
func TestBadJobs(t *testing.T) {
	seen := map[string]string{soundJob: "the sound job"}
	for _, row := range badJobs() {
		if other, twice := seen[row.json]; twice {
			t.Errorf("%s is the same as %s", row.name, other)
		}
		seen[row.json] = row.name
		t.Run(row.name, func(t *testing.T) {
			_, message, exit := planned(t, []byte(row.json), plan.Sheets, small)
			if exit != row.exit || !strings.Contains(message, row.path) || strings.Contains(message, "internal error") {
				t.Errorf("exit %d, %q; want exit %d and a message with %q", exit, message, row.exit, row.path)
			}
		})
	}
	if len(seen) < 46 {
		t.Errorf("%d kinds of bad job, want 45 or more", len(seen)-1)
	}
}
