package book

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// choices says what each number of sheets would look like; the best-looking choice comes first in
// the plan.
func (t *text) choices(p plan.Plan) {
	for _, c := range p.Choices {
		says := t.choice(p, c) + either(c.Proved, "", " Not proved to be the "+either(p.ByPrice(), "cheapest", "fewest")+" for these pieces.")
		if c.Chosen && p.Choices[0].Chosen {
			onHand := slices.ContainsFunc(p.Stock, func(s plan.Stock) bool { return s.Count != nil }) // may have been too little
			says += " " + either(onHand, "None that was found looks better.", "One "+sheetWord(p)+" more would not look better.")
		}
		t.hang(either(len(p.Choices) == 1, "", either(c.Chosen, "* ", "  ")), says)
	}
	if len(p.Choices) > 1 && !p.Choices[0].Chosen {
		t.para("The first of these looks best; --prefer looks takes it.")
	}
}

// SeenMost names the flaws of choice i of a plan that are seen most; nothing where there is no such
// choice.
func SeenMost(p plan.Plan, i int) string {
	if i < 0 || i >= len(p.Choices) {
		return ""
	}
	return written(p.TapeMeasure(), true, func(t *text) { t.WriteString(t.seenMost(p.Choices[i])) })
}

// choice says what a choice takes, what more or less than the chosen one, and what is seen most.
func (t *text) choice(p plan.Plan, c plan.Choice) string {
	takes := count(c.Sheets, sheetWord(p)) // of which no old plan says how many are bought
	if used := slices.ContainsFunc(p.Stock, func(s plan.Stock) bool { return !s.OnHand() && s.Used > 0 }); c.Bought > 0 || !used {
		takes = count(c.Bought, sheetWord(p)) + " to buy" + either(c.OnHand() > 0, fmt.Sprintf(" and %d on hand", c.OnHand()), "")
	}
	if by := cmp.Or(c.MoreBought, c.MoreOnHand); by != 0 && !c.Chosen {
		takes += fmt.Sprintf(", %d %s %s", max(by, -by), either(by < 0, "fewer", "more"), either(c.MoreBought != 0, "than taken", "on hand"))
	}
	if !p.Profile.Boards && c.Panels > 0 {
		takes += ", " + count(c.Panels, "panel")
	}
	if c.Chosen {
		return "Taken: " + takes + ". " + t.seenMost(c)
	}
	if more, _ := c.MoreCost.Decimal(); !more.IsZero() {
		takes += fmt.Sprintf(" (%s %s money)", more.Abs().StringFixed(2), either(more.Sign() > 0, "more", "less"))
	}
	its, chosen := toldApart(c.BlemishTotal, p.Chosen().BlemishTotal)
	return takes + fmt.Sprintf("; it looks %s, by flaws of %s against %s. ", either(p.LooksBetter(c), "better", "worse"), its, chosen) + t.seenMost(c)
}

// flawWords has the words of the flaws that are no cut features: how much, where and on which run.
var flawWords = map[wall.BlemishKind]string{
	wall.CornerMismatch: "the pattern %s out of step in the %s of %s",
	wall.BreakMismatch:  "the pattern %s out of step at the %s of %s",
	wall.WeakStrip:      "a %[2]s of %[3]s too narrow by %[1]s",
}

// seenMost names the flaws of a choice that cost most.
func (t *text) seenMost(c plan.Choice) string {
	if len(c.SeenMost) == 0 {
		return either(c.BlemishTotal.IsZero(), "No flaw is seen.", "No flaw is seen but seams.")
	}
	var parts []string
	for _, b := range c.SeenMost {
		says := cmp.Or(flawWords[b.Kind], "an edge %s away from a whole flat or bead at the %s of %s")
		parts = append(parts, fmt.Sprintf(says, t.tape.Format(b.Amount), t.where(b), b.Run))
	}
	return "Seen most: " + strings.Join(slices.Compact(parts), "; ") + "."
}

// where names the place of a blemish on its run.
func (t *text) where(b plan.Blemish) string {
	place := map[wall.Place]string{wall.AtCorner: "inside corner with " + b.Next, wall.AtStep: "side of the step", wall.AtOpening: "side of " + b.Opening}[b.Where]
	switch {
	case b.Kind == wall.WeakStrip:
		return "strip between the seam and the " + place
	case b.Kind == wall.Seam && b.Where == wall.AtBreak:
		return "seam at the break"
	}
	return cmp.Or(place, b.Where.String())
}

