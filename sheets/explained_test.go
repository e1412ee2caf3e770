package sheets

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rebush/fits/table"
	"rebush/plan"
	"rebush/sheets/draw"
)

var aWord = regexp.MustCompile(`\pL[\pL']+`)

// stems are the forms under which a word may be known: itself, and without an
// ending.
func stems(w string) []string {
	out := []string{w, strings.TrimSuffix(w, "'s"), strings.TrimSuffix(w, "'")}
	for _, end := range []string{"s", "es", "ed", "d", "ing", "ly", "er", "est"} {
		base, ok := strings.CutSuffix(w, end)
		if !ok || len(base) < 3 {
			continue
		}
		out = append(out, base, base+"e")
		if n := len(base); base[n-1] == base[n-2] {
			out = append(out, base[:n-1])
		}
		if stem, ok := strings.CutSuffix(base, "i"); ok {
			out = append(out, stem+"y")
		}
	}
	return out
}

// unexplained are the words of some texts that are neither known nor of one or
// two letters.
func unexplained(known map[string]bool, texts []string) []string {
	var out []string
	for _, t := range texts {
		for _, w := range aWord.FindAllString(strings.ToLower(t), -1) {
			if len(w) > 2 && !slices.ContainsFunc(stems(w), func(s string) bool { return known[s] }) &&
				!slices.Contains(out, w) {
				out = append(out, w)
			}
		}
	}
	return out
}

// TestWordsAreExplained: every word on any paper of the demos and the dull jobs
// is either one of every day, by a list that was looked through, or stands in
// `rebush help words`. Nothing stands in both.
func TestWordsAreExplained(t *testing.T) {
	data, err := os.ReadFile("testdata/everyday.txt")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, l := range strings.Split(string(data), "\n") {
		if !strings.HasPrefix(l, "#") {
			for _, w := range strings.Fields(l) {
				known[w] = true
			}
		}
	}
	if len(known) < 400 || len(known) > 800 {
		t.Errorf("%d words of every day", len(known))
	}
	words, err := table.BuiltIn().Get("words")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range words.Rows {
		if known[r.Get("word")] {
			t.Errorf("%s is both explained and a word of every day", r.Get("word"))
		}
	}
	for _, r := range words.Rows {
		for _, w := range aWord.FindAllString(strings.ToLower(r.Get("word")+" "+r.Get("also")), -1) {
			known[w] = true
		}
	}
	var texts []string
	add := func(d *draw.Document) {
		for _, it := range d.Items {
			texts = append(texts, it.Text)
		}
	}
	for _, plans := range []map[string]*plan.Plan{demos(t), dull(t)} {
		for _, p := range plans {
			for _, d := range allPaper(t, p, Options{Sources: true}) {
				add(d)
			}
		}
	}
	d, err := Evening(Options{})
	if err != nil {
		t.Fatal(err)
	}
	add(d)
	if len(texts) < 10000 {
		t.Errorf("only %d texts were looked at", len(texts))
	}
	bad := unexplained(known, texts)
	slices.Sort(bad)
	if bad != nil {
		t.Errorf("on paper, and neither explained nor of every day: %v\na word of the bench gets a row in "+
			"fits/table/data/words.csv, one of every day its place in testdata/everyday.txt", bad)
	}
	if got := unexplained(known, []string{"The trammed frobnicators' seats", "ab cd"}); len(got) != 1 {
		t.Errorf("of one strange word is told: %v", got)
	}
}

// TestEvening: the first evening is one page in either size of paper, with a box
// to tick for each step.
func TestEvening(t *testing.T) {
	for _, paper := range []string{"A4", "Letter"} {
		d, err := Evening(Options{Paper: paper})
		if err != nil {
			t.Fatal(err)
		}
		if d.Pages() != 1 {
			t.Errorf("%s: %d pages", paper, d.Pages())
		}
		all := ""
		for _, it := range d.Items {
			all += it.Text + " "
		}
		for _, s := range EveningSteps() {
			if !strings.Contains(all, s.Name) {
				t.Errorf("%s: no step %q", paper, s.Name)
			}
		}
	}
}
