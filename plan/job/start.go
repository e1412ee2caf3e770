package job

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
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
// answers with a commented job file. The questions are those of questions.csv,
// each with the number of its box on the measuring form. An empty answer takes
// what stands in brackets, or leaves the key out. An answer that cannot be is
// asked again. What does not go together in the end is said on out, by line of
// the new file.
func Ask(in io.Reader, out io.Writer) ([]byte, error) {
	a := &asker{in: bufio.NewReader(in), out: out}
	fmt.Fprintln(out, "A few questions about the truck (a truck is a bogie, a bush a bushing).")
	fmt.Fprintln(out, "Enter alone takes what stands in [brackets]. All is seen from the left side.")
	fmt.Fprintln(out, "The numbers are those of the boxes on the measuring form (rebush form).")
	d := &draft{}
	d.number = a.put("job", "number")
	d.title = a.put("job", "title")
	d.units = strings.ToLower(a.put("job", "units"))
	if d.units == "in" {
		a.units = dim.Inch
	}
	for i, id := range [...]string{"binds", "noisy", "rubs"} {
		d.complaint[i] = a.put("running", id)
	}
	for i, id := range symptomKeys {
		d.symptoms[i] = a.put("look-alikes", id)
	}
	n := a.plates(d)
	for i := 1; i <= n && !a.ended; i++ {
		d.shafts = append(d.shafts, a.shaft(d, i))
	}
	a.wheelbase(d)
	a.gear(d)
	for a.bush(d) {
	}
	a.owner(d)
	if a.ended {
		return nil, ErrStopped
	}
	data := d.yaml()
	a.review(data)
	return data, nil
}

// plates asks for the plates, and how many shafts there are.
func (a *asker) plates(d *draft) (shafts int) {
	d.material = a.put("plates", "material")
	d.condition = a.put("plates", "condition")
	d.left = a.put("plates", "left")
	d.right = a.or("plates", "right", d.left)
	d.length = a.put("plates", "length")
	d.height = a.put("plates", "height")
	d.width = a.put("plates", "width")
	d.rails = a.put("plates", "rails")
	d.current = a.put("plates", "current")
	q := question("plates", "shafts")
	if _, err := fmt.Sscan(a.ask(q.ask, &shape{kind: aWhole, lo: 1, hi: 8}, q.otherwise), &shafts); err != nil {
		return 0
	}
	return shafts
}

// put puts a question of the table; of what it asks stands where it says so.
func (a *asker) put(part, id string, of ...any) string {
	return a.or(part, id, question(part, id).otherwise, of...)
}

// or is put where an empty answer follows from another one.
func (a *asker) or(part, id, otherwise string, of ...any) string {
	q := question(part, id)
	words := q.ask
	if len(of) > 0 {
		words = fmt.Sprintf(words, of...)
	}
	if q.Number > 0 {
		words = strconv.Itoa(q.Number) + " " + words
	}
	return a.ask(words, q.shape, otherwise)
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
		if figures = parts(line); s.min > 0 && len(figures) != s.min {
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
	usual := []string{"front axle", "rear axle", "third shaft", "fourth shaft", "fifth shaft", "sixth shaft",
		"seventh shaft", "eighth shaft"}
	s := draftShaft{}
	s.name = a.or("shaft", "name", usual[i-1], strconv.Itoa(i))
	s.leave = a.put("shaft", "leave")
	s.journal[0] = a.put("shaft", "journal left")
	s.journal[1] = a.or("shaft", "journal right", s.journal[0])
	if strings.EqualFold(d.current, "axles") {
		s.insulated = a.put("shaft", "insulated")
	}
	s.hubs = a.put("shaft", "hubs")
	if a.yes("shaft", "more of the shaft") {
		s.state = a.put("shaft", "state")
		s.wheels = a.put("shaft", "wheels")
		s.back = a.put("shaft", "back to back")
		s.load = a.put("shaft", "load")
		s.speed = a.put("shaft", "speed")
		s.washers = a.put("shaft", "washers")
	}
	for k, side := range Sides {
		s.bores[k], s.pass[k] = a.bore(strings.ToUpper(string(side[:1])) + string(side[1:]))
	}
	return s
}

// bore asks for one hole, and for the thickest part that goes through it.
func (a *asker) bore(which string) (b draftBore, pass string) {
	b.centre = a.put("bore", "centre", which)
	b.widest = a.put("bore", "widest")
	b.narrowest = a.or("bore", "narrowest", b.widest)
	b.at = a.put("bore", "worn to")
	pass = a.put("bore", "pass")
	b.metal = a.put("bore", "metal")
	if b.metal != "" {
		b.metalAt = a.put("bore", "metal at")
	}
	if !a.yes("bore", "more of the bore") {
		return b, pass
	}
	if b.goes = a.put("bore", "goes"); b.goes != "" {
		b.stops = a.put("bore", "stops")
	}
	if b.oilAt = a.put("bore", "oil at"); b.oilAt != "" {
		b.oil = a.put("bore", "oil")
	}
	b.with = a.put("bore", "with")
	if a.yes("bore", "bushed") {
		b.bushed = "yes"
	}
	return b, pass
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
