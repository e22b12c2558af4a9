// Package rooms makes job files for tests: random rooms that a plan can be made
// for, and a table of bad ones with the answer each must get.
//
// A random room ([Job]) has one to four runs, open or closed, with every kind of
// end, leaning ends, slopes, steps in the top and the bottom line, boxes,
// windows within and past the top line, doors, openings of odd outline, focal
// zones, breaks and panels already on the wall; profiles with and without a
// mirror image, with wide flats and of single boards; inches and millimetres,
// in several notations; stock with a pattern that starts anywhere, limited and
// unlimited. [Small] draws rooms small enough for plain search.
//
// # Units and exactness
//
// A drawn length is a whole number of marks: sixteenths of an inch, or
// millimetres.
//
// # Guarantees
//
//   - Every drawn room keeps the rules for a job (TestDrawsAreJSON here, and
//     TestDrawnRoomsAreSound of package proof).
//   - Every bad job differs from a good one in the one thing that its name says
//     (TestBadJobsAreBad).
//
// A drawn room may still be one that cannot be panelled, if odd openings leave a
// spot that no sheet can fill; such rooms are rare. All names are invented.
package rooms
