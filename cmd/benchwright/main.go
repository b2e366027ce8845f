// Benchwright compiles bench procedures into laminated bench cards.
package main

import (
	"os"

	"benchwright/cmd/benchwright/internal/cli"
)

func main() { os.Exit(cli.Main(os.Args[1:], cli.Standard())) }
