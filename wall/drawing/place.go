package drawing

import (
	"iter"
	"math"
	"math/cmplx"
	"slices"
	"strings"
	"unicode"
)

const (
	closer         = 3.0    // between corners that one label names, from left to right
	offDot         = 2.6    // from a lead to a corner that is not its own, of a letter twice as far
	apartDots      = 22.0   // from a text with a lead to a corner that is not its own, or 1.3 times as far as its own
	shortLead      = .7     // that a lead ends before what it leads to
	farLead        = 240.0  // most ink from a text to what a lead from it leads to
	firstIdeograph = 0x2e80 // in Unicode, where no hyphen joins what goes on in the next line
	mostInk        = 1e6    // from end to end of a frame in which places are looked for, as no paper is larger
)

// point is a place of ink, or a way between two; y runs down, as on a screen.
type point = complex128

// segment is a straight line of ink. One that ends where it begins is a place.
type segment struct{ from, to point }

// spot is a place as a segment.
func spot(at point) segment { return segment{at, at} }

// span is the least box round a segment.
func (s segment) span() box { return spanned(real(s.from), imag(s.from), real(s.to), imag(s.to)) }

// nearest is what of a segment, but for a share of it at its ends, is nearest to a place.
func (s segment) nearest(at point, ends float64) point {
	way, share := s.to-s.from, .5
	if long := real(way)*real(way) + imag(way)*imag(way); long > 0 {
		to := at - s.from
		share = max(ends, min(1-ends, (real(to)*real(way)+imag(to)*imag(way))/long))
	}
	return s.along(share)
}

// along is the place at a share of a segment.
func (s segment) along(share float64) point { return s.from + (s.to-s.from)*complex(share, 0) }

// crosses reports whether two segments have a place within both.
func (s segment) crosses(t segment) bool {
	side := func(s segment, at point) float64 {
		way, to := s.to-s.from, at-s.from
		return real(way)*imag(to) - imag(way)*real(to)
	}
	return side(s, t.from)*side(s, t.to) < 0 && side(t, s.from)*side(t, s.to) < 0
}

// box is a rectangle of ink.
type box struct{ x, y, w, h float64 }

// centered returns the box of a size with its middle at a place.
func centered(at point, w, h float64) box { return box{real(at) - w/2, imag(at) - h/2, w, h} }

// spanned returns the box between two corners.
func spanned(x0, y0, x1, y1 float64) box {
	return box{min(x0, x1), min(y0, y1), math.Abs(x1 - x0), math.Abs(y1 - y0)}
}

// overlaps reports whether two boxes share more than an edge.
func (b box) overlaps(c box) bool {
	return b.x < c.x+c.w && c.x < b.x+b.w && b.y < c.y+c.h && c.y < b.y+b.h
}

// inside reports whether b lies within c, edges included.
func (b box) inside(c box) bool {
	return b.x >= c.x && b.y >= c.y && b.x+b.w <= c.x+c.w && b.y+b.h <= c.y+c.h
}

// holds reports whether a place lies in the box, edges included.
func (b box) holds(at point) bool { return centered(at, 0, 0).inside(b) }

// diagonals are the lines between opposite corners.
func (b box) diagonals() []segment {
	return []segment{{complex(b.x, b.y), complex(b.x+b.w, b.y+b.h)}, {complex(b.x+b.w, b.y), complex(b.x, b.y+b.h)}}
}

// away is how far one box is from another.
func (b box) away(c box) float64 {
	return math.Hypot(max(0, b.x-c.x-c.w, c.x-b.x-b.w), max(0, b.y-c.y-c.h, c.y-b.y-b.h))
}

// grow returns the box larger by d on every side.
func (b box) grow(d float64) box { return box{b.x - d, b.y - d, b.w + 2*d, b.h + 2*d} }

// nearestOn is what of a segment, but for its ends of 6 ink, is nearest to the middle of the box.
func (b box) nearestOn(s segment) point {
	return s.nearest(b.middle(), min(.4, 6/max(1e-9, cmplx.Abs(s.to-s.from))))
}

// with is the least box round two.
func (b box) with(c box) box {
	return spanned(min(b.x, c.x), min(b.y, c.y), max(b.x+b.w, c.x+c.w), max(b.y+b.h, c.y+c.h))
}

// toward is the point of the box that is nearest to a place.
func (b box) toward(at point) point {
	return complex(max(b.x, min(real(at), b.x+b.w)), max(b.y, min(imag(at), b.y+b.h)))
}

// middle is the middle of the box.
func (b box) middle() point { return complex(b.x+b.w/2, b.y+b.h/2) }

// path is the box as commands of a path.
func (b box) path() string { return pen("M", b.x, b.y, "h", b.w, "v", b.h, "h", -b.w, "Z") }

