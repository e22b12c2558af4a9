package drawing

import (
	"cmp"
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	pieceTall  = 280.0 // most ink that a piece's height takes
	wideTall   = 400.0 // of one across the page, and
	holedTall  = 460.0 // of one with many holes
	manyHoles  = 4     // of more, the back has each hole's name, not its corners' letters
	mostFar    = 2     // letters and numbers away from what they name, or the piece is drawn wide
	plainTall  = 170.0 // of one with only its outer edges to saw
	pieceLeft  = 92.0  // lane for the measurements up the piece
	pieceRight = 20.0
	mostLift   = 120.0 // most ink that the measurements up the piece may rise above it
	dotSize    = 1.9
	letterSize = 14.0
	closer     = 3.0 // between corners that one label names, from left to right
)

// pieceDrawing is a side of a piece with running measurements from its left and its lower edge.
type pieceDrawing struct {
	canvas
	piece   plan.Piece
	marks   string // their path in the plan, with a full stop
	back    bool
	corners []corner // of the outline and then of each hole, in the order of the table of marks
	area    box
	lift    float64 // room for measurements above the piece
	far     int     // letters and numbers away from what they name
	lost    bool    // one of them has no room
}

// corner is one corner of the piece.
type corner struct {
	at     plan.Point // on the face, for drawing
	marked plan.Point // as measured on the drawn side
	path   string     // of that in the plan
	square bool       // a level or plumb edge ends here, unlike within a curve
	arc    bool       // it stands for a place on a true arc, which is drawn and sawn in its stead
}

// along is where the corner was measured along an axis.
func (c corner) along(axis int) fraction.Length {
	return []fraction.Length{c.marked.X, c.marked.Y}[axis]
}

// plain reports whether a piece has only its outer edges to saw.
func plain(piece plan.Piece) bool { return len(piece.Holes) == 0 && len(piece.Outline) < 6 }

// Piece draws piece i of a plan with its marks, as measured on its face or on its back, where left
// is right. A face that is broad, or has much to saw or to name close together, is wide; where a phone
// has no room for all of that, it has the wide one.
func Piece(p plan.Plan, i int, back bool) (pic Picture, err error) {
	defer fraction.Catch(&err)
	if i < 0 || i >= len(p.Pieces) || min(p.Pieces[i].Width.Sign(), p.Pieces[i].Height.Sign()) <= 0 {
		return draw(halfInk, fault.Of("Pieces"), i, len(p.Pieces), func(float64) *Picture { return nil })
	}
	name := PieceName(p.Pieces[i], map[bool]string{false: "face", true: "back"}[back])
	d, most := drawSide(p, i, back, halfInk, name), halfInk
	if !back && (d.far > mostFar || d.lost || !plain(d.piece) && d.area.h < .8*d.area.w) {
		most = wideInk
	}
	return draw(most, fault.Of("Pieces"), i, len(p.Pieces), func(width float64) *Picture {
		if most == wideInk {
			if d = drawSide(p, i, back, width, sized(name, width)); d.lost && width == halfInk {
				return nil
			}
		}
		return d.Picture
	})
}

// drawSide draws one side of piece i in a width.
func drawSide(p plan.Plan, i int, back bool, width float64, name string) *pieceDrawing {
	piece, path := p.Pieces[i], ref("pieces[%d].", i)
	side, title := "face", "face, as it hangs on the wall"
	if back {
		side, title = "back", "back, left and right exchanged"
	}
	d := &pieceDrawing{canvas: newCanvas(p, width, name, fmt.Sprintf("Piece %s: %s", piece.Label, title)), piece: piece, marks: path + "marks.", back: back}
	d.measured(path+"marks.", side)
	d.describe()
	d.lay()
	profile := p.Profile
	if back {
		profile.Features = nil
	}
	d.drawPiece(d.add("g"), d.view, profile, piece, "shape")
	if back {
		d.fixing()
	}
	d.scribe()
	d.measures()
	d.leads = d.add("g")
	d.drills(&d.node, piece, "drill", "lead", 1.6)
	for _, w := range piece.Weak {
		x, y := d.x(w.At.X), d.y(w.At.Y)
		d.stroke("flaw", "M", x, y-6, "l5 9h-10z")
		d.claim(centered(x, y, 10, 12))
	}
	d.edges()
	rest := d.letters()
	if !back {
		d.strokes()
	}
	for _, led := range rest {
		led()
	}
	d.scribed()
	heading := line{"Piece ", figure{piece.Label, path + "label"}}
	append(heading, ", "+side).write(&d.node, "bold", d.Width/2, 15, "middle")
	if !back {
		d.Height = d.block(d.Height+4, append(heading, " of ", figure{piece.Run, path + "run"}))
	}
	return d
}

