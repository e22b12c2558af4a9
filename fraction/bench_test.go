package fraction_test

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/groovewright/fraction"
)

// pair is two lengths and a whole number, and the same as big.Rat.
type pair struct {
	a, b    fraction.Length
	n       int64
	x, y, m *big.Rat
}

// sample makes pairs of lengths from 0 to 20 ft whose denominators are drawn from dens.
func sample(dens ...int64) []pair {
	random := rand.New(rand.NewPCG(1, 2))
	length := func() fraction.Length {
		den := dens[random.IntN(len(dens))]
		return fraction.Of(random.Int64N(240*den), den)
	}
	pairs := make([]pair, 512)
	for i := range pairs {
		p := pair{a: length(), b: length(), n: random.Int64N(100)}
		p.x, p.y, p.m = p.a.Rat(), p.b.Rat(), big.NewRat(p.n, 1)
		pairs[i] = p
	}
	return pairs
}

var (
	length fraction.Length
	area   fraction.Area
	sign   int
	rat    = new(big.Rat) // reused, which is the quickest way to use a big.Rat
)

var operations = []struct {
	name        string
	ours, rival func([]pair)
}{
	{"Add",
		func(pairs []pair) {
			for i := range pairs {
				length = pairs[i].a.Add(pairs[i].b)
			}
		},
		func(pairs []pair) {
			for i := range pairs {
				rat.Add(pairs[i].x, pairs[i].y)
			}
		}},
	{"Sub",
		func(pairs []pair) {
			for i := range pairs {
				length = pairs[i].a.Sub(pairs[i].b)
			}
		},
		func(pairs []pair) {
			for i := range pairs {
				rat.Sub(pairs[i].x, pairs[i].y)
			}
		}},
	{"Mul",
		func(pairs []pair) {
			for i := range pairs {
				length = pairs[i].a.Mul(pairs[i].n)
			}
		},
		func(pairs []pair) {
			for i := range pairs {
				rat.Mul(pairs[i].x, pairs[i].m)
			}
		}},
	{"Times",
		func(pairs []pair) {
			for i := range pairs {
				area = pairs[i].a.Times(pairs[i].b)
			}
		},
		func(pairs []pair) {
			for i := range pairs {
				rat.Mul(pairs[i].x, pairs[i].y)
			}
		}},
	{"Compare",
		func(pairs []pair) {
			for i := range pairs {
				sign = pairs[i].a.Compare(pairs[i].b)
			}
		},
		func(pairs []pair) {
			for i := range pairs {
				sign = pairs[i].x.Cmp(pairs[i].y)
			}
		}},
}

// BenchmarkAgainstBigRat times each operation and the same one of math/big.Rat by turns, on the same numbers, and reports
// the medians of both and of their ratio: a turn that was interrupted does not count.
func BenchmarkAgainstBigRat(b *testing.B) {
	for _, numbers := range []struct {
		name string
		dens []int64
	}{
		{"sixteenths", []int64{16}},
		{"millimetres", []int64{127}},
		{"thirds to twelfths", []int64{3, 5, 6, 7, 9, 10, 12}},
		{"hundredths of a millimetre", []int64{2540}},
	} {
		pairs := sample(numbers.dens...)
		for _, op := range operations {
			b.Run(numbers.name+"/"+op.name, func(b *testing.B) {
				var ours, rival, ratio []float64
				for b.Loop() {
					const rounds = 8 // make our turn about as long as the rival's, or nearer to it
					start := time.Now()
					for range rounds {
						op.ours(pairs)
					}
					middle := time.Now()
					op.rival(pairs)
					x, y := float64(middle.Sub(start))/rounds, float64(time.Since(middle))
					ours, rival, ratio = append(ours, x), append(rival, y), append(ratio, y/x)
				}
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(median(ours)/float64(len(pairs)), "ns-ours")
				b.ReportMetric(median(rival)/float64(len(pairs)), "ns-big.Rat")
				b.ReportMetric(median(ratio), "times-as-fast")
			})
		}
	}
}

func median(x []float64) float64 {
	slices.Sort(x)
	return x[len(x)/2]
}

func BenchmarkParse(b *testing.B) {
	for _, s := range []string{"63 1/4", "63.25", `5' 3 1/4"`, "63¼", "1606.55 mm"} {
		b.Run(s, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				fraction.Parse(s, fraction.Inch)
			}
		})
	}
}

func BenchmarkRound(b *testing.B) {
	b.ReportAllocs()
	a, mark := fraction.MustParse("63 29/127"), fraction.Of(1, 16)
	for b.Loop() {
		length, _ = a.Round(mark, fraction.Down)
	}
}

func BenchmarkMod(b *testing.B) {
	b.ReportAllocs()
	a, pitch := fraction.MustParse("63 5/16"), fraction.MustParse("1 5/8")
	for b.Loop() {
		length = a.Mod(pitch)
	}
}

func BenchmarkString(b *testing.B) {
	b.ReportAllocs()
	a := fraction.MustParse("63 5/16")
	for b.Loop() {
		_ = a.String()
	}
}
