package choice_test

import (
	"context"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/groovewright/fraction/fractiontest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
)

// FuzzWild calls what the package exports with wild values: nothing panics, and a result comes without an error.
func FuzzWild(once *testing.F) {
	f := fractiontest.F{F: once}
	f.Add([]byte{}, false)
	f.Add([]byte{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16}, true)
	f.Fuzz(func(t *testing.T, data []byte, sound bool) {
		var p wall.Room
		var budget choice.Budget
		var layout wall.Layout
		var choices choice.Choices
		var a, b choice.Need
		if sound { // a sound room, of which something is made wild
			p = room(rand.New(rand.NewPCG(uint64(len(data)), 1)))
			fractiontest.Fill(data, &p.Gaps, &p.Priorities, &p.Runs[0], &budget)
		} else {
			fractiontest.Fill(data, &p, &layout, &choices, &a, &b)
		}
		budget.Layouts, budget.Nodes = max(1, min(budget.Layouts, 2)), 2000
		ctx, cancel := context.WithTimeout(t.Context(), 100*time.Millisecond)
		defer cancel()
		if c, err := choice.Explore(ctx, p, budget); (err == nil) != (len(c.Front) > 0) {
			t.Errorf("a front of %d choices, %v", len(c.Front), err)
		}
		choice.Nesting(p, &layout)
		choices.Looks()
		choices.Sheets()
		if a.Compare(b) != -b.Compare(a) {
			t.Errorf("%v beside %v: %d, the other way round %d", a, b, a.Compare(b), b.Compare(a))
		}
		_ = choice.Status(len(data)).String() + choice.EndCause(len(data)).String()
		_ = (&choice.ShortError{Left: make([]choice.LeftOver, len(data))}).Error()
	})
}
