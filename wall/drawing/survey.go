package drawing

import "fmt"

// Survey draws where to tape a wall, which is nobody's. The number makes the
// drawing's name unique on a page that has several.
func Survey(number int) Picture {
	pic := Picture{Name: fmt.Sprintf("survey-%d", number), Title: "Where to tape"}
	pic.Desc = "A wall with a step, a window and a box. 1: the width along the level datum. 2: the lean of both ends against a plumb line. " +
		"3: heights from the datum up, at the ends and at both sides of a step. 4: an opening's left and bottom, then its width and height."
	pic.Width, pic.Height = 600, 236
	const left, right, datum = 70.0, 540.0, 178.0
	pic.stroke("wall", "M70 192L76 76H240V34H390V72H540V186Z")
	fill := pic.hatch("opening", "hatch", 6, 45)
	for _, b := range []box{{262, 58, 100, 84}, {448, 118, 26, 36}} {
		pic.rect(b, "class", "paper")
		pic.rect(b, "class", "opening", "fill", fill)
	}
	pic.stroke("datum", "M0 178H570")
	line{"level"}.write(&pic.node, "starttext", 0, datum-19, "start")
	line{"datum"}.write(&pic.node, "starttext", 0, datum-6, "start")
	pic.arrows(left, 210, right, 210)
	pic.number("1", 305, 210)
	pic.stroke("ext", "M70 192V60")
	pic.number("2", 58, 62)
	for _, at := range [][2]float64{{84, 77}, {232, 76}, {248, 35}, {382, 35}, {398, 72}, {532, 72}} {
		pic.arrows(at[0], datum, at[0], at[1])
	}
	for _, at := range [][2]float64{{84, 122}, {232, 122}, {248, 150}, {382, 160}, {398, 110}, {532, 122}} {
		pic.number("3", at[0], at[1])
	}
	pic.arrows(left, 165, 448, 165)
	pic.arrows(461, datum, 461, 154)
	pic.arrows(448, 110, 474, 110)
	pic.arrows(484, 154, 484, 118)
	pic.number("4", 461, 98)
	pic.number("4", 320, 165)
	return pic
}

// arrows draws a dimension line with a bar at both ends.
func (pic *Picture) arrows(x0, y0, x1, y1 float64) {
	start, bar, end := "m0 4", "v-8M", "m0 4v-8"
	if x0 == x1 {
		start, bar, end = "m4 0", "h-8M", "m4 0h-8"
	}
	pic.stroke("pole", "M", x0, y0, "L", x1, y1, "M", x0, y0, start+bar, x1, y1, end)
}

// number puts a number on the drawing that the headings repeat.
func (pic *Picture) number(text string, x, y float64) {
	pic.dot("tag", x, y, 8.5)
	line{counted(text)}.write(&pic.node, "bold", x, y+4, "middle")
}
