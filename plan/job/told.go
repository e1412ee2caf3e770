package job

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	plainWords = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9 ./()-]*[A-Za-z0-9)]$|^[A-Za-z]$`)
	// taken are words that YAML reads as something else.
	taken = map[string]bool{"yes": false, "no": false, "y": true, "n": true, "on": true, "off": true, "null": true,
		"true": true, "false": true}
)

// datumWords say what the figures of a job are measured from.
const datumWords = "lower left corner of the left plate, long edge is x"

// tell puts the answers that are due into a file.
func (iv *Interview) tell() (of *leaf) {
	of = &leaf{}
	of.set("rebush", "1")
	of.set("units", "mm")
	of.set("like", quoted(iv.said[likeAt]))
	if iv.pattern == nil {
		of.set("datum", datumWords)
	}
	iv.steps(func(st Step) bool {
		if text, ok := iv.said[st.at()]; ok && text != "" && !st.ofShop {
			iv.put(of, st, text)
		}
		return true
	})
	if len(of.below["shafts"].kids()) == 0 && iv.pattern == nil {
		of.set("shafts", "") // the reader names what is missing
	}
	for i, name := range of.below["shafts"].kids() {
		s := of.below["shafts"].below[name]
		if s.below["name"] == nil {
			s.set("name", quoted(iv.Called(i)))
		}
	}
	for _, name := range of.below["gears"].kids() {
		g := of.below["gears"].below[name]
		if names := iv.named("gears"); len(names) > 0 {
			g.set("name", quoted(names[0]))
			continue
		}
		if k := g.below["kind"]; k != nil {
			g.set("name", "drive")
			if g.at("wheel").below["on"] == nil {
				g.set("wheel/on", of.at("shafts/#0/name").text)
			}
		}
	}
	iv.drawer(of)
	if iv.makesShop() {
		of.set("shop", ShopName)
	}
	return of
}

func (l *leaf) kids() []string {
	if l == nil {
		return nil
	}
	return l.names
}

// drawer gives each bush a name, and the bush that can be turned its line.
func (iv *Interview) drawer(of *leaf) {
	for i, name := range of.below["bushes"].kids() {
		b := of.below["bushes"].below[name]
		if b.below["code"] == nil {
			b.set("code", quoted("drawer "+strconv.Itoa(i+1)))
		}
		if b.below["material"] == nil {
			b.set("material", quoted(question("bush", "material").otherwise))
		}
	}
	if iv.job("shop", "lathe") == "yes" {
		t := of.at("bushes/#turned")
		t.set("code", "own turning")
		t.set("make", "turned")
		t.set("material", "bearing bronze C93200")
	}
}

// put stores one answer.
func (iv *Interview) put(of *leaf, st Step, text string) {
	vals, wrong := st.read(text, iv.units())
	if wrong != "" || len(st.figures) == 0 {
		return
	}
	path := func(key string) string {
		key = strings.Replace(key, "/#/", "/#"+strconv.Itoa(st.Index)+"/", 1)
		return strings.Replace(key, "@", string(st.Side), 1)
	}
	switch st.Part + "/" + st.ID {
	case "owner/keep":
		if vals[0] == "yes" {
			of.set("chassis/original", "keep")
		}
		return
	case "shaft/leave":
		if vals[0] == "yes" {
			of.set(path(st.figures[0].keys[0]), "leave")
		}
		return
	case "gear/kind":
		if vals[0] == "none" {
			return
		}
	case "gear/module":
		if dp, ok := strings.CutSuffix(vals[0], " DP"); ok {
			of.set(path("gears/#/diametral_pitch"), dp)
			return
		}
	case "bush/class":
		vals = iv.classed(st, vals)
		if slices.Contains(vals, "over") {
			iv.soldInInch(of, st.Index)
			return
		}
	case "bore/worn to":
		if vals[0] == "" {
			return
		}
	case "bore/edge", "bore/edge 2":
		if vals[1] == "" {
			vals[1] = "270"
		}
	case "owner/price":
		of.set("swap/second_hand", "yes")
		vals[0], _, _ = strings.Cut(vals[0], " ")
	case "owner/value", "bush/price":
		vals[0], _, _ = strings.Cut(vals[0], " ")
	case "shop/file":
		if vals[0] == "none" || vals[0] == "-" {
			return
		}
	}
	if len(st.figures) == 1 && st.figures[0].shape.kind == aList {
		for i := range vals {
			vals[i] = quoted(vals[i])
		}
		of.set(path(st.figures[0].keys[0]), "["+strings.Join(vals, ", ")+"]")
		return
	}
	for i, f := range st.figures {
		for _, key := range f.keys {
			of.set(path(key), quoted(vals[i]))
		}
	}
}

// classed are the classes of a bush, none where it was measured. Of a sintered
// one that is sold by its size they are those that such bushes come in.
func (iv *Interview) classed(st Step, vals []string) []string {
	switch {
	case slices.Contains(vals, "measured"):
		return []string{"", ""}
	case slices.Contains(vals, "sold"):
		usual := usualOf(iv.bushMaterial(st.Index), iv.inchBush(st.Index))
		return []string{usual.bore, usual.od}
	}
	return vals
}

// usualName is what a shaft is called where nobody says.
func usualName(i int) string {
	usual := []string{"front axle", "rear axle", "third shaft", "fourth shaft", "fifth shaft", "sixth shaft",
		"seventh shaft", "eighth shaft"}
	return usual[i%len(usual)]
}
