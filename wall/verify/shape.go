package verify

import "slices"

type point struct{ X, Y rat }

func (p point) is(q point) bool { return same(p.X, q.X) && same(p.Y, q.Y) }

// apart returns the square of the distance of two points.
func apart(p, q point) rat { return sum(square(diff(p.X, q.X)), square(diff(p.Y, q.Y))) }

// A loop is a closed polygon; a shape is what lies inside an odd number of its loops.
type loop []point
type shape []loop

func rectangle(left, bottom, width, height rat) loop {
	right, top := sum(left, width), sum(bottom, height)
	return loop{{left, bottom}, {right, bottom}, {right, top}, {left, top}}
}

func (l loop) moved(dx, dy rat) loop {
	out := make(loop, len(l))
	for i, p := range l {
		out[i] = point{sum(p.X, dx), sum(p.Y, dy)}
	}
	return out
}

// area is positive for a loop that runs counterclockwise.
func (l loop) area() rat {
	total := zero()
	for i, p := range l {
		q := l[(i+1)%len(l)]
		total.Add(total, diff(times(p.X, q.Y), times(q.X, p.Y)))
	}
	return half(total)
}

// bounds returns the lower left and upper right corners; the loop is not empty.
func (l loop) bounds() (low, high point) {
	low, high = l[0], l[0]
	for _, p := range l[1:] {
		low = point{least(low.X, p.X), least(low.Y, p.Y)}
		high = point{most(high.X, p.X), most(high.Y, p.Y)}
	}
	return low, high
}

// simple returns the loop without points that stand twice or on a level or upright edge.
func (l loop) simple() loop {
	out := slices.Clone(l)
	for i := 0; i < len(out) && len(out) > 3; {
		before, p, after := out[(i+len(out)-1)%len(out)], out[i], out[(i+1)%len(out)]
		if p.is(after) || same(before.X, p.X) && same(p.X, after.X) || same(before.Y, p.Y) && same(p.Y, after.Y) {
			out = slices.Delete(out, i, i+1)
			i = max(i-1, 0)
			continue
		}
		i++
	}
	return out
}

// square returns whether every edge is level or upright.
func (l loop) square() bool {
	for i, p := range l {
		if q := l[(i+1)%len(l)]; !same(p.X, q.X) && !same(p.Y, q.Y) {
			return false
		}
	}
	return true
}

// grown returns loops that together hold every place within gap of the inside, measured along and
// across.
func (l loop) grown(gap rat) []loop {
	if len(l) == 4 && l.square() {
		low, high := l.bounds()
		twice := sum(gap, gap)
		return []loop{rectangle(diff(low.X, gap), diff(low.Y, gap), sum(diff(high.X, low.X), twice), sum(diff(high.Y, low.Y), twice))}
	}
	out := []loop{l}
	for i, p := range l {
		out = append(out, swept(p, l[(i+1)%len(l)], gap))
	}
	return out
}

// swept returns what a square of twice the gap covers when its middle moves from p to q.
func swept(p, q point, gap rat) loop {
	if less(q.X, p.X) || same(p.X, q.X) && less(q.Y, p.Y) {
		p, q = q, p
	}
	at := func(p point, x, y int64) point {
		return point{sum(p.X, times(gap, whole(x))), sum(p.Y, times(gap, whole(y)))}
	}
	if same(p.X, q.X) || !less(q.Y, p.Y) { // upward
		return loop{at(p, -1, -1), at(p, 1, -1), at(q, 1, -1), at(q, 1, 1), at(q, -1, 1), at(p, -1, 1)}
	}
	return loop{at(p, -1, -1), at(q, -1, -1), at(q, 1, -1), at(q, 1, 1), at(p, 1, 1), at(p, -1, 1)}
}

// keep returns the part of the loop where side is not negative. The line where side is 0 is
// straight, and side is linear.
func (l loop) keep(side func(point) rat) loop {
	var out loop
	for i, p := range l {
		q := l[(i+1)%len(l)]
		a, b := side(p), side(q)
		if a.Sign() >= 0 {
			out = append(out, p)
		}
		if a.Sign()*b.Sign() < 0 {
			t := over(a, diff(a, b))
			out = append(out, point{sum(p.X, times(t, diff(q.X, p.X))), sum(p.Y, times(t, diff(q.Y, p.Y)))})
		}
	}
	return out
}
