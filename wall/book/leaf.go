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
	sideHigh   = 765.0 // and upwards on a page
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
	all, within := beside(parts...), part{Name: "key", Keys: keys, high: keyHigh(lineLong, signs)}
	if within.high > 0 {
		all.Keys, all.high = keys, all.high+keyHigh(pageLong, signs)
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
	if len(strip) > 0 { // a short one stands in a column where two leaves share a page then
		in := b.across(nil, strip, slices.Concat(pictures, []part{b.half(strip[0])}, whole)...)
		if in.Small != nil && in.high <= halfHigh && blocks[0].high > halfHigh {
			blocks[0] = in
		}
	}
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
	if n := len(b.offcuts(s)); n > 0 {
		parts = append(parts, part{Name: "offcuts", high: tall(slices.Repeat([]int{1}, n)...), Sheet: s})
	}
	return []block{b.across(nil, []string{name}, parts...)}
}

// leaf is that of an odd piece.
type leaf struct {
	at, n  int // of the piece in the plan, and of the leaf
	piece  plan.Piece
	drawn  []rendered
	blocks []block
	high   float64 // what it takes of a page, if it is on one
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
	inParallel(b.leaves, func(l *leaf) { b.lay(l, l.least(), 0) })
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

// enlarge draws the leaves of a page, or the pages of a leaf, one to the least number at which they have room: on one more
// page where it is small on fewer.
func (b *page) enlarge(page []*leaf) {
	least := 0.0
	for _, l := range page {
		if least = max(least, l.least()); len(l.piece.Holes) > mostHoles {
			return
		}
	}
	most, best := len(page[0].blocks), least+1
	if len(page) == 1 && !page[0].piece.Plain() {
		most = max(most, 2)
	}
	for pages := 0; pages < most && best > min(least, smallest); pages++ {
		for one := largest(page, pages > 0); one < either(best > least, best, best/nextPage); one++ {
			high, all := 0.0, []leaf(nil)
			for _, l := range page {
				trial := *l
				if !b.lay(&trial, min(one, l.least()), pages+1) {
					break
				}
				high, all = high+trial.high, append(all, trial)
			}
			if len(all) == len(page) && (high-leafGap <= pageHigh || pages > 0) {
				for i, l := range page {
					*l = all[i]
				}
				best = one
				break
			}
		}
	}
}

// largest is what leaves of a page are drawn one to at least: sides of a piece stand beside each other in columns, or under each other
// across the page, or are parted.
func largest(page []*leaf, parted bool) (one float64) {
	beside := 0.0
	for _, l := range page {
		wide, high := inkInch*l.piece.Width.Float64(), inkInch*l.piece.Height.Float64()
		one = max(one, wide/sideWide)
		if parted {
			return math.Ceil(max(one, high/sideHigh))
		}
		one, beside = max(one, min(wide/columnWide, 2*high/sideHigh)), beside+high
	}
	return math.Ceil(max(one, beside/sideHigh))
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
	own.drawn, own.exact, l.drawn = map[string]rendered{}, one, nil
	if pages == 0 {
		own.exact = 0
	}
	for _, back := range []bool{false, true} {
		pic := fraction.Must(drawing.Piece(b.Plan, l.at, back, inkInch*l.piece.Height.Float64()/one))
		if narrow, ok := pic.Narrow(); pages > 0 && pic.Scale != one && !(ok && narrow.Scale == one) {
			return false
		}
		made := render(pic)
		l.drawn, own.drawn[made.Name] = append(l.drawn, made), made
	}
	room, next := own.roomFor(l)
	l.blocks = own.marked(room, next, l.piece)
	if l.high = pageHigh; len(l.blocks) == 1 {
		l.high = pageHigh - room + l.blocks[0].high + leafGap
	}
	return pages == 0 || len(l.blocks) > 0 && len(l.blocks) <= pages
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
		room -= 5 * lineHigh // of the heading of all
		if n := len(slanted(b.Plan)); n > 0 {
			room -= lineHigh + tall(slices.Repeat([]int{1}, n)...)
		}
	}
	return room, next
}

// marked are the blocks of the leaf of an odd piece: one where a page has room for its face and its back, else the face and the
// back, each with the table of its own or with what of that the page of the face has no room for; none where the sides are not of the
// scale that they must have.
func (b *page) marked(room, next float64, piece plan.Piece) []block {
	rings, face, back := b.rings(piece), drawing.PieceName(piece, "face"), drawing.PieceName(piece, "back")
	order := func(parts int) []part { return b.order(piece, parts) }
	marks := func(side string) func(parts int) []part {
		return func(parts int) []part { return b.marks(piece, rings, side, parts) }
	}
	all := func(parts int) []part { return append(order(parts), marks("")(parts)...) }
	if one, ok := b.fit(room, all, face, back); ok {
		return []block{one}
	}
	ordered := func(parts int) []part { return append(order(parts), marks("face")(parts)...) }
	for _, tables := range [][2]func(int) []part{{ordered, marks("back")}, {order, marks("")}} {
		one, ok := b.fit(room, tables[0], face)
		if two, also := b.fit(next, tables[1], back); ok && also {
			return []block{one, two}
		}
	}
	if b.exact > 0 {
		return nil
	}
	one, _ := b.sides(0, nil, face)
	two, _ := b.sides(0, nil, back)
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
			if all, ok = b.sides(phone, tables(parts), names...); ok && all.high <= room {
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

// sides is a block of drawings, the last few as for a phone, with some tables, unless one of these is too wide for a column.
func (b *page) sides(phone int, tables []part, names ...string) (all block, ok bool) {
	var wide []string
	var parts []part
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
			wide = append(wide, name)
		} else {
			parts = append(parts, half)
		}
	}
	return b.across(wide, names, append(parts, tables...)...), true
}

// order is the order of sawing of a piece, which has the numbers on its face, in some parts, and its trammels.
func (b *page) order(piece plan.Piece, parts int) (all []part) {
	cuts, arcs := strokes(b.Plan, piece, b.unbroken), []string(nil)
	for _, a := range piece.Marks.Arcs {
		arcs = append(arcs, whole(sentence((&text{tape: b.tape, full: true}).trammel(piece, a, fromLeft))))
	}
	high := func(says ...string) (lines float64) {
		for _, s := range says {
			lines += float64(folded(s, lineLong)) * lineHigh
		}
		return lines
	}
	for from, to := range shares(cuts, parts, func(s string) float64 { return high(s) }) {
		all = append(all, part{Name: "order", Says: cuts[from:to], high: partGap + high(cuts[from:to]...)})
	}
	if len(arcs) > 0 {
		all = append(all, part{Name: "arcs", Says: arcs, high: high(arcs...)})
	}
	return all
}

// marks is the table of the corners of a piece on one side of it, or on both where none is named, in some parts. A plain
// piece has them on the drawings.
func (b *page) marks(piece plan.Piece, rings []ring, side string, parts int) (all []part) {
	if piece.Plain() {
		return nil
	}
	for from, to := range shares(rings, parts, func(r ring) float64 { return tall(r.rows(side)...) }) {
		var rows []int
		for _, r := range rings[from:to] {
			rows = append(rows, r.rows(side)...)
		}
		all = append(all, part{Name: "marks", Side: side, Rings: rings[from:to], Piece: piece, high: tall(rows...)})
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
