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
	ended := func(left int, look func(*sweep)) (is bool) {
		defer func() {
			if got := recover(); got != nil {
				is = got == tooMuch{}
			}
		}()
		look(&sweep{left: left})
		return false
	}
	edges := make([]edge, 4)
	for i := range edges {
		edges[i] = shape{{{whole(0), whole(int64(i))}, {whole(9), whole(int64(i))}}}.edges()[0]
	}
	for _, row := range []struct {
		left int
		look func(*sweep)
		want bool
	}{
		{2, func(s *sweep) { s.spend(2) }, false}, {2, func(s *sweep) { s.spend(2); s.spend(1) }, true},
		{6, func(s *sweep) { s.events(edges) }, false}, {5, func(s *sweep) { s.events(edges) }, true}, // each of four edges beside those before it
	} {
		if got := ended(row.left, row.look); got != row.want {
			t.Errorf("with %d left: ended %v, want %v", row.left, got, row.want)
		}
	}
}
