package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets"
	"rebush/sheets/draw"
)

// paths says where the paper of each job goes: beside the job, or where -o
// says. It refuses two of one name, and to write over what was read.
func (o options) paths(e *env, jobs []string, suffix string) (map[string]string, error) {
	to := o.text["output"]
	if o.has("output") && to == "" {
		return nil, usage("-o wants the name of a file or a folder")
	}
	if to == "-" {
		switch {
		case len(jobs) > 1:
			return nil, usage("standard output takes the paper of one job only")
		case e.terminal:
			return nil, usage("a PDF is not written to a terminal: give -o a file, or send it on with > or |")
		case o.on["json"]:
			return nil, usage("standard output takes either the PDF or the JSON")
		}
		return map[string]string{jobs[0]: "-"}, nil
	}
	out, taken := map[string]string{}, map[string]string{}
	folder := o.folder() != ""
	for _, j := range jobs {
		var path string
		switch {
		case to != "" && !folder:
			path = to
		case j == "-" && to == "":
			return nil, usage("a job from standard input has no folder: say -o FILE")
		default:
			base := strings.TrimSuffix(filepath.Base(j), filepath.Ext(j))
			if j == "-" {
				base = "job"
			}
			dir := filepath.Dir(j)
			if folder {
				dir = to
			}
			path = filepath.Join(dir, base+suffix+".pdf")
		}
		if err := claim(path, j, taken); err != nil {
			return nil, err
		}
		out[j] = path
	}
	e.readAhead(o, jobs)
	for _, j := range jobs {
		if err := e.desk.may(out[j], o.on["force"]); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// folder is the folder that -o names, "" where it names a file: one that is
// there, or ends in a separator, or, of several jobs, what neither is a file
// nor named as one paper.
func (o options) folder() string {
	to := o.text["output"]
	_, err := os.Stat(to)
	if isFolder(to) || to != "" && to != "-" && o.several && err != nil && !strings.EqualFold(filepath.Ext(to), ".pdf") {
		return to
	}
	return ""
}

// readAhead notes every file that the jobs are read from before anything is
// drawn, so that no paper of one job is written over what another is yet to be
// read from. What is wrong with a job is said when its turn comes.
func (e *env) readAhead(o options, jobs []string) {
	for _, path := range jobs {
		if f, ok := e.in.(*os.File); path == "-" {
			if ok {
				e.desk.readsOpen("standard input", f)
			}
			continue
		}
		e.desk.reads(path)
		if j, err := job.Read(path, job.Options{Shop: o.text["shop"]}); err == nil {
			e.desk.reads(j.Inputs()...)
		}
	}
}

func claim(path, j string, taken map[string]string) error {
	key, err := filepath.Abs(path)
	if err != nil {
		return &writeError{path, err}
	}
	if in, err := filepath.Abs(j); err == nil && in == key {
		return usage("%s is the job itself: it would be written over", path)
	}
	if other, ok := taken[key]; ok {
		return usage("%s and %s would both be drawn to %s; give -o a folder, or draw them one by one", other, j, path)
	}
	taken[key] = j
	switch strings.ToLower(filepath.Ext(path)) {
	case ".yaml", ".yml", ".csv":
		return usage("%s is no name for a PDF: it would be written over", path)
	}
	return nil
}

func isFolder(path string) bool {
	if path == "" {
		return false
	}
	if os.IsPathSeparator(path[len(path)-1]) {
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// paperOptions reads what is chosen of the paper. What is wrong with it is
// said before any job is read.
func (o options) paperOptions() (sheets.Options, error) {
	s := sheets.Options{Paper: o.text["paper"], Large: o.on["large"], Units: o.text["units"], Date: o.text["date"],
		Sources: o.on["sources"]}
	if _, err := o.units(); err != nil {
		return s, err
	}
	switch {
	case o.has("paper") && !strings.EqualFold(s.Paper, "A4") && !strings.EqualFold(s.Paper, "Letter"):
		return s, usage("--paper: there is no %q; there are A4 and Letter", s.Paper)
	case o.has("date") && !isDate(s.Date):
		return s, usage("--date: %q is no date; a date is written 2026-11-25", s.Date)
	}
	return s, nil
}

// drawingOptions reads what is chosen of the paper and of the plan on it.
func (o options) drawingOptions() (sheets.Options, plan.Options, error) {
	po, err := o.paperOptions()
	if err != nil {
		return po, plan.Options{}, err
	}
	with, err := o.planOptions()
	return po, with, err
}

// save writes a document to a file, or to standard output by way of raw.
func (e *env) save(o options, doc *draw.Document, path string, raw *bytes.Buffer) error {
	var b bytes.Buffer
	if err := doc.Write(&b); err != nil {
		return &faultError{what: "the paper: " + err.Error()}
	}
	if path == "-" {
		_, err := b.WriteTo(raw)
		return err
	}
	if info, err := os.Stat(path); err == nil && info.Mode()&os.ModeCharDevice != 0 {
		if f, err := os.OpenFile(path, os.O_WRONLY, 0); err == nil {
			terminal := isTerminal(f)
			f.Close()
			if terminal {
				return usage("a PDF is not written to a terminal: give -o a file")
			}
		}
	}
	if to := o.folder(); to != "" {
		if err := os.MkdirAll(to, 0o777); err != nil {
			return &writeError{to, err}
		}
	}
	if err := e.desk.may(path, o.on["force"]); err != nil {
		return err
	}
	if err := e.desk.put(path, b.Bytes()); err != nil {
		return &writeError{path, err}
	}
	return nil
}
