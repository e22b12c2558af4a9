package finish

import (
	"cmp"
	"errors"
	"math/big"
	"slices"
	"sort"

	"example.com/groovewright/fraction/money"
)

// offer is one pack that can be bought: its contents (cubic inches, inches, pieces) and price.
type offer struct {
	name  string
	size  *big.Rat
	price money.Amount
}

func (c Container) offer(settings) offer {
	return offer{c.Name, measured(string(c.Size), volumes), price(c.Price)}
}
func (c Cover) offer(settings) offer {
	return offer{c.Name, measured(string(c.Size), surfaces), price(c.Price)}
}
func (r Roll) offer(s settings) offer { return offer{r.Name, s.in(r.Length), price(r.Price)} }
func (p Pack) offer(settings) offer   { return offer{p.Name, whole(int64(p.Count)), price(p.Price)} }

// offers are the packs of one kind that are sold.
func offers[T interface{ offer(settings) offer }](s settings, packs []T) (all []offer) {
	for _, p := range packs {
		all = append(all, p.offer(s))
	}
	return all
}

// MixSteps bounds the search for the mix of packs with the least money. The usual packs take dozens
// of steps; sizes without a common measure and prices that hardly differ can reach the bound.
const MixSteps = 5_000

// MaxOffers is the greatest number of packs offered for one thing.
const MaxOffers = 12

// mixer searches the mixes that hold what is needed. A mix is better if its effective price is
// less, then if it holds less, then if it has fewer packs. The effective price is the price less
// the worth of the contents as leftover (see [Materials.LeftoverWorth]), or its size where a price
// is not known: the least is left over. As the order begins with price and volume, a greater need never has a smaller
// mix.
type mixer struct {
	need   *big.Rat
	offers []mixOffer // the best price per size first, then the larger
	best   *mix
	steps  int
}

// mixOffer is an offer with what the search needs of it.
type mixOffer struct {
	index                 int
	size, effective, rate *big.Rat // effective price, and that per size
	most                  int64    // above it, packs of the first offer do as well
}

// mix is how many of each offer to buy.
type mix struct {
	price, size *big.Rat // of all together; the price is the effective one
	packs       int64
	counts      []int64 // by index of the offer
	proved      bool    // no other mix is better
}

// leastMoney returns the best mix for a positive need. worth is the share of the price that
// leftovers keep, from 0 to 1.
func leastMoney(need *big.Rat, offers []offer, worth *big.Rat) mix {
	m := &mixer{need: need, offers: rate(offers, worth)}
	m.search(len(m.offers)-1, mix{price: new(big.Rat), size: new(big.Rat), counts: make([]int64, len(offers))})
	m.best.proved = m.steps <= MixSteps
	return *m.best
}

// rate puts the offers in order.
func rate(offers []offer, worth *big.Rat) []mixOffer {
	lowest, priced := lowestRate(offers)
	rated := make([]mixOffer, len(offers))
	for i, o := range offers {
		effective := o.size
		if priced {
			effective = sub(amount(o.price), mul(worth, lowest, o.size))
		}
		rated[i] = mixOffer{index: i, size: o.size, effective: effective, rate: quo(effective, o.size), most: 1<<62 - 1}
	}
	sort.SliceStable(rated, func(i, j int) bool {
		a, b := &rated[i], &rated[j]
		return cmp.Or(a.rate.Cmp(b.rate), b.size.Cmp(a.size)) < 0
	})
	for i := 1; i < len(rated); i++ {
		// q packs of this size hold as much as p of the first, p/q being the ratio of the sizes:
		// fewer than q are enough in some best mix.
		if q := quo(rated[i].size, rated[0].size).Denom(); q.IsInt64() {
			rated[i].most = q.Int64() - 1
		}
	}
	return rated
}

// lowestRate returns the lowest price per size; ok is false where a price is not known.
func lowestRate(offers []offer) (lowest *big.Rat, ok bool) {
	for _, o := range offers {
		if !o.price.Known() {
			return nil, false
		}
		if rate := quo(amount(o.price), o.size); lowest == nil || rate.Cmp(lowest) < 0 {
			lowest = rate
		}
	}
	return lowest, lowest != nil
}

// amount returns a known price as an exact number.
func amount(price money.Amount) *big.Rat {
	d, _ := price.Decimal()
	return d.Rat()
}

// search tries the counts of the offer at place and of those before it; those after it are chosen.
func (m *mixer) search(place int, t mix) {
	m.steps++
	if m.steps > MixSteps && m.best != nil {
		return
	}
	rest, o := sub(m.need, t.size), m.offers[place]
	if place == 0 || rest.Sign() <= 0 {
		if rest.Sign() > 0 {
			t = t.with(count(quo(rest, o.size)), o)
		}
		if u := m.best; u == nil ||
			cmp.Or(t.price.Cmp(u.price), t.size.Cmp(u.size), cmp.Compare(t.packs, u.packs)) < 0 {
			m.best = &t
		}
		return
	}
	most := min(o.most, count(quo(rest, o.size)))
	for n := int64(0); n <= most; n++ {
		next := t.with(n, o)
		bound := next.price // even if the rest were bought to measure at the lowest rate
		if rest := sub(m.need, next.size); rest.Sign() > 0 {
			bound = add(bound, mul(rest, m.offers[0].rate))
		}
		if m.best != nil && bound.Cmp(m.best.price) > 0 {
			return // more of this offer only costs more: the first one is never dearer by size
		}
		m.search(place-1, next)
		if m.steps > MixSteps {
			return
		}
	}
}

// with returns the mix with n more of an offer.
func (t mix) with(n int64, o mixOffer) mix {
	counts := slices.Clone(t.counts)
	counts[o.index] += n
	return mix{price: add(t.price, mul(whole(n), o.effective)), size: add(t.size, mul(whole(n), o.size)), packs: t.packs + n, counts: counts}
}

// MaxPacks is the greatest number of packs of one kind that a list asks for.
const MaxPacks = 100_000

// ErrPacks says that something needs more than [MaxPacks]: a mistake in the input.
var ErrPacks = errors.New("more than anyone buys")
