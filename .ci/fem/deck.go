package main

import (
	"bufio"
	"fmt"
	"math"
	"os"

	"rebush/fits/press"
)

// deck is a mesh with what holds it and what presses, as one input file of
// CalculiX.
type deck struct {
	*mesh
	metals map[string]press.Elastic
	held   map[int][2]bool // nodes that cannot move in x, in y

	// Where the parts meet: each node of the bush gives way by jump, half of the
	// interference, against the node of the metal at the same place, along
	// normal; stuck parts do not slide either.
	seat   func(point) bool
	normal func(point) point
	jump   float64
	stuck  bool

	// friction, above nought, makes the bush larger by jump instead and lets the
	// parts touch, press and slide as they will, with this coefficient.
	friction float64

	// warm is the strain in the plane that the bush would take if it were free:
	// the other way to make an interference.
	warm float64

	// pressure in MPa on the sides of the metal both of whose ends lie in seat.
	pressure float64
}

const bush, metal = "BUSH", "METAL"

// thick is how thick a plate is made. Elements for plane stress are layers in
// space there, thin beside the hole lest their faces bulge.
const thick = 0.01

func (d *deck) write(name string) error {
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	w := bufio.NewWriter(f)
	d.parts(w)
	driver := len(d.nodes) + 1
	tied := (d.jump != 0 || d.stuck) && d.friction == 0
	if d.friction > 0 {
		d.touch(w)
	}
	if tied {
		fmt.Fprintf(w, "*NODE\n%d,0,0,0\n", driver)
		if err := d.meet(w, driver); err != nil {
			return err
		}
	}
	fmt.Fprintln(w, "*BOUNDARY")
	for n := range d.nodes {
		for i, held := range d.held[n] {
			if held {
				fmt.Fprintf(w, "%d,%d,%d\n", n+1, i+1, i+1)
			}
		}
	}
	if d.warm != 0 {
		fmt.Fprintln(w, "*INITIAL CONDITIONS, TYPE=TEMPERATURE\nALL,0.")
	}
	fmt.Fprintln(w, "*STEP\n*STATIC")
	if tied {
		fmt.Fprintf(w, "*BOUNDARY\n%d,1,1,%.12g\n", driver, d.jump)
	}
	if d.warm != 0 {
		fmt.Fprintln(w, "*TEMPERATURE\nALL,1.")
	}
	if d.pressure != 0 {
		d.load(w)
	}
	fmt.Fprintln(w, "*NODE FILE, OUTPUT=2D\nU\n*EL FILE, OUTPUT=2D\nS\n*END STEP")
	if err := w.Flush(); err != nil {
		return err
	}
	return f.Close()
}

func (d *deck) parts(w *bufio.Writer) {
	kind := "CPS8R"
	if d.turns {
		kind = "CAX8R"
	}
	fmt.Fprintln(w, "*NODE, NSET=ALL")
	for n, p := range d.nodes {
		if d.friction > 0 && d.inside[bush][n] && d.seat(p) {
			v := d.normal(p)
			p = point{p.x + d.jump*v.x, p.y + d.jump*v.y}
		}
		fmt.Fprintf(w, "%d,%.10g,%.10g,0\n", n+1, p.x, p.y)
	}
	number := 0
	for _, part := range []string{bush, metal} {
		if len(d.cells[part]) == 0 {
			continue
		}
		fmt.Fprintf(w, "*ELEMENT, TYPE=%s, ELSET=%s\n", kind, part)
		for _, c := range d.cells[part] {
			number++
			fmt.Fprintf(w, "%d", number)
			for _, n := range c {
				fmt.Fprintf(w, ",%d", n+1)
			}
			fmt.Fprintln(w)
		}
		m := d.metals[part]
		fmt.Fprintf(w, "*MATERIAL, NAME=%s\n*ELASTIC\n%.10g,%.10g\n", part, m.E, m.Nu)
		warm := 0.0
		if part == bush {
			warm = d.warm
		}
		fmt.Fprintf(w, "*EXPANSION\n%.10g\n*SOLID SECTION, ELSET=%s, MATERIAL=%s\n", warm, part, part)
		if !d.turns {
			fmt.Fprintln(w, thick)
		}
	}
}

// meet writes what ties the two parts: along the normal, metal less bush is the
// jump; the motion of the driver node is the jump.
func (d *deck) meet(w *bufio.Writer, driver int) error {
	fmt.Fprintln(w, "*EQUATION")
	for _, n := range d.on(bush, d.seat) {
		p := d.nodes[n]
		other, ok := d.number[keyOf(metal, p)]
		if !ok {
			return fmt.Errorf("no node of the metal at %v", p)
		}
		v := d.normal(p)
		held := d.held[n]
		if d.stuck {
			for i, c := range []float64{v.x, v.y} {
				if !held[i] {
					fmt.Fprintf(w, "3\n%d,%d,1,%d,%d,-1,%d,1,%.12g\n", n+1, i+1, other+1, i+1, driver, c)
				}
			}
			continue
		}
		// The first term is the one that is worked out from the others: it may
		// be neither held nor nought.
		first, c := 1, [2]float64{v.x, v.y}
		if held[0] || math.Abs(c[1]) > math.Abs(c[0]) && !held[1] {
			first = 2
		}
		second := 3 - first
		fmt.Fprintf(w, "5\n%d,%d,%.12g,%d,%d,%.12g,%d,%d,%.12g,%d,%d,%.12g\n%d,1,1\n",
			n+1, first, c[first-1], n+1, second, c[second-1],
			other+1, first, -c[first-1], other+1, second, -c[second-1], driver)
	}
	return nil
}

// The springs of a contact, N/mm3: so stiff that a pressure of 50 MPa gives way
// by 0.05 % of the interference here, and friction by a tenth of that.
const pressSpring, slideSpring = 2e7, 2e6

// touch writes the two sides of the seat as surfaces in contact.
func (d *deck) touch(w *bufio.Writer) {
	for _, part := range []string{bush, metal} {
		fmt.Fprintf(w, "*SURFACE, NAME=OF%s, TYPE=ELEMENT\n", part)
		d.sides(part, func(element, side int) { fmt.Fprintf(w, "%d,S%d\n", element, side) })
	}
	fmt.Fprintf(w, "*SURFACE INTERACTION, NAME=SEAT\n*SURFACE BEHAVIOR, PRESSURE-OVERCLOSURE=LINEAR\n%g\n"+
		"*FRICTION\n%g,%g\n*CONTACT PAIR, INTERACTION=SEAT, TYPE=SURFACE TO SURFACE\nOF%s,OF%s\n",
		pressSpring, d.friction, slideSpring, bush, metal)
}

// load writes a pressure on the seat of the metal.
func (d *deck) load(w *bufio.Writer) {
	fmt.Fprintln(w, "*DLOAD")
	d.sides(metal, func(element, side int) { fmt.Fprintf(w, "%d,P%d,%.10g\n", element, side, d.pressure) })
}

// sides calls do with the number of every element of a part that has a side on
// the seat, and of that side.
func (d *deck) sides(part string, do func(element, side int)) {
	before := 0
	if part == metal {
		before = len(d.cells[bush])
	}
	for i, c := range d.cells[part] {
		for side := range 4 {
			if d.seat(d.nodes[c[side]]) && d.seat(d.nodes[c[(side+1)%4]]) {
				do(before+i+1, side+1)
			}
		}
	}
}
