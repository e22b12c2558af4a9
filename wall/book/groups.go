package book

import (
	"cmp"
	"fmt"
	"slices"
	"sort"
	"strconv"
	"strings"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall/plan"
)

// group is a row of the cut list: pieces of one run that are sawn alike, or one piece.
type group struct {
	plan.Piece
	Labels, Sheets string
	labels         []string
	sheets         []string
}

// single reports whether it is one piece.
func (g group) single() bool { return len(g.labels) == 1 }

// alike groups the pieces of a plan that are plain rectangles of one size on one run.
func alike(p plan.Plan) (rows []*group) {
	for _, piece := range p.Pieces {
		sheet := "–"
		if n := p.SheetOf(piece.Number); n > 0 {
			sheet = strconv.Itoa(n)
		}
		at := slices.IndexFunc(rows, func(g *group) bool {
			plain := g.Plain() && piece.Plain() && !g.Closing && !piece.Closing && len(g.Weak)+len(piece.Weak) == 0
			return plain && g.Run == piece.Run && g.Width == piece.Width && g.Height == piece.Height && mitered(p, g.Piece) == mitered(p, piece)
		})
		if at < 0 {
			at, rows = len(rows), append(rows, &group{Piece: piece})
		}
		g := rows[at]
		g.labels = append(g.labels, label(p, piece.Number))
		if !slices.Contains(g.sheets, sheet) {
			g.sheets = append(g.sheets, sheet)
		}
	}
	for _, g := range rows {
		g.Labels, g.Sheets = ranges(g.labels), ranges(g.sheets)
		if n := len(g.labels); n > 1 {
			g.Labels += fmt.Sprintf(" (%d alike)", n)
		}
	}
	return rows
}

// ranges writes a list of numbers with those that follow each other as one: 3 to 17, 20.
func ranges(all []string) string {
	var parts []string
	for i := 0; i < len(all); {
		end := i
		for first, err := strconv.Atoi(all[i]); err == nil && end+1 < len(all) && all[end+1] == strconv.Itoa(first+end+1-i); {
			end++
		}
		switch end - i {
		case 0:
			parts = append(parts, all[i])
		case 1:
			parts = append(parts, all[i], all[end])
		default:
			parts = append(parts, all[i]+" to "+all[end])
		}
		i = end + 1
	}
	return strings.Join(parts, ", ")
}

// crosscut reports whether a board is only sawn across, and nothing of it is planed: a row of a table says
// all that a drawing of it would.
func crosscut(p plan.Plan, s plan.Sheet) bool {
	return p.Profile.Boards && len(s.Placements) > 0 && len(s.Cuts) > 0 &&
		!slices.ContainsFunc(s.Cuts, func(c plan.Cut) bool { return c.Kind != nest.Crosscut || c.Plane })
}

// odd reports whether a piece has a leaf of its own: more is sawn on it than the rectangle that comes from
// its sheet, or it is taken with care.
func odd(p plan.Plan, piece plan.Piece) bool {
	return (!piece.Plain() || len(piece.Weak) > 0 || piece.Closing || mitered(p, piece) != "") && !slant(p, piece)
}

// slant reports whether a piece is a board with a slanted end and nothing else, which a row of a table says
// all of.
func slant(p plan.Plan, piece plan.Piece) bool {
	return p.Profile.Boards && !piece.Plain() && len(piece.Weak)+len(piece.Holes) == 0 && len(piece.Outline) == 4 && !piece.Closing && mitered(p, piece) == ""
}

// slanted lists the boards with a slanted end.
func slanted(p plan.Plan) (boards []plan.Piece) {
	for _, piece := range p.Pieces {
		if slant(p, piece) {
			boards = append(boards, piece)
		}
	}
	return boards
}

// board is a row of boards of one kind that are only sawn across, into the same lengths.
type board struct {
	Labels string // of the boards
	Stock  string
	Off    fraction.Length // taken off their lower ends first
	Parts  []struct {
		Labels string // of the pieces
		Height fraction.Length
	} // from the lower end up
	labels []string
	pieces [][]string
}

