//go:build unix

package cli

import (
	"io/fs"
	"sync"
	"syscall"
)

// umask returns the process's file mode mask. It can only be read by setting
// it, so it is read once.
var umask = sync.OnceValue(func() fs.FileMode {
	m := syscall.Umask(0)
	syscall.Umask(m)
	return fs.FileMode(m)
})
