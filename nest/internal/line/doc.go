// Package line cuts boards of one length into parts: the one-dimensional nesting problem, known in
// the literature as bin packing and, when many parts are alike, as cutting stock.
//
// A board is a bin of a capacity, a part is an item of a size, and a set of parts that one board
// yields is a pattern:
//
//	|<------------------ capacity ------------------>|
//	|   part   |kerf|  part  |kerf| part |kerf| waste |
//
// [Pack] looks for the fewest boards and says whether it proved that no fewer will do. It starts
// from [FirstFit] and [BestFit] and the bounds of [Lower], then solves the linear programme over
// all patterns by column generation, rounds its solution one pattern at a time, and last searches
// board by board. [Boards] does the same for boards of several lengths, prices and counts.
//
// # Units and exactness
//
// Sizes and capacities are whole numbers of whatever unit makes all of them whole: the caller
// multiplies by the common denominator. A kerf is added by the caller to every size and once to the
// capacity, because n parts on a board are parted by n-1 cuts. Sizes run from 1 to the capacity,
// capacities to [MaxCapacity], and there are at most [MaxItems] items; [Check] says so.
//
// Packings, the bounds and every proof are integer arithmetic. The linear programme is solved in
// floating point, but only to find good patterns and good dual prices. The prices are then rounded
// to integers, the dearest pattern at those integers is found by an exact integer knapsack, and the
// bound that follows holds whatever errors the floating point made.
//
// # Guarantees
//
//   - Every packing holds each item once and no board above its capacity.
//   - Lower never exceeds the fewest boards, and no packing has fewer than Lower.
//   - Proved means the number of boards equals a bound that holds.
//   - The same input gives the same result: effort is counted in nodes, and ties
//     are broken by a fixed order. Only a cancelled context can change that.
//
// # Errors
//
// [Pack] and [Boards] refuse bad input with an error that names the item. Spent budgets and
// cancelled contexts are no errors: the best packing so far comes back with Proved false.
//
// # What it does not do
//
// It knows nothing of kerf, patterns on the face, or the second dimension.
package line
