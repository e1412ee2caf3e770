package sheets

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/klippa-app/go-pdfium/requests"

	"rebush/fits/finding"
)

var update = flag.Bool("update", false, "write the text of the paper anew")

const goldenFolder = "../testdata/paper"

// golden holds the text of a document, as an independent reader sees it,
// against a file.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join(goldenFolder, name+".txt")
	if *update {
		if err := os.MkdirAll(goldenFolder, 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (-want +got):\n%s", file, diff)
	}
}

// The sample is drawn from figures written by hand, so that a change of the
// drawing shows apart from a change of the plan.
func TestSampleText(t *testing.T) {
	for name, d := range allPaper(t, samplePlan(2), Options{}) {
		golden(t, "sample "+name, open(t, write(t, d)).all())
	}
}

func TestEveryPageIsNumbered(t *testing.T) {
	pdf := open(t, write(t, must(Setup(samplePlan(2), Options{}))))
	n := pdf.pages()
	if n < 5 {
		t.Fatalf("%d pages", n)
	}
	page := regexp.MustCompile(`page (\d+) of (\d+)`)
	for i := range n {
		text := pdf.text(i)
		m := page.FindStringSubmatch(text)
		if m == nil || m[1] != itoa(i+1) || m[2] != itoa(n) {
			t.Errorf("page %d says %q", i+1, m)
		}
		if !strings.Contains(text, "2026-107") {
			t.Errorf("page %d does not name the job", i+1)
		}
	}
}

func TestDoNotMachine(t *testing.T) {
	p := samplePlan(2)
	p.OK = false
	p.Findings.Raise(finding.Stop, "seat/cracked", finding.Place{Where: ""}, "The casting is cracked.", "nothing at the machine: another truck")
	pdf := open(t, write(t, must(Setup(p, Options{}))))
	first := pdf.text(0)
	for _, want := range []string{"DO NOT MACHINE", "The casting is cracked.", "another truck"} {
		if !strings.Contains(first, want) {
			t.Errorf("page one does not say %q", want)
		}
	}
	all := pdf.all()
	for _, op := range p.Operations {
		if strings.Contains(all, op.Do.String()) {
			t.Errorf("the sheet still says %q", op.Do)
		}
	}
	for _, word := range []string{"rev/min", "GAUGE FIRST", "dials", "9.995", "move from the old centre"} {
		if strings.Contains(all, word) {
			t.Errorf("the sheet still says %q", word)
		}
	}
}

// What the font has is printed as it was typed; what it lacks is said.
func TestTitles(t *testing.T) {
	for title, want := range map[string]string{
		"Příliš žluťoučký kůň": "Příliš žluťoučký kůň",
		"Πίσω φορείο":          "Πίσω φορείο",
		"後部台車":                 "[4 signs that this font lacks]",
		"Ø 3 ±5 µm ≤ 2":        "Ø 3 ±5 µm ≤ 2",
		"a\xffb":               "a[1 sign that this font lacks]b",
	} {
		p := samplePlan(2)
		p.Job.Title = title
		if text := open(t, write(t, must(Setup(p, Options{})))).text(0); !strings.Contains(text, want) {
			t.Errorf("title %q: page one does not say %q:\n%s", title, want, text)
		}
	}
}

func TestSameBytes(t *testing.T) {
	for name, d := range allPaper(t, samplePlan(2), Options{}) {
		again := allPaper(t, samplePlan(2), Options{})[name]
		a, b := write(t, d), write(t, again)
		if !bytes.Equal(a, b) {
			t.Errorf("%s: the same plan gave different bytes", name)
		}
		if !bytes.Equal(a, write(t, d)) {
			t.Errorf("%s: the same document wrote different bytes", name)
		}
		if len(a) > 150_000 {
			t.Errorf("%s: %d bytes, want at most 150000", name, len(a))
		}
	}
}

