package job

import (
	"fmt"
	"strings"
)

// draft is a job file to be written: every field as it was typed, "" where it
// is left out.
type draft struct {
	number, title, units, material, condition, left, right string
	length, height, width, rails, current, shop            string
	value, rate                                            string
	keep                                                   bool // the original
	base                                                   draftBase
	shafts                                                 []draftShaft
	gear                                                   *draftGear
	bushes                                                 []draftBush
	turns                                                  bool      // a bush can be turned
	complaint                                              [3]string // binds, noisy, rubs
	symptoms                                               [4]string // as symptomKeys
	price, swapHours, second                               string    // of another truck
}

type draftBase struct{ found, from, to, sister string }

type draftBush struct{ code, bore, boreClass, od, odClass, length, flange, thick, material, onHand, price string }

type draftShaft struct {
	name, leave, hubs, insulated string
	state, wheels, back, load    string
	speed, washers               string
	journal, pass                [2]string
	bores                        [2]draftBore
}

type draftBore struct {
	centre, widest, narrowest, at, metal, metalAt string
	goes, stops, oilAt, oil, with, bushed         string
}

type draftGear struct {
	kind, on, module, angle, teeth, tip, runout, face, fromLeft string
	form, starts, pitch, height                                 string // of a worm
	pinionTeeth, at                                             string
	mateTip                                                     string // of worm or pinion
	moved                                                       bool   // worm or pinion, since the wear
}

// quoted is a scalar that YAML reads back as it stands.
func quoted(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if s == "" || plainNumber.MatchString(s) && !strings.Contains(s, ",") {
		return s
	}
	return "'" + strings.ReplaceAll(s, "'", "''") + "'"
}

// parts takes apart figures that were typed one behind the other. A lone comma
// between two of them parts them; otherwise commas are decimal.
func parts(s string) []string {
	f := strings.Fields(strings.NewReplacer(";", " ", "[", " ", "]", " ", ", ", " ").Replace(s))
	if len(f) == 1 && strings.Count(f[0], ",") == 1 {
		f = strings.Split(f[0], ",")
	}
	return f
}

// twoFigures are two plain numbers with decimal points, nil where s holds
// anything else.
func twoFigures(s string) []string {
	f := parts(s)
	if len(f) != 2 {
		return nil
	}
	for i := range f {
		if !plainNumber.MatchString(f[i]) {
			return nil
		}
		f[i] = strings.Replace(f[i], ",", ".", 1)
	}
	return f
}

// xy writes two figures as a point.
func xy(s string) string {
	f := parts(s)
	for i := range f {
		f[i] = quoted(f[i])
	}
	return "[" + strings.Join(f, ", ") + "]"
}

// blank asks for a value that is not known yet: the reader names the line.
func blank(s, what string) string {
	if s == "" {
		return " # " + what
	}
	return " " + quoted(s)
}

func (d *draft) yaml() []byte {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("# A job for rebush. A truck is a bogie, a bush a bushing. Lengths may carry")
	line("# their own unit: 3.16, 0.126 in, 1/8 in, 5 thou, \"#31\" (in quotes).")
	line("rebush: 1")
	if d.number != "" {
		line("job: %s", quoted(d.number))
	}
	line("title:%s", blank(d.title, "what is on the bench"))
	line("units: %s                    # of figures without a unit: mm or in", d.units)
	if d.shop != "" {
		line("shop: %s", quoted(d.shop))
	} else {
		line("# shop: shop.yaml            # your own shop; without it the built-in small shop")
		if d.rate != "" {
			line("# an hour costs %s: the shop file says so, under rates, as per_hour", quoted(d.rate))
		}
	}
	line("datum: lower left corner of the left plate, long edge is x")
	line("chassis:")
	line("  material:%s", blank(d.material, "such as zinc die casting; `rebush tables materials` lists them"))
	line("  condition: %s            # sound, cracked, swollen or unknown", d.condition)
	line("  rails: %s                # which way the rails lie as measured", d.rails)
	line("  plates:")
	line("    left: {thickness: %s}", orHash(d.left))
	line("    right: {thickness: %s}", orHash(d.right))
	line("  outline: {length: %s, height: %s}", orHash(d.length), orHash(d.height))
	line("  width:%s", blank(d.width, "outside face to outside face"))
	line("  current: %s               # axles: current passes through the bearings", d.current)
	if d.keep {
		line("  original: keep              # another truck is not wanted")
	}
	if d.base.found != "" {
		line("  wheelbase: {between: [%s, %s], found: %s%s}", quoted(d.base.from), quoted(d.base.to),
			quoted(d.base.found), more("sister", d.base.sister))
	}
	line("shafts:")
	for _, s := range d.shafts {
		s.write(line)
	}
	if d.gear != nil {
		d.gear.write(line)
	}
	d.writeBushes(line)
	d.writeOwner(line)
	return []byte(b.String())
}

