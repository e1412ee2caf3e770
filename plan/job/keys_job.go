package job

// Version is the version of job and shop files that this program writes. Older
// ones are read; newer ones are named and refused.
const Version = 1

// The ranges of lengths in these tables are in mm and say what is plausible on
// a table-top motor truck: common practice, no source. They are there to catch
// an inch figure typed as mm and the reverse, so most span less than 25.4-fold.

// finishWords are what `finish:` may say: auto leaves it to the plan.
var finishWords = []string{"auto", "as delivered", "mandrel", "ream", "bore", "to its own axle"}

// jobShape is every key of a job file.
var jobShape = record(
	need(key{"rebush", whole(1, Version), "version of the job file", false}),
	key{"job", text(), "the shop's own number", false},
	key{"title", text(), "what is on the bench", false},
	key{"date", date(), "date printed on the sheet; left out: a blank", false},
	key{"units", word("mm", "in"), "unit of a bare number", false},
	key{"shop", text(), "shop file beside the job; without it the built-in small shop", false},
	key{"datum", text(), "what the figures are measured from", false},
	need(key{"chassis", chassisShape, "the casting or the pair of plates", false}),
	need(key{"shafts", list(1, 0, shaftShape, "shafts"), "axles and idler shafts", false}),
	key{"gears", list(0, 0, gearShape, "gears"), "meshes", false},
	key{"bushes", list(0, 0, bushShape, "bushes"), "bushes on the shelf", false},
	key{"choose", either(text(), named(text())), "auto, a bush code, or a code per bore", false},
	key{"finish", either(word(finishWords...), named(word(finishWords...))), "how the bore comes to its size, of all bores or per bore", false},
	key{"accept", list(1, 0, text(), "rules"), "stops that this job takes upon itself; `rebush tables stops` lists those that may be", false},
	key{"made", named(madeShape), "sizes as made, by bore, for inspection", false},
	key{"complaint", record(
		key{"binds", yesNo(), "does it bind", false},
		key{"noisy", yesNo(), "is it noisy", false},
		key{"rubs", yesNo(), "does a wheel or hub rub", false},
	), "what the owner says", false},
	key{"symptoms", record(
		key{"rims", word("tight", "loose", "unknown"), "rims on their insulators", false},
		key{"hubs", word("tight", "loose", "unknown"), "hubs on the axle", false},
		key{"gauge", word("correct", "wide", "narrow", "unknown"), "wheels back to back", false},
		key{"ohms", word("open", "leaking", "shorted", "unknown"), "insulated wheel to axle", false},
	), "faults that feel like a worn hole and are not", false},
	key{"swap", record(
		need(key{"price", number(0, 1e7), "price of another truck", false}),
		key{"hours", number(0, 1000), "time to fit it", false},
		key{"second_hand", yesNo(), "is it second-hand", false},
		key{"chance", number(0, 1), "chance that it is sound", false},
	), "another truck that could be had", false},
	key{"value", number(0, 1e8), "value of the truck", false},
)

var chassisShape = record(
	need(key{"material", text(), "name or alias of a material", false}),
	key{"condition", word("sound", "cracked", "swollen", "unknown"), "state of the casting", false},
	key{"rails", word("below", "above"), "which side of the datum edge the rails lie as measured", false},
	need(key{"plates", record(
		need(key{"left", plateShape, "left plate", false}),
		need(key{"right", plateShape, "right plate", false}),
	), "the two plates or walls", false}),
	need(key{"outline", record(
		key{"length", length(12, 250), "along the truck", false},
		key{"height", length(6, 140), "up from the datum edge", false},
		key{"corners", list(3, 200, point(), "corners"), "corners of the plate in order", false},
	), "outline of the plate", false}),
	need(key{"width", length(4, 90), "outside face to outside face", false}),
	key{"current", word("axles", "none"), "does current pass through these bearings", false},
	key{"drilled_together", word("yes", "no", "unknown"), "were both plates drilled together", false},
	key{"features", list(0, 0, featureShape, "features"), "unworn holes", false},
	key{"original", word("keep", "swap"), "keep: another truck is not wanted", false},
	key{"temperature", pair(number(-40, 150)), "coldest and hottest in use, degrees C", false},
	key{"wheelbase", record(
		need(key{"between", list(2, 2, text(), "two shafts"), "the two shafts", false}),
		key{"found", length(10, 250), "as measured here", false},
		key{"sister", length(10, 250), "on a sound sister chassis", false},
	), "distance of two shafts", false},
)

var plateShape = record(need(key{"thickness", length(0.5, 12), "thickness of the plate or wall", false}))

var featureShape = record(
	need(key{"name", text(), "name of the hole", false}),
	key{"plate", word("left", "right"), "which plate it is in", false},
	need(key{"at", point(), "centre as found", false}),
	key{"diameter", length(0.8, 20), "diameter", false},
	key{"design", point(), "centre by the drawing", false},
	key{"sister", point(), "centre on a sound sister", false},
)

