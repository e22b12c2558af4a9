package nest

import (
	"slices"
)

// The fullest sheet where there is no pattern to match: a rectangle is then known by its size
// alone. A kerf is counted to each piece and once to the sheet. Where there is a pattern, the paces
// of a relaxation stand for the widths, and what is found bounds what can be cut.

// item is a size with the number and the value of its pieces.
type item struct {
	w, h, value int64
	count       int
}

// grid holds the greatest values that rectangles can be cut into, each item used any number of
// times. Its sizes are all sums of widths and of heights; a rectangle of another size can do what
// the next smaller one can. (P. C. Gilmore and R. E. Gomory, "Multistage cutting stock problems of
// two and more dimensions", Operations Research 13 (1965), with the sums of J. C. Herz, IBM J.
// Research and Development 16 (1972).) Where there are too many sums, sizes are counted in whole
// units, rounded down: what fitted before still does, so the values are upper bounds.
type grid struct {
	unit   [2]int64 // of widths and of heights
	xs, ys []int64
	value  []int64 // value[y*len(xs)+x]
}

// mostSums bounds the sums along one side of a grid.
const mostSums = 4096

// sums returns the sums of sizes, each any number of times, up to most; not all beyond mostSums.
func sums(items []item, size func(item) int64, most int64) []int64 {
	all := []int64{0}
	seen := map[int64]bool{0: true}
	for i := 0; i < len(all) && len(all) <= mostSums; i++ {
		for _, q := range items {
			if t := all[i] + size(q); t <= most && !seen[t] {
				seen[t] = true
				all = append(all, t)
			}
		}
	}
	slices.Sort(all)
	return all
}

// floors returns for each sum i and each sum a up to half of it the number of the largest sum that
// is no more than sum i less sum a.
func floors(all []int64) [][]int32 {
	table := make([][]int32, len(all))
	for i, whole := range all {
		rest := i
		for a := 0; a <= i && 2*all[a] <= whole; a++ {
			for all[rest] > whole-all[a] {
				rest--
			}
			table[i] = append(table[i], int32(rest))
		}
	}
	return table
}

// newGrid makes an empty grid for rectangles up to w by h, with units so large that it costs no more
// than so many steps; nil where a unit would be larger than an item.
func newGrid(items []item, w, h int64, steps int) *grid {
	g := &grid{unit: [2]int64{1, 1}}
	least := [2]int64{w, h}
	for _, q := range items {
		least[0], least[1] = min(least[0], q.w), min(least[1], q.h)
	}
	for {
		g.xs = sums(items, func(q item) int64 { return q.w / g.unit[0] }, w/g.unit[0])
		g.ys = sums(items, func(q item) int64 { return q.h / g.unit[1] }, h/g.unit[1])
		if max(len(g.xs), len(g.ys)) <= mostSums && g.cost() <= steps {
			return g
		}
		side := 0
		if len(g.xs) < len(g.ys) && 2*g.unit[1] <= least[1] || 2*g.unit[0] > least[0] {
			side = 1
		}
		if g.unit[side] *= 2; g.unit[side] > least[side] {
			return nil
		}
	}
}

// cost estimates the steps of fill and outside together.
func (g *grid) cost() int { return len(g.xs) * len(g.ys) * (len(g.xs) + len(g.ys)) }

// at returns the index of a rectangle, of the next smaller one if its sides are no sums.
func (g *grid) at(w, h int64) int {
	x, exact := slices.BinarySearch(g.xs, w/g.unit[0])
	if !exact {
		x--
	}
	y, exact := slices.BinarySearch(g.ys, h/g.unit[1])
	if !exact {
		y--
	}
	return y*len(g.xs) + x
}

// fill computes the values of all rectangles.
func (g *grid) fill(items []item) {
	nx := len(g.xs)
	g.value = make([]int64, nx*len(g.ys))
	for _, q := range items {
		if q.w/g.unit[0] <= g.xs[nx-1] && q.h/g.unit[1] <= g.ys[len(g.ys)-1] {
			g.value[g.at(q.w, q.h)] = max(g.value[g.at(q.w, q.h)], q.value)
		}
	}
	acrossX, acrossY := floors(g.xs), floors(g.ys)
	for y := range g.ys {
		row := g.value[y*nx : (y+1)*nx]
		for x := range g.xs {
			best := row[x]
			if x > 0 {
				best = max(best, row[x-1])
			}
			if y > 0 {
				best = max(best, g.value[(y-1)*nx+x])
			}
			for a, rest := range acrossX[x] {
				best = max(best, row[a]+row[rest])
			}
			for a, rest := range acrossY[y] {
				best = max(best, g.value[a*nx+x]+g.value[int(rest)*nx+x])
			}
			row[x] = best
		}
	}
}

// outside returns, for a rectangle in the lower left corner of the whole, no less value than can be
// cut from the rest: strips to the right and above, in turn.
func (g *grid) outside() []int64 {
	nx, ny := len(g.xs), len(g.ys)
	rest := make([]int64, len(g.value))
	for y := ny - 1; y >= 0; y-- {
		for x := nx - 1; x >= 0; x-- {
			var most int64
			// The strip between two sums holds what the next smaller sum does.
			for to, a := x+1, 0; to < nx; to++ {
				for a+1 < nx && g.xs[a+1] <= g.xs[to]-g.xs[x] {
					a++
				}
				most = max(most, rest[y*nx+to]+g.value[y*nx+a])
			}
			for to, a := y+1, 0; to < ny; to++ {
				for a+1 < ny && g.ys[a+1] <= g.ys[to]-g.ys[y] {
					a++
				}
				most = max(most, rest[to*nx+x]+g.value[a*nx+x])
			}
			rest[y*nx+x] = most
		}
	}
	return rest
}
