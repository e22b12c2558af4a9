// Mutate plants small changes in a package, one at a time, and lists those that its tests let pass.
//
//	go run ./testdata/mutate -seed 1 -n 40 ./nest ./nest/internal/line
//
// The changes are drawn by the seed from all places of the named packages together. Each is compiled in an overlay, so
// that no file of the tree is written; one that does not compile is left out and another drawn. A change that
// fails a test or exceeds the time limit is killed.
package main

import (
	"cmp"
	"context"
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"time"
)

// A mutant replaces the bytes from start to end of a file.
type mutant struct {
	file, pkg  string
	line       int
	start, end int
	text       string
}

var (
	failed = regexp.MustCompile(`--- FAIL: \S+|panic: .*|fatal error: .*|\[build failed\]`)
	swaps  = map[token.Token][]token.Token{
		token.EQL: {token.NEQ}, token.NEQ: {token.EQL},
		token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR},
		token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
		token.LAND: {token.LOR}, token.LOR: {token.LAND},
		token.ADD: {token.SUB}, token.SUB: {token.ADD}, token.MUL: {token.QUO}, token.QUO: {token.MUL}, token.REM: {token.MUL},
		token.ADD_ASSIGN: {token.SUB_ASSIGN}, token.SUB_ASSIGN: {token.ADD_ASSIGN},
		token.INC: {token.DEC}, token.DEC: {token.INC}, token.BREAK: {token.CONTINUE}, token.CONTINUE: {token.BREAK},
	}
)

