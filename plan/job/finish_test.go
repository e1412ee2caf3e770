package job

import (
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
