package book

import (
	"fmt"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// sheets prints each sheet's cuts in sawing order, and its pieces and offcuts.
func (t *text) sheets(p plan.Plan) {
	if len(p.Sheets) == 0 {
		return
	}
	t.heading("-", "Cut list")
	t.para(fmt.Sprintf("Face up, the lower end of the %s toward you. The blade takes %s. Where a cut is at a measure, the blade runs just past it, seen from the edge named; what is taken off includes the blade. An arrow shows which way the top of a piece lies; up is away from you. An offcut's phase is the exact left_phase that it has as stock of another job.", sheetWord(p), t.given(p.Saw.Kerf)))
	exact := fraction.Tape{Unit: t.tape.Unit}
	// A narrower leftover is no use on a wall, and is not listed. The JSON plan has them all.
	least := fraction.Inches(1)
	if t.tape.Unit != fraction.Inch {
		least = fraction.Millimetres(25, 1)
	}
	for _, s := range p.Sheets {
		t.gap()
		name := s.Stock
		if kind, i := p.StockNamed(name); i >= 0 {
			name += ", " + t.given(kind.Width) + " x " + t.given(kind.Length)
		}
		t.para(fmt.Sprintf("%s %d: %s", p.Profile.Word("Sheet", "Board"), s.Number, name))
		for _, c := range s.Cuts {
			t.step("  ", c.Step, t.cut(p, s, c))
		}
		var rows [][]string
		for _, pl := range s.Placements {
			piece, _ := p.Piece(pl.Part)
			rows = append(rows, []string{"piece " + label(p, pl.Part), t.size(piece.Width, piece.Height),
				t.length(pl.X), t.length(pl.Y), either(pl.Turned, "arrow down", "arrow up")})
		}
		narrow := 0
		for _, o := range s.Offcuts {
			if o.Width.Less(least) || o.Length.Less(least) {
				narrow++
				continue
			}
			rows = append(rows, []string{"offcut", t.size(o.Width, o.Length), t.length(o.X), t.length(o.Y), either(p.Profile.Pitch.Sign() > 0, "phase "+exact.Format(o.LeftPhase), "")})
		}
		t.table(4, []string{"", "size", "across", "up", ""}, rows)
		if narrow > 0 {
			t.hang("    ", fmt.Sprintf("%s narrower than %s.", count(narrow, "offcut"), t.length(least)))
		}
	}
}

// sideWords name the sides of a cut: the near one, and the one beyond the blade.
var sideWords = map[nest.CutKind][2]string{nest.Crosscut: {"below", "above"}, nest.Rip: {"left", "right"}}

// cut says what to cut from a sheet, where, and what stands free after it. What is measured is what
// has to be right: the edge of the part that pieces are cut from.
func (t *text) cut(p plan.Plan, s plan.Sheet, c plan.Cut) string {
	says, edge := c.Kind.String()+" "+t.part(p, s, c), either(c.Kind == nest.Rip, "its left edge", "its lower end")
	switch c.Trim {
	case plan.TrimNear:
		says += fmt.Sprintf(": take %s off along %s", t.length(c.Off), edge)
	case plan.TrimBeyond:
		says += fmt.Sprintf(" at %s from %s (trims %s off)", t.length(c.At), edge, t.length(c.Off))
	default:
		says += fmt.Sprintf(" at %s from %s", t.length(c.At), edge)
	}
	freed := func(number int) string {
		piece, _ := p.Piece(number)
		return either(number == 0, "", either(piece.Closing, "closing piece ", "piece ")+label(p, number))
	}
	switch near, beyond := freed(c.Frees[0]), freed(c.Frees[1]); {
	case near != "" && beyond != "":
		says += fmt.Sprintf("; frees %s %s and %s %s", near, sideWords[c.Kind][0], beyond, sideWords[c.Kind][1])
	case near+beyond != "":
		says += "; frees " + near + beyond
	}
	return says
}

// part names the part on the bench by its size, and by the cut that it comes from where another
// part of the sheet has the same size: their patterns may differ.
func (t *text) part(p plan.Plan, s plan.Sheet, c plan.Cut) string {
	if c.From.Step == 0 {
		return "the " + sheetWord(p)
	}
	says := "the part " + t.size(c.Rect[2], c.Rect[3])
	for _, from := range s.Cuts {
		if c.Alike && from.Step == c.From.Step {
			sides, of := sideWords[from.Kind], either(from.Kind == nest.Rip, " of", "")
			says += fmt.Sprintf(" %s%s cut %d", either(c.From.Beyond, sides[1], sides[0]), of, from.Step)
		}
	}
	return says
}
