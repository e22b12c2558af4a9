// Package finish works out what a panelling plan needs besides its sheets: paint, sealant,
// adhesive, nails, box extenders, tape and trim, how many packs of each to buy, what they cost, and
// why. It also has the order of work and the cautions. Everything it says is a value; package
// wall/book has the sentences.
//
// A [Work] is what is to be finished, as plain quantities: areas, lengths of joints, counts of
// boxes. [Materials] is the object "finish" of a job file: how things are used and what they are
// sold in. [TakeOff] makes a [List] of them:
//
//	quantity   from areas, lengths and counts by a formula: the row's How and its Terms
//	waste      a share on top of it, or what stays in the brush
//	packs      the mix with the least money that holds at least that much
//	cost       packs times price, rounded once to the cent; the rows and the tax make the total
//
// # Units and exactness
//
// Quantities are exact rational numbers; circles and slopes count as rational bounds above them.
// Packs are counted from the exact quantity; only what is printed is rounded, upwards in its last
// place. A job in inches reads square feet, quarts, fluid ounces (US) and feet, any other square
// metres, litres, millilitres and metres. Money is decimal.
//
// # Guarantees
//
//   - More wall, longer joints or more pieces never need less (TestMoreWallNeverNeedsLess), and
//     never cost less unless leftovers are given a worth.
//   - Packs hold what is needed for the least money (TestLeastMoneyEqualsEnumeration); the list
//     says where [MixSteps] ended the search before that was proved.
//   - The rows and the tax add up to the total, to the cent (TestTotalsAddUpToTheCent).
//   - The units of the job change only how quantities are written (TestUnitsChangeOnlyTheWriting).
//   - The zero [Materials] are the defaults (TestZeroMaterialsAreTheDefaults).
//   - A list, a step and a caution read back from JSON as they were written (FuzzWild).
//   - The same input gives the same list (TestSameInputSameBytes).
//   - What the order of work asks is bought (TestWhatTheOrderAsksIsBought), and what a trim covers is
//     not sealed (TestNothingHiddenIsSealed).
//   - Every default has a status and a source in testdata/defaults.md (TestOriginOfEveryDefault).
//   - Figures that others print stand beside ours in wall/plan/testdata/published.md, which a test of
//     package plan holds.
//
// # Errors
//
// A field that cannot be used is a *fault.Fault with its path, such as Paint.Top.Coverage; all are
// reported together. No value panics. String and MarshalText of an enumeration write the word of a
// value, UnmarshalText reads it; the last two fail with a *fault.Fault where there is none.
//
// # What it does not do
//
// It knows no geometry: what is joined where, and how long, is the caller's to say. It gives no
// permission: cautions name the code or agency that decides. Its defaults are planning figures; the
// label of a product comes first.
package finish