// PieceName names the drawing of a side of a piece, its face or its back, by the piece's label.
func PieceName(piece plan.Piece, side string) string {
	plain := func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return -1
	}
	return ref("piece-%s-%s", cmp.Or(strings.Map(plain, piece.Label), fmt.Sprint(piece.Number)), side)
}

// measured lists the corners.
func (d *pieceDrawing) measured(path, side string) {
	add := func(face, back []plan.Point, path string) {
		if !d.back {
			back = face
		}
		for i := range min(len(face), len(back)) {
			before, after := face[(i+len(face)-1)%len(face)], face[(i+1)%len(face)]
			square := before.X == face[i].X || before.Y == face[i].Y || after.X == face[i].X || after.Y == face[i].Y
			d.corners = append(d.corners, corner{face[i], back[i], fmt.Sprintf("%s%s[%d]", path, side, i), square, plan.ArcAt(d.piece.Marks.Arcs, face[i]) != nil})
		}
	}
	add(d.piece.Marks.Face, d.piece.Marks.Back, path)
	for h, hole := range d.piece.Marks.Holes {
		add(hole.Face, hole.Back, path+ref("holes[%d].", h))
	}
}

// lay chooses the scale.
func (d *pieceDrawing) lay() {
	across, tall := d.piece.Width.Float64(), d.piece.Height.Float64()
	room := d.Width - pieceLeft - pieceRight
	most := map[bool]float64{false: pieceTall, true: plainTall}[plain(d.piece)]
	if d.Width == wideInk {
		most = map[bool]float64{false: wideTall, true: holedTall}[len(d.piece.Holes) > manyHoles]
	}
	d.scale = whole(min(room/across, most/tall))
	d.lift = max(0, min(mostLift, poleGap*float64(len(d.stops(1, true))-1)-tall*d.scale))
	d.left, d.top, d.y1 = pieceLeft+(room-across*d.scale)/2, 40+d.lift, tall
	if d.back {
		d.flip = across
	}
	d.area = d.sized(d.piece.Width, d.piece.Height)
	d.frame = box{2, d.area.y - 20, d.Width - 4, d.area.h + 40}
}

// even returns places from 0 to a length, evenly and at most so far apart, if that is a distance.
func even(length, apart float64) (at []float64) {
	n := math.Ceil(length/apart - 1e-9)
	for k := 0.0; apart > 0 && n >= 1 && n < mostStripes && k <= n; k++ {
		at = append(at, length*k/n)
	}
	return at
}

