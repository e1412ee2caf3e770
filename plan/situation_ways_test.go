package plan_test

import (
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/plan"
	"rebush/plan/verdict"
)

// TestMendThatNoHoleTakes: beside an edge that a bush clears and a plug does not
// the holes can be re-bushed, so each has a seat on the way of a plug too; yet
// that way is none, and says why.
func TestMendThatNoHoleTakes(t *testing.T) {
	s := plain(t).with("worn_to: 90}", "worn_to: 90, edges: [{at: 90, metal: 3.4}]}").add("complaint: {binds: no, noisy: yes, rubs: no}\n")
	p := s.plan()
	if p.Verdict.Choice != "re-bush" {
		t.Fatalf("the case is none: %s", p.Verdict.Sentence)
	}
	for _, w := range p.Ways {
		if w.Way == "plug" && (w.OK || w.Cures || w.Cost != nil || !strings.HasPrefix(w.WhyNot.String(), "drive.left: ") ||
			!strings.Contains(w.WhyNot.String(), "its plug: press up to")) {
			t.Errorf("%+v", w)
		}
	}
	asked := s.make(plan.Options{NoChance: true, Way: verdict.Plug})
	f := saidOf(t, asked, "way", "drive.left")
	if asked.OK || f.Level != finding.Stop || !strings.Contains(f.Text.String(), "no hole can go that way (plug): the nearest is") {
		t.Errorf("ok %v, %+v", asked.OK, f)
	}
}

// TestOneReason: what stops a way is one reason, of one hole, and never a list
// of candidates; every way that cannot be gone or cures nothing has one.
func TestOneReason(t *testing.T) {
	for _, name := range demos(t) {
		p := makePlan(t, name, plan.Options{NoChance: true})
		for _, w := range p.Ways {
			why := w.WhyNot.String()
			if (w.OK && w.Cures) != (why == "") {
				t.Errorf("%s, %s: ok %v, cures %v, and %q", name, w.Way, w.OK, w.Cures, why)
			}
			if strings.Count(why, "(") > 1 || strings.Contains(why, "on the list") || len(why) > 150 {
				t.Errorf("%s, %s: %s", name, w.Way, why)
			}
		}
		if s := p.Verdict.Sentence.String(); strings.Contains(s, "this shop cannot") || strings.Contains(s, ".left:") || strings.Contains(s, ".right:") {
			t.Errorf("%s: %s", name, s)
		}
	}
	for _, w := range plain(t).plan().Ways {
		want := map[verdict.Name]string{verdict.Renew: "drive.left: there is no seat of an old bush", verdict.MadeToFit: "drive.left: the hole is worn oval",
			verdict.BushInABush: "drive.left: a bush goes in without a sleeve"}[w.Way]
		if !strings.HasPrefix(w.WhyNot.String(), want) {
			t.Errorf("%s: %s", w.Way, w.WhyNot)
		}
	}
}

// TestReasonsWhateverTheOrder: two worn axles, the bushes and the shafts told the
// other way about: the same choice, sentence and reasons.
func TestReasonsWhateverTheOrder(t *testing.T) {
	for name, more := range map[string]string{"can be done": "", "cannot": ", edges: [{at: 90, metal: 1.5}]", "nobody knows": ", repaired: yes"} {
		s := plain(t).with("    do: leave\n", "").with("[48.00, 8.00], widest: 3.20, narrowest: 3.20}", "[48.00, 8.05], widest: 3.30, narrowest: 3.20, worn_to: 90}").
			with("worn_to: 90}", "worn_to: 90"+more+"}").add("complaint: {binds: no, noisy: yes, rubs: no}\n")
		r := s
		head, rest, _ := strings.Cut(s.job, "  - name: drive\n")
		one, rest, _ := strings.Cut(rest, "  - name: other\n")
		two, rest, _ := strings.Cut(rest, "gears: []\nbushes:\n")
		lines := strings.SplitN(rest, "\n", 3)
		r.job = head + "  - name: other\n" + two + "  - name: drive\n" + one + "gears: []\nbushes:\n" + lines[1] + "\n" + lines[0] + "\n" + lines[2]
		a, b := s.plan(), r.plan()
		if a.Verdict.Choice != b.Verdict.Choice || a.Verdict.Sentence != b.Verdict.Sentence {
			t.Errorf("%s: %s\n%s", name, a.Verdict.Sentence, b.Verdict.Sentence)
		}
		for i := range a.Ways {
			if a.Ways[i].WhyNot != b.Ways[i].WhyNot {
				t.Errorf("%s, %s: %q, and %q", name, a.Ways[i].Way, a.Ways[i].WhyNot, b.Ways[i].WhyNot)
			}
		}
	}
}
