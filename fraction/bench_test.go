package fraction_test

import (
	"math/big"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"example.com/groovewright/fraction"
)

// pair is two lengths and a whole number, the same as big.Rat, and a as text: as a tape reads, as
// big.Rat reads that, and rounded, which both read.
type pair struct {
	a, b                     fraction.Length
	n                        int64
	x, y, m                  *big.Rat
	mixed, improper, decimal string
}

// sample makes pairs of lengths from 0 to 20 ft whose denominators are drawn from dens.
func sample(dens ...int64) []pair {
	random := rand.New(rand.NewPCG(1, 2))
	length := func() fraction.Length {
		den := dens[random.IntN(len(dens))]
		return fraction.Of(random.Int64N(240*den), den)
	}
	pairs := make([]pair, 128) // within the first cache, so that arithmetic is timed and not memory
	for i := range pairs {
		p := pair{a: length(), b: length(), n: random.Int64N(100)}
		p.x, p.y, p.m = p.a.Rat(), p.b.Rat(), big.NewRat(p.n, 1)
		p.mixed, p.improper, p.decimal = p.a.String(), p.x.String(), p.x.FloatString(2)
		pairs[i] = p
	}
	return pairs
}

// The results go where the compiler must keep them.
var (
	length fraction.Length
	area   fraction.Area
	sign   int
	rat    *big.Rat
)

// operations are what is timed. The rival makes a new number each time, as ours does; a second
// rival writes all results into one and the same number, which is the quickest that big.Rat can be
// used and keeps none of them.
var operations = []struct {
	name  string
	ours  func([]pair)
	rival func(p *pair, into *big.Rat)
}{
	{"Add", func(pairs []pair) {
		for i := range pairs {
			length = pairs[i].a.Add(pairs[i].b)
		}
	}, func(p *pair, into *big.Rat) { rat = into.Add(p.x, p.y) }},
	{"Sub", func(pairs []pair) {
		for i := range pairs {
			length = pairs[i].a.Sub(pairs[i].b)
		}
	}, func(p *pair, into *big.Rat) { rat = into.Sub(p.x, p.y) }},
	{"Mul", func(pairs []pair) {
		for i := range pairs {
			length = pairs[i].a.Mul(pairs[i].n)
		}
	}, func(p *pair, into *big.Rat) { rat = into.Mul(p.x, p.m) }},
	{"Times", func(pairs []pair) {
		for i := range pairs {
			area = pairs[i].a.Times(pairs[i].b)
		}
	}, func(p *pair, into *big.Rat) { rat = into.Mul(p.x, p.y) }},
	{"Compare", func(pairs []pair) {
		for i := range pairs {
			sign = pairs[i].a.Compare(pairs[i].b)
		}
	}, nil},
	{"Parse", func(pairs []pair) {
		for i := range pairs {
			length, _ = fraction.Parse(pairs[i].mixed, fraction.Inch)
		}
	}, func(p *pair, into *big.Rat) { rat, _ = into.SetString(p.improper) }},
	{"Parse decimals", func(pairs []pair) {
		for i := range pairs {
			length, _ = fraction.Parse(pairs[i].decimal, fraction.Inch)
		}
	}, func(p *pair, into *big.Rat) { rat, _ = into.SetString(p.decimal) }},
}

// turn times one go over the pairs, in ns for each.
func turn(pairs []pair, rounds int, f func([]pair)) float64 {
	start := time.Now()
	for range rounds {
		f(pairs)
	}
	return float64(time.Since(start)) / float64(rounds*len(pairs))
}

// BenchmarkAgainstBigRat times each operation and the same one of math/big.Rat by turns, on the
// same numbers, and reports the medians of the times and of their ratios: a turn that was
// interrupted does not count.
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
			fresh := func(pairs []pair) {
				for i := range pairs {
					op.rival(&pairs[i], new(big.Rat))
				}
			}
			one := new(big.Rat)
			reused := func(pairs []pair) {
				for i := range pairs {
					op.rival(&pairs[i], one)
				}
			}
			if op.rival == nil { // a comparison makes no number
				fresh = func(pairs []pair) {
					for i := range pairs {
						sign = pairs[i].x.Cmp(pairs[i].y)
					}
				}
				reused = fresh
			}
			b.Run(numbers.name+"/"+op.name, func(b *testing.B) {
				var ours, rival, times, timesReused []float64
				for b.Loop() {
					x, y, z := turn(pairs, 64, op.ours), turn(pairs, 2, fresh), turn(pairs, 2, reused)
					ours, rival = append(ours, x), append(rival, y)
					times, timesReused = append(times, y/x), append(timesReused, z/x)
				}
				b.ReportMetric(0, "ns/op")
				b.ReportMetric(median(ours), "ns-ours")
				b.ReportMetric(median(rival), "ns-big.Rat")
				b.ReportMetric(median(times), "times-as-fast")
				b.ReportMetric(median(timesReused), "times-as-fast-reused")
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
