package verify

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
)

// A mutation spoils one right plan in one place.
type mutation struct {
	name     string
	plan     string // fixture
	from, to string // the first place where from stands in the plan
	want     string // kind of fault that must be found
}

var mutations = []mutation{
	// How numbers are written.
	{"format 2", "shelf", `"format": 1`, `"format": 2`, "form"},
	{"not lowest terms", "shelf", `"3/4", "pieces"`, `"6/8", "pieces"`, "form"},
	{"improper fraction", "shelf", `"39 3/4", "height"`, `"159/4", "height"`, "form"},
	{"decimal", "shelf", `"limits": ["1/8"`, `"limits": ["0.125"`, "form"},
	{"JSON number", "shelf", `"origin": "1/8"`, `"origin": 0.125`, "form"},
	{"minus zero", "shelf", `"blemish_total": "0"`, `"blemish_total": "-0"`, "form"},
	{"inch sign", "shelf", `"x": "40 1/8"`, `"x": "40 1/8\""`, "form"},
	{"not a plan", "shelf", `"panels": [`, `"panels": 7, "other": [`, "form"},

	// The job again.
	{"title", "shelf", `"title": "Shelf`, `"title": "Shelves`, "job"},
	{"kerf", "shelf", `"kerf": "1/8"`, `"kerf": "1/16"`, "job"},
	{"box gap", "shelf", `"box": "1/8"`, `"box": "1/4"`, "job"},
	{"tape", "shelf", `"tape": "1/16"`, `"tape": "1/32"`, "job"},
	{"run name", "shelf", `"name": "back"`, `"name": "front"`, "job"},
	{"run lost", "corner", `{"name": "east", "limits"`, `{"name": "north"}, {"name": "east", "limits"`, "job"},
	{"pitch", "shelf", `"pitch": "1 1/2"`, `"pitch": "1 5/8"`, "profile"},
	{"feature", "shelf", `"width": "1 1/8"}`, `"width": "1 1/4"}`, "profile"},
	{"name of the profile", "shelf", `"profile": {"name": "`, `"profile": {"name": "other `, "profile"},
	{"thickness", "shelf", `"thickness": "1/4"`, `"thickness": "3/8"`, "profile"},
	{"mirrored", "shelf", `"mirrored": true`, `"mirrored": false`, "profile"},
	{"mirrored that is not", "door", `"mirrored": false`, `"mirrored": true`, "profile"},
	{"depth", "outside", `"depth": "15/127"`, `"depth": "1/8"`, "profile"},
	{"wide flats", "outside", `"wide_flats": true`, `"wide_flats": false`, "profile"},
	{"tongue", "outside", `"wide_flats": true`, `"wide_flats": true, "tongue": "left"`, "profile"},
	{"cover", "outside", `"wide_flats": true`, `"wide_flats": true, "cover": "48"`, "profile"},

	// Set-out and phases.
	{"limit left", "shelf", `"limits": ["1/8"`, `"limits": ["0"`, "limits"},
	{"limit right", "shelf", `"39 7/8"],`, `"40"],`, "limits"},
	{"limit of a leaning end", "outside", `["-1/4", "10 3/8"]`, `["-1/4", "10 1/2"]`, "limits"},
	{"limit of an outside corner", "outside", `["1/8", "25 1/4"]`, `["1/8", "25"]`, "limits"},
	{"direction", "shelf", `"direction": "right"`, `"direction": "up"`, "order"},
	{"stages turned round", "corner", `"lines", "cut: pieces 3; closing 2, 3"`, `"cut: pieces 3; closing 2, 3", "lines"`, "order"},
	{"stage twice", "corner", `"lines", "cut: pieces 3; closing 2, 3"`, `"lines", "lines", "cut: pieces 3; closing 2, 3"`, "order"},
	{"stage lost", "corner", `"lines", "cut: pieces 3; closing 2, 3"`, `"cut: pieces 3; closing 2, 3"`, "order"},
	{"current off without a box", "corner", `"dry fit"`, `"mains off", "dry fit"`, "order"},
	{"piece fitted before its turn", "corner", `fitting 1; closing 2`, `closing 2; fitting 1`, "order"},
	{"closing piece fitted like the others", "corner", `fitting 1; closing 2`, `fitting 1, 2`, "order"},
	{"story pole", "shelf", `{"at": "1/8", "what": "start"}`, `{"at": "40", "what": "start"}`, "order"},
	{"origin moved", "shelf", `"origin": "1/8"`, `"origin": "1/4"`, "exposed"},
	{"origin moved, phases", "shelf", `"origin": "1/8"`, `"origin": "1/4"`, "phase"},
	{"left phase of panel", "corner", `"right": "59 3/4", "left_phase": "1/16"`, `"right": "59 3/4", "left_phase": "0"`, "phase"},
	{"right phase of panel", "corner", `"right_phase": "1 7/16"`, `"right_phase": "1 3/8"`, "phase"},
	{"left phase of piece", "corner", `"height": "26", "left_phase": "1/16"`, `"height": "26", "left_phase": "0"`, "phase"},
	{"phase of pitch", "shelf", `"left_phase": "0", "right_phase"`, `"left_phase": "1 1/2", "right_phase"`, "phase"},
	{"corner mismatch", "corner", `"mismatch": "1/2"`, `"mismatch": "1"`, "phase"},
	{"outside mismatch", "outside", `"mismatch": "2 1/8"`, `"mismatch": "0"`, "phase"},
	{"installed ignored", "door", `"origin": "0", "why"`, `"origin": "1/4", "why"`, "phase"},
	{"who passes", "corner", `"passes": "north", "butts": "east"`, `"passes": "east", "butts": "north"`, "limits"},
	{"passes twice", "corner", `"butts": "east"`, `"butts": "north"`, "corner"},
	{"passes at an outside corner", "outside", `"next": "short"`, `"passes": "long", "butts": "short"`, "corner"},
	{"restart not at a break", "outside", `{"at": "10", "origin"`, `{"at": "9", "origin"`, "restart"},
	{"restart twice", "outside", `"restarts": [`, `"restarts": [{"at": "10", "origin": "10", "mismatch": "1 1/4"}, `, "restart"},
	{"restart mismatch", "outside", `"mismatch": "1 1/4"`, `"mismatch": "1"`, "restart"},
	{"restart forgotten", "outside", `"restarts"`, `"starts"`, "phase"},

	// Panels, pieces and the wall.
	{"panels overlap", "corner", `"right": "24 3/16"`, `"right": "25"`, "panels"},
	{"seam gap", "corner", `"right": "24 3/16"`, `"right": "24 1/8"`, "seam gap"},
	{"gap to the installed panel", "door", `"left": "24 1/4"`, `"left": "24 1/8"`, "seam gap"},
	{"panel past the limit", "corner", `"right": "59 3/4", "left`, `"right": "60", "left`, "panels"},
	{"panel number twice", "corner", `{"number": 2, "left"`, `{"number": 1, "left"`, "panels"},
	{"panel inside out", "shelf", `"right": "39 7/8", "left_phase"`, `"right": "0", "left_phase"`, "panels"},
	{"panel without pieces", "corner", `"pieces": [2]`, `"pieces": []`, "order"},
	{"piece of two panels", "corner", `"pieces": [2]`, `"pieces": [1, 2]`, "order"},
	{"unknown piece", "corner", `"pieces": [2]`, `"pieces": [2, 9]`, "order"},
	{"piece of the wrong panel", "corner", `"run": "north", "panel": 2`, `"run": "north", "panel": 1`, "order"},
	{"numbered backwards", "corner", `"direction": "right"`, `"direction": "left"`, "order"},
	{"piece number twice", "corner", `{"number": 2, "run"`, `{"number": 1, "run"`, "order"},
	{"closing piece lost", "corner", `"closing": true`, `"closing": false`, "closing"},
	{"closing though it is alone", "niche", `"closing": false`, `"closing": true`, "closing"},
	{"closing piece first", "corner", `"closing": false`, `"closing": true`, "closing"},
	{"narrow without a warning", "outside", `runs[1].panels[0]`, `runs[0].panels[0]`, "narrow"},
	{"width", "corner", `"width": "35 7/16"`, `"width": "35 1/2"`, "outline"},
	{"height", "shelf", `"height": "17 3/4"`, `"height": "18"`, "outline"},
	{"origin of the box", "corner", `[["0", "0"], ["35 7/16", "0"]`, `[["0", "1"], ["35 7/16", "1"]`, "outline"},
	{"left of the box", "corner", `[["0", "0"], ["23 15/16", "0"]`, `[["1", "0"], ["23 15/16", "0"]`, "cover"},
	{"outline crosses itself", "shelf", `["39 3/4", "17 3/4"], ["0", "17 3/4"]`, `["0", "17 3/4"], ["39 3/4", "17 3/4"]`, "outline"},
	{"piece of no run", "shelf", `"run": "back", "panel"`, `"run": "bock", "panel"`, "outline"},
	{"outline of two corners before one off its rectangle", "sill", `"outline": [["0", "0"], ["30 1/8", "0"], ["30 1/8", "12"], ["30", "12"], ["30", "24"], ["0", "24"]], "holes": [], "closing": false,
		"marks": {"face": [["0", "0"], ["30 1/8", "0"], ["30 1/8", "12"], ["30", "12"], ["30", "24"], ["0", "24"]],
		"back": [["30 1/8", "0"], ["0", "0"], ["0", "12"], ["1/8", "12"], ["1/8", "24"], ["30 1/8", "24"]]}},
		{"number": 2, "run": "wall", "panel": 2, "at": ["30 1/8", "0"], "width": "29 7/8"`,
		`"outline": [["0", "0"], ["30 1/8", "0"]], "holes": [], "closing": false},
		{"number": 2, "run": "wall", "panel": 2, "at": ["30 1/8", "0"], "width": "29 3/4"`, "outline"},
	{"corner of a hole off the marks", "shelf", `["9 3/4", "8 7/8"], ["12", "8 7/8"]`, `["9 3/4", "8 57/64"], ["12", "8 57/64"]`, "mark"},
	{"opening of another name before one of another shape", "sill", `"panels": [`, `"openings": [{"name": "widow", "kind": "window", "outline": [["30", "12"], ["42", "12"], ["42", "32"], ["30", "32"]]},
		{"name": "socket", "kind": "box", "outline": [["38", "8"], ["42", "8"], ["42", "13"], ["38", "13"]]}], "panels": [`, "job"},
	{"piece too high", "corner", `["23 15/16", "20"]`, `["23 15/16", "21"]`, "cover"},
	{"piece too low", "corner", `["23 15/16", "20"]`, `["23 15/16", "19"]`, "cover"},
	{"slope rounded up", "corner", `["0", "25 15/16"]`, `["0", "26"]`, "cover"},
	{"slope rounded twice", "corner", `["0", "25 15/16"]`, `["0", "25 7/8"]`, "cover"},
	{"slope rounded at the far end", "corner", `["29 1/4", "23"]`, `["29 1/4", "22 15/16"]`, "cover"},
	{"step without its gap", "corner", `["5 15/16", "26"], ["5 15/16", "20"]`, `["5 11/16", "26"], ["5 11/16", "20"]`, "cover"},
	{"window without its gap", "corner", `["25 15/16", "17 3/4"], ["15 7/16", "17 3/4"]`, `["25 15/16", "18"], ["15 7/16", "18"]`, "cover"},
	{"piece moved", "shelf", `"at": ["1/8", "1/4"]`, `"at": ["1/8", "0"]`, "cover"},
	{"piece twice on the wall", "corner", `"at": ["24 5/16", "0"]`, `"at": ["23", "0"]`, "cover"},
	{"leaning end upright", "outside", `["10 1/8", "0"]`, `["10 5/8", "0"]`, "cover"},
	{"leaning end too short", "outside", `["10 1/8", "0"], ["10 5/8", "20"]`, `["10", "0"], ["10 5/8", "20"]`, "cover"},
	{"door panelled over", "door", `["17 3/8", "0"], ["17 3/8", "20"]`, `["18 3/8", "0"], ["18 3/8", "20"]`, "cover"},
	{"panel into the door", "door", `"right": "60"`, `"right": "61"`, "panels"},
	{"hole forgotten", "shelf", `"holes": [{"opening": "socket", "outline": [["9 3/4", "5 5/8"], ["9 3/4", "8 7/8"], ["12", "8 7/8"], ["12", "5 5/8"]]}]`, `"holes": []`, "cover"},
	{"hole without its gap", "shelf", `["9 3/4", "5 5/8"], ["9 3/4", "8 7/8"]`, `["9 7/8", "5 5/8"], ["9 7/8", "8 7/8"]`, "hole"},
	{"hole of another name", "shelf", `"opening": "socket"`, `"opening": "switch"`, "hole"},
	{"hole outside its piece", "shelf", `[["9 3/4", "5 5/8"], ["9 3/4", "8 7/8"]`, `[["-1", "5 5/8"], ["-1", "8 7/8"]`, "hole"},

	// Sheets.
	{"unknown stock", "shelf", `"stock": "sheet",`, `"stock": "shoot",`, "stock"},
	{"stock counted wrongly", "shelf", `"used": 1`, `"used": 2`, "stock"},
	{"turned one-handed pattern", "door", `"turned": false`, `"turned": true`, "placement"},
	{"turned without its phase", "corner", `"turned": false`, `"turned": true`, "placement"},
	{"not turned", "corner", `"turned": true`, `"turned": false`, "placement"},
	{"phase on the sheet", "corner", `"x": "1/16", "y"`, `"x": "1/8", "y"`, "placement"},
	{"whole pitch aside", "shelf", `"x": "0", "y": "1/4"`, `"x": "1 1/2", "y": "1/4"`, "cuts"},
	{"right of the sheet", "shelf", `"x": "0", "y": "1/4"`, `"x": "9", "y": "1/4"`, "placement"},
	{"left of the sheet", "shelf", `"x": "0", "y": "1/4"`, `"x": "-1 1/2", "y": "1/4"`, "placement"},
	{"not squared", "shelf", `"y": "1/4", "turned"`, `"y": "0", "turned"`, "placement"},
	{"not squared at the far end", "shelf", `"y": "1/4", "turned"`, `"y": "78 1/4", "turned"`, "placement"},
	{"placed twice", "door", `{"piece": 2, "x"`, `{"piece": 1, "x"`, "placement"},
	{"placed on nothing", "door", `{"piece": 2, "x"`, `{"piece": 7, "x"`, "placement"},
	{"never placed", "shelf", `{"piece": 1, "x": "0", "y": "1/4", "turned": false}`, ``, "placement"},
	{"two pieces at one place", "door", `"x": "19 5/8", "y": "0"`, `"x": "1 5/8", "y": "0"`, "placement"},
	{"sheet number", "shelf", `"number": 1, "stock"`, `"number": 3, "stock"`, "order"},

	// Cuts.
	{"cut of no part", "shelf", `["0", "1/4", "48", "95 3/4"]`, `["0", "0", "48", "96"]`, "cuts"},
	{"cut through a piece", "shelf", `"kind": "crosscut", "at": "17 3/4"`, `"kind": "crosscut", "at": "17"`, "cuts"},
	{"kerf forgotten", "shelf", `["0", "18 1/8", "48", "77 7/8"]`, `["0", "18", "48", "78"]`, "cuts"},
	{"cut the wrong way", "shelf", `"kind": "rip", "at": "40"`, `"kind": "crosscut", "at": "40"`, "cuts"},
	{"unknown cut", "shelf", `"kind": "rip"`, `"kind": "mitre"`, "cuts"},
	{"blade misses the edge", "corner", `"at": "-1/16"`, `"at": "-1/8"`, "cuts"},
	{"blade misses the far edge", "shelf", `"at": "77 5/8"`, `"at": "77 7/8"`, "cuts"},
	{"steps out of order", "shelf", `"step": 2`, `"step": 3`, "cuts"},
	{"cut missing", "outside", `{"step": 4, "rect": ["1/8", "0", "19 7/8", "20"], "kind": "rip", "at": "9 27/32", "from": {"step": 3, "beyond": true}, "frees": [1, 0]},`, ``, "cuts"},
	{"part from another cut", "corner", `"from": {"step": 3}`, `"from": {"step": 1}`, "cuts"},
	{"part from the other side", "corner", `"from": {"step": 1, "beyond": true}`, `"from": {"step": 1}`, "cuts"},
	{"part from no cut", "shelf", `"from": {"step": 2}`, `"source": {"step": 2}`, "cuts"},
	{"first cut from a part", "niche", `"at": "24"}`, `"at": "24", "from": {"step": 1}}`, "cuts"},
	{"alike forgotten", "door", `"alike": true`, `"alike": false`, "cuts"},
	{"alike without a like", "niche", `"trim": "beyond"`, `"alike": true, "trim": "beyond"`, "cuts"},
	{"trim forgotten", "shelf", `"trim": "near"`, `"trims": "near"`, "cuts"},
	{"trim of the other side", "niche", `"trim": "beyond"`, `"trim": "near"`, "cuts"},
	{"trim that is none", "corner", `"frees": [1, 0]`, `"trim": "beyond", "frees": [1, 0]`, "cuts"},
	{"kerf left out of a trim", "corner", `"off": "1 1/8"`, `"off": "1"`, "cuts"},
	{"trim beyond too wide", "niche", `"off": "1/8"`, `"off": "1/4"`, "cuts"},
	{"off without a trim", "corner", `"frees": [1, 0]`, `"off": "1/8", "frees": [1, 0]`, "cuts"},
	{"frees another piece", "corner", `"frees": [2, 0]`, `"frees": [3, 0]`, "cuts"},
	{"frees on the other side", "corner", `"frees": [1, 0]`, `"frees": [0, 1]`, "cuts"},
	{"frees forgotten", "door", `"frees": [3, 0]`, `"free": [3, 0]`, "cuts"},
	{"waits for nothing", "outside", `, "waits": {"piece": 2}`, ``, "cuts"},
	{"waits for another piece", "outside", `"waits": {"piece": 2}`, `"waits": {"piece": 3}`, "cuts"},
	{"waits though it is scribed", "corner", `"frees": [1, 0]`, `"frees": [1, 0], "waits": {"piece": 2}`, "cuts"},
	{"waits after a cut that does not", "outside", `"waits": {"piece": 2}`, `"waits": {"step": 2}`, "cuts"},
	{"frees too early", "corner", `"trim": "near", "off": "1 1/8"`, `"trim": "near", "off": "1 1/8", "frees": [0, 3]`, "cuts"},
	{"offcut phase", "shelf", `"length": "17 3/4", "left_phase": "1 1/8"`, `"length": "17 3/4", "left_phase": "3/4"`, "offcut"},
	{"offcut not free", "shelf", `"width": "7 7/8"`, `"width": "8"`, "offcut"},
	{"offcut is a piece", "shelf", `{"x": "40 1/8", "y": "1/4", "width": "7 7/8"`, `{"x": "0", "y": "1/4", "width": "39 3/4"`, "offcut"},
	{"offcut twice", "shelf", `"offcuts": [`, `"offcuts": [{"x": "0", "y": "18 1/8", "width": "48", "length": "77 5/8", "left_phase": "0"},`, "offcut"},

	// What is given by distances, and arched heads.
	{"taped corner off", "niche", `"at": ["9", "12"]`, `"at": ["9 1/8", "12"]`, "taped"},
	{"taped corner on the other side", "niche", `"at": ["9", "12"]`, `"at": ["9", "-12"]`, "taped"},
	{"taped corner lost", "niche", `points.corners[3]`, `points.corners[4]`, "taped"},
	{"closing too small", "niche", `"closing": "1/64"`, `"closing": "0"`, "taped"},
	{"taped height off", "niche", `"at": ["40", "24"]`, `"at": ["40", "23"]`, "taped"},
	{"taped on another run", "niche", `"run": "wall", "opening": "window"`, `"run": "hall", "opening": "window"`, "taped"},
	{"taped corner of another opening", "niche", `"opening": "window", "number": 1`, `"opening": "niche", "number": 1`, "taped"},
	{"taped height of an opening", "niche", `"number": 2`, `"opening": "window", "number": 2`, "taped"},
	{"taped corner's number", "niche", `"opening": "window", "number": 3`, `"opening": "window", "number": 2`, "taped"},
	{"taped height's number", "niche", `"number": 2, "at": ["40"`, `"number": 1, "at": ["40"`, "taped"},
	{"opening elsewhere", "niche", `[["9", "12"], ["16", "12"], ["16", "20"], ["9", "20"]]`, `[["9", "12"], ["16", "12"], ["16", "21"], ["9", "21"]]`, "job"},
	{"arch cuts its arc", "niche", `["28", "14 1/16"]`, `["28", "13 15/16"]`, "taped"},
	{"arch far from its arc", "niche", `["28", "14 1/16"]`, `["28", "14 3/16"]`, "taped"},
	{"arch without a corner", "niche", `"outline": [["24", "8"], ["32", "8"]`, `"outline": [["24", "9"], ["32", "9"]`, "taped"},
	{"centre of the arc", "niche", `"centre": ["28", "9"], "back": ["12", "9"]`, `"centre": ["27", "9"], "back": ["13", "9"]`, "marks"},
	{"centre on the back", "niche", `"back": ["12", "9"]`, `"back": ["28", "9"]`, "marks"},
	{"radius of the arc", "niche", `"radius": "5"`, `"radius": "4"`, "marks"},

	// What is drawn.
	{"mark on the face", "shelf", `"face": [["0", "0"], ["39 3/4", "0"]`, `"face": [["0", "0"], ["39 1/2", "0"]`, "marks"},
	{"back not mirrored", "shelf", `"back": [["39 3/4", "0"], ["0", "0"]`, `"back": [["0", "0"], ["39 3/4", "0"]`, "marks"},
	{"hole not marked", "door", `"holes": [{"opening": "switch", "face"`, `"hols": [{"opening": "switch", "face"`, "marks"},
	{"starter hole too wide", "shelf", `"diameter": "1/2"`, `"diameter": "9/16"`, "marks"},
	{"starter hole never drilled", "shelf", `"drill": [0]`, `"drill": []`, "marks"},
	{"starter hole drilled twice", "shelf", `"drill": [0]`, `"drill": [0, 0]`, "marks"},
	{"starter hole that is none", "shelf", `"drill": [0]`, `"drill": [0, 1]`, "marks"},
	{"starter hole in the piece", "shelf", `"at": ["10", "5 7/8"], "back": ["29 3/4", "5 7/8"]`, `"at": ["8", "5 7/8"], "back": ["31 3/4", "5 7/8"]`, "marks"},
	{"story pole without a seam", "corner", `{"at": "24 3/16"}, {"at": "24 5/16"}`, `{"at": "24 3/16"}`, "marks"},
	{"end shows another feature", "shelf", `"feature": "flat", "width": "3/4"`, `"feature": "bead", "width": "3/4"`, "phase"},
	{"end shows less", "shelf", `"feature": "flat", "width": "3/4"`, `"feature": "flat", "width": "1/2"`, "phase"},
	{"label twice", "door", `"number": 2, "run"`, `"number": 2, "label": "1", "run"`, "order"},

	// What is repeated from the job.
	{"width of a run", "shelf", `"width": "40"`, `"width": "41"`, "job"},
	{"kind of an end", "shelf", `"right": {"kind": "covered"`, `"right": {"kind": "exposed"`, "job"},
	{"outline of the wall", "niche", `["40", "24"], ["0", "24"]], "openings"`, `["40", "23"], ["0", "24"]], "openings"`, "job"},
	{"price of stock", "shelf", `"price": "31.5"`, `"price": "30"`, "stock"},
	{"default kerf", "niche", `"kerf": "1/8"`, `"kerf": "3/32"`, "job"},
	{"next run", "corner", `"next": "east"`, `"next": "north"`, "corner"},
	{"where the work begins", "corner", `"from": "29 3/4"`, `"from": "1/2"`, "order"},
	{"which ends are seen", "outside", `"both ends are seen"`, `"left end is seen"`, "order"},
	{"warning of another panel", "outside", `"counts": [3]`, `"counts": [2]`, "narrow"},

	// Money.
	{"price times packs", "niche", `"cost": "11"`, `"cost": "5.5"`, "takeoff"},
	{"subtotal", "niche", `"subtotal": "11"`, `"subtotal": "12"`, "takeoff"},
	{"tax left out", "niche", `"tax": "1.5"`, `"tax": "0"`, "takeoff"},
	{"unpriced", "niche", `"unpriced": 1`, `"unpriced": 0`, "takeoff"},
	{"cost of the choice", "niche", `"bought": 1, "cost": "12.5"`, `"bought": 1, "cost": "11"`, "choices"},
	{"more bought than there are", "niche", `"bought": 1`, `"bought": 2`, "choices"},

	// What is proved and chosen.
	{"bound above", "shelf", `"sheets_at_least": 1`, `"sheets_at_least": 2`, "bound"},
	{"proved too early", "shelf", `"sheets_at_least": 1`, `"sheets_at_least": 0`, "bound"},
	{"nothing chosen", "shelf", `"chosen": true`, `"chosen": false`, "choices"},
	{"two chosen", "outside", `"chosen": false`, `"chosen": true`, "choices"},
	{"chosen sheets", "shelf", `"choices": [{"sheets": 1`, `"choices": [{"sheets": 2`, "choices"},
	{"chosen total", "corner", `"cost": "0", "blemish_total": "2 85/128"`, `"cost": "0", "blemish_total": "2"`, "choices"},
	{"a choice for nothing", "outside", `"cost": "60", "blemish_total": "2"`, `"cost": "60", "blemish_total": "6"`, "choices"},

	// What the job insists on, closing pieces, seams that are warned of, corners of pieces.
	{"another origin than to keep", "sill", `"origin": "1/8"`, `"origin": "1/4"`, "keep"},
	{"another direction than to keep", "sill", `"direction": "right"`, `"direction": "left"`, "keep"},
	{"kept seam elsewhere", "sill", `"right": "30 1/8", "left_phase"`, `"right": "30", "left_phase"`, "keep"},
	{"direction toward the end that is seen", "shelf", `"from": "1/8", "direction": "right"`, `"from": "39 7/8", "direction": "left"`, "keep"},
	{"restart against the origin to keep", "sill", `"panels": [`, `"restarts": [{"at": "30 1/8", "origin": "1", "mismatch": "5/8"}], "panels": [`, "keep"},
	{"open groove at a leaning end", "outside", `"origin": "5 3/8"`, `"origin": "4 5/8"`, "exposed"},
	{"not closing at a door", "door", `"closing": true, "scribe": {"edge": "right", "width": "1/4"}`, `"closing": false`, "closing"},
	{"nothing to scribe", "shelf", `"scribe": {`, `"scribed": {`, "closing"},
	{"other edge to scribe", "shelf", `"edge": "right"`, `"edge": "left"`, "closing"},
	{"less to scribe", "sill", `"edge": "right", "width": "1/8"`, `"edge": "right", "width": "1/16"`, "closing"},
	{"more to scribe", "sill", `"edge": "right", "width": "1/8"`, `"edge": "right", "width": "1/4"`, "closing"},
	{"scribe at an outside corner", "outside", `"closing": true`, `"closing": true, "scribe": {"edge": "right", "width": "1/4"}`, "closing"},
	{"scribe not sawn", "shelf", `"kind": "rip", "at": "40"`, `"kind": "rip", "at": "39 3/4"`, "cuts"},
	{"lap lost in silence", "sill", `"kind": "lap lost"`, `"kind": "lap"`, "warning"},
	{"lap lost elsewhere", "sill", `"lengths": ["30 1/8"]`, `"lengths": ["30"]`, "warning"},
	{"seam at a box for nothing", "door", `"warnings": []`, `"warnings": [{"path": "runs[0].openings[0]", "kind": "seam at box", "names": ["wall", "switch"], "lengths": ["42 1/2"]}]`, "warning"},
	{"corner heights for nothing", "corner", `"warnings": []`, `"warnings": [{"path": "runs[0].heights[3]", "kind": "corner heights"}]`, "warning"},
	{"corner off the marks", "corner", `["0", "25 15/16"]`, `["0", "25 61/64"]`, "mark"},
	{"edge of a mark", "corner", `["29 1/4", "23"], ["0", "25 15/16"]`, `["29 1/4", "23"], ["1/16", "25 15/16"], ["0", "25 15/16"]`, "mark"},
	{"cut along a hidden slope", "sill", `[["0", "0"], ["30 1/8", "0"]`, `[["0", "-1/4"], ["30 1/8", "-1/8"]`, "cover"},
	{"kind of saw", "sill", `"kind": "circular"`, `"kind": "table"`, "job"},
	{"face up on a circular saw", "sill", `"face": "down"`, `"face": "up"`, "job"},
	{"least rip", "sill", `"least_rip": "1/8"`, `"least_rip": "1/4"`, "job"},

	// Blemishes.
	{"tab under a window", "sill", `"kind": "weak strip", "amount": "5/8"`, `"kind": "seam", "amount": "5/8"`, "blemish"},
	{"width of a tab", "sill", `"kind": "weak strip", "amount": "5/8"`, `"kind": "weak strip", "amount": "1/2"`, "blemish"},
	{"height of a tab", "sill", `"amount": "5/8", "height": "12"`, `"amount": "5/8", "height": "24"`, "blemish"},
	{"box and window as one edge", "sill", `"at": "42", "kind": "opening side", "amount": "1/8", "height": "12", "weight": "2", "cost": "1/4"`, `"at": "42", "kind": "opening side", "amount": "1/8", "height": "16", "weight": "2", "cost": "1/3"`, "blemish"},
	{"height of nothing left out", "sill", `"height": "4", "weight": "1", "cost": "1/24"`, `"weight": "1", "cost": "1/24"`, "blemish"},
	{"total", "corner", `"blemish_total": "2 85/128",`, `"blemish_total": "2 43/64",`, "blemish"},
	{"term forgotten", "corner", `"weight": "1", "cost": "5/24"`, `"weight": "1", "cost": "0"`, "blemish"},
	{"term of nothing", "corner", `"blemishes": [`, `"blemishes": [{"run": "east", "where": "", "at": "9", "kind": "seam", "amount": "1/8", "weight": "1", "cost": "1/8"},`, "blemish"},
	{"term of no run", "corner", `"blemishes": [{"run": "north"`, `"blemishes": [{"run": "south"`, "blemish"},
	{"amount", "corner", `"amount": "1/2", "height": "8 1/4"`, `"amount": "5/8", "height": "8 1/4"`, "blemish"},
	{"weight", "corner", `"height": "8 1/4", "weight": "2"`, `"height": "8 1/4", "weight": "3"`, "blemish"},
	{"cost", "corner", `"cost": "1 31/384"`, `"cost": "1 1/12"`, "blemish"},
	{"cost of an outside corner", "outside", `"cost": "5/6"`, `"cost": "5"`, "blemish"},
	{"default weight", "shelf", `"default": "8"`, `"default": "7"`, "priorities"},
	{"job's weight ignored", "door", `"value": "9"`, `"value": "8"`, "priorities"},
}

