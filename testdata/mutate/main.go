// Mutate plants small changes in a package, one at a time, and lists those that its tests let pass.
//
//	go run ./testdata/mutate -seed 1 -n 40 ./nest ./nest/internal/line
//
// The changes are drawn by the seed from all places of the named packages together. All are compiled in one overlay, so
// that no file of the tree is written: a function begins with the bodies that it has under its changes, and the number in
// MUTANT says which one runs. One that does not compile is left out and another drawn. Only the tests that reach a change
// run, the quickest first. A change that fails a test is killed, one whose tests end late is undecided.
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
	"strconv"
	"strings"
	"time"
)

// A mutant replaces the bytes from start to end of a file.
type mutant struct {
	file, pkg   string
	line, col   int
	first, last int // lines of its function
	open, shut  int // the bytes of that function's body
	start, end  int
	text        string
	after       string // what follows the changed body: a return where the function returns nothing
}

var (
	failed = regexp.MustCompile(`--- FAIL: \S+|panic: .*|fatal error: .*|\[build failed\]`)
	fault  = regexp.MustCompile(`(?m)(\S+\.go):(\d+):\d+: `)
	block  = regexp.MustCompile(`(?m)^\S+/(\S+\.go):(\d+)\.(\d+),(\d+)\.(\d+) \d+ [1-9]`)
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
	at := flag.String("at", "", "take only changes at places such as file.go:12, by commas")
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
	if *at != "" {
		all = slices.DeleteFunc(all, func(m mutant) bool {
			return !slices.Contains(strings.Split(*at, ","), fmt.Sprintf("%s:%d", filepath.Base(m.file), m.line))
		})
	}
	rand.New(rand.NewPCG(*seed, 0)).Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
	here, err := filepath.Abs("x")
	check(err)
	here = strings.TrimSuffix(here, "x")
	temp, err := os.MkdirTemp("", "mutate")
	check(err)
	defer os.RemoveAll(temp)
	of := map[string][]test{}
	tried, killed, undecided := 0, 0, 0
	for _, pkg := range flag.Args() {
		of[pkg] = tests(pkg, temp)
	}
	chosen := choose(all, *n, temp)
	for _, pkg := range flag.Args() {
		mine := slices.DeleteFunc(slices.Clone(chosen), func(m mutant) bool { return m.pkg != pkg })
		if len(mine) == 0 {
			continue
		}
		plant(mine, temp)
		check(compile(pkg, temp, "-overlay", filepath.Join(temp, "overlay.json")))
		folder := filepath.Dir(mine[0].file)
		sound := slices.DeleteFunc(of[pkg], func(t test) bool { // one of speed may fail: a longer function is not inlined
			return group{[]string{t.name}, 3*t.took + time.Minute}.run(folder, temp, 0) != ""
		})
		for i, m := range mine {
			tried++
			by := ""
			for left := m.groups(slices.Clone(sound)); by == "" && len(left) > 0; left = left[1:] {
				by = left[0].run(folder, temp, i+1)
			}
			switch by {
			case "":
			case late:
				undecided++
			default:
				killed++
			}
			if by == "" || *verbose {
				fmt.Printf("%s:%d: %q -> %q  %s\n", strings.TrimPrefix(m.file, here), m.line, m.was(), m.text, cmp.Or(by, "SURVIVES"))
			}
		}
	}
	fmt.Printf("%s: seed %d, %d places, killed %d of %d, and %d that ran late are undecided\n",
		strings.Join(flag.Args(), " "), *seed, len(all), killed, tried-undecided, undecided)
}

