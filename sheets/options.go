// Package sheets makes paper of a plan: the setup sheet that is taken to the
// machine, the measuring form, the verdict page, the rework sheet, the 1:1
// template and the batch traveller. It decides what stands where, in
// millimetres; it computes nothing of the plan. Package draw records and
// writes.
package sheets

import (
	"fmt"
	"strings"
	"time"

	"rebush/plan/job"
	"rebush/sheets/draw"
)

// Options are what a person chooses of the paper.
type Options struct {
	Paper   string // "A4" or "Letter"; "" is the shop's, or A4
	Large   bool   // larger type
	Sources bool   // the setup sheet says where its numbers come from
	Units   string // "mm", "in" or "both"; "" is those of the job
	Date    string // YYYY-MM-DD; "" is the job's, or a blank to fill in
}

// style is the few sizes of type, in points, and the measures in mm that go
// with them: small for names and sources, body for words, figure for the tool
// and the steps to set, big for dials and limits.
type style struct {
	small, body, figure, big, title float64
	mind                            float64 // what to mind beside a row; 0 is body
	closer                          float64 // share that lines stand closer than usual
	tick                            float64 // side of a tick box
	blank                           float64 // height of a line to write on
	picture                         float64 // side of the small drawing of a hole
	large                           bool
}

var (
	normal = style{small: 10, body: 12, figure: 18, big: 22, title: 24, tick: 6.5, blank: 8.5, picture: 32}
	large  = style{small: 14, body: 18, figure: 24, big: 28, title: 30, tick: 8, blank: 11, picture: 40, large: true}
)

// aside is the size of what to mind.
func (s style) aside() float64 {
	if s.mind > 0 {
		return s.mind
	}
	return s.body
}

// close says whether lines stand closer than usual, to come within the pages.
func (s style) close() bool { return s.closer > 0 }

// lead is the distance of the base lines of a size of type in mm.
func lead(pt float64) float64 { return 1.17 * pt * draw.MMPerPt }

// em is the height of a line of type in mm, from the top of its capitals to
// the foot of its tails.
func em(pt float64) float64 { return (draw.Rise + draw.Drop) * pt * draw.MMPerPt }

func (o Options) paper(shop *job.Shop) (draw.Paper, error) {
	name := o.Paper
	if name == "" && shop != nil {
		name = shop.Paper
	}
	switch strings.ToLower(name) {
	case "", "a4":
		return draw.A4, nil
	case "letter":
		return draw.Letter, nil
	}
	return draw.Paper{}, fmt.Errorf("paper %q; there are A4 and Letter", name)
}

func (o Options) units(j *job.Job) (units, error) {
	switch o.Units {
	case "mm", "in", "both":
		return units(o.Units), nil
	case "":
		if j != nil && j.Units != 0 {
			return "in", nil
		}
		return "mm", nil
	}
	return "", fmt.Errorf("units %q; there are mm, in and both", o.Units)
}

func (o Options) day(j *job.Job) (string, time.Time, error) {
	day := o.Date
	if day == "" && j != nil {
		day = j.Date
	}
	if day == "" {
		return "", time.Time{}, nil
	}
	t, err := time.Parse("2006-01-02", day)
	if err != nil {
		return "", time.Time{}, fmt.Errorf("date %q; a date is written 2026-11-25", day)
	}
	return day, t, nil
}

// The setup sheet has few sizes of its own: it is read at arm's length, and a
// card has to hold what is done in one clamping.
var (
	sheetNormal = style{small: 10, mind: 11, body: 12, figure: 15, big: 24, title: 22, tick: 6.5, blank: 8.5,
		picture: 32}
	sheetLarge = style{small: 12, mind: 13.5, body: 15, figure: 18, big: 28, title: 26, tick: 8, blank: 10, picture: 36}
)
