package finding_test

import (
	"encoding/json"
	"strings"
	"testing"

	"rebush/fits/finding"
	"rebush/fits/say"
)

func TestList(t *testing.T) {
	var l finding.List
	l.Raise(finding.Note, "seat/to buy", finding.Place{Where: "front.left"}, "a bush has to be bought", "")
	if l.Stops() {
		t.Error("a note stops the job")
	}
	l.Raise(finding.Stop, "seat/wall", finding.Place{Where: "front.left", File: "j.yaml", Line: 7, Column: 3}, say.F("leaves %v", say.MM(0.4137, 2)), "a smaller bush").Against(0.41, 1.5, "mm")
	if !l.Stops() || l.Count(finding.Stop) != 1 || l.Count(finding.Caution) != 0 {
		t.Errorf("list is %+v", l)
	}
	b, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"have":0.41`, `"want":1.5`, `"have":null`, `"level":"stop"`, `"rule":"wall"`, `"text":"leaves 0.41 mm"`, `"line":7`} {
		if !strings.Contains(string(b), want) {
			t.Errorf("%s lacks %s", b, want)
		}
	}
}

// A rule knows the stage it belongs to, and is printed by its name alone.
func TestRule(t *testing.T) {
	const r finding.Rule = "seat/no seat"
	if r.Stage() != "seat" || r.Name() != "no seat" || r.String() != "no seat" {
		t.Errorf("%q %q %q", r.Stage(), r.Name(), r.String())
	}
	if bare := finding.Rule("wall"); bare.Stage() != "" || bare.Name() != "wall" {
		t.Errorf("%q %q", bare.Stage(), bare.Name())
	}
}
