package nest

import (
	"fmt"
	"math"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// maxMarks bounds a length in marks, so that an area fits 60 bits; maxTotal sums of areas or
// prices.
const maxMarks, maxTotal = 1 << 30, math.MaxInt64 / 4

// piece is a part as the search sees it, at the same index as in Problem.Parts.
type piece struct {
	w, h int64
	at   [2]int64 // phases that its left edge may have; the first is upright
	ways int      // how many of at count: 1, or 2 where turning gives another phase
}

// sheetKind is a kind of stock as the search sees it. Its y starts above the trim of the lower end,
// so that h is the length left after squaring up.
type sheetKind struct {
	w, h, phase int64
	trim        int64 // what squaring takes off each end
	limited     bool
	count       int // sheets there can be any use for
	price       int64
	usable      bool // something can be cut from it
}

// job is a problem on whole numbers, as searching takes millions of additions: every length is a
// count of one common mark, every price one of a common coin. Nothing is rounded on the way.
type job struct {
	p      *Problem
	den    int64 // marks to the inch
	coin   int64 // coins to the unit of money
	kerf   int64
	pitch  int64
	kinds  []sheetKind
	pieces []piece
	memory *Memory
}

// newJob puts a valid problem on whole numbers. It fails with ErrRange.
func newJob(p *Problem) (*job, error) {
	j := &job{p: p, memory: &Memory{}}
	if err := j.findMarks(); err != nil {
		return nil, err
	}
	short := fault.List{Cause: ErrRange}
	j.kerf, j.pitch = j.marks(p.Saw.Kerf), j.marks(p.Pattern.Pitch)
	axis := j.marks(p.Pattern.Axis)
	j.pieces = make([]piece, len(p.Parts))
	var total int64
	for i, part := range p.Parts {
		q := piece{w: j.marks(part.Width), h: j.marks(part.Height), ways: 1}
		q.at[0] = floorMod(j.marks(part.LeftPhase), j.pitch)
		turned := floorMod(2*axis-q.w-q.at[0], j.pitch)
		if p.Pattern.Mirrored && turned != q.at[0] {
			q.at[1], q.ways = turned, 2
		}
		if total += (q.w + j.kerf) * (q.h + j.kerf); total > maxTotal {
			short.Add(nil, "fewer or smaller parts", "Parts", i, "Height")
			total = 0
		}
		j.pieces[i] = q
	}
	for i, s := range p.Stock {
		k := sheetKind{w: j.marks(s.Width), trim: j.marks(s.trim(p.Saw)), limited: s.Count != nil, count: len(p.Parts)}
		k.h = j.marks(s.Length) - 2*k.trim
		k.phase = floorMod(j.marks(s.LeftPhase), j.pitch)
		if k.limited {
			k.count = min(*s.Count, k.count)
		}
		k.price = j.coins(s.price())
		if most, ok := times(k.price, int64(len(p.Parts)+1)*int64(len(p.Stock))); !ok || most > maxTotal {
			short.Add(s.Price, "a smaller price", "Stock", i, "Price")
		}
		for n := range j.pieces {
			k.usable = k.usable || k.count > 0 && j.fits(&k, &j.pieces[n])
		}
		j.kinds = append(j.kinds, k)
	}
	return j, short.Err()
}

// lengths calls f for each length of a problem, with its path.
func (p *Problem) lengths(f func(x fraction.Length, path ...any)) {
	f(p.Saw.Kerf, "Saw", "Kerf")
	f(p.Saw.SquareUp, "Saw", "SquareUp")
	f(p.Pattern.Pitch, "Pattern", "Pitch")
	f(p.Pattern.Axis, "Pattern", "Axis")
	for i, s := range p.Stock {
		f(s.Width, "Stock", i, "Width")
		f(s.Length, "Stock", i, "Length")
		f(s.LeftPhase, "Stock", i, "LeftPhase")
	}
	for i, part := range p.Parts {
		f(part.Width, "Parts", i, "Width")
		f(part.Height, "Parts", i, "Height")
		f(part.LeftPhase, "Parts", i, "LeftPhase")
	}
}

// findMarks finds the least den and coin that make all lengths and prices whole and within range.
func (j *job) findMarks() error {
	j.den, j.coin = 1, 1
	short := fault.List{Cause: ErrRange}
	whole := func(unit *int64, x any, den int64, path ...any) {
		m, ok := times(*unit/gcd(*unit, den), den)
		if !ok || m > maxMarks {
			short.Add(x, fmt.Sprintf("a denominator that has a smaller common multiple with %d", *unit), path...)
			return
		}
		*unit = m
	}
	j.p.lengths(func(x fraction.Length, path ...any) { whole(&j.den, x, x.Den(), path...) })
	for i, s := range j.p.Stock {
		whole(&j.coin, s.Price, s.price().Den(), "Stock", i, "Price")
	}
	if short.Err() == nil {
		j.p.lengths(func(x fraction.Length, path ...any) {
			if m, ok := times(x.Num(), j.den/x.Den()); !ok || m > maxMarks || m < -maxMarks {
				short.Add(x, fmt.Sprintf("at most %d in", maxMarks/j.den), path...)
			}
		})
	}
	return short.Err()
}

// marks returns a length of the problem in marks.
func (j *job) marks(x fraction.Length) int64 { return x.Num() * (j.den / x.Den()) }

// length turns marks back into inches.
func (j *job) length(marks int64) fraction.Length { return fraction.Of(marks, j.den) }

// money turns coins back into money.
func (j *job) money(coins int64) fraction.Ratio { return fraction.NewRatio(coins, j.coin) }

// coins turns money that is a whole number of coins into coins.
func (j *job) coins(money fraction.Ratio) int64 { return money.Num() * (j.coin / money.Den()) }

// next returns the least x >= from at which a piece may lie on a sheet that begins at the phase.
func (j *job) next(phase, from int64, q *piece) int64 {
	gap := floorMod(q.at[0]-phase-from, j.pitch)
	if q.ways == 2 {
		gap = min(gap, floorMod(q.at[1]-phase-from, j.pitch))
	}
	return from + gap
}

// fits reports whether the piece can be cut from an empty sheet of the kind.
func (j *job) fits(k *sheetKind, q *piece) bool {
	return q.h <= k.h && j.next(k.phase, 0, q)+q.w <= k.w
}

// times multiplies by b > 0; ok is false if the product does not fit.
func times(a, b int64) (product int64, ok bool) {
	product = a * b
	return product, product/b == a
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// floorMod returns x modulo m, in [0, m), and 0 for m = 0: without a pitch every phase is 0.
func floorMod(x, m int64) int64 {
	if m == 0 {
		return 0
	}
	if x < -m || m <= x { // the division takes longer than all else
		x %= m
	}
	if x < 0 {
		x += m
	}
	return x
}
