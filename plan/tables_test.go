package plan

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"rebush/plan/job"
)

// TestReadTables: a damaged table of a shop's own is refused when it is read, by
// the line of the shop file that names it and its own row.
func TestReadTables(t *testing.T) {
	for _, c := range []struct{ name, old, new, want string }{
		{"backlash", "\nB,", "\nX,", "table backlash: no row of class B"},
		{"pin_classes", "0.00508", "none", `tolerance_mm "none" is not a figure above 0`},
		{"bush_series", ",mm,", ",ell,", `unit "ell" is neither mm nor in`},
		{"materials_kinds", "zinc die casting,zinc;", ",zinc;", "material and kind must both stand"},
		{"speeds", "60", "-60", "speeds:"},
		{"limits_it", "6", "six", "limits_it:"},
	} {
		data, err := os.ReadFile("../fits/table/data/" + c.name + ".csv")
		if err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		text := strings.ReplaceAll(string(data), c.old, c.new)
		if text == string(data) {
			t.Errorf("%s: nothing is damaged by %s for %s", c.name, c.new, c.old)
		}
		for name, body := range map[string]string{"own.csv": text,
			"shop.yaml": "rebush_shop: 1\nmachine: {kind: mill}\npins: {from: 1, to: 6, step: 0.01, class: ZZ}\ntables:\n  " +
				c.name + ": own.csv\n"} {
			if err := os.WriteFile(filepath.Join(dir, name), []byte(body), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		shop, err := job.ReadShop(filepath.Join(dir, "shop.yaml"))
		if err == nil {
			err = ReadTables(shop)
		}
		if err == nil || !strings.Contains(err.Error(), "shop.yaml:5:") || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v\nwant line 5 and %s", c.name, err, c.want)
		}
	}
}
