package job

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strings"

	"gopkg.in/yaml.v3"

	"rebush/fits/dim"
)

// ErrStopped says that the answers ended before the questions did.
var ErrStopped = errors.New("the answers ended before the questions did; no job file was made")

// asker puts questions and holds each answer against the shape of its key.
type asker struct {
	in    *bufio.Reader
	out   io.Writer
	units dim.Unit
	ended bool
}

// Ask puts plain questions to out, reads the answers from in, one a line, and
// answers with a commented job file. An empty answer takes what stands in
// brackets, or leaves the key out. An answer that cannot be is asked again. What
// does not go together in the end is said on out, by line of the new file.
func Ask(in io.Reader, out io.Writer) ([]byte, error) {
	a := &asker{in: bufio.NewReader(in), out: out}
	fmt.Fprintln(out, "A few questions about the truck (a truck is a bogie, a bush a bushing).")
	fmt.Fprintln(out, "Enter alone takes what stands in [brackets]. All is seen from the left side.")
	d := &draft{}
	d.title = a.ask("What is on the bench?", keyShape("title"), "motor truck")
	d.units = strings.ToLower(a.ask("Do your figures come in mm or in inches (mm, in)?", keyShape("units"), "mm"))
	if d.units == "in" {
		a.units = dim.Inch
	}
	d.material = a.ask("What are the plates or the casting made of?", keyShape("chassis/material"), "zinc die casting")
	d.condition = a.ask("Is it sound, cracked, swollen or unknown?", keyShape("chassis/condition"), "unknown")
	d.left = a.ask("How thick is the left plate or wall?", keyShape("chassis/plates/left/thickness"), need1)
	d.right = a.ask("And the right one?", keyShape("chassis/plates/right/thickness"), d.left)
	d.length = a.ask("How long is a plate?", keyShape("chassis/outline/length"), need1)
	d.height = a.ask("How high is it?", keyShape("chassis/outline/height"), need1)
	d.width = a.ask("How wide is the chassis over both plates?", keyShape("chassis/width"), need1)
	d.rails = a.ask("Do the rails lie below or above the edge you measure from?", keyShape("chassis/rails"), "below")
	d.current = a.ask("Does current pass through the axle bearings (axles, none)?", keyShape("chassis/current"), "none")
	axles := a.ask("How many shafts will you enter?", &shape{kind: aWhole, lo: 1, hi: 8}, "2")
	n := 0
	if _, err := fmt.Sscan(axles, &n); err != nil {
		n = 0
	}
	for i := 1; i <= n && !a.ended; i++ {
		d.shafts = append(d.shafts, a.shaft(d, i))
	}
	a.gear(d)
	for a.bush(d) {
	}
	a.owner(d)
	d.shop = a.ask("Name of your shop file (Enter: the built-in small shop)?", keyShape("shop"), "")
	if a.ended {
		return nil, ErrStopped
	}
	data := d.yaml()
	a.review(data)
	return data, nil
}

// keyShape is what a key of a job may hold where it is answered in one line.
func keyShape(path string) *shape {
	return jobShape.at(path).forKind(func(k kind) bool { return k < aList })
}

// aYesOrNo is the shape of an answer that is no key.
var aYesOrNo = &shape{kind: aYesNo}

// need1 marks a question that has to be answered.
const need1 = "\x00"

// ask puts one question until the answer fits its shape.
func (a *asker) ask(question string, s *shape, otherwise string) string {
	for !a.ended {
		if otherwise != "" && otherwise != need1 {
			fmt.Fprintf(a.out, "%s [%s] ", question, otherwise)
		} else {
			fmt.Fprintf(a.out, "%s ", question)
		}
		line, err := a.in.ReadString('\n')
		line = strings.TrimSpace(line)
		if err != nil && line == "" {
			a.ended = true
			break
		}
		if line == "" && otherwise != need1 {
			return otherwise
		}
		if line == "" {
			fmt.Fprintln(a.out, "  This one is needed.")
			continue
		}
		if wrong := a.fits(line, s); wrong != "" {
			fmt.Fprintln(a.out, "  "+wrong)
			continue
		}
		return line
	}
	return ""
}

// fits says what is wrong with an answer, "" where it can be.
func (a *asker) fits(line string, s *shape) string {
	if _, c, wrong := notText([]byte(line)); wrong != "" {
		return fmt.Sprintf("Letter %d: %s.", c, wrong)
	}
	figures := []string{line}
	if s.kind == aList {
		if figures = parts(line); len(figures) != s.min {
			return "Give two figures, such as 10.00 6.05."
		}
		s = s.item
	}
	for _, p := range figures {
		r := &reader{file: "", units: a.units, where: map[string]Pos{}}
		if r.scalar(&yaml.Node{Kind: yaml.ScalarNode, Value: p}, s,
			&value{shape: s, name: "answer"}); len(r.problems) > 0 {
			return strings.TrimPrefix(r.problems[0].Error(), "answer: ")
		}
	}
	return ""
}

