package job

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

// deepest is how far lists and records may be nested.
const deepest = 20

// scan turns bytes into one tree of YAML nodes, or says why they are not one.
// Anchors, aliases, merges, tags and second documents are refused here.
func scan(file string, data []byte) (root *yaml.Node, problems Problems) {
	say := func(line, column int, wrong, right string) {
		problems = append(problems, Problem{Pos{file, line, column}, wrong, right})
	}
	if len(data) > largest {
		say(1, 1, "this file is larger than 1 MiB", "no job or shop file is; is it the right file?")
		return nil, problems
	}
	data = bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF"))
	if line, column, wrong := notText(data); wrong != "" {
		say(line, column, wrong, "save it as plain text in UTF-8; if this was an accent, leave it out")
		return nil, problems
	}
	if len(bytes.TrimSpace(data)) == 0 {
		say(1, 1, "the file is empty", "`rebush start` writes a job file to begin with")
		return nil, problems
	}
	if line, column := tooDeep(data); line > 0 {
		say(line, column, fmt.Sprintf("more than %d brackets are open here", deepest),
			"no list or record of a job goes so deep")
		return nil, problems
	}
	defer func() {
		if p := recover(); p != nil { // the YAML reader gave up on hostile bytes
			root = nil
			say(1, 1, "this cannot be read as YAML", "begin again from a file that `rebush start` writes")
		}
	}()
	dec := yaml.NewDecoder(bytes.NewReader(data))
	var doc yaml.Node
	if err := dec.Decode(&doc); err != nil {
		if errors.Is(err, io.EOF) {
			say(1, 1, "there is nothing but comments in this file", "`rebush start` writes a job file to begin with")
			return nil, problems
		}
		problems = append(problems, explain(file, string(data), err))
		return nil, problems
	}
	var second yaml.Node
	if err := dec.Decode(&second); err == nil {
		say(max(second.Line, 1), second.Column, "a second document begins here",
			"one file holds one job: take the line --- away, or make two files")
	} else if !errors.Is(err, io.EOF) {
		problems = append(problems, explain(file, string(data), err))
	}
	if doc.Kind != yaml.DocumentNode || len(doc.Content) == 0 {
		say(1, 1, "the file is empty", "`rebush start` writes a job file to begin with")
		return nil, problems
	}
	root = doc.Content[0]
	if !refuse(file, root, 1, &problems) {
		return nil, problems
	}
	return root, problems
}

// refuse walks the tree for what a job file may not use. It answers false
// where the tree is too deep to go on.
func refuse(file string, n *yaml.Node, depth int, problems *Problems) bool {
	say := func(wrong, right string) {
		*problems = append(*problems, Problem{Pos{file, n.Line, n.Column}, wrong, right})
	}
	if depth > deepest {
		say(fmt.Sprintf("this is nested more than %d deep", deepest), "no list or record of a job goes so deep")
		return false
	}
	if len(*problems) > 2*mostProblems {
		return false
	}
	if n.Anchor != "" {
		say("an anchor (&"+n.Anchor+") is not read here", "write the values out where they belong")
	}
	if n.Kind == yaml.AliasNode {
		say("an alias (*"+n.Value+") is not read here", "write the values out where they belong")
		return true
	}
	if n.Style&yaml.TaggedStyle != 0 {
		say("a tag ("+n.Tag+") is not read here", "take it away and write the plain value")
	}
	if n.Kind == yaml.MappingNode {
		first := map[string]int{}
		for i := 0; i+1 < len(n.Content) && len(*problems) <= 2*mostProblems; i += 2 {
			k := n.Content[i]
			if k.Kind != yaml.ScalarNode {
				*problems = append(*problems,
					Problem{Pos{file, k.Line, k.Column}, "a list or record stands where a key belongs",
						"write `key: value`"})
				continue
			}
			if k.Tag == "!!merge" {
				*problems = append(*problems,
					Problem{Pos{file, k.Line, k.Column}, "a merge (<<) is not read here",
						"write the values out where they belong"})
				continue
			}
			if line, twice := first[k.Value]; twice {
				*problems = append(*problems, Problem{Pos{file, k.Line, k.Column},
					fmt.Sprintf("%q stands twice, first on line %d", k.Value, line), "keep one of them"})
			} else {
				first[k.Value] = k.Line
			}
		}
	}
	for _, c := range n.Content {
		if !refuse(file, c, depth+1, problems) {
			return false
		}
	}
	return true
}

// notText finds the first byte that no text file holds.
func notText(data []byte) (line, column int, wrong string) {
	for _, mark := range []string{"\xFF\xFE", "\xFE\xFF", "r\x00e\x00b\x00", "\x00r\x00e\x00b"} {
		if bytes.HasPrefix(data, []byte(mark)) {
			return 1, 1, "this file is saved as UTF-16, which some editors call Unicode, not as UTF-8"
		}
	}
	line, column = 1, 1
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		switch {
		case r == utf8.RuneError && size <= 1:
			return line, column, fmt.Sprintf("byte %#02x is not UTF-8 text", data[i])
		case r == 0:
			return line, column, "a NUL byte: this is not a text file"
		case r < 0x20 && r != '\n' && r != '\r' && r != '\t', r == 0x7f:
			return line, column, fmt.Sprintf("control character %#02x: this is not a text file", r)
		case r == '\n':
			line, column = line+1, 0
		}
		i += size
		column++
	}
	return 0, 0, ""
}

// tooDeep counts open brackets before the YAML reader builds a tree of them.
// Brackets in quotes and comments count too: no job has twenty unclosed ones.
func tooDeep(data []byte) (line, column int) {
	depth, line, column := 0, 1, 0
	for _, b := range data {
		column++
		switch b {
		case '[', '{':
			if depth++; depth > 10*deepest {
				return line, column
			}
		case ']', '}':
			depth = max(depth-1, 0)
		case '\n':
			line, column = line+1, 0
		}
	}
	return 0, 0
}
