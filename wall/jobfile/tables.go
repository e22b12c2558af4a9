package jobfile

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// These structs are the tables of the job file, one for each object that no other package has as it
// is: reader, writer and schema are made from them. The tag json has a field's name; a field must
// be there unless that tag has an option or the tag file says optional. The tag doc describes it.

// mostItems are the limits of lists that [wall.Room] has, by the names of their fields.
var mostItems = map[string]int{"Stock": wall.MaxKinds, "Runs": wall.MaxRuns, "Installed": wall.MaxPanels, "Heights": wall.MaxStations,
	"Openings": wall.MaxOpenings, "Breaks": wall.MaxBreaks, "Focal": wall.MaxFocal}

type file struct {
	Schema     string           `json:"$schema,omitzero" doc:"Where the schema of this file is, for editors. It is not read."`
	Title      string           `json:"title,omitzero" doc:"What the plan is called."`
	Units      fraction.Unit    `json:"units,omitzero" doc:"The unit of bare numbers, and of what people read."`
	Tape       fraction.Length  `json:"tape,omitzero" doc:"The smallest mark that is measured to. In a metric job 1 mm unless given."`
	Snap       *fraction.Length `json:"snap,omitzero" doc:"How near to a mark a computed place goes to it, to whichever side; others go into the space. A quarter of the tape's mark unless given, at most half."`
	Scribe     fraction.Length  `json:"scribe,omitzero" doc:"Left on the scribed edge of closing pieces, to be sawn off to the wall."`
	Closed     bool             `json:"closed,omitzero" doc:"Whether the right end of the last run meets the left end of the first."`
	Profile    profile          `json:"profile" doc:"The name of a ready profile, or a profile of the job's own."`
	Stock      []nest.Stock     `json:"stock" doc:"The sheets that can be bought or are on hand."`
	Saw        saw              `json:"saw,omitzero"`
	Plates     []plate          `json:"plates,omitzero" doc:"Cover plates, where they are not of the usual sizes."`
	Trim       wall.Trims       `json:"trim,omitzero" doc:"What hides edges of panels on every run."`
	Gaps       wall.Gaps        `json:"gaps,omitzero" doc:"The joints that are left open for sealant, movement and fit."`
	Runs       []run            `json:"runs" doc:"The flat stretches of wall, left to right as one turns clockwise. At most 300 features of the pattern times runs and breaks, at most 2500 features of the pattern times stations and openings."`
	Installed  []installed      `json:"installed,omitzero" doc:"Panels that are on the wall already: they are planned round."`
	Priorities wall.Priorities  `json:"priorities,omitzero" doc:"What is best: the weights and least sizes that layouts are judged by. A metric job has round sizes."`
	Built      int              `json:"built,omitzero" doc:"The year of the house, for the cautions."`
	Finish     finish.Materials `json:"finish,omitzero" doc:"What is bought besides the sheets and how it is used. Each field has a default."`
}

// profile is written by its name where it is a builtin one.
type profile struct {
	Form  either
	Ready string
	Own   groove.Profile
}

type saw struct {
	Kerf     fraction.Length `json:"kerf,omitzero" doc:"The width that the blade takes."`
	SquareUp fraction.Length `json:"square_up,omitzero" doc:"What comes off each factory end of the length, the blade included."`
	Bit      fraction.Length `json:"bit,omitzero" doc:"The diameter of the starter holes for the jigsaw. In a metric job 10 mm unless given."`
	Kind     plan.SawKind    `json:"kind,omitzero" doc:"What the sheets are sawn with."`
	Face     plan.Face       `json:"face,omitzero" doc:"Where the good face lies. Unless given, down for a circular saw, else up."`
	LeastRip fraction.Length `json:"least_rip,omitzero" doc:"What a cut takes off less of, the blade included, is planed off. In a metric job 3 mm unless given."`
}

type plate struct {
	Gangs  int             `json:"gangs" doc:"The devices behind it."`
	Width  fraction.Length `json:"width"`
	Height fraction.Length `json:"height"`
}

