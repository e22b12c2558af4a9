package nest

import (
	"context"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

// boardsOf draws a few pieces of boards as wide as a repeat of the pattern, and a generator for them.
func boardsOf(t *rapid.T) *generator {
	const wide = 12
	stock := Stock{Width: fraction.Inches(wide), Length: fraction.Inches(30), LeftPhase: fraction.Inches(rapid.Int64Range(0, wide-1).Draw(t, "phase"))}
	p := Problem{Stock: []Stock{stock}, Pattern: Pattern{Pitch: fraction.Inches(wide), Mirrored: rapid.Bool().Draw(t, "turns")}, Saw: Saw{Kerf: fraction.Inches(rapid.Int64Range(0, 1).Draw(t, "kerf"))}}
	for n := range rapid.IntRange(1, 7).Draw(t, "parts") {
		from := rapid.Int64Range(0, wide-1).Draw(t, "from")
		to := rapid.Int64Range(from+1, wide).Draw(t, "to")
		p.Parts = append(p.Parts, Part{Number: n, Width: fraction.Inches(to - from), Height: fraction.Inches(rapid.Int64Range(3, 30).Draw(t, "height")),
			LeftPhase: stock.LeftPhase.Add(fraction.Inches(from)).Mod(fraction.Inches(wide))})
	}
	j, err := prepare(&p)
	if err != nil {
		t.Fatal(err)
	}
	_, relax := j.lower(never)
	groups := j.groups(relax.pieces)
	weigh := newWeights(j, groups, relax)
	return newGenerator(context.Background(), j, relax, groups, weigh, newExact(context.Background(), j, groups, weigh, objective{left: -1}))
}

// The fullest board by heights is worth no less than the one that a search of all sets finds, and no more where it takes no piece
// twice; and the saw can make it.
func TestFullestBoard(t *testing.T) {
	same := 0
	rapid.Check(t, func(t *rapid.T) {
		c := boardsOf(t)
		if !c.boards {
			t.Fatal("these are boards")
		}
		value := rapid.SliceOfN(rapid.Int64Range(0, 20), len(c.groups), len(c.groups)).Draw(t, "value")
		most, filling := c.fullestBoard(c.kind, value, c.need, 0)
		_, want, sure := c.exact.fullest(value, c.kind, 0, 1_000_000)
		if !sure || most < want {
			t.Fatalf("%d, less than %d", most, want)
		}
		var worth int64
		counts, twice := make([]int, len(c.groups)), false
		for i, at := range filling {
			g := c.groupOf[at.piece]
			q := &c.groups[g].piece
			worth += value[g]
			counts[g]++
			twice = twice || counts[g] > c.need[g]
			k := &c.job.kinds[c.kind]
			if at.x < 0 || at.y < 0 || at.x+q.w > k.w || at.y+q.h > k.h || c.job.next(k.phase, at.x, q) != at.x {
				t.Fatalf("%+v does not lie where the board shows its pattern", at)
			}
			for _, other := range filling[:i] {
				p := &c.job.pieces[other.piece]
				if kerf := c.job.kerf; at.x < other.x+p.w+kerf && other.x < at.x+q.w+kerf && at.y < other.y+p.h+kerf && other.y < at.y+q.h+kerf {
					t.Fatalf("%+v and %+v overlap", at, other)
				}
			}
		}
		if worth != most {
			t.Fatalf("the filling is worth %d, want %d", worth, most)
		}
		if !twice {
			if same++; most != want {
				t.Fatalf("%d, want %d", most, want)
			}
		}
	})
	if same == 0 {
		t.Error("every board took a piece twice")
	}
}

// Prices that are remembered from one job bound another, so that no nest takes less, and the same one as well as it was bounded.
func TestRememberedPrices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first, second := boardsOf(t), boardsOf(t)
		first.run(0, 100_000)
		first.remember()
		second.job.memory = first.job.memory
		second.recall()
		sheets, _, _ := second.weigh.atLeast(second.groups)
		r, err := SearchExactly(*second.job.p, false)
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Unplaced) == 0 && sheets > len(r.Sheets) {
			t.Fatalf("at least %d, but %d do", sheets, len(r.Sheets))
		}
		known := func(c *generator) float64 { return float64(c.best.total) / float64(c.best.holds) }
		bound := known(first)
		first.best = prices{}
		if first.recall(); known(first) < bound*(1-1e-4) {
			t.Fatalf("the same job is bounded by %v in place of %v", known(first), bound)
		}
	})
}

// Lengths are rounded where a board has many marks: then it is worth no less; and nothing is known of one with parts lower than that.
func TestFullestBoardOfManyMarks(t *testing.T) {
	board := func(heights ...fraction.Length) (most int64, filling []spot) {
		p := Problem{Stock: []Stock{{Width: fraction.Inches(6), Length: fraction.Inches(96)}}, Pattern: Pattern{Pitch: fraction.Inches(6)}}
		for n, h := range heights {
			p.Parts = append(p.Parts, Part{Number: n, Width: fraction.Inches(6), Height: h})
		}
		j, err := prepare(&p)
		if err != nil {
			t.Fatal(err)
		}
		_, relax := j.lower(never)
		groups := j.groups(relax.pieces)
		c := newGenerator(context.Background(), j, relax, groups, newWeights(j, groups, relax), nil)
		return c.fullestBoard(c.kind, slices.Repeat([]int64{1}, len(groups)), c.need, 0)
	}
	fine := fraction.Of(1, 1024)
	long := fraction.Inches(32).Sub(fine)
	if most, filling := board(long, long, long, long.Sub(fine)); most != 3 || filling != nil {
		t.Errorf("worth %d, filled with %v; want 3 and nothing real", most, filling)
	}
	if most, _ := board(long, fine); most < mostWhole {
		t.Errorf("worth %d beside a part of 1/1024 in, want to know nothing", most)
	}
}
