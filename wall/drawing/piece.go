package drawing

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/plan"
)

const (
	pieceTall  = 280.0 // most ink that a piece's height takes
	plainTall  = 170.0 // of one with only its outer edges to saw
	pieceLeft  = 92.0  // lane for the measurements up the piece
	pieceRight = 20.0
	markGap    = 13.0  // between measurements up the piece
	mostLift   = 120.0 // most ink that they may rise above it
	dotSize    = 1.9
	letterSize = 12.0
)

// pieceDrawing draws the face or the back of one piece with running
// measurements to every corner from its left and its lower edge.
type pieceDrawing struct {
	scribe
	*Picture
	piece plan.Piece
	index int
	back  bool
	view
	board board
	area  box
	lift  float64 // room for measurements above the piece
}

// plain reports whether a piece has only its outer edges to saw.
func plain(piece plan.Piece) bool { return len(piece.Holes) == 0 && len(piece.Outline) < 6 }

// wide reports whether the face of a piece is drawn across the page, so that
// the boxes on it are not too small: if it is a quarter wider than high.
func wide(piece plan.Piece) bool {
	return !plain(piece) && piece.Height.Mul(5).Less(piece.Width.Mul(4))
}

// Piece draws piece i of a plan with its marks, as measured on its face or on
// its back, where left is right.
func Piece(p plan.Plan, i int, back bool) (Picture, error) {
	most := halfInk
	if i >= 0 && i < len(p.Pieces) && wide(p.Pieces[i]) && !back {
		most = wideInk
	}
	return draw(most, fault.Of("Pieces"), i, len(p.Pieces), func(width float64) *Picture { return drawPieceSide(newScribe(p), i, back, width) })
}

// drawPieceSide returns the drawing of one side of piece i, as wide as asked
// for.
func drawPieceSide(s scribe, i int, back bool, width float64) *Picture {
	piece := s.plan.Pieces[i]
	side, name := "face", "face, as it hangs on the wall"
	if back {
		side, name = "back", "back, left and right exchanged"
	}
	d := &pieceDrawing{scribe: s, piece: piece, index: i, back: back}
	file := ref("piece-%d-%s", piece.Number, side)
	if wide(piece) && !back {
		file = sized(file, width)
	}
	d.Picture = newPicture(file, fmt.Sprintf("Piece %s: %s", piece.Label, name))
	d.Desc, d.Width = d.describe(), width
	d.lay()
	d.shape()
	d.measures()
	d.drills()
	d.weak()
	d.letters()
	d.label(side)
	return d.Picture
}

// lay chooses the scale.
func (d *pieceDrawing) lay() {
	across, tall := d.piece.Width.Float64(), d.piece.Height.Float64()
	room := d.Width - pieceLeft - pieceRight
	most := pieceTall
	if plain(d.piece) {
		most = plainTall
	}
	d.scale = min(room/across, most/tall)
	d.lift = max(0, min(mostLift, markGap*float64(len(d.stops(1, true))-1)-tall*d.scale))
	d.left, d.top, d.y1 = pieceLeft+(room-across*d.scale)/2, 34+d.lift, tall
	if d.back {
		d.flip = across
	}
	var zero fraction.Length
	d.area = d.view.area(zero, zero, d.piece.Width, d.piece.Height)
	d.board.frame = d.area.grow(15)
}

// shape draws the piece; the face shows its pattern, the back none.
func (d *pieceDrawing) shape() {
	profile := d.plan.Profile
	if d.back {
		profile.Features = nil
		profile.Pitch = fraction.Length{}
	}
	d.Picture.drawPiece(d.add("g"), d.view, profile, d.piece, "shape")
}

// corner is one corner of the piece: on the drawn side, its place there and the
// plan's path of it.
type corner struct {
	at     plan.Point // on the face, for drawing
	marked plan.Point // as measured on the drawn side
	path   string
	square bool // a level or plumb edge ends here, unlike within a curve
}

// corners lists the corners of the outline and then of each hole, in the order
// of the table of marks.
func (d *pieceDrawing) corners() []corner {
	side, marks := "face", d.piece.Marks.Face
	if d.back {
		side, marks = "back", d.piece.Marks.Back
	}
	var all []corner
	add := func(face, marked []plan.Point, path string) {
		for i := range min(len(face), len(marked)) {
			before, after := face[(i+len(face)-1)%len(face)], face[(i+1)%len(face)]
			square := slices.ContainsFunc([]plan.Point{before, after}, func(p plan.Point) bool { return p[0] == face[i][0] || p[1] == face[i][1] })
			all = append(all, corner{face[i], marked[i], fmt.Sprintf("%s[%d]", path, i), square})
		}
	}
	add(d.piece.Marks.Face, marks, fmt.Sprintf("pieces[%d].marks.%s", d.index, side))
	for h, hole := range d.piece.Marks.Holes {
		marked := hole.Face
		if d.back {
			marked = hole.Back
		}
		add(hole.Face, marked, fmt.Sprintf("pieces[%d].marks.holes[%d].%s", d.index, h, side))
	}
	return all
}

// stops are the running measurements along one axis, each once: to every
// corner, or only to those that end a level or plumb edge.
func (d *pieceDrawing) stops(axis int, squareOnly bool) []stop {
	var all []stop
	for _, c := range d.corners() {
		at := c.marked[axis]
		if squareOnly && !c.square || slices.ContainsFunc(all, func(s stop) bool { return s.at == at }) {
			continue
		}
		all = append(all, stop{line{d.length(at, ref("%s[%d]", c.path, axis))}, at})
	}
	return all
}

