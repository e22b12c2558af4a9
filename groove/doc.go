// Package groove holds one repeat of a pattern of upright flats, beads and grooves, and where a cut
// through it shows.
//
// A profile is one repeat seen face on, its features from left to right. A sheet shows repeat after
// repeat:
//
//	   |<------- pitch ------->|
//	   |    flat       | bead  |    flat       | bead  |
//	---+---------------(-------)---------------(-------)---
//	   0             1 1/4   1 1/2                            boundaries at 0 and 1 1/4
//	   phase 0 ...                                            phases run to the right
//
// The phase of a point is how far to the right of the start of its repeat it lies, from 0 to less
// than the pitch. Whatever has the same phase looks the same, so that the pattern runs on across a
// seam if the phases on both sides of it do.
//
//   - [Profile.Phase] is the phase of a point;
//   - [Profile.CutDistance] and [Profile.Shown] are what an edge looks like that is cut at a phase,
//     [Profile.SlantDistance] and [Profile.Crossed] what one looks like that leans;
//   - [Profile.SeamLines] are the boundaries where a seam hides, beside a groove or a bead;
//   - [Profile.Mirror] and [Profile.Turned] are what a piece shows turned by 180° in its plane;
//   - [Builtin] has profiles to start from. A new one is a value and needs no code.
//
// A profile without features is a plain sheet: its pitch is 0, every place has the phase 0 and
// shows no cut. Beside the pattern a profile says how a sheet or board is sold: what it shows, its
// overall width, edges, the side of its tongue. The planner lays out what shows.
//
// A repeat may be given as several equal ones. All results stay right, but points that look alike
// then have different phases; [Profile.Primitive] gives the shortest repeat.
//
// Lengths are exact inches of package fraction, and nothing is rounded. No method changes what it
// is given, so goroutines may share a Profile as long as nobody changes its features.
//
// # Guarantees
//
// Each is a property test of that name, against a drawing of the repeat on a fine grid:
//
//   - a phase repeats by the pitch (TestPhaseRepeatsByThePitch);
//   - boundaries, seam lines, features and distances are what one sees
//     (TestBoundariesAreWhereFeaturesStart, TestShownIsWhatOneSees, TestDistancesEqualLooking,
//     TestCutDistanceEqualsLooking);
//   - Mirror finds the first axis, or there is none (TestMirrorEqualsLooking);
//   - a turned piece shows the same backwards (TestTurnedShowsTheSameBackwards);
//   - Primitive is the shortest repeat (TestPrimitiveIsTheShortestRepeat);
//   - whatever values are given, nothing panics (FuzzProfile).
//
// # Errors
//
// [Profile.Validate] reports everything that is wrong as *fault.Fault values, each with the path of
// its field. The methods that take a phase or a place fail with a [*fraction.OverflowError] where a
// result does not fit 64 bits. Those that return no error have an answer for every profile.
//
// The package knows no walls, sheets or saws, nor how much wider a face is than it looks, which
// package finish works out for paint. It takes every feature to be symmetrical in itself.
package groove
