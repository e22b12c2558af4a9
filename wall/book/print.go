package book

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/plan"
)

// Text returns the plan as a person takes it to the workshop: what to buy
// and what to measure again come first, then each run, each sheet and each
// piece, and the order of work with its cautions before it.
func Text(p plan.Plan) string {
	return written(p.TapeMeasure(), func(t *text) {
		t.heading(1, title(p))
		t.para(t.headline(p))
		t.choices(p)
		t.gap()
		t.para(t.scale(p))
		t.warnings(p.Warnings)
		t.taped(p.Taped)
		t.shopping(p)
		t.runs(p)
		t.sheets(p)
		t.pieces(p)
		t.cautions(p)
		t.order(p)
		t.looks(p)
	})
}

func title(p plan.Plan) string {
	if p.Title == "" {
		return "Panelling plan"
	}
	return p.Title
}

// Headline says in a sentence or two what to buy, what is used of what is on
// hand, and whether that is proved.
func Headline(p plan.Plan) (line string) {
	over := written(p.TapeMeasure(), func(t *text) { line = t.headline(p) })
	return line + over
}

func (t *text) headline(p plan.Plan) string {
	var buy, use []string
	for _, s := range p.Stock {
		if s.Used == 0 {
			continue
		}
		kind := fmt.Sprintf("%d of %q, %s", s.Used, s.Name, t.size(s.Width, s.Length))
		if s.Count == nil {
			buy = append(buy, kind)
		} else {
			use = append(use, kind)
		}
	}
	says := "No " + sheetWord(p) + " to buy."
	if len(buy) > 0 {
		says = "Buy " + strings.Join(buy, "; ") + "."
	}
	if len(use) > 0 {
		says += " Use from what is on hand " + strings.Join(use, "; ") + "."
	}
	return says + " " + proof(p)
}

// proof says what is known about fewer sheets.
func proof(p plan.Plan) string {
	switch {
	case p.Search.Proved && p.Bound.Proved:
		return "Proved: no layout of this room needs fewer" + because(Search(p)) + "."
	case p.Bound.Proved:
		return "Proved for this layout: its pieces need as many" + because(argument(p, p.Bound.How)) + ". Of other layouts: " + Search(p) + "."
	}
	are := "are"
	if p.Bound.SheetsAtLeast == 1 {
		are = "is"
	}
	return fmt.Sprintf("At least %s %s needed%s; whether as few can do was not proved%s.",
		count(p.Bound.SheetsAtLeast, sheetWord(p)), are, because(argument(p, p.Bound.How)), because(Search(p)))
}

// Search says how the search of layouts ended and what that proves.
func Search(p plan.Plan) string {
	s := p.Search
	switch {
	case s.Status == choice.BothProved && s.End == choice.LayoutsSpent:
		return "every layout was looked at"
	case s.Status == choice.BothProved:
		return argument(p, s.How)
	case s.Status == choice.NeedProved && s.End == choice.BoundMet:
		return fmt.Sprintf("no layout can need less: %s; another that needs as little might look better (%s looked at)",
			argument(p, s.How), count(s.Layouts, "layout"))
	case s.End == choice.ContextStopped:
		return fmt.Sprintf("stopped early, after %s; another might need less", count(s.Layouts, "layout"))
	}
	return fmt.Sprintf("stopped after %s; another might need less", count(s.Layouts, "layout"))
}

// argument says what a bound rests on.
func argument(p plan.Plan, how nest.Argument) string {
	if p.Profile.Boards && how == nest.PartArea {
		return "their lengths with kerfs"
	}
	return arguments[how]
}

var arguments = map[nest.Argument]string{
	nest.NothingToCut:   "there is nothing to cut",
	nest.SomethingToCut: "there is something to cut",
	nest.PartArea:       "area of the pieces with their kerfs and the gaps that phase leaves",
	nest.DualFunctions:  "which pieces fit side by side and one above the other",
	nest.LinearProgram:  "what the fullest sheet of such pieces holds",
	nest.ExactSearch:    "every way to saw them was searched",
	nest.StripArea:      "area of the walls with kerfs",
	nest.StripHeights:   "how often the heights of the walls go into a sheet",
	nest.PartHeights:    "how often the heights of the pieces go into a sheet",
}

