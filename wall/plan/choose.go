package plan

import (
	"context"
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// candidate is a layout with its nest.
type candidate struct {
	layout wall.Layout
	nest   nest.Result
	need   need
}

// need is what a nest takes, the first difference deciding.
type need struct {
	unplaced int
	cost     fraction.Ratio
	bought   int // sheets of which there are as many as needed
	sheets   int
}

func (a need) less(b need) bool {
	switch c := a.cost.Compare(b.cost); {
	case a.unplaced != b.unplaced:
		return a.unplaced < b.unplaced
	case c != 0:
		return c < 0
	case a.bought != b.bought:
		return a.bought < b.bought
	}
	return a.sheets < b.sheets
}

func (m *maker) needOf(r nest.Result) need {
	n := need{unplaced: len(r.Unplaced), cost: r.Cost, sheets: len(r.Sheets)}
	for _, s := range r.Sheets {
		if m.job.Room.Stock[s.Stock].Count == nil {
			n.bought++
		}
	}
	return n
}

// choose looks at layouts from the least blemish up and keeps the trade-off of
// looks against sheets: each layout that needs less than all that look better.
// It stops when no later layout can need less. Where that is not proved within
// the budget, layouts that take little are looked at too, and layouts of narrower
// panels: they have more seams, and sometimes fit fewer sheets.
func (m *maker) choose(ctx context.Context) (candidate, error) {
	budget := m.options.Layouts
	if budget <= 0 {
		budget = DefaultLayouts
	}
	strips, err := m.roomStrips()
	if err != nil {
		return candidate{}, err
	}
	least, how, err := m.leastNeed(strips)
	if err != nil {
		return candidate{}, err
	}
	e := explorer{maker: m, ctx: ctx, strips: strips, least: least, how: how, seen: map[string]bool{}}
	defer e.close()
	if err := e.explore(m.job.Room, budget); err != nil {
		return candidate{}, err
	}
	m.search.Proved = e.proved()
	switch {
	case m.search.Proved:
		m.search.How = e.how
	case e.all:
		m.search.Proved = true
		m.search.How = "every layout was looked at"
	default:
		if err := e.exploreThrifty(budget / thriftyShare); err != nil {
			return candidate{}, err
		}
		for _, room := range m.narrower() {
			if e.proved() {
				break
			}
			if err := e.explore(room, budget/narrowShare); err != nil && !isNoLayout(err) {
				return candidate{}, err
			}
		}
		if err := e.weigh(budget / weighShare); err != nil {
			return candidate{}, err
		}
		m.search.How = fmt.Sprintf("stopped after %d layouts; another might need less", m.search.Layouts)
		if e.proved() {
			m.search.How = "no layout can need less: " + e.how + fmt.Sprintf("; found among layouts that take little, so another that needs as little might look better (%d were looked at)", m.search.Layouts)
		}
	}
	m.chosen = len(m.found) - 1
	if m.options.Prefer == Looks {
		m.chosen = 0
	}
	for m.found[m.chosen].need.unplaced > 0 && m.chosen < len(m.found)-1 {
		m.chosen++
	}
	return m.settle(ctx, e.least)
}

// settle searches the nest of the chosen layout with the whole budget.
func (m *maker) settle(ctx context.Context, least need) (candidate, error) {
	c := &m.found[m.chosen]
	if !c.nest.Bound.Proved {
		r, err := nest.Search(ctx, m.problem(&c.layout, m.job.Notches), nest.Budget{Nodes: m.options.nodes()})
		if err != nil {
			return *c, err
		}
		if n := m.needOf(r); !c.need.less(n) {
			c.nest, c.need = r, n
		}
	}
	if !m.job.Notches && least.less(c.need) {
		if err := m.tryNotches(ctx, c); err != nil {
			return *c, err
		}
	}
	if c.need.unplaced > 0 {
		return *c, m.short(*c)
	}
	return *c, nil
}

// tryNotches notes whether the chosen layout would need less if pieces were
// sawn out of the notches of stepped ones.
func (m *maker) tryNotches(ctx context.Context, c *candidate) error {
	r, err := nest.Search(ctx, m.problem(&c.layout, true), nest.Budget{Nodes: m.options.nodes() / screenShare})
	if err != nil {
		return err
	}
	if n := m.needOf(r); n.less(c.need) {
		m.notchHint = []Warning{{"saw.notches", fmt.Sprintf(
			"sawing pieces out of the notches of stepped ones would do with %s to buy instead of %d: give \"notches\": true under saw to plan it so",
			count(n.bought, "sheet"), c.need.bought)}}
	}
	return nil
}

// The parts of the budgets that go to each worth of the pieces, to each width of
// narrower panels, to each weight between looks and worth, and to the nest of each
// layout on trial; and how many worths and weights are tried.
const (
	thriftyShare = 4
	narrowShare  = 2
	weighShare   = 4
	screenShare  = 100
	worthsTried  = 3
	weightsTried = 4
)
