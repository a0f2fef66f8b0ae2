package cli

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"foundrow/internal/testkit"
)

// TestWatch runs the command as a designer does: it says where the studio is to be seen, tells of a save in a line, and ends without
// an error when it is interrupted.
func TestWatch(t *testing.T) {
	folder := t.TempDir()
	testkit.WriteStudio(t, folder, testkit.Studio(2))
	run := exec.Command("foundrow", "watch", "--studio", folder)
	run.Env = append(os.Environ(), "XDG_CACHE_HOME="+t.TempDir(), "NO_COLOR=1")
	out, err := run.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	talk, err := run.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := run.Start(); err != nil {
		t.Fatal(err)
	}
	defer run.Process.Kill()
	said := bufio.NewReader(talk)
	line := func(words string) string {
		t.Helper()
		for {
			text, err := said.ReadString('\n')
			if err != nil {
				t.Fatalf("it ends before it says %q: %v", words, err)
			}
			if strings.Contains(text, words) {
				return text
			}
		}
	}
	address, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Fatalf("it says it is at %q, %v", address, err)
	}
	line("the studio as it is: 2 manuscripts worked")
	answer, err := http.Get(strings.TrimSpace(address) + "patterns/thing-0001/")
	if err != nil {
		t.Fatal(err)
	}
	page, _ := io.ReadAll(answer.Body)
	answer.Body.Close()
	if !strings.Contains(string(page), "Made-up Thing 1") {
		t.Errorf("the page is %s", page)
	}

	file := filepath.Join(folder, "content", "patterns", "thing-0001", "pattern.md")
	if err := os.WriteFile(file, []byte(strings.Replace(testkit.Pattern(1), "d3 = \"front", "d3 = \"frnt", 1)), 0o666); err != nil {
		t.Fatal(err)
	}
	if told := line("content/patterns/thing-0001/pattern.md: "); !strings.Contains(told, "1 manuscript worked, all in ") || !strings.HasSuffix(told, " 1 error\n") {
		t.Errorf("the save is told of as %q", told)
	}
	line(filepath.ToSlash(file) + ":")
	line("^^^^")
	line("fix: ")

	run.Process.Signal(os.Interrupt)
	line("stopped")
	ended := make(chan error, 1)
	go func() { ended <- run.Wait() }()
	select {
	case err := <-ended:
		if err != nil {
			t.Errorf("it ends with %v", err)
		}
	case <-time.After(20 * time.Second):
		t.Error("it does not end")
	}
}
