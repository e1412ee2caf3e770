package job

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"rebush/fits/table"
)

// checkSmall refuses holes that are read smaller than the journal that turns in
// them, by more than the bias that their instrument is said to have and twice what
// both readings are in doubt by.
func checkSmall(r *reader, j *Job, root *value, s *Shop) {
	kinds, err := table.ReadInstruments(s.Tables)
	if err != nil {
		return // the table is refused elsewhere
	}
	for i, v := range root.get("shafts").items() {
		if i >= len(j.Shafts) {
			return
		}
		shaft := &j.Shafts[i]
		for k := range shaft.Bores {
			b := &shaft.Bores[k]
			journal := shaft.Journal.On(b.Side)
			if !journal.Given() {
				continue
			}
			at := v.get("bores").get(string(b.Side))
			f := journal.Float()
			why := fmt.Sprintf("the %s journal of %s", b.Side, r.show(f))
			u := s.Rules.V("u_journal_mm")
			between(r, at.get("narrowest"), b.Narrowest, f-s.below(kinds, b, "narrowest", u), f+0.8, why)
			between(r, at.get("widest"), b.Widest, f-s.below(kinds, b, "widest", u), f+mostWear, why)
		}
	}
}

// below is how far under its journal a diameter of a hole may honestly be read, mm:
// the bias of the instrument that is named and twice the doubt of both; of none
// named, of the worst that the shop has for a width.
func (s *Shop) below(kinds table.InstrumentKinds, b *Bore, figure string, uJournal float64) float64 {
	name := b.With[figure]
	if name == "" {
		name = b.With["all"]
	}
	u, bias := 0.0, 0.0
	for _, in := range s.Instruments {
		k := kinds.Of(in.Name)
		switch {
		case name != "" && strings.EqualFold(in.Name, name):
			u, bias = in.U.Float(), math.Max(0, -in.Bias.Float())
		case name == "" && k != nil && slices.Contains(k.Reads, "width"):
			u = math.Max(u, in.U.Float())
		}
	}
	if k := kinds.Of(name); u == 0 && name != "" && k != nil {
		u = k.U
	}
	if k := kinds.Default("width"); u == 0 && k != nil {
		u = k.U
	}
	return math.Max(leastBelow, bias+2*math.Hypot(u, uJournal))
}
