package job

import (
	_ "embed"
	"strconv"
	"strings"

	"rebush/fits/table"
)

var (
	//go:embed data/job_keys.csv
	jobKeys []byte
	//go:embed data/shop_keys.csv
	shopKeys []byte
)

// jobShape and shopShape are every key of a job file and of a shop file, as
// the tables of keys give them.
var (
	jobShape  = shapeOf("job_keys.csv", jobKeys)
	shopShape = shapeOf("shop_keys.csv", shopKeys)
)

// keyTable is a table of keys while it is made into shapes.
type keyTable struct {
	rows map[string][]table.Row // by record
	made map[string]*shape
}

// shapeOf reads a table of keys. A table that cannot be read is a fault in
// this program, and every test finds it.
func shapeOf(name string, data []byte) *shape {
	t, err := table.Parse(name, name, data)
	if err != nil {
		panic("job: " + err.Error())
	}
	k := keyTable{map[string][]table.Row{}, map[string]*shape{}}
	for _, row := range t.Rows {
		record := row.Get("record")
		k.rows[record] = append(k.rows[record], row)
	}
	return k.record(t.Rows[0].Get("record"), "")
}

// record makes the shape of a record. span is the range that a key of it takes
// where its own is `=`.
func (t keyTable) record(name, span string) *shape {
	id := name + " " + span
	if s := t.made[id]; s != nil {
		return s
	}
	s := &shape{kind: aRecord}
	t.made[id] = s
	last := map[string]*shape{} // the form that the last row of a key gave
	for _, row := range t.rows[name] {
		path, f := row.Get("key"), t.form(row, span)
		of, items := strings.CutSuffix(path, "/*")
		if !items && f.kind != aRecord && len(f.stored) == 0 && !f.byHand {
			panic("job: " + row.Address() + ": nothing says where " + path + " is stored")
		}
		if items {
			last[of].item = also(last[of].item, f)
		} else if k := s.find(path); k != nil {
			k.shape = also(k.shape, f)
		} else {
			s.keys = append(s.keys, key{name: path, shape: f, what: row.Get("what"), must: row.Get("must") == "yes",
				otherwise: otherwise(f, row.Get("otherwise")), unused: row.Get("unused")})
		}
		last[path] = f
	}
	if len(s.keys) == 0 {
		panic("job: the tables of keys have no record " + name)
	}
	return s
}

// also gives a key one more form that it may have.
func also(s, more *shape) *shape {
	switch {
	case s == nil:
		return more
	case s.kind == anEither:
		s.alts = append(s.alts, more)
		return s
	}
	return either(s, more)
}

// otherwise is the value of a key that was not given, nil where there is none.
func otherwise(s *shape, text string) *value {
	if text == "" {
		return nil
	}
	num, _ := strconv.ParseFloat(text, 64) // of a word nobody asks for its number
	return &value{shape: s, raw: text, num: num}
}

var kinds = map[string]kind{
	"text": aText, "word": aWord, "yes/no": aYesNo, "length": aLength, "number": aNumber, "whole": aWhole,
	"force": aForce, "date": aDate, "list": aList, "names": aNamed,
}

// form makes the shape of one row.
func (t keyTable) form(row table.Row, span string) *shape {
	words, within := row.Get("words"), row.Get("range")
	if within == "=" {
		within = span
	}
	var s shape
	switch name := row.Get("kind"); name {
	case "record":
		s = *t.record(words, within)
	case "place":
		s = *place()
	case "degrees":
		s = *degrees()
	case "point":
		s = *list(2, 2, place(), "x and y")
	case "pair":
		s = *list(2, 2, nil, "low and high")
	case "ends":
		s = *ends(within)
	default:
		k, ok := kinds[name]
		if !ok {
			panic("job: " + row.Address() + ": there is no kind " + name)
		}
		s = shape{kind: k}
		switch k {
		case aWord:
			s.may(words)
		case aList:
			s.say = words
			s.count(within)
		case aNumber, aWhole:
			if words != "" {
				s.units = strings.Split(words, "|")
			}
			s.within(within)
		default:
			s.within(within)
		}
	}
	s.keepIn(row.Get("stored"))
	return &s
}
