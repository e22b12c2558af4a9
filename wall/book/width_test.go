package book

import (
	"fmt"
	"os"
	"strings"
	"testing"
	"unicode"

	"example.com/groovewright/fraction"
)

// Widths by Unicode Standard Annex 11 (EastAsianWidth.txt, classes W and F two columns) and the general
// category (Mn, Me, Cf none).
// A hyphen is allowed four letters from the ends of a long word, in no short one and in no script without.
func TestLongNamesGetHyphens(t *testing.T) {
	for name, want := range map[string]string{"box by the toaster": "box by the toaster", "Doppelsteckdose links": "Dopp~e~l~s~t~e~c~k~dose links",
		"двухместная розетка": "двухместная розетка", "электророзеточная": "элек~т~р~о~р~о~з~е~т~о~чная", "這是一個非常非常長的插座名稱": "這是一個非常非常長的插座名稱"} {
		if got := strings.ReplaceAll(hyphened(name), "\u00ad", "~"); got != want {
			t.Errorf("%q: %q, want %q", name, got, want)
		}
	}
}

func TestColumns(t *testing.T) {
	for s, want := range map[string]int{
		"": 0, "wall 1": 6, "é": 1, "e\u0301": 1, "浴室": 4, "바닥": 4, "ｶﾞ": 2, "Ｗ": 2, "キッチン": 8, "a\u200db": 2,
		"מטבח": 4, "مَطبخ": 4, "🚪": 2, "🪟🪟": 4, "☀": 1, "☀\ufe0f": 2, "🚪\ufe0f": 2, "½": 1, "›": 1, "\u2068מ\u2069": 1,
		"\U00020000": 2, "한": 2,
	} {
		if got := columns(s); got != want {
			t.Errorf("%q takes %d columns, want %d", s, got, want)
		}
	}
}

// Every assigned character that the standard calls wide takes two columns, but marks and controls, and the rows of the table
// begin and end with one.
func TestWideCharactersAreThoseOfTheStandard(t *testing.T) {
	data, err := os.ReadFile("testdata/wide.txt")
	if err != nil {
		t.Fatal(err)
	}
	_, list, _ := strings.Cut(string(data), "\n\n")
	listed := map[rune]bool{}
	for row := range strings.FieldsSeq(list) {
		var from, to rune
		if n, err := fmt.Sscanf(row, "%x-%x", &from, &to); n != 2 {
			t.Fatal(row, err)
		}
		for c := from; c <= to; c++ {
			listed[c] = true
			want := 2
			if unicode.In(c, unicode.Mn, unicode.Me, unicode.Cf) {
				want = 0
			}
			if got := columns(string(c)); got != want {
				t.Errorf("%U takes %d columns, want %d", c, got, want)
			}
		}
	}
	if len(listed) < 117_000 {
		t.Errorf("only %d characters are listed", len(listed))
	}
	for _, r := range wide {
		if !listed[r[0]] || !listed[r[1]] {
			t.Errorf("%U to %U: not both ends are wide characters", r[0], r[1])
		}
	}
}

// Columns of a table begin where they ought to, whatever the names are made of: what is wide takes two
// columns, marks none, and what is read from the right is kept apart from the numbers beside it.
func TestTableOfOddNames(t *testing.T) {
	got := written(fraction.Tape{}, false, func(t *text) {
		t.table(1, nil, [][]string{{"wall", "12 3/4", "x"}, {"浴室", "1", "x"}, {"e\u0301tage", "2", "x"}, {"מטבח 2", "3/4", "x"}, {"🚪", "5", "x"}})
	})
	want := " wall    12 3/4  x\n 浴室    1       x\n e\u0301tage   2       x\n \u2068מטבח \u20692  3/4     x\n 🚪      5       x\n"
	if got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A word too long for a line is cut between characters, none of them lost.
func TestLongWordsAreCut(t *testing.T) {
	for _, word := range []string{strings.Repeat("浴", 50), strings.Repeat("e\u0301", 90), strings.Repeat("🚪", 41), "浴"} {
		for _, width := range []int{1, 2, 3, 79, 80} {
			lines := fold(word, width)
			for _, line := range lines {
				if line == "" || columns(line) > max(width, 2) {
					t.Errorf("a line of %d columns of %d: %q", columns(line), width, line)
				}
			}
			if strings.Join(lines, "") != word {
				t.Errorf("%q was cut into %q", word, lines)
			}
		}
	}
}
