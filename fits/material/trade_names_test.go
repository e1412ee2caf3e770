package material_test

import (
	"strings"
	"testing"

	"rebush/fits/material"
	"rebush/fits/table"
)

// TestTradeNames: what the bench calls a metal is a metal of that kind (common
// practice, no source).
func TestTradeNames(t *testing.T) {
	r, err := material.New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	for kind, names := range map[material.Kind]string{
		material.ZincCasting:      "mazak, Mazac, ZAMAK, zamac, pot metal, monkey metal, muck metal, mazak 3, zamak 5, die-cast",
		material.AluminiumCasting: "alu, ally, light alloy, LM24",
		material.WroughtAluminium: "dural, duralumin, alu plate",
		material.MagnesiumCasting: "elektron, mag",
		material.SolidBronze:      "gunmetal, gun metal, red bronze, Rg7, phos bronze",
		material.WroughtBrass:     "CZ108, sheet brass",
		material.BrassBush:        "CZ121, screw brass",
		material.Steel:            "EN3B, EN1A, BMS, gauge plate",
		material.Plastic:          "delrin, teflon, bakelite",
	} {
		for _, name := range strings.Split(names, ", ") {
			if m, err := r.Find(name); err != nil || m.Kind != kind {
				t.Errorf("%s: %v, %v, want %s", name, m, err, kind)
			}
		}
	}
	for _, c := range []struct{ name, want string }{
		{"alloy", `"alloy" may be zinc die casting or aluminium alloy: write which`},
		{"pewter", `no material "pewter" is known`}, // and none is near
		{"wood", `no material "wood" is known`},
		{"mazzak", `no material "mazzak" is known; the nearest is "mazak"`},
		{"zink", `no material "zink" is known; the nearest is "zinc"`},
		{strings.Repeat("x", 5000), `no material "` + strings.Repeat("x", 40) + `..." is known`},
	} {
		if _, err := r.Find(c.name); err == nil || err.Error() != c.want {
			t.Errorf("%v\nwant %s", err, c.want)
		}
	}
}
