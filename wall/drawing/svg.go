package drawing

import (
	"bytes"
	_ "embed"
	"encoding/xml"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// node is one element of a drawing, or, without a name, a piece of text. Nothing of a plan is ever
// pasted into markup: every attribute and every text goes through the escaping of encoding/xml.
type node struct {
	name  string
	attrs []string // name, value, name, value …
	kids  []*node
	text  string
	raw   string // markup of this package
}

// add appends an element and returns it; attrs are names, each with a value, a float64 one of ink.
func (n *node) add(name string, attrs ...any) *node {
	kid := &node{name: name}
	n.kids = append(n.kids, kid)
	return kid.set(attrs...)
}

// set gives the node more attributes.
func (n *node) set(attrs ...any) *node {
	for i := 0; i+1 < len(attrs); i += 2 {
		value, ok := attrs[i+1].(string)
		if v, number := attrs[i+1].(float64); number {
			value = ink(v)
		} else if !ok {
			value = fmt.Sprint(attrs[i+1])
		}
		n.attrs = append(n.attrs, attrs[i].(string), value)
	}
	return n
}

// stroke appends a path of a class, its commands as [pen] takes them.
func (n *node) stroke(class string, commands ...any) *node {
	return n.add("path", "class", class, "d", pen(commands...))
}

// rect appends a rectangle, with further attributes before its place.
func (n *node) rect(b box, attrs ...any) *node {
	return n.add("rect", attrs...).set("x", b.x, "y", b.y, "width", b.w, "height", b.h)
}

// tag appends the box that a label stands in.
func (n *node) tag(b box, round int) { n.rect(b, "class", "tag").set("rx", round) }

// dot appends a circle of a class.
func (n *node) dot(class string, at point, radius float64) {
	n.add("circle", "class", class, "cx", real(at), "cy", imag(at), "r", radius)
}

// cross appends an upright cross of a class that reaches so far from a place.
func (n *node) cross(class string, at point, reach float64) {
	n.stroke(class, "M", at-complex(reach, 0), "h", 2*reach, "M", at-complex(0, reach), "v", 2*reach)
}

// say appends text to the node.
func (n *node) say(text string) *node {
	n.kids = append(n.kids, &node{text: text})
	return n
}

// write writes the node and all below it. Writing into a buffer cannot fail.
func (n *node) write(w *bytes.Buffer) {
	if n.name == "" {
		w.WriteString(n.raw)
		escape(w, n.text)
		return
	}
	w.WriteString("<" + n.name)
	for i := 0; i+1 < len(n.attrs); i += 2 {
		w.WriteByte(' ')
		w.WriteString(n.attrs[i])
		w.WriteString(`="`)
		escape(w, n.attrs[i+1])
		w.WriteByte('"')
	}
	if len(n.kids) == 0 {
		w.WriteString("/>")
		return
	}
	w.WriteByte('>')
	for _, kid := range n.kids {
		kid.write(w)
	}
	w.WriteString("</" + n.name + ">")
	if n.name != "tspan" {
		w.WriteByte('\n')
	}
}

// escape writes a text as it stands in markup. Most have nothing to escape, which is found out faster.
func escape(w *bytes.Buffer, text string) {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' || c == '"' || c == '&' || c == '\'' || c == '<' || c == '>' {
			_ = xml.EscapeText(w, []byte(text))
			return
		}
	}
	w.WriteString(text)
}

// ink writes a coordinate to a hundredth, as short as it goes; 0 for one that no paper has.
func ink(v float64) string { return string(appendInk(nil, v)) }

func appendInk(to []byte, v float64) []byte {
	n := int64(0)
	if v = math.Round(v * 100); math.Abs(v) < 1e15 {
		n = int64(v)
	}
	if n < 0 {
		to, n = append(to, '-'), -n
	}
	part := []byte{'.', '0' + byte(n/10%10), '0' + byte(n%10)}
	return append(strconv.AppendInt(to, n/100, 10), bytes.TrimRight(part, ".0")...)
}

// pen writes the commands of a path: strings as they are, numbers and places as ink.
func pen(commands ...any) string {
	path := make([]byte, 0, 64)
	space := ""
	for _, c := range commands {
		switch c := c.(type) {
		case float64:
			path, space = appendInk(append(path, space...), c), " "
		case point:
			path, space = appendInk(append(appendInk(append(path, space...), real(c)), ' '), imag(c)), " "
		default:
			path, space = append(path, c.(string)...), ""
		}
	}
	return string(path)
}

