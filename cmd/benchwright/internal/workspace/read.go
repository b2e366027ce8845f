package workspace

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
)

// TooLarge is the error for a file larger than Cap; both are in bytes.
type TooLarge struct{ Size, Cap int64 }

func (e *TooLarge) Error() string {
	return fmt.Sprintf("%s, more than the %s that may be read", size(e.Size), size(e.Cap))
}

// Link is the error for a path through a symbolic link.
type Link struct{ Name string }

func (e *Link) Error() string { return e.Name + " is a symbolic link" }

// Outside is the error for a path that leaves the workspace.
type Outside struct{ Path string }

func (e *Outside) Error() string { return e.Path + " leads out of the workspace" }

func size(n int64) string {
	switch {
	case n >= 10<<20:
		return fmt.Sprintf("%d MB", n>>20)
	case n >= 10<<10:
		return fmt.Sprintf("%d KB", n>>10)
	}
	return fmt.Sprintf("%d bytes", n)
}

// Read reads the file at a slash-separated name below root, of at most limit
// bytes. Outside root, through a symbolic link, or above the limit, the error
// is an *Outside, *Link or *TooLarge.
func Read(root, name string, limit int64) ([]byte, error) {
	name = filepath.FromSlash(name)
	if !filepath.IsLocal(name) {
		return nil, &Outside{filepath.ToSlash(name)}
	}
	dir, err := os.OpenRoot(root)
	if err != nil {
		return nil, err
	}
	defer dir.Close()
	parts := strings.Split(filepath.Clean(name), string(filepath.Separator))
	for i := range parts {
		step := filepath.Join(parts[:i+1]...)
		info, err := dir.Lstat(step)
		if err != nil {
			return nil, err
		}
		if info.Mode()&os.ModeSymlink != 0 {
			return nil, &Link{filepath.ToSlash(step)}
		}
		if i == len(parts)-1 && !info.Mode().IsRegular() {
			return nil, fmt.Errorf("it is not a file")
		}
	}
	f, err := dir.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if info.Size() > limit {
		return nil, &TooLarge{info.Size(), limit}
	}
	// The file may have grown since it was measured.
	text, err := io.ReadAll(io.LimitReader(f, limit+1))
	if err == nil && int64(len(text)) > limit {
		return nil, &TooLarge{int64(len(text)), limit}
	}
	return text, err
}

// Resolve returns the name below the workspace's root of a path written in the
// file from, or an *Outside error.
func Resolve(from, path string) (string, error) {
	if filepath.IsAbs(path) || strings.Contains(path, "\\") || strings.Contains(path, ":") {
		return "", &Outside{path}
	}
	dir := ""
	if i := strings.LastIndexByte(from, '/'); i >= 0 {
		dir = from[:i]
	}
	joined := filepath.ToSlash(filepath.Join(filepath.FromSlash(dir), filepath.FromSlash(path)))
	if !filepath.IsLocal(joined) {
		return "", &Outside{path}
	}
	return joined, nil
}
