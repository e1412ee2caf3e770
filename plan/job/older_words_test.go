package job

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// TestOlderHold: a job that says strap means cap, hash and all; nothing offers
// the older word to a writer.
func TestOlderHold(t *testing.T) {
	data, err := os.ReadFile("testdata/all-keys.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := func(word string) (*Job, error) {
		text := strings.Replace(string(data), "hold: cap", "hold: "+word, 1)
		return Parse("job.yaml", "testdata", []byte(text), Options{})
	}
	now, err := read("cap")
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"strap", "Strap", `"strap"`} {
		was, err := read(word)
		if err != nil {
			t.Fatalf("%s: %v", word, err)
		}
		if !bytes.Equal(was.Canonical(), now.Canonical()) {
			t.Errorf("hold: %s is another job than hold: cap", word)
		}
		caps := 0
		for _, s := range was.Shafts {
			for _, b := range s.Bores {
				if b.Cap {
					caps++
				}
			}
		}
		if caps != 1 {
			t.Errorf("hold: %s: %d bearings under a cap, want 1", word, caps)
		}
	}
	_, err = read("strop")
	if err == nil || !strings.Contains(err.Error(), "cap") || strings.Contains(err.Error(), "strap") {
		t.Errorf("a wrong word is answered by %v", err)
	}
	if s := string(Schema("job")); !strings.Contains(s, `"cap"`) || strings.Contains(s, "strap") {
		t.Error("the schema documents cap, and cap alone")
	}
}

// TestOlderRule: a shop sets cap_slide_um under its older name too, but not
// under both, and a figure that is wrong is told under the name that is used.
func TestOlderRule(t *testing.T) {
	data, err := os.ReadFile("testdata/all-shop.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := func(rule string) (*Shop, error) {
		text := strings.Replace(string(data), "pass_um: 6", rule, 1)
		return parseShop("shop.yaml", "testdata", []byte(text))
	}
	s, err := read("strap_slide_um: [7, 33]")
	if err != nil {
		t.Fatal(err)
	}
	if low, high := s.Rules.Pair("cap_slide_um"); low != 7 || high != 33 {
		t.Errorf("cap_slide_um is %v to %v", low, high)
	}
	for rule, says := range map[string]string{
		"strap_slide_um: [7, 33], cap_slide_um: [8, 30]": "shop.yaml:26:53: rules: strap_slide_um is the older name " +
			"of cap_slide_um, which is set too",
		"strap_slide_um: 7":       "rules: cap_slide_um takes two figures",
		"strop_slide_um: [7, 33]": "did you mean `cap_slide_um`?",
	} {
		if _, err := read(rule); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%s: %v", rule, err)
		}
	}
}
