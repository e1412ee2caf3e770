// Command pack puts files into an archive: pack FOLDER NAME FILE..., a zip for
// Windows and macOS, a tar.gz for others. All of it stands in a folder NAME. A
// folder among the files is that of the demos; a file named from here keeps its
// place, any other stands at the top. The same files give the same
// bytes: they are sorted, of one day, and nobody's.
package main

import (
	"archive/tar"
	"archive/zip"
	"compress/gzip"
	"io"
	"io/fs"
	"log"
	"os"
	"path"
	"path/filepath"
	"sort"
	"strings"
	"time"
)

var day = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

type file struct {
	name, from string
	mode       fs.FileMode
}

func main() {
	log.SetFlags(0)
	folder, name, list := os.Args[1], os.Args[2], files(os.Args[2], os.Args[3:])
	zipped := strings.Contains(name, "windows") || strings.Contains(name, "darwin")
	end := ".tar.gz"
	if zipped {
		end = ".zip"
	}
	out, err := os.Create(filepath.Join(folder, name+end))
	if err != nil {
		log.Fatal(err)
	}
	if zipped {
		err = asZip(out, list)
	} else {
		err = asTar(out, list)
	}
	if e := out.Close(); err == nil {
		err = e
	}
	if err != nil {
		log.Fatal(err)
	}
}

// files are what goes in, by the names that it has there.
func files(top string, named []string) []file {
	var out []file
	for _, n := range named {
		err := filepath.WalkDir(n, func(p string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			to := path.Join(top, filepath.ToSlash(p))
			if filepath.IsAbs(p) {
				to = path.Join(top, filepath.Base(p))
			}
			if p != n {
				to = path.Join(top, "demos", filepath.ToSlash(strings.TrimPrefix(p, n)))
			}
			mode := fs.FileMode(0o644)
			if strings.HasPrefix(filepath.Base(p), "rebush") && p == n {
				mode = 0o755
			}
			out = append(out, file{to, p, mode})
			return nil
		})
		if err != nil {
			log.Fatal(err)
		}
	}
	sort.Slice(out, func(i, k int) bool { return out[i].name < out[k].name })
	return out
}

func pour(to io.Writer, f file) error {
	in, err := os.Open(f.from)
	if err != nil {
		return err
	}
	defer in.Close()
	_, err = io.Copy(to, in)
	return err
}

func asZip(out io.Writer, list []file) error {
	z := zip.NewWriter(out)
	for _, f := range list {
		h := &zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: day}
		h.SetMode(f.mode)
		w, err := z.CreateHeader(h)
		if err == nil {
			err = pour(w, f)
		}
		if err != nil {
			return err
		}
	}
	return z.Close()
}

func asTar(out io.Writer, list []file) error {
	g := gzip.NewWriter(out)
	t := tar.NewWriter(g)
	for _, f := range list {
		info, err := os.Stat(f.from)
		if err == nil {
			err = t.WriteHeader(&tar.Header{Name: f.name, Mode: int64(f.mode), Size: info.Size(), ModTime: day,
				Format: tar.FormatUSTAR})
		}
		if err == nil {
			err = pour(t, f)
		}
		if err != nil {
			return err
		}
	}
	if err := t.Close(); err != nil {
		return err
	}
	return g.Close()
}
