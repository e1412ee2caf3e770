package chance

import "math"

// tryBore cuts, presses and sizes one bore.
func (w *worker) tryBore(c *compiled, i int, t uint64, s *sight) {
	b, st, tab, places := &c.bores[i], &w.bore[i], c.tab, c.places

	// Where the old centre truly was, off the survey.
	ox, oy := b.strays(st[sSurvey]+t, tab)
	if b.from >= 0 { // what it has of the other bore's error
		x, y := c.bores[b.from].strays(w.bore[b.from][sSurvey]+t, tab)
		ox += float64(b.by[0][0]*x) + float64(b.by[0][1]*y)
		oy += float64(b.by[1][0]*x) + float64(b.by[1][1]*y)
	}
	// Where the seat came, off the target.
	px, py := ox, oy
	if b.kind == Cut {
		px, py = w.sx[b.setup], w.sy[b.setup]
		if b.uHole > 0 {
			x := mix(st[sHole] + t)
			px += float64(b.uHole * tab.normal(uint32(x)))
			py += float64(b.uHole * tab.normal(uint32(x>>32)))
		}
	}
	if b.kind == OldSeat && b.uSet > 0 {
		x := mix(st[sHole] + t)
		px += float64(b.uSet * tab.normal(uint32(x)))
		py += float64(b.uSet * tab.normal(uint32(x>>32)))
	}
	if b.kind == Leave {
		w.px[i], w.py[i] = px, py
		h := b.runMid / 2
		w.clear[i] = b.runMid
		w.qx[i], w.qy[i] = px+float64(h*b.lx), py+float64(h*b.ly)
		return
	}

	x := mix(st[sPart] + t)
	if b.partFails > 0 && even(uint32(x)) < b.partFails {
		s.fail(next, kPart*places+i)
	}
	if b.fillFails > 0 && even(uint32(x>>32)) < b.fillFails {
		s.fail(next, kCleanup*places+i)
	}
	x = mix(st[sSeat] + t)
	seat := b.seatLo + float64(b.seatW*even(uint32(x)))
	felt := float64(b.lobes * even(uint32(x>>32))) // by a press, beyond what a gauge feels
	habit := 0.0
	if b.tool >= 0 {
		habit = float64(b.toolU * w.habit[b.tool])
	}
	seat += habit
	depth := b.d
	if b.sigma > 0 || b.uDepth > 0 {
		x = mix(st[sSeatN] + t)
		seat += float64(b.sigma * tab.normal(uint32(x)))
		depth += float64(b.uDepth * tab.normal(uint32(x>>32)))
	}
	x = mix(st[sSlip] + t)
	least := b.uMin - float64(b.eases*even(uint32(x>>32)))
	if b.slips > 0 && even(uint32(x)) < b.slips {
		s.fail(b.large, kSlip*places+i)
	}
	replaced := false // by another bush, which is then taken to run in the middle
	if b.kind == Cut {
		// From the true old centre to the seat.
		vx, vy := b.vx+px-ox, b.vy+py-oy
		if !b.clears(vx, vy, depth, seat/2) {
			replaced = true
			k, need := lost, b.need(vx, vy, depth)
			if b.next && (b.nextR == 0 || b.nextR >= need) && (b.nextLeft == 0 || b.nextLeft >= b.none) {
				k = next
			}
			s.fail(k, kCleanup*places+i)
		}
		if b.none > 0 && b.left-float64(px*b.ex)-float64(py*b.ey)-(seat-b.seatMid)/2 < b.none {
			s.fail(lost, kWall*places+i)
		}
	}

	x = mix(st[sRunout] + t)
	if b.ecc > 0 {
		e := b.ecc
		if b.eccEven {
			e = float64(e * even(uint32(x>>32)))
		}
		cos, sin := tab.clock(uint32(x))
		px += float64(e * cos)
		py += float64(e * sin)
	}
	clear := b.runMid
	if !replaced {
		x = mix(st[sOD] + t)
		od := b.odLo + float64(b.odW*even(uint32(x)))
		if b.odU > 0 {
			od += float64(b.odU * tab.normal(uint32(x>>32)))
		}
		if u := od - seat - felt; u < least {
			s.fail(w.tooLarge(b, st, tab, t, od-habit, least), kLoose*places+i)
			replaced = true
		} else {
			u = w.pressed(b, st, tab, t, u, s, places, i)
			clear = w.size(b, st, tab, t, u, s, places, i)
		}
	}
	h := clear / 2
	w.clear[i] = clear
	w.px[i], w.py[i] = px, py
	w.qx[i], w.qy[i] = px+float64(h*b.lx), py+float64(h*b.ly)
}

