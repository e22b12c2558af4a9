package drawing

import (
	"fmt"
	"strings"

	"example.com/groovewright/wall/plan"
)

// describe is the text alternative of an elevation: what someone who cannot see
// the drawing needs from it.
func (e *elevation) describe() string {
	var b strings.Builder
	run := e.run
	fmt.Fprintf(&b, "%s, %s wide. ", run.Name, e.tape.Format(run.Width))
	fmt.Fprintf(&b, "Left end: %s%s. Right end: %s%s. ", run.Left.Kind, after(": ", CutName(e.tape, run.Left.Cut)), run.Right.Kind, after(": ", CutName(e.tape, run.Right.Cut)))
	fmt.Fprintf(&b, "Start %s from the left end and work to the %s. ", e.tape.Format(run.SetOut.From), run.SetOut.Direction)
	for _, panel := range run.Panels {
		fmt.Fprintf(&b, "%s %d from %s to %s. ", e.plan.Profile.Word("Panel", "Board"), panel.Number, e.tape.Format(panel.Left), e.tape.Format(panel.Right))
	}
	for _, o := range run.Openings {
		lo, hi := bounds(o.Outline)
		fmt.Fprintf(&b, "%s (%s) from %s to %s, %s to %s above the datum. ", o.Name, o.Kind,
			e.tape.Format(lo[0]), e.tape.Format(hi[0]), e.tape.Format(lo[1]), e.tape.Format(hi[1]))
	}
	return strings.TrimSpace(b.String())
}

// after returns a text with a lead if there is a text.
func after(lead, text string) string {
	if text == "" {
		return ""
	}
	return lead + text
}

// describe is the text alternative of a sheet.
func (d *sheetDrawing) describe() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s %d, %s. ", d.plan.Profile.Word("Sheet", "Board"), d.sheet.Number, d.sheet.Stock)
	for _, p := range d.sheet.Placements {
		piece := d.piece(p.Piece)
		fmt.Fprintf(&b, "Piece %s, %s by %s, %s from the left edge and %s from the lower end%s. ", piece.Label,
			d.tape.Format(piece.Width), d.tape.Format(piece.Height), d.tape.Format(p.X), d.tape.Format(p.Y), turned(p))
	}
	for _, c := range d.sheet.Cuts {
		fmt.Fprintf(&b, "Cut %d: %s at %s. ", c.Step, c.Kind, d.tape.Format(c.At))
	}
	for _, o := range d.sheet.Offcuts {
		fmt.Fprintf(&b, "Offcut %s by %s. ", d.tape.Format(o.Width), d.tape.Format(o.Length))
	}
	return strings.TrimSpace(b.String())
}

func turned(p plan.Placement) string {
	if p.Turned {
		return ", turned upside down"
	}
	return ""
}