// because puts a reason, which may be a sentence, into brackets.
func because(how string) string {
	if how = strings.TrimRight(how, ". "); how == "" {
		return ""
	}
	return " (" + how + ")"
}

// count writes a number with its noun.
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return strconv.Itoa(n) + " " + noun + "s"
}

// size writes a width and a length.
func (t *text) size(width, length fraction.Length) string {
	return t.length(width) + " x " + t.length(length)
}

// scale says how to read the lengths.
func (t *text) scale(p plan.Plan) string {
	return fmt.Sprintf("Lengths are in %s, to the nearest %s; ~ stands before one that lies between the marks, and what was added to reach the mark follows in brackets.",
		unit(p), t.length(p.Tape))
}

// unit is the name of the unit that people read.
func unit(p plan.Plan) string {
	switch p.TapeMeasure().Unit {
	case fraction.Millimetre:
		return "millimetres"
	case fraction.Centimetre:
		return "centimetres"
	}
	return "inches"
}

// warnings lists what to measure again.
func (t *text) warnings(all []warning.Warning) {
	if len(all) == 0 {
		return
	}
	t.heading(2, "Look at these before you buy")
	for _, w := range all {
		t.hang("  ! ", t.warned(w))
	}
}

// taped lists the points that were given by distances, as solved.
func (t *text) taped(all []plan.Taped) {
	if len(all) == 0 {
		return
	}
	t.heading(2, "Points from taped distances")
	rows := [][]string{{"point", "run", "from left", "up", "distances meet"}}
	for _, p := range all {
		rows = append(rows, []string{p.Name, p.Run, t.length(p.At.X), t.length(p.At.Y), t.within(p.Closing)})
	}
	t.table(2, rows)
}

// within tells the mark up to which something is right.
func (t *text) within(x fraction.Length) string {
	if x.IsZero() {
		return "exactly"
	}
	up, _ := x.Round(t.tape.Mark, fraction.Up)
	return "within " + t.tape.Format(up)
}

// The words for what a job is planned from and for a part of a run.
func sheetWord(p plan.Plan) string { return p.Profile.Word("sheet", "board") }
func panelWord(p plan.Plan) string { return p.Profile.Word("panel", "board") }

// shopping prints the take-off: first what to buy, in columns to take to the
// counter, then how each quantity was found.
func (t *text) shopping(p plan.Plan) {
	if len(p.List.Rows) == 0 {
		return
	}
	t.heading(2, "Shopping list")
	rows := [][]string{{"buy", "", "for", "needed", "cost"}}
	for _, r := range p.List.Rows {
		buy := strconv.Itoa(r.Buy)
		if onHand(p, r) {
			buy = "own"
		}
		rows = append(rows, []string{buy, r.Container, Item(r), Quantity(r), cents(r.Cost, "")})
	}
	t.table(2, rows)
	t.hang("  ", t.sum(p))
	t.gap()
	t.hang("  ", "How each was found:")
	for _, r := range p.List.Rows {
		t.hang("    ", Item(r)+": "+How(r))
	}
}

// sum says the money and what it leaves out.
func (t *text) sum(p plan.Plan) string {
	for _, r := range p.List.Rows {
		if onHand(p, r) {
			p.Unpriced--
		}
	}
	s := "Total " + cents(p.Total, "not known")
	if tax, _ := p.Tax.Decimal(); !tax.IsZero() {
		s += ", with tax of " + cents(p.Tax, "")
	}
	if p.Unpriced > 0 {
		s += fmt.Sprintf("; %s without a price not counted", count(p.Unpriced, "row"))
	}
	return s + "."
}

