package nest

import (
	"fmt"

	"example.com/groovewright/fraction"
)

// Verify replays a nest from its cuts and judges it against the problem, on
// exact lengths and without the code that made it. It reports every fault:
//
//   - a cut that is not on a rectangle lying on the bench at that step, or that
//     takes nothing off it, or an end that is not squared up first;
//   - a part that does not stand free as one rectangle when all cuts are made, or
//     does not show the pattern it needs, or overlaps another;
//   - a sheet that is not in stock, a part placed twice, or neither placed nor
//     in Unplaced, a cost, an offcut or a bound that is not so.
//
// Whether the nest is the best one is not judged.
func Verify(p Problem, r Result) (err error) {
	defer fraction.Catch(&err)
	if err := p.Validate(); err != nil {
		return err
	}
	v := verifier{faults: faults{kind: ErrResult}, p: &p, parts: map[int]*Part{}, found: map[int]string{}}
	for i := range p.Parts {
		v.parts[p.Parts[i].Number] = &p.Parts[i]
	}
	used := make([]int, len(p.Stock))
	var cost fraction.Ratio
	for i := range r.Sheets {
		s := &r.Sheets[i]
		path := fmt.Sprintf("sheets[%d]", i)
		if s.Stock < 0 || s.Stock >= len(p.Stock) {
			v.add(path+".stock", fmt.Sprint(s.Stock), "is not in stock")
			continue
		}
		used[s.Stock]++
		cost = cost.Add(p.Stock[s.Stock].price())
		v.sheet(path, &p.Stock[s.Stock], s)
	}
	for i, u := range r.Unplaced {
		v.once(fmt.Sprintf("unplaced[%d].part", i), u.Part)
	}
	for i, part := range p.Parts {
		if v.found[part.Number] == "" {
			v.add(fmt.Sprintf("parts[%d]", i), fmt.Sprint(part.Number), "is neither placed nor unplaced")
		}
	}
	for i, s := range p.Stock {
		if s.limited() && used[i] > *s.Count {
			v.add("sheets", fmt.Sprint(used[i]), fmt.Sprintf("stock[%d] has only %d", i, *s.Count))
		}
	}
	if cost.Compare(r.Cost) != 0 {
		v.add("cost", r.Cost.String(), "the sheets cost "+cost.String())
	}
	if len(r.Unplaced) == 0 && (r.Bound.Sheets > len(r.Sheets) || r.Bound.Cost.Compare(cost) > 0) {
		v.add("bound", fmt.Sprint(r.Bound.Sheets, " for ", r.Bound.Cost), "is above what the nest takes")
	}
	return v.err()
}

type verifier struct {
	faults
	p     *Problem
	parts map[int]*Part
	found map[int]string // where each part number was met
}

// area is a rectangle lying free, in sheet coordinates.
type area struct{ left, bottom, width, height fraction.Length }

func (a area) String() string {
	return fmt.Sprintf("%v,%v %v x %v", a.left, a.bottom, a.width, a.height)
}

// once notes that a part was met, and that it was met before or is unknown.
func (v *verifier) once(path string, number int) *Part {
	part := v.parts[number]
	switch {
	case part == nil:
		v.add(path, fmt.Sprint(number), "no part has this number")
	case v.found[number] != "":
		v.add(path, fmt.Sprint(number), "was met already at "+v.found[number])
		return nil
	}
	v.found[number] = path
	return part
}

// sheet replays one sheet.
func (v *verifier) sheet(path string, stock *Stock, s *Sheet) {
	if len(s.Placements) == 0 {
		v.add(path+".placements", "", "nothing is cut from this sheet")
	}
	free := v.replay(path, stock, s.Cuts)
	var placed []area
	for i, pl := range s.Placements {
		path := fmt.Sprintf("%s.placements[%d]", path, i)
		part := v.once(path+".part", pl.Part)
		if part == nil {
			continue
		}
		a := area{pl.X, pl.Y, part.Width, part.Height}
		v.inside(path, stock, a)
		v.phase(path, stock, part, pl)
		for k, b := range placed {
			if a.overlaps(b) {
				v.add(path, a.String(), fmt.Sprintf("overlaps placements[%d]", k))
			}
		}
		placed = append(placed, a)
		if !free.take(a) {
			v.add(path, a.String(), "does not stand free when all cuts are made")
		}
	}
	for i, o := range s.Offcuts {
		path := fmt.Sprintf("%s.offcuts[%d]", path, i)
		a := area{o.X, o.Y, o.Width, o.Length}
		if !free.take(a) {
			v.add(path, a.String(), "is not left over when all cuts are made")
		}
		if pitch := v.p.Pattern.Pitch; pitch.Sign() > 0 && o.LeftPhase != stock.LeftPhase.Add(o.X).Mod(pitch) {
			v.add(path+".left_phase", o.LeftPhase.String(), "is not the phase at its left edge")
		}
	}
}

