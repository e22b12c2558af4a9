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

	"example.com/groovewright/fraction/fault"
)

// MaxBytes is the longest file that is read, ten times the largest sensible room (1000 stations).
const MaxBytes = 4 << 20

// maxDepth is how deeply objects and lists may nest; a job needs seven levels.
const maxDepth = 24

// node is one JSON value and the place where it stood.
type node struct {
	kind         nodeKind
	line, column int
	text         string           // of a string, or of a number as it was written
	fields       map[string]*node // of an object
	items        []*node          // of a list
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

// shown returns the value as a fault shows it: a text in quotes, a number as it was written,
// nothing for a list, an object or null.
func (n *node) shown() string {
	switch n.kind {
	case stringNode:
		return strconv.Quote(shorten(n.text))
	case numberNode, boolNode:
		return shorten(n.text)
	}
	return ""
}

// find returns the node at a path, or the one nearest above it; exact reports which.
func (n *node) find(path fault.Path) (found *node, exact bool) {
	for _, s := range path {
		child := n.fields[s.Name]
		if s.Name == "" && s.Index >= 0 && s.Index < len(n.items) {
			child = n.items[s.Index]
		}
		if child == nil {
			return n, false
		}
		n = child
	}
	return n, true
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

// parser turns the bytes of a file into nodes. What can be read past (a field that stands twice) is
// a fault; what cannot (broken JSON) ends the reading.
type parser struct {
	decoder *json.Decoder
	data    []byte
	path    fault.Path // of the innermost value that is being read
	faults  []*fault.Fault

	at, line, column int // how far places have been counted
}

// parse reads one JSON value, nil where there is none, and refuses anything after it.
func parse(r io.Reader) (*node, []*fault.Fault, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1)) // one byte more than a file may have
	if err != nil {
		return nil, nil, fmt.Errorf("cannot read the file: %w", err)
	}
	// A byte order mark, which some editors write, is ignored as RFC 8259, section 8.1, allows.
	p := &parser{data: Standard(bytes.TrimPrefix(data, []byte("\ufeff"))), line: 1, column: 1}
	p.decoder = json.NewDecoder(bytes.NewReader(p.data))
	p.decoder.UseNumber()
	if len(data) > MaxBytes {
		p.syntax(fmt.Sprintf("the file has more than %d bytes", MaxBytes), 0)
	} else if !utf8.Valid(data) {
		p.syntax("the file is not UTF-8 text", 0)
	} else if root, err := p.value(nil); err != nil {
		p.broken(err)
	} else if after := bytes.TrimLeft(p.data[p.decoder.InputOffset():], " \t\r\n"); len(after) > 0 {
		p.syntax("something follows the end of the value", int64(len(p.data)-len(after)))
	} else {
		return root, p.faults, nil
	}
	return nil, p.faults, nil
}

// value reads the next value, which stands at path.
func (p *parser) value(path fault.Path) (*node, error) {
	p.path = path
	n := &node{}
	n.line, n.column = p.place(p.start())
	if len(path) > maxDepth {
		return nil, fmt.Errorf("lists and objects nest deeper than %d", maxDepth)
	}
	token, err := p.decoder.Token()
	if err != nil {
		return nil, err
	}
	switch t := token.(type) {
	case bool:
		n.kind, n.text = boolNode, strconv.FormatBool(t)
	case json.Number:
		n.kind, n.text = numberNode, t.String()
	case string:
		n.kind, n.text = stringNode, t
	case json.Delim:
		n.kind = listNode
		if t == '{' {
			n.kind, n.fields = objectNode, map[string]*node{}
		}
		return n, p.parts(n, path)
	}
	return n, nil
}

