package chance

import (
	"math"
	"testing"

	"rebush/fits/odds"
)

// Line is one check of the closed-form budget: a quantity taken as normal
// about Mean with standard uncertainty U, and the chance P that it lies
// between Low and High.
type Line struct {
	Check         string
	Mean, U       float64 // mm
	Low, High, P  float64
	Contributions []term
}

// Budget is the oracle of the trials: the closed-form budget of the same model,
// where the model is straight: clean-up about the wear direction, press,
// finished bore where a tool gives it, and the window of each pair whose teeth were measured.
//
// Source: JCGM 100:2008, 5.1.2; contributions by METHODS.md 3.
func (m *Model) Budget() []Line {
	var out []Line
	for i := range m.Bores {
		b := &m.Bores[i]
		if b.Kind == Leave {
			continue
		}
		if b.Kind == Cut {
			out = append(out, m.cleanupLine(b))
		}
		seat, od := b.Seat.Mid+b.Seat.Lobes/2, (b.OD.Low+b.OD.High)/2
		out = append(out, line(b.Name+": press", od-seat, b.PressUM[0]/1000, b.PressUM[1]/1000, append(b.Seat.terms(-1), b.OD.terms(1)...)))
		if b.Finish == BoreInPlace || b.Finish == Ream {
			tool := Size{Low: b.ToolMM[0], High: b.ToolMM[1]}
			out = append(out, line(b.Name+": running clearance", (tool.Low+tool.High)/2-b.JournalMM, b.RunningUM[0]/1000, b.RunningUM[1]/1000,
				append(tool.terms(1), term{What: "journal", C: -1, U: b.UJournalMM})))
		}
	}
	for i := range m.Gears {
		out = append(out, m.gearLine(&m.Gears[i]))
	}
	return out
}

func line(check string, mean, low, high float64, terms []term) Line {
	u, _ := combine(terms)
	p := odds.Sum{Mean: mean, Sigma: u}.Inside(low, high)
	return Line{check, mean, u, low, high, p, terms}
}

// terms are the errors of a seat size, times c.
func (s SeatSize) terms(c float64) []term {
	return []term{{What: "tool", C: c, U: s.Half / math.Sqrt(3)}, {What: "habit of the tool", C: c, U: s.ToolU},
		{What: "lobes", C: c, U: s.Lobes / math.Sqrt(12)}, {What: "seat", C: c, U: s.U}}
}

func (s Size) terms(c float64) []term {
	return []term{{What: "limits", C: c, U: (s.High - s.Low) / math.Sqrt(12)}, {What: "measured", C: c, U: s.U}}
}

// cleanupLine takes the worst point of the lobe as the only one: good where
// the wear is larger than the doubt.
func (m *Model) cleanupLine(b *Bore) Line {
	s := b.Survey
	wx, wy := unit(s.TowardsDeg)
	vx, vy := b.TargetMM[0]-s.Centre[0], b.TargetMM[1]-s.Centre[1]
	need := math.Hypot(vx-s.D*wx, vy-s.D*wy) + s.JournalR
	along := math.Sqrt(math.Max(0, s.Cov[0]*wx*wx+2*s.Cov[1]*wx*wy+s.Cov[2]*wy*wy))
	terms := append(b.Seat.terms(0.5), term{What: "survey", C: 1, U: along}, term{What: "wear depth", C: -1, U: s.UDepthMM},
		term{What: "hole", C: 1, U: b.UHoleMM}, term{What: "clamping", C: 1, U: m.Setups[b.Setup].UMM})
	return line(b.Name+": clean-up", b.Seat.Mid/2-need, 0, math.MaxFloat64, terms)
}

