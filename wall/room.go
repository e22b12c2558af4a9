package wall

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
)

// Room is all that was taped and chosen before the layout. It is not changed by this package. The
// zero Room has no runs and no layout.
type Room struct {
	Profile groove.Profile

	// Closed says that the right end of the last run meets the left end of the first, as in a room
	// panelled all round.
	Closed bool

	// Mark is the smallest mark of the tape, such as 1/16 in: points that no tape gave are rounded
	// to it. Zero leaves them exact.
	Mark fraction.Length

	// Snap is how far from a mark a point that no tape gave may lie to go to that mark, to whichever
	// side; others go into the space. No piece is larger than its space by more. At most half a Mark.
	Snap fraction.Length

	// Scribe is left on the scribed edge of each closing piece, or as much of it as a sheet has.
	Scribe fraction.Length

	Runs      []Run        // clockwise, at least one
	Stock     []nest.Stock // what panels are cut from
	Saw       nest.Saw     // squares up the ends of the stock
	Gaps      Gaps
	Trim      Trims // over edges of every run
	Installed []Installed

	// Priorities are usually [DefaultPriorities]. With the zero value nothing weighs and every
	// layout is as good as another.
	Priorities Priorities
}

// Run is one flat stretch of wall, face on, from x = 0 to x = Width.
type Run struct {
	Name        string
	Width       fraction.Length
	Left, Right End
	Heights     []Height // from At = 0 to At = Width, in order; two at one place make a step
	Openings    []Opening
	Focal       []Focal
	Breaks      []Break
	Keep        Keep
	Trim        Trims // each takes the place of the room's
}

// End is one end of a run. Lean counts at the top of the end station. Prominence is nil where the
// weight of the kind counts.
type End struct {
	Kind       EndKind         `json:"kind" doc:"At a corner the next run says the same."`
	Lean       fraction.Length `json:"lean,omitzero" doc:"How far the top of the end stands to the right of its foot."`
	Prominence *fraction.Ratio `json:"prominence,omitzero" doc:"The weight of a cut feature there, in place of that of the kind."`
}

// EndKind says what a run ends at.
type EndKind uint8

// The kinds of end. At an inside or outside corner that two neighbouring runs share, both ends have
// the same kind.
const (
	Exposed       EndKind = iota // the cut edge is seen
	InsideCorner                 // one run passes into the corner, the other butts
	OutsideCorner                // both are mitred, one thickness past the wall
	Covered                      // hidden by a trim or a cabinet
)

var endKinds = enum.Of[EndKind]("exposed", "inside corner", "outside corner", "covered")

// String returns the word of the kind.
func (k EndKind) String() string { return endKinds.String(k) }

// MarshalText returns the word of the kind.
func (k EndKind) MarshalText() ([]byte, error) { return endKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *EndKind) UnmarshalText(text []byte) error { return endKinds.Unmarshal(text, k) }

// Height is a station: the place At where the bottom and the top of the space were taped, both from
// the level datum.
type Height struct {
	At, Bottom, Top fraction.Length
}

// Opening is a place that panelling leaves free. Outline is a simple closed polygon in run
// coordinates, as taped, before its gap. Gangs counts the devices of a box and matters only there.
type Opening struct {
	Name    string
	Kind    OpeningKind
	Outline []cutout.Point
	Arch    *Arch // of an arched head, nil without one; [Arched] gives both it and the outline
	Gangs   int
}

// Bounds returns the lower left and the upper right corner of the smallest rectangle round the
// opening, both the origin where it has no corner.
func (o *Opening) Bounds() (lo, hi cutout.Point) {
	if o == nil {
		return lo, hi
	}
	return cutout.Bounds(o.Outline)
}

// InWall reports whether cables or pipes lie in the wall at an opening, as outlined: at a box, and at another opening but a
// window that ends within the wall, unlike a door.
func (k OpeningKind) InWall(opening, wall []cutout.Point) bool {
	lo, hi := cutout.Bounds(opening)
	from, to := cutout.Bounds(wall)
	within := from.X.Less(lo.X) && hi.X.Less(to.X) && from.Y.Less(lo.Y) && hi.Y.Less(to.Y)
	return k == Box || k == Other && within
}

// Cased reports whether a casing hides the edges round an opening of run r: not where cables or pipes lie in the wall.
func (room *Room) Cased(r int, o Opening) bool {
	var wall []cutout.Point
	for _, h := range room.Runs[r].Heights {
		wall = append(wall, cutout.Point{X: h.At, Y: h.Bottom}, cutout.Point{X: h.At, Y: h.Top})
	}
	casing, _ := room.TrimOf(r, OpeningJoint)
	return casing != nil && !o.Kind.InWall(o.Outline, wall)
}

// DeviceGangs returns how many devices the opening holds as a box: Gangs, or where that is 0 the
// number that its width gives where lengths are in these units.
func (o *Opening) DeviceGangs(units fraction.Unit) (gangs int) {
	if o != nil && o.Gangs != 0 {
		return o.Gangs
	}
	gangs = MaxGangs // of a width beyond all numbers
	var err error
	defer fraction.Catch(&err)
	lo, hi := o.Bounds()
	return Gangs(units, hi.X.Sub(lo.X))
}

// OpeningKind says what an opening is for.
type OpeningKind uint8

// The kinds of opening.
const (
	Other  OpeningKind = iota // anything that is neither of the others; its sides are seen
	Box                       // an electrical box behind a cover plate
	Window                    // a window or door; its sides are seen
)

var openingKinds = enum.Of[OpeningKind]("other", "box", "window")

// String returns the word of the kind.
func (k OpeningKind) String() string { return openingKinds.String(k) }

// MarshalText returns the word of the kind.
func (k OpeningKind) MarshalText() ([]byte, error) { return openingKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *OpeningKind) UnmarshalText(text []byte) error { return openingKinds.Unmarshal(text, k) }

// Focal is a stretch From <= x <= To of a run in which a seam is seen more (Prominence above 1) or
// less (below 1). Stretches do not overlap.
type Focal struct {
	From       fraction.Length `json:"from"`
	To         fraction.Length `json:"to"`
	Prominence fraction.Ratio  `json:"prominence" doc:"Above 1 where a seam is seen more, below 1 where less."`
}

// Break is a place where the pattern may start afresh.
type Break struct {
	At         fraction.Length `json:"at"`
	Prominence fraction.Ratio  `json:"prominence" doc:"What a pattern out of step there weighs."`
}

// Gaps are the joints left open for sealant, movement and fit, each 0 or more.
type Gaps struct {
	Top    fraction.Length `json:"top" file:"optional"`
	Bottom fraction.Length `json:"bottom" file:"optional"`
	Side   fraction.Length `json:"side" file:"optional" doc:"At both ends of each run and beside each step."`
	Seam   fraction.Length `json:"seam" file:"optional" doc:"Between two panels."`
	Box    fraction.Length `json:"box" file:"optional" doc:"Round a box."`
	Window fraction.Length `json:"window" file:"optional" doc:"Round every opening but a box."`
}

// Around returns the gap that is left round an opening of a kind.
func (g Gaps) Around(k OpeningKind) fraction.Length {
	if k == Box {
		return g.Box
	}
	return g.Window
}

// Installed is a panel that is on the wall already and stays there: it covers Left <= x <= Right of
// the run with index Run and shows LeftPhase at its left edge.
type Installed struct {
	Run                    int
	Left, Right, LeftPhase fraction.Length
}
