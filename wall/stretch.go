package wall

import (
	"slices"

	"example.com/groovewright/fraction"
)

// stretch is the part of a run in which one pattern runs on unbroken: between two breaks that are
// used, or the ends of the run.
type stretch struct {
	*model
	run         int
	from, to    int // the breaks at its ends; -1 and the number of breaks for the run's own ends
	fit         fitting
	region      *region
	left, right fraction.Length // where its first panel starts and its last one stops
	edges       []edge
	bays        []span            // what panels cover without a break
	beside      []fraction.Length // middles of the seam gaps beside installed panels

	half       fraction.Length // of a seam's gap; boards stand joint to joint
	leastPanel fraction.Length // a narrower panel is made only if forced
	wholeEnd   bool            // the run has one exposed end that is seen, which then has to be whole
	pitch      fraction.Length
	axis       fraction.Length // of the pattern, if pieces can be turned
	turns      bool
	widest     fraction.Length // of the sheets
	most       fraction.Length // no panel is taller
	pieces     [][]int         // pieces of a panel over columns [first][last]

	seamCosts map[fraction.Length]cost
	tallest   map[span]fraction.Length
	priced    map[[2]int][]pricedPart // by first and last column
	solved    map[fraction.Length]*solution
}

func (m *model) newStretch(r, from, to int, f fitting) (*stretch, error) {
	g, err := m.region(r, f)
	if err != nil {
		return nil, err
	}
	run, profile := &m.room.Runs[r], &m.room.Profile
	axis, _ := profile.Mirror()
	s := &stretch{model: m, run: r, from: from, to: to, fit: f, region: g, left: g.left, right: g.right,
		pitch: profile.Pitch(), axis: axis, turns: profile.Turns(), priced: map[[2]int][]pricedPart{},
		seamCosts: map[fraction.Length]cost{}, tallest: map[span]fraction.Length{}, solved: map[fraction.Length]*solution{}}
	for _, sheet := range s.sheets {
		s.widest = fraction.Max(s.widest, sheet.Width)
	}
	half := m.room.Gaps.Seam.Div(2)
	if !profile.Boards {
		s.half, s.leastPanel = half, s.pitch.Scale(m.room.Priorities.LeastPanel)
	}
	seen := func(e End) bool { return e.Kind == Exposed && (e.Prominence == nil || e.Prominence.Sign() > 0) }
	s.wholeEnd = !m.room.Priorities.WholeEnd.IsZero() && seen(run.Left) != seen(run.Right)
	if from >= 0 {
		s.left = run.Breaks[from].At.Add(half)
	}
	if to < len(run.Breaks) {
		s.right = run.Breaks[to].At.Sub(half)
	}
	if s.left.Less(g.left) || g.right.Less(s.right) || !s.left.Less(g.right) || !g.left.Less(s.right) {
		return nil, &NoLayoutError{run.Name, BreakOutside}
	}
	for _, e := range g.edges {
		if s.holds(run, e) {
			s.edges = append(s.edges, e)
		}
	}
	s.pieces = make([][]int, len(g.columns))
	for i := range g.columns {
		s.pieces[i] = make([]int, len(g.columns))
		for j := i; j < len(g.columns); j++ {
			check(m.ctx)
			s.pieces[i][j] = len(g.parts(i, j, g.columns[i].left, g.columns[j].right))
		}
	}
	s.most = tallest(g.parts(0, len(g.columns)-1, g.left, g.right))
	return s, s.findBays()
}

// holds reports whether the edge stands in this stretch: at a break itself the panelling that the
// edge bounds decides.
func (s *stretch) holds(run *Run, e edge) bool {
	inside := func(beyond int, beside bool) bool { return beyond > 0 || beyond == 0 && beside }
	return (s.from < 0 || inside(e.x.Compare(run.Breaks[s.from].At), !e.keepsLeft())) &&
		(s.to == len(run.Breaks) || inside(run.Breaks[s.to].At.Compare(e.x), e.keepsLeft()))
}

