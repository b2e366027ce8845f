package workspace

import (
	"io/fs"
	"os"
	"path/filepath"
)

// files are those below a folder, on disk or in a revision. Names are
// slash-separated, "" is the folder itself.
type files interface {
	list(dir string) ([]fs.DirEntry, error) // sorted by name
	has(name string) bool
	read(name string, limit int64) ([]byte, error)
}

// disk is the files below a folder on disk.
type disk string

func (d disk) path(name string) string { return filepath.Join(string(d), filepath.FromSlash(name)) }

func (d disk) list(dir string) ([]fs.DirEntry, error) { return os.ReadDir(d.path(dir)) }

func (d disk) has(name string) bool { return exists(d.path(name)) }

func (d disk) read(name string, limit int64) ([]byte, error) { return Read(string(d), name, limit) }
