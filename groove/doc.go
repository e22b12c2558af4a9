// Package groove knows one repeat of a pattern of upright flats, beads and grooves, and where a cut through it shows.
//
// A profile is one repeat seen face on, its features from left to right. A sheet shows repeat after repeat:
//
//	   |<------- pitch ------->|
//	   |    flat       | bead  |    flat       | bead  |
//	---+---------------(-------)---------------(-------)---
//	   0             1 1/4   1 1/2                            boundaries at 0 and 1 1/4
//	   phase 0 ...                                            phases run to the right
//
// The phase of a point is how far to the right of the start of its repeat it lies, from 0 to less than the pitch. Whatever has the
// same phase looks the same, so that the pattern runs on across a seam if the phases on both sides of it do.
//
//   - [Profile.Phase] and [Profile.At] tell what lies at a point;
//   - [Profile.CutDistance], [Profile.Shown] and [Profile.Describe] tell what an edge looks like that is cut there;
//   - [Profile.SeamLines] are the boundaries where a seam hides, beside a groove or a bead;
//   - [Profile.Mirror] and [Profile.Turned] tell what a piece shows that is turned by 180° in its plane;
//   - [Ready] has profiles to start from. A new one is a value and needs no code.
//
// A repeat may be given as several equal ones. Everything stays right, but phases then tell apart what looks alike;
// [Profile.Least] gives the shortest repeat.
//
// # Units and exactness
//
// Lengths are exact inches of package fraction, and nothing is rounded. Every method but [Ready] and [Find] leaves what it is given alone,
// so a Profile may be shared by goroutines as long as nobody changes its features.
//
// # Guarantees
//
// Each is a property test of that name, against a drawing of the repeat on a fine grid that is looked along:
//
//   - a phase repeats by the pitch (TestPhaseRepeatsByThePitch);
//   - boundaries, seam lines, features and distances are what one sees (TestBoundariesAreWhereFeaturesStart, TestAtFindsTheFeature,
//     TestDistancesEqualLooking, TestCutDistanceEqualsLooking);
//   - Mirror finds the first axis, or there is none (TestMirrorEqualsLooking);
//   - a turned piece shows the same backwards (TestTurnedShowsTheSameBackwards);
//   - Least is the shortest repeat (TestLeastIsTheShortestRepeat).
//
// # Errors
//
// [Profile.Validate] reports all [Faults], each with the path of its field. Where a profile is valid, no method fails
// while its lengths stay within 64 bits; beyond, and where a profile without features has no pitch to divide by, they panic with an error
// that [fraction.Catch] knows.
//
// # What it does not do
//
// It knows no walls, no sheets and no saws. How much wider a face is than it looks, which is what paint has to cover, depends on the
// shape of a groove and is reckoned where paint is. That a feature is symmetrical in itself is taken for granted.
package groove
