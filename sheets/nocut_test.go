package sheets

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/say"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/plan/route"
	"rebush/plan/verdict"
	"rebush/sheets/draw"
)

// chosen is the sample job where the verdict chooses a way that cuts nothing.
func chosen(choice verdict.Name) *plan.Plan {
	p := samplePlan(2)
	p.Way, p.Advised, p.Cuts = choice, choice, false
	p.Seats, p.Operations, p.Chance, p.Setups, p.LayOut, p.Buy, p.Proving = nil, nil, nil, nil, nil, nil, nil
	p.Findings = p.Findings[2:] // those of the seats
	v := p.Verdict
	v.Choice = choice
	yes, no := true, false
	v.Tried = []finding.Tried{
		{Change: "a 5.5 H7 reamer, to buy", Kind: "buy", Cost: num(38), OK: &yes, FirstTimeRight: num(0.941)},
		{Change: "a jig plate pinned in sound holes", Kind: "make", OK: &no}}
	switch choice {
	case verdict.Leave:
		v.Sentence = "Leave it alone: the most play is 0.07 mm and the gears run right."
		p.Findings.Raise(finding.Note, verdict.RulePlay, finding.Place{Where: "front axle.left"},
			"left for now: look again in a season", "a complaint, or a wheel that rubs")
	case verdict.Shim:
		v.Sentence = "A washer puts it right (side play of front axle, 0.85 mm): about 18 USD."
	case verdict.Swap:
		v.Sentence = "Another truck is the better way: about 102 USD all told; the original truck would be given up."
	case verdict.MeasureFirst, verdict.BuyFirst:
		p.Way = ""
		v.Sentence = "Not yet: one reading decides whether this truck can be mended."
		v.Needs = []verdict.Need{{Do: "measure",
			What:     say.F("the metal left to edge at front axle.left, 270 degrees, with a micrometer; if it comes out at %v or better", say.MM(1.25, 2)),
			Expected: num(1.27)}, {Do: "buy", What: "two bushes 3.18 x 5.00", Cost: num(4.5)}}
		v.Then = &verdict.Then{Way: verdict.Rebush, Cost: num(78), FirstTimeRight: num(0.86)}
	}
	return p
}

// notAdvised is the sample job cut by a way that the verdict does not advise.
func notAdvised() *plan.Plan {
	p := samplePlan(2)
	p.Advised, p.Verdict.Choice = verdict.Swap, verdict.Swap
	p.NotAdvised = "another truck costs 102 USD all told against 174 USD for this, and a part is lost for good in 12 of 100 such jobs"
	return p
}

// stoppedWithTried is the sample job with a stop whose cures were tried.
func stoppedWithTried() *plan.Plan {
	p := samplePlan(2)
	yes, no := true, false
	p.OK, p.Cuts = false, false
	f := p.Findings.Raise(finding.Stop, "seat/no seat", finding.Place{Where: "front axle.left",
		File: "jobs/truck.yaml", Line: 31},
		say.F("the nearest, drawer 9, leaves %v at the edge, needs %v", say.MM(0.4137, 2), say.MM(1.25, 2).Bare()),
		"a 5.5 H7 reamer, to buy; 14 changes were tried")
	f.Tried = []finding.Tried{{Change: "a 5.5 H7 reamer, to buy", Kind: "buy", Cost: num(38), OK: &yes,
		FirstTimeRight: num(0.941)},
		{Change: "the centre of front axle.left by pins", Kind: "measure"}, {Change: "edge_mm 1.0 in place of 1.25",
			Kind: "rule", OK: &no}}
	return p
}

