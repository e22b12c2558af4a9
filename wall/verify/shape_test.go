package verify

import (
	"testing"

	"pgregory.net/rapid"
)

// A loop is simple with the same area and no point that it can do without, however often such points follow each other.
func TestSimpleLoops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var l loop
		for i, n := 0, rapid.IntRange(3, 14).Draw(t, "points"); i < n; i++ {
			l = append(l, point{whole(rapid.Int64Range(0, 2).Draw(t, "x")), whole(rapid.Int64Range(0, 2).Draw(t, "y"))})
		}
		s := l.simple()
		if !same(s.area(), l.area()) {
			t.Fatalf("%v has the area %v, %v has %v", l, l.area(), s, s.area())
		}
		for i, p := range s {
			before, after := s[(i+len(s)-1)%len(s)], s[(i+1)%len(s)]
			if len(s) > 3 && (p.is(after) || same(before.X, p.X) && same(p.X, after.X) || same(before.Y, p.Y) && same(p.Y, after.Y)) {
				t.Fatalf("%v becomes %v, which needs no %v", l, s, p)
			}
		}
	})
}

// What looks at more edges than it may is ended at once.
func TestTooManyEdgesEndTheCheck(t *testing.T) {
	s := sweep{left: 2}
	s.spend(2)
	defer func() {
		if got := recover(); got != (tooMuch{}) {
			t.Errorf("ended by %v", got)
		}
	}()
	s.spend(1)
	t.Error("not ended")
}
