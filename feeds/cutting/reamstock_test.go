package cutting

import (
	"math"
	"strings"
	"testing"
)

func TestPreDrill(t *testing.T) {
	c := newCutting(t)
	// 10 mm, 0.20 of stock, 0.05 oversize: 9.75 (worked example from memory).
	low, high, err := c.PreDrill(10, true, "mild steel")
	if err != nil {
		t.Fatal(err)
	}
	within(t, "largest drill before 10", high, 9.75, 1e-9)
	within(t, "smallest drill before 10", low, 9.65, 1e-9)
	// 4.85 before 5 by hand: bench practice.
	if _, high, err = c.PreDrill(5, true, "zinc"); err != nil {
		t.Fatal(err)
	}
	within(t, "before 5 by hand", high, 4.85, 1e-9)
	// 5 to 20 and 21 to 50 leave no gap between them.
	if lo, hi, _, err := c.ReamStock(20.5, true, "steel"); err != nil || lo != 0.3 || hi != 0.5 {
		t.Errorf("20.5 by hand: %v %v %v", lo, hi, err)
	}
	// Nor do 0.170 and 0.171 in of the chart.
	if lo, _, _, err := c.ReamStock(4.33, false, "steel"); err != nil || lo != 0.127 {
		t.Errorf("4.33 by machine: %v %v", lo, err)
	}
	// Below the chart the published figure for any size goes before memory.
	if lo, hi, ref, err := c.ReamStock(2, false, "zinc"); err != nil || lo != 0.127 || hi != 0.254 || !strings.Contains(ref.Text, "TM 1-420") {
		t.Errorf("2 mm by machine: %v %v %v %v", lo, hi, ref, err)
	}
	if _, _, err := c.PreDrill(0.2, false, "zinc"); err == nil {
		t.Error("a reamer smaller than its stock was given a drill")
	}
	if _, _, _, err := c.ReamStock(math.NaN(), false, "zinc"); err == nil {
		t.Error("a reamer of no size was given a stock")
	}
	if _, _, _, err := c.ReamStock(5, false, "cheese"); err == nil {
		t.Error("an unknown material was given a stock")
	}
}
