package sheets

import (
	"strings"
	"testing"

	"rebush/sheets/draw"
)

// The numbers of a picture have their names below it where the dials do not name
// them all, and no tool is drawn over the height of the blocks.
func TestNumbersOfAPictureHaveNames(t *testing.T) {
	p := demos(t)["gullwrack"]
	d := must(Setup(p, Options{}))
	if text := flat(wordsOf(d)); !strings.Contains(text, "1 driven axle, 2 trailing axle, 3 cord shaft") {
		t.Error("nothing names the numbers")
	}
	looked := 0
	for page := 1; page <= d.Pages(); page++ {
		spindle, high := -1.0, -1.0
		for _, it := range d.All(page) {
			if it.Kind == draw.KindText && it.Text == "spindle" {
				spindle = it.Box.X + it.Box.W // the axis lies to the right of its word
			}
			if it.Kind == draw.KindText && it.Text == "40 mm" {
				high = it.Box.X
			}
		}
		if spindle > 0 && high > 0 {
			looked++
			if high < spindle+15 {
				t.Errorf("page %d: the height of the blocks stands at %.1f, the tool at about %.1f", page, high, spindle+5)
			}
		}
	}
	if looked == 0 {
		t.Error("no side view was looked at")
	}
}
