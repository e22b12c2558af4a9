package nest

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
)

// result turns a plan into a Result, with cuts and offcuts that take so many nodes of a sawyer. The
// caller fills in Bound and Status.
func (j *job) result(p plan, most int) (r Result, err error) {
	r.Sheets = make([]Sheet, len(p.sheets))
	saw := &sawyer{kerf: j.kerf, most: most}
	for i, l := range p.sheets {
		if r.Sheets[i], err = j.sheet(saw, l); err != nil {
			return Result{}, fmt.Errorf("sheet %d: %w", i+1, err)
		}
		r.Cost = r.Cost.Add(j.p.Stock[l.kind].price())
	}
	left := slices.Clone(p.left)
	slices.Sort(left)
	for _, i := range left {
		why, needs := j.why(&j.pieces[i])
		r.Unplaced = append(r.Unplaced, Unplaced{j.p.Parts[i].Number, why, needs})
	}
	return r, nil
}

// sheet saws a filled sheet and puts everything back in inches.
func (j *job) sheet(saw *sawyer, l layout) (Sheet, error) {
	k := &j.kinds[l.kind]
	s := Sheet{Stock: l.kind}
	cuts, offcuts, err := saw.takeApart(rect{0, 0, k.w, k.h}, j.rects(l.spots))
	if err != nil {
		return s, err
	}
	if k.trim > 0 {
		cuts = append([]cut{
			{rect: rect{0, -k.trim, k.w, k.h + 2*k.trim}, kind: Crosscut, at: k.trim - j.kerf},
			{rect: rect{0, 0, k.w, k.h + k.trim}, kind: Crosscut, at: k.h},
		}, cuts...)
	}
	for i, c := range cuts {
		on := [4]fraction.Length{j.length(c.x), j.length(c.y + k.trim), j.length(c.w), j.length(c.h)}
		s.Cuts = append(s.Cuts, Cut{Step: i + 1, Rect: on, Kind: c.kind, At: j.length(c.at)})
	}
	for _, at := range l.spots {
		s.Placements = append(s.Placements, Placement{
			Part: j.p.Parts[at.piece].Number, X: j.length(at.x), Y: j.length(at.y + k.trim),
			Turned: floorMod(k.phase+at.x, j.pitch) != j.pieces[at.piece].at[0],
		})
	}
	for _, o := range offcuts {
		s.Offcuts = append(s.Offcuts, Offcut{
			X: j.length(o.x), Y: j.length(o.y + k.trim), Width: j.length(o.w), Length: j.length(o.h),
			LeftPhase: j.length(floorMod(k.phase+o.x, j.pitch)),
		})
	}
	return s, nil
}

// why says why a piece is on no sheet, with the size that is missing.
func (j *job) why(q *piece) (why Reason, needs fraction.Length) {
	var wide, tall, atPhase, both, fits bool
	var ahead int64 = -1 // least width from the left edge of sheets that are long enough
	for i := range j.kinds {
		k := &j.kinds[i]
		phased := j.next(k.phase, 0, q) + q.w
		wide = wide || q.w <= k.w
		tall = tall || q.h <= k.h
		atPhase = atPhase || phased <= k.w
		both = both || q.w <= k.w && q.h <= k.h
		fits = fits || j.fits(k, q)
		if q.h <= k.h && (ahead < 0 || phased < ahead) {
			ahead = phased
		}
	}
	switch {
	case len(j.kinds) == 0:
		return NoStock, needs
	case fits:
		return UsedUp, needs
	case !wide:
		return TooWide, j.length(q.w)
	case !tall:
		return TooLong, j.length(q.h)
	case both || !atPhase:
		return TooWideAtPhase, j.length(ahead)
	}
	return TooLongForWidth, j.length(q.h)
}

// settle marks a result that meets its bound as proved best. The order of objectives is that of
// Bound.Proved, so all their terms must meet theirs.
func (j *job) settle(r *Result, p *plan) {
	b, m := &r.Bound, j.objective(p)
	b.Proved = b.Proved || m.left == len(j.pieces)-len(j.possible()) && m.sheets == b.Sheets &&
		r.Cost.Compare(b.Cost) == 0 && m.bought <= b.Bought
	if b.Proved {
		r.Status = Proved
	}
}
