package job

import (
	"fmt"
	"iter"
	"maps"
	"slices"
	"strconv"
	"strings"

	"rebush/fits/dim"
)

// ShopName is the file in which `start` writes down what a shop has.
const ShopName = "shop.yaml"

// Interview is a job file while it is asked for: the answers in their order, and
// the questions that are due because of them. The file is made of the answers
// and holds them, so that a later interview goes on from it.
type Interview struct {
	File   string // as the user named it
	Folder string // of the file, "" where there is none and no shop file can be written
	Shop   string // a shop file that is there already, "" for none

	pattern *Pattern // that the truck is like, nil: none

	said  map[string]string // by address
	order []string
	was   map[string]string // answers that were gone back from
	kept  map[string]bool   // answers that are kept though they do not go with others
}

// NewInterview begins one.
func NewInterview(file string) *Interview {
	return &Interview{File: file, said: map[string]string{}, was: map[string]string{}, kept: map[string]bool{}}
}

// Step is a question put of one thing.
type Step struct {
	Question
	Index int  // of the shaft, bush or hole, from 0
	Side  Side // of a hole
}

// at is its address, under which its answer is kept.
func (st Step) at() string {
	where := st.Part
	if repeated[st.Part] {
		where += " " + strconv.Itoa(st.Index+1)
	}
	if st.Side != "" {
		where += " " + string(st.Side)
	}
	return where + "/" + st.ID
}

// repeated are the parts that are asked of each of several things.
var repeated = map[string]bool{"shaft": true, "bore": true, "bush": true, "feature": true, "more": true}

// more is the question which group comes next. It has no row in the list.
func more(k int) Step { return Step{Question: Question{Part: "more", ID: "group"}, Index: k} }

// answer is what was said to a question, "" where it was not, or was left open.
func (iv *Interview) answer(st Step) string {
	text, ok := iv.said[st.at()]
	if !ok {
		return ""
	}
	vals, wrong := st.read(text, iv.units())
	if wrong != "" || len(vals) == 0 || text == "" {
		return text
	}
	return vals[0]
}

// job is the answer to a question that is asked once.
func (iv *Interview) job(part, id string) string {
	return iv.answer(Step{Question: question(part, id)})
}

func (iv *Interview) units() dim.Unit {
	if text := iv.said["job/units"]; wordOf(text, []string{"in"}) != "" || otherWords[strings.ToLower(text)] == "in" {
		return dim.Inch
	}
	return dim.MM
}

func (iv *Interview) shafts() int {
	if n := len(iv.named("shafts")); n > 0 {
		return n
	}
	n, _ := strconv.Atoi(iv.job("plates", "shafts"))
	return max(1, min(n, mostShafts))
}

// due says whether a question is to be put.
func (iv *Interview) due(st Step) bool {
	for _, c := range st.when {
		of := Step{Question: question(c.part, c.id)}
		if repeated[c.part] {
			of.Index = st.Index
			if c.part == "bore" {
				of.Side = st.Side
			}
		}
		text, asked := iv.said[of.at()]
		got := iv.answer(of)
		if !asked && c.part == "gear" && c.id == "kind" && iv.kindOfGear() != "" {
			got, asked = iv.kindOfGear(), true
		}
		switch c.op {
		case "=":
			if c.value == "" && (text != "" || !asked || iv.Folder == "") || c.value != "" && got != c.value {
				return false
			}
		case "!=":
			if got == c.value || !asked {
				return false
			}
		case ">":
			n := iv.shafts()
			if than, _ := strconv.Atoi(c.value); n <= than {
				return false
			}
		default:
			if text == "" {
				return false
			}
		}
	}
	return !iv.given(st)
}

// parts are the parts of the list in their order.
var parts = func() (out []string) {
	for _, q := range questions() {
		if !slices.Contains(out, q.Part) {
			out = append(out, q.Part)
		}
	}
	return out
}

// steps yields the questions that are due, in the order in which they are put.
// Whoever stops at the first without an answer has the next one.
func (iv *Interview) steps(yield func(Step) bool) {
	if !iv.group("", yield) {
		return
	}
	for k := 0; ; k++ {
		name, asked := iv.said[more(k).at()]
		if !asked || !iv.group(name, yield) {
			return
		}
	}
}

// group yields the questions of a group; false where it was stopped.
func (iv *Interview) group(name string, yield func(Step) bool) bool {
	ask := func(part string, index int, side Side, names ...string) bool {
		for _, q := range questions() {
			if st := (Step{q, index, side}); q.Part == part && slices.Contains(names, q.Group) && iv.due(st) && !yield(st) {
				return false
			}
		}
		return true
	}
	for _, part := range parts() {
		switch part {
		case "bore": // with its shaft
		case "shaft":
			for i := range iv.shafts() {
				if !ask("shaft", i, "", name) || !ask("bore", i, Left, name) || !ask("bore", i, Right, name) {
					return false
				}
			}
		case "bush", "feature":
			another := question(part, "another")
			for k := 0; k == 0 || name == another.Group && iv.answer(Step{another, k - 1, ""}) == "yes" && k < 20; k++ {
				names := []string{name}
				if k > 0 {
					names = append(names, "")
				}
				if !ask(part, k, "", names...) {
					return false
				}
			}
		default:
			if !ask(part, 0, "", name) {
				return false
			}
		}
	}
	return true
}

