package job

import (
	"bytes"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rebush/fits/table"
)

// talker answers each question as it is put: with something of its shape.
type talker struct {
	example bool   // answer as the worked example does
	side    string // of the hole that is asked of
	out     *bytes.Buffer
	gear    string
	bushes  int
	reads   int
	said    []string // the names of the numbered questions, in the order asked
}

var putLast = regexp.MustCompile(`(?:^|\n|[?\]] )(\d+)? ?([A-Z%][^?\n]*)\?(?: \[[^\]]*\])? $`)

func (k *talker) Read(p []byte) (int, error) {
	if k.reads++; k.reads > 1000 {
		return 0, io.EOF // an answer is asked again and again
	}
	text := k.out.String()
	m := putLast.FindStringSubmatch(text[max(0, len(text)-400):])
	answer := "yes" // where more is known
	for _, side := range []string{"Left", "Right"} {
		if strings.Contains(text[max(0, len(text)-80):], side+" bore:") {
			k.side = strings.ToLower(side)
		}
	}
	if m != nil && m[1] != "" {
		n, _ := strconv.Atoi(m[1])
		for _, q := range questions() {
			if q.Number == n {
				k.said = append(k.said, q.Part+"/"+q.ID)
				answer = k.answer(q)
			}
		}
	} else if strings.Contains(text[max(0, len(text)-60):], "How many shafts") {
		if answer = "2"; k.example {
			answer = "1"
		}
	}
	return copy(p, answer+"\n"), nil
}

func (k *talker) answer(q Question) string {
	if k.example {
		of := ""
		if q.Part == "bore" {
			of = k.side
		}
		if q.ID == "od" {
			if k.bushes++; k.bushes > 1 {
				return ""
			}
		}
		return Example()(q.Part, of, q.ID)
	}
	switch {
	case q.ID == "kind" && q.Part == "gear":
		return k.gear
	case q.ID == "od":
		if k.bushes++; k.bushes > 1 {
			return ""
		}
		return "6"
	case q.ID == "shop" && k.gear == "spur":
		return ""
	case q.ID == "current":
		return "axles"
	case q.Two:
		return "10 6"
	case len(q.Words) > 0:
		return q.Words[0]
	case q.shape.kind == aText:
		return "x"
	case q.shape.kind == aWhole:
		return "8"
	case q.shape.hi > q.shape.lo: // a figure that can be
		return strconv.FormatFloat((q.shape.lo+q.shape.hi)/2, 'f', 3, 64)
	case q.shape.kind == aList:
		return "0.5 0.3"
	}
	return "8"
}

// TestQuestions: `start` puts every question of the list that has a number, in
// the order of the list, and none twice of one thing.
func TestQuestions(t *testing.T) {
	asked := map[string]bool{}
	for _, gear := range []string{"worm", "spur"} {
		k := &talker{out: &bytes.Buffer{}, gear: gear}
		if _, err := Ask(k, k.out); err != nil {
			t.Fatalf("%v\n%s", err, k.out)
		}
		at := map[string]int{}
		for i, q := range questions() {
			at[q.Part+"/"+q.ID] = i
		}
		last := -1
		for _, s := range k.said {
			asked[s] = true
			part, _, _ := strings.Cut(s, "/")
			if at[s] < last && part != "shaft" && part != "bore" && part != "bush" {
				t.Errorf("%s: %s is put too late", gear, s)
			}
			last = at[s]
		}
	}
	n := 0
	for _, q := range Questions() {
		if q.Number == 0 {
			continue
		}
		if n++; q.Number != n {
			t.Errorf("%s/%s has number %d, want %d", q.Part, q.ID, q.Number, n)
		}
		if !asked[q.Part+"/"+q.ID] {
			t.Errorf("%d, %s/%s, is never put", q.Number, q.Part, q.ID)
		}
	}
	if n < 80 {
		t.Errorf("only %d questions have a number", n)
	}
}

// TestExampleGoesTogether: what the worked example fills in is a job that reads
// without a mistake, and each of its answers is of a question that there is.
func TestExampleGoesTogether(t *testing.T) {
	k := &talker{out: &bytes.Buffer{}, example: true}
	data, err := Ask(k, k.out)
	if err != nil {
		t.Fatalf("%v\n%s", err, k.out)
	}
	if !strings.Contains(k.out.String(), "All that goes together") {
		t.Errorf("%s\n%s", k.out, data)
	}
	j, err := Parse("new.yaml", ".", data, Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	_, b := j.Bore("driven axle.right")
	if b == nil || b.Centre.Y.String() != "16.07 mm" || j.Gears[0].Pinion.Teeth != 12 || j.Bushes[0].OD.Class != "r6" ||
		j.Swap.Price != 58 {
		t.Errorf("%s", data)
	}
	table, err := table.Parse("example", "example.csv", exampleTable)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		question(row.Get("part"), row.Get("id")) // panics where there is none
	}
}
