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

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// Sizes in print, in CSS pixels, 96 to the inch. Those of text are estimates, as faces of type differ: where one is wrong
// the style sheet keeps each part of a leaf whole and repeats the leaf's heading.
const (
	pageHigh   = 965.0 // of Letter between the margins, which A4 exceeds
	halfWide   = 340.0 // of one of two columns
	headHigh   = 105.0 // of the heading of a leaf and what stands under it
	halfHigh   = 450.0 // of a leaf that shares a page with another
	nextHigh   = 45.0  // of the heading of its other pages
	leastHigh  = 340.0 // of tables alone on a page
	inkInch    = 96.0  // to the inch
	sideWide   = 578.0 // ink that a side of a piece has across the page,
	columnWide = 228.0 // and in a column,
	sideMore   = 50.0  // that its drawing has over and under it at least,
	titleMore  = 29.0  // for the title block of a face,
	stopMore   = 16.0  // and for measurements,
	letterHigh = 5.3   // with each letter of that of its width,
	mostStops  = 18    // where these are no more, as more may have no room
	pieceHigh  = 240.0 // that its height takes where a page has little room,
	fewHigh    = 140.0 // and of one with only outer edges to saw, so that a page has two
	smallest   = 15.0  // that a piece is drawn one to where two pages have room for one that is
	nextPage   = 1.5   // times as large
	spareHigh  = 34.0  // that estimates may be wrong by where a leaf fills its page
	leafGap    = 20.0  // between two leaves
	mostHoles  = 8     // of a piece that is drawn larger: the names and numbers of more stand no better then
	lineHigh   = 16.7  // of a line of text
	ruleHigh   = 3.0   // of what parts two rows of a table
	partGap    = 6.0   // between two parts of a column
	lineLong   = 47    // letters to a line of a column
	pageLong   = 90    // letters to a line of the legend of a page
	leafLong   = 100   // and of its text
	foundLong  = 30    // letters of its heading before the space that is found on the wall
	nameLong   = 24    // letters to a line of the names of a story pole
	cellLong   = 13    // letters to a line of other columns of a table,
	holeLong   = 7     // and of the names of holes
	signLong   = 7     // letters as wide as a sign of a legend
	signGap    = 2     // and as what parts two of them
	mostLines  = 36    // of a story pole in one column
	rowsWhole  = 3     // corners that are kept together
	mostTried  = 12    // parts of which every way to put them into columns is tried
)

// block is what a leaf keeps together: pictures across the page, and parts in two columns under them.
type block struct {
	Wide  []string
	Sides [][]part
	Signs []sign   // of the legend under all
	Small []string // those that are as drawn for a phone
	high  float64
}

