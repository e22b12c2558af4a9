package drawing

import (
	"cmp"
	"fmt"
	"math"
	"math/cmplx"
	"regexp"
	"slices"
	"sort"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	crowdTall  = 400.0 // ink that the height of a wide piece takes where less has no room for all letters
	mostFar    = 2     // letters and numbers away from what they name, or the piece is drawn wide
	mostInset  = 1     // details of one in half a page
	mostParts  = 4     // details of any
	bad        = 1000  // what makes a drawing useless on a phone
	insetTall  = 190.0 // most ink that a detail takes upwards
	insetGain  = 1.5   // times as large as the piece, at least
	pieceLeft  = 92.0  // lane for the measurements up the piece
	pieceRight = 20.0
	mostLift   = 120.0 // most ink that the measurements up the piece may rise above it
	leastHatch = 5.0   // ink across, in which a hatch can be seen
	dotSize    = 1.9
	letterSize = 14.0
	arcLead    = 60.0 // most ink from the figure of a radius to its arc
	mostBeside = .125 // of the width, that the middle of an arc may lie beside the piece to be drawn
)

// pieceDrawing is a side of a piece with running measurements from its left and its lower edge.
type pieceDrawing struct {
	canvas
	piece   plan.Piece
	path    string // in the plan, with a full stop
	back    bool
	corners []corner // of the outline and then of each hole, in the order of the table of marks
	area    box
	insets  []box   // of ink: what of the piece is drawn again as details
	inset   bool    // this is one of these
	lane    float64 // ink x where the measurements up the piece begin
	lift    float64 // room for measurements above the piece
	far     int     // letters and numbers away from what they name,
	lost    int     // and those that have no room
}

// corner is one corner of the piece.
type corner struct {
	at     plan.Point // on the face, for drawing
	marked plan.Point // as measured on the drawn side
	path   string     // of that in the plan
	name   string     // none where it stands for a place within an arc, or is of a level hole, which has a name itself
	hole   bool       // of such a hole
	square bool       // a level or plumb edge ends here, unlike within a curve
	centre bool       // of an arc, which may lie off the piece
}

// along is where the corner was measured along an axis.
func (c corner) along(axis int) fraction.Length {
	return []fraction.Length{c.marked.X, c.marked.Y}[axis]
}

// Piece draws piece i of a plan with its marks, as measured on its face or on its back, where left is right, its height taking
// at most so much ink. Corners close together are drawn again, as details at a larger scale. A side is wide that is larger so,
// or has much to saw or to name close together; where a phone has no room for all of that, it has the wide one. What is drawn
// for a phone is taken over from a drawing of the same side before, if it is of the same scale there.
func Piece(p plan.Plan, i int, back bool, tall float64, before ...Picture) (pic Picture, err error) {
	return draw(wideInk, fault.Of("Pieces"), i, len(p.Pieces), func(width float64) *Picture {
		piece, name := p.Pieces[i], PieceName(p.Pieces[i], either(back, "back", "face"))
		if min(piece.Width.Sign(), piece.Height.Sign()) <= 0 {
			return nil
		}
		most, half := whole(tall/piece.Height.Float64()), whole((halfInk-pieceLeft-pieceRight)/piece.Width.Float64()) // but for middles of arcs beside it
		same := func(b Picture) bool { return b.narrow != nil && b.narrow.Scale == math.Round(perInch/min(most, half)) }
		if n := slices.IndexFunc(before, same); n >= 0 && width < wideInk {
			return before[n].narrow
		}
		var d *pieceDrawing
		fits := false
		if width < wideInk || half >= most {
			d = drawSide(p, i, back, halfInk, tall, sized(name, width))
			fits = len(d.insets) <= mostInset && d.scale >= most
			if width < wideInk && d.crowded() < bad || fits && d.crowded() == 0 {
				return d.Picture
			}
		}
		if width < wideInk {
			return nil
		}
		if wide := drawSide(p, i, back, wideInk, tall, name); !fits || wide.crowded() < max(10, d.crowded()) {
			return wide.Picture
		}
		return d.Picture // as its details help more than room beside it
	})
}

// crowded counts letters and numbers that are hard to find or to tell apart, or missing, and details beyond some.
func (d *pieceDrawing) crowded() int {
	return bad*(d.lost+max(0, len(d.insets)-mostParts)) + 10*d.tight + max(0, d.far-mostFar)
}

