package job

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// A healer makes a text that YAML reads out of one that it does not. It finds the
// line from which on nothing is read any more, says what is wrong with it, and
// mends it as its writer most likely meant it; where no mending helps it leaves
// the line out, with the lines that stand under it.
type healer struct {
	file     string
	lines    []string
	problems Problems
	bytes    int // read so far, over all trials
	healed
}

// healed is what was done to a text for it to be read.
type healed struct {
	gaps    bool         // lines were left out: what is missing is not told
	guessed map[int]bool // lines on which a bracket or quote was closed: where is a guess
}

const (
	mostHealed   = 20      // mistakes of one file that are mended
	largestHeals = 1 << 16 // a larger file is not mended: no job is
	mostBytes    = 1 << 23 // read in all trials of one file; then its mistakes are told without
)

// heal reads the text, mending it line by line. second is the line on which a
// second document begins, 0 where there is none. The document is nil where there
// is none, or none that can be read.
func (h *healer) heal() (doc *yaml.Node, second int) {
	for range mostHealed {
		doc, second, err := parsed(h.lines)
		if err == nil {
			return doc, second
		}
		at := -1
		if size(h.lines) <= largestHeals && h.bytes < mostBytes {
			at = h.culprit()
		}
		if at < 0 {
			h.say(yamlLine(err), 1, err)
			return nil, 0
		}
		h.mend(at, err)
	}
	h.gaps = true
	if doc, second, err := parsed(h.lines); err == nil {
		return doc, second
	}
	return nil, 0
}

func size(lines []string) (n int) {
	for _, l := range lines {
		n += len(l) + 1
	}
	return n
}

