package proof

import (
	"encoding/json"
	"errors"
	"math/big"
	"slices"
)

// mostRuns is the most runs of a room that [LeastBlemish] judges: its cost grows
// with the product of their origins.
const mostRuns = 3

// LeastBlemish returns the least blemish of all layouts of a job, by plain
// search over the contract's finite set of origins, over who passes at each
// inside corner, and over all ways to put seams on the lines where a seam may
// fall. ok is false for a job that it does not judge: more than three runs, a
// ready profile (its features are not in the job), breaks, installed panels, a
// room in which every layout breaks a hard rule, or one where it depends on the
// length of a sheet.
func LeastBlemish(job []byte) (total *big.Rat, ok bool) {
	j, err := readJob(job)
	if err != nil || j.pattern == nil || len(j.runs) > mostRuns || len(j.installed) > 0 || len(j.runs) == 0 {
		return nil, false
	}
	for _, r := range j.runs {
		if len(r.breaks) > 0 {
			return nil, false
		}
	}
	// A sheet may be too short for a panel but long enough for the pieces that an
	// opening leaves of it. Where it makes a difference whether such sheets count,
	// nothing is said.
	all := newSearch(j, false)
	long := newSearch(j, true)
	total, ok = all.least()
	again, okAgain := long.least()
	if !ok || !okAgain || !same(total, again) {
		return nil, false
	}
	return total, true
}

func newSearch(j *room, longOnly bool) *search {
	return &search{job: j, longOnly: longOnly, weights: j.given(), costs: map[string]own{}, roles: map[string]*region{}}
}

