package drawing

import (
	"fmt"
	"regexp"
	"strings"
	"unicode"

	"example.com/groovewright/fraction"
)

// figure is a text from the plan as people read it, with the path of the plan's JSON that it was
// read from. The path is written into the drawing, so that a test can hold it against the plan.
type figure struct{ text, from string }

func (f figure) String() string { return f.text }

// length is a length of the plan, without the unit that the title block has, and its path.
func (c *canvas) length(l fraction.Length, path string) figure {
	return figure{strings.ReplaceAll(c.tape.Format(l), " "+c.tape.Unit.String(), ""), path}
}

// ref writes the path of a place in the plan.
func ref(format string, args ...any) string { return fmt.Sprintf(format, args...) }

// term is one length of a sum and its path with the sign before it.
type term struct {
	length fraction.Length
	path   string
}

func plus(l fraction.Length, path string) term  { return term{l, " + " + path} }
func minus(l fraction.Length, path string) term { return term{zero.Sub(l), " - " + path} }

// sum is the sum of some lengths of the plan.
func (c *canvas) sum(terms ...term) figure {
	var total term
	for _, t := range terms {
		total = term{total.length.Add(t.length), total.path + t.path}
	}
	return c.length(total.length, strings.TrimPrefix(strings.TrimPrefix(total.path, " + "), " "))
}

// counted is what the drawing counts for itself and its table repeats, such as the name of a page.
func counted(text string) figure { return figure{text, "count"} }

// line is a line of text: strings are the drawing's own words, figures come from the plan.
type line []any

func (l line) String() string {
	var b strings.Builder
	for _, part := range l {
		fmt.Fprint(&b, part)
	}
	return b.String()
}

// width is an upper estimate of the width of the line at a size of type.
func (l line) width(size float64) float64 { return textWidth(l.String(), size) }

// aLength is one as a tape writes it, in which no line breaks.
var aLength = regexp.MustCompile(`\d+( \d+/\d+)?( (plus|less) \d+/\d+)?( mm| cm)?`)

// wrap breaks the line at spaces into lines up to a width; a word wider than most goes on in the next line, by three letters
// or more.
func (l line) wrap(width, most float64) (lines []line) {
	space := ""
	for _, part := range l {
		f, _ := part.(figure) // the drawing's own words have no path
		whole := aLength.ReplaceAllStringFunc(fmt.Sprint(part), func(l string) string { return strings.ReplaceAll(l, " ", "\x00") })
		for i, word := range strings.Split(whole, " ") {
			if i > 0 {
				space = " "
			}
			for rest, broken := []rune(strings.ReplaceAll(word, "\x00", " ")), false; len(rest) > 0; space = " " {
				end, last, least := len(rest), len(lines)-1, either(rest[0] < firstIdeograph, 3, 1)
				for end > least && len(rest) >= 2*least && !strings.Contains(word, "\x00") && textWidth(string(rest[:end])+"-"[:min(1, len(rest)-end)], typeSize) > most {
					end = min(end-1, len(rest)-least)
				}
				hyphen := end < len(rest) && unicode.IsLetter(rest[end-1]) && unicode.IsLetter(rest[end]) && rest[end] < firstIdeograph
				f.text, rest = string(rest[:end]), rest[end:]
				if last < 0 || broken || space != "" && lines[last].width(typeSize)+textWidth(space+f.text, typeSize) > width {
					lines, last, space = append(lines, nil), last+1, ""
				}
				lines[last], broken = lines[last].and(space, f), len(rest) > 0
				if hyphen {
					lines[last] = append(lines[last], figure{text: "-"})
				}
			}
			if word != "" {
				space = ""
			}
		}
	}
	return lines
}

// and is the line with one more word, which joins the figure before it if that is of the same path.
func (l line) and(space string, f figure) line {
	if last := len(l) - 1; last >= 0 {
		if before := l[last].(figure); before.from == f.from {
			return append(l[:last], figure{before.text + space + f.text, f.from})
		}
	}
	return append(l, figure{text: space}, f)
}

// widest is the width of the widest of some lines.
func widest(size float64, lines []line) (w float64) {
	for _, l := range lines {
		w = max(w, l.width(size))
	}
	return w
}

// write writes the line at a place; anchor is start, middle or end, and y the base line.
func (l line) write(on *node, class string, x, y float64, anchor string) *node {
	text := on.add("text", "class", class, "paint-order", "stroke", "x", x, "y", y)
	if anchor != "start" {
		text.set("text-anchor", anchor)
	}
	for _, part := range l {
		on := text
		if f, _ := part.(figure); f.from != "" {
			on = text.add("tspan", "data-plan", f.from)
		}
		on.say(fmt.Sprint(part))
	}
	return text
}

// under writes lines under each other from a base line on, the first few bold, and returns where they end.
func (n *node) under(bold int, x, y float64, anchor string, lines ...line) float64 {
	for i, l := range lines {
		l.write(n, either(i < bold, "bold", ""), x, y, anchor)
		y += laneHigh
	}
	return y
}

// seated writes the line in the middle of a box.
func (l line) seated(on *node, class string, at box) {
	l.write(on, class, real(at.middle()), imag(at.middle())+typeSize*.36, "middle")
}

// upright writes the line reading upwards, with its anchor at the place, centered on x.
func (l line) upright(on *node, class string, at point, anchor string) {
	l.write(on, class, 0, 0, anchor).set("transform", "translate("+pen(at+typeSize*.36)+") rotate(-90)")
}
