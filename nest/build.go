package nest

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
)

// result turns a plan into a Result, with cuts and offcuts. Bound and Status are
// for the caller to fill in.
func (j *job) result(p plan) (Result, error) {
	var r Result
	for _, l := range p.sheets {
		s, err := j.sheet(l)
		if err != nil {
			return Result{}, fmt.Errorf("sheet %d: %w", len(r.Sheets)+1, err)
		}
		r.Sheets = append(r.Sheets, s)
		r.Cost = r.Cost.Add(j.p.Stock[l.kind].price())
	}
	left := slices.Clone(p.left)
	slices.Sort(left)
	for _, i := range left {
		r.Unplaced = append(r.Unplaced, Unplaced{j.p.Parts[i].Number, j.why(&j.pieces[i])})
	}
	return r, nil
}

// sheet saws a filled sheet and puts everything back in inches.
func (j *job) sheet(l layout) (Sheet, error) {
	k := &j.kinds[l.kind]
	s := Sheet{Stock: l.kind}
	strokes, offcuts, err := takeApart(j.kerf, rect{0, 0, k.w, k.h}, j.rects(l.spots))
	if err != nil {
		return s, err
	}
	if k.trim > 0 {
		strokes = append([]stroke{
			{rect: rect{0, -k.trim, k.w, k.h + 2*k.trim}, kind: Crosscut, at: k.trim - j.kerf},
			{rect: rect{0, 0, k.w, k.h + k.trim}, kind: Crosscut, at: k.h},
		}, strokes...)
	}
	for i, c := range strokes {
		s.Cuts = append(s.Cuts, Cut{
			Step: i + 1, Kind: c.kind, At: j.length(c.at),
			Rect: [4]fraction.Length{j.length(c.x), j.length(c.y + k.trim), j.length(c.w), j.length(c.h)},
		})
	}
	for _, at := range l.spots {
		q := &j.pieces[at.piece]
		s.Placements = append(s.Placements, Placement{
			Part: j.p.Parts[q.part].Number, X: j.length(at.x), Y: j.length(at.y + k.trim),
			Turned: j.pitch > 0 && floorMod(k.phase+at.x, j.pitch) != q.at[0],
		})
	}
	for _, o := range offcuts {
		off := Offcut{X: j.length(o.x), Y: j.length(o.y + k.trim), Width: j.length(o.w), Length: j.length(o.h)}
		if j.pitch > 0 {
			off.LeftPhase = j.length(floorMod(k.phase+o.x, j.pitch))
		}
		s.Offcuts = append(s.Offcuts, off)
	}
	return s, nil
}

// why says why a piece is on no sheet.
func (j *job) why(q *piece) string {
	var wide, tall, atPhase, both, fits bool
	var need int64 = -1
	for i := range j.p.Stock {
		k := &j.kinds[i]
		phased := j.next(k.phase, 0, q) + q.w
		wide = wide || q.w <= k.w
		tall = tall || q.h <= k.h
		atPhase = atPhase || phased <= k.w
		both = both || q.w <= k.w && q.h <= k.h
		fits = fits || j.fits(k, q)
		if q.h <= k.h && (need < 0 || phased < need) {
			need = phased
		}
	}
	switch {
	case len(j.p.Stock) == 0:
		return "there is no stock"
	case fits:
		return "the stock is used up"
	case !wide:
		return fmt.Sprintf("no stock is %s in wide", j.length(q.w))
	case !tall:
		return fmt.Sprintf("no stock is %s in long when squared up", j.length(q.h))
	case both || !atPhase:
		return fmt.Sprintf("no stock is wide enough at its phase: it takes %s in from the left edge", j.length(need))
	}
	return fmt.Sprintf("no stock that is %s in wide is %s in long when squared up", j.length(q.w), j.length(q.h))
}

// settle marks a result that meets its bound as proved best. The order of merit
// is that of Bound.Proved, so all its terms must meet theirs; sheets are bought
// where they are not limited.
func (j *job) settle(r *Result, p *plan) {
	b := &r.Bound
	m := j.merit(p)
	b.Proved = b.Proved || m.left == len(j.pieces)-len(j.possible()) && m.sheets == b.Sheets &&
		r.Cost.Compare(b.Cost) == 0 && m.bought <= j.leastBought(b.Sheets)
	if b.Proved {
		r.Status = Proved
	}
}

// leastBought returns how many sheets must be bought at least when so many are
// needed in all.
func (j *job) leastBought(sheets int) int {
	for _, k := range j.kinds {
		if k.limited && k.usable {
			sheets -= k.count
		}
	}
	return max(0, sheets)
}

// money turns coins back into money.
func (j *job) money(coins int64) fraction.Ratio { return fraction.NewRatio(coins, j.coin) }

// coins turns money that is a whole number of coins into coins.
func (j *job) coins(money fraction.Ratio) int64 { return money.Num() * (j.coin / money.Den()) }
