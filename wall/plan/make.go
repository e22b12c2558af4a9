package plan

import (
	"context"
	"errors"
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

// Preference says which choice of the trade-off a plan takes.
type Preference uint8

const (
	Sheets Preference = iota // the least money and fewest sheets, and of those the least blemish
	Looks                    // the least blemish, and of those the least money and fewest sheets
)

var preferences = enum.Of[Preference]("sheets", "looks")

// String returns the word of the preference.
func (p Preference) String() string { return preferences.String(p) }

// MarshalText returns the word of the preference.
func (p Preference) MarshalText() ([]byte, error) { return preferences.Marshal(p) }

// UnmarshalText reads the word of a preference.
func (p *Preference) UnmarshalText(text []byte) error { return preferences.Unmarshal(text, p) }

// Options are what is asked of a plan besides the job. The zero Options are the usual ones.
type Options struct {
	Prefer Preference    // which choice of the front to take; sheets by default
	Budget choice.Budget // of the search
}

// Make plans the job. It checks the nest that it returns with nest.Verify.
//
// A job that is not valid fails as [Job.Validate] does, one that cannot be done as given fails with
// a *choice.ShortError or a *wall.NoLayoutError, one whose numbers are too fine to be calculated
// exactly with a *fraction.OverflowError. A context that ends once there is a layout only ends the
// search, and the plan says so. The cost is that of choice.Explore.
func Make(ctx context.Context, j Job, o Options) (p Plan, err error) {
	defer fraction.Catch(&err)
	m, err := explore(ctx, j, o)
	if err != nil {
		return Plan{}, err
	}
	return m.plan(m.taken)
}

// MakeEach plans the job as [Make] does and returns a plan for each choice of the trade-off, in the
// order of [Plan.Choices]: the first is what [Looks] takes, the last what [Sheets] takes. Each says
// of itself that it is the chosen one.
func MakeEach(ctx context.Context, j Job, o Options) (plans []Plan, err error) {
	defer fraction.Catch(&err)
	m, err := explore(ctx, j, o)
	if err != nil {
		return nil, err
	}
	for i := range m.choices.Front {
		plans = append(plans, fraction.Must(m.plan(i)))
	}
	return plans, nil
}

// explore searches the choices of a job.
func explore(ctx context.Context, j Job, o Options) (m maker, err error) {
	if err := j.Validate(); err != nil {
		return maker{}, err
	}
	m.job = j
	if m.choices, err = choice.Explore(ctx, j.Room, o.Budget); err == nil && o.Prefer != Looks {
		m.taken = len(m.choices.Front) - 1
	}
	if none := new(wall.NoLayoutError); errors.As(err, &none) {
		if over, _ := none.Over.Round(j.Mark, fraction.Down); over.Sign() > 0 {
			err = fmt.Errorf("%w: by %s at least", err, fraction.Tape{Mark: j.Mark, Unit: j.Units}.Format(over))
		}
	}
	return m, err
}

// plan makes the plan of choice i.
func (m *maker) plan(i int) (Plan, error) {
	m.taken, m.chosen = i, m.choices.Front[i]
	if err := nest.Verify(fraction.Must(choice.Nesting(m.job.Room, &m.chosen.Layout)), m.chosen.Nest); err != nil {
		return Plan{}, fmt.Errorf("the nest does not hold, which is a fault of this program: %w", err)
	}
	made := m.frame()
	made.Taped = fraction.Must(m.job.Located())
	made.Runs, made.Pieces = m.runs(), m.pieces()
	made.Sheets = m.sheets(made)
	for i := range made.Sheets {
		made.wait(&made.Sheets[i])
	}
	for r, seams := range m.seams(&made) {
		made.Runs[r].Seams = seams
	}
	made.Warnings = m.warnings(&made)
	if err := m.tradeOff(&made); err != nil {
		return Plan{}, fault.Under(err, "Finish")
	}
	return made, nil
}

// maker holds what a plan is made from.
type maker struct {
	job     Job
	choices choice.Choices
	taken   int // number of the chosen one
	chosen  choice.Choice
}

// frame returns a plan with what is taken over from the job and the search.
func (m *maker) frame() Plan {
	j := &m.job
	_, mirrored := j.Profile.Mirror()
	p := Plan{
		Format: Format, Title: j.Title, Units: j.Units, Tape: j.Mark, Snap: j.Snap, Scribe: j.Scribe, Closed: j.Closed,
		Profile: Profile{Profile: j.Profile, Pitch: j.Profile.Pitch(), Mirrored: mirrored}, Saw: Saw{j.Saw, j.Sawing}, Gaps: j.Gaps,
		Bound:     m.bound(),
		Blemishes: m.blemishes(m.chosen.Layout.Blemishes), BlemishTotal: m.chosen.Layout.Total,
		Search: Search{Layouts: m.choices.Layouts, Proved: m.chosen.Status == choice.BothProved, Status: m.chosen.Status,
			Least: m.choices.Sheets().Need.Compare(m.choices.Least) <= 0, End: m.choices.End, How: m.choices.How},
	}
	p.Saw.Face = j.Sawing.face()
	for i, s := range j.Stock {
		p.Stock = append(p.Stock, Stock{s, usedOf(&m.chosen, i)})
	}
	standard := wall.DefaultPriorities(j.Units).List()
	for i, w := range j.Priorities.List() {
		p.Priorities = append(p.Priorities, Priority{Name: w.Name, Unit: w.Unit, Value: w.Value, Default: standard[i].Value})
	}
	return p
}

// bound returns what is proved about the number of sheets. Where kinds to buy differ in price, the
// nest that costs least may take more sheets than are needed, and one of as few may cost less.
func (m *maker) bound() Bound {
	b := m.chosen.Nest.Bound
	prices, counted := map[fraction.Ratio]bool{}, false
	for _, s := range m.job.Stock {
		if s.Count != nil {
			counted = true
			continue
		}
		price, _ := s.Price.Ratio() // where it is not known, nest takes it as 0
		prices[price] = true
	}
	met := b.Sheets == len(m.chosen.Nest.Sheets)
	return Bound{SheetsAtLeast: b.Sheets, Proved: met && !counted || b.Proved && (met || counted && len(prices) < 2), How: b.How}
}

// shown returns what an edge leaves to be seen whose foot stands at the phase and whose top stands
// lean to the right of it.
func (m *maker) shown(phase, lean fraction.Length, keep groove.Side) Shown {
	f, width, err := m.job.Profile.Shown(phase, keep)
	s := Shown{Feature: f.Kind, Width: fraction.Must(width, err), Of: f.Width}
	for i, c := range fraction.Must(m.job.Profile.Crossed(phase, lean, keep)) {
		if i == 0 {
			s = Shown{Feature: c.Feature.Kind, Width: c.Width, Of: c.Feature.Width}
		}
		s.Across = append(s.Across, c.Feature.Kind)
	}
	return s
}
