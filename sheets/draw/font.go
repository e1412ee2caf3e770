package draw

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Face is one of the two type faces of all paper.
type Face uint8

// The two faces.
const (
	Regular Face = iota
	Bold
)

// MMPerPt is one typographic point in mm: 1/72 of an inch.
const MMPerPt = 25.4 / 72

// Shares of the type size that a line of text fills above and below its base
// line, as measured on the outlines of the two faces.
const (
	Rise = 0.76
	Drop = 0.22
)

// metrics of one face, read from the embedded font on first use. The font is
// parsed once in a process and shared by all documents.
type metrics struct {
	once  sync.Once
	mu    sync.Mutex
	font  *sfnt.Font
	buf   sfnt.Buffer
	width map[rune]int32 // thousandths of the size; -1 where the font lacks the rune
	ascii [128]int32     // the same plus one; 0 is not read yet
}

var faces [2]metrics

func fontBytes(f Face) []byte {
	if f == Bold {
		return gobold.TTF
	}
	return goregular.TTF
}

func face(f Face) *metrics {
	m := &faces[f&1]
	m.once.Do(func() {
		parsed, err := sfnt.Parse(fontBytes(f & 1))
		if err != nil {
			panic("draw: an embedded font cannot be read: " + err.Error())
		}
		m.font = parsed
		m.width = map[rune]int32{}
	})
	return m
}

// of returns the width of a rune in thousandths of the size, -1 where the font
// lacks it. The lock must be held.
func (m *metrics) of(r rune) int32 {
	if r >= 0 && r < 128 && m.ascii[r] != 0 {
		return m.ascii[r] - 1
	}
	w, ok := m.width[r]
	if !ok {
		w = m.read(r)
		m.width[r] = w
		if r >= 0 && r < 128 && w >= 0 {
			m.ascii[r] = w + 1
		}
	}
	return w
}

func (m *metrics) read(r rune) int32 {
	// The PDF library addresses glyphs by 16 bits, a control sign has no glyph
	// worth printing, and U+FFFD is what bytes that are no text turn into.
	if r < 0x20 || r == 0x7F || r >= 0xFFFD {
		return -1
	}
	g, err := m.font.GlyphIndex(&m.buf, r)
	if err != nil || g == 0 {
		return -1
	}
	adv, err := m.font.GlyphAdvance(&m.buf, g, fixed.I(1000), font.HintingNone)
	if err != nil {
		return -1
	}
	return int32((adv + 32) >> 6)
}

// Has says whether both faces can print a rune.
func Has(r rune) bool {
	for f := Regular; f <= Bold; f++ {
		m := face(f)
		m.mu.Lock()
		w := m.of(r)
		m.mu.Unlock()
		if w < 0 {
			return false
		}
	}
	return true
}

// Lacking counts the runes of a text that the faces cannot print. A text in a
// script that they lack would come out as empty boxes without an error.
func Lacking(s string) int {
	n := 0
	for _, r := range s {
		if r >= 0x20 && r < 0x7F {
			continue
		}
		if !Has(r) {
			n++
		}
	}
	return n
}

// Width is the width of a line of text in mm. Runes that the face lacks count
// for nothing: see Lacking.
func Width(s string, f Face, pt float64) float64 {
	m := face(f)
	m.mu.Lock()
	sum := int32(0)
	for _, r := range s {
		if w := m.of(r); w > 0 {
			sum += w
		}
	}
	m.mu.Unlock()
	return float64(sum) / 1000 * pt * MMPerPt
}

// Wrap breaks a text into lines that are no wider than width in mm. It breaks
// at spaces, and inside a word only where the word alone is too wide. Line
// breaks in the text are kept. An empty text is one empty line.
func Wrap(s string, f Face, pt, width float64) []string {
	var lines []string
	for _, para := range strings.Split(s, "\n") {
		lines = append(lines, wrapLine(para, f, pt, width)...)
	}
	return lines
}

func wrapLine(s string, f Face, pt, width float64) []string {
	if Width(s, f, pt) <= width {
		return []string{s}
	}
	var lines []string
	space := Width(" ", f, pt)
	line, used := "", 0.0
	for _, word := range strings.Fields(s) {
		w := Width(word, f, pt)
		if line != "" && used+space+w <= width {
			line += " " + word
			used += space + w
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for w > width && len([]rune(word)) > 1 {
			head := fit(word, f, pt, width)
			lines = append(lines, head)
			word = word[len(head):]
			w = Width(word, f, pt)
		}
		line, used = word, w
	}
	return append(lines, line)
}

// fit returns the longest head of a word that is no wider than width, at least
// one rune.
func fit(word string, f Face, pt, width float64) string {
	end := 0
	for i, r := range word {
		next := i + len(string(r))
		if end > 0 && Width(word[:next], f, pt) > width {
			break
		}
		end = next
	}
	return word[:end]
}

// Cut shortens a line to a width, with three points at its end where something
// was left out.
func Cut(s string, f Face, pt, width float64) string {
	if Width(s, f, pt) <= width {
		return s
	}
	const points = "..."
	room := width - Width(points, f, pt)
	if room <= 0 {
		return ""
	}
	return strings.TrimRight(fit(s, f, pt, room), " ,;") + points
}