func (a *asker) shaft(d *draft, i int) draftShaft {
	s := draftShaft{}
	usual := []string{"front axle", "rear axle", "third shaft", "fourth shaft", "fifth shaft", "sixth shaft",
		"seventh shaft", "eighth shaft"}
	s.name = a.ask(fmt.Sprintf("Shaft %d: what is it called?", i), keyShape("shafts/name"), usual[i-1])
	s.leave = a.ask("  Is it to be left alone (yes, no)?", aYesOrNo, "no")
	journal := keyShape("shafts/journal")
	s.journal[0] = a.ask("  Diameter of its left journal?", journal, need1)
	s.journal[1] = a.ask("  And of the right?", journal, s.journal[0])
	if strings.EqualFold(d.current, "axles") {
		s.insulated = a.ask("  On which side is its insulated wheel (left, right, none; Enter: not known)?",
			keyShape("shafts/insulated"), "")
	}
	s.hubs = a.ask("  Distance between the wheel hubs (Enter: not measured)?", keyShape("shafts/hub_to_hub"), "")
	for k, side := range Sides {
		b := &s.bores[k]
		at := func(key string) *shape { return keyShape("shafts/bores/" + string(side) + "/" + key) }
		which := strings.ToUpper(string(side[:1])) + string(side[1:])
		b.centre = a.ask(fmt.Sprintf("  %s bore: x and y of its middle as found?", which), at("centre"), need1)
		b.widest = a.ask("    Largest diameter?", at("widest"), need1)
		b.narrowest = a.ask("    Smallest diameter?", at("narrowest"), b.widest)
		b.at = a.ask("    Which way is it worn, seen from the left side (right 0, up 90, left 180, down 270; Enter: round)?",
			at("worn_to"), "")
		s.pass[k] = a.ask("    Largest diameter that goes through it on assembly (Enter: nothing larger than the "+
			"journal)?",
			keyShape("shafts/must_pass"), "")
		b.metal = a.ask("    Metal from the wall of the hole to the nearest free edge (Enter: not measured)?",
			at("edges/metal"), "")
		if b.metal != "" {
			b.metalAt = a.ask("    In which direction, in degrees?", at("edges/at"), "270")
		}
	}
	return s
}

func (a *asker) gear(d *draft) {
	kind := a.ask("Does a gear drive one of these shafts: worm, spur or none?",
		&shape{kind: aWord, words: []string{"worm", "spur", "none"}}, "none")
	if kind == "" || strings.EqualFold(kind, "none") {
		return
	}
	g := &draftGear{kind: strings.ToLower(kind)}
	d.gear = g
	first := "front axle"
	if len(d.shafts) > 0 {
		first = d.shafts[0].name
	}
	g.on = a.ask("  Which shaft is its wheel on?", keyShape("gears/wheel/on"), first)
	g.module = a.ask("  Module in mm (25.4 divided by the diametral pitch)?", keyShape("gears/module"), need1)
	g.teeth = a.ask("  Teeth of the wheel?", keyShape("gears/wheel/teeth"), need1)
	g.tip = a.ask("  Its tip diameter as measured (Enter: not measured)?", keyShape("gears/wheel/tip"), "")
	g.runout = a.ask("  Its run-out, total reading of an indicator over a turn (Enter: not measured)?",
		keyShape("gears/wheel/runout"), "")
	if g.kind == "worm" {
		g.form = a.ask("  Is the wheel throated, helical, straight or unknown?", keyShape("gears/wheel_form"),
			"unknown")
		g.starts = a.ask("  Starts of the worm?", keyShape("gears/worm/starts"), "1")
		g.pitch = a.ask("  Pitch diameter of the worm?", keyShape("gears/worm/pitch_diameter"), need1)
		g.height = a.ask("  Height of its axis above the edge you measure from?", keyShape("gears/worm/height"), need1)
		return
	}
	g.pinionTeeth = a.ask("  Teeth of the pinion?", keyShape("gears/pinion/teeth"), need1)
	g.at = a.ask("  x and y of the pinion's centre?", keyShape("gears/pinion/at"), need1)
}

// review says what in the new file does not go together.
func (a *asker) review(data []byte) {
	root, r := readFile("new job", data, jobShape)
	if root != nil {
		checkJob(r, bindJob(r, root, "new job", "."), root)
	}
	if len(r.problems) == 0 {
		fmt.Fprintln(a.out, "All that goes together. `rebush check` reads the file again after you change it.")
		return
	}
	fmt.Fprintln(a.out, "The file is written, but look at these again:")
	fmt.Fprintln(a.out, r.problems.sorted().Error())
}
