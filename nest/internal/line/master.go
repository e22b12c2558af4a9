package line

import (
	"iter"
	"math"
	"slices"
)

// tight is the tolerance of the programme: smaller reduced costs and levels count as zero. No bound
// depends on it; see [columns.solve]. perturbation is the size of the amounts that keep levels from
// being tied. After refresh pivots levels and prices are computed anew from the inverse, and with
// more drift than drifted the programme starts again.
const tight, perturbation, refresh, drifted = 1e-9, 1e-6, 50, 1e-7

// Master is the linear programme of the cutting-stock problem over the patterns known so far: the
// least number of bins such that each kind is covered,
//
//	min sum x(p)   with   sum count(p, kind) x(p) >= need(kind),   x >= 0
//
// (P. C. Gilmore and R. E. Gomory, "A linear programming approach to the cutting-stock problem",
// Operations Research 9, 1961). It is a revised simplex with a dense inverse; needs are raised by
// tiny different amounts so that ties do not stall it. Each product is converted to float64, which
// forbids fusing it with a sum, so that every machine takes the same pivots.
type Master struct {
	wanted  []int // of each kind; nil where patterns may hold more
	need    []float64
	pool    []pattern
	known   map[string]bool
	row     []int     // row[column]: where the column is basic, -1 if it is not
	basis   []int     // basis[row]: a column, or -1-kind for the surplus of a kind
	surplus []bool    // surplus[kind]: that surplus is basic
	inverse []float64 // of the basis, row by row
	level   []float64 // value of the basic variable of each row
	dual    []float64 // price of each kind
	alpha   []float64 // memory of column
	pivots  int
}

// NewMaster returns the programme that needs so many of each kind. It starts from one pattern for
// each kind, of most items of that kind.
func NewMaster(need, most []int) *Master {
	m := &Master{known: map[string]bool{}, need: make([]float64, len(most))}
	for kind, count := range most {
		m.add(pattern{{kind, count}})
	}
	m.cover(need)
	m.restart()
	return m
}

// restart returns to the basis of the starting patterns.
func (m *Master) restart() {
	n := len(m.need)
	for column := range m.row {
		m.row[column] = -1
	}
	m.basis, m.surplus, m.inverse = make([]int, n), make([]bool, n), make([]float64, n*n)
	m.level, m.dual, m.alpha = make([]float64, n), make([]float64, n), make([]float64, n)
	for kind := range n {
		count := float64(m.pool[kind][0].count)
		m.basis[kind], m.row[kind] = kind, kind
		m.inverse[kind*n+kind] = 1 / count
		m.dual[kind] = 1 / count
	}
	m.relevel()
}

// Add adds the pattern of so many items of each kind, and reports whether it was not yet known.
func (m *Master) Add(counts []int) bool {
	var p pattern
	for kind, count := range counts {
		if count > 0 {
			p = append(p, take{kind, count})
		}
	}
	return m.add(p)
}

func (m *Master) add(p pattern) bool {
	key := p.key()
	if m.known[key] {
		return false
	}
	m.known[key] = true
	m.pool = append(m.pool, p)
	m.row = append(m.row, -1)
	return true
}

// key is a text that is the same for equal patterns only.
func (p pattern) key() string {
	text := make([]byte, 0, 4*len(p))
	for _, t := range p {
		text = append(text, byte(t.kind), byte(t.kind>>8), byte(t.count), byte(t.count>>8))
	}
	return string(text)
}

// Loosen lets patterns hold more than is needed, until [Master.Cover] is called: the value may be less, but no bound that its prices
// give is wrong.
func (m *Master) Loosen() { m.wanted = nil }

// cover sets how many items of each kind are needed; the levels have to be computed anew.
func (m *Master) cover(need []int) {
	m.wanted = need
	noise := uint64(1)
	for kind, count := range need {
		noise = scramble(noise)
		m.need[kind] = float64(count) + perturbation*(1+float64(noise>>40)/(1<<24))
	}
}

