package main

import (
	"math"

	"rebush/fits/dim"
)

// answer is what a question of lookup comes to: JSON by its tags, and lines
// for reading.
type answer interface {
	show(p *page, u dim.Units)
}

// ask runs one question and prints its answer.
func ask(e *env, o options, question func(b *books) (answer, error)) error {
	u, err := o.units()
	if err != nil {
		return err
	}
	b, err := openBooks(o)
	if err != nil {
		return err
	}
	a, err := question(b)
	if err != nil {
		return err
	}
	if o.on["json"] {
		return e.json(a)
	}
	p := &page{w: e.out}
	a.show(p, u)
	p.flush()
	return nil
}

func lookupCommand() *command {
	common := []string{"json", "units", "shop"}
	with := func(more ...string) []string { return append(append([]string{}, common...), more...) }
	return &command{
		name: "lookup", args: "WHAT ...", what: "one handbook question, no job file",
		more: "Lengths are typed as at the bench: 3.2, 0.126 in, 1/8 in, 5 thou, 12 um, \"#31\", no 31, F. " +
			"A bare number is mm; under --units in it is inch.",
		examples: []string{`rebush lookup limits "8 H7/p6"`, `rebush lookup drill "#31"`},
		sub: []*command{
			{name: "limits", args: `"SIZE CLASS"`, what: "limits of a class, a fit or an inch fit", flags: common,
				run: lookupLimits,
				more: "ISO 286 classes and fits from 0.5 to 50 mm, a bare grade such as IT7, and the inch fits " +
					"RC1 to RC5, LN1 to LN3 and FN1 to FN4.",
				examples: []string{`rebush lookup limits "8 H7"`, `rebush lookup limits "8 H7/p6"`,
					`rebush lookup limits "0.3125 FN2" --json`}},
			{name: "reamer", args: `"SIZE CLASS"`,
				what:  "limits of the reamer that cuts a hole class, and the drill before it",
				flags: with("hand", "material"), run: lookupReamer,
				more: "An inch size without a class asks for the limits of a stock chucking reamer.",
				examples: []string{`rebush lookup reamer "5 H7"`,
					`rebush lookup reamer "5 H7" --hand --material "brass plate"`, `rebush lookup reamer "1/4 in"`}},
			{name: "drill", args: "TEXT", what: "which drill a name or a size is", flags: with("near", "reamers"),
				run:  lookupDrill,
				more: "A bare whole number may be a number drill or a size; both are named.",
				examples: []string{`rebush lookup drill "#31"`, "rebush lookup drill F", "rebush lookup drill 1/8",
					"rebush lookup drill 3.2 --near"}},
			{name: "speed", args: "MATERIAL OPERATION DIAMETER", what: "speed, feed and force of one cut",
				flags: with("tool", "steps", "depth", "hand", "full-feed"), run: lookupSpeed,
				more: "OPERATION is drill, ream, bore, \"bore finish\", \"end mill\", plunge, countersink, " +
					"counterbore or spot. " +
					"The lowest published figure is used, for work fed by hand; the span of all sources stands " +
					"beside it.",
				examples: []string{`rebush lookup speed "zinc die casting" drill 3.2`,
					`rebush lookup speed brass "end mill" 1/4 --tool carbide --steps 620,1100,1720`}},
			{name: "press", what: "pressure, stress and hold of a press fit", run: lookupPress,
				flags: with("bush-bore", "bush-od", "housing-od", "edge", "length", "interference", "bush", "housing",
					"friction", "warm", "expansion"),
				more: "--edge is the metal left between the seat and a straight edge; with --housing-od too, the " +
					"seat stands off the middle of a round boss. " +
					"Without either the plate has no edge near. Where sources disagree on a metal, stress is worked " +
					"out with the stiffest figure and hold with the softest.",
				examples: []string{`rebush lookup press --bush-bore 4 --bush-od 6 --housing-od 24 --length 4 ` +
					`--interference "12 um" --bush "bearing bronze" --housing "zinc die casting"`,
					`rebush lookup press --bush-bore 4 --bush-od 6 --edge 0.9 --length 3 ` +
						`--interference 0.5thou --bush 100000,0.34 --housing 85500,0.3 --friction 0.1`}},
			{name: "mesh", args: "spur|worm", what: "backlash and centre distance of a gear pair", sub: []*command{
				{name: "spur", what: "two spur gears",
					flags: with("module", "dp", "teeth", "angle", "shift", "thinned", "centre", "backlash", "contact",
						"tips"), run: lookupSpur,
					more: "With --backlash or --contact instead of --centre it answers with the centre distance " +
						"that gives it.",
					examples: []string{"rebush lookup mesh spur --module 0.5 --teeth 12,32 --backlash 0.05",
						"rebush lookup mesh spur --module 0.5 --teeth 12,32 --centre 11.05",
						"rebush lookup mesh spur --dp 48 --teeth 12,36 --centre 0.502in"}},
				{name: "worm", what: "a worm and its wheel",
					flags: with("module", "dp", "starts", "teeth", "worm-diameter", "angle", "centre", "backlash",
						"contact", "wheel-form", "shift", "thinned", "shaft-angle"), run: lookupWorm,
					more: "The module is the wheel's: axial for a throated or helical wheel, normal for a " +
						"straight one.",
					examples: []string{"rebush lookup mesh worm --module 0.5 --starts 1 --teeth 20 " +
						"--worm-diameter 6 --centre 8.02 --wheel-form throated"}},
			}},
			{name: "circle", args: "FILE", what: "the circle through points of a hole",
				flags: with("fit", "journal", "worn-to", "spread"), run: lookupCircle,
				more: "x,y on each line; - is standard input. With --journal and --worn-to the points are of a " +
					"worn bore, and the answer is the circle it had before it wore.",
				examples: []string{"rebush lookup circle testdata/jobs/pellinthwaite-left.csv --fit inscribed"}},
			{name: "material", args: "NAME", what: "every figure known of a material, with its source", flags: common,
				run: lookupMaterial,
				examples: []string{`rebush lookup material "zinc die casting"`,
					`rebush lookup material C93200 --json`}},
		},
	}
}

// gauged is a length in mm that was worked out, with the nine digits that can
// be relied on.
func gauged(mm float64) dim.Gauged { return dim.OfFloat(orNothing(mm)).Gauged() }

// orNothing is 0 for what is left of nothing by arithmetic of sixteen digits: a
// billionth of a mm or of a degree is none.
func orNothing(f float64) float64 {
	if math.Abs(f) < 1e-9 {
		return 0
	}
	return f
}
