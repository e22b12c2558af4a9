// Package cutout holds exact flat shapes with holes, cuts them, and says how to mark and saw them.
//
// A [Shape] is a part of a wall or a piece of panelling seen face on: an outline and holes, all
// edges straight. The upright lines of seams ([Shape.Band]), leaning ends ([Shape.ClipLine]) and
// openings ([Shape.Minus]) cut it, each into the connected pieces that are left:
//
//	 _____________________          ________   _________
//	|        ___          |        |        | |___      |
//	|       |   |         |        |        |     |     |     two bands of a wall:
//	|       |___|         |   ->   |     ___| |___|     |     the window becomes
//	|   _                 |        |   _    |           |     a notch in both
//	|__| |________________|        |__| |___| |_________|
//
// All cuts are exact. [Snap] then rounds the corners that no tape gave, such as where a sloped top
// meets a seam, to the tape's marks and into the space, so that no piece outgrows it. [Locate] gets
// a corner from taped distances, [Arc] an arched head from its chord and rise. [Shape.Marks] and
// [Shape.Cuttings] say how to saw a piece, [Shape.WeakSpots] where it may break.
//
// # Units and exactness
//
// Lengths are exact inches, x to the right and y up. No decision takes a float. Square roots are
// exact where rational; else integer roots enclose them and the result says how far it may be off.
//
// # Guarantees
//
// Each is a property test of the name in brackets, most of them against plain math/big:
//
//   - What divides a shape has its area exactly: cells, bands, the halves beside a line, what an
//     opening takes and leaves (TestCellsAddUpToTheShape, TestBandsAddUpToTheShape,
//     TestClipLineHalvesAddUp, TestMinusAndWithinAddUpToTheShape, FuzzAreas).
//   - Pieces are those of a grid flooded square by square, and hold the points that they should
//     (TestMinusEqualsFloodedGrid, TestMinusEqualsCountingPoints).
//   - Snapped pieces lie within the exact ones, and taped corners stay
//     (TestRoundedBandLiesWithinTheExactOne and its like).
//   - Both pieces of a seam agree on a box that it runs through (TestHalfNotchesAgreeAcrossASeam).
//   - Back marks mirror the face exactly (TestBackMarksMirrorTheFaceExactly), starter holes lie in
//     the waste (TestStarterHolesLieInTheWaste), every edge to saw is sawn once
//     (TestEveryInnerEdgeIsSawnOnce), and no strip is narrower than the narrowest that is reported
//     (TestNarrowestStripEqualsTheNarrowestGap).
//   - A located point is within its bound (TestLocatedPointIsWithinItsBound, FuzzLocate), an arc
//     keeps its side and tolerance (TestArcKeepsItsSideAndTolerance).
//   - Whatever values are given, nothing panics and every shape has its form (FuzzWild).
//
// # Errors
//
// [NewShape] reports a *fault.Fault for each faulty ring, [Locate] one for distances that meet in
// no point. Coordinates, lengths and areas that do not fit 64 bits are a [*fraction.OverflowError]
// of the functions that return an error. Those that return none have an answer for every value.
// The text methods of an enumeration fail with a *fault.Fault for a value or word that it lacks.
//
// It has no curves but polylines, knows no pattern of grooves and no sheet, and joins no shapes.
package cutout
