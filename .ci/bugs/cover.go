package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"sort"
	"strconv"
	"strings"
	"sync"
	"time"
)

// A test is one test function of one package, with what it was seen to reach.
type test struct {
	Room    string
	Name    string
	Seconds float64
	Reaches []int
	Broken  bool // fails without a bug: it looks at the source, which is changed
}

// ground is the seeded copy with its programs.
type ground struct {
	out, tree string
	rooms     []string // with tests
	workers   int
	slowest   float64 // tests that take longer are left out
	quick     bool    // a small sample
}

func (g ground) binary(room string) string {
	return filepath.Join(g.out, "bin", strings.ReplaceAll(room, "/", "_")+".test")
}

// build compiles the program and every package's tests, once for all bugs.
func (g *ground) build() error {
	if err := os.MkdirAll(filepath.Join(g.out, "bin"), 0o755); err != nil {
		return err
	}
	if err := g.run("go", "build", "-o", filepath.Join(g.out, "bin", "rebush"), "./cmd/rebush"); err != nil {
		return err
	}
	list := exec.Command("go", "list", "-f", "{{if or .TestGoFiles .XTestGoFiles}}{{.Dir}}{{end}}", "./...")
	list.Dir = g.tree
	text, err := list.Output()
	if err != nil {
		return err
	}
	g.rooms = nil
	for _, dir := range strings.Fields(string(text)) {
		room, err := filepath.Rel(g.tree, dir)
		if err != nil {
			return err
		}
		g.rooms = append(g.rooms, filepath.ToSlash(room))
		if err := g.run("go", "test", "-c", "-o", g.binary(room), "./"+room); err != nil {
			return err
		}
	}
	return nil
}

func (g ground) run(words ...string) error {
	c := exec.Command(words[0], words[1:]...)
	c.Dir = g.tree
	if text, err := c.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", strings.Join(words, " "), err, text)
	}
	return nil
}

// tests lists the test functions, or reads what was found out about them
// before.
func (g ground) tests(note func(string, ...any)) ([]test, error) {
	kept := filepath.Join(g.out, "tests.json")
	var all []test
	if text, err := os.ReadFile(kept); err == nil {
		return all, json.Unmarshal(text, &all)
	}
	for _, room := range g.rooms {
		c := exec.Command(g.binary(room), "-test.list", ".*")
		c.Dir = filepath.Join(g.tree, room)
		text, err := c.Output()
		if err != nil {
			return nil, err
		}
		for _, name := range strings.Fields(string(text)) {
			if !strings.HasPrefix(name, "Benchmark") {
				all = append(all, test{Room: room, Name: name})
			}
		}
	}
	note("%d tests, each run by itself to see what it reaches", len(all))
	g.each(len(all), func(i int) {
		t := &all[i]
		log := filepath.Join(g.out, "reach-"+strconv.Itoa(i))
		defer os.Remove(log)
		start := time.Now()
		failed, _ := g.try(t.Room, []string{t.Name}, 0, 10*time.Minute, "PLANTED_LOG="+log)
		t.Seconds, t.Broken = time.Since(start).Seconds(), failed
		t.Reaches = numbers(log)
	})
	text, err := json.Marshal(all)
	if err != nil {
		return nil, err
	}
	return all, os.WriteFile(kept, text, 0o600)
}

// each calls do(0) to do(n-1) by several hands.
func (g ground) each(n int, do func(int)) {
	var wait sync.WaitGroup
	next := make(chan int)
	for range g.workers {
		wait.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	wait.Wait()
}

func numbers(log string) []int {
	f, err := os.Open(log)
	if err != nil {
		return nil
	}
	defer f.Close()
	seen := map[int]bool{}
	for s := bufio.NewScanner(f); s.Scan(); {
		if n, err := strconv.Atoi(s.Text()); err == nil {
			seen[n] = true
		}
	}
	var out []int
	for n := range seen {
		out = append(out, n)
	}
	sort.Ints(out)
	return out
}

var failedTest = regexp.MustCompile(`(?m)^\s*--- FAIL: (\S+)`)

// try runs tests of a room with a bug on. It returns whether one failed, and
// which.
func (g ground) try(room string, names []string, bug int, limit time.Duration, more ...string) (bool, string) {
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	c := exec.CommandContext(ctx, g.binary(room), "-test.failfast", "-test.run",
		"^("+strings.Join(names, "|")+")$", "-test.skip", "^("+skipped(g.quick)+")$")
	c.Dir = filepath.Join(g.tree, room)
	c.Env = append(os.Environ(), append([]string{"PLANTED=" + strconv.Itoa(bug), "GOMAXPROCS=2"}, more...)...)
	c.WaitDelay = time.Second
	text, err := c.CombinedOutput()
	if err == nil {
		return false, ""
	}
	if errors.Is(ctx.Err(), context.DeadlineExceeded) {
		return true, "does not end"
	}
	if m := failedTest.FindSubmatch(text); m != nil {
		return true, string(m[1])
	}
	if bytes.Contains(text, []byte("panic:")) {
		return true, "panic"
	}
	return true, "exit"
}
