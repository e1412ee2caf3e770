package job

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

// answers to the questions of Ask, for a truck with a worm above one axle.
const answers = `Truck 7: front axle
mm

sound
3.0

58
20
mouse
16,0
below
axles
2


3.16
2.36
right
18
10.00 6.05
wide
3.31
3.21
90

4.4

10.01, 6.04
2.49
2.41
85
2.40


yes
3.16



48.00 6.00
3.20




48.01;6.00
3.20




worm

0.5
20
11.0
0.02
throated

6.0
14.06
5.0

3.2
3.8
7
0.8

5.0
drawer 8
2.4
3.8
7
0.8


yes
yes
no

tight
slack
tight

open
65
1

shop.yaml
`

// TestAsk: plain answers, with two that cannot be and are asked again, give a
// job file that reads without a mistake.
func TestAsk(t *testing.T) {
	var out bytes.Buffer
	data, err := Ask(strings.NewReader(answers), &out)
	if err != nil {
		t.Fatalf("%v\n%s", err, &out)
	}
	for _, want := range []string{"\"mouse\" is not a length", "\"wide\" is not a length", "did you mean \"tight\"", "All that goes together"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not said:\n%s", want, &out)
		}
	}
	j, err := Parse("new.yaml", situations, data, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	s, b := j.Bore("front axle.right")
	if j.Title != "Truck 7: front axle" || j.Chassis.Width.String() != "16 mm" || s.MustPass.Right.String() != "2.4 mm" ||
		b.Centre.Y.String() != "6.04 mm" || b.WornTo[0] != 85 || !j.Shafts[1].Leave || j.Gears[0].Worm.Height.String() != "14.06 mm" ||
		j.Bushes[0].FlangeOD.String() != "7 mm" || !j.Bushes[0].OD.Measured || j.Gears[0].Wheel.Tip.String() != "11 mm" ||
		len(j.Bushes) != 3 || !j.Bushes[2].Turned || j.Shafts[0].Insulated != "right" || j.Gears[0].Wheel.Runout.String() != "0.02 mm" ||
		j.Binds != Yes || j.Noisy != No || j.Rubs != Unsaid || j.Symptoms != (Symptoms{"tight", "tight", "", "open"}) || *j.Swap != (Swap{Price: 65, Hours: 1, SecondHand: true}) {
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
	if len(j.Shafts) != 1 || len(j.Shafts[0].Bores) != 2 || j.Shafts[0].Bores[0].Edges[0].Metal.String() != "4.4 mm" || *j.Shafts[0].Bores[1].WidestAt != 85 {
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
	if _, err := Parse("new.yaml", ".", open, Options{}); err == nil || !strings.Contains(err.Error(), "width: no value is given") {
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
		if root, problems := scan("new.yaml", out); root == nil {
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
		if root, problems := scan("new.yaml", out); root == nil {
			t.Fatalf("%v\n%s", problems, out)
		}
	})
}
