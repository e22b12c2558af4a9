package nest

import (
	"fmt"
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/fault"
)

// Verify replays a nest from its cuts and judges it against the problem, on exact lengths and
// without the code that made it. Each fault is a *fault.Fault, with [ErrResult] as the cause:
//
//   - a cut that is not on a rectangle lying on the bench at that step, or that takes nothing off it,
//     or an end that is not squared up first;
//   - a part that does not stand free as one rectangle when all cuts are made, or does not show the
//     pattern it needs, or overlaps another;
//   - a sheet that is not in stock, a part placed twice, or neither placed nor in Unplaced, a cost,
//     an offcut or a bound that is not so.
//
// Whether the nest is the best one is not judged. The cost grows with the square of the parts on a
// sheet. Lengths that cannot be calculated with give a *fraction.OverflowError.
func Verify(p Problem, r Result) (err error) {
	defer fraction.Catch(&err)
	if err := p.Validate(); err != nil {
		return err
	}
	v := verifier{List: fault.List{Cause: ErrResult}, p: &p, parts: map[int]*Part{}, found: map[int]string{}}
	for i := range p.Parts {
		v.parts[p.Parts[i].Number] = &p.Parts[i]
	}
	used := make([]int, len(p.Stock))
	var cost fraction.Ratio
	for i := range r.Sheets {
		s := &r.Sheets[i]
		if s.Stock < 0 || s.Stock >= len(p.Stock) {
			v.Add(s.Stock, "the index of a stock", "Sheets", i, "Stock")
			continue
		}
		used[s.Stock]++
		cost = cost.Add(p.Stock[s.Stock].price())
		v.sheet(i, &p.Stock[s.Stock], s)
	}
	for i, u := range r.Unplaced {
		v.once(u.Part, "Unplaced", i, "Part")
	}
	for i, part := range p.Parts {
		if v.found[part.Number] == "" {
			v.Add(part.Number, "a part that is placed or unplaced", "Parts", i)
		}
	}
	for i, s := range p.Stock {
		if s.Count != nil && used[i] > *s.Count {
			v.Add(used[i], fmt.Sprintf("at most %d sheets of Stock[%d]", *s.Count, i), "Sheets")
		}
	}
	if cost.Compare(r.Cost) != 0 {
		v.Add(r.Cost, cost.String()+", the cost of the sheets", "Cost")
	}
	if len(r.Unplaced) == 0 && (r.Bound.Sheets > len(r.Sheets) || r.Bound.Cost.Compare(cost) > 0) {
		v.Add(fmt.Sprint(r.Bound.Sheets, " for ", r.Bound.Cost), "no more than the nest takes", "Bound")
	}
	return v.Err()
}

type verifier struct {
	fault.List
	p     *Problem
	parts map[int]*Part
	found map[int]string // where each part number was met
}

// area is a rectangle lying free, in sheet coordinates.
type area struct{ left, bottom, width, height fraction.Length }

func (a area) right() fraction.Length { return a.left.Add(a.width) }
func (a area) top() fraction.Length   { return a.bottom.Add(a.height) }

func (a area) String() string {
	return fmt.Sprintf("%v,%v %v x %v", a.left, a.bottom, a.width, a.height)
}

// once notes that a part was met, and returns nil if it was met before or is unknown.
func (v *verifier) once(number int, path ...any) *Part {
	part := v.parts[number]
	switch {
	case part == nil:
		v.Add(number, "the number of a part", path...)
	case v.found[number] != "":
		v.Add(number, "a part that was not met at "+v.found[number], path...)
		return nil
	}
	v.found[number] = fault.Of(path...).String()
	return part
}

