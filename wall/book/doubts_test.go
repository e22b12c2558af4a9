package book

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/groovewright/fraction"
	"example.com/groovewright/fraction/warning"
)

// declaredKinds returns the kinds of warning that the code of all packages declares.
func declaredKinds(t *testing.T) map[warning.Kind]string {
	kind := regexp.MustCompile(`\bwarning\.Kind\s*=\s*"([^"]*)"`)
	found := map[warning.Kind]string{}
	err := filepath.WalkDir("../..", func(path string, _ os.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		data, err := os.ReadFile(path)
		for _, match := range kind.FindAllStringSubmatch(string(data), -1) {
			if before, twice := found[warning.Kind(match[1])]; twice {
				t.Errorf("%q is declared in %s and in %s", match[1], before, path)
			}
			found[warning.Kind(match[1])] = path
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

func TestEveryKindOfWarningHasWords(t *testing.T) {
	declared := declaredKinds(t)
	if len(declared) < 20 {
		t.Errorf("only %d kinds found", len(declared))
	}
	for kind, path := range declared {
		if doubtWords[kind] == "" {
			t.Errorf("%q of %s has no words", kind, path)
		}
	}
	for kind := range doubtWords {
		if declared[kind] == "" {
			t.Errorf("there are words for %q, which no package declares", kind)
		}
	}
}

// A fact that the words name, and that a warning from elsewhere lacks, is left out.
func TestWordsOfWarnings(t *testing.T) {
	x := &text{tape: fraction.Tape{Mark: fraction.Of(1, 16)}}
	for _, kind := range slices.Sorted(maps.Keys(doubtWords)) {
		full := warning.Warning{Kind: kind, Names: []string{"n{length0}", "n", "n"}, Lengths: make([]fraction.Length, 5), Counts: []int{1, 2}}
		rest := strings.ReplaceAll(x.doubt(full), "n{length0}", "n")
		if strings.ContainsAny(rest, "{}") || strings.ContainsAny(x.doubt(warning.Warning{Kind: kind}), "{}") {
			t.Errorf("%q: a fact in %q has no words", kind, doubtWords[kind])
		}
	}
	if got := x.doubt(warning.Warning{Kind: "a kind of tomorrow"}); got != "a kind of tomorrow" {
		t.Errorf("a kind without words gives %q", got)
	}
}