// lengths lists the boards that are only sawn across.
func lengths(p plan.Plan) (rows []*board) {
	for _, s := range p.Sheets {
		if !crosscut(p, s) {
			continue
		}
		placed := slices.Clone(s.Placements)
		sort.SliceStable(placed, func(i, j int) bool { return placed[i].Y.Less(placed[j].Y) })
		one := &board{Stock: s.Stock, pieces: make([][]string, len(placed))}
		if first := s.Cuts[0]; first.Trim == plan.TrimNear {
			one.Off = first.Off
		}
		for _, pl := range placed {
			piece, _ := p.Piece(pl.Part)
			one.Parts = append(one.Parts, struct {
				Labels string
				Height fraction.Length
			}{Height: piece.Height})
		}
		if i := slices.IndexFunc(rows, func(b *board) bool {
			return b.Stock == one.Stock && b.Off == one.Off && slices.Equal(b.Parts, one.Parts)
		}); i >= 0 {
			one = rows[i]
		} else {
			rows = append(rows, one)
		}
		one.labels = append(one.labels, strconv.Itoa(s.Number))
		for i, pl := range placed {
			one.pieces[i] = append(one.pieces[i], label(p, pl.Part))
		}
	}
	for _, b := range rows {
		b.Labels = ranges(b.labels)
		for i, labels := range b.pieces {
			b.Parts[i].Labels = ranges(labels)
		}
	}
	return rows
}

// fitted lists the labels of a run's pieces in their order of fitting.
func fitted(p plan.Plan, r plan.Run) string {
	var all []string
	for _, piece := range p.Pieces {
		if piece.Run == r.Name {
			all = append(all, label(p, piece.Number))
		}
	}
	return ranges(all)
}

// span returns the lower left and the upper right corner of a hole that is a level rectangle, else
// nothing.
func span(ring []plan.Point) []plan.Point {
	if !plan.Level(ring) {
		return nil
	}
	lo, hi := cutout.Bounds(ring)
	return []plan.Point{lo, hi}
}

// strokes says in one line for each part of the waste of a piece what is drilled and sawn, by the
// numbers on its drawing and the letters of its corners. Level holes one after the other that are made alike share a line.
func strokes(p plan.Plan, piece plan.Piece, write func(fraction.Length) string) (lines []string) {
	m, n, alike, before := piece.Marks, 0, 0, "none"
	for _, c := range m.Order {
		var said []string
		if len(c.Drill) > 0 {
			said = append(said, fmt.Sprintf("drill %d", len(c.Drill)))
		}
		if len(c.Tight) > 0 {
			said = append(said, count(len(c.Tight), "corner")+" with no room for a starter hole: use a smaller bit or cut in from both sides")
		}
		if strokes := plan.Strokes(c); len(strokes) == 1 && strokes[0].Sides() {
			how := strings.Join(append(said, ""), ", ")
			if n, alike = n+1, alike+1; how != before {
				alike, before, lines = 1, how, append(lines, "")
			}
			name, saw := opening(p, piece, c.Opening), strconv.Itoa(n)
			if alike > 1 {
				name, saw = fmt.Sprintf("%d holes alike", alike), fmt.Sprintf("%d to %d", n-alike+1, n)
			}
			lines[len(lines)-1] = name + ": " + how + "saw " + saw + ", long sides first"
			continue
		}
		before = "none"
		edge := c.Kind == cutout.EdgeCut && c.Opening == "" && len(said) == 0 && len(c.Saw) > 0 && p.Planed(piece, c.Saw[0])
		for rest := c.Saw; len(rest) > 0; {
			planed, alike, ways := p.Planed(piece, rest[0]), 0, []string(nil)
			for ; alike < len(rest) && p.Planed(piece, rest[alike]) == planed; alike++ {
				if name := wayName(p, m, rest[alike]); name != "" {
					ways = append(ways, name)
				}
			}
			number, along := strconv.Itoa(n+1)+either(alike > 1, fmt.Sprintf(" to %d", n+alike), ""), strings.Join(ways, ", ")
			if planed {
				stroke, most := "stroke"+either(alike > 1, "s ", " ")+number, "up to "+write(deepest(piece, rest[:alike]))+" off"
				said = append(said, either(edge, either(along == "", "", along+", ")+stroke+": plane "+most, "plane "+most+" with "+stroke+either(along == "", "", " ("+along+")")))
			} else {
				said = append(said, "saw "+number+either(along == "", "", " ("+along+")"))
			}
			n, rest = n+alike, rest[alike:]
		}
		name := either(c.Opening != "", opening(p, piece, c.Opening), waste(c.Waste))
		lines = append(lines, name+either(edge, " ", ": ")+strings.Join(said, ", "))
	}
	return lines
}

