package plan

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/enum"
	"example.com/groovewright/nest"
)

// Cut is one cut of a sheet, what it is made on and what it leaves. Its near side is the one that
// At is measured on: below the blade of a crosscut, left of the blade of a rip. Frees are the
// numbers of the pieces that stand free near and beyond, 0 for none.
type Cut struct {
	nest.Cut
	From  Source          `json:"from,omitzero"`  // of the part on the bench; zero: the whole sheet
	Alike bool            `json:"alike,omitzero"` // another part of the sheet has its size
	Trim  Trim            `json:"trim,omitzero"`
	Off   fraction.Length `json:"off,omitzero"`   // what Trim takes off; near with the kerf
	Plane bool            `json:"plane,omitzero"` // Off is less than is sawn off: it is planed
	Frees [2]int          `json:"frees,omitzero"`
	Waits Wait            `json:"waits,omitzero"`
}

// Source is the cut that a part comes from, and its side.
type Source struct {
	Step   int  `json:"step"`            // of the cut on the same sheet; 0: the whole sheet
	Beyond bool `json:"beyond,omitzero"` // it lay on the far side of the blade
}

// Trim says on which side of a cut something only comes off.
type Trim uint8

// The sides of a cut.
const (
	NoTrim     Trim = iota // a piece comes from the near side, and something is left beyond
	TrimNear               // no piece lies on the near side
	TrimBeyond             // the blade leaves nothing on the far side
)

var trims = enum.Of[Trim]("none", "near", "beyond")

// String returns the word of the side.
func (t Trim) String() string { return trims.String(t) }

// MarshalText returns the word of the side.
func (t Trim) MarshalText() ([]byte, error) { return trims.Marshal(t) }

// UnmarshalText reads the word of a side.
func (t *Trim) UnmarshalText(text []byte) error { return trims.Unmarshal(text, t) }

// Leaves returns what is left across the cut where something is taken off the near side. It fails where
// that does not fit a Length.
func (c Cut) Leaves() (rest fraction.Length, err error) {
	defer fraction.Catch(&err)
	return c.across().Sub(c.Off), nil
}

// across returns the size of the part that the cut divides.
func (c Cut) across() fraction.Length {
	if c.Kind == nest.Rip {
		return c.Rect[2]
	}
	return c.Rect[3]
}

// Measure returns the distance to measure to a cut, to the near side of the blade from the near edge; or
// from the far edge to its far side, where that is on a mark of the tape, the other not even half way
// between two, and no piece comes free on the near side. It fails where that does not fit a Length.
func (c Cut) Measure(kerf, mark fraction.Length) (at fraction.Length, far bool, err error) {
	defer fraction.Catch(&err)
	on := func(x, mark fraction.Length) bool {
		_, off := x.Round(mark, fraction.Nearest)
		return off.IsZero()
	}
	if rest := c.across().Sub(c.At).Sub(kerf); c.Frees[0] == 0 && !on(c.At, mark.Div(2)) && rest.Sign() > 0 && on(rest, mark) {
		return rest, true, nil
	}
	return c.At, false, nil
}

// Line returns the lower or the left end of a cut and the other, in the middle of its kerf. It fails where
// that does not fit a Length.
func (c Cut) Line(kerf fraction.Length) (ends [2]Point, err error) {
	defer fraction.Catch(&err)
	middle, x, y := c.At.Add(kerf.Div(2)), c.Rect[0], c.Rect[1]
	if c.Kind == nest.Rip {
		x = x.Add(middle)
		return [2]Point{{X: x, Y: y}, {X: x, Y: y.Add(c.Rect[3])}}, nil
	}
	y = y.Add(middle)
	return [2]Point{{X: x, Y: y}, {X: x.Add(c.Rect[2]), Y: y}}, nil
}