// parts reads the fields or the items of n up to its closing bracket.
func (p *parser) parts(n *node, path fault.Path) error {
	for p.decoder.More() {
		if n.kind == listNode {
			item, err := p.value(under(path, len(n.items)))
			if err != nil {
				return err
			}
			n.items = append(n.items, item)
			continue
		}
		token, err := p.decoder.Token()
		if err != nil {
			return err
		}
		key, _ := token.(string) // the decoder lets nothing else stand here
		value, err := p.value(under(path, named(key)))
		if err != nil {
			return err
		}
		if p.path = path; n.fields[key] != nil {
			p.faults = append(p.faults, &fault.Fault{Path: under(path, named(key)), Cause: ErrTwice, Want: "each field once", Line: value.line, Column: value.column})
		} else {
			n.fields[key] = value
		}
	}
	p.path = path
	_, err := p.decoder.Token()
	return err
}

// named returns a key as a path shows it: one that is not a plain word is quoted, so that a path is
// always one line and cannot be misread.
func named(key string) string {
	odd := strings.ContainsFunc(key, func(c rune) bool {
		return c != '_' && c != '$' && (c < '0' || c > '9') && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z')
	})
	if odd || key == "" || len(key) > maxShown {
		return "[" + strconv.Quote(shorten(key)) + "]"
	}
	return key
}

// start returns the offset of the next value, past the space and the punctuation before it.
func (p *parser) start() int64 {
	at := p.decoder.InputOffset()
	for at < int64(len(p.data)) && bytes.IndexByte([]byte(" \t\r\n:,"), p.data[at]) >= 0 {
		at++
	}
	return at
}

// place returns an offset as a person finds it in an editor. Offsets never fall from call to call,
// so that the file is counted through once.
func (p *parser) place(offset int64) (line, column int) {
	passed := p.data[p.at:max(p.at, min(int(offset), len(p.data)))]
	p.at += len(passed)
	if i := bytes.LastIndexByte(passed, '\n'); i >= 0 {
		p.line, p.column = p.line+bytes.Count(passed, []byte{'\n'}), 1
		passed = passed[i+1:]
	}
	p.column += utf8.RuneCount(passed)
	return p.line, p.column
}

// syntax records that the file is no JSON from the offset on.
func (p *parser) syntax(what string, offset int64) {
	f := &fault.Fault{Path: p.path, Want: "one value in JSON, saved as UTF-8"}
	f.Line, f.Column = p.place(offset)
	f.Cause = &cause{ErrSyntax, "not JSON: " + what, nil}
	p.faults = append(p.faults, f)
}

// broken records an error of the JSON decoder.
func (p *parser) broken(err error) {
	what, offset := err.Error(), p.decoder.InputOffset()
	if errors.As(err, new(*json.SyntaxError)) { // its own offset is that within the value
		what = p.explain(err, offset)
	} else if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		what, offset = "the file ends too early", int64(len(p.data))
	}
	p.syntax(what, offset)
}

// explain names the mistake that most often leads to an error of the JSON decoder, which says only
// what it found; its own words where none is known.
func (p *parser) explain(err error, offset int64) string {
	found, _ := utf8.DecodeRune(p.data[min(offset, int64(len(p.data))):])
	says := func(part string) bool { return strings.Contains(err.Error(), part) }
	switch {
	case strings.ContainsRune("“”„«»‘’'", found):
		return fmt.Sprintf("%q is not the straight quote that JSON wants", found)
	case says("in string literal"):
		return "a text is not closed with a quote"
	case found == '/':
		return "a comment begins with // or stands between /* and */"
	case says("after object key:value pair"), says("after array element"):
		return fmt.Sprintf("a comma or a quote is missing before %q", found)
	case says("after object key"):
		return fmt.Sprintf("a colon is missing before %q", found)
	case found == '}' || found == ']':
		return fmt.Sprintf("a value is missing before the closing %q", found)
	case says("looking for beginning of object key"), strings.HasSuffix(err.Error(), "'"): // the decoder says no more of a first field
		return fmt.Sprintf("the name of a field, in quotes, should stand where %q does", found)
	case says("looking for beginning of value"):
		return fmt.Sprintf("a value should stand where %q does; texts and lengths are in quotes", found)
	}
	return err.Error()
}