// drawSide draws one side of piece i in a width, its height taking at most so much ink: across the page more where it is
// crowded so; in half of it with as much in details as its letters need.
func drawSide(p plan.Plan, i int, back bool, width, tall float64, name string) (best *pieceDrawing) {
	tries := [][2]float64{{tall, 14}, {tall, 22}, {tall, 36}}
	if width == wideInk {
		tries = [][2]float64{{tall}, {max(tall, crowdTall)}}
	} else if back { // which has fewer letters and numbers, and its measures in the table
		tries = slices.Insert(tries, 0, [2]float64{tall})
	}
	for _, try := range tries {
		if d := drawParted(p, i, back, width, try, name); best == nil || d.crowded() < best.crowded() {
			best = d
		}
		if best.crowded() == 0 || back && best.crowded() < 10 {
			break
		}
	}
	return best
}

// drawParted draws it at most so tall, with details of corners that lie closer together than some ink.
func drawParted(p plan.Plan, i int, back bool, width float64, try [2]float64, name string) *pieceDrawing {
	piece, path := p.Pieces[i], ref("pieces[%d].", i)
	side, title := "face", "face, as it hangs on the wall"
	if back { // without its pattern
		p.Profile.Features = nil
		side, title = "back", "back, left and right exchanged"
	}
	d := &pieceDrawing{canvas: newCanvas(p, width, name, fmt.Sprintf("Piece %s: %s", piece.Label, title)), piece: piece, path: path, back: back}
	d.measured(path + "marks.")
	d.describe()
	d.lay(try[0])
	d.drawPiece(d.add("g"), d.view, p.Profile, piece, "shape")
	bare := 0
	if back {
		bare = d.fixing()
	}
	scribed := d.scribe(&d.node)
	d.gather(try[1])
	d.annotate()
	scribed()
	heading := line{"Piece ", figure{piece.Label, path + "label"}}
	scale := either(back, line{", at ", counted(ref("1:%.0f", perInch/d.scale))}, nil) // the face has it in its title block
	slices.Concat(heading, line{", " + side}, scale).write(&d.node, "bold", d.Width/2, 15, "middle")
	d.details()
	if bare > 0 {
		d.Height = d.under(0, d.Width/2, d.Height+14, "middle", line{"no room for a nail on ", counted(fmt.Sprint(bare)), " of its supports"})
	}
	if !back {
		d.Height = d.block(d.Height+4, false, slices.Concat(line{counted("P" + piece.Label), ": "}, heading, line{" of ", figure{piece.Run, path + "run"}}))
	}
	return d
}

// annotate measures, numbers and names what there is to saw.
func (d *pieceDrawing) annotate() {
	d.measures()
	d.leads = d.add("g")
	holes := d.piece
	holes.Marks.Drill = slices.DeleteFunc(slices.Clone(holes.Marks.Drill), func(hole plan.Drill) bool { return !d.owns(hole.At) })
	d.drills(&d.node, holes, "drill", "lead", 1.6)
	for _, w := range d.piece.Weak {
		if at := d.at(w.At); d.owns(w.At) {
			d.stroke("weak", "M", at-6i, "l5 9h-10z")
			d.claim(centered(at, 10, 12))
		}
	}
	d.edges()
	if !d.inset {
		d.mark()
		d.edgesAbove()
		d.trammels()
	}
	rest := d.letters()
	if !d.inset {
		d.nameHoles()
	}
	if !d.back {
		d.strokes()
	}
	for _, led := range rest {
		led()
	}
}

// gather finds what is drawn again as details: where three corners or more lie close together, two of them
// nearer than some ink, and a detail is much larger.
func (d *pieceDrawing) gather(close float64) {
	var corners []point
	for _, c := range d.corners {
		if c.name == "" {
			continue
		}
		p := d.at(c.at)
		for _, q := range corners {
			if cmplx.Abs(p-q) >= close {
				continue
			}
			area := segment{p, q}.span().grow(close)
			for i := slices.IndexFunc(d.insets, area.overlaps); i >= 0; i = slices.IndexFunc(d.insets, area.overlaps) {
				area, d.insets = area.with(d.insets[i]), slices.Delete(d.insets, i, i+1)
			}
			d.insets = append(d.insets, area)
		}
		corners = append(corners, p)
	}
	d.insets = slices.DeleteFunc(d.insets, func(area box) bool {
		apart := slices.DeleteFunc(slices.Clone(corners), area.holds)
		return len(corners)-len(apart) < 3 || d.enlarged(area) < insetGain*d.scale
	})
}

