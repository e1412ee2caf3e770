package seat

import (
	"fmt"
	"strings"

	"rebush/fits/ledger"
	"rebush/fits/material"
)

// builtIn is the source of what the small shop of a job without one has.
const builtIn = "built-in small shop:1"

// explainer writes the page of one seat: every figure by the formula that
// decided it, from what was read.
type explainer struct {
	in     *Input
	spring ledger.Num // interference that springs back, of a press
	x      *Seated
	a      *Answer
	book   *ledger.Ledger
	page   ledger.Page
}

func (e *explainer) line(path string) string { return e.in.Job.Source(path) }

func (e *explainer) shaftLine(figure string) string {
	return e.line("shafts/" + e.x.Old.Shaft.Name + "/" + figure)
}

func (e *explainer) boreLine(figure string) string { return e.line(e.x.Old.Line(figure)) }

func (e *explainer) shopLine(path string) string { return e.in.Job.Shop.At(path).Source(builtIn) }

// rule records a default as a figure.
func (e *explainer) rule(name string) ledger.Num { return e.book.Leaf(e.in.Table.Get(name).Leaf()) }

// ruleLine is where a default stands and what it rests on.
func (e *explainer) ruleLine(name string) string {
	r := e.in.Table.Get(name)
	return r.Address + ": " + r.Source
}

// cited is the same for a default that is no figure of a formula here.
func (e *explainer) cited(name string) string {
	e.book.Cite("rules/" + name)
	return e.ruleLine(name)
}

func (e *explainer) plate(property string, high bool) string {
	return inTable(e.in.Casting.Material, property, high)
}

func (e *explainer) bush(property string, high bool) string {
	return inTable(e.bushMaterial(), property, high)
}

func (e *explainer) bushMaterial() *material.Material {
	mat, err := e.in.Metals.Find(e.a.Bush.Metal.Name)
	if err != nil {
		panic("seat: the chosen bush has no material: " + err.Error())
	}
	return mat
}

// bushLine says where a size of the chosen bush comes from.
func (e *explainer) bushLine(what string) string {
	b := &e.a.Bush
	switch {
	case b.Turned:
		return e.in.Table.Get("turned_bush_mm").Address + ": turned for this seat"
	case b.Source != "":
		return b.Source
	}
	src := e.line(bushPath(b.Index))
	for i := range e.in.Job.Bushes {
		own := &e.in.Job.Bushes[i]
		if own.Code != b.Code {
			continue
		}
		size := own.OD
		if what == "bore" {
			size = own.Bore
		}
		if size.Class == "" {
			continue
		}
		if d, err := e.in.Limits.Class(size.Nominal, size.Class); err == nil {
			src += fmt.Sprintf(": %s %s, ISO 286 (%s)", size.Nominal, size.Class, strings.Join(d.Sources, ", "))
		}
	}
	return src
}

// toolLine says what makes the limits of the seat.
func (e *explainer) toolLine() string { return e.toolOf(e.a.Way) }

func (e *explainer) toolOf(w Way) string {
	switch w.Kind {
	case BoringHead:
		return e.in.Table.Get("boring_head_mm").Address + " about the size that was chosen"
	case EndMill:
		return e.in.Table.Get("end_mill_mm").Address + ", " + e.shopLine("end_mills")
	case Reamer:
		return e.shopLine(fmt.Sprintf("reamers/%d", w.Index)) + ", " + w.Kind.limits()
	}
	if w.Kind == AsItIs && e.x.Old.Bore.Seat == nil {
		return e.boreLine("narrowest") + ", as measured, with twice the doubt of it"
	}
	return e.boreLine("seat") + ", as measured"
}

// limits says by which rule a way leaves its limits.
func (k Kind) limits() string {
	switch k {
	case Reamer:
		return "ISO 522 / DIN 1420 reamer limits, rule oversize_share_of_tolerance"
	case BoringHead:
		return "rule boring_head_mm"
	case EndMill:
		return "rule end_mill_mm"
	}
	return "as measured"
}

// flowLine says where the flow stress of the chosen bush comes from.
func (e *explainer) flowLine(rule string, high bool) string {
	if e.a.Bush.Metal.Porous {
		return e.cited(rule)
	}
	return e.bush("yield_tension", high)
}

// holdLine says which modulus of the plate holds: the lowest, or what is left
// of it under lasting tension.
func (e *explainer) holdLine() string {
	if e.a.Slackens {
		return inTable(creepsLike(e.in.Metals, e.in.Casting.Material), creepModulus, false)
	}
	return e.where("E", e.a.Hold.Housing.E, e.in.Casting.Plate.ELow, false)
}

func (e *explainer) limitLine() string {
	p := &e.in.Casting.Plate
	switch {
	case p.Casting:
		e.book.Cite("rules/casting_stress_share")
		weakest, _ := e.in.Casting.Material.Weakest()
		return e.in.Table.Get("casting_stress_share").Address + " of the least tensile strength, as cast or aged (" +
			weakest.Address + ": " + weakest.Source + "), never above yield"
	case !p.YieldKnown:
		return e.in.Table.Get("plate_unknown_yield_mpa").Address + ": yield of a temper that is not said"
	}
	return e.plate("yield_tension", false) + ": yield; at the rim only a caution"
}

func (e *explainer) frictionLine() string {
	if e.in.Job.Shop.FrictionLow > 0 {
		return e.in.Job.Shop.At("friction").Source("shop file")
	}
	return e.cited("friction")
}

// useLine says where the temperatures in use come from.
func (e *explainer) useLine() string {
	if e.in.Job.Chassis.TemperatureGiven {
		return e.line("chassis/temperature")
	}
	return e.cited("use_c")
}
