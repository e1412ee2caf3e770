package job

import (
	"fmt"
	"strings"
)

// checkNames holds the names that a person chose against what `why` can be
// asked, and the bores and bushes that choose: and finish: name against those
// there are.
func checkNames(r *reader, j *Job, root *value) {
	for _, list := range []string{"shafts", "gears", "bushes"} {
		for _, v := range root.get(list).items() {
			id := v.get("name")
			if id == nil {
				id = v.get("code")
			}
			if id != nil && strings.ContainsAny(id.raw, "/\n") {
				r.say(id.pos, fmt.Sprintf("%s: %q holds a /", id.name, short(id.raw)),
					"leave it out: the / parts the names in a KEY of `rebush why`")
			}
		}
	}
	bores, codes := j.boreNames(), []string{}
	for _, b := range j.Bushes {
		codes = append(codes, b.Code)
	}
	checkChoose(r, root.get("choose"), bores, codes)
	for _, key := range []string{"finish", "way"} {
		if f := root.get(key); f != nil {
			for _, name := range f.order {
				known(r, f.get(name), "bore", name, bores)
			}
		}
	}
	checkWay(r, j, root.get("way"))
}

// checkWay: a hole of a shaft that is left alone is mended in no way.
func checkWay(r *reader, j *Job, way *value) {
	if way == nil {
		return
	}
	for _, name := range way.order {
		v := way.get(name)
		s, b := j.Bore(name)
		if b == nil || !s.Leave || v.raw == "keep" || v.raw == "auto" {
			continue
		}
		r.say(v.pos,
			fmt.Sprintf("%s: %s is left alone (do: leave), and way wants %s for its hole", name, s.Name, v.raw),
			"write keep here, or take do: leave away")
	}
}

func checkChoose(r *reader, c *value, bores, codes []string) {
	switch {
	case c == nil:
	case c.shape.kind == aText:
		if !strings.EqualFold(c.raw, "auto") {
			known(r, c, "bush", c.raw, codes)
		}
	default:
		for _, name := range c.order {
			v := c.get(name)
			known(r, v, "bore", name, bores)
			if !strings.EqualFold(v.raw, "auto") {
				known(r, v, "bush", v.raw, codes)
			}
		}
	}
}
