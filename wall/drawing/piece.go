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
	mostLift   = 120.0 // most ink that the measurements up the piece may rise above it
	dotSize    = 1.9
	letterSize = 12.0
)

// pieceDrawing is a side of a piece with running measurements from its left and its lower edge.
type pieceDrawing struct {
	canvas
	piece   plan.Piece
	back    bool
	corners []corner // of the outline and then of each hole, in the order of the table of marks
	area    box
	lift    float64 // room for measurements above the piece
}

// corner is one corner of the piece.
type corner struct {
	at     plan.Point // on the face, for drawing
	marked plan.Point // as measured on the drawn side
	path   string     // of that in the plan
	square bool       // a level or plumb edge ends here, unlike within a curve
}

// along is where the corner was measured along an axis.
func (c corner) along(axis int) fraction.Length {
	return []fraction.Length{c.marked.X, c.marked.Y}[axis]
}

// plain reports whether a piece has only its outer edges to saw.
func plain(piece plan.Piece) bool { return len(piece.Holes) == 0 && len(piece.Outline) < 6 }

// Piece draws piece i of a plan with its marks, as measured on its face or on its back, where left
// is right.
func Piece(p plan.Plan, i int, back bool) (pic Picture, err error) {
	defer fraction.Catch(&err)
	most := halfInk
	if i >= 0 && i < len(p.Pieces) && !back && !plain(p.Pieces[i]) && p.Pieces[i].Height.Mul(5).Less(p.Pieces[i].Width.Mul(4)) {
		most = wideInk // of a face that is a quarter wider than high
	}
	return draw(most, fault.Of("Pieces"), i, len(p.Pieces), func(width float64) *Picture {
		piece, path := p.Pieces[i], ref("pieces[%d].", i)
		side, title := "face", "face, as it hangs on the wall"
		if back {
			side, title = "back", "back, left and right exchanged"
		}
		name := ref("piece-%d-%s", piece.Number, side)
		if most == wideInk {
			name = sized(name, width)
		}
		d := &pieceDrawing{canvas: newCanvas(p, width, name, fmt.Sprintf("Piece %s: %s", piece.Label, title)), piece: piece, back: back}
		d.measured(path+"marks.", side)
		d.describe()
		d.lay()
		profile := p.Profile
		if back {
			profile.Features = nil
		}
		d.drawPiece(d.add("g"), d.view, profile, piece, "shape")
		d.measures()
		d.drills(&d.node, piece, "drill", "lead", 1.6)
		for _, w := range piece.Weak {
			x, y := d.x(w.At.X), d.y(w.At.Y)
			d.stroke("flaw", "M", x, y-6, "l5 9h-10z")
			d.claim(centered(x, y, 10, 12))
		}
		d.letters()
		line{"Piece ", figure{piece.Label, path + "label"}, ", " + side}.write(&d.node, "bold", d.area.x+d.area.w/2, 13, "middle")
		return d.Picture
	})
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
			d.corners = append(d.corners, corner{face[i], back[i], fmt.Sprintf("%s%s[%d]", path, side, i), square})
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
	d.scale = min(room/across, map[bool]float64{false: pieceTall, true: plainTall}[plain(d.piece)]/tall)
	d.lift = max(0, min(mostLift, poleGap*float64(len(d.stops(1, true))-1)-tall*d.scale))
	d.left, d.top, d.y1 = pieceLeft+(room-across*d.scale)/2, 34+d.lift, tall
	if d.back {
		d.flip = across
	}
	d.area = d.whole(d.piece.Width, d.piece.Height)
	d.frame = d.area.grow(15)
}

// stops are the running measurements along one axis, each once, to every corner or the square ones.
func (d *pieceDrawing) stops(axis int, squareOnly bool) (all []stop) {
	for _, c := range d.corners {
		at := c.along(axis)
		if squareOnly && !c.square || slices.ContainsFunc(all, func(s stop) bool { return s.at == at }) {
			continue
		}
		ink := d.y(at)
		if axis == 0 {
			ink = d.left + at.Float64()*d.scale // marked on this side: from its left
		}
		all = append(all, stop{text: line{d.length(at, ref("%s[%d]", c.path, axis))}, at: at, ink: ink})
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
	up, right := d.area.y+d.area.h, 0.0
	for _, c := range d.corners {
		if c.along(axis) == at {
			up, right = min(up, d.y(c.at.Y)), max(right, d.x(c.at.X))
		}
	}
	return []float64{up, right}[axis]
}

// letters names every corner as the table of marks does.
func (d *pieceDrawing) letters() {
	for _, c := range d.corners {
		d.claim(centered(d.x(c.at.X), d.y(c.at.Y), 3, 3))
	}
	for i, c := range d.corners {
		x, y := d.x(c.at.X), d.y(c.at.Y)
		d.dot("startmark", x, y, dotSize)
		name := plan.CornerName(i)
		w := textWidth(name, smallSize) + 2
		seats := grid([]float64{8, 12, 17}, []complex128{1 - 1i, -1 - 1i, 1 + 1i, -1 + 1i, -1.2i, 1.2i, 1.2, -1.2}, func(away float64, way complex128) box {
			return centered(x+real(way)*away, y+imag(way)*away, w, letterSize)
		})
		if seat, ok := d.place(seats...); ok {
			line{counted(name)}.write(&d.node, "small bold halo", seat.x+w/2, seat.y+10, "middle")
		}
	}
}

// describe is the text alternative.
func (d *pieceDrawing) describe() {
	say := d.tape.Format
	d.desc("Piece %s of %s, %s by %s.", d.piece.Label, d.piece.Run, say(d.piece.Width), say(d.piece.Height))
	for i, c := range d.corners {
		d.desc("Corner %s: %s from the left edge, %s from the lower edge.", plan.CornerName(i), say(c.marked.X), say(c.marked.Y))
	}
}
