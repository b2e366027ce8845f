//go:build !unix

package cli

import "io/fs"

func umask() fs.FileMode { return 0 }
