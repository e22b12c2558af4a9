package book

import (
	"strings"
	"unicode/utf8"

	"example.com/groovewright/fraction"
)

// lineWidth is the most characters of a printed line.
const lineWidth = 80

// text is a plain text of lines of at most [lineWidth] characters, with lengths
// as a person's tape shows them.
type text struct {
	b    strings.Builder
	tape fraction.Tape
}

func newText(tape fraction.Tape) *text { return &text{tape: tape} }

// written returns a text as write writes it. Where a length is beyond exact arithmetic, which it is in
// no plan that was made, the text ends there and says so.
func written(tape fraction.Tape, write func(t *text)) string {
	t := newText(tape)
	err := func() (err error) {
		defer fraction.Catch(&err)
		write(t)
		return nil
	}()
	if err != nil {
		t.gap()
		t.para("Here the text ends: " + err.Error())
	}
	return t.String()
}

// String returns what was written.
func (t *text) String() string { return t.b.String() }

// length writes a length as the tape shows it. One that is too short for the
// tape's marks is written exactly, since "about nothing" helps nobody.
func (t *text) length(x fraction.Length) string {
	if mark, _ := x.Round(t.tape.Mark, fraction.Nearest); mark.IsZero() {
		return fraction.Tape{Unit: t.tape.Unit}.Format(x)
	}
	return t.tape.Format(x)
}

// about writes a length to the nearest mark, for what is only looked at.
func (t *text) about(x fraction.Length) string {
	near, off := x.Round(t.tape.Mark, fraction.Nearest)
	if off.IsZero() || near.IsZero() {
		return t.length(x)
	}
	return "about " + t.tape.Format(near)
}

// gap leaves one empty line.
func (t *text) gap() {
	if s := t.b.String(); s != "" && !strings.HasSuffix(s, "\n\n") {
		t.b.WriteByte('\n')
	}
}

// heading begins a part; level 1 is the title, level 2 a section.
func (t *text) heading(level int, s string) {
	t.gap()
	lines := fold(s, lineWidth)
	under := map[int]string{1: "=", 2: "-"}[level]
	longest := 0
	for _, line := range lines {
		t.b.WriteString(line + "\n")
		longest = max(longest, utf8.RuneCountInString(line))
	}
	if under != "" {
		t.b.WriteString(strings.Repeat(under, longest) + "\n")
	}
}

// para writes a paragraph.
func (t *text) para(s string) { t.hang("", s) }

// hang writes a paragraph after a label; its further lines stand under the
// first one's text. Line breaks in it are kept.
func (t *text) hang(label, s string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(label))
	for part := range strings.SplitSeq(s, "\n") {
		for _, line := range fold(part, lineWidth-len(indent)) {
			t.b.WriteString(strings.TrimRight(label+line, " ") + "\n")
			label = indent
		}
	}
}

// table writes rows under a head, two spaces between the columns. Where the line
// has no room for all of them the widest columns are folded, which are those of
// words: figures stay on one line as long as they can.
func (t *text) table(indent int, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	over := indent - 2 - lineWidth
	for _, w := range widths {
		over += w + 2
	}
	for ; over > 0; over-- {
		widest := 0
		for i, w := range widths {
			if w > widths[widest] {
				widest = i
			}
		}
		widths[widest] = max(widths[widest]-1, 1)
	}
	for _, row := range rows {
		t.row(indent, widths, row)
	}
}

// row writes one row of a table in as many lines as its longest cell needs.
func (t *text) row(indent int, widths []int, row []string) {
	cells := make([][]string, len(row))
	lines := 1
	for i, cell := range row {
		cells[i] = fold(cell, widths[i])
		lines = max(lines, len(cells[i]))
	}
	for k := range lines {
		line := strings.Repeat(" ", indent)
		for i := range cells {
			cell := ""
			if k < len(cells[i]) {
				cell = cells[i][k]
			}
			line += cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)+2)
		}
		t.b.WriteString(strings.TrimRight(line, " ") + "\n")
	}
}

// fold breaks a text into lines of at most width characters, between words
// where it can. It returns at least one line.
func fold(s string, width int) []string {
	width = max(width, 1)
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		switch {
		case line == "":
			line = word
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) <= width:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
		for utf8.RuneCountInString(line) > width {
			runes := []rune(line)
			lines, line = append(lines, string(runes[:width])), string(runes[width:])
		}
	}
	return append(lines, line)
}
