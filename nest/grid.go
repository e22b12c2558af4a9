package nest

import "slices"

// The fullest sheet where there is no pattern to match: position then makes no difference, and a
// rectangle is told by its size alone.

// grid holds the greatest values that rectangles can be cut into, if each group of pieces may be
// used any number of times. Its sizes are all sums of widths and all sums of heights; a rectangle
// of another size can do what the next smaller one can. (P. C. Gilmore and R. E. Gomory,
// "Multistage cutting stock problems of two and more dimensions", Operations Research 13 (1965),
// with the sums of J. C. Herz, IBM J. Research and Development 16 (1972).) A kerf is counted to
// each piece and once to the sheet.
type grid struct {
	xs, ys []int64
	value  []int64 // value[y*len(xs)+x]
}

// mostSums bounds the sums along one side of a grid; above it a grid costs more than it gives.
const mostSums = 4096

// sums returns all sums of sizes, each any number of times, up to most; not all if there are more
// than mostSums.
func sums(sizes []int64, most int64) []int64 {
	all := []int64{0}
	seen := map[int64]bool{0: true}
	for i := 0; i < len(all) && len(all) <= mostSums; i++ {
		for _, s := range sizes {
			if t := all[i] + s; t <= most && !seen[t] {
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

// newGrid makes an empty grid for rectangles up to w by h; it is nil if that would have too many
// sums.
func newGrid(sizes [][2]int64, w, h int64) *grid {
	var widths, heights []int64
	for _, s := range sizes {
		widths, heights = append(widths, s[0]), append(heights, s[1])
	}
	g := &grid{xs: sums(widths, w), ys: sums(heights, h)}
	if max(len(g.xs), len(g.ys)) > mostSums {
		return nil
	}
	return g
}

// cost estimates the steps of fill and outside together.
func (g *grid) cost() int { return len(g.xs) * len(g.ys) * (len(g.xs) + len(g.ys)) }

// fill reckons the values of all rectangles.
func (g *grid) fill(sizes [][2]int64, values []int64) {
	nx := len(g.xs)
	g.value = make([]int64, nx*len(g.ys))
	for i, s := range sizes {
		x, okX := slices.BinarySearch(g.xs, s[0])
		y, okY := slices.BinarySearch(g.ys, s[1])
		if okX && okY {
			g.value[y*nx+x] = max(g.value[y*nx+x], values[i])
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

// best returns the value of the whole.
func (g *grid) best() int64 { return g.value[len(g.value)-1] }

// outside returns, for a rectangle in the lower left corner of the whole, no less value than can be
// cut from the rest: strips to the right and above, in turn.
func (g *grid) outside() []int64 {
	nx, ny := len(g.xs), len(g.ys)
	rest := make([]int64, len(g.value))
	for y := ny - 1; y >= 0; y-- {
		for x := nx - 1; x >= 0; x-- {
			var most int64
			if x+1 < nx {
				most = rest[y*nx+x+1]
			}
			if y+1 < ny {
				most = max(most, rest[(y+1)*nx+x])
			}
			for to, a := x+1, 0; to < nx; to++ {
				// The strip between two sums holds what the next smaller sum does.
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
