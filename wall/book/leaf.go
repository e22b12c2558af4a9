package book

import (
	"encoding/json"
	"fmt"
	"html/template"
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/groovewright/wall"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// Sizes in print, in CSS pixels, 96 to the inch. Those of text are estimates, as faces of type differ: where one is wrong
// the style sheet keeps each part of a leaf whole and repeats the leaf's heading.
const (
	pageHigh  = 965.0 // of Letter between the margins, which A4 exceeds
	halfWide  = 340.0 // of one of two columns
	headHigh  = 95.0  // of the heading of a leaf and what stands under it
	nextHigh  = 45.0  // of the heading of its other pages
	lineHigh  = 16.7  // of a line of text
	ruleHigh  = 3.0   // of what parts two rows of a table
	partGap   = 6.0   // between two parts of a column
	lineLong  = 47    // letters to a line of a column
	pageLong  = 90    // letters to a line of a page
	nameLong  = 24    // letters to a line of the names of a story pole
	cellLong  = 13    // letters to a line of other columns of a table,
	holeLong  = 7     // and of the names of holes
	signLong  = 7     // letters as wide as a sign of a legend
	mostLines = 36    // of a story pole in one column
	mostTried = 12    // parts of which every way to put them into columns is tried
)

// block is what a leaf keeps together: pictures across the page, and parts in two columns under them.
type block struct {
	Wide  []string
	Sides [][]part
	Keys  []string // pictures whose signs the legend under all has
	Small []string // those that are as drawn for a phone
	high  float64
}

// part is a picture, a table or a legend of a leaf, by its name, what it shows, and the height that it takes.
type part struct {
	Name  string
	Keys  []string // pictures whose signs a legend has
	high  float64
	Small bool // as drawn for a phone
	Pole  []poleMark
	Run   plan.Run
	Sheet plan.Sheet
	Piece plan.Piece
}

// tall is the height of a table, with its head, whose rows have so many lines each.
func tall(rows ...int) float64 {
	high := 2*lineHigh + ruleHigh
	for _, lines := range rows {
		high += float64(lines)*lineHigh + ruleHigh
	}
	return high
}

// folded is how many lines a text takes, of so many letters each.
func folded(text string, long int) int { return 1 + max(0, utf8.RuneCountInString(text)-1)/long }

// beside puts parts into two columns, keeping their order in each, the first one left: of all ways the
// one that ends highest. What comes after mostTried goes where its column ends highest. A pole goes on
// to the right, never to the left.
func beside(parts ...part) (best block) {
	var columns []int // of the parts
	for way := range 1 << max(0, min(len(parts), mostTried)-1) {
		sides, ends, pole := make([]int, len(parts)), [2]float64{}, 0
		for i := range parts {
			side := way << 1 >> i & 1
			if i >= mostTried && ends[1] < ends[0] {
				side = 1
			}
			if parts[i].Name == "pole" {
				side = max(side, pole)
				pole = side
			}
			sides[i], ends[side] = side, ends[side]+parts[i].high+partGap
		}
		if high := max(ends[0], ends[1]); way == 0 || high < best.high {
			columns, best.high = sides, high
		}
	}
	best.Sides = make([][]part, 2)
	for i, side := range columns {
		best.Sides[side] = append(best.Sides[side], parts[i])
	}
	return best
}

// across is a block of pictures across the page over parts in two columns, with the legend of some
// pictures where it takes least: under all, or last in a column.
func (b *page) across(wide, keys []string, parts ...part) block {
	var small []string
	for _, p := range parts {
		if p.Small {
			small = append(small, p.Name)
		}
	}
	all, lines, row, within := beside(parts...), 0, pageLong, part{Name: "key", Keys: keys}
	for _, s := range b.signs(small, keys...) {
		if s.Class == "onphone" {
			continue
		}
		long := signLong + utf8.RuneCountInString(s.Words)
		if row += long; row > pageLong {
			lines, row = lines+folded(s.Words, pageLong-signLong), long
		}
		within.high += float64(folded(s.Words, lineLong-signLong)) * lineHigh
	}
	if lines > 0 {
		all.Keys, all.high = keys, all.high+float64(lines)*lineHigh
		if in := beside(append(slices.Clone(parts), within)...); in.high+lineHigh < all.high {
			all = in
		}
	}
	all.Small = small
	for _, name := range wide {
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
func (b *page) small(name string) template.HTML { return template.HTML(b.drawn[name].small) }

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
		tables = append(tables, part{Name: "panels", high: tall(slices.Repeat([]int{1}, len(run.Panels))...), Run: run})
	}
	marks, all := poleMarks(b.Plan, run), 0
	for _, m := range marks {
		all += folded(m.What, nameLong)
	}
	each := len(marks)
	if all > mostLines { // an even number of tables, as each page has two
		pages := (all + 2*mostLines - 1) / (2 * mostLines)
		each = (len(marks) + 2*pages - 1) / (2 * pages)
	}
	for pole := range slices.Chunk(marks, max(1, each)) {
		var rows []int
		for _, m := range pole {
			rows = append(rows, max(folded(m.What, nameLong), folded(b.along(m.At, run.Width), cellLong)))
		}
		tables = append(tables, part{Name: "pole", high: tall(rows...), Pole: pole, Run: run})
	}
	blocks := []block{b.across(strip, strip, append(pictures, tables...)...)}
	if blocks[0].high+headHigh > pageHigh {
		blocks = []block{b.across(strip, strip, pictures...)}
		few := len(tables)
		if beside(tables...).high+headHigh > pageHigh {
			few = 2
		}
		for few := range slices.Chunk(tables, few) {
			blocks = append(blocks, beside(few...))
		}
	}
	return blocks
}

// sectioned is the first run that is alike in its trims and in having boxes, whose upright section holds for run i too; of a
// bare run it is none.
func (b *page) sectioned(i int) int {
	like := func(run plan.Run) string {
		trim, _ := json.Marshal(run.Trim) // of names and lengths, which cannot fail
		return fmt.Sprint(string(trim), run.Bare(), slices.ContainsFunc(run.Openings, func(o plan.Opening) bool { return o.Kind == wall.Box }))
	}
	return slices.IndexFunc(b.Plan.Runs, func(run plan.Run) bool { return !run.Bare() && like(run) == like(b.Plan.Runs[i]) })
}

// elsewhere says which drawings of other leaves hold for run i too, and how its gap is measured where its top or bottom slopes.
func (b *page) elsewhere(i int) string {
	run, before := b.Plan.Runs[i], (i+len(b.Plan.Runs)-1)%len(b.Plan.Runs)
	var says []string
	if n := b.sectioned(i); n != i {
		says = append(says, fmt.Sprintf("Upright section as on leaf D%d, but for heights.", n+1))
	}
	if p := b.Plan.Runs[before]; p.CornerRight != nil && before != i && !p.Bare() {
		says = append(says, fmt.Sprintf("Corner %s: leaf D%d.", b.Plan.CornerLetter(before), before+1))
	}
	if slants(b.Plan, run) {
		says = append(says, "Gaps along sloped edges are measured plumb.")
	}
	return strings.Join(says, " ")
}

// slants reports whether an edge of a run slopes so much that its gap, which is measured plumb, is narrower square to the
// edge by what a tape shows: a tenth of its mark.
func slants(p plan.Plan, run plan.Run) bool {
	gap, mark := max(p.Gaps.Top.Float64(), p.Gaps.Bottom.Float64()), p.Tape.Float64()
	for i, a := range run.Outline {
		next := run.Outline[(i+1)%len(run.Outline)]
		across, up := next.X.Sub(a.X).Float64(), next.Y.Sub(a.Y).Float64()
		if across != 0 && up != 0 && gap*(1-math.Abs(across)/math.Hypot(across, up)) >= mark/10 {
			return true
		}
	}
	return false
}

// cutting is the block of a sheet's leaf.
func (b *page) cutting(s plan.Sheet) []block {
	var cuts, pieces []int
	for _, c := range s.Cuts {
		part := b.tape.Format(c.Rect[2]) + " × " + b.tape.Format(c.Rect[3]) + b.fromCut(s, c)
		rows := folded(part, cellLong)
		if held := waits(b.Plan, s, c); held != "" {
			rows += folded("wait "+held, cellLong)
		}
		cuts = append(cuts, max(rows, map[bool]int{false: 1, true: 2}[c.Trim != plan.NoTrim]))
	}
	for _, placed := range s.Placements {
		piece, _ := b.Plan.Piece(placed.Part)
		rows := map[bool]int{false: 1, true: 2}[placed.Turned]
		if piece.Scribe != nil {
			rows = 3
		}
		if mitered(b.Plan, piece) != "" {
			rows = 4
		}
		pieces = append(pieces, rows)
	}
	name := fmt.Sprintf("sheet-%d", s.Number)
	parts := []part{b.half(name), {Name: "cuts", high: tall(cuts...), Sheet: s}, {Name: "pieces", high: tall(pieces...), Sheet: s}}
	if n := len(b.offcuts(s)); n > 0 {
		parts = append(parts, part{Name: "offcuts", high: tall(slices.Repeat([]int{1}, n)...), Sheet: s})
	}
	return []block{b.across(nil, []string{name}, parts...)}
}

// marked are the blocks of an odd piece's leaf: one where a page has room for its face and its back as
// they are, or as drawn for a phone, else the face and then the back.
func (b *page) marked(piece plan.Piece) []block {
	face, back := drawing.PieceName(piece, "face"), drawing.PieceName(piece, "back")
	var rows []int
	for r, ring := range piece.Marks.Named() {
		if r > 0 {
			hole := piece.Marks.Holes[r-1]
			if span(hole.Face) == nil {
				rows = append(rows, folded(hole.Opening, lineLong))
			} else {
				rows = append(rows, folded(hole.Opening, holeLong)+folded(ring[0].Name+" to "+ring[3].Name, holeLong))
				ring = ring[4:]
			}
		}
		for _, corner := range ring {
			if corner.Name != "" {
				rows = append(rows, 1)
			}
		}
	}
	if n := len(piece.Marks.Drill); n > 0 && b.starters(piece.Marks) == "" {
		rows = append(rows, slices.Repeat([]int{1}, n+1)...)
	}
	says, list := strokes(b.Plan, piece, b.unbroken), 1
	for _, a := range piece.Marks.Arcs {
		says = append(says, (&text{tape: b.tape, full: true}).trammel(piece, a, fromLeft))
	}
	for _, s := range says {
		list += folded(s, lineLong)
	}
	marks, order := part{Name: "marks", high: tall(rows...), Piece: piece}, part{Name: "order", high: float64(list) * lineHigh, Piece: piece}
	room := pageHigh - headHigh - 2*lineHigh*float64(len(piece.Weak))
	if says := b.onSlopes(b.Plan, piece); says != "" {
		room -= float64(folded(says, pageLong)) * lineHigh
	}
	if piece.Label == b.odd[0] {
		room -= 5 * lineHigh // of the heading of all
	}
	both, left, right := []string{face, back}, b.half(face), b.half(back)
	together := b.across(nil, both, left, right, marks, order)
	large := together
	switch {
	case b.wide(face) && b.wide(back):
		large = b.across(both, both, marks, order)
	case b.wide(back):
		large = b.across(both[1:], both, left, marks, order)
	case b.wide(face):
		large = b.across(both[:1], both, right, marks, order)
	}
	alone := func(name string, half part, parts ...part) block {
		if b.wide(name) {
			return b.across([]string{name}, []string{name}, parts...)
		}
		return b.across(nil, []string{name}, append([]part{half}, parts...)...)
	}
	tables := []part{order, marks} // the order of sawing has the numbers on the face, which has the table too where there is room
	apart := []block{alone(face, left), alone(back, right), beside(marks, order)}
	if first := alone(face, left, order); first.high <= room {
		apart[0], apart[2] = first, beside(marks)
	}
	for n := len(tables); n >= 0; n-- {
		if first, second := alone(face, left, tables[:n]...), alone(back, right, tables[n:]...); first.high <= room && second.high <= pageHigh-nextHigh {
			apart = []block{first, second}
			break
		}
	}
	small := b.wide(face) == left.Small && b.wide(back) == right.Small
	switch {
	case large.high <= room:
		return []block{large}
	case small && together.high <= room:
		return []block{together}
	}
	return apart
}
