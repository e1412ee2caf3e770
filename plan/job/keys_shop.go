package job

// shopShape is every key of a shop file.
var shopShape = record(
	need(key{"rebush_shop", whole(1, Version), "version of the shop file", false}),
	key{"units", word("mm", "in"), "unit of a bare number", false},
	need(key{"machine", record(
		need(key{"kind", word("mill", "drill press", "lathe", "hand"), "what makes the hole", false}),
		key{"readout", yesNo(), "has it a read-out", false},
		key{"approach", record(
			key{"x", word("rising", "falling"), "how the x reading comes to its figure", false},
			key{"y", word("rising", "falling"), "how the y reading comes to its figure", false},
		), "approach that takes out the backlash of the screws", false},
		key{"spindle", either(
			list(1, 60, number(1, 100000), "steps"),
			record(
				need(key{"min", number(1, 100000), "slowest", false}),
				need(key{"max", number(1, 100000), "fastest", false}),
			),
		), "speeds in rev/min, or slowest and fastest", false},
		key{"location", record(
			key{"setup", length(0.001, 0.3), "standard uncertainty of one clamping", false},
			key{"hole", length(0.001, 0.3), "standard uncertainty of one hole", false},
		), "how well it finds a place", false},
		key{"runout", orZero(length(0.003, 0.3)), "run-out of the spindle", false},
		key{"press", force(), "what the press can give", false},
		key{"max_drill", length(2, 50), "largest drill the machine takes", false},
	), "the machine", false}),
	key{"jig", word("none", "pinned"), "drilling jig", false},
	key{"drills", record(
		key{"tool", word("HSS", "cobalt", "carbide"), "what they are made of", false},
		key{"series", list(0, 20, text(), "sets"), "whole sets in the drawer, such as metric 0.1, number or letter A to M", false},
		key{"sizes", list(0, 500, toolShape(0.6, 15), "sizes"), "single drills", false},
	), "drills", false},
	key{"reamers", list(0, 200, toolShape(0.8, 20), "reamers"), "reamers", false},
	key{"end_mills", list(0, 200, toolShape(0.8, 20), "end mills"), "end mills", false},
	key{"boring_head", record(
		need(key{"from", length(2, 50), "smallest bore", false}),
		need(key{"to", length(5, 120), "largest bore", false}),
	), "boring head", false},
	key{"mandrels", list(0, 500, toolShape(0.8, 16), "mandrels"), "for sizing a pressed bush", false},
	key{"pins", record(
		need(key{"from", length(0.2, 5), "smallest", false}),
		need(key{"to", length(1, 25), "largest", false}),
		key{"step", length(0.004, 0.1), "step", false},
		key{"class", word("XX", "X", "Y", "Z", "ZZ"), "class of the set", false},
	), "pin gauges", false},
	key{"lathe", yesNo(), "can the shop turn a bush", false},
	key{"compounds", list(0, 50, text(), "compounds"), "retaining compounds", false},
	key{"instruments", list(0, 100, record(
		need(key{"name", text(), "name", false}),
		need(key{"u", length(0.0004, 1), "standard uncertainty", false}),
		key{"bias", eitherSign(length(0.0012, 0.15)), "reading minus truth", false},
	), "instruments"), "measuring instruments", false},
	key{"friction", record(
		need(key{"low", number(0.01, 1), "for holding", false}),
		need(key{"high", number(0.01, 1), "for pressing", false}),
	), "friction of the seat", false},
	key{"send_out", record(
		need(key{"location", length(0.002, 0.05), "standard uncertainty of the place", false}),
		need(key{"price", number(0, 1e6), "price", false}),
	), "a machinist who would do the holes", false},
	key{"hours", record(
		key{"setup", number(0, 100), "hours for one set-up", false},
		key{"strip_and_rebuild", number(0, 100), "hours to strip and rebuild", false},
	), "hours", false},
	key{"rates", record(
		key{"currency", text(), "currency", false},
		key{"per_hour", number(0, 1e6), "price of an hour", false},
	), "rates", false},
	key{"rules", named(either(number(0, 0), pair(number(0, 0)))), "rows of the table of rules", false},
	key{"tables", named(text()), "the shop's own file in the place of a built-in table", false},
	key{"paper", word("A4", "Letter"), "paper", false},
)

// toolShape is a tool: its size alone, or with what is known of it.
func toolShape(lo, hi float64) *shape {
	return either(length(lo, hi), record(
		need(key{"size", length(lo, hi), "nominal size", false}),
		key{"class", text(), "hole class that a reamer cuts", false},
		key{"limits", pair(length(lo, hi)), "measured limits", false},
		key{"reach", length(3, 75), "how far it reaches", false},
		key{"shank", length(0.8, 20), "diameter of the shank", false},
		key{"for", length(0.8, 20), "the reamer that it goes before", false},
	))
}
