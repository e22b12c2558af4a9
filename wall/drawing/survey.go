package drawing

import (
	_ "embed"
	"fmt"
	"strings"
)

//go:embed survey.svg
var surveyed string // what the picture holds, with {name} for its name

// Survey draws where to tape an invented wall. The number makes the drawing's name unique on a page.
func Survey(number int) Picture {
	pic := Picture{Name: fmt.Sprintf("survey-%d", number), Title: "Where to tape", Width: 600, Height: 194}
	pic.Desc = "A wall with a step, a window and a box. 1: the width along the level datum. 2: the lean of both ends against a plumb line. " +
		"3: heights from the datum up, at the ends and at both sides of a step. 4: an opening's left and bottom, then its width and height."
	pic.add("g", "transform", "translate(0 -28)").kids = []*node{{raw: strings.ReplaceAll(surveyed, "{name}", pic.Name)}}
	return pic
}
