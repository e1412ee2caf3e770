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
	if path != "-" {
		if _, err := os.Lstat(path); err == nil {
			return usage("%s is there already and is not written over; name another file", path)
		}
	}
	text, err := startText(e, o, path)
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

// startText is the job file, of a table or of answers.
func startText(e *env, o options, path string) ([]byte, error) {
	if !o.has("from") {
		ask := e.out
		if path == "-" {
			ask = e.errOut
		}
		return job.Ask(e.in, ask)
	}
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
