package survey

import "math"

// grown is the answer without a journal.
func (pd *Probed) grown(p Probe, pts [][2]float64) error {
	pd.Rank, pd.Method = RankArc, ByArc
	a, err := GrownArc(pts, p.s(), between(p.WornTo))
	if err != nil {
		return err
	}
	pd.arc(p, pts, a)
	if used := count(a.Used); used < 4 {
		pd.doubt("only %d points lie on one circle opposite the wear", used)
	}
	if !pd.Bore.Round && pd.Bore.W > 0 && apart(pd.Bore.ThetaRad, between(p.WornTo)) > doubtSide+0.2 {
		pd.doubt("it is said to have worn to %.0f degrees, but the points off the circle lie at %.0f", angle(between(p.WornTo))*180/math.Pi, pd.Bore.ThetaRad*180/math.Pi)
		pd.Cov = scale2(pd.Cov, 4)
	}
	return nil
}

// consensus is the answer without journal and side.
func (pd *Probed) consensus(p Probe, pts [][2]float64) error {
	pd.Rank, pd.Method = RankArc, ByConsensus
	a, err := Consensus(pts, p.s())
	if err != nil {
		return err
	}
	pd.arc(p, pts, a)
	if pd.Bore.Round {
		return nil
	}
	// The shallow ends of the wear hide within the noise, however many points.
	pd.Cov = add2(pd.Cov, round2(p.s()))
	if a.Twin {
		pd.doubt("both arcs have nearly one radius (%.3f and %.3f): the shape does not tell worn from unworn; say where the metal is gone and measure the journal", a.R, a.Rest.R)
		dx, dy := a.Rest.Centre[0]-a.Centre[0], a.Rest.Centre[1]-a.Centre[1]
		pd.Cov = add2(pd.Cov, [2][2]float64{{dx * dx / 4, dx * dy / 4}, {dx * dy / 4, dy * dy / 4}})
		return nil
	}
	pd.doubt("neither the side it has worn to nor the journal is known; say where the metal is gone and measure the journal")
	return nil
}

// arc turns an arc fit into evidence with u doubled.
func (pd *Probed) arc(p Probe, pts [][2]float64, a ArcFit) {
	pd.Arc, pd.Centre, pd.Cov = &a, a.Centre, scale2(a.Cov, 4)
	var w, sx, sy float64
	for i, q := range pts {
		if e := a.Deviation(q); !a.Used[i] && e > 0 {
			w = math.Max(w, e)
			sx += e * (q[0] - a.Centre[0]) / (a.R + e)
			sy += e * (q[1] - a.Centre[1]) / (a.R + e)
		}
	}
	b := NewWornBore(a.Centre, a.R, 0, w, 0)
	if len(p.WornTo) > 0 {
		b.ThetaRad = angle(between(p.WornTo))
	}
	if w > 0 {
		b.ThetaRad = angle(math.Atan2(sy, sx))
	}
	b.RU, b.WU = 2*a.UR, math.Hypot(p.s(), 2*a.UR)
	if ls, err := Least(pts, p.s()); err == nil {
		lo, hi := reach(pts, ls.Centre)
		b.Round = ls.RMS < 1.3*p.s() && math.Max(hi-ls.R, ls.R-lo) < 3.5*p.s()
	}
	pd.Bore = &b
}

func indexOf(pts [][2]float64, p [2]float64) int {
	for i, q := range pts {
		if q == p {
			return i
		}
	}
	return -1
}

func count(used []bool) (n int) {
	for _, u := range used {
		if u {
			n++
		}
	}
	return n
}
