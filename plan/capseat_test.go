package plan

import (
	"fmt"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan/job"
)

func mmOf(t *testing.T, s string) dim.Length {
	t.Helper()
	l, err := dim.Parse(s, dim.MM)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// A seat under a cap is one size as measured; it is gauged against limits
// between which the bearing slides, and a made size is judged by the same.
func TestSeatUnderACapIsGaugedByItsPlay(t *testing.T) {
	j, err := job.Read("../testdata/jobs/cragwinnow-motor.yaml", job.Options{})
	if err != nil {
		t.Fatal(err)
	}
	j.Made = []job.Made{{Bore: "motor shaft.left", Seat: mmOf(t, "6.014"), With: "bore gauge"}, {Bore: "motor shaft.right", Seat: mmOf(t, "6.060"), With: "bore gauge"}}
	p, err := Make(j, Options{NoChance: true})
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, o := range p.Operations {
		if o.Kind != "gauge" || !strings.Contains(o.Do.String(), "under the cap") {
			continue
		}
		n++
		// 5.992 to 6.000 mm h6, with 0.005 to 0.030 mm of play.
		if got := fmt.Sprintf("%.3f %.3f", o.LimitsMM.Min.Float(), o.LimitsMM.Max.Float()); got != "6.005 6.022" || o.Go == o.NoGo || !strings.Contains(o.Gauge.String(), "pins") {
			t.Errorf("%s: limits %s, go %q, no go %q, gauge %q", o.Do, got, o.Go, o.NoGo, o.Gauge)
		}
	}
	if n != 2 {
		t.Errorf("%d seats under a cap are gauged", n)
	}
	if len(p.Inspect) != 2 || p.Inspect[0].Result == "reject" || p.Inspect[1].Result != "reject" {
		t.Fatalf("%+v", p.Inspect)
	}
	for _, next := range p.Inspect[1].Next {
		if strings.Contains(next.Do.String(), "press a bush") || strings.Contains(next.Do.String(), "open the seat") {
			t.Errorf("a seat under a cap: %q", next.Do)
		}
	}
}

// What is asked of a truck without current in its axles: no ohms, unless a
// wheel is said to be insulated; and volts only where there is a motor.
func TestNoCurrentNoOhms(t *testing.T) {
	for _, c := range []struct {
		current, insulated string
		ohms               bool
	}{{"none", "", false}, {"none", "left", true}, {"axles", "", true}, {"", "", true}} {
		j, err := job.Read("../testdata/jobs/pellinthwaite.yaml", job.Options{})
		if err != nil {
			t.Fatal(err)
		}
		j.Chassis.Current, j.Shafts[0].Insulated = c.current, c.insulated
		p, err := Make(j, Options{NoChance: true})
		if err != nil {
			t.Fatal(err)
		}
		asked := false
		for _, f := range p.Findings {
			asked = asked || f.Rule.Name() == "look-alikes" && strings.Contains(f.Text.String(), "ohms")
		}
		winding := false
		for _, s := range p.Proving {
			winding = winding || strings.Contains(s.Text.String(), "seconds of a winding")
		}
		if asked != c.ohms || winding != (c.current != "axles") {
			t.Errorf("%+v: ohms asked %v, seconds of a winding %v", c, asked, winding)
		}
	}
}

// Only a shaft that is known to carry wheels has a wheel pressed on.
func TestWheelsOnlyWhereThereAreSome(t *testing.T) {
	for name, want := range map[string]string{"pellinthwaite": "Press the wheels of drive axle and carrying axle to gauge",
		"cragwinnow": "Press back what came off drum shaft: wheel, drum or pulley", "cragwinnow-motor": "Press back what came off motor shaft: wheel, drum or pulley"} {
		j, err := job.Read("../testdata/jobs/"+name+".yaml", job.Options{})
		if err != nil {
			t.Fatal(err)
		}
		p, err := Make(j, Options{NoChance: true})
		if err != nil {
			t.Fatal(err)
		}
		last := p.Operations[len(p.Operations)-1]
		if last.Kind != "wheels" || last.Do.String() != want {
			t.Errorf("%s: the last operation is %q, want %q", name, last.Do, want)
		}
		wheels := name == "pellinthwaite"
		for _, s := range p.Proving {
			if text := s.Text.String(); strings.Contains(text, "back to back") && strings.Contains(text, "hub to hub") == wheels {
				t.Errorf("%s: %s", name, text)
			}
		}
	}
}
