package drawing

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/groovewright/wall/plan"
)

// TestLettersAreNearestToTheirCorners: each letter on a piece has its middle much nearer to its own
// corner than to any other, or a lead to it, and every corner that is on no arc has one. Letters that
// share a label are of corners that ink cannot part.
func TestLettersAreNearestToTheirCorners(t *testing.T) {
	looked := 0
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for i, piece := range p.Pieces {
			for _, back := range []bool{false, true} {
				pic, err := Piece(p, i, back)
				if err != nil {
					t.Fatal(err)
				}
				d := &pieceDrawing{canvas: newCanvas(p, pic.Width, "x", "x"), piece: piece, back: back}
				d.measured("", map[bool]string{false: "face", true: "back"}[back])
				d.lay()
				at := map[string]*node{}
				for _, n := range pic.kids {
					if n.name == "text" && strings.HasPrefix(n.value("class"), "bold halo") {
						for _, kid := range n.kids {
							if kid.name == "tspan" {
								at[kid.kids[0].text] = n
							}
						}
					}
				}
				for k, c := range d.corners {
					letter := at[plan.CornerName(k)]
					if c.arc {
						continue
					}
					if letter == nil {
						t.Errorf("piece %s, back %v: no letter %s", piece.Label, back, plan.CornerName(k))
						continue
					}
					looked++
					spot := letter.box()
					x, y := spot.x, spot.y-typeSize*.36
					away := func(c corner) float64 { return math.Hypot(d.x(c.at.X)-x, d.y(c.at.Y)-y) }
					lead := false // to one of the corners of the label
					for m, other := range d.corners {
						lead = lead || at[plan.CornerName(m)] == letter && leads(pic, d.x(other.at.X), d.y(other.at.Y))
					}
					if far := away(c); len(letter.kids) == 1 && far > 18.5 && !lead {
						t.Errorf("piece %s, back %v: letter %s is %.1f off its corner", piece.Label, back, plan.CornerName(k), far)
					}
					for m, other := range d.corners {
						shared := at[plan.CornerName(m)] == letter
						if shared && math.Hypot(d.x(c.at.X)-d.x(other.at.X), d.y(c.at.Y)-d.y(other.at.Y)) > 2*closer {
							t.Errorf("piece %s, back %v: %s and %s share a label", piece.Label, back, plan.CornerName(k), plan.CornerName(m))
						}
						if !other.arc && !lead && !shared && away(other) < 1.25*away(c) {
							t.Errorf("piece %s, back %v: letter %s is nearer to %s", piece.Label, back, plan.CornerName(k), plan.CornerName(m))
						}
					}
				}
			}
		}
	})
	if looked < 100 {
		t.Errorf("only %d letters were looked at", looked)
	}
}

// leads reports whether a lead ends at a place.
func leads(pic Picture, x, y float64) bool {
	return slices.ContainsFunc(pic.kids, func(n *node) bool {
		return slices.ContainsFunc(n.kids, func(l *node) bool {
			return l.value("class") == "lead" && strings.HasSuffix(l.value("d"), pen("L", x, y))
		})
	})
}

// TestArcsAreTrue draws the head of a hole in a view and measures what its path goes through: every
// point of the arcs within 0.1 mm of the circle at full size, which is as large as anything is drawn.
func TestArcsAreTrue(t *testing.T) {
	arc := plan.Arc{Centre: plan.Point{X: in("23"), Y: in("5")}, Radius: in("13"), Springs: in("10")}
	head := ring("11", "2", "35", "2", "35", "10 1/8", "30", "16", "23", "18 1/8", "16", "16", "11", "10 1/8")
	v := view{scale: perInch, y1: 20}
	path := v.curved([]plan.Arc{arc}, head)
	if strings.Count(path, "A") != 2 {
		t.Fatalf("want two arcs from springing to springing in %s", path)
	}
	ends := strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune("MLAZ", r) })
	for _, part := range ends[2:5] {
		var xy [2]float64
		fields := strings.Fields(part)
		for i := range xy {
			var err error
			if xy[i], err = strconv.ParseFloat(fields[len(fields)-2+i], 64); err != nil {
				t.Fatal(err)
			}
		}
		off := math.Hypot(xy[0]/perInch-23, 20-xy[1]/perInch-5) - 13
		if math.Abs(off)*25.4 > .1 {
			t.Errorf("%s lies %.3f mm off the circle", part, off*25.4)
		}
	}
}