// inside checks that a part lies in the sheet between its squared ends.
func (v *verifier) inside(path string, stock *Stock, a area) {
	trim := stock.trim(v.p.Saw)
	if a.left.Sign() < 0 || stock.Width.Less(a.left.Add(a.width)) {
		v.add(path+".x", a.left.String(), "reaches past the sheet's edge")
	}
	if a.bottom.Less(trim) || stock.Length.Sub(trim).Less(a.bottom.Add(a.height)) {
		v.add(path+".y", a.bottom.String(), "reaches past the sheet's squared end")
	}
}

// phase checks that the sheet shows the pattern the part needs.
func (v *verifier) phase(path string, stock *Stock, part *Part, pl Placement) {
	pattern := v.p.Pattern
	if pattern.Pitch.Sign() == 0 {
		return
	}
	at := stock.LeftPhase.Add(pl.X)
	if pl.Turned {
		if !pattern.Mirrored {
			v.add(path+".turned", "true", "the pattern is not its own mirror image")
		}
		at = pattern.Axis.Mul(2).Sub(at.Add(part.Width))
	}
	if at = at.Mod(pattern.Pitch); at != part.LeftPhase.Mod(pattern.Pitch) {
		v.add(path+".x", pl.X.String(), fmt.Sprintf("shows phase %v where the part needs %v", at, part.LeftPhase))
	}
}

// replay makes the cuts and returns what lies on the bench at the end.
func (v *verifier) replay(path string, stock *Stock, cuts []Cut) bench {
	kerf, trim := v.p.Saw.Kerf, stock.trim(v.p.Saw)
	b := bench{{width: stock.Width, height: stock.Length}: 1}
	if trim.Sign() > 0 {
		lower := Cut{Rect: [4]fraction.Length{2: stock.Width, 3: stock.Length}, At: trim.Sub(kerf)}
		upper := Cut{Rect: [4]fraction.Length{1: trim, 2: stock.Width, 3: stock.Length.Sub(trim)}, At: stock.Usable(v.p.Saw)}
		for i, want := range []Cut{lower, upper} {
			want.Step = i + 1
			if i >= len(cuts) || cuts[i] != want {
				v.add(fmt.Sprintf("%s.cuts[%d]", path, i), "", "must square up an end of the sheet")
			}
		}
	}
	for i, c := range cuts {
		path := fmt.Sprintf("%s.cuts[%d]", path, i)
		on := area{c.Rect[0], c.Rect[1], c.Rect[2], c.Rect[3]}
		if c.Step != i+1 {
			v.add(path+".step", fmt.Sprint(c.Step), fmt.Sprintf("must be %d", i+1))
		}
		if b[on] == 0 {
			v.add(path+".rect", on.String(), "is not on the bench")
			continue
		}
		near, far, ok := on.cut(c.Kind, c.At, kerf)
		if !ok {
			v.add(path+".at", c.At.String(), "takes nothing off")
			continue
		}
		b[on]--
		b.put(near)
		b.put(far)
	}
	return b
}

// bench counts the rectangles that lie free while cuts are replayed.
type bench map[area]int

func (b bench) put(a area) {
	if a.width.Sign() > 0 && a.height.Sign() > 0 {
		b[a]++
	}
}

// take takes a rectangle off the bench, if it lies there.
func (b bench) take(a area) bool {
	if b[a] == 0 {
		return false
	}
	b[a]--
	return true
}

// cut divides a rectangle; ok is false if the blade does not touch it, or only
// parts it from nothing.
func (a area) cut(kind CutKind, at, kerf fraction.Length) (near, far area, ok bool) {
	near, far = a, a
	size := a.height
	switch kind {
	case Crosscut:
		near.height = at
		far.bottom, far.height = a.bottom.Add(at).Add(kerf), a.height.Sub(at).Sub(kerf)
	case Rip:
		size = a.width
		near.width = at
		far.left, far.width = a.left.Add(at).Add(kerf), a.width.Sub(at).Sub(kerf)
	default:
		return near, far, false
	}
	if kerf.Sign() == 0 {
		return near, far, at.Sign() > 0 && at.Less(size)
	}
	return near, far, kerf.Neg().Less(at) && at.Less(size)
}

// overlaps reports whether two rectangles share more than an edge.
func (a area) overlaps(b area) bool {
	return a.left.Less(b.left.Add(b.width)) && b.left.Less(a.left.Add(a.width)) &&
		a.bottom.Less(b.bottom.Add(b.height)) && b.bottom.Less(a.bottom.Add(a.height))
}
