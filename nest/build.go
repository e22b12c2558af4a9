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
	inserts := map[int][]insert{}
	used := make([]int, len(j.kinds))
	for _, l := range p.sheets {
		if k := &j.kinds[l.kind]; len(k.notches) > 0 {
			h := k.notches[used[l.kind]]
			inserts[h.host] = append(inserts[h.host], insert{h, l})
			used[l.kind]++
		}
	}
	for _, l := range p.sheets {
		if len(j.kinds[l.kind].notches) > 0 {
			continue
		}
		b := builder{job: j, sheet: Sheet{Stock: l.kind}, inserts: inserts}
		if err := b.build(l); err != nil {
			return Result{}, fmt.Errorf("sheet %d: %w", len(r.Sheets)+1, err)
		}
		r.Sheets = append(r.Sheets, b.sheet)
		r.Cost = r.Cost.Add(j.p.Stock[l.kind].price())
	}
	missing := make([]bool, len(j.pieces))
	for _, i := range p.left {
		missing[i] = true
	}
	for i, gone := range missing {
		if gone {
			r.Unplaced = append(r.Unplaced, Unplaced{j.p.Parts[i].Number, j.why(&j.pieces[i])})
		}
	}
	return r, nil
}

// insert is what is cut from a notch of a part.
type insert struct {
	hollow
	layout
}

// builder makes one sheet of a Result.
type builder struct {
	job     *job
	sheet   Sheet
	inserts map[int][]insert // by part with notches
	strokes []stroke
	offcuts []rect
}

// frame is a rectangle on the sheet, and how what lies in it is turned.
type frame struct {
	rect
	turned bool
}

// on returns where a rectangle of the frame lies on the sheet.
func (f frame) on(r rect) rect {
	if f.turned {
		return rect{f.x + f.w - r.x - r.w, f.y + f.h - r.y - r.h, r.w, r.h}
	}
	return rect{f.x + r.x, f.y + r.y, r.w, r.h}
}

// build saws a sheet and puts everything back in inches.
func (b *builder) build(l layout) error {
	j, k := b.job, &b.job.kinds[l.kind]
	if k.trim > 0 {
		b.strokes = append(b.strokes,
			stroke{rect: rect{0, -k.trim, k.w, k.h + 2*k.trim}, kind: Crosscut, at: k.trim - j.kerf},
			stroke{rect: rect{0, 0, k.w, k.h + k.trim}, kind: Crosscut, at: k.h})
	}
	if err := b.fill(l, frame{rect{0, 0, k.w, k.h}, false}); err != nil {
		return err
	}
	for i, s := range b.strokes {
		b.sheet.Cuts = append(b.sheet.Cuts, Cut{
			Step: i + 1, Kind: s.kind, At: j.length(s.at), From: j.length(s.from), To: j.length(s.to),
			Left: j.length(s.x), Bottom: j.length(s.y + k.trim), Width: j.length(s.w), Height: j.length(s.h),
		})
	}
	for i := range b.sheet.Placements {
		b.sheet.Placements[i].Y = b.sheet.Placements[i].Y.Add(j.length(k.trim))
	}
	slices.SortStableFunc(b.offcuts, largestFirst)
	for _, o := range b.offcuts {
		off := Offcut{X: j.length(o.x), Y: j.length(o.y + k.trim), Width: j.length(o.w), Length: j.length(o.h)}
		if j.pitch > 0 {
			off.LeftPhase = j.length(floorMod(k.phase+o.x, j.pitch))
		}
		b.sheet.Offcuts = append(b.sheet.Offcuts, off)
	}
	return nil
}

// fill cuts a layout from a rectangle that lies free: a sheet or a notch. What
// lies in notches of its parts follows when all of them are free.
func (b *builder) fill(l layout, in frame) error {
	j, k := b.job, &b.job.kinds[l.kind]
	parts := j.rects(l.spots)
	strokes, offcuts, err := takeApart(j.kerf, rect{0, 0, k.w, k.h}, parts)
	if err != nil {
		return err
	}
	for _, s := range strokes {
		if in.turned && s.kind == Crosscut {
			s.at = s.h - s.at - j.kerf
		} else if in.turned {
			s.at = s.w - s.at - j.kerf
		}
		s.rect = in.on(s.rect)
		b.strokes = append(b.strokes, s)
	}
	for _, o := range offcuts {
		b.offcuts = append(b.offcuts, in.on(o))
	}
	type held struct {
		insert
		at     rect
		turned bool
	}
	var later []held
	for i, s := range l.spots {
		q := &j.pieces[s.piece]
		turned := j.pitch > 0 && floorMod(k.phase+s.x, j.pitch) != q.at[0]
		at := in.on(parts[i])
		b.sheet.Placements = append(b.sheet.Placements, Placement{
			Part: j.p.Parts[q.part].Number, X: j.length(at.x), Y: j.length(at.y), Turned: turned != in.turned,
		})
		for _, one := range b.inserts[s.piece] {
			later = append(later, held{one, at, turned != in.turned})
		}
	}
	for _, h := range later {
		if err := b.notch(h.hollow, h.layout, h.at, h.turned); err != nil {
			return err
		}
	}
	return nil
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
		if k.limited && k.usable && len(k.notches) == 0 {
			sheets -= k.count
		}
	}
	return max(0, sheets)
}

// money turns coins back into money.
func (j *job) money(coins int64) fraction.Ratio { return fraction.NewRatio(coins, j.coin) }

// coins turns money that is a whole number of coins into coins.
func (j *job) coins(money fraction.Ratio) int64 { return money.Num() * (j.coin / money.Den()) }
