package fractiontest

import (
	"crypto/sha256"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// Golden fails where a text is not the one that a file holds, and shows the first lines in which they
// differ. With the flag -update it writes the file.
func Golden(t *testing.T, path, got string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	const shown = 4
	a, b := strings.Split(string(want), "\n"), strings.Split(got, "\n")
	for i := range max(len(a), len(b)) {
		if i >= len(a) || i >= len(b) || a[i] != b[i] {
			t.Errorf("%s, and maybe more below; -update rewrites it:\nline %d, want\n%s\ngot\n%s", path, i+1,
				strings.Join(a[min(i, len(a)):min(i+shown, len(a))], "\n"), strings.Join(b[min(i, len(b)):min(i+shown, len(b))], "\n"))
			return
		}
	}
}

// Hash returns the beginning of the hash of a text, which is enough to see that it changed.
func Hash(text []byte) string {
	sum := sha256.Sum256(text)
	return fmt.Sprintf("%x", sum[:4])
}

// HashJSON does the same for the JSON of a value.
func HashJSON(t *testing.T, x any) string {
	t.Helper()
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	return Hash(text)
}
