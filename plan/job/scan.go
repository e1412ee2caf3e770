package job

import (
	"bytes"
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// deepest is how far lists and records may be nested.
const deepest = 20

// scan turns bytes into one tree of YAML nodes, or says why they are not one.
// Anchors, aliases, merges, tags and second documents are refused here. A line
// that YAML does not read is told and mended, so that the rest can be read too.
func scan(file string, data []byte) (root *yaml.Node, problems Problems, mended *healed) {
	say := func(line, column int, wrong, right string) {
		problems = append(problems, Problem{Pos: Pos{file, line, column}, Wrong: wrong, Right: right})
	}
	if len(data) > largest {
		say(1, 1, "this file is larger than 1 MiB", "no job or shop file is; is it the right file?")
		return nil, problems, &healed{gaps: true}
	}
	data = decoded(data)
	if line, column, wrong := notText(data); wrong != "" {
		right := "save it as plain text in UTF-8; if this was an accent, leave it out"
		if strings.HasSuffix(wrong, ", not plain text") {
			right = savedPlain
		}
		say(line, column, wrong, right)
		return nil, problems, &healed{gaps: true}
	}
	if len(bytes.TrimSpace(data)) == 0 {
		say(1, 1, "the file is empty", "`rebush start` writes a job file to begin with")
		return nil, problems, &healed{gaps: true}
	}
	if line, column := tooDeep(data); line > 0 {
		say(line, column, fmt.Sprintf("more than %d brackets are open here", deepest),
			"no list or record of a job goes so deep")
		return nil, problems, &healed{gaps: true}
	}
	h := &healer{file: file, lines: strings.Split(typewritten(string(data)), "\n")}
	doc, second := h.heal()
	problems, mended = h.problems, &h.healed
	switch {
	case doc == nil && len(problems) == 0:
		say(1, 1, "there is nothing but comments in this file", "`rebush start` writes a job file to begin with")
		return nil, problems, &healed{gaps: true}
	case doc == nil:
		return nil, problems, &healed{gaps: true}
	case doc.Kind != yaml.DocumentNode || len(doc.Content) == 0:
		say(1, 1, "the file is empty", "`rebush start` writes a job file to begin with")
		return nil, problems, &healed{gaps: true}
	}
	if second > 0 {
		say(second, 1, "a second document begins here", "one file holds one job: take the line --- away, or make two files")
	}
	root = doc.Content[0]
	if !refuse(file, root, 1, &problems) {
		return nil, problems, &healed{gaps: true}
	}
	return root, problems, mended
}

// refuse walks the tree for what a job file may not use. It answers false
// where the tree is too deep to go on.
func refuse(file string, n *yaml.Node, depth int, problems *Problems) bool {
	say := func(wrong, right string) {
		*problems = append(*problems, Problem{Pos: Pos{file, n.Line, n.Column}, Wrong: wrong, Right: right})
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
					Problem{Pos: Pos{file, k.Line, k.Column}, Wrong: "a list or record stands where a key belongs",
						Right: "write `key: value`"})
				continue
			}
			if k.Tag == "!!merge" {
				*problems = append(*problems,
					Problem{Pos: Pos{file, k.Line, k.Column}, Wrong: "a merge (<<) is not read here",
						Right: "write the values out where they belong"})
				continue
			}
			if line, twice := first[k.Value]; twice {
				*problems = append(*problems, Problem{Pos: Pos{file, k.Line, k.Column},
					Wrong: fmt.Sprintf("%q stands twice, first on line %d", short(k.Value), line), Right: "keep one of them"})
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
