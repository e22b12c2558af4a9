package jobfile

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// MaxBytes is the longest job file that is read. The largest room that is
// sensible (a thousand stations) stays below a tenth of it.
const MaxBytes = 4 << 20

// maxDepth is how deeply objects and lists may nest; a job needs seven levels.
const maxDepth = 24

// A node is one JSON value together with the place where it stood, so that
// whatever is found wrong with it later can still be named by its full path.
type node struct {
	path    string
	offset  int64 // in bytes from the start of the file, for the order of faults
	kind    nodeKind
	text    string   // of a string, or of a number as it was written
	members []member // of an object, in the order of the file
	index   map[string]*node
	items   []*node // of a list
}

// member is one field of an object.
type member struct {
	key   string
	value *node
}

// nodeKind is the JSON type of a node.
type nodeKind int

const (
	nullNode nodeKind = iota
	boolNode
	numberNode
	stringNode
	listNode
	objectNode
)

// String returns the kind as a fault names it.
func (k nodeKind) String() string {
	return [...]string{"null", "a true or false", "a number", "a text", "a list", "an object"}[k]
}

// quoted returns the value as a fault shows it: a text in quotes, a number as
// it was written, and only the kind of a list or an object, which may be long.
func (n *node) quoted() string {
	switch n.kind {
	case stringNode:
		return strconv.Quote(shorten(n.text))
	case numberNode, boolNode:
		return shorten(n.text)
	}
	return n.kind.String()
}

// scalar reports whether the value can be shown, since it is no object, list or
// null.
func (n *node) scalar() bool {
	return n.kind == stringNode || n.kind == numberNode || n.kind == boolNode
}

// maxShown is how many characters of a wrong value a fault repeats.
const maxShown = 60

// shorten cuts a text that is too long to repeat.
func shorten(s string) string {
	if utf8.RuneCountInString(s) <= maxShown {
		return s
	}
	return string([]rune(s)[:maxShown]) + "…"
}

// member returns the value of a field, nil if it is absent.
func (n *node) member(key string) *node { return n.index[key] }

// find returns the node at a path, or the one nearest above it that is there.
func (n *node) find(path string) *node {
	children := n.items
	for _, m := range n.members {
		children = append(children, m.value)
	}
	for _, c := range children {
		if rest, ok := strings.CutPrefix(path, c.path); ok && (rest == "" || rest[0] == '.' || rest[0] == '[') {
			return c.find(path)
		}
	}
	return n
}

// A parser turns the bytes of a file into nodes. What can be read past (a field
// that stands twice) is a fault; what cannot (broken JSON) is an error.
type parser struct {
	decoder *json.Decoder
	data    []byte
	faults  Faults
}

// parse reads one JSON value and refuses anything after it.
func parse(data []byte) (*node, Faults) {
	if len(data) > MaxBytes {
		return nil, Faults{{Kind: ErrSyntax, Problem: fmt.Sprintf("the file has more than %d bytes", MaxBytes), Want: "a job file"}}
	}
	if !utf8.Valid(data) {
		return nil, Faults{{Kind: ErrSyntax, Problem: "the file is not UTF-8 text", Want: "a job file saved as UTF-8"}}
	}
	p := &parser{decoder: json.NewDecoder(bytes.NewReader(data)), data: data}
	p.decoder.UseNumber()
	root, err := p.value("", 0)
	if err != nil {
		return nil, append(p.faults, p.syntax(err, root))
	}
	if _, err := p.decoder.Token(); !errors.Is(err, io.EOF) {
		return nil, append(p.faults, Fault{
			Kind: ErrSyntax, Problem: "something follows the end of the job at " + p.place(p.decoder.InputOffset()),
			Want: "one job, a single JSON object",
		})
	}
	return root, p.faults
}

// value reads the next value, which stands at path. On an error it returns the
// innermost node that was being read, so that the fault can say where.
func (p *parser) value(path string, depth int) (*node, error) {
	n := &node{path: path, offset: p.start()}
	if depth > maxDepth {
		return n, fmt.Errorf("lists and objects nest deeper than %d", maxDepth)
	}
	token, err := p.decoder.Token()
	if err != nil {
		return n, err
	}
	switch t := token.(type) {
	case nil:
		n.kind = nullNode
	case bool:
		n.kind, n.text = boolNode, strconv.FormatBool(t)
	case json.Number:
		n.kind, n.text = numberNode, t.String()
	case string:
		n.kind, n.text = stringNode, t
	case json.Delim:
		if t == '{' {
			n.kind = objectNode
			return p.object(n, depth)
		}
		n.kind = listNode
		return p.list(n, depth)
	}
	return n, nil
}

