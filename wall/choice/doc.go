// Package choice finds the trade-off between the sheets that a room needs and how it looks: it
// joins the layouts of package wall with the nests of package nest.
//
//	need ^
//	     |  x           x the first: the least blemish, whatever it needs
//	     |     x
//	     |          x   x the last: the least need, whatever it looks like
//	     +--------------> blemish
//
// [Explore] nests the layout of least blemish, then layouts with its origins whose panels come from
// the offcuts of others, and keeps those that no other dominates: the Pareto front. The layouts in
// the order of what their pieces cost, by dual prices of the sheets, and in the order of weighted sums
// of this and blemish, say what those need that were not looked at. They are taken one by one until
// these bounds leave no gap in the front, or the effort is spent.
//
// # Guarantees
//
//   - No choice of a front is dominated (TestFrontIsNotDominated).
//   - What a [Status] says is proved holds against any other layout of the room
//     (TestProofsHoldAgainstMoreEffort).
//   - The same room and budget give the same front (TestSameRoomSameFront).
//
// # Errors
//
// A room that makes no sense and one that no layout covers fail as wall.Layouts does, stock that
// makes no sense as nest.Search does. Stock that is too little for every layout looked at fails
// with a *[ShortError]. A context that ends is no error once there is a choice.
// The text methods of an enumeration fail with a *fault.Fault for a value or word that it lacks.
//
// # What it does not do
//
// It knows no take-off: money here is that of the sheets.
package choice
