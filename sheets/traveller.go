package sheets

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// Broken is a job of a batch of which no plan could be made, and what is wrong
// with it.
type Broken struct {
	File  string
	Wrong string // a line for each fault
	At    int    // its place among the jobs of the batch, from 0
}

// Traveller makes the summary that goes with a batch: a block for each job, in
// the order in which they were named, with boxes for the stages. Paper and units
// are those of the first job where the options leave them open. It ends with what
// the batch takes from the drawers. A broken job stands in its place with what is
// wrong with it.
func Traveller(plans []*plan.Plan, o Options, broken ...Broken) (*draw.Document, error) {
	if len(plans) == 0 {
		return nil, fmt.Errorf("a traveller needs at least one job")
	}
	p, err := newPaper(o, plans[0].Job, "Batch traveller")
	if err != nil {
		return nil, err
	}
	p.number, p.title = "", ""
	jobs := make([]*job.Job, len(plans))
	for i, pl := range plans {
		jobs[i] = pl.Job
	}
	p.bench = benchOf(jobs...)
	p.doc.Title = "Batch traveller"
	p.batch = true
	p.foot = oneLine(plans[0].Program)
	p.section = "Batch traveller"
	p.page()
	b := p.block()
	b.Bookmark("Batch traveller", 0, 0)
	b.para("Batch of "+count(len(plans)+len(broken), "job"), draw.Bold, p.st.title)
	stopped := 0
	for _, pl := range plans {
		if !machined(pl) {
			stopped++
		}
	}
	s := fmt.Sprintf("%d advised to be machined, %d not", len(plans)-stopped, stopped)
	if len(broken) > 0 {
		s += fmt.Sprintf(", %d not understood", len(broken))
	}
	b.para(s+"."+hoursWords(plans), draw.Regular, p.st.body)
	for _, name := range twice(plans) {
		b.para("Two jobs are called "+name+filesOf(plans, name)+": give each a number of its own.", draw.Bold, p.st.body)
	}
	p.add(b)
	at, left := 0, broken
	for _, pl := range plans {
		for len(left) > 0 && left[0].At <= at {
			p.add(brokenBlock(p, left[0]))
			left, at = left[1:], at+1
		}
		b := p.block()
		travellerBlock(b, say.Printed(pl, p.u.said()))
		p.add(b)
		at++
	}
	for _, x := range left {
		p.add(brokenBlock(p, x))
	}
	shelves(p, plans)
	return p.finish()
}

// mostFaults is how many faults of a broken job are told; `rebush check` tells
// all of them.
const mostFaults = 4

// faultAt is where a fault stands: the file is named above it.
var faultAt = regexp.MustCompile(`^.*?:(\d+):\d+: `)

// brokenBlock is a job that could not be planned, with what is wrong.
func brokenBlock(p *paper, x Broken) *block {
	b := p.block()
	b.Bookmark(base(x.File), 1, 0)
	b.y = b.write(0, 0, b.Width, base(x.File), draw.Bold, b.st.figure) + 1
	b.tag(0, b.y, "NOT UNDERSTOOD", b.st.body)
	b.y += em(b.st.body) + 4
	lines := strings.Split(strings.TrimSpace(x.Wrong), "\n")
	for i, l := range lines {
		if i == mostFaults {
			b.para(fmt.Sprintf("%d more: rebush check lists them.", len(lines)-i), draw.Regular, b.st.body)
			break
		}
		b.dashed(faultAt.ReplaceAllString(l, "line $1: "))
	}
	b.stages([]string{"file put right", "planned"})
	b.Line(0, b.y, b.Width, b.y, 0.3)
	b.Reach(b.y)
	return b
}

// tenths are the hours of a job as paper has them.
func tenths(h float64) int { return int(math.Round(10 * h)) }

// hoursWords adds up the hours of the jobs as they are printed beside them.
func hoursWords(plans []*plan.Plan) string {
	sum := 0
	var each []string
	for _, pl := range plans {
		if h := tenths(hoursOf(pl)); h > 0 {
			sum += h
			each = append(each, fmt.Sprintf("%.1f", float64(h)/10))
		}
	}
	if sum == 0 {
		return ""
	}
	s := fmt.Sprintf(" About %.1f hours for what was chosen", float64(sum)/10)
	if n := len(each); n > 1 && n <= 8 {
		s += ": " + strings.Join(each, " + ")
	}
	return s + "."
}

// twice are the numbers that more than one job has, each once.
func twice(plans []*plan.Plan) []string {
	n := map[string]int{}
	var out []string
	for _, pl := range plans {
		if n[pl.JobNumber]++; pl.JobNumber != "" && n[pl.JobNumber] == 2 {
			out = append(out, pl.JobNumber)
		}
	}
	return out
}

