// Package job reads a job file, the measurements and wishes of one room, into
// the values that the packages of groovewright work with.
//
// The file is JSON. [Read] takes it apart in two steps. First every value is
// read by itself: a length from a text as a tape reads, a weight from a plain
// number, a word from a list of words. Then what was read is checked together:
// heights in order from one end of a run to the other, corners that both runs
// agree on, openings within their run.
//
// # Units and exactness
//
// Lengths are exact inches. A bare number takes the unit that the file's field
// units names. JSON numbers are refused for lengths, since most programs would
// round them to binary fractions on the way.
//
// # Guarantees
//
//   - Every fault names the complete path of its field in the file's own
//     spelling, also where the field is missing or unknown (TestFaults).
//   - All faults of a file are reported, in the order of the file
//     (TestAllFaultsInTheOrderOfTheFile).
//   - Nothing that is read makes [Read] panic (FuzzRead).
//
// # Errors
//
// Every error is a [Faults]; each [Fault] in it wraps its kind, such as
// [ErrMissing]. The package does not know whether the job can be done.
package jobfile
