package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// readersOwn are names that stand for a file which the reader makes.
var readersOwn = []string{"myjob.yaml", "job.yaml", "truck.yaml", "shop.yaml", "bores.csv", "my-limits.csv", "left-hole.csv", "truck-kind.yaml", "second.yaml",
	"racer9.yaml", "racer.yaml"}

var fileName = regexp.MustCompile(`[\w./-]+\.(?:ya?ml|csv)\b`)

// unknownFiles are the job files and tables of points that a text names and
// that nobody finds in the folder of the demos.
func unknownFiles(text, jobs string) []string {
	var out []string
	for _, n := range fileName.FindAllString(text, -1) {
		if slices.Contains(readersOwn, n) {
			continue
		}
		if strings.HasPrefix(n, "fits/table/data/") {
			continue // a table
		}
		if base, ok := strings.CutPrefix(n, "testdata/jobs/"); ok {
			if _, err := os.Stat(filepath.Join(jobs, base)); err == nil {
				continue
			}
		}
		out = append(out, n)
	}
	return out
}

// TestNamedFilesAreThere: every job file that README.md or any help names is a
// demo, or a name that stands for the reader's own.
func TestNamedFilesAreThere(t *testing.T) {
	const jobs = "../../testdata/jobs"
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	// What is printed in the folder of the demos names them as they are called there.
	printed := regexp.MustCompile("(?s)\n```\n\\$ .*?\n```")
	texts := map[string]string{"README.md": printed.ReplaceAllString(string(readme), "")}
	for _, x := range topics {
		texts["help "+x.name] = x.text
	}
	var walk func(before string, list []*command)
	walk = func(before string, list []*command) {
		for _, c := range list {
			name := strings.TrimSpace(before + " " + c.name)
			_, out, _ := ran("", append([]string{"help"}, strings.Fields(name)...)...)
			texts["help "+name] = out
			walk(name, c.sub)
		}
	}
	walk("", commands())
	count := 0
	for where, text := range texts {
		count += len(fileName.FindAllString(text, -1))
		for _, n := range unknownFiles(text, jobs) {
			t.Errorf("%s names %s, which is not in testdata/jobs", where, n)
		}
	}
	if len(texts) < 20 || count < 15 {
		t.Errorf("%d texts with %d names were read", len(texts), count)
	}
	bad := "rebush plan testdata/jobs/gone.yaml, testdata/situations/renew.yaml, pellinthwaite.yaml, " +
		"testdata/jobs/../jobs/no.csv or myjob.yaml"
	if got := unknownFiles(bad, jobs); len(got) != 4 {
		t.Errorf("of four names that are wrong these are told: %v", got)
	}
}
