package job

import (
	"fmt"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"
)

// TestEveryFigureIsStored: a figure of the files of all keys that is a little
// larger makes another job, or one that is refused: also of the keys that have
// to be given, which TestEveryKeyIsRead cannot take away.
func TestEveryFigureIsStored(t *testing.T) {
	whole, err := Read("testdata/all-keys.yaml", Options{})
	if err != nil {
		t.Fatal(err)
	}
	wj, ws, wr := bare(whole)
	for path, s := range map[string]*shape{"testdata/all-keys.yaml": jobShape, "testdata/all-shop.yaml": shopShape} {
		doc, _ := tree(t, path)
		tried := 0
		walk(doc.Content[0], s, "", func(n *yaml.Node, i int, _ *shape, key string) {
			v := n.Content[i+1]
			f, err := strconv.ParseFloat(v.Value, 64)
			if v.Kind != yaml.ScalarNode || err != nil || strings.HasPrefix(key, "/rebush") || key == "/job" {
				return
			}
			kept := v.Value
			v.Value = strconv.FormatFloat(f*1.002, 'f', -1, 64)
			if !strings.Contains(kept, ".") { // a whole number, maybe
				v.Value = fmt.Sprint(int(f) + 1)
			}
			data, err := yaml.Marshal(doc)
			v.Value = kept
			if err != nil {
				t.Fatal(err)
			}
			gj, gs, gr := wj, ws, wr
			if s == jobShape {
				j, err := Parse(path, "testdata", data, Options{})
				if err != nil {
					return
				}
				gj, _, _ = bare(j)
			} else {
				shop, err := parseShop(path, "testdata", data)
				if err != nil {
					return
				}
				j := *whole
				j.Shop = shop
				_, gs, gr = bare(&j)
				gs.Tables = ws.Tables
			}
			tried++
			if reflect.DeepEqual(gj, wj) && reflect.DeepEqual(gs, ws) && reflect.DeepEqual(gr, wr) {
				t.Errorf("%s%s: %s changed a little changes nothing", path, key, kept)
			}
		})
		if tried < 20 {
			t.Errorf("%s: only %d figures were tried", path, tried)
		}
	}
}

// TestKeyTables: a row of the tables of keys becomes the shape that its columns
// say.
func TestKeyTables(t *testing.T) {
	s := shapeOf("keys", []byte(strings.TrimSpace(`
record,key,kind,words,range,stored,otherwise,must,unused,what
top,word,word,a|b|c=a,,X if a,b,,,one of them
top,deep,length,,+-0.5..10,Y,,yes,,how deep
top,list,list,tools,1..,L,,,nobody asks,those there are
top,list/*,length,,2..30,,,,,
top,list/*,record,tool,2..30,,,,,

tool,size,length,,= ,S,,,,size
`)))
	word, deep, list := s.find("word"), s.find("deep"), s.find("list")
	w := word.shape
	if got := fmt.Sprint(w.words, w.was, w.stored, []string{w.truth, word.otherwise.raw}, word.must); got !=
		"[a b] map[c:a] [X] [a b] false" {
		t.Error(got)
	}
	if d := deep.shape; d.lo != 0.5 || d.hi != 10 || !d.signed || !d.zero || !deep.must {
		t.Errorf("%+v", d)
	}
	if l := list.shape; l.min != 1 || l.max != 0 || l.say != "tools" || list.unused != "nobody asks" {
		t.Errorf("%+v", l)
	}
	item := list.shape.item
	if len(item.alts) != 2 || item.alts[1].find("size").shape.hi != 30 {
		t.Errorf("%+v", item)
	}
	for _, bad := range []string{
		"top,a,lenth,,1..2,A,,,,", "top,a,length,,1-2,A,,,,", "top,a,length,,1..2,,,,,", "top,a,record,other,,,,,,",
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s is taken for a row", bad)
				}
			}()
			shapeOf("keys", []byte("record,key,kind,words,range,stored,otherwise,must,unused,what\n"+bad+"\n"))
		}()
	}
}

// TestOneOrder: the mistakes of a file are told in one order, however often it
// is read.
func TestOneOrder(t *testing.T) {
	outline := "outline: {length: 60, height: 24}"
	text := strings.Replace(dullWith(t, outline), outline, "outline: {}", 1)
	first := ""
	for i := range 40 {
		_, err := Parse("job.yaml", situations, []byte(text), Options{})
		if err == nil {
			t.Fatal("an outline of nothing is taken")
		}
		if i == 0 {
			first = err.Error()
		}
		if err.Error() != first {
			t.Fatalf("first\n%s\nthen\n%s", first, err)
		}
	}
	if !strings.Contains(first, "length is missing") || !strings.Contains(first, "height is missing") {
		t.Error(first)
	}
}

// TestInstrumentOfTheTable: what an instrument can know follows the table of
// instruments in force, and a row that a shop adds is one.
func TestInstrumentOfTheTable(t *testing.T) {
	shop := `rebush_shop: 1
machine: {kind: mill}
tables: {instruments: own.csv}
instruments: [{name: beam reader, u: %s}]
`
	for _, c := range []struct {
		rows, u string
		good    bool
	}{
		{"beam,beam,width,0.0003,made up", "0.0004", true},    // within five times
		{"beam,beam,width,0.0003,made up", "0.0016", false},   // beyond it
		{"other,other,width,0.0003,made up", "0.0005", false}, // none known: as the default says
	} {
		dir := t.TempDir()
		own := "# Ours.\nkind,words,reads,u_mm,source\n" + c.rows + "\ndefault width,,width,0.02,made up\n"
		if err := os.WriteFile(dir+"/own.csv", []byte(own), 0o600); err != nil {
			t.Fatal(err)
		}
		_, err := parseShop("shop.yaml", dir, []byte(fmt.Sprintf(shop, c.u)))
		if (err == nil) != c.good {
			t.Errorf("%s with u %s: %v", c.rows, c.u, err)
		}
		if err != nil && !strings.Contains(err.Error(), "an instrument called beam reader") {
			t.Error(err)
		}
	}
}