// TestNothingToCutBy: the sheet of a way that cuts nothing is two pages at the
// most and holds no place, tool, seat or step to cut by.
func TestNothingToCutBy(t *testing.T) {
	shouts := map[verdict.Name]string{verdict.Leave: "LEAVE IT AS IT IS", verdict.Shim: "FIT A WASHER",
		verdict.Swap:         "ANOTHER TRUCK",
		verdict.MeasureFirst: "MEASURE FIRST", verdict.BuyFirst: "BUY FIRST"}
	for choice, shout := range shouts {
		pl := chosen(choice)
		doc, err := Setup(pl, Options{})
		if err != nil {
			t.Errorf("%s: %v", choice, err)
			continue
		}
		if n := doc.Pages(); n > 2 {
			t.Errorf("%s: %d pages", choice, n)
		}
		got := wordsOf(doc)
		for _, want := range []string{shout, "Nothing is cut by this sheet.", pl.Verdict.Sentence.String(),
			"The choices side by side", "What was found",
			"What would change it", "A 5.5 H7 reamer, to buy (38.00 USD): right first time 94 in 100.",
			"Supply off and unplugged before the truck is stripped",
			"For your safety. Old paint may hold lead: wash hands."} {
			if !strings.Contains(got, want) {
				t.Errorf("%s lacks %q in:\n%s", choice, want, got)
			}
		}
		for _, no := range []string{"new centre", "rev/min", "GAUGE FIRST", "Lay out", "Route", "DO NOT MACHINE",
			"NOT ADVISED", "First time right", "A jig plate pinned"} {
			if strings.Contains(got, no) {
				t.Errorf("%s says %q", choice, no)
			}
		}
		again := strings.Contains(got, "When to look again")
		if want := choice == verdict.Leave || choice == verdict.Shim; again != want {
			t.Errorf("%s: when to look again: %v", choice, again)
		}
	}
}

