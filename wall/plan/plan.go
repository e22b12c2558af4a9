// Package plan joins the packages of groovewright into one plan and holds the plan as the value
// that is printed, drawn and written as JSON.
//
//	job := plan.NewJob(fraction.Inch, profile) // or jobfile.Read
//	job.Stock, job.Runs = stock, runs
//	p, err := plan.Make(ctx, job, plan.Options{})
//
// A [Plan] is data alone. Packages wall/book and wall/drawing put it into words and pictures;
// [Plan.JSON] writes it, and what json.Unmarshal reads back equals it.
//
// # Units and coordinates
//
// Lengths are exact inches whatever the job's units, in JSON strings such as "16 3/16". Run
// coordinates have x to the right from the left end of the run and y up from the level datum, piece
// coordinates begin at the lower left of the piece's bounding box, sheet coordinates at the left
// edge and lower end of the sheet, face up. A phase is how far a place lies to the right of the
// start of a repeat. Runs, openings and stock have names, pieces, panels and sheets numbers from 1.
//
// # Errors
//
// What is wrong with a job is a *fault.Fault for each value, joined. [Make] says which errors it
// adds. Nothing panics, whatever values are given (FuzzWild).
// The text methods of an enumeration fail with a *fault.Fault for a value or word that it lacks.
package plan

