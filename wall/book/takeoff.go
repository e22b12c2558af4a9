package book

import (
	"strconv"
	"strings"

	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/wall/plan"
)

// method is how a quantity was found: its first and last words and, between them, those of its
// terms in their order. {} stands for the value of a term, {name} for its name, {source} for the
// source of the row and {units} for what the row counts.
type method struct {
	first string
	terms map[finish.TermKind]string
	last  string
}

// methodWords has the words of each method.
var methodWords = map[finish.How]method{
	finish.WithRowAbove: {first: "with the row above"},
	finish.ByPlan:       {first: "counted from the {units} to saw, none to spare"},
	finish.ByRequest:    {first: "asked for by the job"},
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
		finish.TermRepeats:   " + open grooves of {}",
		finish.TermSection:   " × {}",
		finish.TermDepth:     " × {} deep",
		finish.TermVolume:    " {}",
	}},
	finish.ByWideJoints: {terms: map[finish.TermKind]string{
		finish.TermBridge: "joints wider than {}",
		finish.TermLength: ": {}",
	}},
	finish.ByBeads: {terms: map[finish.TermKind]string{
		finish.TermSize:    "upright beads of {}",
		finish.TermSpacing: ", two edges and at most {} apart",
		finish.TermLength:  ", {} in all",
		finish.TermHold:    " ({name} hold, {source})",
	}},
	finish.ByDots: {terms: map[finish.TermKind]string{
		finish.TermCount:   "{}",
		finish.TermSize:    " of {}",
		finish.TermSpacing: " on a grid of at most {}",
		finish.TermHold:    " ({name} hold, {source})",
	}},
	finish.ByBeadsAtCrossings: {terms: map[finish.TermKind]string{
		finish.TermSize:     "beads of {} across each board",
		finish.TermCount:    " at its {}",
		finish.TermLength:   ", {} in all",
		finish.TermSupports: " with supports at most {} apart (judgment)",
	}},
	finish.ByDotsAtCrossings: {terms: map[finish.TermKind]string{
		finish.TermCount:    "{}",
		finish.TermSize:     " of {}, one a crossing",
		finish.TermSupports: " with supports at most {} apart (judgment)",
	}},
	finish.ByNailSpacing: {terms: map[finish.TermKind]string{
		finish.TermCount:       "{}",
		finish.TermEdgeSpacing: ": every {} along edges",
		finish.TermSpacing:     ", every {} on studs",
		finish.TermSupports:    " {} apart ({source})",
		finish.TermThickness:   "; length: panel {}",
		finish.TermWall:        " + wall {}",
		finish.TermPenetration: " + {} into the stud",
		finish.TermNeeded:      " = {}",
	}},
	finish.ByCrossings: {terms: map[finish.TermKind]string{
		finish.TermCount: "{}: one where a board crosses a level support",
		finish.TermSupports: ", these at most {} apart (a how-to article), at 45 degrees through the root of the tongue (a how-to article); " +
			"one a crossing: common practice, no source",
		finish.TermThickness:   "; length: (half of {}",
		finish.TermPenetration: " + {} into the support) × √2",
		finish.TermSize:        ", at most {}",
	}},
	finish.ByStripLength: {terms: map[finish.TermKind]string{
		finish.TermLength:   "{} level, at the foot and the top of the boards",
		finish.TermSupports: " and between at most {} apart (a how-to article; the Navy manual on sheets has 1x3 or 1x4 across the studs)",
		finish.TermSides:    " + {} along the sides of openings (common practice, no source)",
	}},
	finish.ByStripCrossings: {terms: map[finish.TermKind]string{
		finish.TermSupports:    "one for each {} of strip, where it crosses a stud, and one more for each strip (common practice, no source)",
		finish.TermThickness:   "; length: strip {}",
		finish.TermWall:        " + wall {}",
		finish.TermPenetration: " + {} into the stud",
		finish.TermNeeded:      " = {}",
	}},
	finish.ByBoxDepth: {
		terms: map[finish.TermKind]string{
			finish.TermBox:         ", {name} ({} behind)",
			finish.TermAllowed:     "; a face that cannot burn allows {}",
			finish.TermNoneAllowed: "; a face that can burn allows none",
		},
		last: " (NEC 314.20); listed for the box",
	},
	finish.ByExtendedGangs: {
		terms: map[finish.TermKind]string{
			finish.TermPerGang: "{} a gang",
			finish.TermUsual:   ", the usual {} longer by what the face comes forward",
		},
		last: "; they pass through the extender into the box; take an old one along for its thread",
	},
	finish.BySetBackGangs: {
		terms: map[finish.TermKind]string{
			finish.TermPerGang: "{} a gang",
			finish.TermUsual:   ", the usual {} longer by what the face comes forward",
		},
		last: "; the device stays back; where a spacer brings it out, the usual ones do",
	},
	finish.ByTapeLines: {terms: map[finish.TermKind]string{
		finish.TermLength: "{} sealed",
		finish.TermBeside: " + {} beside what stays bare",
		finish.TermTimes:  " × {}",
	}},
	finish.ByReach: {terms: map[finish.TermKind]string{
		finish.TermLength: "runs {}",
		finish.TermReach:  " × {} from the wall",
	}},
	finish.ByEnds: {terms: map[finish.TermKind]string{
		finish.TermEnd:       ", end of {name} {}",
		finish.TermCorner:    ", outside corner of {name} {}",
		finish.TermAllowance: ", each from one strip with {} for its cuts",
	}},
}

