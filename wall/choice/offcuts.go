package choice

import (
	"fmt"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// offcuts looks at layouts whose panels are cut from what others leave over: those with the origins
// of a layout that was met, and seams chosen anew. On random rooms hardly any room takes fewer sheets
// by any other way.
type offcuts struct {
	*explorer
	bases    []*base
	panels   int              // of the bases
	known    map[string]*base // by originsKey
	variants []wall.Offcuts
}

// base is a layout whose origins are kept.
type base struct {
	seams *wall.Seams
	tried int // of the variants
}

// How the variants of a base share a round: the first base, the layout of least blemish, gives most of
// what is found.
const (
	firstVariants = 36
	moreVariants  = 6
	manyPieces    = 48 // where layouts have more pieces, or the budget fewer layouts, as many variants fewer are tried,
	leastVariants = 2  // but not fewer than these
)

// mostPanels is how many panels the bases hold when no more are added: some 300 MB.
const mostPanels = 16 << 20

// sheetBlemish has the weights that are tried: the blemish that a sheet counts as.
var sheetBlemish = [...]fraction.Ratio{
	fraction.NewRatio(1, 1), fraction.NewRatio(1, 16), fraction.NewRatio(4, 1), fraction.NewRatio(32, 1), fraction.NewRatio(1, 4),
	fraction.NewRatio(2, 1), fraction.NewRatio(8, 1), fraction.NewRatio(1, 2), fraction.NewRatio(16, 1), fraction.NewRatio(1, 64),
}

func newOffcuts(e *explorer) *offcuts {
	o := &offcuts{explorer: e, known: map[string]*base{}}
	if len(e.prices) == 0 || e.room.Profile.Boards {
		return o // a board is as wide as it is
	}
	for n := range 2 * len(sheetBlemish) {
		for _, order := range []wall.OffcutOrder{wall.ByRun, wall.TallestFirst, wall.LowestFirst} {
			for _, stock := range e.room.Stock {
				of := e.prices[0].price.Of
				if n%2 != n/2%2 {
					of = e.stacked(stock)
				}
				for _, leftward := range []bool{false, true} {
					if sheet := of(stock.Usable(e.room.Saw)); sheet > 0 {
						o.variants = append(o.variants, wall.Offcuts{Stock: stock, Of: of, Sheet: sheet, Weight: sheetBlemish[n/2], Order: order, Leftward: leftward})
					}
				}
			}
		}
	}
	return o
}

// stacked returns the value of a strip as the part of a sheet that it takes where all strips of the
// sheet are as high: a sheet is worth wholeSheet.
func (e *explorer) stacked(stock nest.Stock) func(height fraction.Length) int64 {
	const wholeSheet = 720720 // a multiple of all numbers up to 16
	long := stock.Usable(e.room.Saw).Add(e.room.Saw.Kerf)
	return func(height fraction.Length) int64 {
		with := height.Add(e.room.Saw.Kerf)
		if with.Sign() <= 0 {
			return 0 // a strip of no height, and no kerf beside it
		}
		n, _ := long.DivMod(with)
		return wholeSheet / max(1, n)
	}
}

// look looks at the layouts of one round: of the bases so far, and of the last layout of each order
// that is not one of them yet.
func (o *offcuts) look() error {
	if len(o.variants) == 0 {
		return nil
	}
	for _, order := range o.orders {
		if err := o.add(&order.last); err != nil {
			return err
		}
	}
	for i, b := range o.bases {
		n := moreVariants
		if i == 0 && b.tried == 0 {
			n = firstVariants
		}
		n = n * manyPieces / max(manyPieces, len(o.found[0].Layout.Pieces))
		n = max(leastVariants, n*min(o.budget.Layouts, DefaultLayouts)/DefaultLayouts)
		for ; n > 0 && b.tried < len(o.variants) && !o.ended(); n-- {
			b.tried++
			if err := o.try(b, o.variants[b.tried-1]); err != nil {
				return err
			}
		}
	}
	return nil
}

// try looks at the layout of a variant of a base, if there is one.
func (o *offcuts) try(b *base, v wall.Offcuts) error {
	o.steps += b.seams.Panels() * stepsOfPanel
	layout, found, err := b.seams.FromOffcuts(o.ctx, v)
	if err != nil || !found || layout.Broken > o.broken {
		return err
	}
	return o.explorer.look(layout)
}

// How many shuffled variants of layouts of usualPieces or fewer are looked at in a round of
// DefaultLayouts, and the least that a sheet counts as there: of five sheets that were saved, all were by 8
// or more.
const shuffled = 300

var leastShuffled = fraction.NewRatio(4, 1)

// shuffle looks at shuffled variants as long as the least need or a step between two choices is open, with the origins of the choice
// of least need or of the first base.
func (o *offcuts) shuffle() error {
	var heavy []wall.Offcuts
	for _, v := range o.variants {
		if !v.Weight.Less(leastShuffled) {
			heavy = append(heavy, v)
		}
	}
	for pieces := shuffled * usualPieces * o.budget.Layouts / DefaultLayouts; pieces > 0 && len(heavy) > 0 && (o.needOpen() || o.openStep() >= 0) && !o.ended(); {
		cheap := &o.found[len(o.found)-1].Layout
		pieces -= max(usualPieces, len(cheap.Pieces))
		if err := o.add(cheap); err != nil {
			return err
		}
		b := o.known[originsKey(cheap)]
		if b == nil || o.dice.IntN(2) == 0 {
			b = o.bases[0]
		}
		v := heavy[o.dice.IntN(len(heavy))]
		v.Shuffle = o.dice.Uint64()
		if err := o.try(b, v); err != nil {
			return err
		}
	}
	return nil
}

// needOpen reports whether some layout may need less than the choice of least need.
func (e *explorer) needOpen() bool {
	cheap := &e.found[len(e.found)-1]
	return !cheap.complete() || cheap.Need.Compare(e.least) > 0 && !e.closed(nil, cheap)
}

// add adds a layout as a base unless it is one, or the others take much memory.
func (o *offcuts) add(l *wall.Layout) error {
	key := originsKey(l)
	if o.known[key] != nil || o.panels > mostPanels {
		return nil
	}
	seams, err := o.model.Seams(o.ctx, l)
	if err != nil {
		return err
	}
	b := &base{seams: seams}
	o.known[key], o.bases, o.panels = b, append(o.bases, b), o.panels+seams.Panels()
	return nil
}

// originsKey is the same for layouts with the same origins and fittings.
func originsKey(l *wall.Layout) string {
	var b strings.Builder
	for _, run := range l.Runs {
		fmt.Fprint(&b, run.Limits, run.EndPhases, run.Restarts, ";")
	}
	return b.String()
}
