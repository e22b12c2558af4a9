package wall

import (
	"testing"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
)

// drawThrift draws what the functions of a nest look like: nothing for low
// pieces, then steps or the height itself.
func drawThrift(t *rapid.T) Thrift {
	thrift := Thrift{Extra: quarters(t, "kerf", 0, 1)}
	from := quarters(t, "worth nothing below", 0, 20)
	if rapid.Bool().Draw(t, "by height") {
		thrift.Of = func(h fraction.Length) int64 {
			if h.Less(from) {
				return 0
			}
			n, _ := h.DivMod(fraction.Of(1, 8))
			return n
		}
		return thrift
	}
	thrift.Of = func(h fraction.Length) int64 {
		switch {
		case h.Less(from):
			return 0
		case h.Less(from.Add(fraction.Inches(4))):
			return 1
		}
		return 3
	}
	return thrift
}

// What is said of a layout is never more than what its pieces, each as its
// bounding box, are worth.
func TestWorthIsNeverMoreThanThePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		room, thrift := steep(t, drawRoom(t)), drawThrift(t)
		n := 0
		for layout, err := range ThriftyLayouts(room, thrift) {
			if err != nil {
				t.Skip("no layout: " + err.Error())
			}
			var worth fraction.Length
			for _, p := range layout.Pieces {
				low, high := p.Shape.Bounds()
				worth = worth.Add(high.X.Sub(low.X).Add(thrift.Extra).Mul(thrift.Of(high.Y.Sub(low.Y))))
			}
			if worth.Less(layout.Worth) {
				t.Fatalf("layout %d is said to be worth %v, its pieces are worth %v", n, layout.Worth, worth)
			}
			if n++; n == 4 {
				break
			}
		}
	})
}

// The thrifty layouts come in order, and the first is worth no more than any of
// the layouts in order of looks; what either yields are the same layouts.
func TestThriftyLayoutsAreTheLayoutsInOrderOfWorth(t *testing.T) {
	const most = 400
	complete := 0
	rapid.Check(t, func(t *rapid.T) {
		room, thrift := drawRoom(t), drawThrift(t)
		looks := map[string]int{}
		for layout, err := range Layouts(room) {
			if err != nil {
				t.Skip("no layout: " + err.Error())
			}
			if looks[layoutKey(&layout)]++; len(looks) > most {
				return
			}
		}
		complete++
		worths := map[string]fraction.Length{}
		var before *Layout
		for layout, err := range ThriftyLayouts(room, thrift) {
			if err != nil {
				t.Fatal(err)
			}
			if before != nil {
				if c := layout.Worth.Compare(before.Worth); c < 0 || c == 0 && layout.Total.Compare(before.Total) < 0 {
					t.Fatalf("worth %v and blemish %v come after %v and %v", layout.Worth, layout.Total, before.Worth, before.Total)
				}
			}
			before = &layout
			looks[layoutKey(&layout)]--
			worths[layoutKey(&layout)] = layout.Worth
		}
		for key, n := range looks {
			if n != 0 {
				t.Fatalf("%d times more often among the layouts in order of looks: %s", n, key)
			}
		}
		thrift.Weight = fraction.NewRatio(1, rapid.Int64Range(1, 200).Draw(t, "worth to the inch of blemish"))
		var last fraction.Ratio
		for layout, err := range ThriftyLayouts(room, thrift) {
			if err != nil {
				t.Fatal(err)
			}
			sum := layout.Total.Add(worths[layoutKey(&layout)].Over(inch).Mul(thrift.Weight))
			if sum.Less(last) {
				t.Fatalf("blemish and weighed worth of %v come after %v", sum, last)
			}
			last = sum
		}
	})
	if complete == 0 {
		t.Error("no room had few enough layouts")
	}
}
