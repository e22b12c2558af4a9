package drawing

import "fmt"

// Survey draws where to tape a wall, which is nobody's. The number makes the
// drawing's name unique on a page that has several.
func Survey(number int) Picture {
	pic := newPicture(fmt.Sprintf("survey-%d", number), "Where to tape")
	pic.Desc = "A wall with a step, a window and a box. 1: the width along the level datum. 2: the lean of both ends against a plumb line. " +
		"3: heights from the datum up, at the ends and at both sides of a step. 4: an opening's left and bottom, then its width and height."
	pic.Width, pic.Height = 600, 236
	const left, right, datum = 70.0, 540.0, 178.0
	pic.add("path", "class", "wall", "d", "M70 192L76 76H240V34H390V72H540V186Z")
	fill := pic.hatch("opening", "hatch", 6, 45)
	for _, b := range []box{{262, 58, 100, 84}, {448, 118, 26, 36}} {
		pic.add("rect", "class", "paper", "x", b.x, "y", b.y, "width", b.w, "height", b.h)
		pic.add("rect", "class", "opening", "fill", fill, "x", b.x, "y", b.y, "width", b.w, "height", b.h)
	}
	pic.add("path", "class", "datum", "d", "M0 178H570")
	line{"level"}.write(&pic.root, "starttext", 0, datum-19, "start")
	line{"datum"}.write(&pic.root, "starttext", 0, datum-6, "start")
	pic.arrows(left, 210, right, 210)
	pic.number("1", 305, 210)
	pic.add("path", "class", "ext", "d", "M70 192V60")
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
	return *pic
}

// arrows draws a dimension line with a bar at both ends.
func (pic *Picture) arrows(x0, y0, x1, y1 float64) {
	bar := "v-8M%s %sm0 4v-8"
	if x0 == x1 {
		bar = "h-8M%s %sm4 0h-8"
	}
	start := "m0 4"
	if x0 == x1 {
		start = "m4 0"
	}
	pic.add("path", "class", "pole", "d", fmt.Sprintf("M%s %sL%s %sM%s %s"+start+bar, ink(x0), ink(y0), ink(x1), ink(y1), ink(x0), ink(y0), ink(x1), ink(y1)))
}

// number puts a number on the drawing that the headings repeat.
func (pic *Picture) number(text string, x, y float64) {
	pic.add("circle", "class", "tag", "cx", x, "cy", y, "r", 8.5)
	line{counted(text)}.write(&pic.root, "bold", x, y+4, "middle")
}
