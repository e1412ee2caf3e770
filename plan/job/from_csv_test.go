package job

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

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
