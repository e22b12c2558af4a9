package book

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/wall/plan"
)

// method is how a quantity was found. Most have one text, in which each term stands in braces by
// its word; of others the number of terms differs, and each kind of term has words of its own,
// between the text and the last words. There {} stands for the value of the term and {name} for its
// name. {source} is the source of the row and {units} what it counts.
type method struct {
	text  string
	terms map[finish.TermKind]string
	last  string
}

var slot = regexp.MustCompile(`\{[^}]+\}`)

// offWords say how far nails stay off what they split or reach.
var offWords = map[finish.TermKind]string{finish.TermInset: "; none nearer to an edge than {}", finish.TermClear: ", to an opening for cables or pipes than {}"}

// sheetNails says it of sheets, and what stands round windows in them.
var sheetNails = map[finish.TermKind]string{finish.TermSides: "; round windows in pieces, {} in all, as along edges", finish.TermInset: offWords[finish.TermInset], finish.TermClear: offWords[finish.TermClear]}

var covered = map[finish.TermKind]string{finish.TermCovered: " + {name} {}", finish.TermAllowance: ", {} of each length for its cuts"}

// beforeRod is between what a bead before a backing rod is deep, see [finish.Origins].
func beforeRod(metric bool) string {
	return either(metric, "6 mm at least and 13 mm at most", "1/4 in at least and 1/2 in at most")
}

