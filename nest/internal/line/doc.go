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
// from first-fit and best-fit decreasing and from dual feasible functions, then solves the linear
// programme over all patterns by column generation, rounds its solution one pattern at a time, and
// last searches board by board. The same input gives the same result, unless the context ends:
// effort is counted in nodes, and ties are broken by a fixed order.
//
// Sizes and capacities are whole numbers of whatever unit makes all of them whole. The caller adds
// a kerf to every size and once to the capacity, because n parts on a board are parted by n-1 cuts.
// [Check] says what is accepted.
//
// Packings, bounds and proofs are integer arithmetic. The linear programme is solved in floating
// point, but only to find good patterns and dual prices: the prices are rounded to integers, an
// exact knapsack finds the dearest pattern at these, and the bound that follows holds whatever
// errors the floating point made.
package line
