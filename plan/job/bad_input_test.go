package job

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// TestBadInput: each mistake in a dull job gets a line with its place and
// what would be right. The change is made at the first place that matches.
func TestBadInput(t *testing.T) {
	var said strings.Builder
	for _, c := range []struct{ name, old, new, want string }{
		{"unknown key", "widest_at: 90", "widdest_at: 90",
			`job.yaml:32:9: unknown key "widdest_at" in shafts/front axle/bores/left; did you mean ` + "`widest_at`"},
		{"key twice", "widest: 3.61", "widest: 3.61\n        widest: 3.60",
			`:31:9: "widest" stands twice, first on line 30; keep one`},
		{"alias", "widest: 3.61", "widest: *w", `:30:17: an alias (*w) is not read here`},
		{"anchor", "widest: 3.61", "widest: &w 3.61", `:30:17: an anchor (&w) is not read here`},
		{"merge", "widest: 3.61", "<<: {widest: 3.61}", `:30:9: a merge (<<) is not read here`},
		{"tag", "widest: 3.61", "widest: !!str 3.61", `a tag (!!str) is not read here`},
		{"second document", "shafts:", "---\nshafts:", `a second document begins here`},
		{"NaN", "widest: 3.61", "widest: .nan", `:30:17: widest: `},
		{"1e400", "widest: 3.61", "widest: 1e400", `:30:17: widest: "1e400" is not a length; write it out`},
		{"1e400 as a number", "rpm: 420", "rpm: 1e400", `rpm: 1e400 is not a number; write a plain number`},
		{"negative plate", "left: {thickness: 3.0}", "left: {thickness: -3.0}",
			`thickness: -3.0 mm must be above zero; expected 0.5 mm to 12 mm`},
		{"zero plate", "left: {thickness: 3.0}", "left: {thickness: 0}", `thickness: 0 mm must be above zero`},
		{"bore outside", "centre: [12.00, 8.05]", "centre: [12.00, 28.05]",
			`:29:17: centre: a hole of 3.51 mm at [12 mm, 28.05 mm] is not inside the outline`},
		{"two shafts of a name", "name: rear axle", "name: front axle", `two shafts are called "front axle"`},
		{"gear on no shaft", "on: front axle", "on: font axle",
			`on: there is no shaft called "font axle"; did you mean "front axle"?`},
		{"unknown material", "material: zinc die casting", "material: zink dye",
			`material: no material "zink dye" is known; the nearest is`},
		{"worn_to", "worn_to: 90", "worn_to: 180",
			`worn_to: 180 is not an end of the largest diameter, which lies at 90; expected about 90 or 270`},
		{"hash", "widest: 3.61", "widest: #31",
			`:30:17: widest: #31 without quotes begins a comment, so nothing is left; write "#31" in quotes, or no 31`},
		{"hash in a list", `bushes:`, "bushes: [#31]\nbushes2:",
			`#31 without quotes begins a comment, and the rest of the line is lost; write "#31" in quotes`},
		{"comma in braces", "{left: 3.46, right: 2.94}", "{left: 3,46, right: 2.94}",
			`left: 3,46 in braces is read as a number and a key; write 3.46`},
		{"comma in brackets", "journal: {left: 3.46, right: 2.94}", "journal: [3,46]",
			`journal: [3,46] is a list of two numbers; write 3.46`},
		{"comma in a point", "[12.00, 8.05]", "[12,00, 8,05]", `centre: a comma without a space between digits`},
		{"tab", "    rpm: 420", "\trpm: 420", `:22:1: a tab stands at the beginning of this line; indent with spaces`},
		{"indentation", "        narrowest: 3.51", "      narrowest: 3.51",
			`:31:7: this line is indented by 6 spaces, those around it by 8; give keys of one record the same number of spaces`},
		{"colon without a space", "rebush: 1 ", "rebush:1 ",
			`job.yaml:1:7: no space stands behind the colon; write ` + "`rebush: 1`"},
		{"two colons", "title: Plain axle", "title: Plain: axle",
			`job.yaml:3:13: a second colon stands on this line; put the text in quotes: title: "Plain: axle under a worm`},
		{"bracket", "[12.00, 8.05]", "[10.00, 6.05", `:29:17: this [ is not closed; close it with ]`},
		{"quote", "title: Plain", `title: "Plain`, `quote`},
		{"leading zero", "teeth: 24", "teeth: 024",
			`teeth: 024 begins with 0, which some read as another number; write 24`},
		{"leading zero of a length", "width: 18.0", "width: 018", `width: "018" begins with 0`},
		{"yes or no", "binds: yes", "binds: perhaps", `binds: "perhaps" is not yes or no`},
		{"accept of no stop", "shafts:", "accept: [wibble]\nshafts:",
			`:17:10: accept: there is no stop called "wibble"; write accept: [magnesium] or leave it out; no other stop can be accepted`},
		{"accept misspelt", "shafts:", "accept: [magnesum]\nshafts:",
			`accept: there is no stop called "magnesum"; did you mean ` + "`magnesium`?"},
		{"accept of a crack", "shafts:", "accept:\n  - magnesium\n  - condition\nshafts:",
			`:19:5: accept: the stop "condition" cannot be accepted; nothing at the machine cures a cracked or swollen casting`},
		{"accept of a seat", "shafts:", "accept: [no seat]\nshafts:",
			`accept: the stop "no seat" cannot be accepted; see what each bush would need`},
		{"accept twice", "shafts:", "accept: [magnesium, magnesium]\nshafts:",
			`accept: "magnesium" stands twice; keep one`},
		{"accept of nothing", "shafts:", "accept: []\nshafts:", `accept: `},
		{"accept as a word", "shafts:", "accept: magnesium\nshafts:", `accept: `},
		{"newer version", "rebush: 1 ", "rebush: 2 ", `this file is version 2; this program reads up to 1`},
		{"no version", "rebush: 1 ", "datum: x # ", `rebush is missing`},
		{"date", "2026-11-25", "2026-02-30", `date: "2026-02-30" is not a date`},
		{"inch for mm", "widest: 3.61", "widest: 0.1421",
			"widest: 0.1421 mm is not plausible here; if it is inches write `0.1421 in`"},
		{"journal too large", "journal: {left: 3.46", "journal: {left: 3.56",
			`narrowest: 3.51 mm does not go with the left journal of 3.56 mm`},
		{"narrowest above widest", "narrowest: 3.51", "narrowest: 3.71",
			`widest: 3.61 mm is less than narrowest, 3.71 mm`},
		{"nothing", "widest: 3.61", "widest:", `widest: no value is given; expected a length`},
		{"words for a length", "widest: 3.61", "widest: wide", `:30:17: widest: `},
		{"bush without size", "od: 6.0, ", "", `od is missing in bushes/drawer 7`},
		{"small flange", "flange: {od: 8,", "flange: {od: 6,", `od: 6 mm does not go with an outside diameter of 6 mm`},
		{"bore above od", "od: 6.0, od_class", "od: 3.0, od_class", `od: 3 mm over a bore of 3.5 mm leaves a wall`},
		{"class", "bore_class: F7", "bore_class: Q7", `bore_class: `},
		{"made of nothing", "complaint:", "made: {front axle.left: {with: pins}}\ncomplaint:",
			"no size as made is given"},
		{"chooses nothing", "complaint:", "choose: drawer 9\ncomplaint:",
			`choose: there is no bush called "drawer 9"; did you mean "drawer 7"?`},
		{"finish that is none", "complaint:", "finish: drilled\ncomplaint:",
			`finish: "drilled" is not auto, as delivered, mandrel, ream, bore or to its own axle; did you mean`},
		{"finish of no bore", "complaint:", "finish: {front axle.middle: ream}\ncomplaint:",
			`there is no bore called "front axle.middle"`},
		{"way that is none", "complaint:", "way: plugged\ncomplaint:",
			`:60:6: way: "plugged" is not auto, keep, renew, re-bush, made to fit, bush in a bush or plug; did you mean "plug"?`},
		{"way of a truck", "complaint:", "way: swap\ncomplaint:", `:60:6: way: "swap" is not auto, keep, renew,`},
		{"way of no bore", "complaint:", "way: {front axle.middle: plug}\ncomplaint:",
			`there is no bore called "front axle.middle"`},
		{"way of a bore that is none", "complaint:", "way: {front axle.left: bush}\ncomplaint:",
			`:60:24: front axle.left: "bush" is not auto, keep, renew`},
		{"way of a shaft left alone", "complaint:", "way: {rear axle.left: plug}\ncomplaint:",
			`:60:23: rear axle.left: rear axle is left alone (do: leave), and way wants plug for its hole; write keep`},
		{"bushes that are not there", "on_hand: 20", "on_hand: -1", `on_hand: -1 is not plausible here; expected 0 to 1000000`},
		{"half a bush", "on_hand: 20", "on_hand: 1.5", `on_hand: 1.5 is not a whole number; expected a whole number 0 to 1000000`},
		{"old bush as a word", "worn_to: 90", "worn_to: 90\n        bushed: 5.0", `bushed: "5.0" is not yes or no; write yes or no, or a record with od: {od: ...}`},
		{"old bush of no outside", "worn_to: 90", "worn_to: 90\n        bushed: {od: }", `od: no value is given`},
		{"old bush by another key", "worn_to: 90", "worn_to: 90\n        bushed: {diameter: 5.0}",
			`unknown key "diameter" in shafts/front axle/bores/left/bushed; did you mean ` + "`od`?"},
		{"old bush thinner than the axle", "worn_to: 90", "worn_to: 90\n        bushed: {od: 3.2}",
			`od: 3.2 mm does not go with the left journal of 3.46 mm; expected 3.86 mm to 12.46 mm`},
		{"seat larger than the plate", "complaint:", "made: {front axle.left: {seat: 24.5}}\ncomplaint:",
			`:60:32: seat: a seat of 24.5 mm does not stand in a plate of 64 mm by 24 mm; expected under 24 mm`},
		{"made smaller than the hole", "complaint:", "made: {front axle.left: {seat: 3.41}}\ncomplaint:",
			`:60:32: seat: 3.41 mm is smaller than the hole was, 3.51 mm (narrowest); a seat as made takes the hole in`},
		{"bore larger than its seat", "complaint:", "made: {front axle.left: {seat: 4.50, bore: 4.45}}\ncomplaint:",
			`:60:44: bore: 4.45 mm leaves a bush no wall: the seat that the bush stands in is 4.5 mm; expected under 4.3 mm`},
		{"percent for a share", "complaint:", "swap: {price: 30, chance: 60}\ncomplaint:",
			`:60:27: chance: 60 is not plausible here; it is a share, not percent: write 0.6; expected 0 to 1`},
		{"made for no bore", "complaint:", "made: {front axle.middle: {seat: 5}}\ncomplaint:",
			`there is no bore called "front axle.middle"`},
		{"no outline length for the right", "centre: [12.01, 8.04]",
			"seen_from: right\n        centre: [12.01, 8.04]",
			`centre: the x of the two bores of "front axle" differ by`},
		{"shop that is not there", "shop: shop.yaml", "shop: shopp.yaml", ``},
		{"teeth", "teeth: 24", "teeth: 4", `teeth: 4 is not plausible here; expected 5 to 400`},
		{"worm of no diameter", "starts: 1, pitch_diameter: 6.4, height", "starts: 1, height",
			`:55:11: worm: its diameter is not given; write tip: 7.00, its outside diameter as measured`},
		{"worm without a core", "starts: 1, pitch_diameter: 6.4, height", "starts: 1, tip: 1.9, height",
			`tip: a worm of 1.9 mm outside has no core under threads of module`},
		{"angle", "pressure_angle: 20", "pressure_angle: 40", `pressure_angle: 40 is not plausible here`},
		{"insulated", "insulated: right", "insulated: rihgt", `did you mean "right"?`},
		{"instrument", "narrowest: 3.51", "narrowest: 3.51\n        with: {widest: indicatr}",
			`widest: there is no instrument called "indicatr"; did you mean "indicator"?`},
		{"force", "load: 2.5 N", "load: 2.5 stone", `load: "stone" is not a unit of force`},
		{"huge", "widest: 3.61", "widest: 99999999999999999999999999999999999999999999", `widest: `},
	} {
		text := strings.Replace(dullWith(t, c.old), c.old, c.new, 1)
		_, err := Parse("job.yaml", situations, []byte(text), Options{})
		if err == nil {
			t.Errorf("%s: taken", c.name)
			continue
		}
		said.WriteString(c.name + "\n    " + strings.ReplaceAll(err.Error(), "\n", "\n    ") + "\n")
		if c.want == "" {
			var fe *FileError
			if !errors.As(err, &fe) || !strings.Contains(err.Error(),
				"job.yaml:6:7: "+filepath.Join(situations, "shopp.yaml")+": there is no such file") {
				t.Errorf("%s: %v", c.name, err)
			}
			continue
		}
		if !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s:\n got %v\nwant %s", c.name, err, c.want)
		}
		for _, line := range strings.Split(err.Error(), "\n") {
			if !strings.HasPrefix(line, "job.yaml:") || strings.Count(line, ":") < 3 {
				t.Errorf("%s: a line without its place: %s", c.name, line)
			}
		}
	}
	heldMessages(t, said.String())
}

