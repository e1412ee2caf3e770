package target

import (
	"testing"

	"rebush/plan/job"
	"rebush/plan/survey"
)

// The caller says which holes keep their place: a hole that is there and is not
// cut draws its shaft to it, and the shafts that were asked before stay as they
// were.
func TestKeeping(t *testing.T) {
	b := newBench(t, 7.70, 7.90)
	here := b.axles.Keeping(func(h survey.Hole) bool { return h.Bore.Side == job.Right && h.Shaft.Name == "drive" })
	if b.axles[0].Holes[1].Keeps || !here[0].Holes[1].Keeps || here[0].Holes[0].Keeps || here[1].Holes[1].Keeps {
		t.Fatalf("%+v", here)
	}
	free := Settle(b.j, b.rules, b.book.Copy(), b.shop, b.axles, b.drives)
	kept := Settle(b.j, b.rules, b.book.Copy(), b.shop, here, b.drives)
	at := b.axles[0].Holes[1].Survey.Worn.O
	if got := kept.Axles[0].Holes; got[0].Target != at || got[1].Target != at || got[0].UPlace == free.Axles[0].Holes[0].UPlace {
		t.Errorf("%+v, the hole that keeps its place is at %v", got, at)
	}
	if free.Axles[0].Holes[1].Target == at {
		t.Error("the mesh asks for nothing: this shows nothing")
	}
}
