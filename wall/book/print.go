package book

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/choice"
	"example.com/groovewright/wall/plan"
)

// result says what to buy, what is proved, what is seen most and how lengths are written.
func (t *text) result(p plan.Plan) {
	t.para(t.headline(p))
	t.choices(p)
	t.para(t.between())
	if t.full {
		t.looks(p)
	}
}

// between says in what lengths are written, and how one that is between two marks of the tape.
func (t *text) between() string {
	says := "Lengths in " + t.tape.Unit.Plural()
	if t.tape.Mark.IsZero() {
		return says + "."
	}
	mark, how := t.tape.Mark, "%s; between two marks: %s midway, else %s."
	if t.full {
		how = "%s. One midway between two marks of the tape is written like %s, one a little past a mark like %s."
	}
	return fmt.Sprintf(how, says, t.length(mark.Mul(22).Add(mark.Div(2))), t.length(mark.Mul(22).Add(mark.Div(4))))
}

// Headline says in a sentence or two what to buy, what is used of what is on hand, and whether that
// is proved.
func Headline(p plan.Plan) (line string) {
	over := written(p.TapeMeasure(), true, func(t *text) { line = t.headline(p) })
	return line + over
}

func (t *text) headline(p plan.Plan) string { return t.buying(p) + " " + t.proof(p) }

// buying says what to buy and what is used of what is on hand.
func (t *text) buying(p plan.Plan) string {
	kinds := map[bool][]string{} // by whether they are on hand
	for _, s := range p.Stock {
		if s.Used != 0 {
			kinds[s.OnHand()] = append(kinds[s.OnHand()], fmt.Sprintf("%d of \"%s\", %s", s.Used, s.Name, t.given(s.Width)+" x "+t.given(s.Length)))
		}
	}
	says := "No " + sheetWord(p) + " to buy."
	if buy := strings.Join(kinds[false], "; "); buy != "" {
		says = "Buy " + buy + "."
	}
	if use := strings.Join(kinds[true], "; "); use != "" {
		says += " Use from what is on hand " + use + "."
	}
	return says
}

// needs are the words for what a layout needs, by what of that counts first.
type needs struct{ less, asLittle, might string }

func needsOf(p plan.Plan) needs {
	switch c := p.Chosen(); {
	case p.ByPrice():
		return needs{"has cheaper " + sheetWord(p) + "s", "with " + sheetWord(p) + "s as cheap", "have cheaper " + sheetWord(p) + "s"}
	case c.Bought == 0 && c.OnHand() > 0:
		return needs{"takes fewer from what is on hand and none to buy", "that takes as few", "take fewer from what is on hand"}
	case c.OnHand() > 0:
		return needs{"needs fewer to buy", "that needs as few", "need fewer to buy"}
	}
	return needs{"needs fewer", "that needs as few", "need fewer " + sheetWord(p) + "s"}
}

// proven reports whether it is proved that no layout that looks as good needs less, and that none that
// needs as little looks better; and whether one that looks worse than every choice might need less than the chosen one, which
// is the last.
func proven(p plan.Plan) (less, looks, worse bool) {
	status, last := p.Chosen().Status, len(p.Choices)-1
	worse = last >= 0 && p.Choices[last].Chosen && !p.Search.Least
	return status&choice.NeedProved != 0 || p.LeastOfAll(), status&choice.LooksProved != 0, worse
}

