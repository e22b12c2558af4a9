package book

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// box is a rectangle on paper, in points from the lower left.
type box struct{ x, y, w, h float64 }

// readPDF returns the bounding box, in points, of every path that a PDF paints and the place of every
// line of text, by the stream that has it, as each page is one; and the size of each page. It reads what Chromium writes, no more: streams packed with zlib, page boxes outside
// object streams.
func readPDF(data []byte) (paths [][]box, pages []box, err error) {
	for _, m := range regexp.MustCompile(`/MediaBox\s*\[\s*([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+)\s*\]`).FindAllSubmatch(data, -1) {
		var v [4]float64
		for i := range v {
			if v[i], err = strconv.ParseFloat(string(m[i+1]), 64); err != nil {
				return nil, nil, err
			}
		}
		pages = append(pages, box{v[0], v[1], v[2] - v[0], v[3] - v[1]})
	}
	for rest := data; ; {
		start := bytes.Index(rest, []byte("stream"))
		if start < 0 {
			return paths, pages, nil
		}
		head, body := rest[:start], bytes.TrimLeft(rest[start+len("stream"):], "\r")
		body = bytes.TrimPrefix(body, []byte("\n"))
		end := bytes.Index(body, []byte("endstream"))
		if end < 0 {
			return nil, nil, fmt.Errorf("a stream without an end")
		}
		rest = body[end+len("endstream"):]
		object := bytes.LastIndex(head, []byte("obj"))
		if object < 0 || bytes.Contains(head[object:], []byte("/Length1")) || bytes.Contains(head[object:], []byte("/PatternType")) {
			continue // a font, or a hatch that areas are filled with
		}
		z, err := zlib.NewReader(bytes.NewReader(body[:end]))
		if err != nil {
			continue // not packed: nothing drawn
		}
		text, err := io.ReadAll(z)
		if err != nil {
			return nil, nil, err
		}
		if found := painted(string(text)); len(found) > 0 {
			paths = append(paths, found)
		}
	}
}

// matrix is a transformation of the PDF's coordinates (ISO 32000-1, 8.3.3).
type matrix [6]float64

// then returns the matrix that does m first and n after.
func (m matrix) then(n matrix) matrix {
	return matrix{m[0]*n[0] + m[1]*n[2], m[0]*n[1] + m[1]*n[3], m[2]*n[0] + m[3]*n[2], m[2]*n[1] + m[3]*n[3],
		m[4]*n[0] + m[5]*n[2] + n[4], m[4]*n[1] + m[5]*n[3] + n[5]}
}

// mostClip is the most points of a clip across and up that a drawing has of its own. A larger one, such as a page's
// own, would hide what lies past the margins, and is passed over.
const mostClip = 250

// painted runs a content stream and returns the boxes of the paths it paints, as far as a small clip shows them, and the
// places of its text. Operators that draw no path are passed over.
func painted(content string) []box {
	var now state
	now.matrix = matrix{1, 0, 0, 1, 0, 0}
	var saved []state
	clipped := false
	var numbers []float64
	var xs, ys []float64
	point := func(x, y float64) {
		m := now.matrix
		xs = append(xs, x*m[0]+y*m[2]+m[4])
		ys = append(ys, x*m[1]+y*m[3]+m[5])
	}
	var found []box
	for _, word := range strings.Fields(content) {
		if v, err := strconv.ParseFloat(word, 64); err == nil {
			numbers = append(numbers, v)
			continue
		}
		n := len(numbers)
		switch word {
		case "q":
			saved = append(saved, now)
		case "Q":
			if k := len(saved); k > 0 {
				now, saved = saved[k-1], saved[:k-1]
			}
		case "cm":
			if n >= 6 {
				now.matrix = matrix(numbers[n-6:]).then(now.matrix)
			}
		case "Tm":
			if n >= 6 {
				at := matrix(numbers[n-6:]).then(now.matrix)
				found = append(found, box{x: at[4], y: at[5]})
			}
		case "m", "l":
			if n >= 2 {
				point(numbers[n-2], numbers[n-1])
			}
		case "c":
			if n >= 6 {
				point(numbers[n-2], numbers[n-1])
			}
		case "re":
			if n >= 4 {
				x, y, w, h := numbers[n-4], numbers[n-3], numbers[n-2], numbers[n-1]
				point(x, y)
				point(x+w, y+h)
			}
		case "S", "s", "f", "f*", "F", "B", "B*", "b", "b*":
			if len(xs) > 0 {
				if b := now.shown(hull(xs, ys)); b.w >= 0 && b.h >= 0 {
					found = append(found, b)
				}
			}
			xs, ys = nil, nil
		case "W", "W*":
			clipped = true
		case "n":
			if len(xs) > 0 && clipped {
				if b := hull(xs, ys); b.w < mostClip && b.h < mostClip {
					b = now.shown(b)
					now.clip = &b
				}
			}
			xs, ys, clipped = nil, nil, false
		case "d0", "d1":
			return nil // a letter of a font (ISO 32000-1, 9.6.5)
		}
		numbers = numbers[:0]
	}
	return found
}

// state is what q keeps and Q brings back.
type state struct {
	matrix
	clip *box
}

// shown is what the clip shows of a box; of a negative size where that is nothing.
func (s state) shown(b box) box {
	if s.clip == nil {
		return b
	}
	x, y := max(b.x, s.clip.x), max(b.y, s.clip.y)
	return box{x, y, min(b.x+b.w, s.clip.x+s.clip.w) - x, min(b.y+b.h, s.clip.y+s.clip.h) - y}
}

// hull is the box round some points.
func hull(xs, ys []float64) box {
	b := box{xs[0], ys[0], 0, 0}
	right, top := xs[0], ys[0]
	for i := range xs {
		b.x, b.y, right, top = min(b.x, xs[i]), min(b.y, ys[i]), max(right, xs[i]), max(top, ys[i])
	}
	b.w, b.h = right-b.x, top-b.y
	return b
}
