package book

import (
	"bytes"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"example.com/groovewright/wall/drawing"
)

// How many rows of each kind a measuring sheet has room for on a run's page.
const (
	surveyStock     = 3
	surveyHeights   = 8
	surveyOpenings  = 5
	surveyInstalled = 1
	surveyBases     = 3
	surveyCorners   = 8
	mostRuns        = 99
)

// blank is one box to write in. Its path is that of the field of the job file
// which takes what is written there.
type blank struct {
	Path    string
	Label   string
	Choices []string // for a field that takes one of a few words
	Wide    bool     // for words, not a number
	Given   string   // what stands there before anyone has taped
}

// group is a heading with rows of boxes.
type group struct {
	Number string // of the place on the drawing
	Title  string
	Says   string
	Rows   [][]blank
}

// form is one page: what holds for the whole room, or one run.
type form struct {
	Title   string
	Says    string
	Drawing template.HTML
	Groups  []group
}

// Survey returns a measuring sheet to print before there is any job: for a
// number of runs from 1 to 99, one page for the room, one for each run, and one
// for an opening of another outline than a rectangle. Every box is named by the
// path of its field in the job file.
func Survey(runs int) ([]byte, error) {
	if runs < 1 || runs > mostRuns {
		return nil, fmt.Errorf("a measuring sheet for %d runs: expected 1 to %d", runs, mostRuns)
	}
	data := struct {
		Style template.CSS
		Runs  int
		Forms []form
	}{Style: style(), Runs: runs}
	data.Forms = append(data.Forms, roomForm())
	for i := range runs {
		data.Forms = append(data.Forms, runForm(i))
	}
	data.Forms = append(data.Forms, oddForm())
	parsed, err := template.New("survey.tmpl").ParseFS(texts, "survey.tmpl")
	if err != nil {
		return nil, err
	}
	var w bytes.Buffer
	if err := parsed.Execute(&w, data); err != nil {
		return nil, err
	}
	return w.Bytes(), nil
}

// row makes boxes for some fields of one object of the job file.
func row(prefix string, fields ...string) []blank {
	var all []blank
	for _, field := range fields {
		all = append(all, blank{Path: prefix + field, Label: fieldLabel(prefix + field), Wide: field == "name" || field == "title"})
	}
	return all
}

// fieldLabel is what stands over a box: its path, on a run's page without the run,
// which the page's heading names.
func fieldLabel(path string) string {
	if strings.HasPrefix(path, "runs[") {
		_, path, _ = strings.Cut(path, ".")
	}
	return path
}

// rows makes rows of boxes for the objects of a list.
func rows(count int, list string, fields ...string) [][]blank {
	var all [][]blank
	for i := range count {
		boxes := row(fmt.Sprintf("%s[%d].", list, i), fields...)
		for n := 1; n < len(boxes); n++ {
			boxes[n].Label = fields[n] // the first box of the row names the object
		}
		all = append(all, boxes)
	}
	return all
}

// roomForm is what is written down once for the room.
func roomForm() form {
	units := blank{Path: "units", Label: "units", Choices: []string{"in", "mm", "cm"}}
	closed := blank{Path: "closed", Label: "closed", Choices: []string{"true", "false"}}
	boards := blank{Path: "profile.boards", Label: "profile.boards", Choices: []string{"true", "false"}}
	features := rows(4, "profile.features", "kind", "width", "depth")
	for i := range features {
		features[i][0].Choices = []string{"flat", "bead", "groove"}
	}
	installed := rows(surveyInstalled, "installed", "run", "left", "right", "left_phase")
	return form{
		Title: "The room",
		Says:  "Once for the whole room. A field that stays empty keeps its default.",
		Groups: []group{
			{Title: "The job", Says: "closed: the last run meets the first. tape: the smallest mark you read. built: the year of the house, for old paint.",
				Rows: [][]blank{append(row("", "title"), units), append(row("", "tape", "built"), closed)}},
			{Title: "The pattern, from one repeat of the board", Says: "From the left edge of one repeat: every flat, bead and groove in turn. A ready profile needs only its name.",
				Rows: append([][]blank{append(row("profile.", "name", "thickness"), boards)}, features...)},
			{Title: "The sheets to buy or on hand", Says: "length runs along the grooves. left_phase: from the start of the repeat to the sheet's left edge. count only where there are no more.",
				Rows: rows(surveyStock, "stock", "name", "width", "length", "left_phase", "count", "price")},
			{Title: "The saw and the gaps", Says: "kerf: width of the blade's cut. square_up: taken off both factory ends.",
				Rows: [][]blank{row("saw.", "kerf", "square_up"), row("gaps.", "top", "bottom", "side", "seam", "box", "window")}},
			{Title: "Panels that are on the wall already", Rows: installed},
		},
	}
}

