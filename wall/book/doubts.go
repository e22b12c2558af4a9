package book

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

// doubtWords has the sentence for each kind of warning. The facts stand in braces, counted from 0:
// {name0} and {quoted0} of the names, {length0}, {about0}, {spare0} and {overlap0} of the lengths, {count0}
// of the counts, with a noun that follows it: {count0 sheet} is 1 sheet or 2 sheets. {across0} is a
// place on a piece. {way0} is the
// sentence for a way out of a weak spot.
var doubtWords = map[warning.Kind]string{
	wall.StationsApart: "{length0} from the one before (more than {length1}): tape one between",
	wall.TopJump:       "the top changes by {length0} since the station before, without a step: tape both again, or give a step as two stations at one place",
	wall.BottomJump:    "the bottom changes by {length0} since the station before, without a step: tape both again, or give a step as two stations at one place",
	wall.TopOff:        "the top lies {length0} off the line of the heights beside it: tape it again",
	wall.BottomOff:     "the bottom lies {length0} off the line of the heights beside it: tape it again",
	wall.CornerHeights: "it differs by {length0} (more than {length1}) from the height of {name0} at the same inside corner: tape both again",
	wall.WallsTooShort: "{name0}, {length0}, is longer than all other walls together, {length1}: the room cannot close; tape the widths again",
	wall.WallsApart:    "with square corners the walls miss each other by {length0} along {name0} and {length1} across it: tape the widths again, and look whether a wall or a corner is missing",
	wall.TurnsOff:      "with square corners the walls do not come back to where they begin: inside corners, less the outside ones, are {count0} and not 4; look whether a wall or a corner is missing",
	wall.RunBare:       "openings and gaps leave nothing to panel here: the run stays bare, and its neighbors are planned without it",
	wall.OutOfPlumb:    "the end leans by {length0} (more than {length1}): check it with a level",
	wall.BoxesDiffer:   "box {quoted0} is {length0} x {length1} but {quoted1} is {length2} x {length3}: boxes of one kind that differ by more than {length4}; tape both again",
	wall.StripLeft:     "only {length0} of panelling is left between the left end and {quoted0} (less than {length1}): tape it again, or cover the place with trim",
	wall.StripRight:    "only {length0} of panelling is left between the right end and {quoted0} (less than {length1}): tape it again, or cover the place with trim",
	wall.StripAbove:    "only {length0} of panelling is left above {quoted0} (less than {length1}): tape it again, or cover the place with trim",
	wall.StripBelow:    "only {length0} of panelling is left below {quoted0} (less than {length1}): tape it again, or cover the place with trim",
	wall.StripBetween:  "only {length0} of panelling is left between {quoted1} and {quoted0} (less than {length1}): tape it again, or cover the place with trim",

	plan.TapeOfOther:     "its marks are in another unit than the job, in which no figure is easy to find on it: give units to go with it",
	plan.TooGreat:        "{length0}, which is more than {length1} and hardly sold: look whether it is in the unit of the job",
	plan.StockSwapped:    "{length0} wide and only {length1} long: the grooves run along the length; are the two swapped?",
	plan.StockOfSeveral:  "boards of {length1} are ripped from stock {length0} wide, two or more side by side: is it a sheet, or is boards not meant?",
	plan.NoPrice:         "no price, where others to be bought have one: the plan takes it for free and uses it first",
	plan.PointsApart:     "the distances do not meet in one point: the one from base {count0} is off by {length0}; tape them again",
	plan.ArchUneven:      "the arch springs {length0} higher on one side than on the other; the higher counts for both: tape them again",
	plan.OpeningsOverlap: "overlaps the {name1} {quoted0}; both are cut out as one",
	plan.LonelyAtRight:   "the next run, {quoted0}, does not begin at this corner; right only if the wall beside it stays bare",
	plan.LonelyAtLeft:    "the run before, {quoted0}, does not end at this corner; right only if the wall beside it stays bare",

	plan.BurnsAtCooking: "panels that burn from {length0} to {length1} of {name0}, at a cooking appliance: look up in its manual how far off what burns has to " +
		"stay, overhead, behind and at the sides; leave the place free for a part that does not burn (an opening of kind other), or note as manual " +
		"what the manual asks there",
	plan.TrimNarrow:    "{quoted0} covers {length0}, but the gap takes {length1} of it: it should reach {length2} beyond the gap; take a wider one or a smaller gap",
	plan.BoxSticksOut:  "the box {quoted0} sticks out of the wall of {name1}; look at its place and size and at the heights beside it",
	plan.PlateOut:      "the cover plate of {quoted0} has no room on the panels: it meets their edge, a trim or the panels round a corner: move the box, or take a smaller plate",
	plan.PlatesMeet:    "the cover plates of {quoted0} and {quoted1} overlap: take one over both, or smaller ones",
	plan.CoverTooSmall: "the cover plate of {quoted0}, {length0} x {length1} for {count0 gang}, {overlap2} at the sides and {overlap3} above and below its cutout; {length4} at least is wanted: take a larger plate or a smaller box gap",
	plan.NarrowPanel:   "panel {count0} is only {length0} wide: cover it with trim, or choose another layout",
	plan.SeamAtBox:     "the seam at {length0} of {name0} goes through the box {quoted1}, or nearer to it than wanted: see that its plate covers the joint",
	plan.LapLost:       "the seam at {length0} of {name0} has no lap, as an edge there is sawn or only one of both panels turned: back it, or glue it and see that it stays closed",
	plan.ComesOff: "the panel of {name0} that is up at the corner with {name1} comes off first and may not come off whole, as adhesive and nails hold it: take it off " +
		"before anything is bought or cut, and where it breaks plan again without it",
	plan.RulesBroken: "{count0 rule} had to be broken: a seam is nearer to a box than wanted, a panel narrower, or the only exposed end of a run is cut",
	plan.LittleSpare: "its sheet has {spare0} to spare at its {name1} edge, less than the scribe of {length1}, should its space on the wall come out " +
		"wider than it was taped: tape it again before you buy",
	plan.WeakSpot: "{name1} {wide0} at {across1}, {about2} up: {way2}",

	finish.ThicknessUnknown:  "it is not given, so that nails, extenders, edges and filled gaps are those of a skin: give it before you buy",
	finish.WideGap:           "{name0}, {name1}: the gap of {length0} is wider than the {length1} that a bead should close: lay a backing rod, scribe the piece closer or cover the joint with a strip",
	finish.PanelNailShort:    "no nail on the list is {length0} long, which panel, wall and {length1} in the stud need",
	finish.StripNailShort:    "no nail on the list is {length0} long, which strip, wall and {length1} in the stud need",
	finish.BoardNailShort:    "no nail on the list is as long as board and {length0} in the support need at 45 degrees",
	finish.NailNearCables:    "a nail of {length0} goes {length1} into the stud, where cables may lie from {length2} on: take a shorter one, and find cables and pipes first",
	finish.StripsNotTakenOff: "the strips bring each face {length0} forward, and the runs are planned as they are given: tape them on the strips, or take {length0} off a run at each inside corner and add it at each outside corner",
	finish.NothingHolds:      "masonry takes no nails, and there is neither adhesive nor a strip: give one of them",
	finish.SeamTight:         "{length0}, but fiberboard moves: for sheets so wide its trade body allows up to {length1}, 1/400 of the width, rounded down",
	finish.BoxTooDeep:        "front {length0} behind the face, farther than any extender on the list reaches: have an electrician bring it forward",
	finish.ScrewShort:        "no screw on the list is {length0} long",
	finish.TrimJoint:         "{name1} of {name0}: its trim is longer than a strip and gets a joint",
}

