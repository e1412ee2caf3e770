package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"sync"
	"syscall"
)

// desk is where papers are put in their places. It knows every file that was
// read, by what it is and not by its name, and every file of its own that is
// half written.
type desk struct {
	mu   sync.Mutex
	read []readFile
	half map[string]bool
	ears chan os.Signal
	last func() // what is said before an interruption ends the program, nil: nothing
}

type readFile struct {
	name string
	info fs.FileInfo
}

// reads notes files that paper must never be written over. One that is not
// there cannot be.
func (d *desk) reads(names ...string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, n := range names {
		if info, err := os.Stat(n); err == nil {
			d.read = append(d.read, readFile{n, info})
		}
	}
}

// readsOpen notes a file that is open already, as standard input.
func (d *desk) readsOpen(name string, f *os.File) {
	if info, err := f.Stat(); err == nil && info.Mode().IsRegular() {
		d.mu.Lock()
		defer d.mu.Unlock()
		d.read = append(d.read, readFile{name, info})
	}
}

// may says why a paper may not be written to a place: a file that was read
// stands there, by whatever name, or one that is no PDF and was not given up.
func (d *desk) may(path string, force bool) error {
	info, err := os.Stat(path)
	if err != nil || info.IsDir() {
		return nil // there is nothing to lose
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, r := range d.read {
		if os.SameFile(r.info, info) {
			return usage("%s is a file that was read, %s: it would be written over", path, r.name)
		}
	}
	real, err := behind(path)
	if err != nil {
		return &writeError{path, err}
	}
	if info.Mode().IsRegular() && !force && !strings.EqualFold(filepath.Ext(real), ".pdf") {
		return usage("%s is there already and is not named .pdf: it is not written over. Give another name, or say "+
			"--force", path)
	}
	return nil
}

// put writes a file. A device or a pipe is written to. Else the whole is
// written beside its place and renamed, so that there is never half of it; a
// link stays, and its target is replaced; a file that is replaced keeps its
// mode and, where the system lets it, its owner.
func (d *desk) put(path string, data []byte) error {
	old, err := os.Stat(path)
	switch {
	case err == nil && old.IsDir():
		return &fs.PathError{Op: "write", Path: path, Err: errors.New("is a folder")}
	case err == nil && !old.Mode().IsRegular():
		return pour(path, data)
	case err != nil:
		old = nil
	}
	real, err := behind(path)
	if err != nil {
		return err
	}
	f, err := d.begin(real)
	if err != nil {
		return err
	}
	defer d.drop(f.Name())
	_, err = f.Write(data)
	if err == nil && old != nil {
		keepOwner(f, old)
		err = f.Chmod(old.Mode().Perm())
	}
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(f.Name(), real)
	}
	if err != nil {
		os.Remove(f.Name())
		return err
	}
	syncFolder(filepath.Dir(real))
	return nil
}

// pour writes to a device or a pipe, which stays what it is.
func pour(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if e := f.Close(); err == nil {
		err = e
	}
	return err
}

// behind follows links to the file that is meant, which need not be there yet.
func behind(path string) (string, error) {
	for range 40 {
		to, err := os.Readlink(path)
		if err != nil {
			return path, nil // no link
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", &fs.PathError{Op: "open", Path: path, Err: errors.New("links lead round in a circle")}
}

// begin opens a new file beside a place and holds it to be removed should the
// program be interrupted. New files have the mode that the umask leaves.
func (d *desk) begin(real string) (*os.File, error) {
	base := []rune(filepath.Base(real))
	start := filepath.Join(filepath.Dir(real), "."+string(base[:min(len(base), 50)])+".")
	d.mu.Lock()
	defer d.mu.Unlock()
	d.listen()
	for {
		name := fmt.Sprintf("%s%08x", start, rand.Uint32())
		f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err == nil {
			d.half[name] = true
		}
		return f, err
	}
}

// drop forgets a file that is written or removed.
func (d *desk) drop(name string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	delete(d.half, name)
}

// parting says what is said before an interruption ends the program.
func (d *desk) parting(last func()) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.last = last
	d.listen()
}

// listen waits for what interrupts a program: then nothing half written stays,
// and the program ends as if it had not listened.
func (d *desk) listen() {
	if d.ears != nil {
		return
	}
	d.ears, d.half = make(chan os.Signal, 1), map[string]bool{}
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			signal.Notify(d.ears, s)
		}
	}
	go func() {
		s := <-d.ears
		d.mu.Lock() // for good: nothing is begun any more
		for name := range d.half {
			os.Remove(name)
		}
		if d.last != nil {
			d.last()
		}
		endBy(s)
	}()
}
