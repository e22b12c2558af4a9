package groove_test

import (
	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
)

// strip is a repeat drawn out on a grid so fine that every boundary and the middle between any two
// of them is on it. It is what the eye goes by: at each grid line whether a feature starts there,
// and in each cell to the right of it what one sees. Everything is found by looking along it, which
// is slow and obvious: the oracle of the package's tests.
type strip struct {
	grain fraction.Length
	lines []bool
	cells []groove.Feature // with a width of 0, since that is not seen within
}

// draw makes the strip of p at a quarter of a millimetre or a 32nd of an inch, whichever its widths
// are multiples of.
func draw(p groove.Profile) strip {
	grain := fraction.Of(1, 32)
	if p.Features[0].Width.Den() == 127 {
		grain = fraction.Millimetres(1, 4)
	}
	s := strip{grain: grain}
	for _, f := range p.Features {
		n, rest := f.Width.DivMod(grain)
		if !rest.IsZero() {
			panic("a width is not on the grid")
		}
		for i := range n {
			s.lines = append(s.lines, i == 0)
			s.cells = append(s.cells, groove.Feature{Kind: f.Kind, Depth: f.Depth})
		}
	}
	return s
}

func (s strip) at(i int) int { return (i%len(s.lines) + len(s.lines)) % len(s.lines) }

// mirrored reports whether the strip is symmetrical about a point that is half of twice grains from
// the start.
func (s strip) mirrored(twice int) bool {
	for i := range s.lines {
		if s.lines[i] != s.lines[s.at(twice-i)] || s.cells[i] != s.cells[s.at(twice-i-1)] {
			return false
		}
	}
	return true
}

// period is the least shift in grains that changes nothing.
func (s strip) period() int {
	for shift := 1; ; shift++ {
		same := true
		for i := range s.lines {
			same = same && s.lines[i] == s.lines[s.at(i+shift)] && s.cells[i] == s.cells[s.at(i+shift)]
		}
		if same {
			return shift
		}
	}
}

// nearest counts the grains from line i to the nearest line that satisfies the condition, -1 if
// none does.
func (s strip) nearest(i int, condition func(i int) bool) int {
	for d := range len(s.lines) {
		if condition(s.at(i+d)) || condition(s.at(i-d)) {
			return d
		}
	}
	return -1
}
