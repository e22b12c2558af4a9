// Package jobfile reads and writes the job file: the measurements and wishes of one room, as JSON.
//
// [Read] turns a file into a plan.Job and [Write] turns a job into a file; [ReadProfiles] reads
// profiles alone, and [Schema] describes the file for editors and other programs. All four are made
// from the same tables, one struct for each object of the file.
//
// A job file is JSON as people write it: comments and a comma after the last item are accepted, see
// [Standard].
//
// # Units and exactness
//
// Lengths are exact inches in the job. In the file a bare number is in the unit that its field
// units names. JSON numbers are refused for lengths, since most programs would round them to binary
// fractions on the way.
//
// # Guarantees
//
//   - Every fault has the complete path of its field in the file's own spelling, also where the
//     field is missing or unknown, its line and its column (TestFaults).
//   - All faults of a kind, of form or of sense, come at once and in the order of the file
//     (TestAllFaultsInTheOrderOfTheFile).
//   - What Write writes the schema accepts, and Read reads as the same job
//     (TestEveryJobIsReadAsItWasWritten).
//   - Nothing makes the functions panic (FuzzRead, FuzzWrite, FuzzReadProfiles).
//
// # Errors
//
// What is wrong with a file comes as *fault.Fault values, joined by errors.Join; fault.All lists
// them. Each has a kind as its cause: [ErrSyntax], [ErrTwice], [ErrUnknown], [ErrMissing],
// [ErrType], [ErrValue] or [ErrRoom]. The package does not know whether the job can be done.
package jobfile
