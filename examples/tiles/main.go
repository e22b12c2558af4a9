// Command tiles centers a course of tiles on a wall with packages fraction and groove alone:
// a tile and its joint are one repeat of a pattern, and the phase at an end of the wall says
// how much of a tile is left there.
package main

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

func main() {
	tile, joint, wall := fraction.MustParse("5 7/8"), fraction.MustParse("1/8"), fraction.MustParse("97 3/8")
	course := groove.Profile{Name: "tiles", Features: []groove.Feature{{Kind: groove.Flat, Width: tile}, {Kind: groove.Groove, Width: joint}}}
	tape := fraction.Tape{Mark: fraction.MustParse("1/16")}

	// Two ways are symmetrical: a tile in the middle of the wall, or a joint.
	for name, origin := range map[string]fraction.Length{
		"tile":  wall.Sub(tile).Div(2),
		"joint": wall.Add(joint).Div(2),
	} {
		left, right := cut(course, fraction.Length{}, origin, groove.KeepRight), cut(course, wall, origin, groove.KeepLeft)
		fmt.Printf("%s in the middle: cut tiles of %s and %s at the ends\n", name, tape.Format(left), tape.Format(right))
	}
}

// cut returns the width of the tile that is left at a cut.
func cut(course groove.Profile, x, origin fraction.Length, keep groove.Side) fraction.Length {
	_, width, err := course.Shown(x.Sub(origin), keep)
	if err != nil {
		panic(err) // only lengths far beyond any wall
	}
	return width
}
