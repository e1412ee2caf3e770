package job

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
)

// mark begins a line of the file that holds an answer.
const mark = "#= "

const aboutAnswers = `
# Below are the answers that this file is made of: rebush start with the name of
# this file goes on from them. A file that was changed by hand it leaves alone.
`

// ErrByHand says that a file was changed since its answers were written.
var ErrByHand = errors.New("it was changed by hand since; start would lose the change, so go on in an editor")

// ErrNoAnswers says that a file was not made by an interview.
var ErrNoAnswers = errors.New("it holds no answers of start")

// Text is the job file as far as it is known, with the answers behind it.
func (iv *Interview) Text() []byte {
	out := iv.tell().yaml()
	out = append(out, aboutAnswers...)
	for _, at := range iv.order {
		keep := ""
		if iv.kept[at] {
			keep = " (kept)"
		}
		out = fmt.Appendf(out, "%s%s%s: %s\n", mark, at, keep, iv.said[at])
	}
	return out
}

// Resume takes up the answers of a file; ErrByHand or ErrNoAnswers.
func (iv *Interview) Resume(data []byte) error {
	found := false
	for _, line := range strings.Split(string(data), "\n") {
		rest, ok := strings.CutPrefix(line, mark)
		if !ok {
			continue
		}
		at, text, ok := strings.Cut(strings.TrimSuffix(rest, "\r"), ":")
		if !ok {
			return ErrByHand
		}
		at, kept := strings.CutSuffix(at, " (kept)")
		if _, twice := iv.said[at]; twice {
			return ErrByHand
		}
		iv.said[at], iv.kept[at], found = strings.TrimPrefix(text, " "), kept, true
		iv.order = append(iv.order, at)
	}
	if !found {
		return ErrNoAnswers
	}
	if name := iv.said[likeAt]; name != "" {
		if err := iv.Like(name); err != nil {
			return err
		}
	}
	if !bytes.Equal(iv.Text(), bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))) {
		return ErrByHand
	}
	return nil
}

// makesShop says whether the interview makes a shop file.
func (iv *Interview) makesShop() bool {
	_, asked := iv.said["shop/machine"]
	return asked && iv.Folder != "" && iv.said["shop/file"] == ""
}

// ShopText is the shop file of the answers, nil where none is made.
func (iv *Interview) ShopText() []byte {
	if !iv.makesShop() {
		return nil
	}
	of := &leaf{}
	of.set("rebush_shop", "1")
	of.set("units", "mm")
	for st := range iv.steps {
		if text := iv.said[st.at()]; text != "" && st.ofShop {
			iv.putShop(of, st, text)
		}
	}
	if of.at("machine/kind").text == "drill press" {
		of.set("machine/spindle", "[500, 800, 1300, 2000, 2900]")
	}
	of.set("drills/tool", "HSS")
	of.set("drills/series", "[metric 0.1]")
	of.set("instruments", "[{name: digital calliper outside, u: 0.012}, {name: digital calliper inside, u: 0.023}]")
	of.set("hours", "{setup: 0.5, strip_and_rebuild: 1.0}")
	w := &writer{}
	w.record(of, shopShape, "", 0)
	return []byte("# What this shop has, as it was told to rebush start. What was not asked (spindle,\n" +
		"# drills, callipers, hours) is a modest bench: change it to what you have.\n" + strings.Join(w.lines, "\n") + "\n")
}

func (iv *Interview) putShop(of *leaf, st Step, text string) {
	vals, wrong := st.read(text, iv.units())
	if wrong != "" {
		return
	}
	own := func(v string) string { // the shop file is in mm
		if iv.units() != 0 && plainNumber.MatchString(v) {
			v += " in"
		}
		return quoted(v)
	}
	switch st.ID {
	case "reamers":
		for i := range vals {
			of.set(fmt.Sprintf("reamers/#%d/size", i), own(vals[i]))
			of.set(fmt.Sprintf("reamers/#%d/class", i), "H7")
		}
	case "mandrels":
		for i := range vals {
			vals[i] = own(vals[i])
		}
		of.set("mandrels", "["+strings.Join(vals, ", ")+"]")
	case "rate":
		amount, currency, _ := strings.Cut(vals[0], " ")
		of.set("rates/per_hour", amount)
		of.set("rates/currency", quoted(currency))
	case "pins":
		for i, f := range st.figures {
			if vals[i] != "" {
				of.set(f.keys[0], own(vals[i]))
			}
		}
	default:
		of.set(st.figures[0].keys[0], quoted(vals[0]))
	}
}

// Doubts are what does not go with what was said before, now that a question is
// answered: the mistakes that the reader of files finds with the answer and does
// not find without it. What is only missing is none.
func (iv *Interview) Doubts(st Step) (out []string) {
	at := st.at()
	if iv.kept[at] || iv.said[at] == "" {
		return nil
	}
	if wide := iv.wide(st); wide != "" {
		out = append(out, wide)
	}
	with := iv.problems()
	text := iv.said[at]
	iv.said[at] = ""
	without := iv.problems()
	iv.said[at] = text
	for _, p := range with {
		if !slices.ContainsFunc(without, func(o Problem) bool { return o.Wrong == p.Wrong }) && !p.missing() {
			out = append(out, p.Wrong+"; "+p.Right)
		}
	}
	return out
}

// missing says that a problem is of a value that is not given, or not yet.
func (p Problem) missing() bool {
	for _, s := range []string{"no value is given", "is missing", "neither", "is not given", "give either",
		"there is none at all"} {
		if strings.Contains(p.Wrong, s) || strings.Contains(p.Right, s) {
			return true
		}
	}
	return false
}

// problems are what the reader says of the file as far as it is known.
func (iv *Interview) problems() Problems {
	_, err := Parse(iv.File, iv.Folder, iv.tell().yaml(), Options{})
	var list Problems
	var file *FileError
	switch {
	case errors.As(err, &list):
		return list
	case errors.As(err, &file):
		return Problems{{Wrong: file.Path + ": " + plainFileError(file.Err),
			Right: "name it as it stands in the folder of the job, or none where there is none yet"}}
	}
	return nil
}
