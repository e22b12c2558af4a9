package book

import (
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
		b := &page{text: &text{tape: p.TapeMeasure(), shop: true}, Plan: p, drawn: map[string]rendered{}}
		b.draw()
		b.Contents = b.contents()
		b.every = b.legend()
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
