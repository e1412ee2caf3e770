package sheets

import (
	"strings"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
)

// inMetal plans the job of the stepped axle in a metal.
func inMetal(t *testing.T, metal, condition string) *plan.Plan {
	t.Helper()
	j, err := job.Read("../testdata/situations/stepped.yaml", job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	j.Chassis.Material, j.Chassis.Condition = metal, condition
	if metal == "magnesium" {
		j.Accept = []string{metal}
	}
	p, err := plan.Make(j, plan.Options{NoChance: true})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// flat is a text without its line breaks.
func flat(s string) string { return strings.Join(strings.Fields(s), " ") }

// inOrder says which of some words does not stand after the one before it.
func inOrder(text string, words ...string) string {
	for _, w := range words {
		i := strings.Index(text, w)
		if i < 0 {
			return w
		}
		text = text[i+len(w):]
	}
	return ""
}

// operations are those of a card, in the order of its rows.
func (c card) operations() []int {
	var out []int
	rows := append(append([]row{}, c.before...), c.clamp...)
	for _, g := range c.groups {
		rows = append(rows, g.rows...)
	}
	for _, r := range rows {
		out = append(out, r.ops...)
	}
	return out
}

// cardText is the text of one card of the sheet of a plan.
func cardText(t *testing.T, p *plan.Plan, k int) string {
	t.Helper()
	text := flat(recorded(must(Setup(p, Options{}))))
	cards := cardsOf(p)
	for i := 0; i <= k; i++ {
		at := strings.Index(text, cardTitle(cards, i))
		if at < 0 {
			t.Fatalf("no card %q", cardTitle(cards, i))
		}
		text = text[at:]
	}
	next := "Proving"
	if k+1 < len(cards) {
		next = cardTitle(cards, k+1)
	}
	if at := strings.Index(text, next); at > 0 {
		text = text[:at]
	}
	return text
}

// On each metal, page one has its five lines, each operation its own, and no
// page speaks of magnesium where the metal cannot be it.
func TestSafetyOnTheSheet(t *testing.T) {
	for metal, burns := range map[string]bool{"zinc die casting": true, "magnesium": true, "mild steel": false} {
		p := inMetal(t, metal, "sound")
		if !p.OK {
			t.Fatalf("%s: %+v", metal, p.Findings[0])
		}
		pdf := open(t, write(t, must(Setup(p, Options{}))))
		first, all := flat(pdf.text(0)), flat(pdf.all())
		for _, l := range p.Safety.PageOne {
			if !strings.Contains(first, l.Words) {
				t.Errorf("%s: page one does not say %q", metal, l.Words)
			}
		}
		if len(p.Safety.PageOne) != 5 {
			t.Errorf("%s: %d lines on page one", metal, len(p.Safety.PageOne))
		}
		n := 0
		for k, c := range cardsOf(p) {
			text := cardText(t, p, k)
			for _, i := range c.operations() {
				for _, l := range p.Operations[i].Safety {
					n++
					if !strings.Contains(text, l.Words[1:]) {
						t.Errorf("%s: %d %s: %q is not on its card", metal, p.Operations[i].Number, p.Operations[i].Do, l.Words)
					}
				}
			}
		}
		if n < 15 {
			t.Errorf("%s: only %d lines", metal, n)
		}
		if speaks := strings.Contains(strings.ToLower(all), "magnesium"); speaks != burns {
			t.Errorf("%s: speaks of magnesium: %v", metal, speaks)
		}
		if strings.Contains(all, "BEFORE THE FIRST CUT") {
			t.Errorf("%s: a sound casting is to be looked over", metal)
		}
	}
}

// Where nobody has said that it is sound, the box to tick stands on page one,
// before the first cut, and on the owner's page.
func TestLookForBox(t *testing.T) {
	p := inMetal(t, "zinc die casting", "unknown")
	pdf := open(t, write(t, must(Setup(p, Options{}))))
	words := p.Safety.LookFor[0].Words
	if w := inOrder(flat(pdf.text(0)), "BEFORE THE FIRST CUT", words); w != "" {
		t.Errorf("page one does not say %q", w)
	}
	if w := inOrder(flat(recorded(must(Setup(p, Options{})))), "At the bench, before the first set-up", "ook the casting or the plates over", sentence(words), "Clamp the chassis", "GAUGE FIRST"); w != "" {
		t.Errorf("the operations do not say %q in its place", w)
	}
	if w := inOrder(flat(open(t, write(t, must(VerdictPage(p, Options{})))).text(0)), "BEFORE THE FIRST CUT", words); w != "" {
		t.Errorf("the owner's page does not say %q", w)
	}
}

// The owner is told what concerns an owner, and nothing of spindles.
func TestSafetyForTheOwner(t *testing.T) {
	for metal, want := range map[string]string{"zinc die casting": "looks like zinc", "magnesium": "water feeds the fire", "mild steel": ""} {
		text := flat(open(t, write(t, must(VerdictPage(inMetal(t, metal, "sound"), Options{})))).all())
		if !strings.Contains(text, "paint may hold lead") || !strings.Contains(text, want) || want == "" && strings.Contains(text, "agnesium") {
			t.Errorf("%s: %s", metal, text)
		}
		for _, w := range []string{"Eye protection", "spindle", "Chuck"} {
			if strings.Contains(text, w) {
				t.Errorf("%s: the owner is told of %s", metal, w)
			}
		}
	}
}

// On the form the supply is off before ohms are read, and the metal is asked
// about beside the box that it is written in.
func TestSafetyOnTheForm(t *testing.T) {
	for metal, want := range map[string]string{"": "Zinc, aluminium or magnesium?", "zinc die casting": "Zinc or magnesium?", "aluminium die casting": "Aluminium or magnesium?",
		"magnesium": "File and scrape nothing", "mild steel": "", "brass": ""} {
		var j *job.Job
		if metal != "" {
			j = sampleJob(2)
			j.Chassis.Material = metal
		}
		text := flat(open(t, write(t, must(Form(j, Options{})))).all())
		if w := inOrder(text, "volts", "Supply off and unplugged", "insulated wheel to axle", "made of", want, "paint may hold lead"); w != "" {
			t.Errorf("%q: the form does not say %q in its place", metal, w)
		}
		if want == "" && strings.Contains(text, "agnesium") {
			t.Errorf("%s: asked whether it is magnesium", metal)
		}
	}
}
