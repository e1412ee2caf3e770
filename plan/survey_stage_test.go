package plan

import (
	"testing"

	"rebush/fits/finding"
)

// TestMeasured: of the findings those of the measurements, whatever their
// level, in their order; a plan without any gives an empty list, not none.
func TestMeasured(t *testing.T) {
	p := &Plan{}
	if m := p.Measured(); m == nil || len(m) != 0 {
		t.Errorf("%v", m)
	}
	for _, r := range []finding.Rule{"seat/no seat", "survey/no centre", "job/condition", "verdict/price", "mesh/teeth overlap",
		"target/lean", "route/reach", "chance/chance"} {
		p.Findings.Add(finding.Finding{Level: finding.Stop, Rule: r})
	}
	var got []finding.Rule
	for _, f := range p.Measured() {
		got = append(got, f.Rule)
	}
	if len(got) != 3 || got[0] != "survey/no centre" || got[1] != "job/condition" || got[2] != "mesh/teeth overlap" {
		t.Errorf("%v", got)
	}
}