// board remembers which places of a drawing are taken, so that labels keep clear of each other.
type board struct {
	frame box
	taken []box
	words []box     // those of text, which no lead crosses
	lines []segment // edges of holes and leads, which no lead crosses
	rim   []segment // other edges, which a lead crosses only where there is no other way
	dots  []point   // corners with a letter or a number, and middles of arcs, that a lead keeps off
	tight int       // leads or their texts that are hard to tell from those of another corner
}

// word claims the place of a text.
func (b *board) word(c box) {
	b.claim(c)
	b.words = append(b.words, c)
}

// What is wrong with a lead, the worse the higher.
const (
	acrossRim = 1 << iota
	mistakable
	acrossText
	acrossLine
)

// sight returns what is wrong with a lead from the middle of a label to what is nearest of a segment, but nothing
// more where it crosses a text or a line.
func (b *board) sight(c box, s segment) (wrong int) {
	at, middle, off := c.nearestOn(s), c.middle(), either(s.from == s.to, 2*offDot, offDot)
	back := min(1, shortLead/max(1e-9, cmplx.Abs(middle-at)))
	lead := segment{middle, segment{at, middle}.along(back)}
	span := segment{middle, at}.span() // where a text can be in the way
	through := func(w box) bool {
		return span.overlaps(w) && (centered(at, 0, 0).overlaps(w) || slices.ContainsFunc(w.diagonals(), lead.crosses))
	}
	passes := func(dot point) bool {
		return span.grow(off).holds(dot) && cmplx.Abs(dot-at) >= closer && cmplx.Abs(dot-lead.nearest(dot, 0)) < off
	}
	switch {
	case slices.ContainsFunc(b.lines, lead.crosses):
		return acrossLine
	case slices.ContainsFunc(b.words, through):
		return acrossText
	case slices.ContainsFunc(b.rim, lead.crosses):
		wrong = acrossRim
	}
	if slices.ContainsFunc(b.dots, passes) || s.from == s.to && b.mistaken(c, at, apartDots) {
		wrong += mistakable
	}
	return wrong
}

// clear returns the places from which a lead to what is nearest of a segment crosses no text or line.
func (b *board) clear(places []box, s segment) []box {
	return slices.DeleteFunc(places, func(c box) bool { return b.sight(c, s) != 0 })
}

// mistaken reports whether a text of a corner is about as near to another one, and no farther off than some ink.
func (b *board) mistaken(c box, at point, most float64) bool {
	middle, near := c.middle(), min(most, 1.3*cmplx.Abs(c.middle()-at))
	return slices.ContainsFunc(b.dots, func(dot point) bool {
		return math.Abs(real(dot-middle)) < near && cmplx.Abs(dot-middle) < near && cmplx.Abs(dot-at) >= closer
	})
}

// led claims for a text a place in the frame, no farther than some ink from a segment and as near as any from which a lead
// to it is seen: one across no text or line, else across the rim, else where it may be taken for that of another corner,
// else across text.
func (b *board) led(w, h, most float64, s segment) (seat box, ok bool) {
	const step, shortest = 4, 6
	farthest := int(most / step)
	worst := either(len(b.rim) == 0, mistakable, acrossText)                                                      // nothing but a piece has a rim
	beside := func(dot point) bool { d := cmplx.Abs(dot - s.from); return d >= closer && d < 2*offDot-shortLead } // every lead passes it
	var row []box
	best, least := worst+1, either(s.from == s.to && slices.ContainsFunc(b.dots, beside), mistakable, 0)
	for near, rings := 0, 3; near < farthest && best > least; near, rings = near+rings, min(2*rings, farthest-near-rings) { // most find a place near by
		ring := make([][]box, rings) // of places that are not taken, by how far they are, row by row
		area := s.span().grow(step * float64(near+rings))
		all := b.frame.with(area)
		for y := b.frame.y + step*math.Ceil(max(0, area.y-h-b.frame.y)/step); y+h <= b.frame.y+b.frame.h && y <= area.y+area.h && all.w+all.h < mostInk; y += step {
			row = row[:0]
			for _, t := range b.taken {
				if t.y < y+h && y < t.y+t.h {
					row = append(row, t)
				}
			}
			for x := b.frame.x + step*math.Ceil(max(0, area.x-w-b.frame.x)/step); x+w <= b.frame.x+b.frame.w && x <= area.x+area.w; x += step {
				c := box{x, y, w, h}
				if i := slices.IndexFunc(row, c.overlaps); i >= 0 {
					x += step * math.Max(0, math.Ceil((row[i].x+row[i].w-x)/step)-1) // past what is in the way
					continue
				}
				on := c.nearestOn(s)
				away := cmplx.Abs(c.toward(on) - on)
				if i := int(away/step) - near; away >= shortest && i >= 0 && i < rings {
					ring[i] = append(ring[i], c)
				}
			}
		}
		for _, c := range slices.Concat(ring...) {
			if at := b.sight(c, s); at < best {
				if seat, best = c, at; best <= least {
					break
				}
			}
		}
	}
	if ok = best <= worst; ok {
		b.tight += []int{0, 0, 1, 1, 100, 100}[best] // the most across a text
		b.word(seat)
	}
	return seat, ok
}

