package mesh

import (
	"strings"
	"testing"

	"rebush/fits/dim"
)

// A mesh that was tried is known by that: it runs tight where it did, whatever its
// figures say, moves a shaft though no tip was measured, and nothing of its teeth is
// left open.
func TestTried(t *testing.T) {
	j := wormJob()
	j.Gears[0].Wheel.Tip = dim.Length{}
	j.Gears[0].Tight = dim.Must("8.03")
	got, said := drives(t, j)
	if len(got) != 1 || !got[0].Trusted || rulesOf(said) != "" {
		t.Fatalf("%+v %s", got, rulesOf(said))
	}
	d, _ := got[0].Seen(j, 8.15, 8.10, 0.02, 0.02)
	near(t, "tight", d.Pair.Tight(), 8.03, 1e-6)
	near(t, "least", d.Window.Lo, 8.03+0.05/k, 1e-5)
	near(t, "u", d.UGeom, 0.008, 1e-12)
	if d.Spread != nil {
		t.Errorf("%v is left open", d.Spread)
	}
	spur, err := TightAt(Spur{Module: 0.5, Z1: 36, Z2: 12, Angle: 20}, 12.05)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "spur", spur.Tight(), 12.05, 1e-6)
	j.Gears[0].Tight = dim.Must("9.0")
	if got, said := drives(t, j); len(got) != 0 || !strings.Contains(said[0].Text.String(), "tried to touch at 9.000") {
		t.Errorf("%+v %s", got, rulesOf(said))
	}
}
