package job

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sort"
	"strings"

	"rebush/fits/spelling"
)

// Problem is one mistake in a job or shop file: where it is, what is wrong and
// what would be right.
type Problem struct {
	Pos   Pos
	Wrong string
	Right string
	Text  string // the line of the file, where it is known
}

// Error is "file:line:column: what is wrong; what would be right".
func (p Problem) Error() string {
	s := p.Wrong
	if p.Right != "" {
		s += "; " + p.Right
	}
	switch {
	case p.Pos.File == "":
		return s
	case p.Pos.Line == 0:
		return p.Pos.File + ": " + s
	}
	return fmt.Sprintf("%s:%d:%d: %s", p.Pos.File, p.Pos.Line, max(p.Pos.Column, 1), s)
}

// Problems are all the mistakes of a job and its shop file, told at once in
// the order of their lines. It is the error of a file that was read but cannot
// be understood.
type Problems []Problem

// Error puts one mistake on a line.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// sorted orders by file (as first met), line and column, and drops a mistake
// that is told twice. A file with very many is another kind of file: the rest
// is left out.
func (ps Problems) sorted() Problems {
	rank := map[string]int{}
	for _, p := range ps {
		if _, ok := rank[p.Pos.File]; !ok {
			rank[p.Pos.File] = len(rank)
		}
	}
	sort.SliceStable(ps, func(i, k int) bool {
		a, b := ps[i].Pos, ps[k].Pos
		if a.File != b.File {
			return rank[a.File] < rank[b.File]
		}
		if a.Line != b.Line {
			return a.Line < b.Line
		}
		return a.Column < b.Column
	})
	seen := map[string]bool{}
	out := ps[:0]
	for _, p := range ps {
		if !seen[p.Error()] {
			seen[p.Error()] = true
			out = append(out, p)
		}
	}
	if len(out) > mostProblems {
		out = append(out[:mostProblems], Problem{Pos: out[mostProblems-1].Pos, Wrong: "and more mistakes than can be told",
			Right: "is it the right file?"})
	}
	return out
}

// FileError says that a file could not be read at all: it is missing, a
// folder, or the system refused.
type FileError struct {
	Path string
	Pos  Pos // where the file is named, the zero Pos for the command line
	Err  error
}

// Error names the file and, where another file names it, the line there.
func (e *FileError) Error() string {
	s := fmt.Sprintf("%s: %s", e.Path, plainFileError(e.Err))
	if like := e.like(); like != "" {
		s += "; did you mean " + like + "?"
	}
	if e.Pos.File != "" {
		s = fmt.Sprintf("%s:%d:%d: %s", e.Pos.File, e.Pos.Line, max(e.Pos.Column, 1), s)
	}
	return s
}

// problem is the error as one mistake among others.
func (e *FileError) problem(right string) Problem {
	if like := e.like(); like != "" {
		right = "did you mean " + like + "? " + right
	}
	return Problem{Pos: e.Pos, Wrong: e.Path + ": " + plainFileError(e.Err), Right: right}
}

// like is a file in the same folder whose name is nearly that of a missing one.
func (e *FileError) like() string {
	if !errors.Is(e.Err, fs.ErrNotExist) {
		return ""
	}
	dir, name := filepath.Split(e.Path)
	list, err := os.ReadDir(filepath.Clean(dir)) // "" is here
	if err != nil {
		return ""
	}
	var names []string
	for _, f := range list {
		if !f.IsDir() && spelling.Distance(strings.ToLower(name), strings.ToLower(f.Name())) <= 1+len(name)/6 {
			names = append(names, f.Name())
		}
	}
	if len(names) == 0 {
		return ""
	}
	return dir + nearest(name, names)
}

// Unwrap gives the system's own error.
func (e *FileError) Unwrap() error { return e.Err }