// Each spoilt plan has a fault of its kind, and all that is said of it stays the same.
func TestFaultsOfMutations(t *testing.T) {
	t.Parallel()
	var said strings.Builder
	for _, m := range mutations {
		t.Run(m.name, func(t *testing.T) {
			job, plan := fixture(t, m.plan)
			from, to := spaced(m.from), spaced(m.to)
			plan = spaced(plan)
			if strings.Count(plan, from) == 0 {
				t.Fatalf("%s does not stand in %s", m.from, m.plan)
			}
			fmt.Fprintln(&said, m.name)
			for _, f := range caught(t, job, strings.Replace(plan, from, to, 1), m.want) {
				fmt.Fprintf(&said, "\t%v\n", f)
			}
		})
	}
	fractiontest.Golden(t, "testdata/said.txt", said.String())
}

// caught fails where a plan for a job has no fault of a kind, or the checker stumbled, and returns all faults.
func caught(t *testing.T, job, plan, want string) []Fault {
	t.Helper()
	faults := Plan([]byte(job), []byte(plan))
	if !slices.ContainsFunc(faults, func(f Fault) bool { return f.Kind.String() == want }) {
		t.Errorf("no fault of kind %q among %v", want, faults)
	}
	if slices.ContainsFunc(faults, func(f Fault) bool { return f.Kind == NotJudged }) {
		t.Errorf("the checker stumbled: %v", faults)
	}
	return faults
}

