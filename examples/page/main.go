// Command page writes one HTML file that takes a person from the tape to the plan: a form to measure
// by, the plan in a web worker, and the files to take away. The file needs no network and no server.
//
//	go run ./examples/page -out page.html
package main

import (
	"bytes"
	"cmp"
	"compress/gzip"
	"embed"
	"encoding/binary"
	"encoding/json"
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"text/template"

	"example.com/groovewright/groove"
	"example.com/groovewright/wall/book"
	"example.com/groovewright/wall/drawing"
	"example.com/groovewright/wall/jobfile"
)

//go:embed web
var web embed.FS

func main() {
	out := flag.String("out", "page.html", "the file to write")
	flag.Parse()
	page, err := build()
	if err == nil {
		err = os.WriteFile(*out, page, 0o644)
	}
	if err != nil {
		log.Fatal(err)
	}
}

// modules are the scripts of the page, which import each other by these names.
var modules = []string{"dom", "packed", "schema", "state", "engine", "keypad", "fields", "measure", "plan", "take", "main"}

// profile is a ready profile as the page lists it.
type profile struct {
	Name  string `json:"name"`
	About string `json:"about"`
}

// notes are lines of a script for its reader alone, or empty, and what lines are set in by, which the page need not carry.
var notes = regexp.MustCompile(`(?m)^\s*(//.*)?\n|^ +`)