// Next is the question that is put next; false where all of the short way, and
// of the groups that were asked for, is answered.
func (iv *Interview) Next() (Step, bool) {
	for st := range iter.Seq[Step](iv.steps) {
		if _, ok := iv.said[st.at()]; !ok {
			return st, true
		}
	}
	return Step{}, false
}

// Left is how many questions are still to come, as things stand.
func (iv *Interview) Left() (n int) {
	for st := range iter.Seq[Step](iv.steps) {
		if _, ok := iv.said[st.at()]; !ok {
			n++
		}
	}
	return n
}

// Answer takes what was typed to a question, "" to leave it open. It says what is
// wrong with it by itself; then it is not taken.
func (iv *Interview) Answer(st Step, text string) (wrong string) {
	text = strings.Join(strings.Fields(text), " ")
	if text != "" {
		if _, wrong := st.read(text, iv.units()); wrong != "" {
			return wrong
		}
		if wrong := iv.names(st, text); wrong != "" {
			return wrong
		}
	}
	at := st.at()
	if _, again := iv.said[at]; !again {
		iv.order = append(iv.order, at)
	}
	iv.said[at] = text
	delete(iv.was, at)
	if at == "shop/file" && text != "" {
		iv.lathe(text)
	}
	return ""
}

// lathe answers for a shop that has a file whether it can turn a bush.
func (iv *Interview) lathe(file string) {
	shop, err := ReadShop(beside(iv.Folder, file))
	if err == nil && shop.Lathe {
		iv.said[latheAt] = "yes"
		iv.order = append(iv.order, latheAt)
	}
}

const latheAt = "shop/lathe"

// names says where an answer refers to a thing that there is not.
func (iv *Interview) names(st Step, text string) string {
	if st.ID == "class" && wordOf(text, []string{"sold"}) != "" {
		if usualOf(iv.bushMaterial(st.Index), iv.inchBush(st.Index)).bore == "" {
			return "what is usual is known of sintered and bearing bronze only: measure it, or give its classes"
		}
	}
	if st.Part+"/"+st.ID != "gear/on" && st.Part != "wheelbase" || st.ID == "found" || st.ID == "sister" {
		return ""
	}
	var have []string
	for i := range iv.shafts() {
		have = append(have, iv.Called(i))
	}
	if !slices.Contains(have, text) {
		return fmt.Sprintf("there is no axle called %q; did you mean %q? There are %s", short(text), nearest(text, have),
			strings.Join(have, ", "))
	}
	return ""
}

func (iv *Interview) bushMaterial(k int) string {
	q := question("bush", "material")
	if m := iv.answer(Step{q, k, ""}); m != "" {
		return m
	}
	return q.otherwise
}

// Called is the name of a shaft.
func (iv *Interview) Called(i int) string {
	if names := iv.named("shafts"); i < len(names) {
		return names[i]
	}
	if name := iv.answer(Step{question("shaft", "name"), i, ""}); name != "" {
		return name
	}
	return usualName(i)
}

// Back takes the last answer back; false where there is none. It is offered when
// the question is put again.
func (iv *Interview) Back() bool {
	if len(iv.order) == 0 || iv.order[len(iv.order)-1] == likeAt {
		return false
	}
	last := iv.order[len(iv.order)-1]
	iv.was[last] = iv.said[last]
	iv.order = iv.order[:len(iv.order)-1]
	delete(iv.said, last)
	delete(iv.kept, last)
	if last == latheAt && iv.said["shop/file"] != "" {
		delete(iv.was, last)
		return iv.Back() // it was not asked
	}
	return true
}

// Again puts every question of a number again, with what was said; false where
// none of it was answered.
func (iv *Interview) Again(number int) bool {
	return iv.reopen(func(st Step, _ string) bool { return number > 0 && st.Number == number })
}

// Reopen puts again what has to be answered and was left open.
func (iv *Interview) Reopen() {
	iv.reopen(func(st Step, text string) bool { return text == "" && st.otherwise == "needed" })
}

func (iv *Interview) reopen(which func(Step, string) bool) (any bool) {
	var list []Step
	for st := range iv.steps {
		if text, ok := iv.said[st.at()]; ok && which(st, text) {
			list = append(list, st)
		}
	}
	for _, st := range list {
		at := st.at()
		iv.was[at] = iv.said[at]
		delete(iv.said, at)
		delete(iv.kept, at)
		iv.order = slices.DeleteFunc(iv.order, func(o string) bool { return o == at })
	}
	return len(list) > 0
}

// Keep leaves the answer to a question as it is, whatever it does not go with.
func (iv *Interview) Keep(st Step) { iv.kept[st.at()] = true }

// More puts a group of questions that come after the short way.
func (iv *Interview) More(group string) {
	st := more(0)
	for ; ; st.Index++ {
		if _, ok := iv.said[st.at()]; !ok {
			break
		}
	}
	iv.said[st.at()] = group
	iv.order = append(iv.order, st.at())
}

// Asked says whether a group was put.
func (iv *Interview) Asked(group string) bool {
	for at, text := range maps.All(iv.said) {
		if strings.HasPrefix(at, "more ") && text == group {
			return true
		}
	}
	return false
}