// proof says what is proved of layouts that need less or look better and what is not, and in the full
// text why.
func (t *text) proof(p plan.Plan) string {
	c, words, says, why := p.Chosen(), needsOf(p), "", ""
	less, looks, worse := proven(p)
	proved := either(t.shop, "", "proved: ")
	switch {
	case p.LeastOfAll():
		says, why = proved+"no layout of this room "+words.less, leastBy(p)
	case less:
		says = proved + "no layout that looks as good " + words.less
	case c.Proved && p.ByPrice():
		says, why = proved+"no cheaper "+sheetWord(p)+"s give these pieces", argument(p, p.Bound.How)
	case c.Proved:
		says, why = proved+"these pieces need as many "+sheetWord(p)+"s", argument(p, p.Bound.How)
	case p.ByPrice():
		says = "whether cheaper " + sheetWord(p) + "s can do for these pieces " + either(t.shop, "is not known", "was not proved")
	default:
		says = fmt.Sprintf("at least %s %s needed for these pieces; whether as few can do "+either(t.shop, "is not known", "was not proved"), count(p.Bound.SheetsAtLeast, sheetWord(p)), either(p.Bound.SheetsAtLeast == 1, "is", "are"))
		why = argument(p, p.Bound.How)
	}
	if says = capital(says) + either(t.full, because(why), ""); less && looks {
		says += ", and none " + words.asLittle + " looks better"
		if !worse {
			return says + "."
		}
	}
	return says + ". " + capital(t.open(p)) + "."
}

// leastBy says why no layout of the room needs less.
func leastBy(p plan.Plan) string {
	switch p.Search.End {
	case choice.BoundMet:
		return argument(p, p.Search.How)
	case choice.ContextStopped:
		return ""
	}
	return "each that might was looked at"
}

// Search says what the search of layouts leaves open.
func Search(p plan.Plan) string { return new(text).open(p) }

func (t *text) open(p plan.Plan) string {
	less, looks, worse := proven(p)
	words, after := needsOf(p), count(p.Search.Layouts, "layout")+" looked at"
	if t.shop {
		after = ""
	}
	if p.Search.End == choice.ContextStopped {
		after = either(t.shop, "stopped early", "stopped early, after "+after)
	}
	switch {
	case less && looks && !worse:
		return "nothing is left open"
	case less && looks:
		return "another layout, which looks worse, might " + words.might + because(after)
	case less:
		return "another " + words.asLittle + " might look better" + either(worse, ", and one that looks worse might "+words.might, "") + because(after)
	}
	says, as := "another layout might "+words.might, ""
	if least := p.Chosen().SheetsAtLeast; 0 < least && least < len(p.Sheets) && !p.ByPrice() {
		as = ". One that looks as good takes at least " + count(least, sheetWord(p))
	}
	return says + either(looks, "", ", or look better") + because(after) + as
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
	how = strings.TrimRight(how, ". ")
	return either(how == "", "", " ("+how+")")
}

// taped lists the points that were given by distances, as solved.
func (t *text) taped(all []plan.Taped) {
	var rows [][]string
	section(t, "Points from taped distances", all, func(_ int, p plan.Taped) {
		rows = append(rows, []string{pointName(p), p.Run, t.length(p.At.X), t.length(p.At.Y), t.within(p.Closing)})
	})
	t.table(2, []string{"point", "run", "from left", "up", "distances meet"}, rows)
}

// pointName names a point that was given by distances.
func pointName(p plan.Taped) string {
	if p.Opening == "" {
		return fmt.Sprintf("height %d of %s", p.Number, p.Run)
	}
	return fmt.Sprintf("corner c%d of %s", p.Number, p.Opening)
}

// within says the mark up to which something is right.
func (t *text) within(x fraction.Length) string {
	up, _ := x.Round(t.tape.Mark, fraction.Up)
	return either(x.IsZero(), "exactly", "within "+t.tape.Format(up))
}

// The words for what a job is planned from and for a part of a run.
func sheetWord(p plan.Plan) string { return p.Profile.Word("sheet", "board") }
func panelWord(p plan.Plan) string { return p.Profile.Word("panel", "board") }

// rounding says how the figures of the take-off are rounded.
const rounding = "Figures follow from exact ones and are rounded last, up in their last place, so that those of two rows can differ a little; " +
	"the parts of one sum are written so that they add up, and waste is what is left to it."

