package drawing

import (
	"bytes"
	"encoding/xml"
	"strconv"
	"strings"
)

// node is one element of a drawing, or, without a name, a piece of text.
//
// A drawing is a tree of nodes, so that nothing is ever pasted into markup:
// every attribute and every text goes through the escaping of encoding/xml.
type node struct {
	name  string
	attrs []string // name, value, name, value …
	kids  []*node
	text  string
}

// add appends an element and returns it. The attributes are pairs of a name and
// a value; a value is a string, an int, or a float64 in units of ink.
func (n *node) add(name string, attrs ...any) *node {
	kid := &node{name: name}
	kid.set(attrs...)
	n.kids = append(n.kids, kid)
	return kid
}

// set gives the node more attributes.
func (n *node) set(attrs ...any) *node {
	for i := 0; i+1 < len(attrs); i += 2 {
		var value string
		switch v := attrs[i+1].(type) {
		case string:
			value = v
		case int:
			value = strconv.Itoa(v)
		case float64:
			value = ink(v)
		}
		n.attrs = append(n.attrs, attrs[i].(string), value)
	}
	return n
}

// say appends text to the node.
func (n *node) say(text string) *node {
	n.kids = append(n.kids, &node{text: text})
	return n
}

// write writes the node and all below it.
func (n *node) write(w *bytes.Buffer) {
	if n.name == "" {
		escape(w, n.text)
		return
	}
	w.WriteString("<" + n.name)
	for i := 0; i+1 < len(n.attrs); i += 2 {
		w.WriteString(" " + n.attrs[i] + `="`)
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

// escape writes text so that no part of it is read as markup. Writing into a
// buffer cannot fail.
func escape(w *bytes.Buffer, text string) {
	_ = xml.EscapeText(w, []byte(text))
}

// ink writes a coordinate to a hundredth, as short as it goes.
func ink(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// path collects the commands of a path.
type path struct{ b strings.Builder }

func (p *path) move(x, y float64) { p.b.WriteString("M" + ink(x) + " " + ink(y)) }
func (p *path) line(x, y float64) { p.b.WriteString("L" + ink(x) + " " + ink(y)) }
func (p *path) shut()             { p.b.WriteString("Z") }

// rect draws a rectangle by its top left corner.
func (p *path) rect(b box) {
	p.b.WriteString("M" + ink(b.x) + " " + ink(b.y) + "h" + ink(b.w) + "v" + ink(b.h) + "h" + ink(-b.w) + "Z")
}

func (p *path) String() string { return p.b.String() }

// Picture is one drawing. The zero value is an empty one.
type Picture struct {
	Name          string  // for a file, without its ending; letters, digits and hyphens
	Title         string  // one line, also what a screen reader says first
	Desc          string  // the text alternative: what the drawing shows
	Width, Height float64 // natural size in CSS pixels: 96 to the inch on paper
	root          node
	defs          *node
	narrow        *Picture // the same for a phone; nil where this one is no wider
}

// Narrow returns the same drawing for the width of a phone, and whether there is
// one; a drawing that is narrow itself has none.
func (p Picture) Narrow() (Picture, bool) {
	if p.narrow == nil {
		return Picture{}, false
	}
	return *p.narrow, true
}

// newPicture returns an empty drawing.
func newPicture(name, title string) *Picture {
	p := &Picture{Name: name, Title: title}
	p.root.name = "svg"
	p.defs = &node{name: "defs"}
	return p
}

// id returns an identifier that is unique among all drawings of a plan.
func (p *Picture) id(what string) string { return p.Name + "-" + what }

// add appends to the drawing itself.
func (p *Picture) add(name string, attrs ...any) *node { return p.root.add(name, attrs...) }

// SVG returns the drawing as a file of its own, with its own style.
func (p Picture) SVG() []byte {
	return append([]byte("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"), p.markup(true)...)
}

// Element returns the drawing as an svg element to stand in a page whose style
// sheet has [Style].
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
		svg.add("style").say(Style())
		svg.add("rect", "class", "paper", "width", p.Width, "height", p.Height)
	}
	if p.defs != nil && len(p.defs.kids) > 0 {
		svg.kids = append(svg.kids, p.defs)
	}
	svg.kids = append(svg.kids, p.root.kids...)
	var w bytes.Buffer
	svg.write(&w)
	return w.Bytes()
}

// hatch defines a fill of slanted lines, steep or shallow, and returns the
// value for a fill attribute. Hatches, not colours, tell areas apart.
func (p *Picture) hatch(what, class string, gap, angle float64) string {
	id := p.id(what)
	pattern := p.defs.add("pattern", "id", id, "width", gap, "height", gap,
		"patternUnits", "userSpaceOnUse", "patternTransform", "rotate("+ink(angle)+")")
	pattern.add("line", "class", class, "x1", 0, "y1", 0, "x2", 0, "y2", gap)
	return "url(#" + id + ")"
}