// orHash keeps a record in braces whole where a value is missing.
func orHash(s string) string {
	if s == "" {
		return "null"
	}
	return quoted(s)
}

func (s draftShaft) write(line func(string, ...any)) {
	line("  - name: %s", quoted(s.name))
	if b, ok := boolWord(s.leave); ok && b == "yes" {
		line("    do: leave                # is not touched; its place binds the rest")
	}
	if s.journal[0] == s.journal[1] && s.journal[0] != "" {
		line("    journal: %s", quoted(s.journal[0]))
	} else {
		var ends []string
		for i, j := range s.journal {
			if j != "" || s.bores[i] != (draftBore{}) {
				ends = append(ends, fmt.Sprintf("%s: %s", Sides[i], orHash(j)))
			}
		}
		line("    journal: {%s}", strings.Join(ends, ", "))
	}
	var pass []string
	for i, p := range s.pass {
		if p != "" {
			pass = append(pass, fmt.Sprintf("%s: %s", Sides[i], quoted(p)))
		}
	}
	if len(pass) > 0 {
		line("    must_pass: {%s}          # largest diameter that goes through that end on assembly",
			strings.Join(pass, ", "))
	}
	if s.insulated != "" {
		line("    insulated: %s", strings.ToLower(s.insulated))
	}
	for _, k := range [][2]string{{"hub_to_hub", s.hubs}, {"journal_state", strings.ToLower(s.state)}, {"wheel_diameter", s.wheels},
		{"back_to_back", s.back}, {"load", s.load}, {"rpm", s.speed}} {
		if k[1] != "" {
			line("    %s: %s", k[0], quoted(k[1]))
		}
	}
	if s.washers != "" {
		line("    washers: %s", xy(s.washers))
	}
	line("    bores:")
	for i, b := range s.bores {
		if b == (draftBore{}) {
			continue
		}
		line("      %s:", Sides[i])
		if b.centre != "" {
			line("        centre: %s         # middle of the hole as found", xy(b.centre))
		}
		for _, k := range [][2]string{{"widest", b.widest}, {"narrowest", b.narrowest}, {"widest_at", b.at},
			{"worn_to", b.at}} {
			if k[1] != "" {
				line("        %s: %s", k[0], quoted(k[1]))
			}
		}
		if b.metal != "" {
			line("        edges: [{at: %s, metal: %s}]   # from the wall of the hole to the nearest free edge",
				orAngle(b.metalAt), quoted(b.metal))
		}
		b.writeMore(line)
	}
}

// writeMore writes what is not asked of every hole.
func (b draftBore) writeMore(line func(string, ...any)) {
	if b.goes != "" {
		line("        pins: {goes: %s%s}", quoted(b.goes), more("stops", b.stops))
	}
	if b.oil != "" {
		line("        oil: {at: %s, diameter: %s}", quoted(b.oilAt), quoted(b.oil))
	}
	if b.with != "" {
		line("        with: {widest: %s, narrowest: %s}", quoted(b.with), quoted(b.with))
	}
	if b.bushed != "" {
		line("        bushed: yes            # an old bush is still in it")
	}
}

// more is a further key of a record in braces, "" where it has no value.
func more(key, value string) string {
	if value == "" {
		return ""
	}
	return ", " + key + ": " + quoted(value)
}

func orAngle(s string) string {
	if s == "" {
		return "270"
	}
	return quoted(s)
}

func (g *draftGear) write(line func(string, ...any)) {
	line("gears:")
	line("  - name: drive")
	line("    kind: %s", g.kind)
	if g.form != "" {
		line("    wheel_form: %s", strings.ToLower(g.form))
	}
	line("    module: %s              # in mm; or diametral_pitch: 48", quoted(g.module))
	angle := g.angle
	if angle == "" {
		angle = "20"
	}
	line("    pressure_angle: %s", quoted(angle))
	line("    wheel: {on: %s, teeth: %s%s%s%s%s}", quoted(g.on), g.teeth, more("tip", g.tip), more("runout", g.runout),
		more("face", g.face), more("from_left", g.fromLeft))
	mate := more("tip", g.mateTip)
	if g.moved {
		mate += ", moved: yes"
	}
	if g.kind == "worm" {
		line("    worm: {starts: %s%s, height: %s%s}", g.starts, more("pitch_diameter", g.pitch), quoted(g.height), mate)
		return
	}
	line("    pinion: {at: %s, teeth: %s%s}", xy(g.at), g.pinionTeeth, mate)
}
