//go:build unix

package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// one folder with a file in it.
func folderWith(t *testing.T, name, text string) (dir, path string) {
	t.Helper()
	dir = t.TempDir()
	path = filepath.Join(dir, name)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return dir, path
}

func holds(t *testing.T, path, want string) {
	t.Helper()
	if b, err := os.ReadFile(path); err != nil || string(b) != want {
		t.Errorf("%s holds %q, %v; want %q", path, b, err, want)
	}
}

// TestPutKeepsModeAndOwner: what is replaced keeps its mode and whose it was; a
// new file has what the umask leaves.
func TestPutKeepsModeAndOwner(t *testing.T) {
	dir, path := folderWith(t, "a.pdf", "old")
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	uid := os.Getuid()
	if uid == 0 { // who may give files away
		uid = 4321
		if err := os.Chown(path, uid, 1234); err != nil {
			t.Fatal(err)
		}
	}
	d := &desk{}
	if err := d.put(path, []byte("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, path, "new")
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if s := info.Sys().(*syscall.Stat_t); info.Mode().Perm() != 0o640 || int(s.Uid) != uid {
		t.Errorf("mode %v, owner %d; want -rw-r-----, %d", info.Mode(), s.Uid, uid)
	}

	was := syscall.Umask(0o027)
	defer syscall.Umask(was)
	fresh := filepath.Join(dir, "b.pdf")
	if err := d.put(fresh, []byte("b")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Stat(fresh); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("a new file under umask 027: %v, %v", info.Mode(), err)
	}
	if left, _ := os.ReadDir(dir); len(left) != 2 {
		t.Errorf("left behind: %v", left)
	}
}

// TestPutThroughLinks: a link stays one, and its target is replaced or made; a
// circle of links is an error.
func TestPutThroughLinks(t *testing.T) {
	dir, path := folderWith(t, "real.pdf", "old")
	if err := os.Mkdir(filepath.Join(dir, "sub"), 0o755); err != nil {
		t.Fatal(err)
	}
	for name, to := range map[string]string{"link.pdf": "real.pdf", "two.pdf": "link.pdf", "new.pdf": "sub/new.pdf",
		"ring.pdf": "ring2.pdf", "ring2.pdf": "ring.pdf"} {
		if err := os.Symlink(to, filepath.Join(dir, name)); err != nil {
			t.Fatal(err)
		}
	}
	d := &desk{}
	for name, real := range map[string]string{"two.pdf": path, "new.pdf": filepath.Join(dir, "sub", "new.pdf")} {
		if err := d.put(filepath.Join(dir, name), []byte(name)); err != nil {
			t.Fatal(err)
		}
		holds(t, real, name)
		if info, err := os.Lstat(filepath.Join(dir, name)); err != nil || info.Mode()&fs.ModeSymlink == 0 {
			t.Errorf("%s is a link no more: %v", name, err)
		}
	}
	if err := d.put(filepath.Join(dir, "ring.pdf"), nil); err == nil {
		t.Error("written into a circle of links")
	}
}

// TestPutIntoAPipe: a pipe is written to and stays a pipe; so does a device.
func TestPutIntoAPipe(t *testing.T) {
	dir := t.TempDir()
	pipe := filepath.Join(dir, "pipe.pdf")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	got := make(chan string)
	go func() {
		b, err := os.ReadFile(pipe)
		got <- fmt.Sprint(string(b), err)
	}()
	d := &desk{}
	if err := d.put(pipe, []byte("through")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(pipe); err != nil || info.Mode()&fs.ModeNamedPipe == 0 {
		t.Fatalf("the pipe is one no more: %v", err)
	}
	if s := <-got; s != "through<nil>" {
		t.Errorf("at the other end: %s", s)
	}
	if err := d.put("/dev/null", []byte("gone")); err != nil {
		t.Error(err)
	}
	if info, err := os.Stat("/dev/null"); err != nil || info.Mode()&fs.ModeDevice == 0 {
		t.Fatalf("/dev/null is a device no more: %v", err)
	}
	if err := d.put("/dev/full", []byte("no room")); err == nil {
		t.Error("a full device took the paper")
	}
}

// TestPutFails: a fault leaves what was there alone, and nothing beside it.
func TestPutFails(t *testing.T) {
	dir, path := folderWith(t, "a.pdf", "old")
	d := &desk{}
	for _, to := range []string{dir, filepath.Join(dir, "no folder", "x.pdf"), filepath.Join(path, "x.pdf")} {
		if err := d.put(to, []byte("new")); err == nil {
			t.Errorf("written to %s", to)
		}
	}
	holds(t, path, "old")
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// TestMayNot: what was read is never given up, by whatever name; what is no PDF
// only by force.
func TestMayNot(t *testing.T) {
	dir, job := folderWith(t, "truck.yaml", "job")
	at := func(n string) string { return filepath.Join(dir, n) }
	for _, err := range []error{os.Symlink("truck.yaml", at("link.pdf")), os.Link(job, at("hard.pdf")),
		os.WriteFile(at("points.txt"), nil, 0o600), os.WriteFile(at("old.pdf"), nil, 0o600),
		os.WriteFile(at("OLD.PDF"), nil, 0o600), os.WriteFile(at("letter.txt"), nil, 0o600),
		os.Symlink("letter.txt", at("letter.pdf"))} {
		if err != nil {
			t.Fatal(err)
		}
	}
	t.Chdir(dir)
	d := &desk{}
	d.reads(job, "points.txt", "not-there.yaml")
	for _, c := range []struct {
		path     string
		ok, must bool // without and with force
	}{
		{"new.pdf", true, true}, {"old.pdf", true, true}, {"OLD.PDF", true, true}, {"letter.txt", false, true},
		{"letter.pdf", false, true}, {"link.pdf", false, false}, {"hard.pdf", false, false},
		{"./truck.yaml", false, false}, {"../" + filepath.Base(dir) + "/points.txt", false, false},
		{"/dev/null", true, true},
	} {
		if got := d.may(c.path, false) == nil; got != c.ok {
			t.Errorf("%s: %v, want %v", c.path, got, c.ok)
		}
		if got := d.may(c.path, true) == nil; got != c.must {
			t.Errorf("%s by force: %v, want %v", c.path, got, c.must)
		}
	}
}

// TestInterrupted: no half-written file stays when the program is interrupted,
// and it ends by the signal.
func TestInterrupted(t *testing.T) {
	for _, s := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		dir := t.TempDir()
		c := exec.Command("half-written", filepath.Join(dir, "sheet.pdf"))
		out, err := c.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		name := make([]byte, 4096)
		n, _ := out.Read(name)
		if _, err := os.Stat(strings.TrimSpace(string(name[:n]))); err != nil {
			t.Fatal(err)
		}
		if err := c.Process.Signal(s); err != nil {
			t.Fatal(err)
		}
		err = c.Wait()
		if w, ok := c.ProcessState.Sys().(syscall.WaitStatus); !ok || !w.Signaled() || w.Signal() != s {
			t.Errorf("%v: ended by %v", s, err)
		}
		if left, _ := os.ReadDir(dir); len(left) != 0 {
			t.Errorf("%v: left behind: %v", s, left)
		}
	}
}

// fullWriter takes nothing.
type fullWriter struct{}

func (fullWriter) Write([]byte) (int, error) { return 0, syscall.ENOSPC }

// TestLostOutput: whatever a command prints, if nobody gets it the exit is 3.
func TestLostOutput(t *testing.T) {
	for _, args := range [][]string{nil, {"--version"}, {"help"}, {"help", "exit"}, {"help", "sheet"}, {"tables"},
		{"tables", "rules"}, {"tables", "checks"}, {"tables", "--json"}, {"lookup", "drill", "F"}, {"lookup", "limits", "8 H7", "--json"},
		{"completion", "bash"}, {"completion", "fish"}, {"schema"}, {"check", demo}, {"survey", demo},
		{"plan", demo, "--trials", "100"}, {"verdict", demo, "--trials", "100"}, {"why", demo, "1"},
		{"sheet", demo, "--trials", "100", "-o", "-"}, {"learn", shopFile, demo}} {
		var errOut bytes.Buffer
		code := run(append([]string{"rebush"}, args...), strings.NewReader(""), fullWriter{}, &errOut)
		if code != unreadable || !strings.Contains(errOut.String(), "standard output: ") {
			t.Errorf("%q: exit %d, %q", args, code, errOut.String())
		}
	}
}
