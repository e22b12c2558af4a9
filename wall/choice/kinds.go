package choice

import (
	"context"
	"errors"
	"math/bits"
	"slices"

	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// A kind of stock more is never a disadvantage, but it may lead the search astray. So what the search
// finds without one kind or another counts as found too. A set of kinds is a set of bits, bit i for
// Stock[i].

// mostKinds is how many kinds of stock are left out in turn at most: of more, all are tried at once
// only. A room of so many kinds takes up to 2^mostKinds - 1 searches.
const mostKinds = 4

// kinds explores a room with each set of its kinds of stock once.
type kinds struct {
	ctx    context.Context
	model  *wall.Model // with all kinds
	room   Problem
	budget Budget
	known  map[uint]explored
}

type explored struct {
	Choices
	err error
	cut bool // it may have ended where the rest was of no use
}

// of returns the numbers of the kinds in a set.
func of(set uint) (kinds []int) {
	for ; set != 0; set &= set - 1 {
		kinds = append(kinds, bits.TrailingZeros(set))
	}
	return kinds
}

// useful returns the set of kinds but those that another one can take the place of: as many of it as
// needed, for no more money, each sheet as large and with the same pattern. What is on hand stays, since
// it saves buying, unless it is dearer.
func (k *kinds) useful() (set uint) {
	for i, a := range k.room.Stock {
		instead := func(j int, b nest.Stock) bool {
			pa, _ := a.Price.Decimal() // what has no price costs nothing in a [Need]
			pb, _ := b.Price.Decimal()
			less := pb.LessThan(pa)
			return b.Count == nil && b.LeftPhase == a.LeftPhase && !b.Width.Less(a.Width) && !b.Length.Less(a.Length) && b.Squared == a.Squared &&
				(less || a.Count == nil && a.Price.Equal(b.Price) && (b.Width != a.Width || b.Length != a.Length || j < i))
		}
		taken := false
		for j, b := range k.room.Stock {
			taken = taken || j != i && instead(j, b)
		}
		if !taken {
			set |= 1 << i
		}
	}
	return set
}

// explore returns what is found with a set of kinds, at least what is of use.
func (k *kinds) explore(set uint, noUse ruling) (c Choices, err error) {
	if x, ok := k.known[set]; ok && (!x.cut || noUse != nil && noUse(x.Least)) {
		return x.Choices, x.err
	}
	defer func() { k.known[set] = explored{c, err, noUse != nil && (err != nil || noUse(c.Least))} }()
	room := k.room
	room.Stock = nil
	for _, i := range of(set) {
		room.Stock = append(room.Stock, k.room.Stock[i])
	}
	m, err := k.model.WithStock(room.Stock)
	if err != nil {
		return Choices{}, err
	}
	return explore(k.ctx, m, room, k.budget, func(noUse ruling) ([]Choice, error) { return k.without(set, noUse) }, noUse)
}

// ruling says whether choices that need no less than this are of no use.
type ruling func(least Need) bool

// without returns the choices that are found with one kind of a set less, where they are of use, for the stock of the set.
func (k *kinds) without(set uint, noUse ruling) (all []Choice, err error) {
	if n := bits.OnesCount(set); n < 2 || n > mostKinds {
		return nil, nil
	}
	for _, i := range of(set) {
		less := set &^ (1 << i)
		c, err := k.explore(less, noUse)
		var none *wall.NoLayoutError
		var short *ShortError
		if err != nil && !errors.As(err, &none) && !errors.As(err, &short) {
			return nil, err
		}
		for _, f := range c.Front {
			all = append(all, f.restocked(of(less), of(set)))
		}
	}
	return all, nil
}

// restocked returns the choice with the numbers of stock in another list: both have kinds.
func (c Choice) restocked(from, to []int) Choice {
	c.Nest.Sheets = slices.Clone(c.Nest.Sheets)
	for i := range c.Nest.Sheets {
		s := &c.Nest.Sheets[i]
		s.Stock = slices.Index(to, from[s.Stock])
	}
	return c
}
