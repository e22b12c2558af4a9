package book

import (
	"strconv"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall/plan"
)

// Compare sets plans side by side, a row for each: what they need, cost, look like and take to do.
// A name that is missing is the plan's title.
func Compare(names []string, plans []plan.Plan) string {
	return written(fraction.Tape{}, false, func(t *text) {
		var rows [][]string
		for i, p := range plans {
			name := p.Title
			if i < len(names) {
				name = names[i]
			}
			need, cuts := 0, 0
			for _, s := range p.Stock {
				need += s.Used
			}
			for _, s := range p.Sheets {
				cuts += len(s.Cuts)
			}
			cost := "no prices"
			if total, known := p.Total.Decimal(); known && !total.IsZero() {
				cost = total.StringFixed(2)
			}
			rows = append(rows, []string{strconv.Itoa(need), cost, rounded(p.BlemishTotal), strconv.Itoa(len(p.Pieces)), strconv.Itoa(cuts), name})
		}
		t.table(5, []string{"sheets", "money", "flaws", "pieces", "cuts", "job"}, rows)
		t.hang("  ", "Sheets or boards are those to saw, bought or on hand; money is for all that is bought; flaws are what the eye would find, where less is better.")
	})
}
