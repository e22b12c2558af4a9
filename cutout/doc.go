// Package cutout holds exact flat shapes with holes, cuts them, and tells how to
// mark and saw them.
//
// A [Shape] is a part of a wall or a piece of panelling seen face on: an outline
// and holes, all edges straight. It is cut by the upright lines of seams
// ([Shape.Band]), by leaning ends ([Shape.ClipLine]) and by openings
// ([Shape.Minus]); each gives the connected pieces that are left:
//
//	 _____________________          ________   _________
//	|        ___          |        |        | |___      |
//	|       |   |         |        |        |     |     |     two bands of a wall:
//	|       |___|         |   ->   |     ___| |___|     |     the window becomes
//	|   _                 |        |   _    |           |     a notch in both
//	|__| |________________|        |__| |___| |_________|
//
// What no tape gave is found by [Locate] (a corner from taped distances) and
// [Arc] (an arched head from its chord and rise). What a person needs to saw a
// piece is in [Shape.Marks], [Shape.Starters] and [Shape.Cuttings]; where it may
// break in [Shape.WeakSpots].
//
// # Units and exactness
//
// Lengths are exact inches, x to the right and y up. No decision takes a float.
// Cuts without a mark are exact. With a mark, a corner that no tape gave, such as
// where a sloped top meets a seam, is rounded to the mark into the space: a piece
// never becomes larger than its space. Square roots are exact where they are
// rational; else they are enclosed by integer square roots and the result says
// how far it may be off.
//
// The methods expect shapes of the form that [Shape] describes, which [NewShape]
// and all methods return. The zero Shape is empty.
//
// # Guarantees
//
// Each is a property test of the name in brackets, most of them against plain
// math/big:
//
//   - The areas of the slabs and bands that divide a shape, of the halves left
//     and right of a line, and of what an opening takes and leaves add up to the
//     shape exactly (TestSlabsAddUpToTheShape, TestBandsAddUpToTheShape,
//     TestClipLineHalvesAddUp, TestMinusAndWithinAddUpToTheShape).
//   - Pieces are those of a grid flooded square by square, and hold the points
//     that they should (TestMinusEqualsFloodedGrid, TestMinusEqualsCountingPoints).
//   - Rounded pieces lie within the exact ones, and taped corners stay
//     (TestRoundedBandLiesWithinTheExactOne and its like).
//   - [Shape.Components] counts the pieces of a band (TestBandsAddUpToTheShape).
//   - Both pieces of a seam agree on a box that it runs through
//     (TestHalfNotchesAgreeAcrossASeam).
//   - Back marks mirror the face exactly (TestBackMarksMirrorTheFaceExactly).
//   - Starter holes lie in the waste (TestStarterHolesLieInTheWaste), and every
//     edge to saw is sawn once (TestEveryInnerEdgeIsSawnOnce).
//   - No strip is narrower than the narrowest that is told
//     (TestNarrowestStripEqualsTheNarrowestGap).
//   - A located point is within its bound (TestLocatedPointIsWithinItsBound), an
//     arc keeps its side and tolerance (TestArcKeepsItsSideAndTolerance).
//   - Whatever corners are given, nothing panics but for an overflow (FuzzShapes,
//     FuzzLocate).
//
// # Errors
//
// [NewShape] reports a [RingError] for each faulty ring, [Locate] a [TapedError].
// Everything else accepts any shape. Coordinates, lengths and areas that do not
// fit 64 bits are a [*fraction.OverflowError]: returned by functions that return
// an error, a panic from the others, for [fraction.Catch] at the caller's own
// entry. Answers of yes or no never overflow.
//
// # What it does not do
//
// It has no curves but polylines, knows no pattern of grooves and no sheet, and
// does not join shapes.
package cutout
