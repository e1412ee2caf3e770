package job

import (
	"strings"
)

// bindJob fills a Job from what was read. Missing values stay zero.
func bindJob(r *reader, root *value, name, folder string) *Job {
	j := &Job{File: name, Folder: folder, where: r.where,
		Number: root.get("job").text(), Title: root.get("title").text(), Date: root.get("date").text(),
		Units: unitsOf(root.get("units")), Datum: root.get("datum").text()}
	j.Chassis = bindChassis(root.get("chassis"))
	for _, v := range root.get("shafts").items() {
		j.Shafts = append(j.Shafts, bindShaft(r, v, j.Chassis))
	}
	for _, v := range root.get("gears").items() {
		j.Gears = append(j.Gears, bindGear(v))
	}
	for i, v := range root.get("bushes").items() {
		j.Bushes = append(j.Bushes, bindBush(v, i))
	}
	j.Choose = bindChoose(root.get("choose"))
	j.Finish = bindChoose(root.get("finish"))
	for _, v := range root.get("accept").items() {
		j.Accept = append(j.Accept, v.text())
	}
	if made := root.get("made"); made != nil {
		for _, bore := range made.order {
			v := made.get(bore)
			j.Made = append(j.Made, Made{Bore: bore, Seat: v.get("seat").length(), Diameter: v.get("bore").length(),
				Centre: v.get("centre").point(), With: v.get("with").text()})
		}
	}
	c := root.get("complaint")
	j.Binds, j.Noisy, j.Rubs = c.get("binds").tri(), c.get("noisy").tri(), c.get("rubs").tri()
	s := root.get("symptoms")
	j.Symptoms = Symptoms{Rims: s.get("rims").text(), Hubs: s.get("hubs").text(), Gauge: s.get("gauge").text(), Ohms: s.get("ohms").text()}
	if v := root.get("swap"); v != nil {
		j.Swap = &Swap{Price: v.get("price").or(0), Hours: v.get("hours").or(0),
			SecondHand: v.get("second_hand").tri() == Yes, Chance: v.get("chance").number()}
	}
	j.Value = root.get("value").number()
	return j
}

// bindChoose reads one answer for every bore, under "", or one per bore. What
// is left to the plan is not in it.
func bindChoose(v *value) map[string]string {
	choose := map[string]string{}
	switch {
	case v == nil || v.by == nil && strings.EqualFold(v.raw, "auto"):
	case v.by == nil:
		choose[""] = v.raw
	default:
		for _, bore := range v.order {
			if code := v.get(bore).raw; !strings.EqualFold(code, "auto") {
				choose[bore] = code
			}
		}
	}
	return choose
}

func bindChassis(v *value) Chassis {
	c := Chassis{Material: v.get("material").text(), Condition: v.get("condition").text(),
		RailsAbove: v.get("rails").text() == "above", Current: v.get("current").text(),
		Width: v.get("width").length(), DrilledTogether: v.get("drilled_together").tri(),
		KeepOriginal: v.get("original").text() == "keep"}
	if c.Condition == "" {
		c.Condition = "unknown"
	}
	plates := v.get("plates")
	c.Thickness = Ends{plates.get("left").get("thickness").length(), plates.get("right").get("thickness").length()}
	o := v.get("outline")
	c.Length, c.Height = o.get("length").length(), o.get("height").length()
	for _, p := range o.get("corners").items() {
		c.Corners = append(c.Corners, p.point())
	}
	for _, f := range v.get("features").items() {
		c.Features = append(c.Features, Feature{Name: f.get("name").text(), Plate: Side(f.get("plate").text()),
			At: f.get("at").point(), Design: f.get("design").point(), Sister: f.get("sister").point(),
			Diameter: f.get("diameter").length()})
	}
	if t := v.get("temperature").items(); len(t) == 2 {
		c.TemperatureLow, c.TemperatureHigh, c.TemperatureGiven = t[0].num, t[1].num, true
	}
	if w := v.get("wheelbase"); w != nil {
		c.Wheelbase = &Wheelbase{Found: w.get("found").length(), Sister: w.get("sister").length()}
		if b := w.get("between").items(); len(b) == 2 {
			c.Wheelbase.Between = [2]string{b[0].raw, b[1].raw}
		}
	}
	return c
}