// parsed reads lines as YAML.
func parsed(lines []string) (doc *yaml.Node, second int, err error) {
	defer func() {
		if p := recover(); p != nil { // the YAML reader gave up on hostile bytes
			doc, err = nil, errors.New("yaml: line 1: it cannot be read")
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader([]byte(strings.Join(lines, "\n"))))
	var first, next yaml.Node
	switch err := dec.Decode(&first); {
	case errors.Is(err, io.EOF):
		return nil, 0, nil
	case err != nil:
		return nil, 0, err
	}
	switch err := dec.Decode(&next); {
	case errors.Is(err, io.EOF):
	case err != nil:
		return nil, 0, err
	default:
		second = max(next.Line, 1)
	}
	return &first, second, nil
}

// culprit is the index of the line from which on no beginning of the text is
// read. A list over several lines is not read until it ends, so that a few lines
// more are tried.
func (h *healer) culprit() int {
	good := func(n int) bool { return h.reads(n) && h.bytes < mostBytes }
	low, high := 0, len(h.lines) // good(low), not good(high)
	for {
		from, to := low, high
		for to-from > 1 {
			if mid := (from + to) / 2; good(mid) {
				from = mid
			} else {
				to = mid
			}
		}
		low = from
		for more := low + 2; more <= min(low+40, high) && strings.ContainsAny(h.lines[low], "[{\"'"); more++ {
			if good(more) {
				low = more
			}
		}
		if low == from {
			break
		}
	}
	for low < len(h.lines) && unsaid(h.lines[low]) {
		low++
	}
	if low == len(h.lines) {
		return -1
	}
	return low
}

// reads says whether the first n lines are read.
func (h *healer) reads(n int) bool {
	h.bytes += size(h.lines[:n])
	_, _, err := parsed(h.lines[:n])
	return err == nil
}

// unsaid says that nothing but a comment stands on a line.
func unsaid(line string) bool {
	line = strings.TrimSpace(line)
	return line == "" || line[0] == '#'
}

// A cure is one way to mend a line, and what was wrong with it then.
type cure struct {
	at     int // index of the line, mostly that of the culprit
	column int // counted in letters from 1
	line   string
	wrong  string
	right  string
	guess  bool // where a bracket or quote closes is a guess
}

// mend tries the cures for a line in turn, and keeps the first that lets it and
// the next line be read; else the one that lets it be read.
func (h *healer) mend(at int, err error) {
	var best *cure
	next := h.after(at)
	for _, c := range h.cures(at, err) {
		kept := h.lines[c.at]
		h.lines[c.at] = c.line
		here := h.reads(at + 1)
		both := here && h.reads(next+1)
		h.lines[c.at] = kept
		if both {
			best = &c
			break
		}
		if here && best == nil {
			best = &c
		}
	}
	if best != nil {
		h.problems = append(h.problems, Problem{Pos: Pos{h.file, best.at + 1, best.column}, Wrong: best.wrong, Right: best.right})
		h.lines[best.at] = best.line
		if best.guess {
			if h.guessed == nil {
				h.guessed = map[int]bool{}
			}
			h.guessed[best.at+1] = true
		}
		return
	}
	h.say(at+1, indent(h.lines[at])+1, err)
	h.leaveOut(at)
}

// after is the next line that says something; the last where there is none.
func (h *healer) after(at int) int {
	for i := at + 1; i < len(h.lines); i++ {
		if !unsaid(h.lines[i]) {
			return i
		}
	}
	return len(h.lines) - 1
}

// before is the last line before that says something, -1 where there is none.
func (h *healer) before(at int) int {
	for i := at - 1; i >= 0; i-- {
		if !unsaid(h.lines[i]) {
			return i
		}
	}
	return -1
}

// leaveOut takes a line out with those that stand under it.
func (h *healer) leaveOut(at int) {
	h.gaps = true
	deep := indent(h.lines[at])
	h.lines[at] = ""
	for i := at + 1; i < len(h.lines); i++ {
		if !unsaid(h.lines[i]) && indent(h.lines[i]) <= deep {
			return
		}
		h.lines[i] = ""
	}
}

func indent(line string) int { return len(line) - len(strings.TrimLeft(line, " ")) }

var yamlErr = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

func yamlLine(err error) int {
	if m := yamlErr.FindStringSubmatch(strings.ReplaceAll(err.Error(), "\n", " ")); m != nil {
		line, _ := strconv.Atoi(m[1])
		return max(line, 1)
	}
	return 1
}

// say tells what the YAML reader says of a line, in words of the bench.
func (h *healer) say(line, column int, err error) {
	wrong, right := plainYAML(err.Error())
	h.problems = append(h.problems, Problem{Pos: Pos{h.file, line, column}, Wrong: wrong, Right: right})
}

func plainYAML(message string) (wrong, right string) {
	has := func(s string) bool { return strings.Contains(message, s) }
	switch {
	case has("mapping values are not allowed"):
		return "this line is indented wrongly, or a second colon stands on it",
			"put text that holds a colon in quotes; give keys of one record the same indentation"
	case has("did not find expected ',' or"):
		return "a list or record in brackets is not closed, or a comma is missing",
			"close it with ] or }, with commas between its parts"
	case has("did not find expected key"), has("did not find expected '-'"), has("block sequence entries"):
		return "the indentation does not fit the lines around it",
			"give keys of one record the same number of spaces; begin list items with - "
	case has("could not find expected ':'"):
		return "a colon is missing after a key", "write `key: value`"
	case has("cannot start any token"):
		return "this line begins with a character that YAML keeps for itself",
			"put text that begins with @, ` or % in quotes"
	case has("quoted scalar"), has("unexpected end of stream"):
		return "a quote is opened and not closed", "close it on the same line"
	case has("escape"):
		return "a backslash in double quotes is not understood", "use single quotes"
	case has("node content"):
		return "a value is missing, or a bracket stands where none belongs", "write `key: value`"
	case has("document start"):
		return "what stands here belongs to no key", "begin at the left margin with `rebush: 1`"
	}
	m := yamlErr.FindStringSubmatch(strings.ReplaceAll(message, "\n", " "))
	if m != nil {
		message = m[2]
	}
	return fmt.Sprintf("this is not YAML: %s", short(message)), "see the example in the README"
}