// methodWords has the words of each method.
var methodWords = map[finish.How]method{
	finish.WithRowAbove: {text: "the rest of the row above, in another size of pack"},
	finish.ByPlan:       {text: "counted from the {units} to saw, none to spare"},
	finish.ByRequest:    {text: "asked for by the job"},
	finish.ByArea: {terms: map[finish.TermKind]string{
		finish.TermFaceBefore: "; before fitting: face {}",
		finish.TermFaceAfter:  "; after sealing: face {}",
		finish.TermDeveloped:  " × {} developed",
		finish.TermEdges:      " + edges {}",
		finish.TermBacks:      " + backs (damp) {}",
		finish.TermTimes:      " × {}",
		finish.TermSurface:    " = {}",
		finish.TermCoverage:   "; ÷ {} ({source})",
		finish.TermLoss:       " ÷ (1 - {} loss)",
	}},
	finish.ByJoints: {terms: map[finish.TermKind]string{
		finish.TermJoint:     " + {name} {}",
		finish.TermGap:       " (gap filled)",
		finish.TermFillet:    " (fillet {})",
		finish.TermGapFillet: " (gap filled and fillet {})",
		finish.TermRepeats:   " + open ends of the pattern, {}",
		finish.TermSection:   " × {}",
		finish.TermDepth:     " × {} deep",
		finish.TermVolume:    " {}",
	}, last: "; a gap is filled no deeper than its width or the thickness beside it, and before a rod half as deep as wide, {rod}"},
	finish.ByWideJoints: {text: "joints wider than {bridge}: {length}"},
	finish.ByBeads: {text: "upright beads of {size}, two edges and at most {spacing} apart, {length} in all ({hold} hold, {source}); " +
		"by custom, about a {cartridge}, two for a full hold, it would be {compared}"},
	finish.ByCustom: {text: "{surface} of backs, about {each} for {per} ({hold} hold, {source}); in the Navy manual's beads, which the job can ask " +
		"for, it would be {compared}"},
	finish.ByMiters:       {text: "{length} of miters, a bead of {size} (judgment); wood glue, and for what is not wood the glue that its maker names"},
	finish.ByCoverings:    {terms: covered, last: "; joined end to end: take existing trim off this, add what goes on past it, and buy by the wall where no joint is wanted"},
	finish.ByWholeLengths: {terms: covered, last: "; each cut whole from one strip: take existing trim off this, and add what goes on past it, such as the rest of a casing"},
	finish.AsSpare:        {text: "not in the total"},
	finish.ByDots:         {text: "{count} of {size} on a grid of at most {spacing} ({hold} hold, {source})"},
	finish.ByBeadsAtCrossings: {text: "beads of {size} across each board at its {count}, {length} in all " +
		"with the supports of the whole wall at most {supports} apart (judgment)"},
	finish.ByDotsAtCrossings: {text: "{count} of {size}, one a crossing with the supports of the whole wall at most {supports} apart (judgment)"},
	finish.ByNailSpacing: {text: "{count} where supports are, these {supports} apart: every {edge spacing} along the upright edges of a piece, " +
		"every {spacing} between ({source}); length: panel {thickness} + wall {wall} + {penetration} into the support = {needed}", terms: sheetNails},
	finish.ByCrossings: {text: "{count}: one where a board crosses a level support, these at most {supports} apart (a how-to article has 16 in at most), " +
		"at 45 degrees through the root of the tongue (a how-to article), and through the face along the edges where a run starts and " +
		"ends; one a crossing: common practice, no source; " +
		"length: (half of {thickness} + {penetration} into the support) × √2, at most {size}", terms: offWords},
	finish.ByFaceCrossings: {text: "{count}: one where a board crosses a level support, these at most {supports} apart (a how-to article has 16 in at most), " +
		"through its face; one a crossing: common practice, no source; length: board {thickness} + {penetration} into the support = {needed}", terms: offWords},
	finish.ByStripLength: {text: "{length} level, at foot and top and between at most {supports} apart " +
		"(a how-to article has 16 in at most; the Navy manual on sheets has 1x3 or 1x4 across the studs) + {sides} along the sides of openings " +
		"(common practice, no source) and, but for boards, under upright edges (the Navy manual)"},
	finish.ByStripCrossings: {text: "one for each {supports} of strip, where it crosses a stud or as far apart on masonry, and one more for each strip " +
		"(common practice, no source); length: strip {thickness} + wall {wall} + {penetration} into what holds it = {needed}"},
	finish.ByBoxDepth: {
		terms: map[finish.TermKind]string{
			finish.TermBox:         ", {name} ({} behind)",
			finish.TermAllowed:     "; behind a face that cannot burn at most {}",
			finish.TermNoneAllowed: "; a face that can burn allows none",
		},
		last: " (NEC 314.20); listed for the box",
	},
	finish.ByDeviceGangs: {text: "6-32 (metric M3.5, from memory), {per gang} a gang, the usual {usual} longer by what the device comes forward; they pass through the extender or " +
		"the spacers into the box; take an old one along for its thread"},
	finish.BySpacers: {
		terms: map[finish.TermKind]string{finish.TermBox: ", {name} ({} behind)", finish.TermPerGang: "; {} a gang, one on each screw"},
		last: ", so thick that the yoke of the device is held rigidly at the face (NEC 406.5, IRC E3902.5) and the ears of a switch are seated " +
			"(NEC 404.10); for the box itself NEC 314.20 decides",
	},
	finish.ByTapeLines: {text: "{length} along beads × {times} + {beside} beside what stays bare × {times} = {length}"},
	finish.ByReach:     {text: "runs {length} × {reach} from the wall"},
	finish.ByEnds: {terms: map[finish.TermKind]string{
		finish.TermEnd:       ", end of {name}: {}",
		finish.TermLeftEnd:   ", left end of {name}: {}",
		finish.TermRightEnd:  ", right end of {name}: {}",
		finish.TermCorner:    ", outside corner of {name}: {}",
		finish.TermAllowance: ", each from one strip with {} for its cuts",
	}, last: "; it covers the cut edges, and the sealant of an end goes along it"},
}

