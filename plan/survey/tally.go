package survey

import "math"

// tally adds up places that were looked at, shape by shape, as sums of weights.
// Centres are reckoned from one point.
type tally struct {
	from  [2]float64
	top   float64 // logarithm of the evidence that all is scaled to
	sum   float64
	sum2  float64 // of squares of weights
	o     [2]float64
	oo    [2][2]float64
	r, rr float64
	w, ww float64
	ends  [2]End
}

// add adds the places of one shape, whose evidence has the logarithm log.
func (t *tally) add(b *belief, ds []drawn, log float64) {
	if math.IsNaN(log) || math.IsInf(log, 0) {
		return
	}
	if t.sum == 0 {
		t.top = log
	} else if log > t.top {
		t.scale(math.Exp(t.top - log))
		t.top = log
	}
	var all float64
	for i := range ds {
		all += ds[i].weight
	}
	k := math.Exp(log-t.top) / all
	for i := range ds {
		d := &ds[i]
		w := k * d.weight
		if w == 0 {
			continue
		}
		q := b.fit(&d.v)
		e := b.half(&d.v)
		x, y := q[iX]-t.from[0], q[iY]-t.from[1]
		t.sum += w
		t.sum2 += w * w
		t.o[0] += w * x
		t.o[1] += w * y
		t.oo[0][0] += w * x * x
		t.oo[0][1] += w * x * y
		t.oo[1][1] += w * y * y
		t.r += w * q[iR]
		t.rr += w * q[iR] * q[iR]
		depth := d.v[bW]
		if b.shape == TwoLobes {
			depth = math.Max(depth, d.v[bMore])
		}
		t.w += w * depth
		t.ww += w * depth * depth
		end := &t.ends[e]
		end.Share += w
		end.O[0] += w * x
		end.O[1] += w * y
		end.R += w * q[iR]
		end.W += w * d.v[bW]
		sin, cos := math.Sincos(q[iTheta])
		end.x += w * cos
		end.y += w * sin
		switch b.shape {
		case Fan:
			end.Fan += w * q[iFan]
		case TwoLobes:
			sin, cos := math.Sincos(q[iTheta2])
			end.Two += w
			end.W2 += w * d.v[bMore]
			end.x2 += w * cos
			end.y2 += w * sin
		}
	}
}

func (t *tally) scale(k float64) {
	t.sum, t.r, t.rr, t.w, t.ww = k*t.sum, k*t.r, k*t.rr, k*t.w, k*t.ww
	t.sum2 *= k * k
	for i := range 2 {
		t.o[i] *= k
		for j := range 2 {
			t.oo[i][j] *= k
		}
		e := &t.ends[i]
		for _, v := range []*float64{&e.Share, &e.O[0], &e.O[1], &e.R, &e.W, &e.Fan, &e.Two, &e.W2,
			&e.x, &e.y, &e.x2, &e.y2} {
			*v *= k
		}
	}
}

// tell makes means and covariances of the sums.
func (t *tally) tell(out *Believed) error {
	if !(t.sum > 0) {
		return ErrNoCircle
	}
	x, y := t.o[0]/t.sum, t.o[1]/t.sum
	out.O = [2]float64{t.from[0] + x, t.from[1] + y}
	xy := t.oo[0][1]/t.sum - x*y
	out.Cov = [2][2]float64{{t.oo[0][0]/t.sum - x*x, xy}, {xy, t.oo[1][1]/t.sum - y*y}}
	out.RU, out.WU = spreadOfSums(t.sum, t.r, t.rr), spreadOfSums(t.sum, t.w, t.ww)
	out.Effective = t.sum * t.sum / t.sum2
	out.Ends = t.ends
	for i := range out.Ends {
		e := &out.Ends[i]
		if e.Share == 0 {
			continue
		}
		n := e.Share
		e.O = [2]float64{t.from[0] + e.O[0]/n, t.from[1] + e.O[1]/n}
		e.R, e.W, e.Fan = e.R/n, e.W/n, e.Fan/n
		e.Theta = angle(math.Atan2(e.y, e.x))
		e.UTheta = math.Sqrt(-2 * math.Log(math.Min(1, math.Hypot(e.x, e.y)/n)))
		if e.Two > 0 {
			e.W2, e.Theta2 = e.W2/e.Two, angle(math.Atan2(e.y2, e.x2))
		}
		e.Two /= n
		e.Share = n / t.sum
	}
	if out.Ends[1].Share > out.Ends[0].Share {
		out.Ends[0], out.Ends[1] = out.Ends[1], out.Ends[0]
	}
	return nil
}

func spreadOfSums(n, sum, squares float64) float64 {
	return math.Sqrt(math.Max(0, squares/n-sum*sum/(n*n)))
}
