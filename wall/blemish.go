package wall

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
)

// Blemish is one term of what the eye would find on a run.
type Blemish struct {
	Run     int
	Kind    BlemishKind
	Where   Place
	Opening string          // its name, AtOpening
	Next    int             // the next run, AtCorner
	At      fraction.Length // x on the run
	Amount  fraction.Length // inches of cut feature, mismatch, distance or shortfall
	Height  fraction.Length // seen; zero for a term that does not count by height
	Weight  fraction.Ratio
	Cost    fraction.Ratio // Weight x Amount x Height in feet, or Weight x Amount alone
}

// BlemishKind says what is seen, and by that what the amount measures.
type BlemishKind uint8

// The kinds of blemish; those at one place of a layout come in this order.
const (
	BoxSide          BlemishKind = iota // a feature cut at the side of a box
	BreakMismatch                       // patterns out of step at a break
	CoveredEnd                          // a feature cut at a covered end
	ExposedEnd                          // a feature cut at an exposed end
	CornerMismatch                      // patterns out of step at an inside corner
	OpeningSide                         // a feature cut at the side of a window or another opening
	OutsideCornerEnd                    // a feature cut at an outside corner
	Seam                                // a seam as such
	SeamOffLine                         // its distance from the nearest seam line
	StepSide                            // a feature cut at the side of a step
	WeakStrip                           // by how much a strip or a tab beside a seam is too narrow
)

var blemishKinds = enum.Of[BlemishKind]("box side", "break", "covered end", "exposed end", "inside corner", "opening side",
	"outside corner", "seam", "seam off its line", "step side", "weak strip")

// String returns the word of the kind.
func (k BlemishKind) String() string { return blemishKinds.String(k) }

// MarshalText returns the word of the kind.
func (k BlemishKind) MarshalText() ([]byte, error) { return blemishKinds.Marshal(k) }

// UnmarshalText reads the word of a kind.
func (k *BlemishKind) UnmarshalText(text []byte) error { return blemishKinds.Unmarshal(text, k) }

// Place says at what a blemish is. A weak strip lies between a seam and that.
type Place uint8

// The places of blemishes.
const (
	AtSeam Place = iota
	AtBreak
	AtLeftEnd
	AtRightEnd
	AtCorner  // at the right end, with the next run
	AtStep    // at the side of a step
	AtOpening // at the side of an opening
)

var places = enum.Of[Place]("seam", "break", "left end", "right end", "corner", "step", "opening")

// String returns the word of the place.
func (p Place) String() string { return places.String(p) }

// MarshalText returns the word of the place.
func (p Place) MarshalText() ([]byte, error) { return places.Marshal(p) }

// UnmarshalText reads the word of a place.
func (p *Place) UnmarshalText(text []byte) error { return places.Unmarshal(text, p) }

func (b *Blemish) cost() fraction.Ratio {
	cost := b.Weight.Mul(b.Amount.Over(inch))
	if b.Kind != SeamOffLine {
		cost = cost.Mul(b.Height.Over(foot))
	}
	return cost
}

var inch, foot = fraction.Inches(1), fraction.Inches(12)

// edgeTerms returns the terms with a weight of the upright edges, with the pattern's origin at o.
func (s *stretch) edgeTerms(o fraction.Length) []Blemish {
	var terms []Blemish
	for _, e := range s.edges {
		if e.weight.IsZero() {
			continue
		}
		terms = append(terms, Blemish{
			Run: s.run, Kind: e.kind, Where: e.where, Opening: e.opening, At: e.x, Height: e.height, Weight: e.weight,
			Amount: e.amount(&s.room.Profile, o),
		})
	}
	return terms
}

// uneven returns how much the cuts at both ends of a run differ, the distance from each to the
// nearest feature boundary. Where only one end is seen it is how far that is from a whole feature,
// also of wide flats: half a flat is as good, but a whole one better. A run with breaks has none.
func (s *stretch) uneven(o fraction.Length) fraction.Length {
	if len(s.room.Runs[s.run].Breaks) > 0 {
		return fraction.Length{}
	}
	p := &s.room.Profile
	if left, right := s.region.endsSeen(); left != right {
		e := s.edges[slices.IndexFunc(s.edges, edge.seenEnd)]
		narrow := *p
		narrow.WideFlats = false
		return fraction.Must(narrow.CutDistance(e.foot.Sub(o), e.keep))
	}
	left := fraction.Must(p.DistanceToBoundary(s.left.Sub(o)))
	right := fraction.Must(p.DistanceToBoundary(s.right.Sub(o)))
	return left.Sub(right).Abs()
}

// seamTerms returns the terms of a seam with its gap's middle at x, but for lineTerm.
func (s *stretch) seamTerms(x fraction.Length) []Blemish {
	seam := Blemish{Run: s.run, Kind: Seam, Where: AtSeam, At: x, Amount: s.room.Priorities.Seam,
		Height: s.region.heightAt(x, s.room.Mark), Weight: s.room.Runs[s.run].prominence(x)}
	return append([]Blemish{seam}, s.weakStrips(s.run, x, s.region)...)
}

