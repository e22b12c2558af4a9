package drawing

import (
	"fmt"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// figure is a text from the plan as people read it, with the path of the plan's JSON that it was
// read from. The path is written into the drawing, so that a test can hold every number against
// the plan.
type figure struct{ text, from string }

// scribe writes the plan's lengths as the job's tape shows them.
type scribe struct {
	plan plan.Plan
	tape fraction.Tape
}

// length is a length of the plan and the path of its place.
func (s scribe) length(l fraction.Length, path string) figure { return figure{s.tape.Format(l), path} }

// ref writes the path of a place in the plan.
func ref(format string, args ...any) string { return fmt.Sprintf(format, args...) }

// term is one length of a sum.
type term struct {
	length fraction.Length
	path   string
	minus  bool
}

func plus(l fraction.Length, path string) term  { return term{l, path, false} }
func minus(l fraction.Length, path string) term { return term{l, path, true} }

// sum is the sum of some lengths of the plan.
func (s scribe) sum(terms ...term) figure {
	var total fraction.Length
	from := ""
	for i, t := range terms {
		switch {
		case t.minus:
			total, from = total.Sub(t.length), from+" - "
		case i > 0:
			total, from = total.Add(t.length), from+" + "
		default:
			total = t.length
		}
		from += t.path
	}
	return figure{s.tape.Format(total), strings.TrimPrefix(from, " ")}
}

// word is a text of the plan, such as a name.
func word(text, path string) figure { return figure{text, path} }

// counted is a number that the drawing counts for itself and that its table repeats, such as the
// number of a blemish or the name of a page.
func counted(text string) figure { return figure{text, "count"} }

// line is a line of text: strings are the drawing's own words, figures come from the plan.
type line []any

func (l line) String() string {
	var b strings.Builder
	for _, part := range l {
		switch v := part.(type) {
		case string:
			b.WriteString(v)
		case figure:
			b.WriteString(v.text)
		}
	}
	return b.String()
}

// width is an upper estimate of the width of the line at a size of type.
func (l line) width(size float64) float64 { return textWidth(l.String(), size) }

// write writes the line at a place; anchor is start, middle or end, and y the base line.
func (l line) write(on *node, class string, x, y float64, anchor string) *node {
	text := on.add("text", "class", class, "x", x, "y", y)
	if anchor != "start" {
		text.set("text-anchor", anchor)
	}
	for _, part := range l {
		switch v := part.(type) {
		case string:
			text.say(v)
		case figure:
			text.add("tspan", "data-plan", v.from).say(v.text)
		}
	}
	return text
}

// upright writes the line reading upwards, its end (anchor end) or its start at the place,
// centered on x.
func (l line) upright(on *node, class string, x, y float64, anchor string) {
	l.write(on, class, 0, 0, anchor).set("transform", "translate("+ink(x+typeSize*0.36)+" "+ink(y)+") rotate(-90)")
}