// object reads the fields of n up to its closing brace.
func (p *parser) object(n *node, depth int) (*node, error) {
	n.index = make(map[string]*node)
	for p.decoder.More() {
		token, err := p.decoder.Token()
		if err != nil {
			return n, err
		}
		key, _ := token.(string) // the decoder lets nothing else stand here
		value, err := p.value(join(n.path, key), depth+1)
		if err != nil {
			return value, err
		}
		if n.member(key) != nil {
			p.faults = append(p.faults, Fault{
				Path: value.path, Kind: ErrTwice, Problem: "this field stands twice", Want: "each field once", offset: value.offset,
			})
			continue
		}
		n.members, n.index[key] = append(n.members, member{key, value}), value
	}
	_, err := p.decoder.Token()
	return n, err
}

// list reads the items of n up to its closing bracket.
func (p *parser) list(n *node, depth int) (*node, error) {
	for p.decoder.More() {
		item, err := p.value(at(n.path, len(n.items)), depth+1)
		if err != nil {
			return item, err
		}
		n.items = append(n.items, item)
	}
	_, err := p.decoder.Token()
	return n, err
}

// start returns the offset of the next value, past the space and the
// punctuation before it.
func (p *parser) start() int64 {
	at := p.decoder.InputOffset()
	for at < int64(len(p.data)) && bytes.IndexByte([]byte(" \t\r\n:,"), p.data[at]) >= 0 {
		at++
	}
	return at
}

// syntax turns an error of the JSON decoder into a fault with a line and a column.
func (p *parser) syntax(err error, where *node) Fault {
	f := Fault{Path: where.path, Kind: ErrSyntax, Want: "a job file in JSON", Err: err, offset: where.offset}
	offset := p.decoder.InputOffset()
	var broken *json.SyntaxError
	switch {
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		f.Problem = "the file ends too early, at " + p.place(int64(len(p.data)))
	case errors.As(err, &broken):
		offset = max(broken.Offset-1, offset)
		f.Problem = fmt.Sprintf("not JSON at %s: %s", p.place(offset), p.slip(err, offset))
	default:
		f.Problem = fmt.Sprintf("not a job at %s: %v", p.place(offset), err)
	}
	return f
}

// slip names the slip of the pen that most often leads to an error of the JSON
// decoder, which says only what it found; its own words where none is known.
func (p *parser) slip(err error, offset int64) string {
	found, _ := utf8.DecodeRune(p.data[min(offset, int64(len(p.data))):])
	says := func(part string) bool { return strings.Contains(err.Error(), part) }
	switch {
	case strings.ContainsRune("“”„«»‘’'", found):
		return fmt.Sprintf("%q is not the straight quote that JSON wants", found)
	case says("in string literal"):
		return "a text is not closed with a quote"
	case found == '/':
		return "JSON has no comments"
	case says("after object key:value pair"), says("after array element"):
		return fmt.Sprintf("a comma or a quote is missing before %q", found)
	case says("after object key"):
		return fmt.Sprintf("a colon is missing before %q", found)
	case found == '}' || found == ']':
		return fmt.Sprintf("a comma before the closing %q, or a value is missing there", found)
	case says("looking for beginning of object key"), strings.HasSuffix(err.Error(), "'"): // the decoder says no more of a first field
		return fmt.Sprintf("the name of a field, in quotes, should stand where %q does", found)
	case says("looking for beginning of value"):
		return fmt.Sprintf("a value should stand where %q does; texts and lengths are in quotes", found)
	}
	return err.Error()
}

// place returns an offset as a person finds it in an editor.
func (p *parser) place(offset int64) string {
	before := p.data[:min(max(offset, 0), int64(len(p.data)))]
	line := 1 + bytes.Count(before, []byte{'\n'})
	column := 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
	return fmt.Sprintf("line %d, column %d", line, column)
}

// join adds a field to a path. A key that is not a plain word is quoted, so
// that a path is always one line and cannot be misread.
func join(path, key string) string {
	if !plain(key) {
		return path + "[" + strconv.Quote(shorten(key)) + "]"
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// at adds the index of a list item to a path.
func at(path string, index int) string {
	return path + "[" + strconv.Itoa(index) + "]"
}

// plain reports whether a key can stand in a path as it is.
func plain(key string) bool {
	if key == "" || len(key) > maxShown {
		return false
	}
	for _, c := range []byte(key) {
		if c != '_' && (c < '0' || c > '9') && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z') {
			return false
		}
	}
	return true
}
