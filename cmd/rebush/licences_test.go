package main

import (
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the notices anew")

// acceptedLicences are the kinds of licence that a part of the program may come
// under, each with words that stand in every text of that kind, and words that
// do not. What is none of these needs thought before it is linked.
var acceptedLicences = []struct {
	kind    string
	has     []string
	without string
}{
	{"MIT", []string{mitGrant,
		`the software is provided "as is"`}, "licensed under the apache license"},
	{"MIT and Apache 2.0", []string{mitGrant,
		`licensed under the apache license, version 2.0`}, "no such words"},
	{"BSD, 3 clauses", []string{bsdForm, "endorse or promote products derived"}, "advertising materials"},
	{"BSD, 2 clauses", []string{bsdForm, "in no event shall the copyright"}, "endorse or promote"},
	{"Boost 1.0", []string{"boost software license - version 1.0"}, "no such words"},
	{"Apache 2.0", []string{"apache license version 2.0, january 2004", "end of terms and conditions"},
		"no such words"},
	{"notice of the Apache licence", []string{"licensed under the apache license, version 2.0"},
		"permission is hereby granted"},
	{"ISC", []string{freeGrant + " for any purpose with or without fee is hereby granted"}, "no such words"},
	{"free with its notice", []string{freeGrant + " is freely granted, provided that this notice is preserved"},
		"no such words"},
	{"free without a guarantee", []string{"what you see here may be used freely but it comes with no support or " +
		"guarantee"}, "no such words"},
	{"that of its module", []string{"license that can be found in the license file"}, "permission"},
	{"grant of patents", []string{"additional ip rights grant (patents)"}, "no such words"},
}

const (
	mitGrant = "permission is hereby granted, free of charge, to any person obtaining a copy of this software and " +
		"associated"
	bsdForm   = "redistributions in binary form must reproduce the above"
	freeGrant = "permission to use, copy, modify, and distribute this software"
)

// elsewhere says which packages of a module (by a search for the names of its
// owners) rest on a licence that stands in a
// folder of others' licences; "" where no package that could be linked does.
var elsewhere = map[string]string{
	"gonum.org/v1/gonum/Cephes-LICENSE":        "gonum.org/v1/gonum/mathext/internal/cephes",
	"gonum.org/v1/gonum/Boost-LICENSE":         "gonum.org/v1/gonum/mathext/internal/cephes",
	"gonum.org/v1/gonum/Probab-LICENSE":        "gonum.org/v1/gonum/mathext",
	"gonum.org/v1/gonum/Sun-LICENSE":           "gonum.org/v1/gonum/internal/math32",
	"gonum.org/v1/gonum/Oxford-LICENSE":        "gonum.org/v1/gonum/integrate/quad",
	"gonum.org/v1/gonum/Bogaert-LICENSE":       "gonum.org/v1/gonum/integrate/quad",
	"gonum.org/v1/gonum/Fike-LICENSE":          "gonum.org/v1/gonum/num",
	"gonum.org/v1/gonum/Go-LICENSE":            "gonum.org/v1/gonum", // several rooms
	"gonum.org/v1/gonum/MT19937-LICENSE":       "gonum.org/v1/gonum/mathext/prng",
	"gonum.org/v1/gonum/MT19937-64-LICENSE":    "gonum.org/v1/gonum/mathext/prng",
	"gonum.org/v1/gonum/W3C-BSD-LICENSE":       "", // suites of tests
	"gonum.org/v1/gonum/W3C-TestSuite-LICENSE": "",
}

// licenceKind names the accepted kind of a text, "" for none.
func licenceKind(text string) string {
	text = plain(text)
	for _, l := range acceptedLicences {
		ok := !strings.Contains(text, l.without)
		for _, words := range l.has {
			ok = ok && strings.Contains(text, words)
		}
		if ok {
			return l.kind
		}
	}
	return ""
}

// printNotices writes them as the program prints them.
func printNotices(list []notice) string {
	var b strings.Builder
	b.WriteString("Built into this program, each part under its own licence:\n")
	for _, n := range list {
		fmt.Fprintf(&b, "\n%s\n", strings.Repeat("=", 78))
		for _, of := range n.of {
			fmt.Fprintf(&b, "%s\n", of)
		}
		fmt.Fprintf(&b, "%s\n\n%s\n", strings.Repeat("-", 78), n.text)
	}
	return b.String()
}

// TestLicences: the notices are those of what is linked, all of them and no
// others, and each is of an accepted kind.
func TestLicences(t *testing.T) {
	packages := linkedPackages(t)
	list := noticesOf(t, packages)
	notes := make([][]string, len(packages))
	for i, p := range packages {
		notes[i] = copyrightNotes(t, p)
	}
	list = append(list, granted(t, packages, notes, list)...)
	apache := false
	for _, n := range list {
		kind := licenceKind(n.text)
		if kind == "" {
			t.Errorf("%s: this is no licence of an accepted kind:\n%s", n.of, n.text)
		}
		apache = apache || strings.Contains(kind, "Apache")
	}
	if apache { // a part under it has to be given with the whole licence
		whole, err := os.ReadFile("testdata/apache-2.0.txt")
		if err != nil || licenceKind(string(whole)) != "Apache 2.0" {
			t.Fatalf("the whole Apache licence: %v", err)
		}
		list = append(list, notice{strings.Trim(string(whole), "\n"),
			[]string{"the Apache licence, to which texts above refer"}})
	}
	want := printNotices(list)
	if *update {
		if err := os.WriteFile("licences.txt", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if licences != want {
		t.Error("licences.txt is not what is linked: run go test ./cmd/rebush -run Licences -update, and look at " +
			"the difference")
	}
	for _, p := range packages {
		if !strings.Contains(licences, "\n"+p.name()+"\n") {
			t.Errorf("nothing stands there of %s", p.name())
		}
	}
	named := 0
	for i, p := range packages { // whoever a linked source names as its owner is named
		for _, note := range notes[i] {
			for _, m := range copyright.FindAllStringSubmatch(note, -1) {
				if named++; !strings.Contains(strings.ToLower(licences), strings.ToLower(m[2])) {
					t.Errorf("%s: %s is not named in the notices", p.path, m[2])
				}
			}
		}
	}
	if named < 500 {
		t.Errorf("only %d lines that name an owner were met", named)
	}
	if len(packages) < 15 || len(list) < 10 {
		t.Errorf("%d packages and %d notices: the list is not that of the program", len(packages), len(list))
	}
}

// TestLicenceOfGo: where Go keeps its own licence, it is the text given for it.
func TestLicenceOfGo(t *testing.T) {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	data, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(out)), "LICENSE"))
	if err != nil {
		t.Logf("%s keeps its licence elsewhere", runtime.Version())
		return
	}
	if !strings.Contains(plain(licences), plain(string(data))) {
		t.Error("the licence of this Go is not the one that is printed")
	}
}

