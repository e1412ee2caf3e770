package sheets

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/fits/say"
	"rebush/plan"
)

var (
	leftInMM = regexp.MustCompile(`\d (?:mm|um|µm)\b[a-zA-Z0-9 ]{0,12}`)
	// A tool keeps the name that it is stamped with.
	stamped = regexp.MustCompile(`^\d mm (?:H\d+ )?(?:drill|reamer|end mill)`)
	// A published source keeps its own figures, with the inch beside them.
	ofSources = regexp.MustCompile(`\d (?:mm|um) \([0-9. toand]+ (?:in|thou)\)`)
	newtons   = regexp.MustCompile(`\d (?:N|kg|N mm)\b`)
	mandrels  = regexp.MustCompile(`mandrel(?:,? (?:then )?[0-9.]+)+ mm`)
)

// On inch paper no length is in mm, but for what a tool is stamped with and the
// bars of the template, which are there to be measured in both.
func TestInchPaper(t *testing.T) {
	for name, p := range demos(t) {
		papers := allPaper(t, p, Options{Units: "in"})
		papers["sources"] = must(Setup(p, Options{Units: "in", Sources: true}))
		figures := 0
		for what, d := range papers {
			if what == "template" {
				continue
			}
			text := flat(open(t, write(t, d)).all())
			figures += strings.Count(text, " in ") + strings.Count(text, " thou")
			if what == "sources" {
				text = ofSources.ReplaceAllString(text, "")
			}
			for _, left := range leftInMM.FindAllString(mandrels.ReplaceAllString(text, ""), -1) {
				if !stamped.MatchString(left) || name == "wexmarrow" {
					t.Errorf("%s, %s: %q", name, what, left)
				}
			}
			for _, left := range newtons.FindAllString(text, -1) {
				if strings.HasPrefix(what, "form") && strings.HasSuffix(left, "N") {
					continue // letters of its pictures: 34 is N, the narrowest
				}
				t.Errorf("%s, %s: %q", name, what, left)
			}
		}
		if figures < 5 {
			t.Errorf("%s: only %d figures in inches in %d papers", name, figures, len(papers))
		}
	}
}

// What a published source says in mm stays, with the inch beside it: 12 / 25.4 is
// 0.4724, 3 and 6 are 0.1181 and 0.2362, 31 um are 1.22 thou.
func TestPublishedFigures(t *testing.T) {
	for s, want := range map[string]string{
		"a flange to 12 mm":          "a flange to 12 mm (0.4724 in)",
		"0.030 mm over 3 to 6 mm.":   "0.030 mm (0.0012 in) over 3 to 6 mm (0.1181 to 0.2362 in).",
		"ISO 286: 31 um at 5 mm":     "ISO 286: 31 um (1.22 thou) at 5 mm (0.1969 in)",
		"the least mm of row 12, 1;": "the least mm of row 12, 1;",
	} {
		if got := published("in", s); got != want {
			t.Errorf("%q became %q, want %q", s, got, want)
		}
		if got := published("mm", s); got != s {
			t.Errorf("in mm %q became %q", s, got)
		}
	}
}

// In inches no sentence of a plan keeps a length in mm, whether paper shows it
// or not; and the plan itself keeps every byte.
func TestPlanInInches(t *testing.T) {
	for name, p := range demos(t) {
		before := asJSON(t, p)
		q := say.Printed(p, dim.InInch)
		all := []any{q.Operations, q.Mesh, q.Findings, q.Verdict, q.Chance, q.Inspect, q.Setups, q.LayOut, q.Buy, q.Proving}
		for _, s := range q.Seats {
			all = append(all, s.Candidates)
		}
		text := asJSON(t, all)
		if strings.Count(text, " in ")+strings.Count(text, " thou") == 0 {
			t.Errorf("%s: nothing is in inches", name)
		}
		for _, left := range leftInMM.FindAllString(mandrels.ReplaceAllString(text, ""), -1) {
			if !stamped.MatchString(left) {
				t.Errorf("%s: %q is left in mm", name, left)
			}
		}
		if asJSON(t, p) != before {
			t.Errorf("%s: the plan itself was changed", name)
		}
	}
}

func asJSON(t *testing.T, v any) string {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// One figure prints alike on all pages: where a hole goes stands in the table,
// the picture and each of its operations with the same digits.
func TestOneFigureOnAllPages(t *testing.T) {
	p := demos(t)["wexmarrow"]
	text := flat(open(t, write(t, must(Setup(p, Options{Units: "in"})))).all())
	for _, target := range p.Targets {
		at := units("in").at(dialled(p, target), false)[0]
		if n := strings.Count(text, strings.Join(strings.Fields(at), " ")); n < 4 {
			t.Errorf("%s: %q stands %d times", target.Bore, at, n)
		}
	}
	lim := units("in").limits(p.Seats[0].SeatMM)[0]
	if n := strings.Count(text, strings.TrimSuffix(lim, " in")); n < 4 {
		t.Errorf("seat %q stands %d times", lim, n)
	}
}

// Limits come from the exact figure, not from its rounded mm: 3/16 in is
// 4.7625 mm, which mm print as 4.763 and inches as 0.1875, not 0.1876.
func TestLimitsComeFromTheExactFigure(t *testing.T) {
	seat := dim.Sizes(4.7625, 4.7719)
	for u, want := range map[units][]string{
		"mm": {"4.763 to 4.772 mm"}, "in": {"0.1875 to 0.1878 in"}, "both": {"4.763 to 4.772 mm", "0.1875 to 0.1878 in"},
	} {
		if got := u.limits(seat); !slices.Equal(got, want) {
			t.Errorf("%s: %q, want %q", u, got, want)
		}
	}
	// A lower limit of a bore goes up, in either unit: 3.1901 mm is 0.125594 in.
	bore := dim.Limits(3.1901, 3.2354)
	for u, want := range map[units]string{"mm": "3.191 to 3.235 mm", "in": "0.1256 to 0.1273 in"} {
		if got := u.limits(bore); got[0] != want {
			t.Errorf("%s: %q, want %q", u, got, want)
		}
	}
	if got := units("in").limits(&plan.MMRange{Max: bore.Max}); got[0] != "under 0.1273 in" {
		t.Errorf("%q", got)
	}
}
