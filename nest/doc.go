// Package nest cuts parts from sheets: which part comes from which sheet, at which point of the
// sheet's own pattern, in which order of sawing, and how many sheets are needed at least.
//
// A sheet lies face up, x across its grooves from the left edge and y along them from the lower
// end. A part is a rectangle whose left edge must show a given phase of the pattern; where the
// pattern is its own mirror image the part may also lie turned end for end. All cuts are straight
// and run from edge to edge of what is on the bench: crosscuts across the grooves, rips along them.
//
//	y
//	^  +-----------------------+  sheet: square_up off both ends first,
//	|  |///////////////////////|  then crosscuts make rows,
//	|  |  offcut               |  rips make the parts of a row,
//	|  |----------+-----+------|  a third cut takes a part to its height
//	|  |  part 1  |  2  |------|
//	|  |          |     |  3   |
//	|  |///////////////////////|
//	+--+-----------------------+--> x
//
// [FirstFit] makes a nest in one pass, [Search] looks for the best one and says what it could
// prove, [PostOptimize] betters its offcuts, [LowerBound] gives a bound alone and [Verify] replays the
// cuts of any nest. [StripBound] and [DualWeights] bound what walls take before they are parted into
// pieces. The package does not choose where seams fall, saws no curves, and uses no waste inside a
// part's rectangle.
//
// # Units and exactness
//
// Lengths are exact inches in and out. Inside, a problem is put on whole numbers of one common
// mark, so nothing is ever rounded. Two parts on either side of a cut lie at least one kerf apart;
// at an edge of the sheet the blade may overhang.
//
// # Guarantees
//
// Each is the name of a property test. CutsFreeEveryPart: replaying the cuts leaves each part's
// rectangle alone on the bench. PhaseFollows: each part shows the pattern it needs.
// NothingLostNothingDouble: each part is placed once or is in Unplaced with the reason.
// NeverBelowTheBound, NeverWorseThanFirstFit, SameInputSameResult: no clock, map order or chance.
//
// # Errors
//
// What is wrong with a problem is a *fault.Fault for each value, with [ErrProblem] as the cause, or
// [ErrRange] where lengths have no common mark. A part that cannot be cut is no error (it is in
// Result.Unplaced), and neither is a budget that ends (Result.Status says so).
// The text methods of an enumeration fail with a *fault.Fault for a value or word that it lacks.
package nest