// findBays parts the spans of the stretch at the installed panels.
func (s *stretch) findBays() error {
	gap := s.half.Mul(2)
	for _, rest := range s.region.spans(s.left, s.right) {
		first := rest.left
		for _, in := range s.installed() {
			if !in.Left.Less(rest.right) || !first.Less(in.Right) {
				continue
			}
			if in.Left.Less(rest.left) || rest.right.Less(in.Right) {
				return &NoLayoutError{s.room.Runs[s.run].Name, InstalledOutside}
			}
			if before := (span{rest.left, in.Left.Sub(gap)}); s.panelled(before) {
				s.bays = append(s.bays, before)
			}
			if s.panelled(span{first, in.Left}) {
				s.beside = append(s.beside, in.Left.Sub(s.half))
			}
			if s.panelled(span{in.Right, rest.right}) {
				s.beside = append(s.beside, in.Right.Add(s.half))
			}
			rest.left = in.Right.Add(gap)
		}
		if s.panelled(rest) {
			s.bays = append(s.bays, rest)
		}
	}
	s.beside = slices.Compact(s.beside) // two installed panels share their seam
	return nil
}

// panelled reports whether a piece is left in b. Between a sloping side and an installed panel that
// stops on a mark beside it there is none.
func (s *stretch) panelled(b span) bool {
	return b.left.Less(b.right) && len(s.region.band(b.left, b.right, s.room.Mark)) > 0
}

// installed returns the installed panels of the stretch from left to right.
func (s *stretch) installed() []Installed {
	var out []Installed
	for _, in := range s.room.Installed {
		if in.Run == s.run && s.left.Less(in.Right) && in.Left.Less(s.right) {
			out = append(out, in)
		}
	}
	slices.SortFunc(out, func(a, b Installed) int { return a.Left.Compare(b.Left) })
	return out
}

// agrees reports whether the installed panels of the stretch show the pattern with its origin at o.
func (s *stretch) agrees(o fraction.Length) bool {
	return !slices.ContainsFunc(s.installed(), func(in Installed) bool { return fraction.Must(s.room.Profile.Phase(in.Left, o)) != in.LeftPhase })
}

// anySeamCost returns what a seam with its gap's middle at x costs, all but its distance from a
// seam line: what does not depend on the pattern.
func (s *stretch) anySeamCost(x fraction.Length) cost {
	if c, ok := s.seamCosts[x]; ok {
		return c
	}
	c := zeroCost
	for _, t := range s.seamTerms(x) {
		c.blemish = c.blemish.Add(t.cost())
	}
	clear := s.room.Priorities.BoxClear
	for _, o := range s.room.Runs[s.run].Openings {
		lo, hi := o.Bounds()
		if o.Kind == Box && (x.Sub(lo.X).Abs().Less(clear) || x.Sub(hi.X).Abs().Less(clear)) {
			c.broken++
		}
	}
	s.seamCosts[x] = c
	return c
}

// lines returns the seam lines within the bay, from left to right, the pattern's origin at o.
func (s *stretch) lines(o fraction.Length, b span) []fraction.Length {
	phases := s.room.Profile.SeamLines()
	if s.room.Profile.Boards {
		phases = []fraction.Length{{}}
	}
	from, to := b.left.Add(s.half), b.right.Sub(s.half)
	var out []fraction.Length
	for _, phase := range phases {
		x := from.Add(o.Add(phase).Sub(from).Mod(s.pitch))
		if x == from {
			x = x.Add(s.pitch)
		}
		for ; x.Less(to); x = x.Add(s.pitch) {
			out = append(out, x)
		}
	}
	slices.SortFunc(out, fraction.Length.Compare)
	return out
}

// marks returns the tape's marks in the bay together with the seam lines: the places that are tried
// where the lines alone cannot cover it.
func (s *stretch) marks(lines []fraction.Length, b span) []fraction.Length {
	mark := s.room.Mark
	if mark.IsZero() {
		return lines
	}
	out := slices.Clone(lines)
	from, to := b.left.Add(s.half), b.right.Sub(s.half)
	for x := floor(from, mark).Add(mark); x.Less(to); x = x.Add(mark) {
		out = append(out, x)
	}
	slices.SortFunc(out, fraction.Length.Compare)
	return slices.Compact(out)
}
