package workspace

import (
	"strconv"
	"strings"
)

// Commits returns the commits that changed the files below a folder, the newest
// first and at most so many. It returns an error where there is no git or no
// repository.
func Commits(dir string, most int) ([]string, error) {
	out, err := git(dir, nil, "log", "--format=%H", "--max-count="+strconv.Itoa(most), "--", ".")
	if err != nil {
		return nil, err
	}
	return strings.Fields(string(out)), nil
}
