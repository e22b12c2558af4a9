package jobfile_test

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/jobfile"
)

const ownProfile = `{"name": "own", "features": [{"kind": "flat", "width": "1 1/4"}, {"kind": "bead", "width": "1/4", "depth": "1/16"}], "thickness": "1/4"}`

// sound is a job without a fault; the tests change one thing at a time in it.
const sound = `{
  "title": "shed", "units": "in", "tape": "1/16", "closed": false,
  "profile": ` + ownProfile + `,
  "stock": [{"name": "sheet", "width": "48", "length": "96", "left_phase": "1/2", "count": 4, "price": "24.98"}],
  "saw": {"kerf": "1/8", "square_up": "1/4"},
  "gaps": {"top": "1/16", "seam": "1/32"},
  "runs": [
    {"name": "north", "width": "60", "left": {"kind": "exposed", "lean": "1/8", "prominence": 5}, "right": {"kind": "inside corner"},
     "heights": [{"at": "0", "top": "18"}, {"at": "30", "bottom": "0", "top": "63 1/4"}, {"at": "60", "top": "18"}],
     "openings": [{"name": "box", "kind": "box", "left": "10", "bottom": "5", "width": "2 1/4", "height": "3 3/4"},
                  {"name": "window", "kind": "window", "left": "30", "bottom": "8", "outline": [["0","0"],["20","0"],["20","60"],["0","60"]]}],
     "focal": [{"from": "5", "to": "15", "prominence": 2}, {"from": "15", "to": "25", "prominence": 0.5}],
     "breaks": [{"at": "30", "prominence": 1}],
     "keep": {"origin": "1/2", "direction": "left", "seams": ["24"], "clear": [{"from": "26", "to": "40"}]}},
    {"name": "east", "width": "40", "left": {"kind": "inside corner"}, "right": {"kind": "covered"},
     "heights": [{"at": "0", "top": "18"}, {"at": "40", "top": "18"}]}
  ],
  "installed": [{"run": "east", "left": "1/4", "right": "20", "left_phase": "0"}],
  "priorities": {"exposed_end": 9, "least_strip": "1"},
  "built": 1960,
  "finish": {"house": {"damp": true}, "tax": 0.08, "trim": {"stick": {"name": "strip", "length": "8'"}}}
}`

func TestReadSound(t *testing.T) {
	j, err := jobfile.Read(strings.NewReader(sound))
	if err != nil {
		t.Fatal(err)
	}
	inch := fraction.MustParse
	if got, want := j.Room.Runs[0].Heights[1].Top, inch("63 1/4"); got != want {
		t.Errorf("runs[0].heights[1].top = %s, want %s", got, want)
	}
	if got := j.Room.Runs[0].Openings[1].Outline[2]; got.X != inch("50") || got.Y != inch("68") {
		t.Errorf("third corner of the window = %v, want (50, 68)", got)
	}
	if got := j.Room.Stock[0].Usable(j.Room.Saw); got != inch("95 1/2") {
		t.Errorf("usable length of the sheet = %s, want 95 1/2", got)
	}
	if got := j.Room.Installed[0].Run; got != 1 {
		t.Errorf("installed[0].run = %d, want 1", got)
	}
	if p := j.Room.Priorities; p.ExposedEnd != fraction.NewRatio(9, 1) || p.LeastStrip != inch("1") || p.StepSide != wall.DefaultPriorities(fraction.Inch).StepSide {
		t.Errorf("priorities = %+v, want two of them set and the others by default", p)
	}
	if j.Room.Stock[0].Count == nil || *j.Room.Stock[0].Count != 4 || j.Room.Stock[0].Price.String() != "24.98" {
		t.Errorf("stock[0] = %+v", j.Room.Stock[0])
	}
}

// Bare numbers take the units of the job, and so does the default tape.
func TestReadMetric(t *testing.T) {
	metric := strings.ReplaceAll(sound, `"units": "in", "tape": "1/16"`, `"units": "mm"`)
	j, err := jobfile.Read(strings.NewReader(metric))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := j.Room.Runs[0].Width, fraction.Millimetres(60, 1); got != want {
		t.Errorf("width = %s, want %s", got, want)
	}
	if got, want := j.Room.Mark, fraction.Millimetres(1, 1); got != want {
		t.Errorf("mark = %s, want %s", got, want)
	}
}

