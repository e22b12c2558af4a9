package wall

import (
	"context"
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
	"example.com/groovewright/nest"
)

// steep turns one wall of a drawn room into the wall of a stair.
func steep(t *rapid.T, room Room) Room {
	run := &room.Runs[rapid.IntRange(0, len(room.Runs)-1).Draw(t, "steep run")]
	last := &run.Heights[len(run.Heights)-1]
	last.Top = last.Top.Add(quarters(t, "rise of the stair", -8, 15))
	return room
}

// Whatever the layout: the strips at least so high are no wider than its pieces at least so high,
// each with the seam gap to its right, and the strips have no more area than those pieces.
func TestStripsNeverAskForMoreThanALayout(t *testing.T) {
	parted := 0
	rapid.Check(t, func(t *rapid.T) {
		room := steep(t, drawRoom(t))
		strips, err := room.Strips()
		if err != nil {
			t.Skip(err)
		}
		if len(strips) > 8 {
			parted++
		}
		for _, layout := range firstLayouts(t, Layouts(context.Background(), room), 3) {
			for _, least := range append(strips, nest.Strip{}) {
				var wanted, given fraction.Length
				for _, s := range strips {
					if !s.Tallest.Less(least.Tallest) {
						wanted = wanted.Add(s.Width)
					}
				}
				var area fraction.Area
				for _, s := range strips {
					area = area.Add(s.Width.Times(s.Height))
				}
				for _, p := range layout.Pieces {
					low, high := p.Shape.Bounds()
					width := high.X.Sub(low.X).Add(room.Gaps.Seam)
					if !high.Y.Sub(low.Y).Less(least.Tallest) {
						given = given.Add(width)
					}
					area = area.Sub(width.Times(high.Y.Sub(low.Y)))
				}
				if given.Less(wanted) {
					t.Fatalf("strips at least %v high: %v wide, pieces only %v\n%v", least.Tallest, wanted, given, strips)
				}
				if area.Sign() > 0 {
					t.Fatalf("the strips have %v more area than the pieces", area)
				}
			}
		}
	})
	if parted == 0 {
		t.Error("no room ever had a slope parted into strips")
	}
}

// The wall under a stair, 96 in wide and 90 in to 10 in high, has an area of 4800 square inches;
// strips of 3 in fall short of it by a triangle each.
func TestStripsFollowASlope(t *testing.T) {
	room := Room{
		Profile: profiles[0], Priorities: DefaultPriorities(fraction.Inch), Mark: fraction.Of(1, 16),
		Stock: []nest.Stock{{Name: "sheet", Width: inches("48"), Length: inches("96")}},
		Runs:  []Run{{Name: "stair", Width: inches("96"), Heights: heights("0,0,90; 96,0,10")}},
	}
	strips, err := room.Strips()
	if err != nil {
		t.Fatal(err)
	}
	var area fraction.Area
	for _, s := range strips {
		area = area.Add(s.Width.Times(s.Height))
	}
	if low := fraction.Inches(48).Times(fraction.Inches(97)); len(strips) != mostStrips || area.Compare(low) < 0 {
		t.Errorf("%d strips of %v square inches, want %d of %v at least", len(strips), area, mostStrips, low)
	}
	cell := cell{top: line{cutout.Point{Y: inches("90")}, cutout.Point{X: inches("96"), Y: inches("10")}}, bottom: line{right: cutout.Point{X: inches("96")}}}
	if got := cell.least(inches("0"), inches("48"), inches("1/16")); got != inches("49 15/16") {
		t.Errorf("least height %v of the left half, want 49 15/16", got)
	}
}
