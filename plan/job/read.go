package job

import (
	_ "embed"
	"io"
	"path/filepath"

	"rebush/fits/dim"
)

//go:embed data/shop.yaml
var smallShop []byte

// builtInName is how the built-in shop is called where a line of it is named.
const builtInName = "built-in small shop"

// Options change what is read.
type Options struct {
	Shop  string    // a shop file that stands before the job's own, "" for none
	Stdin io.Reader // what "-" reads
}

// Read reads a job file with its shop. "-" is standard input. The error is a
// *FileError where a file could not be read at all, and Problems where it was
// read and cannot be understood; Problems hold all the mistakes at once.
func Read(path string, opt Options) (*Job, error) {
	data, err := load(path, opt.Stdin)
	if err != nil {
		return nil, unread(path, err)
	}
	folder := "."
	if path != "-" {
		folder = filepath.Dir(path)
	}
	return Parse(path, folder, data, opt)
}

// unread is the error of a file that could not be loaded.
func unread(path string, err error) error {
	if err == errLarge {
		return Problems{{Pos: Pos{path, 1, 1}, Wrong: "this file " + err.Error(), Right: "is it the right file?"}}
	}
	return &FileError{Path: path, Err: err}
}

// Parse reads a job from bytes. name stands in messages; names of other files
// in the job resolve from folder.
func Parse(name, folder string, data []byte, opt Options) (*Job, error) {
	if name == "-" {
		name = "standard input"
	}
	root, r := readPart(name, data, jobShape)
	told := func(more ...Problem) Problems {
		all := append(r.problems, more...)
		all.quote(name, r.lines)
		all.quote(r.likeFile, r.likeLines)
		return all.sorted()
	}
	if root == nil {
		return nil, told()
	}
	root, patternErr := r.withPattern(root, name, folder)
	if r.gaps { // of what was left out nobody knows what it would go with
		return nil, told()
	}
	if patternErr != nil { // nor of what the pattern would have given
		if len(r.problems) == 0 {
			return nil, patternErr
		}
		return nil, told(patternErr.problem("patterns are named from the folder of the job"))
	}
	r.complete(root)
	j := bindJob(r, root, name, folder)
	pointsErr := loadProbed(r, j, root, folder)
	checkJob(r, j, root)
	shop, shopProblems, fileErr := shopOf(r, j, root, opt)
	if shop != nil {
		checkShopWithJob(r, j, root, shop)
	}
	if fileErr == nil {
		fileErr = pointsErr
	} else if pointsErr != nil {
		shopProblems = append(shopProblems, pointsErr.problem(pointsFrom))
	}
	if len(r.problems)+len(shopProblems) > 0 {
		if fileErr != nil {
			shopProblems = append(shopProblems, fileErr.problem("files are named from the folder of the job"))
		}
		return nil, told(shopProblems...)
	}
	if fileErr != nil {
		return nil, fileErr
	}
	j.Shop = shop
	j.root = root
	return j, nil
}

// shopOf reads the shop that the job or the command line names, else the one
// built in.
func shopOf(r *reader, j *Job, root *value, opt Options) (*Shop, Problems, *FileError) {
	path, from := "", Pos{}
	if v := root.get("shop"); v != nil {
		path, from = j.besideOf(v), v.pos
	}
	if opt.Shop != "" {
		path, from = opt.Shop, Pos{}
	}
	if path == "" {
		shop, err := parseShop(builtInName, ".", smallShop)
		if err != nil {
			return nil, Problems{{Pos: Pos{File: builtInName}, Wrong: err.Error(), Right: "this is a fault in rebush"}}, nil
		}
		shop.File = ""
		return shop, nil, nil
	}
	if path == "-" {
		return nil, Problems{{Pos: from, Wrong: "shop: standard input cannot be the shop file", Right: "name a file"}}, nil
	}
	shop, err := ReadShop(path)
	switch e := err.(type) {
	case nil:
		return shop, nil, nil
	case Problems:
		return nil, e, nil
	case *FileError:
		if e.Pos.File == "" {
			e.Pos = from
		}
		return nil, nil, e
	default:
		return nil, Problems{{Pos: from, Wrong: err.Error()}}, nil
	}
}

// ReadShop reads a shop file, with the tables that it names. Errors are those
// of Read.
func ReadShop(path string) (*Shop, error) {
	data, err := load(path, nil)
	if err != nil {
		return nil, unread(path, err)
	}
	return parseShop(path, filepath.Dir(path), data)
}

// parseShop reads a shop from bytes; names in it resolve from folder.
func parseShop(name, folder string, data []byte) (*Shop, error) {
	root, r := readFile(name, data, shopShape)
	if root == nil || r.gaps {
		r.problems.quote(name, r.lines)
		return nil, r.problems.sorted()
	}
	s := bindShop(r, root, name)
	s.root = root
	overrides(r, root, s, folder)
	checkShop(r, s, root)
	if len(r.problems) > 0 {
		r.problems.quote(name, r.lines)
		return nil, r.problems.sorted()
	}
	return s, nil
}

func unitsOf(v *value) dim.Unit {
	if v.text() == "in" {
		return dim.Inch
	}
	return dim.MM
}
