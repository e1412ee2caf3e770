package job

import (
	"fmt"
	"maps"
	"os"
	"strings"
	"testing"
)

// TestFinish: finish: may be said once for every bore or bore by bore, and auto
// is the same as nothing.
func TestFinish(t *testing.T) {
	data, err := os.ReadFile(situations + "/plain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for line, want := range map[string]map[string]string{
		"":                     {},
		"finish: auto":         {},
		"finish: Ream":         {"": "ream"},
		"finish: as delivered": {"": "as delivered"},
		"finish: {front axle.left: to its own axle, front axle.right: auto}": {"front axle.left": "to its own axle"},
	} {
		j, err := Parse("job.yaml", situations,
			[]byte(strings.Replace(string(data), "complaint:", line+"\ncomplaint:", 1)), Options{})
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if !maps.Equal(j.Finish, want) {
			t.Errorf("%s: %v, want %v", line, j.Finish, want)
		}
	}
}

// TestWay: way: is read as finish: is, and its words as they stand in the
// table whatever their letters.
func TestWay(t *testing.T) {
	data, err := os.ReadFile(situations + "/plain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for line, want := range map[string]map[string]string{
		"":                 {},
		"way: auto":        {},
		"way: Made to fit": {"": "made to fit"},
		"way: {front axle.left: plug, rear axle.left: keep, front axle.right: auto}": {
			"front axle.left": "plug", "rear axle.left": "keep"},
	} {
		j, err := Parse("job.yaml", situations,
			[]byte(strings.Replace(string(data), "complaint:", line+"\ncomplaint:", 1)), Options{})
		if err != nil {
			t.Errorf("%s: %v", line, err)
			continue
		}
		if !maps.Equal(j.Way, want) {
			t.Errorf("%s: %v, want %v", line, j.Way, want)
		}
	}
}

// TestBushed: an old bush that is in may be said with its outside, which no
// plate is too small for.
func TestBushed(t *testing.T) {
	data, err := os.ReadFile(situations + "/plain.yaml")
	if err != nil {
		t.Fatal(err)
	}
	read := func(bushed, height string) (*Job, error) {
		text := strings.Replace(string(data), "worn_to: 90", "worn_to: 90\n        bushed: "+bushed, 1)
		return Parse("job.yaml", situations, []byte(strings.Replace(text, "height: 24", "height: "+height, 1)),
			Options{})
	}
	for bushed, want := range map[string]string{"no": "false ", "yes": "true ", "{od: 5.0}": "true 5 mm",
		"{od: 0.2 in}": "true 5.08 mm"} {
		j, err := read(bushed, "24")
		if err != nil {
			t.Errorf("%s: %v", bushed, err)
			continue
		}
		b := j.Shafts[0].Bores[0]
		if got := fmt.Sprint(b.Bushed, " ", b.BushedOD); got != want {
			t.Errorf("%s: %s, want %s", bushed, got, want)
		}
	}
	if _, err := read("{od: 11.5}", "11"); err == nil ||
		!strings.Contains(err.Error(), "od: a seat of 11.5 mm does not stand in a plate of 64 mm by 11 mm") {
		t.Error(err)
	}
}