// at writes the place of a blemish on its run.
func (t *text) at(p plan.Plan, b plan.Blemish) string {
	run, _ := p.Run(b.Run)
	return t.along(b.At, run.Width)
}

// whereAndWhat names the place of a blemish and its kind, where that is another.
func (t *text) whereAndWhat(b plan.Blemish) string {
	where, kind := t.where(b), b.Kind.String()
	return where + either(kind == where, "", " ("+kind+")")
}

// looks prints every term of the blemish and the weights that were set.
func (t *text) looks(p plan.Plan) {
	t.gap()
	t.para("What the eye would find. " + t.counting(p))
	var rows [][]string
	whole, counts := 0, counts(p)
	for i, b := range p.Blemishes {
		if b.Cost.IsZero() {
			whole++
			continue
		}
		high := "–"
		if b.Height != nil {
			high = t.length(*b.Height)
		}
		rows = append(rows, []string{counts[i], rounded(b.Weight), t.length(b.Amount), high, b.Run, t.at(p, b), t.whereAndWhat(b)})
	}
	t.table(2, []string{"counts", "seen", "out by", "height", "run", "at", "where"}, rows)
	t.hang("  ", fmt.Sprintf("Together %s; less is better. %s that could be seen %s none.", rounded(p.BlemishTotal), count(whole, "other place"), either(whole == 1, "has", "have")))
	for _, pr := range p.Priorities {
		if pr.Value != pr.Default {
			t.hang("  ", fmt.Sprintf("The job sets %s instead of %s for: %s", t.setting(pr.Value, pr.Unit), t.setting(pr.Default, pr.Unit), describe(pr)))
		}
	}
}

// counting says how the penalty of a blemish is calculated.
func (t *text) counting(p plan.Plan) string {
	units := either(t.tape.Unit == fraction.Inch, "", " (25.4 mm to an inch, 304.8 to a foot)")
	arched := slices.ContainsFunc(p.Pieces, func(piece plan.Piece) bool { return len(piece.Marks.Arcs) > 0 })
	return "Each counts how much its place is seen times the inches it is out by times the feet of its height, if it has one" +
		units + ", rounded so that all add up to the sum." +
		either(arched, " Beside an arch heights reach to short straight lines along it, and so differ from those of the pieces.", "")
}

// counts are the penalties of a plan's blemishes as they are written: in hundredths that add up to the rounded sum, see
// [fraction.Apportion].
func counts(p plan.Plan) (all []string) {
	hundred, sum, parts := big.NewRat(100, 1), new(big.Rat), []*big.Rat{}
	for _, b := range p.Blemishes {
		cost := b.Cost.Rat()
		parts = append(parts, cost.Mul(cost, hundred))
		sum.Add(sum, cost)
	}
	whole, _ := new(big.Int).SetString(sum.FloatString(0), 10)
	for _, c := range fraction.Apportion(parts, whole) {
		all = append(all, twoPlaces(new(big.Rat).SetFrac(c, big.NewInt(100))))
	}
	return all
}

// rounded writes a ratio to two places for reading; the exact one stands in the JSON plan.
func rounded(r fraction.Ratio) string { return twoPlaces(r.Rat()) }

func twoPlaces(r *big.Rat) string { return places(r, 2) }

func places(r *big.Rat, n int) string {
	s := r.FloatString(n)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// toldApart writes two numbers rounded to two places, or to as many more as tell them apart.
func toldApart(a, b fraction.Ratio) (string, string) {
	for n := 2; ; n++ {
		if x, y := places(a.Rat(), n), places(b.Rat(), n); x != y || a == b {
			return x, y
		}
	}
}

// describe says what a priority is.
func describe(p plan.Priority) string {
	for _, known := range (wall.Priorities{}).List() {
		if known.Name == p.Name {
			if p.Name == "leg_ratio" {
				return "length over width from which a part that stands out from a piece is weak"
			}
			return strings.TrimPrefix(known.Description, "1: ")
		}
	}
	return ""
}
