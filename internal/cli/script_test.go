package cli

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"foundrow": func() { os.Exit(Main(os.Args[1:], os.Stdout, os.Stderr)) },
	})
}

// TestScripts runs the command line as designers do. Beside the usual commands of testscript there are
//
//	status N COMMAND…   runs a command that must end with that status
//	large FILE BYTES    makes a large file of nothing
//	bytes FILE HEX      makes a file of bytes that no text editor would write
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join("..", "..", "testdata", "scripts"),
		UpdateScripts: os.Getenv("UPDATE") != "",
		Setup: func(e *testscript.Env) error {
			e.Setenv("XDG_CACHE_HOME", filepath.Join(e.WorkDir, ".cache"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status": func(ts *testscript.TestScript, neg bool, args []string) {
				want, err := strconv.Atoi(args[0])
				ts.Check(err)
				status := 0
				var exit *exec.ExitError
				if err := ts.Exec(args[1], args[2:]...); errors.As(err, &exit) {
					status = exit.ExitCode()
				} else {
					ts.Check(err)
				}
				if status != want {
					ts.Fatalf("ended with status %d instead of %d", status, want)
				}
			},
			"large": func(ts *testscript.TestScript, neg bool, args []string) {
				size, err := strconv.ParseInt(args[1], 10, 64)
				ts.Check(err)
				ts.Check(os.WriteFile(ts.MkAbs(args[0]), nil, 0o666))
				ts.Check(os.Truncate(ts.MkAbs(args[0]), size))
			},
			"bytes": func(ts *testscript.TestScript, neg bool, args []string) {
				text, err := strconv.Unquote(`"` + args[1] + `"`)
				ts.Check(err)
				ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(text), 0o666))
			},
		},
	})
}
