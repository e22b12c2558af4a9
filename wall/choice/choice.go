package choice

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"math/bits"
	"math/rand/v2"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// Problem is a room with its stock and its saw.
type Problem = wall.Room

// Nesting returns the nesting problem of the pieces of a layout, each as its bounding rectangle with what is left on it
// to scribe. It
// fails with a *fraction.OverflowError for numbers that are too large or too fine.
func Nesting(room Problem, l *wall.Layout) (n nest.Problem, err error) {
	defer fraction.Catch(&err)
	if l == nil {
		l = &wall.Layout{}
	}
	n = nest.Problem{Stock: room.Stock, Saw: room.Saw, Pattern: nest.PatternOf(room.Profile)}
	for _, piece := range l.Pieces {
		part := fraction.Must(piece.Part())
		part.LeftPhase = groove.Modulo(part.LeftPhase, room.Profile.Pitch())
		n.Parts = append(n.Parts, part)
	}
	return n, nil
}

// Budget is how long a search may go on. It counts steps and not time, so that the same problem
// always gives the same front. A search of more effort goes on where one of less ended: its front is
// never worse.
type Budget struct {
	Effort  int // rounds of the search, and the measure of Steps; 1 if 0 or less
	Steps   int // times Effort, a search of less goes on for further rounds while anything is open; [DefaultSteps] if 0 or less
	Layouts int // looked at in a round to close the front's gaps, offcuts' in proportion; [DefaultLayouts] if 0 or less
	Nodes   int // steps that the nest of a choice may take for each round; [DefaultNodes] if 0 or less
}

// The steps where a [Budget] gives none.
const (
	DefaultSteps   = 4_000_000 // a second or two
	DefaultLayouts = 240
	DefaultNodes   = 400_000
)

// Need is what a nest takes. Needs are compared field by field, the first difference decides.
type Need struct {
	Cost   fraction.Ratio // money for the sheets with a price
	Bought int            // sheets of stock without a count
	Sheets int            // with those on hand
}

// Compare returns -1 if a needs less than b, 1 if it needs more, and 0 if both need the same.
func (a Need) Compare(b Need) int {
	if c := a.Cost.Compare(b.Cost); c != 0 {
		return c
	}
	return slices.Compare([]int{a.Bought, a.Sheets}, []int{b.Bought, b.Sheets})
}

// Status says what is proved of a choice.
type Status uint8

const (
	Open        Status = iota // nothing is proved
	NeedProved                // no layout that looks as good or better needs less
	LooksProved               // no layout that needs as little or less looks better
	BothProved                // both
)

var statuses = enum.Of[Status]("open", "need", "looks", "both")

// String returns the word of the status.
func (s Status) String() string { return statuses.String(s) }

// MarshalText returns the word of the status.
func (s Status) MarshalText() ([]byte, error) { return statuses.Marshal(s) }

// UnmarshalText reads the word of a status.
func (s *Status) UnmarshalText(text []byte) error { return statuses.Unmarshal(text, s) }

// Choice is a layout with its nest.
type Choice struct {
	Layout wall.Layout
	Nest   nest.Result
	Need   Need
	Status Status

	// What is left open: no layout that looks as good or better needs less than LeastNeed, and none
	// that needs as little or less has less blemish than LeastBlemish. Where it is proved that there is
	// none better these are its own need and blemish.
	LeastNeed    Need
	LeastBlemish fraction.Ratio
}

// complete reports whether the stock gives every piece.
func (c *Choice) complete() bool { return len(c.Nest.Unplaced) == 0 }

// Choices is the trade-off of a room.
type Choices struct {
	// Front has the choices that no other beats in both need and looks, from the least blemish up.
	// There is at least one.
	Front []Choice

	Least   Need          // no layout of the room needs less; that of the last choice where this is proved
	How     nest.Argument // what the bound of the whole room rests on; End says whether the last choice meets it
	Layouts int           // how many layouts were looked at
	End     EndCause      // why the search ended
}

// Looks returns the choice with the least blemish; the zero Choice where there is none.
func (c Choices) Looks() Choice { return c.at(0) }

// Sheets returns the choice with the least need; the zero Choice where there is none.
func (c Choices) Sheets() Choice { return c.at(len(c.Front) - 1) }

func (c Choices) at(i int) (found Choice) {
	if len(c.Front) > 0 {
		found = c.Front[i]
	}
	return found
}

// EndCause says why a search ended.
type EndCause uint8

const (
	BudgetSpent    EndCause = iota // the budget was spent
	BoundMet                       // the last choice meets the bound of the room
	LayoutsSpent                   // every layout of the room was looked at
	ContextStopped                 // the context ended first
	GapsClosed                     // every layout was looked at that bounds do not exclude from the front
)

