package wall

import (
	"iter"
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Layout is one way to panel a room. It is not changed after it is made.
type Layout struct {
	Runs      []RunLayout    // as in the room
	Pieces    []Piece        // in order of fitting; number n is at index n-1
	Blemishes []Blemish      // every term with a weight
	Total     fraction.Ratio // sum of the costs of the blemishes
	Joints    []Joint        // run by run, the seams last

	// Floor is a lower bound on the Total of every layout that has not come yet, and never more than
	// this one's: equal to it but where terms are too fine for whole numbers of 1/6,342,180,864,000,
	// to which each is rounded down before they are added. By an [Objective] with a Weight it bounds
	// the sum of Total and weighted cost in this way; by one without, only that of layouts of the
	// same Cost.
	Floor fraction.Ratio

	// Broken counts the hard rules that had to be broken: seams through a box or too near one, panels
	// narrower than the least, a run's only exposed end cut.
	Broken int

	// Cost is what the pieces cost by an [Objective]; 0 but for LayoutsByCost.
	Cost fraction.Length
}

// RunLayout is the layout of one run, in run coordinates.
//
// A run of which openings and gaps leave nothing has no panels, meets no neighbor and reaches from 0
// to its width.
type RunLayout struct {
	Limits    [2]fraction.Length // leftmost and rightmost x that panels reach
	EndPhases [2]fraction.Length // at the foot of the left and right end
	EndLeans  [2]fraction.Length // how far the top of a panel's edge there stands to the right of its foot
	EndsBare  [2]bool            // whether an opening takes the end, so that no panel reaches it
	EndsSeen  [2]bool            // whether a cut feature there weighs anything

	SetOut   SetOut
	Corner   *Corner   // at the right end, where the run shares it
	Restarts []Restart // in the direction of work
	Panels   []Panel   // from left to right

	Up fraction.Area // of the installed panels, as pieces between their edges would be
}

// SetOut says how a run is set out: measured from From in Direction, a repeat starts at Origin.
type SetOut struct {
	From        fraction.Length `json:"from"`
	Direction   Direction       `json:"direction"`
	DirectionBy DirectionCause  `json:"direction_by"`
	Origin      fraction.Length `json:"origin"`
}

// Neighbors yields the panels of a run that meet at a seam, from left to right. Between others lies an
// opening or an installed panel.
func (room *Room) Neighbors(run int, panels []Panel) iter.Seq2[Panel, Panel] {
	r := &Run{}
	if 0 <= run && run < len(room.Runs) {
		r = &room.Runs[run]
	}
	return func(yield func(left, right Panel) bool) {
		for i := 1; i < len(panels); i++ {
			left, right := panels[i-1], panels[i]
			parts := func(o Opening) bool { // as wide as a seam's gap, from bottom to top
				lo, hi := o.Bounds()
				around := room.Gaps.Around(o.Kind)
				if left.Right != lo.X.Sub(around) || right.Left != hi.X.Add(around) {
					return false
				}
				top, bottom := r.spaceOver(left.Right, right.Left)
				return !bottom[1].Less(lo.Y) && !hi.Y.Less(top[0])
			}
			if left.Right.Add(room.Gaps.Seam) == right.Left && !slices.ContainsFunc(r.Openings, parts) && !yield(left, right) {
				return
			}
		}
	}
}

// DirectionCause is what decides the way to work along a run.
type DirectionCause uint8

// The causes.
const (
	ByNothing DirectionCause = iota // both ends are seen as much: to the right
	BySeenEnd                       // away from the end that is seen more
	ByTongue                        // to the side of the boards' tongue
	ByLap                           // as lapped boards go on, to the right
	ByKeep                          // the job keeps it
)

var directionCauses = enum.Of[DirectionCause]("nothing", "seen end", "tongue", "lap", "keep")

// String returns the word of the cause.
func (c DirectionCause) String() string { return directionCauses.String(c) }

// MarshalText returns the word of the cause.
func (c DirectionCause) MarshalText() ([]byte, error) { return directionCauses.Marshal(c) }

// UnmarshalText reads the word of a cause.
func (c *DirectionCause) UnmarshalText(text []byte) error { return directionCauses.Unmarshal(text, c) }

// Direction is the way to work along a run.
type Direction uint8

// The directions.
const (
	Right Direction = iota
	Left
)

var directions = enum.Of[Direction]("right", "left")

// String returns the word of the direction.
func (d Direction) String() string { return directions.String(d) }

// MarshalText returns the word of the direction.
func (d Direction) MarshalText() ([]byte, error) { return directions.Marshal(d) }

// UnmarshalText reads the word of a direction.
func (d *Direction) UnmarshalText(text []byte) error { return directions.Unmarshal(text, d) }

// Corner is the corner at the right end of a run. Next, Passes and Butts are indices of runs; at an
// outside corner the last two are -1. Mismatch is how far the patterns are out of step.
type Corner struct {
	Next          int
	Passes, Butts int
	Mismatch      fraction.Length
}

// Restart is a break at which the pattern starts afresh: beyond it, in the direction of work, the
// first repeat starts at Origin.
type Restart struct {
	At       fraction.Length `json:"at"`
	Origin   fraction.Length `json:"origin"`
	Mismatch fraction.Length `json:"mismatch"`
}

// Panel is one sheet's width of a run. Its edges are its own; between neighbours lies the seam gap.
// Pieces are the numbers of the pieces into which openings cut it, from the top down.
type Panel struct {
	Number     int             `json:"number"` // in order of fitting, from 1
	Left       fraction.Length `json:"left"`
	Right      fraction.Length `json:"right"`
	LeftPhase  fraction.Length `json:"left_phase"`
	RightPhase fraction.Length `json:"right_phase"`
	Pieces     []int           `json:"pieces"`
}

// Piece is one piece of panelling, face on, its origin at the lower left of its bounding box, which
// stands at At on the run.
type Piece struct {
	Number       int
	Label        string // the panel's number, with a letter where it is in several pieces
	Run          int
	Panel        int // number
	At           cutout.Point
	Shape        cutout.Shape
	LeftPhase    fraction.Length
	Holes        []string        // by hole of the shape, the opening's name
	Edges        fraction.Length // of outline and holes, as long as they are
	OpeningEdges fraction.Length // of these the holes round one window
	Closing      bool            // the last of its run, or before a panel that is up, or beside a door: measured again on the wall before it is cut, unless all of its space is the wall's own
	Scribe       *Scribe         // what is left on it to be sawn off to the wall; nil for nothing
}