// enlarged is the scale of a detail of some ink.
func (d *pieceDrawing) enlarged(area box) float64 {
	return whole(d.scale * min((halfInk-pieceLeft-pieceRight)/area.w, insetTall/area.h))
}

// owns reports whether places of the piece are annotated here: all in a detail, or not all in any.
func (d *pieceDrawing) owns(places ...plan.Point) bool {
	return d.inset == slices.ContainsFunc(d.insets, func(area box) bool {
		return !slices.ContainsFunc(places, func(p plan.Point) bool { return !area.holds(d.at(p)) })
	})
}

// mark marks what is drawn again as details.
func (d *pieceDrawing) mark() {
	for i, area := range d.insets {
		d.rect(area, "class", "ring", "rx", 6)
		d.claim(area)
		name := line{"detail ", counted(fmt.Sprint(i + 1))}
		if seat, ok := d.place(besides(area, name.width(typeSize), laneHigh)...); ok {
			name.seated(&d.node, "halo", seat)
		} else {
			d.lost++
		}
	}
}

// details draws the details under the piece.
func (d *pieceDrawing) details() {
	const room, title = halfInk - pieceLeft - pieceRight, 24.0
	for i, from := range d.insets {
		part := *d
		part.board, part.inset, part.lost, part.far = board{}, true, 0, 0
		gain := d.enlarged(from) / d.scale
		part.insets = []box{from}
		part.corners = slices.DeleteFunc(slices.Clone(d.corners), func(c corner) bool { return c.centre || !part.owns(c.at) })
		part.lift = max(0, poleGap*float64(len(part.stops(1, true))-1)-from.h*gain) // room for its measurements
		part.area = box{pieceLeft + (room-from.w*gain)/2, d.Height + title + part.lift, from.w * gain, from.h * gain}
		part.scale *= gain
		part.left, part.x0 = part.area.x, d.x0+(from.x-d.left)/d.scale
		part.top, part.y1 = part.area.y, d.y1-(from.y-d.top)/d.scale
		part.frame, part.lane = part.area, part.area.x
		part.insets = []box{part.area}
		within := d.add("g", "clip-path", d.clip(ref("detail-%d", i), part.area.path()))
		part.drawPiece(within.add("g"), part.view, d.plan.Profile, d.piece, ref("shape-%d", i))
		part.scribe(within)
		d.rect(part.area, "class", "ring", "rx", 6)
		line{"detail ", counted(fmt.Sprint(i + 1)), " at ", counted(ref("1:%.0f", perInch/part.scale))}.write(&d.node, "bold", part.area.x+part.area.w/2, d.Height+16, "middle")
		part.annotate()
		d.lost, d.tight, d.far = d.lost+part.lost, d.tight+part.tight, d.far+part.far
	}
}

var notInNames = regexp.MustCompile(`[^a-z0-9]`)

// PieceName names the drawing of a side of a piece, its face or its back, by the piece's label.
func PieceName(piece plan.Piece, side string) string {
	return ref("piece-%s-%s", cmp.Or(notInNames.ReplaceAllString(piece.Label, ""), fmt.Sprint(piece.Number)), side)
}

// measured lists the corners as the table of marks names them, and then the middles of the arcs.
func (d *pieceDrawing) measured(path string) {
	half := either(d.back, 1, 0)
	side := func(face, back plan.Point) plan.Point { return []plan.Point{face, back}[half] }
	for r, ring := range d.piece.Marks.Named(d.plan.Snap) {
		hole := r > 0 && plan.Level(d.piece.Marks.Holes[r-1].Face)
		for i, c := range ring {
			before, after := ring[(i+len(ring)-1)%len(ring)].Face, ring[(i+1)%len(ring)].Face
			square := before.X == c.Face.X || before.Y == c.Face.Y || after.X == c.Face.X || after.Y == c.Face.Y
			d.corners = append(d.corners, corner{at: c.Face, marked: side(c.Face, c.Back), path: path + c.Paths[half], name: c.Name, hole: hole, square: square})
		}
	}
	for i, a := range d.piece.Marks.Arcs {
		place := ref("%sarcs[%d].%s", path, i, []string{"centre", "back"}[half])
		d.corners = append(d.corners, corner{at: a.Centre, marked: side(a.Centre, a.Back), path: place, square: true, centre: true})
	}
}

