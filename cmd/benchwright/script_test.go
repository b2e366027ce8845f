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
			for name, path := range map[string]string{"DEMO": "procedures", "SARIF": "testdata/sarif/sarif-schema-2.1.0.json"} {
				abs, err := filepath.Abs(filepath.Join("..", "..", path))
				if err != nil {
					return err
				}
				env.Setenv(name, abs)
			}
			return nil
		},
	})
}