// measures writes the running measurements. Where there is no room for those of
// a curve, its template and the table have them.
func (d *pieceDrawing) measures() {
	d.Height = d.area.y + d.area.h + 10
	for axis, room := range []float64{d.Width - pieceLeft + pieceRight, d.area.h + d.lift + 8} {
		for _, squareOnly := range []bool{false, true} {
			all := d.stops(axis, squareOnly)
			if float64(len(all)-1)*markGap > room {
				continue
			}
			if axis == 0 {
				d.Height = d.across(all)
			} else {
				d.up(all)
			}
			break
		}
	}
}

// reach is how far the dashed line of a measurement runs into the piece: to the
// farthest corner that it belongs to.
func (d *pieceDrawing) reach(axis int, at fraction.Length) float64 {
	var far []float64
	for _, c := range d.corners() {
		switch {
		case c.marked[axis] != at:
		case axis == 0:
			far = append(far, d.y(c.at[1]))
		default:
			far = append(far, d.x(c.at[0]))
		}
	}
	if axis == 0 {
		return slices.Min(far)
	}
	return slices.Max(far)
}

// across writes measurements from the left edge under the piece.
func (d *pieceDrawing) across(all []stop) float64 {
	bottom, deepest := d.area.y+d.area.h, 0.0
	wanted := make([]float64, len(all))
	places := make([]int, len(all))
	for i, s := range all {
		places[i] = i
		wanted[i] = d.left + s.at.Float64()*d.scale // marked on this side: from its left
	}
	order(wanted, places)
	for n, x := range spread(wanted, poleGap, 60, d.Width-7) {
		i := places[n]
		if at := all[i].at; !at.IsZero() && at != d.piece.Width {
			d.add("path", "class", "ext", "d", fmt.Sprintf("M%s %sV%s", ink(wanted[n]), ink(bottom), ink(d.reach(0, at))))
		}
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sv5L%s %s", ink(wanted[n]), ink(bottom+1), ink(x), ink(bottom+19)))
		all[i].text.upright(&d.root, "", x, bottom+22, "end")
		deepest = max(deepest, all[i].text.width(typeSize))
	}
	return bottom + 22 + deepest + 6
}

// up writes measurements from the lower edge beside the piece.
func (d *pieceDrawing) up(all []stop) {
	wanted := make([]float64, len(all))
	places := make([]int, len(all))
	for i, s := range all {
		places[i], wanted[i] = i, d.y(s.at)
	}
	order(wanted, places)
	for n, y := range spread(wanted, markGap, d.area.y-d.lift-8, d.area.y+d.area.h) {
		i := places[n]
		if !all[i].at.IsZero() {
			d.add("path", "class", "ext", "d", fmt.Sprintf("M%s %sH%s", ink(d.area.x), ink(wanted[n]), ink(d.reach(1, all[i].at))))
		}
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sh-5L%s %s", ink(d.area.x-1), ink(wanted[n]), ink(d.area.x-19), ink(y)))
		all[i].text.write(&d.root, "", d.area.x-22, y+4, "end")
	}
}

// letters names every corner as the table of marks does.
func (d *pieceDrawing) letters() {
	all := d.corners()
	for _, c := range all {
		d.board.claim(around(d.x(c.at[0]), d.y(c.at[1]), 3, 3))
	}
	for i, c := range all {
		x, y := d.x(c.at[0]), d.y(c.at[1])
		d.add("circle", "class", "startmark", "cx", x, "cy", y, "r", dotSize)
		name := plan.CornerName(i)
		w := textWidth(name, smallSize) + 2
		var seats []box
		for _, away := range []float64{8, 12, 17} {
			for _, way := range [][2]float64{{1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1.2}, {0, 1.2}, {1.2, 0}, {-1.2, 0}} {
				seats = append(seats, around(x+way[0]*away, y+way[1]*away, w, letterSize))
			}
		}
		if seat, ok := d.board.place(seats...); ok {
			line{counted(name)}.write(&d.root, "small bold halo", seat.x+w/2, seat.y+10, "middle")
		}
	}
}

// drills draws the starter holes of the jigsaw.
func (d *pieceDrawing) drills() {
	for _, hole := range d.piece.Marks.Drill {
		x, y, r := d.x(hole.At[0]), d.y(hole.At[1]), max(1.6, hole.Diameter.Float64()/2*d.scale)
		d.add("circle", "class", "drill", "cx", x, "cy", y, "r", r)
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sh%sM%s %sv%s", ink(x-r), ink(y), ink(2*r), ink(x), ink(y-r), ink(2*r)))
		d.board.claim(around(x, y, 2*r, 2*r))
	}
}

// label writes the piece's number and the side in the heading of the drawing.
func (d *pieceDrawing) label(side string) {
	text := line{"Piece ", word(d.piece.Label, ref("pieces[%d].label", d.index)), ", " + side}
	text.write(&d.root, "bold", d.area.x+d.area.w/2, 13, "middle")
}

// weak marks the spots that may break.
func (d *pieceDrawing) weak() {
	for _, w := range d.piece.Weak {
		x, y := d.x(w.At[0]), d.y(w.At[1])
		d.add("path", "class", "flaw", "d", fmt.Sprintf("M%s %sl5 9h-10z", ink(x), ink(y-6)))
		d.board.claim(around(x, y, 10, 12))
	}
}

// describe is the text alternative.
func (d *pieceDrawing) describe() string {
	text := fmt.Sprintf("Piece %s of %s, %s by %s.", d.piece.Label, d.piece.Run, d.tape.Format(d.piece.Width), d.tape.Format(d.piece.Height))
	for i, c := range d.corners() {
		text += fmt.Sprintf(" Corner %s: %s from the left edge, %s from the lower edge.", plan.CornerName(i), d.tape.Format(c.marked[0]), d.tape.Format(c.marked[1]))
	}
	return text
}