// escaped is what a URL or a string in JSON would write otherwise: a quarter shorter than base 64.
var escaped = strings.NewReplacer("%", "%25", "#", "%23", "\n", "%0A", `"`, "%22", `\`, "%5C")

// build returns the page.
func build() ([]byte, error) {
	parts := map[string]string{"Style": drawing.Style() + read("style.css")}
	imports := map[string]string{}
	for _, name := range modules {
		imports[name] = "data:text/javascript;charset=utf-8," + escaped.Replace(script(name))
	}
	var profiles []profile
	for _, p := range groove.Builtin() {
		profiles = append(profiles, profile{p.Name, book.Profiles([]groove.Profile{p})})
	}
	names, err := markup(map[string]any{"imports": imports})
	if err != nil {
		return nil, err
	}
	facts, err := markup(map[string]any{"schema": json.RawMessage(jobfile.Schema()), "profiles": profiles})
	if err != nil {
		return nil, err
	}
	parts["Modules"], parts["Facts"] = strings.ReplaceAll(string(names), "<", `\u003c`), packed(facts)
	if parts["Engine"], err = engine(); err != nil {
		return nil, err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, err
	}
	support, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return nil, err
	}
	parts["Worker"] = string(support) + strings.ReplaceAll(script("packed"), "export ", "") + script("worker")
	for name, text := range parts {
		if closing.MatchString(text) {
			return nil, fmt.Errorf("the part %s closes its own element", name)
		}
	}
	var page bytes.Buffer
	err = template.Must(template.New("page").Parse(read("index.html"))).Execute(&page, parts)
	return page.Bytes(), err
}

// markup returns a value as JSON, without the escapes that stand for markup.
func markup(value any) ([]byte, error) {
	var data bytes.Buffer
	to := json.NewEncoder(&data)
	to.SetEscapeHTML(false)
	err := to.Encode(value)
	return data.Bytes(), err
}

// closing is what would end a script or a style in the middle, or hide what follows.
var closing = regexp.MustCompile(`(?i)</s(cript|tyle)|<!--`)

// script returns a script without its notes.
func script(name string) string { return notes.ReplaceAllString(read(name+".js"), "") }

func read(name string) string {
	data, err := web.ReadFile("web/" + name)
	if err != nil {
		panic(err) // it is embedded
	}
	return string(data)
}

// hot are the packages that a search spends its time in. Without inlining a planner is a sixth
// smaller; with it in these alone a plan takes little more than half of the time.
var hot = []string{"example.com/groovewright/fraction", "example.com/groovewright/wall",
	"cmp", "slices", "math/bits"}

// engine builds the planner for the browser and returns it compressed, as text.
func engine() (string, error) {
	dir, err := os.MkdirTemp("", "page")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "engine.wasm")
	arguments := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l"}
	for _, p := range hot {
		arguments = append(arguments, "-gcflags="+p+"=")
	}
	run := exec.Command("go", append(arguments, "-o", file, "example.com/groovewright/examples/page/wasm")...)
	run.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := run.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w\n%s", err, said)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	return packed(fold(data)), nil
}

// packed returns data compressed, as text.
func packed(data []byte) string {
	var smaller bytes.Buffer
	w, _ := gzip.NewWriterLevel(&smaller, gzip.BestCompression) // the level is one of its own
	_, _ = w.Write(data)                                        // a buffer takes all
	_ = w.Close()
	return encode(smaller.Bytes())
}

// fold writes data as bytes that are new and copies of what stood anywhere before, which gzip, that
// looks back 32 KB, makes a tenth smaller than data. A copy gives way to a longer one from the next byte on. First come the lengths of data and of the first
// three parts, each in 4 bytes, then the parts: new bytes; how many of them stand before each copy and
// after the last; lengths of the copies; how far back each begins, 0 as far as the one before. Numbers
// are varints.
func fold(data []byte) []byte {
	const least, tries, again = 16, 512, 8 // bytes of a copy; places looked at; bytes of one from as far back
	const spared = 4                       // bytes that another copy must be longer by than one from as far back
	const hashed = 24                      // bits of a hash of a key
	var parts [4][]byte
	latest, before := make([]int32, 1<<hashed), make([]int32, len(data)) // places of a key's hash, plus 1
	place := func(i int) *int32 {                                        // the multiplier is Knuth's: 2^64 over the golden ratio
		first, second := binary.LittleEndian.Uint64(data[i:]), binary.LittleEndian.Uint64(data[i+8:])
		return &latest[(first*0x9e3779b97f4a7c15^second)*0x9e3779b97f4a7c15>>(64-hashed)]
	}
	from, end, last := 0, len(data)-least, 0
	alike := func(at, i int) (n int) {
		for i+n < len(data) && data[at+n] == data[i+n] {
			n++
		}
		return n
	}
	best := func(i int) (length, back int) {
		at := int(*place(i)) - 1
		for n := 0; at >= 0 && n < tries && i+length < len(data); at, n = int(before[at])-1, n+1 {
			if data[at+length] != data[i+length] { // no longer than the best
				continue
			}
			if n := alike(at, i); n > length {
				length, back = n, i-at
			}
		}
		if length < least {
			length = 0
		}
		if last > 0 {
			if n := alike(i-last, i); n >= again && n+spared >= length {
				length, back = n, 0
			}
		}
		return length, back
	}
	note := func(i int) {
		first := place(i)
		before[i], *first = *first, int32(i+1)
	}
	for i := 0; i <= end; {
		length, back := best(i)
		note(i)
		next := i + 1
		if length > 0 && next <= end {
			if longer, _ := best(next); longer > length {
				length = 0
			}
		}
		if length > 0 {
			parts[0] = append(parts[0], data[from:i]...)
			parts[1] = binary.AppendUvarint(parts[1], uint64(i-from))
			parts[2] = binary.AppendUvarint(parts[2], uint64(length))
			parts[3] = binary.AppendUvarint(parts[3], uint64(back))
			next = i + length
			from, last = next, cmp.Or(back, last)
		}
		for i++; i < next; i++ {
			if i <= end {
				note(i)
			}
		}
	}
	parts[0] = append(parts[0], data[from:]...)
	parts[1] = binary.AppendUvarint(parts[1], uint64(len(data)-from))
	folded := binary.LittleEndian.AppendUint32(nil, uint32(len(data)))
	for _, p := range parts[:3] {
		folded = binary.LittleEndian.AppendUint32(folded, uint32(len(p)))
	}
	return slices.Concat(folded, parts[0], parts[1], parts[2], parts[3])
}

// encode writes the number of the bytes, a space, and each 13 bits, the lowest first, as two of 91
// characters, # to }, the lower first; < is written as !. That is 16/13 of the data, where base 64 is
// 4/3 of it.
func encode(data []byte) string {
	text := fmt.Appendf(make([]byte, 0, len(data)*16/13+20), "%d ", len(data))
	for bits, n, i := uint32(0), 0, 0; i < len(data) || n > 0; {
		for ; n < 13 && i < len(data); i, n = i+1, n+8 {
			bits |= uint32(data[i]) << n
		}
		two := bits & (1<<13 - 1)
		text = append(text, byte('#'+two%91), byte('#'+two/91))
		bits, n = bits>>13, max(0, n-13)
	}
	return strings.ReplaceAll(string(text), "<", "!")
}