func TestReadExamples(t *testing.T) {
	for name, file := range examples(t) {
		if _, err := jobfile.Read(strings.NewReader(file)); err != nil {
			t.Errorf("%s:\n%v", name, err)
		}
	}
}

// A row replaces one part of the sound job; the fault must name exactly path and be of the kind. All that is
// said is kept.
func TestFaults(t *testing.T) {
	var said strings.Builder
	for _, row := range []struct {
		name, old, new string
		path           string
		kind           error
	}{
		{"zero denominator", `"63 1/4"`, `"63 1/0"`, "runs[0].heights[1].top", jobfile.ErrValue},
		{"no length", `"63 1/4"`, `"tall"`, "runs[0].heights[1].top", jobfile.ErrValue},
		{"empty length", `"63 1/4"`, `""`, "runs[0].heights[1].top", jobfile.ErrValue},
		{"number as length", `"63 1/4"`, `63.25`, "runs[0].heights[1].top", jobfile.ErrType},
		{"list as length", `"63 1/4"`, `["63"]`, "runs[0].heights[1].top", jobfile.ErrType},
		{"null as length", `"63 1/4"`, `null`, "runs[0].heights[1].top", jobfile.ErrType},
		{"length too great", `"63 1/4"`, `"99999999999999999999"`, "runs[0].heights[1].top", jobfile.ErrValue},
		{"unknown field", `"title": "shed"`, `"titel": "shed"`, "titel", jobfile.ErrUnknown},
		{"unknown field deep inside", `"at": "30", "bottom"`, `"at": "30", "botom"`, "runs[0].heights[1].botom", jobfile.ErrUnknown},
		{"unknown priority", `"exposed_end"`, `"exposed_ends"`, "priorities.exposed_ends", jobfile.ErrUnknown},
		{"odd key", `"title"`, `"a.b [0]"`, `["a.b [0]"]`, jobfile.ErrUnknown},
		{"field twice", `"title": "shed"`, `"title": "shed", "title": "barn"`, "title", jobfile.ErrTwice},
		{"field missing", `"width": "40", `, ``, "runs[1].width", jobfile.ErrMissing},
		{"left of an opening missing", `"left": "10", `, ``, "runs[0].openings[0].left", jobfile.ErrMissing},
		{"cover of boards", `"thickness": "1/4"`, `"thickness": "1/4", "boards": true, "cover": "2"`, "profile.cover", jobfile.ErrRoom},
		{"narrower than it shows", `"thickness": "1/4"`, `"thickness": "1/4", "cover": "48", "width": "47"`, "profile.width", jobfile.ErrRoom},
		{"tongue of square edges", `"thickness": "1/4"`, `"thickness": "1/4", "edges": "square", "tongue": "left"`, "profile.tongue", jobfile.ErrRoom},
		{"lap that does not add up", `"thickness": "1/4"`, `"thickness": "1/4", "edges": "lapped", "cover": "47", "width": "48", "lap": "1/2"`, "profile.lap", jobfile.ErrRoom},
		{"edges of no kind", `"thickness": "1/4"`, `"thickness": "1/4", "edges": ""`, "profile.edges", jobfile.ErrValue},
		{"no length as sold", `"thickness": "1/4"`, `"thickness": "1/4", "lengths": ["96", "0"]`, "profile.lengths[1]", jobfile.ErrRoom},
		{"stock with its lap", `"thickness": "1/4"`, `"thickness": "1/4", "edges": "lapped", "cover": "47 5/8", "width": "48", "lap": "3/8"`, "stock[0].width", jobfile.ErrRoom},
		{"stock wider than a board with tongues shows", `"thickness": "1/4"`, `"thickness": "1/4", "boards": true, "edges": "tongued"`, "stock[0].width", jobfile.ErrRoom},
		{"profile renamed", ownProfile, `"Shiplap 7-1/4"`, "profile", jobfile.ErrValue},
		{"profile unknown", ownProfile, `"no such board"`, "profile", jobfile.ErrValue},
		{"feature kind", `"bead"`, `"beed"`, "profile.features[1].kind", jobfile.ErrValue},
		{"feature width", `"width": "1 1/4"`, `"width": "0"`, "profile.features[0].width", jobfile.ErrRoom},
		{"bead deeper than the board", `"depth": "1/16"`, `"depth": "1"`, "profile.features[1].depth", jobfile.ErrRoom},
		{"no features", `[{"kind": "flat", "width": "1 1/4"}, {"kind": "bead", "width": "1/4", "depth": "1/16"}]`, `[], "boards": true`, "profile.features", jobfile.ErrRoom},
		{"units", `"units": "in"`, `"units": "furlong"`, "units", jobfile.ErrValue},
		{"bit of zero", `"kerf": "1/8"`, `"kerf": "1/8", "bit": "0"`, "saw.bit", jobfile.ErrRoom},
		{"tape of zero", `"tape": "1/16"`, `"tape": "0"`, "tape", jobfile.ErrRoom},
		{"no stock", `[{"name": "sheet", "width": "48", "length": "96", "left_phase": "1/2", "count": 4, "price": "24.98"}]`, `[]`, "stock", jobfile.ErrRoom},
		{"phase past the repeat", `"left_phase": "1/2"`, `"left_phase": "1 1/2"`, "stock[0].left_phase", jobfile.ErrRoom},
		{"count not whole", `"count": 4`, `"count": 4.5`, "stock[0].count", jobfile.ErrValue},
		{"count below zero", `"count": 4`, `"count": -1`, "stock[0].count", jobfile.ErrRoom},
		{"price as a number", `"24.98"`, `24.98`, "stock[0].price", jobfile.ErrType},
		{"price below zero", `"24.98"`, `"-1"`, "stock[0].price", jobfile.ErrValue},
		{"price with exponent", `"24.98"`, `"1e9999999"`, "stock[0].price", jobfile.ErrValue},
		{"kerf below zero", `"kerf": "1/8"`, `"kerf": "-1/8"`, "saw.kerf", jobfile.ErrRoom},
		{"sheet shorter than its trims", `"square_up": "1/4"`, `"square_up": "48"`, "stock[0].length", jobfile.ErrRoom},
		{"gap below zero", `"top": "1/16"`, `"top": "-1/16"`, "gaps.top", jobfile.ErrRoom},
		{"no runs", sound[strings.Index(sound, `"runs":`):strings.Index(sound, `"priorities"`)], `"runs": [], `, "runs", jobfile.ErrRoom},
		{"name twice", `"name": "east"`, `"name": "north"`, "runs[1].name", jobfile.ErrRoom},
		{"empty name", `"name": "east"`, `"name": " "`, "runs[1].name", jobfile.ErrRoom},
		{"line break in a name", `"name": "east"`, `"name": "ea\nst"`, "runs[1].name", jobfile.ErrRoom},
		{"kept seam beyond the run", `"seams": ["24"]`, `"seams": ["60"]`, "runs[0].keep.seams[0]", jobfile.ErrRoom},
		{"kept seam where there is to be none", `"from": "26"`, `"from": "20"`, "runs[0].keep.seams[0]", jobfile.ErrRoom},
		{"stretch without seams backwards", `"to": "40"`, `"to": "20"`, "runs[0].keep.clear[0].to", jobfile.ErrRoom},
		{"kept way to work", `"direction": "left"`, `"direction": "up"`, "runs[0].keep.direction", jobfile.ErrValue},
		{"plate of no width", `"closed": false`, `"plates": [{"gangs": 2, "width": "0", "height": "4"}, {"gangs": 1, "width": "3", "height": "4"}]`, "plates[0].width", jobfile.ErrRoom},
		{"plates of one size twice", `"closed": false`, `"plates": [{"gangs": 1, "width": "3", "height": "4"}, {"gangs": 1, "width": "3", "height": "4"}]`, "plates[1].gangs", jobfile.ErrValue},
		{"width of zero", `"width": "40"`, `"width": "0"`, "runs[1].width", jobfile.ErrRoom},
		{"end kind", `"covered"`, `"hidden"`, "runs[1].right.kind", jobfile.ErrValue},
		{"prominence as text", `"prominence": 5`, `"prominence": "5"`, "runs[0].left.prominence", jobfile.ErrType},
		{"prominence below zero", `"prominence": 5`, `"prominence": -5`, "runs[0].left.prominence", jobfile.ErrRoom},
		{"first height not at 0", `{"at": "0", "top": "18"}, {"at": "30"`, `{"at": "1", "top": "18"}, {"at": "30"`, "runs[0].heights[0].at", jobfile.ErrRoom},
		{"last height not at the width", `{"at": "60"`, `{"at": "59"`, "runs[0].heights[2].at", jobfile.ErrRoom},
		{"height past the width", `{"at": "60"`, `{"at": "61"`, "runs[0].heights[2].at", jobfile.ErrRoom},
		{"heights out of order", `"at": "30", "bottom"`, `"at": "-3", "bottom"`, "runs[0].heights[1].at", jobfile.ErrRoom},
		{"one height", `, {"at": "40", "top": "18"}`, ``, "runs[1].heights", jobfile.ErrRoom},
		{"top below bottom", `"bottom": "0"`, `"bottom": "64"`, "runs[0].heights[1].top", jobfile.ErrRoom},
		{"inside corner meets outside corner", `"left": {"kind": "inside corner"}`, `"left": {"kind": "outside corner"}`, "runs[1].left.kind", jobfile.ErrRoom},
		{"closed room with an open end", `"closed": false`, `"closed": true`, "runs[1].right.kind", jobfile.ErrRoom},
		{"opening past the run", `"left": "10"`, `"left": "59"`, "runs[0].openings[0].width", jobfile.ErrRoom},
		{"opening before the run", `"left": "10"`, `"left": "-1"`, "runs[0].openings[0].left", jobfile.ErrRoom},
		{"opening above the wall", `"bottom": "5"`, `"bottom": "70"`, "runs[0].openings[0].bottom", jobfile.ErrRoom},
		{"opening of no width", `"width": "2 1/4"`, `"width": "0"`, "runs[0].openings[0].width", jobfile.ErrRoom},
		{"opening kind", `"kind": "window"`, `"kind": "door"`, "runs[0].openings[1].kind", jobfile.ErrValue},
		{"corner of three", `["20","60"]`, `["20","60","1"]`, "runs[0].openings[1].outline[2]", jobfile.ErrValue},
		{"outline crosses itself", `["20","0"],["20","60"]`, `["20","60"],["20","0"]`, "runs[0].openings[1].outline[2]", jobfile.ErrRoom},
		{"outline past the run", `["20","60"]`, `["50","60"]`, "runs[0].openings[1].outline[2]", jobfile.ErrRoom},
		{"outline of two corners", `["20","0"],["20","60"],["0","60"]`, `["20","0"]`, "runs[0].openings[1].outline[0]", jobfile.ErrRoom},
		{"opening name twice", `"name": "window"`, `"name": "box"`, "runs[0].openings[1].name", jobfile.ErrRoom},
		{"box in a window", `"left": "10", "bottom": "5"`, `"left": "35", "bottom": "9"`, "runs[0].openings[1]", jobfile.ErrRoom},
		{"focal zones overlap", `"from": "15"`, `"from": "14"`, "runs[0].focal[1]", jobfile.ErrRoom},
		{"focal zone backwards", `"from": "15", "to": "25"`, `"from": "15", "to": "15"`, "runs[0].focal[1].to", jobfile.ErrRoom},
		{"focal zone past the run", `"to": "25"`, `"to": "61"`, "runs[0].focal[1].to", jobfile.ErrRoom},
		{"focal zone is null", `{"from": "5", "to": "15", "prominence": 2}`, `null`, "runs[0].focal[0]", jobfile.ErrType},
		{"break at an end", `{"at": "30", "prominence"`, `{"at": "60", "prominence"`, "runs[0].breaks[0].at", jobfile.ErrRoom},
		{"installed on no run", `"run": "east"`, `"run": "west"`, "installed[0].run", jobfile.ErrRoom},
		{"installed past the run", `"right": "20"`, `"right": "41"`, "installed[0].right", jobfile.ErrRoom},
		{"installed phase", `"left_phase": "0"`, `"left_phase": "2"`, "installed[0].left_phase", jobfile.ErrRoom},
		{"priority as text", `"exposed_end": 9`, `"exposed_end": "9"`, "priorities.exposed_end", jobfile.ErrType},
		{"year as text", `1960`, `"1960"`, "built", jobfile.ErrType},
		{"damp as text", `"damp": true`, `"damp": "yes"`, "finish.house.damp", jobfile.ErrType},
		{"finish field missing", `, "length": "8'"`, ``, "finish.trim.stick.length", jobfile.ErrMissing},
		{"unknown finish", `"house"`, `"home"`, "finish.home", jobfile.ErrUnknown},
	} {
		t.Run(row.name, func(t *testing.T) {
			if strings.Count(sound, row.old) == 0 {
				t.Fatalf("the sound job has no %s", row.old)
			}
			_, err := jobfile.Read(strings.NewReader(strings.Replace(sound, row.old, row.new, 1)))
			hit := slices.IndexFunc(fault.All(err), func(f *fault.Fault) bool {
				return f.Path.String() == row.path && errors.Is(f, row.kind) && f.Line > 0 && f.Column > 0
			})
			if hit < 0 {
				t.Errorf("Read: %v\nwant a fault at %s, kind %q", err, row.path, row.kind)
			}
			fmt.Fprintf(&said, "%s\n%v\n\n", row.name, err)
		})
	}
	fractiontest.Golden(t, "testdata/faults.txt", said.String())
}

