package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"rebush/plan/job"
)

func runStart(e *env, o options, words []string) error {
	path := "job.yaml"
	if len(words) > 0 {
		var err error
		if path, err = one(words, "job file"); err != nil {
			return err
		}
	}
	if o.has("from") && o.has("like") {
		return usage("--from and --like do not go together: write like: into the file that --from makes")
	}
	if o.has("from") {
		return startFrom(e, o, path)
	}
	t := newTalk(e, o, path)
	if path != "-" {
		if err := t.open(); err != nil {
			return err
		}
	}
	if o.has("like") {
		if err := t.like(o.text["like"]); err != nil {
			return err
		}
	}
	if path != "-" {
		e.desk.parting(func() { fmt.Fprintf(e.errOut, "\n%s", t.laterWords()) })
	}
	return t.run()
}

// startFrom makes the job file of a table of bores.
func startFrom(e *env, o options, path string) error {
	if path != "-" {
		if _, err := os.Lstat(path); err == nil {
			return usage("%s is there already and is not written over; name another file", path)
		}
	}
	text, err := tableText(e, o)
	if err != nil {
		return err
	}
	if path == "-" {
		return e.write(text)
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return usage("%s is there already and is not written over; name another file", path)
	}
	if err != nil {
		return &writeError{path, err}
	}
	_, err = f.Write(text)
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		os.Remove(path)
		return &writeError{path, err}
	}
	e.printf("%s is written. Next: rebush check %s\n", path, path)
	return nil
}

func tableText(e *env, o options) ([]byte, error) {
	from := o.text["from"]
	var data []byte
	var err error
	if from == "-" {
		data, err = io.ReadAll(io.LimitReader(e.in, largestFile+1))
	} else {
		data, err = readSmall(from)
	}
	if err != nil {
		return nil, &job.FileError{Path: from, Err: err}
	}
	if len(data) > largestFile {
		return nil, usage("%s is larger than 1 MiB; is it the right file?", from)
	}
	return job.FromCSV(from, data)
}

// readSmall reads a file, and one byte more than the largest at most.
func readSmall(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("is a folder; name the file in it")
	}
	var b bytes.Buffer
	_, err = io.Copy(&b, io.LimitReader(f, largestFile+1))
	return b.Bytes(), err
}

// draftFile is a file that is written again after each answer. It never writes
// over what somebody else has put there meanwhile.
type draftFile struct {
	path string
	last []byte // what stands there, nil: nothing
	desk *desk
}

// save writes the file anew.
func (d *draftFile) save(text []byte) error {
	if text == nil || bytes.Equal(text, d.last) {
		return nil
	}
	now, err := os.ReadFile(d.path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && d.last == nil:
	case err == nil && d.last != nil && bytes.Equal(now, d.last):
	case err == nil || errors.Is(err, fs.ErrNotExist):
		return usage("%s was changed or taken away by somebody else since the last answer; it is left as it is", d.path)
	default:
		return &writeError{d.path, err}
	}
	if err := d.desk.put(d.path, text); err != nil {
		return &writeError{d.path, err}
	}
	d.last = text
	return nil
}