var fact = regexp.MustCompile(`\{([a-z]+)(\d)(?: (\w+))?\}`)

// Doubt says what a warning says to a person with that tape, without its place.
func Doubt(tape fraction.Tape, w warning.Warning) string {
	return written(tape, true, func(t *text) { t.WriteString(t.doubt(w)) })
}

// Warning says what a warning of a plan says, and where by the names of the run and the opening.
func Warning(p plan.Plan, w warning.Warning) string {
	return written(p.TapeMeasure(), true, func(t *text) { t.WriteString(t.warning(p, w)) })
}

// doubt says what a warning says. A kind that has no words is written as it is, and a fact that is
// not there as nothing.
func (t *text) doubt(w warning.Warning) string { return t.doubtAt(w, fromLeft) }

// doubtAt says it with places on a piece measured from that edge.
func (t *text) doubtAt(w warning.Warning, from side) string {
	return t.fill(cmp.Or(doubtWords[w.Kind], string(w.Kind)), w, from)
}

// fill puts the facts of a warning into words.
func (t *text) fill(words string, w warning.Warning, from side) string {
	return fact.ReplaceAllStringFunc(words, func(match string) string {
		parts := fact.FindStringSubmatch(match)
		i, _ := strconv.Atoi(parts[2])
		switch kind := parts[1]; {
		case kind == "name" && i < len(w.Names):
			return w.Names[i]
		case kind == "quoted" && i < len(w.Names):
			return `"` + w.Names[i] + `"`
		case kind == "way" && i < len(w.Names):
			var way cutout.WayOut
			if way.UnmarshalText([]byte(w.Names[i])) != nil {
				return w.Names[i]
			}
			return wayOutWords[way]
		case kind == "length" && i < len(w.Lengths):
			return t.tape.Format(w.Lengths[i])
		case kind == "spare" && i < len(w.Lengths):
			return either(w.Lengths[i].IsZero(), "nothing", "only "+t.tape.Format(w.Lengths[i]))
		case kind == "about" && i < len(w.Lengths):
			return t.about(w.Lengths[i])
		case kind == "across" && i < len(w.Lengths):
			return t.across(w.Lengths[i], from)
		case kind == "wide" && i < len(w.Lengths):
			return t.wide(w.Lengths[i])
		case kind == "overlap" && i < len(w.Lengths):
			return t.overlap(w.Lengths[i])
		case kind == "count" && i < len(w.Counts) && parts[3] != "":
			return count(w.Counts[i], parts[3])
		case kind == "count" && i < len(w.Counts):
			return strconv.Itoa(w.Counts[i])
		}
		return ""
	})
}