// The text of a fault has the place, the value, the problem and what would do.
func TestFaultText(t *testing.T) {
	const metric = `{"units": "mm", "profile": "MDF sheet 100 mm", "stock": [{"name": "board", "width": "100", "length": "2400"}],
		"runs": [{"name": "wall", "width": "1834", "left": {"kind": "exposed"}, "right": {"kind": "exposed"},
		"heights": [{"at": "0", "top": "1402"}, {"at": "1834", "top": "1402"}]}]}`
	for _, row := range []struct{ name, job, old, new, want string }{
		{"length", sound, `"63 1/4"`, `"63 1/0"`,
			`runs[0].heights[1].top: "63 1/0": zero denominator; want a length in quotes, such as "63 1/4"`},
		{"lengths as the tape reads", metric, `"heights": [`, `"focal": [{"from": "10", "to": "1850.5", "prominence": 1}], "heights": [`,
			`runs[0].focal[0].to: "1850.5": not accepted; want a place to the right of 10 mm, and within the run, which is 1834 mm wide`},
		{"a width in no other unit", strings.Replace(metric, "MDF sheet", "MDF strip", 1), `"width": "100"`, `"width": "106"`,
			`stock[0].width: "106": not accepted; want what a board shows, one repeat of the pattern: the planner does not saw tongues and laps`},
		{"a distance in no other unit", strings.Replace(metric, `"right": {"kind": "exposed"}`, `"right": {"kind": "exposed", "lean": "-10"}`, 1), `"heights": [`,
			`"openings": [{"name": "niche", "kind": "other", "left": "1700", "bottom": "5", "width": "130", "height": "70"}], "heights": [`,
			`runs[0].openings[0]: not accepted; want an opening 2 marks of the tape clear of where the end of the run leans, or that takes that whole, or no lean there`},
		{"a count that is no whole number", sound, `"count": 4`, `"count": 4.5`, `stock[0].count: 4.5: not a whole number, or too great; want a whole number`},
		{"no such run", sound, `"run": "east"`, `"run": "west"`, `installed[0].run: "west": not accepted; want a run of the room`},
		{"what a list is not", sound, `"features": [`, `"features": {}, "x": [`,
			`profile.features: this is an object; want a list
profile.x: no such field; want one of name, features, thickness, wide_flats, boards, cover, width, edges, tongue, lap, lengths, status, source`},
		{"what a profile may be", sound, `"profile": ` + ownProfile + `,`, ``,
			`profile: missing; want a text in quotes, or an object with the fields name, features, thickness, wide_flats, boards, cover, width, edges, tongue, lap, lengths, status, source: the name of a ready profile, or a profile of the job's own`},
		{"what a profile is called now", metric, `"MDF sheet 100 mm"`, `"metric board 100"`,
			`profile: "metric board 100": is now "MDF sheet 100 mm"; want that profile, with stock as wide as it shows`},
		{"what another package found", sound, `"damp": true`, `"studs": "1/2"`, `finish.house.studs: "1/2": not accepted; want at least 1`},
		{"a word among the materials", sound, `"damp": true`, `"material": "wood"`,
			`finish.house.material: "wood": no such word here; want one of mdf, hardboard, plywood, solid wood, plastic, noncombustible`},
		{"a length among the materials", sound, `"damp": true`, `"datum": 36`,
			`finish.house.datum: 36: a JSON number is no exact length; want a length in quotes, such as "36"`},
		{"two ways at once", sound, `"kind": "window", `, `"kind": "window", "width": "20", `,
			`runs[0].openings[1].width: "20": it is given in another way already; want either an outline, or width and height`},
	} {
		t.Run(row.name, func(t *testing.T) {
			if !strings.Contains(row.job, row.old) {
				t.Fatalf("the job has no %s", row.old)
			}
			_, err := jobfile.Read(strings.NewReader(strings.Replace(row.job, row.old, row.new, 1)))
			if err == nil || inFile.ReplaceAllString(err.Error(), "") != row.want {
				t.Errorf("Read: %v\nwant, with places,  %s", err, row.want)
			}
		})
	}
}

