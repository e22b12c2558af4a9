package wall

import (
	"context"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// seamsIn returns where the seams of a run are, used breaks among them.
func seamsIn(l *Layout, run int) (at []fraction.Length) {
	for _, b := range l.Blemishes {
		if b.Kind == Seam && b.Run == run {
			at = append(at, b.At)
		}
	}
	return at
}

// A seam through the middle of a wide box is as bad as one at its side: it is made only if there is
// no other.
func TestSeamsStayOutOfBoxes(t *testing.T) {
	for _, test := range []struct {
		name, left, width string
		breakAt           string
		seams, broken     int
	}{
		{"one seam would fall into the box, two do not", "24", "12", "", 2, 0},
		{"a box too wide to be passed by", "4", "52", "", 1, 1},
		{"just one inch from the box", "17", "11 3/4", "", 1, 0},
		{"a break in the box is a seam too", "4", "52", "30", 1, 1},
	} {
		left, width := fraction.MustParse(test.left), fraction.MustParse(test.width)
		room := Room{Profile: profiles[0], Mark: fraction.Of(1, 16), Priorities: DefaultPriorities(fraction.Inch),
			Stock: []nest.Stock{{Name: "sheet", Width: fraction.Inches(33), Length: fraction.Inches(96)}},
			Runs: []Run{{Name: "run", Width: fraction.Inches(60), Left: End{Kind: Exposed}, Right: End{Kind: Exposed}, Heights: heights("0,0,20; 60,0,20"),
				Openings: []Opening{{Name: "box", Kind: Box, Outline: cutout.Rectangle(left, fraction.Inches(4), width, fraction.Inches(4))}}}}}
		if test.breakAt != "" {
			room.Runs[0].Breaks = []Break{{At: fraction.MustParse(test.breakAt)}}
		}
		for l, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Fatal(err)
			}
			seams, in := seamsIn(&l, 0), 0
			for _, x := range seams {
				in += len(room.BoxesAt(0, x))
			}
			if len(seams) != test.seams || l.Broken != test.broken || in != test.broken {
				t.Errorf("%s: seams at %v, %d of them at the box, %d rules broken; want %d seams and %d rules", test.name, seams, in, l.Broken, test.seams, test.broken)
			}
			break
		}
	}
}
