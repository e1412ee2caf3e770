package main

import (
	"slices"

	"rebush/fits/spelling"
)

// flagDef is one option. An option means the same in every command that
// takes it.
type flagDef struct {
	name, short string
	value       string // what stands behind it, "" for none
	what        string
}

// flagDefs are all the options there are.
var flagDefs = []flagDef{
	{"json", "", "", "answer as JSON"},
	{"shop", "", "FILE", "a shop file that stands before the job's own"},
	{"units", "", "mm|in|both", "units that lengths are printed in"},
	{"paper", "", "A4|Letter", "size of the paper"},
	{"large", "", "", "large type"},
	{"sources", "", "", "the setup sheet says where its numbers come from"},
	{"date", "", "YYYY-MM-DD", "date on the paper; without one it has a blank to fill in"},
	{"seed", "", "N", "start of the random numbers of the chance (1)"},
	{"trials", "", "N", "trials of the chance (20000)"},
	{"way", "", "NAME", "the way that is planned, in the place of the advised one: leave, shim, renew, re-bush, " +
		"made to fit, bush in a bush, plug, new axle too, swap"},
	{"output", "o", "FILE|DIR", "where the paper goes; - is standard output"},
	{"force", "", "", "replace a file that is not named .pdf; one that was read never is"},
	{"example", "", "", "a page that is filled in, of an invented truck, instead of the blank form"},
	{"like", "", "PATTERN", "the file that gives what every truck of the kind shares"},
	{"from", "", "CSV", "points or readings to start from"},
	{"hand", "", "", "reamed or fed by hand"},
	{"material", "", "MATERIAL", "the metal that is cut"},
	{"near", "", "", "the next smaller and larger size of every series too"},
	{"reamers", "", "", "the series of reamers instead of drills"},
	{"tool", "", "hss|cobalt|carbide", "what the tool is made of (hss)"},
	{"steps", "", "620,1100,...", "speeds that the spindle has, rev/min"},
	{"depth", "", "LENGTH", "how deep the hole is"},
	{"full-feed", "", "", "power feed, at the full feed of the handbook"},
	{"bush-bore", "", "LENGTH", "bore of the bush, 0 for a solid pin"},
	{"bush-od", "", "LENGTH", "outside of the bush"},
	{"housing-od", "", "LENGTH", "outside of the ring or boss round the seat"},
	{"edge", "", "LENGTH", "metal left between the seat and the nearest free edge"},
	{"length", "", "LENGTH", "length of the seat"},
	{"interference", "", "LENGTH", "interference, bush over seat on diameter: 12 um, 0.012, 0.5 thou"},
	{"bush", "", "MATERIAL", "metal of the bush, or E,nu[,yield] in MPa"},
	{"housing", "", "MATERIAL", "metal round the seat, or E,nu[,yield] in MPa"},
	{"friction", "", "MU", "friction in the seat"},
	{"warm", "", "C", "the fit at this temperature too"},
	{"expansion", "", "BUSH,HOUSING", "thermal expansion of bush and housing in 1e-6/K"},
	{"module", "", "MM", "module of the wheel"},
	{"dp", "", "P", "diametral pitch instead of the module"},
	{"teeth", "", "N[,N]", "tooth counts: both gears of a spur pair, the wheel of a worm"},
	{"angle", "", "DEG", "pressure angle (20)"},
	{"shift", "", "X[,X]", "profile shift factors (0)"},
	{"thinned", "", "LENGTH", "tooth thinning of both gears together (0)"},
	{"centre", "", "LENGTH", "centre distance; without one the standard one"},
	{"backlash", "", "LENGTH", "instead of a centre distance: the one that gives this backlash along the pitch circle"},
	{"contact", "", "RATIO", "instead of a centre distance: the one that gives this contact ratio"},
	{"tips", "", "LENGTH,LENGTH", "measured tip diameters"},
	{"starts", "", "N", "starts of the worm (1)"},
	{"worm-diameter", "", "LENGTH", "pitch diameter of the worm"},
	{"wheel-form", "", "throated|helical|straight", "form of the wheel; look at it"},
	{"shaft-angle", "", "DEG", "angle of the shafts (90)"},
	{"fit", "", "least|taubin|pratt|kasa|zone|inscribed|circumscribed", "which circle (least)"},
	{"journal", "", "LENGTH", "diameter of the journal that wore the bore"},
	{"worn-to", "", "DEG", "side the bore has worn to, anticlockwise from +x"},
	{"spread", "", "LENGTH", "how well one point is known, one standard deviation"},
	{"help", "h", "", "what the command does"},
	{"version", "v", "", "the version"},
}

func flagNamed(name string) (flagDef, bool) {
	i := slices.IndexFunc(flagDefs, func(f flagDef) bool { return f.name == name || f.short != "" && f.short == name })
	if i < 0 {
		return flagDef{}, false
	}
	return flagDefs[i], true
}

// dashed is an option as it is typed.
func (f flagDef) dashed() string {
	if f.short != "" && f.name == "output" {
		return "-" + f.short
	}
	return "--" + f.name
}

func nearestFlag(name string) string {
	var all []string
	for _, f := range flagDefs {
		all = append(all, f.name)
	}
	f, _ := flagNamed(spelling.Nearest(name, all))
	return f.dashed()
}