// shopping prints the take-off: what to buy, in columns to take to the counter, the money with what
// it leaves out, and in the full text how each quantity was found. Extras in a row share a line.
func (t *text) shopping(p plan.Plan) {
	if len(p.List.Rows) == 0 {
		return
	}
	t.begin("Shopping list")
	var rows [][]string
	var extras []string
	known := priced(p)
	for _, r := range p.List.Rows {
		if r.How == finish.ByRequest && r.Buy == 1 && !t.full {
			extras = append(extras, strings.TrimSpace(Item(r)+" "+cents(r.Cost, "")))
			continue
		}
		rows = append(rows, []string{buys(p, r), r.Container, Item(r), Quantity(r), cents(r.Cost, "")})
	}
	t.table(0, []string{"buy", "", "for", "needed", "cost"}, rows)
	if len(extras) > 0 {
		t.hang("1    ", "of each: "+strings.Join(extras, "; "))
	}
	sum := "Total " + either(known, cents(p.Total, "not known"), "not known")
	if taxed(p) {
		sum += ", with tax of " + cents(p.Tax, "")
	}
	if n := unpriced(p); n > 0 {
		sum += fmt.Sprintf("; %s without a price not counted", count(n, "row"))
	}
	t.para(strings.Join(append([]string{sum + "."}, besides(p)...), " "))
	if !t.full {
		return
	}
	t.gap()
	t.para("How each was found. " + rounding)
	for _, r := range p.List.Rows {
		t.hang("  ", Item(r)+": "+How(r))
	}
}

// buys says how much of a row is bought, or that it is on hand.
func buys(p plan.Plan, r finish.Row) string { return either(p.OnHand(r), "own", strconv.Itoa(r.Buy)) }

// unpriced counts the rows to buy that have no price.
func unpriced(p plan.Plan) int {
	for _, r := range p.List.Rows {
		if p.OnHand(r) {
			p.Unpriced--
		}
	}
	return p.Unpriced
}

// taxed reports whether there is a tax to name.
func taxed(p plan.Plan) bool {
	tax, _ := p.Tax.Decimal()
	return !tax.IsZero()
}

// run prints a run with its setting-out and story pole, and in the full text its panels.
func (t *text) run(p plan.Plan, i int, r plan.Run) {
	if r.Bare() {
		t.hang(fmt.Sprintf("Run %d  ", i+1), fmt.Sprintf("%s, %s: stays bare.", r.Name, t.given(r.Width)))
		return
	}
	patterned := p.Profile.Pitch.Sign() > 0
	says := fmt.Sprintf("%s, %s: start at %s, work %s", r.Name, t.given(r.Width), t.along(r.SetOut.From, r.Width)+startsAt(r), way(r.SetOut))
	onPole := slices.ContainsFunc(r.StoryPole, func(m plan.Mark) bool { return m.Kind == plan.RepeatStarts })
	if patterned && (t.full || p.Profile.Boards || !onPole) {
		says += "; a repeat starts at " + t.along(r.SetOut.Origin, r.Width)
	}
	for _, b := range r.Restarts {
		says += fmt.Sprintf("; it starts afresh at the break at %s, with a repeat at %s", t.length(b.At), t.length(b.Origin))
	}
	end := func(side string, e plan.End) string {
		return fmt.Sprintf("%s %s%s", side, e.Word(), either(patterned && !e.Bare && !p.Passes(i, side == "right"), ": "+e.Cut.Name(t.tape), ""))
	}
	says += "; " + end("left", r.Left) + "; " + end("right", r.Right)
	if c := r.CornerRight; c != nil {
		says += "; " + t.corner(*c, patterned, either(p.Behind(i), ", and is up: "+behindIt(p, i), ""))
	}
	for _, n := range r.Installed {
		says += fmt.Sprintf("; a %s from %s to %s stays", panelWord(p), t.length(n.Left), t.length(n.Right))
	}
	t.hang(fmt.Sprintf("Run %d  ", i+1), says+".")
	if kept := t.kept(r.Keep); kept != "" {
		t.hang("       ", "kept as the job asks: "+kept)
	}
	if t.full {
		var rows [][]string
		for _, panel := range r.Panels {
			rows = append(rows, []string{strconv.Itoa(panel.Number), t.along(panel.Left, r.Width), t.along(panel.Right, r.Width), labels(p, panel.Pieces)})
		}
		t.table(2, []string{panelWord(p), "from", "to", "pieces"}, rows)
	}
	t.pole(p, r)
	if strips := t.strips(r); strips != "" {
		t.hang("  strips ", strips+".")
	}
}

