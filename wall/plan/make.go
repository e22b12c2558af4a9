package plan

import (
	"context"
	"fmt"

	"example.com/groovewright/finish"
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

// Options are what is asked of a plan that is not part of the job. The zero Options are the usual
// ones.
type Options struct {
	Prefer Preference
	Budget choice.Budget // of the search
}

// Make plans the job. It judges the nest that it returns by nest.Verify.
//
// A job that cannot be done as given fails with a *choice.ShortError or a *wall.NoLayoutError, one
// whose numbers are too fine to be calculated exactly with a *fraction.OverflowError. A context
// that ends once there is a layout only ends the search, and the plan says so. The cost is that of
// choice.Explore.
func Make(ctx context.Context, j Job, o Options) (p Plan, err error) {
	defer fraction.Catch(&err)
	if err := j.Validate(); err != nil {
		return Plan{}, err
	}
	m := maker{job: j}
	problem := choice.Problem{Room: m.job.Room}
	if m.choices, err = choice.Explore(ctx, problem, o.Budget); err != nil {
		return Plan{}, err
	}
	m.chosen = m.choices.Sheets()
	if o.Prefer == Looks {
		m.chosen = m.choices.Looks()
	}
	m.layout, m.nest = m.chosen.Layout, m.chosen.Nest
	nesting, err := problem.Nesting(&m.layout)
	if err != nil {
		return Plan{}, err
	}
	if err := nest.Verify(nesting, m.nest); err != nil {
		return Plan{}, fmt.Errorf("the nest does not hold, which is a fault of this program: %w", err)
	}
	p = m.frame()
	if p.Taped, err = j.Located(); err != nil {
		return Plan{}, err
	}
	p.Runs = m.runs()
	p.Pieces = m.pieces()
	p.Sheets = m.sheets()
	p.Bound = Bound{SheetsAtLeast: m.nest.Bound.Sheets, Proved: m.nest.Bound.Proved, How: m.nest.Bound.How}
	p.Blemishes = m.blemishes(m.layout.Blemishes)
	p.BlemishTotal = m.layout.Total
	p.Search = m.search()
	if p.Choices, err = m.tradeOff(); err != nil {
		return Plan{}, err
	}
	if p.Warnings, err = m.warnings(p.Pieces); err != nil {
		return Plan{}, err
	}
	return p, m.finish(&p)
}

// maker holds what a plan is made from.
type maker struct {
	job     Job
	choices choice.Choices
	chosen  choice.Choice
	layout  wall.Layout // of the choice
	nest    nest.Result // of the choice
}

// search says how far the search went.
func (m *maker) search() Search {
	return Search{Layouts: m.choices.Layouts, Proved: m.chosen.Status == choice.BothProved, Status: m.chosen.Status, End: m.choices.End, How: m.choices.How}
}

// frame returns a plan with what comes from the job alone.
func (m *maker) frame() Plan {
	j := &m.job
	profile := j.Room.Profile
	_, mirrored := profile.Mirror()
	p := Plan{
		Format: Format, Title: j.Title, Units: j.Units.String(), Tape: j.Room.Mark, Closed: j.Room.Closed,
		Profile: Profile{Profile: profile, Pitch: profile.Pitch(), Mirrored: mirrored},
		Saw:     j.Room.Saw, Gaps: j.Room.Gaps,
	}
	for i, s := range j.Room.Stock {
		stock := Stock{Stock: s}
		for _, sheet := range m.nest.Sheets {
			if sheet.Stock == i {
				stock.Used++
			}
		}
		p.Stock = append(p.Stock, stock)
	}
	standard := DefaultPriorities(j.Units).List()
	for i, w := range j.Priorities.List() {
		p.Priorities = append(p.Priorities, Priority{Name: w.Name, Unit: w.Unit, Value: w.Value, Default: standard[i].Value})
	}
	return p
}

// finish adds what follows from the layout: the take-off, the order of work and the cautions.
func (m *maker) finish(p *Plan) error {
	work := m.work(&m.chosen)
	list, doubts, err := finish.TakeOff(work, m.job.Finish)
	if err != nil {
		return fault.Under(err, "Finish")
	}
	p.List, p.Warnings = list, append(p.Warnings, doubts...)
	p.Order, p.Cautions = finish.Schedule(work, m.job.Finish), finish.Cautions(work, m.job.Finish)
	return nil
}

// shown returns what a cut at the phase leaves to be seen.
func (m *maker) shown(phase fraction.Length, keep groove.Side) Shown {
	f, width, err := m.job.Room.Profile.Shown(phase, keep)
	return Shown{Feature: f.Kind, Width: fraction.Must(width, err), Of: f.Width}
}