// opening names an opening of a piece, with its code where drawings have codes.
func opening(p plan.Plan, piece plan.Piece, name string) string {
	run, _ := p.Run(piece.Run)
	return strings.TrimSpace(run.Code(name) + " " + name)
}

// deepest is the most that planing along some lines takes off the rectangle of a piece: of the points of each what is
// farthest from the edge of it that all are near.
func deepest(piece plan.Piece, ways []plan.SawCut) (most fraction.Length) {
	for _, way := range ways {
		off := make([]fraction.Length, 4) // of the left, the right, the lower, the upper edge
		for _, at := range way.Points {
			for i, in := range []fraction.Length{at.X, piece.Width.Sub(at.X), at.Y, piece.Height.Sub(at.Y)} {
				off[i] = fraction.Max(off[i], in)
			}
		}
		most = fraction.Max(most, slices.MinFunc(off, fraction.Length.Compare))
	}
	return most
}

// mostLetters is the most corners along a line to saw that are all named.
const mostLetters = 6

// wayName names a line to saw by the letters of the corners along it, with an arc between those of its
// ends; nothing where it has none.
func wayName(p plan.Plan, m plan.Marks, way plan.SawCut) string {
	var names []string
	way = lettered(p, m, way)
	corners := slices.Concat(m.Named(p.Snap)...)
	for _, i := range way.Corners {
		if i < 0 || i >= len(corners) {
			return "" // no plan of this package
		}
		if corners[i].Name == "" && plan.ArcAt(m.Arcs, corners[i].Face) == nil {
			continue // of a level hole, or on a straight line
		}
		name := cmp.Or(corners[i].Name, "arc")
		if last := len(names) - 1; last < 0 || names[last] != name {
			names = append(names, name)
		}
	}
	if len(names) > mostLetters {
		names = []string{names[0], "…", names[len(names)-1]}
	}
	return strings.Join(names, "–")
}

// lettered is a line to saw with the next corners that have letters at its ends, where drawings leave out its own as they are nearly
// in line with those.
func lettered(p plan.Plan, m plan.Marks, way plan.SawCut) plan.SawCut {
	ring, own, last := m.Named(p.Snap)[0], way.Corners, len(way.Corners)-1
	if last < 1 || len(way.Points) != len(own) {
		return way
	}
	way.Corners, way.Points = slices.Clone(own), slices.Clone(way.Points)
	for _, end := range [][2]int{{0, 1}, {last, last - 1}} {
		at, from, on := own[end[0]], own[end[1]], 1
		if max(at, from) >= len(ring) || min(at, from) < 0 {
			continue
		}
		if (at-from+len(ring))%len(ring) > len(ring)/2 {
			on = len(ring) - 1
		}
		for range ring {
			if ring[at].Name != "" || plan.ArcAt(m.Arcs, ring[at].Face) != nil {
				break
			}
			at = (at + on) % len(ring)
		}
		if at != own[end[0]] {
			way.Corners[end[0]], way.Points[end[0]] = at, ring[at].Face
		}
	}
	return way
}

// starters says where the middles of the starter holes lie, if that is at all alike.
func (t *text) starters(m plan.Marks) string {
	inset, all := m.DrillInset()
	if !all {
		return ""
	}
	return "Starter holes of " + t.unbroken(m.Drill[0].Diameter) + ": middles " + t.unbroken(inset) + " from both edges of a corner."
}

// setting writes the value of a priority: a length in the unit of the tape, a weight as the mere number
// that it is beside other weights. What was set in inches is about as much on a metric tape.
func (t *text) setting(value fraction.Ratio, unit string) string {
	if unit == "in" && t.tape.Unit != fraction.Inch {
		return t.about(fraction.Inches(1).Scale(value))
	}
	if unit == "1 or 0" {
		return either(value.Sign() > 0, "yes", "no")
	}
	if strings.HasPrefix(unit, "per ") {
		return value.String()
	}
	switch unit {
	case "widths": // of which the words of the priority speak
		return value.String()
	case "pitches":
		unit = "repeats"
	}
	return strings.TrimSpace(value.String() + " " + unit)
}

// priced reports whether the list has a price at all.
func priced(p plan.Plan) bool { return p.Unpriced < len(p.List.Rows) }
