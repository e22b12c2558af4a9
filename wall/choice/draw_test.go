package choice_test

import (
	"fmt"
	"math/rand/v2"

	"github.com/shopspring/decimal"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// scale is how large the rooms are that are drawn: the least and the most of each, lengths in
// inches.
type scale struct {
	runs, width, height [2]int
	sheets              [][2]int // widths and lengths
	counted             int      // of a hundred kinds of stock, how many are on hand
}

var (
	little = scale{[2]int{1, 3}, [2]int{8, 36}, [2]int{8, 20}, [][2]int{{16, 32}, {20, 48}, {24, 40}, {28, 30}}, 30}    // can be enumerated
	house  = scale{[2]int{1, 5}, [2]int{12, 150}, [2]int{16, 48}, [][2]int{{48, 96}, {48, 96}, {32, 96}, {48, 48}}, 30} // rooms as they are
	houses = scale{[2]int{1, 14}, house.width, house.height, house.sheets, 12}
)

// drawnProfiles has one of each sort: mirrored, not mirrored, with wide flats, of boards.
var drawnProfiles = []groove.Profile{
	{Name: "bead", Thickness: fraction.Of(1, 4), Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(7, 2)}, {Kind: groove.Bead, Width: fraction.Of(1, 2)}}},
	{Name: "one-sided", Thickness: fraction.Of(1, 2), Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(2, 1)}, {Kind: groove.Bead, Width: fraction.Of(1, 2)}, {Kind: groove.Groove, Width: fraction.Of(1, 4)}, {Kind: groove.Flat, Width: fraction.Of(5, 4)}}},
	{Name: "wide", Thickness: fraction.Of(1, 4), WideFlats: true, Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(19, 4)}, {Kind: groove.Groove, Width: fraction.Of(1, 4)}}},
	{Name: "boards", Thickness: fraction.Of(3, 4), Boards: true, Features: []groove.Feature{
		{Kind: groove.Flat, Width: fraction.Of(21, 4)}, {Kind: groove.Groove, Width: fraction.Of(1, 4)}}},
}

// drawing is the drawing of one room.
type drawing struct {
	*rand.Rand
	scale
}

func (d *drawing) chance(percent int) bool { return d.IntN(100) < percent }

func (d *drawing) between(x [2]int) int { return x[0] + d.IntN(x[1]-x[0]+1) }

// eighths draws a length from low to less than high inches.
func (d *drawing) eighths(low, high int) fraction.Length {
	return fraction.Of(int64(8*low+d.IntN(8*max(high-low, 1))), 8)
}

// draw draws the room of a seed, the same each time. A few are not valid or have no layout.
func (s scale) draw(seed uint64) wall.Room {
	d := drawing{rand.New(rand.NewPCG(seed, 2)), s}
	room := wall.Room{Profile: drawnProfiles[d.IntN(len(drawnProfiles))], Mark: fraction.Of(1, 16), Priorities: wall.DefaultPriorities(fraction.Inch)}
	if gap := fraction.Of(1, 16); d.chance(60) {
		room.Gaps = wall.Gaps{Top: gap, Bottom: gap, Side: gap, Box: gap, Window: gap}
		if !room.Profile.Boards && d.chance(50) {
			room.Gaps.Seam = gap
		}
	}
	if d.chance(75) {
		room.Saw = nest.Saw{Kerf: fraction.Of(1, 8), SquareUp: fraction.Of(int64(d.IntN(2)), 4)}
	}
	for i := range 1 + d.IntN(2) {
		room.Stock = append(room.Stock, d.stock(room.Profile, fmt.Sprint("sheet ", i+1)))
	}
	n := d.between(d.runs)
	room.Closed = n >= 3 && d.chance(20)
	kinds := []wall.EndKind{wall.InsideCorner, wall.InsideCorner, wall.InsideCorner, wall.OutsideCorner, wall.Exposed, wall.Covered}
	if room.Closed {
		kinds = kinds[:4]
	}
	left := kinds[d.IntN(len(kinds))]
	first := left
	for i := range n {
		right := kinds[d.IntN(len(kinds))]
		if room.Closed && i == n-1 {
			right = first
		}
		room.Runs = append(room.Runs, d.run(fmt.Sprint("wall ", i+1), wall.End{Kind: left}, wall.End{Kind: right}))
		left = right
	}
	return room
}

// stock draws a kind of sheet, or of boards: bought or on hand, with a price or without.
func (d *drawing) stock(p groove.Profile, name string) nest.Stock {
	size := d.sheets[d.IntN(len(d.sheets))]
	s := nest.Stock{Name: name, Width: fraction.Inches(int64(size[0])), Length: fraction.Inches(int64(size[1]))}
	if p.Boards {
		s.Width = p.Pitch()
	} else if d.chance(30) {
		s.LeftPhase = fraction.Of(int64(d.IntN(6)), 2)
	}
	if d.chance(d.counted) {
		count := d.IntN(5)
		s.Count = &count
	}
	if d.chance(60) {
		s.Price = money.Of(decimal.New(int64(40+d.IntN(80)), -1))
	}
	return s
}

// run draws a run: level, stepped or sloped, its ends upright or leaning, with openings.
func (d *drawing) run(name string, left, right wall.End) wall.Run {
	run := wall.Run{Name: name, Width: d.eighths(d.width[0], d.width[1]), Left: left, Right: right}
	top := d.eighths(d.height[0], d.height[1])
	last := wall.Height{At: run.Width, Top: top}
	run.Heights = []wall.Height{{Top: top}}
	switch d.IntN(6) {
	case 0, 1: // a step
		at := d.eighths(3, d.width[0]-3)
		last.Top = d.eighths(d.height[0], d.height[1])
		run.Heights = append(run.Heights, wall.Height{At: at, Top: top}, wall.Height{At: at, Top: last.Top})
	case 2: // a slope
		last.Top = top.Add(d.eighths(-1, 2))
	case 3:
		run.Left.Lean, run.Right.Lean = fraction.Of(int64(d.IntN(9)-4), 16), fraction.Of(int64(d.IntN(9)-4), 16)
	}
	run.Heights = append(run.Heights, last)
	for x := d.eighths(1, 30); ; x = x.Add(d.eighths(6, 40)) {
		width, height, kind, bottom := fraction.Of(9, 4), fraction.Inches(3), wall.Box, fraction.Inches(4)
		switch d.IntN(5) {
		case 0:
			width, height, kind = fraction.Inches(4), fraction.Inches(60), wall.Window
		case 1:
			width, height, kind, bottom = d.eighths(3, 6), fraction.Inches(80), wall.Other, fraction.Inches(-4)
		}
		if run.Width.Less(x.Add(width).Add(fraction.Inches(2))) {
			break
		}
		run.Openings = append(run.Openings, wall.Opening{Name: fmt.Sprint(kind, len(run.Openings)+1), Kind: kind, Outline: cutout.Rectangle(x, bottom, width, height)})
	}
	if d.chance(10) {
		run.Breaks = []wall.Break{{At: d.eighths(4, d.width[0]), Prominence: fraction.NewRatio(1, 2)}}
	}
	if d.chance(20) {
		run.Focal = []wall.Focal{{From: fraction.Inches(2), To: d.eighths(3, d.width[0]), Prominence: fraction.NewRatio(int64(d.IntN(2)*3), 1)}}
	}
	return run
}
