package book

import (
	"regexp"
	"slices"
	"unicode"
	"unicode/utf8"
)

// wide are the characters that take two columns of a terminal: those of East Asian width W and F
// (Unicode Standard Annex 11, of Unicode 14), with what is not assigned between them.
var wide = [][2]rune{
	{0x1100, 0x115f}, {0x231a, 0x231b}, {0x2329, 0x232a}, {0x23e9, 0x23ec}, {0x23f0, 0x23f0}, {0x23f3, 0x23f3},
	{0x25fd, 0x25fe}, {0x2614, 0x2615}, {0x2648, 0x2653}, {0x267f, 0x267f}, {0x2693, 0x2693}, {0x26a1, 0x26a1},
	{0x26aa, 0x26ab}, {0x26bd, 0x26be}, {0x26c4, 0x26c5}, {0x26ce, 0x26ce}, {0x26d4, 0x26d4}, {0x26ea, 0x26ea},
	{0x26f2, 0x26f3}, {0x26f5, 0x26f5}, {0x26fa, 0x26fa}, {0x26fd, 0x26fd}, {0x2705, 0x2705}, {0x270a, 0x270b},
	{0x2728, 0x2728}, {0x274c, 0x274c}, {0x274e, 0x274e}, {0x2753, 0x2755}, {0x2757, 0x2757}, {0x2795, 0x2797},
	{0x27b0, 0x27b0}, {0x27bf, 0x27bf}, {0x2b1b, 0x2b1c}, {0x2b50, 0x2b50}, {0x2b55, 0x2b55}, {0x2e80, 0x303e},
	{0x3041, 0x3247}, {0x3250, 0x4dbf}, {0x4e00, 0xa4c6}, {0xa960, 0xa97c}, {0xac00, 0xd7a3}, {0xf900, 0xfad9},
	{0xfe10, 0xfe19}, {0xfe30, 0xfe6b}, {0xff01, 0xff60}, {0xffe0, 0xffe6}, {0x16fe0, 0x1b2fb},
	{0x1f004, 0x1f004}, {0x1f0cf, 0x1f0cf}, {0x1f18e, 0x1f18e}, {0x1f191, 0x1f19a}, {0x1f200, 0x1f320},
	{0x1f32d, 0x1f335}, {0x1f337, 0x1f37c}, {0x1f37e, 0x1f393}, {0x1f3a0, 0x1f3ca}, {0x1f3cf, 0x1f3d3},
	{0x1f3e0, 0x1f3f0}, {0x1f3f4, 0x1f3f4}, {0x1f3f8, 0x1f43e}, {0x1f440, 0x1f440}, {0x1f442, 0x1f4fc},
	{0x1f4ff, 0x1f53d}, {0x1f54b, 0x1f54e}, {0x1f550, 0x1f567}, {0x1f57a, 0x1f57a}, {0x1f595, 0x1f596},
	{0x1f5a4, 0x1f5a4}, {0x1f5fb, 0x1f64f}, {0x1f680, 0x1f6c5}, {0x1f6cc, 0x1f6cc}, {0x1f6d0, 0x1f6d2},
	{0x1f6d5, 0x1f6df}, {0x1f6eb, 0x1f6ec}, {0x1f6f4, 0x1f6fc}, {0x1f7e0, 0x1f7f0}, {0x1f90c, 0x1f93a},
	{0x1f93c, 0x1f945}, {0x1f947, 0x1f9ff}, {0x1fa70, 0x1faf6}, {0x20000, 0x3134a},
}

// columns returns how many columns of a terminal a text takes: none for a mark on the character
// before, two for a wide character and for a symbol that is asked to show as an emoji (U+FE0F).
func columns(s string) (n int) {
	last := 0
	for _, c := range s {
		width := 1
		if c < utf8.RuneSelf { // the most
			n, last = n+1, 1
			continue
		}
		_, isWide := slices.BinarySearchFunc(wide, c, func(r [2]rune, c rune) int {
			if r[1] < c {
				return -1
			}
			return int(max(r[0]-c, 0))
		})
		switch {
		case c == '\ufe0f':
			width = last % 2
		case unicode.In(c, unicode.Mn, unicode.Me, unicode.Cf):
			width = 0
		case isWide:
			width = 2
		}
		n, last = n+width, width
	}
	return n
}

// head returns as much of a text as so many columns hold, at least one character with its marks.
func head(s string, width int) string {
	for i, c := range s {
		if i > 0 && columns(s[:i+utf8.RuneLen(c)]) > width {
			return s[:i]
		}
	}
	return s
}

// longWord is a word of a script that hyphenates, too long for a narrow column.
var longWord = regexp.MustCompile(`[\p{Latin}\p{Greek}\p{Cyrillic}]{13,}`)

// hyphened allows a hyphen in long words of a name, at least four letters from both ends, where a page would break
// them without one.
func hyphened(name string) string {
	return longWord.ReplaceAllStringFunc(name, func(word string) string {
		letters := []rune(word)
		for i := len(letters) - 4; i >= 4; i-- {
			letters = slices.Insert(letters, i, '\u00ad')
		}
		return string(letters)
	})
}

// rightToLeft is a stretch of letters that are read from the right.
var rightToLeft = regexp.MustCompile(`[\p{Hebrew}\p{Arabic}\p{Syriac}\p{Thaana}\p{Nko}][\p{Hebrew}\p{Arabic}\p{Syriac}\p{Thaana}\p{Nko}\p{Mn} ]*`)

// isolated puts what is read from the right between marks, so that numbers and columns beside it stay
// where they are (Unicode Standard Annex 9: first strong isolate, pop directional isolate).
func isolated(s string) string { return rightToLeft.ReplaceAllString(s, "\u2068$0\u2069") }
