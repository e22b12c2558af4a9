// Package wall plans grooved panelling on the walls of a room: where the pattern starts on each
// run, which way to work, where the seams fall and what shape each piece has.
//
// # The model
//
// A [Room] is a list of runs, each one flat stretch of wall seen face on with x to the right from
// its left end and y up from a level datum. Runs are listed as one turns clockwise, so the right
// end of one run meets the left end of the next:
//
//	    run 1            inside corner: one run passes into the corner, the
//	 ___________         other butts against its face
//	|           |
//	| run 0     | run 2  exposed end: seen, wants a whole feature
//	|           |
//
// [Layouts] yields every layout of a room in order of blemish, the measure of what the eye would
// find: cut features at edges that are seen, a pattern that does not follow round a corner, seams.
// The order is total and the same on every machine. [LayoutsByCost] yields the same layouts in the
// order of what their pieces cost by an [Objective]. A [Model] has what all orders of one room share.
//
// # Units and exactness
//
// Lengths are exact inches. The shape of a wall is exact as taped; only points that no tape gave (a
// sloped line met by a seam) are rounded, to the room's mark and into the space. Blemishes are exact
// fractions. The search adds them as whole numbers of a small unit, rounded down, in which those of
// usual rooms are exact too: Layout.Floor is what it proves.
//
// # Guarantees
//
//   - Pieces cover each run's region once, less the seam gaps (TestPiecesCoverTheRegionOnce).
//   - The pattern runs on unbroken across every seam (TestPatternRunsOnAcrossSeams).
//   - Layouts come in the order of plain enumeration over the same finite set
//     (TestLayoutsComeInOrderOfEnumeration).
//   - On a run of which only upright edges are seen no origin on a fine grid is better than that of the
//     first layout (TestNoOriginOnAFineGridIsBetter), and the order of the openings does not matter
//     (TestOrderOfOpeningsDoesNotMatter).
//   - No layout has less blemish than the Floor of one before it (TestFloorBoundsWhatFollows).
//   - Searches of one [Model] on several goroutines find what each finds alone
//     (TestModelServesManySearches).
//   - The cost of the first layout by cost is a lower bound for every layout
//     (TestCostIsNeverMoreThanThatOfThePieces, TestLayoutsByCostAreTheLayoutsInOrderOfCost), and so
//     are the [Room.Strips] (TestStripsNeverAskForMoreThanALayout).
//   - A search stops within a second of its context's end (TestLayoutsStopWithTheContext).
//
// # Errors
//
// Input that makes no sense gives *fault.Fault values, joined. A room that no layout can cover
// gives a [*NoLayoutError]. Numbers too fine for exact arithmetic give a *fraction.OverflowError.
// The text methods of an enumeration fail with a *fault.Fault for a value or word that it lacks.
// Nothing panics (FuzzWildValues).
//
// The package reads the size of the stock, since no panel can be wider, but neither its count nor
// its price.
package wall