// spaced puts a text on one line, with one blank for any run of white space.
func spaced(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	s = strings.ReplaceAll(s, "[ {", "[{")
	return s
}

// What changes nothing in a room leaves its plan right.
func TestOtherJobsThatPass(t *testing.T) {
	for _, m := range []mutation{
		{"slope that a rail does not hide", "corner", `"saw": {`, `"trim": {"top": {"name": "rail", "covers": "3 3/16"}}, "saw": {`, ""},
		{"openings in another order", "sill", `{"name": "window", "kind": "window", "left": "30", "bottom": "12", "width": "12", "height": "20"}, {"name": "socket", "kind": "box", "left": "38", "bottom": "8", "width": "4", "height": "4"}`,
			`{"name": "socket", "kind": "box", "left": "38", "bottom": "8", "width": "4", "height": "4"}, {"name": "window", "kind": "window", "left": "30", "bottom": "12", "width": "12", "height": "20"}`, ""},
		{"snap of half a mark", "corner", `"saw": {`, `"snap": "1/32", "saw": {`, ""},
	} {
		job, plan := fixture(t, m.plan)
		if job = spaced(job); !strings.Contains(job, m.from) {
			t.Fatalf("%s does not stand in %s", m.from, m.plan)
		}
		for _, f := range Plan([]byte(strings.Replace(job, m.from, m.to, 1)), []byte(plan)) {
			t.Errorf("%s: %v", m.name, f)
		}
	}
}

