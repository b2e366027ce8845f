package cli

import (
	"embed"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"benchwright/schema"
)

//go:embed starter
var starter embed.FS

// newWorkspace creates a small workspace that builds, including the schemas
// for editors.
func newWorkspace(c *call) int {
	if code, ok := c.parse(); !ok {
		return code
	}
	if len(c.paths) != 1 {
		return fail(c.Streams, fmt.Errorf("name the folder to begin in, as in `benchwright new my-shop`"))
	}
	given := c.paths[0]
	target := c.absolute(given)
	if entries, err := os.ReadDir(target); err == nil && len(entries) > 0 {
		return fail(c.Streams, fmt.Errorf("%s is not empty, and nothing in it was touched: name a new folder", given))
	}
	files := map[string][]byte{}
	err := fs.WalkDir(starter, "starter", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := starter.ReadFile(path)
		name, _ := filepath.Rel("starter", path)
		files[name] = text
		return err
	})
	if err != nil {
		return fail(c.Streams, err)
	}
	for _, n := range []string{"shop", "unit"} {
		text, _ := schema.Source(n)
		files[filepath.Join("schema", n+".schema.json")] = text
	}
	var names []string
	for n := range files {
		names = append(names, n)
	}
	slices.Sort(names)
	for _, n := range names {
		path := filepath.Join(target, n)
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			return fail(c.Streams, fmt.Errorf("the folder %s cannot be made: %w", filepath.Dir(path), err))
		}
		if err := os.WriteFile(path, files[n], 0o666); err != nil {
			return fail(c.Streams, fmt.Errorf("%s cannot be written: %w", path, err))
		}
		fmt.Fprintf(c.Out, "%s\n", filepath.ToSlash(filepath.Join(given, n)))
	}
	fmt.Fprintf(c.Out, "\nNow: benchwright build %s -o cards\n", given)
	return exitOK
}
