package plan

import (
	"slices"
	"sort"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/wall"
)

// tradeOff adds the choices to a plan, the best-looking one first, each with the total of its whole
// take-off; and the list, the order of work and the cautions of the chosen one.
func (m *maker) tradeOff(p *Plan) error {
	for i, c := range m.choices.Front {
		work := m.work(&c)
		fixing := fraction.Must(finish.Fix(work, m.job.Finish))
		of := *m // what makes the plan of this choice
		of.chosen = c
		laid := Plan{Tape: p.Tape, Profile: p.Profile, Gaps: p.Gaps, Fixing: fixing, Runs: of.runs()}
		of.place(work.Pieces, laid)
		work.InWall, work.Again = laid.InWall(), m.job.again(laid)
		list, doubts, err := finish.TakeOff(work, m.job.Finish)
		if err != nil {
			return err
		}
		panels, bought := 0, 0
		for _, r := range c.Layout.Runs {
			panels += len(r.Panels)
		}
		for _, s := range c.Nest.Sheets {
			if !m.job.Stock[s.Stock].OnHand() {
				bought++
			}
		}
		p.Choices = append(p.Choices, Choice{Sheets: c.Need.Sheets, Bought: bought, Panels: panels, Cost: list.Total, BlemishTotal: c.Layout.Total,
			Chosen: i == m.taken, Proved: c.Nest.Bound.Proved, Status: c.Status, SheetsAtLeast: c.LeastNeed.Sheets,
			CostAtLeast: c.LeastNeed.Cost, BlemishAtLeast: c.LeastBlemish, SeenMost: m.blemishes(seenMost(&c.Layout))})
		if i == m.taken {
			p.List, p.Warnings = list, append(p.Warnings, doubts...)
			p.Fixing = fixing
			for r := range p.Runs {
				if !p.Runs[r].Bare() {
					p.Runs[r].Supports = p.supports(p.Runs[r])
				}
			}
			p.Order, p.Cautions = finish.Schedule(work, m.job.Finish), finish.Cautions(work, m.job.Finish)
		}
	}
	taken := p.Choices[m.taken]
	for i := range p.Choices {
		c := &p.Choices[i]
		c.MoreBought, c.MoreOnHand = c.Bought-taken.Bought, c.OnHand()-taken.OnHand()
		cost, _ := c.Cost.Decimal()
		if least, _ := taken.Cost.Decimal(); !cost.Equal(least) {
			c.MoreCost = money.Of(cost.Sub(least))
		}
	}
	return nil
}

// place counts the nails of the pieces to fit where they stand in a plan, and what boards lie on.
func (m *maker) place(pieces []finish.Piece, p Plan) {
	for i, laid := range m.chosen.Layout.Pieces {
		piece := m.bare(laid)
		nails, _, err := p.Nails(piece)
		pieces[i].Nails = new(len(fraction.Must(nails, err)))
		if !p.Fixing.Level {
			continue
		}
		beads := p.beads(piece)
		pieces[i].Crossed = &finish.Crossed{Count: len(beads)}
		for _, bead := range beads {
			pieces[i].Crossed.Length = pieces[i].Crossed.Length.Add(bead[1].X.Sub(bead[0].X))
		}
	}
}

// seenMost returns the two terms of a layout that cost most, seams left out.
func seenMost(l *wall.Layout) []wall.Blemish {
	seen := slices.DeleteFunc(slices.Clone(l.Blemishes), func(b wall.Blemish) bool { return b.Kind == wall.Seam || b.Cost.IsZero() })
	sort.SliceStable(seen, func(i, j int) bool { return seen[j].Cost.Less(seen[i].Cost) })
	seen = slices.Compact(seen) // two edges of one opening, one above the other
	return seen[:min(2, len(seen))]
}

// blemishes returns terms of a layout with the names of runs.
func (m *maker) blemishes(terms []wall.Blemish) []Blemish {
	out := []Blemish{}
	for _, b := range terms {
		term := Blemish{Run: m.job.Runs[b.Run].Name, Where: b.Where, Opening: b.Opening, At: b.At, Kind: b.Kind,
			Amount: b.Amount, Weight: b.Weight, Cost: b.Cost}
		if b.Kind != wall.SeamOffLine {
			term.Height = &b.Height
		}
		if b.Where == wall.AtCorner {
			term.Next = m.job.Runs[b.Next].Name
		}
		out = append(out, term)
	}
	return out
}
