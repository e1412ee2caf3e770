package plan_test

import (
	"slices"
	"sort"
	"strings"
	"testing"

	"rebush/fits/material"
	"rebush/fits/table"
	"rebush/plan/route"
	"rebush/plan/safety"
)

func hazardBook(t testing.TB) *safety.Book {
	t.Helper()
	var kinds []string
	for _, k := range route.Kinds() {
		kinds = append(kinds, string(k))
	}
	b, err := safety.New(table.BuiltIn(), kinds)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// walkFacts are what may hold beside metal and kind of operation.
var walkFacts = []safety.Fact{safety.Spindle, safety.FirstSetUp, safety.FromBelow, safety.UnderThePress, safety.Compound, safety.Leaded, safety.Air, safety.InMagnesium, safety.ConditionUnknown}

// wanted is what must be said beside an operation, as a person would list it:
// hazard by hazard, without the table.
func wanted(metal material.Kind, op route.Kind, is map[safety.Fact]bool) []string {
	one := func(kinds ...route.Kind) bool { return slices.Contains(kinds, op) }
	mag := metal == material.MagnesiumCasting
	chips := one(route.KindScrap, route.KindSpot, route.KindLocate, route.KindOpen, route.KindChamfer, route.KindSizeSeat, route.KindTurn, route.KindFace, route.KindOil, route.KindSizeBore)
	plate := one(route.KindScrap, route.KindSpot, route.KindLocate, route.KindOpen, route.KindChamfer, route.KindSizeSeat)
	aid, filed, press := one(route.KindAid), one(route.KindFlush), one(route.KindPress, route.KindSetPart)
	casting := metal == material.ZincCasting || metal == material.AluminiumCasting || mag
	alike := casting && !mag || metal == material.WroughtAluminium
	force := is[safety.UnderThePress]
	var out []string
	say := func(hazard string, yes bool) {
		if yes {
			out = append(out, hazard)
		}
	}
	say("unsound casting", op == route.KindLookOver && is[safety.ConditionUnknown])
	say("zinc or magnesium", op == route.KindSetUp && is[safety.FirstSetUp] && alike)
	say("magnesium fire", mag && (filed || one(route.KindScrap, route.KindSetUp, route.KindTurn, route.KindFace)))
	say("magnesium cut", mag && (filed || chips && op != route.KindOil))
	say("magnesium chips", mag && (filed || chips && op != route.KindOil || op == route.KindWash))
	say("magnesium cleaning", mag && op == route.KindWash)
	say("eyes", (chips || aid) && is[safety.Spindle])
	say("rotating", (chips || aid) && is[safety.Spindle])
	say("chuck key", (chips || aid) && is[safety.Spindle])
	say("hot and sharp", (chips || aid) && is[safety.Spindle] && !mag)
	say("clamping", one(route.KindScrap, route.KindSetUp, route.KindOil))
	say("tool above", op == route.KindChamfer && is[safety.FromBelow])
	say("fingers", force && (press || one(route.KindStrip, route.KindTakeOut, route.KindWheels, route.KindSizeBore)))
	say("shatters", force && (metal == material.PorousBronze && (press || op == route.KindSizeBore) ||
		(casting || metal == material.CastIron) && (press || op == route.KindTakeOut) || one(route.KindWheels, route.KindStrip)))
	say("heat", force && casting && press)
	say("lead in metal", (chips || filed) && is[safety.Leaded])
	say("lead in paint", op == route.KindWash)
	say("solvent", op == route.KindWash && !mag || press && is[safety.Compound])
	say("compound", press && is[safety.Compound])
	bush := one(route.KindTurn, route.KindFace, route.KindOil, route.KindSizeBore)
	say("compressed air", op == route.KindWash && !mag || is[safety.Air] && (!mag && (plate || bush) || bush && is[safety.InMagnesium]))
	sort.Strings(out)
	return slices.Compact(out)
}

// Every metal in every kind of operation, with all that may hold beside them:
// its lines stand, and no line stands where it does not apply.
func TestHazardsOfEveryMetalAndOperation(t *testing.T) {
	b := hazardBook(t)
	walked := 0
	for _, metal := range safety.Metals() {
		if metal == safety.Unsaid {
			continue
		}
		for _, op := range route.Kinds() {
			for bits := range 1 << len(walkFacts) {
				is := map[safety.Fact]bool{}
				for i, f := range walkFacts {
					is[f] = bits>>i&1 == 1
				}
				var got []string
				for _, l := range b.At(safety.Operation, safety.Work{Operation: string(op), Metals: []material.Kind{metal}, Facts: is}) {
					got = append(got, l.Hazard)
				}
				sort.Strings(got)
				got = slices.Compact(got)
				if want := wanted(metal, op, is); !slices.Equal(got, want) {
					t.Fatalf("%s, %s, %v:\n said %q\n want %q", metal, op, is, got, want)
				}
				walked++
			}
		}
	}
	if walked < 11*20*512 {
		t.Errorf("only %d were walked", walked)
	}
}

// What the form and the owner's page say goes by the metal alone.
func TestHazardsOfFormAndOwner(t *testing.T) {
	b := hazardBook(t)
	for _, metal := range safety.Metals() {
		alike := metal == material.ZincCasting || metal == material.AluminiumCasting || metal == material.WroughtAluminium
		mag := metal == material.MagnesiumCasting
		w := safety.Work{Metals: []material.Kind{metal}, Facts: map[safety.Fact]bool{safety.ToBeCut: true}}
		for _, c := range []struct {
			place safety.Place
			want  map[string]bool
		}{
			{safety.Form, map[string]bool{"supply": true, "lead in paint": true, "zinc or magnesium": alike || metal == safety.Unsaid, "magnesium fire": mag}},
			{safety.Owner, map[string]bool{"lead in paint": true, "zinc or magnesium": alike, "magnesium fire": mag}},
			{safety.Before, map[string]bool{"supply": true}},
			{safety.Proving, map[string]bool{"supply": true}},
			{safety.LookFor, map[string]bool{}},
		} {
			got := map[string]int{}
			for _, l := range b.At(c.place, w) {
				got[l.Hazard]++
				if !c.want[l.Hazard] {
					t.Errorf("%s, %s: says %q", c.place, metal, l.Words)
				}
			}
			for h, yes := range c.want {
				if n := got[h]; yes && n != 1 {
					t.Errorf("%s, %s: %s is said %d times", c.place, metal, h, n)
				}
			}
		}
		w.Facts = nil
		for _, l := range b.At(safety.Owner, w) {
			if l.Hazard == "zinc or magnesium" {
				t.Errorf("%s: nothing is cut, and the owner is told %q", metal, l.Words)
			}
		}
		if metal != safety.Unsaid {
			w.Facts = map[safety.Fact]bool{safety.ConditionUnknown: true}
			if n := len(b.At(safety.LookFor, w)); n != 1 {
				t.Errorf("%s: %d lists of what to look for", metal, n)
			}
		}
	}
}

// The weights by which magnesium is told from what it looks like are those of
// the table of materials.
func TestLookAlikeWeights(t *testing.T) {
	reg, err := material.New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	density := func(name string) float64 {
		m, err := reg.Find(name)
		if err != nil {
			t.Fatal(err)
		}
		v, ok := m.Low("density")
		if !ok {
			t.Fatalf("no density of %s", name)
		}
		return v.Low
	}
	mag := density("magnesium")
	for name, c := range map[string]struct {
		words    string
		low, top float64
	}{"zinc die casting": {"quarter", 0.23, 0.3}, "aluminium die casting": {"two thirds", 0.62, 0.71}} {
		if r := mag / density(name); r < c.low || r > c.top {
			t.Errorf("magnesium weighs %.2f of %s, which is not about a %s", r, name, c.words)
		}
		m, _ := reg.Find(name)
		w := safety.Work{Metals: []material.Kind{m.Kind}, Operation: "set up", Facts: map[safety.Fact]bool{safety.FirstSetUp: true}}
		said := ""
		for _, l := range hazardBook(t).At(safety.Operation, w) {
			said += l.Words
		}
		if !strings.Contains(said, c.words) {
			t.Errorf("%s: %q does not say %s", name, said, c.words)
		}
	}
}

// A row that cannot be meant is refused by its number, and no shop puts its own
// table in the place of this one.
func TestHazardTableRefusesWhatItCannotRead(t *testing.T) {
	const head = "# About.\nhazard,where,materials,operations,when,print,rank,words,source\n"
	for row, want := range map[string]string{
		"eyes,operation,*,drilling,,first,,w,s":           `hazards:3: operations: no kind "drilling"`,
		"eyes,operation,wood,open,,first,,w,s":            `hazards:3: materials: no kind "wood"`,
		"eyes,operation,any but wood,open,,first,,w,s":    `hazards:3: materials: no kind "wood"`,
		"eyes,wall,*,open,,first,,w,s":                    `hazards:3: where: no place "wall"`,
		"eyes,operation,*,open,raining,first,,w,s":        `hazards:3: when: nothing is called "raining"`,
		"eyes,operation,*,open,,,,w,s":                    `hazards:3: print: ""`,
		"eyes,page one,*,open,,,,w,s":                     `hazards:3: rank: ""`,
		"eyes,page one,*,open,,,0,w,s":                    `hazards:3: rank: "0"`,
		"eyes,operation,,open,,first,,w,s":                `hazards:3: materials: none is named`,
		"eyes,operation,*,,,first,,w,s":                   `hazards:3: operations: none is named`,
		"eyes,,*,open,,first,,w,s":                        `hazards:3: where: no place is named`,
		"eyes,operation,*,open,,first,,w,":                `hazards:3: hazard, words and source must stand`,
		"eyes,operation,steel;zinc casting,open,,each,,,": `hazards:3: hazard, words and source must stand`,
	} {
		tab, err := table.Parse("hazards", "mine.csv", []byte(head+row+"\n"))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := safety.Read(tab, []string{"open"}); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: %v, want %s", row, err, want)
		}
		if err := table.BuiltIn().Replace(tab); err == nil || !strings.Contains(err.Error(), "not for a shop") {
			t.Errorf("a shop's own table of hazards: %v", err)
		}
	}
	tab, err := table.Parse("stops", "mine.csv", []byte("rule,accept,what,instead,source\ncondition,yes,w,i,s\n"))
	if err != nil {
		t.Fatal(err)
	}
	if err := table.BuiltIn().Replace(tab); err == nil {
		t.Error("a shop may accept a crack by a table of its own")
	}
}
