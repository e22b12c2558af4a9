package nest

import (
	"strconv"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Placement is where a part lies on its sheet: the lower left corner of its
// rectangle, in inches from the sheet's left edge and lower end. A turned part
// lies half a turn round in the plane of the sheet.
type Placement struct {
	Part   int // Part.Number
	X      fraction.Length
	Y      fraction.Length
	Turned bool
}

// CutKind says which way a cut runs.
type CutKind uint8

const (
	Crosscut CutKind = iota // across the grooves: a horizontal line of the sheet
	Rip                     // along the grooves: a vertical line of the sheet
)

var cutKinds = enum.Of[CutKind]("crosscut", "rip")

func (k CutKind) String() string                   { return cutKinds.String(k) }
func (k CutKind) MarshalText() ([]byte, error)     { return cutKinds.Marshal(k) }
func (k *CutKind) UnmarshalText(text []byte) error { return cutKinds.Unmarshal(text, k) }

// Cut is one straight cut from edge to edge of the part on the bench, which is the rectangle Rect in
// sheet coordinates: left, bottom, width, height.
//
// The blade's near side is At from the rectangle's lower edge (crosscut) or left edge (rip), and one
// kerf lies beyond. To take off less than a kerf the blade overhangs the edge: At may go down to, not
// reach, minus one kerf (then nothing is left on the near side), or up to, not reach, the far edge.
type Cut struct {
	Step int                `json:"step"` // 1, 2, 3 … on each sheet
	Rect [4]fraction.Length `json:"rect"`
	Kind CutKind            `json:"kind"`
	At   fraction.Length    `json:"at"`
}

// Offcut is a rectangle that is left over when all cuts of a sheet are made, in sheet coordinates, with
// the phase of the pattern at its left edge.
type Offcut struct {
	X         fraction.Length `json:"x"`
	Y         fraction.Length `json:"y"`
	Width     fraction.Length `json:"width"`
	Length    fraction.Length `json:"length"`
	LeftPhase fraction.Length `json:"left_phase"`
}

// Sheet is one sheet of a nest: Cuts in sawing order, Offcuts largest first.
type Sheet struct {
	Stock      int // index into Problem.Stock
	Placements []Placement
	Cuts       []Cut
	Offcuts    []Offcut
}

// Unplaced is a part that is on no sheet, and the reason.
type Unplaced struct {
	Part int // Part.Number
	Why  string
}

// Bound is what is known about every nest of the parts, however found.
type Bound struct {
	// Sheets is the least number of sheets: no guillotine nest of all parts
	// that can be cut at all takes fewer.
	Sheets int
	// Cost is the least money such a nest can cost.
	Cost fraction.Ratio
	// Proved says that the result it belongs to is best: no guillotine nest
	// places more parts, or as many for less money, or for as much money with
	// fewer bought sheets, or with as many bought sheets and fewer in all. With
	// one kind of stock that is: none takes fewer sheets.
	Proved bool
	// How names the reasoning which gave Sheets or closed the gap.
	How string
}

// Status says how a search ended.
type Status int

const (
	Unsearched Status = iota // one pass only, nothing was searched
	Proved                   // the result is proved best
	Spent                    // the budget ended first
	Stopped                  // the context ended first
)

func (s Status) String() string {
	switch s {
	case Unsearched:
		return "not searched"
	case Proved:
		return "proved best"
	case Spent:
		return "budget spent"
	case Stopped:
		return "stopped"
	}
	return "status " + strconv.Itoa(int(s))
}

// MarshalText writes the status as String does.
func (s Status) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Result is a nest: what is cut from which sheet and in what order.
type Result struct {
	Sheets   []Sheet
	Unplaced []Unplaced // in the order of Problem.Parts
	Bound    Bound
	Cost     fraction.Ratio // sum of the prices of the sheets
	Status   Status
	Nodes    int // steps that the search took
}
