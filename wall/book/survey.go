package book

import (
	"fmt"
	"html/template"
	"slices"
	"strings"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/drawing"
)

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

// Survey returns a measuring sheet to print before there is any job: for a number of runs from 1 to
// 99, one page for the room, one for each run, and one for an opening of another outline than a
// rectangle. Every box is named by the path of its field in the job file.
func Survey(runs int) ([]byte, error) {
	if err := sensible(runs); err != nil {
		return nil, err
	}
	var drawings []template.HTML
	for i := range runs {
		drawings = append(drawings, template.HTML(drawing.Survey(i+1).Element()))
	}
	funcs := template.FuncMap{"rows": rows, "count": number}
	return execute("survey.tmpl", funcs, struct {
		Style    template.CSS
		Drawings []template.HTML // of each run
	}{style(), drawings})
}

// Starter returns a first job file to change, with comments and every field that a first job needs:
// an invented room of 1 to 99 runs, which can be planned as it is.
func Starter(runs int) ([]byte, error) {
	if err := sensible(runs); err != nil {
		return nil, err
	}
	ends := slices.Repeat([]string{"inside corner"}, runs+1) // the end between two runs is that of both
	ends[0], ends[runs] = "exposed", "exposed"
	return execute("starter.tmpl", template.FuncMap{"count": number, "right": func(i int) string { return ends[i+1] }}, ends[:runs])
}

// number counts from 1.
func number(i int) int { return i + 1 }

// sensible fails for a number of runs that no sheet is made for.
func sensible(runs int) error {
	if runs < 1 || runs > mostRuns {
		return &fault.Fault{Value: fmt.Sprint(runs), Want: fmt.Sprintf("a number of runs from 1 to %d", mostRuns)}
	}
	return nil
}

// rows reads rows of boxes, each a line of paths of fields of the job file after a prefix:
//
//	tape; closed=true|false            a box, and one that takes one of a few words
//	points.bases[0][0] x               a box with a word behind its path
//	focal[0]: from; to                 the fields of one object, which the first of them names
//	8x2 heights[#]: at; bottom; top    eight objects, two to a line
func rows(prefix string, lines ...string) (all [][]blank) {
	for _, line := range lines {
		count, abreast := 1, 1
		if n, _ := fmt.Sscanf(line, "%dx%d", &count, &abreast); n > 0 {
			_, line, _ = strings.Cut(line, " ")
		}
		for i := range count {
			if i%abreast == 0 {
				all = append(all, nil)
			}
			row := &all[len(all)-1]
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
	}
	return all
}
