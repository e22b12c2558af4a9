package main

import (
	"os"
	"path/filepath"
	"sync"
	"testing"
)

// The text of the engine is that of its bytes. By hand: 1 and 2 are 513, which is 58 and 5 times 91;
// thirteen ones are 8191, which is 1 and 90 times 91, and three more are 7.
func TestEncode(t *testing.T) {
	for _, row := range []struct {
		data []byte
		want string
	}{{nil, "0 "}, {[]byte{25}, "1 !#"}, {[]byte{1, 2}, "2 ](##"}, {[]byte{0xff, 0xff}, "2 $}*#"}} {
		if got := encode(row.data); got != row.want {
			t.Errorf("encode(%v) = %q, want %q", row.data, got, row.want)
		}
	}
}

var built = sync.OnceValues(build)

// written returns the path of the page.
func written(t *testing.T) string {
	t.Helper()
	page, err := built()
	if err != nil {
		t.Fatal(err)
	}
	file, err := filepath.Abs(filepath.Join(t.TempDir(), "page.html"))
	if err == nil {
		err = os.WriteFile(file, page, 0o644)
	}
	if err != nil {
		t.Fatal(err)
	}
	return file
}
