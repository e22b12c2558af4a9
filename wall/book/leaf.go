package book

import (
	"encoding/json"
	"fmt"
	"html/template"
	"iter"
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
	leastHigh = 340.0 // of tables alone on a page
	lineHigh  = 16.7  // of a line of text
	ruleHigh  = 3.0   // of what parts two rows of a table
	partGap   = 6.0   // between two parts of a column
	lineLong  = 47    // letters to a line of a column
	pageLong  = 90    // letters to a line of the legend of a page
	leafLong  = 100   // and of its text
	foundLong = 30    // letters of its heading before the space that is found on the wall
	nameLong  = 24    // letters to a line of the names of a story pole
	cellLong  = 13    // letters to a line of other columns of a table,
	holeLong  = 7     // and of the names of holes
	signLong  = 7     // letters as wide as a sign of a legend
	signGap   = 2     // and as what parts two of them
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
	Small bool     // as drawn for a phone
	First int      // ring of corners that it begins with,
	Last  int      // and the last of them
	Says  []string // the cuts, or the arcs
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
	all, within := beside(parts...), part{Name: "key", Keys: keys, high: b.keyHigh(lineLong, small, keys)}
	if within.high > 0 {
		all.Keys, all.high = keys, all.high+b.keyHigh(pageLong, small, keys)
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

// keyHigh is the height of the legend of some pictures on lines of so many letters.
func (b *page) keyHigh(long int, small, keys []string) (high float64) {
	row := long
	for _, s := range b.signs(small, keys...) {
		if s.Class == "onphone" {
			continue
		}
		wide := signLong + utf8.RuneCountInString(s.Words)
		if row += wide; row > long {
			high, row = high+float64(folded(s.Words, long-signLong))*lineHigh, wide
		}
		row += signGap
	}
	return high
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
	if i == b.first() && b.drawn["joint"].Name != "" {
		tables = append(tables, b.half("joint"))
	}
	if len(run.Panels) > 0 && !b.Plan.Profile.Boards {
		tables = append(tables, part{Name: "panels", high: tall(slices.Repeat([]int{1}, len(run.Panels))...), Run: run})
	}
	var rows []int
	marks, all := poleMarks(b.Plan, run), 0
	for _, m := range marks {
		rows = append(rows, max(folded(m.What, nameLong), folded(b.along(m.At, run.Width), cellLong)))
		all += rows[len(rows)-1]
	}
	pole := func(from, to int) part {
		return part{Name: "pole", high: tall(rows[from:to]...), Pole: marks[from:to], Run: run}
	}
	parts, whole := 1, slices.Clone(tables)
	if all > mostLines { // an even number, as each page has two
		parts = 2 * ((all + 2*mostLines - 1) / (2 * mostLines))
	}
	for from, to := range shares(rows, parts, func(lines int) float64 { return float64(lines)*lineHigh + ruleHigh }) {
		whole = append(whole, pole(from, to))
	}
	blocks := []block{b.across(strip, strip, append(pictures, whole...)...)}
	if blocks[0].high+headHigh <= pageHigh {
		return blocks
	}
	blocks[0] = b.across(strip, strip, pictures...)
	if alone := beside(whole...); alone.high+headHigh <= pageHigh {
		for n := 1; n < len(rows); n++ { // it goes on to the right where that is lower, but the page not nearly empty
			if two := beside(slices.Concat(tables, []part{pole(0, n), pole(n, len(rows))})...); two.high < alone.high && two.high > leastHigh {
				alone = two
			}
		}
		return append(blocks, alone)
	}
	for two := range slices.Chunk(whole, 2) {
		blocks = append(blocks, beside(two...))
	}
	return blocks
}

// first is the first run that does not stay bare.
func (b *page) first() int {
	return slices.IndexFunc(b.Plan.Runs, func(run plan.Run) bool { return !run.Bare() })
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

// oddPieces are those with a leaf: first those on which something is sawn, then the plain ones, of which a page has two.
func (b *page) oddPieces() (all []plan.Piece) {
	for _, plain := range []bool{false, true} {
		for _, piece := range b.Plan.Pieces {
			if slices.Contains(b.odd, piece.Label) && piece.Plain() == plain {
				all = append(all, piece)
			}
		}
	}
	return all
}

// marked are the blocks of the leaf of odd piece i: one where a page has room for its face and its back, each as it is or as
// drawn for a phone, else the face and then the back, with as much of the tables beside the face as has room there.
func (b *page) marked(i int, piece plan.Piece) []block {
	face, back := drawing.PieceName(piece, "face"), drawing.PieceName(piece, "back")
	room := pageHigh - nextHigh - lineHigh*float64(folded(b.howMeasured(piece), leafLong)+2*len(piece.Weak))
	if head := piece.Label + piece.Run + b.seePiece(piece); piece.Closing && utf8.RuneCountInString(head) > foundLong {
		room -= 1.5 * lineHigh // to write the space found
	}
	if i == 0 {
		room -= 5 * lineHigh // of the heading of all
	}
	tables := [][][]part{b.tables(piece, 1), b.tables(piece, 2)} // each whole or in two parts
	for phone := range 3 {
		for _, all := range tables {
			if one, ok := b.sides(phone, slices.Concat(all...), face, back); ok && one.high <= room {
				return []block{one}
			}
		}
	}
	least, _ := b.sides(0, nil, face)
	if narrow, ok := b.sides(1, nil, face); ok {
		least.high = min(least.high, narrow.high)
	}
	room = max(room, least.high)
	for first := len(tables[0]); first >= 0; first-- {
		for phone := range 4 {
			for _, all := range tables {
				one, ok := b.sides(phone/2, slices.Concat(all[:first]...), face)
				two, also := b.sides(phone%2, slices.Concat(all[first:]...), back)
				if ok && also && one.high <= room && two.high <= pageHigh-nextHigh {
					return []block{one, two}
				}
			}
		}
	}
	one, _ := b.sides(0, nil, face)
	two, _ := b.sides(0, nil, back)
	return []block{one, two, beside(slices.Concat(tables[0]...)...)}
}

// howMeasured says from where a piece is measured, and what holds for all of its holes, miters and slopes.
func (b *page) howMeasured(piece plan.Piece) string {
	says := []string{"Measured from: " + measuredFrom(b.Plan, piece, b.unbroken) + "."}
	for _, more := range []string{b.starters(piece.Marks), sentence(b.miter(b.Plan, piece)), b.onSlopes(b.Plan, piece)} {
		if more != "" {
			says = append(says, more)
		}
	}
	return strings.Join(says, " ")
}

// sides is a block of drawings, the last few as for a phone, with some tables, unless one of these is too wide for a column.
func (b *page) sides(phone int, tables []part, names ...string) (all block, ok bool) {
	var wide []string
	var parts []part
	for i, name := range names {
		half, small := b.half(name), i >= len(names)-phone
		if small && b.wide(name) && !half.Small {
			return all, false
		}
		if b.wide(name) && !small {
			wide = append(wide, name)
		} else {
			parts = append(parts, half)
		}
	}
	return b.across(wide, names, append(parts, tables...)...), true
}

// tables are the order of sawing of a piece, which has the numbers on its face, and its corners, each in some parts. A plain
// piece has its corners on the drawings.
func (b *page) tables(piece plan.Piece, parts int) (all [][]part) {
	cuts, arcs := strokes(b.Plan, piece, b.unbroken), []string(nil)
	for _, a := range piece.Marks.Arcs {
		arcs = append(arcs, sentence((&text{tape: b.tape, full: true}).trammel(piece, a, fromLeft)))
	}
	high := func(says ...string) (lines float64) {
		for _, s := range says {
			lines += float64(folded(s, lineLong)) * lineHigh
		}
		return lines
	}
	var order, marks []part
	for from, to := range shares(cuts, parts, func(s string) float64 { return high(s) }) {
		order = append(order, part{Name: "order", Says: cuts[from:to], high: lineHigh + high(cuts[from:to]...)})
	}
	if len(arcs) > 0 {
		order = append(order, part{Name: "arcs", Says: arcs, high: high(arcs...)})
	}
	if !piece.Plain() {
		rings := b.rings(piece)
		for from, to := range shares(rings, parts, func(rows []int) float64 { return tall(rows...) }) {
			marks = append(marks, part{Name: "marks", First: from, Last: to - 1, Piece: piece, high: tall(slices.Concat(rings[from:to]...)...)})
		}
	}
	return [][]part{order, marks}
}

// shares parts some things into runs that are about as high as each other, and yields where each begins and ends.
func shares[T any](all []T, parts int, high func(T) float64) iter.Seq2[int, int] {
	return func(yield func(from, to int) bool) {
		total, so, from := 0.0, 0.0, 0
		for _, one := range all {
			total += high(one)
		}
		for i, one := range all {
			if so += high(one); i+1 == len(all) || so*float64(parts) >= total {
				if so = 0; !yield(from, i+1) {
					return
				}
				from = i + 1
			}
		}
	}
}

// rings are the lines that each row of the table of corners takes, ring by ring, the last with the starter holes.
func (b *page) rings(piece plan.Piece) (all [][]int) {
	for r, ring := range piece.Marks.Named(b.Plan.Snap) {
		var rows []int
		if r > 0 {
			hole := piece.Marks.Holes[r-1]
			if name := opening(b.Plan, piece, hole.Opening); span(hole.Face) == nil {
				rows = append(rows, folded(name, lineLong))
			} else {
				rows = append(rows, max(2, folded(name, holeLong)))
			}
		}
		for _, corner := range ring {
			if corner.Name != "" {
				rows = append(rows, 1)
			}
		}
		all = append(all, rows)
	}
	if n := len(piece.Marks.Drill); n > 0 && b.starters(piece.Marks) == "" {
		all[len(all)-1] = append(all[len(all)-1], slices.Repeat([]int{1}, n+1)...)
	}
	return all
}
