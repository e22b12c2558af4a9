package finish

import (
	"fmt"
	"math/big"
	"reflect"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
)

// Work is what is to be finished, as quantities without a place. The zero Work needs nothing.
type Work struct {
	Units   fraction.Unit   // of the quantities in the list
	Mark    fraction.Length // the smallest of the tape; 0 if not known
	Profile groove.Profile  // for developed width and open grooves; its thickness should be known
	Face    fraction.Area   // of all pieces as seen, holes taken out
	Up      fraction.Area   // of panels that are on the wall already: the last coat covers them too
	Edges   fraction.Length // all edges, holes too
	Pieces  []Piece
	Again   []Piece // on the wall already, which come off and go up again: adhesive and nails hold them too
	Joints  []Joint
	Boxes   []Box
	InWall  bool // cables or pipes lie in the wall at openings, which nails keep off
	Ends    []End
	Sides   fraction.Length // upright, of openings but boxes: strips behind boards stand there
	Sheets  []Sheet
	Covers  []Covering
	Width   fraction.Length // of all runs together, and what stairs along them rise: counter and floor to cover
	Highest fraction.Length // of any piece above the datum
	Low     fraction.Length // how high the lowest run reaches above the datum; 0 if not known
	Cooking bool            // a range, cooktop or oven stands at the panels
	Built   int             // year of the house; 0, not known, counts as old
	Fitting []string        // [Schedule]: labels of the pieces in the order of fitting
	Closing []string        // [Schedule]: those of them to measure on the wall before cutting
	Mitred  bool            // the panels at outside corners are mitred
}

// Piece is one piece of panelling by its bounding rectangle and the area of its own shape, holes
// taken out; 0 stands for that of the rectangle.
type Piece struct {
	Width, Height fraction.Length
	Area          fraction.Area
	OpeningEdges  fraction.Length // of openings in the piece that have a frame to nail to, as windows have
	Nails         *int            // how many it takes, where it is known at which places; nil: counted by its size
	Crossed       *Crossed        // what a board crosses, where it is known; nil: counted by its size
}

// Crossed is how often a board crosses level supports, and how far it lies on them together.
type Crossed struct {
	Count  int
	Length fraction.Length
}

// area returns the area of the piece, and mean how high it is on average.
func (p Piece) area() *big.Rat {
	if p.Area.Rat().Sign() > 0 {
		return p.Area.Rat()
	}
	return mul(p.Width.Rat(), p.Height.Rat())
}

func (p Piece) mean() *big.Rat { return quo(p.area(), p.Width.Rat()) }

// JointKind says what meets at a joint. Its zero value is no joint.
type JointKind uint8

// The kinds of joint, in the order in which a list names them. A joint round a box is not sealed:
// its cover hides it, and the box stays open to work on.
const (
	NoJoint     JointKind = iota
	CounterLine           // on the counter or at the floor
	CabinetLine           // under cabinets, a cap or a ceiling
	InsideCorner
	OutsideCorner
	Seam
	EndJoint    // against a jamb, a tall cabinet, bare wall
	StepJoint   // the upright side of a step
	WindowJoint // round a window or another opening that is no box
)

var jointKinds = enum.Of[JointKind]("", "lower line", "upper line", "inside corner", "outside corner", "seam", "end", "step", "window")

// String returns the word of the kind of joint, or its number in brackets where it has none.
func (k JointKind) String() string { return jointKinds.String(k) }

// MarshalText writes the word of the kind of joint, and fails where it has none.
func (k JointKind) MarshalText() ([]byte, error) { return jointKinds.Marshal(k) }

// UnmarshalText reads the word of a kind of joint.
func (k *JointKind) UnmarshalText(t []byte) error { return jointKinds.Unmarshal(t, k) }

// Joint is one joint to be sealed, or several of the same kind and gap together.
type Joint struct {
	Kind    JointKind
	Run     string          // its name, for warnings
	Opening string          // its name, round one
	Length  fraction.Length // of all of them together
	Gap     fraction.Length // left open by the plan
	Grooves bool            // grooves end open here, as at a lower edge, and are filled
	Hidden  bool            // a trim covers it: it is not sealed
	Alone   bool            // of an inside corner: the wall beside it has no panels and stays bare
}

// Box is one electrical box behind the panels, with 1 to 10 devices side by side; 0 stands for 1.
type Box struct {
	Name  string
	Gangs int
	Up    bool // behind a panel that is on the wall already: nothing is bought again for it
}

// End is an end of a run that is seen and gets a trim. An outside corner counts once, not by run.
type End struct {
	Run    string // its name
	Length fraction.Length
	Left   bool // the left end of the run; neither this nor Right: it is not known which
	Right  bool
	Corner bool // an outside corner, which takes another trim than a flat end
	Up     bool // of a panel that is on the wall already: its trim was bought with it
}

// Covering is a length in one go of a trim that hides edges, such as a baseboard, of one run. What it hides is Hidden in
// the Joints.
type Covering struct {
	Name   string
	Along  string // the name of a run or an opening
	Length fraction.Length
}

// Sheet is one kind of sheet or board as the plan uses it.
type Sheet struct {
	Name          string
	Count         int             // at least 1
	Width, Length fraction.Length // for the list; 0 where it is not to say
	Price         money.Amount    // of one; 0 for one that costs nothing
	OnHand        bool            // there is no more of it to buy
}

// MaxCount is the most pieces, joints, boxes and the like in a Work together, and sheets of a kind.
const MaxCount = 100_000

// maxLength is the greatest length in a Work: some 158 miles.
var maxLength = fraction.Inches(10_000_000)

// check returns what no plan gives.
func (w Work) check() error {
	r := &reader{}
	if n := len(w.Pieces) + len(w.Again) + len(w.Joints) + len(w.Boxes) + len(w.Ends) + len(w.Sheets) + len(w.Covers) + len(w.Fitting) + len(w.Closing); n > MaxCount {
		r.Add(fmt.Sprint(n), fmt.Sprintf("at most %d pieces, joints, boxes, ends, sheets, trims and labels together", MaxCount), "Work")
		return r.Err()
	}
	r.fields([]any{"Work"}, reflect.ValueOf(&w).Elem(), reflect.Value{})
	for i, p := range w.held() {
		if p.Area.Rat().Cmp(mul(p.Width.Rat(), p.Height.Rat())) > 0 {
			field := "Pieces"
			if n := len(w.Pieces); i >= n {
				field, i = "Again", i-n
			}
			r.Add(p.Area.String(), "at most the area of the rectangle", "Work", field, i, "Area")
		}
	}
	if len(w.Profile.Features) > 0 {
		r.Join(w.Profile.Validate(), "Work", "Profile")
	}
	return r.Err()
}

// held returns what adhesive and nails hold.
func (w Work) held() []Piece { return slices.Concat(w.Pieces, w.Again) }

// counterReach is the most that panels above a counter reach up as a rule: to wall cabinets about
// 18 in, to a hood 30; judgment.
var counterReach = fraction.Inches(30)

// onFloor guesses that the datum is the floor: every run reaches above counterReach, and nothing is
// cooked there. Judgment; a datum that is given is not guessed at.
func (w Work) onFloor() bool { return counterReach.Less(w.Low) && !w.Cooking }