// TestNeeded: what is needed first stands with its price, what it should give,
// and what would be chosen then; where nobody can tell, that is said.
func TestNeeded(t *testing.T) {
	pl := chosen(verdict.MeasureFirst)
	doc, err := Setup(pl, Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := wordsOf(doc)
	for _, want := range []string{"if it comes out at 1.25 mm or better.", "expected 1.27, found",
		"Buy: two bushes 3.18 x 5.00. Cost: 4 USD.",
		"If it comes out so: new bearings, about 78 USD all told, right first time 86 in 100, an estimate."} {
		if !strings.Contains(got, want) {
			t.Errorf("lacks %q in:\n%s", want, got)
		}
	}
	pl.Verdict.Then = nil
	if doc, err = Setup(pl, Options{}); err != nil {
		t.Fatal(err)
	}
	if got := wordsOf(doc); !strings.Contains(got,
		"What is chosen then nobody can tell before.") || strings.Contains(got, "If it comes out so") {
		t.Error(got)
	}
}

// TestNotAdvised: every page of a sheet against the advice says so and why, and
// page one has a line for who wants it all the same.
func TestNotAdvised(t *testing.T) {
	doc, err := Setup(notAdvised(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	for i, text := range pagesOf(doc) {
		if !strings.Contains(text, "NOT ADVISED") || !strings.Contains(text,
			"Another truck costs 102 USD all told against 174 USD") {
			t.Errorf("page %d does not say that it is not advised, and why:\n%s", i+1, text)
		}
		if signed := strings.Contains(text, "wanted all the same by"); signed != (i == 0) {
			t.Errorf("page %d: a line for who wants it all the same: %v", i+1, signed)
		}
	}
	doc, err = Setup(samplePlan(2), Options{})
	if err != nil {
		t.Fatal(err)
	}
	if got := wordsOf(doc); strings.Contains(got, "NOT ADVISED") {
		t.Error("the advised way is called not advised")
	}
}

// TestTriedCures: page one of a sheet that must not be followed prints what was
// tried against each stop, and no cure twice.
func TestTriedCures(t *testing.T) {
	doc, err := Setup(stoppedWithTried(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	one := pagesOf(doc)[0]
	for _, want := range []string{"What would change it, each tried:",
		"A 5.5 H7 reamer, to buy (38.00 USD): may be machined, right first time 94 in 100.",
		"asked for; nobody can tell beforehand what it gives.",
		"Edge_mm 1.0 in place of 1.25: still not to be machined.", "truck.yaml, line 31"} {
		if !strings.Contains(one, want) {
			t.Errorf("page one lacks %q in:\n%s", want, one)
		}
	}
	if n := strings.Count(one, "H7 reamer, to buy"); n != 1 {
		t.Errorf("the cure stands %d times", n)
	}
}

// TestUncheckedOnVerdict: what nobody has looked at is on the owner's page with
// a box, and a typed price stands there where the shop gives no rate.
func TestUncheckedOnVerdict(t *testing.T) {
	p := samplePlan(2)
	p.Verdict.Currency = ""
	for i := range p.Ways {
		p.Ways[i].Cost = nil
	}
	p.Job.Swap = swapAt(65)
	p.Findings.Raise(finding.Note, verdict.RuleLookAlikes, finding.Place{},
		"not looked at, and each can pass for a worn hole: rims, hubs, ohms", "check them before paying for bearings")
	doc, err := VerdictPage(p, Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := wordsOf(doc)
	for _, want := range []string{"Not looked at, and each can pass for a worn hole: rims, hubs, ohms: check them before paying for bearings.", "price 65", "no rate given"} {
		if !strings.Contains(got, want) {
			t.Errorf("lacks %q in:\n%s", want, got)
		}
	}
	for _, no := range []string{"not known", " )", "65.00"} {
		if strings.Contains(got, no) {
			t.Errorf("says %q in:\n%s", no, got)
		}
	}
}

// pagesOf is what a document says, page by page, wrapped lines joined.
func pagesOf(d *draw.Document) []string {
	var out []string
	for i := range d.Pages() {
		var words []string
		for _, it := range d.All(i + 1) {
			if it.Text != "" {
				words = append(words, it.Text)
			}
		}
		out = append(out, strings.Join(words, " "))
	}
	return out
}

func wordsOf(d *draw.Document) string { return strings.Join(pagesOf(d), "\n") }

func swapAt(price float64) *job.Swap { return &job.Swap{Price: price} }

// TestBatchDrawers: the traveller says who runs short, what to buy, which files
// are not in it, and which number stands twice.
func TestBatchDrawers(t *testing.T) {
	one, two := samplePlan(2), samplePlan(2)
	three, price := 3, 0.85
	one.Job.File = "jobs/one.yaml"
	two.Job.Shafts[0].Name = "drum"
	two.Buy = append(two.Buy, plan.BuyLine{Kind: route.BuyRod, What: "stepped rod in drum.left"})
	one.Job.Bushes = []job.Bush{{Code: "drawer 7", OnHand: &three, Price: &price}}
	two.Job.Bushes, two.JobNumber, two.Job.Number = one.Job.Bushes, "2026-108", "2026-108"
	doc, err := Traveller([]*plan.Plan{one, chosen(verdict.Swap), two, stoppedWithTried()}, Options{},
		Broken{"jobs/broken.yaml", "line 3: no such key\nline 9: no such shaft", 2})
	if err != nil {
		t.Fatal(err)
	}
	got := wordsOf(doc)
	for _, want := range []string{"Batch of 5 jobs", "2 advised to be machined, 2 not, 1 not understood.",
		"broken.yaml NOT UNDERSTOOD Line 3: no such key Line 9: no such shaft file put right",
		"Two jobs are called 2026-107 (one.yaml, truck.yaml, truck.yaml): give each a number of its own.",
		"2026-107 takes 2, 2026-108 takes 2. In this order runs short: 2026-108 by 1.",
		"1 of the bush from drawer 7 (0.85", "1 sizing mandrel 3.21, for 2026-107, 2026-108",
		"stepped rod in drum, left"} {
		if !strings.Contains(got, want) {
			t.Errorf("lacks %q in:\n%s", want, got)
		}
	}
	// The broken job stands third, where it was named.
	if strings.Index(got, "broken.yaml NOT") > strings.Index(got, "2026-108") {
		t.Errorf("the broken job does not stand before the one that was named after it:\n%s", got)
	}
	// Hours are added as they are printed.
	m := regexp.MustCompile(`About ([0-9.]+) hours for what was chosen: ([0-9. +]+)\.`).FindStringSubmatch(got)
	if m == nil {
		t.Fatalf("no hours are added up in:\n%s", got)
	}
	sum := 0.0
	for _, h := range strings.Split(m[2], " + ") {
		v, err := strconv.ParseFloat(h, 64)
		if err != nil || !strings.Contains(got, h+" hours") {
			t.Errorf("%q stands beside no job", h)
		}
		sum += v
	}
	if said := fmt.Sprintf("%.1f", sum); said != m[1] {
		t.Errorf("%s is not %s", m[2], m[1])
	}
	if n := strings.Count(got, "are called"); n != 1 {
		t.Errorf("%d numbers are said to stand twice", n)
	}
}

// TestAsMade: a plan of the truck as it now is says so on its cover, and its
// rework sheet holds the operations that remain; that of another plan does not.
func TestAsMade(t *testing.T) {
	p := samplePlan(2)
	without := wordsOf(must(Rework(p, Options{})))
	p.AsMade, p.Replaces = true, "fedcba9876543210"
	with := wordsOf(must(Rework(p, Options{})))
	do := p.Operations[len(p.Operations)-1].Do.String()
	if strings.Contains(without, do) || !strings.Contains(with, do) || !strings.Contains(with, "GAUGE FIRST") {
		t.Errorf("what remains is to %s:\n%s", do, with)
	}
	const says = "From the truck as it now is, by the sizes as made."
	if cover := pagesOf(must(Setup(p, Options{})))[0]; !strings.Contains(cover, says) {
		t.Error(cover)
	}
	if strings.Contains(without, "replaces plan") {
		t.Error("a plan that replaces none says so")
	}
	for what, d := range map[string]*draw.Document{"rework": must(Rework(p, Options{})), "setup": must(Setup(p, Options{}))} {
		pages := pagesOf(d)
		if !strings.Contains(pages[0], "replaces plan fedcba9876:") {
			t.Errorf("%s does not say which plan it replaces: %s", what, pages[0])
		}
		for i, s := range pages {
			if !strings.Contains(s, "replaces fedcba9876") {
				t.Errorf("%s, page %d: its foot does not say which plan it replaces", what, i+1)
			}
		}
	}
	if cover := pagesOf(must(Setup(samplePlan(2), Options{})))[0]; strings.Contains(cover, says) {
		t.Error(cover)
	}
}

// TestStopShowsNoSeat: a sheet that must not be followed draws and names no new
// seat and no new centre, and sets the ways side by side.
func TestStopShowsNoSeat(t *testing.T) {
	p := stoppedWithTried()
	got := wordsOf(must(Setup(p, Options{})))
	for _, no := range []string{"new seat", "new centre, ", "5.000 to 5.012", "largest seat", "Largest seat"} {
		if strings.Contains(got, no) {
			t.Errorf("says %q", no)
		}
	}
	if !strings.Contains(got, "The choices side by side") {
		t.Error("no ways side by side")
	}
	for name, h := range asFound(p).Holes {
		if h.SeatR != 0 || h.BoreR != 0 || h.Target != h.Old {
			t.Errorf("%s is drawn with a new seat: %+v", name, h)
		}
	}
	if p.Holes["front axle.left"].SeatR == 0 {
		t.Error("the plan itself was changed")
	}
}

// TestStoppedOtherWay: a way that must not be machined says which one is advised.
func TestStoppedOtherWay(t *testing.T) {
	p := stoppedWithTried()
	const says = "This sheet is of another way, "
	if strings.Contains(pagesOf(must(Setup(p, Options{})))[0], says) {
		t.Error("the advised way is called another")
	}
	p.Way, p.Advised, p.NotAdvised = verdict.Plug, verdict.Rebush, "dearer"
	if one := pagesOf(must(Setup(p, Options{})))[0]; !strings.Contains(one,
		says+"filling the holes and setting new bearings. Advised is: new bearings.") {
		t.Error(one)
	}
}

// TestAlike: what is said of several places stands once, cautions before notes,
// and a key that no step uses is left out.
func TestAlike(t *testing.T) {
	var l finding.List
	for _, at := range []string{"axle.left", "axle.right"} {
		l.Raise(finding.Note, "survey/sister", finding.Place{Where: at}, "the sister is not used", "two holes more")
		l.Raise(finding.Caution, "seat/wall", finding.Place{Where: at}, say.F("thin at %s", at), "")
		l.Raise(finding.Note, job.KeyNotUsed, finding.Place{Where: at}, "read and not used", "")
	}
	var got []string
	for _, f := range alike(l, bench{}) {
		got = append(got, string(f.Level)+" "+f.Where)
	}
	if s := strings.Join(got, "; "); s != "caution axle.left; caution axle.right; note axle.left, axle.right" {
		t.Error(s)
	}
	if l[0].Where != "axle.left" {
		t.Error("the list itself was changed")
	}
}

// TestTriedList: paper lists the first eight changes that help, and says how
// many more there are; one that would only stop the job is not among them.
func TestTriedList(t *testing.T) {
	p := chosen(verdict.Swap)
	for i := range 9 {
		t := p.Verdict.Tried[0]
		t.Change = say.F("change number %d", i)
		p.Verdict.Tried = append(p.Verdict.Tried, t)
	}
	got := wordsOf(must(Setup(p, Options{})))
	if !strings.Contains(got, "Change number 6 (38.00 USD): right first time 94 in 100.") || strings.Contains(got,
		"hange number 7") ||
		!strings.Contains(got, "2 more were tried: rebush verdict lists them.") {
		t.Error(got)
	}
}