// search keeps what has been reckoned: the region of a run in its roles, and the
// least cost of a run by itself for an origin.
type search struct {
	job      *room
	longOnly bool // count only sheets as long as the whole region is high
	weights  weights
	roles    map[string]*region
	costs    map[string]own
	best     rat
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

func (s *search) least() (rat, bool) {
	n := len(s.job.runs)
	var corners []int // runs with an inside corner at the right
	for i := range s.job.runs {
		if _, ok := s.job.corner(i); ok && s.job.runs[i].right.kind == insideCorner {
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
		regions := make([]*region, n)
		for i := range regions {
			regions[i] = s.region(i, atLeft[i], atRight[i])
		}
		origins := s.job.origins(regions, s.weights)
		options := make([][]own, n)
		for i := range options {
			for _, origin := range origins[i] {
				if o := s.alone(i, key(i, atLeft[i], atRight[i]), regions[i], origin); o.ok {
					options[i] = append(options[i], o)
				}
			}
			slices.SortStableFunc(options[i], func(a, b own) int { return a.cost.Cmp(b.cost) })
		}
		s.combine(regions, options, nil, zero())
	}
	return s.best, s.best != nil
}

// combine tries every origin of the runs not yet set out, those that cost least
// by themselves first.
func (s *search) combine(regions []*region, options [][]own, chosen []rat, cost rat) {
	i := len(chosen)
	if i == len(regions) {
		s.best = cost
		return
	}
	for _, option := range options[i] {
		total := sum(cost, option.cost)
		if s.best != nil && !less(total, s.best) {
			return // the options after it cost no less
		}
		all := append(slices.Clone(chosen), option.origin)
		total = sum(total, s.mismatches(regions, all))
		if s.best == nil || less(total, s.best) {
			s.combine(regions, options, all, total)
		}
	}
}

// mismatches returns the cost of the inside corners that the run last set out
// closes.
func (s *search) mismatches(regions []*region, chosen []rat) rat {
	j, p := s.job, s.job.pattern
	total := zero()
	last := len(chosen) - 1
	for i := range chosen {
		next, ok := j.corner(i)
		if !ok || j.runs[i].right.kind != insideCorner || next > last || max(i, next) != last {
			continue
		}
		here := p.phase(diff(j.runs[i].width, p.thickness), chosen[i])
		there := p.phase(p.thickness, chosen[next])
		t := j.cornerTerm(i, next, regions[i], regions[next], circular(here, there, p.pitch), s.weights)
		total = sum(total, t.cost())
	}
	return total
}

// own is what a run costs by itself at an origin: its upright edges and its
// seams. ok is false where the hard rules leave no way.
type own struct {
	origin, cost rat
	ok           bool
}

// alone reckons what run i costs by itself at an origin.
func (s *search) alone(i int, name string, g *region, origin rat) own {
	k := name + " " + text(origin)
	if known, found := s.costs[k]; found {
		return known
	}
	out := own{origin, zero(), true}
	shown := func(e end) bool { return e.kind == exposed && (e.prominence == nil || e.prominence.Sign() > 0) }
	only := shown(g.run.left) != shown(g.run.right)
	for _, u := range g.uprights(s.weights) {
		t := s.job.pattern.uprightTerm(i, u, s.job.pattern.phase(u.x, origin))
		out.cost = sum(out.cost, t.cost())
		onlyOne := u.end && only && (u.right && shown(g.run.left) || !u.right && shown(g.run.right))
		if onlyOne && t.amount.Sign() > 0 && u.height.Sign() > 0 && s.weights[wholeEnd].Sign() > 0 {
			out.ok = false
		}
	}
	for _, stretch := range g.stretches() {
		if seams := s.seams(i, g, origin, stretch[0], stretch[1]); seams != nil {
			out.cost = sum(out.cost, seams)
		} else {
			out.ok = false
		}
	}
	s.costs[k] = out
	return out
}

// sheets returns the stock that counts for a region.
func (s *search) sheets(g *region) []stock {
	low, high := g.extent()
	return slices.DeleteFunc(slices.Clone(s.job.stock), func(sheet stock) bool {
		usable := diff(sheet.length, times(whole(2), sheet.squareUp))
		return s.longOnly && less(usable, diff(high, low))
	})
}

// seams returns the least cost of the seams between left and right, nil where
// there is no way within the hard rules. A panel that fills the whole stretch
// may be narrow: nothing can be done about it.
func (s *search) seams(i int, g *region, origin, left, right rat) rat {
	j, p := s.job, s.job.pattern
	if p.boards {
		return zero()
	}
	sheets := s.sheets(g)
	if p.sheetFor(sheets, diff(right, left), p.phase(left, origin)) {
		return zero() // every seam costs something or nothing, never less
	}
	gap := half(j.gaps.seam)
	narrow := times(s.weights[leastPanel], p.pitch)
	// starts[k] and costs[k]: where a panel may begin and the least cost up to there.
	starts, costs := []rat{left}, []rat{zero()}
	for _, x := range p.linesBetween(origin, left, right) {
		if j.nearBox(i, x, s.weights[boxClear]) {
			continue
		}
		best := cheapest(starts, costs, diff(x, gap), narrow, p, sheets, origin)
		if best == nil {
			continue
		}
		starts = append(starts, sum(x, gap))
		costs = append(costs, sum(best, g.seamTerm(i, x, s.weights).cost()))
	}
	return cheapest(starts, costs, right, narrow, p, sheets, origin)
}

// cheapest returns the least cost of reaching a panel's right edge from any of
// the starts, nil for none.
func cheapest(starts, costs []rat, right, narrow rat, p *pattern, sheets []stock, origin rat) rat {
	widest := zero()
	for _, s := range sheets {
		widest = most(widest, s.width)
	}
	var best rat
	for k := len(starts) - 1; k >= 0; k-- {
		width := diff(right, starts[k])
		if less(widest, width) {
			break // the starts before lie farther left still
		}
		if less(width, narrow) || best != nil && !less(costs[k], best) {
			continue
		}
		if p.sheetFor(sheets, width, p.phase(starts[k], origin)) {
			best = costs[k]
		}
	}
	return best
}

// BestLooking returns the least blemish among the choices of a plan.
func BestLooking(plan []byte) (*big.Rat, error) {
	var file planFile
	if err := json.Unmarshal(plan, &file); err != nil {
		return nil, err
	}
	if len(file.Choices) == 0 {
		return nil, errors.New("no choices")
	}
	best := file.Choices[0].BlemishTotal.r()
	for _, choice := range file.Choices[1:] {
		best = least(best, choice.BlemishTotal.r())
	}
	return best, nil
}
