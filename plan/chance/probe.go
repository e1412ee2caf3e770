package chance

// variant is the plan with one source scaled.
type variant struct {
	source source
	c      *compiled
	rights int // trials that came right, so far
}

// scaled makes one variant per source.
func (m *Model) scaled(list []source, k float64) []*variant {
	out := make([]*variant, len(list))
	for i, src := range list {
		c := m.copied()
		src.scale(c, k)
		out[i] = &variant{source: src, c: c.compile()}
	}
	return out
}

// probe tries many variants of one plan on the same trials. A variant that
// touches one bore or one pair tries only that again; the answers are those
// of whole trials.
type probe struct {
	w    *worker
	base *compiled
	bad  []bool // bores that failed in the base
}

// block tries one block, adds to the variants' counts and returns how many
// trials of the base came right.
func (p *probe) block(list []*variant, s Settings, block int) (rights int) {
	p.w.keys = p.base.keys
	p.w.seed(uint64(s.Seed), block)
	for k := range uint64(min(Block, s.Trials-int64(block)*Block)) {
		for _, v := range list {
			owner := v.source.owner
			if (owner == ownSetup || owner == ownTool || owner == ownShaft) && p.w.trial(v.c, k).worst == right {
				v.rights++
			}
		}
		if p.trial(list, k*gamma) {
			rights++
		}
	}
	return rights
}

// trial tries the base and the variants of bores and pairs.
func (p *probe) trial(list []*variant, t uint64) bool {
	w, bad := p.w, 0
	w.clamp(p.base, t)
	for i := range p.base.bores {
		s := sight{}
		w.tryBore(p.base, i, t, &s)
		if p.bad[i] = s.worst != right; p.bad[i] {
			bad++
		}
	}
	good := bad == 0 && p.gears(p.base, t)
	for _, v := range list {
		switch v.source.owner {
		case ownGear:
			if bad == 0 && p.gears(v.c, t) {
				v.rights++
			}
		case ownBore:
			i := v.source.index
			if bad > 1 || bad == 1 && !p.bad[i] {
				continue // another bore is wrong anyway
			}
			px, py, qx, qy := w.px[i], w.py[i], w.qx[i], w.qy[i]
			s := sight{}
			w.tryBore(v.c, i, t, &s)
			if s.worst == right && p.gears(p.base, t) {
				v.rights++
			}
			w.px[i], w.py[i], w.qx[i], w.qy[i] = px, py, qx, qy
		}
	}
	return good
}

func (p *probe) gears(c *compiled, t uint64) bool {
	s := sight{}
	for i := range c.gears {
		p.w.tryGear(c, i, t, &s)
	}
	return s.worst == right
}

func abs(n int) int { return max(n, -n) }
