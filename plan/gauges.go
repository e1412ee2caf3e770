package plan

import (
	"rebush/plan/inspect"
	"rebush/plan/survey"
)

// gaugeOf is the instrument that gauged a thing. A place is read by what can
// read one, whatever gauged the rest. An error says what is wrong with the one
// that was named; the usual one stands in for it.
func gaugeOf(instr *survey.Instruments, with string, what inspect.What) (inspect.Gauge, error) {
	kind := quantity(what)
	r, err := instr.Named(with, kind)
	if err != nil || what == inspect.Place && instr.Known(with) && !instr.CanRead(with, kind) {
		r = instr.Default(kind)
	}
	return inspect.Gauge{BiasMM: r.Bias, UMM: r.U}, err
}

func quantity(what inspect.What) survey.Quantity {
	if what == inspect.Place {
		return survey.Middle
	}
	return survey.Width
}
