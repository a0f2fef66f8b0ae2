package testkit

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Judge returns the path of an outside judge: a program found by name, or a file below the folder that .ci/tools fills. A judge
// that is not there is named in the test's log, and the test goes on without it; under JUDGES=required it fails instead.
func Judge(t testing.TB, name string) (path string, there bool) {
	t.Helper()
	if path, err := exec.LookPath(name); err == nil {
		return path, true
	}
	if path := filepath.Join(judgesFolder(), "node_modules", filepath.FromSlash(name)); exists(path) {
		return path, true
	}
	if os.Getenv("JUDGES") == "required" {
		t.Fatalf("the judge %s is not installed: run .ci/tools", name)
	}
	t.Logf("done without the judge %s: .ci/tools installs it", name)
	return "", false
}

func judgesFolder() string {
	if folder := os.Getenv("FOUNDROW_JUDGES"); folder != "" {
		return folder
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return ""
	}
	return filepath.Join(home, ".cache", "foundrow-judges")
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}