// Picture is one drawing. The zero value is an empty one.
type Picture struct {
	Name          string  // for a file, without its ending; letters, digits and hyphens
	Title         string  // one line, also what a screen reader says first
	Desc          string  // the text alternative: what the drawing shows
	Width, Height float64 // natural size in CSS pixels: 96 to the inch on paper
	Scale         float64 // of a piece: it is drawn one to so many
	node                  // what is drawn
	defs          node
	narrow        *Picture // the same for a phone; nil where this one is no wider
}

// Narrow returns the drawing for the width of a phone, if there is one; a narrow drawing has none.
func (p Picture) Narrow() (pic Picture, ok bool) {
	if p.narrow != nil {
		return *p.narrow, true
	}
	return pic, false
}

// Lying reports whether the drawing is for paper in landscape.
func (p Picture) Lying() bool { return p.Width > wideInk }

//go:embed style.css
var style string

// Style returns the style sheet of every drawing, light and dark; a file of [Picture.SVG] has it.
func Style() string { return style }

// desc adds a sentence to the text alternative.
func (p *Picture) desc(format string, args ...any) {
	p.Desc = strings.TrimSpace(p.Desc + " " + fmt.Sprintf(format, args...))
}

// id returns an identifier that is unique among all drawings of a plan.
func (p *Picture) id(what string) string {
	return p.Name + "-" + asID.Replace(what)
}

var asID = strings.NewReplacer("[", "-", "].", "-")

// SVG returns the drawing as a file of its own, with its own style.
func (p Picture) SVG() []byte {
	return append([]byte(xml.Header), p.markup(true)...)
}

// Element returns the drawing as an svg element to stand in a page whose style sheet has [Style].
func (p Picture) Element() []byte { return p.markup(false) }

// markup writes the drawing, with its own style sheet if it stands alone.
func (p Picture) markup(alone bool) []byte {
	svg := &node{name: "svg"}
	svg.set("xmlns", "http://www.w3.org/2000/svg", "viewBox", "0 0 "+ink(p.Width)+" "+ink(p.Height),
		"width", p.Width, "height", p.Height, "role", "img",
		"aria-labelledby", p.id("title")+" "+p.id("desc"), "class", "drawing")
	svg.add("title", "id", p.id("title")).say(p.Title)
	svg.add("desc", "id", p.id("desc")).say(p.Desc)
	if alone {
		svg.add("style").say(style)
		svg.add("rect", "class", "paper", "width", p.Width, "height", p.Height)
	}
	if len(p.defs.kids) > 0 {
		svg.add("defs").kids = p.defs.kids
	}
	svg.kids = append(svg.kids, p.node.kids...)
	var w bytes.Buffer
	svg.write(&w)
	return w.Bytes()
}

// hatch defines a fill of slanted lines, once, and returns the value for a fill attribute.
func (p *Picture) hatch(what, class string, gap, angle float64) string {
	id := p.id(what)
	if !slices.ContainsFunc(p.defs.kids, func(n *node) bool { return slices.Contains(n.attrs, id) }) {
		p.defs.add("pattern", "id", id, "width", gap, "height", gap, "patternUnits", "userSpaceOnUse", "patternTransform", "rotate("+ink(angle)+")").
			add("line", "class", class, "x1", 0, "y1", 0, "x2", 0, "y2", gap)
	}
	return "url(#" + id + ")"
}

// clip defines a clip path of a shape and returns the value for an attribute.
func (p *Picture) clip(what, shape string) (value string) {
	p.defs.add("clipPath", "id", p.id(what)).add("path", "d", shape, "clip-rule", "evenodd")
	return "url(#" + p.id(what) + ")"
}

//go:embed survey.svg
var surveyed string // what the picture holds, with {name} for its name

// Survey draws where to tape an invented wall. The number makes the drawing's name unique on a page.
func Survey(number int) Picture {
	pic := Picture{Name: fmt.Sprintf("survey-%d", number), Title: "Where to tape", Width: 600, Height: 194}
	pic.Desc = "A wall with a step, a window and a box. 1: the width along the level datum. 2: the lean of both ends against a plumb line. " +
		"3: heights from the datum up, at the ends and at both sides of a step. 4: an opening's left and bottom, then its width and height."
	pic.add("g", "transform", "translate(0 -28)").kids = []*node{{raw: strings.ReplaceAll(surveyed, "{name}", pic.Name)}}
	return pic
}
