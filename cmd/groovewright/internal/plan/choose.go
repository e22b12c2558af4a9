package plan

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/finish"
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
		if !m.job.Stock[s.Stock].Limited {
			n.bought++
		}
	}
	return n
}

// choose looks at layouts from the least blemish up and keeps the trade-off of
// looks against sheets: each layout that needs less than all that look better.
// It stops when no later layout can need less. Where that is not proved within
// the budget, layouts of narrower panels are looked at too: they have more
// seams, and sometimes fit fewer sheets.
func (m *maker) choose(ctx context.Context) (candidate, error) {
	budget := m.options.Layouts
	if budget <= 0 {
		budget = DefaultLayouts
	}
	least, how, err := m.leastNeed()
	if err != nil {
		return candidate{}, err
	}
	e := explorer{maker: m, ctx: ctx, least: least, seen: map[string]bool{}}
	if err := e.explore(m.job.Room, budget); err != nil {
		return candidate{}, err
	}
	m.search.Proved = e.proved()
	switch {
	case m.search.Proved:
		m.search.How = how
	case e.all:
		m.search.Proved = true
		m.search.How = "every layout was looked at"
	default:
		for _, room := range m.narrower() {
			if e.proved() {
				break
			}
			if err := e.explore(room, budget/narrowShare); err != nil && !isNoLayout(err) {
				return candidate{}, err
			}
		}
		m.search.How = fmt.Sprintf("stopped after %d layouts; another might need less", m.search.Layouts)
		if e.proved() {
			m.search.How = "no layout can need less: " + how + fmt.Sprintf("; found among layouts of narrower panels, so another that needs as little might look better (%d were looked at)", m.search.Layouts)
		}
	}
	m.chosen = len(m.found) - 1
	if m.options.Prefer == Looks {
		m.chosen = 0
	}
	for m.found[m.chosen].need.unplaced > 0 && m.chosen < len(m.found)-1 {
		m.chosen++
	}
	return m.settle(ctx, least)
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

// The parts of the budgets that go to each width of narrower panels, and to the
// nest of each layout on trial.
const (
	narrowShare = 2
	screenShare = 100
)

// narrower returns the room with its sheets as if they were narrower: by a
// quarter, a third, a half, and as wide as each kind of limited stock that is not
// less than a third. What fits a narrower sheet fits the whole one. Panels
// narrower than that are no panelling but strips, whatever they save: common
// practice, no source.
func (m *maker) narrower() []wall.Room {
	var widest fraction.Length
	for _, s := range m.job.Room.Sheets {
		widest = fraction.Max(widest, s.Width)
	}
	widths := []fraction.Length{widest.Mul(3).Div(4), widest.Mul(2).Div(3), widest.Div(2)}
	for _, s := range m.job.Stock {
		if s.Limited && s.Width.Less(widest) && !s.Width.Less(widest.Div(3)) {
			widths = append(widths, s.Width)
		}
	}
	var rooms []wall.Room
	for _, width := range widths {
		room := m.job.Room
		room.Sheets = slices.Clone(room.Sheets)
		for i := range room.Sheets {
			room.Sheets[i].Width = fraction.Min(room.Sheets[i].Width, width)
		}
		rooms = append(rooms, room)
	}
	return rooms
}

func isNoLayout(err error) bool {
	var none *wall.NoLayoutError
	return errors.As(err, &none)
}

// explorer looks at the layouts of rooms for one plan.
type explorer struct {
	*maker
	ctx   context.Context
	least need
	seen  map[string]bool // parts that have been nested
	all   bool            // the last room had no more layouts
	// broken counts the hard rules that the first layout had to break. No
	// layout may break more, for narrower panels either.
	broken int
}

// proved reports whether nothing can need less than the last one found.
func (e *explorer) proved() bool {
	n := len(e.found)
	return n > 0 && !e.least.less(e.found[n-1].need)
}

// explore looks at no more than budget layouts of the room.
func (e *explorer) explore(room wall.Room, budget int) error {
	n := 0
	e.all = false
	for layout, err := range wall.Layouts(room) {
		if err != nil {
			return err
		}
		if e.search.Layouts == 0 {
			e.broken = layout.Broken
		}
		if layout.Broken > e.broken {
			return nil
		}
		e.search.Layouts++
		problem := e.problem(&layout, e.job.Notches)
		if key := partsKey(problem); !e.seen[key] {
			e.seen[key] = true
			if err := e.consider(e.ctx, layout, problem); err != nil {
				return err
			}
		}
		if n++; e.proved() || n >= budget || e.ctx.Err() != nil {
			return nil
		}
	}
	e.all = true
	return nil
}

// partsKey tells problems apart that differ in more than the order of parts.
func partsKey(p nest.Problem) string {
	var b strings.Builder
	for _, part := range p.Parts {
		fmt.Fprint(&b, part.Width, part.Height, part.LeftPhase, ";")
	}
	return b.String()
}

// consider nests a layout and keeps it if it needs less than every layout that
// looks as good or better.
func (m *maker) consider(ctx context.Context, layout wall.Layout, problem nest.Problem) error {
	at, _ := slices.BinarySearchFunc(m.found, layout.Total, func(c candidate, total fraction.Ratio) int {
		if c.layout.Total.Compare(total) <= 0 {
			return -1
		}
		return 1
	})
	if at > 0 {
		// A bound is cheap: most layouts cannot need less and are not searched.
		lower, err := nest.Lower(problem)
		if err != nil {
			return err
		}
		best := m.found[at-1].need
		if best.unplaced == 0 && (best.cost.Less(lower.Cost) || best.cost == lower.Cost && best.sheets <= lower.Sheets) {
			return nil
		}
	}
	r, err := nest.Search(ctx, problem, nest.Budget{Nodes: m.options.nodes() / screenShare})
	if err != nil {
		return err
	}
	c := candidate{layout, r, m.needOf(r)}
	if at > 0 && !c.need.less(m.found[at-1].need) {
		return nil
	}
	for at > 0 && m.found[at-1].layout.Total == layout.Total {
		at-- // it looks no better and needs more
	}
	later := slices.DeleteFunc(slices.Clone(m.found[at:]), func(d candidate) bool { return !d.need.less(c.need) })
	m.found = append(append(m.found[:at:at], c), later...)
	return nil
}

// short says which pieces the stock does not give.
func (m *maker) short(c candidate) error {
	e := &ShortError{}
	for _, u := range c.nest.Unplaced {
		piece := c.layout.Pieces[u.Part-1]
		e.Pieces = append(e.Pieces, fmt.Sprintf("piece %s on %q: %s", piece.Label, m.job.Room.Runs[piece.Run].Name, u.Why))
	}
	return e
}

// panels counts the panels of the layout.
func (c *candidate) panels() int {
	n := 0
	for _, r := range c.layout.Runs {
		n += len(r.Panels)
	}
	return n
}

// choices tells the trade-off, the best-looking entry first. The cost of each
// is the total of its whole take-off, as far as prices are known.
func (m *maker) choices() ([]Choice, error) {
	var out []Choice
	for i := range m.found {
		c := &m.found[i]
		if c.need.unplaced > 0 {
			continue
		}
		list, err := finish.TakeOff(m.work(c), m.job.Finish)
		if err != nil {
			return nil, err
		}
		out = append(out, Choice{
			Sheets: c.need.sheets, Bought: c.need.bought, Panels: c.panels(), Cost: list.Total, BlemishTotal: c.layout.Total,
			Chosen: i == m.chosen, Proved: c.nest.Bound.Proved,
		})
	}
	taken := slices.IndexFunc(out, func(c Choice) bool { return c.Chosen })
	k := 0
	for i := range m.found {
		if m.found[i].need.unplaced == 0 {
			out[k].Says = says(out[k], out[taken]) + " " + m.seen(&m.found[i].layout)
			k++
		}
	}
	return out, nil
}

// says tells what a choice takes, and what more or less than the one taken.
func says(c, taken Choice) string {
	text := count(c.Bought, "sheet") + " to buy"
	if onHand := c.Sheets - c.Bought; onHand > 0 {
		text += fmt.Sprintf(" and %d on hand", onHand)
	}
	text += ", " + count(c.Panels, "panel")
	if c.Chosen {
		return "Taken: " + text + "."
	}
	differs := func(more, less string, by int) string {
		if by < 0 {
			return fmt.Sprintf("%d %s", -by, less)
		}
		return fmt.Sprintf("%d %s", by, more)
	}
	switch by := c.Bought - taken.Bought; {
	case by != 0:
		text += ", " + differs("more than taken", "fewer than taken", by)
	case c.Sheets != taken.Sheets:
		text += ", " + differs("more on hand", "fewer on hand", c.Sheets-taken.Sheets)
	}
	switch d := c.Cost.Sub(taken.Cost); d.Sign() {
	case 1:
		text += fmt.Sprintf(" (%s more money)", d.StringFixed(2))
	case -1:
		text += fmt.Sprintf(" (%s less money)", d.Neg().StringFixed(2))
	}
	if c.BlemishTotal.Less(taken.BlemishTotal) {
		return text + "; it looks better."
	}
	return text + "; it looks worse."
}

// seen names the two terms of a layout that cost most, seams left out.
func (m *maker) seen(l *wall.Layout) string {
	var worst []wall.Blemish
	for range 2 {
		var most *wall.Blemish
		for k := range l.Blemishes {
			b := &l.Blemishes[k]
			if b.Kind == "seam" || b.Amount.IsZero() || len(worst) > 0 && worst[0] == *b {
				continue
			}
			if most == nil || most.Cost().Less(b.Cost()) {
				most = b
			}
		}
		if most != nil {
			worst = append(worst, *most)
		}
	}
	if len(worst) == 0 {
		return "No cut feature and no corner out of step that costs anything; only seams are seen."
	}
	tape := m.tape()
	var parts []string
	for _, b := range worst {
		run := m.job.Room.Runs[b.Run].Name
		switch b.Kind {
		case "inside corner":
			parts = append(parts, fmt.Sprintf("the pattern %s out of step in the %s of %s", tape.Format(b.Amount), b.Where, run))
		case "break":
			parts = append(parts, fmt.Sprintf("the pattern %s out of step at the break of %s", tape.Format(b.Amount), run))
		case "weak strip":
			parts = append(parts, fmt.Sprintf("a %s of %s too narrow by %s", b.Where, run, tape.Format(b.Amount)))
		default:
			parts = append(parts, fmt.Sprintf("a feature cut %s from its edge at the %s of %s", tape.Format(b.Amount), b.Where, run))
		}
	}
	return "Seen most: " + strings.Join(parts, "; ") + "."
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// leastNeed returns what no layout of the room can need less than, and why.
func (m *maker) leastNeed() (least need, how string, err error) {
	strips, err := m.job.Room.Strips()
	if err != nil {
		return need{}, "", err
	}
	of := make([]nest.Strip, len(strips))
	for i, s := range strips {
		of[i] = nest.Strip(s)
	}
	l, err := nest.LowerStrips(m.problem(&wall.Layout{}, false), m.job.Room.Gaps.Seam, of)
	return need{cost: l.Cost, bought: l.Bought, sheets: l.Sheets}, l.How, err
}
