package job

import (
	"errors"
	"os"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// TestUnitsOfTheFile: a file whose units are wrong gets one message for all its
// lengths, and other mistakes are told beside it.
func TestUnitsOfTheFile(t *testing.T) {
	told := func(text string) Problems {
		_, err := Parse("job.yaml", situations, []byte(text), Options{})
		var ps Problems
		errors.As(err, &ps)
		return ps
	}
	plain := dullWith(t, "units: mm")
	inch := strings.Replace(plain, "units: mm", "units: in", 1)
	const want = "job.yaml:5:1: units: in: 34 of 35 lengths fit in mm alone, the first on line 12 (thickness: 3.0); " +
		"write units: mm, or give each length its own unit"
	if ps := told(inch); len(ps) != 1 || ps[0].Error() != want {
		t.Errorf("%d: %v\nwant %s", len(ps), ps, want)
	}
	if ps := told(strings.Replace(inch, "throated", "throted", 1)); len(ps) != 2 || ps[0].Error() != want {
		t.Errorf("with another mistake: %v", ps)
	}
	if ps := told(strings.Replace(inch, "widest: 3.61", "widest: 361", 1)); len(ps) != 2 ||
		!strings.Contains(ps[1].Right, "3.61 would fit: is the decimal point lost?") {
		t.Errorf("with a lost point: %v", ps)
	}
	// The reverse: inch figures, and nobody says so.
	var doc yaml.Node
	if err := yaml.Unmarshal([]byte(strings.Replace(plain, "units: mm\n", "", 1)), &doc); err != nil {
		t.Fatal(err)
	}
	var all []slip
	lengths(doc.Content[0], jobShape, "", "", &all)
	for _, l := range all {
		if to, ok := slipped(l.node.Value, dim.MM, false); ok && l.key != "module" {
			l.node.Value, l.node.Tag, l.node.Style = to, "", 0
		}
	}
	out, err := yaml.Marshal(&doc)
	if err != nil {
		t.Fatal(err)
	}
	small := string(out)
	if ps := told(small); len(ps) == 0 || !strings.HasPrefix(ps[0].Error(), "job.yaml:1:1: no units are given, so that bare "+
		"numbers are read as mm: ") || !strings.Contains(ps[0].Right, "write units: in") {
		t.Errorf("inch without units: %v", ps)
	}
	data, err := os.ReadFile(situations + "/shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	_, err = parseShop("shop.yaml", situations, []byte(strings.Replace(string(data), "units: mm", "units: in", 1)))
	var ps Problems
	if !errors.As(err, &ps) || !strings.HasPrefix(ps[0].Error(), "shop.yaml:2:1: units: in: ") || len(ps) != 1 {
		t.Errorf("a shop: %v", err)
	}
	// Three lengths tell nothing of a file, nor do as many in the one unit as in the other.
	for _, c := range []struct {
		sizes string
		want  int
	}{{"0.137, 0.138, 0.139", 3}, {"0.137, 0.138, 0.139, 0.140, 3.50, 3.51, 3.52, 3.53", 4}, {"0.137, 0.138, 0.139, 0.140", 1}} {
		_, err := parseShop("shop.yaml", ".", []byte("rebush_shop: 1\nmachine: {kind: mill}\nmandrels: ["+c.sizes+"]\n"))
		var ps Problems
		if !errors.As(err, &ps) || len(ps) != c.want {
			t.Errorf("mandrels %s: %v, want %d messages", c.sizes, err, c.want)
		}
	}
	// Three inch figures among many are three mistakes.
	three := strings.NewReplacer("widest: 3.61", "widest: 0.1421", "widest: 3.59", "widest: 0.1413", "width: 18.0", "width: 0.7087").Replace(plain)
	if ps := told(three); len(ps) != 3 || !strings.Contains(ps[1].Right, "if it is inches write `0.1421 in`") {
		t.Errorf("three: %v", ps)
	}
}

// TestLostPoint: a figure whose decimal point is lost or shifted is asked about by
// what the same figure is elsewhere, not as a slip of units.
func TestLostPoint(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"widest: 3.61", "widest: 361", "job.yaml:30:17: widest: 361 mm is not plausible here; 3.61 would fit: is the decimal point lost? " +
			"The same is 3.59 mm on line 37"},
		{"widest: 3.61", "widest: 36.1", "job.yaml:30:17: widest: 36.1 mm is not plausible here; 3.61 would fit: is the decimal point in " +
			"the wrong place? The same is 3.59 mm on line 37"},
		{"widest: 3.61", "widest: 0.361", "3.61 would fit: is the decimal point in the wrong place?"},
		{"narrowest: 3.51", "narrowest: 351", "narrowest: 351 mm is not plausible here; 3.51 would fit: is the decimal point lost?"},
		{"journal: 3.46", "journal: 346", "journal: 346 mm is not plausible here; 3.46 would fit: is the decimal point lost?"},
		{"[12.00, 8.05]", "[120, 8.05]", "job.yaml:29:17: centre: a hole of 3.51 mm at [120 mm, 8.05 mm] is not inside the outline of the " +
			"plate; 12.0 would fit: is the decimal point lost?"},
		{"[12.00, 8.05]", "[12.00, 80.5]", "8.05 would fit: is the decimal point in the wrong place?"},
		{"found: 41.0", "found: 410", "found: 410 mm is not plausible here"},
		{"widest: 3.61", "widest: 100", "widest: 100 mm is not plausible here; 3.937 mm would fit: was it turned into mm twice?"},
		// but a slip of units stays one
		{"widest: 3.61", "widest: 91.694", "widest: 91.694 mm is not plausible here; 3.61 mm would fit: was it turned into mm twice?"},
		{"widest: 3.61", "widest: 0.1421", "if it is inches write `0.1421 in`"},
	} {
		_, err := Parse("job.yaml", situations, []byte(strings.Replace(dullWith(t, c.old), c.old, c.new, 1)), Options{})
		var ps Problems
		if !errors.As(err, &ps) || len(ps) != 1 || !strings.Contains(ps[0].Error(), c.want) {
			t.Errorf("%s: %v\nwant %s, and no more", c.new, err, c.want)
		}
	}
}

