package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.com/groovewright/"

// way is the one way through: a package may import those before it.
var way = []string{"fraction", "groove", "cutout", "wall", "nest", "finish", "cmd"}

// direct are the dependencies besides the standard library, and whether only
// tests may use them.
var direct = map[string]bool{"github.com/shopspring/decimal": false, "github.com/google/go-cmp": true, "pgregory.net/rapid": true}

// Every import of every file points the one way, tests included, and goes
// outside only to the agreed dependencies.
func TestImportsPointOneWay(t *testing.T) {
	root := filepath.Join("..", "..")
	files := 0
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(name, ".go") {
			return err
		}
		files++
		relative, _ := filepath.Rel(root, name)
		parsed, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range parsed.Imports {
			imported, _ := strconv.Unquote(spec.Path.Value)
			if fault := arrow(filepath.ToSlash(relative), imported); fault != "" {
				t.Errorf("%s imports %s: %s", relative, imported, fault)
			}
		}
		return nil
	})
	if err != nil || files < 20 {
		t.Fatalf("walked %d files: %v", files, err)
	}
}

// arrow returns why a file must not import a package, or "".
func arrow(file, imported string) string {
	from := rank(file)
	forTests := strings.HasSuffix(file, "_test.go") || onlyForTests(path.Dir(file))
	if inside, ok := strings.CutPrefix(imported, module); ok {
		to := rank(inside)
		switch {
		case onlyForTests(inside) && !forTests:
			return "only tests may use it"
		case from < 0: // examples
			return ""
		case to < 0:
			return "not a package of the way through"
		case to > from:
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

// onlyForTests reports whether a package serves tests alone: one named after
// its neighbour and "test", as the standard library's httptest, or one below the
// independent checker of plans.
func onlyForTests(folder string) bool {
	return strings.HasSuffix(folder, "test") || strings.HasPrefix(folder+"/", "cmd/groovewright/internal/proof/")
}

// rank returns where on the way through a file or package stands, -1 for none.
func rank(place string) int {
	first, _, _ := strings.Cut(place, "/")
	return slices.Index(way, first)
}

// The check itself must be able to fail.
func TestArrowRefuses(t *testing.T) {
	for _, row := range []struct {
		file, imported string
		allowed        bool
	}{
		{"wall/room.go", module + "groove", true},
		{"wall/room.go", module + "wall/internal/x", true},
		{"wall/room.go", module + "nest", false},
		{"groove/phase_test.go", module + "cmd/groovewright/internal/plan", false},
		{"cmd/groovewright/main.go", module + "finish", true},
		{"nest/ffd.go", "sort", true},
		{"nest/ffd.go", "github.com/shopspring/decimal", true},
		{"nest/ffd.go", "pgregory.net/rapid", false},
		{"nest/ffd_test.go", "pgregory.net/rapid", true},
		{"fraction/fractiontest/lengths.go", "pgregory.net/rapid", true},
		{"nest/ffd.go", module + "fraction/fractiontest", false},
		{"cmd/groovewright/main.go", module + "cmd/groovewright/internal/proof", false},
		{"cmd/groovewright/internal/proof/rooms/room.go", "pgregory.net/rapid", true},
		{"nest/ffd_test.go", module + "fraction/fractiontest", true},
		{"nest/ffd_test.go", "github.com/google/go-cmp/cmp", true},
		{"nest/ffd_test.go", "example.org/other", false},
	} {
		if fault := arrow(row.file, row.imported); (fault == "") != row.allowed {
			t.Errorf("arrow(%s, %s) = %q, want allowed %v", row.file, row.imported, fault, row.allowed)
		}
	}
}
