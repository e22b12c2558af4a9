package plan

import (
	"fmt"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/wall"
)

// panels counts the panels of a layout.
func panels(l *wall.Layout) int {
	n := 0
	for _, r := range l.Runs {
		n += len(r.Panels)
	}
	return n
}

// tradeOff returns the choices, the best-looking one first. The cost of each is the total of
// its whole take-off, as far as prices are known.
func (m *maker) tradeOff() ([]Choice, error) {
	var out []Choice
	taken := 0
	for i := range m.choices.Front {
		c := &m.choices.Front[i]
		list, err := finish.TakeOff(m.work(c), m.job.Finish)
		if err != nil {
			return nil, err
		}
		chosen := c.Need == m.chosen.Need && c.Layout.Total == m.chosen.Layout.Total
		if chosen {
			taken = i
		}
		out = append(out, Choice{
			Sheets: c.Need.Sheets, Bought: c.Need.Bought, Panels: panels(&c.Layout), Cost: list.Total, BlemishTotal: c.Layout.Total,
			Chosen: chosen, Proved: c.Nest.Bound.Proved,
		})
	}
	for i := range out {
		out[i].Says = says(out[i], out[taken], m.job.Room.Profile.Boards) + " " + m.seen(&m.choices.Front[i].Layout)
	}
	return out, nil
}

// says tells what a choice takes, and what more or less than the one taken.
func says(c, taken Choice, boards bool) string {
	text := count(c.Bought, wordFor(boards, "sheet", "board")) + " to buy"
	if onHand := c.Sheets - c.Bought; onHand > 0 {
		text += fmt.Sprintf(" and %d on hand", onHand)
	}
	if !boards {
		text += ", " + count(c.Panels, "panel")
	}
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
