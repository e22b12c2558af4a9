package verify

import (
	"strings"
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

// The upright side of a step goes by a gap of 1 into the taller part and up to the slope of that, if it has one: a top that rises by 1 in 5 from
// 30 over 30 is 30.2 high at 31.
func TestSteps(t *testing.T) {
	for _, row := range []struct {
		name, want string
		line       []int64
	}{
		{"taller at the right", "0,20 30,20 31,20 31,30 1/5 60,36", []int64{0, 20, 30, 20, 30, 30, 60, 36}},
		{"with nothing beyond", "0,20 30,20 31,20 31,30", []int64{0, 20, 30, 20, 30, 30}},
		{"taller at the left", "0,36 29,30 1/5 29,20 30,20 60,20", []int64{0, 36, 30, 30, 30, 20, 60, 20}},
		{"with nothing before", "-1,30 -1,20 0,20 30,20", []int64{0, 30, 0, 20, 30, 20}},
		{"of no height", "0,20 30,20 60,20", []int64{0, 20, 30, 20, 30, 20, 60, 20}},
	} {
		var line []point
		for i := 0; i < len(row.line); i += 2 {
			line = append(line, point{whole(row.line[i]), whole(row.line[i+1])})
		}
		var got []string
		for _, p := range (&region{}).stepped(line, whole(1), true) {
			got = append(got, text(p.X)+","+text(p.Y))
		}
		if strings.Join(got, " ") != row.want {
			t.Errorf("%s: %v, want %s", row.name, got, row.want)
		}
	}
}
