package nest

import (
	"cmp"
	"math/big"
	"slices"

	"example.com/groovewright/fraction"
)

// Worth is a value for parts by their height, such that the parts met by any
// upright line through a sheet are worth no more than a certain sum. So the parts
// of a sheet, each with a kerf to its right, are worth no more than the sheet's
// width and a kerf times that sum, and what a room's parts are worth in all says
// how many sheets they need at least (LowerStrips has the argument). The zero
// Worth values everything at 0.
type Worth struct {
	sizes  []int64 // with a kerf, in steps; falling
	values []int64 // of parts at least so high
	most   []int64 // on an upright line through each kind of stock
	s      *stripper
	how    string
}

// Worths returns the worths that say most of the strips, the best first, no more
// than most of them. They value parts by the heights of the strips and those given
// besides. The errors are those of LowerStrips.
func Worths(p Problem, strips []Strip, heights []fraction.Length, most int) (worths []Worth, err error) {
	defer fraction.Catch(&err)
	p.Parts = nil
	if err := p.Validate(); err != nil {
		return nil, err
	}
	strips = usable(strips)
	if len(strips) == 0 {
		return nil, nil
	}
	s := newStripper(&p, strips)
	sizes := slices.Clone(s.sizes)
	for _, h := range heights {
		if h.Sign() > 0 {
			sizes = append(sizes, s.stepsIn(h.Add(p.Saw.Kerf)))
		}
	}
	sizes = falling(sizes)

	area := Worth{sizes: sizes, values: sizes, most: s.tall, s: s, how: "area of the pieces with kerfs"}
	worths = append(worths, area)
	for d, allowed := range s.duals(sizes) {
		w := Worth{sizes: sizes, values: make([]int64, len(sizes)), most: allowed, s: s, how: "heights of the pieces " + under(d)}
		for i, size := range sizes {
			w.values[i] = d.At(size)
		}
		worths = append(worths, w)
	}
	worths = slices.DeleteFunc(worths, func(w Worth) bool { return slices.Max(w.most) == 0 })
	slices.SortStableFunc(worths, func(a, b Worth) int { return b.fill().Cmp(a.fill()) })
	worths = slices.CompactFunc(worths, func(a, b Worth) bool { return slices.Equal(a.values, b.values) })
	return worths[:min(most, len(worths))], nil
}

// fill returns the share of the largest sheet that the strips take.
func (w *Worth) fill() *big.Rat {
	values := make([]int64, len(w.s.tallest))
	for i, h := range w.s.tallest {
		values[i] = w.at(h)
	}
	largest := new(big.Int)
	for k, wide := range w.s.wide {
		if holds := product(wide, w.most[k]); largest.Cmp(holds) < 0 {
			largest = holds
		}
	}
	return new(big.Rat).SetFrac(w.s.need(values), largest)
}

// at returns the value of a part that is so many steps high with a kerf.
func (w *Worth) at(height int64) int64 {
	i, _ := slices.BinarySearchFunc(w.sizes, height, func(size, height int64) int { return cmp.Compare(height, size) })
	if i == len(w.sizes) {
		return 0
	}
	return w.values[i]
}

// Of returns what an inch of width of a part so high is worth. A higher part is
// worth no less.
func (w Worth) Of(height fraction.Length) int64 {
	if w.s == nil {
		return 0
	}
	return w.at(w.s.stepsIn(height.Add(w.s.p.Saw.Kerf)))
}

// Least returns a lower bound on what parts need that are worth so much in all:
// the sum over the parts of their width and a kerf times Of their height. It does
// not hold where parts are sawn out of the notches of others.
func (w Worth) Least(total fraction.Length) (l Least, err error) {
	defer fraction.Catch(&err)
	if w.s == nil || total.Sign() <= 0 {
		return Least{How: "nothing to cut"}, nil
	}
	need := new(big.Rat).Mul(total.Rat(), new(big.Rat).SetInt64(w.s.steps))
	w.s.bound(&l, w.how, new(big.Int).Quo(need.Num(), need.Denom()), w.most)
	return l, nil
}