// inFile is the lines and columns of faults, which TestFaults looks at.
var inFile = regexp.MustCompile(`(?m) \(line \d+, column \d+\)`)

func TestNotAJob(t *testing.T) {
	for _, row := range []struct{ name, input, says string }{
		{"nothing", "", "line 1, column 1: not JSON: the file ends too early"},
		{"cut short", sound[:200], "ends too early"},
		{"cut short after a value", `{"runs": [{"name": "a"}, 3`, "runs (line 1, column 27): not JSON: the file ends too early"},
		{"cut short after an object", `{"units": "in", "saw": {}`, "line 1, column 26: not JSON: the file ends too early"},
		{"stray comma", "{\n  \"title\": ,}", "title (line 2, column 13): not JSON: a value should stand where ',' does"},
		{"missing comma", "{\"title\": \"a\"\n\"tape\": \"1\"}", "line 2, column 1: not JSON: a comma or a quote is missing before '\"'"},
		{"missing comma after an object", `{"saw": {"kerf": "0"} "tape": "1"}`, "line 1, column 23: not JSON: a comma or a quote is missing before '\"'"},
		{"missing comma in a list", `{"runs": [1 2]}`, "runs[1] (line 1, column 13): not JSON: a comma or a quote is missing before '2'"},
		{"missing first quote", `{"runs": [{"width": 18 1/16"}]}`, "runs[0] (line 1, column 24): not JSON: a comma or a quote is missing before '1'"},
		{"missing last quote", "{\"title\": \"a,\n\"tape\": \"1\"}", "title (line 1, column 11): not JSON: a text is not closed with a quote"},
		{"missing colon", `{"title" "a"}`, "title (line 1, column 10): not JSON: a colon is missing before '\"'"},
		{"missing colon after letters of two bytes", "{\"a\": 1,\n\"üü\" 2}", `["üü"] (line 2, column 6): not JSON: a colon is missing before '2'`},
		{"commas before a bracket", `{"stock": [1,,]}`, "stock[1] (line 1, column 15): not JSON: a value should stand where ',' does"},
		{"nothing before a brace", `{"runs": [{"name": "a"}, {"b": }]}`, "runs[1].b (line 1, column 32): not JSON: a value is missing before the closing '}'"},
		{"nothing before a bracket", `{"runs": ]`, "runs (line 1, column 10): not JSON: a value is missing before the closing ']'"},
		{"commas before a brace", `{"title": "a",,}`, "line 1, column 15: not JSON: the name of a field, in quotes, should stand where ',' does"},
		{"comment not closed", "{\n/* mine\n}", "line 2, column 1: not JSON: a comment begins with //"},
		{"field without quotes", `{title: "a"}`, "line 1, column 2: not JSON: the name of a field, in quotes, should stand where 't' does"},
		{"text without quotes", `{"title": kitchen}`, "title (line 1, column 11): not JSON: a value should stand where 'k' does; texts and lengths are in quotes"},
		{"word cut short", `{"closed": tru}`, "closed (line 1, column 12): not JSON: invalid character '}' in literal true (expecting 'e')"},
		{"escape of no kind", `{"title": "a\x"}`, "title (line 1, column 11): not JSON: invalid character 'x' in string escape code"},
		{"curly quotes", `{"title": “kitchen”}`, "title (line 1, column 11): not JSON: '“' is not the straight quote"},
		{"two jobs", "{}\n {}", "line 2, column 2: not JSON: something follows the end of the value"},
		{"trailing word", sound + " x", "something follows"},
		{"a list", "[]", "line 1, column 1: this is a list; want an object with the fields $schema, title,"},
		{"a number", "7", "this is a number"},
		{"null", "null", "this is null"},
		{"not text", "{\"title\": \"\xff\"}", "not UTF-8"},
		{"as deep as can be", strings.Repeat("[", 25) + strings.Repeat("]", 25), "line 1, column 1: this is a list"},
		{"too deep", strings.Repeat("[", 5000), "(line 1, column 26): not JSON: lists and objects nest deeper than 24"},
		{"as long as can be", strings.Repeat(" ", jobfile.MaxBytes-2) + "[]", "line 1, column 4194303: this is a list"},
		{"too long", strings.Repeat(" ", jobfile.MaxBytes-1) + "[]", "line 1, column 1: not JSON: the file has more than 4194304 bytes"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := jobfile.Read(strings.NewReader(row.input))
			if len(fault.All(err)) != 1 || !strings.Contains(err.Error(), row.says) {
				t.Errorf("Read = %v, want faults that say %q", err, row.says)
			}
		})
	}
}

