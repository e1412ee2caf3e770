// Package job reads job and shop files: what was measured, what is on the
// shelf, what the shop can do. It is the only room that knows YAML. Everything
// it hands on is checked, in mm, in the frame of the left side, and each value
// knows the line it came from.
package job

import (
	"fmt"

	"rebush/fits/dim"
	"rebush/fits/finding"
)

// Point is a place in mm in the frame of the job: seen from the left side, x
// along the truck, y up from the datum edge.
type Point struct{ X, Y dim.Length }

// Float returns the point for physics.
func (p Point) Float() [2]float64 { return [2]float64{p.X.Float(), p.Y.Float()} }

// Given says whether the point was given.
func (p Point) Given() bool { return p.X.Given() && p.Y.Given() }

// Tri is yes, no or not said.
type Tri int

// The three answers.
const (
	Unsaid Tri = iota
	Yes
	No
)

// Pos is a place in a file, from 1. The zero Pos is nowhere.
type Pos struct {
	File         string
	Line, Column int
}

// Side names a plate.
type Side string

// The two plates.
const (
	Left  Side = "left"
	Right Side = "right"
)

// Sides lists the plates in the order of every list.
var Sides = [2]Side{Left, Right}

// Ends holds one length for each end of a shaft.
type Ends struct{ Left, Right dim.Length }

// On returns the length at a side.
func (e Ends) On(s Side) dim.Length {
	if s == Right {
		return e.Right
	}
	return e.Left
}

// Job is one job file with its shop.
type Job struct {
	File   string // as it was named
	Folder string // names in the job resolve from here
	Number string // the shop's own number
	Title  string
	Date   string // YYYY-MM-DD, or "" for a blank
	Units  dim.Unit
	Datum  string

	Chassis  Chassis
	Shafts   []Shaft
	Gears    []Gear
	Bushes   []Bush
	Choose   map[string]string // bore name -> bush code; "" -> for every bore; empty map: auto
	Finish   map[string]string // bore name -> auto is not in it; "" -> for every bore; empty map: auto
	Way      map[string]string // bore name -> how it is mended; "" -> every bore; empty map: auto
	Accept   []string          // rules whose stop this job takes upon itself
	Made     []Made
	Swap     *Swap
	Value    *float64
	Binds    Tri // complaint
	Noisy    Tri
	Rubs     Tri
	Symptoms Symptoms

	Shop  *Shop
	where map[string]Pos // JSON-like path with names -> place in the file
	root  *value         // as read, for the hash
	like  string         // file of the pattern, "" none
}

// At returns where a value stands: "shafts/front axle/bores/left/widest".
// Missing keys answer with the nearest enclosing one.
func (j *Job) At(path string) Pos { return lookup(j.where, path) }

// Source is the line of a value as the ledger cites it, "job.yaml:12"; the file
// where it stands on no line.
func (j *Job) Source(path string) string { return j.At(path).Source(j.File) }

// Source is a place as the ledger cites it, "job.yaml:12"; what else where it
// is nowhere.
func (p Pos) Source(otherwise string) string {
	if p.Line == 0 {
		return otherwise
	}
	return fmt.Sprintf("%s:%d", p.File, p.Line)
}

// Place is what a finding is about: the chassis, a shaft, a bore or a gear by
// its name, with the line where it stands in the job.
func (j *Job) Place(name string) finding.Place {
	path := ""
	if name == "chassis" {
		path = name
	}
	for i := range j.Shafts {
		if j.Shafts[i].Name == name {
			path = "shafts/" + name
		}
	}
	if s, b := j.Bore(name); b != nil {
		path = "shafts/" + s.Name + "/bores/" + string(b.Side)
	}
	for i := range j.Gears {
		if j.Gears[i].Name == name {
			path = "gears/" + name
		}
	}
	if path == "" {
		return finding.Place{Where: name} // about no one line of the job
	}
	return j.PlaceAt(name, path)
}

// PlaceAt is a place whose line is that of a key, "chassis/wheelbase".
func (j *Job) PlaceAt(name, path string) finding.Place { return j.At(path).place(name) }

// PlaceAt is a place whose line is that of a key of the shop file.
func (s *Shop) PlaceAt(name, path string) finding.Place { return s.At(path).place(name) }

func (p Pos) place(name string) finding.Place {
	return finding.Place{Where: name, File: p.File, Line: p.Line, Column: p.Column}
}

// Bore finds a bore by name, "front axle.left".
func (j *Job) Bore(name string) (*Shaft, *Bore) {
	for i := range j.Shafts {
		for k := range j.Shafts[i].Bores {
			if j.Shafts[i].Bores[k].Name == name {
				return &j.Shafts[i], &j.Shafts[i].Bores[k]
			}
		}
	}
	return nil, nil
}

