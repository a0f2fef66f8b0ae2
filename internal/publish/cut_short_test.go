//go:build unix

package publish

import (
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"foundrow/internal/testkit"
)

// child is set in a process that publishes and is killed, or that finds the disk full.
const child = "FOUNDROW_TEST_PUBLISH"

func TestMain(m *testing.M) {
	if studio := os.Getenv(child); studio != "" {
		os.Exit(publishAlone(studio))
	}
	os.Exit(m.Run())
}

// A run that is killed at any moment leaves whole files only, and the next one puts everything right.
func TestKilled(t *testing.T) {
	studio := madeUp(t, 60)
	public := filepath.Join(studio, "public")
	run(t, Order{Studio: studio})
	old := tree(t, public)
	rewrite(t, studio, 60)
	clean := t.TempDir()
	run(t, Order{Studio: studio, Into: clean, Forget: true})
	want := tree(t, clean)

	for delay := time.Millisecond; delay < 200*time.Millisecond; delay *= 2 {
		c := exec.Command(os.Args[0])
		c.Env = append(os.Environ(), child+"="+studio)
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(delay)
		c.Process.Kill()
		c.Wait()
		for name, text := range tree(t, public) {
			hidden := strings.HasPrefix(filepath.Base(name), ".")
			if !hidden && text != old[name] && text != want[name] {
				t.Errorf("killed after %v: %s is neither the old file nor the new one", delay, name)
			}
		}
	}
	run(t, Order{Studio: studio})
	if got := tree(t, public); !maps.Equal(got, want) {
		t.Errorf("after being killed there are %v", slices.Sorted(maps.Keys(got)))
	}
}

// rewrite gives every pattern of a made-up studio the text of another, and takes the last one away.
func rewrite(t *testing.T, studio string, patterns int) {
	files := map[string]string{}
	for i := range patterns - 1 {
		files[fmt.Sprintf("content/patterns/thing-%04d/pattern.md", i)] = testkit.Pattern(i + 1)
	}
	testkit.WriteStudio(t, studio, files)
	if err := os.RemoveAll(filepath.Join(studio, "content", "patterns", fmt.Sprintf("thing-%04d", patterns-1))); err != nil {
		t.Fatal(err)
	}
}

// limited says how many bytes a file may have in a process that is to find the disk full.
const limited = "FOUNDROW_TEST_LIMIT"

// publishAlone publishes in a process of its own.
func publishAlone(studio string) int {
	if limit, err := strconv.ParseUint(os.Getenv(limited), 10, 64); err == nil {
		signal.Ignore(syscall.SIGXFSZ)
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: limit, Max: limit}); err != nil {
			fmt.Fprintln(os.Stderr, err)
			return 3
		}
	}
	if _, _, err := Run(Order{Studio: studio, Forget: true}); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 2
	}
	return 0
}

// Where a write fails, nothing is half-written, nothing is removed, and the next run puts everything right. A disk is full where a
// file may not grow beyond a limit.
func TestDiskFull(t *testing.T) {
	studio := madeUp(t, 20)
	public := filepath.Join(studio, "public")
	run(t, Order{Studio: studio})
	old := tree(t, public)
	rewrite(t, studio, 20)
	clean := t.TempDir()
	run(t, Order{Studio: studio, Into: clean, Forget: true})
	want := tree(t, clean)

	for _, limit := range []int{0, 100, 4000, 12000} {
		c := exec.Command(os.Args[0])
		c.Env = append(os.Environ(), child+"="+studio, limited+"="+strconv.Itoa(limit))
		said, err := c.CombinedOutput()
		var exit *exec.ExitError
		if !errors.As(err, &exit) || exit.ExitCode() != 2 || !strings.Contains(string(said), "too large") {
			t.Fatalf("with room for %d bytes: %v: %s", limit, err, said)
		}
		got := tree(t, public)
		for name, text := range got {
			if filepath.Base(name) != journalName && text != old[name] && text != want[name] {
				t.Errorf("with room for %d bytes, %s is neither the old file nor the new one", limit, name)
			}
		}
		for name := range old {
			if _, there := got[name]; !there {
				t.Errorf("with room for %d bytes, %s is gone", limit, name)
			}
		}
	}
	run(t, Order{Studio: studio})
	if got := tree(t, public); !maps.Equal(got, want) {
		t.Errorf("afterwards there are %v", slices.Sorted(maps.Keys(got)))
	}
}
