package drawing

import (
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// CheckSquare is the side in inches of the square that checks the printer's scale; that of a metric job has 75 mm.
const CheckSquare = 3

// TemplateSet is what is printed to saw round at full size, on one size of paper.
type TemplateSet struct {
	Square Picture // a square of [CheckSquare]
	Maps   []TemplateMap
	Pages  []TemplatePage // in order of printing; none where there is nothing to saw round
}

// TemplateMap shows how a template that takes pages of its own lies on them.
type TemplateMap struct {
	Picture Picture
	Name    string   // such as "Template 1: piece 2, notch"
	Pages   []string // names of those that are printed
	Skipped bool     // there are others, over which the line is straight
}

// TemplatePage is one page: a part of a large template, or several small ones with a ruler.
type TemplatePage []TemplateCell

// TemplateCell is a picture and its upper left corner on the page, in inches from the page's own.
type TemplateCell struct {
	X, Y    float64
	Picture Picture
}

// Templates draws the full-size templates of a plan: of curves, and of cutouts that one page of
// every paper can show. It fails for a paper without room for them.
func Templates(p plan.Plan, paper Paper) (set TemplateSet, err error) {
	defer fraction.Catch(&err)
	if err := paper.check(); err != nil {
		return TemplateSet{}, err
	}
	set.Square = drawSquare(p.Units == fraction.Inch)
	var small []tiling
	var large []TemplatePage
	for i, cut := range cutLines(p) {
		t := cut.tile(paper, i+1)
		if c, ok := cut.small(paper, p.Profile, i+1); ok {
			small = append(small, c)
			continue
		}
		one := TemplateMap{Picture: drawMap(t), Name: fmt.Sprintf("Template %d: piece %s, %s", i+1, cut.piece.Label, cut.what)}
		for _, tile := range t.tiles {
			if !tile.needed {
				one.Skipped = true
				continue
			}
			one.Pages = append(one.Pages, tile.name)
			large = append(large, TemplatePage{{pageMargin, pageMargin, *drawTile(p, t, tile)}})
		}
		set.Maps = append(set.Maps, one)
	}
	_, foot := paper.page(sharedFoot)
	for n, cells := range share(small, paper) {
		var page TemplatePage
		for _, c := range cells {
			page = append(page, TemplateCell{c.left + pageMargin, c.top + pageMargin, *drawTile(p, c, c.tiles[0])})
		}
		set.Pages = append(set.Pages, append(page, TemplateCell{pageMargin, foot + pageMargin, drawRuler(paper, n+1, p.Units)}))
	}
	set.Pages = append(set.Pages, large...)
	return set, nil
}

// template draws one page of a cutting line.
type template struct {
	canvas
	tile tile
	cut  cutLine
}

// drawTile returns one page's drawing at full size.
func drawTile(p plan.Plan, t tiling, one tile) *Picture {
	c := t.cut
	d := &template{tile: one, cut: c}
	d.canvas = newCanvas(p, one.w*perInch, fmt.Sprintf("template-%s-%d-%s", t.paper.Size, t.number, one.name), fmt.Sprintf("Template of piece %s, %s, page %s", c.piece.Label, c.what, one.name))
	d.Desc = "Full size. Heavy line: saw along it, on the waste side. Circles: starter holes of the jigsaw. Grey strips: beads and grooves of the board under it."
	high := one.h * perInch
	d.view = view{scale: perInch, x0: one.x, y1: one.y + one.h}
	d.frame = box{0, 0, d.Width, high}
	page := d.add("g", "clip-path", d.clip("page", d.frame.path()))
	edge := d.sized(c.piece.Width, c.piece.Height)
	d.drawPattern(page.add("g", "clip-path", d.clip("board", edge.path()), "class", "templateboard"), d.view, p.Profile, c.piece.LeftPhase, c.piece.Width, c.piece.Height, flatly)
	page.rect(edge, "class", "templateedge")
	for _, other := range t.tiles { // with crosses at their corners to lay one on the other
		if b := d.tileBox(other); !one.shared && other != one {
			page.rect(b, "class", "ext")
			grid([]float64{b.x, b.x + b.w}, []float64{b.y, b.y + b.h}, func(x, y float64) (none struct{}) { page.cross("pole", complex(x, y), 9); return none })
		}
	}
	page.stroke("template", c.line(d.view))
	d.drills(page, c.piece, "templatedrill", "templatedrill", 0)
	d.figures(page)
	d.rect(box{.5, .5, d.Width - 1, high - 1}, "class", "templateframe")
	name, rest := line{"Template ", counted(fmt.Sprint(t.number)), ": piece ", figure{c.piece.Label, ref("pieces[%d].label", c.index)}, ", "}, either(one.shared, nil, line{": page ", counted(one.name), ". Lay it on the face, by the gray strips."})
	what := any(c.what) // a notch, or the opening of a hole
	if room := d.Width - 8 - (name.width(typeSize)+rest.width(typeSize))*1.12; c.closed {
		what = figure{clip(c.what, room, typeSize*1.12), strings.TrimSuffix(c.path, "outline") + "opening"}
	}
	name = append(append(name, what), rest...)
	if d.Height = high + cellName*perInch; one.shared {
		name.write(&d.node, "bold", 2, high+14, "start")
		return d.Picture
	}
	d.Height = high + pageFoot*perInch
	name.write(&d.node, "bold", 0, high+18, "start")
	whole := d.ruler(p.Units, one.w, high+58)
	line{"Print at full size, never “fit to page”. The ruler below shows whole " + whole + "."}.write(&d.node, "", 0, high+35, "start")
	return d.Picture
}

// tileBox is where a page lies.
func (v view) tileBox(t tile) box {
	return segment{v.ink(t.x, t.y), v.ink(t.x+t.w, t.y+t.h)}.span()
}

// figures writes how far each corner lies across the piece and up, where there is room.
func (d *template) figures(on *node) {
	points := d.cut.points
	d.claimLine(d.edges(cutout.Rectangle(zero, zero, d.cut.piece.Width, d.cut.piece.Height))...)
	edges := d.edges(points)
	d.claimLine(edges[:len(edges)-either(d.cut.closed, 0, 1)]...) // not from an open one's end to its beginning
	if !d.tile.shared {
		d.claim(box{0, 0, d.Width, 20})
	}
	for n, a := range d.cut.piece.Marks.Arcs {
		if !d.cut.closed || a.Opening == d.cut.what {
			d.figure(on, d.at(plan.Point{X: a.Centre.X, Y: a.Centre.Y.Add(a.Radius)}), line{"radius ", d.length(a.Radius, ref("pieces[%d].marks.arcs[%d].radius", d.cut.index, n))})
		}
	}
	for i, p := range points {
		if plan.ArcAt(d.cut.piece.Marks.Arcs, p) != nil {
			continue // it lies beside the arc, which is what to saw
		}
		place := ref("%s[%d]", d.cut.path, (d.cut.first+i)%d.cut.count)
		across, up := line{d.length(p.X, place+"[0]"), " across, "}, line{d.length(p.Y, place+"[1]"), " up"}
		on.dot("templatedot", d.at(p), 2.5)
		if !d.figure(on, d.at(p), append(across, up...)) {
			d.figure(on, d.at(p), across, up)
		}
	}
}

// figure writes lines of text near a corner of a cutting line, if there is room.
func (d *template) figure(on *node, at point, text ...line) bool {
	w, h := widest(typeSize, text)+4, laneHigh*float64(len(text))
	past := centered(at, 60, 60) // a starter hole
	seat, ok := d.place(slices.Concat(besides(centered(at, 10, 10), w, h), besides(past, w, h))...)
	for n, l := range text {
		if ok {
			l.write(on, "halo", seat.x+2, seat.y+13+laneHigh*float64(n), "start")
		}
	}
	return ok
}

// ruler draws whole inches or centimetres, as many as there is room for, and returns which.
func (n *node) ruler(unit fraction.Unit, inches, y float64) (word string) {
	step, word := either(unit == fraction.Inch, perInch, perInch/2.54), either(unit == fraction.Inch, "inches", "centimeters")
	count := int(inches * perInch / step)
	path := pen("M0 ", y, "h", float64(count)*step)
	for i := range count + 1 {
		path += pen("M", float64(i)*step, y, "v-12")
	}
	n.stroke("pole", path)
	return word
}

// drawMap returns the page map of one cutting line: the piece, the line and the pages over them.
func drawMap(t tiling) Picture {
	c := t.cut
	pic := Picture{Name: fmt.Sprintf("map-%s-%d", t.paper.Size, t.number), Title: fmt.Sprintf("Page map of piece %s, %s", c.piece.Label, c.what)}
	scale := min(300/t.w, 190/t.h)
	pic.Width, pic.Height = 310, t.h*scale+10
	v := view{scale: scale, left: (pic.Width - t.w*scale) / 2, top: 5, x0: t.x, y1: t.y + t.h}
	pic.add("g", "clip-path", pic.clip("all", v.tileBox(t.tile).path())).rect(v.sized(c.piece.Width, c.piece.Height), "class", "wall")
	printed := ""
	for _, one := range t.tiles {
		b := v.tileBox(one)
		if !one.needed {
			pic.rect(b, "class", "tile").set("fill", pic.hatch("left-out", "hatch", 5, 45))
			continue
		}
		printed = one.name
		pic.rect(b, "class", "tile").set("fill", "none")
		if name := (line{counted(one.name)}); b.w > name.width(typeSize)*narrowest && b.h > typeSize {
			name.seated(&pic.node, "bold halo", b)
		}
	}
	pic.Desc = fmt.Sprintf("%s of %d pages are printed; over the others the line is straight.", printed, len(t.tiles))
	pic.stroke("cutline", c.line(v))
	return pic
}

// drawSquare returns the square that shows whether the printer kept the scale.
func drawSquare(inch bool) Picture {
	side, long := either(inch, CheckSquare*perInch, 75*perInch/25.4), either(inch, "3 in", "75 mm")
	pic := Picture{Name: "check-square", Title: "Square to check the printer's scale", Desc: "A square of " + long + " a side.", Width: side + 20, Height: side + 20}
	pic.stroke("square", "M10 10h", side, "v", side, "h-", side, "z")
	line{long, " a side"}.write(&pic.node, "bold", pic.Width/2, pic.Height/2, "middle")
	line{"from line to line, both ways"}.write(&pic.node, "", pic.Width/2, pic.Height/2+16, "middle")
	return pic
}
