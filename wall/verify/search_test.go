package verify

import (
	"cmp"
	"errors"
	"math/big"
	"slices"
	"testing"
)

// mostRuns is the most runs of a room that [LeastBlemish] judges: its cost grows with the product
// of their origins.
const mostRuns = 3

// LeastBlemish returns the least blemish of the layouts of a job that break as few hard rules as
// they must, by plain search over the contract's finite set of origins, over who passes at each
// inside corner, and over all ways to put seams on the lines where a seam may fall. ok is false for
// a job that it does not judge: more than three runs, a ready profile (its features are not in the
// job), breaks, installed panels, openings with an edge neither level nor upright, a room that
// seams on lines cannot cover from every origin, or one where it depends on short or counted
// sheets.
func LeastBlemish(job []byte) (total *big.Rat, ok bool) {
	j, err := readJob(job)
	if err != nil || j.pattern == nil || len(j.Runs) > mostRuns || len(j.Installed) > 0 || len(j.Runs) == 0 {
		return nil, false
	}
	for _, r := range j.Runs {
		if len(r.Breaks) > 0 {
			return nil, false
		}
	}
	j.findBare(func(int) bool { return true })
	// A sheet may be too short for a panel but long enough for the pieces that an opening leaves of
	// it, and of a counted one there may be too few. Where it makes a difference whether such
	// sheets count, nothing is said.
	sure := newSearch(j, true)
	best, ok := sure.least()
	if ok && sure.others {
		var all price
		all, ok = newSearch(j, false).least()
		ok = ok && best.compare(all) == 0
	}
	return best.blemish, ok
}

// price is what a layout or a part of one costs. The hard rules that it breaks count first, then
// its blemish.
type price struct {
	broken  int
	blemish rat
}

func (p price) compare(q price) int {
	return cmp.Or(cmp.Compare(p.broken, q.broken), p.blemish.Cmp(q.blemish))
}

func (p price) plus(q price) price {
	return price{p.broken + q.broken, sum(p.blemish, q.blemish)}
}

func newSearch(j *room, sureOnly bool) *search {
	return &search{job: j, sureOnly: sureOnly, weights: j.weights(), prices: map[string]own{}, roles: map[string]*region{}}
}

// search keeps what has been calculated: the region of a run in its roles, and the least price of a
// run by itself for an origin.
type search struct {
	job      *room
	sureOnly bool // count only sheets that never run out, as long as the region is high
	others   bool // there are others
	weights  map[string]rat
	roles    map[string]*region
	prices   map[string]own
	best     *price // nil until a layout is found
}

// key names a run in its roles.
func key(i int, atLeft, atRight role) string {
	return string([]byte{byte('0' + i), byte('0' + int(atLeft)), byte('0' + int(atRight))})
}

func (s *search) region(i int, atLeft, atRight role) *region {
	k := key(i, atLeft, atRight)
	if s.roles[k] == nil {
		s.roles[k] = s.job.region(i, atLeft, atRight)
	}
	return s.roles[k]
}

// least returns the price of the best layout. ok is false where an opening has sloped edges, and
// where seams on lines cannot cover some run from some origin: seams off the lines may then do,
// which are not tried here.
func (s *search) least() (best price, ok bool) {
	n := len(s.job.Runs)
	var corners []int // runs with an inside corner at the right
	for i := range s.job.Runs {
		if _, ok := s.job.corner(i); ok && s.job.Runs[i].Right.Kind == insideCorner {
			corners = append(corners, i)
		}
	}
	for choice := range 1 << len(corners) {
		atLeft, atRight := make([]role, n), make([]role, n)
		for k, i := range corners {
			next, _ := s.job.corner(i)
			atRight[i], atLeft[next] = passes, butts
			if choice>>k&1 == 1 {
				atRight[i], atLeft[next] = butts, passes
			}
		}
		if s.job.endless(atLeft) {
			continue
		}
		regions := make([]*region, n)
		for i := range regions {
			regions[i] = s.region(i, atLeft[i], atRight[i])
			if slices.ContainsFunc(s.job.Runs[i].Openings, func(o opening) bool { return !o.taped.square() }) {
				return price{}, false
			}
		}
		origins := s.job.origins(regions, s.weights)
		options := make([][]own, n)
		for i := range options {
			for _, origin := range origins[i] {
				o := s.alone(i, key(i, atLeft[i], atRight[i]), regions[i], origin)
				if !o.ok {
					return price{}, false
				}
				options[i] = append(options[i], o)
			}
			slices.SortStableFunc(options[i], func(a, b own) int { return a.price.compare(b.price) })
		}
		s.combine(regions, options, nil, price{0, zero()})
	}
	return *s.best, true // every run has an origin
}