// Placed returns the outline and the holes of a placed piece in the coordinates of its sheet. It fails
// where a place does not fit a Length.
func (p Plan) Placed(at nest.Placement) (rings [][]Point, err error) {
	defer fraction.Catch(&err)
	piece, _ := p.Piece(at.Part)
	width, left, err := piece.Blank()
	fraction.Must(width, err)
	for _, ring := range piece.Rings() {
		placed := make([]Point, len(ring))
		for i, q := range ring {
			if q.X = q.X.Add(left); at.Turned {
				q = Point{X: width.Sub(q.X), Y: piece.Height.Sub(q.Y)}
			}
			placed[i] = Point{X: at.X.Add(q.X), Y: at.Y.Add(q.Y)}
		}
		rings = append(rings, placed)
	}
	return rings, nil
}

// Leftovers are the offcuts of a sheet that are listed and numbered, as large as a tape shows at least: one narrower than an inch,
// or 25 mm, is no use on a wall.
func (p Plan) Leftovers(s Sheet) []nest.Offcut {
	least := fraction.Inches(1)
	if p.Units != fraction.Inch {
		least = fraction.Millimetres(25, 1)
	}
	all := slices.DeleteFunc(slices.Clone(s.Offcuts), func(o nest.Offcut) bool { return o.Width.Less(least) || o.Length.Less(least) })
	for i := range all {
		all[i].Width, _ = all[i].Width.Round(p.Tape, fraction.Down)
		all[i].Length, _ = all[i].Length.Round(p.Tape, fraction.Down)
	}
	return all
}

// OffcutNumber is the number of an offcut on its sheet, from 1; 0 where there is none at its place.
func (s Sheet) OffcutNumber(o nest.Offcut) int {
	return slices.IndexFunc(s.Offcuts, func(c nest.Offcut) bool { return c.X == o.X && c.Y == o.Y }) + 1
}

// Rings returns the outline of a piece and its holes.
func (p Piece) Rings() [][]Point {
	all := [][]Point{p.Outline}
	for _, hole := range p.Holes {
		all = append(all, hole.Outline)
	}
	return all
}

// rect is a rectangle of a sheet as in [nest.Cut]: left, bottom, width, height.
type rect = [4]fraction.Length

// cutList returns the cuts of a sheet from which pieces with these rectangles are sawn.
func cutList(cuts []nest.Cut, pieces map[int]rect, saw Saw) []Cut {
	out := []Cut{}
	var parts []rect // near and beyond each cut
	for _, c := range cuts {
		near, beyond := sides(c, saw.Kerf)
		cut := Cut{Cut: c}
		if i := slices.Index(parts, c.Rect); i >= 0 {
			cut.From = Source{cuts[i/2].Step, i%2 == 1}
		}
		used := false
		for number, piece := range pieces {
			used = used || within(piece, near)
			for side, part := range [2]rect{near, beyond} {
				if part == piece {
					cut.Frees[side] = number
				}
			}
		}
		switch rest := cut.across().Sub(c.At); {
		case !used:
			cut.Trim, cut.Off = TrimNear, c.At.Add(saw.Kerf)
		case rest.Compare(saw.Kerf) <= 0:
			cut.Trim, cut.Off = TrimBeyond, rest
		}
		cut.Plane = cut.Trim != NoTrim && cut.Off.Less(saw.LeastRip)
		parts = append(parts, near, beyond)
		out = append(out, cut)
	}
	for i := range out {
		out[i].Alike = slices.ContainsFunc(parts, func(part rect) bool {
			own := out[i].Rect
			return part != own && part[2] == own[2] && part[3] == own[3]
		})
	}
	return out
}

// sides returns what a cut leaves near its blade and beyond; one along whose edge the blade runs may be no part.
func sides(c nest.Cut, kerf fraction.Length) (near, beyond rect) {
	way := 1
	if c.Kind == nest.Rip {
		way = 0
	}
	past := c.At.Add(kerf)
	near, beyond = c.Rect, c.Rect
	near[way+2], beyond[way], beyond[way+2] = c.At, c.Rect[way].Add(past), c.Rect[way+2].Sub(past)
	return near, beyond
}

// within reports whether one rectangle lies within another.
func within(inner, outer rect) bool {
	for way := range 2 {
		if inner[way].Less(outer[way]) || outer[way].Add(outer[way+2]).Less(inner[way].Add(inner[way+2])) {
			return false
		}
	}
	return true
}