// fixing draws the adhesive on the back, as the list counts it, and the nails as if the first support
// lay behind the left edge of the face.
func (d *pieceDrawing) fixing() {
	const inset = 5.0 // ink from the edges
	f, w, h := d.plan.Fixing, d.piece.Width.Float64(), d.piece.Height.Float64()
	supports, across, up := f.Supports.Float64(), even(w, f.GlueSpacing.Float64()), even(h, f.GlueSpacing.Float64())
	spot := func(p point) (x, y float64) {
		x, y = d.view.ink(p[0], p[1])
		return max(d.area.x+inset, min(x, d.area.x+d.area.w-inset)), max(d.area.y+inset, min(y, d.area.y+d.area.h-inset))
	}
	on, size := d.add("g", "clip-path", "url(#"+d.id("shape")+")"), max(3, f.GlueSize.Float64()*d.scale)
	bead := func(from, to point) {
		if x, y := spot(from); f.Glue == finish.GlueBeads {
			toX, toY := spot(to)
			on.stroke("glue", "M", x, y, "L", toX, toY).set("stroke-width", size)
		}
	}
	dot := func(p point) {
		if x, y := spot(p); f.Glue == finish.GlueDots {
			on.dot("glue", x, y, size/2)
		}
	}
	var nails []point // over the adhesive
	for k, x := range across {
		for m := 1; !f.Level && k > 0 && m < len(up); m++ {
			dot(point{(across[k-1] + x) / 2, (up[m-1] + up[m]) / 2})
		}
		if !f.Level {
			bead(point{x, 0}, point{x, h})
		}
	}
	for _, y := range even(h, supports) {
		if f.Level {
			bead(point{0, y}, point{w, y})
			dot(point{w / 2, y})
			nails = append(nails, point{w / 2, y})
		}
	}
	for x := 0.0; !f.Level && supports > 0 && x <= w; x += supports {
		apart := f.Field.Float64()
		if x == 0 || x+supports > w {
			apart = f.Edge.Float64()
		}
		for _, y := range even(h, apart) {
			nails = append(nails, point{x, y})
		}
	}
	for _, p := range nails {
		if x, y := spot(p); f.Nails != finish.UsualNails {
			on.stroke("nail", "M", x-2.5, y-2.5, "l5 5m0 -5l-5 5")
			d.claim(centered(x, y, 7, 7))
		}
	}
}

// scribe draws what is left on the piece to its sawn edge, across which the lines to saw run on; the
// edge that it is scribed to is dashed.
func (d *pieceDrawing) scribe() {
	s := d.piece.Scribe
	if s == nil {
		return
	}
	finished, sawn, ring := d.piece.Width, d.piece.Width.Add(s.Width), d.piece.Outline
	if s.Edge == wall.Left {
		finished, sawn = zero, s.Width.Neg()
	}
	for i, p := range ring {
		if q := ring[(i+1)%len(ring)]; (p.X == finished || q.X == finished) && p.X.Sub(q.X).Abs().Less(p.Y.Sub(q.Y).Abs()) {
			strip := through([]plan.Point{p, {X: sawn, Y: p.Y}, {X: sawn, Y: q.Y}, q}, func(p plan.Point) (x, y float64) { return d.x(p.X), d.y(p.Y) })
			d.add("path", "class", "offcut", "fill", d.hatch("scribe", "hatch", 4, 45), "d", strip+"Z")
			d.stroke("edge", strip)
			d.stroke("finish", "M", d.x(p.X), d.y(p.Y), "L", d.x(q.X), d.y(q.Y))
		}
	}
}

// scribed says how much is left on.
func (d *pieceDrawing) scribed() {
	if s := d.piece.Scribe; s != nil {
		text := line{"scribe ", d.length(s.Width, strings.TrimSuffix(d.marks, "marks.")+"scribe.width")}
		x := d.x(map[bool]fraction.Length{true: zero, false: d.piece.Width}[s.Edge == wall.Left])
		d.callout("halo", text, text.width(typeSize)+4, laneHigh, point{x, d.area.y}, point{x, d.area.y + d.area.h})
	}
}

// stops are the running measurements along one axis, each once, to every corner or the square ones.
func (d *pieceDrawing) stops(axis int, squareOnly bool) (all []stop) {
	for _, c := range d.corners {
		at := c.along(axis)
		if c.arc || squareOnly && !c.square || slices.ContainsFunc(all, func(s stop) bool { return s.at == at }) {
			continue
		}
		ink := d.y(at)
		if axis == 0 {
			ink = d.left + at.Float64()*d.scale // marked on this side: from its left
		}
		all = append(all, stop{text: line{d.length(at, ref("%s[%d]", c.path, axis))}, at: at, ink: ink})
	}
	for i, a := range d.piece.Marks.Arcs { // where an arched head springs
		if axis == 1 && a.Springs.Sign() > 0 && a.Springs.Less(d.piece.Height) && !slices.ContainsFunc(all, func(s stop) bool { return s.at == a.Springs }) {
			all = append(all, stop{text: line{d.length(a.Springs, ref("%sarcs[%d].springs", d.marks, i))}, at: a.Springs, ink: d.y(a.Springs)})
		}
	}
	return all
}

