package book

import (
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/groove"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// sheets prints each sheet's cuts in sawing order and what is left over, and in the full text where
// its pieces and offcuts lie. Boards that are only sawn across into the same lengths share a line.
func (t *text) sheets(p plan.Plan) {
	if len(p.Sheets) == 0 {
		return
	}
	t.begin("Cut list")
	t.para(capital(strings.TrimPrefix(faceWords[p.Saw.Face]+", the lower end", ", ")) + fmt.Sprintf(" of the %s toward you%s. Measure a crosscut from the part's lower end, a rip from its %s; the blade, %s, runs just beyond "+
		"the measure. What is taken off includes the blade. Number each piece on its back, with an arrow to its top: away from you, "+
		"or toward you if turned.", sheetWord(p), tongueAt(p), ripEdge(p), t.given(p.Saw.Kerf)))
	for _, row := range lengths(p) {
		var parts []string
		for _, part := range row.Parts {
			parts = append(parts, fmt.Sprintf("%s for %s", t.length(part.Height), plural("piece", part.Labels)))
		}
		first := either(row.Off.IsZero(), "", "take "+t.length(row.Off)+" off the lower end, ")
		t.para(fmt.Sprintf("%s, %s: %scrosscut %s.", capital(plural("board", row.Labels)), t.stock(p, row.Stock), first, strings.Join(parts, ", then ")))
	}
	for _, s := range p.Sheets {
		if crosscut(p, s) {
			for _, pl := range s.Placements {
				if name := pieceName(p, s, pl.Part, ""); strings.Contains(name, "miter") {
					t.para(capital(name) + ".")
				}
			}
			continue
		}
		t.para(fmt.Sprintf("%s %d: %s", p.Profile.Word("Sheet", "Board"), s.Number, t.stock(p, s.Stock)))
		for _, pl := range s.Placements {
			if len(s.Cuts) == 0 {
				t.hang("  ", pieceName(p, s, pl.Part, "")+" is the "+sheetWord(p)+" as it is")
			}
		}
		for _, c := range s.Cuts {
			held := waits(p, c)
			t.step("", c.Step, either(held == "", "", "WAIT "+held+": ")+t.cut(p, s, c))
		}
		if t.full {
			t.places(p, s)
		}
	}
}

// stock names a kind of stock with its size.
func (t *text) stock(p plan.Plan, name string) string {
	if kind, i := p.StockNamed(name); i >= 0 {
		name += ", " + t.given(kind.Width) + " x " + t.given(kind.Length)
	}
	return name
}

// byNumber are the placements of a sheet by the numbers of their pieces.
func byNumber(s plan.Sheet) []nest.Placement {
	placed := slices.Clone(s.Placements)
	sort.SliceStable(placed, func(i, j int) bool { return placed[i].Part < placed[j].Part })
	return placed
}

// places prints where pieces and offcuts lie on a sheet, which nobody measures: to the nearest marks.
func (t *text) places(p plan.Plan, s plan.Sheet) {
	exact := fraction.Tape{Unit: t.tape.Unit}
	var rows [][]string
	for _, pl := range byNumber(s) {
		piece, _ := p.Piece(pl.Part)
		width, _, err := piece.Blank()
		rows = append(rows, []string{"piece " + label(p, pl.Part), t.size(fraction.Must(width, err), piece.Height), t.nearest(pl.X), t.nearest(pl.Y), either(pl.Turned, "turned", "")})
	}
	for _, o := range p.Leftovers(s) {
		rows = append(rows, []string{fmt.Sprintf("offcut %d", s.OffcutNumber(o)), t.size(o.Width, o.Length), t.nearest(o.X), t.nearest(o.Y),
			either(p.Profile.Pitch.Sign() > 0, "left phase "+exact.Format(o.LeftPhase), "")})
	}
	t.table(4, []string{"", "size", "across", "up", ""}, rows)
}

// cut says what to cut from a sheet, where, and what stands free after it. What is measured is what
// has to be right: the edge of the part that pieces are cut from.
func (t *text) cut(p plan.Plan, s plan.Sheet, c plan.Cut) string {
	part := t.part(p, s, c)
	near, far := cutEdges(p, c.Kind)
	says := c.Kind.String() + " " + part
	switch {
	case c.Trim == plan.TrimNear && c.Plane:
		says = fmt.Sprintf("plane %s off the %s of %s", t.length(c.Off), near, part)
	case c.Trim == plan.TrimNear:
		says += fmt.Sprintf(": %s off its %s", t.length(c.Off), near)
		if c.Frees[1] != 0 {
			says += ", leaving " + t.length(fraction.Must(c.Leaves()))
		}
	case c.Trim == plan.TrimBeyond && c.Plane:
		says = fmt.Sprintf("plane %s off the %s of %s, to %s", t.length(c.Off), far, part, t.length(c.At))
	case c.Trim == plan.TrimBeyond:
		says += fmt.Sprintf(" at %s, which trims %s off its %s", t.length(c.At), t.length(c.Off), far)
	default:
		at, from := measureOf(p, c)
		says += " at " + t.length(at) + either(from == far, " from its "+far, "")
	}
	if pieces := freed(p, s, c); pieces != "" {
		says += "; frees " + pieces
	}
	return says
}

// measureOf returns what is measured to a cut, and from which edge: what it trims is off that edge, or beyond the blade.
func measureOf(p plan.Plan, c plan.Cut) (at fraction.Length, from string) {
	near, far := cutEdges(p, c.Kind)
	if at, beyond, err := c.Measure(p.Saw.Kerf, p.Tape); c.Trim == plan.NoTrim && beyond {
		return fraction.Must(at, err), far
	}
	return c.At, near
}

// waits says until when a cut waits, and nothing where it does not.
func waits(p plan.Plan, c plan.Cut) string {
	switch {
	case c.Waits.Piece != 0:
		return "until the space of piece " + label(p, c.Waits.Piece) + " is measured on the wall"
	case c.Waits.Step != 0:
		return "for cut " + strconv.Itoa(c.Waits.Step)
	}
	return ""
}

// pieceName names a piece of a sheet as the cut list does, with the side of a cut on which it stands free, if that is to be said.
func pieceName(p plan.Plan, s plan.Sheet, number int, side string) string {
	turned := false
	for _, pl := range s.Placements {
		turned = turned || pl.Part == number && pl.Turned
	}
	piece, _ := p.Piece(number)
	then := thenMiter(p, piece)
	return "piece " + label(p, number) + either(turned, " turned", "") + either(side == "", "", " "+side) + either(then == "", "", " ("+then+")")
}

// thenMiter says which edges of a piece are mitered once it is sawn, a closing one later: when it has been measured on the wall.
func thenMiter(p plan.Plan, piece plan.Piece) string {
	edges := mitered(p, piece)
	return either(edges == "", "", either(piece.Closing, "later ", "then ")+"miter the "+edges+" of its face")
}

// faceWords say how a sheet lies. Left and right are as it lies.
var faceWords = map[plan.Face]string{plan.FaceUp: "Face up", plan.FaceDown: "Face down, so that you see the back"}

// ripEdge is the edge that rips are measured from: the left one of the face, as it lies.
func ripEdge(p plan.Plan) string {
	return either(p.Saw.Face == plan.FaceDown, "right edge", "left edge")
}

// tongueAt says where the tongue of a board lies, as the board lies.
func tongueAt(p plan.Plan) string {
	switch {
	case !p.Profile.Boards:
		return ""
	case p.Profile.Edges == groove.EdgesUnknown:
		return ", all the same way up; where they have tongues the plan does not know of them: give edges and tongue in the profile before you saw"
	case p.Profile.Edges != groove.Tongued:
		return ""
	}
	left := (p.Profile.Tongue == groove.TongueLeft) != (p.Saw.Face == plan.FaceDown)
	return ", its tongue at the " + either(left, "left", "right") + " and not measured"
}

// cutEdges returns the words for the edges on both sides of a cut: the one measured from, and the far one.
func cutEdges(p plan.Plan, kind nest.CutKind) (near, far string) {
	if kind == nest.Rip {
		return ripEdge(p), sideWords(p, kind)[1] + " edge"
	}
	return "lower end", "upper end"
}

// sideWords returns the words for the sides of a cut: the near one, and the one beyond the blade.
func sideWords(p plan.Plan, kind nest.CutKind) [2]string {
	switch {
	case kind == nest.Crosscut:
		return [2]string{"below", "above"}
	case p.Saw.Face == plan.FaceDown:
		return [2]string{"right", "left"}
	}
	return [2]string{"left", "right"}
}

// freed names the pieces that stand free after a cut, with their sides where there are two, or one
// beyond the blade and a part to cut on this side of it.
func freed(p plan.Plan, s plan.Sheet, c plan.Cut) string {
	var says []string
	for beyond, number := range c.Frees {
		if number != 0 {
			sides := c.Frees[1-beyond] != 0 || beyond == 1 && c.Trim != plan.TrimNear
			says = append(says, pieceName(p, s, number, either(sides, sideWords(p, c.Kind)[beyond], "")))
		}
	}
	return strings.Join(says, ", ")
}

// part names the part on the bench by its size to the nearest mark, and by the cut that it comes from
// where another part of the sheet has the same size: their patterns may differ.
func (t *text) part(p plan.Plan, s plan.Sheet, c plan.Cut) string {
	if c.From.Step == 0 {
		return "the " + sheetWord(p)
	}
	return t.nearest(c.Rect[2]) + " x " + t.nearest(c.Rect[3]) + fromCut(p, s, c)
}

// fromCut says which cut freed the part that a cut is made on, where others are as large.
func fromCut(p plan.Plan, s plan.Sheet, c plan.Cut) (says string) {
	alike := fraction.Must(p.Ambiguous(s, c))
	for _, from := range s.Cuts {
		if alike && from.Step == c.From.Step {
			sides, of := sideWords(p, from.Kind), either(from.Kind == nest.Rip, " of", "")
			says = fmt.Sprintf(" %s%s cut %d", either(c.From.Beyond, sides[1], sides[0]), of, from.Step)
		}
	}
	return says
}

// fromCut is [fromCut] for the pages.
func (b *page) fromCut(s plan.Sheet, c plan.Cut) string { return fromCut(b.Plan, s, c) }
