package fault

import "testing"

func TestDidYouMean(t *testing.T) {
	known := []string{"heights", "height", "width", "name", "at", ""}
	for word, want := range map[string]string{
		"heigths": "heights", "hights": "heights", "nmae": "name", "Name": "name", "widht": "width", "height": "height", "AT": "at",
		"colour": "", "x": "", "": "", "ta": "",
	} {
		if want != "" {
			want = `; did you mean "` + want + `"?`
		}
		if got := DidYouMean(word, known...); got != want {
			t.Errorf("DidYouMean(%q) = %q, want %q", word, got, want)
		}
	}
}

// Distances by hand; "ca" and "abc" are the example that tells this distance from the one that may
// touch a letter twice (Boytsov, "Indexing methods for approximate dictionary searching", 2011; from
// memory).
func TestDistance(t *testing.T) {
	for _, row := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"abc", "abc", 0}, {"kitten", "sitting", 3}, {"ab", "ba", 1}, {"ca", "abc", 3}, {"plan", "lpan", 1}} {
		if got, back := distance(row.a, row.b), distance(row.b, row.a); got != row.want || back != row.want {
			t.Errorf("distance(%q, %q) = %d and %d, want %d", row.a, row.b, got, back, row.want)
		}
	}
}
