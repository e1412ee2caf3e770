package survey

import (
	"reflect"
	"testing"
)

// TestMemoChangesNothing: what is kept is what was found, whatever becomes of an
// answer that was handed on; every other figure is another question.
func TestMemoChangesNothing(t *testing.T) {
	var p Probe
	eachProbe(t, func(r row, q Probe, _ [2]float64) {
		if len(p.Points) == 0 && len(q.Points) >= 12 {
			p = q
		}
	})
	want, err := touched(p, 1)
	if err != nil {
		t.Fatal(err)
	}
	m, asked := new(Memo), 0
	work := func(p Probe, ball float64) (Answer, error) { asked++; return touched(p, ball) }
	for range 3 {
		got, err := m.touched(p, 1, work)
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Fatalf("got %+v, %v, want %+v", got, err, want)
		}
		got.Bore.R, got.Points[0][0], got.Residuals[0] = 0, 0, 0
		got.Words = append(got.Words, "more")
	}
	if asked != 1 {
		t.Errorf("worked out %d times", asked)
	}
	few := p
	few.Points, few.WornTo = nil, nil
	for range 2 {
		if _, err := m.touched(few, 1, work); err == nil {
			t.Error("no points, and no error")
		}
	}
	for name, edit := range map[string]func(*Probe){
		"point": func(p *Probe) {
			p.Points = append([][2]float64{{p.Points[0][0] + 1e-9, p.Points[0][1]}}, p.Points[1:]...)
		},
		"s": func(p *Probe) { p.S += 1e-9 }, "journal": func(p *Probe) { p.Journal += 1e-9 },
		"u of journal": func(p *Probe) { p.UJournal += 1e-9 }, "u of side": func(p *Probe) { p.UDir += 1e-9 },
		"against": func(p *Probe) { p.Against++ }, "side": func(p *Probe) { p.WornTo = []float64{1} },
		"no side": func(p *Probe) { p.WornTo = nil },
		"sides": func(p *Probe) {
			p.Points, p.WornTo = p.Points[1:], append(append([]float64{}, p.WornTo...), p.Points[0][:]...)
		},
	} {
		q, was := p, len(m.kept)
		edit(&q)
		_, _ = m.touched(q, 1, work)
		if len(m.kept) != was+1 {
			t.Errorf("another %s is the same question", name)
		}
	}
	if was := len(m.kept); asked != was {
		t.Errorf("%d questions, worked out %d times", was, asked)
	} else if _, _ = m.touched(p, 2, work); len(m.kept) != was+1 {
		t.Error("another ball is the same question")
	}
}
