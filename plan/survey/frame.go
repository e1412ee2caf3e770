package survey

import (
	"fmt"
	"math"

	"rebush/fits/say"
)

// Feature is an unworn thing seen in two frames: a dowel, a screw hole, an
// unworn bore.
type Feature struct {
	Name     string
	From, To [2]float64
	U        float64 // per axis, mm; 0 counts as 1 for all
}

// Frame maps one frame into another: turn by Angle, then shift by T. No scale,
// no mirror.
type Frame struct {
	Angle float64 // radians
	T     [2]float64
	RMS   float64   // of the residual vectors, weighted where weights are given
	Off   []float64 // residual of each feature, mm
	Bad   []int     // features that lie over 3 s off: a bent plate or a wrong hole
	Words []say.Text

	mean   [2]float64 // of the From side
	uShift float64
	uAngle float64
}

// Align finds the best-fit frame from at least three features, two with a
// caution:
//
//	angle = atan2(sum w (ax by - ay bx), sum w (ax bx + ay by)),  t = meanB - R meanA
//
// with both sets centred and w = 1/u^2. Degrees of freedom 2n - 3. The spread
// is the larger of what the weights promise and what the residuals show.
func Align(fs []Feature) (Frame, error) {
	if len(fs) < 2 {
		return Frame{}, fmt.Errorf("%w: a frame needs three unworn features seen in both (two at the least), have %d", ErrTooFew, len(fs))
	}
	weighted := true
	for _, f := range fs {
		if !finite(f.From[0], f.From[1], f.To[0], f.To[1], f.U) {
			return Frame{}, fmt.Errorf("feature %q: %w", f.Name, ErrNotFinite)
		}
		weighted = weighted && f.U > 0
	}
	weight := func(f Feature) float64 {
		if weighted {
			return 1 / (f.U * f.U)
		}
		return 1
	}
	fr := alignFew(fs, weight, -1)
	var spread float64
	for _, f := range fs {
		spread = math.Max(spread, dist(f.From, fr.mean))
	}
	if spread < 1e-6 {
		return Frame{}, fmt.Errorf("%w: the features lie in one place and give no direction", ErrTooFew)
	}
	n := len(fs)
	var sumW, sumWA, chi float64
	for i, f := range fs {
		w := weight(f)
		sumW += w
		sumWA += w * math.Pow(dist(f.From, fr.mean), 2)
		chi += w * fr.Off[i] * fr.Off[i]
	}
	s2 := 1.0
	if n > 2 || weighted {
		s2 = chi / float64(2*n-3)
	}
	if weighted {
		s2 = math.Max(s2, 1)
	} else if n == 2 {
		s2 = chi
	}
	fr.uShift, fr.uAngle = math.Sqrt(s2/sumW), math.Sqrt(s2/sumWA)
	fr.judge(fs, weight, weighted)
	return fr, nil
}

// judge names what does not fit.
func (fr *Frame) judge(fs []Feature, weight func(Feature) float64, weighted bool) {
	n := len(fs)
	if n == 2 {
		fr.Words = append(fr.Words, "a frame of two features has nothing to check it by; measure a third")
		if d := dist(fs[0].From, fs[1].From) - dist(fs[0].To, fs[1].To); weighted && math.Abs(d) > 3*math.Hypot(fs[0].U, fs[1].U)*math.Sqrt2 {
			fr.Bad = []int{0, 1}
			fr.Words = append(fr.Words, say.F("%q and %q are %v further apart in one frame than in the other", fs[0].Name, fs[1].Name, say.MM(math.Abs(d), 3)))
		}
		return
	}
	// With four or more the one that is wrong is the one without which the
	// others agree; s comes from the weights, or from the others. Three points
	// of s from few residuals prove little: there it takes five (judgement).
	worst, worstOff, bad := 0.0, 0.0, -1
	for i, f := range fs {
		if n == 3 && !weighted {
			break
		}
		off, s, limit := fr.Off[i], f.U, 3.0
		if n >= 4 {
			others := alignFew(fs, weight, i)
			off = dist(others.point(f.From), f.To)
			var q, a float64
			for j := range fs {
				if j != i {
					q += others.Off[j] * others.Off[j]
					a += math.Pow(dist(fs[j].From, others.mean), 2)
				}
			}
			if !weighted {
				s, limit = math.Max(math.Sqrt(q/float64(2*(n-1)-3)), 1e-3), 5
			}
			if a > 0 { // what the others' frame may be out by here
				s *= math.Sqrt(1 + 1/float64(n-1) + math.Pow(dist(f.From, others.mean), 2)/a)
			}
		}
		if k := off / (s * math.Sqrt2 * limit); k > 1 && k > worst {
			worst, worstOff, bad = k, off, i
		}
	}
	if bad >= 0 {
		fr.Bad = []int{bad}
		fr.Words = append(fr.Words, say.F("%q lies %v from where the other features put it: a bent plate or a wrong hole; leave it out or measure it again", fs[bad].Name, say.MM(worstOff, 3)))
	}
}

// alignFew aligns all but one.
func alignFew(fs []Feature, weight func(Feature) float64, skip int) Frame {
	var fr Frame
	var b [2]float64
	var sumW float64
	for i, f := range fs {
		if i == skip {
			continue
		}
		w := weight(f)
		sumW += w
		for k := range b {
			fr.mean[k] += w * f.From[k]
			b[k] += w * f.To[k]
		}
	}
	for k := range b {
		fr.mean[k] /= sumW
		b[k] /= sumW
	}
	var dot, cross float64
	for i, f := range fs {
		if i == skip {
			continue
		}
		ax, ay, bx, by := f.From[0]-fr.mean[0], f.From[1]-fr.mean[1], f.To[0]-b[0], f.To[1]-b[1]
		w := weight(f)
		dot += w * (ax*bx + ay*by)
		cross += w * (ax*by - ay*bx)
	}
	fr.Angle = math.Atan2(cross, dot)
	sin, cos := math.Sincos(fr.Angle)
	fr.T = [2]float64{b[0] - (cos*fr.mean[0] - sin*fr.mean[1]), b[1] - (sin*fr.mean[0] + cos*fr.mean[1])}
	fr.Off = make([]float64, len(fs))
	var q, qw float64
	for i, f := range fs {
		fr.Off[i] = dist(fr.point(f.From), f.To)
		if i != skip {
			q += weight(f) * fr.Off[i] * fr.Off[i]
			qw += weight(f)
		}
	}
	fr.RMS = math.Sqrt(q / qw)
	return fr
}

// parts are the errors of the features as measured here, u per axis, that a drawing
// and a sister seen by the same features share: their mean.
func (fr Frame) parts(u float64) []Part {
	u /= math.Sqrt(float64(len(fr.Off)))
	return []Part{{"features, x", [2]float64{u, 0}}, {"features, y", [2]float64{0, u}}}
}

func (fr Frame) point(p [2]float64) [2]float64 {
	sin, cos := math.Sincos(fr.Angle)
	return [2]float64{cos*p[0] - sin*p[1] + fr.T[0], sin*p[0] + cos*p[1] + fr.T[1]}
}

// Map returns a point in the other frame and the covariance the frame adds:
// s^2/n per axis, and g^2 s^2/sum|a|^2 across the line from the middle of the
// features at a distance g.
func (fr Frame) Map(p [2]float64) (q [2]float64, cov [2][2]float64) {
	q = fr.point(p)
	m := fr.point(fr.mean)
	g := dist(p, fr.mean) * fr.uAngle
	out := math.Atan2(q[1]-m[1], q[0]-m[0])
	return q, add2(round2(fr.uShift), alongAcross(0, g*g, out))
}