// Chassis is the casting or the pair of plates.
type Chassis struct {
	Material         string // as typed; resolved by fits/material
	Condition        string // sound | cracked | swollen | unknown
	RailsAbove       bool   // the rails lie above the datum edge as measured
	Thickness        Ends   // of the left and right plate
	Length, Height   dim.Length
	Corners          []Point // outline, else a rectangle of Length x Height
	Width            dim.Length
	Current          string // axles | none | ""
	DrilledTogether  Tri
	Features         []Feature
	KeepOriginal     bool // swap is not wanted
	TemperatureLow   float64
	TemperatureHigh  float64
	TemperatureGiven bool
	Wheelbase        *Wheelbase
}

// Feature is an unworn hole that ties plates, drawing and sister together.
type Feature struct {
	Name               string
	Plate              Side
	At, Design, Sister Point
	Diameter           dim.Length
}

// Wheelbase compares two shafts with a sound sister.
type Wheelbase struct {
	Between       [2]string
	Found, Sister dim.Length
}

// Shaft is an axle or an idler shaft and its bores.
type Shaft struct {
	Name          string
	Leave         bool // do: leave
	Journal       Ends
	MustPass      Ends // largest thing that has to go through that end on assembly
	Unworn        Ends // journal diameter beside the worn run
	Material      string
	JournalState  string // good | ridged | pitted | out of round | bent | ""
	Insulated     string // left | right | none | ""
	RPM           *float64
	LoadN         *float64
	PullN         *float64
	ContactsApart dim.Length
	WheelDiameter dim.Length
	HubToHub      dim.Length
	BackToBack    dim.Length
	Washers       []dim.Length // thicknesses on the shaft, both sides together
	LoadTowards   *float64     // degrees, nil: away from the rails
	Design        Point
	Sister        Point
	Rods          bool
	Bores         []Bore // left before right; one of them may be missing
}

// Through is the largest diameter in mm that goes through a bore on assembly:
// what the job says, else the unworn part of the journal where that is larger;
// 0 where nothing but the journal goes.
func (s *Shaft) Through(side Side) float64 {
	if d := s.MustPass.On(side).Float(); d != 0 {
		return d
	}
	return s.Unworn.On(side).Float()
}

// On returns the bore at a side, nil where there is none.
func (s *Shaft) On(side Side) *Bore {
	for i := range s.Bores {
		if s.Bores[i].Side == side {
			return &s.Bores[i]
		}
	}
	return nil
}

// Edge is metal measured from a bore outwards: either from the wall of the
// hole as found (Metal) or from its centre (Away).
type Edge struct {
	AtDeg       float64
	Metal, Away dim.Length
}

// Span is a centre distance by inside and outside edges to another bore.
type Span struct {
	To              string
	Inside, Outside dim.Length
}

// OldSeat is the seat of a factory bush that is out.
type OldSeat struct {
	Diameter dim.Length
	Centre   Point
	Sound    bool
}

// Bore is one axle hole as it was found. Figures given with `seen_from: right`
// are already mirrored into the frame of the left side.
type Bore struct {
	Name        string // "front axle.left"
	Shaft       string
	Side        Side
	Centre      Point // middle of the hole as found
	Widest      dim.Length
	Narrowest   dim.Length
	WidestAt    *float64  // degrees
	WornTo      []float64 // degrees; two for two load directions
	Probed      []Point
	ProbedAt    string            // file the points came from, "" where they stand in the job
	Stylus      dim.Length        // ball diameter to correct for, not given: already corrected
	probedLines []int             // of ProbedAt
	Seat        *OldSeat          // old bush is out
	Bushed      bool              // old bush is still in
	BushedOD    dim.Length        // its outside, where that is known
	Repaired    bool              // an earlier repair whose place is not trusted
	With        map[string]string // what was read -> instrument name
	Edges       []Edge
	Boss        dim.Length // outside diameter of a round boss
	RoomIn      dim.Length // room for a flange, diameter, inside
	RoomOut     dim.Length
	PinGoes     dim.Length
	PinStops    dim.Length
	Walls       *[4]dim.Length // left, right, bottom, top
	Spans       []Span
	Cap         bool // hold: cap
	Lift        dim.Length
	Oil         *Oil
	Now         *Now // as it has been worked since, nil not at all
}

// Oil is an oil hole into the bore.
type Oil struct {
	AtDeg    float64
	Diameter dim.Length
}

func lookup(where map[string]Pos, path string) Pos {
	for {
		if p, ok := where[path]; ok {
			return p
		}
		i := lastSlash(path)
		if i < 0 {
			return where[""]
		}
		path = path[:i]
	}
}

func lastSlash(s string) int {
	for i := len(s) - 1; i >= 0; i-- {
		if s[i] == '/' {
			return i
		}
	}
	return -1
}

// LoadTowards is the way in degrees that a shaft is pressed in its bores: as the
// job says, else away from the rails.
func (c Chassis) LoadTowards(s *Shaft) float64 {
	switch {
	case s.LoadTowards != nil:
		return *s.LoadTowards
	case c.RailsAbove:
		return 270
	}
	return 90
}
