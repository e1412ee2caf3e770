package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"runtime"
	"runtime/debug"
	"sync"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/habit"
	"rebush/plan/job"
)

// learnAnswer is what past jobs tell of a shop.
type learnAnswer struct {
	Shop    string       `json:"shop"`
	Jobs    []learnedJob `json:"jobs"`
	Learned habit.Row    `json:"learned"`
	Record  string       `json:"record"` // for the shop file; "" where nothing is told
}

// learnedJob is one past job: how many of its holes count, and why not more.
type learnedJob struct {
	Job      string       `json:"job"`
	File     string       `json:"file"`
	Holes    int          `json:"holes"`
	Findings finding.List `json:"findings"`
}

// pastJob is one past job while it is looked at.
type pastJob struct {
	path string
	job  *job.Job
	past habit.Job
	said finding.List
	err  error

	twice bool // another job has its number
}

func runLearn(e *env, o options, words []string) error {
	with, err := o.planOptions()
	if err == nil {
		_, err = o.units()
	}
	switch {
	case err != nil:
		return err
	case len(words) == 0:
		return usage("which shop, and which of its past jobs? rebush learn SHOP JOB...")
	case len(words) == 1:
		return usage("which past jobs of %s? rebush learn SHOP JOB...", words[0])
	case words[0] == "-":
		return usage("standard input cannot be the shop file; name a file")
	}
	if err := namedJobs(words[1:]); err != nil {
		return err
	}
	shop, err := job.ReadShop(words[0])
	if err != nil {
		return err
	}
	jobs := e.pastJobs(shop, words[1:])
	sameJobs(jobs)
	lookBack(jobs, with)
	return e.learned(o, shop, jobs)
}

// pastJobs reads past jobs, each with its own shop file, which may have another
// record, or none. One that names no shop was planned with the shop that is
// asked about.
func (e *env) pastJobs(shop *job.Shop, paths []string) []*pastJob {
	jobs := make([]*pastJob, len(paths))
	for i, path := range paths {
		p := &pastJob{path: path, said: finding.List{}}
		jobs[i] = p
		var typed []byte
		if path == "-" { // it is read twice
			if typed, p.err = io.ReadAll(io.LimitReader(e.in, 2<<20)); p.err != nil {
				continue
			}
		}
		read := func(shop string) (*job.Job, error) {
			return job.Read(path, job.Options{Shop: shop, Stdin: bytes.NewReader(typed)})
		}
		if p.job, p.err = read(""); p.err == nil && p.job.Shop.File == "" {
			p.job, p.err = read(shop.File)
		} else if p.err == nil && !sameFile(p.job.Shop.File, shop.File) && !p.job.Shop.Same(shop) {
			p.err = job.Problems{{Pos: p.job.At("shop"), Wrong: fmt.Sprintf("this is a job of another shop, %s: it tells nothing of %s",
				p.job.Shop.File, shop.File), Right: "leave it out, or learn of that shop"}}
		}
	}
	return jobs
}

func sameFile(a, b string) bool {
	x, err1 := os.Stat(a)
	y, err2 := os.Stat(b)
	return err1 == nil && err2 == nil && os.SameFile(x, y)
}

// sameJobs refuses jobs of one number, and one job named twice: nobody knows
// which of them was made.
func sameJobs(jobs []*pastJob) {
	first := map[string]*pastJob{}
	for _, p := range jobs {
		if p.err != nil {
			continue
		}
		key, what := "number "+p.job.Number, "are both job "+p.job.Number
		if p.job.Number == "" {
			key, what = "text "+string(p.job.Canonical())+fmt.Sprint(p.job.Made), "are one job twice"
		}
		f, ok := first[key]
		if !ok {
			first[key] = p
			continue
		}
		p.err = job.Problems{{Pos: p.job.At("job"), Wrong: fmt.Sprintf("%s and %s %s: nothing is learned of either", f.path, p.path, what),
			Right: "name each job once, and give each its own number"}}
		f.twice = true
	}
	for _, p := range jobs {
		if p.twice {
			p.err = job.Problems{{Pos: p.job.At("job"), Wrong: "another job has its number: nothing is learned of either",
				Right: "name each job once, and give each its own number"}}
		}
	}
}

// lookBack sets what was made against what was planned, as many jobs at once as
// there are cores.
func lookBack(jobs []*pastJob, with plan.Options) {
	slots := make(chan struct{}, runtime.GOMAXPROCS(0))
	var all sync.WaitGroup
	for _, p := range jobs {
		if p.err != nil {
			continue
		}
		all.Add(1)
		go func() {
			slots <- struct{}{}
			defer func() {
				if r := recover(); r != nil {
					p.err = &faultError{what: fmt.Sprint(r), stack: debug.Stack()}
				}
				<-slots
				all.Done()
			}()
			p.past, p.said, p.err = plan.Past(p.job, with)
		}()
	}
	all.Wait()
}

// learned prints what all jobs together tell.
func (e *env) learned(o options, shop *job.Shop, jobs []*pastJob) error {
	out := learnAnswer{Shop: shop.File, Jobs: []learnedJob{}}
	prior, rules, err := plan.Prior(shop)
	if err != nil {
		return err
	}
	var past []habit.Job
	var good []*pastJob
	code := done
	for _, p := range jobs {
		if p.err != nil {
			code = max(code, tell(e, p.err))
			p.said = append(p.said, findingsOf(p.err)...)
		} else {
			good, past = append(good, p), append(past, p.past)
		}
	}
	found := habit.Learn(past, prior, rules)
	for _, s := range found.Slipped {
		p := good[s.Job]
		p.said.Raise(finding.Caution, plan.RuleSlip, p.job.PlaceAt(s.Bore, "made/"+s.Bore), s.Words(), "correct it if it is a slip of the pen")
	}
	for _, p := range jobs {
		l := learnedJob{File: p.path, Holes: len(p.past.Holes), Findings: p.said}
		if p.job != nil {
			l.Job = p.job.Number
		}
		out.Jobs = append(out.Jobs, l)
	}
	var rec *job.Record
	rec, out.Record = found.Record(rules, shop.Units())
	then := plan.With(shop, rec)
	out.Learned = found.Explain(then, rules)
	if o.on["json"] {
		b, err := encode(out, true)
		if err == nil {
			err = e.write(b)
		}
		if err != nil {
			return err
		}
	} else {
		showLearned(e, o, shop, out, rec, found.Lines(then, rules))
	}
	if found.Slips.Holes == 0 && code == done {
		return usage("none of these jobs tells anything: write what was made as made: {front axle.left: {seat: 5.008, with: pins}}")
	}
	return endWith(code)
}