// claim takes a place whether it is free or not.
func (b *board) claim(c box) { b.taken = append(b.taken, c) }

// claimLine takes the places along some segments.
func (b *board) claimLine(all ...segment) {
	for _, s := range all {
		parts := math.Ceil(min(400, max(1, min(s.span().w, s.span().h)/4)))
		part := complex(real(s.to-s.from)/parts, imag(s.to-s.from)/parts)
		for n := range int(parts) {
			from := s.from + part*complex(float64(n), 0)
			b.claim(segment{from, from + part}.span().grow(1))
		}
	}
}

// place claims for a text the first place in the frame that is not taken, and reports whether there is one.
func (b *board) place(places ...box) (box, bool) { return b.first(slices.Values(places)) }

// first is place for many places that are costly to find.
func (b *board) first(places iter.Seq[box]) (box, bool) {
	for c := range places {
		if c.inside(b.frame) && !slices.ContainsFunc(b.taken, c.overlaps) {
			b.word(c)
			return c, true
		}
	}
	return box{}, false
}

// grid is what of makes of each of the outer values with each of the inner ones.
func grid[A, B, T any](outer []A, inner []B, of func(A, B) T) (all []T) {
	for _, a := range outer {
		for _, b := range inner {
			all = append(all, of(a, b))
		}
	}
	return all
}

// numberSeats returns places for the number of a cut so far off its line, at shares of its length.
func (s segment) numberSeats(off, shares []float64) []box {
	way := s.to - s.from
	long := max(1e-9, cmplx.Abs(way))
	return grid(off, shares, func(away, share float64) box {
		return centered(s.along(share)+complex(-imag(way)/long*away, real(way)/long*away), 2*numberSize, 2*numberSize)
	})
}

// besides returns the places for a label below, above and beside an area.
func besides(area box, w, h float64) []box {
	var found []box
	for _, away := range []float64{3, 10, 20, 34} {
		mid, level := area.x+area.w/2-w/2, area.y+area.h/2-h/2
		below, above, flush := area.y+area.h+away, area.y-away-h, area.x+area.w-w
		found = append(found, box{mid, below, w, h}, box{mid, above, w, h},
			box{area.x + area.w + away, level, w, h}, box{area.x - away - w, level, w, h},
			box{area.x, below, w, h}, box{flush, below, w, h}, box{area.x, above, w, h}, box{flush, above, w, h})
	}
	return found
}

// spread moves marks along a line so that neighbors stand at least gap apart and each as near as it can, by least squares, to
// where it belongs. The wanted places come in rising order; so do the results, which lie in [lo, hi] where there is room for
// all. Less its share of gaps, a place is by isotonic regression the greatest of the least means of the stretches that begin at
// or before it and end at or after it; the time is cubic in the marks.
func spread(wanted []float64, gap, lo, hi float64) []float64 {
	n := len(wanted)
	sums, places := make([]float64, n+1), make([]float64, n)
	for i, w := range wanted {
		sums[i+1] = sums[i] + w - gap*float64(i)
	}
	for i := range places {
		place := lo
		for from := range i + 1 {
			least := hi - gap*float64(n-1)
			for to := i + 1; to <= n; to++ {
				least = min(least, (sums[to]-sums[from])/float64(to-from))
			}
			place = max(place, least)
		}
		places[i] = place + gap*float64(i)
	}
	return places
}

// textWidth is an upper estimate for a sans-serif face: drawings cannot measure the reader's font.
func textWidth(s string, size float64) float64 {
	var em float64
	for _, r := range s {
		em += emWidth(r)
	}
	return em * size
}

func emWidth(r rune) float64 {
	switch {
	case strings.ContainsRune("iljtfrI.,:;'|/()[]- ", r):
		return 0.42
	case strings.ContainsRune("mwMW@%→←↑↓⌀", r):
		return 1
	case r >= firstIdeograph: // they and their like fill a square
		return 1.05
	case unicode.IsUpper(r), unicode.Is(unicode.Cyrillic, r):
		return 0.76
	}
	return 0.65
}

// clip shortens a text that is wider than width, ending it with an ellipsis.
func clip(s string, width, size float64) string {
	if textWidth(s, size) <= width {
		return s
	}
	room := width/size - emWidth('…')
	for i, r := range s {
		if room -= emWidth(r); room < 1e-9 { // rounding must not make it wider
			return strings.TrimRight(s[:i], " ") + "…"
		}
	}
	return s
}