// tooLarge is what becomes of a seat that is too large for its bush: where its tool
// has been tried in scrap and that hole is too large as well, another bush or tool
// is taken before the truck is cut. od is the outside of the bush less what the tool
// does on the whole.
func (w *worker) tooLarge(b *boreC, st *[boreStreams]uint64, tab *tables, t uint64, od, least float64) class {
	if b.large == lost && b.tried {
		scrap := b.seatMid + float64(b.sigma*tab.normal(uint32(mix(st[sTrial]+t))))
		if od-scrap < least {
			return next
		}
	}
	return b.large
}

// pressed presses the bush: a seat too small for it is cut again where the gauge
// tells, and the wall may crack under what is pressed. It returns the interference
// that is right at last.
func (w *worker) pressed(b *boreC, st *[boreStreams]uint64, tab *tables, t uint64, u float64, s *sight, places, i int) float64 {
	if u > b.uMax {
		s.fail(rework, kTight*places+i)
		if u+float64(b.gaugeU*tab.normal(uint32(mix(st[sTrial]+t)>>32))) > b.uMax {
			return b.uMax
		}
	}
	if b.limit > 0 {
		pull := float64(b.stress * u)
		if b.cap > 0 && pull > b.cap {
			pull = b.cap
		}
		stands := b.limit
		if b.stressU > 0 {
			stands += float64(b.limit * float64(b.stressU*tab.normal(uint32(mix(st[sWall]+t)))))
		}
		if pull > stands {
			s.fail(lost, kCrack*places+i)
		}
	}
	return min(u, b.uMax)
}

// clears says whether a seat of radius q cuts the whole worn outline away. Most
// seats do by more than their whole error of place, which needs no root.
func (b *boreC) clears(vx, vy, depth, q float64) bool {
	if room := q - max(b.r, depth+b.jr); room > 0 && float64(vx*vx)+float64(vy*vy) < float64(room*room) {
		return true
	}
	return q >= b.need(vx, vy, depth)
}

// need is the seat radius that clears the worn outline when the seat stands
// at (vx, vy) from the old centre.
//
// Source: plan/survey/METHODS.md 4, the worst point of a fan included.
func (b *boreC) need(vx, vy, depth float64) float64 {
	away := math.Sqrt(float64(vx*vx) + float64(vy*vy))
	far := 0.0
	if -float64(vx*b.wx)-float64(vy*b.wy) >= away*b.cosFan {
		far = away + depth
	} else {
		m := min(float64(vx*b.fx)+float64(vy*b.fy), float64(vx*b.gx)+float64(vy*b.gy))
		far = math.Sqrt(max(0, float64(vx*vx)+float64(vy*vy)+float64(depth*depth)-2*float64(depth*m)))
	}
	return max(away+b.r, far+b.jr)
}

// size presses the bush at interference u, finishes its bore and returns the
// running clearance that came of it.
func (w *worker) size(b *boreC, st *[boreStreams]uint64, tab *tables, t uint64, u float64, s *sight, places, i int) float64 {
	x := mix(st[sHoleDia] + t)
	bore := b.idLo + float64(b.idW*even(uint32(x)))
	if b.idU > 0 {
		bore += float64(b.idU * tab.normal(uint32(x>>32)))
	}
	if u > 0 {
		x = mix(st[sClosure] + t)
		flow := b.flowLo + float64(b.flowW*even(uint32(x)))
		if u <= flow {
			bore -= float64(b.elastic * u)
		} else {
			slope := b.slopeLo + float64(b.slopeW*even(uint32(x>>32)))
			bore -= float64(b.elastic*flow) + float64(slope*(u-flow))
		}
	}
	x = mix(st[sFinish] + t)
	journal := b.journal + float64(b.uj*tab.normal(uint32(x>>32)))
	if b.finish != AsDelivered {
		size := b.toolLo + float64(b.toolW*even(uint32(x)))
		if b.sizedU > 0 {
			size += float64(b.sizedU * tab.normal(uint32(mix(st[sWall]+t)>>32)))
		}
		if b.finish == OwnAxle {
			size += journal
		}
		if b.maxOpen > 0 && size > bore+b.maxOpen {
			size = bore + b.maxOpen
		}
		bore = max(bore, size)
	}
	if b.finish != OwnAxle {
		if bore < b.boreLo {
			s.fail(rework, kBoreSmall*places+i)
			return b.runMid // once it has been sized again
		}
		if bore > b.boreHi {
			s.fail(b.spoilt, kBoreLarge*places+i)
			return b.runMid
		}
	}
	clear := bore - journal
	if clear < b.runLo {
		s.fail(rework, kRunTight*places+i)
		return b.runLo
	}
	if clear > b.runHi {
		s.fail(b.spoilt, kRunLoose*places+i)
		return b.runMid
	}
	if bore < b.mustPass && b.finish != OwnAxle { // else it is eased until the very axle goes through
		s.fail(rework, kMustPass*places+i)
	}
	return clear
}
