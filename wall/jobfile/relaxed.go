package jobfile

import "bytes"

// Standard returns a file as people write it as strict JSON of the same length: comments, from // to
// the end of the line or between /* and */, and a comma after the last item of a list or field of
// an object become spaces, so that every place stays where it was. All else stays as it is. The cost
// is linear.
func Standard(data []byte) []byte {
	out := bytes.Clone(data)
	var before, last byte // of all that is no space and no comment; " for a text
	comma := 0            // where the last comma stands
	for i := 0; i < len(out); i++ {
		switch c := out[i]; {
		case bytes.IndexByte([]byte(" \t\r\n"), c) >= 0:
			continue
		case c == '/':
			if end := commentEnd(out[i:]); end > 0 {
				for n := range out[i : i+end] {
					if out[i+n] != '\n' && out[i+n] != '\r' {
						out[i+n] = ' '
					}
				}
				continue
			}
		case c == '"':
			i += textEnd(out[i:]) - 1
		case c == ',':
			comma = i
		case (c == '}' || c == ']') && last == ',' && bytes.IndexByte([]byte("[{:,\x00"), before) < 0:
			out[comma] = ' '
		}
		before, last = last, out[min(i, len(out)-1)]
	}
	return out
}

// commentEnd returns the length of the comment that the data begin with, 0 for none and for one that
// is not closed.
func commentEnd(data []byte) int {
	switch {
	case bytes.HasPrefix(data, []byte("//")):
		line, _, _ := bytes.Cut(data, []byte("\n"))
		return len(line)
	case bytes.HasPrefix(data, []byte("/*")):
		if end := bytes.Index(data[2:], []byte("*/")); end >= 0 {
			return end + 4
		}
	}
	return 0
}

// textEnd returns the length of the text in quotes that the data begin with, up to the end of the
// line where it is not closed.
func textEnd(data []byte) int {
	for i := 1; i < len(data); i++ {
		switch data[i] {
		case '\\':
			i++
		case '"', '\n':
			return i + 1
		}
	}
	return len(data)
}
