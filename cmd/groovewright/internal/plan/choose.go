package plan

import (
	"context"
	"fmt"
	"strings"

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

// choose looks at layouts from the least blemish up and keeps each that needs
// less than all before it: the trade-off of looks against sheets. It stops when
// no later layout can need less.
func (m *maker) choose(ctx context.Context) (candidate, error) {
	budget := m.options.Layouts
	if budget <= 0 {
		budget = DefaultLayouts
	}
	least, err := m.leastNeed()
	if err != nil {
		return candidate{}, err
	}
	seen := map[string]bool{}
	for layout, err := range wall.Layouts(m.job.Room) {
		if err != nil {
			return candidate{}, err
		}
		m.search.Layouts++
		problem := m.problem(&layout)
		if key := partsKey(problem); !seen[key] {
			seen[key] = true
			if err := m.consider(ctx, layout, problem); err != nil {
				return candidate{}, err
			}
		}
		if best := m.found[len(m.found)-1].need; !least.less(best) {
			m.search.Proved = true
			m.search.How = "no layout of this room can need less: " + m.leastHow
			break
		}
		if m.search.Layouts >= budget || ctx.Err() != nil {
			m.search.How = fmt.Sprintf("stopped after %d layouts; a later one, which would look no better, might need less", m.search.Layouts)
			break
		}
	}
	if m.search.How == "" {
		m.search.Proved = true
		m.search.How = "every layout was looked at"
	}
	m.chosen = len(m.found) - 1
	if m.options.Prefer == Looks {
		m.chosen = 0
		for i, c := range m.found {
			if c.need.unplaced == 0 {
				m.chosen = i
				break
			}
		}
	}
	c := m.found[m.chosen]
	if c.need.unplaced > 0 {
		return c, m.short(c)
	}
	return c, nil
}

// partsKey tells problems apart that differ in more than the order of parts.
func partsKey(p nest.Problem) string {
	var b strings.Builder
	for _, part := range p.Parts {
		fmt.Fprint(&b, part.Width, part.Height, part.LeftPhase, ";")
	}
	return b.String()
}

// consider nests a layout and keeps it if it needs less than those before.
func (m *maker) consider(ctx context.Context, layout wall.Layout, problem nest.Problem) error {
	first := len(m.found) == 0
	if !first {
		// A bound is cheap: most layouts cannot need less and are not searched.
		lower, err := nest.Lower(problem)
		if err != nil {
			return err
		}
		best := m.found[len(m.found)-1].need
		if best.unplaced == 0 && (best.cost.Less(lower.Cost) || best.cost == lower.Cost && best.sheets <= lower.Sheets) {
			return nil
		}
	}
	nodes := m.options.Nodes
	if nodes <= 0 {
		nodes = DefaultNodes
	}
	r, err := nest.Search(ctx, problem, nest.Budget{Nodes: nodes})
	if err != nil {
		return err
	}
	c := candidate{layout, r, m.needOf(r)}
	if first || c.need.less(m.found[len(m.found)-1].need) {
		m.found = append(m.found, c)
	}
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

// choices tells the trade-off, the best-looking entry first.
func (m *maker) choices() []Choice {
	var out []Choice
	for i, c := range m.found {
		if c.need.unplaced > 0 {
			continue
		}
		out = append(out, Choice{
			Sheets: c.need.sheets, Cost: money(c.need.cost), BlemishTotal: c.layout.Total,
			Chosen: i == m.chosen, Proved: c.nest.Bound.Proved, Says: m.says(i),
		})
	}
	return out
}

// says tells one choice: what it gains against the one chosen and what is seen.
func (m *maker) says(i int) string {
	c, chosen := m.found[i], m.found[m.chosen]
	text := "Taken: " + count(c.need.sheets, "sheet")
	if i != m.chosen {
		text = count(c.need.sheets, "sheet")
		switch diff := c.need.sheets - chosen.need.sheets; {
		case diff > 0:
			text += fmt.Sprintf(", %d more than taken", diff)
		case diff < 0:
			text += fmt.Sprintf(", %d fewer than taken", -diff)
		}
		if d := money(c.need.cost).Sub(money(chosen.need.cost)); !d.IsZero() {
			more := "more"
			if d.Sign() < 0 {
				more, d = "less", d.Neg()
			}
			text += fmt.Sprintf(" (%s %s)", d.StringFixed(2), more)
		}
	}
	return text + ". " + m.seen(&c.layout)
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
		return "Every edge that is seen shows a whole feature and the pattern follows round every corner; only seams are seen."
	}
	tape := fraction.Tape{Mark: m.job.Room.Mark, Unit: m.job.Units}
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