var update = flag.Bool("update", false, "write the messages of the mistakes anew")

// heldMessages holds what is said of every mistake, whole, against what was
// said before.
func heldMessages(t *testing.T, got string) {
	t.Helper()
	const file = "testdata/mistakes.txt"
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.Split(string(want), "\n"), strings.Split(got, "\n")); d != "" {
		t.Errorf("%s (-want +got):\n%s", file, d)
	}
}

// TestAllAtOnce: three mistakes of three kinds are told in the order of their
// lines.
func TestAllAtOnce(t *testing.T) {
	data, err := os.ReadFile(situations + "/plain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer("condition: sound", "condition: fair", "widest: 3.61", "widest: #31",
		"on: front axle", "on: middle axle").Replace(string(data))
	_, err = Parse("job.yaml", situations, []byte(text), Options{})
	var ps Problems
	if !errors.As(err, &ps) || len(ps) != 3 {
		t.Fatalf("%d problems: %v", len(ps), err)
	}
	for i, want := range []string{"condition:", "widest:", "on:"} {
		if !strings.HasPrefix(ps[i].Wrong, want) {
			t.Errorf("%d: %v", i, ps[i])
		}
	}
}

// TestFilesThatCannotBe: what is missing or a folder is another error than what
// does not make sense.
func TestFilesThatCannotBe(t *testing.T) {
	dir := t.TempDir()
	write := func(name string, data []byte) string {
		p := filepath.Join(dir, name)
		if err := os.WriteFile(p, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return p
	}
	for _, p := range []string{filepath.Join(dir, "none.yaml"), dir} {
		var fe *FileError
		if _, err := Read(p, Options{}); !errors.As(err, &fe) {
			t.Errorf("%s: %v", p, err)
		}
	}
	write("tram.yaml", nil)
	for name, want := range map[string]string{"tram.yml": "did you mean " + filepath.Join(dir, "tram.yaml") + "?",
		"trma.yaml": "tram.yaml?", "omnibus.yaml": ""} {
		_, err := Read(filepath.Join(dir, name), Options{})
		if err == nil || !strings.Contains(err.Error(), want) || want == "" &&
			strings.Contains(err.Error(), "did you mean") {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
	deep := strings.Repeat("[", 30) + strings.Repeat("]", 30)
	for name, want := range map[string]struct {
		data []byte
		says string
	}{
		"empty":     {nil, "the file is empty"},
		"spaces":    {[]byte(" \n\n"), "the file is empty"},
		"comments":  {[]byte("# nothing\n"), "nothing but comments"},
		"zeros":     {make([]byte, 3<<20), "larger than 1 MiB"},
		"nul":       {[]byte("rebush: 1\n\x00"), ":2:1: a NUL byte"},
		"latin":     {[]byte("rebush: 1\ntitle: f\xfcr\n"), ":2:9: byte 0xfc is not UTF-8"},
		"binary":    {[]byte("\x7fELF\x02\x01"), "not a text file"},
		"list":      {[]byte("- 1\n- 2\n"), "does not begin with keys"},
		"word":      {[]byte("hello"), "does not begin with keys"},
		"deep":      {[]byte("rebush: 1\ntitle: " + deep), "nested more than 20 deep"},
		"deeper":    {[]byte(strings.Repeat("[", 100000)), "brackets are open"},
		"empty map": {[]byte("rebush: 1"), "chassis is missing"},
	} {
		_, err := Read(write(strings.ReplaceAll(name, " ", "-"), want.data), Options{})
		var ps Problems
		if !errors.As(err, &ps) || !strings.Contains(err.Error(), want.says) {
			t.Errorf("%s: %v, want %q", name, err, want.says)
		}
	}
	if _, err := Read("-", Options{Stdin: strings.NewReader("rebush: 1\n")}); err == nil ||
		!strings.HasPrefix(err.Error(), "standard input:1:1: ") {
		t.Errorf("standard input: %v", err)
	}
}