// strips says how high the strips behind the boards of a run are fixed, if the work has any.
func (t *text) strips(r plan.Run) string {
	at := r.Supports
	if len(at) == 0 {
		return ""
	}
	says := make([]string, len(at))
	for i, y := range at {
		says[i] = t.length(y)
	}
	return either(len(at) == 1, "middle of the level strip between foot and top ", "middles of the level strips between foot and top ") + list(says...) + " over the datum" + either(len(r.Openings) > 0, ", cut off at openings", "")
}

// startsAt says at which height a run starts where its first end leans.
func startsAt(r plan.Run) string {
	leans, top := r.LeansOut(wall.Left + wall.Right - r.SetOut.Direction)
	return either(leans, ", at the "+either(top, "top", "foot")+" of its leaning end", "")
}

// markName names a mark of a run's pole; an end that leans by its height.
func markName(p plan.Plan, r plan.Run, m plan.Mark) string {
	end := wall.Left
	if m.Kind == plan.PanelsStop {
		end = wall.Right
	}
	leans, top := r.LeansOut(end)
	leans = leans && (m.Kind == plan.PanelsStart || m.Kind == plan.PanelsStop)
	return m.Name(p.Profile) + either(leans, " (at its "+either(top, "top", "foot")+")", "")
}

// pole lists the marks of a run's story pole: both sides of an opening together, and of a seam.
func (t *text) pole(p plan.Plan, r plan.Run) {
	var rows [][]string // places and what is there
	for _, e := range p.PoleEntries(r) {
		at, what := t.along(e.From, r.Width), ""
		if e.To != e.From {
			at += " to " + t.along(e.To, r.Width)
		}
		switch first := e.Marks[0]; {
		case e.Course != nil:
			what = t.course(r, *e.Course)
		case e.To != e.From && first.Kind == plan.OpeningLeft:
			what = first.Opening
		default:
			var names []string
			for _, m := range e.Marks {
				names = append(names, markName(p, r, m))
			}
			what = strings.Join(names, ", ")
		}
		rows = append(rows, []string{at, what})
	}
	if t.full {
		t.hang("  ", "Story pole, from the run's left end:")
		t.table(4, nil, rows)
		return
	}
	says := make([]string, len(rows))
	for i, row := range rows {
		says[i] = row[0] + either(strings.HasSuffix(row[0], " end"), ": ", " ") + row[1]
	}
	if len(says) > 0 {
		t.hang("  pole ", strings.Join(says, "; ")+".")
	}
}

// along writes a place on a run of that width, which may lie beyond either end, as the long point of a miter does.
func (t *text) along(x, width fraction.Length) string {
	switch {
	case x.Sign() < 0:
		return t.length(x.Abs()) + " past the left end"
	case width.Less(x):
		return t.length(x.Sub(width)) + " past the right end"
	}
	return t.length(x)
}

// course says which boards a course joins and where it is marked between its ends.
func (t *text) course(r plan.Run, c plan.Course) string {
	first, last := r.StoryPole[c.Marks[0]], r.StoryPole[c.Marks[len(c.Marks)-1]]
	says := fmt.Sprintf("joints of boards %d to %d, every %s", first.Panel, last.Next, t.length(c.Every))
	var checks []string
	for _, i := range c.Checks() {
		checks = append(checks, t.along(r.StoryPole[i].At, r.Width))
	}
	return says + either(len(checks) > 0, ", checked at "+strings.Join(checks, ", "), "")
}

// asTaped says why the place of a step or an opening on a story pole is not that of the piece beside it; nothing
// where no pole has one.
func asTaped(p plan.Plan) string {
	for _, r := range p.Runs {
		if slices.ContainsFunc(r.StoryPole, func(m plan.Mark) bool { return m.Kind == plan.OpeningLeft || m.Kind == plan.StepSide }) {
			return "Poles have steps and openings as taped; a piece stays off them by its gap."
		}
	}
	return ""
}

// poleMark is a place on a story pole and what is marked there.
type poleMark struct {
	At   fraction.Length
	What string
}