// TestBelongs: a key at the wrong level is told where it belongs.
func TestBelongs(t *testing.T) {
	for _, c := range []struct{ old, new, want string }{
		{"  condition: sound", "  condition: sound\n  date: 2026-01-01",
			`job.yaml:11:3: unknown key "date" in chassis; ` + "`date` belongs at the left margin, beside `chassis`"},
		{"    rpm: 420", "    rpm: 420\n    widest: 3.5", `unknown key "widest" in shafts/front axle; ` +
			"`widest` belongs under `bores: left` or `bores: right`"},
		{"        widest: 3.61", "        widest: 3.61\n        rpm: 420", `unknown key "rpm" in shafts/front axle/bores/left; ` +
			"`rpm` belongs 2 levels up, beside `bores`"},
		{"        widest: 3.61", "        widest: 3.61\n        title: x", "`title` belongs at the left margin, beside `shafts`"},
		{"metal: 6.2}", "metal: 6.2, boss: 6}", `unknown key "boss" in shafts/front axle/bores/left/edges/0; ` +
			"`boss` belongs one level up, beside `edges`"},
		{"datum:", "reamers: [6]\ndatum:", `unknown key "reamers"; ` + "`reamers` belongs in the shop file"},
		{"    module: 0.5", "    module: 0.5\n    teeth: 24", `unknown key "teeth" in gears/front drive; ` +
			"`teeth` belongs under `wheel` or `pinion`"},
		{"widest_at: 90", "widestat: 90", "did you mean `widest_at`?"},
		{"widest_at: 90", strings.Repeat("w", 500) + ": 90", `unknown key "` + strings.Repeat("w", 40) + `..." in`},
	} {
		_, err := Parse("job.yaml", situations, []byte(strings.Replace(dullWith(t, c.old), c.old, c.new, 1)), Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v\nwant %s", err, c.want)
		}
	}
	shop := "rebush_shop: 1\nmachine: {kind: mill, jig: pinned, lathe: yes}\n"
	_, err := parseShop("shop.yaml", ".", []byte(shop))
	for _, want := range []string{"`jig` belongs at the left margin, beside `machine`", "`lathe` belongs at the left margin, beside `machine`"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v\nwant %s", err, want)
		}
	}
}

// TestShortMessages: a mistake among very many names is told in a few lines.
func TestShortMessages(t *testing.T) {
	var b strings.Builder
	for range 40 {
		b.WriteString("  - {code: " + strings.Repeat("q", 60) + string(rune('a'+b.Len()%26)) + ", bore: 3.5, od: 6, length: 4, material: bronze}\n")
	}
	text := strings.Replace(dullWith(t, "bushes:"), "bushes:\n", "choose: none of these\nbushes:\n"+b.String(), 1)
	_, err := Parse("job.yaml", situations, []byte(text), Options{})
	if err == nil || !strings.Contains(err.Error(), `there is no bush called "none of these"`) {
		t.Fatal(err)
	}
	for _, line := range strings.Split(err.Error(), "\n") {
		if len(line) > 700 {
			t.Errorf("%d letters: %s", len(line), line)
		}
	}
}
