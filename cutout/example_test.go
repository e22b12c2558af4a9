package cutout_test

import (
	"fmt"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// A wall of 60 by 20 in with a window that reaches past its top, cut at two seams: the middle panel
// falls into what is left below the window.
func ExampleShape_Band() {
	wall, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(60), in(20)))
	if err != nil {
		fmt.Println(err)
		return
	}
	parts, err := wall.Minus(cutout.Rectangle(in(10), in(8), in(40), in(30)))
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, seam := range []int64{0, 20, 40} {
		pieces, err := parts[0].Band(in(seam), in(seam+20))
		for _, piece := range pieces {
			lo, hi := piece.Bounds()
			fmt.Printf("panel %d: from %v to %v, up to %v, %d corners\n", i+1, lo.X, hi.X, hi.Y, len(piece.Outline()))
		}
		if err != nil {
			fmt.Println(err)
		}
	}
	// Output:
	// panel 1: from 0 to 20, up to 20, 6 corners
	// panel 2: from 20 to 40, up to 8, 4 corners
	// panel 3: from 40 to 60, up to 20, 6 corners
}

// A taped ceiling slopes by 1 in over 48. At the seam it is not at a mark; the corner is rounded
// down, so that the piece fits.
func ExampleSnap() {
	taped := []cutout.Point{at(0, 0), at(48, 0), at(48, 19), at(0, 18)}
	wall, err := cutout.NewShape(taped)
	if err != nil {
		fmt.Println(err)
		return
	}
	exact, err := wall.Band(in(0), in(20))
	if err != nil {
		fmt.Println(err)
		return
	}
	marked, err := cutout.Snap(exact, of(1, 16), of(1, 64), func(p cutout.Point) bool { return slices.Contains(taped, p) })
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(exact[0].Outline()[2].Y, "is cut at", marked[0].Outline()[2].Y)
	// Output:
	// 18 5/12 is cut at 18 3/8
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

// What to drill and saw for a box in a piece of 20 by 18 in.
func ExampleShape_Cuttings() {
	piece, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(20), in(18)), cutout.Rectangle(in(3), in(4), in(2), in(3)))
	if err != nil {
		fmt.Println(err)
		return
	}
	cuttings, err := piece.Cuttings(of(3, 8), of(1, 16))
	for _, c := range cuttings {
		for _, s := range c.Starters {
			fmt.Println(c.Kind, "drill", s.Diameter, "at", s.At)
		}
		for _, way := range c.Ways {
			fmt.Println(c.Kind, "saw", way)
		}
	}
	fmt.Println(err)
	// Output:
	// hole drill 3/8 at {3 3/16 4 3/16}
	// hole drill 3/8 at {3 3/16 6 13/16}
	// hole drill 3/8 at {4 13/16 6 13/16}
	// hole drill 3/8 at {4 13/16 4 3/16}
	// hole saw [{3 4} {3 7}]
	// hole saw [{5 7} {5 4}]
	// hole saw [{3 7} {5 7}]
	// hole saw [{5 4} {3 4}]
	// <nil>
}

// A box half an inch from the edge of a piece leaves a strip that breaks.
func ExampleShape_WeakSpots() {
	piece, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(20), in(18)), cutout.Rectangle(of(1, 2), in(4), in(2), in(3)))
	if err != nil {
		fmt.Println(err)
		return
	}
	spots, err := piece.WeakSpots(cutout.Limits{Strip: of(3, 4), Corner: of(3, 2), LegRatio: fraction.NewRatio(8, 1)})
	for _, weak := range spots {
		fmt.Printf("%v of %v along %v: %v\n", weak.Kind, weak.Width, weak.Length, weak.WayOut)
	}
	fmt.Println(err)
	// Output:
	// strip of 1/2 along 3: move the seam
	// <nil>
}