// overlap says by how much a plate overlaps one side of a cutout, or what it leaves bare.
func (t *text) overlap(by fraction.Length) string {
	return either(by.Sign() < 0, "leaves "+t.tape.Format(by.Abs())+" bare", "overlaps by "+t.tape.Format(by))
}

// place returns where a warning belongs: a piece by its label, else a path as the job file writes
// it.
func place(w warning.Warning) string {
	if (w.Kind == plan.WeakSpot || w.Kind == plan.LittleSpare) && len(w.Names) > 0 {
		return "piece " + w.Names[0]
	}
	if w.Kind == finish.BoxTooDeep || w.Kind == finish.ScrewShort {
		return list(w.Names...)
	}
	path, _ := w.Path.MarshalText() // never fails
	return string(path)
}

// warned returns the place of a warning in a job file with what it says.
func (t *text) warned(w warning.Warning) string {
	return placed(place(w), t.doubt(w))
}

// placed puts a place, if there is one, before what a warning says.
func placed(place, says string) string { return strings.TrimPrefix(place+": "+says, ": ") }

// warning returns the place of a warning, by names where it has any, with what it says.
func (t *text) warning(p plan.Plan, w warning.Warning) string {
	return placed(cmp.Or(placeName(p, w), place(w)), joined(p, t.doubtAt(w, measuredOn(p, w))))
}

