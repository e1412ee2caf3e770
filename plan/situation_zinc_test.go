package plan_test

import (
	"strings"
	"testing"

	"rebush/fits/table"
)

// The tension allowed in a zinc casting is half the least strength published
// for what it may be: 241 MPa of aged alloy 3 (35 ksi, two printed tables)
// where the alloy is not named, 269 of aged alloy 5. Zinc without a creep
// figure of its own is taken to slacken as alloy 3 does.
func TestZincAllowed(t *testing.T) {
	var soft []float64
	for _, c := range []struct {
		name, owner string
		want        float64
	}{
		{"zinc die casting", "zinc die-casting alloy 3", 120.5},
		{"zinc alloy 3", "zinc die-casting alloy 3", 120.5},
		{"zinc alloy 5", "zinc die-casting alloy 5", 134.5},
		{"zinc alloy 2", "zinc die-casting alloy 2", 165.5},
	} {
		p := plain(t).with("material: zinc die casting", "material: "+c.name).plan()
		s := seatOf(t, p, "drive.left")
		near(t, c.name+": allowed tension", *s.HoopLimitMPa, c.want, 1e-9)
		source := p.Ledger["seats/drive.left/hoop_limit_mpa"].Source
		_, row, _ := strings.Cut(source, "(materials:")
		row, _, _ = strings.Cut(row, ":")
		if of := ownerOf(t, "materials:"+row); of != c.owner {
			t.Errorf("%s: %q leads to a row of %q", c.name, source, of)
		}
		left := p.Ledger["seats/drive.left/plate_e_low"]
		if row, _, _ := strings.Cut(left.Source, ": "); ownerOf(t, row) != "zinc die-casting alloy 3" {
			t.Errorf("%s: the stiffness that is left comes from %q", c.name, left.Source)
		}
		soft = append(soft, left.Value)
	}
	for _, e := range soft {
		near(t, "stiffness that is left over the years", e, 20700, 1e-9)
	}
}

// ownerOf is the material of a row of the table materials.
func ownerOf(t *testing.T, address string) string {
	t.Helper()
	lib, err := table.BuiltIn().Get("materials")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range lib.Rows {
		if row.Address() == address {
			return row.Get("material")
		}
	}
	return ""
}