// What is wrong is named by ring and corner as they were given: a bow tie, and a hole that reaches
// out of its outline.
func ExampleNewShape() {
	_, err := cutout.NewShape([]cutout.Point{at(0, 0), at(10, 10), at(10, 0), at(0, 10)})
	fmt.Println(err)
	_, err = cutout.NewShape(cutout.Rectangle(in(0), in(0), in(10), in(10)), cutout.Rectangle(in(8), in(2), in(4), in(4)))
	fmt.Println(err)
	// Output:
	// Outline[2]: (10, 0): edges cross or touch
	// Holes[0][0]: (8, 2): hole is not wholly inside the outline
}

// The same window leaves a hole inside a piece, a notch at its edge, two pieces across it, and
// nothing changed outside.
func ExampleShape_Minus() {
	wall, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(60), in(20)))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, bottom := range []int64{5, 15, 30} {
		pieces, err := wall.Minus(cutout.Rectangle(in(10), in(bottom), in(8), in(10)))
		if err != nil {
			fmt.Println(err)
			return
		}
		area, err := pieces[0].Area()
		fmt.Println(len(pieces[0].Outline()), "corners,", len(pieces[0].Holes()), "holes,", area, "square inches", err)
	}
	pieces, err := wall.Minus(cutout.Rectangle(in(10), in(-5), in(8), in(30)))
	fmt.Println(len(pieces), "pieces", err)
	// Output:
	// 4 corners, 1 holes, 1120 square inches <nil>
	// 8 corners, 0 holes, 1160 square inches <nil>
	// 4 corners, 0 holes, 1200 square inches <nil>
	// 2 pieces <nil>
}

// The right end of a wall leans 1 in 20: what lies to the left of its line stays.
func ExampleShape_ClipLine() {
	wall, err := cutout.NewShape(cutout.Rectangle(in(0), in(0), in(60), in(20)))
	if err != nil {
		fmt.Println(err)
		return
	}
	pieces, err := wall.ClipLine(at(59, 0), at(58, 20))
	for _, piece := range pieces {
		fmt.Println(piece.Outline())
	}
	fmt.Println(err)
	// Output:
	// [{0 0} {59 0} {58 20} {0 20}]
	// <nil>
}

// Every corner is measured from the same two edges, on the back from the other side.
func ExampleShape_Marks() {
	piece, err := cutout.NewShape([]cutout.Point{at(0, 0), at(20, 0), at(20, 18), at(6, 18), at(6, 12), at(0, 12)})
	if err != nil {
		fmt.Println(err)
		return
	}
	marks, err := piece.Marks()
	for i, face := range marks.Outline.Face {
		fmt.Println(face.X, face.Y, "on the back", marks.Outline.Back[i].X)
	}
	fmt.Println(err)
	// Output:
	// 0 0 on the back 20
	// 20 0 on the back 0
	// 20 18 on the back 0
	// 6 18 on the back 14
	// 6 12 on the back 14
	// 0 12 on the back 20
	// <nil>
}

// A window of 10 by 12 in grows by the gap of 1/4 in on every side.
func ExampleGrow() {
	grown, err := cutout.Grow(cutout.Rectangle(in(0), in(0), in(10), in(12)), of(1, 4))
	fmt.Println(grown, err)
	// Output:
	// [[{-1/4 -1/4} {10 1/4 -1/4} {10 1/4 12 1/4} {-1/4 12 1/4}]] <nil>
}

// The head of an arch over a chord of 24 in that rises by 8: the sides 5, 12 and 13 of a right
// triangle give its radius. The level edge that touches its top, 18 in up, ends at the corner
// shown.
func ExampleArc() {
	radius, err := cutout.Radius(in(24), in(8))
	fmt.Println(radius, err)
	head, err := cutout.Arc(at(0, 10), in(24), in(8), of(1, 8), of(1, 16))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(len(head), "corners, from", head[0].X, head[0].Y, "over", head[len(head)/2].X, head[len(head)/2].Y)
	// Output:
	// 13 <nil>
	// 14 corners, from 0 10 over 13 1/2 18
}
