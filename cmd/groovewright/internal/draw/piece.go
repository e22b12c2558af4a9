package draw

import (
	"fmt"
	"slices"

	"example.com/groovewright/cmd/groovewright/internal/plan"
	"example.com/groovewright/fraction"
)

const (
	pieceTall  = 300.0 // most ink that a piece's height takes
	pieceLeft  = 92.0  // lane for the measurements up the piece
	mostMarks  = 24    // running measurements beside a drawing; more are left to the table
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
}

// drawPieceSide returns the drawing of one side of piece i.
func drawPieceSide(s scribe, i int, back bool) *Picture {
	piece := s.plan.Pieces[i]
	side, name := "face", "face, as it hangs on the wall"
	if back {
		side, name = "back", "back, left and right exchanged"
	}
	d := &pieceDrawing{scribe: s, piece: piece, index: i, back: back}
	d.Picture = newPicture(fmt.Sprintf("piece-%d-%s", piece.Number, side), fmt.Sprintf("Piece %s: %s", piece.Label, name))
	d.Desc = d.describe()
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
	wide, tall := d.piece.Width.Float64(), d.piece.Height.Float64()
	d.Width = halfInk
	d.scale = min((halfInk-pieceLeft-20)/wide, pieceTall/tall)
	d.left, d.top, d.y1 = pieceLeft+(halfInk-pieceLeft-20-wide*d.scale)/2, 34, tall
	if d.back {
		d.flip = wide
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
			all = append(all, corner{face[i], marked[i], fmt.Sprintf("%s[%d]", path, i)})
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

// measures writes the running measurements to every corner, with a dashed line
// from each to the corners it belongs to.
func (d *pieceDrawing) measures() {
	bottom := d.area.y + d.area.h
	d.Height = bottom + 10
	for axis := range 2 {
		var all []stop
		var reach []float64 // how far the dashed line of each runs into the piece
		for _, c := range d.corners() {
			at, far := c.marked[axis], d.y(c.at[1])
			if axis == 1 {
				far = d.x(c.at[0])
			}
			i := slices.IndexFunc(all, func(s stop) bool { return s.at == at })
			if i < 0 {
				all = append(all, stop{line{d.length(at, ref("%s[%d]", c.path, axis))}, at})
				reach = append(reach, far)
				continue
			}
			if axis == 0 {
				reach[i] = min(reach[i], far)
			} else {
				reach[i] = max(reach[i], far)
			}
		}
		if len(all) > mostMarks {
			continue
		}
		if axis == 0 {
			d.Height = d.across(all, reach)
		} else {
			d.up(all, reach)
		}
	}
}

// across writes measurements from the left edge under the piece.
func (d *pieceDrawing) across(all []stop, reach []float64) float64 {
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
			d.add("path", "class", "ext", "d", fmt.Sprintf("M%s %sV%s", ink(wanted[n]), ink(bottom), ink(reach[i])))
		}
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sv5L%s %s", ink(wanted[n]), ink(bottom+1), ink(x), ink(bottom+19)))
		all[i].text.upright(&d.root, "", x, bottom+22, "end")
		deepest = max(deepest, all[i].text.width(typeSize))
	}
	return bottom + 22 + deepest + 6
}

// up writes measurements from the lower edge beside the piece.
func (d *pieceDrawing) up(all []stop, reach []float64) {
	wanted := make([]float64, len(all))
	places := make([]int, len(all))
	for i, s := range all {
		places[i], wanted[i] = i, d.y(s.at)
	}
	order(wanted, places)
	for n, y := range spread(wanted, 13, d.area.y-8, d.area.y+d.area.h) {
		i := places[n]
		if !all[i].at.IsZero() {
			d.add("path", "class", "ext", "d", fmt.Sprintf("M%s %sH%s", ink(d.area.x), ink(wanted[n]), ink(reach[i])))
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
		name := cornerName(i)
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

// cornerName is a letter, then a letter with a number: A … Z, A1 … Z1, A2 …
func cornerName(i int) string {
	name := string(rune('A' + i%26))
	if i >= 26 {
		name += fmt.Sprint(i / 26)
	}
	return name
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
		text += fmt.Sprintf(" Corner %s: %s from the left edge, %s from the lower edge.", cornerName(i), d.tape.Format(c.marked[0]), d.tape.Format(c.marked[1]))
	}
	return text
}
