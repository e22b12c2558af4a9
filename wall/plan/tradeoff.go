package plan

import (
	"slices"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/wall"
)

// tradeOff returns the choices, the best-looking one first. The cost of each is the total of its
// whole take-off, as far as prices are known.
func (m *maker) tradeOff() ([]Choice, error) {
	var out []Choice
	var taken Choice
	for _, c := range m.choices.Front {
		list, _, err := finish.TakeOff(m.work(&c), m.job.Finish)
		if err != nil {
			return nil, err
		}
		panels := 0
		for _, r := range c.Layout.Runs {
			panels += len(r.Panels)
		}
		chosen := c.Need == m.chosen.Need && c.Layout.Total == m.chosen.Layout.Total
		out = append(out, Choice{Sheets: c.Need.Sheets, Bought: c.Need.Bought, Panels: panels, Cost: list.Total, BlemishTotal: c.Layout.Total,
			Chosen: chosen, Proved: c.Nest.Bound.Proved, SeenMost: m.blemishes(seenMost(&c.Layout))})
		if chosen {
			taken = out[len(out)-1]
		}
	}
	for i := range out {
		c := &out[i]
		c.MoreBought, c.MoreOnHand = c.Bought-taken.Bought, c.Sheets-c.Bought-(taken.Sheets-taken.Bought)
		cost, _ := c.Cost.Decimal()
		if least, _ := taken.Cost.Decimal(); !cost.Equal(least) {
			c.MoreCost = money.Of(cost.Sub(least))
		}
	}
	return out, nil
}

// seenMost returns the two terms of a layout that cost most, seams left out.
func seenMost(l *wall.Layout) []wall.Blemish {
	seen := slices.DeleteFunc(slices.Clone(l.Blemishes), func(b wall.Blemish) bool { return b.Kind == wall.Seam || b.Amount.IsZero() })
	slices.SortStableFunc(seen, func(a, b wall.Blemish) int { return b.Cost.Compare(a.Cost) })
	seen = slices.Compact(seen) // two edges of one opening, one above the other
	return seen[:min(2, len(seen))]
}

// blemishes returns terms of a layout with the names of runs.
func (m *maker) blemishes(terms []wall.Blemish) []Blemish {
	out := []Blemish{}
	for _, b := range terms {
		term := Blemish{Run: m.job.Room.Runs[b.Run].Name, Where: b.Where, Opening: b.Opening, At: b.At, Kind: b.Kind,
			Amount: b.Amount, Height: b.Height, Weight: b.Weight, Cost: b.Cost}
		if b.Where == wall.AtCorner {
			term.Next = m.job.Room.Runs[b.Next].Name
		}
		out = append(out, term)
	}
	return out
}
