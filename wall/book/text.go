package book

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/groovewright/fraction"
)

// lineWidth is the most columns of a printed line.
const lineWidth = 80

// text is a plain text of lines of at most [lineWidth] columns, with lengths as a person's tape
// shows them.
type text struct {
	strings.Builder
	tape fraction.Tape
	full bool // with what stands behind each figure
	shop bool // for who works by it: without the words of a search
}

// written returns a text as write writes it. Where a length is beyond exact arithmetic, which it is
// in no plan that was made, the text ends there and says so.
func written(tape fraction.Tape, full bool, write func(t *text)) string {
	t := &text{tape: tape, full: full}
	err := func() (err error) {
		defer fraction.Catch(&err)
		write(t)
		return nil
	}()
	if err != nil {
		t.gap()
		t.para("Here the text ends: " + err.Error())
	}
	return isolated(t.String())
}

// either returns the first words where something holds, else the others.
func either[T any](holds bool, yes, no T) T {
	if holds {
		return yes
	}
	return no
}

// labelLong is the most letters of a title on a label.
const labelLong = 60

// clip shortens the title of a job to two lines of a label, after a word if it has any there.
func clip(title string) string {
	letters := []rune(title)
	if len(letters) <= labelLong {
		return title
	}
	short := string(letters[:labelLong-1])
	if at := strings.LastIndex(short, " "); at > len(short)/2 {
		short = short[:at]
	}
	return strings.TrimSpace(short) + "…"
}

// count writes a number with its noun.
func count(n int, noun string) string { return strconv.Itoa(n) + " " + noun + either(n == 1, "", "s") }

// plural writes a noun before the labels of one thing or of several.
func plural(noun, labels string) string {
	return noun + either(strings.Contains(labels, " "), "s ", " ") + labels
}

// length writes a length as the tape shows it.
func (t *text) length(x fraction.Length) string { return t.tape.Format(x) }

// given writes a size that somebody gave, such as that of a blade, exactly; one that is no fraction
// of an inch, as a metric one in a job in inches (1 mm is 5/127), as the tape shows it.
func (t *text) given(x fraction.Length) string {
	if t.tape.Unit == fraction.Inch && (x.Den() > fraction.FinestError || x.Den()%127 == 0) {
		return t.length(x)
	}
	return fraction.Tape{Unit: t.tape.Unit}.Format(x)
}

// about writes a length to half a mark, for what is only looked at.
func (t *text) about(x fraction.Length) string {
	_, off := x.Round(t.tape.Mark.Div(2), fraction.Nearest)
	return either(off.IsZero(), "", "about ") + t.nearest(x)
}

// nearest writes a length to the nearest mark, or to half a mark where that is exact.
func (t *text) nearest(x fraction.Length) string {
	if near, off := x.Round(t.tape.Mark, fraction.Nearest); off.Mul(2).Abs() != t.tape.Mark && !near.IsZero() {
		return t.tape.Format(near)
	}
	return t.length(x)
}

// wide says how wide something is that is only looked at, also where that is nothing.
func (t *text) wide(x fraction.Length) string {
	return either(x.IsZero(), "running out to nothing", t.about(x)+" wide")
}

// size writes a width and a length.
func (t *text) size(width, length fraction.Length) string {
	return t.length(width) + " x " + t.length(length)
}

// gap leaves one empty line.
func (t *text) gap() {
	if s := t.String(); s != "" && !strings.HasSuffix(s, "\n\n") {
		t.WriteByte('\n')
	}
}

// heading begins a text with its title, underlined.
func (t *text) heading(title string) {
	longest := 0
	for _, line := range fold(title, lineWidth) {
		t.WriteString(line + "\n")
		longest = max(longest, columns(line))
	}
	t.WriteString(strings.Repeat("=", longest) + "\n")
}

// begin begins a section with its title, in capitals.
func (t *text) begin(title string) {
	t.gap()
	t.para(strings.ToUpper(title))
}

