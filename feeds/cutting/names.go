package cutting

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"
	"unicode"

	"rebush/fits/spelling"
	"rebush/fits/table"
)

// material is one row of the table speeds_material.
type material struct {
	name                     string
	aliases                  []string
	keys                     []string // folded: the name, then the aliases
	family                   string   // its figures stand in, "" for none
	kind                     string   // metal, plastic, porous
	hard                     bool     // low end of the feed
	kd, kienzle, maker, wets string   // classes in the force and coolant tables
	ream                     string   // class in the reaming table
	only, say                string
	ref                      Ref
}

func (c *Cutting) readMaterials(lib *table.Library) error {
	t, err := lib.Get("speeds_material")
	if err != nil {
		return err
	}
	for _, r := range t.Rows {
		m := material{name: r.Get("material"), family: r.Get("family"), kind: r.Get("kind"), hard: r.Get("feed") == "hard",
			kd: r.Get("kd"), kienzle: r.Get("kienzle"), maker: r.Get("maker"), wets: r.Get("coolant"),
			ream: r.Get("ream_class"), only: r.Get("only"), say: r.Get("say"), ref: refOf(r)}
		for _, a := range strings.Split(r.Get("aliases"), ";") {
			if a = strings.TrimSpace(a); a != "" {
				m.aliases = append(m.aliases, a)
			}
		}
		for _, n := range append([]string{m.name}, m.aliases...) {
			m.keys = append(m.keys, fold(n))
		}
		if m.name == "" {
			return fmt.Errorf("%s: no material", r.Address())
		}
		c.materials = append(c.materials, m)
	}
	for _, m := range c.materials {
		seen := map[string]bool{m.name: true}
		for f := m.family; f != ""; {
			next, ok := c.exact(f)
			if !ok {
				return fmt.Errorf("%s: family %q is not a material of the table", m.ref.Address, f)
			}
			if seen[next.name] {
				return fmt.Errorf("%s: family of %q leads back to itself", m.ref.Address, m.name)
			}
			seen[next.name] = true
			f = next.family
		}
	}
	return nil
}

// Materials lists the names of the materials in table order.
func (c *Cutting) Materials() []string {
	var out []string
	for _, m := range c.materials {
		out = append(out, m.name)
	}
	return out
}

// fold makes names comparable: lower case, letters and digits only, single
// spaces.
func fold(s string) string {
	f := strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	return strings.Join(f, " ")
}

func (c *Cutting) exact(name string) (material, bool) {
	want := fold(name)
	for _, m := range c.materials {
		if m.keys[0] == want {
			return m, true
		}
	}
	return material{}, false
}

// parent is the material whose figures stand in.
func (c *Cutting) parent(m material) (material, bool) {
	if m.family == "" {
		return material{}, false
	}
	return c.exact(m.family)
}

// material finds a material by its name, a spoken name, or the only name that
// begins with what was given. The error names the nearest known.
func (c *Cutting) material(name string) (material, error) {
	want := fold(name)
	if want == "" {
		return material{}, fmt.Errorf("no material given; known are %s", strings.Join(c.Materials(), ", "))
	}
	if m, ok := c.exact(name); ok {
		return m, nil
	}
	for _, m := range c.materials {
		if slices.Contains(m.keys, want) {
			return m, nil
		}
	}
	var begin []material
	for _, m := range c.materials {
		if strings.HasPrefix(m.keys[0], want+" ") {
			begin = append(begin, m)
		}
	}
	switch {
	case len(begin) == 1:
		return begin[0], nil
	case len(begin) > 1:
		var names []string
		for _, m := range begin {
			names = append(names, m.name)
		}
		return material{}, fmt.Errorf("material %q may be %s; name one", name, strings.Join(names, ", "))
	}
	return material{}, fmt.Errorf("no cutting speed for a material %q; the nearest known is %s", name, c.nearest(want))
}

// nearest is the known name with the fewest letters to change.
func (c *Cutting) nearest(want string) string {
	type near struct {
		name string
		d    int
	}
	var all []near
	for _, m := range c.materials {
		best := math.MaxInt
		for _, k := range m.keys {
			best = min(best, spelling.Distance(want, k))
		}
		all = append(all, near{m.name, best})
	}
	if len(all) == 0 {
		return "none: the table is empty"
	}
	sort.SliceStable(all, func(i, j int) bool { return all[i].d < all[j].d })
	return all[0].name
}

// The tools and operations as the tables write them.
const (
	hss, cobalt, carbide = "HSS", "cobalt HSS", "solid carbide"
	drill, ream          = "drill", "ream"
	bore, boreFinish     = "bore", "bore finish"
	endMill, plunge      = "end-mill", "plunge"
	countersink          = "countersink"
	counterbore          = "counterbore"
	spot                 = "spot / centre drill"
)

func toolOf(s string) (string, error) {
	switch fold(s) {
	case "", "hss", "high speed steel":
		return hss, nil
	case "cobalt", "cobalt hss", "hss cobalt":
		return cobalt, nil
	case "carbide", "solid carbide":
		return carbide, nil
	}
	return "", fmt.Errorf("no tool material %q; write hss, cobalt or carbide", s)
}

func operationOf(s string) (string, error) {
	switch fold(s) {
	case "drill", "drilling":
		return drill, nil
	case "ream", "reaming":
		return ream, nil
	case "bore", "boring":
		return bore, nil
	case "bore finish", "finish bore":
		return boreFinish, nil
	case "end mill", "endmill", "milling", "mill":
		return endMill, nil
	case "plunge", "plunging", "plunge end mill":
		return plunge, nil
	case "countersink", "countersinking", "chamfer", "chamfering":
		return countersink, nil
	case "counterbore", "counterboring":
		return counterbore, nil
	case "spot", "spot drill", "spotting", "centre drill", "center drill", "spot centre drill":
		return spot, nil
	}
	return "", fmt.Errorf("no operation %q; write drill, ream, bore, bore finish, end mill, plunge, countersink, counterbore or spot", s)
}