// weakStrips returns the terms of what a seam at x of run r leaves narrow between itself and the
// upright sides of openings and steps: strips beside a side, as high as it is, and tabs that end below
// or above what it bounds, as high as what is panelled there in all.
func (m *Model) weakStrips(r int, x fraction.Length, g *region) (terms []Blemish) {
	half, least := m.room.Gaps.Seam.Div(2), m.room.Priorities.LeastStrip
	for i, e := range g.edges {
		width, leftPanel := x.Sub(half).Sub(e.x), true
		if width.Sign() <= 0 {
			width, leftPanel = e.x.Sub(x).Sub(half), false
		}
		if e.end || width.Sign() <= 0 || !width.Less(least) {
			continue
		}
		height := e.height
		if e.keepsLeft() == leftPanel { // a tab, once for all edges of the place
			if slices.ContainsFunc(g.edges[:i], func(f edge) bool { return !f.end && f.x == e.x && f.keep == e.keep }) {
				continue
			}
			height = g.heightBeside(e.x, !leftPanel, m.room.Mark)
		}
		terms = append(terms, Blemish{Run: r, Kind: WeakStrip, Where: e.where, Opening: e.opening, At: e.x,
			Amount: least.Sub(width), Height: height, Weight: m.room.Priorities.WeakStrip})
	}
	return terms
}

// lineTerm returns the term for a seam that is not on a seam line; its amount is zero where it is,
// and where the pattern has no seam line at all.
func (s *stretch) lineTerm(o, x fraction.Length) Blemish {
	p := &s.room.Profile
	distance := fraction.Must(p.DistanceToSeamLine(x.Sub(o)))
	return Blemish{Run: s.run, Kind: SeamOffLine, Where: AtSeam, At: x, Amount: distance, Weight: s.room.Priorities.SeamLine}
}

// prominence returns how much a seam at x is seen, by the greater of two focal stretches that meet.
func (r *Run) prominence(x fraction.Length) fraction.Ratio {
	var stated []*fraction.Ratio
	for i, f := range r.Focal {
		if !x.Less(f.From) && !f.To.Less(x) {
			stated = append(stated, &r.Focal[i].Prominence)
		}
	}
	return greatest(fraction.NewRatio(1, 1), stated...)
}

// greatest returns the greatest weight that is stated, and the usual one where none is.
func greatest(usual fraction.Ratio, stated ...*fraction.Ratio) fraction.Ratio {
	found := false
	for _, p := range stated {
		if p != nil && (!found || usual.Less(*p)) {
			usual, found = *p, true
		}
	}
	return usual
}

// cornerTerm returns the term of the inside corner at the right end of run r, whose neighbour butts
// against it or the other way round.
func (m *Model) cornerTerm(r int, nextButts bool, mismatch fraction.Length) (Blemish, error) {
	next := (r + 1) % len(m.room.Runs)
	left, err := m.region(r, fitting{buttsRight: !nextButts})
	if err != nil {
		return Blemish{}, err
	}
	right, err := m.region(next, fitting{buttsLeft: nextButts})
	if err != nil {
		return Blemish{}, err
	}
	return Blemish{
		Run: r, Kind: CornerMismatch, Where: AtCorner, Next: next, At: m.room.Runs[r].Width.Sub(m.room.Profile.Thickness),
		Amount: mismatch, Height: fraction.Min(left.endHeights[1], right.endHeights[0]),
		Weight: greatest(m.room.Priorities.InsideCorner, m.room.Runs[r].Right.Prominence, m.room.Runs[next].Left.Prominence),
	}, nil
}

// breakTerms returns the terms of break number k of run r when the pattern starts afresh there. It fails
// where panels would meet in a stretch that is kept clear of seams.
func (m *Model) breakTerms(r, k int, mismatch fraction.Length) ([]Blemish, error) {
	g, err := m.region(r, fitting{})
	if err != nil {
		return nil, err
	}
	run := &m.room.Runs[r]
	at := run.Breaks[k].At
	height := g.heightAt(at, m.room.Mark)
	_, _, seam := g.besideBreak(at, m.room.Gaps.Seam.Div(2))
	if seam && run.Keep.clears(at) {
		return nil, unmet(m.room, r)
	}
	terms := []Blemish{{Run: r, Kind: BreakMismatch, Where: AtBreak, At: at, Amount: mismatch, Height: height, Weight: run.Breaks[k].Prominence}}
	if seam && !m.room.Profile.Boards {
		terms = append(terms, Blemish{Run: r, Kind: Seam, Where: AtBreak, At: at, Amount: m.room.Priorities.Seam, Height: height, Weight: run.prominence(at)})
		terms = append(terms, m.weakStrips(r, at, g)...)
	}
	return terms, nil
}
