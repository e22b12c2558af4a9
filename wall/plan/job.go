package plan

import (
	"fmt"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
)

// Defaults of a job file that says nothing else.
var (
	DefaultTape       = fraction.Of(1, 16)         // smallest mark of a tape in inches
	DefaultMetricTape = fraction.Millimetres(1, 1) // smallest mark of a tape in millimetres
	DefaultKerf       = fraction.Of(1, 8)          // a common circular saw blade; common practice, no source
	DefaultBit        = fraction.Of(3, 8)          // lets a jigsaw blade in and turn; common practice, no source
	DefaultMetricBit  = fraction.Millimetres(10, 1)
)

// DefaultPriorities returns the weights and least sizes of a job that is taped in
// these units and names none. In mm and cm the sizes at which the survey and the
// pieces are doubted are round ones, near to those of [wall.DefaultPriorities].
// What a seam counts and how clear of a box it stays decide which layout is best,
// and are the same in every unit.
func DefaultPriorities(units fraction.Unit) wall.Priorities {
	p := wall.DefaultPriorities()
	if units == fraction.Inch {
		return p
	}
	for size, millimetres := range map[*fraction.Length]int64{
		&p.LeastStrip: 20, &p.LeastCorner: 40, &p.LeastCover: 3, &p.HeightJump: 25,
		&p.BoxDifference: 3, &p.OutOfPlumb: 6, &p.StationDistance: 1200,
	} {
		*size = fraction.Millimetres(millimetres, 1)
	}
	return p
}

// Job is what a job file asks for, as values of the packages that do the work.
// A Job that [Read] returned has passed every check of the file.
type Job struct {
	Title   string
	Units   fraction.Unit // of bare numbers in the file, and of what people read
	Room    wall.Room
	Bit     fraction.Length    // diameter of the starter holes for the jigsaw
	Plates  map[int]wall.Plate // cover plates by gangs, where the file gives others than the usual
	Finish  finish.Materials
	Built   int // the year of the house, 0 if the file does not say
	Cooking []Cooking
	Taped   []TapedPoint
	Arches  []Arch
	Doubts  []warning.Warning // what is sound and yet looks like a mistake
}

// Cooking is a stretch of a run behind or beside a cooking appliance.
type Cooking struct {
	Run      int // index of the run
	From, To fraction.Length
}

// TapedPoint is a point that the file gives by its distances from known points.
type TapedPoint struct {
	Path    string // of the point in the file
	Run     int    // index of the run
	At      cutout.Point
	Exact   bool            // the distances meet there exactly
	Within  fraction.Length // else At lies no further than this from where they meet
	Closing fraction.Length // the greatest that any of its distances is off, without sign
}

// Name says which point it is: "corner 4 of the box", counted from 1, or "height 2 of the wall". Where the path tells neither it is
// the path.
func (t TapedPoint) Name(room *wall.Room) string {
	var run, opening, corner int
	if n, _ := fmt.Sscanf(t.Path, "runs[%d].openings[%d].points.corners[%d]", &run, &opening, &corner); n == 3 && run < len(room.Runs) && opening < len(room.Runs[run].Openings) {
		return fmt.Sprintf("corner %d of %s", corner+1, room.Runs[run].Openings[opening].Name)
	}
	if n, _ := fmt.Sscanf(t.Path, "runs[%d].heights[%d]", &run, &corner); n == 2 && run < len(room.Runs) {
		return fmt.Sprintf("height %d of %s", corner+1, room.Runs[run].Name)
	}
	return t.Path
}

// Arch is the true arc of an arched head, for a trammel: the outline of its
// opening only comes near it.
type Arch struct {
	Run     int    // index of the run
	Opening string // its name
	Centre  cutout.Point
	Springs fraction.Length // the height at which the arc starts on both sides
	Radius  fraction.Length
}