type run struct {
	Name     string          `json:"name"`
	Width    fraction.Length `json:"width" doc:"Of the bare wall, from corner to corner. At most 65536 repeats of the pattern and 1048576 marks of the tape, runs together at most as wide as 1000 of the widest stock, at most 500000 marks of the tape along all runs together times features of the pattern."`
	Left     wall.End        `json:"left"`
	Right    wall.End        `json:"right"`
	Heights  []height        `json:"heights" doc:"The places where bottom and top were taped, from one end to the other; two at one place make a step. At most 1000 stations in all runs together."`
	Openings []opening       `json:"openings,omitzero" doc:"Boxes, windows and other places that stay free. At most 200 openings in all runs together, at most 5000 corners of openings in all runs together, arched heads in straight edges."`
	Focal    []wall.Focal    `json:"focal,omitzero" doc:"Where a seam is seen more or less. At most 500 focal zones in all runs together."`
	Breaks   []wall.Break    `json:"breaks,omitzero" doc:"Where the pattern may start afresh. At most 10 breaks in all runs together."`
	Keep     wall.Keep       `json:"keep,omitzero" doc:"What is insisted on; what cannot be kept is refused."`
	Trim     wall.Trims      `json:"trim,omitzero" doc:"What hides edges on this run; it takes the place of the room's."`
	Cooking  []stretch       `json:"cooking,omitzero" doc:"Stretches beside or behind a cooking appliance."`
}

type height struct {
	At     *fraction.Length `json:"at,omitzero" doc:"From the run's left end."`
	Bottom fraction.Length  `json:"bottom,omitzero" doc:"From the level line."`
	Top    *fraction.Length `json:"top,omitzero" doc:"From the level line."`
	Taped  *corner          `json:"taped,omitzero" doc:"The top, taped from known points, in place of at and top."`
}

type opening struct {
	Name    string           `json:"name"`
	Kind    wall.OpeningKind `json:"kind"`
	Left    *fraction.Length `json:"left,omitzero" doc:"From the run's left end."`
	Bottom  *fraction.Length `json:"bottom,omitzero" doc:"From the level line."`
	Width   *fraction.Length `json:"width,omitzero"`
	Height  *fraction.Length `json:"height,omitzero" doc:"To the springing of an arched head."`
	Outline []pair           `json:"outline,omitzero" doc:"Its corners from left and bottom, in order round it, in place of width and height."`
	Points  *points          `json:"points,omitzero" doc:"Its corners, taped from known points, in place of the other five."`
	Rise    *fraction.Length `json:"rise,omitzero" doc:"Of an arched head of at most 16384 marks of the tape, over the two highest corners."`
	Gangs   int              `json:"gangs,omitzero" doc:"The devices side by side in a box."`
}

// pair is a point [x, y].
type pair [2]fraction.Length

type points struct {
	Bases   []pair       `json:"bases,omitzero" doc:"Known points that the corners were taped from."`
	Side    *cutout.Side `json:"side,omitzero" doc:"On which side of the line from the first base to the second the corners lie."`
	Corners []corner     `json:"corners" doc:"In order round the opening."`
}

type corner struct {
	Bases     []pair            `json:"bases,omitzero" doc:"Known points [x, y] on the run that it was taped from, where they are its own."`
	Side      *cutout.Side      `json:"side,omitzero" doc:"On which side of the line from the first base to the second it lies."`
	Distances []fraction.Length `json:"distances" doc:"One from each base."`
}

type stretch struct {
	From   fraction.Length `json:"from"`
	To     fraction.Length `json:"to"`
	Manual string          `json:"manual,omitzero" doc:"What the appliance's manual asks of the wall here, as you read it there."`
}

type installed struct {
	Run       whichRun        `json:"run" doc:"The run's name, or its number from 0."`
	Left      fraction.Length `json:"left" doc:"From the run's left end."`
	Right     fraction.Length `json:"right" doc:"From the run's left end."`
	LeftPhase fraction.Length `json:"left_phase" doc:"The phase of the pattern at its left edge."`
}

// whichRun is a run by its name or its index.
type whichRun struct {
	Form  either
	Name  string
	Index int
}

// either marks a struct of two fields that stands for one of them, the first where the file has a
// text: its value is the number of the field, 0 where the file had neither.
type either int
