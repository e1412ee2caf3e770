package plan

// placing sets how well this shop places a clamping and a hole: by the shop
// file, else by rule for its machine.
func (m *maker) placing() {
	sh := m.j.Shop
	kind := "dials"
	switch {
	case sh.MachineKind == "drill press" && sh.Jig == "pinned", sh.MachineKind == "hand" && sh.Jig == "pinned":
		kind = "jig"
	case sh.MachineKind == "drill press":
		kind = "drill_press"
	case sh.MachineKind == "hand":
		kind = "hand"
	case sh.MachineKind == "lathe":
		kind = "lathe"
	case sh.Readout:
		kind = "readout"
	}
	set := m.rules.Get("setup_u_" + kind + "_mm")
	m.setupU, m.setupFrom = set.Low, set.Address+": "+set.Source
	hole := "hole_u_" + kind + "_mm"
	if kind == "drill_press" {
		hole = "hole_u_jig_mm" // the hole itself; the place is the set-up's
	}
	rule := m.rules.Get(hole)
	m.holeU, m.holeFrom = rule.Low, rule.Address+": "+rule.Source
	at := place(sh.At("machine/location"), "built-in small shop:1")
	if sh.SetupU.Given() {
		m.setupU, m.setupFrom = sh.SetupU.Float(), at
	}
	if sh.HoleU.Given() {
		m.holeU, m.holeFrom = sh.HoleU.Float(), at
	}
}
