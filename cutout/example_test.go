package cutout_test

import (
	"fmt"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// A wall of 60 by 20 in with a window that reaches past its top, cut at two
// seams: the middle panel falls into what is left below the window.
func ExampleShape_Band() {
	wall, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(60), in(20)))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, part := range wall.Minus(cutout.Rectangle(in(10), in(8), in(40), in(30)), of(1, 16)) {
		for i, seam := range []int64{0, 20, 40} {
			for _, piece := range part.Band(in(seam), in(seam+20), of(1, 16)) {
				lo, hi := piece.Bounds()
				fmt.Printf("panel %d: from %v to %v, up to %v, %d corners\n", i+1, lo.X, hi.X, hi.Y, len(piece.Outline))
			}
		}
	}
	// Output:
	// panel 1: from 0 to 20, up to 20, 6 corners
	// panel 2: from 20 to 40, up to 8, 4 corners
	// panel 3: from 40 to 60, up to 20, 6 corners
}

// A taped ceiling slopes by 1 in over 48. At the seam it is not at a mark; the
// corner is rounded down, so that the piece fits.
func ExampleShape_Band_rounded() {
	wall := cutout.Shape{Outline: []cutout.Point{at(0, 0), at(48, 0), at(48, 19), at(0, 18)}}
	for _, mark := range []fraction.Length{{}, of(1, 16)} {
		left := wall.Band(in(0), in(20), mark)[0]
		fmt.Println(left.Outline[2].Y)
	}
	// Output:
	// 18 5/12
	// 18 3/8
}

// The corner of a chimney breast, taped from both ends of a 120 in wall.
func ExampleLocate() {
	corner, err := cutout.Locate([]cutout.Taped{
		{From: at(0, 0), Distance: fraction.MustParse("72")},
		{From: at(120, 0), Distance: fraction.MustParse("96")},
	}, cutout.Left, fraction.MustParse("1/16"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(corner.At.X, corner.At.Y, corner.Exact)
	// Output:
	// 43 1/5 57 3/5 true
}

// What to mark, drill and saw for a box in a piece of 20 by 18 in.
func ExampleShape_Cuttings() {
	piece := cutout.Shape{
		Outline: cutout.Rectangle(in(0), in(0), in(20), in(18)),
		Holes:   [][]cutout.Point{{at(3, 4), at(3, 7), at(5, 7), at(5, 4)}},
	}
	fmt.Println("back:", piece.Marks().Holes[0].Back)
	for _, cutting := range piece.Cuttings(of(3, 8), of(1, 16)) {
		for _, line := range cutting.Words("box", fraction.Tape{Mark: of(1, 16)}) {
			fmt.Println(line)
		}
	}
	// Output:
	// back: [{17 4} {17 7} {15 7} {15 4}]
	// box: drill 3/8, centre 3 3/16 across, 4 3/16 up
	// box: drill 3/8, centre 3 3/16 across, 6 13/16 up
	// box: drill 3/8, centre 4 13/16 across, 6 13/16 up
	// box: drill 3/8, centre 4 13/16 across, 4 3/16 up
	// box: saw up at 3 across, from 4 to 7
	// box: saw down at 5 across, from 7 to 4
	// box: saw right at 7 up, from 3 to 5
	// box: hold the waste and last saw left at 4 up, from 5 to 3
}

// A box half an inch from the edge of a piece leaves a strip that breaks.
func ExampleShape_WeakSpots() {
	piece, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(20), in(18)),
		cutout.Rectangle(of(1, 2), in(4), in(2), in(3)))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, weak := range piece.WeakSpots(cutout.UsualLimits()) {
		fmt.Printf("%v of %v along %v: %s\n", weak.Kind, weak.Width, weak.Length, weak.WayOut)
	}
	// Output:
	// strip of 1/2 along 3: move the seam so that the cutout runs out at the edge or lies further in, or saw the piece in two at the cutout
}

// What is wrong is named by ring and corner as they were given: a bow tie, and a hole that reaches out of its outline.
func ExampleNewShape() {
	_, err := cutout.NewShape([]cutout.Point{at(0, 0), at(10, 10), at(10, 0), at(0, 10)})
	fmt.Println(err)
	_, err = cutout.NewShape(cutout.Rectangle(in(0), in(0), in(10), in(10)), cutout.Rectangle(in(8), in(2), in(4), in(4)))
	fmt.Println(err)
	// Output:
	// outline[2]: edges cross or touch at (10, 0)
	// holes[0][0]: hole is not wholly inside the outline at (8, 2)
}

// The same window leaves a hole inside a piece, a notch at its edge, two pieces across it, and nothing changed outside.
func ExampleShape_Minus() {
	wall := cutout.Shape{Outline: cutout.Rectangle(in(0), in(0), in(60), in(20))}
	for _, bottom := range []int64{5, 15, 30} {
		for _, piece := range wall.Minus(cutout.Rectangle(in(10), in(bottom), in(8), in(10)), of(1, 16)) {
			fmt.Println(len(piece.Outline), "corners,", len(piece.Holes), "holes,", piece.Area(), "square inches")
		}
	}
	fmt.Println(len(wall.Minus(cutout.Rectangle(in(10), in(-5), in(8), in(30)), of(1, 16))), "pieces")
	// Output:
	// 4 corners, 1 holes, 1120 square inches
	// 8 corners, 0 holes, 1160 square inches
	// 4 corners, 0 holes, 1200 square inches
	// 2 pieces
}

// The right end of a wall leans 1 in 20: what lies to the left of its line stays.
func ExampleShape_ClipLine() {
	wall := cutout.Shape{Outline: cutout.Rectangle(in(0), in(0), in(60), in(20))}
	for _, piece := range wall.ClipLine(at(59, 0), at(58, 20), of(1, 16)) {
		for _, p := range piece.Outline {
			fmt.Println(p.X, p.Y)
		}
	}
	// Output:
	// 0 0
	// 59 0
	// 58 20
	// 0 20
}

// Every corner is measured from the same two edges, on the back from the other side.
func ExampleShape_Marks() {
	piece := cutout.Shape{Outline: []cutout.Point{at(0, 0), at(20, 0), at(20, 18), at(6, 18), at(6, 12), at(0, 12)}}
	marks := piece.Marks()
	for i, face := range marks.Outline.Face {
		fmt.Println(face.X, face.Y, "on the back", marks.Outline.Back[i].X)
	}
	// Output:
	// 0 0 on the back 20
	// 20 0 on the back 0
	// 20 18 on the back 0
	// 6 18 on the back 14
	// 6 12 on the back 14
	// 0 12 on the back 20
}

// The head of an arch over a chord of 24 in that rises by 8: the sides 5, 12 and 13 of a right triangle give its radius. The level
// edge that touches its top, 18 in up, ends at the corner shown.
func ExampleArc() {
	radius, err := cutout.Radius(in(24), in(8))
	fmt.Println(radius, err)
	head, err := cutout.Arc(at(0, 10), in(24), in(8), of(1, 8), of(1, 16), cutout.Outside)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(head), "corners, from", head[0].X, head[0].Y, "over", head[len(head)/2].X, head[len(head)/2].Y)
	// Output:
	// 13 <nil>
	// 14 corners, from 0 10 over 13 1/2 18
}