// poleMarks are the places of a run's story pole.
func poleMarks(p plan.Plan, r plan.Run) (marks []poleMark) {
	for _, place := range r.PolePlaces() {
		var names []string
		for _, i := range place {
			names = append(names, markName(p, r, r.StoryPole[i]))
		}
		marks = append(marks, poleMark{r.StoryPole[place[0]].At, strings.Join(names, "; ")})
	}
	return marks
}

// way says which way a run is worked, and why where the boards ask for it.
func way(s plan.SetOut) string {
	return s.Direction.String() + map[wall.DirectionCause]string{wall.ByTongue: ", to the side of the tongue", wall.ByLap: ", as the boards lap", wall.ByKeep: ", as the job keeps it"}[s.DirectionBy]
}

// why says for what run i is set out so: what is seen, or hidden, at both ends.
func (t *text) why(p plan.Plan, i int) string {
	r := p.Runs[i]
	shown := func(e plan.End, right bool) string {
		side := either(right, "right", "left")
		if p.Passes(i, right) {
			beside := p.Runs[(i+either(right, 0, len(p.Runs)-1))%len(p.Runs)].CornerRight
			return side + " end, hidden behind the " + panelWord(p) + " of " + beside.Butts
		}
		return strings.TrimSpace(fmt.Sprintf("%s at the %s end (%s)", e.Cut.Name(t.tape), side, e.Word()))
	}
	left, right := shown(r.Left, false), shown(r.Right, true)
	hidden := func(e plan.End, right bool) string {
		return either(e.Kind == wall.InsideCorner && !p.Passes(i, right), "; in the corner: ", "; out of sight: ")
	}
	switch r.SetOut.Why {
	case plan.BothSeen:
		return "seen: " + left + " and " + right
	case plan.LeftSeen:
		return "seen: " + left + hidden(r.Right, true) + right
	case plan.RightSeen:
		return "seen: " + right + hidden(r.Left, false) + left
	}
	return left + "; " + right
}

// kept lists what the job insists on for a run.
func (t *text) kept(k wall.Keep) string {
	var all []string
	if k.Origin != nil {
		all = append(all, "a repeat at "+t.length(*k.Origin))
	}
	if k.Direction != nil {
		all = append(all, "work to the "+k.Direction.String())
	}
	for _, x := range k.Seams {
		all = append(all, "a seam at "+t.length(x))
	}
	for _, c := range k.Clear {
		all = append(all, fmt.Sprintf("no seam from %s to %s", t.length(c.From), t.length(c.To)))
	}
	return strings.Join(all, ", ")
}

// behindIt says how the last piece of a run comes behind a panel that is up, at the right end of run i.
func behindIt(p plan.Plan, i int) string {
	return "take its " + panelWord(p) + " off first, " + either(p.Locked(i), "as there is no room to slide the last piece in behind it", "or slide the last piece in behind it where there is room to come from the side")
}

// corner says how the panels of two runs meet at a corner, and more of the one that butts.
func (t *text) corner(c plan.Corner, patterned bool, up string) string {
	if c.Mitred() { // both edges are cut there, whatever the pattern
		return "mitered with " + c.Next + ", both reach one thickness past the wall, to the long point"
	}
	pattern := either(c.Mismatch.IsZero(), "runs on round it", "is out of step by "+t.length(c.Mismatch))
	return fmt.Sprintf("%s passes, %s butts%s", c.Passes, c.Butts, up) + either(patterned, ", pattern "+pattern, "")
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
	piece, _ := p.Piece(number)
	return cmp.Or(piece.Label, strconv.Itoa(number))
}

// Written says what a plan takes and which of its files were written into a folder.
func Written(p plan.Plan, folder string, files []File) string {
	var names []string
	for _, f := range files {
		if !strings.HasSuffix(f.Name, ".svg") {
			names = append(names, f.Name)
		}
	}
	if n := len(files) - len(names); n > 0 {
		names = append(names, count(n, "drawing"))
	}
	return written(p.TapeMeasure(), true, func(t *text) {
		t.para(Headline(p))
		t.WriteString("written to " + folder + ":\n") // a path is copied: on one line
		t.hang("  ", strings.Join(names, ", "))
	})
}