// combine tries every origin of the runs not yet set out, those with the least price by themselves
// first.
func (s *search) combine(regions []*region, options [][]own, chosen []rat, sofar price) {
	i := len(chosen)
	if i == len(regions) {
		s.best = &sofar
		return
	}
	for _, option := range options[i] {
		total := sofar.plus(option.price)
		if s.best != nil && total.compare(*s.best) >= 0 {
			return // the options after it cost no less
		}
		all := append(slices.Clone(chosen), option.origin)
		total.blemish = sum(total.blemish, s.mismatches(regions, all))
		if s.best == nil || total.compare(*s.best) < 0 {
			s.combine(regions, options, all, total)
		}
	}
}

// mismatches returns the cost of the inside corners that the run last set out closes.
func (s *search) mismatches(regions []*region, chosen []rat) rat {
	j, p := s.job, s.job.pattern
	total := zero()
	last := len(chosen) - 1
	for i := range chosen {
		next, ok := j.corner(i)
		if !ok || j.Runs[i].Right.Kind != insideCorner || next > last || max(i, next) != last {
			continue
		}
		here := p.phase(diff(j.Runs[i].Width, p.Thickness), chosen[i])
		there := p.phase(p.Thickness, chosen[next])
		t := j.cornerTerm(i, next, regions[i], regions[next], circular(here, there, p.pitch), s.weights)
		total = sum(total, t.cost())
	}
	return total
}

// own is what a run costs by itself at an origin: its upright edges and its seams. ok is false
// where seams on lines leave no way.
type own struct {
	origin rat
	price  price
	ok     bool
}

// alone returns what run i costs by itself at an origin.
func (s *search) alone(i int, name string, g *region, origin rat) own {
	k := name + " " + text(origin)
	if known, found := s.prices[k]; found {
		return known
	}
	out := own{origin, price{0, zero()}, true}
	for _, u := range g.uprights(s.weights) {
		t, whole := s.job.uprightTerm(i, u, origin)
		out.price.blemish = sum(out.price.blemish, t.cost())
		if g.wantsWhole(u, s.weights) && !whole {
			out.price.broken = 1 // for all parts of the end
		}
	}
	for _, stretch := range g.stretches() {
		seams, ok := s.seams(i, g, origin, stretch[0], stretch[1])
		if !ok {
			out.ok = false
			break
		}
		out.price = out.price.plus(seams)
	}
	s.prices[k] = out
	return out
}

// BestLooking returns the least blemish among the choices of a plan.
func BestLooking(plan []byte) (*big.Rat, error) {
	c := &checker{}
	if !c.readPlan(plan) || len(c.plan.Choices) == 0 {
		return nil, errors.New("no choices")
	}
	best := c.plan.Choices[0].BlemishTotal
	for _, choice := range c.plan.Choices[1:] {
		best = least(best, choice.BlemishTotal)
	}
	return best, nil
}

// TestEndless: runs that pass, or butt, at every left end of a closed room have none to fit first; one that does otherwise, an
// end without an inside corner or a panel on the wall gives one.
func TestEndless(t *testing.T) {
	for _, row := range []struct {
		atLeft    []role
		installed int
		want      bool
	}{
		{[]role{butts, butts, butts}, 0, true},
		{[]role{passes, passes}, 0, true},
		{[]role{butts, passes, butts}, 0, false},
		{[]role{alone, butts, butts}, 0, false},
		{[]role{butts, butts, alone}, 0, false},
		{[]role{alone, alone}, 0, false},
		{[]role{butts}, 0, false},
		{[]role{butts, butts, butts}, 1, false},
	} {
		if got := (&room{Installed: make([]installed, row.installed)}).endless(row.atLeft); got != row.want {
			t.Errorf("%v with %d on the wall: %v", row.atLeft, row.installed, got)
		}
	}
}