// relevel computes the levels from the needs.
func (m *Master) relevel() {
	n := len(m.need)
	for r := range n {
		var sum float64
		for kind, x := range m.inverse[r*n : r*n+n] {
			sum += float64(x * m.need[kind])
		}
		m.level[r] = sum
	}
}

// bins is the value of the programme: the sum of the levels of patterns.
func (m *Master) bins() float64 {
	var sum float64
	for r, column := range m.basis {
		if column >= 0 {
			sum += m.level[r]
		}
	}
	return sum
}

// Prices returns the dual prices in units of 1/one of a bin, rounded down, each from 0 to one.
func (m *Master) Prices(one int64) []int64 {
	values := make([]int64, len(m.dual))
	for kind, dual := range m.dual {
		values[kind] = int64(min(max(0, dual), 1) * float64(one))
	}
	return values
}

// reduced is the reduced cost of a pattern.
func (m *Master) reduced(p pattern) float64 {
	cost, dual := 1.0, m.dual
	for _, t := range p {
		cost -= float64(float64(t.count) * dual[t.kind])
	}
	return cost
}

// proper reports whether a pattern holds no more than is needed.
func (p pattern) proper(need []int) bool {
	return need == nil || !slices.ContainsFunc(p, func(t take) bool { return t.count > need[t.kind] })
}

// Optimize pivots until no known pattern lowers the value, and returns the value and the pivots.
func (m *Master) Optimize() (bins float64, pivots int) {
	for pivots < 1000+100*len(m.need) && m.step() {
		pivots++
	}
	return m.bins(), pivots
}

// Cover changes how many items of each kind are needed; [Master.Optimize] goes on from there.
// Patterns of more items than that are not used.
func (m *Master) Cover(need []int) {
	m.cover(need)
	if m.relevel(); !m.repair(20 + len(need)) {
		m.restart()
	}
}

// Levels yields how often each pattern is used, where it is: first those of [NewMaster], one for
// each kind, then those that Add took, in that order.
func (m *Master) Levels() iter.Seq2[int, float64] {
	return func(yield func(int, float64) bool) {
		for r, column := range m.basis {
			if column >= 0 && m.level[r] > tight && !yield(column, m.level[r]) {
				return
			}
		}
	}
}

// step makes the next pivot and reports whether there was one.
func (m *Master) step() bool {
	entering, cost, ok := m.cheapest()
	if !ok {
		return false
	}
	alpha := m.column(entering)
	r, ok := m.leave(alpha)
	if ok { // but for rounding always: levels are bounded
		m.pivot(entering, r, alpha, cost)
	}
	return ok
}

// column is the entering column in terms of the basis, until it is asked for the next one.
func (m *Master) column(entering int) []float64 {
	n, alpha := len(m.need), m.alpha
	clear(alpha)
	if entering < 0 {
		kind := -1 - entering
		for r := range n {
			alpha[r] = -m.inverse[r*n+kind]
		}
		return alpha
	}
	for _, t := range m.pool[entering] {
		count := float64(t.count)
		for r := range n {
			alpha[r] += float64(count * m.inverse[r*n+t.kind])
		}
	}
	return alpha
}

// mark notes that a variable is basic in row r, or with -1 that it is not.
func (m *Master) mark(variable, r int) {
	if variable >= 0 {
		m.row[variable] = r
	} else {
		m.surplus[-1-variable] = r >= 0
	}
}

