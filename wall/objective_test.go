package wall

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// drawObjective draws what the functions of a nest look like: nothing for low pieces, then steps or
// the height itself.
func drawObjective(t *rapid.T, room Room) Objective {
	objective := Objective{Measure: nest.Measure{Extra: quarters(t, "kerf", 0, 1)}}
	switch rapid.IntRange(0, 2).Draw(t, "measure") {
	case 1: // by windows
		objective.Measure.Pitch = room.Profile.Pitch()
		for n := range rapid.IntRange(0, 2).Draw(t, "windows") {
			if objective.Measure.Pitch.IsZero() {
				break
			}
			width := objective.Measure.Pitch.Div(1 << rapid.IntRange(0, 4).Draw(t, "pitch to the window, a power of two"))
			_, from := quarters(t, "from", 0, 12).DivMod(objective.Measure.Pitch)
			objective.Measure.Windows = append(objective.Measure.Windows, nest.Window{From: from, Width: width, Weight: rapid.Int64Range(1, 3).Draw(t, "weight")})
			if n == 0 && rapid.Bool().Draw(t, "less than the width") {
				objective.Measure.Extra = fraction.Of(-1, 64)
			}
		}
	case 2: // by places
		objective.Measure = playedMeasure(t, room, objective.Measure.Extra)
	}
	from := quarters(t, "no cost below", 0, 20)
	if rapid.Bool().Draw(t, "by height") {
		objective.Of = func(h fraction.Length) int64 {
			if h.Less(from) {
				return 0
			}
			n, _ := h.DivMod(fraction.Of(1, 8))
			return n
		}
		return objective
	}
	objective.Of = func(h fraction.Length) int64 {
		switch {
		case h.Less(from):
			return 0
		case h.Less(from.Add(fraction.Inches(4))):
			return 1
		}
		return 3
	}
	return objective
}

// playedMeasure draws a measure by where on a sheet a part can lie; that of widths where there is none.
func playedMeasure(t *rapid.T, room Room, kerf fraction.Length) nest.Measure {
	sheet := nest.Stock{Name: "sheet", Width: fraction.Inches(rapid.Int64Range(8, 40).Draw(t, "sheet")), Length: fraction.Inches(96), LeftPhase: quarters(t, "phase", 0, 2)}
	p := nest.Problem{Stock: []nest.Stock{sheet}, Saw: nest.Saw{Kerf: kerf}, Pattern: nest.PatternOf(room.Profile)}
	weights, err := nest.DualWeights(p, []nest.Strip{{Width: inch, Height: inch, Tallest: inch}}, nil, 1)
	if err != nil || len(weights) == 0 {
		t.Fatal(weights, err)
	}
	game := weights[0].Game(nil)
	if game == nil {
		return nest.Measure{Extra: kerf}
	}
	for range rapid.IntRange(0, 3).Draw(t, "layouts") {
		var parts []nest.Part
		for range rapid.IntRange(1, 3).Draw(t, "parts") {
			parts = append(parts, nest.Part{Width: quarters(t, "width", 1, 20), Height: inch, LeftPhase: quarters(t, "at", 0, 4)})
		}
		game.Meet(parts)
	}
	return game.Best(0).Measure
}

// The cost of a layout is never more than what its pieces cost, each as its bounding box.
func TestCostIsNeverMoreThanThatOfThePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room := steep(t, drawRoom(t))
		objective := drawObjective(t, room)
		for n, layout := range firstLayouts(t, LayoutsByCost(context.Background(), room, objective), 4) {
			cost, err := objective.Cost(&layout)
			if err != nil {
				t.Fatal(err)
			}
			if cost.Less(layout.Cost) {
				t.Fatalf("layout %d is said to cost %v, its pieces cost %v", n, layout.Cost, cost)
			}
		}
	})
}

// The layouts by cost come in order, and are those that come in order of blemish.
func TestLayoutsByCostAreTheLayoutsInOrderOfCost(t *testing.T) {
	const most = 400
	complete := 0
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		objective := drawObjective(t, room)
		looks := map[string]int{}
		for layout, err := range Layouts(context.Background(), room) {
			if err != nil {
				t.Skip("no layout: " + err.Error())
			}
			if looks[layoutKey(&layout)]++; len(looks) > most {
				return
			}
		}
		complete++
		costs := map[string]fraction.Length{}
		var before *Layout
		for layout, err := range LayoutsByCost(context.Background(), room, objective) {
			if err != nil {
				t.Fatal(err)
			}
			if before != nil {
				if c := layout.Cost.Compare(before.Cost); c < 0 || c == 0 && layout.Total.Compare(before.Total) < 0 {
					t.Fatalf("cost %v and blemish %v come after %v and %v", layout.Cost, layout.Total, before.Cost, before.Total)
				}
			}
			before = &layout
			looks[layoutKey(&layout)]--
			costs[layoutKey(&layout)] = layout.Cost
		}
		for key, n := range looks {
			if n != 0 {
				t.Fatalf("%d times more often among the layouts in order of looks: %s", n, key)
			}
		}
		objective.Weight = fraction.NewRatio(1, rapid.Int64Range(1, 200).Draw(t, "cost to the inch of blemish"))
		var last fraction.Ratio
		for layout, err := range LayoutsByCost(context.Background(), room, objective) {
			if err != nil {
				t.Fatal(err)
			}
			sum := layout.Total.Add(costs[layoutKey(&layout)].Over(inch).Mul(objective.Weight))
			if rounded := fraction.NewRatio(1, 1000); sum.Add(rounded).Less(last) { // each part's cost is rounded twice
				t.Fatalf("blemish and weighted cost of %v come after %v", sum, last)
			}
			last = sum
		}
	})
	if complete == 0 {
		t.Error("no room had few enough layouts")
	}
}

// Where what pieces cost leaves one unit for an inch, layouts have their cost too.
func TestCostInWholeInches(t *testing.T) {
	room, objective := keptRoom(Keep{}), Objective{Of: func(fraction.Length) int64 { return 1 << 54 }}
	m, err := NewModel(t.Context(), room)
	if err != nil || m.unitsOf(&objective) != 1 {
		t.Fatalf("%d units, %v", m.unitsOf(&objective), err)
	}
	for layout, err := range m.LayoutsByCost(t.Context(), objective) {
		cost, far := objective.Cost(&layout)
		if err != nil || far != nil || layout.Cost.Sign() <= 0 || cost.Less(layout.Cost) {
			t.Errorf("cost %v of %v, %v, %v", layout.Cost, cost, err, far)
		}
		break
	}
}
