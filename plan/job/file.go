package job

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// largest is the largest job, shop, point or table file that is read.
const largest = 1 << 20

var (
	errFolder = errors.New("is a folder; name the file in it")
	errDevice = errors.New("is a device or a pipe, not a file")
	errLarge  = errors.New("is larger than 1 MiB, which no job file is")
	errStdin  = errors.New("standard input is not there")
)

// load reads a file of at most 1 MiB. "-" is standard input. Files that another
// file names (stdin is nil) have to be plain ones.
func load(path string, stdin io.Reader) ([]byte, error) {
	if path == "-" {
		if stdin == nil {
			return nil, errStdin
		}
		return limited(stdin)
	}
	info, err := os.Stat(path) // before it is opened: a pipe would wait for its writer
	if err != nil {
		return nil, err
	}
	if info.IsDir() {
		return nil, errFolder
	}
	if stdin == nil && !info.Mode().IsRegular() {
		return nil, errDevice
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return limited(f)
}

func limited(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, largest+1))
	if err != nil {
		return nil, err
	}
	if len(data) > largest {
		return nil, errLarge
	}
	return data, nil
}

// plainFileError drops the system call and the path from an error of the
// operating system.
func plainFileError(err error) string {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "there is no such file"
	case errors.Is(err, fs.ErrPermission):
		return "may not be read"
	}
	var pe *fs.PathError
	if errors.As(err, &pe) {
		return pe.Err.Error()
	}
	return err.Error()
}

// beside resolves a name in a job from the folder of the job.
func beside(folder, name string) string {
	if name == "-" || filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(folder, filepath.FromSlash(name))
}