// lay chooses the scale.
func (d *pieceDrawing) lay(most float64) {
	across, tall := d.piece.Width.Float64(), d.piece.Height.Float64()
	start, end := 0.0, across
	for _, c := range d.corners { // the middle of an arc may lie beside the piece
		if at := c.marked.X.Float64(); d.near(at) {
			start, end = min(start, at), max(end, at)
		}
	}
	past := either(start < 0, 8.0, 0) // its sign
	for lane := pieceLeft - past; d.lane < lane-.01; {
		d.scale = whole(min((d.Width-lane-past-pieceRight)/(end-start), most/tall))
		d.Scale = math.Round(perInch / d.scale)
		d.lift = max(0, min(mostLift, poleGap*float64(len(d.stops(1, true))-1)-tall*d.scale))
		d.lane = max(lane, (d.Width+pieceLeft-pieceRight-(end-start)*d.scale)/2-past)
		d.left, d.top, d.y1, d.flip = d.lane+past-start*d.scale, 40+d.lift, tall, either(d.back, across, 0)
		d.area = d.sized(d.piece.Width, d.piece.Height)
		d.frame = box{2, d.area.y - 20, d.Width - 4, d.area.h + 40}
		for _, s := range d.stops(1, false) {
			lane = max(lane, 24+narrowest*s.text.width(typeSize))
		}
	}
}

// fixing draws the adhesive and the nails on the back, and returns on how many supports no nail has room.
func (d *pieceDrawing) fixing() (bare int) {
	shape := d.curved(d.piece.Marks.Arcs, d.piece.Rings()...)
	on := d.add("g", "clip-path", "url(#"+d.id("shape")+")")
	if d.plan.Fixing.Glue == finish.GlueCustom { // anywhere off the edges
		on.add("path", "fill", d.hatch("glue", "gluedots", 7, 30), "fill-rule", "evenodd", "d", shape)
		on.stroke("unglued", shape).set("stroke-width", 2*d.plan.GlueInset().Float64()*d.scale)
		d.stroke("edge", shape)
	}
	for _, bead := range fraction.Must(d.plan.Glue(d.piece)) {
		size := max(3, d.plan.Fixing.GlueSize.Float64()*d.scale)
		on.stroke("glue", "M", d.at(bead[0]), "L", d.at(bead[1])).set("stroke-width", size) // a dot has no length, but round ends
	}
	nails, none, err := d.plan.Nails(d.piece)
	for _, nail := range fraction.Must(nails, err) { // over the adhesive
		d.stroke("nail", "M", d.at(nail)-(2.5+2.5i), "l5 5m0 -5l-5 5")
		d.claim(centered(d.at(nail), 7, 7))
	}
	return len(none)
}