// TestOtherwise: what stands for a key that is not given: a shaft is of steel,
// teeth are of 20 degrees and shafts square, an oil hole comes from above, and
// a seat is sound until somebody says it is not.
func TestOtherwise(t *testing.T) {
	for key, says := range map[string]func(j *Job) bool{
		"/chassis/condition":        func(j *Job) bool { return j.Chassis.Condition == "unknown" },
		"/shafts/material":          func(j *Job) bool { return j.Shafts[0].Material == "steel" },
		"/gears/pressure_angle":     func(j *Job) bool { return j.Gears[0].PressureAngle == 20 },
		"/gears/shaft_angle":        func(j *Job) bool { return j.Gears[0].ShaftAngle == 90 },
		"/shafts/bores/left/oil/at": func(j *Job) bool { return j.Shafts[0].Bores[0].Oil.AtDeg == 90 },
		"/shafts/bores/left/seat/sound": func(j *Job) bool {
			for _, s := range j.Shafts {
				if b := s.On(Left); b != nil && b.Seat != nil {
					return b.Seat.Sound
				}
			}
			return false
		},
	} {
		doc, _ := tree(t, "testdata/all-keys.yaml")
		gone := 0
		takeAway(doc.Content[0], "", key, &gone)
		data, err := yaml.Marshal(doc)
		if err != nil || gone == 0 {
			t.Fatalf("%s: %d taken away, %v", key, gone, err)
		}
		j, err := Parse("job.yaml", "testdata", data, Options{})
		if err != nil {
			t.Errorf("%s: %v", key, err)
			continue
		}
		if !says(j) {
			t.Errorf("%s: something else stands in its place", key)
		}
	}
}

// takeAway takes a key away wherever it stands, lists passed through.
func takeAway(n *yaml.Node, path, key string, gone *int) {
	if n.Kind == yaml.SequenceNode {
		for _, c := range n.Content {
			takeAway(c, path, key, gone)
		}
	}
	if n.Kind != yaml.MappingNode {
		return
	}
	var kept []*yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		here := path + "/" + n.Content[i].Value
		if here == key {
			*gone++
			continue
		}
		takeAway(n.Content[i+1], here, key, gone)
		kept = append(kept, n.Content[i], n.Content[i+1])
	}
	n.Content = kept
}

// TestPinClasses: the classes of pins are those of the table in force.
func TestPinClasses(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(dir+"/own.csv", []byte("# Ours.\nclass,tolerance_mm,source\nhouse,0.004,made up\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	shop := "rebush_shop: 1\nmachine: {kind: mill}\npins: {from: 1, to: 6, step: 0.01, class: %s}\n%s"
	for _, c := range []struct{ class, tables, want string }{
		{"zz", "", ""},
		{"house", "tables: {pin_classes: own.csv}\n", ""},
		{"ZZ", "tables: {pin_classes: own.csv}\n", `shop.yaml:3:43: class: no class of pins is called "ZZ"; it may be house;`},
		{"QQ", "", `shop.yaml:3:43: class: no class of pins is called "QQ"; it may be XXX, XX, X, Y, Z or ZZ;`},
	} {
		_, err := parseShop("shop.yaml", dir, []byte(fmt.Sprintf(shop, c.class, c.tables)))
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.Contains(err.Error(), c.want)) {
			t.Errorf("%s: %v\nwant %s", c.class, err, c.want)
		}
	}
}

// TestRuleOfShop: a rule that cannot be is refused at its line, with the slip that
// it looks like.
func TestRuleOfShop(t *testing.T) {
	for rules, want := range map[string]string{
		"{second_hand_chance: 60}": "shop.yaml:3:29: rules: second_hand_chance: 60 is outside 0 to 1; it is a share, not percent: write 0.6; " +
			"see `rebush tables rules`",
		"{wall_none_radii: -1}": "shop.yaml:3:26: rules: wall_none_radii: -1 is outside 0 to 5 seat radius; see `rebush tables rules`",
		"{friction: 0.1}":       "shop.yaml:3:19: rules: friction takes two figures [low, high]; see `rebush tables rules`",
		"{clearance_max: 50}":   "shop.yaml:3:24: rules: there is no rule clearance_max; did you mean `clearance_max_um`? `rebush tables rules` lists them",
	} {
		_, err := parseShop("shop.yaml", ".", []byte("rebush_shop: 1\nmachine: {kind: mill}\nrules: "+rules+"\n"))
		if err == nil || err.Error() != want {
			t.Errorf("%v\nwant %s", err, want)
		}
	}
}

// TestTableInUTF16: a shop's own table may be saved as spreadsheets save it.
func TestTableInUTF16(t *testing.T) {
	var wide []byte
	for _, r := range "\uFEFF# Ours.\nclass,tolerance_mm,source\nhouse,0.004,made up\n" {
		wide = append(wide, byte(r), byte(r>>8))
	}
	dir := laid(t, map[string]string{"own.csv": string(wide)})
	_, err := parseShop("shop.yaml", dir, []byte("rebush_shop: 1\nmachine: {kind: mill}\npins: {from: 1, to: 6, step: 0.01, class: house}\n"+
		"tables: {pin_classes: own.csv}\n"))
	if err != nil {
		t.Error(err)
	}
}
