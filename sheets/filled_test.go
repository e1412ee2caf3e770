package sheets

import (
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/table"
	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// filled is how far down its body a page is used, 0 to 1.
func filled(d *draw.Document, page int) float64 {
	top, low := marginTop+headHeight, 0.0
	for _, it := range d.Items {
		if it.Page == page {
			low = max(low, it.Box.Y+it.Box.H)
		}
	}
	return (low - top) / (d.Paper.Height - marginBottom - footHeight - top)
}

// readPapers are the papers of a plan that are read from page to page, without
// the setup sheet of a job that is cut.
func readPapers(t *testing.T, p *plan.Plan, o Options) map[string]*draw.Document {
	all := allPaper(t, p, o)
	delete(all, "template") // a drawing fills what it fills
	delete(all, "rework")
	if p.OK && p.Machines() || !p.OK {
		delete(all, "setup")
	}
	return all
}

// TestPagesAreFilled: but for the last, no page of a paper that is read is under
// two fifths full, nothing is set under 10 points, most is of 12 points and
// more, and a leave, a washer, another truck and a need take two pages at most.
func TestPagesAreFilled(t *testing.T) {
	plans := demos(t)
	for name, p := range hardPlans() {
		if !strings.HasPrefix(name, "long") { // a text that goes on and on moves what is kept whole
			plans[name] = p
		}
	}
	for name, p := range plans {
		for _, o := range []Options{{}, {Paper: "Letter", Units: "both"}, {Large: true}, {Paper: "Letter", Large: true}} {
			for what, d := range readPapers(t, p, o) {
				for page := 1; page < d.Pages(); page++ {
					if f := filled(d, page); f < 0.4 {
						t.Errorf("%s, %s, %+v: page %d of %d is %.0f %% full", name, what, o, page, d.Pages(), 100*f)
					}
				}
				if most := 2; what == "setup" && d.Pages() > most && !o.Large {
					t.Errorf("%s, %s, %+v: %d pages", name, what, o, d.Pages())
				}
				for _, it := range d.Items {
					if it.Kind == draw.KindText && it.PT < 10 {
						t.Errorf("%s, %s: %q is of %.1f points", name, what, it.Text, it.PT)
						break
					}
				}
			}
		}
	}
}

// TestFormHasEveryBox: each question of the list that has a number has its box
// on the blank form, by that number and name, and the boxes of the short way stand
// in the order of the list.
func TestFormHasEveryBox(t *testing.T) {
	d, err := Form(nil, Options{})
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]int{}
	for i, it := range d.Items {
		if _, seen := at[it.Text]; it.Kind == draw.KindText && !seen {
			at[it.Text] = i
		}
	}
	last := map[bool]int{}
	for _, q := range job.Questions() {
		if q.Number == 0 {
			continue
		}
		n, first := itoa(q.Number), q.Group == ""
		i, ok := at[n]
		if !ok {
			t.Errorf("no box has the number %s", n)
			continue
		}
		if first && i < last[first] {
			t.Errorf("box %s stands before the one before it", n)
		}
		last[first] = i
		name := ""
		for _, it := range d.Items[i+1:] {
			if name = strings.TrimSpace(name + " " + it.Text); len(name) >= len(q.Named()) {
				break
			}
		}
		if name != q.Named() {
			t.Errorf("box %s is called %q, want %q", n, name, q.Named())
		}
	}
}

// TestExampleIsTold: the worked example holds what its table says, by the
// numbers of the blank form.
func TestExampleIsTold(t *testing.T) {
	d, err := FormExample(Options{})
	if err != nil {
		t.Fatal(err)
	}
	got := wordsOf(d)
	for _, want := range []string{"16.00", "16.08", "16.07", "4.19", "0.8", "drawer 6", "r6", "F7", "Racer 9 of a pier game",
		"V worn to"} {
		if !strings.Contains(got, want) {
			t.Errorf("the example lacks %q", want)
		}
	}
	if strings.Contains(got, "pins tried") {
		t.Error("a box that was left open is shown")
	}
}

// TestOwnerWords: each caution of the demos and of the dull jobs is told to an
// owner in words that were written for it.
func TestOwnerWords(t *testing.T) {
	words, err := table.BuiltIn().Get("owner_words")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, row := range words.Rows {
		known[row.Get("rule")] = true
	}
	n := 0
	for _, plans := range []map[string]*plan.Plan{demos(t), dull(t)} {
		for name, p := range plans {
			for _, f := range p.Findings {
				if f.Level == finding.Caution && f.Rule.Stage() != "verdict" {
					n++
					if !known[string(f.Rule)] {
						t.Errorf("%s: there are no owner's words for %s", name, f.Rule)
					}
				}
			}
		}
	}
	if n < 10 {
		t.Errorf("only %d cautions were looked at", n)
	}
}