import (
	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

// Format is the version of the plan's JSON form.
const Format = 1

// Plan is everything that is known before the first cut. Lengths are exact inches, in coordinates
// of the run, the piece or the sheet, as each field says.
type Plan struct {
	Format       int               `json:"format"` // [Format]
	Title        string            `json:"title"`
	Units        fraction.Unit     `json:"units"`           // how people read the job
	Tape         fraction.Length   `json:"tape"`            // smallest mark that people measure to
	Snap         fraction.Length   `json:"snap"`            // computed places so near to a mark go to it; no piece is larger than its space by more
	Scribe       fraction.Length   `json:"scribe"`          // left on closing pieces, where a sheet has it
	Closed       bool              `json:"closed,omitzero"` // the last run meets the first
	Profile      Profile           `json:"profile"`
	Saw          Saw               `json:"saw"`
	Gaps         wall.Gaps         `json:"gaps"`
	Stock        []Stock           `json:"stock"`
	Runs         []Run             `json:"runs"`
	Pieces       []Piece           `json:"pieces"` // in order of fitting
	Sheets       []Sheet           `json:"sheets"` // to saw; stock that is not cut has none
	Bound        Bound             `json:"bound"`
	Blemishes    []Blemish         `json:"blemishes"`
	BlemishTotal fraction.Ratio    `json:"blemish_total"` // sum of their costs
	Search       Search            `json:"search"`
	Choices      []Choice          `json:"choices"` // the best-looking first
	Priorities   []Priority        `json:"priorities"`
	finish.List                    // what to buy
	Fixing       finish.Fixing     `json:"fixing,omitzero"` // of the panels to the wall
	Taped        []Taped           `json:"taped,omitempty"` // points found from taped distances
	Warnings     []warning.Warning `json:"warnings"`        // to think over before cutting
	Order        []finish.Step     `json:"order"`           // of the work
	Cautions     []finish.Caution  `json:"cautions"`
}

// Profile is the pattern of the panelling as the plan used it.
type Profile struct {
	groove.Profile
	Pitch    fraction.Length `json:"pitch"`
	Mirrored bool            `json:"mirrored"` // the repeat is its own mirror image
}

// Word returns the first word, or the second where the panelling is boards.
func (p Profile) Word(sheet, board string) string {
	if p.Boards {
		return board
	}
	return sheet
}

// Stock is one kind of sheet that may be bought or is on hand.
type Stock struct {
	nest.Stock
	Used int `json:"used"` // sheets that the plan cuts
}

// Run is one flat stretch of wall with its setting-out and panels, in run coordinates. Outline is
// the wall's own shape (before gaps) and Openings the openings as taped, for drawing.
type Run struct {
	Name        string             `json:"name"`
	Width       fraction.Length    `json:"width"`
	Left        End                `json:"left"`
	Right       End                `json:"right"`
	Limits      [2]fraction.Length `json:"limits"` // leftmost and rightmost x that panels reach; of a bare run its ends
	SetOut      SetOut             `json:"set_out"`
	Restarts    []wall.Restart     `json:"restarts,omitempty"`     // where a pattern starts afresh
	CornerRight *Corner            `json:"corner_right,omitempty"` // at the right end, if shared
	Outline     []Point            `json:"outline"`
	Openings    []Opening          `json:"openings"`
	Trim        wall.Trims         `json:"trim,omitzero"` // over its edges, of the room where it has none of its own
	Keep        wall.Keep          `json:"keep,omitzero"` // what the job insists on
	Panels      []wall.Panel       `json:"panels"`
	Seams       []Seam             `json:"seams,omitempty"`
	Installed   []Installed        `json:"installed,omitempty"` // panels on the wall already
	Cooking     []Clearance        `json:"cooking,omitempty"`   // beside or behind cooking appliances
	StoryPole   []Mark             `json:"story_pole"`          // from left to right
	Supports    []fraction.Length  `json:"supports,omitempty"`  // heights of the middles of the level supports behind boards, between foot and top
}

// Bare reports whether nothing of the run is panelled or planned: openings and gaps leave nothing of
// it, or it is one of [Job.Walls].
func (r Run) Bare() bool { return len(r.StoryPole) == 0 }

// End is one end of a run.
type End struct {
	Kind wall.EndKind    `json:"kind"`
	Lean fraction.Length `json:"lean,omitzero"` // how far its top stands to the right of its foot
	Cut  Shown           `json:"cut"`           // what is seen there
	Bare bool            `json:"bare,omitzero"` // an opening takes it: no panel reaches there, and Kind says nothing
}

// Shown is what an edge shows of the feature that it cuts: Width of it, of Of in all. An edge that
// leans crosses the features Across, from its foot up; Feature is the first of these, Width what is
// left of it where that is least.
type Shown struct {
	Feature groove.Kind     `json:"feature"`
	Width   fraction.Length `json:"width"`
	Of      fraction.Length `json:"of"`
	Across  []groove.Kind   `json:"across,omitempty"`
}

// SetOut says where the pattern of a run starts. Origin is the x at which a repeat starts (phase
// 0), From the x from which to measure, and Direction the way to work.
type SetOut struct {
	wall.SetOut
	Why Why `json:"why"`
}

// Why is the reason of a setting-out: which ends of the run are seen. [End.Cut] is what they show.
type Why uint8

// The reasons.
const (
	NeitherSeen Why = iota
	LeftSeen
	RightSeen
	BothSeen
)

var whys = enum.Of[Why]("neither end is seen", "left end is seen", "right end is seen", "both ends are seen")

// String returns the word of the reason.
func (w Why) String() string { return whys.String(w) }

// MarshalText returns the word of the reason.
func (w Why) MarshalText() ([]byte, error) { return whys.Marshal(w) }

// UnmarshalText reads the word of a reason.
func (w *Why) UnmarshalText(text []byte) error { return whys.Unmarshal(text, w) }

// Corner says which run passes into the inside corner at a run's right end and which butts against
// it, by name. At an outside corner both are empty.
type Corner struct {
	Kind     wall.EndKind    `json:"kind"`
	Next     string          `json:"next"`
	Passes   string          `json:"passes"`
	Butts    string          `json:"butts"`
	Mismatch fraction.Length `json:"mismatch"` // how far the patterns are out of step
}

// Point is a place on a run, a piece or a sheet: [x, y].
type Point = cutout.Point

// Opening is an opening as taped, in run coordinates.
type Opening struct {
	Name    string           `json:"name"`
	Kind    wall.OpeningKind `json:"kind"`
	Outline []Point          `json:"outline"`
}

// Installed is a panel that is on the wall already.
type Installed struct {
	Left      fraction.Length `json:"left"`
	Right     fraction.Length `json:"right"`
	LeftPhase fraction.Length `json:"left_phase"`
}

// Clearance is a stretch of a run beside or behind a cooking appliance, and what the appliance's manual asks
// there; empty where nobody looked it up.
type Clearance struct {
	From   fraction.Length `json:"from"`
	To     fraction.Length `json:"to"`
	Manual string          `json:"manual,omitempty"`
}

// Mark is a running mark from the left end of the run.
type Mark struct {
	At      fraction.Length `json:"at"`
	Kind    MarkKind        `json:"kind"`
	Panel   int             `json:"panel,omitzero"`    // number of the panel whose edge it is
	Next    int             `json:"next,omitzero"`     // number of the one that it meets
	Opening string          `json:"opening,omitempty"` // name of the opening at whose side it is
}

// MarkKind says what is at a mark.
type MarkKind uint8

// The kinds of mark.
const (
	PanelsStart MarkKind = iota
	PanelsStop
	RepeatStarts
	PanelLeft  // the left edge of a panel
	PanelRight // the right edge of a panel
	PanelsMeet // two panels without a gap between them
	InstalledLeft
	InstalledRight
	InstalledMeet // a panel on the wall and panel Panel, or where that is 0 another on the wall, without a gap
	OpeningLeft
	OpeningRight
	StepSide
)

var markKinds = enum.Of[MarkKind]("panels start", "panels stop", "repeat starts", "panel left", "panel right", "panels meet",
	"installed left", "installed right", "installed meet", "opening left", "opening right", "step")

// String returns the word of the kind.
func (k MarkKind) String() string { return markKinds.String(k) }

// MarshalText returns the word of the kind.
func (k MarkKind) MarshalText() ([]byte, error) { return markKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *MarkKind) UnmarshalText(text []byte) error { return markKinds.Unmarshal(text, k) }

// Piece is one numbered piece of panelling, in piece coordinates: origin at the lower left of its
// bounding box, which stands at At on the run. All but Scribe is of the piece as it is fitted.
type Piece struct {
	Number    int             `json:"number"`
	Label     string          `json:"label"` // what is written on the back, such as 3 or 3a
	Run       string          `json:"run"`
	Panel     int             `json:"panel"` // number of the panel that it is or is a part of
	At        Point           `json:"at"`
	Width     fraction.Length `json:"width"`
	Height    fraction.Length `json:"height"`
	LeftPhase fraction.Length `json:"left_phase"` // of the left edge of the bounding box
	Outline   []Point         `json:"outline"`
	Holes     []Hole          `json:"holes"`
	Closing   bool            `json:"closing"`          // measured again on the wall before it is cut
	Scribe    *wall.Scribe    `json:"scribe,omitempty"` // left on beside its rectangle, and sawn off last, to the wall
	Marks     Marks           `json:"marks"`
	Weak      []Weak          `json:"weak"`
}

// Hole is an opening wholly inside a piece, grown by its gap, in piece coordinates.
type Hole struct {
	Opening string  `json:"opening"`
	Outline []Point `json:"outline"`
}

// Marks are the lines to draw on a piece, as running measurements from its left edge and its lower
// edge: on the face, and on the back where left is right.
type Marks struct {
	From MarkEdges `json:"from"` // the edges measured from
	cutout.Corners
	Holes []HoleMarks `json:"holes,omitempty"`
	Arcs  []Arc       `json:"arcs,omitempty"`
	Drill []Drill     `json:"drill,omitempty"`
	Order []Cutting   `json:"order,omitempty"` // what is sawn out, in the order of sawing
}

// MarkEdges says what made the two edges that marks are measured from.
type MarkEdges struct {
	Left  EdgeKind `json:"left"`
	Lower EdgeKind `json:"lower"`
}

// EdgeKind says what made an edge of a piece.
type EdgeKind uint8

// The kinds of edges.
const (
	AnyEdge EdgeKind = iota // not known: that of an offcut, or the piece is on no sheet
	FactoryEdge
	SawnEdge
)

var edgeKinds = enum.Of[EdgeKind]("any edge", "factory edge", "sawn edge")

// String returns the word of the kind.
func (k EdgeKind) String() string { return edgeKinds.String(k) }

// MarshalText writes the word of the kind.
func (k EdgeKind) MarshalText() ([]byte, error) { return edgeKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *EdgeKind) UnmarshalText(text []byte) error { return edgeKinds.Unmarshal(text, k) }

// Waste is one part of the waste of a piece: a hole by its opening, a notch by its number, from 1,
// where there are several.
type Waste struct {
	Kind    cutout.CuttingKind `json:"kind"`
	Opening string             `json:"opening,omitzero"`
	Number  int                `json:"number,omitzero"`
}

// Cutting is how one part of the waste is sawn out: first drill, then saw.
type Cutting struct {
	Waste
	Drill []int    `json:"drill,omitempty"` // indices of the starter holes in Marks.Drill
	Tight []Point  `json:"tight,omitempty"` // inside corners in which no starter hole fits
	Saw   []SawCut `json:"saw"`             // the waste hangs by the last one
}

// SawCut is a line to saw in one go, from where the saw comes in. Corners are the corners of the piece
// along it, counted from 0 through the outline and then through each hole; none where a point of it is
// no corner. [Marks.Named] has their names.
type SawCut struct {
	Points  []Point `json:"points"`
	Corners []int   `json:"corners,omitempty"`
}

// HoleMarks are the corners of one hole on face and back.
type HoleMarks struct {
	Opening string `json:"opening"`
	cutout.Corners
}

// Arc is the true arc that corners of a piece lie near, to be drawn with a trammel. Its centre may
// lie off the piece.
type Arc struct {
	Opening string          `json:"opening"`
	Centre  Point           `json:"centre"`  // on the face
	Back    Point           `json:"back"`    // on the back
	Radius  fraction.Length `json:"radius"`  // of the line to saw: the opening's and its gap
	Springs fraction.Length `json:"springs"` // the height at which it starts on both sides
	Half    fraction.Length `json:"half"`    // how far it goes to both sides of the centre; 0: not known
	Near    fraction.Length `json:"near"`    // corners of the outline nearer than that stand for it; 0: 1/4 in
	Ends    []ArcEnd        `json:"ends"`    // of what of it is an edge of the piece
}

// ArcEnd is where an arc ends: at a straight edge of the piece, on a mark of the tape. Corner is
// the number of the corner that stands for it, as in [SawCut].
type ArcEnd struct {
	Corner int   `json:"corner"`
	At     Point `json:"at"`   // on the face
	Back   Point `json:"back"` // on the back
}

// Drill is a starter hole for the jigsaw, wholly in the waste.
type Drill struct {
	Waste
	At       Point           `json:"at"`   // on the face
	Back     Point           `json:"back"` // on the back
	Diameter fraction.Length `json:"diameter"`
}

// Weak is a spot of a piece that may break, in piece coordinates, with a way out. Width is that of
// the material at its narrowest.
type Weak struct {
	Kind   cutout.WeakKind `json:"kind"`
	At     Point           `json:"at"`
	Width  fraction.Length `json:"width"`
	WayOut cutout.WayOut   `json:"way_out"`
}

// Sheet is one sheet to saw, in sheet coordinates.
type Sheet struct {
	Number     int              `json:"number"`
	Stock      string           `json:"stock"`      // name of its kind
	Placements []nest.Placement `json:"placements"` // by the number of the piece
	Cuts       []Cut            `json:"cuts"`       // in sawing order
	Offcuts    []nest.Offcut    `json:"offcuts"`    // the largest first
}

// Bound is what is proved about the number of sheets; of those to buy, where some are on hand.
type Bound struct {
	SheetsAtLeast int           `json:"sheets_at_least"` // for these pieces
	Proved        bool          `json:"proved"`          // no nest of these pieces takes fewer
	How           nest.Argument `json:"how"`             // what that rests on
}

// Blemish is one term of what the eye would find. Amount is in inches of cut feature, mismatch,
// distance or shortfall, as the kind says; Height is in inches, nil for a term that does not count by
// height. Cost is Weight times Amount, and times Height in feet where it counts.
type Blemish struct {
	Run     string           `json:"run"`
	Where   wall.Place       `json:"where"`
	Opening string           `json:"opening,omitempty"` // its name, at an opening
	Next    string           `json:"next,omitempty"`    // the next run, at a corner
	At      fraction.Length  `json:"at"`                // x on the run
	Kind    wall.BlemishKind `json:"kind"`
	Amount  fraction.Length  `json:"amount"`
	Height  *fraction.Length `json:"height,omitempty"`
	Weight  fraction.Ratio   `json:"weight"`
	Cost    fraction.Ratio   `json:"cost"`
}

// Search says how far the search of layouts went.
type Search struct {
	Layouts int             `json:"layouts"` // layouts looked at
	Proved  bool            `json:"proved"`  // no layout that looks as good needs less, and none that needs as little looks better
	Status  choice.Status   `json:"status"`  // what of this is proved
	Least   bool            `json:"least"`   // no layout of the room needs less than the last choice
	End     choice.EndCause `json:"end"`
	How     nest.Argument   `json:"how"` // what the bound of the whole room rests on
}

// Choice is one entry of the trade-off between sheets and looks.
type Choice struct {
	Sheets       int            `json:"sheets"`
	Bought       int            `json:"bought"` // of the sheets; the others are on hand
	Panels       int            `json:"panels"` // on all walls together
	Cost         money.Amount   `json:"cost"`   // of the whole take-off, as far as prices are known
	BlemishTotal fraction.Ratio `json:"blemish_total"`
	Chosen       bool           `json:"chosen"`
	Proved       bool           `json:"proved"` // its nest is best, as [nest.Bound] says

	// What is proved among all layouts of the room, and what is left open: none that looks as good or
	// better costs less than CostAtLeast or, if it costs no more than this one, needs fewer sheets than
	// SheetsAtLeast; none that needs as little or less has less blemish than BlemishAtLeast.
	Status         choice.Status  `json:"status"`
	SheetsAtLeast  int            `json:"sheets_at_least"`
	CostAtLeast    fraction.Ratio `json:"sheet_cost_at_least"`
	BlemishAtLeast fraction.Ratio `json:"blemish_at_least"`

	// What it takes more than the chosen one, below 0 what it takes less. Sheets on hand are
	// of stock with a count and no price.
	MoreBought int          `json:"more_bought,omitzero"`
	MoreOnHand int          `json:"more_on_hand,omitzero"`
	MoreCost   money.Amount `json:"more_cost,omitzero"` // not known where it is as much

	SeenMost []Blemish `json:"seen_most"` // the two that cost most, seams left out
}

// Priority is one weight or least size that the search used, with its default; both are in Unit.
type Priority struct {
	Name    string         `json:"name"`
	Value   fraction.Ratio `json:"value"`
	Default fraction.Ratio `json:"default"`
	Unit    string         `json:"unit"`
}

// Taped is a point that the job gives by distances from known points, solved.
type Taped struct {
	Path    fault.Path      `json:"path"` // of the point in the job file
	Run     string          `json:"run"`
	Opening string          `json:"opening,omitempty"` // that it is a corner of; none for a height
	Number  int             `json:"number"`            // of the corner or the height, from 1
	At      Point           `json:"at"`                // on the run
	Exact   bool            `json:"exact"`             // the distances meet in an exact point
	Within  fraction.Length `json:"within"`            // if not, the most that it is off
	Closing fraction.Length `json:"closing"`           // by how much the distances miss each other
}
