package job

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// several reads figures that were typed one behind the other.
func (q Question) several(text string, units dim.Unit) ([]string, string) {
	shapes, least := q.shapes()
	var why string
	fits := func(part string, i int) (string, bool) {
		s := shapes[min(i, len(shapes)-1)]
		got, wrong := q.one(part, s, units)
		if wrong != "" && why == "" {
			why = wrong
		}
		return got, wrong == ""
	}
	most := len(shapes)
	if q.endless() {
		most = 20
	}
	out := divide(text, least, most, fits)
	switch {
	case out == nil && least > 1 && why == "":
		return nil, fmt.Sprintf("give %s, such as %s", q.named(), q.Example)
	case out == nil && (least == most || strings.ContainsAny(text, " ,;x")):
		return nil, fmt.Sprintf("%s (%s, such as %s)", why, q.named(), q.Example)
	case out == nil:
		return nil, why
	}
	for len(out) < len(shapes) && !q.endless() {
		out = append(out, "")
		if i := len(out) - 1; q.figures[min(i, len(q.figures)-1)].like {
			out[i] = out[i-1]
		}
	}
	if q.ID == "size" && out[3] != "" && out[4] == "" {
		return nil, "a flange wants its diameter and its thickness: 4 x 6 x 4 x 8 x 0.8"
	}
	return out, ""
}

// endless says that any number of figures may be given.
func (q Question) endless() bool {
	return len(q.figures) == 1 && q.figures[0].shape.kind == aList && len(q.Figures) == 0
}

// shapes are those of its figures, and how many have to be given.
func (q Question) shapes() (list []*shape, least int) {
	for _, f := range q.figures {
		s := f.shape
		if s.kind == aList {
			least = max(1, min(s.min, s.max))
			s = s.item.forKind(func(k kind) bool { return k < aList })
			for range least - 1 {
				list = append(list, s)
			}
		} else if !f.like && !f.open {
			least++
		}
		list = append(list, s)
	}
	return list, least
}

// named are the names of its figures.
func (q Question) named() string {
	if len(q.Figures) == 0 {
		return "figures one behind the other"
	}
	return strings.Join(q.Figures[:len(q.Figures)-1], ", ") + " and " + q.Figures[len(q.Figures)-1]
}

var times = regexp.MustCompile(`(?i)\s*(?:[×*]|\bby\b)\s*|\s+x\s+|(\d)\s*x\s*(\d|\.|#)`)

// divide parts a text into least to most figures that fit, as few as will do;
// nil where no parting does. Semicolons, x and a comma with a space part figures
// for certain; else blanks do where a figure ends, and at last a lone comma.
func divide(text string, least, most int, fits func(part string, i int) (string, bool)) []string {
	text = strings.TrimSpace(strings.NewReplacer("[", " ", "]", " ", "\u00a0", " ").Replace(text))
	for range 2 { // 4x6x4: each match takes the figure that the next begins with
		text = times.ReplaceAllString(text, "$1;$2")
	}
	switch {
	case strings.Contains(text, ";"):
		return each(strings.Split(text, ";"), least, most, fits)
	case strings.Contains(text, ", "):
		return each(strings.Split(text, ", "), least, most, fits)
	}
	words := strings.Fields(text)
	if len(words) > 60 {
		return nil
	}
	for n := least; n <= most && n <= len(words); n++ {
		if out := (grouping{words, n, fits, map[[2]int]bool{}}).from(0, 0); out != nil {
			return out
		}
	}
	if len(words) == 1 && strings.Count(text, ",") == 1 {
		return each(strings.Split(text, ","), least, most, fits)
	}
	return nil
}

func each(parts []string, least, most int, fits func(string, int) (string, bool)) []string {
	if len(parts) < least || len(parts) > most {
		return nil
	}
	var out []string
	for i, p := range parts {
		got, ok := fits(strings.TrimSpace(p), i)
		if !ok {
			return nil
		}
		out = append(out, got)
	}
	return out
}

// mostWords is how many words one figure may be said in: "1 1/8 in", "12 o'clock".
const mostWords = 4

// grouping parts words into n figures, each of words that follow each other.
type grouping struct {
	words []string
	n     int
	fits  func(part string, i int) (string, bool)
	dead  map[[2]int]bool // figure and word from which nothing goes on
}

// from parts the words from one on into the figures from one on, nil where that
// cannot be.
func (g grouping) from(figure, word int) []string {
	left := len(g.words) - word
	switch at := [2]int{figure, word}; {
	case figure == g.n && left == 0:
		return []string{}
	case figure == g.n || left < g.n-figure || left > (g.n-figure)*mostWords || g.dead[at]:
		return nil
	}
	for k := 1; k <= left && k <= mostWords; k++ {
		got, ok := g.fits(strings.Join(g.words[word:word+k], " "), figure)
		if !ok {
			continue
		}
		if rest := g.from(figure+1, word+k); rest != nil {
			return append([]string{got}, rest...)
		}
	}
	g.dead[[2]int{figure, word}] = true
	return nil
}

var (
	clockForm   = regexp.MustCompile(`(?i)^(\d{1,2})(?:[:.](\d\d))?\s*(?:o'?clock|o.clock|oclock|h|uhr)$`)
	degreesForm = regexp.MustCompile(`(?i)^([-+]?[\d.,]+)\s*(?:°|º|deg\.?|degrees?)?$`)
)

// directions are those in words, seen from the left side: x runs along the truck.
var directions = map[string]string{"up": "90", "top": "90", "upwards": "90", "above": "90", "down": "270", "bottom": "270",
	"downwards": "270", "below": "270", "right": "0", "left": "180", "up right": "45", "up and right": "45",
	"top right": "45", "up left": "135", "up and left": "135", "top left": "135", "down left": "225", "bottom left": "225",
	"down and left": "225", "down right": "315", "bottom right": "315", "down and right": "315"}

// directionOf reads a direction in degrees, in words or by the clock; "" where
// the hole is round.
func directionOf(text string) (out, wrong string) {
	words := strings.Fields(strings.NewReplacer("’", "'", "-", " ", ",", " ").Replace(text))
	t := strings.ToLower(strings.Join(words, " "))
	if d, ok := directions[t]; ok {
		return d, ""
	}
	if t == "round" || t == "all round" || t == "none" {
		return "", ""
	}
	if m := clockForm.FindStringSubmatch(strings.TrimSpace(strings.ReplaceAll(text, "’", "'"))); m != nil {
		hours, _ := strconv.Atoi(m[1])
		minutes, _ := strconv.Atoi("0" + m[2])
		if hours < 1 || hours > 12 || minutes > 59 {
			return "", fmt.Sprintf("there is no %s on a clock", short(text))
		}
		return plainFigure(turn(90 - 30*float64(hours) - 0.5*float64(minutes))), ""
	}
	if m := degreesForm.FindStringSubmatch(strings.TrimSpace(text)); m != nil {
		f, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		if err == nil && f >= -360 && f <= 360 {
			return plainFigure(f), ""
		}
	}
	return "", fmt.Sprintf("%q is no direction; write up, down, left, right, 12 o'clock, or degrees (right 0, up 90)",
		short(text))
}

// plainFigure is a number without an exponent.
func plainFigure(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }

// twoFigures are two plain numbers with decimal points, nil where s holds
// anything else.
func twoFigures(s string) []string {
	return divide(s, 2, 2, func(part string, _ int) (string, bool) {
		return strings.Replace(part, ",", ".", 1), plainNumber.MatchString(part)
	})
}
