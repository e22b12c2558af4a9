package book

import (
	"strings"
	"testing"

	"example.com/groovewright/wall/drawing"
)

// TestScalesLeftOutHaveNoRoom: the drawings of a side, at every scale, are as high as a leaf counts on before it draws them, and
// a scale that it leaves out has no room once it is drawn.
func TestScalesLeftOutHaveNoRoom(t *testing.T) {
	for name, p := range map[string]string{"kitchen": "fixture", "bathroom": "plans/bathroom", "arches": "plans/arches", "millimetres": "plans/metric"} {
		p, err := storedPlan("../drawing/testdata/" + p + ".json")
		if err != nil {
			t.Fatal(err)
		}
		b := newPage(p, "")
		b.draw()
		out := 0
		for _, l := range b.leaves {
			b.measure(l)
			for one := l.least(); one*sideWide >= inkInch*l.piece.Width.Float64() && one > 1; one-- {
				for pages := 1; pages <= 2; pages++ {
					if trial := *l; !may([]*leaf{l}, one, pages > 1) {
						if out++; b.lay(&trial, one, pages) {
							t.Errorf("%s, piece %s: at 1:%v it has room on %d pages", name, l.piece.Label, one, pages)
						}
					}
				}
				for back, least := range []float64{l.more + titleMore, l.more} {
					side := b.side(l, back, one)
					narrow, ok := side.Narrow()
					for _, pic := range []drawing.Picture{side.Picture, either(ok, narrow, side.Picture)} {
						if more := pic.Height - inkInch*l.piece.Height.Float64()/pic.Scale; more < least {
							t.Errorf("%s, piece %s: %s at 1:%v has %v over and under it, want %v at least", name, l.piece.Label, pic.Name, pic.Scale, more, least)
						}
					}
				}
			}
		}
		if out == 0 {
			t.Errorf("%s: no scale is left out", name)
		}
	}
}

// TestDetailsHaveRoom: each page of the details of a stair in many boards, whose pictures of fitting take two rows, has room for
// what it is to hold.
func TestDetailsHaveRoom(t *testing.T) {
	p, err := madePlan(strings.NewReader(`{"title": "Stair with landing", "profile": "edge-and-center bead 3-1/8", "stock": [{"name": "board", "width": "3 1/8", "length": "96"}], "gaps": {"top": "1/16", "bottom": "1/4", "side": "1/8"},
		"trim": {"bottom": {"name": "skirt board", "covers": "1"}, "top": {"name": "cap rail", "covers": "3/4"}},
		"runs": [{"name": "stair", "width": "112", "left": {"kind": "exposed"}, "right": {"kind": "inside corner"},
			"heights": [{"at": "0", "top": "36"}, {"at": "12", "top": "36"}, {"at": "45", "bottom": "24 3/4", "top": "60 3/4"},
				{"at": "78", "bottom": "49 1/2", "top": "85 1/2"}, {"at": "112", "bottom": "49 1/2", "top": "85 1/2"}],
			"openings": [{"name": "switch", "kind": "box", "left": "95", "bottom": "74", "width": "2 1/4", "height": "3 3/4"}]},
		{"name": "landing", "width": "38", "left": {"kind": "inside corner"}, "right": {"kind": "exposed"},
			"heights": [{"at": "0", "bottom": "49 1/2", "top": "85 1/2"}, {"at": "38", "bottom": "49 1/2", "top": "85 1/2"}]}],
		"finish": {"house": {"datum": "0", "material": "solid wood"}}}`))
	if err != nil {
		t.Fatal(err)
	}
	b := newPage(p, "")
	b.draw()
	b.drawPieces()
	// The table of its slanted boards leaves no page to the first odd piece, which has two of its own.
	if l := b.leaves[0]; l.piece.Label != "4" || len(l.blocks) != 2 {
		t.Errorf("piece %s is laid out on %d pages", l.piece.Label, len(l.blocks))
	}
	for i, run := range p.Runs {
		for k, block := range b.details(i) {
			if block.high+headHigh > pageHigh {
				t.Errorf("%s, page %d: %.0f high, a page has %.0f", run.Name, k+1, block.high+headHigh, pageHigh)
			}
		}
	}
}