// pivot makes entering basic in row r; alpha is its column, cost its reduced cost.
func (m *Master) pivot(entering, r int, alpha []float64, cost float64) {
	n := len(m.need)
	m.mark(m.basis[r], -1)
	m.basis[r] = entering
	m.mark(entering, r)
	scale := 1 / alpha[r]
	pivotRow := m.inverse[r*n : r*n+n]
	for kind, x := range pivotRow {
		if x != 0 {
			pivotRow[kind] = x * scale
			m.dual[kind] += float64(cost * pivotRow[kind])
		}
	}
	m.level[r] *= scale
	for i := range n {
		if a := alpha[i]; i != r && a != 0 {
			row := m.inverse[i*n:][:len(pivotRow)]
			for kind, x := range pivotRow { // most of it is filled
				row[kind] -= float64(a * x)
			}
			m.level[i] -= float64(a * m.level[r])
		}
	}
	if m.pivots++; m.pivots%refresh == 0 {
		m.relevel()
		m.reprice()
		if m.drift() > drifted {
			m.restart()
		}
	}
}

// drift is how far the levels are from meeting the needs: the error gathered in the inverse.
func (m *Master) drift() (most float64) {
	left := slices.Clone(m.need)
	for r, column := range m.basis {
		if column < 0 {
			left[-1-column] += m.level[r]
			continue
		}
		for _, t := range m.pool[column] {
			left[t.kind] -= float64(float64(t.count) * m.level[r])
		}
	}
	for _, x := range left {
		most = max(most, math.Abs(x))
	}
	return most
}

// reprice computes the prices from the inverse.
func (m *Master) reprice() {
	n := len(m.need)
	clear(m.dual)
	for r, column := range m.basis {
		if column < 0 {
			continue
		}
		for kind, x := range m.inverse[r*n : r*n+n] {
			m.dual[kind] += x
		}
	}
}

// cheapest is the surplus or proper pattern with the least reduced cost, if that is below zero.
func (m *Master) cheapest() (entering int, cost float64, ok bool) {
	cost = -tight
	for kind, price := range m.dual {
		if price < cost && !m.surplus[kind] {
			entering, cost, ok = -1-kind, price, true
		}
	}
	for column, p := range m.pool {
		if m.row[column] < 0 {
			if c := m.reduced(p); c < cost && p.proper(m.wanted) {
				entering, cost, ok = column, c, true
			}
		}
	}
	return entering, cost, ok
}

// leave is the row that first reaches zero as a variable enters, of equals that of largest entry.
func (m *Master) leave(alpha []float64) (int, bool) {
	chosen, least := -1, math.Inf(1)
	for r, a := range alpha {
		if a < 1e-7 {
			continue
		}
		ratio := max(0, m.level[r]) / a
		if ratio < least-1e-12 || ratio <= least+1e-12 && a > alpha[chosen] {
			chosen, least = r, ratio
		}
	}
	return chosen, chosen >= 0
}

// repair restores levels that a change of the needs left below zero, by the dual simplex. It
// reports false if it does not get there in the given number of pivots.
func (m *Master) repair(pivots int) bool {
	n := len(m.need)
	for range pivots {
		r, least := -1, -tight
		for i, level := range m.level {
			if level < least {
				r, least = i, level
			}
		}
		if r < 0 {
			return true
		}
		rho := m.inverse[r*n : r*n+n]
		var entering int
		var reduced, entry float64
		ratio, found := math.Inf(1), false
		try := func(variable int, alpha, cost float64) {
			if alpha > -1e-7 {
				return
			}
			q := max(0, cost) / -alpha
			if q < ratio-1e-12 || q <= ratio+1e-12 && alpha < entry {
				entering, reduced, ratio, entry, found = variable, cost, q, alpha, true
			}
		}
		for kind := range n {
			if !m.surplus[kind] {
				try(-1-kind, -rho[kind], m.dual[kind])
			}
		}
		for column, p := range m.pool {
			if m.row[column] >= 0 || !p.proper(m.wanted) {
				continue
			}
			alpha := 0.0
			for _, t := range p {
				alpha += float64(float64(t.count) * rho[t.kind])
			}
			try(column, alpha, m.reduced(p))
		}
		if !found {
			return false
		}
		m.pivot(entering, r, m.column(entering), reduced)
	}
	return false
}
