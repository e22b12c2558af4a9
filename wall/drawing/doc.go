// Package drawing draws each thing of a plan as SVG: the room from above and unfolded, the finished
// walls, a run face on with its story pole, ends, corners and order of fitting, a sheet with its cuts, a
// piece with its marks, and full-size templates.
//
//	picture, err := drawing.Elevation(p, 0)
//	os.WriteFile(picture.Name+".svg", picture.SVG(), 0o644)
//
// Things are counted from 0, as in the lists of the plan. One that is not there is a [fault.Fault]
// with its place, and lengths beyond exact arithmetic are an error of package fraction; no plan
// makes a function panic.
//
// Nothing is calculated here. A number that is printed is a length of the plan (or the sum or
// difference of two) as [fraction.Tape] writes it, and carries the path of its place in the plan's
// JSON with it. The same plan always gives the same bytes.
//
// No meaning rests on color: lines differ in dashes or weight, areas in hatch, marks in shape. What is
// wider than a phone is drawn twice, see [Picture.Narrow]. Each picture has a title and a text
// alternative. All text is escaped: a run named <script> is shown as that text.
package drawing
