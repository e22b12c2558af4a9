package main

import (
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const module = "example.com/groovewright/"

// way is the one way through, floor by floor: a package imports only those of lower floors, and
// what lies inside it. Tests of wall and what lies inside it may import all of these.
var way = [][]string{
	{"fraction/fault"}, {"fraction/enum"}, {"fraction"}, {"fraction/money", "fraction/warning"}, {"fraction/fractiontest"}, {"groove"}, {"cutout"}, {"nest", "finish"},
	{"wall"}, {"wall/choice"}, {"wall/plan"}, {"wall/jobfile", "wall/drawing"}, {"wall/book"}, {"wall/verify"}, {"cmd"},
}

// alone is the package that imports nothing of ours.
const alone = "wall/verify"

// direct are the dependencies besides the standard library, and whether only tests may use them.
var direct = map[string]bool{"github.com/shopspring/decimal": false, "github.com/google/go-cmp": true, "pgregory.net/rapid": true}

// Every import of every file points the one way, tests included, and goes outside only to the
// agreed dependencies.
func TestImportsPointOneWay(t *testing.T) {
	files := filesThat(t, ".go")
	for name, text := range files {
		relative, _ := filepath.Rel(root, name)
		parsed, err := parser.ParseFile(token.NewFileSet(), name, text, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, spec := range parsed.Imports {
			imported, _ := strconv.Unquote(spec.Path.Value)
			if fault := arrow(filepath.ToSlash(relative), imported); fault != "" {
				t.Errorf("%s imports %s: %s", relative, imported, fault)
			}
		}
	}
	if len(files) < 20 {
		t.Fatalf("only %d files", len(files))
	}
}

// arrow returns why a file must not import a package, or "".
func arrow(file, imported string) string {
	forTests := strings.HasSuffix(file, "_test.go") || onlyForTests(path.Dir(file))
	if inside, ok := strings.CutPrefix(imported, module); ok {
		to, toFloor := room(inside)
		here, fromFloor := room(file)
		test := strings.HasSuffix(file, "_test.go")
		switch {
		case onlyForTests(inside) && !forTests:
			return "only tests may use it"
		case fromFloor < 0, onlyForTests(inside): // examples and tests
			return ""
		case toFloor < 0:
			return "not a package of the way through"
		case to == here, test && strings.HasPrefix(here, "wall") && !strings.HasPrefix(inside, "cmd"):
			return ""
		case here == alone:
			return "it imports nothing of ours"
		case toFloor >= fromFloor:
			return "against the one way through"
		}
		return ""
	}
	if first, _, _ := strings.Cut(imported, "/"); !strings.Contains(first, ".") {
		return "" // the standard library
	}
	for name, testsOnly := range direct {
		if imported == name || strings.HasPrefix(imported, name+"/") {
			if testsOnly && !forTests {
				return "only tests may use it"
			}
			return ""
		}
	}
	return "not one of the agreed dependencies"
}

// onlyForTests reports whether a package serves tests alone: one named after its neighbour and
// "test", as the standard library's httptest.
func onlyForTests(folder string) bool { return strings.HasSuffix(folder, "test") }

// room returns the package of the way through in which a file or a package stands, and its floor;
// -1 for none.
func room(place string) (name string, floor int) {
	floor = -1
	for i, packages := range way {
		for _, p := range packages {
			if (place == p || strings.HasPrefix(place, p+"/")) && len(p) > len(name) {
				name, floor = p, i
			}
		}
	}
	return name, floor
}

// The check itself must be able to fail.
func TestArrowRefuses(t *testing.T) {
	for _, row := range []struct {
		file, imported string
		allowed        bool
	}{
		{"wall/room.go", module + "groove", true},
		{"wall/room.go", module + "wall/internal/x", true},
		{"wall/room.go", module + "nest", true},
		{"wall/room.go", module + "wall/plan", false},
		{"wall/room_test.go", module + "wall/plan", true},
		{"nest/ffd.go", module + "finish", false},
		{"nest/ffd.go", module + "nest/internal/line", true},
		{"wall/drawing/svg.go", module + "wall/jobfile", false},
		{"wall/verify/check.go", module + "fraction", false},
		{"wall/verify/check_test.go", module + "wall/plan", true},
		{"groove/phase_test.go", module + "wall/plan", false},
		{"cmd/groovewright/main.go", module + "finish", true},
		{"nest/ffd.go", "sort", true},
		{"nest/ffd.go", "github.com/shopspring/decimal", true},
		{"nest/ffd.go", "pgregory.net/rapid", false},
		{"nest/ffd_test.go", "pgregory.net/rapid", true},
		{"fraction/fractiontest/lengths.go", "pgregory.net/rapid", true},
		{"nest/ffd.go", module + "fraction/fractiontest", false},
		{"cmd/groovewright/main.go", module + "wall/verify", true},
		{"nest/ffd_test.go", module + "fraction/fractiontest", true},
		{"nest/ffd_test.go", "github.com/google/go-cmp/cmp", true},
		{"nest/ffd_test.go", "example.org/other", false},
	} {
		if fault := arrow(row.file, row.imported); (fault == "") != row.allowed {
			t.Errorf("arrow(%s, %s) = %q, want allowed %v", row.file, row.imported, fault, row.allowed)
		}
	}
}
