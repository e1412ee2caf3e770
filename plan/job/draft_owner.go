package job

import (
	"fmt"
	"strings"
)

// writeBushes writes the drawer. Where nothing is known of it the turned bush
// stands there as an example of how one is written.
func (d *draft) writeBushes(line func(string, ...any)) {
	line("bushes:")
	if len(d.bushes) > 0 {
		line("  # a size with a class is that of a catalogue; one without is as measured")
	}
	for _, b := range d.bushes {
		flange := ""
		if b.flange != "" {
			flange = fmt.Sprintf("flange: {od: %s, thickness: %s}, ", quoted(b.flange), quoted(b.thick))
		}
		line("  - {code: %s, bore: %s%s, od: %s%s, length: %s, %smaterial: %s%s}", quoted(b.code), quoted(b.bore),
			more("bore_class", b.boreClass), quoted(b.od), more("od_class", b.odClass), quoted(b.length), flange,
			quoted(b.material), more("price", b.price)+more("on_hand", b.onHand))
	}
	if d.turns || len(d.bushes) == 0 {
		line("  - {code: own turning, make: turned, material: bearing bronze C93200}   # needs lathe: yes in the " +
			"shop file")
	}
}

// writeOwner writes what was said of the complaint, of the faults that feel
// like a worn hole, and of another truck.
func (d *draft) writeOwner(line func(string, ...any)) {
	pairs := func(names []string, values []string) string {
		var out []string
		for i, v := range values {
			if v != "" {
				out = append(out, names[i]+": "+strings.ToLower(v))
			}
		}
		return strings.Join(out, ", ")
	}
	if s := pairs([]string{"binds", "noisy", "rubs"}, d.complaint[:]); s != "" {
		line("complaint: {%s}", s)
	} else {
		line("# complaint: {binds: yes, noisy: no, rubs: no}")
	}
	if s := pairs(symptomKeys[:], d.symptoms[:]); s != "" {
		line("symptoms: {%s}", s)
	} else {
		line("# symptoms: {rims: tight, hubs: tight, gauge: correct, ohms: open}   # each feels like a worn hole " +
			"when it is not so")
	}
	if d.value != "" {
		line("value: %s                    # of the truck", quoted(d.value))
	}
	if d.price != "" {
		line("swap: {price: %s, hours: %s, second_hand: %s}   # another truck", quoted(d.price), quoted(d.swapHours),
			strings.ToLower(d.second))
	}
}
