package finish

import (
	"fmt"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
)

// Work is what is to be finished, as plain quantities: what a plan knows, without where anything is.
// The zero Work needs nothing.
type Work struct {
	Units   fraction.Unit   // of the quantities in the list
	Profile groove.Profile  // for its developed width, its open grooves and the thickness of the panels; 0 is doubted
	Face    fraction.Area   // of all pieces as seen, holes taken out
	Edges   fraction.Length // all edges of all pieces, holes too; a sloped edge may count as its run plus its rise, which is never less
	Pieces  []Piece
	Joints  []Joint
	Boxes   []Box
	Ends    []End
	Sides   fraction.Length // upright sides of windows and other openings that are no box: strips behind boards stand along them
	Sheets  []SheetRow
	Width   fraction.Length // of all runs together: counter and floor to cover
	Highest fraction.Length // of any piece above the datum
	Low     fraction.Length // the least, over all runs, of how high the run's wall reaches above the datum; 0 if not known
	Cooking bool            // a range, cooktop or oven stands at the panels
	Built   int             // year of the house, 0 if not known
	Fitting []string        // one line for each piece in the order of fitting, but for closing pieces, for [Schedule]
	Closing []string        // pieces to measure again on the wall before they are cut, for [Schedule]
	Mitred  []string        // one line for each outside corner with panels on both sides, for [Schedule]
}

// Piece is one piece of panelling by its bounding rectangle.
type Piece struct {
	Width, Height fraction.Length
	// OpeningEdges are the edges of windows and other openings in the piece that are nailed; boxes are not.
	OpeningEdges fraction.Length
}

// board returns one word where the panels are cut from sheets and another where they are boards.
func (w Work) board(sheet, board string) string {
	if w.Profile.Boards {
		return board
	}
	return sheet
}

// JointKind says what meets at a joint.
type JointKind string

// The kinds of joint. A joint round a box is not sealed: its cover hides it, and the box stays open to work on.
const (
	CounterLine   JointKind = "lower line" // on the counter or at the floor
	CabinetLine   JointKind = "upper line" // under cabinets, a cap or a ceiling
	InsideCorner  JointKind = "inside corner"
	OutsideCorner JointKind = "outside corner"
	Seam          JointKind = "seam"
	EndJoint      JointKind = "end"    // against a jamb, a tall cabinet, bare wall
	StepJoint     JointKind = "step"   // the upright side of a step
	WindowJoint   JointKind = "window" // round a window or another opening that is no box
)

// JointKinds are all the kinds in the order in which a list names them.
func JointKinds() []JointKind {
	return []JointKind{CounterLine, CabinetLine, InsideCorner, OutsideCorner, Seam, EndJoint, StepJoint, WindowJoint}
}

// Joint is one joint to be sealed, or several of the same kind and gap together.
type Joint struct {
	Kind   JointKind
	Where  string // for warnings, such as the name of the run
	Length fraction.Length
	Gap    fraction.Length // left open by the plan
	// Grooves says that the grooves of the pattern end open on this joint, as they do at the lower edge of a panel;
	// their ends are then filled too.
	Grooves bool
}

// Box is one electrical box behind the panels. Gangs counts its devices side by side, 1 to 10; 0 stands for 1.
type Box struct {
	Name  string
	Gangs int
}

// End is one end of a run whose panel edge is seen and gets a trim: an exposed end, or an outside corner (once, not for each run).
type End struct {
	Name   string
	Length fraction.Length
	Corner bool // an outside corner, which takes another trim than a flat end
}

// SheetRow is one kind of sheet as the plan uses it. Price is that of one sheet: nil where it is not known, 0 for an offcut on hand.
type SheetRow struct {
	Name   string
	Count  int
	Width  fraction.Length // for the list; 0 where it is not to be told
	Length fraction.Length
	Price  *decimal.Decimal
}

// MaxCount is the greatest number of pieces, joints, boxes and the like in a Work together, and of sheets of one kind.
const MaxCount = 100_000

// MaxLength is the greatest length in a Work: some 158 miles.
var MaxLength = fraction.Inches(10_000_000)

// check refuses what no plan gives.
func (w Work) check(r *reader) {
	length := func(path string, l fraction.Length) {
		if l.Sign() < 0 || MaxLength.Less(l) {
			r.fault(path, l.String(), "want a length from 0 to "+MaxLength.String()+" in")
		}
	}
	if w.Face.Sign() < 0 || w.Face.Compare(MaxLength.Times(MaxLength)) > 0 {
		r.fault("work.face", w.Face.String(), "want an area that is not negative, and less than a town")
	}
	if n := len(w.Pieces) + len(w.Joints) + len(w.Boxes) + len(w.Ends) + len(w.Sheets); n > MaxCount {
		r.fault("work", fmt.Sprint(n), fmt.Sprintf("want at most %d pieces, joints, boxes, ends and sheets together", MaxCount))
		return
	}
	if w.Built < 0 {
		r.fault("work.built", fmt.Sprint(w.Built), "want a year, or 0 where it is not known")
	}
	length("work.edges", w.Edges)
	length("work.width", w.Width)
	length("work.low", w.Low)
	length("work.sides", w.Sides)
	for i, p := range w.Pieces {
		path := fmt.Sprintf("work.pieces[%d]", i)
		length(path+".width", p.Width)
		length(path+".height", p.Height)
		length(path+".opening_edges", p.OpeningEdges)
	}
	for i, j := range w.Joints {
		path := fmt.Sprintf("work.joints[%d]", i)
		if !known(j.Kind) {
			r.fault(path+".kind", string(j.Kind), "a kind of joint")
		}
		length(path+".length", j.Length)
		length(path+".gap", j.Gap)
	}
	for i, b := range w.Boxes {
		r.gangs(fmt.Sprintf("work.boxes[%d]", i), b.Gangs)
	}
	for i, e := range w.Ends {
		length(fmt.Sprintf("work.ends[%d].length", i), e.Length)
	}
	for i, s := range w.Sheets {
		path := fmt.Sprintf("work.sheets[%d]", i)
		length(path+".width", s.Width)
		length(path+".length", s.Length)
		if s.Count < 0 || s.Count > MaxCount {
			r.fault(path+".count", fmt.Sprint(s.Count), fmt.Sprintf("want 0 to %d", MaxCount))
		}
		if s.Price != nil && s.Price.IsNegative() {
			r.fault(path+".price", s.Price.String(), "want a price that is not negative")
		}
	}
	if len(w.Profile.Features) > 0 {
		if err := w.Profile.Validate(); err != nil {
			r.faults = append(r.faults, fault.Under(err, "Work", "Profile"))
		}
	}
}

func known(kind JointKind) bool {
	for _, k := range JointKinds() {
		if k == kind {
			return true
		}
	}
	return false
}
