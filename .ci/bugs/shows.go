package main

import (
	"context"
	"crypto/sha256"
	_ "embed"
	"encoding/hex"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// shows are the commands whose outputs a bug may change: one a line of
// commands.txt, run in a folder of their own with copies of the jobs.
type shows struct {
	g        ground
	commands []string
	plain    []string // their outputs without a bug
}

//go:embed commands.txt
var commandLines string

func newShows(g ground) (*shows, error) {
	s := &shows{g: g}
	for _, line := range strings.Split(commandLines, "\n") {
		if line = strings.TrimSpace(line); line != "" && !strings.HasPrefix(line, "#") {
			s.commands = append(s.commands, line)
		}
	}
	s.plain = make([]string, len(s.commands))
	wrong := make([]error, len(s.commands))
	g.each(len(s.commands), func(i int) { s.plain[i], wrong[i] = s.show(s.commands[i], 0) })
	for i, err := range wrong {
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.commands[i], err)
		}
	}
	return s, nil
}

// show is all that a command prints, its exit code, and what it writes.
func (s *shows) show(line string, bug int) (string, error) {
	dir, err := os.MkdirTemp(s.g.out, "show")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(dir)
	for _, from := range []string{"jobs", "situations"} {
		if err := os.CopyFS(filepath.Join(dir, from), os.DirFS(filepath.Join(s.g.tree, "testdata", from))); err != nil {
			return "", err
		}
	}
	ctx, stop := context.WithTimeout(context.Background(), 2*time.Minute)
	defer stop()
	c := exec.CommandContext(ctx, "bash", "-c", line)
	c.Dir = dir
	c.Env = append(os.Environ(), fmt.Sprintf("PLANTED=%d", bug), "NO_COLOR=1", "COLUMNS=100",
		"PATH="+filepath.Join(s.g.out, "bin")+":"+os.Getenv("PATH"))
	c.WaitDelay = time.Second
	text, err := c.CombinedOutput()
	if c.ProcessState == nil || c.ProcessState.ExitCode() < 0 && ctx.Err() == nil {
		return "", fmt.Errorf("%s was stopped from outside: %w", line, err)
	}
	said := string(text) + "\nexit " + fmt.Sprint(c.ProcessState.ExitCode())
	papers, _ := filepath.Glob(filepath.Join(dir, "*.pdf")) // the pattern is right
	for _, p := range papers {
		data, err := os.ReadFile(p)
		if err != nil {
			return "", err
		}
		sum := sha256.Sum256(data)
		said += "\n" + filepath.Base(p) + " " + hex.EncodeToString(sum[:])
	}
	return strings.ReplaceAll(said, dir, "DIR"), nil
}

// differs is the first command whose output a bug changes, "" where none does,
// and the first line that is another.
func (s *shows) differs(bug int) (command, was, is string, err error) {
	for i, line := range s.commands {
		got, err := s.show(line, bug)
		if err != nil {
			return "", "", "", err
		}
		if got == s.plain[i] {
			continue
		}
		a, b := strings.Split(s.plain[i], "\n"), strings.Split(got, "\n")
		for k := range max(len(a), len(b)) {
			x, y := "", ""
			if k < len(a) {
				x = a[k]
			}
			if k < len(b) {
				y = b[k]
			}
			if x != y {
				return line, short(x), short(y), nil
			}
		}
	}
	return "", "", "", nil
}

func short(s string) string {
	if len(s) > 160 {
		return s[:160]
	}
	return s
}