// filesOf are the files of the jobs of one number.
func filesOf(plans []*plan.Plan, number string) string {
	var files []string
	for _, pl := range plans {
		if pl.JobNumber == number && pl.Job != nil && pl.Job.File != "" {
			files = append(files, base(pl.Job.File))
		}
	}
	if len(files) == 0 {
		return ""
	}
	return " (" + strings.Join(files, ", ") + ")"
}

// machined says whether a job is to be cut: the plan allows it and the verdict
// advises it.
func machined(pl *plan.Plan) bool { return pl.OK && pl.Machines() && pl.NotAdvised == "" }

// hoursOf are the hours of the way that a job goes. A truck that may not be
// machined has those of its verdict, where that cuts nothing.
func hoursOf(pl *plan.Plan) float64 {
	way := pl.Goes()
	if !pl.OK {
		if pl.Verdict == nil || pl.Verdict.Choice.Cuts() {
			return 0
		}
		way = pl.Verdict.Choice
	}
	for _, w := range pl.Ways {
		if w.Way == way && w.Hours != nil {
			return *w.Hours
		}
	}
	return 0
}

func travellerBlock(b *block, pl *plan.Plan) {
	name := "job without a number"
	if pl.JobNumber != "" {
		name = pl.JobNumber
	}
	title := ""
	if pl.Job != nil {
		title = pl.Job.Title
	}
	b.Bookmark(name, 1, 0)
	b.y = b.write(0, 0, b.Width, name, draw.Bold, b.st.figure) + 1
	b.y = b.write(0, b.y, b.Width, title, draw.Regular, b.st.body) + 1.5
	if !pl.OK {
		b.tag(0, b.y, "DO NOT MACHINE", b.st.body)
		b.y += em(b.st.body) + 4
	}
	if pl.OK && pl.NotAdvised != "" {
		b.tag(0, b.y, "NOT ADVISED", b.st.body)
		b.y += em(b.st.body) + 4
		b.para(sentence(pl.NotAdvised.String()), draw.Regular, b.st.body)
	}
	if pl.Verdict != nil {
		b.para(pl.Verdict.Sentence.String(), draw.Bold, b.st.body)
	}
	var facts []string
	if h := tenths(hoursOf(pl)); h > 0 {
		facts = append(facts, fmt.Sprintf("%.1f hours", float64(h)/10))
	}
	if n := len(pl.Operations); n > 0 && machined(pl) {
		facts = append(facts, count(n, "operation"))
	}
	if pl.Chance != nil && machined(pl) {
		facts = append(facts, "first time right "+percent(pl.Chance.FirstTimeRight)+", an estimate")
	}
	if s := bushes(pl); s != "" && machined(pl) {
		facts = append(facts, s)
	}
	b.para(strings.Join(facts, "; "), draw.Regular, b.st.body)
	stages := []string{"measured", "agreed", "holes cut", "bushes in", "bores to size", "proved"}
	if !machined(pl) {
		switch {
		case !pl.OK:
			stages = []string{"measured", "told", "agreed"}
		case pl.Machines():
			b.para("Wanted all the same: "+pl.Goes().Owner()+". Its sheet is made.", draw.Regular, b.st.body)
		default:
			stages = []string{"measured", "told", "agreed"}
			b.para("Nothing is cut. Its sheet says what to do or to check.", draw.Regular, b.st.body)
		}
	}
	b.stages(stages)
	b.Line(0, b.y, b.Width, b.y, 0.3)
	b.Reach(b.y)
}

// bushes counts what a job takes from the shelf, in the order of its seats.
func bushes(pl *plan.Plan) string {
	n := map[string]int{}
	var order []string
	for _, s := range pl.Seats {
		if s.Bush == "" {
			continue
		}
		if n[s.Bush] == 0 {
			order = append(order, s.Bush)
		}
		n[s.Bush]++
	}
	var out []string
	for _, b := range order {
		out = append(out, strconv.Itoa(n[b])+" of "+b)
	}
	return strings.Join(out, ", ")
}

// stages draws a tick box for each stage, in rows of three.
func (b *block) stages(names []string) {
	const cols = 3
	w := b.Width / cols
	t := b.st.tick
	for i, s := range names {
		x := float64(i%cols) * w
		if i > 0 && i%cols == 0 {
			b.y += t + 2
		}
		b.Rect(x+0.3, b.y, t, t, 0.45)
		b.write(x+t+3, b.y+(t-em(b.st.body))/2, w-t-4, s, draw.Regular, b.st.body)
	}
	b.y += t + 2.5
	b.Reach(b.y)
}
