package book

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"example.com/groovewright/fraction"
	"example.com/groovewright/wall"
	"example.com/groovewright/wall/plan"
)

func TestFoldKeepsEveryLetterAndTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringOfN(rapid.RuneFrom([]rune("abc é½ \"")), 0, 300, -1).Draw(t, "text")
		width := rapid.IntRange(1, 90).Draw(t, "width")
		lines := fold(s, width)
		for _, line := range lines {
			if utf8.RuneCountInString(line) > width {
				t.Fatalf("line %q is wider than %d", line, width)
			}
		}
		bare := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got := bare(strings.Join(lines, " ")); got != bare(s) {
			t.Fatalf("fold(%q, %d) = %q", s, width, lines)
		}
	})
}

func TestTableKeepsTheWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns := rapid.IntRange(1, 6).Draw(t, "columns")
		cell := rapid.StringMatching(`[a-z]{0,30}( [a-z]{1,60}){0,4}`)
		rows := rapid.SliceOfN(rapid.SliceOfN(cell, columns, columns), 2, 6).Draw(t, "rows")
		out := &text{}
		out.table(rapid.IntRange(0, 8).Draw(t, "indent"), rows[0], rows[1:])
		letters := func(s string) int { return strings.Count(s, "") - 1 - strings.Count(s, " ") - strings.Count(s, "\n") }
		want := 0
		for _, row := range rows {
			want += letters(strings.Join(row, ""))
		}
		if got := letters(out.String()); got != want {
			t.Fatalf("%d letters in the table, want %d:\n%s", got, want, out.String())
		}
		tooWide(t, out.String())
	})
}

// tooWide fails if a line has more than lineWidth characters or ends in a space.
func tooWide(t interface{ Errorf(string, ...any) }, s string) {
	for line := range strings.Lines(s) {
		line = strings.TrimSuffix(line, "\n")
		if utf8.RuneCountInString(line) > lineWidth || strings.HasSuffix(line, " ") {
			t.Errorf("line of %d characters: %q", utf8.RuneCountInString(line), line)
		}
	}
}

func TestWordsOfAWayAndAWidth(t *testing.T) {
	for cause, want := range map[wall.DirectionCause]string{
		wall.ByNothing: "left", wall.BySeenEnd: "left", wall.ByTongue: "left, to the side of the tongue", wall.ByLap: "left, as the boards lap",
		wall.ByKeep: "left, as the job keeps it",
	} {
		if got := way(plan.SetOut{SetOut: wall.SetOut{Direction: wall.Left, DirectionBy: cause}}); got != want {
			t.Errorf("%v: %s, want %s", cause, got, want)
		}
	}
	in := &text{tape: fraction.Tape{Mark: fraction.Of(1, 16)}}
	for width, want := range map[fraction.Length]string{{}: "running out to nothing", fraction.Of(3, 8): "3/8 wide"} {
		if got := in.wide(width); got != want {
			t.Errorf("%v: %s, want %s", width, got, want)
		}
	}
}

// Flaws of which one plan has less than another never read alike.
func TestFlawsAreToldApart(t *testing.T) {
	for _, test := range [][4]string{{"3/2", "7/4", "1.5", "1.75"}, {"29/40", "727/1000", "0.725", "0.727"}, {"1/2", "1/2", "0.5", "0.5"}, {"10", "10.001", "10", "10.001"}} {
		a, b := fraction.MustParse(test[0]), fraction.MustParse(test[1])
		x, y := toldApart(a.Over(fraction.Inches(1)), b.Over(fraction.Inches(1)))
		if x != test[2] || y != test[3] {
			t.Errorf("%v: %s and %s", test, x, y)
		}
	}
}

// TestEndOfTheCommandKeepsTheWidth: what the command says last is as wide as the texts, but for the folder's path.
func TestEndOfTheCommandKeepsTheWidth(t *testing.T) {
	files := []File{{Name: "book.html"}, {Name: "templates-letter.html"}, {Name: "templates-a4.html"}, {Name: "run-1.svg"}}
	for _, n := range plans() {
		for line := range strings.Lines(Written(n.plan, "folder", files)) {
			if columns(strings.TrimSuffix(line, "\n")) > lineWidth {
				t.Errorf("%s: %d columns: %s", n.name, columns(line), line)
			}
		}
	}
}

// A title too long for two lines of a label ends in an ellipsis.
func TestTitlesOfLabels(t *testing.T) {
	for title, want := range map[string]string{
		"Pantry": "Pantry",
		"Lobby in tongue-and-groove boards, painted, with an old bench": "Lobby in tongue-and-groove boards, painted, with an old…",
		strings.Repeat("木", labelLong+1):                                strings.Repeat("木", labelLong-1) + "…",
	} {
		if got := clip(title); got != want {
			t.Errorf("%q: %q, want %q", title, got, want)
		}
	}
}
