package sheets

import (
	"regexp"
	"testing"

	"rebush/plan"
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// chanced plans a demo as the command does, with few trials.
func chanced(t *testing.T, name string) *plan.Plan {
	t.Helper()
	j, err := job.Read("../testdata/jobs/"+name+".yaml", job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Make(j, plan.Options{Trials: 200, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// A setup sheet has no more pages than are read at a bench; in large type half as
// many again. Cragwinnow has one more: its two bushes are turned, each with a
// section and limits of its own.
func TestSheetsAreShort(t *testing.T) {
	for name, most := range map[string]int{"gullwrack": 6, "cragwinnow": 7, "cragwinnow-motor": 6,
		"pellinthwaite": 9, "wexmarrow": 9} {
		p := chanced(t, name)
		if !p.OK || !p.Machines() {
			t.Errorf("%s is not worked any more", name)
			continue
		}
		if got := mostPages(p, Options{}); got != most {
			t.Errorf("%s may have %d pages, want %d", name, got, most)
		}
		if n := must(Setup(p, Options{})).Pages(); n > most {
			t.Errorf("%s: %d pages, want at most %d", name, n, most)
		}
		if n := must(Setup(p, Options{Large: true})).Pages(); n > most+most/2 {
			t.Errorf("%s, large: %d pages, want at most %d", name, n, most+most/2)
		}
		if must(Setup(p, Options{Sources: true})).Pages() <= must(Setup(p, Options{})).Pages() {
			t.Errorf("%s: the sources make no page", name)
		}
	}
}

// No page is left under 40 % full but the last of a part, no heading stands
// alone at the foot of a page, and nothing is under 10 points.
func TestPagesAreFull(t *testing.T) {
	looked := 0
	for name, p := range workedOf(demos(t)) {
		for _, o := range everyOption() {
			d := must(Setup(p, o))
			begins := map[int]bool{}
			for _, m := range d.Marks() {
				if m.Level == 0 && m.Y < marginTop+headHeight+4 {
					begins[m.Page] = true
				}
				if m.Level == 0 && !followed(d, m) {
					t.Errorf("%s, %+v, page %d: %q stands alone", name, o, m.Page, m.Title)
				}
			}
			body := d.Paper.Height - marginTop - marginBottom - headHeight - footHeight
			for page := 1; page < d.Pages(); page++ {
				low := 0.0
				for _, it := range d.Items {
					if it.Page == page {
						low = max(low, it.Box.Y+it.Box.H)
					}
					if it.Page == page && it.Kind == draw.KindText && it.PT < 10 {
						t.Errorf("%s, %+v, page %d: %q is set in %v points", name, o, page, it.Text, it.PT)
					}
				}
				looked++
				if full := (low - marginTop - headHeight) / body; full < fillShare && !begins[page+1] {
					t.Errorf("%s, %+v: page %d is %.0f %% full", name, o, page, full*100)
				}
			}
		}
	}
	if looked < 200 {
		t.Errorf("only %d pages were looked at", looked)
	}
}

// followed says whether something of another block stands below a mark on its
// page.
func followed(d *draw.Document, m draw.Mark) bool {
	block := 0 // that the mark begins
	for _, it := range d.Items {
		if it.Page == m.Page && it.Kind == draw.KindText && it.Box.Y > m.Y-0.5 && it.Box.Y < m.Y+3 && (block == 0 ||
			it.Block < block) {
			block = it.Block
		}
	}
	for _, it := range d.Items {
		if it.Page == m.Page && it.Block > block {
			return block > 0
		}
	}
	return false
}

// scaleSaid is what is said of a scale below a picture.
var scaleSaid = regexp.MustCompile(`^(drawn (1:)?[0-9.]+|square [0-9.]+ )`)

// A page with something drawn to a scale has a bar to lay a rule on, as long as
// it says.
func TestScaleHasItsBar(t *testing.T) {
	for name, p := range workedOf(demos(t)) {
		for u, long := range map[string]float64{"mm": 50, "in": 25.4} {
			d := must(Setup(p, Options{Units: u}))
			for page := 1; page <= d.Pages(); page++ {
				drawn, bar := false, false
				for _, it := range d.All(page) {
					if it.Kind == draw.KindText && scaleSaid.MatchString(it.Text) {
						drawn = true
					}
					if it.Kind == draw.KindLine && it.Box.Y > d.Paper.Height-marginBottom-footHeight && it.Box.H == 0 &&
						asLong(it.Box.W, long) {
						bar = true
					}
				}
				if drawn != bar {
					t.Errorf("%s, %s, page %d: something to scale %v, a bar %v", name, u, page, drawn, bar)
				}
			}
		}
	}
}

func asLong(a, b float64) bool { return a > b-1e-6 && a < b+1e-6 }