func bindShaft(r *reader, v *value, c Chassis) Shaft {
	s := Shaft{Name: v.get("name").text(), Leave: v.get("do").text() == "leave",
		Journal: v.get("journal").ends(), MustPass: v.get("must_pass").ends(), Unworn: v.get("unworn").ends(),
		Material: v.get("material").text(), JournalState: v.get("journal_state").text(), Insulated: v.get("insulated").text(),
		RPM: v.get("rpm").number(), LoadN: v.get("load").number(), PullN: v.get("pull").number(),
		ContactsApart: v.get("contacts_apart").length(), WheelDiameter: v.get("wheel_diameter").length(),
		HubToHub: v.get("hub_to_hub").length(), BackToBack: v.get("back_to_back").length(),
		LoadTowards: v.get("load_towards").number(), Design: v.get("design").point(), Sister: v.get("sister").point(),
		Rods: v.get("rods").tri() == Yes}
	if s.Material == "" {
		s.Material = "steel"
	}
	for _, w := range v.get("washers").items() {
		s.Washers = append(s.Washers, w.len)
	}
	for _, side := range Sides {
		if b := v.get("bores").get(string(side)); b != nil {
			s.Bores = append(s.Bores, bindBore(r, b, s.Name, side, c))
		}
	}
	return s
}

func bindGear(v *value) Gear {
	g := Gear{Name: v.get("name").text(), Kind: v.get("kind").text(), WheelForm: v.get("wheel_form").text(),
		Module: v.get("module").or(0), PressureAngle: v.get("pressure_angle").or(20), ShaftAngle: v.get("shaft_angle").or(90),
		Thinned: v.get("thinned").length()}
	if dp := v.get("diametral_pitch"); dp != nil && g.Module == 0 {
		g.Module = 25.4 / dp.num
	}
	if b := v.get("backlash").items(); len(b) == 2 {
		g.Backlash[0], g.Backlash[1] = b[0].len, b[1].len
	}
	w := v.get("wheel")
	g.Wheel = Wheel{On: w.get("on").text(), Teeth: int(w.get("teeth").or(0)), Runout: w.get("runout").length(),
		FromLeft: w.get("from_left").length(), Face: w.get("face").length(), Tip: w.get("tip").length(),
		Throat: w.get("throat").length(), Shift: w.get("shift").or(0)}
	if p := v.get("pinion"); p != nil {
		g.Pinion = &Pinion{On: p.get("on").text(), At: p.get("at").point(), Teeth: int(p.get("teeth").or(0)),
			Runout: p.get("runout").length(), Face: p.get("face").length(), Tip: p.get("tip").length(),
			Shift: p.get("shift").or(0), U: p.get("u").length(), Moved: p.get("moved").tri() == Yes}
	}
	if m := v.get("worm"); m != nil {
		g.Worm = &Worm{Starts: int(m.get("starts").or(0)), PitchDiameter: m.get("pitch_diameter").length(),
			Height: m.get("height").length(), Top: m.get("top").length(), Hand: m.get("hand").text(),
			Slope: m.get("slope").or(0), EndFloat: m.get("end_float").length(), Offset: m.get("offset").length(),
			BearingPlay: m.get("bearing_play").length(), U: m.get("u").length(), Moved: m.get("moved").tri() == Yes,
			ShaftDiameter: m.get("shaft_diameter").length(), Tip: m.get("tip").length()}
	}
	return g
}

func bindBush(v *value, i int) Bush {
	b := Bush{Code: v.get("code").text(), Bore: bindSize(v.get("bore"), v.get("bore_class")), OD: bindSize(v.get("od"), v.get("od_class")),
		Length: v.get("length").length(), FlangeOD: v.get("flange").get("od").length(),
		FlangeThickness: v.get("flange").get("thickness").length(), Runout: v.get("runout").length(),
		Material: v.get("material").text(), Price: v.get("price").number(), Turned: v.get("make").text() == "turned",
		WallFinishUm: v.get("wall_finish_um").number(), Index: i}
	if n := v.get("on_hand"); n != nil {
		k := int(n.num)
		b.OnHand = &k
	}
	return b
}

func bindSize(v, class *value) Size {
	switch {
	case v == nil:
		return Size{}
	case v.shape.kind == aList && len(v.list) == 2:
		return Size{Low: v.list[0].len, High: v.list[1].len, Measured: true}
	case class != nil:
		return Size{Nominal: v.len, Class: class.raw}
	}
	return Size{Nominal: v.len, Low: v.len, High: v.len, Measured: true}
}
