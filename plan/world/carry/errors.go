package carry

// errors are those of every surveyed hole.
func (c *carrying) errors() (out []Error) {
	for i := range c.truth.Shafts {
		for _, b := range c.truth.Shafts[i].Bores {
			if b == nil {
				continue
			}
			s := c.plan.surveyed(b.Name)
			if s == nil || s.U == nil || !s.U.known() {
				continue
			}
			old := b.Centre
			out = append(out, Error{b.Name, s.Method, minus(s.Centre.mm(), old), float64(*s.U), s.Cov, b.Hole.Depth, b.Repaired, (b.Hole.Towards[0] + b.Hole.Towards[1]) / 2})
		}
	}
	return out
}
