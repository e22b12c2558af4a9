package choice

import (
	"slices"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
	"example.com/groovewright/wall"
)

// Sides are two upright edges of a panel.
type Sides struct{ Left, Right bool }

// OwnEdges says of each panel, by its number, which of its edges are a sheet's own: those of all its
// pieces that reach there.
func (c *Choice) OwnEdges(room Problem) map[int]Sides {
	own := map[int]Sides{}
	if c == nil {
		return own
	}
	panels := map[int]wall.Panel{}
	for _, run := range c.Layout.Runs {
		for _, p := range run.Panels {
			panels[p.Number], own[p.Number] = p, Sides{true, true}
		}
	}
	for _, s := range c.Nest.Sheets {
		for _, p := range s.Placements {
			piece := &c.Layout.Pieces[p.Part-1]
			cut, panel := sidesOf(room, c, s.Stock, p), panels[piece.Panel]
			if p.Turned {
				cut = Sides{cut.Right, cut.Left}
			}
			_, high := piece.Shape.Bounds()
			all := own[piece.Panel]
			all.Left = all.Left && (piece.At.X != panel.Left || cut.Left)
			all.Right = all.Right && (piece.At.X.Add(high.X) != panel.Right || cut.Right)
			own[piece.Panel] = all
		}
	}
	return own
}

// sidesOf says which sides of a placement lie on the sides of its sheet.
func sidesOf(room Problem, c *Choice, stock int, p nest.Placement) Sides {
	part := fraction.Must(c.Layout.Pieces[p.Part-1].Part())
	return Sides{p.X.IsZero(), p.X.Add(part.Width) == room.Stock[stock].Width}
}

// tieBreak decides between choices of equal need and blemish, the first number that differs, less is
// better: pieces; edges at seams that are no sheet's own; sides of pieces that are ripped.
func (c *Choice) tieBreak(room Problem) [3]int {
	t := [3]int{len(c.Layout.Pieces)}
	own := c.OwnEdges(room)
	for i, run := range c.Layout.Runs {
		for left, right := range room.Neighbors(i, run.Panels) {
			if !own[left.Number].Right {
				t[1]++
			}
			if !own[right.Number].Left {
				t[1]++
			}
		}
	}
	for _, s := range c.Nest.Sheets {
		for _, p := range s.Placements {
			sides := sidesOf(room, c, s.Stock, p)
			if !sides.Left {
				t[2]++
			}
			if !sides.Right {
				t[2]++
			}
		}
	}
	return t
}

// mostTies is how many layouts are nested of which bounds say that they need no less than a choice
// that looks as good: only for the edges that their panels have at seams.
const mostTies = 4

// lookAtTie nests a layout that looks as good as choice i and needs no less, and puts it in its place
// if ties are broken so and no proof is lost.
func (e *explorer) lookAtTie(layout wall.Layout, problem nest.Problem, i int) error {
	if e.tied++; e.tied > mostTies {
		return nil
	}
	r, err := nest.Search(e.ctx, problem, nest.Budget{Nodes: e.budget.Nodes / draftShare, Draft: true, Memory: &e.memory})
	if err != nil {
		return err
	}
	e.prefer(i, e.choice(layout, r))
	return nil
}

// prefer puts a choice that looks as good as choice i and needs as much in its place if ties are broken
// so and no proof is lost.
func (e *explorer) prefer(i int, c Choice) {
	before, a, b := &e.found[i], c.tieBreak(e.room), e.found[i].tieBreak(e.room)
	if c.Layout.Total == before.Layout.Total && c.compare(before) == 0 && slices.Compare(a[:], b[:]) < 0 &&
		(c.Nest.Bound.Proved || !before.Nest.Bound.Proved) {
		*before = c
	}
}
