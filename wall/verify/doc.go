// Package verify judges plans from outside: it reads a job and a plan as JSON and reports every
// place where the plan breaks the contract between the two.
//
//	job  ── [Plan] ──┐
//	plan ────────────┴──> faults, none for a plan that keeps the contract
//
// The contract is what job and plan mean: the fields of a job file as the README has them, those of
// a plan as package plan comments them, and the rules of geometry, sawing and looks that packages
// wall and nest state. What it leaves open is settled under Readings below.
//
// It shares no code with the planner: it calculates lengths, regions, phases, cuts and blemishes
// anew from the job alone, with math/big.Rat, in the plainest way there is. Where the two disagree,
// one is wrong. All is exact inches, square inches or pure numbers, and only what the contract
// rounds is rounded.
//
// # Guarantees
//
//   - Plans made by hand (TestRightPlansPass) and of the examples (TestPlansOfTheExamples) pass.
//   - Each of 248 ways to spoil one is caught (TestFaultsOfMutations, TestOtherJobsAreCaught).
//   - No bytes make it panic or search without an end (FuzzPlan).
//
// # What is not judged
//
// That no nest takes fewer sheets than the bound, that no layout looks better or needs less (for
// small rooms a test searches them all: TestBestLookingChoiceIsLeast), which of several equal plans
// is taken, quantities of the take-off, weak spots, the order of cuts within a piece, and words.
//
// # Readings
//
// Where the contract leaves room, this is how it is read here.
//
//  1. A leaning end has its foot at x = 0 (or the run's width) on the bottom line, its head at the
//     lean from there on the end station's top line, which goes on straight to the next station.
//  2. The side gap, a butting thickness and the long point of an outside corner move an end's line
//     sideways. Where a wall leans, the bottom and top lines run on straight to that line; past an
//     outside corner, where no tape was held, they run on level.
//  3. Top and bottom gaps are measured upright.
//  4. The upright side of a step moves by the side gap toward the taller part: at the top toward
//     the higher, at the bottom toward the lower line. The low line runs on level over the gap.
//  5. An opening (kind other: with the window's gap) grows along and across: all within the gap of
//     it in x and in y is left open. Beside slopes rounding may leave open up to two marks more.
//  6. An opening from top to bottom parts the run: no seam, and the pattern runs on behind it.
//  7. Butting and long points count the thickness of the profile.
//  8. A computed point is under a mark off the exact one, or a corner of two slopes off their lines, across
//     and up; rounding twice can lose two: a fault.
//  9. The ends of a leaning edge that no tape gave are rounded as computed points are, up or down, then
//     sideways; an opening takes it whole or stands clear of it. The stated limit may be exact or rounded;
//     panels stop, and phase 0 at the left limit stands, at the rounded one.
//  10. A bead or groove is a seam line's neighbour on either side, round the end of the repeat too.
//     A profile without any has no distance to a line.
//  11. An inside corner is as high as the lesser of the shapes' two end edges, at their limits.
//  12. The height of a seam is that of the region at the middle of its gap, sloped lines there
//     rounded into the space, openings left out; the lesser side where the two differ.
//  13. A seam costs prominence x feet x 1/8; its distance off the nearest line costs 8 an inch,
//     whatever the height and prominence.
//  14. A used break costs its own term and the plain seam term, without distance. The focal zone,
//     not the break, gives the seam's prominence.
//  15. Focal zones hold both their ends; where two touch, the higher counts.
//  16. An end's own prominence takes the place of 8, 4 or 0; at an inside corner the greater of its
//     two ends' takes the place of 1.
//  17. The measure for wide flats holds for flats; a cut bead or groove counts its distance to the
//     nearest boundary. Half or more of a flat counts nothing.
//  18. An edge is seen if weight and height are above 0, ends only if exposed, outside or covered.
//  19. Equal cuts at two seen ends: the same width left of a like feature (kind and width) at both.
//  20. A neighbour's pattern is carried round corner after corner, at most once round a closed
//     room. Where no run of a chain shows an edge, each may start with phase 0 at its own left
//     limit in the layout at hand (who passes at the corners moves it), and that is carried too.
//  21. Any origin of a run goes with any origin of the others.
//  22. Set-out and restarts hold in the direction of work: the set-out's origin from the limit
//     where the work begins to the first restart, each restart's beyond it.
//  23. Panels in place of installed ones are none; they are neighbours, whose seams, those between
//     two of them too, cost what seams cost, and the set-out must go through them. A run with one
//     has no choice of what its exposed end shows, nor of where the work begins.
//  24. Boards close up without a gap or with the seam gap, at no cost, and are never too narrow.
//  25. A panel is as wide as any stock allows upright, or turned where the pattern is its own
//     mirror image. Whether that is long enough, and enough for all such panels, is left open.
//  26. A seam's distance to a box is from the middle of its gap to the side as taped; less than the
//     least is too near. There is another way only where another line for that one seam would do.
//  27. The hard rules go before the blemish over the whole room; that a run's only exposed end that
//     is seen shows a whole feature is one (priority whole_end). Breaking fewest is best: each
//     narrow panel, box too near a seam and such end counts. A panel that fills a whole stretch is
//     narrow by force only if no other way to pass and butt makes it wider.
//  28. A panel narrower than the least calls for a warning with the run's path.
//  29. Pieces are numbered from 1 in the order of the list, along each run in the direction of
//     work; its closing pieces are those of the panel fitted last, of each at a door and of each fitted up
//     to a panel on the wall, but for a piece with nothing to scribe and no panel beside it in a run that
//     butts against none.
//  30. A cut may run past either edge, and leave nothing there; the blade must touch the part. It
//     trims the near side, with its kerf, if no piece lies there, whatever is left beyond. Parts
//     that were cut further count as parts of the same size, too.
//  31. Proved means that the plan has as few sheets as sheets_at_least says. Where some stock is
//     counted, it may speak of the sheets to buy instead, and is not judged.
//  32. No choice is at least as good as another in all of sheets, sheets to buy, money, blemish.
//  33. A term states its height, but for the distance of a seam off its line.
//  34. The tape is 1/16 in where the job names none, 1 mm where its units are metric.
//  35. Where the sides of openings and steps share a line, each part of it counts for the side that
//     weighs most. A corner that stands out to one side gets an upright edge by growing.
//  36. A point given by distances from known ones agrees with two of them to a mark, with the
//     others to what the plan states. An arched head has points on its arc or at most two marks
//     outside, and straight edges between them that do not enter it.
//  37. A story pole has a mark at both edges of each panel. On a piece every corner is marked;
//     starter holes stay in the waste, under an arc within the arc itself.
//  38. A computed coordinate goes to a mark within snap, else into the space; a piece may be larger by
//     snap near sloped edges, beside a lean from where its corners went up or down. Edges of a mark
//     or less between computed corners are none, but for the end of a tab between upright sides.
//  39. Tabs under, over and beside openings of any kind and steps are weak strips.
//  40. The last panel is scribed at its far edge; at its edge at a door where the far one is seen. A piece
//     that an opening stops short of that edge is not. As much is left as a sheet has, turned about the
//     first mirror line of the repeat as it is given.
//  41. Of a run of which openings and gaps leave nothing no more is said than that it stays bare. Its
//     neighbors share no corner with it.
//  42. Where openings take all of a run's end, its panels begin at the side of an opening, which is an
//     edge as others are. The kind, the lean and the prominence of the end say nothing then; what a mitre
//     or a lean has past it is taken too; it shares no corner, unless a panel reaches it where it butts.
//  43. A cut waits until a space is measured where it makes the closing edge of a piece with nothing to
//     scribe and no piece of another panel lies on its part; so does what is cut from what it leaves.
//  44. What passes is fitted before what butts against it: so runs do not butt against each other all round a room,
//     unless panels are on the wall.
package verify
