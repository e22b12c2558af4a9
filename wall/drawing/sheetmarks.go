package drawing

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// stops are the running measurements of one kind of cut, from the sheet's left edge or lower end,
// each once, with the sheet's own size last. A trim by less than the blade has none: nobody can
// measure to a place off the sheet.
func (d *sheetDrawing) stops(kind nest.CutKind) []stop {
	axis, size, field := 1, d.stock.Length, "length"
	if kind == nest.Rip {
		axis, size, field = 0, d.stock.Width, "width"
	}
	ink := func(at fraction.Length) float64 {
		if axis == 0 {
			return d.x(at)
		}
		return d.y(at)
	}
	stock := slices.IndexFunc(d.plan.Stock, func(s plan.Stock) bool { return s.Name == d.stock.Name })
	all := []stop{{text: line{d.length(size, ref("stock[%d].%s", stock, field))}, at: size, ink: ink(size)}}
	for i, c := range d.sheet.Cuts {
		at := c.Rect[axis].Add(c.At)
		if c.Kind != kind || at.Sign() <= 0 || slices.ContainsFunc(all, func(s stop) bool { return s.at == at }) {
			continue
		}
		path := d.path + ref("cuts[%d].", i)
		text := line{d.sum(plus(c.Rect[axis], path+ref("rect[%d]", axis)), plus(c.At, path+"at"))}
		all = append(all, stop{text: text, at: at, ink: ink(at)})
	}
	slices.SortStableFunc(all, func(a, b stop) int { return a.at.Compare(b.at) })
	return all
}