// sheet replays one sheet.
func (v *verifier) sheet(n int, stock *Stock, s *Sheet) {
	if len(s.Placements) == 0 {
		v.Add(nil, "a part that is cut from the sheet", "Sheets", n, "Placements")
	}
	free := v.replay(n, stock, s.Cuts)
	var placed []area
	for i, pl := range s.Placements {
		path := []any{"Sheets", n, "Placements", i}
		part := v.once(pl.Part, append(path, "Part")...)
		if part == nil {
			continue
		}
		a := area{pl.X, pl.Y, part.Width, part.Height}
		if trim := stock.trim(v.p.Saw); a.left.Sign() < 0 || stock.Width.Less(a.right()) {
			v.Add(a.left, "a part within the edges of the sheet", append(path, "X")...)
		} else if a.bottom.Less(trim) || stock.Length.Sub(trim).Less(a.top()) {
			v.Add(a.bottom, "a part within the squared ends of the sheet", append(path, "Y")...)
		}
		v.phase(path, stock, part, pl)
		if k := slices.IndexFunc(placed, a.overlaps); k >= 0 {
			v.Add(a, "no overlap with "+placed[k].String(), path...)
		}
		placed = append(placed, a)
		if !free.take(a) {
			v.Add(a, "a rectangle that stands free when all cuts are made", path...)
		}
	}
	for i, o := range s.Offcuts {
		path := []any{"Sheets", n, "Offcuts", i}
		if a := (area{o.X, o.Y, o.Width, o.Length}); !free.take(a) {
			v.Add(a, "a rectangle that is left over when all cuts are made", path...)
		}
		if pitch := v.p.Pattern.Pitch; pitch.Sign() > 0 && o.LeftPhase != stock.LeftPhase.Add(o.X).Mod(pitch) {
			v.Add(o.LeftPhase, "the phase at its left edge", append(path, "LeftPhase")...)
		}
	}
}

// phase checks that the sheet shows the pattern the part needs.
func (v *verifier) phase(path []any, stock *Stock, part *Part, pl Placement) {
	pattern := v.p.Pattern
	if pattern.Pitch.Sign() == 0 {
		return
	}
	at := stock.LeftPhase.Add(pl.X)
	if pl.Turned {
		if !pattern.Mirrored {
			v.Add(true, "false, as the pattern is not its own mirror image", append(path, "Turned")...)
		}
		at = pattern.Axis.Mul(2).Sub(at.Add(part.Width))
	}
	if at = at.Mod(pattern.Pitch); at != part.LeftPhase.Mod(pattern.Pitch) {
		v.Add(pl.X, fmt.Sprintf("a place that shows phase %v, not %v", part.LeftPhase, at), append(path, "X")...)
	}
}

// replay makes the cuts and returns what lies on the bench at the end.
func (v *verifier) replay(n int, stock *Stock, cuts []Cut) bench {
	kerf, trim := v.p.Saw.Kerf, stock.trim(v.p.Saw)
	b := bench{{width: stock.Width, height: stock.Length}: 1}
	if trim.Sign() > 0 {
		lower := Cut{Rect: [4]fraction.Length{2: stock.Width, 3: stock.Length}, At: trim.Sub(kerf)}
		upper := Cut{Rect: [4]fraction.Length{1: trim, 2: stock.Width, 3: stock.Length.Sub(trim)}, At: stock.Usable(v.p.Saw)}
		for i, want := range []Cut{lower, upper} {
			if want.Step = i + 1; i >= len(cuts) || cuts[i] != want {
				v.Add(nil, "a cut that squares up an end of the sheet", "Sheets", n, "Cuts", i)
			}
		}
	}
	for i, c := range cuts {
		path := []any{"Sheets", n, "Cuts", i}
		if c.Step != i+1 {
			v.Add(c.Step, fmt.Sprint(i+1), append(path, "Step")...)
		}
		on := area{c.Rect[0], c.Rect[1], c.Rect[2], c.Rect[3]}
		if b[on] == 0 {
			v.Add(on, "a rectangle on the bench", append(path, "Rect")...)
			continue
		}
		near, far, ok := on.cut(c.Kind, c.At, kerf)
		if !ok {
			v.Add(c.At, "a place where the cut takes something off", append(path, "At")...)
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

// cut divides a rectangle; ok is false if the blade does not touch it or takes nothing off.
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
	return a.left.Less(b.right()) && b.left.Less(a.right()) && a.bottom.Less(b.top()) && b.bottom.Less(a.top())
}