// edgesAbove draws sections of miters, tongues and their grooves over the edges, as seen from above, with the wall hatched.
func (d *pieceDrawing) edgesAbove() {
	const long, low, thick, behindMiter = 34.0, 8.0, 9.0, 4.0 // ink from the edge, over the piece, between face and back, and of the wall
	run, _ := d.plan.Run(d.piece.Run)
	far, y, way, words := either(d.back, thick, 0), d.area.y-low, either(d.back, -1.0, 1), []func(){} // far: of the face, over the lower line
	for side, mitred := range fraction.Must(run.MitredEdges(d.piece)) {
		meets, text := d.joint(thick, run.SetOut.Direction), line{"miter"}
		if mitred {
			meets = []point{0, complex(either(side == 0, thick, -thick), thick)}
		} else if at := []fraction.Length{zero, d.piece.Width}[side]; len(meets) == 0 || !d.piece.LeftPhase.Add(at).Mod(d.plan.Profile.Pitch).IsZero() {
			continue
		} else if text = nil; (real(meets[1]) > 0) == (side == 1) {
			if !d.plan.Meets(d.piece, side == 1) {
				continue
			}
			text = line{either(d.plan.Profile.Edges == groove.Tongued, "tongue", "lap")}
		}
		atRight := (side == 1) != d.back
		x, in := either(atRight, d.area.x+d.area.w, d.area.x), either(atRight, -1.0, 1)
		end := x + in*min(long, d.area.w/2)
		path := pen("M", complex(end, y-far), "H", x)
		for _, p := range meets {
			path += pen("L", complex(x+way*real(p), y-math.Abs(far-imag(p))))
		}
		d.stroke("miter", path, "V", y-thick+far, "H", end)
		behind := either(d.back, y+behindMiter, y-thick) // of the back
		d.rect(spanned(x, behind, end, behind-behindMiter), "fill", d.hatch("wall", "hatch", 3, 45))
		d.claim(spanned(x, y+behindMiter, end, y-thick-behindMiter))
		start, out := either(d.plan.Profile.Boards, x-in*8, end+in*3), either(d.plan.Profile.Boards, -in, in) // a board is too narrow for words
		words = append(words, func() {
			if _, ok := d.place(spanned(start, y, start+out*text.width(typeSize), y-12)); ok {
				text.write(&d.node, "", start, y-1, anchors[-out])
			}
		})
	}
	for _, word := range words { // clear of all sections
		word()
	}
}

// scribe draws what is left on the piece to its sawn edge, across which the lines to saw run on, with the
// edge that it is scribed to dashed, and returns how to say how much is left on.
func (d *pieceDrawing) scribe(on *node) (said func()) {
	s, ring, said := d.piece.Scribe, d.piece.Outline, func() {}
	if s == nil {
		return said
	}
	atLeft := s.Edge == wall.Left
	finished, sawn := either(atLeft, zero, d.piece.Width), either(atLeft, s.Width.Neg(), d.piece.Width.Add(s.Width))
	for i, p := range ring {
		if q := ring[(i+1)%len(ring)]; (p.X == finished || q.X == finished) && p.X.Sub(q.X).Abs().Less(p.Y.Sub(q.Y).Abs()) {
			edge, x := segment{d.at(p), d.at(q)}, d.x(sawn)
			strip := pen("M", edge.from, "H", x, "V", imag(edge.to), "H", real(edge.to))
			text := line{d.length(s.Width, d.path+"scribe.width"), " left on to scribe"}
			if math.Abs(x-real(edge.from)) >= leastHatch {
				text[1] = " to scribe" // the legend has the rest
				on.add("path", "class", "offcut", "fill", d.hatch("scribe", "hatch", 4, 45), "d", strip+"Z")
			}
			on.stroke("edge", strip)
			on.stroke("finish", "M", edge.from, "L", edge.to)
			said = func() { // past what is left on, else farther off
				long, off := text.width(typeSize)+4, math.Abs(x-real(edge.from))+laneHigh/2+3
				seats := grid([]float64{either(atLeft != d.back, -off, off)}, []float64{.5, .35, .65, .2, .8}, func(off, share float64) box {
					return centered(edge.along(share)+complex(off, 0), laneHigh, long)
				})
				if seat, ok := d.place(seats...); ok {
					text.upright(&d.node, "halo", seat.middle(), "middle")
				} else if !d.callout("halo", text, long, laneHigh, edge) {
					d.callout("halo", line{text[0], " to scribe"}, long*.7, laneHigh, edge)
				}
			}
		}
	}
	return said
}

// stops are the running measurements along one axis, each once, to every corner or the square ones.
func (d *pieceDrawing) stops(axis int, squareOnly bool) (all []stop) {
	most := []fraction.Length{d.piece.Width, d.piece.Height}[axis]
	for _, c := range d.corners {
		at := c.along(axis)
		if c.name == "" && !c.centre && !c.hole || !d.owns(c.at) && !at.IsZero() && at != most || squareOnly && !c.square {
			continue
		}
		path := ref("%s[%d]", c.path, axis)
		ink := either(axis == 0, d.left+(at.Float64()-d.x0)*d.scale, d.y(at)) // across as marked on this side: from its left
		text := line{d.length(at, path)}
		if past := most.Less(at); past || at.Sign() < 0 {
			if !d.shown(c) {
				continue
			}
			text = line{either(past, d.sum(plus(at, path), minus(most, d.path+[]string{"width", "height"}[axis])), d.sum(minus(at, path))), " beyond"}
		}
		all = once(all, stop{text: text, at: at, ink: ink})
	}
	return all
}

