package fault

import (
	"fmt"
	"strings"
)

// DidYouMean returns a question to add to the message that a word is not known, such as
// `; did you mean "heights"?`, and nothing where no known word is near: it may differ in a third of
// its letters, or in two that are exchanged, capitals or not.
func DidYouMean(word string, known ...string) string {
	best, least := "", len(word)/3+1
	for _, k := range known {
		if d := distance(strings.ToLower(word), strings.ToLower(k)); d < least && d <= len(k)/3 {
			best, least = k, d
		}
	}
	if best == "" {
		return ""
	}
	return fmt.Sprintf("; did you mean %q?", best)
}

// distance is how many letters have to be put in, left out, changed or exchanged with the next to
// turn a into b, none of them twice: the optimal string alignment distance.
func distance(a, b string) int {
	rows := [3][]int{make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)}
	for i := 0; i <= len(a); i++ {
		row, above, higher := rows[i%3], rows[(i+2)%3], rows[(i+1)%3]
		for j := range row {
			switch {
			case i == 0 || j == 0:
				row[j] = i + j
				continue
			case a[i-1] == b[j-1]:
				row[j] = above[j-1]
			default:
				row[j] = 1 + min(above[j-1], above[j], row[j-1])
			}
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], 1+higher[j-2])
			}
		}
	}
	return rows[len(a)%3][len(b)]
}
