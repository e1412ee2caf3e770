package drills

import (
	"fmt"
	"regexp"
	"sort"
	"strings"

	"rebush/fits/dim"
	"rebush/fits/table"
)

// Tool is a drill in the drawer.
type Tool struct {
	Name  string
	Size  dim.Length
	Index int // place in the list of single drills, -1 for one of a set
}

// set is what a series means where its ends are not given.
type set struct{ name, series, step, from, to string }

func readSets(lib *table.Library) ([]set, error) {
	t, err := lib.Get("drills_sets")
	if err != nil {
		return nil, err
	}
	var out []set
	for _, row := range t.Rows {
		if _, ok := tables[Series(row.Get("series"))]; !ok {
			return nil, fmt.Errorf("%s: no series %q", row.Address(), row.Get("series"))
		}
		out = append(out, set{row.Get("set"), row.Get("series"), row.Get("step"), row.Get("from"), row.Get("to")})
	}
	return out, nil
}

// SetNames lists the sets that a shop may name without saying their ends.
func (d *Drills) SetNames() []string {
	var out []string
	for _, s := range d.sets {
		out = append(out, s.name)
	}
	return out
}

// Owned lists the drills of a shop from the smallest: whole sets, and single
// drills, none of them larger than maxDrill where that is given.
//
// A set is named as in table drills_sets ("metric 0.1", "number", "letter",
// "fraction 1/64"), and may say its ends: "metric 0.1 1 to 6", "number 1 to 80",
// "letter A to M", "fraction 1/64 1/16 to 1". One drill in two sets is listed
// once; a single drill is always listed, before a drill of a set of its size.
func (d *Drills) Owned(sets []string, singles []Tool, maxDrill dim.Length) ([]Tool, error) {
	var out []Tool
	fits := func(t Tool) bool {
		return t.Size.Sign() > 0 && (!maxDrill.Given() || !maxDrill.Less(t.Size))
	}
	seen := map[string]bool{}
	for i, t := range singles {
		t.Index = i
		if t.Name == "" {
			t.Name = t.Size.String()
		}
		if fits(t) {
			out = append(out, t)
			seen[t.Name] = true
		}
	}
	for _, text := range sets {
		list, err := d.Set(text)
		if err != nil {
			return nil, err
		}
		for _, t := range list {
			if fits(t) && !seen[t.Name] {
				out = append(out, t)
				seen[t.Name] = true
			}
		}
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].Size.Less(out[k].Size) })
	return out, nil
}

var setRE = regexp.MustCompile(`^([a-z]+)(?:\s+([0-9./,]+(?:\s*(?:mm|in))?))?(?:\s+(?:from\s+)?(\S+)\s*(?:\s+to\s+|-|–)\s*(\S+))?$`)

// maxSet is the most drills that a set may come to.
const maxSet = 2000

// Set lists the drills of one set from the smallest. Index is -1 in all.
func (d *Drills) Set(text string) ([]Tool, error) {
	refuse := func(why string) error {
		return fmt.Errorf("%q: %s; the sets are %s, and ends may follow, as in metric 0.1 1 to 6", text, why, strings.Join(d.SetNames(), ", "))
	}
	m := setRE.FindStringSubmatch(strings.ToLower(strings.TrimSpace(text)))
	if m == nil {
		return nil, refuse("not a set of drills")
	}
	if strings.Trim(m[2], "0., m") == "" && m[2] != "" {
		return nil, refuse("a step of nothing")
	}
	s, ok := d.pickSet(strings.TrimSuffix(m[1], "s"), strings.ReplaceAll(m[2], ",", "."))
	if !ok {
		return nil, refuse("not a set of drills")
	}
	if m[3] != "" {
		s.from, s.to = m[3], m[4]
	}
	series := Series(s.series)
	lo, err := end(series, s.from)
	if err != nil {
		return nil, refuse(err.Error())
	}
	hi, err := end(series, s.to)
	if err != nil {
		return nil, refuse(err.Error())
	}
	if hi.Less(lo) {
		lo, hi = hi, lo
	}
	var out []Tool
	if s.step == "0" {
		for _, x := range d.series[series] {
			if !x.Size.Less(lo) && !hi.Less(x.Size) {
				out = append(out, Tool{Name: toolName(series, x.Size, x.Name), Size: x.Size, Index: -1})
			}
		}
	} else {
		step, err := end(series, s.step)
		if err != nil || step.Sign() <= 0 || lo.Sign() <= 0 {
			return nil, refuse("a set needs a step and ends above 0")
		}
		if lo.Add(step.Times(maxSet)).Less(hi) {
			return nil, refuse(fmt.Sprintf("more than %d drills", maxSet))
		}
		for at := lo; !hi.Less(at); at = at.Add(step) {
			out = append(out, Tool{Name: toolName(series, at, ""), Size: at, Index: -1})
		}
	}
	if len(out) == 0 {
		return nil, refuse("no drill lies between these ends")
	}
	return out, nil
}

// pickSet finds a set by its series and step; a step that no set has is taken
// with the ends of the series' first set.
func (d *Drills) pickSet(series, step string) (set, bool) {
	var first *set
	for i, s := range d.sets {
		if s.series != series {
			continue
		}
		name := strings.TrimPrefix(strings.TrimPrefix(s.name, series), " ")
		if name == step || step != "" && sameStep(series, name, step) {
			return s, true
		}
		if first == nil {
			first = &d.sets[i]
		}
	}
	if first == nil || step == "" || series == string(Number) || series == string(Letter) {
		return set{}, false
	}
	s := *first
	s.step = step
	return s, true
}

func sameStep(series, a, b string) bool {
	x, err1 := end(Series(series), a)
	y, err2 := end(Series(series), b)
	return err1 == nil && err2 == nil && x.Equal(y)
}

// end reads one end of a set in the unit of its series.
func end(s Series, text string) (dim.Length, error) {
	switch s {
	case Number:
		return dim.Parse("#"+strings.TrimPrefix(strings.TrimPrefix(text, "#"), "no"), dim.MM)
	case Letter:
		if text = strings.ToLower(text); len(text) != 1 || text < "a" || text > "z" {
			return dim.Length{}, fmt.Errorf("%q is not a letter drill", text)
		}
		return dim.Parse(text, dim.MM)
	case Metric:
		return dim.Parse(text, dim.MM)
	}
	return dim.Parse(text, dim.Inch)
}

// toolName is how a drill of a set is called.
func toolName(s Series, size dim.Length, name string) string {
	switch s {
	case Metric:
		return size.String()
	case Fraction:
		if n, exact := size.NearestFraction(128); exact.Equal(size) {
			return n
		}
		return size.String()
	}
	return name
}
