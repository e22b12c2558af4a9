package choice

import (
	"errors"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// pricesTried is how many dual weights prices are made of.
const pricesTried = 3

// startPrices starts on the orders of the prices that say most of the walls. No layout's pieces cost
// less than those of the first: that may raise the bound.
func (e *explorer) startPrices() error {
	var heights []fraction.Length
	for _, p := range e.found[0].Layout.Pieces {
		low, high := p.Shape.Bounds()
		heights = append(heights, high.Y.Sub(low.Y))
	}
	weights, err := nest.DualWeights(e.bare, e.strips, heights, pricesTried)
	if err != nil {
		return err
	}
	for _, w := range weights {
		o, err := e.startPrice(w, fraction.Ratio{})
		if err != nil {
			return err
		}
		e.prices = append(e.prices, o)
		if e.raise(o.price.LowerBound(o.last.Cost)); e.ended() {
			return nil
		}
	}
	sort.SliceStable(e.prices, func(i, j int) bool { return e.prices[i].relaxed() > e.prices[j].relaxed() })
	for _, step := range []func() error{e.sharpen, e.measure, e.play} {
		if err := step(); err != nil || e.ended() {
			return err
		}
	}
	return nil
}

// relaxed returns about what the layout of least price needs by the price of an order.
func (o *order) relaxed() float64 { return o.price.Relaxed(o.last.Cost) }

// sharpen tries the price that says most of the pieces of the layout of least price: the walls alone do not say how
// high the pieces are that go past boxes. Done again it hardly raises a bound.
func (e *explorer) sharpen() error {
	if len(e.prices) == 0 {
		return nil
	}
	cheap := &e.prices[0].last
	w, err := nest.DualWeightOf(e.bare, e.strips, e.priced(cheap))
	if err != nil {
		return err
	}
	if cost, err := e.objective(w).Cost(cheap); err == nil && w.Relaxed(cost) > e.prices[0].relaxed() {
		_, err = e.try(w)
		return err
	}
	return nil
}

// priced returns the pieces of a layout as prices see them: as wide as they are, and less high where lines slope by what
// rounding may take.
func (e *explorer) priced(l *wall.Layout) []nest.Part {
	parts := fraction.Must(Nesting(e.room, l)).Parts
	for i, piece := range l.Pieces {
		low, high := piece.Shape.Bounds()
		part := &parts[i]
		part.Width, part.Height, part.LeftPhase = high.X.Sub(low.X), high.Y.Sub(low.Y), piece.LeftPhase.Add(low.X)
		for p, q := range piece.Shape.Edges() {
			if p.X != q.X && p.Y != q.Y {
				part.Height = high.Y.Sub(low.Y).Sub(e.room.Mark.Mul(2))
			}
		}
	}
	return parts
}

// How many mixtures of windows are tried at most, fewer where layouts have more than usualPieces and one alone where it takes
// more than so many panels, and how soon they settle.
const (
	mostMixtures = 12
	heavyMixture = 16_000_000 // a second or a few
	settling     = 60
)

// mixtures returns how many mixtures of windows are tried at most.
func (e *explorer) mixtures(pieces int) int {
	if e.panels() > heavyMixture {
		return 1
	}
	return max(2, mostMixtures*usualPieces/max(usualPieces, pieces))
}

// panels returns about how many panels are looked at for one layout of least price: from each seam line as far as
// a sheet reaches, with each origin.
func (e *explorer) panels() (panels int) {
	pitch := e.room.Profile.Pitch()
	lines := func(x fraction.Length) int {
		n, _ := x.Mul(int64(len(e.room.Profile.Features))).DivMod(pitch)
		return int(n) + 1
	}
	reach := 0
	for _, s := range e.room.Stock {
		reach = max(reach, lines(s.Width))
	}
	for r, run := range e.room.Runs {
		panels += e.model.Origins(r) * lines(run.Width) * reach
	}
	return panels
}

// measure tries the best price with widths counted by windows of the pattern.
func (e *explorer) measure() error {
	if len(e.prices) == 0 {
		return nil
	}
	for _, family := range e.prices[0].price.Windowed() {
		if err := e.mix(family); err != nil || e.ended() {
			return err
		}
	}
	return nil
}

// mix looks for the mixture of windows that says most, a game against the layouts: those windows count more and more
// that count most in the layouts of least price that were met (Y. Freund and R. E. Schapire, "Adaptive game
// playing using multiplicative weights", Games and Economic Behavior 29, 1999). No mixture says more than the best
// window does of these layouts on average.
func (e *explorer) mix(family []nest.DualWeight) error {
	sums, shares := make([]float64, len(family)), make([]float64, len(family))
	cheap := &e.prices[0].last
	for met := 1; met <= e.mixtures(len(cheap.Pieces)) && e.needOpen(); met++ {
		for i, w := range family {
			cost, err := e.objective(w).Cost(cheap)
			if err != nil {
				return nil // too fine
			}
			sums[i] += w.Relaxed(cost)
		}
		most := slices.Max(sums)
		if most/float64(met) <= e.relaxedLeast() {
			return nil
		}
		for i, sum := range sums {
			shares[i] = 1
			for range settling * met {
				shares[i] *= sum / most
			}
		}
		var err error
		if cheap, err = e.try(nest.Mixed(family, shares)); cheap == nil || err != nil {
			return err
		}
	}
	return nil
}

// How many measures by place are tried at most, fewer where layouts have more than usualPieces; and none where as many as the
// fewest would look at more than so many panels. Each is nearly the best for the layouts that were met: by this part at first,
// then by this share of what is open between the best that is known and the best there may be, but not less than the last.
const (
	mostMeasures  = 15
	fewMeasures   = 5
	boardMeasures = 60
	measurePanels = 4_000_000 // half a second or so
	slackAtFirst  = 0.02
	slackOfOpen   = 0.3
	leastSlack    = 0.001
)

// measures returns how many measures by place are tried at most.
func (e *explorer) measures(pieces int) int {
	if e.room.Profile.Boards {
		return boardMeasures // few panels, most of them alike
	}
	n := min(mostMeasures*usualPieces/max(usualPieces, pieces), measurePanels/max(1, e.panels()))
	if n < fewMeasures {
		return 0
	}
	return n
}

// play tries the best price of heights with widths counted by place, each measure found against the layouts of least price that were met
// before. The last ones count seams that are moved, as no sum of widths does: in their order layouts are found that need less.
func (e *explorer) play() error {
	if len(e.prices) == 0 {
		return nil
	}
	cheap := &e.prices[0].last
	game := e.prices[0].price.Game(e.priced(cheap))
	if game == nil {
		return nil
	}
	for _, o := range e.prices {
		game.Meet(e.priced(&o.last))
	}
	slack := slackAtFirst
	for left := e.measures(len(cheap.Pieces)); left > 0 && e.needOpen(); left-- {
		layout, err := e.try(game.Best(slack))
		if layout == nil || err != nil {
			return err
		}
		open := game.Value()/e.prices[0].relaxed() - 1
		if open < leastSlack {
			return nil
		}
		slack = min(slackAtFirst, max(leastSlack, slackOfOpen*open))
		game.Meet(e.priced(layout))
	}
	return nil
}

// relaxedLeast returns the bound of the room as [nest.DualWeight.Relaxed] counts.
func (e *explorer) relaxedLeast() float64 {
	if e.least.Cost.IsZero() {
		return float64(e.least.Sheets)
	}
	return float64(e.least.Cost.Num()) / float64(e.least.Cost.Den())
}

// try starts on the order of a price and makes it the first if it says more than the others, in place of the one that
// says least where there are many: each takes memory. It returns the layout of least price; nil where the numbers are too
// fine.
func (e *explorer) try(w nest.DualWeight) (*wall.Layout, error) {
	o, err := e.startFine(w)
	if o == nil || err != nil {
		return nil, err
	}
	if o.relaxed() <= e.prices[0].relaxed() {
		e.drop(o)
		return &o.last, nil
	}
	e.prices = append([]*order{o}, e.prices...)
	if last := len(e.prices) - 1; last >= pricesTried {
		e.drop(e.prices[last])
		e.prices = e.prices[:last]
	}
	return &o.last, nil
}

// drop ends an order.
func (e *explorer) drop(o *order) {
	o.stop()
	e.orders = slices.DeleteFunc(e.orders, func(other *order) bool { return other == o })
}

// objective is the price of pieces, each with its kerf.
func (e *explorer) objective(w nest.DualWeight) wall.Objective {
	return wall.Objective{Of: w.Of, Measure: w.Measure}
}

// startPrice starts on the order of a price, or of the sum of blemish and the price so weighted.
func (e *explorer) startPrice(w nest.DualWeight, blemish fraction.Ratio) (*order, error) {
	o := e.objective(w)
	o.Weight = blemish
	return e.start(&order{price: w, within: e.within, weight: blemish}, e.model.LayoutsByCost(e.ctx, o))
}

// startFine starts on the order of a price, which may raise the bound; nil where the numbers are too fine.
func (e *explorer) startFine(w nest.DualWeight) (*order, error) {
	o, err := e.startPrice(w, fraction.Ratio{})
	if errors.As(err, new(*fraction.OverflowError)) {
		return nil, nil
	}
	if err == nil {
		e.raise(w.LowerBound(o.last.Cost))
	}
	return o, err
}
