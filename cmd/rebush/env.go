package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"

	"golang.org/x/term"
)

// env is what the outside world is to a command.
type env struct {
	in          io.Reader
	out, errOut io.Writer
	terminal    bool // out is a terminal
	errTerminal bool
	colour      bool
}

func newEnv(in io.Reader, out, errOut io.Writer) *env {
	e := &env{in: in, out: out, errOut: errOut, terminal: isTerminal(out), errTerminal: isTerminal(errOut)}
	e.colour = colourful(e.terminal)
	return e
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
	return "\x1b[" + code + "m" + s + "\x1b[0m"
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
	return b.Bytes(), nil
}

// json prints one answer, indented.
func (e *env) json(v any) error {
	b, err := encode(v, true)
	if err != nil {
		return err
	}
	return e.write(b)
}

func (e *env) write(b []byte) error {
	if _, err := e.out.Write(b); err != nil {
		return &writeError{"standard output", err}
	}
	return nil
}

func (e *env) printf(format string, a ...any) { fmt.Fprintf(e.out, format, a...) }
