package main

import "rebush/sheets"

// showEvening is the first evening on the screen.
func showEvening(e *env) error {
	p := &page{w: e.out}
	p.prose("", 90, sheets.EveningLead)
	p.line("")
	for i, s := range sheets.EveningSteps() {
		p.line("%d  %s", i+1, s.Name)
		p.prose("   ", 90, s.Do)
	}
	p.line("")
	p.prose("", 90, sheets.EveningEnd)
	return nil
}

// eveningPage is the same as a page to be printed.
func eveningPage(e *env, o options) error {
	po, err := o.paperOptions()
	if err != nil {
		return err
	}
	to, err := o.paths(e, []string{"evening"}, "")
	if err != nil {
		return err
	}
	doc, err := sheets.Evening(po)
	if err != nil {
		return err
	}
	return e.deliver(o, doc, to["evening"])
}
