package main

import (
	"bytes"
	"encoding/json"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// linked is a package of somebody else in the built program, and what it came
// in: a module, or Go's own library.
type linked struct {
	path, dir               string
	module, version, folder string
}

const goItself = "Go's library and runtime"

// linkedPackages lists what is linked on the systems that programs are built for.
func linkedPackages(t *testing.T) []linked {
	t.Helper()
	seen := map[string]bool{}
	var out []linked
	for _, system := range []string{"linux", "darwin", "windows"} {
		cmd := exec.Command("go", "list", "-deps", "-json=ImportPath,Dir,Module", ".")
		cmd.Env = append(os.Environ(), "GOOS="+system, "GOARCH=amd64", "CGO_ENABLED=0")
		var wrong strings.Builder
		cmd.Stderr = &wrong
		data, err := cmd.Output()
		if err != nil {
			t.Fatalf("go list for %s: %v\n%s", system, err, wrong.String())
		}
		for d := json.NewDecoder(strings.NewReader(string(data))); ; {
			var p struct {
				ImportPath, Dir string
				Module          *struct {
					Path, Version, Dir string
					Main               bool
				}
			}
			if err := d.Decode(&p); err == io.EOF {
				break
			} else if err != nil {
				t.Fatal(err)
			}
			if seen[p.ImportPath] || p.Module != nil && p.Module.Main || p.ImportPath == "unsafe" {
				continue
			}
			seen[p.ImportPath] = true
			l := linked{path: p.ImportPath, dir: p.Dir, module: goItself}
			if p.Module != nil {
				l.module, l.version, l.folder = p.Module.Path, p.Module.Version, p.Module.Dir
			}
			out = append(out, l)
		}
	}
	slices.SortFunc(out, func(a, b linked) int { return strings.Compare(a.path, b.path) })
	return out
}

// name is what a part is called in the notices.
func (l linked) name() string { return strings.TrimSpace(l.module + " " + l.version) }

// notice is a text, and what comes under it.
type notice struct {
	text string
	of   []string
}

var licenceFile = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)(\.(md|txt))?$`)

// noticesOf gathers the texts of the linked packages, each once.
func noticesOf(t *testing.T, packages []linked) []notice {
	t.Helper()
	var out []notice
	add := func(of, file string) {
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatalf("%s: %v", of, err)
		}
		text := strings.TrimSpace(strings.ReplaceAll(string(data), "\r\n", "\n"))
		for i := range out {
			if plain(out[i].text) == plain(text) {
				out[i].of = append(out[i].of, of)
				return
			}
		}
		out = append(out, notice{text, []string{of}})
	}
	add("rebush", "../../LICENSE")
	first := map[string]bool{}
	for _, p := range packages {
		if first[p.module] || p.module == goItself {
			continue
		}
		first[p.module] = true
		name, n := p.name(), 0
		entries, err := os.ReadDir(p.folder)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			if licenceFile.MatchString(e.Name()) && !e.IsDir() {
				add(name, filepath.Join(p.folder, e.Name()))
				n++
			}
			if strings.HasPrefix(e.Name(), "THIRD_PARTY") && e.IsDir() {
				others, err := filepath.Glob(filepath.Join(p.folder, e.Name(), "*"))
				if err != nil {
					t.Fatal(err)
				}
				for _, file := range others {
					if restsOn(t, packages, p.module+"/"+filepath.Base(file)) {
						add(name+" (in part)", file)
					}
				}
			}
		}
		if n == 0 {
			t.Errorf("%s has no licence at its top", name)
		}
		if p.module == "golang.org/x/image" {
			add("the Go fonts, in which paper is set", filepath.Join(p.folder, "font", "gofont", "ttfs", "README"))
		}
		if p.module == "golang.org/x/term" { // the same text as Go's own, which some systems keep elsewhere
			add(goItself, filepath.Join(p.folder, "LICENSE"))
			add(goItself, filepath.Join(p.folder, "PATENTS"))
		}
	}
	return out
}

// copyright is a line that names an owner: years, then the first two words of
// a name.
var copyright = regexp.MustCompile(`(?i)copyright\b[^\n\d]{0,12}((?:19|20)\d\d[\d, -]*)(?:by )?` +
	`([A-Z][\w.&]*(?: [A-Z][\w.&]*)?)`)

// ofLicence is what a paragraph about owners and licences speaks of.
var ofLicence = regexp.MustCompile(`(?i)copyright|permi(t|ssion)|redistribut|licen[cs]e|warrant|as is`)

// granted gathers what linked sources themselves say of owners that no text
// above names: notes alike but for their owners are one.
func granted(t *testing.T, packages []linked, notes [][]string, above []notice) []notice {
	t.Helper()
	var said strings.Builder
	for _, n := range above {
		said.WriteString(plain(n.text) + "\n")
	}
	var out []notice
	bodies, met := map[string]int{}, map[string]bool{}
	for i, p := range packages {
		for _, note := range notes[i] {
			isNew := false
			for _, m := range copyright.FindAllStringSubmatch(note, -1) {
				owner := p.module + strings.ToLower(m[1]+m[2])
				isNew = isNew || !met[owner] && !strings.Contains(said.String(), strings.ToLower(m[2]))
				met[owner] = true
			}
			if !isNew {
				continue
			}
			owners, body := parted(note)
			key := p.module + plain(body)
			k, known := bodies[key]
			if !known {
				k = len(out)
				bodies[key] = k
				out = append(out, notice{body, []string{p.name() + " (in part)"}})
			}
			slices.Reverse(owners)
			for _, owner := range owners {
				if !strings.Contains(out[k].text, owner) {
					out[k].text = owner + "\n" + out[k].text
				}
			}
		}
	}
	return out
}

// copyrightNotes are the comments of a package that name an owner, less the
// paragraphs that are about something else.
func copyrightNotes(t *testing.T, p linked) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(p.dir, "*.[gs]*"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: no sources: %v", p.path, err)
	}
	var out []string
	for _, file := range files {
		ext := filepath.Ext(file)
		if strings.HasSuffix(file, "_test.go") || ext != ".go" && ext != ".s" {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Contains(data, []byte("opyright")) || !copyright.Match(data) {
			continue
		}
		for _, text := range comments(t, file, data) {
			var kept []string
			for _, paragraph := range strings.Split(text, "\n\n") {
				if ofLicence.MatchString(paragraph) {
					kept = append(kept, paragraph)
				}
			}
			if text := strings.Join(kept, "\n\n"); copyright.MatchString(text) {
				out = append(out, text)
			}
		}
	}
	return out
}

// comments are the comments of a Go file, or the head of an assembler file.
func comments(t *testing.T, file string, data []byte) (out []string) {
	t.Helper()
	if filepath.Ext(file) == ".s" {
		var head []string
		for _, line := range strings.Split(string(data), "\n") {
			text, ok := strings.CutPrefix(line, "//")
			if !ok && line != "" {
				break
			}
			head = append(head, strings.TrimSpace(text))
		}
		return []string{strings.Join(head, "\n")}
	}
	parsed, err := parser.ParseFile(token.NewFileSet(), file, data, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range parsed.Comments {
		out = append(out, c.Text())
	}
	return out
}

// parted sets the lines that name owners apart from the rest of a note.
func parted(note string) (owners []string, rest string) {
	var body []string
	for _, line := range strings.Split(note, "\n") {
		line = strings.TrimPrefix(strings.TrimPrefix(strings.TrimRight(line, " "), " *"), " ")
		if copyright.MatchString(line) {
			owners = append(owners, line)
		} else {
			body = append(body, line)
		}
	}
	return owners, "\n" + strings.Trim(strings.Join(body, "\n"), "=\n")
}

// restsOn says whether a linked package comes under a licence of others.
func restsOn(t *testing.T, packages []linked, file string) bool {
	t.Helper()
	room, known := elsewhere[file]
	if !known {
		t.Errorf("%s: say in `elsewhere` which packages come under it", file)
	}
	return room != "" && slices.ContainsFunc(packages, func(p linked) bool {
		return p.path == room || strings.HasPrefix(p.path, room+"/")
	})
}

var white = regexp.MustCompile(`[\s>#*]+`)

// plain folds white space and marks, so that texts can be compared.
func plain(text string) string {
	return strings.ToLower(strings.TrimSpace(white.ReplaceAllString(text, " ")))
}
