package limits

import (
	"testing"

	"rebush/fits/table"
)

func builtIn(t testing.TB) *Limits {
	t.Helper()
	l, err := New(table.BuiltIn())
	if err != nil {
		t.Fatal(err)
	}
	return l
}
