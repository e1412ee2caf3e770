package sheets

import (
	"rebush/plan/job"
	"rebush/sheets/draw"
)

// FormExample makes the worked example of the measuring form: filled boxes, of a
// truck that is invented. It is printed once.
func FormExample(o Options) (*draw.Document, error) {
	f, err := newForm(nil, o, "Measuring form, worked example")
	if err != nil {
		return nil, err
	}
	f.example = true
	f.st.blank = min(f.st.blank, 7.4) // nothing is written into it by hand
	f.answer = job.Example()
	b := f.block()
	b.Bookmark("Worked example", 0, 0)
	b.para("Worked example", draw.Bold, b.st.figure)
	b.y -= 1
	b.para("An invented truck, one axle worn upwards. Only boxes that were filled in are shown, by their numbers on the "+
		"blank form. What was not measured is left open.", draw.Regular, b.st.body)
	f.add(b)
	f.filled("", "job")
	f.filled("Before it was taken apart", "running", "look-alikes")
	f.filled("The plates", "plates")
	f.filled("Shaft", "shaft")
	f.hole(job.Left, answered(f.of("bore", "left")))
	f.titled("Right hole")
	f.rows(5, answered(f.of("bore", "right")))
	f.filled("Gear", "gear", "pinion")
	f.filled("Bush in the drawer", "bush")
	f.filled("What else could be done, and the shop", "owner", "shop")
	return f.finish()
}

// filled places the boxes of parts that the example fills in.
func (f *form) filled(title string, parts ...string) {
	var list []cell
	for _, part := range parts {
		list = append(list, answered(f.of(part, ""))...)
	}
	if title != "" {
		f.titled(title)
	}
	f.rows(5, list)
}

func answered(list []cell) []cell {
	var out []cell
	for _, c := range list {
		if c.value != "" {
			out = append(out, c)
		}
	}
	return out
}
