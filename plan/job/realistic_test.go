package job

import (
	"os"
	"strings"
	"testing"
)

// TestRealisticJobs: plausibility does not refuse what stands on benches:
// sizes from 2 to 8 mm, thin plates, heavy wear, every way to write a length.
func TestRealisticJobs(t *testing.T) {
	read := func(name string) string {
		data, err := os.ReadFile(jobs + "/" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(data)
	}
	for _, c := range [][]string{
		{"thickness: 3.0", "thickness: 0.8"},
		{"thickness: 3.0", "thickness: 6"},
		{"widest: 3.61", "widest: 4.5"}, // a millimetre of wear
		{"widest: 3.61", "widest: 0.1421 in"},
		{"widest: 3.61", "widest: 3,61"},
		{"widest: 3.61", "widest: 142.1 thou"},
		{"worn_to: 90", "worn_to: 270"},
		{"worn_to: 90", "worn_to: -90"},
		{"worn_to: 90", "worn_to: 130"},
		{"worn_to: 90", "worn_to: [60, 120]"},
		{"runout: 0.02", "runout: 0.1"},
		{"runout: 0.02", "runout: 0"},
		{"backlash: [0.05, 0.12]", "backlash: [0, 0.2]"},
		{"height: 17.33", "height: 17.2"},
		{"height: 17.33", "height: 17.7"},
		{", tip: 13.0", ""},
		{", tip: 13.0", ", tip: 13.4, throat: 13.0"},
		{"wheel_form: throated", "wheel_form: unknown"},
		{"wheel_form: throated", ""},
		{"od: 6.0, od_class: s7", "od: [6.021, 6.028]"},
		{"od: 6.0, od_class: s7", "od: 6.024"},
		{"metal: 6.2", "metal: 0.4"},
		{"metal: 6.2", "away: 8.0"},
		{"must_pass: {right: 2.98}", "must_pass: {left: 3.9, right: 2.98}"},
		{"hub_to_hub: 20.0", "hub_to_hub: 18.2"},
		{"load: 2.5 N", "load: 250 g"},
		{"load: 2.5 N", "load: 2.5"},
		{"load: 2.5 N", "load: 9 ozf"},
		{"condition: sound", "condition: swollen"},
		{"found: 41.0", "found: 41.3"},
		{"binds: yes", "binds: true"},
		{"date: 2026-11-25", ""},
		{"complaint:", "choose: auto\ncomplaint:"},
		{"complaint:", "choose: {front axle.left: drawer 7}\ncomplaint:"},
		{"{at: 90, diameter: 1.4}", "{at: 90, diameter: \"#55\"}"},
		{"{at: 90, diameter: 1.4}", "{at: 90, diameter: 3/64 in}"},
		{"left: {centre: [53.00, 8.00], widest: 3.50, narrowest: 3.50}", "left: {bushed: yes}"},
		{"material: zinc die casting", "material: zinc alloy 3"},
	} {
		text := strings.Replace(dullWith(t, c[0]), c[0], c[1], 1)
		if _, err := Parse("job.yaml", situations, []byte(text), Options{}); err != nil {
			t.Errorf("%s: %v", c[1], err)
		}
	}
	plain := dullWith(t, "Plain axle")
	if _, err := Parse("job.yaml", situations, []byte(strings.ReplaceAll(plain, "\n", "\r\n")), Options{}); err != nil {
		t.Errorf("lines that end with carriage returns: %v", err)
	}
	if _, err := Parse("job.yaml", situations, []byte("\xEF\xBB\xBF"+plain), Options{}); err != nil {
		t.Errorf("a byte order mark: %v", err)
	}
	large := strings.NewReplacer("journal: 4.00", "journal: 7.95", "widest: 4.14", "widest: 8.09", "narrowest: 4.04",
		"narrowest: 7.99",
		"probed: {file: pellinthwaite-left.csv, stylus: 1.0}", "centre: [19.99, 12.05]", "with: {probed: edge "+
			"finder}", "widest: 8.09\n        narrowest: 7.99\n        widest_at: "+
			"100").Replace(read("pellinthwaite.yaml"))
	if _, err := Parse("job.yaml", jobs, []byte(large), Options{}); err != nil {
		t.Errorf("an axle of 8 mm: %v", err)
	}
	small := strings.NewReplacer("journal: 3.46", "journal: 2.0", "widest: 3.61", "widest: 2.12", "widest: 3.59",
		"widest: 2.10",
		"narrowest: 3.51", "narrowest: 2.03", "widest: 3.50, narrowest: 3.50", "widest: 2.03, narrowest: "+
			"2.03").Replace(plain)
	if _, err := Parse("job.yaml", situations, []byte(small), Options{}); err != nil {
		t.Errorf("an axle of 2 mm: %v", err)
	}
}
