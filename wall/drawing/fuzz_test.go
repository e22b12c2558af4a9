package drawing

import (
	"bytes"
	"encoding/xml"
	"io"
	"testing"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall/plan"
)

// FuzzWild draws everything of wild plans: nothing panics, and what is drawn is well formed.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, 0)
	for part := range 15 { // the plan and its 14 parts, see wildPlan
		f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, part)
	}
	f.Add([]byte("\x01\x02\x03\x04\x05\x06\x0f\x10\x00\b\t\n"), 112) // a piece of less than no height: once a search for places without end
	f.Fuzz(drawAll)
}

// drawAll draws everything of a wild plan.
func drawAll(t *testing.T, data []byte, part int) {
	p, paper := wildPlan(data, part), Paper{Width: float64(part) / 10, Height: float64(len(data))}
	draw := func(pic Picture, err error) {
		if err == nil && part%2 == 0 { // each second time, because this is slow
			wellFormed(t, pic)
			small, _ := pic.Narrow()
			wellFormed(t, small)
		}
	}
	draw(Room(p))
	draw(Unfolded(p))
	draw(Preview(p))
	for i := range len(p.Runs) + 1 {
		draw(Elevation(p, i))
		draw(StoryPole(p, i))
		draw(Section(p, i))
		draw(End(p, i, false))
		draw(End(p, i, true))
		draw(Corner(p, i))
		draw(FittingStrip(p, i))
		p.CornerLetter(i)
	}
	for i := range len(p.Sheets) + 1 {
		draw(Sheet(p, i))
	}
	for i := range len(p.Pieces) + 1 {
		draw(Piece(p, i, false, 250))
		draw(Piece(p, i, true, 250))
	}
	for _, paper := range append(Papers(), paper) {
		set, err := Templates(p, paper)
		for _, page := range set.Pages {
			for _, cell := range page {
				draw(cell.Picture, err)
			}
		}
		for _, one := range set.Maps {
			draw(one.Picture, err)
		}
	}
	draw(Survey(part), nil)
	for i := range len(p.Blemishes) + 1 {
		p.BlemishNumber(i - 1)
	}
	for _, run := range p.Runs {
		for _, mark := range run.StoryPole {
			mark.Name(p.Profile)
		}
		run.Left.Cut.Name(p.TapeMeasure())
	}
}

// wellFormed reads a drawing as strict XML.
func wellFormed(t *testing.T, pic Picture) {
	d := xml.NewDecoder(bytes.NewReader(pic.SVG()))
	for {
		switch _, err := d.Token(); err {
		case nil:
		case io.EOF:
			return
		default:
			t.Fatalf("%q: %v", pic.Name, err)
		}
	}
}

// wildPlan is the made-up kitchen with a part of it made wild, or a plan that is wild all over.
func wildPlan(data []byte, part int) plan.Plan {
	p := kitchen()
	fractiontest.FillPart(data, part, &p, &p.Profile, &p.Saw, &p.Gaps, &p.Tape, &p.Runs[1], &p.Runs[0].Panels, &p.Pieces[3], &p.Pieces[0].Marks, &p.Sheets[0],
		&p.Stock, &p.Blemishes, &p.Runs[2].Outline, &p.Pieces[1].Outline, &p.Pieces[1].Holes)
	return p
}
