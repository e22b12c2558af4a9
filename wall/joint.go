package wall

import (
	"slices"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// JointKind says what meets at a joint.
type JointKind uint8

// The kinds of joint.
const (
	BottomJoint  JointKind = iota // panels and what they stand on
	TopJoint                      // panels and what is above
	EndJoint                      // an exposed or covered end
	CornerJoint                   // an inside corner, once for both runs
	MitreJoint                    // an outside corner, once for both runs
	StepJoint                     // the upright side of a step
	OpeningJoint                  // round a window or another opening that is no box
	BoxJoint                      // round a box, under its cover
	SeamJoint                     // between two panels
)

var jointKinds = enum.Of[JointKind]("bottom", "top", "end", "inside corner", "outside corner", "step", "opening", "box", "seam")

// String returns the word of the kind.
func (k JointKind) String() string { return jointKinds.String(k) }

// MarshalText returns the word of the kind.
func (k JointKind) MarshalText() ([]byte, error) { return jointKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *JointKind) UnmarshalText(text []byte) error { return jointKinds.Unmarshal(text, k) }

// Joint is all of one kind of joint on one run, or round one opening. Length is that along the joint:
// a slope by its true length, rounded up to 1/65536 in where it is not rational.
type Joint struct {
	Kind    JointKind
	Run     int    // its index; of a corner, that of the run whose right end it is
	Opening string // name of the opening or the box that it is round
	Length  fraction.Length
	Parts   []fraction.Length // the lengths in one go that Length is the sum of, as doors and steps part a foot; nil for one
	Gap     fraction.Length
	Seen    bool // the cut edge is seen: of an exposed end or an outside corner
	Right   bool // of an end: it is the right end of the run
	Alone   bool // of an inside corner: no other run meets it there
}

// against is what edges of panels lie against: a kind of joint, of openings by their names.
type against struct {
	JointKind
	opening string
}

// lengthOf returns the length of an edge, never less than it is.
func lengthOf(p, q cutout.Point) fraction.Length {
	switch {
	case p.X == q.X:
		return q.Y.Sub(p.Y).Abs()
	case p.Y == q.Y:
		return q.X.Sub(p.X).Abs()
	}
	return fraction.Must(cutout.Distance(p, q, finest()))
}

// finest is what lengths that are not rational are rounded up to a multiple of.
func finest() fraction.Length { return fraction.Of(1, 1<<16) }

// archedNamed returns the opening of a name that has an arched head, nil for none.
func (r *Run) archedNamed(name string) *Opening {
	i := slices.IndexFunc(r.Openings, func(o Opening) bool { return o.Name == name && o.Arch != nil })
	if i < 0 {
		return nil
	}
	return &r.Openings[i]
}

// inHead reports whether an edge lies along an arched head of the opening.
func (o *Opening) inHead(p, q cutout.Point) bool {
	return o != nil && o.Arch != nil && !fraction.Min(p.Y, q.Y).Less(o.Arch.Springing.Y)
}

// along returns the length of a head, this gap off, where the edges along it have such a length in all: that of
// its true arc where they are as long. They lie outside the arc, and may be a part of it.
func (o *Opening) along(edges, gap fraction.Length) fraction.Length {
	arc, err := cutout.ArcLength(o.Arch.Chord.Add(gap.Mul(2)), o.Arch.Rise.Add(gap), finest())
	return fraction.Min(edges, fraction.Must(arc, err))
}

// jointPart is a joint in one go, from its start to its end.
type jointPart struct {
	against
	from, to cutout.Point
	length   fraction.Length
}

// joints returns the joints of the region against the wall and what is on it, found once: their lengths in one go.
func (g *region) joints(room *Room, r int) map[against][]fraction.Length {
	g.lock.Lock()
	defer g.lock.Unlock()
	if g.lengths != nil {
		return g.lengths
	}
	run := &room.Runs[r]
	parts, heads := map[against][]fraction.Length{}, map[*Opening]fraction.Length{}
	kinds := map[BlemishKind]JointKind{StepSide: StepJoint, OpeningSide: OpeningJoint, BoxSide: BoxJoint}
	for _, e := range g.edges {
		if kind, ok := kinds[e.kind]; ok { // ends are counted with their corners
			at, height := against{kind, e.opening}, e.height
			if o := run.archedNamed(e.opening); o != nil { // the foot of a steep head is upright
				top := e.bottom.Add(e.height)
				part := fraction.Max(top.Sub(fraction.Max(e.bottom, o.Arch.Springing.Y)), fraction.Length{})
				height, heads[o] = height.Sub(part), heads[o].Add(part)
			}
			if height.Sign() > 0 {
				parts[at] = append(parts[at], height)
			}
		}
	}
	var chains []jointPart
	for _, s := range g.shapes {
		first := len(chains)
		for p, q := range s.Edges() {
			if p.X == q.X || g.leaning[[2]cutout.Point{p, q}] {
				continue
			}
			kind := TopJoint
			if p.X.Less(q.X) { // the shape lies to the left of its border, so above this edge
				kind = BottomJoint
			}
			o, at := openingAt(room, run, p, q), against{JointKind: kind}
			if o != nil {
				at = against{o.joint(), o.Name}
			}
			if o.inHead(p, q) {
				heads[o] = heads[o].Add(lengthOf(p, q))
				continue
			}
			if last := len(chains) - 1; last >= first && chains[last].against == at && chains[last].to == p {
				chains[last].to, chains[last].length = q, chains[last].length.Add(lengthOf(p, q))
			} else {
				chains = append(chains, jointPart{at, p, q, lengthOf(p, q)})
			}
		}
	}
	for o, edges := range heads {
		at := against{o.joint(), o.Name}
		parts[at] = append(parts[at], o.along(edges, room.Gaps.Around(o.Kind)))
	}
	for i, c := range chains {
		alone := true
		for k := i + 1; k < len(chains); k++ { // what a ring of edges begins with goes on from what it ends with
			if d := &chains[k]; d.against == c.against && d.to == c.from {
				d.length, alone = d.length.Add(c.length), false
				break
			}
		}
		if alone {
			parts[c.against] = append(parts[c.against], c.length)
		}
	}
	g.lengths = parts
	return parts
}

// openingAt returns the opening that the edge p to q, which is not upright, lies on, nil for none.
func openingAt(room *Room, run *Run, p, q cutout.Point) *Opening {
	middle := p.X.Add(q.X).Div(2)
	y := heightOn(p, q, middle)
	for i := range run.Openings {
		o := &run.Openings[i]
		gap := room.Gaps.Around(o.Kind)
		lo, hi := o.Bounds()
		if lo.X.Sub(gap).Less(middle) && middle.Less(hi.X.Add(gap)) && !y.Less(lo.Y.Sub(gap)) && !hi.Y.Add(gap).Less(y) {
			return o
		}
	}
	return nil
}

// joint returns the kind of the joint round the opening.
func (o *Opening) joint() JointKind {
	if o.Kind == Box {
		return BoxJoint
	}
	return OpeningJoint
}

// addJoints lists the joints of the layout.
func (m *Model) addJoints(layout *Layout, legs []leg) {
	add := func(j Joint, parts ...fraction.Length) {
		for _, part := range parts {
			j.Length = j.Length.Add(part)
		}
		if len(parts) > 1 {
			j.Parts = parts
		}
		if j.Length.Sign() > 0 {
			layout.Joints = append(layout.Joints, j)
		}
	}
	gaps := m.room.Gaps
	lines := []Joint{{Kind: BottomJoint, Gap: gaps.Bottom}, {Kind: TopJoint, Gap: gaps.Top}, {Kind: StepJoint, Gap: gaps.Side}}
	for _, l := range legs {
		if l.sol.stretch.from >= 0 {
			continue
		}
		r, g := l.sol.stretch.run, l.sol.stretch.region
		parts := g.joints(m.room, r)
		for _, j := range lines {
			add(Joint{Kind: j.Kind, Run: r, Gap: j.Gap}, parts[against{JointKind: j.Kind}]...)
		}
		for _, o := range m.room.Runs[r].Openings {
			add(Joint{Kind: o.joint(), Run: r, Opening: o.Name, Gap: gaps.Around(o.Kind)}, parts[against{o.joint(), o.Name}]...)
		}
		for side, end := range []End{m.room.Runs[r].Left, m.room.Runs[r].Right} {
			length := g.endLengths[side]
			switch {
			case !end.Kind.IsCorner():
				add(Joint{Kind: EndJoint, Run: r, Length: length, Gap: gaps.Side, Seen: end.Kind == Exposed, Right: side == 1})
			case side == 0 && m.coupled(m.before(r)): // counted at the right end of the run before
			case end.Kind == InsideCorner:
				add(Joint{Kind: CornerJoint, Run: r, Length: length, Gap: gaps.Side, Alone: side == 0 || !m.coupled(r)})
			default:
				add(Joint{Kind: MitreJoint, Run: r, Length: length, Seen: true})
			}
		}
	}
	for _, b := range layout.Blemishes {
		if b.Kind == Seam {
			layout.Joints = append(layout.Joints, Joint{Kind: SeamJoint, Run: b.Run, Length: b.Height, Gap: gaps.Seam})
		}
	}
}

// before returns the number of the run before run r, going round.
func (m *Model) before(r int) int {
	return (r + len(m.room.Runs) - 1) % len(m.room.Runs)
}
