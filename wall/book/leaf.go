package book

import (
	"fmt"
	"html/template"
	"slices"

	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// Sizes in print, in CSS pixels, 96 to the inch. Those of text are estimates, as faces of type differ: where one is wrong
// the style sheet keeps each part of a leaf whole and repeats the leaf's heading.
const (
	pageHigh  = 965.0 // of Letter between the margins, which A4 exceeds
	halfWide  = 340.0 // of one of two columns
	headHigh  = 140.0 // of the heading of a leaf, what stands under it, and a legend
	rowHigh   = 20.0  // of a line of a table
	lineLong  = 42    // letters to a line of a column
	nameLong  = 24    // letters to a line of the names of a story pole
	mostLines = 36    // of a story pole in one column
	mostTried = 12    // parts of which every way to put them into columns is tried
)

// block is what a leaf keeps together: pictures across the page, parts in two columns under them, and
// the signs of some of its pictures.
type block struct {
	Wide  []string
	Sides [][]part
	Keys  []string
	high  float64
}

// part is a picture or a table of a leaf, by its name, what it shows, and the height that it takes.
type part struct {
	Name  string
	high  float64
	Small bool // as drawn for a phone
	Pole  []poleMark
	Run   plan.Run
	Sheet plan.Sheet
	Piece plan.Piece
}

// tall is the height of a table, with its head, of rows of some lines each.
func tall(n int, lines float64) float64 { return (1.5 + float64(n)*lines) * rowHigh }

// beside puts parts into two columns, keeping their order in each, the first one left: of all ways the
// one that ends highest. What comes after mostTried goes where its column ends highest.
func beside(parts ...part) (best block) {
	for way := range 1 << max(0, min(len(parts), mostTried)-1) {
		columns, ends := make([][]part, 2), [2]float64{}
		for i, p := range parts {
			side := way << 1 >> i & 1
			if i >= mostTried && ends[1] < ends[0] {
				side = 1
			}
			columns[side], ends[side] = append(columns[side], p), ends[side]+p.high
		}
		if high := max(ends[0], ends[1]); way == 0 || high < best.high {
			best = block{Sides: columns, high: high}
		}
	}
	return best
}

// across is a block of pictures across the page over parts in two columns.
func (b *page) across(names []string, parts ...part) block {
	all := beside(parts...)
	for _, name := range names {
		all.Wide, all.high = append(all.Wide, name), all.high+b.drawn[name].Height
	}
	return all
}

// half is a picture in a column: that for a phone, where it has one.
func (b *page) half(name string) part {
	p := part{Name: name, high: b.drawn[name].Height}
	if narrow, ok := b.drawn[name].Narrow(); ok {
		p.Small, p.high = true, narrow.Height
	}
	return p
}

// small is a picture as drawn for a phone.
func (b *page) small(name string) template.HTML {
	narrow, _ := b.drawn[name].Narrow()
	return template.HTML(narrow.Element())
}

// wide reports whether a picture takes more than a column.
func (b *page) wide(name string) bool { return b.drawn[name].Width > halfWide }

// details are the blocks of leaf D of run i: one where a page has room, else the pictures and then the
// tables.
func (b *page) details(i int) []block {
	run := b.Plan.Runs[i]
	var strip []string
	if name := fmt.Sprintf("run-%d-fitting", i+1); b.drawn[name].Name != "" {
		strip = append(strip, name)
	}
	var pictures, tables []part
	for _, name := range []string{"run-%d-section", "run-%d-left-end", "corner-%d", "run-%d-right-end"} {
		if name = fmt.Sprintf(name, i+1); b.drawn[name].Name != "" {
			pictures = append(pictures, b.half(name))
		}
	}
	if len(run.Panels) > 0 && !b.Plan.Profile.Boards {
		tables = append(tables, part{Name: "panels", high: tall(len(run.Panels), 1), Run: run})
	}
	marks, lines := poleMarks(b.Plan, run), 0
	for _, m := range marks {
		lines += 1 + len(m.What)/nameLong
	}
	each := len(marks)
	if lines > mostLines { // an even number of tables, as each page has two
		pages := (lines + 2*mostLines - 1) / (2 * mostLines)
		each = (len(marks) + 2*pages - 1) / (2 * pages)
	}
	for pole := range slices.Chunk(marks, max(1, each)) {
		tables = append(tables, part{Name: "pole", high: tall(len(pole), float64(lines)/float64(len(marks))), Pole: pole, Run: run})
	}
	blocks := []block{b.across(strip, append(pictures, tables...)...)}
	if blocks[0].high+headHigh > pageHigh {
		blocks = []block{b.across(strip, pictures...)}
		few := len(tables)
		if beside(tables...).high+headHigh > pageHigh {
			few = 2
		}
		for few := range slices.Chunk(tables, few) {
			blocks = append(blocks, beside(few...))
		}
	}
	blocks[0].Keys = strip
	return blocks
}

// cutting is the block of a sheet's leaf.
func (b *page) cutting(s plan.Sheet) []block {
	name := fmt.Sprintf("sheet-%d", s.Number)
	parts := []part{b.half(name), {Name: "cuts", high: tall(len(s.Cuts), 1.5), Sheet: s}, {Name: "pieces", high: tall(len(s.Placements), 2), Sheet: s}}
	if n := len(b.offcuts(s)); n > 0 {
		parts = append(parts, part{Name: "offcuts", high: tall(n, 1), Sheet: s})
	}
	all := beside(parts...)
	all.Keys = []string{name}
	return []block{all}
}

// marked are the blocks of an odd piece's leaf: one where a page has room for its face and its back as
// they are, or as drawn for a phone, else the face and then the back.
func (b *page) marked(piece plan.Piece) []block {
	face, back := drawing.PieceName(piece, "face"), drawing.PieceName(piece, "back")
	corners, lines := 0, 1.0
	for _, corner := range slices.Concat(piece.Marks.Named()...) {
		if corner.Name != "" {
			corners++
		}
	}
	says := strokes(b.Plan, piece)
	for _, a := range piece.Marks.Arcs {
		says = append(says, (&text{tape: b.tape, full: true}).trammel(piece, a, fromLeft))
	}
	for _, s := range says {
		lines += float64(1 + len(s)/lineLong)
	}
	tables := []part{{Name: "marks", high: tall(corners, 1), Piece: piece}, {Name: "order", high: lines * rowHigh, Piece: piece}}
	room := pageHigh - headHigh - 2*rowHigh*float64(len(piece.Weak))
	if piece.Label == b.odd[0] {
		room -= 5 * rowHigh // of the heading of all
	}
	with := func(p ...part) []part { return append(p, tables...) }
	left, right := b.half(face), b.half(back)
	together, large := beside(with(left, right)...), b.across([]string{face}, with(right)...)
	onFace, onBack := tables[1:], tables[:1] // the order of sawing has the numbers on the face
	if b.across([]string{face}, onFace...).high > room {
		onFace, onBack = nil, tables
	}
	apart := []block{b.across([]string{face}, onFace...), beside(append([]part{right}, onBack...)...)}
	switch {
	case b.wide(face) && b.wide(back):
		large, apart[1] = b.across([]string{face, back}, tables...), b.across([]string{back}, onBack...)
		if apart[1].high > room {
			apart = append(apart[:1], b.across([]string{back}), beside(onBack...))
		}
	case b.wide(back):
		large, apart = b.across([]string{back}, with(left)...), []block{beside(with(left)...), b.across([]string{back})}
	case !b.wide(face):
		large = together
	}
	small := b.wide(face) == left.Small && b.wide(back) == right.Small
	switch large.Keys, together.Keys = []string{face, back}, []string{face, back}; {
	case large.high <= room || !b.wide(face) && !b.wide(back):
		return []block{large}
	case small && together.high <= room:
		return []block{together}
	}
	apart[0].Keys, apart[1].Keys = []string{face}, []string{back}
	return apart
}
