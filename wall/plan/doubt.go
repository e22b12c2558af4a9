package plan

import (
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/finish"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/fraction/warning"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// What a job or a plan is doubted for, besides what [wall.Room.Survey] doubts.
const (
	NoPrice      warning.Kind = "no price"       // of a kind of stock
	ArchUneven   warning.Kind = "arch uneven"    // Lengths: its springings' difference
	BoxSticksOut warning.Kind = "box sticks out" // Names: box, run
	// Width and length of stock to buy look swapped. Lengths: its width, its length.
	StockSwapped warning.Kind = "stock swapped"
	TooGreat     warning.Kind = "too great for it"     // a blade or a thickness; Lengths: it, the greatest not doubted
	TapeOfOther  warning.Kind = "tape of another unit" // its marks are no whole parts of the job's
	// Boards, each a repeat of its own, of stock in which two or more lie side by side. Lengths: its
	// width, that of a board.
	StockOfSeveral warning.Kind = "stock of several boards"
	// Panels that burn stand at a cooking appliance whose manual is not noted. Names: run; Lengths:
	// from, to.
	BurnsAtCooking warning.Kind = "burns at cooking"
	// Names: the trim; Lengths: what it covers, the gap, how far it should reach beyond that.
	TrimNarrow warning.Kind = "trim narrow"

	// Names: the next run, which does not begin at that corner.
	LonelyAtRight warning.Kind = "corner of a right end"
	// Names: the run before, which does not end at that corner.
	LonelyAtLeft warning.Kind = "corner of a left end"
	// Names: the other opening, the word of its kind.
	OpeningsOverlap warning.Kind = "openings overlap"
	// Lengths: by how much a taped distance is off; Counts: the number of its base, from 1.
	PointsApart warning.Kind = "distances do not meet"

	// Names: box; Lengths: the plate's width and height, its overlap at the sides, above and below,
	// the least that is wanted; Counts: gangs.
	CoverTooSmall warning.Kind = "cover too small"
	// A plate that comes past the wall's outline, under a trim of it or into the panels round an inside corner. Names: box.
	PlateOut   warning.Kind = "plate out"
	PlatesMeet warning.Kind = "plates meet" // Names: box, the other

	NarrowPanel warning.Kind = "narrow panel" // Lengths: its width; Counts: its number
	SeamAtBox   warning.Kind = "seam at box"  // Names: run, box; Lengths: at
	LapLost     warning.Kind = "lap lost"     // at a seam; Names: run; Lengths: at
	ComesOff    warning.Kind = "comes off"    // a panel that is up, before one is fitted behind it; Names: its run, the other
	RulesBroken warning.Kind = "rules broken" // Counts: hard rules

	// A closing piece that can hardly be sawn wider than the survey has it. Names: its label, its closing edge;
	// Lengths: by how much it can, the scribe that was asked for.
	LittleSpare warning.Kind = "little spare"

	// Names: the piece's label, kind, way out; Lengths: width, then the place on the piece, across
	// and up.
	WeakSpot warning.Kind = "weak spot"
)

// Doubts returns everything in a job that is sound and yet looks like a mistake, the doubts of
// [wall.Room.Survey] among it. It fails for a job that is not valid.
func (j Job) Doubts() (doubts []warning.Warning, err error) {
	defer fraction.Catch(&err)
	if err := j.Validate(); err != nil {
		return nil, err
	}
	return j.doubts(), nil
}

// doubts returns the doubts of a valid job.
func (j *Job) doubts() []warning.Warning {
	all := slices.Concat(j.doubtSizes(), j.doubtStock(), j.doubtTaped(), j.doubtCorners(), j.doubtCooking(), j.doubtTrim(), fraction.Must(j.Survey()))
	for r := range j.Runs {
		all = append(all, j.doubtOpenings(r)...)
	}
	return all
}

// The widest blade and the thickest panel that are not questioned, as wider and thicker ones are hardly sold: 1/4 in and
// 2 in. Common practice, no source.
var widestBlade, thickest = fraction.Of(1, 4), fraction.Inches(2)

// doubtSizes questions sizes that may be of another unit than that of the job, as a blade of 3 mm given in inches, and marks
// in millimeters (5/127 in) beside a unit of inches or the other way round.
func (j *Job) doubtSizes() (doubts []warning.Warning) {
	if (j.Mark.Den()%127 == 0) == (j.Units == fraction.Inch) {
		doubts = append(doubts, warning.Warning{Path: fault.Of("Tape"), Kind: TapeOfOther})
	}
	for _, s := range []struct {
		path       fault.Path
		size, most fraction.Length
	}{{fault.Of("Profile", "Thickness"), j.Profile.Thickness, thickest}, {fault.Of("Saw", "Kerf"), j.Saw.Kerf, widestBlade}} {
		if s.most.Less(s.size) {
			doubts = append(doubts, warning.Warning{Path: s.path, Kind: TooGreat, Lengths: []fraction.Length{s.size, s.most}})
		}
	}
	return doubts
}

// doubtStock questions the stock to be bought that has no price where other such stock has one, or
// that is wider than long, as an offcut may be; and stock of which several boards are ripped.
func (j *Job) doubtStock() (doubts []warning.Warning) {
	priced := slices.ContainsFunc(j.Stock, func(s nest.Stock) bool { return s.Price.Known() })
	pitch := j.Profile.Pitch()
	for i, s := range j.Stock {
		doubt := func(kind warning.Kind, path fault.Path, lengths ...fraction.Length) {
			doubts = append(doubts, warning.Warning{Path: path, Kind: kind, Lengths: lengths})
		}
		if priced && s.Count == nil && !s.Price.Known() {
			doubt(NoPrice, fault.Of("Stock", i))
		}
		if s.Count == nil && s.Length.Less(s.Width) {
			doubt(StockSwapped, fault.Of("Stock", i, "Width"), s.Width, s.Length)
		}
		if j.Profile.Boards && pitch.Mul(2).Compare(s.Width) <= 0 {
			doubt(StockOfSeveral, fault.Of("Stock", i, "Width"), s.Width, pitch)
		}
	}
	return doubts
}

// closesWithin is how far three or more taped distances may fail to meet in one point, and how far
// the two springings of an arch may differ, before they are doubted.
func closesWithin() fraction.Length { return fraction.Of(1, 8) }

// doubtTaped questions the places whose distances do not meet and the arches that stand aslant.
func (j *Job) doubtTaped() (doubts []warning.Warning) {
	places := fraction.Must(j.places())
	for i, t := range j.Taped {
		if base, off := places.all[i].Worst(); len(t.From) > 2 && closesWithin().Less(off) {
			doubts = append(doubts, warning.Warning{Path: append(t.Path(), fault.Step{Name: "Distances"}), Kind: PointsApart,
				Lengths: []fraction.Length{off}, Counts: []int{base + 1}})
		}
	}
	for r, run := range j.Runs {
		for i, o := range run.Openings {
			taped := places.corners[spot{r, i}]
			if o.Arch == nil || len(taped) == 0 {
				continue
			}
			head := wall.Head(taped)
			if off := taped[head].Y.Sub(taped[(head+1)%len(taped)].Y).Abs(); closesWithin().Less(off) {
				doubts = append(doubts, warning.Warning{Path: fault.Of("Runs", r, "Openings", i, "Rise"), Kind: ArchUneven, Lengths: []fraction.Length{off}})
			}
		}
	}
	return doubts
}

// doubtCorners questions the corners that only one of two neighbours names. They may be right,
// since the wall beside them may stay bare.
func (j *Job) doubtCorners() (doubts []warning.Warning) {
	for r := range len(j.Runs) - 1 {
		before, after := &j.Runs[r], &j.Runs[r+1]
		switch right, left := before.Right.Kind.IsCorner(), after.Left.Kind.IsCorner(); {
		case right && !left:
			doubts = append(doubts, warning.Warning{Path: fault.Of("Runs", r, "Right", "Kind"), Kind: LonelyAtRight, Names: []string{after.Name}})
		case left && !right:
			doubts = append(doubts, warning.Warning{Path: fault.Of("Runs", r+1, "Left", "Kind"), Kind: LonelyAtLeft, Names: []string{before.Name}})
		}
	}
	return doubts
}

// doubtCooking questions panels that burn beside or behind a cooking appliance, where no opening
// leaves the place to a part that does not burn and no manual is noted.
func (j *Job) doubtCooking() (doubts []warning.Warning) {
	for i, c := range j.Cooking {
		if j.Finish.House.Material == finish.Noncombustible || c.Manual != "" {
			continue
		}
		if len(j.open(c.Run, c.From, c.To)) > 0 {
			doubts = append(doubts, warning.Warning{Path: fault.Of("Cooking", i), Kind: BurnsAtCooking, Names: []string{j.Runs[c.Run].Name}, Lengths: []fraction.Length{c.From, c.To}})
		}
	}
	return doubts
}

// doubtOpenings questions openings that overlap, boxes that reach past the top or the bottom of
// their wall, and boxes whose cutouts their cover plates do not hide by enough on every side. A
// window may stick out of its wall, but a box is fixed in the wall that is to be panelled.
func (j *Job) doubtOpenings(r int) (doubts []warning.Warning) {
	run := &j.Runs[r]
	shape, err := cutout.NewShape(wallOutline(run))
	fraction.Must(shape, fault.Under(err, "Runs", r, "Heights"))
	for i := range run.Openings {
		o := &run.Openings[i]
		doubt := func(w warning.Warning) {
			w.Path = fault.Of("Runs", r, "Openings", i)
			doubts = append(doubts, w)
		}
		for k := range run.Openings[:i] {
			if other := &run.Openings[k]; overlap(o, other) {
				doubt(warning.Warning{Kind: OpeningsOverlap, Names: []string{other.Name, other.Kind.String()}})
			}
		}
		if o.Kind != wall.Box {
			continue
		}
		at := j.plateOf(o)
		if !holds(shape, o.Outline) {
			doubt(warning.Warning{Kind: BoxSticksOut, Names: []string{o.Name, run.Name}})
		} else if lo, hi := j.plateRoom(r, at); !holds(shape, cutout.Rectangle(lo.X, lo.Y, hi.X.Sub(lo.X), hi.Y.Sub(lo.Y))) {
			doubt(warning.Warning{Kind: PlateOut, Names: []string{o.Name}})
		}
		gangs := o.DeviceGangs(j.Units)
		plate := j.plate(gangs)
		lo, hi := o.Bounds()
		least := j.Priorities.LeastCover
		side, above, err := plate.Overlap(hi.X.Sub(lo.X), hi.Y.Sub(lo.Y), j.Gaps.Box)
		fraction.Must(side, err)
		if side.Less(least) || above.Less(least) {
			doubt(warning.Warning{Kind: CoverTooSmall, Names: []string{o.Name},
				Lengths: []fraction.Length{plate.Width, plate.Height, side, above, least}, Counts: []int{gangs}})
		}
		for k := range run.Openings[:i] {
			if other := &run.Openings[k]; other.Kind == wall.Box && cutout.BoundsOverlap(at, j.plateOf(other)) {
				doubt(warning.Warning{Kind: PlatesMeet, Names: []string{o.Name, other.Name}})
			}
		}
	}
	return doubts
}

// plate returns the cover plate of a box of so many gangs.
func (j *Job) plate(gangs int) wall.Plate {
	if plate, given := j.Plates[gangs]; given {
		return plate
	}
	return fraction.Must(wall.StandardPlate(j.Units, gangs))
}

// plateOf returns the outline of the plate over a box, in the middle of it.
func (j *Job) plateOf(o *wall.Opening) []Point {
	plate := j.plate(o.DeviceGangs(j.Units))
	lo, hi := o.Bounds()
	return cutout.Rectangle(lo.X.Add(hi.X).Sub(plate.Width).Div(2), lo.Y.Add(hi.Y).Sub(plate.Height).Div(2), plate.Width, plate.Height)
}

// plateRoom returns the corners of what a plate on run r wants of its wall: as much more as trims reach over the foot and the
// top, and at its ends as the panels round an inside corner are thick.
func (j *Job) plateRoom(r int, plate []Point) (lo, hi Point) {
	lo, hi = plate[0], plate[2]
	if j.Runs[r].Left.Kind == wall.InsideCorner && lo.X.Less(j.Profile.Thickness) {
		lo.X = fraction.Inches(-1)
	}
	if j.Runs[r].Right.Kind == wall.InsideCorner && j.Runs[r].Width.Sub(j.Profile.Thickness).Less(hi.X) {
		hi.X = j.Runs[r].Width.Add(fraction.Inches(1))
	}
	if trim, _ := j.TrimOf(r, wall.BottomJoint); trim != nil {
		lo.Y = lo.Y.Sub(trim.Covers)
	}
	if trim, _ := j.TrimOf(r, wall.TopJoint); trim != nil {
		hi.Y = hi.Y.Add(trim.Covers)
	}
	return lo, hi
}

// holds reports whether an outline lies within a wall.
func holds(wall cutout.Shape, outline []Point) bool {
	rest := fraction.Must(fraction.Must(cutout.NewShape(outline)).Area())
	for _, part := range fraction.Must(wall.Within(outline)) {
		rest = rest.Sub(fraction.Must(part.Area()))
	}
	return rest.Sign() == 0
}
