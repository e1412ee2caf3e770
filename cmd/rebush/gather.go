package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"rebush/plan/job"
)

// kind is what a file on the command line is, told by its first lines.
type kind string

const (
	aJobFile     kind = "a job"
	aShopFile    kind = "a shop file"
	aPatternFile kind = "a pattern"
	aFolder      kind = "a folder"
	noJob        kind = "no job"
	unknown      kind = "" // not there, or not to be looked into
)

var (
	jobHeader   = regexp.MustCompile(`(?m)^[ "']*rebush["']?\s*:`)
	shopHeader  = regexp.MustCompile(`(?m)^[ "']*rebush_shop["']?\s*:`)
	jobKey      = regexp.MustCompile(`(?m)^(shafts|chassis|bushes)\s*:`)
	patternName = regexp.MustCompile(`(?m)^like\s*:\s*['"]?([^'"#\n]+?)['"]?\s*(?:#.*)?$`)
)

// firstLines are as many bytes of a plain file as tell what it is.
func firstLines(path string) []byte {
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() {
		return nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	b, _ := io.ReadAll(io.LimitReader(f, largestFile))
	return bytes.ReplaceAll(b, []byte{0}, nil) // two bytes a letter, as some editors save
}

// kindOf looks into a file. A file named as a job that has the keys of one is
// taken for one, so that a slip in its first line is told.
func kindOf(path string) kind {
	info, err := os.Stat(path)
	switch {
	case err != nil || !info.IsDir() && !info.Mode().IsRegular():
		return unknown
	case info.IsDir():
		return aFolder
	}
	text := firstLines(path)
	switch {
	case shopHeader.Match(text):
		return aShopFile
	case jobHeader.Match(text), namedAsJob(path) && (len(text) == 0 || jobKey.Match(text)):
		return aJobFile
	}
	return noJob
}

func namedAsJob(path string) bool {
	return slices.Contains([]string{".yaml", ".yml"}, strings.ToLower(filepath.Ext(path)))
}

// gather turns the words of a command that takes several jobs into jobs: a
// folder into those in it, and out of several words those that are jobs. What
// is passed over is said. A single word that is no folder stays what it is, so
// that the reader says what is wrong with it. keep is another kind that the
// command takes as well.
func (e *env) gather(list []string, keep kind) (jobs []string, several bool, err error) {
	var all []string
	folder := ""
	for _, w := range list {
		if w == "-" || kindOf(w) != aFolder {
			all = append(all, w)
			continue
		}
		in, err := os.ReadDir(w)
		if err != nil {
			return nil, false, err
		}
		folder = w
		before := len(all)
		for _, f := range in {
			name := filepath.Join(w, f.Name())
			if k := kindOf(name); !strings.HasPrefix(f.Name(), ".") && k != aFolder && (namedAsJob(name) || k == aJobFile) {
				all = append(all, name)
			}
		}
		if len(all) == before && len(list) > 1 {
			fmt.Fprintf(e.errOut, "%s: a folder without a job, passed over\n", w)
		}
	}
	if len(list) < 2 && folder == "" {
		return list, false, nil
	}
	patterns := patternsOf(all)
	for _, w := range all {
		k := unknown
		if w != "-" {
			k = kindOf(w)
		}
		if k == aJobFile && isOneOf(patterns, w) {
			k = aPatternFile
		}
		switch k {
		case aJobFile, keep, unknown:
			jobs = append(jobs, w)
		default:
			fmt.Fprintf(e.errOut, "%s: %s, passed over\n", w, k)
		}
	}
	switch {
	case len(jobs) > 0 || len(list) == 0:
	case folder != "":
		return nil, true, &job.FileError{Path: folder, Err: errors.New("is a folder without a job; a job file begins " +
			"with rebush: 1")}
	default:
		return nil, true, usage("none of these files is a job: a job file begins with rebush: 1")
	}
	return jobs, true, nil
}

// patternsOf are the files that jobs say they are like.
func patternsOf(jobs []string) []os.FileInfo {
	var out []os.FileInfo
	for _, j := range jobs {
		if j == "-" {
			continue
		}
		m := patternName.FindSubmatch(firstLines(j))
		if m == nil {
			continue
		}
		name := filepath.FromSlash(string(m[1]))
		if !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(j), name)
		}
		if info, err := os.Stat(name); err == nil {
			out = append(out, info)
		}
	}
	return out
}

func isOneOf(files []os.FileInfo, path string) bool {
	info, err := os.Stat(path)
	return err == nil && slices.ContainsFunc(files, func(f os.FileInfo) bool { return os.SameFile(f, info) })
}
