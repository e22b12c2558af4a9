package drawing

import (
	"fmt"
	"slices"
	"sort"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// stop is a running measurement and where it stands.
type stop struct {
	text line
	at   fraction.Length
}

// stops are the running measurements of one kind of cut, from the sheet's left
// edge or lower end, each once, with the sheet's own size last. A trim by less
// than the blade has none: nobody can measure to a place off the sheet.
func (d *sheetDrawing) stops(kind nest.CutKind, axis int, size fraction.Length, field string) []stop {
	stock := slices.IndexFunc(d.plan.Stock, func(s plan.Stock) bool { return s.Name == d.stock.Name })
	found := []stop{{line{d.length(size, ref("stock[%d].%s", stock, field))}, size}}
	for i, c := range d.sheet.Cuts {
		at := c.Rect[axis].Add(c.At)
		if c.Kind != kind || at.Sign() <= 0 || slices.ContainsFunc(found, func(s stop) bool { return s.at == at }) {
			continue
		}
		path := fmt.Sprintf("sheets[%d].cuts[%d].", d.index, i)
		found = append(found, stop{line{d.sum(plus(c.Rect[axis], path+ref("rect[%d]", axis)), plus(c.At, path+"at"))}, at})
	}
	sort.SliceStable(found, func(a, b int) bool { return found[a].at.Less(found[b].at) })
	return found
}

// measureUp writes the crosscuts' distances from the lower end.
func (d *sheetDrawing) measureUp() {
	all := d.stops(nest.Crosscut, 1, d.stock.Length, "length")
	slices.Reverse(all) // from the top of the drawing down
	wanted := make([]float64, len(all))
	for i, s := range all {
		wanted[i] = d.y(s.at)
	}
	for i, y := range spread(wanted, 13, d.area.y, d.area.y+d.area.h) {
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sh-4L%s %s", ink(d.area.x-1), ink(wanted[i]), ink(d.area.x-17), ink(y)))
		all[i].text.write(&d.root, "", d.area.x-20, y+4, "end")
	}
}

// measureAcross writes the rips' distances from the left edge and returns where
// the drawing ends.
func (d *sheetDrawing) measureAcross() float64 {
	all := d.stops(nest.Rip, 0, d.stock.Width, "width")
	wanted := make([]float64, len(all))
	for i, s := range all {
		wanted[i] = d.x(s.at)
	}
	y, deepest := d.area.y+d.area.h, 0.0
	for i, x := range spread(wanted, poleGap, d.left, d.Width-7) {
		d.add("path", "class", "lead", "d", fmt.Sprintf("M%s %sv4L%s %s", ink(wanted[i]), ink(y+1), ink(x), ink(y+16)))
		all[i].text.upright(&d.root, "", x, y+19, "end")
		deepest = max(deepest, all[i].text.width(typeSize))
	}
	return y + 19 + deepest + 6
}
