package nest_test

import (
	"context"
	"flag"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/money"
	"example.com/groovewright/nest"
)

// The model here is the problem itself by plain enumeration, and shares nothing with the search:
// every cut at every whole mark, every way to divide the parts between its sides, every way to
// spread the parts over sheets.

var jobs = flag.Int("jobs", 300, "random small jobs to compare with plain enumeration")

// smallJob is a job on whole marks, small enough to enumerate.
type smallJob struct {
	kerf, trim, pitch, axis int
	mirrored                bool
	kinds                   []smallKind
	parts                   []smallPart
}

type smallKind struct {
	w, h, phase int
	count       int // -1: as many as needed
	price       int // in quarters
}

type smallPart struct{ w, h, phase int }

func randomJob(r *rand.Rand) smallJob {
	j := smallJob{kerf: r.IntN(3), trim: r.IntN(2)}
	if r.IntN(4) > 0 {
		j.pitch = 2 + r.IntN(3)
		j.mirrored = r.IntN(2) == 0
		j.axis = r.IntN(j.pitch)
	}
	for i := range 1 + r.IntN(2) {
		k := smallKind{w: 4 + r.IntN(9), h: 3 + r.IntN(8), count: -1, price: r.IntN(4)}
		if j.pitch > 0 {
			k.phase = r.IntN(j.pitch)
		}
		if i > 0 || r.IntN(8) == 0 {
			k.count = r.IntN(3)
		}
		j.kinds = append(j.kinds, k)
	}
	sizes := make([]smallPart, 1+r.IntN(5))
	for i := range sizes {
		sizes[i] = smallPart{w: 1 + r.IntN(5), h: 1 + r.IntN(5)}
		if j.pitch > 0 {
			sizes[i].phase = r.IntN(j.pitch)
		}
	}
	for range r.IntN(7) {
		j.parts = append(j.parts, sizes[r.IntN(len(sizes))])
	}
	return j
}

func (j smallJob) problem() nest.Problem {
	mark := func(n int) fraction.Length { return fraction.Of(int64(n), 8) }
	p := nest.Problem{
		Saw:     nest.Saw{Kerf: mark(j.kerf), SquareUp: mark(j.trim)},
		Pattern: nest.Pattern{Pitch: mark(j.pitch), Mirrored: j.mirrored, Axis: mark(j.axis)},
	}
	for _, k := range j.kinds {
		s := nest.Stock{Width: mark(k.w), Length: mark(k.h), LeftPhase: mark(k.phase), Price: money.Of(decimal.New(int64(k.price)*25, -2))}
		if k.count >= 0 {
			s.Count = &k.count
		}
		p.Stock = append(p.Stock, s)
	}
	for i, q := range j.parts {
		p.Parts = append(p.Parts, nest.Part{Number: i + 1, Width: mark(q.w), Height: mark(q.h), LeftPhase: mark(q.phase)})
	}
	return p
}

// remnant is a rectangle on the bench with the parts still to come from it.
type remnant struct{ w, h, phase, parts int }

// comesFree reports whether the parts (a bit each) can be cut from a rectangle.
func (j smallJob) comesFree(r remnant, known map[remnant]bool) bool {
	if r.parts == 0 {
		return true
	}
	if r.w <= 0 || r.h <= 0 {
		return false
	}
	if j.pitch > 0 {
		r.phase = (r.phase%j.pitch + j.pitch) % j.pitch
	}
	if ok, seen := known[r]; seen {
		return ok
	}
	known[r] = j.isPart(r) || j.cutAnywhere(r, known)
	return known[r]
}

func (j smallJob) isPart(r remnant) bool {
	for i, q := range j.parts {
		if r.parts == 1<<i && r.w == q.w && r.h == q.h {
			turned := ((2*j.axis-r.phase-r.w-q.phase)%max(j.pitch, 1) == 0)
			return j.pitch == 0 || r.phase == q.phase || j.mirrored && turned
		}
	}
	return false
}