// The PDF says its title and language, and its outline leads to the parts.
func TestCitizen(t *testing.T) {
	raw := write(t, must(Setup(samplePlan(2), Options{})))
	if !bytes.Contains(raw, []byte("/Lang (en-GB)")) {
		t.Error("the PDF names no language")
	}
	pdf := open(t, raw)
	meta, err := pdf.r.GetMetaData(&requests.GetMetaData{Document: pdf.doc})
	if err != nil {
		t.Fatal(err)
	}
	title := ""
	for _, m := range meta.Tags {
		if m.Tag == "Title" {
			title = m.Value
		}
	}
	if title != "Setup sheet 2026-107, Truck 12, front axle worn" {
		t.Errorf("title is %q", title)
	}
	marks, err := pdf.r.GetBookmarks(&requests.GetBookmarks{Document: pdf.doc})
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, m := range marks.Bookmarks {
		names = append(names, m.Title)
	}
	want := []string{"Setup sheet", "Lay out", "Where the holes are", "Before the truck is stripped", "Set-up A: left plate up",
		"Set-up B: right plate up, MIRRORED", "Proving", "Sizes as made: this table goes with the truck", "If it goes wrong"}
	if diff := cmp.Diff(want, names); diff != "" {
		t.Errorf("outline (-want +got):\n%s", diff)
	}
	for _, want := range []string{"/Metadata ", "/ViewerPreferences <</DisplayDocTitle true>>", "<rdf:li>en-GB</rdf:li>"} {
		if !bytes.Contains(raw, []byte(want)) {
			t.Errorf("the PDF does not hold %q", want)
		}
	}
	if bytes.Contains(raw, []byte("/PrintScaling /None")) {
		t.Error("a sheet without a true size asks not to be scaled")
	}
	if tpl := write(t, must(Template(samplePlan(2), Options{}))); !bytes.Contains(tpl, []byte("/PrintScaling /None")) {
		t.Error("the template does not ask to be printed in its true size")
	}
}

// Units choose the figures; the inch limits lie inside the mm ones.
func TestUnits(t *testing.T) {
	for u, want := range map[string][]string{
		"mm":   {"5.000 to 5.012 mm", "x 9.995 y 6.040"},
		"in":   {"0.1969 to 0.1973 in", "x 0.3935 y 0.2378"},
		"both": {"5.000 to 5.012 mm", "0.1969 to 0.1973 in"},
	} {
		text := strings.Join(strings.Fields(open(t, write(t, must(Setup(samplePlan(2), Options{Units: u})))).all()), " ")
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("units %s: no %q", u, w)
			}
		}
		if u == "in" && strings.Contains(text, "5.000 to 5.012") {
			t.Error("units in: mm limits are printed")
		}
	}
}

func TestOptionsRefused(t *testing.T) {
	for want, o := range map[string]Options{
		"A4 and Letter": {Paper: "A3"}, "mm, in and both": {Units: "cm"}, "2026-11-25": {Date: "25.11.2026"},
	} {
		if _, err := Setup(samplePlan(2), o); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: error is %v, want one that says %q", o, err, want)
		}
	}
}

// A chassis turned over is dialled from the end that then lies on the left; the
// picture has the figures of the dials, not of the drawing.
func TestTurnedOver(t *testing.T) {
	p := samplePlan(2)
	a, b := p.Setups[0], p.Setups[1]
	if _, ok := dialEnd(p, a); ok {
		t.Error("a clamping that is not mirrored counts as turned")
	}
	end, ok := dialEnd(p, b)
	if !ok || end != 58 {
		t.Fatalf("dials at nothing at %v, %v; want 58", end, ok)
	}
	// front axle.right goes to 10.005, so 58 - 10.005; rear axle.right stays at 48.010.
	for shaft, want := range map[string]string{"front axle": "47.995", "rear axle": "9.990"} {
		if got := dialX(p, b, shaft, "mm", end); got != want {
			t.Errorf("%s: the dial reads %s, want %s", shaft, got, want)
		}
	}
	p.Job.Shop.MachineKind = "mill" // which has dials
	text := open(t, write(t, must(Setup(p, Options{})))).all()
	for _, want := range []string{"MIRRORED", "x is dialled from the", "end that now lies on the left", "47.995"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q", want)
		}
	}
}
