package finish_test

import (
	"fmt"
	"math/big"
	"testing"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction/money"
)

func BenchmarkTakeOff(b *testing.B) {
	w, m := kitchen(), finish.Materials{}
	b.ReportAllocs()
	for b.Loop() {
		if _, _, err := finish.TakeOff(w, m); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkLeastMoney has the packs of a paint counter beside the plain enumeration that the tests
// use.
func BenchmarkLeastMoney(b *testing.B) {
	offers := []finish.Offer{
		{Size: rat("1"), Price: money.MustParse("19.20")},
		{Size: rat("4"), Price: money.MustParse("47.00")},
		{Size: rat("20"), Price: money.MustParse("198.00")},
	}
	for _, need := range []int64{3, 30, 100} {
		quarts := big.NewRat(10*need+1, 10)
		b.Run(fmt.Sprintf("search/need=%d", need), func(b *testing.B) {
			for b.Loop() {
				finish.BestMix(quarts, offers, new(big.Rat))
			}
		})
		b.Run(fmt.Sprintf("enumeration/need=%d", need), func(b *testing.B) {
			for b.Loop() {
				enumerate(quarts, offers, new(big.Rat))
			}
		})
	}
}

func BenchmarkCautionsAndSchedule(b *testing.B) {
	w, m := kitchen(), finish.Materials{}
	for b.Loop() {
		finish.Cautions(w, m)
		finish.Schedule(w, m)
	}
}
