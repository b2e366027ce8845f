// Package cli is the command line, with one file for each command. It alone
// prints (voice.go) and sets the exit code.
package cli

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/term"

	"benchwright/cmd/benchwright/internal/diag"
)

// Exit codes.
const (
	exitOK    = 0 // clean, or warnings only
	exitFound = 1 // errors in procedures, or an impossible calculation
	exitFault = 2 // wrong use, an I/O error, or an internal error
)

// Streams are the inputs and outputs of a command.
type Streams struct {
	Out, Err io.Writer
	Dir      string // the working directory
	Terminal bool   // Err is a terminal: show progress and color
	Colored  bool   // Out is a terminal: show color
}

// Standard returns the streams of the process.
func Standard() Streams {
	dir, err := os.Getwd()
	if err != nil {
		dir = "."
	}
	_, plain := os.LookupEnv("NO_COLOR")
	return Streams{Out: os.Stdout, Err: os.Stderr, Dir: dir,
		Terminal: term.IsTerminal(int(os.Stderr.Fd())) && !plain, Colored: term.IsTerminal(int(os.Stdout.Fd())) && !plain}
}

// A command is a subcommand of benchwright.
type command struct {
	name  string
	args  string
	about string
	run   func(*call) int
}

func commands() []command {
	return []command{
		{"check", "PATH…", "say what is wrong, write nothing", check},
		{"build", "PATH… -o FOLDER", "check, then write the cards as PDF", build},
		{"compare", "OLD NEW", "say what changed on the cards, in what they mean", compareSides},
		{"git", "", "print what makes git's own diff say what changed on the cards", gitDiff},
		{"release", "PATH…", "record a release: what to bring back from the benches, what to print", releaseCards},
		{"trace", "CODE [PATH]", "say by the check code of a page whether it is current", trace},
		{"explain", "NAME", "what a message means, with an example and its fix", explain},
		{"calc", "NAME OPTIONS", "work out one calculation of the cards at a terminal", calculate},
		{"new", "FOLDER", "begin a workspace that builds", newWorkspace},
		{"schema", "NAME", "print the JSON Schema of a file, a block or a report", printSchema},
		{"version", "", "the version of this program", version},
	}
}

// A call is one invocation of a command.
type call struct {
	Streams
	command command
	flags   *flag.FlagSet
	paths   []string
	rest    []string // arguments before flags are parsed
}

// Main runs benchwright with the arguments after the program's name, and
// returns the exit code.
func Main(args []string, s Streams) int {
	if len(args) == 0 || args[0] == "help" || args[0] == "-h" || args[0] == "--help" {
		usage(s.Out)
		if len(args) == 0 {
			return exitFault
		}
		return exitOK
	}
	if args[0] == "--version" {
		args[0] = "version"
	}
	var names []string
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(&call{Streams: s, command: c, flags: flag.NewFlagSet(c.name, flag.ContinueOnError), rest: args[1:]})
		}
		names = append(names, c.name)
	}
	help := "`benchwright help` lists the commands"
	if near := diag.Nearest(args[0], names); near != "" {
		help = "did you mean `benchwright " + near + "`?"
	}
	return fail(s, fmt.Errorf("there is no command `%s`: %s", args[0], help))
}

// absolute returns a name on the command line as an absolute path.
func (c *call) absolute(name string) string {
	if filepath.IsAbs(name) {
		return filepath.Clean(name)
	}
	return filepath.Join(c.Dir, name)
}

// parse parses flags anywhere among the paths. Ok is false if the command must
// end with the exit code.
func (c *call) parse() (code int, ok bool) {
	c.flags.SetOutput(io.Discard)
	rest := c.rest
	for {
		err := c.flags.Parse(rest)
		if errors.Is(err, flag.ErrHelp) {
			commandUsage(c.Out, c.command, c.flags)
			return exitOK, false
		}
		if err != nil {
			return fail(c.Streams, fmt.Errorf("%s: `benchwright %s --help` lists its options", plainFlag(err), c.command.name)), false
		}
		rest = c.flags.Args()
		if len(rest) == 0 {
			return 0, true
		}
		c.paths = append(c.paths, rest[0])
		rest = rest[1:]
	}
}

// plainFlag rewords an error of the flag package.
func plainFlag(err error) string {
	s := err.Error()
	if name, ok := strings.CutPrefix(s, "flag provided but not defined: "); ok {
		return "there is no option `" + name + "`"
	}
	if name, ok := strings.CutPrefix(s, "flag needs an argument: "); ok {
		return "the option `" + name + "` needs a value"
	}
	return s
}
