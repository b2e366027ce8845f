package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"benchwright": main})
}

// TestScripts runs the command line as its users do. Each script is one file
// of testdata/script; UPDATE=1 rewrites the expected messages in it.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 filepath.Join("..", "..", "testdata", "script"),
		UpdateScripts:       os.Getenv("UPDATE") != "",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Cmds:                commands,
		Setup: func(env *testscript.Env) error {
			demo, err := filepath.Abs(filepath.Join("..", "..", "procedures"))
			env.Setenv("DEMO", demo)
			return err
		},
	})
}
