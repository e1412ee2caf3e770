package carry

// midway is a running clearance in the middle of what is usual, mm on diameter,
// for a place that has no bush yet.
const midway = 0.035

// places tries every mesh at four places of its bushed holes.
func (c *carrying) places(seed uint64, turns int, out []Meshing) {
	each := 1 / float64(turns)
	for i := range c.truth.Gears {
		g, o := &c.truth.Gears[i], &out[i]
		m := c.mesh(g.Name)
		o.Gear = g.Name
		if m == nil || m.Window == nil || !m.Window[0].known() {
			continue
		}
		o.Trusted, o.Window = m.Trusted, float64(m.Window[1]-m.Window[0])
		if m.U != nil {
			o.U = float64(*m.U)
		}
		o.Wide = o.Window > 0 && o.wide(c.plan)
		at := [4]map[string][2]float64{{}, {}, {}, {}}
		for _, name := range []string{g.Wheel, g.Mate} {
			s := c.truth.Shaft(name)
			if s == nil || s.Leave {
				continue
			}
			for _, b := range s.Bores {
				if b == nil || c.plan.target(b.Name) == nil || c.plan.surveyed(b.Name) == nil || len(c.seats) > 0 && c.seats[b.Name] == nil {
					continue
				}
				o.Moves = true
				at[0][b.Name] = c.plan.target(b.Name).At.mm()
				at[1][b.Name] = c.plan.surveyed(b.Name).Centre.mm()
				at[2][b.Name] = b.Hole.Middle()
				if f := c.plan.surveyed(b.Name).Found; f != nil {
					at[2][b.Name] = f.mm()
				}
				at[3][b.Name] = b.Centre
			}
		}
		if !o.Moves {
			continue
		}
		for turn := range turns {
			l := luck{seed, uint64(turn)}
			for k, set := range []struct{ in, none *float64 }{{&o.Planned, &o.PlannedNone}, {&o.Surveyed, &o.SurveyedNone}, {&o.Middle, &o.MiddleNone}, {&o.Old, &o.OldNone}} {
				holes := map[string]made{}
				for name, want := range at[k] {
					holes[name] = made{at: c.placed(name, l, &want), clear: midway}
				}
				t := c.turned(g, c.axisOf(g.Wheel, holes), c.axisOf(g.Mate, holes))
				if t.backlash >= float64(m.Window[0]) && t.backlash <= float64(m.Window[1]) {
					*set.in += each
				}
				if !(t.backlash > 0) {
					*set.none += each
				}
			}
		}
	}
}

// wide says whether the window of distances is at least four times the doubt of
// the distance that is made.
func (o *Meshing) wide(p *Plan) bool {
	key := "mesh/" + o.Gear + "/window_mm/"
	return o.U > 0 && p.figure(key+"1")-p.figure(key+"0") >= 4*o.U
}
