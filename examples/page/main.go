// Command page writes one HTML file that takes a person from the tape to the plan: a form to measure
// by, the plan in a web worker, and the files to take away. The file needs no network and no server.
//
//	go run ./examples/page -out page.html
package main

import (
	"bytes"
	"compress/gzip"
	"embed"
	"encoding/base64"
	"encoding/json"
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
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
var modules = []string{"dom", "schema", "state", "engine", "keypad", "fields", "measure", "plan", "take", "main"}

// profile is a ready profile as the page lists it.
type profile struct {
	Name  string `json:"name"`
	About string `json:"about"`
}

// build returns the page.
func build() ([]byte, error) {
	parts := map[string]string{"Style": drawing.Style() + read("style.css")}
	imports := map[string]string{}
	for _, name := range modules {
		imports[name] = "data:text/javascript;charset=utf-8;base64," + base64.StdEncoding.EncodeToString([]byte(read(name+".js")))
	}
	var profiles []profile
	for _, p := range groove.Builtin() {
		profiles = append(profiles, profile{p.Name, book.Profiles([]groove.Profile{p})})
	}
	for name, value := range map[string]any{"Modules": map[string]any{"imports": imports}, "Facts": map[string]any{"schema": json.RawMessage(jobfile.Schema()), "profiles": profiles}} {
		data, err := json.Marshal(value) // it escapes <
		if err != nil {
			return nil, err
		}
		parts[name] = string(data)
	}
	var err error
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
	parts["Worker"] = string(support) + read("worker.js")
	for name, text := range parts {
		if closing.MatchString(text) {
			return nil, fmt.Errorf("the part %s closes its own element", name)
		}
	}
	var page bytes.Buffer
	err = template.Must(template.New("page").Parse(read("index.html"))).Execute(&page, parts)
	return page.Bytes(), err
}

// closing is what would end a script or a style in the middle, or hide what follows.
var closing = regexp.MustCompile(`(?i)</s(cript|tyle)|<!--`)

func read(name string) string {
	data, err := web.ReadFile("web/" + name)
	if err != nil {
		panic(err) // it is embedded
	}
	return string(data)
}

// engine builds the planner for the browser and returns it compressed, as text. Without inlining it
// is a sixth smaller, and no slower where a browser compiles it.
func engine() (string, error) {
	dir, err := os.MkdirTemp("", "page")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "engine.wasm")
	run := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-gcflags=all=-l", "-ldflags=-s -w", "-o", file, "example.com/groovewright/examples/page/wasm")
	run.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := run.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w\n%s", err, said)
	}
	data, err := os.ReadFile(file)
	if err != nil {
		return "", err
	}
	var packed bytes.Buffer
	w, _ := gzip.NewWriterLevel(&packed, gzip.BestCompression) // the level is one of its own
	if _, err := w.Write(data); err != nil {
		return "", err
	}
	if err := w.Close(); err != nil {
		return "", err
	}
	return encode(packed.Bytes()), nil
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
