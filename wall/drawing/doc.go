// Package draw makes the job book from a plan: one page to read, a picture of
// each run, sheet and odd piece, and full-size templates.
//
// Nothing is calculated here. A number that is printed is a length of the plan
// (or the sum or difference of two) as [fraction.Tape] writes it, and carries
// the path of its place in the plan's JSON with it; a length becomes a float
// only to place ink. Labels look for room by rules without chance, so the same
// plan always gives the same bytes.
//
// # Reading in print, in the dark and by ear
//
// No meaning rests on colour: each kind of line has dashes or a weight of its
// own, each kind of area a hatch, each kind of mark a shape. The page follows
// the reader's choice of light or dark, prints on Letter and A4, and needs
// neither network nor script. What is wider than a phone is drawn twice, and the
// page shows the one that fits: nothing slides sideways. Each picture has a
// title and a description, each table its headings.
//
// # Escaping
//
// Pictures are trees of elements written with encoding/xml's escaping, pages go
// through html/template: a run named <script> is shown as that text.
package drawing