func check(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// What run returns where the tests do not end in time: the change may have made a loop endless, or the machine is busy.
const late = "[late]"

// A test with the time that it takes and the places that it reaches: file, and lines and columns from and to.
type test struct {
	name    string
	took    time.Duration
	reaches []place
}

type place struct {
	file                 string
	line, col, last, end int
}

// tests runs each test of a package by itself, the quickest come first.
func tests(pkg, temp string) (all []test) {
	check(compile(pkg, temp, "-cover"))
	folder, err := exec.Command("go", "list", "-f", "{{.Dir}}", pkg).Output()
	check(err)
	binary, profile := filepath.Join(temp, "run.test"), filepath.Join(temp, "profile")
	run := func(args ...string) []byte {
		c := exec.Command(binary, append(args, "-test.short")...)
		c.Dir = strings.TrimSpace(string(folder))
		out, err := c.CombinedOutput()
		if err != nil {
			check(fmt.Errorf("without a change: %s", out))
		}
		return out
	}
	for name := range strings.FieldsSeq(string(run("-test.list", "^(Test|Example|Fuzz)"))) {
		began := time.Now()
		run("-test.run=^"+name+"$", "-test.coverprofile="+profile)
		t := test{name: name, took: time.Since(began)}
		covered, err := os.ReadFile(profile)
		check(err)
		for _, b := range block.FindAllStringSubmatch(string(covered), -1) {
			p := place{file: b[1]}
			for i, n := range []*int{&p.line, &p.col, &p.last, &p.end} {
				*n, err = strconv.Atoi(b[2+i])
				check(err)
			}
			t.reaches = append(t.reaches, p)
		}
		all = append(all, t)
	}
	slices.SortFunc(all, func(a, b test) int { return cmp.Compare(a.took, b.took) })
	return all
}

// A group of tests runs in one go.
type group struct {
	names []string
	limit time.Duration
}

// groups returns the tests that reach the change, the quickest first: those that take two seconds in all, then those of
// six, and so on. What lies in no block of statements, as the cases of a switch, is reached by those that reach its function.
func (m mutant) groups(tests []test) (all []group) {
	after := func(l, c, line, col int) int { return cmp.Or(cmp.Compare(l, line), cmp.Compare(c, col)) }
	file := filepath.Base(m.file)
	within := func(p place) bool {
		return p.file == file && after(m.line, m.col, p.line, p.col) >= 0 && after(m.line, m.col, p.last, p.end) <= 0
	}
	inFunction := func(p place) bool { return p.file == file && m.first <= p.line && p.line <= m.last }
	near := func(in func(place) bool) (list []test) {
		for _, t := range tests {
			if slices.ContainsFunc(t.reaches, in) {
				list = append(list, t)
			}
		}
		return list
	}
	if list := near(within); len(list) > 0 {
		tests = list
	} else {
		tests = near(inFunction)
	}
	for most := 2 * time.Second; len(tests) > 0; most *= 3 {
		var g group
		for sum := time.Duration(0); len(tests) > 0 && (len(g.names) == 0 || sum+tests[0].took <= most); tests = tests[1:] {
			sum += tests[0].took
			g.names, g.limit = append(g.names, tests[0].name), 3*sum+time.Minute
		}
		all = append(all, g)
	}
	return all
}

// compile makes the tests of a package with more arguments.
func compile(pkg, temp string, more ...string) error {
	args := append([]string{"test", "-c", "-o", filepath.Join(temp, "run.test"), "-vet=off", "-ldflags=-s -w"}, more...)
	return exec.Command("go", append(args, pkg)...).Run()
}

// run runs the tests that compile made in the folder of their package under the change of a number, none for 0, and
// returns what failed, or "".
func (g group) run(folder, temp string, number int) string {
	ctx, cancel := context.WithTimeout(context.Background(), g.limit+30*time.Second) // a tight loop may outlast the test's own limit
	defer cancel()
	c := exec.CommandContext(ctx, filepath.Join(temp, "run.test"), "-test.short", "-test.failfast", "-test.timeout="+g.limit.String(),
		"-test.run=^("+strings.Join(g.names, "|")+")$")
	c.Dir, c.Env = folder, append(os.Environ(), "MUTANT="+strconv.Itoa(number))
	out, err := c.CombinedOutput()
	switch {
	case err == nil:
		return ""
	case ctx.Err() != nil || strings.Contains(string(out), "panic: test timed out after"):
		return late
	}
	return cmp.Or(string(failed.Find(out)), err.Error())
}

// was returns the text that the change replaces.
func (m mutant) was() string {
	source, err := os.ReadFile(m.file)
	check(err)
	return string(source[m.start:m.end])
}

// choose returns the first n changes that compile.
func choose(all []mutant, n int, temp string) []mutant {
	for {
		chosen := all[:min(n, len(all))]
		wrong := map[mutant]bool{}
		for _, pkg := range flag.Args() {
			mine := slices.DeleteFunc(slices.Clone(chosen), func(m mutant) bool { return m.pkg != pkg })
			if len(mine) == 0 {
				continue
			}
			lines := plant(mine, temp)
			out, err := exec.Command("go", "build", "-gcflags=-e", "-overlay", filepath.Join(temp, "overlay.json"), pkg).CombinedOutput()
			if err == nil {
				continue
			}
			was := len(wrong)
			for _, at := range fault.FindAllStringSubmatch(string(out), -1) {
				line, err := strconv.Atoi(at[2])
				check(err)
				for _, m := range lines[filepath.Base(at[1])][line] {
					wrong[m] = true
				}
			}
			if len(wrong) == was {
				check(fmt.Errorf("%s", out))
			}
		}
		if len(wrong) == 0 {
			return chosen
		}
		all = slices.DeleteFunc(slices.Clone(all), func(m mutant) bool { return wrong[m] })
	}
}

// plant writes an overlay of a package with all its changes, numbered from 1 on, and returns those that a line of
// a changed file belongs to: one on a line of its body, all of the function elsewhere in it.
func plant(all []mutant, temp string) (lines map[string]map[int][]mutant) {
	replace, lines := map[string]string{}, map[string]map[int][]mutant{}
	write := func(file, text string) {
		replace[file] = filepath.Join(temp, strconv.Itoa(len(replace))+".go")
		check(os.WriteFile(replace[file], []byte(text), 0o600))
	}
	files := map[string][]int{} // numbers of changes
	for i, m := range all {
		files[m.file] = append(files[m.file], i)
	}
	for file, numbers := range files {
		source, err := os.ReadFile(file)
		check(err)
		slices.SortStableFunc(numbers, func(a, b int) int { return cmp.Compare(all[a].open, all[b].open) })
		var out strings.Builder
		done, of, line := 0, map[int][]mutant{}, 1
		emit := func(text []byte, belongs ...mutant) {
			out.Write(text)
			for range strings.Count(string(text), "\n") + 1 {
				of[line] = append(of[line], belongs...)
				line++
			}
			line--
		}
		for k := 0; k < len(numbers); {
			open, shut, next := all[numbers[k]].open, all[numbers[k]].shut, k
			var together []mutant
			for ; next < len(numbers) && all[numbers[next]].open == open; next++ {
				together = append(together, all[numbers[next]])
			}
			emit(source[done:open])
			for ; k < next; k++ {
				m := all[numbers[k]]
				emit(fmt.Appendf(nil, "\nif plantedMutant == %d {", numbers[k]+1))
				emit(slices.Concat(source[open:m.start], []byte(m.text), source[m.end:shut]), m)
				emit([]byte("\n" + m.after + "}\n"))
			}
			emit([]byte("\n"))
			emit(source[open:shut], together...)
			done = shut
		}
		emit(source[done:])
		write(file, out.String())
		lines[filepath.Base(replace[file])] = of
	}
	name, err := exec.Command("go", "list", "-f", "{{.Name}}", all[0].pkg).Output()
	check(err)
	write(filepath.Join(filepath.Dir(all[0].file), "planted_mutant.go"), "package "+string(name)+`
import ("os"; "strconv")
var plantedMutant, _ = strconv.Atoi(os.Getenv("MUTANT"))
`)
	text, err := json.Marshal(map[string]any{"Replace": replace})
	check(err)
	check(os.WriteFile(filepath.Join(temp, "overlay.json"), text, 0o600))
	return lines
}

// mutants returns all changes of a file.
func mutants(file, pkg string) (all []mutant) {
	source, err := os.ReadFile(file)
	check(err)
	set := token.NewFileSet()
	tree, err := parser.ParseFile(set, file, source, parser.SkipObjectResolution)
	check(err)
	var first, last, open, shut int
	var after string
	add := func(from, to token.Pos, text string) {
		p := set.Position(from)
		all = append(all, mutant{file, pkg, p.Line, p.Column, first, last, open, shut, p.Offset, set.Position(to).Offset, text, after})
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
			case *ast.GenDecl:
				return root != tree // constants and variables of the package stay
			case *ast.FuncDecl:
				if n.Body != nil {
					first, last = set.Position(n.Pos()).Line, set.Position(n.End()).Line
					open, shut = set.Position(n.Body.Lbrace).Offset+1, set.Position(n.Body.Rbrace).Offset
					if after = ""; n.Type.Results == nil {
						after = "return\n"
					}
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
