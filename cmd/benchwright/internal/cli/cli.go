// Package cli is the command line: one file a command.
package cli

import (
	"io"
	"os"
)

// Streams are what a command reads and writes.
type Streams struct {
	Out, Err io.Writer
	Dir      string // the working directory
	Terminal bool   // Err is a terminal: progress and colour
}

// Standard returns the process's own streams.
func Standard() Streams {
	dir, _ := os.Getwd()
	return Streams{Out: os.Stdout, Err: os.Stderr, Dir: dir}
}

// Main runs benchwright and returns its exit code.
func Main(args []string, s Streams) int { return 2 }
