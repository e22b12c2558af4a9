package nest

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// Stock is one kind of sheet (or board, or offcut) that parts may be cut from.
// Lengths are inches: Width runs across the grooves, Length along them.
type Stock struct {
	Name      string
	Width     fraction.Length
	Length    fraction.Length
	LeftPhase fraction.Length // phase of the pattern at the left edge
	Limited   bool            // only Count of them are on hand; else as many as needed
	Count     int             // read only if Limited
	Price     fraction.Ratio  // money for one; 0 if unknown or paid for already
	Squared   bool            // both ends are square already: Saw.SquareUp is not taken off
}

// Pattern is what nest needs to know of a profile: how often it repeats and
// whether a part may be turned end for end.
type Pattern struct {
	Pitch    fraction.Length // one repeat; 0: nothing to match, phases are not read
	Mirrored bool            // the repeat is its own mirror image about Axis
	Axis     fraction.Length // phase of an axis, read only if Mirrored
}

// Part is one rectangle to be cut, Width across the grooves and Height along
// them. Its left edge must lie where the sheet shows LeftPhase.
type Part struct {
	Number    int // how the caller knows it; no two parts share one
	Width     fraction.Length
	Height    fraction.Length
	LeftPhase fraction.Length
	Shape     cutout.Shape // outline in the rectangle, if it is not the whole of it
}

// Saw is the width of the blade's cut, and what comes off both factory ends of a
// sheet's length before anything else, the blade included. Both default to 0.
type Saw struct {
	Kerf     fraction.Length
	SquareUp fraction.Length
}

// Problem is a whole job of nesting.
type Problem struct {
	Stock   []Stock
	Parts   []Part
	Pattern Pattern
	Saw     Saw
}
