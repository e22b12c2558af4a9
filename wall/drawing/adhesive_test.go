package drawing

import (
	"fmt"
	"math"
	"math/cmplx"
	"strconv"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/wall/plan"
)

// Adhesive on the backs lies on the piece, off its edges and its holes as far as the plan says: beads, dots, and the area of
// what is laid as its tube says.
func TestAdhesiveStaysOffEdgesAndHoles(t *testing.T) {
	drawn := map[string]int{}
	forEachPlan(t, func(t *testing.T, p plan.Plan) {
		for _, form := range []finish.GlueForm{finish.GlueBeads, finish.GlueDots, finish.GlueCustom, finish.NoGlue} {
			p.Fixing.Glue, p.Fixing.GlueSize, p.Fixing.GlueSpacing = form, in("3/8"), in("6")
			for i, piece := range p.Pieces {
				pic, err := Piece(p, i, true, 250)
				if err != nil {
					t.Fatal(err)
				}
				d := drawParted(p, i, true, pic.Width, [2]float64{250, 14}, "x")
				off, edges := p.GlueInset().Float64()*d.scale-.1, d.view.edges(piece.Rings()...)
				if p.Fixing.Level {
					off = 0 // a strip may lie at the foot of a board
				}
				stays := func(at point) {
					near := math.Inf(1)
					for _, s := range edges {
						near = min(near, cmplx.Abs(at-s.nearest(at, 0)))
					}
					if drawn[form.String()]++; near < off || !inside(at, edges) && near > .02 {
						t.Errorf("piece %s: %v at %v is %v from an edge, want %v", piece.Label, form, at, near, off)
					}
				}
				for _, n := range d.named("path", "glue") {
					var from, to [2]float64
					if _, err := fmt.Sscanf(n.value("d"), "M%g %gL%g %g", &from[0], &from[1], &to[0], &to[1]); err != nil {
						t.Fatal(n.value("d"), err)
					}
					way := segment{complex(from[0], from[1]), complex(to[0], to[1])}
					for share := 0.0; share <= 1; share += .125 {
						stays(way.along(share))
					}
				}
				for _, n := range d.named("path", "unglued") {
					drawn[form.String()]++
					if wide, _ := strconv.ParseFloat(n.value("stroke-width"), 64); math.Abs(wide-2*p.GlueInset().Float64()*d.scale) > .006 || n.value("d") != d.curved(piece.Marks.Arcs, piece.Rings()...) {
						t.Errorf("piece %s: adhesive stays off by half of %v along %q", piece.Label, wide, n.value("d"))
					}
				}
			}
		}
	})
	if drawn["none"] > 0 || min(drawn["beads"], drawn["dots"], drawn["custom"]) < 50 {
		t.Errorf("too little is drawn: %v", drawn)
	}
}
