package job

import (
	"bytes"
	"fmt"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"
)

// patternHead stands at the head of a pattern that PatternOf writes.
const patternHead = "What every truck of this kind shares. A job names this file under `like` and says what was\n" +
	"measured of its own truck; what it says itself counts before this. Take out what is not alike in all."

// PatternOf writes a pattern from a job: all that is not of this one truck. name
// stands in messages, folder is that of the job, and to the folder that the
// pattern is written to, so that its shop is found from there. The error is
// Problems.
func PatternOf(name, folder, to string, data []byte) ([]byte, error) {
	root, problems, mended := scan(name, data)
	if root == nil || mended.gaps || len(problems) > 0 {
		problems.quote(name, strings.Split(string(decoded(data)), "\n"))
		return nil, problems.sorted()
	}
	if root.Kind != yaml.MappingNode {
		return nil, Problems{{Pos: Pos{name, 1, 1}, Wrong: "the file does not begin with keys", Right: "name a job file"}}
	}
	for i := 0; i+1 < len(root.Content); i += 2 {
		k, v := root.Content[i], root.Content[i+1]
		switch k.Value {
		case "rebush_shop":
			return nil, Problems{{Pos: Pos{name, k.Line, k.Column}, Wrong: IsShop, Right: "name a job file"}}
		case "like":
			return nil, Problems{{Pos: Pos{name, v.Line, v.Column}, Wrong: "this job has a pattern already, " + short(v.Value),
				Right: "copy that one, or write a job that says all itself"}}
		case "shop":
			if v.Kind == yaml.ScalarNode && !filepath.IsAbs(v.Value) {
				if rel, err := filepath.Rel(to, beside(folder, v.Value)); err == nil {
					v.Value = filepath.ToSlash(rel)
				}
			}
		}
	}
	share(root, nil)
	root.HeadComment, root.FootComment = "", ""
	if len(root.Content) > 0 {
		root.Content[0].HeadComment = patternHead
	}
	var b bytes.Buffer
	enc := yaml.NewEncoder(&b)
	enc.SetIndent(2)
	if err := enc.Encode(root); err != nil {
		return nil, Problems{{Pos: Pos{name, 1, 1}, Wrong: fmt.Sprintf("no pattern can be written of this: %v", err)}}
	}
	enc.Close()
	if p := parsePattern("pattern", b.Bytes()); len(p.r.problems) > 0 {
		return nil, p.r.problems.sorted()
	}
	return b.Bytes(), nil
}

// share takes out what is of one truck, and what is then left empty.
func share(n *yaml.Node, path []string) {
	if n.Kind == yaml.SequenceNode {
		for _, c := range n.Content {
			share(c, path)
		}
		return
	}
	if n.Kind != yaml.MappingNode {
		return
	}
	var kept []*yaml.Node
	for i := 0; i+1 < len(n.Content); i += 2 {
		k, v := n.Content[i], n.Content[i+1]
		here := append(append([]string(nil), path...), k.Value)
		if _, is := oneTruck(here); is {
			continue
		}
		full := len(v.Content) > 0
		share(v, here)
		if full && len(v.Content) == 0 {
			continue
		}
		kept = append(kept, k, v)
	}
	n.Content = kept
}

// MakePattern reads a job file and writes a pattern of it, for the folder to. "-"
// is standard input. Errors are those of Read.
func MakePattern(path, to string, opt Options) ([]byte, error) {
	data, err := load(path, opt.Stdin)
	if err != nil {
		return nil, unread(path, err)
	}
	name, folder := path, "."
	if path == "-" {
		name = "standard input"
	} else {
		folder = filepath.Dir(path)
	}
	if _, err := Parse(name, folder, data, opt); err != nil {
		return nil, err
	}
	return PatternOf(name, folder, to, data)
}