// measures writes the running measurements, each with a dashed line to its farthest corner. Where
// there is no room for those of a curve, its template and the table have them.
func (d *pieceDrawing) measures() {
	bottom := d.area.y + d.area.h
	fitting := func(axis int, room float64) []stop {
		for _, squareOnly := range []bool{false, true} {
			if all := d.stops(axis, squareOnly); float64(len(all)-1)*poleGap <= room {
				return all
			}
		}
		return nil
	}
	d.Height = bottom + 10
	if all := fitting(0, d.Width-pieceLeft+pieceRight); all != nil {
		d.Height = d.below(all, 60, d.Width-7, bottom, 5, 19, func(s stop) {
			if !s.at.IsZero() && s.at != d.piece.Width {
				d.stroke("ext", "M", s.ink, bottom, "V", d.reach(0, s.at))
			}
		})
	}
	d.beside(fitting(1, d.area.h+d.lift+8), d.area.y-d.lift-8, bottom, d.area.x, 5, 19, func(s stop) {
		if !s.at.IsZero() {
			d.stroke("ext", "M", d.area.x, s.ink, "H", d.reach(1, s.at))
		}
	})
}

// reach is the ink of the farthest corner that a measurement belongs to, up or to the right.
func (d *pieceDrawing) reach(axis int, at fraction.Length) float64 {
	up, right := d.area.y+d.area.h, d.area.x
	for _, c := range d.corners {
		if c.along(axis) == at {
			up, right = min(up, d.y(c.at.Y)), max(right, d.x(c.at.X))
		}
	}
	return []float64{up, right}[axis]
}

// edges keeps letters and numbers off the corners and the edges, and leads off crossing the latter.
func (d *pieceDrawing) edges() {
	for _, c := range d.corners {
		d.claim(centered(d.x(c.at.X), d.y(c.at.Y), 3, 3))
	}
	for n, ring := range rings(d.piece) {
		for i, p := range ring {
			q := ring[(i+1)%len(ring)]
			d.claimLine(d.x(p.X), d.y(p.Y), d.x(q.X), d.y(q.Y))
			if edge := [2]point{{d.x(p.X), d.y(p.Y)}, {d.x(q.X), d.y(q.Y)}}; n == 0 {
				d.rim = append(d.rim, edge)
			} else {
				d.lines = append(d.lines, edge)
			}
		}
	}
}

