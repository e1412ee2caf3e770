package main

import (
	"errors"
	"fmt"
	"io/fs"

	"rebush/plan/job"
)

// The exit codes.
const (
	done       = 0 // it was done
	refused    = 1 // understood, but: do not machine, a made size is rejected, or a printed figure is not met
	wrong      = 2 // the command line or a file is wrong
	unreadable = 3 // a file could not be read or written
	fault      = 4 // a fault in rebush
)

// codeOf chooses the exit code of every way a command can end. It is the only
// place that does.
func codeOf(err error) int {
	var (
		outcome  *codeError
		broken   *faultError
		unread   *job.FileError
		onDisk   *fs.PathError
		unwriten *writeError
	)
	switch {
	case err == nil:
		return done
	case errors.As(err, &outcome):
		return outcome.code
	case errors.As(err, &broken):
		return fault
	case errors.As(err, &unread), errors.As(err, &onDisk), errors.As(err, &unwriten):
		return unreadable
	}
	return wrong
}

// codeError ends with a code when all that had to be said was said.
type codeError struct{ code int }

func (e *codeError) Error() string { return fmt.Sprintf("exit %d", e.code) }

// endWith is nil for done.
func endWith(code int) error {
	if code == done {
		return nil
	}
	return &codeError{code}
}

// usageError is a wrong command line. Command is the one whose help is named.
type usageError struct{ text, command string }

func (e *usageError) Error() string { return e.text }

func usage(format string, a ...any) error { return &usageError{text: fmt.Sprintf(format, a...)} }

// writeError is a file that could not be written.
type writeError struct {
	path string
	err  error
}

func (e *writeError) Error() string { return e.path + ": " + plainError(e.err) }
func (e *writeError) Unwrap() error { return e.err }

// faultError is a broken promise inside rebush.
type faultError struct {
	what  string
	stack []byte
}

func (e *faultError) Error() string { return e.what }

// plainError drops the system call from an error of the operating system.
func plainError(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file or folder"
	case errors.Is(err, fs.ErrPermission):
		return "the system does not allow it"
	}
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err.Error()
	}
	return err.Error()
}

// tell says what went wrong on standard error, one line for each thing, and
// returns the exit code.
func tell(e *env, err error) int {
	code := codeOf(err)
	var (
		outcome *codeError
		use     *usageError
		broken  *faultError
		disk    *fs.PathError
		ours    *writeError
		file    *job.FileError
		list    job.Problems
	)
	switch {
	case err == nil, errors.As(err, &outcome):
	case errors.As(err, &broken):
		fmt.Fprintf(e.errOut, "rebush: this is a fault in rebush, not in what you typed: %s\n", broken.what)
		fmt.Fprintf(e.errOut, "Please report it with the job file and these lines:\n%s\n", broken.stack)
	case errors.As(err, &use):
		fmt.Fprintf(e.errOut, "rebush: %s\n", use.text)
		if use.command != "" {
			fmt.Fprintf(e.errOut, "see: rebush help %s\n", use.command)
		}
	case errors.As(err, &disk) && !errors.As(err, &ours) && !errors.As(err, &file):
		fmt.Fprintf(e.errOut, "rebush: %s: %s\n", disk.Path, plainError(err))
	case errors.As(err, &list):
		fmt.Fprintln(e.errOut, list.Screen(e.wide))
	case errors.As(err, &file):
		fmt.Fprintln(e.errOut, err)
	default:
		fmt.Fprintf(e.errOut, "rebush: %v\n", err)
	}
	return code
}
