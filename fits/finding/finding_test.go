package finding_test

import (
	"encoding/json"
	"strings"
	"testing"

	"rebush/fits/finding"
)

func TestList(t *testing.T) {
	var l finding.List
	l.Say(finding.Note, "to buy", "front.left", "a bush has to be bought", "")
	if l.Stops() {
		t.Error("a note stops the job")
	}
	l.Figure(finding.Stop, "wall", "front.left", 0.41, 1.5, "mm", "leaves 0.41 mm", "a smaller bush")
	if !l.Stops() || l.Count(finding.Stop) != 1 || l.Count(finding.Caution) != 0 {
		t.Errorf("list is %+v", l)
	}
	b, err := json.Marshal(l)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"have":0.41`, `"want":1.5`, `"have":null`, `"level":"stop"`} {
		if !strings.Contains(string(b), want) {
			t.Errorf("%s lacks %s", b, want)
		}
	}
}
