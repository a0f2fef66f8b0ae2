package watch

import (
	"context"
	"flag"
	"fmt"
	"html"
	"io"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"foundrow/internal/testkit"
)

// What is remembered of the studios of these tests is kept apart from the user's own. More of them run side by side than there are
// processors, because most of their time they wait for the disk to tell of something.
func TestMain(m *testing.M) {
	flag.Parse()
	flag.Set("test.parallel", "12")
	cache, err := os.MkdirTemp("", "foundrow")
	if err != nil {
		panic(err)
	}
	os.Setenv("XDG_CACHE_HOME", cache)
	status := m.Run()
	os.RemoveAll(cache)
	os.Exit(status)
}

// A sitting is a designer at work: a studio on disk that is being watched, and a browser's view of it.
type sitting struct {
	t       testing.TB
	folder  string
	address string
	told    chan Told
	stop    func() error // ends the sitting as an interrupt does, and returns what Run returned
}

// patient is how long anything may take that does not take any time: on a machine that is busy with other things, too.
const patient = 20 * time.Second

// sit watches files in a folder of their own.
func sit(t testing.TB, files map[string]string, change ...func(*Order)) *sitting {
	t.Helper()
	s := &sitting{t: t, folder: t.TempDir(), told: make(chan Told, 1000)}
	testkit.WriteStudio(t, s.folder, files)
	s.begin(change...)
	s.await(func(told Told) bool { return told.First })
	return s
}

// begin starts to watch.
func (s *sitting) begin(change ...func(*Order)) {
	s.t.Helper()
	ready, ended := make(chan Ready, 1), make(chan error, 1)
	order := Order{Studio: s.folder, Ready: func(r Ready) { ready <- r }, Tell: func(t Told) { s.told <- t }}
	for _, c := range change {
		c(&order)
	}
	ctx, cancel := context.WithCancel(context.Background())
	go func() { ended <- Run(ctx, order) }()
	var over bool
	s.stop = func() error {
		if over {
			return nil
		}
		over = true
		cancel()
		select {
		case err := <-ended:
			return err
		case <-time.After(patient):
			s.t.Fatal("it does not stop")
			return nil
		}
	}
	s.t.Cleanup(func() { s.stop() })
	select {
	case r := <-ready:
		s.address = r.Address
	case err := <-ended:
		s.t.Fatalf("it did not begin: %v", err)
	case <-time.After(patient):
		s.t.Fatal("it does not begin")
	}
}

// await waits until something is told.
func (s *sitting) await(what func(Told) bool) Told {
	s.t.Helper()
	var all []string
	for end := time.After(patient); ; {
		select {
		case told := <-s.told:
			if what(told) {
				return told
			}
			all = append(all, fmt.Sprintf("%+v", told))
		case <-end:
			s.t.Fatalf("it was not told; but\n%s", strings.Join(all, "\n"))
		}
	}
}

// awaitChange waits until it is told that a file has changed.
func (s *sitting) awaitChange(name string) Told {
	s.t.Helper()
	return s.await(func(told Told) bool { return slices.Contains(told.Changed, name) })
}

func (s *sitting) on(name string) string { return filepath.Join(s.folder, filepath.FromSlash(name)) }

// save writes a file as the plainest of editors does.
func (s *sitting) save(name, text string) {
	s.t.Helper()
	testkit.WriteStudio(s.t, s.folder, map[string]string{name: text})
}

// do ends the test if what was done did not come off.
func (s *sitting) do(err error) {
	s.t.Helper()
	if err != nil {
		s.t.Fatal(err)
	}
}

// get asks for a page as a browser does.
func (s *sitting) get(at string) (status int, body string) {
	s.t.Helper()
	answer, err := http.Get(s.address + strings.TrimPrefix(at, "/"))
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	data, err := io.ReadAll(answer.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	return answer.StatusCode, string(data)
}

// page asks for a page that must be there, and returns it without the band, and the words of the band.
func (s *sitting) page(at string) (page, band string) {
	s.t.Helper()
	status, body := s.get(at)
	if status != http.StatusOK {
		s.t.Fatalf("%s is answered with %d", at, status)
	}
	return parted(body)
}

var tags = regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`)

// parted takes the band from a page.
func parted(body string) (page, band string) {
	before, rest, _ := strings.Cut(body, coverBegins)
	cover, after, _ := strings.Cut(rest, coverEnds)
	return before + after, tagless(cover)
}

// until waits for something to become so.
func (s *sitting) until(what string, so func() bool) {
	s.t.Helper()
	for end := time.Now().Add(patient); !so(); time.Sleep(5 * time.Millisecond) {
		if time.Now().After(end) {
			s.t.Fatalf("it never is so that %s", what)
		}
	}
}

// see waits until a page says something, in itself or in its band.
func (s *sitting) see(at, words string) string {
	s.t.Helper()
	var body string
	for end := time.Now().Add(patient); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if _, body = s.get(at); strings.Contains(tagless(body), words) {
			return tagless(body)
		}
	}
	_, band := parted(body)
	s.t.Fatalf("%s never says %q; its band is %q", at, words, band)
	return ""
}

func tagless(body string) string {
	return strings.Join(strings.Fields(html.UnescapeString(tags.ReplaceAllString(body, " "))), " ")
}

// snapshot is everything in a folder, with when it was written.
func snapshot(t testing.TB, folder string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.Walk(folder, func(name string, info os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		text := info.Mode().String() + info.ModTime().String()
		if info.Mode().IsRegular() {
			data, err := os.ReadFile(name)
			if err != nil {
				return err
			}
			text += string(data)
		}
		all[name] = text
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func portOf(address string) int {
	at, err := url.Parse(address)
	if err != nil {
		return 0
	}
	port, _ := strconv.Atoi(at.Port())
	return port
}
