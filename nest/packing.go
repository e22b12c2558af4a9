package nest

import "math"

// packing is a linear programme: columns, each 0 or more, taken as much of in all as the limits of the rows allow. Columns are
// added as it goes on. It is solved by the revised simplex method (G. B. Dantzig and W. Orchard-Hays, "The product form for the
// inverse in the simplex method", Mathematical Tables and Other Aids to Computation 8, 1954), in floats: what comes of it proves
// nothing. The programme of line.Master is another one: it covers needs by patterns of whole counts.
type packing struct {
	columns [][]float64
	basis   []int       // by row: a column, or -1 - r for what row r has left
	taken   []float64   // of it
	inverse [][]float64 // of the basis, by columns; nil for one that is still of the unit matrix
	changed []int       // those that are not
	prices  []float64   // of the rows
}

// How a programme is solved: limits differ by a part so small that no two rows bind at once; a column enters that gains at
// least gain; a pivot is at least leastPivot; and of columns that are not in the basis only the last are kept.
const (
	apart       = 1e-5
	gain        = 1e-6
	leastPivot  = 1e-9
	mostPivots  = 200 // at once
	keptColumns = 60
)

// start begins without columns.
func (p *packing) start(limits []float64) {
	rows := len(limits)
	p.inverse, p.prices = make([][]float64, rows), make([]float64, rows)
	for r, limit := range limits {
		p.basis = append(p.basis, -1-r)
		p.taken = append(p.taken, float64(limit*(1+apart*float64(1+r*7919%rows)/float64(rows))))
	}
}

// value returns the price of one column in terms of what is taken: 1 over the sum.
func (p *packing) value() float64 {
	var sum float64
	for r, b := range p.basis {
		if b >= 0 {
			sum += p.taken[r]
		}
	}
	return 1 / sum
}

// optimize goes on to the optimum, or nearly.
func (p *packing) optimize() {
	p.forget()
	for range mostPivots {
		if entering, ok := p.entering(); !ok || !p.pivot(entering) {
			break
		}
	}
	for r, price := range p.prices {
		p.prices[r] = max(0, price)
	}
}

// forget drops columns that were long not taken.
func (p *packing) forget() {
	if len(p.columns) <= 2*keptColumns {
		return
	}
	in := make([]bool, len(p.columns))
	for _, b := range p.basis {
		if b >= 0 {
			in[b] = true
		}
	}
	at, kept := make([]int, len(p.columns)), p.columns[:0:0]
	for j, column := range p.columns {
		if at[j] = len(kept); in[j] || j >= len(p.columns)-keptColumns {
			kept = append(kept, column)
		}
	}
	for r, b := range p.basis {
		if b >= 0 {
			p.basis[r] = at[b]
		}
	}
	p.columns = kept
}

// entering returns the column that gains most, as the basis has it.
func (p *packing) entering() (entering int, ok bool) {
	most := gain
	for j, column := range p.columns {
		reduced := 1.0
		for _, r := range p.changed {
			reduced -= float64(p.prices[r] * column[r])
		}
		if reduced > most {
			most, entering, ok = reduced, j, true
		}
	}
	for _, r := range p.changed {
		if -p.prices[r] > most {
			most, entering, ok = -p.prices[r], -1-r, true
		}
	}
	return entering, ok
}

// pivot takes as much of a column as the basis allows; false where nothing bounds it.
func (p *packing) pivot(entering int) bool {
	alpha := p.solved(entering)
	row, ratio := -1, math.Inf(1)
	for r, a := range alpha {
		if a > leastPivot && p.taken[r]/a < ratio {
			row, ratio = r, p.taken[r]/a
		}
	}
	if row < 0 {
		return false
	}
	if p.inverse[row] == nil {
		p.inverse[row] = make([]float64, len(alpha))
		p.inverse[row][row] = 1
		p.changed = append(p.changed, row)
	}
	for _, r := range p.changed {
		if column := p.inverse[r]; column[row] != 0 {
			part := column[row] / alpha[row]
			for i, a := range alpha {
				column[i] -= float64(a * part)
			}
			column[row] = part
		}
	}
	for r, a := range alpha {
		p.taken[r] = max(0, p.taken[r]-float64(a*ratio))
	}
	p.taken[row], p.basis[row] = ratio, entering
	for _, r := range p.changed {
		p.prices[r] = 0
		for i, b := range p.basis {
			if b >= 0 {
				p.prices[r] += p.inverse[r][i]
			}
		}
	}
	return true
}

// solved returns a column in terms of the basis.
func (p *packing) solved(entering int) []float64 {
	alpha := make([]float64, len(p.taken))
	if entering < 0 {
		copy(alpha, p.inverse[-1-entering])
		return alpha
	}
	column := p.columns[entering]
	copy(alpha, column)
	for _, r := range p.changed {
		alpha[r] = 0
	}
	for _, r := range p.changed {
		if x := column[r]; x != 0 {
			for i, c := range p.inverse[r] {
				alpha[i] += float64(x * c)
			}
		}
	}
	return alpha
}