// letters names every corner as the table of marks does, much nearer to it than to any other, and
// returns how to name those that have no room for that: farther off, with a lead.
func (d *pieceDrawing) letters() (rest []func()) {
	at := func(c corner) point { return point{d.x(c.at.X), d.y(c.at.Y)} }
	far := func(c corner, x, y float64) float64 { return math.Hypot(at(c)[0]-x, at(c)[1]-y) }
	named := d.corners
	if holes := d.piece.Holes; d.back && len(holes) > manyHoles {
		named = named[:len(d.piece.Marks.Face)]
		for i, hole := range holes {
			name := line{figure{clip(hole.Opening, 80, typeSize), strings.TrimSuffix(d.marks, "marks.") + ref("holes[%d].opening", i)}}
			if seat, ok := d.place(besides(d.around(hole.Outline), name.width(typeSize), letterSize)...); ok {
				name.seated(&d.node, "halo", seat)
			}
		}
	}
	done := map[int]bool{}
	for i, c := range named {
		if c.arc || done[i] {
			continue
		}
		x, y := at(c)[0], at(c)[1]
		var here, others []int // in the list of corners
		for k, other := range d.corners {
			switch {
			case other.arc:
			case k >= i && k < len(named) && !done[k] && far(other, x, y) < closer:
				here, done[k] = append(here, k), true
				d.dot("startmark", at(other)[0], at(other)[1], dotSize)
			default:
				others = append(others, k)
			}
		}
		slices.SortStableFunc(here, func(j, k int) int { return cmp.Compare(at(d.corners[j])[0], at(d.corners[k])[0]) })
		name := line{}
		for n, k := range here {
			name = append(name, map[bool]string{true: ", "}[n > 0], counted(plan.CornerName(k)))
		}
		w := name.width(typeSize)*1.2 + 3
		near := grid([]float64{9, 12, 16}, []float64{-2, -1.5, -1, -.5, 0, .5, 1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 5.5}, func(away, turn float64) box {
			way := cmplx.Rect(away, math.Pi/4*turn)
			return centered(x+real(way)*1.15+math.Copysign((w-letterSize)/2, real(way)), y+imag(way), w, letterSize)
		})
		near = slices.DeleteFunc(near, func(seat box) bool {
			seatX, seatY := seat.middle()
			return slices.ContainsFunc(others, func(k int) bool { return far(d.corners[k], seatX, seatY) < 1.3*far(c, seatX, seatY) })
		})
		spot := point{x, y}
		if seat, ok := d.place(d.clear(near, spot, spot)...); ok {
			d.words = append(d.words, seat)
			name.seated(&d.node, "bold halo", seat)
			continue
		}
		rest = append(rest, func() { d.lost = !d.callout("bold halo", name, w, letterSize, spot, spot) || d.lost })
	}
	d.far += len(rest)
	return rest
}

// strokes numbers the lines to saw in their order, each beside its line with a lead to it.
func (d *pieceDrawing) strokes() {
	for n, stroke := range d.piece.Marks.Strokes() {
		var from, to point
		long := 0.0
		for i := 1; i < len(stroke.Points); i++ { // the longest of its straights
			p, q := stroke.Points[i-1], stroke.Points[i]
			x0, y0, x1, y1 := d.x(p.X), d.y(p.Y), d.x(q.X), d.y(q.Y)
			if l := math.Hypot(x1-x0, y1-y0); l > long {
				from, to, long = point{x0, y0}, point{x1, y1}, l
			}
		}
		seats := grid([]float64{15, -15, 24, -24}, []float64{.5, .35, .65, .2, .8}, func(away, along float64) box {
			dx, dy := to[0]-from[0], to[1]-from[1]
			x, y := from[0]+dx*along-dy/max(1e-9, long)*away, from[1]+dy*along+dx/max(1e-9, long)*away
			return centered(x, y, 2*numberSize, 2*numberSize)
		})
		seat, ok := d.place(d.clear(seats, from, to)...)
		if !ok {
			d.far++
			seat, ok = d.led(2*numberSize, 2*numberSize, from, to)
		}
		if d.lost = d.lost || !ok; ok {
			d.number(line{counted(fmt.Sprint(n + 1))}, from, to, seat)
		}
	}
	for i, a := range d.piece.Marks.Arcs {
		text := line{"radius ", d.length(a.Radius, ref("%sarcs[%d].radius", d.marks, i))}
		crown := point{d.x(a.Centre.X), d.y(a.Centre.Y.Add(a.Radius))}
		d.callout("halo", text, text.width(typeSize)+4, laneHigh, crown, crown)
	}
}

// describe is the text alternative.
func (d *pieceDrawing) describe() {
	say := d.tape.Format
	d.desc("Piece %s of %s, %s by %s.", d.piece.Label, d.piece.Run, say(d.piece.Width), say(d.piece.Height))
	if s := d.piece.Scribe; s != nil {
		d.desc("%s is left on at its %s edge to scribe.", say(s.Width), s.Edge)
	}
	for i, c := range d.corners {
		d.desc("Corner %s: %s from the left edge, %s from the lower edge.", plan.CornerName(i), say(c.marked.X), say(c.marked.Y))
	}
}
