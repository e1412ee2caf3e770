package sheets

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/dim"
	"rebush/plan"
	"rebush/plan/route"
)

var ranged = regexp.MustCompile(`\b(\d+\.\d{3}) to (\d+\.\d{3})\b`)

// Limits read alike wherever they stand: a pair on paper that is within two
// micrometres of a pair of the plan is that pair, and the operations that make and
// gauge a seat have those of the seat.
func TestLimitsReadAlike(t *testing.T) {
	onPaper, seats := 0, 0
	for _, plans := range []map[string]*plan.Plan{demos(t), dull(t)} {
		for name, p := range workedOf(plans) {
			pairs := pairsOf(t, p)
			for _, m := range ranged.FindAllStringSubmatch(wordsOf(must(Setup(p, Options{Units: "mm"}))), -1) {
				if onPaper++; pairs[[2]string{m[1], m[2]}] {
					continue
				}
				for pair := range pairs {
					if closeBy(m[1], pair[0]) && closeBy(m[2], pair[1]) {
						t.Errorf("%s: %s on paper, %s to %s in the plan", name, m[0], pair[0], pair[1])
					}
				}
			}
			for _, s := range p.Seats {
				for _, op := range p.Operations {
					if op.Bore != s.Bore || s.Part != nil || op.LimitsMM == nil || !strings.Contains(op.Do.String(), "seat") {
						continue
					}
					if seats++; s.HeldBy != "cap" && *op.LimitsMM != *s.SeatMM {
						t.Errorf("%s: %s: %v, the seat %v", name, op.Do, *op.LimitsMM, *s.SeatMM)
					}
				}
			}
		}
	}
	if onPaper < 200 || seats < 40 {
		t.Errorf("only %d pairs on paper and %d operations at a seat were looked at", onPaper, seats)
	}
}

func closeBy(a, b string) bool {
	x, _ := strconv.ParseFloat(a, 64)
	y, err := strconv.ParseFloat(b, 64)
	return err == nil && math.Abs(x-y) < 0.0021
}

// pairsOf are all pairs of limits of a plan as its JSON has them.
func pairsOf(t *testing.T, p *plan.Plan) map[[2]string]bool {
	t.Helper()
	raw, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	var v any
	if err := json.Unmarshal(raw, &v); err != nil {
		t.Fatal(err)
	}
	out := map[[2]string]bool{}
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			low, one := v["min"].(string)
			high, other := v["max"].(string)
			if one && other {
				out[[2]string{low, high}] = true
			}
			for _, x := range v {
				walk(x)
			}
		case []any:
			for _, x := range v {
				walk(x)
			}
		}
	}
	walk(v)
	return out
}

// A mesh is tried, and proved again, against the backlash that decides, not that
// which was wished where contact allows less: into it at a hundredth of a
// millimetre and a ten-thousandth of an inch.
func TestMeshIsTriedAgainstWhatDecides(t *testing.T) {
	looked, less := 0, 0
	for _, plans := range []map[string]*plan.Plan{demos(t), dull(t)} {
		for name, p := range workedOf(plans) {
			for _, m := range p.Mesh {
				w := m.BacklashWindowMM
				if w == nil || w[1].Float()-w[0].Float() < 0.03 {
					continue
				}
				for u, by := range map[dim.Units][2]float64{dim.InMM: {1, 100}, dim.InInch: {25.4, 10000}} {
					unit, places := "mm", 2
					if u == dim.InInch {
						unit, places = "in", 4
					}
					low := math.Ceil(w[0].Float()/by[0]*by[1]-1e-6) / by[1]
					high := math.Floor(w[1].Float()/by[0]*by[1]+1e-6) / by[1]
					want := fmt.Sprintf("backlash %.*f to %.*f %s", places, low, places, high, unit)
					for _, op := range p.Operations {
						if op.Kind == route.KindTryMesh && strings.Contains(op.Do.String(), m.Gear) {
							if looked++; op.Gauge.In(u) != want {
								t.Errorf("%s, %s: tried against %q, want %q", name, m.Gear, op.Gauge.In(u), want)
							}
						}
					}
					for _, s := range p.Proving {
						if s := s.Text.In(u); strings.HasPrefix(s, m.Gear+": gear centred") && !strings.HasSuffix(s, want) {
							t.Errorf("%s: proved as %q, want %q", name, s, want)
						}
					}
				}
				for _, g := range p.Job.Gears {
					if g.Name == m.Gear && g.Backlash[1].Given() && w[1].Float() < g.Backlash[1].Float()-0.001 {
						less++
					}
				}
			}
		}
	}
	if looked < 6 || less == 0 {
		t.Errorf("%d meshes were looked at, %d of them allowed less than was wished", looked, less)
	}
}
