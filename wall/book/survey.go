package book

import (
	_ "embed"
	"fmt"
	"html/template"
	"strings"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/drawing"
)

// The forms of the measuring sheet: for the room, for a run, and for an opening of any outline. A
// line "# …" begins a form, "## …" a group of boxes, with the number of its place on the drawing,
// "> …" says what they take. Every other line is a row of boxes, each the path of a field of the
// job file:
//
//	tape; closed=true|false            a box, and one that takes one of a few words
//	points.bases[0][0] x               a box with a word behind its path
//	focal[0]: from; to                 the fields of one object, which the first of them names
//	8x2 heights[#]: at; bottom; top    eight objects, two to a line
//
//go:embed survey.txt
var surveyForms string

// mostRuns is the most runs of a measuring sheet.
const mostRuns = 99

// blank is one box to write in. Its path is that of the field of the job file which takes what is
// written there.
type blank struct {
	Path, Label string
	Choices     []string // for a field that takes one of a few words
	Wide        bool     // for words, not a number
	Given       string   // what stands there before anyone has taped
}

// group is a heading with rows of boxes.
type group struct {
	Number, Title, Says string
	Rows                [][]blank
}

// form is one page: what holds for the whole room, one run, or an opening.
type form struct {
	Title, Says string
	Drawing     template.HTML
	Groups      []group
}

// Survey returns a measuring sheet to print before there is any job: for a number of runs from 1 to
// 99, one page for the room, one for each run, and one for an opening of another outline than a
// rectangle. Every box is named by the path of its field in the job file.
func Survey(runs int) ([]byte, error) {
	if runs < 1 || runs > mostRuns {
		return nil, &fault.Fault{Value: fmt.Sprint(runs), Want: fmt.Sprintf("a number of runs from 1 to %d", mostRuns)}
	}
	text := strings.Split("\n"+surveyForms, "\n# ")[1:]
	forms := []form{readForm(text[0], "")}
	for i := range runs {
		words := strings.NewReplacer("{number}", fmt.Sprint(i+1), "{index}", fmt.Sprint(i)).Replace(text[1])
		one := readForm(words, fmt.Sprintf("runs[%d].", i))
		one.Drawing = template.HTML(drawing.Survey(i + 1).Element())
		forms = append(forms, one)
	}
	forms = append(forms, readForm(text[2], "runs[ ].openings[ ]."))
	return execute("survey.tmpl", nil, struct {
		Style template.CSS
		Forms []form
	}{style(), forms})
}

// readForm reads one form whose paths have a prefix.
func readForm(text, prefix string) (f form) {
	f.Title, text, _ = strings.Cut(text, "\n")
	f.Says, text, _ = strings.Cut(text, "\n")
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		last := len(f.Groups) - 1
		if title, ok := strings.CutPrefix(line, "## "); ok {
			number := title[:len(title)-len(strings.TrimLeft(title, "0123456789"))]
			f.Groups = append(f.Groups, group{Number: number, Title: strings.TrimSpace(title[len(number):])})
		} else if says, ok := strings.CutPrefix(line, "> "); ok {
			f.Groups[last].Says = says
		} else if line != "" {
			f.Groups[last].Rows = append(f.Groups[last].Rows, readRows(line, prefix)...)
		}
	}
	return f
}

// readRows reads a line of boxes, which may stand for several rows.
func readRows(line, prefix string) (rows [][]blank) {
	count, abreast := 1, 1
	if n, _ := fmt.Sscanf(line, "%dx%d", &count, &abreast); n > 0 {
		_, line, _ = strings.Cut(line, " ")
	}
	for i := range count {
		if i%abreast == 0 {
			rows = append(rows, nil)
		}
		row := &rows[len(rows)-1]
		object := ""
		for _, field := range strings.Split(strings.ReplaceAll(line, "#", fmt.Sprint(i)), "; ") {
			box := blank{Label: field}
			if of, member, ok := strings.Cut(field, ": "); ok {
				object, field, box.Label = of+".", member, of+"."+member
			}
			if path, words, ok := strings.Cut(field, "="); ok {
				field, box.Choices, box.Label = path, strings.Split(words, "|"), strings.TrimSuffix(box.Label, "="+words)
			}
			field, _, _ = strings.Cut(field, " ")
			box.Path, box.Wide = prefix+object+field, strings.HasSuffix("."+field, ".name") || field == "title"
			if object+field == "heights[0].at" {
				box.Given = "0"
			}
			*row = append(*row, box)
		}
	}
	return rows
}
