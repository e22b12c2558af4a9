package nest

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Placement is where the lower left corner of a part's rectangle lies, in inches from the sheet's
// left edge and lower end. A turned part lies half a turn round in the plane of the sheet.
type Placement struct {
	Part   int             `json:"piece"` // Part.Number
	X      fraction.Length `json:"x"`
	Y      fraction.Length `json:"y"`
	Turned bool            `json:"turned"`
}

// CutKind says which way a cut runs.
type CutKind uint8

const (
	Crosscut CutKind = iota // across the grooves: a horizontal line of the sheet
	Rip                     // along the grooves: a vertical line of the sheet
)

var cutKinds = enum.Of[CutKind]("crosscut", "rip")

// String returns the word of the kind.
func (k CutKind) String() string { return cutKinds.String(k) }

// MarshalText returns the word of the kind.
func (k CutKind) MarshalText() ([]byte, error) { return cutKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *CutKind) UnmarshalText(text []byte) error { return cutKinds.Unmarshal(text, k) }

// Cut is one straight cut from edge to edge of the rectangle Rect on the bench, in sheet
// coordinates: left, bottom, width, height. The blade's near side is At from the rectangle's lower
// edge (crosscut) or left edge (rip), and one kerf lies beyond. The blade may overhang an edge: At
// is above minus one kerf (below 0 nothing is left on the near side) and below the far edge.
type Cut struct {
	Step int                `json:"step"` // 1, 2, 3 … on each sheet
	Rect [4]fraction.Length `json:"rect"`
	Kind CutKind            `json:"kind"`
	At   fraction.Length    `json:"at"`
}

// Offcut is a rectangle that is left over when all cuts of a sheet are made, in sheet coordinates,
// with the phase of the pattern at its left edge.
type Offcut struct {
	X         fraction.Length `json:"x"`
	Y         fraction.Length `json:"y"`
	Width     fraction.Length `json:"width"`
	Length    fraction.Length `json:"length"`
	LeftPhase fraction.Length `json:"left_phase"`
}

// Sheet is one sheet of a nest: Cuts in sawing order, Offcuts largest first.
type Sheet struct {
	Stock      int         `json:"stock"` // index into Problem.Stock
	Placements []Placement `json:"placements"`
	Cuts       []Cut       `json:"cuts"`
	Offcuts    []Offcut    `json:"offcuts"`
}

// Unplaced is a part that is on no sheet, and the reason.
type Unplaced struct {
	Part  int             `json:"piece"` // Part.Number
	Why   Reason          `json:"why"`
	Needs fraction.Length `json:"needs"` // the size that Why speaks of, else 0
}

// Reason says why a part is on no sheet.
type Reason uint8

const (
	NoStock         Reason = iota // there is no stock at all
	UsedUp                        // the stock that could give the part is used up
	TooWide                       // no stock is Needs wide
	TooLong                       // no stock is Needs long when squared up
	TooWideAtPhase                // no stock is Needs wide: the part and what its phase takes
	TooLongForWidth               // no stock that is wide enough is Needs long when squared up
)

var reasons = enum.Of[Reason]("no stock", "stock used up", "too wide", "too long",
	"too wide at its phase", "too long for its width")

// String returns the words of the reason.
func (r Reason) String() string { return reasons.String(r) }

// MarshalText returns the words of the reason.
func (r Reason) MarshalText() ([]byte, error) { return reasons.Marshal(r) }

// UnmarshalText reads the words of a reason.
func (r *Reason) UnmarshalText(text []byte) error { return reasons.Unmarshal(text, r) }

// Bound is a lower bound on what every nest takes, however it is found.
type Bound struct {
	// No guillotine nest of all parts that can be cut at all takes fewer Sheets, fewer Bought (of
	// stock without a count) or less money.
	Sheets int            `json:"sheets"`
	Bought int            `json:"bought"`
	Cost   fraction.Ratio `json:"cost"`
	// Proved says that the result it belongs to is best: no guillotine nest places more parts, or
	// as many for less money, or for as much money with fewer bought sheets, or with as many of
	// these and fewer sheets in all.
	Proved bool     `json:"proved"`
	How    Argument `json:"how"` // what gave Sheets or closed the gap
}

// Argument says what a bound rests on.
type Argument uint8

const (
	NothingToCut   Argument = iota // there is no part, or none that any stock gives
	SomethingToCut                 // there is a part, so there is a sheet
	PartArea                       // the area of parts, of kerfs and of the gaps that phase leaves
	DualFunctions                  // dual feasible functions of the parts' widths and heights
	LinearProgram                  // the dual prices of a linear program, and the fullest sheet
	ExactSearch                    // a search of all guillotine nests
	StripArea                      // the area of the strips with kerfs
	StripHeights                   // dual feasible functions of the strips' heights
	PartHeights                    // dual weights of the parts by their height
)

var arguments = enum.Of[Argument]("nothing to cut", "something to cut", "part area", "dual feasible functions",
	"linear program", "exact search", "strip area", "strip heights", "part heights")

// String returns the words of the argument.
func (a Argument) String() string { return arguments.String(a) }

// MarshalText returns the words of the argument.
func (a Argument) MarshalText() ([]byte, error) { return arguments.Marshal(a) }

// UnmarshalText reads the words of an argument.
func (a *Argument) UnmarshalText(text []byte) error { return arguments.Unmarshal(text, a) }

// Status says how a search ended.
type Status uint8

const (
	Unsearched Status = iota // one pass only, nothing was searched
	Proved                   // the result is proved best
	Spent                    // the budget ended first
	Stopped                  // the context ended first
)

var statuses = enum.Of[Status]("not searched", "proved best", "budget spent", "stopped")

// String returns the words of the status.
func (s Status) String() string { return statuses.String(s) }

// MarshalText returns the words of the status.
func (s Status) MarshalText() ([]byte, error) { return statuses.Marshal(s) }

// UnmarshalText reads the words of a status.
func (s *Status) UnmarshalText(text []byte) error { return statuses.Unmarshal(text, s) }

// Result is a nest: what is cut from which sheet and in what order. Its JSON reads back equal to
// it.
type Result struct {
	Sheets   []Sheet        `json:"sheets"`
	Unplaced []Unplaced     `json:"unplaced"` // in the order of Problem.Parts
	Bound    Bound          `json:"bound"`
	Cost     fraction.Ratio `json:"cost"` // sum of the sheets' prices, as far as known
	Status   Status         `json:"status"`
	Nodes    int            `json:"nodes"` // steps that the search took
}