var shaftShape = record(
	need(key{"name", text(), "name of the shaft", false}),
	key{"do", word("auto", "leave"), "leave: it is not touched", false},
	need(key{"journal", ends(0.8, 12), "diameter where it runs", false}),
	key{"must_pass", ends(0.8, 14), "largest diameter that goes through that end on assembly", false},
	key{"unworn", ends(0.8, 14), "diameter beside the worn run", false},
	key{"material", text(), "material of the shaft", false},
	key{"journal_state", word("good", "ridged", "pitted", "out of round", "bent"), "state of the journals", false},
	key{"insulated", word("left", "right", "none"), "side of the insulated wheel", false},
	key{"rpm", number(0, 60000), "turns per minute in use", false},
	key{"load", force(), "load on the shaft", false},
	key{"pull", force(), "pull at the rims", false},
	key{"contacts_apart", length(6, 150), "distance of the rails where the wheels touch", false},
	key{"wheel_diameter", length(4, 80), "diameter of the wheels at the tread", false},
	key{"hub_to_hub", length(5, 120), "distance between the wheel hubs", false},
	key{"back_to_back", length(5, 120), "back to back of the wheels", false},
	key{"washers", list(0, 20, length(0.05, 1.25), "thicknesses"), "washers on the shaft, both sides together", false},
	key{"load_towards", degrees(), "direction in which the shaft is pressed in its bores", false},
	key{"design", point(), "centre by the drawing", false},
	key{"sister", point(), "centre on a sound sister", false},
	key{"rods", yesNo(), "is it coupled by rods", false},
	need(key{"bores", record(
		key{"left", boreShape, "bore in the left plate", false},
		key{"right", boreShape, "bore in the right plate", false},
	), "the holes it runs in", false}),
)

var boreShape = record(
	key{"seen_from", word("left", "right"), "side that these figures were measured from", false},
	key{"centre", point(), "middle of the hole as found", false},
	key{"widest", length(0.8, 16), "largest diameter", false},
	key{"narrowest", length(0.8, 16), "smallest diameter", false},
	key{"widest_at", degrees(), "direction of the largest diameter", false},
	key{"worn_to", either(degrees(), list(1, 2, degrees(), "directions")), "direction in which the hole is worn", false},
	key{"probed", either(
		list(3, 2000, point(), "points"),
		record(
			need(key{"file", text(), "CSV file of points beside the job", false}),
			key{"stylus", orZero(length(0.3, 7)), "ball diameter to correct for", false},
		),
	), "points on the wall", false},
	key{"seat", record(
		need(key{"diameter", length(1, 20), "diameter of the old seat", false}),
		need(key{"centre", point(), "centre of the old seat", false}),
		key{"sound", yesNo(), "is the seat sound", false},
	), "seat of the old bush, when the bush is out", false},
	key{"bushed", yesNo(), "is an old bush still in", false},
	key{"repaired", yesNo(), "an earlier repair whose place is not trusted", false},
	key{"with", named(text()), "which instrument read what", false},
	key{"edges", list(0, 36, record(
		need(key{"at", degrees(), "direction", false}),
		key{"metal", length(0.3, 60), "from the wall of the hole to the nearest free edge", false},
		key{"away", length(0.8, 70), "from the centre of the hole to the nearest free edge", false},
	), "edges"), "metal left to edge", false},
	key{"boss", length(2, 40), "outside diameter of a round boss", false},
	key{"room", record(
		key{"inside", length(2, 45), "room for a flange inside, diameter", false},
		key{"outside", length(2, 45), "room for a flange outside, diameter", false},
	), "room for a flange", false},
	key{"pins", record(
		key{"goes", length(0.8, 16), "largest pin that enters", false},
		key{"stops", length(0.8, 16), "next pin, which does not", false},
	), "pins tried in the hole", false},
	key{"walls", record(
		need(key{"left", place(), "x of the left wall", false}),
		need(key{"right", place(), "x of the right wall", false}),
		need(key{"bottom", place(), "y of the bottom wall", false}),
		need(key{"top", place(), "y of the top wall", false}),
	), "positions of the four walls", false},
	key{"spans", list(0, 20, record(
		need(key{"to", text(), "the other bore or feature", false}),
		need(key{"inside", length(3, 250), "inside edges apart", false}),
		need(key{"outside", length(3, 250), "outside edges apart", false}),
	), "spans"), "centre distances by inside and outside edges", false},
	key{"hold", word("press", "cap").once("strap", "cap"), "how the bearing is held: pressed in, or laid in under a cap", false},
	key{"lift", length(0.02, 0.5), "play felt with an indicator", false},
	key{"oil", record(
		key{"at", degrees(), "direction of the oil hole", false},
		need(key{"diameter", length(0.3, 4), "diameter of the oil hole", false}),
	), "oil hole into the bore", false},
)
