package choice

import (
	"context"
	"errors"
	"testing"

	"example.com/groovewright/wall"
)

// An ended context ends the search, and is what ended it, where no bound was met and layouts are left.
func TestContextIsWhatEnds(t *testing.T) {
	ctx, end := context.WithCancel(t.Context())
	e := explorer{ctx: ctx, buys: true, found: []Choice{small(1, 5, 5, 5, 0), small(3, 4, 4, 4, 0)}, orders: []*order{{byLook: true, last: wall.Layout{Floor: blemish(2)}}}}
	if e.ended() {
		t.Fatalf("ended by %v", e.end)
	}
	if end(); !e.ended() || e.end != ContextStopped {
		t.Errorf("ended by %v", e.end)
	}
}

// Of several orders the one that says most of what is left says what that needs at least. Prices of which the context ends
// the search are an error.
func TestOrderThatSaysMostOfNeed(t *testing.T) {
	e, _ := priced(t)
	c := small(1000, 90, 90, 90, 0)
	looks, price := &order{byLook: true}, &order{price: e.prices[0].price, last: wall.Layout{Cost: e.prices[0].last.Cost}}
	for _, orders := range [][]*order{{looks, price}, {price, looks}} {
		if got := (&explorer{room: e.room, buys: true, orders: orders}).leastNeed(&c); got.Bought != 1 || got.Sheets != 1 { // 80 by 30 in of a sheet of 48 by 96
			t.Errorf("at least %+v needed, want 1 sheet", got)
		}
	}
	ctx, end := context.WithCancel(t.Context())
	e.ctx = ctx
	end()
	if err := e.startPrices(); !errors.Is(err, context.Canceled) {
		t.Errorf("prices without time: %v", err)
	}
}