// section writes a part that says something of each of a list, and nothing where that is empty.
func section[E any](t *text, title string, all []E, say func(i int, e E)) {
	if len(all) > 0 {
		t.begin(title)
	}
	for i, e := range all {
		say(i, e)
	}
}

// step writes what is to be done, with its number and a box to tick.
func (t *text) step(indent string, number int, s string) {
	t.hang(fmt.Sprintf("%s%2d [ ] ", indent, number), s)
}

// para writes a paragraph.
func (t *text) para(s string) { t.hang("", s) }

// hang writes a paragraph after a label; its further lines stand under the first one's text. Line
// breaks in it are kept.
func (t *text) hang(label, s string) {
	indent := strings.Repeat(" ", columns(label))
	for part := range strings.SplitSeq(s, "\n") {
		for _, line := range fold(part, lineWidth-len(indent)) {
			t.WriteString(strings.TrimRight(label+line, " ") + "\n")
			label = indent
		}
	}
}

// table writes rows under a head, which may be nil, two spaces between the columns, and nothing
// where there are no rows. Where the line has no room for all columns the widest are folded, which
// are those of words: figures stay on one line as long as they can.
func (t *text) table(indent int, head []string, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	if head != nil {
		rows = append([][]string{head}, rows...)
	}
	widths := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			widths[i] = max(widths[i], columns(cell))
		}
	}
	over := indent - 2 - lineWidth
	for _, w := range widths {
		over += w + 2
	}
	for ; over > 0; over-- {
		widest := slices.Index(widths, slices.Max(widths))
		widths[widest] = max(widths[widest]-1, 1)
	}
	for _, row := range rows {
		var lines []string
		column := indent // at which the next cell begins
		for i, cell := range row {
			for k, part := range fold(cell, widths[i]) {
				if k == len(lines) {
					lines = append(lines, "")
				}
				lines[k] += strings.Repeat(" ", max(column-columns(lines[k]), 0)) + part
			}
			column += widths[i] + 2
		}
		for _, line := range lines {
			t.WriteString(strings.TrimRight(line, " ") + "\n")
		}
	}
}

// fold breaks a text into lines of at most width columns, between words where it can, and never
// between a whole number and its fraction or unit unless these alone are wider. It returns at least
// one line.
func fold(s string, width int) []string {
	width = max(width, 1)
	var lines []string
	line := ""
	words := strings.Fields(s)
	for i := len(words) - 1; i > 0; i-- {
		pair := words[i-1] + " " + words[i]
		if at := wholeAndFraction.FindStringIndex(pair); at != nil && at[0] == len(words[i-1])-1 && columns(pair) <= width {
			words = slices.Replace(words, i-1, i+1, pair)
		}
	}
	for _, word := range words {
		joined := strings.TrimSpace(line + " " + word)
		if line != "" && columns(joined) > width {
			lines, joined = append(lines, line), word
		}
		line = joined
		for columns(line) > width && head(line, width) != line {
			first := head(line, width)
			lines, line = append(lines, first), line[len(first):]
		}
	}
	return append(lines, line)
}

// sentence begins a text with a capital and ends it with a full stop.
func sentence(text string) string {
	text = capital(strings.TrimSpace(text))
	if text != "" && !strings.ContainsAny(text[len(text)-1:], ".!?") {
		text += "."
	}
	return text
}

// capital begins a text with a capital.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// whole keeps whole numbers with their fractions or units on one line.
func whole(says string) string { return wholeAndFraction.ReplaceAllString(says, "$1\u00a0$2") }

// wholeAndFraction is the space after a whole number: before its fraction or its unit.
var wholeAndFraction = regexp.MustCompile(`(\d) (\d+/|mm\b|cm\b)`)

// unbroken writes a length whose whole, fraction and unit stay on one line.
func (t *text) unbroken(l fraction.Length) string {
	return whole(t.tape.Format(l))
}
