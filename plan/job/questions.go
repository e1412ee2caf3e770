package job

import (
	_ "embed"
	"slices"
	"strconv"
	"strings"
	"sync"

	"rebush/fits/table"
)

var (
	//go:embed data/questions.csv
	questionTable []byte
	//go:embed data/more.csv
	moreTable []byte
)

// Question is a question of `start` and the box of the measuring form that
// holds its answer.
type Question struct {
	Number  int    // the same in both, from 1; 0: it has no box
	Part    string // of the form
	ID      string
	Group   string // in which it comes after the short way, "" on the short way itself
	Box     string // its name on the form
	Wide    float64
	Picture string   // its letter in the drawing of its part, "" where it is not drawn
	Words   []string // the answers that there are, none where it is a figure or a name
	Many    bool     // more than one of the words may hold at a time; the last one is none of them
	Figures []string // names of its figures, where it has more than one
	Ask     string
	Why     string // what it is for, one sentence
	Unknown string // what is done where it is not known
	Example string
	Gain    string // words of the changes of a plan that its answer could bring

	otherwise string
	when      []condition
	figures   []asks
	ofShop    bool
}

// asks is one figure of a question and the keys that take it.
type asks struct {
	keys  []string
	shape *shape
	like  bool // left out, it is like the one before it
	open  bool // it may be left out
}

// condition is what has to have been answered before.
type condition struct {
	part, id  string
	op, value string // "=", "!=", ">", or "" for any answer
}

// questions are all of them in their order. A table that cannot be read is a
// fault in this program, and every test finds it.
var questions = sync.OnceValue(func() []Question {
	t, err := table.Parse("questions", "questions.csv", questionTable)
	if err != nil {
		panic("job: " + err.Error())
	}
	var out []Question
	for _, row := range t.Rows {
		q := questionOf(row)
		if q.Wide, err = strconv.ParseFloat(row.Get("wide"), 64); err != nil && q.Box != "" {
			panic("job: " + row.Address() + ": " + err.Error())
		}
		out = append(out, q)
	}
	number(out)
	return out
})

// number gives the questions that have a box their numbers, in the order in which
// they are put: the short way, then group by group.
func number(list []Question) {
	n := 0
	for _, g := range append([]Group{{}}, Groups()...) {
		for i := range list {
			if list[i].Group == g.Name && list[i].Box != "" {
				n++
				list[i].Number = n
			}
		}
	}
}

func questionOf(row table.Row) Question {
	q := Question{Part: row.Get("part"), ID: row.Get("id"), Group: row.Get("asked"), Box: row.Get("box"),
		Picture: row.Get("picture"), Ask: row.Get("ask"), Why: row.Get("why"), Unknown: row.Get("unknown"),
		Example: row.Get("example"), Gain: row.Get("gain"), otherwise: row.Get("otherwise")}
	if q.Group == "first" {
		q.Group = ""
	}
	for _, text := range split(row.Get("when"), " and ") {
		q.when = append(q.when, conditionOf(text))
	}
	q.Words = split(row.Get("words"), "|")
	names := split(row.Get("figures"), "|")
	for i, keys := range split(row.Get("keys"), "|") {
		f := asks{keys: strings.Split(keys, "&")}
		if i < len(names) {
			_, f.like = strings.CutSuffix(names[i], "=")
			f.open = strings.HasPrefix(names[i], "(")
		}
		for k, key := range f.keys {
			f.keys[k], q.ofShop = strings.CutPrefix(key, "shop:")
		}
		f.shape = shapeOfKey(f.keys[0], q.ofShop)
		q.figures = append(q.figures, f)
	}
	for _, name := range names {
		q.Figures = append(q.Figures, strings.Trim(name, "(=)"))
	}
	q.Many = slices.Contains(q.Words, "nothing")
	if len(q.figures) == 1 && q.Words == nil {
		switch s := q.figures[0].shape; s.kind {
		case aWord:
			q.Words = s.words
		case aYesNo:
			q.Words = []string{"yes", "no"}
		}
	}
	return q
}

func split(s, by string) []string {
	if s == "" {
		return nil
	}
	return strings.Split(s, by)
}

func conditionOf(text string) condition {
	c := condition{}
	name := text
	for _, op := range []string{"!=", "=", ">"} {
		if before, value, ok := strings.Cut(text, op); ok {
			name, c.op, c.value = before, op, value
			break
		}
	}
	c.part, c.id, _ = strings.Cut(name, "/")
	return c
}

// shapeOfKey is what the key of a question may hold, through the marks for the
// thing and the side that it is asked of.
func shapeOfKey(path string, ofShop bool) *shape {
	s := jobShape
	if ofShop {
		s = shopShape
	}
	for _, name := range strings.Split(path, "/") {
		if name == "@" {
			name = "left"
		}
		if s.kind == anEither {
			s = s.forKind(func(k kind) bool { return k == aRecord || k == aList && strings.Trim(name, "#0123456789") == "" })
		}
		if s.kind == aList || s.kind == aNamed {
			if s = s.item; strings.Trim(name, "#0123456789") == "" || s.kind < aList {
				continue
			}
		}
		s = s.find(name).shape
	}
	return s.forKind(func(k kind) bool { return k < aList })
}

// Named is the name of its box, with its letter in the drawing.
func (q Question) Named() string {
	letter, _, _ := strings.Cut(q.Picture, " ")
	for _, f := range q.Figures {
		if letter != "" && strings.HasPrefix(f, letter+" ") {
			return q.Box
		}
	}
	return strings.TrimSpace(q.Picture + " " + q.Box)
}

// Questions lists what `start` asks and the form has boxes for, in their order.
func Questions() []Question { return slices.Clone(questions()) }

// question is the one of that part and name.
func question(part, id string) Question {
	for _, q := range questions() {
		if q.Part == part && q.ID == id {
			return q
		}
	}
	panic("job: there is no question " + part + "/" + id)
}

// Group is a group of questions that come after the short way.
type Group struct{ Name, Title string }

// Groups lists them in the order in which they are offered.
var Groups = sync.OnceValue(func() (out []Group) {
	t, err := table.Parse("more", "more.csv", moreTable)
	if err != nil {
		panic("job: " + err.Error())
	}
	for _, row := range t.Rows {
		out = append(out, Group{row.Get("group"), row.Get("title")})
	}
	return out
})