// inPairs puts two rows on one line.
func inPairs(single [][]blank) [][]blank {
	var pairs [][]blank
	for pair := range slices.Chunk(single, 2) {
		pairs = append(pairs, slices.Concat(pair...))
	}
	return pairs
}

// runForm is one run.
func runForm(i int) form {
	at := fmt.Sprintf("runs[%d].", i)
	kinds := []string{"exposed", "inside corner", "outside corner", "covered"}
	ends := [][]blank{
		{{Path: at + "left.kind", Label: "left.kind", Choices: kinds}, {Path: at + "left.lean", Label: "left.lean"}},
		{{Path: at + "right.kind", Label: "right.kind", Choices: kinds}, {Path: at + "right.lean", Label: "right.lean"}},
	}
	heights := rows(surveyHeights, at+"heights", "at", "bottom", "top")
	heights[0][0].Given = "0"
	heights = inPairs(heights)
	openings := rows(surveyOpenings, at+"openings", "name", "kind", "left", "bottom", "width", "height", "rise", "gangs")
	for n := range openings {
		openings[n][1].Choices = []string{"box", "window", "other"}
	}
	return form{
		Title:   fmt.Sprintf("Run %d: runs[%d] of the job file", i+1, i),
		Says:    "Face the wall. Strike a level line, the datum (usually the counter), and tape everything from it and from the run's left end.",
		Drawing: template.HTML(drawing.Survey(i + 1).Element()),
		Groups: []group{
			{Number: "1", Title: "Width, along the datum", Says: "From end to end, not added up from parts.", Rows: [][]blank{row(at, "name", "width")}},
			{Number: "2", Title: "Both ends", Says: "lean: plumb a line at the foot; how far the top stands to the right of it (to the left: with a minus).", Rows: ends},
			{Number: "3", Title: "Heights, left to right", Says: "At both ends, at both sides of every step (two rows at one place) and every 4 ft between. top is above the datum; bottom too, below it with a minus.", Rows: heights},
			{Number: "4", Title: "Boxes, windows and other openings", Says: "left from the run's left end, bottom from the datum; then its own width and height. rise: of an arched head above that height. gangs: devices side by side, for a box. Any other outline: last page.", Rows: openings},
			{Title: "Where the eye rests, breaks, and cooking", Says: "prominence: 1 is usual, more where a seam is seen more. A break is where the pattern may start afresh. cooking: behind or beside the appliance.",
				Rows: [][]blank{slices.Concat(rows(1, at+"focal", "from", "to", "prominence")[0], rows(1, at+"breaks", "at", "prominence")[0], rows(1, at+"cooking", "from", "to")[0])}},
		},
	}
}

// oddForm is one opening that is no rectangle, on whichever run it stands. The
// runs and openings of its paths have no number before it is filled in.
func oddForm() form {
	const at = "runs[ ].openings[ ]."
	name := row(at, "name", "kind")
	name[1].Choices = []string{"box", "window", "other"}
	var corners, bases, taped [][]blank
	for i := range surveyBases {
		bases = append(bases, pointBoxes(fmt.Sprintf("%spoints.bases[%d]", at, i), "x", "y"))
	}
	for i := range surveyCorners {
		corners = append(corners, pointBoxes(fmt.Sprintf("%soutline[%d]", at, i), "x", "y"))
		taped = append(taped, pointBoxes(fmt.Sprintf("%spoints.corners[%d].distances", at, i), "from base 0", "from base 1", "from base 2"))
	}
	side := blank{Path: at + "points.side", Label: "points.side", Choices: []string{"left", "right"}}
	return form{
		Title: "An opening of another outline: runs[ ].openings[ ] of the job file",
		Says:  "One page for each such opening. Number its corners on a sketch, counterclockwise from the lower left, and take one of the two ways below.",
		Groups: []group{
			{Title: "The opening", Rows: [][]blank{name}},
			{Title: "Corner by corner", Says: "left and bottom: of the first corner, from the run's left end and the datum. outline: every corner from there, to the right and up.",
				Rows: slices.Concat([][]blank{row(at, "left", "bottom")}, inPairs(corners))},
			{Title: "By taped distances", Says: "bases: two or three points that you can measure, from the run's left end and the datum. Then tape every corner from each of them; a third distance checks the other two. side: on which side of the line from base 0 to base 1 the corners lie, left being above it where base 1 stands to the right.",
				Rows: slices.Concat([][]blank{slices.Concat(bases...), {side}}, taped)},
		},
	}
}

// pointBoxes makes boxes for the members of a list of lengths; what each stands
// for is written behind its label.
func pointBoxes(path string, members ...string) []blank {
	var all []blank
	for i, member := range members {
		place := fmt.Sprintf("%s[%d]", path, i)
		_, short, _ := strings.Cut(place, "openings[ ].")
		all = append(all, blank{Path: place, Label: short + " " + member})
	}
	return all
}
