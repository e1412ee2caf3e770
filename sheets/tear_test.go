package sheets

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"rebush/plan"
)

// pagesOfRows are the pages on which the rows of a card stand, by the first of their
// operations.
func pagesOfRows(t *testing.T, p *plan.Plan, x sheet, c card) (rows []row, pages []int) {
	t.Helper()
	on := map[string]int{}
	for _, m := range x.doc.Marks() {
		on[m.Title] = m.Page
	}
	for _, g := range c.groups {
		for _, r := range g.rows {
			page, have := 0, false
			for title, n := range on {
				if strings.HasPrefix(title, numbers(p, r)+" ") {
					page, have = n, true
				}
			}
			if !have {
				t.Fatalf("%s has no mark", numbers(p, r))
			}
			rows, pages = append(rows, r), append(pages, page)
		}
	}
	return rows, pages
}

// A set-up that is torn says at the foot of the page that the clamps stay on and
// which operations come overleaf; the cut that brings a seat to size stands on the
// page of its gauging.
func TestTornSetUpKeepsItsClamps(t *testing.T) {
	torn, pairs := 0, 0
	for name, p := range workedOf(dull(t)) {
		for _, o := range []Options{{}, {Large: true}} {
			for step := range lastStep + 1 {
				x, err := setup(p, o, layout{step: step, flow: true}, nil)
				if err != nil {
					t.Fatal(err)
				}
				foot := pagesOf(x.doc)
				for _, c := range cardsOf(p) {
					if !c.clamped {
						continue
					}
					rows, pages := pagesOfRows(t, p, x, c)
					for i := 1; i < len(rows); i++ {
						a, b := p.Operations[rows[i-1].ops[0]], p.Operations[rows[i].ops[0]]
						if b.Kind == "gauge" && a.Kind != "gauge" {
							pairs++
							if pages[i] != pages[i-1] && !o.Large {
								t.Errorf("%s, %+v, step %d: %d is gauged overleaf, at %d", name, o, step, a.Number, b.Number)
							}
						}
						if pages[i] == pages[i-1] {
							continue
						}
						torn++
						var over []int
						for k, r := range rows {
							for _, n := range r.ops {
								if pages[k] == pages[i] {
									over = append(over, p.Operations[n].Number)
								}
							}
						}
						_, said, _ := strings.Cut(foot[pages[i-1]-1], "Clamps stay on: overleaf ")
						said = strings.NewReplacer(",", "", "to ", "").Replace(said) + " "
						for _, n := range []int{slices.Min(over), slices.Max(over)} {
							if !strings.Contains(said, strconv.Itoa(n)+" ") {
								t.Errorf("%s, %+v, step %d: page %d has no %d overleaf: %q", name, o, step, pages[i-1], n, said)
							}
						}
					}
				}
			}
		}
	}
	if torn < 10 || pairs < 50 {
		t.Errorf("only %d set-ups are torn, %d cuts gauged", torn, pairs)
	}
}