func (m *Model) gearLine(g *Gear) Line {
	c := m.compileGear(g)
	mean := g.CentreMM
	terms := []term{{What: "geometry", C: -1, U: g.UGeomMM}, {What: "mate", C: 1, U: g.UMateMM}}
	shared := make([][2]float64, len(m.Setups))
	for k := 0; k < c.n; k++ {
		b := &m.Bores[c.bore[k]]
		x, y := c.wx[k], c.wy[k]
		w := math.Hypot(x, y)
		lx, ly := unit(m.Shafts[b.Shaft].LoadDeg)
		load := x*lx + y*ly
		clear, spread := (b.RunningUM[0]+b.RunningUM[1])/2000, 0.0
		if b.Kind != Leave && (b.Finish == BoreInPlace || b.Finish == Ream) {
			clear = (b.ToolMM[0]+b.ToolMM[1])/2 - b.JournalMM
			spread = math.Hypot((b.ToolMM[1]-b.ToolMM[0])/math.Sqrt(12), b.UJournalMM)
		}
		mean += load * clear / 2
		terms = append(terms, term{What: "running clearance " + b.Name, C: load / 2, U: spread})
		if b.Kind == Cut {
			terms = append(terms, term{What: "hole " + b.Name, C: w, U: b.UHoleMM})
			shared[b.Setup][0] += x
			shared[b.Setup][1] += y
		} else {
			s := b.Survey.Cov
			terms = append(terms, term{What: "survey " + b.Name, C: 1, U: math.Sqrt(math.Max(0, s[0]*x*x+2*s[1]*x*y+s[2]*y*y))})
		}
		e := b.RunoutMM / 2 / math.Sqrt2
		if b.RunoutEven {
			e = b.RunoutMM / 2 / math.Sqrt(6)
		}
		if b.Kind != Leave && b.Finish != BoreInPlace {
			terms = append(terms, term{What: "run-out of the bush " + b.Name, C: w, U: e})
		}
	}
	for i, v := range shared {
		terms = append(terms, term{What: "clamping " + m.Setups[i].Name, C: math.Hypot(v[0], v[1]), U: m.Setups[i].UMM})
	}
	return line(g.Name+": backlash limits", mean, math.Max(g.WindowMM[0], c.tight+c.reach),
		math.Min(g.WindowMM[1], c.loose-c.reach), terms)
}

// term is one line of an error budget: a sensitivity, a standard uncertainty
// and its degrees of freedom, 0 for known exactly.
type term struct {
	What    string
	C, U, N float64
}

// combine gives the combined standard uncertainty of independent terms and its
// effective degrees of freedom, +Inf where every term's is known exactly.
//
// Source: JCGM 100:2008, 5.1.2 (law of propagation) and G.4.1
// (Welch-Satterthwaite).
func combine(terms []term) (u, freedom float64) {
	sum, down := 0.0, 0.0
	for _, t := range terms {
		v := t.C * t.U * t.C * t.U
		sum += v
		if t.N > 0 {
			down += v * v / t.N
		}
	}
	if down == 0 {
		return math.Sqrt(sum), math.Inf(1)
	}
	return math.Sqrt(sum), sum * sum / down
}

// GUM H.1, end gauge, as printed in several public test suites: u_c 32 nm, 16
// degrees of freedom. Parts recomputed: 25.0, 9.7, 2.9, 16.68 nm.
func TestEndGauge(t *testing.T) {
	const ls, alpha, theta = 50.000623e6, 11.5e-6, -0.1 // nm, 1/K, K
	u, n := combine([]term{
		{What: "standard", C: 1, U: 25, N: 18},
		{What: "comparison", C: 1, U: 9.7, N: 25.6},
		{What: "difference of expansion", C: -ls * theta, U: 0.58e-6, N: 50},
		{What: "difference of temperature", C: -ls * alpha, U: 0.029, N: 2},
	})
	if math.Abs(u-31.71) > 0.01 || math.Abs(n-16.66) > 0.15 {
		t.Errorf("u %.2f nm with %.2f degrees of freedom, want 31.71 with 16.66", u, n)
	}
	if math.Round(u) != 32 || math.Floor(n) != 16 {
		t.Errorf("printed figures: %v and %v, want 32 and 16", math.Round(u), math.Floor(n))
	}
	if _, n := combine([]term{{C: 1, U: 1}}); !math.IsInf(n, 1) {
		t.Errorf("freedom of a known term: %v", n)
	}
}
