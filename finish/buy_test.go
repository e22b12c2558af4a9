package finish_test

import (
	"math/big"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction/money"
)

// enumerate is the plain way: every mix with no more of a pack than alone would do, compared by
// effective price, size and packs.
func enumerate(need *big.Rat, offers []finish.Offer, worth *big.Rat) (price, size *big.Rat, packs int64) {
	var lowest *big.Rat
	priced := true
	for _, o := range offers {
		priced = priced && o.Price.Known()
	}
	for _, o := range offers {
		if priced {
			if rate := quo(ratOf(o.Price), o.Size); lowest == nil || rate.Cmp(lowest) < 0 {
				lowest = rate
			}
		}
	}
	var try func(i int, p, s *big.Rat, n int64)
	try = func(i int, p, s *big.Rat, n int64) {
		if i == len(offers) {
			if s.Cmp(need) < 0 {
				return
			}
			if price == nil || p.Cmp(price) < 0 || p.Cmp(price) == 0 && (s.Cmp(size) < 0 || s.Cmp(size) == 0 && n < packs) {
				price, size, packs = p, s, n
			}
			return
		}
		o := offers[i]
		each := o.Size // least left over
		if priced {
			each = new(big.Rat).Sub(ratOf(o.Price), mul(worth, lowest, o.Size))
		}
		p, s = new(big.Rat).Set(p), new(big.Rat).Set(s)
		for alone := rat("0"); ; alone.Add(alone, o.Size) {
			try(i+1, p, s, n)
			if alone.Cmp(need) >= 0 {
				return
			}
			p, s, n = new(big.Rat).Add(p, each), new(big.Rat).Add(s, o.Size), n+1
		}
	}
	try(0, rat("0"), rat("0"), 0)
	return price, size, packs
}

func TestLeastMoneyEqualsEnumeration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		need := big.NewRat(rapid.Int64Range(1, 200).Draw(t, "need"), rapid.Int64Range(1, 12).Draw(t, "over"))
		worth := rapid.SampledFrom([]string{"0", "0.25", "1"}).Draw(t, "worth")
		allPriced := rapid.Float64().Draw(t, "all priced") > 0.2
		var offers []finish.Offer
		for range rapid.IntRange(1, 3).Draw(t, "offers") {
			size := rapid.OneOf(
				rapid.SampledFrom([]*big.Rat{rat("4"), rat("1"), rat("8"), rat("2"), rat("20"), rat("3/4"), rat("5/2")}), // sizes that divide each other
				rapid.Custom(func(t *rapid.T) *big.Rat {
					return big.NewRat(rapid.Int64Range(5, 90).Draw(t, "n"), rapid.Int64Range(1, 9).Draw(t, "d"))
				}),
			).Draw(t, "size")
			o := finish.Offer{Size: new(big.Rat).Add(size, quo(need, rat("12")))} // at most a dozen of each
			if rapid.Bool().Draw(t, "plain size") && quo(need, size).Cmp(rat("12")) < 0 {
				o.Size = size
			}
			if allPriced || rapid.Bool().Draw(t, "priced") {
				o.Price = money.Of(decimal.New(rapid.SampledFrom([]int64{0, 100, 250, 400, 399, 1600, 975}).Draw(t, "cents"), -2))
			}
			offers = append(offers, o)
		}
		price, size, packs := enumerate(need, offers, rat(worth))
		counts, held, proved := finish.BestMix(need, offers, rat(worth))
		if !proved {
			t.Fatal("not proved")
		}
		got := priceOf(counts, offers, rat(worth))
		total := int64(0)
		for _, n := range counts {
			total += n
		}
		if got.Cmp(price) != 0 || held.Cmp(size) != 0 || total != packs {
			t.Fatalf("need %v: %v costs %v and holds %v; enumeration has %v, %v, %d packs", need, counts, got, held, price, size, packs)
		}
	})
}

// ratOf is a known price as an exact number.
func ratOf(a money.Amount) *big.Rat {
	d, _ := a.Decimal()
	return d.Rat()
}

// priceOf is the effective price of a mix.
func priceOf(counts []int64, offers []finish.Offer, worth *big.Rat) *big.Rat {
	var lowest *big.Rat
	for _, o := range offers {
		if !o.Price.Known() {
			held := new(big.Rat)
			for i, n := range counts {
				held.Add(held, mul(big.NewRat(n, 1), offers[i].Size))
			}
			return held
		}
		if rate := quo(ratOf(o.Price), o.Size); lowest == nil || rate.Cmp(lowest) < 0 {
			lowest = rate
		}
	}
	total := rat("0")
	for i, n := range counts {
		each := new(big.Rat).Sub(ratOf(offers[i].Price), mul(worth, lowest, offers[i].Size))
		total.Add(total, mul(each, big.NewRat(n, 1)))
	}
	return total
}

func offer(size, price string) finish.Offer {
	return finish.Offer{Size: rat(size), Price: money.MustParse(price)}
}

func TestLeastMoney(t *testing.T) {
	cans := []finish.Offer{offer("1", "19.20"), offer("4", "47.00")} // quart and gallon
	for _, c := range []struct {
		name   string
		need   string
		offers []finish.Offer
		worth  string
		want   []int64
	}{
		{"one small can", "0.8", cans, "0", []int64{1, 0}},
		{"two small cans are cheaper than a large one", "2", cans, "0", []int64{2, 0}},
		{"three small cans are dearer", "2.1", cans, "0", []int64{0, 1}},
		{"a large one and a small one", "4.9", cans, "0", []int64{1, 1}},
		{"leftover worth all: the large can for less than its half", "0.8", cans, "1", []int64{0, 1}},
		{"equal price per size: fewest cans", "4", []finish.Offer{offer("1", "10"), offer("4", "40")}, "0", []int64{0, 1}},
		{"equal price per size: least left over", "3", []finish.Offer{offer("1", "10"), offer("4", "40")}, "0", []int64{3, 0}},
		{"equal money: least left over", "0.9", []finish.Offer{offer("1", "10"), offer("4", "10")}, "0", []int64{1, 0}},
		{"no prices: fewest cans", "3.1", []finish.Offer{{Size: rat("1")}, {Size: rat("4")}}, "0", []int64{0, 1}},
		{"no prices: the small can where one will do", "0.9", []finish.Offer{{Size: rat("1")}, {Size: rat("4")}}, "0", []int64{1, 0}},
		{"a free pack", "3", []finish.Offer{offer("1", "0"), offer("4", "5")}, "0", []int64{3, 0}},
	} {
		t.Run(c.name, func(t *testing.T) {
			counts, _, proved := finish.BestMix(rat(c.need), c.offers, rat(c.worth))
			if !proved || counts[0] != c.want[0] || counts[1] != c.want[1] {
				t.Errorf("LeastMoney(%s) = %v, %v, want %v", c.need, counts, proved, c.want)
			}
		})
	}
}

// TestMixSaysWhereTheSearchEnded has sizes without a common measure at prices that hardly differ,
// and a great need.
func TestMixSaysWhereTheSearchEnded(t *testing.T) {
	var offers []finish.Offer
	for _, size := range []string{"101", "103", "107", "109", "113", "127"} {
		offers = append(offers, offer(size, size))
	}
	counts, held, proved := finish.BestMix(rat("100000.5"), offers, rat("0"))
	if proved {
		t.Errorf("proved within %d steps: the test needs a harder case", finish.MixSteps)
	}
	if held.Cmp(rat("100000.5")) < 0 {
		t.Errorf("%v holds only %v", counts, held)
	}
}
