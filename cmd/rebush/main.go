// Command rebush plans the re-bushing of worn axle holes in table-top railway
// motor trucks: it reads what was measured, works out where each bore has to
// go, which bush goes into it and how the hole is made, and prints the sheet
// that is taken to the machine.
//
// This package is the command line and nothing else: words in, words, JSON or
// paper out, and an exit code. It works nothing out; every figure comes from
// the rooms below it.
package main

import (
	"fmt"
	"io"
	"os"
	"runtime/debug"
)

func main() {
	code := run(os.Args, os.Stdin, os.Stdout, os.Stderr)
	if waits(ownWindow(), os.Args, code) {
		waitForKey(os.Stdin, os.Stderr)
	}
	os.Exit(code)
}

// run is the whole program. args[0] is the name it was called by.
func run(args []string, in io.Reader, out, errOut io.Writer) (code int) {
	e := newEnv(in, out, errOut)
	defer func() {
		if p := recover(); p != nil {
			code = tell(e, &faultError{what: fmt.Sprint(p), stack: debug.Stack()})
		}
	}()
	if len(args) > 0 {
		args = args[1:]
	}
	err := dispatch(e, args)
	if lost := e.stdout.err; lost != nil && codeOf(err) < unreadable {
		err = &writeError{"standard output", lost} // no command ends well that was not heard
	}
	return tell(e, err)
}
