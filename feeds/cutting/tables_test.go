package cutting

import (
	"math"
	"strings"
	"testing"

	"rebush/fits/table"
)

// The order of the rows does not matter: a row for the size goes before one for
// any size.
func TestSizedRowsGoFirst(t *testing.T) {
	lib := table.BuiltIn()
	rules, err := table.ReadRules(lib)
	if err != nil {
		t.Fatal(err)
	}
	tab, err := table.Parse("reaming", "shop", []byte("quantity,kind,material,d_over_mm,d_to_mm,low_mm_or_factor,high_mm_or_factor,d_over_in,d_to_in,low_in,high_in,printed_unit,basis,source,note\n"+
		"stock_on_diameter,hand,any metal,,,0.05,0.08,,,,,mm,published,s,\n"+
		"stock_on_diameter,hand,steel,,5,0.1,0.2,,,,,mm,published,s,\n"))
	if err != nil {
		t.Fatal(err)
	}
	if err := lib.Replace(tab); err != nil {
		t.Fatal(err)
	}
	c, err := New(lib, rules)
	if err != nil {
		t.Fatal(err)
	}
	if lo, _, ref, err := c.ReamStock(4, true, "mild steel"); err != nil || lo != 0.1 || ref.Address != "reaming:3" {
		t.Errorf("4 mm: %v %v %v", lo, ref, err)
	}
	if lo, _, _, err := c.ReamStock(8, true, "mild steel"); err != nil || lo != 0.05 {
		t.Errorf("8 mm: %v %v", lo, err)
	}
}

// A shop's table with a bad cell is an error that names the cell, never a
// panic.
func FuzzShopTable(f *testing.F) {
	f.Add("speeds_small", "d_mm,full_feed,fifth_feed,source\n2,0.3,x,y\n")
	f.Add("kd_wear", "wear,w,source\nsharp,0,y\n")
	f.Add("speeds", "material,tool,operation,v_min_m_min,v_max_m_min,v_min_ft_min,v_max_ft_min,factor_min,factor_max,factor_of,basis,source,note\na,HSS,drill,9,3,,,,,,published_m,s,\n")
	f.Fuzz(func(t *testing.T, name, text string) {
		tab, err := table.Parse(name, "shop", []byte(text))
		if err != nil {
			return
		}
		lib := table.BuiltIn()
		rules, err := table.ReadRules(lib)
		if err != nil {
			t.Fatal(err)
		}
		if lib.Replace(tab) != nil {
			return
		}
		c, err := New(lib, rules)
		if err != nil {
			return
		}
		for _, op := range allOps {
			a, err := c.Speed(Query{Material: "zinc", Operation: op, DiaMM: 5, DepthMM: 20})
			if err != nil {
				continue
			}
			for _, v := range []float64{a.VMin, a.VMax, a.VUsed, a.RPM, a.FeedMMRev, a.ThrustN, a.TorqueNmm, a.PowerW} {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Errorf("%s: %+v", op, a)
				}
			}
		}
	})
}

func TestBadTablesAreNamed(t *testing.T) {
	for _, k := range []struct{ name, text, says string }{
		{"speeds_small", "d_mm,full_feed,fifth_feed,source\n2,0.3,x,y\n", "speeds_small:2: fifth_feed"},
		{"kd_wear", "wear,w,source\nsharp,0,y\n", "kd_wear:2: w: 0 must be above 0"},
		{"kd_wear", "wear,w,source\nsharp,1e300,y\n", "beyond all reason"},
		{"coolant", "class,lubricant,source\nzinc,oil,s\n", "no coolant class"},
		{"feed_depth", "name,low,high,unit,what,source\npoint_deg,118,,deg,w,s\n", "no row"},
	} {
		lib := table.BuiltIn()
		rules, err := table.ReadRules(lib)
		if err != nil {
			t.Fatal(err)
		}
		tab, err := table.Parse(k.name, "shop", []byte(k.text))
		if err != nil {
			t.Fatal(err)
		}
		if err := lib.Replace(tab); err != nil {
			t.Fatal(err)
		}
		if _, err = New(lib, rules); err == nil || !strings.Contains(err.Error(), k.says) {
			t.Errorf("%s: %v; want it to say %q", k.name, err, k.says)
		}
	}
	if _, err := New(table.BuiltIn(), nil); err == nil {
		t.Error("no rules were no matter")
	}
}