func main() {
	seed := flag.Uint64("seed", 1, "which changes are drawn")
	n := flag.Int("n", 40, "how many changes are tried")
	limit := flag.Duration("timeout", 0, "the longest run of the tests; 0 for thrice what they take, and 10 s")
	first := flag.String("first", "StayTheSame|Golden", "regular expression of quick tests that run before the others")
	also := flag.String("also", "", "further packages, by commas, whose tests try what survives")
	verbose := flag.Bool("v", false, "name the test that kills each change")
	flag.Parse()
	var all []mutant
	for _, pkg := range flag.Args() {
		list, err := exec.Command("go", "list", "-f", "{{range .GoFiles}}{{$.Dir}}/{{.}}\n{{end}}", pkg).Output()
		check(err)
		for file := range strings.FieldsSeq(string(list)) {
			all = append(all, mutants(file, pkg)...)
		}
	}
	rand.New(rand.NewPCG(*seed, 0)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	here, err := filepath.Abs("x")
	check(err)
	here = strings.TrimSuffix(here, "x")
	temp, err := os.MkdirTemp("", "mutate")
	check(err)
	defer os.RemoveAll(temp)
	if start := time.Now(); *limit == 0 {
		for range 2 { // the first compiles
			start = time.Now()
			if by := run(time.Hour, "", flag.Args()...); by != "" {
				check(fmt.Errorf("without a change: %s", by))
			}
		}
		*limit = 3*time.Since(start) + 10*time.Second
	}
	tried, killed, byAlso, undecided := 0, 0, 0, 0
	for _, m := range all {
		if tried == *n {
			break
		}
		overlay, was := m.write(temp)
		by := run(*limit, overlay, "-run="+*first, m.pkg)
		if by == broken {
			continue
		} else if by == "" {
			by = run(*limit, overlay, m.pkg)
		}
		tried++
		if by == "" && *also != "" {
			if by = run(*limit, overlay, strings.Split(*also, ",")...); by != "" && by != late {
				byAlso++
			}
		}
		switch by {
		case "":
		case late:
			undecided++
		default:
			killed++
		}
		if by == "" || *verbose {
			fmt.Printf("%s:%d: %q -> %q  %s\n", strings.TrimPrefix(m.file, here), m.line, was, m.text, cmp.Or(by, "SURVIVES"))
		}
	}
	fmt.Printf("%s: seed %d, %d places, killed %d of %d (%d of them only by %q), and %d that ran late are undecided\n",
		strings.Join(flag.Args(), " "), *seed, len(all), killed, tried-undecided, byAlso, *also, undecided)
}

func check(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// What run returns where a change does not compile, and where the tests do not end in time: the change may have made a
// loop endless, or the machine is busy.
const broken, late = "[build failed]", "[late]"

// run returns what failed in the tests of the packages, or "".
func run(limit time.Duration, overlay string, packages ...string) string {
	ctx, cancel := context.WithTimeout(context.Background(), limit+time.Minute) // compiling has the minute
	defer cancel()
	args := []string{"test", "-overlay", overlay, "-short", "-failfast", "-count=1", "-vet=off", "-ldflags=-s -w", "-timeout", limit.String()}
	out, err := exec.CommandContext(ctx, "go", append(args, packages...)...).CombinedOutput()
	switch {
	case err == nil:
		return ""
	case ctx.Err() != nil || strings.Contains(string(out), "panic: test timed out after"):
		return late
	}
	return cmp.Or(string(failed.Find(out)), err.Error())
}

// write makes the overlay of one change and returns its path and the text that it replaces.
func (m mutant) write(folder string) (overlay, was string) {
	source, err := os.ReadFile(m.file)
	check(err)
	file, overlay := filepath.Join(folder, "changed.go"), filepath.Join(folder, "overlay.json")
	check(os.WriteFile(file, slices.Concat(source[:m.start], []byte(m.text), source[m.end:]), 0o600))
	text, err := json.Marshal(map[string]any{"Replace": map[string]string{m.file: file}})
	check(err)
	check(os.WriteFile(overlay, text, 0o600))
	return overlay, string(source[m.start:m.end])
}

// mutants returns all changes of a file.
func mutants(file, pkg string) (all []mutant) {
	source, err := os.ReadFile(file)
	check(err)
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, file, source, parser.SkipObjectResolution)
	check(err)
	add := func(from, to token.Pos, text string) {
		p := set.Position(from)
		all = append(all, mutant{file, pkg, p.Line, p.Offset, set.Position(to).Offset, text})
	}
	of := func(n ast.Node) string {
		return string(source[set.Position(n.Pos()).Offset:set.Position(n.End()).Offset])
	}
	swap := func(at token.Pos, op token.Token) {
		for _, other := range swaps[op] {
			add(at, at+token.Pos(len(op.String())), other.String())
		}
	}
	var walk func(root ast.Node, results *ast.FieldList)
	walk = func(root ast.Node, results *ast.FieldList) {
		ast.Inspect(root, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.FuncDecl:
				if n.Body != nil {
					walk(n.Body, n.Type.Results)
				}
				return false
			case *ast.FuncLit:
				walk(n.Body, n.Type.Results)
				return false
			case *ast.BinaryExpr:
				swap(n.OpPos, n.Op)
			case *ast.IfStmt:
				if c, ok := n.Cond.(*ast.BinaryExpr); !ok || len(swaps[c.Op]) == 0 {
					add(n.Cond.Pos(), n.Cond.End(), "!("+of(n.Cond)+")")
				}
			case *ast.BasicLit:
				if n.Kind == token.INT {
					add(n.Pos(), n.End(), "("+n.Value+" + 1)")
				}
			case *ast.BranchStmt:
				swap(n.TokPos, n.Tok)
			case *ast.IncDecStmt:
				swap(n.TokPos, n.Tok)
				add(n.Pos(), n.End(), "")
			case *ast.AssignStmt:
				swap(n.TokPos, n.Tok)
				if n.Tok != token.DEFINE {
					add(n.Pos(), n.End(), "")
				}
			case *ast.ExprStmt:
				add(n.Pos(), n.End(), "")
			case *ast.ReturnStmt:
				zeroed(results, n, of, add)
			}
			return true
		})
	}
	walk(tree, nil)
	return all
}

// zeroed adds a change for each result that is returned: its type's zero value.
func zeroed(types *ast.FieldList, n *ast.ReturnStmt, of func(ast.Node) string, add func(from, to token.Pos, text string)) {
	if types == nil || len(n.Results) != types.NumFields() {
		return
	}
	i := 0
	for _, field := range types.List {
		for range max(1, len(field.Names)) {
			if r := n.Results[i]; !slices.Contains([]string{"nil", "0", "false", `""`}, of(r)) && !strings.HasSuffix(of(r), "{}") {
				add(r.Pos(), r.End(), "*new("+of(field.Type)+")")
			}
			i++
		}
	}
}
