package plan_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"rebush/plan"
)

var update = flag.Bool("update", false, "write the text of the routes anew")

// TestRouteText holds the route of each demo job against its text. Read the
// difference as a machinist would before -update.
func TestRouteText(t *testing.T) {
	for _, name := range demoRoutes {
		t.Run(name, func(t *testing.T) {
			got := routeText(routed(t, name, nil))
			file := "../testdata/routes/" + name + ".txt"
			if *update {
				if err := os.MkdirAll("../testdata/routes", 0o755); err != nil {
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
			if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
				t.Error(d)
			}
		})
	}
}

// routeText writes a route as it is read at the machine.
func routeText(p *plan.Plan) string {
	var w strings.Builder
	for _, s := range p.Setups {
		fmt.Fprintf(&w, "set-up %s: %s", s.Name, s.Words)
		if s.Mirrored {
			w.WriteString(" (MIRRORED)")
		}
		w.WriteString("\n")
	}
	for i, o := range p.Operations {
		fmt.Fprintf(&w, "\n%d [%s] %s\n", o.Number, o.Setup, o.Do)
		line := func(name, text string) {
			if text != "" {
				fmt.Fprintf(&w, "    %s: %s\n", name, text)
			}
		}
		line("GAUGE FIRST", o.GaugeFirst.String())
		line("tool", o.Tool.String())
		if o.DialMM != nil {
			line("dials", strings.TrimSuffix(fmt.Sprintf("%s, %s; %s", o.DialMM[0], o.DialMM[1], o.Approach), "; "))
		}
		if o.RPM != nil {
			turns := fmt.Sprintf("%.0f rev/min", *o.RPM)
			if *o.RPM == 0 {
				turns = "by hand"
			}
			line("spindle", fmt.Sprintf("%s, ideal %.0f", turns, *o.RPMIdeal))
			line("feed", o.FeedWords.String())
		}
		line("depth", o.DepthMM.String())
		if o.LimitsMM != nil {
			line("limits", fmt.Sprintf("%s to %s", o.LimitsMM.Min, o.LimitsMM.Max))
		}
		line("gauge", o.Gauge.String())
		line("go", o.Go.String())
		line("no-go", o.NoGo.String())
		line("lubricant", o.Lubricant.String())
		if o.ThrustN != nil {
			line("thrust", fmt.Sprintf("%.0f N", *o.ThrustN))
		}
		line("backing", o.Backing.String())
		if o.Minutes != nil {
			line("minutes", fmt.Sprintf("%.1f", *o.Minutes))
		}
		line("note", o.Note.String())
		safety, at := p.FreshSafety(i)
		for _, l := range safety {
			line("safety, "+l.Hazard, l.Words)
		}
		if at > 0 {
			line("safety", fmt.Sprintf("as at %d", at))
		}
	}
	w.WriteString("\nbuy\n")
	for _, b := range p.Buy {
		fmt.Fprintf(&w, "    %s (%s)\n", b.What, b.Why)
	}
	w.WriteString("lay out\n")
	for _, l := range p.LayOut {
		fmt.Fprintf(&w, "    %s\n", l)
	}
	w.WriteString("proving\n")
	for _, s := range p.Proving {
		blank := "[ ]"
		if s.Blank != "" {
			blank = "____ " + s.Blank
			if s.Twice {
				blank = "____ before, " + blank + " after"
			}
		}
		fmt.Fprintf(&w, "    %s %s\n", s.Text, blank)
	}
	return w.String()
}
