package target

import (
	"testing"

	"rebush/fits/dim"
	"rebush/fits/table"
	"rebush/plan/job"
)

// A shop places by its machine, and by what its file says of it. A drill press
// without a jig loses the place of the clamping, not that of the hole in it.
func TestShopOf(t *testing.T) {
	rules, err := table.ReadRules(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		shop        job.Shop
		setup, hole string
	}{
		{job.Shop{MachineKind: "drill press"}, "drill_press", "jig"},
		{job.Shop{MachineKind: "drill press", Jig: "pinned"}, "jig", "jig"},
		{job.Shop{MachineKind: "hand", Jig: "pinned"}, "jig", "jig"},
		{job.Shop{MachineKind: "hand", Readout: true}, "hand", "hand"},
		{job.Shop{MachineKind: "lathe", Jig: "pinned", Readout: true}, "lathe", "lathe"},
		{job.Shop{MachineKind: "mill", Readout: true}, "readout", "readout"},
		{job.Shop{MachineKind: "mill", Jig: "pinned"}, "dials", "dials"},
	} {
		got := ShopOf(&c.shop, rules)
		if s, h := rules.Get("setup_u_"+c.setup+"_mm"), rules.Get("hole_u_"+c.hole+"_mm"); got.Setup.U != s.Low || got.Hole.U != h.Low ||
			got.Setup.From != s.Address+": "+s.Source || got.Hole.From != h.Address+": "+h.Source {
			t.Errorf("%+v: %+v", c.shop, got)
		}
		c.shop.HoleU = dim.Must("0.004")
		if again := ShopOf(&c.shop, rules); again.Setup != got.Setup || again.Hole.U != 0.004 {
			t.Errorf("hole named: %+v", again)
		}
		c.shop.HoleU, c.shop.SetupU = dim.Length{}, dim.Must("0.007")
		if again := ShopOf(&c.shop, rules); again.Hole != got.Hole || again.Setup.U != 0.007 {
			t.Errorf("clamping named: %+v", again)
		}
	}
}