// sourceWords says where figures and times come from.
var sourceWords = map[finish.Source]string{
	finish.Given:         "as given",
	finish.Planning:      "planning figure",
	finish.PlanningLabel: "planning figure, trust the can",
	finish.FromSolids:    "solids by volume over dry film",
	finish.NavyManual:    "a Navy building manual",
	finish.OntarioCode:   "spacing of the Ontario code for fiberboard sheets",
	finish.Specification: "a sample specification and a how-to article",
	finish.HowTo:         "a how-to article",
	finish.TradeLeaflet:  "a leaflet of a lumber trade association",
	finish.TinLabel:      "from memory, the can decides",
	finish.TubeLabel:     "from memory, the tube decides",
}

// choiceWords says by what packs were chosen.
var choiceWords = map[finish.Choice]string{
	finish.LeastMoney:  "; least money of these packs",
	finish.FewestPacks: "; fewest packs, as not all have a price",
	finish.FirstMixes:  "; the best of the first mixes of packs that were tried, not proved least",
}

// How says how the quantity of a row was found.
func How(r finish.Row) string {
	words := methodWords[r.How]
	says := strings.ReplaceAll(words.first, "{units}", r.Unit.String())
	for _, term := range r.Terms {
		format := words.terms[term.Kind]
		if term.Kind == finish.TermWaste {
			format = "; + {} waste"
		}
		says += strings.NewReplacer("{}", figure(term.Value), "{name}", term.Name, "{source}", sourceWords[r.Source]).Replace(format)
	}
	says += words.last
	for _, separator := range []string{"; ", ", ", " + "} {
		says = strings.TrimPrefix(says, separator)
	}
	return says + choiceWords[r.Choice]
}

// itemWords has the items whose words are not those of the plan's JSON.
var itemWords = map[finish.Item]string{
	finish.ItemBackingRod: "backing rod, a little thicker than its gap",
	finish.ItemStripNails: "nails or screws for the strips",
}

// Item names what a row of a list is for, with its sizes.
func Item(r finish.Row) string {
	name, special := itemWords[r.Item]
	if !special {
		name = r.Item.String()
	}
	size := sizes(r.Size)
	switch {
	case r.Name != "" && size != "":
		return r.Name + ", " + size
	case r.Name != "":
		return r.Name
	}
	name = strings.TrimSpace(name + " " + size)
	if r.Gangs > 0 {
		name += ", " + strconv.Itoa(r.Gangs) + " gang"
	}
	return name
}

// Quantity writes what a row of a list needs.
func Quantity(r finish.Row) string { return figure(finish.Figure{Value: r.Quantity, Unit: r.Unit}) }

// sizes writes lengths with their unit once.
func sizes(lengths []finish.Figure) string {
	var sides []string
	for i, l := range lengths {
		side := figure(l)
		if i < len(lengths)-1 {
			side = strings.TrimSuffix(side, " "+l.Unit.String())
		}
		sides = append(sides, side)
	}
	return strings.Join(sides, " x ")
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

// onHand reports whether a row of the list is stock with a count and no price, which is there
// already.
func onHand(p plan.Plan, r finish.Row) bool {
	for _, s := range p.Stock {
		if r.Item == finish.ItemSheet && !r.Price.Known() && s.Name == r.Name && s.Count != nil {
			return true
		}
	}
	return false
}
