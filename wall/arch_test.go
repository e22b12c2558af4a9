package wall

import (
	"slices"
	"testing"

	"example.com/groovewright/cutout"
	"example.com/groovewright/fraction"
)

// The outline under an arched head is the same from whichever corner it begins, and 16384 marks of the tape are the longest head.
func TestArchedOutlines(t *testing.T) {
	in, mark := fraction.Inches, fraction.Of(1, 16)
	rectangle := cutout.Rectangle(in(10), in(5), in(20), in(30))
	var first []cutout.Point
	for turn := range rectangle {
		outline, arch, err := Arched(slices.Concat(rectangle[turn:], rectangle[:turn]), in(4), mark)
		if err != nil || *arch != (Arch{cutout.Point{X: in(10), Y: in(35)}, in(20), in(4)}) {
			t.Fatalf("from corner %d: %v, %v", turn, arch, err)
		}
		from := slices.Index(outline, rectangle[0])
		if from < 0 || !slices.Contains(outline, rectangle[1]) {
			t.Fatalf("from corner %d the lower corners are lost: %v", turn, outline)
		}
		outline = slices.Concat(outline[from:], outline[:from])
		if first == nil {
			first = outline
		}
		if len(outline) < 6 || !slices.Equal(outline, first) {
			t.Errorf("from corner %d: %v, want %v", turn, outline, first)
		}
	}
	for long, good := range map[fraction.Length]bool{in(1024): true, in(1024).Add(mark): false} {
		if _, _, err := Arched(cutout.Rectangle(in(0), in(0), long, in(30)), in(4), mark); (err == nil) != good {
			t.Errorf("a head of %v: %v", long, err)
		}
	}
	triangle := []cutout.Point{{X: in(15)}, {X: in(20), Y: in(8)}, {X: in(10), Y: in(8)}} // three corners are enough, two are not
	if _, arch, err := Arched(triangle, in(2), mark); err != nil || *arch != (Arch{cutout.Point{X: in(10), Y: in(8)}, in(10), in(2)}) {
		t.Errorf("over a triangle: %v, %v", arch, err)
	}
	if _, _, err := Arched(triangle[1:], in(2), mark); err == nil {
		t.Error("an arch over two corners")
	}
}
