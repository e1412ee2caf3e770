package job

// The run-out of a gear is read on a dial: below 0.003 mm nobody reads it, and
// a gear of these sizes that runs out 0.25 mm does not turn.
var gearShape = record(
	need(key{"name", text(), "name of the mesh", false}),
	need(key{"kind", word("spur", "worm"), "spur or worm", false}),
	key{"wheel_form", word("throated", "helical", "straight", "unknown"), "form of a worm wheel", false},
	key{"module", number(0.1, 2.5), "module in mm, whatever the units of the job", false},
	key{"diametral_pitch", number(10, 250), "teeth per inch of pitch diameter, instead of module", false},
	key{"pressure_angle", number(10, 35), "degrees; of a worm drive the normal one", false},
	key{"shaft_angle", number(30, 150), "degrees between the shafts of a worm drive", false},
	key{"thinned", orZero(length(0.002, 0.6)), "thinning of both gears together", false},
	key{"backlash", pair(orZero(length(0.002, 1.5))), "least and most, circumferential", false},
	need(key{"wheel", record(
		need(key{"on", text(), "the shaft it sits on", false}),
		need(key{"teeth", whole(5, 400), "number of teeth", false}),
		key{"runout", orZero(length(0.003, 0.25)), "total indicator reading", false},
		key{"from_left", eitherSign(length(0.3, 120)), "middle of the face from the outside of the left plate", false},
		key{"face", length(0.5, 12.5), "width of the face", false},
		key{"tip", length(2, 120), "tip diameter as measured", false},
		key{"throat", length(2, 120), "throat diameter as measured", false},
		key{"shift", number(-1.5, 1.5), "profile shift", false},
	), "the wheel on the worn shaft", false}),
	key{"pinion", record(
		key{"on", text(), "shaft of the job that it sits on", false},
		key{"at", point(), "fixed place of its centre", false},
		need(key{"teeth", whole(5, 400), "number of teeth", false}),
		key{"runout", orZero(length(0.003, 0.25)), "total indicator reading", false},
		key{"face", length(0.5, 12.5), "width of the face", false},
		key{"tip", length(1, 120), "tip diameter as measured", false},
		key{"shift", number(-1.5, 1.5), "profile shift", false},
		key{"u", length(0.002, 0.05), "standard uncertainty of its place", false},
		key{"moved", yesNo(), "renewed or moved since the wear was made", false},
	), "pinion that a spur wheel meshes with", false},
	key{"worm", record(
		need(key{"starts", whole(1, 8), "number of starts", false}),
		need(key{"pitch_diameter", length(1.5, 35), "pitch diameter", false}),
		key{"height", place(), "height of its axis above the datum edge", false},
		key{"top", place(), "height of the top of its shaft", false},
		key{"shaft_diameter", length(0.8, 12), "diameter of its shaft, needed with top", false},
		key{"tip", length(1.5, 37), "tip diameter as measured", false},
		key{"hand", word("right", "left"), "hand of the thread", false},
		key{"slope", number(-30, 30), "degrees, rising towards the front", false},
		key{"end_float", orZero(length(0.03, 0.75)), "end float", false},
		key{"offset", eitherSign(length(0.05, 1.25)), "of its axis along the wheel's shaft from the middle of the face", false},
		key{"bearing_play", orZero(length(0.012, 0.3)), "play of its bearings on diameter", false},
		key{"u", length(0.002, 0.05), "standard uncertainty of its place", false},
		key{"moved", yesNo(), "renewed or moved since the wear was made", false},
	), "worm that a worm wheel meshes with", false},
)

func bushSize(lo, hi float64) *shape { return either(length(lo, hi), pair(length(lo, hi))) }

var bushShape = record(
	need(key{"code", text(), "how the shop calls it", false}),
	key{"bore", bushSize(0.8, 14), "nominal, [low, high] or one measured size", false},
	key{"bore_class", text(), "tolerance class of the bore", false},
	key{"od", bushSize(1.2, 25), "nominal, [low, high] or one measured size", false},
	key{"od_class", text(), "tolerance class of the outside", false},
	key{"length", length(0.8, 20), "length with the flange", false},
	key{"flange", record(
		need(key{"od", length(2, 40), "diameter of the flange", false}),
		need(key{"thickness", length(0.25, 5), "thickness of the flange", false}),
	), "flange", false},
	key{"runout", orZero(length(0.003, 0.25)), "total run-out of bore to outside", false},
	need(key{"material", text(), "name or alias of a material", false}),
	key{"price", number(0, 1e6), "price", false},
	key{"on_hand", whole(0, 1e6), "how many are in the drawer", false},
	key{"make", word("turned"), "turned: any size that the lathe can turn", false},
	key{"wall_finish_um", number(0.05, 50), "roughness Rz of the outside, micrometres", false},
)

var madeShape = record(
	key{"seat", length(1, 25), "seat as made", false},
	key{"bore", length(0.8, 16), "bore as made", false},
	key{"centre", point(), "centre as made, in the frame of the left side", false},
	key{"with", text(), "instrument", false},
)