// sourceWords says where figures and times come from.
var sourceWords = map[finish.Source]string{
	finish.Given:         "as given",
	finish.Planning:      "planning figure",
	finish.PlanningLabel: "planning figure, trust the can",
	finish.FromSolids:    "solids by volume over dry film",
	finish.NavyManual:    "a Navy building manual",
	finish.Hardboard612:  "Ontario guidance on hardboard sheets, which are cladding there; trust the maker",
	finish.MakerDecides:  "common practice, no source; trust the maker",
	finish.Custom:        "custom, from memory; trust the tube",
	finish.MakerText:     "a maker's guide and a trade body's",
	finish.HowTo:         "a how-to article",
	finish.TradeLeaflet:  "a leaflet of a lumber trade association",
	finish.TinLabel:      "from memory, the can decides",
	finish.PaintText:     "data of two paints, the can decides",
	finish.TubeText:      "data of such products, the tube decides",
}

// choiceWords says by what packs were chosen.
var choiceWords = map[finish.Choice]string{
	finish.LeastMoney: "; least money of these packs",
	finish.LeastLeft:  "; least left over of these packs, as prices are missing",
	finish.FirstMixes: "; the best of the first mixes of packs that were tried, not proved least",
}

// How says how the quantity of a row was found. A term that is not there is left out.
func How(r finish.Row) string {
	words, source, listed := methodWords[r.How], sourceWords[r.Source], ""
	if asks := len(words.terms) > 0 || r.How != finish.ByPlan && slot.MatchString(words.text); asks && len(r.Terms) == 0 {
		return "" // an old plan without the figures
	}
	metric := r.Unit == finish.UnitMillilitre
	given := map[string][]string{"{units}": {r.Unit.String()}, "{source}": {source}, "{rod}": {beforeRod(metric)},
		"{cartridge}": {either(metric, "300 mL cartridge for 3 m2", "10 fl oz cartridge for 32 ft2")}}
	for _, t := range together(r.Terms) {
		value, word := figure(t.Value), "{"+t.Kind.String()+"}"
		given[word] = append(given[word], cmp.Or(t.Name, value))
		format := words.terms[t.Kind]
		switch t.Kind {
		case finish.TermCovered:
			format = either(t.Name == "", " + {}", format) // as that before
		case finish.TermWaste:
			format = "; + {} of it for waste"
		case finish.TermOnTop:
			format = ", {}"
		case finish.TermAgain:
			format = "; {} of that for what comes off the wall first and goes up again"
		case finish.TermMargin:
			format = "; tight: " + either(t.Value.Value.IsZero(), "none", "{}") + " to spare"
		case finish.TermInAll:
			format = "; in all {} with the rest"
		}
		listed += strings.NewReplacer("{}", value, "{name}", t.Name, "{source}", source).Replace(format)
	}
	fill := func(text string) string {
		return slot.ReplaceAllStringFunc(text, func(word string) string {
			values := given[word]
			if len(values) == 0 {
				return ""
			}
			given[word] = values[1:]
			return values[0]
		})
	}
	says := fill(words.text) + listed + fill(words.last)
	for _, separator := range []string{"; ", ", ", " + "} {
		says = strings.TrimPrefix(says, separator)
	}
	return says + choiceWords[r.Choice]
}

// mostBoxes is the most boxes equally far behind that a row names one by one.
const mostBoxes = 3

// together are the terms of a row, boxes one after the other that lie equally far behind as one.
func together(terms []finish.Term) (all []finish.Term) {
	terms = slices.Clone(terms)
	for len(terms) > 0 {
		n := slices.IndexFunc(terms, func(t finish.Term) bool {
			return t.Kind != finish.TermBox || t.Value.Unit != terms[0].Value.Unit || !t.Value.Value.Decimal.Equal(terms[0].Value.Value.Decimal)
		})
		if n = either(n < 0, len(terms), max(n, 1)); n > mostBoxes {
			terms[n-1].Name = strconv.Itoa(n) + " boxes"
		}
		all, terms = append(all, terms[either(n > mostBoxes, n-1, 0):n]...), terms[n:]
	}
	return all
}

