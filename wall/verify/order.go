package verify

import (
	"fmt"
	"slices"
)

// numbering checks that pieces are numbered in order of fitting, that panels and
// pieces know each other, and that each panel's pieces fill its width.
func (c *checker) numbering() {
	for k, piece := range c.plan.Pieces {
		if piece.Number != k+1 {
			c.fault("order", fmt.Sprintf("pieces[%d].number", k), fmt.Sprint(piece.Number), fmt.Sprint(k+1), "pieces are not numbered from 1 in order")
		}
	}
	owned := map[int]string{}
	for i, r := range c.plan.Runs {
		last := 0
		panels := slices.Clone(r.Panels)
		if r.SetOut.Direction == "left" {
			slices.Reverse(panels)
		}
		for _, panel := range panels {
			at := slices.IndexFunc(r.Panels, func(p planPanel) bool { return p.Number == panel.Number })
			path := fmt.Sprintf("runs[%d].panels[%d]", i, at)
			if len(panel.Pieces) == 0 {
				c.fault("order", path+".pieces", "none", "some", "a panel without pieces")
				continue
			}
			left, right := panel.Right.r(), panel.Left.r()
			for _, number := range panel.Pieces {
				k, known := c.pieces[number]
				if !known || owned[number] != "" {
					c.fault("order", path+".pieces", fmt.Sprint(number), "a piece of its own", "piece unknown, or of %q too", owned[number])
					continue
				}
				owned[number] = path
				piece := c.plan.Pieces[k]
				if piece.Run != r.Name || piece.Panel != panel.Number {
					c.fault("order", fmt.Sprintf("pieces[%d].panel", k), fmt.Sprint(piece.Panel), fmt.Sprint(panel.Number), "not the panel that lists it")
				}
				if number < last {
					c.fault("order", path+".pieces", fmt.Sprint(number), "more than "+fmt.Sprint(last), "not numbered in order of fitting")
				}
				last = max(last, number)
				x := piece.At[0].r()
				left, right = least(left, x), most(right, sum(x, piece.Width.r()))
			}
			c.equal("panels", path+".left", panel.Left.r(), left, "the pieces do not begin at the panel's left")
			c.equal("panels", path+".right", panel.Right.r(), right, "the pieces do not end at the panel's right")
		}
		c.closing(i)
	}
	for k, piece := range c.plan.Pieces {
		if owned[piece.Number] == "" {
			c.fault("order", fmt.Sprintf("pieces[%d].panel", k), fmt.Sprint(piece.Panel), "a panel that lists it", "piece of no panel")
		}
	}
}

// closing checks that the last panel of a run, and no other, holds its closing pieces.
func (c *checker) closing(i int) {
	r := c.plan.Runs[i]
	if len(r.Panels) == 0 {
		return
	}
	last := r.Panels[len(r.Panels)-1]
	if r.SetOut.Direction == "left" {
		last = r.Panels[0]
	}
	found := false
	for _, panel := range r.Panels {
		for _, number := range panel.Pieces {
			k, known := c.pieces[number]
			if !known || !c.plan.Pieces[k].Closing {
				continue
			}
			found = true
			if panel.Number != last.Number {
				c.fault("closing", fmt.Sprintf("pieces[%d].closing", k), fmt.Sprint(panel.Number), fmt.Sprint(last.Number), "not in the panel fitted last (panel numbers)")
			}
		}
	}
	if !found {
		c.fault("closing", fmt.Sprintf("runs[%d].panels", i), "none", "one or more", "no closing piece")
	}
}
