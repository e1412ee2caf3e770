package job

import (
	_ "embed"
	"sync"

	"rebush/fits/table"
)

//go:embed data/example.csv
var exampleTable []byte

// Example is the worked example of the measuring form: the answer to a question
// by its part and name, of the left or right hole where it is asked of each; ""
// where the example leaves it open.
var Example = sync.OnceValue(func() func(part, of, id string) string {
	t, err := table.Parse("example", "example.csv", exampleTable)
	if err != nil {
		panic("job: " + err.Error())
	}
	said := map[[3]string]string{}
	for _, row := range t.Rows {
		said[[3]string{row.Get("part"), row.Get("of"), row.Get("id")}] = row.Get("value")
	}
	return func(part, of, id string) string { return said[[3]string{part, of, id}] }
})