func (j smallJob) cutAnywhere(r remnant, known map[remnant]bool) bool {
	area := 0
	for i, q := range j.parts {
		if r.parts>>i&1 != 0 {
			area += q.w * q.h
		}
	}
	if area > r.w*r.h {
		return false
	}
	for near := r.parts; ; near = (near - 1) & r.parts {
		for at := min(1, 1-j.kerf); at < r.h; at++ {
			if j.comesFree(remnant{r.w, at, r.phase, near}, known) &&
				j.comesFree(remnant{r.w, r.h - at - j.kerf, r.phase, r.parts &^ near}, known) {
				return true
			}
		}
		for at := min(1, 1-j.kerf); at < r.w; at++ {
			if j.comesFree(remnant{at, r.h, r.phase, near}, known) &&
				j.comesFree(remnant{r.w - at - j.kerf, r.h, r.phase + at + j.kerf, r.parts &^ near}, known) {
				return true
			}
		}
		if near == 0 {
			return false
		}
	}
}

// smallMerit is the objective of a nest: parts left out, money in quarters, sheets bought, sheets.
type smallMerit [4]int

func (a smallMerit) less(b smallMerit) bool { return slices.Compare(a[:], b[:]) < 0 }

// best enumerates all nests.
func (j smallJob) best() smallMerit {
	free := make([][]bool, len(j.kinds))
	for i, k := range j.kinds {
		free[i] = make([]bool, 1<<len(j.parts))
		known := map[remnant]bool{}
		for s := range free[i] {
			free[i][s] = k.h > 2*j.trim && j.comesFree(remnant{k.w, k.h - 2*j.trim, k.phase, s}, known)
		}
	}
	best := smallMerit{len(j.parts) + 1}
	counts := make([]int, len(j.kinds))
	var spread func(rest int, m smallMerit)
	spread = func(rest int, m smallMerit) {
		if rest == 0 {
			if m.less(best) {
				best = m
			}
			return
		}
		lead := rest & -rest
		out := m
		out[0]++
		spread(rest&^lead, out)
		for i, k := range j.kinds {
			if k.count >= 0 && counts[i] >= k.count {
				continue
			}
			more := m
			more[1] += k.price
			more[3]++
			if k.count < 0 {
				more[2]++
			}
			counts[i]++
			for s := rest; s > 0; s = (s - 1) & rest {
				if s&lead != 0 && free[i][s] {
					spread(rest&^s, more)
				}
			}
			counts[i]--
		}
	}
	spread(1<<len(j.parts)-1, smallMerit{})
	return best
}

// meritOf returns the objective of a nest whose prices are whole quarters.
func meritOf(p nest.Problem, r nest.Result) smallMerit {
	return smallMerit{len(r.Unplaced), int(r.Cost.Num() * (4 / r.Cost.Den())), bought(p, r), len(r.Sheets)}
}

// bought counts the sheets of stock without a count.
func bought(p nest.Problem, r nest.Result) (n int) {
	for _, s := range r.Sheets {
		if p.Stock[s.Stock].Count == nil {
			n++
		}
	}
	return n
}

// TestSearchEqualsEnumeration compares the search with the plain model. The jobs are drawn from a
// fixed seed; -jobs 100000 takes some minutes.
func TestSearchEqualsEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	wrong := 0
	for n := range *jobs {
		j := randomJob(r)
		p := j.problem()
		want := j.best()
		got, err := nest.Search(context.Background(), p, nest.Budget{})
		if err != nil {
			t.Fatalf("job %d: %v", n, err)
		}
		m := meritOf(p, got)
		first, err := nest.FirstFit(p)
		if err != nil {
			t.Fatal(err)
		}
		all := map[string]nest.Result{"Search": got, "FirstFit": first}
		for name, bounds := range map[string]bool{"exact search": true, "exact search without bounds": false} {
			r, err := nest.SearchExactly(p, bounds)
			if err != nil {
				t.Fatalf("job %d: %v", n, err)
			}
			if all[name] = r; meritOf(p, r) != want {
				t.Errorf("job %d: %+v\n%s %v, want %v", n, j, name, meritOf(p, r), want)
			}
		}
		for name, r := range all {
			if err := nest.Verify(p, r); err != nil {
				t.Errorf("job %d: %s: %v", n, name, err)
			}
		}
		if m != want || !got.Bound.Proved || first.Bound.Proved && meritOf(p, first) != want {
			t.Errorf("job %d: %+v\nSearch %v %+v, first fit %v %+v, want %v", n, j, m, got.Bound, meritOf(p, first), first.Bound, want)
			if wrong++; wrong > 3 {
				t.FailNow()
			}
		}
	}
}