// TestLicenceKinds: a kind is told by its words, and what is not accepted is
// told from what is.
func TestLicenceKinds(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"GNU GENERAL PUBLIC LICENSE\nVersion 3, 29 June 2007", ""},
		{"All rights reserved.", ""},
		{"Redistributions in binary form must reproduce the above\n copyright notice. All advertising materials " +
			"must display. " +
			"May not be used to endorse or promote products derived", ""},
		{"Boost Software License - Version 1.0 - August 17th, 2003", "Boost 1.0"},
		{"> Redistributions in binary form must reproduce the\n> above copyright notice\n" +
			"> IN NO EVENT SHALL THE COPYRIGHT HOLDER", "BSD, 2 clauses"},
	} {
		if got := licenceKind(c.text); got != c.want {
			t.Errorf("%.40q is told to be %q, want %q", c.text, got, c.want)
		}
	}
}

// TestHelpLicences: the command prints them whole.
func TestHelpLicences(t *testing.T) {
	code, out, _ := ran("", "help", "licences")
	if code != done || strings.TrimSpace(out) != strings.TrimSpace(licences) {
		t.Errorf("exit %d, %d bytes printed of %d", code, len(out), len(licences))
	}
	for _, words := range []string{"Bigelow & Holmes", "The Go Authors", "Canonical Ltd", "Kirill Simonov",
		"Stephen L. Moshier", "Lucent Technologies", "END OF TERMS AND CONDITIONS"} {
		if !strings.Contains(out, words) {
			t.Errorf("%q is not named", words)
		}
	}
}