// The job has the other part in a disagreement: a plan that was right for one room must not pass
// for another.
func TestOtherJobsAreCaught(t *testing.T) {
	for _, m := range []mutation{
		{"wall higher", "shelf", `"top": "18"}, {"at": "40", "top": "18"}`, `"top": "19"}, {"at": "40", "top": "19"}`, "cover"},
		{"box moved", "shelf", `"left": "10"`, `"left": "11"`, "hole"},
		{"one sheet only", "outside", `"count": 2`, `"count": 1`, "stock"},
		{"sheet narrower", "corner", `"width": "36\""`, `"width": "35"`, "panels"},
		{"sheet's pattern shifted", "door", `"left_phase": "1/2"`, `"left_phase": "1/4"`, "placement"},
		{"box at the seam", "door", `"left": "50"`, `"left": "43"`, "box"},
		{"exposed end tapered", "corner", `{"at": "30", "top": "23"}`, `{"at": "30", "top": "22"}`, "cover"},
		{"profile thicker", "corner", `"thickness": "1/4"`, `"thickness": "3/8"`, "limits"},
		{"focal zone elsewhere", "door", `"from": "40", "to": "45"`, `"from": "30", "to": "35"`, "blemish"},
		{"end seen more", "outside", `"kind": "outside corner"}`, `"kind": "outside corner", "prominence": 6}`, "blemish"},
		{"seam where none may be", "corner", `"openings": [`, `"keep": {"clear": [{"from": "24", "to": "25"}]}, "openings": [`, "keep"},
		{"no seam where one must be", "shelf", `"heights": [`, `"keep": {"seams": ["20"]}, "heights": [`, "keep"},
		{"tongue at the left", "niche", `"thickness": "1/4"}`, `"thickness": "1/4", "boards": true, "edges": "tongued", "tongue": "left"}`, "keep"},
		{"heights differ at a corner", "corner", `{"at": "0", "top": "26"}`, `{"at": "0", "top": "28"}`, "warning"},
		{"slope hidden by a rail", "corner", `"saw": {`, `"trim": {"top": {"name": "rail", "covers": "3 1/4"}}, "saw": {`, "cover"},
		{"box beside the tab", "sill", `"left": "38", "bottom": "8"`, `"left": "31", "bottom": "8"`, "warning"},
		{"casing hides a window's sides", "sill", `"trim": {`, `"trim": {"casing": {"name": "casing", "covers": "1"}, `, "blemish"},
		{"more to scribe than is left", "shelf", `"saw": {`, `"scribe": "1/2", "saw": {`, "closing"},
		{"marks of another tape", "corner", `"saw": {`, `"snap": "0", "tape": "1/10", "saw": {`, "mark"},
		{"gaps higher than the wall", "niche", `"units": "in",`, `"units": "in", "gaps": {"top": "20", "bottom": "10"},`, "cover"},
		{"break seen more", "outside", `"prominence": 0.5`, `"prominence": 0.75`, "blemish"},
		{"no such job", "shelf", `"heights": [`, `"heights": 3, "other": [`, "job"},
		{"no such unit", "corner", `"units": "in"`, `"units": "ell"`, "job"},
		{"no such length", "shelf", `"top": "18"`, `"top": "18 1/0"`, "job"},
	} {
		t.Run(m.name, func(t *testing.T) {
			job, plan := fixture(t, m.plan)
			job = spaced(job)
			if !strings.Contains(job, m.from) {
				t.Fatalf("%s does not stand in %s", m.from, m.plan)
			}
			caught(t, strings.Replace(job, m.from, m.to, 1), plan, m.want)
		})
	}
}
