package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"strconv"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/term"
)

// env is what the outside world is to a command.
type env struct {
	in          io.Reader
	out, errOut io.Writer // for words, by way of a screen
	stdout      *kept     // for JSON and paper, as they are
	stderr      io.Writer // for a count that wipes itself
	terminal    bool      // standard output is a terminal
	inTerminal  bool
	errTerminal bool
	colour      bool
	wide        int // columns of the terminal, 0 without one
	desk        *desk
}

func newEnv(in io.Reader, out, errOut io.Writer) *env {
	e := &env{in: in, stdout: &kept{to: out}, stderr: errOut, terminal: isTerminal(out),
		errTerminal: isTerminal(errOut), desk: &desk{}}
	if f, ok := in.(*os.File); ok {
		e.inTerminal = term.IsTerminal(int(f.Fd()))
	}
	f, ok := out.(*os.File)
	e.colour = colourful(e.terminal) && (!ok || understandsCodes(f))
	e.wide = columnsOf(out, os.Getenv("COLUMNS"))
	e.out = &screen{e.stdout, e.wide}
	e.errOut = &screen{errOut, columnsOf(errOut, os.Getenv("COLUMNS"))}
	return e
}

// kept is a writer that keeps its first error, so that no output is lost
// unseen.
type kept struct {
	to  io.Writer
	err error
}

func (k *kept) Write(b []byte) (int, error) {
	if k.err != nil {
		return 0, k.err
	}
	n, err := k.to.Write(b)
	k.err = err
	return n, err
}

// The narrowest screen that lines are broken for.
const narrowest = 40

// columnsOf is the width of a terminal, or what COLUMNS says; 0 where neither
// tells.
func columnsOf(w io.Writer, said string) int {
	if n, err := strconv.Atoi(said); err == nil && n > 0 {
		return max(n, narrowest)
	}
	if f, ok := w.(*os.File); ok {
		if n, _, err := term.GetSize(int(f.Fd())); err == nil && n > 0 {
			return max(n, narrowest)
		}
	}
	return 0
}

// colourful says whether words are painted: on a terminal that can, unless
// NO_COLOR is set to anything.
func colourful(terminal bool) bool {
	return terminal && os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
}

func isTerminal(w io.Writer) bool {
	f, ok := w.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}

// paint colours a word on a terminal. The word itself always says the same.
func (e *env) paint(code, s string) string {
	if !e.colour {
		return s
	}
	for letter, ink := range inks {
		if ink == code {
			return string([]byte{markOn, letter}) + s + string([]byte{markOff})
		}
	}
	return s
}

const (
	red    = "31;1"
	yellow = "33"
	bold   = "1"
)

// encode is v as JSON: one line, or indented.
func encode(v any, indented bool) ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if indented {
		enc.SetIndent("", "  ")
	}
	if err := enc.Encode(v); err != nil {
		return nil, &faultError{what: "JSON: " + err.Error()}
	}
	return plainJSON(b.Bytes()), nil
}

// plainJSON writes signs that would turn the direction of reading, or are not
// seen, as JSON spells them in letters. It says the same.
func plainJSON(b []byte) []byte {
	if !bytes.ContainsFunc(b, odd) {
		return b
	}
	var out bytes.Buffer
	for _, r := range string(b) {
		switch {
		case !odd(r) || r == utf8.RuneError:
			out.WriteRune(r)
		case r > 0xffff:
			hi, lo := utf16.EncodeRune(r)
			fmt.Fprintf(&out, `\u%04x\u%04x`, hi, lo)
		default:
			fmt.Fprintf(&out, `\u%04x`, r)
		}
	}
	return out.Bytes()
}

// json prints one answer, indented.
func (e *env) json(v any) error {
	b, err := encode(v, true)
	if err != nil {
		return err
	}
	return e.write(b)
}

// write writes JSON, paper or a file as it is.
func (e *env) write(b []byte) error {
	if _, err := e.stdout.Write(b); err != nil {
		return &writeError{"standard output", err}
	}
	return nil
}

// say prints words.
func (e *env) say(b []byte) error {
	if _, err := e.out.Write(b); err != nil {
		return &writeError{"standard output", err}
	}
	return nil
}

func (e *env) printf(format string, a ...any) { fmt.Fprintf(e.out, format, a...) }
