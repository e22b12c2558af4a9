package jobfile_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/groovewright/fraction/fault"
	"example.com/groovewright/wall/jobfile"
)

func TestStandard(t *testing.T) {
	for _, row := range []struct{ name, file, want string }{
		{"nothing", "", ""},
		{"strict", `{"a": [1, "b"]}`, `{"a": [1, "b"]}`},
		{"to the end of the line", "[1 // one, \"two\"]\n]", "[1               \n]"},
		{"to the end of the file", "[1]//", "[1]  "},
		{"from the first byte", "//1,\n[1]", "    \n[1]"},
		{"within a line", `[/* one */1/**/]`, `[         1    ]`},
		{"over lines", "[/*\n,\r\n*/1]", "[  \n \r\n  1]"},
		{"not closed", "[1] /* one", "[1] /* one"},
		{"in a text", `["// no", "/* no */", "\"// no"]`, `["// no", "/* no */", "\"// no"]`},
		{"after the last item", `[1, 2,]`, `[1, 2 ]`},
		{"after the last field", "{\"a\": \"b\",\n}", "{\"a\": \"b\" \n}"},
		{"comment after the last comma", "[[1],// one\n]", "[[1]       \n]"},
		{"nested", `{"a": {"b": [1,],},}`, `{"a": {"b": [1 ] } }`},
		{"a comma alone", `[,]`, `[,]`},
		{"two commas", `[1,,]`, `[1,,]`},
		{"a comma without a value", `{"a":,}`, `{"a":,}`},
		{"text not closed", "[\"one, // two\n]", "[\"one, // two\n]"},
	} {
		if got := string(jobfile.Standard([]byte(row.file))); got != row.want {
			t.Errorf("%s: Standard(%q) = %q, want %q", row.name, row.file, got, row.want)
		}
	}
}

// The kitchen with a comment at every line and a comma after every last item is the same job.
func TestReadRelaxed(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "examples", "kitchen.json"))
	if err != nil {
		t.Fatal(err)
	}
	want, err := jobfile.Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	relaxed := strings.NewReplacer("]", ",]", "}", ", /* last */}", "\n", " // taped\n").Replace(string(data))
	if json.Valid([]byte(relaxed)) {
		t.Fatal("the file is still strict")
	}
	got, err := jobfile.Read(strings.NewReader(relaxed))
	if diff := cmp.Diff(want, got, sameLengths); err != nil || diff != "" {
		t.Errorf("Read: %v (-strict +relaxed):\n%s", err, diff)
	}
}

// Places are those of the file as it was written.
func TestFaultsAfterComments(t *testing.T) {
	_, err := jobfile.Read(strings.NewReader("{ // mine\n  /* a */ \"tape\": 3,\n}"))
	for _, f := range fault.All(err) {
		if errors.Is(f, jobfile.ErrType) && f.Line == 2 && f.Column == 19 {
			return
		}
	}
	t.Errorf("Read: %v, want a fault at line 2, column 19", err)
}
