package book

import (
	"fmt"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// choices says what each number of sheets would look like; the best-looking
// choice comes first in the plan.
func (t *text) choices(p plan.Plan) {
	for _, c := range p.Choices {
		label := "  "
		if c.Chosen {
			label = "* "
		}
		says := t.choice(p, c)
		if !c.Proved {
			says += " Not proved to be the fewest for these pieces."
		}
		t.hang(label, says)
	}
	switch best := len(p.Choices) > 0 && p.Choices[0].Chosen; {
	case best:
		t.hang("  ", "One "+sheetWord(p)+" more would not look better: no layout has less blemish.")
	case len(p.Choices) > 1:
		t.hang("  ", "The first of these looks best; --prefer looks takes it.")
	}
}

// choice says what a choice takes, what more or less than the chosen one, and what is seen most.
func (t *text) choice(p plan.Plan, c plan.Choice) string {
	takes := count(c.Bought, sheetWord(p)) + " to buy"
	if onHand := c.Sheets - c.Bought; onHand > 0 {
		takes += fmt.Sprintf(" and %d on hand", onHand)
	}
	if !p.Profile.Boards {
		takes += ", " + count(c.Panels, "panel")
	}
	if c.Chosen {
		return "Taken: " + takes + ". " + t.seenMost(c.SeenMost)
	}
	differs := func(by int, more, fewer string) string {
		if by < 0 {
			return fmt.Sprintf(", %d %s", -by, fewer)
		}
		return fmt.Sprintf(", %d %s", by, more)
	}
	switch {
	case c.MoreBought != 0:
		takes += differs(c.MoreBought, "more than taken", "fewer than taken")
	case c.MoreOnHand != 0:
		takes += differs(c.MoreOnHand, "more on hand", "fewer on hand")
	}
	switch more, _ := c.MoreCost.Decimal(); more.Sign() {
	case 1:
		takes += fmt.Sprintf(" (%s more money)", more.StringFixed(2))
	case -1:
		takes += fmt.Sprintf(" (%s less money)", more.Neg().StringFixed(2))
	}
	looks := "worse"
	if slices.ContainsFunc(p.Choices, func(taken plan.Choice) bool { return taken.Chosen && c.BlemishTotal.Less(taken.BlemishTotal) }) {
		looks = "better"
	}
	return takes + "; it looks " + looks + ". " + t.seenMost(c.SeenMost)
}

// seenMost names the flaws that cost most.
func (t *text) seenMost(worst []plan.Blemish) string {
	if len(worst) == 0 {
		return "No cut feature and no corner out of step that costs anything; only seams are seen."
	}
	var parts []string
	for _, b := range worst {
		says := "a feature cut %s from its edge at the %s of %s"
		switch b.Kind {
		case wall.CornerMismatch:
			says = "the pattern %s out of step in the %s of %s"
		case wall.BreakMismatch:
			says = "the pattern %s out of step at the %s of %s"
		case wall.WeakStrip:
			says = "a %[2]s of %[3]s too narrow by %[1]s"
		}
		parts = append(parts, fmt.Sprintf(says, t.tape.Format(b.Amount), t.where(b), b.Run))
	}
	return "Seen most: " + strings.Join(parts, "; ") + "."
}

// where names the place of a blemish on its run.
func (t *text) where(b plan.Blemish) string {
	place := map[wall.Place]string{wall.AtCorner: "inside corner with " + b.Next, wall.AtStep: "side of the step", wall.AtOpening: "side of " + b.Opening}[b.Where]
	switch {
	case b.Kind == wall.WeakStrip:
		return "strip between the seam and the " + place
	case b.Kind == wall.Seam && b.Where == wall.AtBreak:
		return "seam at the break"
	case place == "":
		return b.Where.String()
	}
	return place
}

// looks prints every term of the blemish and the weights that were set.
func (t *text) looks(p plan.Plan) {
	t.heading(2, "What the eye would find")
	rows := [][]string{{"cost", "amount", "run", "at", "where"}}
	whole := 0
	for _, b := range p.Blemishes {
		if b.Cost.IsZero() {
			whole++
			continue
		}
		where := t.where(b)
		if kind := b.Kind.String(); kind != where {
			where += " (" + kind + ")"
		}
		rows = append(rows, []string{rounded(b.Cost), t.length(b.Amount), b.Run, t.length(b.At), where})
	}
	if len(rows) > 1 {
		t.table(2, rows)
	}
	t.hang("  ", fmt.Sprintf("Together %s; less is better. %s that could be seen cost nothing.", rounded(p.BlemishTotal), count(whole, "other place")))
	for _, pr := range p.Priorities {
		if pr.Value != pr.Default {
			t.hang("  ", fmt.Sprintf("%s was set to %s instead of %s (%s): %s", pr.Name, pr.Value, pr.Default, pr.Unit, describe(pr)))
		}
	}
}

// rounded writes a ratio to two places for reading; the exact one stands in
// the JSON plan.
func rounded(r fraction.Ratio) string {
	s := r.Rat().FloatString(2)
	return strings.TrimSuffix(strings.TrimSuffix(s, "0"), ".0")
}

// describe says what a priority is.
func describe(p plan.Priority) string {
	for _, known := range (wall.Priorities{}).List() {
		if known.Name == p.Name {
			return known.Description
		}
	}
	return ""
}
