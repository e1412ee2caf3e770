package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"rebush/plan/job"
)

// talk is one run of start: an interview, the file it is kept in, and a terminal
// or a pipe at the other end.
type talk struct {
	e     *env
	o     options
	in    *bufio.Reader
	out   io.Writer
	echo  bool // answers come from no terminal and are shown
	iv    *job.Interview
	file  *draftFile // nil: standard output, in the end
	shop  *draftFile
	ended bool // no more answers come
	head  string
}

// largestAnswer is how much of a line is read; more of it is passed over.
const largestAnswer = 64 << 10

func newTalk(e *env, o options, path string) *talk {
	t := &talk{e: e, o: o, in: bufio.NewReader(e.in), out: e.out, iv: job.NewInterview(path)}
	f, ok := e.in.(*os.File)
	t.echo = !ok || !isTerminal(f)
	if path == "-" {
		t.out = e.errOut
	}
	return t
}

// open takes up the file where it is there, and the shop file beside it.
func (t *talk) open() error {
	path := t.iv.File
	t.file = &draftFile{path: path, desk: t.e.desk}
	t.iv.Folder = filepath.Dir(path)
	shop := filepath.Join(t.iv.Folder, job.ShopName)
	if info, err := os.Stat(t.iv.Folder); err != nil || !info.IsDir() {
		return usage("there is no folder %s to write %s into; make it first", t.iv.Folder, filepath.Base(path))
	}
	data, err := readSmall(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return &job.FileError{Path: path, Err: err}
	default:
		switch err := t.iv.Resume(data); {
		case errors.Is(err, job.ErrNoAnswers):
			return usage("%s is there already and is not written over; name another file", path)
		case err != nil:
			return usage("%s: %v", path, err)
		}
		t.file.last = data
		t.iv.Reopen()
	}
	if own := t.iv.ShopText(); own != nil {
		t.shop = &draftFile{path: shop, desk: t.e.desk}
		if now, err := os.ReadFile(shop); err == nil {
			t.shop.last = now
			if string(now) != string(own) {
				t.shop = nil // it was changed by hand, and stays
			}
		}
	} else if _, err := os.Lstat(shop); err == nil {
		t.iv.Shop = job.ShopName
	} else {
		t.shop = &draftFile{path: shop, desk: t.e.desk}
	}
	return nil
}

// like begins with a pattern, which is named from the folder of the job.
func (t *talk) like(name string) error {
	if rel, err := filepath.Rel(t.iv.Folder, name); err == nil && !filepath.IsAbs(name) {
		name = filepath.ToSlash(rel)
	}
	switch had := t.iv.IsLike(); {
	case had == name:
		return nil
	case t.file != nil && t.file.last != nil:
		return usage("%s was begun without this pattern; begin another file for it", t.iv.File)
	}
	return t.iv.Like(name)
}

// save writes down what is known.
func (t *talk) save() error {
	if t.file == nil {
		return nil
	}
	if t.shop != nil {
		if err := t.shop.save(t.iv.ShopText()); err != nil {
			return err
		}
	}
	return t.file.save(t.iv.Text())
}

// laterWords say where the answers are when start ends before its time.
func (t *talk) laterWords() string {
	if t.file == nil || t.file.last == nil {
		return "Nothing was answered, and no file was made.\n"
	}
	return fmt.Sprintf("%s holds all that you said. To go on: rebush start %s\n", t.iv.File, shellWord(t.iv.File))
}

// shellWord is a file name as it is typed.
func shellWord(s string) string {
	if strings.ContainsAny(s, " '&;()$") {
		return `"` + s + `"`
	}
	return s
}

// line reads one answer.
func (t *talk) line() string {
	var b []byte
	for {
		part, err := t.in.ReadSlice('\n')
		if room := largestAnswer - len(b); room > 0 {
			b = append(b, part[:min(len(part), room)]...)
		}
		if errors.Is(err, bufio.ErrBufferFull) {
			continue
		}
		if err != nil && len(b) == 0 {
			t.ended = true
		}
		break
	}
	s := strings.TrimSpace(string(b))
	if t.echo {
		fmt.Fprintln(t.out, shorter(s))
	}
	return s
}

// shorter keeps an answer that is shown to a line.
func shorter(s string) string {
	r := []rune(s)
	if len(r) > 60 {
		return string(r[:60]) + "..."
	}
	return s
}

// run asks until all is asked, and ends with what comes of it.
func (t *talk) run() error {
	t.greet()
	for {
		st, ok := t.iv.Next()
		if !ok {
			more, err := t.conclude()
			if err != nil || !more {
				return err
			}
			continue
		}
		if err := t.ask(st); err != nil {
			return err
		}
		if t.ended {
			return t.stopped()
		}
	}
}

func (t *talk) stopped() error {
	fmt.Fprintln(t.out)
	if t.file == nil {
		return usage("the answers ended before the questions did; no job file was made")
	}
	return usage("the answers ended before the questions did. %s", strings.TrimSpace(t.laterWords()))
}

func (t *talk) greet() {
	say := func(s string) {
		for _, l := range wrap(s, 78) {
			fmt.Fprintln(t.out, l)
		}
	}
	if t.file != nil && t.file.last != nil {
		if t.iv.Left() > 0 {
			say(fmt.Sprintf("%s: going on where you stopped, about %d questions to come.", t.iv.File, t.iv.Left()))
		}
		return
	}
	say(fmt.Sprintf("About %d questions, then a first verdict. A truck is a bogie, a bush a bushing. All is seen from the LEFT "+
		"side, for both plates.", t.iv.Left()+6))
	say("Enter takes what stands in [brackets]; ? tells what a question is for; back takes the last answer back; skip leaves " +
		"one open. The numbers are those of the measuring form (rebush form).")
	if t.file != nil {
		say(fmt.Sprintf("Each answer is kept in %s at once: stop whenever you like, and go on with the same command.", t.iv.File))
	}
}