// measuredOn is the edge that the place of a warning on a piece is measured from.
func measuredOn(p plan.Plan, w warning.Warning) side {
	for _, piece := range p.Pieces {
		if w.Kind == plan.WeakSpot && len(w.Names) > 0 && piece.Label == w.Names[0] {
			return measuredSide(p, piece)
		}
	}
	return fromLeft
}

// doubt is a warning with what it says.
type doubt struct {
	warning.Warning
	Says string
}

// doubts are those of a plan: weak spots one after the other of one piece and one kind, with one way out, are one, and so are
// boxes of which the same is said.
func (t *text) doubts(p plan.Plan) (all []doubt) {
	for i, w := range p.Warnings {
		from := either(t.shop, fromLeft, measuredOn(p, w)) // as on its leaf
		if before := p.Warnings[max(i-1, 0)]; i > 0 && w.Kind == plan.WeakSpot && before.Kind == w.Kind && slices.Equal(before.Names, w.Names) {
			last := &all[len(all)-1]
			last.Says = strings.TrimSuffix(last.Says, joined(p, ": "+t.fill("{way2}", w, from))) + "; " + joined(p, t.doubtAt(w, from))
			continue
		}
		says := joined(p, t.doubtAt(w, from))
		if n := slices.IndexFunc(all, func(d doubt) bool { return d.Kind == w.Kind && d.Says == says }); n >= 0 && (w.Kind == finish.BoxTooDeep || w.Kind == finish.ScrewShort) {
			all[n].Names = slices.Concat(all[n].Names, w.Names)
			continue
		}
		all = append(all, doubt{w, says})
	}
	return all
}

// placeName says where a warning belongs in the words of the trade: by the names of the run and the
// opening, a stock by its own.
func placeName(p plan.Plan, w warning.Warning) string {
	path := place(w)
	if found := inRun.FindStringSubmatch(path); found != nil {
		i, _ := strconv.Atoi(found[1])
		n, _ := strconv.Atoi(found[3])
		switch {
		case i >= len(p.Runs):
			return ""
		case found[2] == "heights":
			return fmt.Sprintf("height %d of %s", n+1, p.Runs[i].Name)
		case found[2] == "openings" && n < len(p.Runs[i].Openings):
			return p.Runs[i].Openings[n].Name + ", " + p.Runs[i].Name
		case found[4] != "":
			return found[4] + " end of " + p.Runs[i].Name
		}
		return p.Runs[i].Name
	}
	if found := inStock.FindStringSubmatch(path); found != nil {
		if i, _ := strconv.Atoi(found[1]); i < len(p.Stock) {
			return p.Stock[i].Name
		}
	}
	parts := strings.FieldsFunc(path, func(r rune) bool { return r == '.' || r == '[' })
	for n := len(parts); n > 0; n-- {
		if words := placeWords[strings.Join(parts[:n], ".")]; words != "" {
			return strings.ReplaceAll(words, "{panel}", panelWord(p))
		}
	}
	return either(strings.HasPrefix(path, "piece") || len(w.Path) == 0, path, "")
}

// placeWords has the words for fields of a job that doubts belong to, by their names.
var placeWords = map[string]string{
	"gaps.seam":         "gap at the seams",
	"saw.kerf":          "blade",
	"profile.thickness": "thickness of the {panel}s",
	"finish.nails":      "nails",
	"finish.furring":    "strips behind the {panel}s",
	"finish.adhesive":   "adhesive",
	"trim":              "trim",
	"cooking":           "cooking appliance",
	"runs":              "walls",
}

// inRun is a path in a run of a job, perhaps at one of its heights, openings or ends; inStock one in a
// kind of stock.
var (
	inRun   = regexp.MustCompile(`^runs\[(\d+)\](?:\.(heights|openings)\[(\d+)\]|\.(left|right)\b)?`)
	inStock = regexp.MustCompile(`^stock\[(\d+)\]`)
)
