package job

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

// answers to the questions of Ask, for a stepped axle with no gear on it.
const answers = `7-1
Truck 7: front axle
mm
yes
no

tight
slack
tight

open
mild steel
sound
3.0

60
24
mouse
18,0
below

2


3.46
2.94
19
no
20.00 11.06
wide
3.63
3.51
90

7.0


20.01, 11.05
3.13
3.03
85
2.98



yes
3.46


yes
ridged
12
18.5
4 N
240
0.5 0.3
48.00 11.00
3.50




yes
3.49
3.52
90
1.0

no
48.01;11.00
3.50





28.00


28.05

6.02


3.5

3.8
8
0.8

12
0.85
5.0
r6
drawer 8
3.0
F7
3.8
7
0.8




yes
yes
200
65
1

shop.yaml
`

// wormAnswers are for a plain axle under a worm, one wheel of it insulated.
const wormAnswers = `
Truck 8
mm
yes
no

tight
tight
correct
open

sound
3.0

64
24
18
below
axles
1


3.46

right
20

12.00 8.05
3.61
3.51
90

6.2


12.01 8.04
3.59
3.51
85



worm

0.5

24
13.0
0.02


throated

7.4
6.4
17.33
yes





shop.yaml
`

// TestAskWorm: a gear and an insulated wheel come into the file as they were
// answered, and what was not known is left out.
func TestAskWorm(t *testing.T) {
	var out bytes.Buffer
	data, err := Ask(strings.NewReader(wormAnswers), &out)
	if err != nil {
		t.Fatalf("%v\n%s", err, &out)
	}
	j, err := Parse("new.yaml", situations, data, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	g := j.Gears[0]
	if j.Shafts[0].Insulated != "right" || j.Chassis.Current != "axles" || j.Shafts[0].MustPass.Right.Given() ||
		j.Swap != nil ||
		g.Worm.Height.String() != "17.33 mm" || g.Worm.PitchDiameter.String() != "6.4 mm" || g.Wheel.Teeth != 24 ||
		g.Wheel.Tip.String() != "13 mm" || g.Wheel.Runout.String() != "0.02 mm" || g.WheelForm != "throated" {
		t.Errorf("%+v\n%s", j, data)
	}
}

// TestAsk: plain answers, with two that cannot be and are asked again, give a
// job file that reads without a mistake.
func TestAsk(t *testing.T) {
	var out bytes.Buffer
	data, err := Ask(strings.NewReader(answers), &out)
	if err != nil {
		t.Fatalf("%v\n%s", err, &out)
	}
	for _, want := range []string{"\"mouse\" is not a length", "\"wide\" is not a length", "did you mean \"tight\"",
		"All that goes together"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not said:\n%s", want, &out)
		}
	}
	j, err := Parse("new.yaml", situations, data, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	s, b := j.Bore("front axle.right")
	rear, more := j.Bore("rear axle.left")
	if rear.JournalState != "ridged" || rear.WheelDiameter.String() != "12 mm" || rear.BackToBack.String() != "18.5 mm" ||
		rear.LoadN == nil || *rear.LoadN != 4 || rear.RPM == nil || *rear.RPM != 240 || len(rear.Washers) != 2 ||
		more.PinGoes.String() != "3.49 mm" || more.PinStops.String() != "3.52 mm" || more.Oil == nil ||
		!j.Chassis.KeepOriginal || j.Number != "7-1" || j.Value == nil || *j.Value != 200 ||
		j.Chassis.Wheelbase == nil || j.Chassis.Wheelbase.Sister.String() != "28.05 mm" ||
		j.Bushes[1].OD.Class != "r6" || j.Bushes[1].Bore.Class != "F7" || *j.Bushes[0].OnHand != 12 {
		t.Errorf("%+v\n%s", j, data)
	}
	if j.Title != "Truck 7: front axle" || j.Chassis.Width.String() != "18 mm" ||
		s.MustPass.Right.String() != "2.98 mm" ||
		b.Centre.Y.String() != "11.05 mm" || b.WornTo[0] != 85 || !j.Shafts[1].Leave || len(j.Gears) != 0 ||
		j.Bushes[0].FlangeOD.String() != "8 mm" || !j.Bushes[0].OD.Measured || len(j.Bushes) != 3 ||
		!j.Bushes[2].Turned ||
		j.Binds != Yes || j.Noisy != No || j.Rubs != Unsaid ||
		j.Symptoms != (Symptoms{"tight", "tight", "", "open"}) ||
		*j.Swap != (Swap{Price: 65, Hours: 1, SecondHand: true}) {
		t.Errorf("%+v\n%s", j, data)
	}
}

func TestAskEnds(t *testing.T) {
	for n := 0; n < 40; n++ {
		lines := strings.SplitAfter(answers, "\n")
		if _, err := Ask(strings.NewReader(strings.Join(lines[:n], "")), &bytes.Buffer{}); !errors.Is(err, ErrStopped) {
			t.Errorf("after %d answers: %v", n, err)
		}
	}
}

const boreTable = `# measured by hand
title,Window tramway
units,mm
material,zinc die casting
thickness,3
length,58
height,20
width,16
shaft,side,x,y,widest,narrowest,worn_to,journal,metal
front axle,left,10.00,6.05,3.31,3.21,90,3.16,4.4
front axle,right,10.01,6.04,3.29,3.21,85,3.16,
`

// TestFromCSV: a table of bores makes a job file that reads; with decimal
// commas and semicolons it is the same job; what is missing is named by the
// reader.
func TestFromCSV(t *testing.T) {
	data, err := FromCSV("t.csv", []byte(boreTable))
	if err != nil {
		t.Fatal(err)
	}
	j, err := Parse("new.yaml", ".", data, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	if len(j.Shafts) != 1 || len(j.Shafts[0].Bores) != 2 ||
		j.Shafts[0].Bores[0].Edges[0].Metal.String() != "4.4 mm" || *j.Shafts[0].Bores[1].WidestAt != 85 {
		t.Errorf("%+v", j.Shafts)
	}
	semi := strings.NewReplacer(",", ";", ".", ",").Replace(boreTable)
	other, err := FromCSV("t.csv", []byte(semi))
	if err != nil {
		t.Fatal(err)
	}
	k, err := Parse("new.yaml", ".", other, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, other)
	}
	if !bytes.Equal(j.Canonical(), k.Canonical()) {
		t.Errorf("%s\n%s", j.Canonical(), k.Canonical())
	}
	open, err := FromCSV("t.csv", []byte(strings.Replace(boreTable, "width,16\n", "", 1)))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Parse("new.yaml", ".", open, Options{}); err == nil ||
		!strings.Contains(err.Error(), "width: no value is given") {
		t.Error(err)
	}
	for text, says := range map[string]string{
		"shaft,side,wear\na,left,1":               `unknown column "wear"`,
		"shaft,side\na,middle":                    `shaft "a", side "middle"`,
		"shaft,side\na,left\na,left":              "",
		"shaft,side,x\na,left,1\na,left,2":        `t.csv:3:1: the left bore of "a" stands twice`,
		"shaft,x\na,1":                            "no column says which side",
		"tile,x\nshaft,side\na,left":              "did you mean `title`?",
		"":                                        "no line names the columns",
		"shaft,side,x,y\na,left,10,05,6,00":       "with decimal commas part the cells by semicolons",
		"units,furlong\nshaft,side,x\na,left,1\n": `units: "furlong"; it may be mm or in`,
	} {
		_, err := FromCSV("t.csv", []byte(text))
		if says != "" && (err == nil || !strings.Contains(err.Error(), says)) {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// FuzzFromCSV: any table gives problems or a file that is YAML.
func FuzzFromCSV(f *testing.F) {
	f.Add([]byte(boreTable))
	f.Add([]byte("shaft;side\n'a\n;left"))
	f.Fuzz(func(t *testing.T, data []byte) {
		out, err := FromCSV("t.csv", data)
		var ps Problems
		if err != nil {
			if !errors.As(err, &ps) {
				t.Fatal(err)
			}
			return
		}
		if root, problems, _ := scan("new.yaml", out); root == nil {
			t.Fatalf("%v\n%s", problems, out)
		}
	})
}

// FuzzAsk: any answers give a file that is YAML, or stop.
func FuzzAsk(f *testing.F) {
	f.Add([]byte(answers))
	f.Fuzz(func(t *testing.T, data []byte) {
		out, err := Ask(bytes.NewReader(data), &bytes.Buffer{})
		if err != nil {
			if !errors.Is(err, ErrStopped) {
				t.Fatal(err)
			}
			return
		}
		if root, problems, _ := scan("new.yaml", out); root == nil {
			t.Fatalf("%v\n%s", problems, out)
		}
	})
}
