package job

import "strings"

// bush asks for one bush of the drawer; false when there are no more.
func (a *asker) bush(d *draft) bool {
	which, none := "a bush you have", "none"
	if len(d.bushes) > 0 {
		which, none = "another kind of bush you have", "no more"
	}
	b := draftBush{od: a.put("bush", "od", which, none)}
	if b.od == "" {
		d.turns = a.yes("drawer", "turns")
		return false
	}
	b.odClass = a.put("bush", "od class")
	b.code = a.or("bush", "code", "drawer "+string(rune('1'+len(d.bushes)%9)))
	for _, other := range d.bushes {
		if other.code == b.code {
			b.code += "b"
		}
	}
	b.bore = a.put("bush", "bore")
	b.boreClass = a.put("bush", "bore class")
	b.length = a.put("bush", "bush length")
	if b.flange = a.put("bush", "flange"); b.flange != "" {
		b.thick = a.put("bush", "thick")
	}
	b.material = a.put("bush", "bush material")
	b.onHand = a.put("bush", "on hand")
	b.price = a.put("bush", "price")
	d.bushes = append(d.bushes, b)
	return !a.ended && len(d.bushes) < 9
}

// owner asks what decides whether anything is to be done: whether the original
// is kept, what it is worth, what another truck would cost, and an hour here.
func (a *asker) owner(d *draft) {
	d.keep = a.yes("owner", "keep")
	d.value = a.put("owner", "value")
	if d.price = a.put("owner", "price"); d.price != "" {
		d.swapHours = a.put("owner", "swap hours")
		d.second = a.put("owner", "second")
	}
	if d.shop = a.put("owner", "shop"); d.shop == "" {
		d.rate = a.put("owner", "rate")
	}
}

var symptomKeys = [...]string{"rims", "hubs", "gauge", "ohms"}

func (a *asker) yes(part, id string) bool {
	word, _ := boolWord(a.put(part, id))
	return word == "yes"
}

// wheelbase asks for the distance of two shafts, where there are two.
func (a *asker) wheelbase(d *draft) {
	if len(d.shafts) < 2 {
		return
	}
	if d.base.found = a.put("wheelbase", "found"); d.base.found == "" {
		return
	}
	d.base.from = a.or("wheelbase", "from", d.shafts[0].name)
	d.base.to = a.or("wheelbase", "to", d.shafts[1].name)
	d.base.sister = a.put("wheelbase", "sister")
}

// gear asks for the gear that drives one of the shafts, where there is one.
func (a *asker) gear(d *draft) {
	kind := strings.ToLower(a.put("gear", "kind"))
	if kind == "" || kind == "none" {
		return
	}
	g := &draftGear{kind: kind}
	d.gear = g
	first := "front axle"
	if len(d.shafts) > 0 {
		first = d.shafts[0].name
	}
	g.on = a.or("gear", "on", first)
	g.module = a.put("gear", "module")
	g.angle = a.put("gear", "angle")
	g.teeth = a.put("gear", "teeth")
	g.tip = a.put("gear", "tip")
	g.runout = a.put("gear", "runout")
	g.face = a.put("gear", "face")
	g.fromLeft = a.put("gear", "from left")
	if g.kind == "worm" {
		g.form = a.put("worm", "form")
		g.starts = a.put("worm", "starts")
		g.mateTip = a.put("worm", "worm tip")
		otherwise := ""
		if g.mateTip == "" {
			otherwise = need1
		}
		g.pitch = a.or("worm", "pitch", otherwise)
		g.height = a.put("worm", "height")
		g.moved = a.yes("worm", "worm moved")
		return
	}
	g.pinionTeeth = a.put("pinion", "pinion teeth")
	g.mateTip = a.put("pinion", "pinion tip")
	g.at = a.put("pinion", "pinion at")
	g.moved = a.yes("pinion", "pinion moved")
}
