package drawing

import (
	"fmt"
	"math"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// Full-size templates: 96 units of ink are one inch on paper.
const (
	perInch     = 96.0
	pageMargin  = 0.5  // inches left white round each page; printers cannot reach further out
	pageFoot    = 0.75 // inches under the drawing for the ruler and the page's name
	pageOverlap = 0.5  // inches that neighbouring pages share
	around1     = 1.0  // inches of board shown round a cutting line
	// CheckSquare is the side, in inches, of the square that is printed to check
	// the printer's scale: 76.2 mm.
	CheckSquare = 3
)

// Paper is a size of paper.
type Paper struct {
	Name          string
	Size          string  // its name in a style sheet
	Width, Height float64 // inches
}

// Papers are the sizes that templates are made for. The figures are those of
// ISO 216 (A4, 210 by 297 mm) and ANSI/ASME Y14.1 (letter, 8 1/2 by 11 in).
func Papers() []Paper {
	return []Paper{{"US Letter", "letter", 8.5, 11}, {"A4", "a4", 210 / 25.4, 297 / 25.4}}
}

// TemplateSet is what is printed to saw round at full size, on one size of paper.
type TemplateSet struct {
	Square Picture // of three inches, to check the printer's scale
	Maps   []TemplateMap
	Pages  []TemplatePage // in order of printing; none where there is nothing to saw round
}

// TemplateMap shows how a template that takes pages of its own lies on them.
type TemplateMap struct {
	Picture     Picture
	Piece, What string   // its label and the opening, or a notch
	Pages       []string // that are printed
	Skipped     bool     // there are others, over which the line is straight
}

// TemplatePage is one page: a part of a large template, or several small ones
// with a ruler.
type TemplatePage []TemplateCell

// TemplateCell is a picture and where its upper left corner stands on the page,
// in inches from the page's own.
type TemplateCell struct {
	X, Y    float64
	Picture Picture
}

// Templates draws the full-size templates of a plan: of curves, and of cutouts
// that one page of every paper can show.
func Templates(p plan.Plan, paper Paper) (set TemplateSet, err error) {
	defer fraction.Catch(&err)
	s := newScribe(p)
	set.Square = *drawSquare()
	var small []cell
	var large []TemplatePage
	for i, cut := range cutLines(p) {
		t := cut.tile(paper)
		if c, ok := cut.small(paper, p.Profile, i+1); ok && len(t.tiles) == 1 {
			small = append(small, c)
			continue
		}
		one := TemplateMap{Picture: *drawMap(t, i+1), Piece: cut.piece.Label, What: cut.what}
		for _, tile := range t.tiles {
			if !tile.needed {
				one.Skipped = true
				continue
			}
			one.Pages = append(one.Pages, tile.name)
			large = append(large, TemplatePage{{pageMargin, pageMargin, *drawTile(s, t, tile, i+1)}})
		}
		set.Maps = append(set.Maps, one)
	}
	set.Pages = append(sharedPages(s, small, paper), large...)
	return set, nil
}

// sharedPages are the pages of the templates that are small.
func sharedPages(s scribe, small []cell, paper Paper) []TemplatePage {
	var pages []TemplatePage
	_, foot := paper.shared()
	for n, cells := range share(small, paper) {
		var page TemplatePage
		for _, c := range cells {
			page = append(page, TemplateCell{c.x + pageMargin, c.y + pageMargin, *drawTile(s, c.tiling, c.tiles[0], c.number)})
		}
		pages = append(pages, append(page, TemplateCell{pageMargin, foot + pageMargin, *drawRuler(paper, n+1)}))
	}
	return pages
}

// cutLine is a line to saw along that is worth a template: a hole, or a notch
// or curve of the outline.
type cutLine struct {
	piece  plan.Piece
	index  int // of the piece in the plan
	what   string
	points []plan.Point
	closed bool
	path   string // of the points in the plan
	first  int    // number of the first point there
	count  int    // of points in the whole ring
}

// cutLines lists what a plan needs templates for.
// A rectangular cutout that takes more than one page has none: two measurements
// and a straightedge mark it better.
func cutLines(p plan.Plan) []cutLine {
	var found []cutLine
	for i, piece := range p.Pieces {
		for h, hole := range piece.Holes {
			found = append(found, cutLine{piece: piece, index: i, what: hole.Opening, points: hole.Outline, closed: true,
				path: fmt.Sprintf("pieces[%d].holes[%d].outline", i, h), count: len(hole.Outline)})
		}
		found = append(found, notches(piece, i)...)
	}
	return slices.DeleteFunc(found, func(c cutLine) bool { return c.square() && !c.onOnePage() })
}

// square reports whether every straight is level or plumb.
func (c cutLine) square() bool {
	for i := 1; i < len(c.points); i++ {
		if p, q := c.points[i-1], c.points[i]; p[0] != q[0] && p[1] != q[1] {
			return false
		}
	}
	return true
}

// onOnePage reports whether one page of each paper shows all of the line.
func (c cutLine) onOnePage() bool {
	return !slices.ContainsFunc(Papers(), func(p Paper) bool { return len(c.tile(p).tiles) > 1 })
}

// notches finds the stretches of a piece's outline that leave its bounding box
// and are worth a template.
func notches(piece plan.Piece, index int) []cutLine {
	n := len(piece.Outline)
	onEdge := func(i int) bool {
		p, q := piece.Outline[i%n], piece.Outline[(i+1)%n]
		return p[0] == q[0] && (p[0].IsZero() || p[0] == piece.Width) || p[1] == q[1] && (p[1].IsZero() || p[1] == piece.Height)
	}
	var found []cutLine
	for start := range n {
		if onEdge(start) || !onEdge(start+n-1) {
			continue
		}
		cut := cutLine{piece: piece, index: index, what: "notch", path: fmt.Sprintf("pieces[%d].outline", index), first: start, count: n}
		i := start
		for ; !onEdge(i) && i < start+n; i++ {
			cut.points = append(cut.points, piece.Outline[i%n])
		}
		cut.points = append(cut.points, piece.Outline[i%n])
		if cut.worthIt() {
			found = append(found, cut)
		}
	}
	return found
}

// A stretch whose straights all run within one part in flatter of the level, or
// of plumb, is an edge that follows the wall: two measurements mark it better
// than paper does. So is the meeting of two such edges. Common practice, no
// source.
const (
	flatter   = 8
	curveTurn = 4 // so many corners that all turn the same way are a curve
)

// worthIt reports whether a stretch of an outline is a notch or a curve.
func (c cutLine) worthIt() bool {
	steep, level := false, false
	for i := 1; i < len(c.points); i++ {
		p, q := c.points[i-1], c.points[i]
		across, up := q[0].Sub(p[0]).Abs(), q[1].Sub(p[1]).Abs()
		steep = steep || across.Less(up.Mul(flatter))
		level = level || up.Less(across.Mul(flatter))
	}
	inner := false // a corner that turns into the piece
	for i := 2; i < len(c.points); i++ {
		p, q, r := c.points[i-2], c.points[i-1], c.points[i]
		left := q[0].Sub(p[0]).Times(r[1].Sub(q[1]))
		right := q[1].Sub(p[1]).Times(r[0].Sub(q[0]))
		inner = inner || left.Compare(right) < 0 // the outline runs counterclockwise
	}
	return steep && level && (inner || len(c.points)-2 >= curveTurn)
}

// tile is one page's part of a cutting line, in piece coordinates, inches.
type tile struct {
	name       string
	x, y, w, h float64
	needed     bool // false: only a straight passes through, or nothing at all
	shared     bool // it has a page together with others
}

// tiling lays pages over a cutting line.
type tiling struct {
	cut       cutLine
	paper     Paper
	across    int
	tiles     []tile // rows from the top down
	x, y      float64
	w, h      float64
	pageCount int
}

// tile covers the line and the board round it with as few pages as go, in the
// middle of them.
func (c cutLine) tile(paper Paper) tiling {
	lo, hi := bounds(c.points)
	w, h := paper.Width-2*pageMargin, paper.Height-2*pageMargin-pageFoot
	pages := func(size, page float64) int {
		return max(1, int(math.Ceil((size-pageOverlap)/(page-pageOverlap)-1e-9)))
	}
	wide, tall := hi[0].Sub(lo[0]).Float64()+2*around1, hi[1].Sub(lo[1]).Float64()+2*around1
	across, down := pages(wide, w), pages(tall, h)
	t := tiling{cut: c, paper: paper, across: across}
	t.w = float64(across)*(w-pageOverlap) + pageOverlap
	t.h = float64(down)*(h-pageOverlap) + pageOverlap
	t.x = lo[0].Float64() - around1 - (t.w-wide)/2
	t.y = lo[1].Float64() - around1 - (t.h-tall)/2
	for row := range down {
		for column := range across {
			one := tile{name: fmt.Sprintf("%c%d", 'A'+row%26, column+1), w: w, h: h}
			one.x = t.x + float64(column)*(w-pageOverlap)
			one.y = t.y + float64(down-1-row)*(h-pageOverlap)
			one.needed = across*down == 1 || one.turns(c)
			if one.needed {
				t.pageCount++
			}
			t.tiles = append(t.tiles, one)
		}
	}
	return t
}

// turns reports whether the line turns or ends within the page. Where it only
// passes straight through, a straightedge between the pages on both sides does
// better than paper.
func (t tile) turns(c cutLine) bool {
	for _, p := range c.points {
		x, y := p[0].Float64(), p[1].Float64()
		if x >= t.x && x <= t.x+t.w && y >= t.y && y <= t.y+t.h {
			return true
		}
	}
	return false
}

// drawTile returns one page's drawing at full size.
func drawTile(s scribe, t tiling, one tile, number int) *Picture {
	c := t.cut
	pic := newPicture(fmt.Sprintf("template-%s-%d-%s", t.paper.Size, number, one.name),
		fmt.Sprintf("Template of piece %s, %s, page %s", c.piece.Label, c.what, one.name))
	pic.Desc = "Full size. Heavy line: saw along it, on the waste side. Circles: starter holes of the jigsaw. Grey strips: beads and grooves of the board under it."
	foot := pageFoot
	if one.shared {
		foot = cellName
	}
	pic.Width, pic.Height = one.w*perInch, (one.h+foot)*perInch
	v := view{scale: perInch, x0: one.x, y1: one.y + one.h}
	clip := pic.defs.add("clipPath", "id", pic.id("page"))
	clip.add("rect", "width", pic.Width, "height", one.h*perInch)
	page := pic.add("g", "clip-path", "url(#"+pic.id("page")+")")

	pic.drawBoard(page, v, s.plan.Profile, c)
	pic.drawOverlap(page, t, one)
	d := "M"
	for i, p := range c.points {
		if i > 0 {
			d += "L"
		}
		d += ink(v.x(p[0])) + " " + ink(v.y(p[1]))
	}
	if c.closed {
		d += "Z"
	}
	page.add("path", "class", "template", "d", d)
	var drills []box
	for _, hole := range c.piece.Marks.Drill {
		x, y, r := v.x(hole.At[0]), v.y(hole.At[1]), hole.Diameter.Float64()/2*perInch
		page.add("circle", "class", "templatedrill", "cx", x, "cy", y, "r", r)
		drills = append(drills, around(x, y, 2*r, 2*r))
		page.add("path", "class", "templatedrill", "d", fmt.Sprintf("M%s %sh%sM%s %sv%s", ink(x-r), ink(y), ink(2*r), ink(x), ink(y-r), ink(2*r)))
	}
	taken := board{frame: box{0, 0, pic.Width, one.h * perInch}, taken: drills}
	if one.shared {
		for _, x := range []fraction.Length{{}, c.piece.Width} {
			taken.claim(box{v.x(x) - 3, 0, 6, pic.Height})
		}
	} else {
		taken.claim(box{0, 0, pic.Width, 20})
	}
	for i, p := range c.points {
		q := c.points[(i+1)%len(c.points)]
		if one.shared && (c.closed || i+1 < len(c.points)) && (p[0] == q[0] || p[1] == q[1]) {
			lo, hi := bounds([]plan.Point{p, q})
			taken.claim(v.area(lo[0], lo[1], hi[0], hi[1]).grow(2))
		}
	}
	for i, p := range c.points {
		place := fmt.Sprintf("%s[%d]", c.path, (c.first+i)%c.count)
		across, up := line{s.length(p[0], ref("%s[0]", place)), " across, "}, line{s.length(p[1], ref("%s[1]", place)), " up"}
		page.add("circle", "class", "templatedot", "cx", v.x(p[0]), "cy", v.y(p[1]), "r", 2.5)
		if !taken.corner(page, v.x(p[0]), v.y(p[1]), append(across, up...)) {
			taken.corner(page, v.x(p[0]), v.y(p[1]), across, up)
		}
	}
	pic.add("rect", "class", "templateframe", "x", .5, "y", .5, "width", pic.Width-1, "height", one.h*perInch-1)
	if one.shared {
		pic.name(t, one.h*perInch)
	} else {
		pic.foot(t, one, one.h*perInch)
	}
	return pic
}

// corner writes lines of text near a corner of a cutting line, if there is room.
func (b *board) corner(on *node, x, y float64, text ...line) bool {
	w, h := 0.0, 14*float64(len(text))
	for _, l := range text {
		w = max(w, l.width(smallSize)+4)
	}
	places := []box{{x + 8, y + 5, w, h}, {x - 8 - w, y + 5, w, h}, {x + 8, y - 5 - h, w, h}, {x - 8 - w, y - 5 - h, w, h},
		{x - w/2, y + 8, w, h}, {x - w/2, y - 8 - h, w, h}}
	for _, away := range []float64{24, 44, 64} { // past a starter hole
		places = append(places, box{x + 8, y + away, w, h}, box{x - 8 - w, y + away, w, h}, box{x + 8, y - away - h, w, h}, box{x - 8 - w, y - away - h, w, h})
	}
	seat, ok := b.place(places...)
	for n, l := range text {
		if ok {
			l.write(on, "small halo", seat.x+2, seat.y+11+14*float64(n), "start")
		}
	}
	return ok
}

// drawBoard draws the piece's edges and its pattern at its true phase.
func (pic *Picture) drawBoard(on *node, v view, profile plan.Profile, c cutLine) {
	var zero fraction.Length
	clip := pic.defs.add("clipPath", "id", pic.id("board"))
	edge := v.area(zero, zero, c.piece.Width, c.piece.Height)
	clip.add("rect", "x", edge.x, "y", edge.y, "width", edge.w, "height", edge.h)
	group := on.add("g", "clip-path", "url(#"+pic.id("board")+")", "class", "templateboard")
	var near []stripe
	for _, s := range stripes(profile, c.piece.LeftPhase, c.piece.Width) {
		if v.x(s.right) > 0 && v.x(s.left) < pic.Width {
			near = append(near, s)
		}
	}
	drawPattern(group, v, near, zero, c.piece.Height)
	on.add("rect", "class", "templateedge", "x", edge.x, "y", edge.y, "width", edge.w, "height", edge.h)
}

// drawOverlap draws where the neighbouring pages begin, with crosses at the
// corners to lay one on the other.
func (pic *Picture) drawOverlap(on *node, t tiling, one tile) {
	const o = pageOverlap * perInch
	w, h := pic.Width, one.h*perInch
	lines := map[bool][]float64{}
	if one.x > t.x+.01 {
		lines[true] = append(lines[true], o)
	}
	if one.x+one.w < t.x+t.w-.01 {
		lines[true] = append(lines[true], w-o)
	}
	if one.y+one.h < t.y+t.h-.01 {
		lines[false] = append(lines[false], o)
	}
	if one.y > t.y+.01 {
		lines[false] = append(lines[false], h-o)
	}
	for _, x := range lines[true] {
		on.add("path", "class", "ext", "d", fmt.Sprintf("M%s 0V%s", ink(x), ink(h)))
	}
	for _, y := range lines[false] {
		on.add("path", "class", "ext", "d", fmt.Sprintf("M0 %sH%s", ink(y), ink(w)))
	}
	for _, x := range lines[true] {
		for _, y := range lines[false] {
			on.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sh18M%s %sv18", ink(x-9), ink(y), ink(x), ink(y-9)))
		}
	}
}

// foot writes the page's name and a ruler of whole inches.
func (pic *Picture) foot(t tiling, one tile, y float64) {
	c := t.cut
	line{"Piece ", word(c.piece.Label, ref("pieces[%d].label", c.index)), ", ", c.what, ": page ", counted(one.name), ". Lay it on the face, grey strips on the board's own beads and grooves."}.
		write(&pic.root, "bold", 0, y+18, "start")
	line{"Print at full size, never “fit to page”. The ruler below shows whole inches."}.write(&pic.root, "small", 0, y+33, "start")
	inches := int(one.w)
	d := fmt.Sprintf("M0 %sh%s", ink(y+56), ink(float64(inches)*perInch))
	for i := range inches + 1 {
		d += fmt.Sprintf("M%s %sv-12", ink(float64(i)*perInch), ink(y+56))
	}
	pic.add("path", "class", "pole", "d", d)
}

// drawMap returns the page map of one cutting line: the piece, the line, and
// the pages laid over it.
func drawMap(t tiling, number int) *Picture {
	c := t.cut
	pic := newPicture(fmt.Sprintf("map-%s-%d", t.paper.Size, number), fmt.Sprintf("Page map of piece %s, %s", c.piece.Label, c.what))
	pic.Desc = fmt.Sprintf("%d of %d pages are printed; over the others the line is straight.", t.pageCount, len(t.tiles))
	scale := min(300/t.w, 190/t.h)
	pic.Width, pic.Height = 310, t.h*scale+10
	v := view{scale: scale, left: (pic.Width - t.w*scale) / 2, top: 5, x0: t.x, y1: t.y + t.h}
	clip := pic.defs.add("clipPath", "id", pic.id("all"))
	clip.add("rect", "x", v.left, "y", v.top, "width", t.w*scale, "height", t.h*scale)
	var zero fraction.Length
	edge := v.area(zero, zero, c.piece.Width, c.piece.Height)
	pic.add("g", "clip-path", "url(#"+pic.id("all")+")").
		add("rect", "class", "wall", "x", edge.x, "y", edge.y, "width", edge.w, "height", edge.h)
	fill := pic.hatch("left-out", "hatch", 5, 45)
	for _, one := range t.tiles {
		x, y := v.left+(one.x-t.x)*scale, v.top+(t.y+t.h-one.y-one.h)*scale
		rect := pic.add("rect", "class", "tile", "x", x, "y", y, "width", one.w*scale, "height", one.h*scale, "fill", "none")
		if !one.needed {
			rect.attrs[len(rect.attrs)-1] = fill
			continue
		}
		line{counted(one.name)}.write(&pic.root, "bold halo", x+one.w*scale/2, y+one.h*scale/2+4, "middle")
	}
	d := ""
	for i, p := range c.points {
		command := "L"
		if i == 0 {
			command = "M"
		}
		d += command + ink(v.x(p[0])) + " " + ink(v.y(p[1]))
	}
	if c.closed {
		d += "Z"
	}
	pic.add("path", "class", "cutline", "d", d)
	return pic
}

// drawSquare returns the square that shows whether the printer kept the scale.
func drawSquare() *Picture {
	const side = CheckSquare * perInch
	pic := newPicture("check-square", "Square to check the printer's scale")
	pic.Desc = "A square of three inches, 76.2 mm, a side."
	pic.Width, pic.Height = side+20, side+20
	pic.add("path", "class", "square", "d", fmt.Sprintf("M10 10h%sv%sh-%sz", ink(side), ink(side), ink(side)))
	line{"3 in = 76.2 mm a side"}.write(&pic.root, "bold", pic.Width/2, pic.Height/2, "middle")
	line{"from line to line, both ways"}.write(&pic.root, "", pic.Width/2, pic.Height/2+16, "middle")
	return pic
}