// itemWords has the items whose words are not those of the plan's JSON.
var itemWords = map[finish.Item]string{
	finish.ItemBackingRod:   "backing rod, a little thicker than its gap",
	finish.ItemStripNails:   "nails or screws for the strips",
	finish.ItemStripAnchors: "masonry screws for the strips",
}

// nailWords has the words of the kinds of nails; the gauges are from memory.
var nailWords = map[finish.NailKind]string{finish.Brads: "brads, 18 gauge,", finish.FinishNails: "finish nails, 15 or 16 gauge,",
	finish.PanelScrews: "screws as the maker asks,"}

// toolWords has the words of what to have at hand.
var toolWords = map[finish.Tool]string{
	finish.ToolTester:     "a voltage tester",
	finish.ToolCapsCovers: "wire connectors and blank covers",
	finish.ToolStudFinder: "a stud finder",
	finish.ToolLevel:      "a long level, a story pole",
	finish.ToolSpacers:    "spacers for the gaps",
	finish.ToolBlade:      "a fine saw blade",
	finish.ToolBit:        "a jigsaw, its fine blades and bit",
	finish.ToolNailer:     "a nailer, or hammer and nail set",
	finish.ToolDriver:     "a drill driver with bits",
	finish.ToolGun:        "a cartridge gun",
	finish.ToolLargeGun:   "a large gun for the large cartridges",
	finish.ToolRoller:     "a small roller, tray and brush",
	finish.ToolFiller:     "filler",
	finish.ToolPaper:      "fine paper",
	finish.ToolEyesEars:   "glasses, ear muffs, gloves",
	finish.ToolRespirator: "a fitted respirator, for vapors too where there are solvents",
}

// besides says what stands beside the rows of a list: a spare as a choice, and what to have at hand.
func besides(p plan.Plan) (says []string) {
	if s := p.Spare; s != nil {
		says = append(says, "A spare "+cmp.Or(s.Name, Item(*s))+either(s.Cost.Known(), " for "+cents(s.Cost, "")+" more", "")+" is not "+either(priced(p), "in the total.", "on the list."))
	}
	if p.Up() {
		says = append(says, capital(panelWord(p))+"s are up already: what is left over from their list comes off this one.")
	}
	var tools []string
	for _, tool := range p.AtHand {
		tools = append(tools, toolWords[tool])
	}
	if len(tools) > 0 {
		says = append(says, "Have at hand: "+strings.Join(tools, "; ")+".")
	}
	return says
}

// Item names what a row of a list is for, with its sizes.
func Item(r finish.Row) string {
	size := sizes(r.Size)
	if r.Name != "" {
		return r.Name + either(size == "", "", ", "+size)
	}
	name := strings.TrimSpace(cmp.Or(nailWords[r.Nail], itemWords[r.Item], r.Item.String()) + " " + size)
	return name + either(r.Gangs > 0, ", "+strconv.Itoa(r.Gangs)+" gang", "") + either(r.How == finish.WithRowAbove, ", the rest", "")
}

// Quantity writes what a row of a list needs.
func Quantity(r finish.Row) string { return figure(finish.Figure{Value: r.Quantity, Unit: r.Unit}) }

// sizes writes lengths with their unit once.
func sizes(lengths []finish.Figure) (says string) {
	for _, l := range lengths {
		says = strings.TrimPrefix(strings.TrimSuffix(says, " "+l.Unit.String())+" x "+figure(l), " x ")
	}
	return says
}

// figure writes a number with its unit, inches as a fraction.
func figure(f finish.Figure) string {
	if f.Unit == finish.UnitInch {
		if l, err := fraction.Parse(f.Value.String(), fraction.Inch); err == nil {
			return l.String() + " in"
		}
	}
	return f.String()
}

// cents writes an amount with two places, or the other text where it is not known.
func cents(a money.Amount, unknown string) string {
	d, known := a.Decimal()
	if !known {
		return unknown
	}
	return d.StringFixed(2)
}