// shown reports whether the middle of an arc is on the drawing.
func (d *pieceDrawing) shown(c corner) bool {
	return d.near(c.at.X.Float64()) && centered(complex(d.area.x, d.y(c.at.Y)), 0, 6).inside(d.frame)
}

// near reports whether a place across the piece, in inches, is one that its drawing has room for.
func (d *pieceDrawing) near(x float64) bool {
	across := d.piece.Width.Float64()
	return math.Abs(x-across/2) <= across*(.5+mostBeside)
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
		d.Height = d.below(all, 60, d.Width-7, bottom, 1, 5, 19, func(s stop) {
			if !s.at.IsZero() && s.at != d.piece.Width {
				d.stroke("ext", "M", s.ink, bottom, "V", d.reach(0, s.at))
			}
		})
	}
	d.beside(fitting(1, d.area.h+d.lift+8), d.area.y-d.lift-8, bottom, d.lane, -1, 5, 19, func(s stop) {
		if !s.at.IsZero() {
			d.stroke("ext", "M", d.lane, s.ink, "H", d.reach(1, s.at))
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
		d.claim(centered(d.at(c.at), 3, 3))
		if d.owns(c.at) && (c.name != "" || c.centre && d.shown(c)) {
			d.dots = append(d.dots, d.at(c.at))
		}
	}
	for n, ring := range d.piece.Rings() {
		edges := either(n == 0, &d.rim, &d.lines)
		d.claimLine(d.view.edges(ring)...)
		*edges = append(*edges, d.view.edges(ring)...)
	}
}

// trammels draws the middle of each arc, and its radius to what of it is an edge of the piece.
func (d *pieceDrawing) trammels() {
	for i, a := range d.piece.Marks.Arcs {
		on := slices.DeleteFunc(slices.Clone(d.corners), func(c corner) bool {
			return c.centre || plan.ArcAt(d.piece.Marks.Arcs[i:i+1], c.at) == nil
		})
		if len(on) == 0 {
			continue
		}
		centre, long, out := d.at(a.Centre), a.Radius.Float64()*d.scale, point(0) // and the direction of the radius, of length 1
		aim := func(c corner) {
			out = d.at(c.at) - centre
			out *= complex(1/max(1e-9, cmplx.Abs(out)), 0)
		}
		text := func(before string) way {
			return d.level("halo", line{before, d.length(a.Radius, ref("%smarks.arcs[%d].radius", d.path, i))}, 4)
		}
		if !written([]way{text("radius "), text("R ")}, func(w, h float64) (seat box, ok bool) { // past the tip of the arrow
			for n := 0; n < len(on) && !ok; n++ {
				aim(on[(n+len(on)/3)%len(on)])
				seat, ok = d.place(centered(centre+out*complex(long+4+(math.Abs(real(out))*w+math.Abs(imag(out))*h)/2, 0), w, h))
			}
			return seat, ok
		}, func(w, h float64) (box, bool) {
			aim(on[len(on)/3])
			return d.pointed(w, h, arcLead, spot(centre+out*complex(long, 0)))
		}) {
			d.lost++
		}
		radius := segment{centre, centre + out*complex(long, 0)}
		if d.shown(corner{at: a.Centre}) {
			d.cross("lead", centre, 6)
			d.dot("edge", centre, 3)
			d.claim(centered(centre, 12, 12))
		} else {
			side := either(real(out) > 0, d.area.x, d.area.x+d.area.w) // the one toward the middle, which the line stops short of
			long = min(long, d.area.h/3, (real(radius.to)-side)/math.Copysign(max(1e-9, math.Abs(real(out))), real(out)))
			radius.from = radius.to - out*complex(long, 0)
		}
		d.stroke("lead", "M", radius.from, "L", radius.to)
		d.stroke("startmark radius", "M", radius.to, "l", out*(-8+3i), "l", out*-6i, "Z")
		d.claimLine(radius)
	}
}

// letters names every corner as the table of marks does, much nearer to it than to any other, and
// returns how to name those that have no room for that: farther off, with a lead.
func (d *pieceDrawing) letters() (rest []func()) {
	named := slices.DeleteFunc(slices.Clone(d.corners), func(c corner) bool { return c.name == "" || !d.owns(c.at) })
	for len(named) > 0 {
		at, here := d.at(named[0].at), []corner{}
		named = slices.DeleteFunc(named, func(c corner) bool {
			near := cmplx.Abs(d.at(c.at)-at) < closer
			if near {
				here = append(here, c)
			}
			return near
		})
		sort.SliceStable(here, func(i, j int) bool { return d.x(here[i].at.X) < d.x(here[j].at.X) })
		name := line{}
		for n, c := range here {
			d.dot("startmark", d.at(c.at), dotSize)
			name = append(name, either(n > 0, ", ", ""), counted(c.name))
		}
		if !d.nameAt("bold halo", name, at) {
			rest = append(rest, func() {
				if !d.callout("bold halo", name, name.width(typeSize)*1.2+3, letterSize, spot(at)) {
					d.lost++
				}
			})
		}
	}
	d.far += len(rest)
	return rest
}

// strokes numbers the lines to saw in their order, each beside its line with a lead to it, but the sides of level holes.
func (d *pieceDrawing) strokes() {
	for n, stroke := range plan.Strokes(d.piece.Marks.Order...) {
		var longest segment // of its straights
		var ends []plan.Point
		points := stroke.Saw[0].Points
		for i, s := range d.view.edges(points) {
			if i+1 < len(points) && cmplx.Abs(s.to-s.from) > cmplx.Abs(longest.to-longest.from) {
				longest, ends = s, points[i:i+2]
			}
		}
		if stroke.Sides() || !d.owns(ends...) {
			continue
		}
		seats := longest.numberSeats([]float64{15, -15, 24, -24}, []float64{.5, .35, .65, .2, .8})
		seat, ok := d.place(d.clear(seats, longest)...)
		if !ok {
			d.far++
			seat, ok = d.led(2*numberSize, 2*numberSize, farLead, longest)
		}
		if ok {
			d.number(line{counted(fmt.Sprint(n + 1))}, longest, seat)
		} else {
			d.lost++
		}
	}
}

// nameHoles names the holes as the elevation does, on the face with the number that the sides of a level one share.
func (d *pieceDrawing) nameHoles() {
	run, _ := d.plan.Run(d.piece.Run)
	numbers, all := map[string]int{}, []box(nil)
	for n, stroke := range plan.Strokes(d.piece.Marks.Order...) {
		if stroke.Sides() && !d.back {
			numbers[stroke.Opening] = n + 1
		}
	}
	for _, hole := range d.piece.Marks.Holes {
		all = append(all, d.around(hole.Face))
	}
	for i, hole := range d.piece.Marks.Holes {
		name, number := run.Code(hole.Opening), numbers[hole.Opening]
		ways := d.names(either(name == "", figure{hole.Opening, d.path + ref("marks.holes[%d].opening", i)}, counted(name)))
		for k, as := range ways {
			if number > 0 {
				ways[k] = way{as.w + 2*numberSize, max(as.h, 2*numberSize), func(seat box) {
					at := complex(seat.x+numberSize, imag(seat.middle()))
					as.write(box{real(at) + numberSize + 1, imag(at) - as.h/2, as.w - 1, as.h})
					d.number(line{counted(fmt.Sprint(number))}, spot(at), centered(at, 2*numberSize, 2*numberSize))
				}}
			}
		}
		if !d.fitted(d.view, [][]plan.Point{hole.Face}, ways...) && !d.nameBeside(all[i], all, d.frame, d.view.edges(hole.Face)[0], ways...) {
			d.lost++
		}
	}
}

// describe is the text alternative.
func (d *pieceDrawing) describe() {
	say := d.tape.Format
	d.desc("Piece %s of %s, %s by %s.", d.piece.Label, d.piece.Run, say(d.piece.Width), say(d.piece.Height))
	if s := d.piece.Scribe; s != nil {
		d.desc("%s is left on at its %s edge to scribe.", say(s.Width), s.Edge)
	}
	for _, c := range d.corners {
		if c.name != "" {
			d.desc("Corner %s: %s from the left edge, %s from the lower edge.", c.name, say(c.marked.X), say(c.marked.Y))
		}
	}
}