// part is a picture, a table or a legend of a leaf, by its name, what it shows, and the height that it takes.
type part struct {
	Name  string
	Signs []sign // of a legend
	high  float64
	Small bool     // as drawn for a phone
	Side  string   // of the piece, "" for both
	Rings []ring   // of corners
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
// one that ends highest. What comes after mostTried goes where its column ends highest. A table goes on
// to the right, never to the left.
func beside(parts ...part) (best block) {
	var columns []int // of the parts
	for way := range 1 << max(0, min(len(parts), mostTried)-1) {
		sides, ends := make([]int, len(parts)), [2]float64{}
		for i := range parts {
			side := way << 1 >> i & 1
			if i >= mostTried && ends[1] < ends[0] {
				side = 1
			}
			if i > 0 && parts[i].Name == parts[i-1].Name {
				side = max(side, sides[i-1])
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
	signs := b.signs(small, keys...)
	all, within := beside(parts...), part{Name: "key", Signs: signs, high: keyHigh(lineLong, signs)}
	if within.high > 0 {
		all.Signs, all.high = signs, all.high+keyHigh(pageLong, signs)
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

// keyHigh is the height of a legend on lines of so many letters.
func keyHigh(long int, signs []sign) (high float64) {
	row := long
	for _, s := range signs {
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
func (b *page) small(name string) template.HTML { return template.HTML(b.drawn[name].shown[1].text) }

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
	if len(strip) > 0 { // a short one stands in a column where two leaves share a page then
		in := b.across(nil, strip, slices.Concat(pictures, []part{b.half(strip[0])}, whole)...)
		if in.Small != nil && in.high <= halfHigh && blocks[0].high > halfHigh {
			blocks[0] = in
		}
	}
	if blocks[0].high+headHigh <= pageHigh {
		return blocks
	}
	if blocks[0] = b.across(strip, strip, pictures...); blocks[0].high+headHigh > pageHigh {
		blocks = []block{b.across(strip, strip), b.across(nil, nil, pictures...)}
	}
	if alone := beside(whole...); alone.high+headHigh <= pageHigh {
		for n := 1; n < len(rows); n++ { // it goes on to the right where that is lower, but the page not nearly empty
			if two := beside(slices.Concat(tables, []part{pole(0, n), pole(n, len(rows))})...); two.high < alone.high && two.high > leastHigh {
				alone = two
			}
		}
		if first := &blocks[0]; len(blocks) > 1 && first.high+alone.high+headHigh <= pageHigh { // with the pictures of fitting
			first.Sides, first.high = alone.Sides, first.high+alone.high
			return blocks
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

// sectioned is the first run that is alike in its trims and in how deep the box of its upright section lies, which but for
// heights and that box's name holds for run i too; of a bare run it is none.
func (b *page) sectioned(i int) int {
	like := func(run plan.Run) string {
		trim, _ := json.Marshal(run.Trim) // of names and lengths, which cannot fail
		var box finish.BoxFixing
		if n := b.Plan.BoxIn(run); n >= 0 {
			box = b.Plan.Fixing.Boxes[n]
		}
		return fmt.Sprint(string(trim), run.Bare(), box.Name != "", box.Behind, box.Extender)
	}
	return slices.IndexFunc(b.Plan.Runs, func(run plan.Run) bool { return !run.Bare() && like(run) == like(b.Plan.Runs[i]) })
}

// elsewhere says which drawings of other leaves hold for run i too, and how its gap is measured where its top or bottom slopes.
func (b *page) elsewhere(i int) string {
	run, before := b.Plan.Runs[i], (i+len(b.Plan.Runs)-1)%len(b.Plan.Runs)
	var says []string
	if n := b.sectioned(i); n != i {
		says = append(says, fmt.Sprintf("Upright section as on leaf D%d, but for %s.", n+1, either(b.Plan.BoxIn(run) < 0, "heights", "heights and box")))
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
		if held := waits(b.Plan, c); held != "" {
			rows += folded("wait "+held, cellLong)
		}
		cuts = append(cuts, max(rows, map[bool]int{false: 1, true: 2}[c.Trim != plan.NoTrim]))
	}
	for _, placed := range byNumber(s) {
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
	if n := len(b.Plan.Leftovers(s)); n > 0 {
		parts = append(parts, part{Name: "offcuts", high: tall(slices.Repeat([]int{1}, n)...), Sheet: s})
	}
	return []block{b.across(nil, []string{name}, parts...)}
}

// leaf is that of an odd piece.
type leaf struct {
	at, n  int // of the piece in the plan, and of the leaf
	piece  plan.Piece
	rings  []ring                  // of corners
	cuts   []string                // the order of sawing
	arcs   []string                // the trammels
	tried  [2]map[float64]rendered // its face and its back by what they are drawn one to
	drawn  []rendered              // as they are in the book
	blocks []block
	high   float64 // what it takes of a page, if it is on one
	room   float64 // what a page has for its first block,
	next   float64 // and another page for the next
	more   float64 // ink that a side has over and under it at least
	tables float64 // what its tables take
}

// oddPieces are those with a leaf.
func (b *page) oddPieces() (all []plan.Piece) {
	for _, l := range b.leaves {
		all = append(all, l.piece)
	}
	return all
}

// drawPieces draws both sides of each odd piece, as many leaves on a page as have room there at their least scale, and
// then all of a page as large as it lets them.
func (b *page) drawPieces() {
	inParallel(b.leaves, func(l *leaf) {
		b.measure(l)
		b.lay(l, l.least(), 0)
	})
	var pages [][]*leaf
	high := 0.0
	for _, l := range b.leaves {
		if high += l.high; l.n == 0 || high-leafGap > pageHigh {
			pages, high = append(pages, nil), l.high
		}
		pages[len(pages)-1] = append(pages[len(pages)-1], l)
	}
	inParallel(pages, b.enlarge)
	for _, l := range b.leaves {
		for _, made := range l.drawn {
			b.keep(made)
		}
	}
}

// measure finds what goes with a piece at every scale, and how high that is.
func (b *page) measure(l *leaf) {
	l.rings, l.cuts, l.tried, l.more = b.rings(l.piece), strokes(b.Plan, l.piece, b.unbroken), [2]map[float64]rendered{{}, {}}, sideMore
	for _, a := range l.piece.Marks.Arcs {
		l.arcs = append(l.arcs, whole(sentence((&text{tape: b.tape, full: true}).trammel(l.piece, a, fromLeft))))
	}
	stops := 0
	for _, r := range l.rings {
		stops += len(r.Face) + len(r.Corners)
	}
	if len(l.arcs) == 0 && stops <= mostStops {
		l.more += stopMore + letterHigh*float64(len(strings.ReplaceAll(b.tape.Format(l.piece.Width), " "+b.tape.Unit.String(), "")))
	}
	for _, table := range append(l.order(1), l.marks("", 1)...) {
		l.tables += table.high + partGap
	}
	l.room, l.next = b.roomFor(l)
}

// enlarge draws the leaves of a page, or the pages of a leaf, one to the least number at which they have room: on one more
// page where it is small on fewer.
func (b *page) enlarge(page []*leaf) {
	least := 0.0
	for _, l := range page {
		if least = max(least, l.least()); len(l.piece.Holes) > mostHoles {
			return
		}
	}
	parted := len(page[0].blocks) > 1 || len(page) == 1 && !page[0].piece.Plain()
	most, best := either(parted, 2, 1), least+1
	for pages := 1; pages <= most && best > min(least, smallest); pages++ {
		for one := 1.0; one < either(best > least, best, best/nextPage); one++ {
			if !may(page, one, pages > 1) {
				continue
			}
			high, all := 0.0, []leaf(nil)
			for _, l := range page {
				trial := *l
				if !b.lay(&trial, min(one, l.least()), pages) {
					break
				}
				high, all = high+trial.high, append(all, trial)
			}
			if len(all) == len(page) && (high-leafGap <= pageHigh || pages > 1) {
				for i, l := range page {
					*l = all[i]
				}
				best = one
				break
			}
		}
	}
}

// may reports whether leaves can have room on a page, or parted on two, if drawn one to so many: with their sides beside each other in
// columns, or under each other across the page, each as low as its drawing can be.
func may(page []*leaf, one float64, parted bool) bool {
	high := -leafGap
	for _, l := range page {
		ink := inkInch / min(one, l.least())
		wide, back := ink*l.piece.Width.Float64(), ink*l.piece.Height.Float64()+l.more
		face, both := back+titleMore, 2*back+titleMore+l.tables/2
		if wide > sideWide || parted && (face > l.room || back > l.next) {
			return false
		}
		if wide <= columnWide {
			both = max(face, (2*back+titleMore+l.tables)/2)
		}
		high += both + pageHigh - l.room + leafGap
	}
	return parted || high <= pageHigh
}

// least is what a piece is drawn one to so that a page has room for all that goes with it.
func (l *leaf) least() float64 {
	high := pieceHigh
	if len(l.piece.Holes) == 0 && len(l.piece.Outline) < 6 {
		high = fewHigh
	}
	return math.Ceil(inkInch * l.piece.Height.Float64() / high)
}

// lay draws both sides of a piece one to so many and lays out its leaf, and reports whether that has room on some pages; on 0
// pages, it has in any case.
func (b *page) lay(l *leaf, one float64, pages int) bool {
	own := *b
	own.drawn, own.exact = map[string]rendered{}, either(pages > 0, one, 0)
	l.drawn = nil
	for back := range l.tried {
		side := b.side(l, back, one)
		if narrow, ok := side.Narrow(); pages > 0 && side.Scale != one && !(ok && narrow.Scale == one) {
			return false
		}
		l.drawn, own.drawn[side.Name] = append(l.drawn, side), side
	}
	l.blocks = own.marked(l, pages)
	if l.high = pageHigh; len(l.blocks) == 1 {
		l.high = pageHigh - l.room + l.blocks[0].high + leafGap
	}
	return pages == 0 || len(l.blocks) > 0 && len(l.blocks) <= pages
}

// side draws a side of a piece one to so many, once.
func (b *page) side(l *leaf, back int, one float64) rendered {
	made, ok := l.tried[back][one]
	if !ok {
		var before []drawing.Picture
		for _, other := range l.tried[back] {
			before = append(before, other.Picture)
		}
		made = b.render(fraction.Must(drawing.Piece(b.Plan, l.at, back == 1, inkInch*l.piece.Height.Float64()/one, before...)))
		l.tried[back][one] = made
	}
	return made
}

// roomFor is what a page has for the first block of a leaf, and the next for another.
func (b *page) roomFor(l *leaf) (room, next float64) {
	piece, head := l.piece, nextHigh+spareHigh
	if says := piece.Label + piece.Run + b.seePiece(piece); piece.Closing && utf8.RuneCountInString(says) > foundLong {
		head += 1.5 * lineHigh // to write the space found
	}
	room = pageHigh - head - lineHigh*float64(folded(b.howMeasured(piece), leafLong)+4*len(piece.Weak))
	next = pageHigh - head - lineHigh*float64(folded("Page 2 of 2 · "+b.Plan.Title+" · lengths in inches", pageLong))
	if l.n == 0 {
		first := 5 * lineHigh // of the heading of all
		if n := len(slanted(b.Plan)); n > 0 {
			first += lineHigh + tall(slices.Repeat([]int{1}, n)...)
		}
		if left := room - first; left >= halfHigh { // else the leaf goes on the next page
			room = left
		}
	}
	return room, next
}

// marked are the blocks of the leaf of an odd piece: one where a page has room for its face and its back, else the face and the
// back, each with the table of its own or with what of that the page of the face has no room for; none where they have no room on
// the one page they must have, or the sides are not of the scale that they must have.
func (b *page) marked(l *leaf, pages int) []block {
	face, back := drawing.PieceName(l.piece, "face"), drawing.PieceName(l.piece, "back")
	marks := func(side string) func(parts int) []part {
		return func(parts int) []part { return l.marks(side, parts) }
	}
	all := func(parts int) []part { return append(l.order(parts), marks("")(parts)...) }
	if one, ok := b.fit(l.room, all, face, back); ok {
		return []block{one}
	} else if pages == 1 {
		return nil
	}
	ordered := func(parts int) []part { return append(l.order(parts), marks("face")(parts)...) }
	for _, tables := range [][2]func(int) []part{{ordered, marks("back")}, {l.order, marks("")}} {
		one, ok := b.fit(l.room, tables[0], face)
		if two, also := b.fit(l.next, tables[1], back); ok && also {
			return []block{one, two}
		}
	}
	if b.exact > 0 {
		return nil
	}
	one, _ := b.sides(math.Inf(1), 0, nil, face)
	two, _ := b.sides(math.Inf(1), 0, nil, back)
	return []block{one, beside(all(2)...), two}
}

// fit is a block of drawings with some tables, each whole or in two parts, if it has room: the drawings as they are or the last few
// as for a phone.
func (b *page) fit(room float64, tables func(parts int) []part, names ...string) (all block, ok bool) {
	if b.exact == 0 {
		room = max(room, min(b.half(names[0]).high, b.drawn[names[0]].Height)+partGap) // which nothing helps
	}
	for phone := range len(names) + 1 {
		for parts := 1; parts <= 2; parts++ {
			if all, ok = b.sides(room, phone, tables(parts), names...); ok {
				return all, true
			}
		}
	}
	return all, false
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

// sides is a block of drawings, the last few as for a phone, with some tables, unless one of these is too wide for a column or
// all are too high, which may be plain without a legend.
func (b *page) sides(room float64, phone int, tables []part, names ...string) (all block, ok bool) {
	var wide []string
	var parts []part
	least := room
	for i, name := range names {
		half, small, pic := b.half(name), i >= len(names)-phone, b.drawn[name].Picture
		if narrow, also := pic.Narrow(); small && also {
			pic = narrow
		}
		if small && b.wide(name) && !half.Small || b.exact > 0 && pic.Scale != b.exact {
			return all, false
		}
		if b.wide(name) && !small {
			if len(parts) > 0 { // the face comes first
				return all, false
			}
			wide, least = append(wide, name), least-b.drawn[name].Height
		} else {
			parts = append(parts, half)
		}
	}
	if parts = append(parts, tables...); beside(parts...).high > least {
		return all, false
	}
	all = b.across(wide, names, parts...)
	return all, all.high <= room
}

// order is the order of sawing of a piece, which has the numbers on its face, in some parts, and its trammels.
func (l *leaf) order(parts int) (all []part) {
	high := func(says ...string) (lines float64) {
		for _, s := range says {
			lines += float64(folded(s, lineLong)) * lineHigh
		}
		return lines
	}
	for from, to := range shares(l.cuts, parts, func(s string) float64 { return high(s) }) {
		all = append(all, part{Name: "order", Says: l.cuts[from:to], high: partGap + high(l.cuts[from:to]...)})
	}
	if len(l.arcs) > 0 {
		all = append(all, part{Name: "arcs", Says: l.arcs, high: high(l.arcs...)})
	}
	return all
}

// marks is the table of the corners of a piece on one side of it, or on both where none is named, in some parts. A plain
// piece has them on the drawings.
func (l *leaf) marks(side string, parts int) (all []part) {
	if l.piece.Plain() {
		return nil
	}
	for from, to := range shares(l.rings, parts, func(r ring) float64 { return tall(r.rows(side)...) }) {
		var rows []int
		for _, r := range l.rings[from:to] {
			rows = append(rows, r.rows(side)...)
		}
		all = append(all, part{Name: "marks", Side: side, Rings: l.rings[from:to], Piece: l.piece, high: tall(rows...)})
	}
	return all
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

// ring is the name of a hole, some corners or all starter holes.
type ring struct {
	Opening    string       // of a hole
	Face, Back []plan.Point // of a level one its lower left and upper right corner
	Corners    []plan.NamedCorner
	Drill      []plan.Drill
}

// rings are the parts of the table of corners.
func (b *page) rings(piece plan.Piece) (all []ring) {
	for r, corners := range piece.Marks.Named(b.Plan.Snap) {
		if r > 0 {
			hole := piece.Marks.Holes[r-1]
			all = append(all, ring{Opening: opening(b.Plan, piece, hole.Opening), Face: span(hole.Face), Back: span(hole.Back)})
		}
		named := slices.DeleteFunc(corners, func(c plan.NamedCorner) bool { return c.Name == "" })
		for some := range slices.Chunk(named, rowsWhole) {
			all = append(all, ring{Corners: some})
		}
	}
	if drill := piece.Marks.Drill; len(drill) > 0 && b.starters(piece.Marks) == "" {
		all = append(all, ring{Drill: drill})
	}
	return all
}

// rows are the lines that each row of the table takes.
func (r ring) rows(side string) (rows []int) {
	switch {
	case r.Face != nil && side == "":
		rows = append(rows, max(2, folded(r.Opening, holeLong)))
	case r.Face != nil:
		rows = append(rows, folded(r.Opening, cellLong))
	case r.Opening != "":
		rows = append(rows, folded(r.Opening, lineLong))
	case len(r.Drill) > 0:
		rows = append(rows, 1)
	}
	return append(rows, slices.Repeat([]int{1}, len(r.Corners)+len(r.Drill))...)
}