// runs prints each run with its setting-out, story pole and panels.
func (t *text) runs(p plan.Plan) {
	for i, r := range p.Runs {
		t.heading(2, fmt.Sprintf("Run %d: %s, %s wide", i+1, r.Name, t.length(r.Width)))
		t.hang("  Set out  ", fmt.Sprintf("from %s, to the %s: %s", t.length(r.SetOut.From), r.SetOut.Direction, t.why(r)))
		t.hang("           ", fmt.Sprintf("a repeat of the pattern starts at %s", t.length(r.SetOut.Origin)))
		for _, b := range r.Restarts {
			t.hang("           ", fmt.Sprintf("it starts afresh at the break at %s, with a repeat at %s", t.length(b.At), t.length(b.Origin)))
		}
		t.hang("  Left     ", r.Left.Kind.String()+": "+drawing.CutName(t.tape, r.Left.Cut))
		t.hang("  Right    ", r.Right.Kind.String()+": "+drawing.CutName(t.tape, r.Right.Cut))
		if c := r.CornerRight; c != nil {
			t.hang("  Corner   ", t.corner(*c))
		}
		for _, n := range r.Installed {
			t.hang("  On wall  ", fmt.Sprintf("a %s from %s to %s stays", panelWord(p), t.length(n.Left), t.length(n.Right)))
		}
		t.panels(p, r)
		if len(r.StoryPole) > 0 {
			t.hang("  ", "Story pole, every mark from the run's left end:")
			rows := [][]string{}
			for _, m := range poleMarks(p, r) {
				rows = append(rows, []string{t.length(m.At), m.What})
			}
			t.table(4, rows)
		}
	}
}

// poleMark is a place on a story pole and what is marked there.
type poleMark struct {
	At   fraction.Length
	What string
}

// poleMarks are the places of a run's story pole.
func poleMarks(p plan.Plan, r plan.Run) []poleMark {
	var marks []poleMark
	for _, m := range r.StoryPole {
		what := drawing.MarkName(p.Profile, m)
		if last := len(marks) - 1; last >= 0 && marks[last].At == m.At {
			marks[last].What += "; " + what
		} else {
			marks = append(marks, poleMark{m.At, what})
		}
	}
	return marks
}

// why says for what a run is set out so: what is to be seen at both ends.
func (t *text) why(r plan.Run) string {
	left := fmt.Sprintf("%s at the left end (%s)", drawing.CutName(t.tape, r.Left.Cut), r.Left.Kind)
	right := fmt.Sprintf("%s at the right end (%s)", drawing.CutName(t.tape, r.Right.Cut), r.Right.Kind)
	hidden := func(e plan.End) string {
		if e.Kind == wall.InsideCorner {
			return "; in the corner: "
		}
		return "; out of sight: "
	}
	switch r.SetOut.Why {
	case plan.BothSeen:
		return "seen: " + left + " and " + right
	case plan.LeftSeen:
		return "seen: " + left + hidden(r.Right) + right
	case plan.RightSeen:
		return "seen: " + right + hidden(r.Left) + left
	}
	return "neither end is seen: " + left + ", " + right
}

// corner says how the panels of two runs meet at a corner.
func (t *text) corner(c plan.Corner) string {
	s := c.Kind.String() + " with " + c.Next
	if c.Passes != "" {
		s += fmt.Sprintf(": %s passes into the corner, %s butts against it", c.Passes, c.Butts)
	} else {
		s += ": both are mitred and reach one thickness past the wall, to the long point"
	}
	if c.Mismatch.IsZero() {
		return s + "; the pattern runs on round it"
	}
	return s + "; the pattern is off by " + t.length(c.Mismatch)
}

// panels prints where each panel of a run stands.
func (t *text) panels(p plan.Plan, r plan.Run) {
	rows := [][]string{{panelWord(p), "from", "to", "pieces"}}
	for _, panel := range r.Panels {
		rows = append(rows, []string{strconv.Itoa(panel.Number), t.length(panel.Left), t.length(panel.Right), labels(p, panel.Pieces)})
	}
	if len(rows) > 1 {
		t.table(2, rows)
	}
}

// labels lists the labels of some pieces.
func labels(p plan.Plan, numbers []int) string {
	all := make([]string, len(numbers))
	for i, n := range numbers {
		all[i] = label(p, n)
	}
	return strings.Join(all, ", ")
}

// label returns what is written on the back of a piece.
func label(p plan.Plan, number int) string {
	for _, piece := range p.Pieces {
		if piece.Number == number && piece.Label != "" {
			return piece.Label
		}
	}
	return strconv.Itoa(number)
}

// cautions and order print what to heed and what to do.
func (t *text) cautions(p plan.Plan) {
	if len(p.Cautions) > 0 {
		t.heading(2, "Cautions")
	}
	for _, c := range p.Cautions {
		t.hang("  ! ", Caution(p, c))
	}
}

func (t *text) order(p plan.Plan) {
	if len(p.Order) > 0 {
		t.heading(2, "Order of work")
	}
	for i, s := range p.Order {
		t.hang(fmt.Sprintf("  %2d [ ] ", i+1), Step(p, s))
	}
}
