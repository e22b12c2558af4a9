package drawing

import (
	"math"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

const (
	sectionDeep = 96.0  // most ink that wall, strips and panel take
	sectionZone = 112.0 // ink of each of the head, the box and the foot, between which the section breaks off
	sectionText = 158.0 // where the labels begin
	trimInk     = 14.0  // thickness of a trim, and of what lies under the panels: the plan has none
)

// sectionDrawing is cut upright through a run, the wall's back at the left and the room at the right.
type sectionDrawing struct {
	canvas
	wall, back, face float64 // ink x of the wall's front and of the panel's back and face
	next             float64 // ink y under the last label
}

// Section draws the upright section of run i of a plan, through a box that its panels cover if there
// is one: the level datum, the gaps, the trims, and what lies behind. It is to scale across and, at
// its head, its box and its foot, upwards; between these it breaks off.
func Section(p plan.Plan, i int) (Picture, error) {
	return draw(halfInk, fault.Of("Runs"), i, len(p.Runs), func(float64) *Picture {
		run, path, fix := p.Runs[i], ref("runs[%d].", i), p.Fixing
		if len(run.Outline) < 3 {
			return nil
		}
		d := &sectionDrawing{canvas: newCanvas(p, halfInk, ref("run-%d-section", i+1), "Upright section of "+run.Name), next: 42}
		d.desc("From the wall at the left to the room at the right, broken off between head and foot.")
		line{"Upright section"}.write(&d.node, "bold", d.Width/2, 15, "middle")
		smaller := perInch * fix.Wall.Add(fix.Strips).Add(p.Profile.Thickness).Float64() / sectionDeep
		for _, t := range []*wall.EdgeTrim{run.Trim.Top, run.Trim.Bottom} {
			if t != nil {
				smaller = max(smaller, perInch*t.Covers.Float64()/(sectionZone-40))
			}
		}
		d.scale = whole(perInch / max(1, smaller))
		d.wall = 8 + either(fix.Wall.IsZero(), 2*wallInk, fix.Wall.Float64()*d.scale) // not to scale where it is not known
		d.back = d.wall + fix.Strips.Float64()*d.scale
		d.face = d.back + p.Profile.Thickness.Float64()*d.scale
		box := p.BoxIn(run)
		const top = 44.0
		foot := top + either(box >= 0, 3*sectionZone, 2*sectionZone)
		head, sole := top+p.Gaps.Top.Float64()*d.scale, foot-p.Gaps.Bottom.Float64()*d.scale
		d.layer(8, d.wall, top-14, foot)
		d.rect(spanned(8, foot, d.face+44, foot+trimInk), "fill", d.hatch("wall", "hatch", 5, 45))
		d.stroke("edge", "M", d.wall, top-14, "V", foot, "H", d.face+44)
		d.stroke("lead", "M", 8.0, top, "H", d.face+26)
		d.layer(d.wall, d.back, head+4, sole-4)
		d.rect(spanned(d.back, head, d.face, sole), "class", "tag")

		last := len(run.Outline) - 1
		d.line(d.face+26, top, "top line", run.Outline[last].Y, path+ref("outline[%d][1]", last))
		d.gap(p.Gaps.Top, "gaps.top", (top+head)/2)
		d.trim(run.Trim.Top, path+"trim.top.", top, 1)
		at := top + sectionZone*.7
		d.label((d.back+d.face)/2, at, line{p.Profile.Word("panel ", "board "), d.length(p.Profile.Thickness, "profile.thickness")})
		if !fix.Strips.IsZero() {
			d.label((d.wall+d.back)/2, at+3, line{"strips ", d.length(fix.Strips, "fixing.strips")})
		}
		if !fix.Wall.IsZero() {
			d.label((8+d.wall)/2, at+6, line{"wall on its studs ", d.length(fix.Wall, "fixing.wall")})
		}
		d.rip(top + sectionZone)
		if box >= 0 {
			d.box(fix.Boxes[box], ref("fixing.boxes[%d].", box), top+sectionZone*1.5)
			d.rip(top + sectionZone*2)
		}
		d.trim(run.Trim.Bottom, path+"trim.bottom.", foot, -1)
		d.gap(p.Gaps.Bottom, "gaps.bottom", (sole+foot)/2)
		low := run.Outline[0].Y
		d.line(d.face+36, foot, "bottom line", low, path+"outline[0][1]")
		if y := foot + low.Float64()*d.scale; math.Abs(y-foot) <= trimInk {
			d.stroke("datum", "M", 2.0, y, "H", d.face+50)
		}
		d.Height = d.block(max(d.next, foot+trimInk)+6, true, line{counted(ref("D%d", i+1)), ": Section of ", figure{run.Name, path + "name"}})
		return d.Picture
	})
}

// layer draws what lies behind the panels, if it has a thickness.
func (d *sectionDrawing) layer(x0, x1, y0, y1 float64) {
	if x1 > x0 {
		d.rect(spanned(x0, y0, x1, y1), "class", "edge")
		d.rect(spanned(x0, y0, x1, y1), "fill", d.hatch("layer", "hatch", 5, -45))
	}
}

// rip breaks the section off.
func (d *sectionDrawing) rip(y float64) {
	d.rect(box{2, y - 4, d.face + 4, 8}, "class", "paper")
	for _, y := range []float64{y - 4, y + 4} {
		d.stroke("pole", "M", 2.0, y, "h", d.face/2-4, "l3 -6l6 12l3 -6H", d.face+8)
	}
}

// label writes lines beside the section, no higher than what they name, with a lead to it.
func (d *sectionDrawing) label(x, y float64, lines ...line) {
	at := max(d.next, y)
	d.stroke("lead", "M", x, y, "L", sectionText-12, at, "H", sectionText-4)
	d.dot("startmark", complex(x, y), 1.6)
	d.next = d.under(0, sectionText, at+4.6, "start", lines...) - 1.6
}

// nameOf has the lines of the name of a trim or a box.
func (d *sectionDrawing) nameOf(name, path string) []line {
	room := d.Width - sectionText - 6
	return line{figure{name, path + "name"}}.wrap(room, room)
}

// line labels a line of the wall with its height at the left end.
func (d *sectionDrawing) line(x, y float64, name string, at fraction.Length, path string) {
	d.stroke("startmark", "M", x, y, "l-5 -8h10z")
	d.label(x, y, line{name, ", left end"}, line{d.length(at, path), " over datum"})
}

// gap labels a gap, if there is one.
func (d *sectionDrawing) gap(gap fraction.Length, path string, y float64) {
	if !gap.IsZero() {
		d.label(d.back, y, line{"gap ", d.length(gap, path)})
	}
}

// trim draws a trim, if there is one, over the edge of the panels; down is 1 at the head, -1 at the foot.
func (d *sectionDrawing) trim(t *wall.EdgeTrim, path string, y, down float64) {
	if t == nil {
		return
	}
	far := y + down*t.Covers.Float64()*d.scale
	d.rect(spanned(d.face, y, d.face+trimInk, far), "class", "tag")
	d.label(d.face+trimInk/2, (y+far)/2, append(d.nameOf(t.Name, path), line{"covers ", d.length(t.Covers, path+"covers")})...)
}

// box draws an electrical box, its extender and how far its front lies behind the face.
func (d *sectionDrawing) box(b finish.BoxFixing, path string, y float64) {
	const half = 26.0
	front := d.face - b.Behind.Float64()*d.scale
	gap := d.plan.Gaps.Box.Float64() * d.scale
	d.rect(spanned(d.back-1, y-half-gap, d.face+1, y+half+gap), "class", "paper")
	d.stroke("edge", "M", d.back, y-half-gap, "H", d.face, "M", d.back, y+half+gap, "H", d.face)
	d.rect(spanned(2, y-half, front, y+half), "class", "paper")
	d.stroke("seam", "M2 ", y-half, "H", front, "M2 ", y+half, "H", front)
	d.label(10, y-half+8, d.nameOf(b.Name, path)...)
	if !b.Extender.IsZero() {
		from := d.face - b.Extender.Float64()*d.scale // flush with the face, what is longer lies in the box
		d.rect(spanned(from, y-half, d.face, y-half+5), "class", "bar")
		d.rect(spanned(from, y+half-5, d.face, y+half), "class", "bar")
		d.label((from+d.face)/2, y-half+2.5, line{"extender ", d.length(b.Extender, path+"extender")})
	}
	d.label(front, y+8, line{"front ", d.length(b.Behind, path+"behind"), " behind the"}, line{"face of the ", d.plan.Profile.Word("panels", "boards")})
	d.gap(d.plan.Gaps.Box, "gaps.box", y+half+gap/2)
}
