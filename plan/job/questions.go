package job

import (
	_ "embed"
	"strconv"
	"strings"
	"sync"

	"rebush/fits/table"
)

//go:embed data/questions.csv
var questionTable []byte

// Question is a question of `start` and the box of the measuring form that
// holds its answer.
type Question struct {
	Number    int // the same in both, from 1; 0: it has no box
	Part      string
	ID        string
	Box       string   // its name on the form
	Wide      float64  // its share of a row of the form
	Words     []string // the answers that there are, none where it is a figure or a name
	Two       bool     // two figures, x and y
	ask       string
	otherwise string
	shape     *shape
}

// questions are all of them in their order. A table that cannot be read is a
// fault in this program, and every test finds it.
var questions = sync.OnceValue(func() []Question {
	t, err := table.Parse("questions", "questions.csv", questionTable)
	if err != nil {
		panic("job: " + err.Error())
	}
	var out []Question
	number := 0
	for _, row := range t.Rows {
		q := Question{Part: row.Get("part"), ID: row.Get("id"), Box: row.Get("box"), ask: row.Get("ask"),
			otherwise: row.Get("otherwise"), shape: aYesOrNo}
		if q.otherwise == "needed" {
			q.otherwise = need1
		}
		if key := row.Get("key"); key != "" {
			q.shape = keyShape(key)
		}
		if words := row.Get("words"); words != "" {
			q.shape = &shape{kind: aWord, words: strings.Split(words, "|")}
		}
		switch q.shape.kind {
		case aWord:
			q.Words = q.shape.words
		case aYesNo:
			q.Words = []string{"yes", "no"}
		case aList:
			q.Two = q.shape.min == 2 && q.shape.item.kind == aLength
		}
		if q.Box != "" {
			number++
			q.Number = number
			if q.Wide, err = strconv.ParseFloat(row.Get("wide"), 64); err != nil {
				panic("job: " + row.Address() + ": " + err.Error())
			}
		}
		out = append(out, q)
	}
	return out
})

// Questions lists what `start` asks and the form has boxes for, in their order.
func Questions() []Question { return append([]Question(nil), questions()...) }

// question is the one of that part and name.
func question(part, id string) Question {
	for _, q := range questions() {
		if q.Part == part && q.ID == id {
			return q
		}
	}
	panic("job: there is no question " + part + "/" + id)
}