func TestAllFaultsInTheOrderOfTheFile(t *testing.T) {
	broken := sound
	for _, change := range [][2]string{
		{`"tape": "1/16"`, `"tape": "x"`}, {`"kerf": "1/8"`, `"kerf": "y"`}, {`"63 1/4"`, `"z"`},
		{`"width": "40"`, `"widht": "40"`}, {`"left_phase": "0"`, `"left_phase": 0`},
	} {
		broken = strings.Replace(broken, change[0], change[1], 1)
	}
	_, err := jobfile.Read(strings.NewReader(broken))
	var got []string
	for _, f := range fault.All(err) {
		got = append(got, f.Path.String())
	}
	want := []string{"tape", "saw.kerf", "runs[0].heights[1].top", "runs[1].width", "runs[1].widht", "installed[0].left_phase"}
	if !slices.Equal(got, want) {
		t.Errorf("paths %q, want %q", got, want)
	}
}

// What is wrong with the materials is said beside what cannot be read, and not of what was not read.
func TestFaultsOfMaterialsAreSaidAtOnce(t *testing.T) {
	_, err := jobfile.Read(strings.NewReader(strings.NewReplacer(`"tape": "1/16"`, `"tape": "x"`, `{"damp": true}, "tax": 0.08`, `{"studs": "seven"}, "tax": "x",
		"boxes": [{"name": "b", "gangs": "two", "set_back": "y"}], "paint": {"top": {"containers": "none"}}`).Replace(sound)))
	var got []string
	for _, f := range fault.All(err) {
		got = append(got, f.Path.String())
	}
	want := []string{"tape", "finish.house.studs", "finish.tax", "finish.boxes[0].gangs", "finish.boxes[0].set_back", "finish.paint.top.containers"}
	if !slices.Equal(got, want) {
		t.Errorf("paths %q, want %q", got, want)
	}
}

// A box may stand in the corner that an outline leaves free.
func TestBoxBesideASlantedOutlineIsSound(t *testing.T) {
	slanted := strings.Replace(sound, `["20","0"],["20","60"],["0","60"]]`, `["20","0"],["0","60"]]`, 1)
	beside := strings.Replace(slanted, `"left": "10", "bottom": "5"`, `"left": "46", "bottom": "30"`, 1)
	if beside == slanted || slanted == sound {
		t.Fatal("the sound job has other openings now")
	}
	if _, err := jobfile.Read(strings.NewReader(beside)); err != nil {
		t.Error(err)
	}
}
