package main

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
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

// unfold reads what fold writes, as the worker of the page does.
func unfold(t *testing.T, folded []byte) (data []byte) {
	t.Helper()
	var at [4]int
	size := int(binary.LittleEndian.Uint32(folded))
	at[0] = 16
	for i := range 3 {
		at[i+1] = at[i] + int(binary.LittleEndian.Uint32(folded[4+4*i:]))
	}
	next := func(part int) int {
		n, bytes := binary.Uvarint(folded[at[part]:])
		if bytes <= 0 {
			t.Fatalf("part %d ends early", part)
		}
		at[part] += bytes
		return int(n)
	}
	for last := 0; len(data) < size; {
		n := next(1)
		data = append(data, folded[at[0]:at[0]+n]...)
		at[0] += n
		if len(data) < size {
			last = cmp.Or(next(3), last)
			for n := next(2); n > 0; n-- {
				data = append(data, data[len(data)-last])
			}
		}
	}
	return data
}

// What is folded is small where it repeats, and unfolds to what it was. By hand: forty bytes of one
// are that byte and a copy of 39 from one place back.
func TestFold(t *testing.T) {
	forty := bytes.Repeat([]byte{7}, 40)
	if got, want := fold(forty), []byte{40, 0, 0, 0, 1, 0, 0, 0, 2, 0, 0, 0, 1, 0, 0, 0, 7, 1, 0, 39, 1}; !bytes.Equal(got, want) {
		t.Errorf("fold(forty) = %v, want %v", got, want)
	}
	// And with one byte of another kind, the copy goes on from as far back.
	if got, want := fold(append(append(bytes.Clone(forty), 9), forty...)), []byte{81, 0, 0, 0, 2, 0, 0, 0, 3, 0, 0, 0, 2, 0, 0, 0, 7, 9, 1, 1, 0, 39, 40, 1, 41}; !bytes.Equal(got, want) {
		t.Errorf("fold(forty, 9, forty) = %v, want %v", got, want)
	}
	random := rand.NewChaCha8([32]byte{1})
	long := make([]byte, 100_000)
	random.Read(long)
	twice := slices.Concat(long, []byte("between"), long, long[:15])
	if got := len(fold(twice)); got > len(long)+100 {
		t.Errorf("what stands twice takes %d bytes, once %d", got, len(long))
	}
	for _, data := range [][]byte{nil, {1}, forty[:7], forty[:16], forty, long, twice} {
		if !bytes.Equal(unfold(t, fold(data)), data) {
			t.Errorf("%d bytes do not come back", len(data))
		}
	}
}

var built = sync.OnceValues(build)

// The page goes into a mail.
func TestSize(t *testing.T) {
	if testing.Short() {
		t.Skip("the page takes a while to build")
	}
	page, err := built()
	if err != nil || len(page) >= 4_000_000 {
		t.Errorf("%d bytes, want less than 4 MB: %v", len(page), err)
	}
}

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
