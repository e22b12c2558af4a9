package nest

import (
	"fmt"
	"math"

	"example.com/groovewright/fraction"
)

// Searching takes millions of additions, so a problem is first put on whole
// numbers: every length as a count of one common mark 1/den inch, every price as
// a count of one common coin. Nothing is rounded on the way in or out.

// maxMarks bounds a scaled length, so that an area fits 60 bits.
const maxMarks = 1 << 30

// maxTotal bounds sums of scaled areas and of scaled prices.
const maxTotal = math.MaxInt64 / 4

// piece is a part as the search sees it.
type piece struct {
	part int // index into Problem.Parts
	w, h int64
	at   [2]int64 // phases that its left edge may have; the first is upright
	ways int      // how many of at count: 1, or 2 where turning gives another phase
}

// sheetKind is a kind of stock as the search sees it. Its y starts above the
// trim of the lower end, so that h is the length left after squaring up.
type sheetKind struct {
	w, h    int64
	phase   int64
	trim    int64 // what squaring takes off each end
	limited bool
	count   int // sheets there can be any use for
	price   int64
	usable  bool // something can be cut from it
}

// job is a problem on whole numbers.
type job struct {
	p      *Problem
	den    int64 // marks to the inch
	coin   int64 // coins to the unit of money
	kerf   int64
	pitch  int64
	kinds  []sheetKind
	pieces []piece
}

// newJob puts a valid problem on whole numbers. It fails with ErrRange.
func newJob(p *Problem) (*job, error) {
	j := &job{p: p, den: 1, coin: 1}
	if err := j.findMarks(); err != nil {
		return nil, err
	}
	var short faults
	short.kind = ErrRange
	marks := func(path string, x fraction.Length) int64 {
		m, ok := times(x.Num(), j.den/x.Den())
		if !ok || m > maxMarks || m < -maxMarks {
			short.add(path, x.String(), "too long or too fine to be reckoned with the other lengths")
			return 0
		}
		return m
	}
	j.kerf = marks("saw.kerf", p.Saw.Kerf)
	trim := marks("saw.square_up", p.Saw.SquareUp)
	j.pitch = marks("pattern.pitch", p.Pattern.Pitch)
	axis := marks("pattern.axis", p.Pattern.Axis)
	j.pieces = make([]piece, len(p.Parts))
	var total int64
	for i, part := range p.Parts {
		path := fmt.Sprintf("parts[%d].", i)
		q := piece{part: i, w: marks(path+"width", part.Width), h: marks(path+"height", part.Height), ways: 1}
		if j.pitch > 0 {
			q.at[0] = floorMod(marks(path+"left_phase", part.LeftPhase), j.pitch)
			turned := floorMod(2*axis-q.w-q.at[0], j.pitch)
			if p.Pattern.Mirrored && turned != q.at[0] {
				q.at[1], q.ways = turned, 2
			}
		}
		total += (q.w + j.kerf) * (q.h + j.kerf)
		if total > maxTotal {
			short.add(path+"height", "", "the parts are too many or too large to be reckoned together")
			total = 0
		}
		j.pieces[i] = q
	}
	for i, s := range p.Stock {
		path := fmt.Sprintf("stock[%d].", i)
		k := sheetKind{w: marks(path+"width", s.Width), limited: s.limited(), count: len(p.Parts)}
		if !s.Squared {
			k.trim = trim
		}
		k.h = marks(path+"length", s.Length) - 2*k.trim
		if j.pitch > 0 {
			k.phase = floorMod(marks(path+"left_phase", s.LeftPhase), j.pitch)
		}
		if s.limited() {
			k.count = min(*s.Count, k.count)
		}
		each := s.price()
		price, ok := times(each.Num(), j.coin/each.Den())
		if most, ok2 := times(price, int64(len(p.Parts)+1)*int64(len(p.Stock))); !ok || !ok2 || most > maxTotal {
			short.add(path+"price", s.Price.String(), "too large or too fine to be reckoned with the other prices")
		}
		k.price = price
		j.kinds = append(j.kinds, k)
	}
	for i := range j.kinds {
		for _, q := range j.pieces {
			if j.fits(&j.kinds[i], &q) && j.kinds[i].count > 0 {
				j.kinds[i].usable = true
				break
			}
		}
	}
	return j, short.err()
}

// findMarks finds the least den and coin that make all lengths and prices whole.
func (j *job) findMarks() error {
	var short faults
	short.kind = ErrRange
	whole := func(unit *int64, path string, den int64) {
		m, ok := times(*unit/gcd(*unit, den), den)
		if !ok || m > maxMarks {
			short.add(path, "", fmt.Sprintf("its denominator %d has no common multiple with the others that can be reckoned with", den))
			return
		}
		*unit = m
	}
	p := j.p
	whole(&j.den, "saw.kerf", p.Saw.Kerf.Den())
	whole(&j.den, "saw.square_up", p.Saw.SquareUp.Den())
	whole(&j.den, "pattern.pitch", p.Pattern.Pitch.Den())
	whole(&j.den, "pattern.axis", p.Pattern.Axis.Den())
	for i, s := range p.Stock {
		path := fmt.Sprintf("stock[%d].", i)
		whole(&j.den, path+"width", s.Width.Den())
		whole(&j.den, path+"length", s.Length.Den())
		whole(&j.den, path+"left_phase", s.LeftPhase.Den())
		whole(&j.coin, path+"price", s.price().Den())
	}
	for i, part := range p.Parts {
		path := fmt.Sprintf("parts[%d].", i)
		whole(&j.den, path+"width", part.Width.Den())
		whole(&j.den, path+"height", part.Height.Den())
		whole(&j.den, path+"left_phase", part.LeftPhase.Den())
	}
	return short.err()
}

// length turns marks back into inches.
func (j *job) length(marks int64) fraction.Length { return fraction.Of(marks, j.den) }

// next returns the least x >= from at which a piece may lie on a sheet whose
// left edge shows the given phase.
func (j *job) next(phase, from int64, q *piece) int64 {
	if j.pitch == 0 {
		return from
	}
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

// times multiplies; ok is false if the product does not fit.
func times(a, b int64) (product int64, ok bool) {
	if a == 0 || b == 0 {
		return 0, true
	}
	product = a * b
	return product, product/b == a && !(a == -1 && b == math.MinInt64) && !(b == -1 && a == math.MinInt64)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// floorMod returns x modulo m, in [0, m).
func floorMod(x, m int64) int64 {
	if x %= m; x < 0 {
		x += m
	}
	return x
}