var endCauses = enum.Of[EndCause]("budget spent", "bound met", "every layout", "stopped", "every open layout")

// String returns the word of the cause.
func (e EndCause) String() string { return endCauses.String(e) }

// MarshalText returns the word of the cause.
func (e EndCause) MarshalText() ([]byte, error) { return endCauses.Marshal(e) }

// UnmarshalText reads the word of a cause.
func (e *EndCause) UnmarshalText(text []byte) error { return endCauses.Unmarshal(text, e) }

// ShortError says that no nest of all pieces was found for any layout that was looked at.
type ShortError struct {
	Left    []LeftOver // of the layout that leaves least over
	OnHand  int        // sheets of stock with a count
	Buys    bool       // there is also stock without a count, bought as needed
	Layouts int        // how many layouts were looked at
	Least   int        // sheets that every layout needs at least, were there enough
	Proved  bool       // there is no layout that the stock is enough for
	Stopped bool       // the context ended first
}

// LeftOver is a piece that the stock did not give.
type LeftOver struct {
	Piece string // its label
	Run   string // the name of its run
	Why   nest.Reason
	Needs fraction.Length // the size that Why speaks of, else 0
}

// mostLeft is how many pieces an error names.
const mostLeft = 5

// Error returns one line.
func (e *ShortError) Error() string {
	text := "the stock is not enough for any layout"
	if !e.Proved {
		text = fmt.Sprintf("no plan was found: the stock was not enough for any of %d layouts that were looked at, and others were not", e.Layouts)
		if e.Stopped {
			text += ", as the search was stopped"
		}
	}
	text += "; "
	if e.Least > e.OnHand {
		text += fmt.Sprintf("at least %d needed, ", e.Least)
	}
	text += fmt.Sprintf("%d on hand", e.OnHand)
	if e.Buys {
		text += ", as many as needed to buy"
	}
	text += fmt.Sprintf("; pieces left over: %d", len(e.Left))
	for i, l := range e.Left {
		if i == mostLeft {
			return text + ", ..."
		}
		text += fmt.Sprintf(", piece %s on %q (%s", l.Piece, l.Run, l.Why)
		if !l.Needs.IsZero() {
			text += fmt.Sprintf(": %s in", l.Needs)
		}
		text += ")"
	}
	return text
}

// Explore finds the trade-off of a room within a budget. A nil context never ends.
//
// The cost is that of wall.Layouts for each order of layouts, and of nest.Search for each layout
// that a bound does not rule out.
func Explore(ctx context.Context, room Problem, b Budget) (c Choices, err error) {
	defer fraction.Catch(&err)
	if ctx == nil {
		ctx = context.Background()
	}
	b.Effort = max(1, b.Effort)
	b.Steps = cmp.Or(max(b.Steps, 0), DefaultSteps)
	b.Layouts, b.Nodes = cmp.Or(max(b.Layouts, 0), DefaultLayouts), cmp.Or(max(b.Nodes, 0), DefaultNodes)
	m, err := wall.NewModel(ctx, room)
	if err != nil {
		return Choices{}, err
	}
	if len(room.Stock) >= bits.UintSize {
		return explore(ctx, m, room, b, nil, nil)
	}
	k := kinds{ctx: ctx, model: m, room: room, budget: b, known: map[uint]explored{}}
	set := k.useful()
	c, err = k.explore(set, nil)
	for i, f := range c.Front {
		c.Front[i] = f.restocked(of(set), of(1<<len(room.Stock)-1))
	}
	return c, err
}

// explore finds the trade-off of a room, of which m is the model. Choices that others found are taken over from fewer, where
// it is not nil.
func explore(ctx context.Context, m *wall.Model, room Problem, b Budget, fewer func(ruling) ([]Choice, error), noneOf ruling) (c Choices, err error) {
	defer fraction.Catch(&err)
	e := explorer{ctx: ctx, room: room, model: m, budget: b, fewer: fewer, noneOf: noneOf, dice: rand.New(rand.NewPCG(1, 0)), nested: map[string]nested{}, between: map[[2]fraction.Ratio]*order{}}
	defer e.close()
	if err := e.search(); err != nil {
		if len(e.found) == 0 || ctx.Err() == nil || !errors.Is(err, ctx.Err()) {
			return Choices{}, err
		}
		e.end = ContextStopped // the best so far counts
	}
	if e.ruledOut() {
		return e.choices()
	}
	if err := e.searchEnds(); err != nil {
		return Choices{}, err
	}
	return e.choices()
}
