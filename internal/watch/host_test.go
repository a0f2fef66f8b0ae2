package watch

import (
	"bufio"
	"fmt"
	"io"
	"maps"
	"net"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// guarded is a studio with things in it that nobody is to see from outside.
func guarded(t *testing.T) *sitting {
	files := studioOf(strings.Replace(scarf, "A scarf.", "A scarf. ![it](it.jpg)", 1))
	files["content/patterns/scarf/it.jpg"] = "a picture"
	files["content/patterns/scarf/customers.csv"] = "secret"
	files["content/patterns/mitten/pattern.md"] = strings.NewReplacer("Scarf", "Mitten", "released = 2026-04-02\n", "").Replace(scarf)
	files["content/pages/about.md"] = "# About\n\nWords.\n"
	files["content/notes.md"] = "secret"
	files["secret.txt"] = "secret"
	files["public/old.html"] = "secret"
	s := sit(t, files)
	outside := filepath.Join(t.TempDir(), "outside.jpg")
	s.do(os.WriteFile(outside, []byte("secret"), 0o666))
	s.do(os.Symlink(outside, s.on("content/patterns/scarf/outside.jpg")))
	return s
}

// ask sends a question as it stands, and returns the answer's status, head and body.
func (s *sitting) ask(question string) (int, http.Header, string) {
	s.t.Helper()
	at, err := url.Parse(s.address)
	s.do(err)
	question = strings.ReplaceAll(strings.ReplaceAll(question, "HERE", at.Host), "PORT", at.Port())
	c, err := net.Dial("tcp", at.Host)
	s.do(err)
	defer c.Close()
	c.SetDeadline(time.Now().Add(patient))
	_, err = io.WriteString(c, strings.ReplaceAll(strings.TrimSpace(question), "\n", "\r\n")+"\r\nConnection: close\r\n\r\n")
	s.do(err)
	answer, err := http.ReadResponse(bufio.NewReader(c), nil)
	if err != nil {
		return 0, nil, err.Error()
	}
	defer answer.Body.Close()
	body, _ := io.ReadAll(answer.Body)
	return answer.StatusCode, answer.Header, string(body)
}

// TestWhoMayAsk asks under names that are not the preview's, and from other sites.
func TestWhoMayAsk(t *testing.T) {
	t.Parallel()
	s := guarded(t)
	for _, c := range []struct {
		what, question string
		status         int
	}{
		{"by its address", "GET / HTTP/1.1\nHost: HERE", 200},
		{"by the name every machine has for itself", "GET / HTTP/1.1\nHost: localhost:PORT", 200},
		{"in capitals", "GET / HTTP/1.1\nHost: LocalHost:PORT", 200},
		{"by a name that somebody made lead here", "GET / HTTP/1.1\nHost: rebound.example:PORT", 421},
		{"by such a name without a port", "GET / HTTP/1.1\nHost: rebound.example", 421},
		{"by a name that begins like ours", "GET / HTTP/1.1\nHost: localhost.rebound.example:PORT", 421},
		{"by a name that ends like ours", "GET / HTTP/1.1\nHost: rebound-localhost:PORT", 421},
		{"by an address of another machine", "GET / HTTP/1.1\nHost: 192.168.1.1:PORT", 421},
		{"by our address at another port", "GET / HTTP/1.1\nHost: 127.0.0.1:1", 421},
		{"by our address without the port", "GET / HTTP/1.1\nHost: 127.0.0.1", 421},
		{"by no name", "GET / HTTP/1.0", 421},
		{"by an empty name", "GET / HTTP/1.1\nHost:", 421},
		{"with a whole address in the question", "GET http://rebound.example:PORT/ HTTP/1.1\nHost: HERE", 421},
		{"the changes, by another name", "GET /~/changes?of=/ HTTP/1.1\nHost: rebound.example:PORT", 421},
		{"a script of ours, by another name", "GET /~/preview.js HTTP/1.1\nHost: rebound.example:PORT", 421},

		{"a page of another site, with a script", "GET / HTTP/1.1\nHost: HERE\nOrigin: https://rebound.example", 403},
		{"a page of another site, hearing of changes", "GET /~/changes?of=/ HTTP/1.1\nHost: HERE\nOrigin: http://rebound.example", 403},
		{"a page of another port of this machine", "GET / HTTP/1.1\nHost: HERE\nOrigin: http://127.0.0.1:1", 403},
		{"a page of nowhere", "GET / HTTP/1.1\nHost: HERE\nOrigin: null", 403},
		{"a page of ours", "GET / HTTP/1.1\nHost: HERE\nOrigin: http://HERE", 200},
		{"another site, for a picture", "GET / HTTP/1.1\nHost: HERE\nSec-Fetch-Site: cross-site\nSec-Fetch-Mode: no-cors\nSec-Fetch-Dest: image", 403},
		{"another site, for a script", "GET /~/preview.js HTTP/1.1\nHost: HERE\nSec-Fetch-Site: cross-site\nSec-Fetch-Mode: no-cors\nSec-Fetch-Dest: script", 403},
		{"another site, in a frame", "GET / HTTP/1.1\nHost: HERE\nSec-Fetch-Site: cross-site\nSec-Fetch-Mode: navigate\nSec-Fetch-Dest: iframe", 403},
		{"another site, by a link that is followed", "GET / HTTP/1.1\nHost: HERE\nSec-Fetch-Site: cross-site\nSec-Fetch-Mode: navigate\nSec-Fetch-Dest: document", 200},
		{"our own page, in a frame", "GET / HTTP/1.1\nHost: HERE\nSec-Fetch-Site: same-origin\nSec-Fetch-Mode: navigate\nSec-Fetch-Dest: iframe", 200},

		{"to write", "PUT /patterns/scarf/ HTTP/1.1\nHost: HERE\nContent-Length: 0", 405},
		{"to send", "POST / HTTP/1.1\nHost: HERE\nContent-Length: 0", 405},
		{"to take away", "DELETE /patterns/scarf/ HTTP/1.1\nHost: HERE", 405},
		{"what may be asked", "OPTIONS / HTTP/1.1\nHost: HERE", 405},
		{"what was asked", "TRACE / HTTP/1.1\nHost: HERE", 405},
		{"to be led on", "CONNECT rebound.example:443 HTTP/1.1\nHost: rebound.example:443", 421},
		{"to be led on through us", "CONNECT HERE HTTP/1.1\nHost: HERE", 405},
		{"for the head alone", "HEAD / HTTP/1.1\nHost: HERE", 200},
		{"with a head without end", "GET / HTTP/1.1\nHost: HERE\nX: " + strings.Repeat("x", 64<<10), 431},
	} {
		t.Run(c.what, func(t *testing.T) {
			status, head, body := s.ask(c.question)
			if status != c.status {
				t.Fatalf("the answer is %d %q", status, body)
			}
			if status != 200 && status != 431 && strings.Contains(body, "Scarf") {
				t.Errorf("it is refused, and says %q", body)
			}
			if status == 431 {
				return
			}
			for name, want := range map[string]string{
				"X-Content-Type-Options": "nosniff", "Cross-Origin-Resource-Policy": "same-origin", "Cache-Control": "no-store",
				"Content-Security-Policy": "frame-ancestors 'self'", "Access-Control-Allow-Origin": "",
			} {
				if got := head.Get(name); got != want {
					t.Errorf("%s is %q", name, got)
				}
			}
		})
	}
}

// TestWhatMayBeAskedFor asks for what the site has, and for what it has not.
func TestWhatMayBeAskedFor(t *testing.T) {
	t.Parallel()
	s := guarded(t)
	for _, c := range []struct {
		at     string
		status int
		kind   string
	}{
		{"/", 200, "text/html; charset=utf-8"},
		{"/index.html", 200, "text/html; charset=utf-8"},
		{"/kind/other/", 200, "text/html; charset=utf-8"},
		{"/kind/hat/", 404, ""},
		{"/about/", 200, "text/html; charset=utf-8"},
		{"/patterns/scarf/", 200, "text/html; charset=utf-8"},
		{"/patterns/scarf/index.html", 200, "text/html; charset=utf-8"},
		{"/patterns/scarf/print/", 200, "text/html; charset=utf-8"},
		{"/patterns/mitten/", 200, "text/html; charset=utf-8"}, // not out, so shown here alone
		{"/patterns/scarf", 301, ""},
		{"/patterns/scarf/it.jpg", 200, "image/jpeg"},
		{"/~/preview.js", 200, "text/javascript; charset=utf-8"},
		{"/~/whole/", 200, "text/html; charset=utf-8"},
		{"/~/sizes/patterns/scarf/", 200, "text/html; charset=utf-8"},
		{"/~/phone/patterns/scarf/", 200, "text/html; charset=utf-8"},

		{"/patterns/scarf/pattern.md", 404, ""},
		{"/patterns/scarf/customers.csv", 404, ""},
		{"/patterns/scarf/outside.jpg", 404, ""},
		{"/content/patterns/scarf/pattern.md", 404, ""},
		{"/content/studio.toml", 404, ""},
		{"/studio.toml", 404, ""},
		{"/content/notes.md", 404, ""},
		{"/secret.txt", 404, ""},
		{"/old.html", 404, ""},
		{"/public/old.html", 404, ""},
		{"/.git/config", 404, ""},
		{"/assets/", 404, ""},
		{"/assets/pattern.css", 404, ""},
		{"/patterns/", 404, ""},
		{"/nowhere", 404, ""},
		{"/nowhere/", 404, ""},

		{"/../secret.txt", 404, ""},
		{"/patterns/../secret.txt", 404, ""},
		{"/patterns/scarf/../../../secret.txt", 404, ""},
		{"/patterns/scarf/../scarf/", 404, ""},
		{"/%2e%2e/secret.txt", 404, ""},
		{"/%2e%2e%2fsecret.txt", 404, ""},
		{"/patterns/scarf/%2e%2e%2f%2e%2e%2f%2e%2e%2fsecret.txt", 404, ""},
		{"/..%5csecret.txt", 404, ""},
		{"/patterns/scarf/..%5c..%5c..%5csecret.txt", 404, ""},
		{"/%252e%252e/secret.txt", 404, ""},
		{"//secret.txt", 404, ""},
		{"//rebound.example/", 404, ""},
		{"//rebound.example/patterns/scarf", 404, ""},
		{"/patterns//scarf/", 404, ""},
		{"/./patterns/scarf/", 404, ""},
		{"/patterns/scarf/it.jpg%00.html", 404, ""},
		{"/patterns/scarf/it.jpg/", 404, ""},
		{"/c:/windows/win.ini", 404, ""},
		{"/~", 404, ""},
		{"/~/", 404, ""},
		{"/~/layouts/preview/preview.html", 404, ""},
		{"/~/sizes/", 404, ""},
		{"/~/sizes/../../secret.txt", 404, ""},
		{"/~/sizes/about/nothing/", 404, ""},
		{"/~/phone/nowhere/", 404, ""},
		{"/~/phone//rebound.example/", 404, ""},
		{"/~/phone/~/phone/", 404, ""},
	} {
		t.Run(strings.ReplaceAll(c.at, "/", " "), func(t *testing.T) {
			status, head, body := s.ask("GET " + c.at + " HTTP/1.1\nHost: HERE")
			if status != c.status {
				t.Fatalf("the answer is %d %q", status, tagless(body))
			}
			if strings.Contains(body, "secret") && !strings.Contains(c.at, "secret") || strings.Contains(tagless(body), "terms = ") {
				t.Errorf("it gives away %q", body)
			}
			if c.kind != "" && head.Get("Content-Type") != c.kind {
				t.Errorf("it is sent as %q", head.Get("Content-Type"))
			}
			if c.status == 301 && head.Get("Location") != c.at+"/" {
				t.Errorf("it leads to %q", head.Get("Location"))
			}
		})
	}
}

// What somebody puts into an address comes back as words, if it comes back.
func TestAddressIsNoMarkup(t *testing.T) {
	t.Parallel()
	s := guarded(t)
	status, _, body := s.ask("GET /%3Cscript%3Ealert(1)%3C/script%3E/ HTTP/1.1\nHost: HERE")
	if status != 404 || strings.Contains(body, "<script>alert") {
		t.Errorf("the answer is %d %q", status, body)
	}
	status, _, body = s.ask("GET / HTTP/1.1\nHost: <script>alert(1)</script>")
	if status == 200 || strings.Contains(body, "<script>alert(1)") && status != 421 {
		t.Errorf("the answer is %d %q", status, body)
	}
	files := studioOf(strings.Replace(scarf, "tall = 12", "tall = \"</template><script>alert(1)</script> + 1\"", 1))
	files["content/patterns/scarf/pattern.md"] = strings.Replace(files["content/patterns/scarf/pattern.md"], `"Scarf"`, `"</title><script>alert(2)</script>"`, 1)
	s = sit(t, files)
	for _, at := range [...]string{"/patterns/scarf/", "/~/sizes/patterns/scarf/", "/~/phone/patterns/scarf/", "/~/whole/"} {
		if _, body := s.get(at); strings.Contains(body, "<script>alert") {
			t.Errorf("%s has it as markup: %s", at, body)
		}
	}
}

// TestChangesNothing looks at everything, edits, and finds the studio and public as they were left.
func TestChangesNothing(t *testing.T) {
	t.Parallel()
	s := guarded(t)
	s.save("public/.published", "foundrow published 1\n")
	s.save(manuscript, long("long"))
	s.awaitChange(manuscript)
	before := snapshot(t, s.folder)
	for _, at := range [...]string{"/", "/patterns/scarf/", "/patterns/mitten/", "/~/whole/", "/~/sizes/patterns/scarf/", "/nowhere"} {
		s.get(at)
	}
	if err := s.stop(); err != nil {
		t.Error(err)
	}
	if after := snapshot(t, s.folder); !maps.Equal(before, after) {
		t.Errorf("the studio was\n%v\nand is\n%v", before, after)
	}
}

// TestLoopbackAlone finds the preview where it was told to be and nowhere else.
func TestLoopbackAlone(t *testing.T) {
	t.Parallel()
	s := guarded(t)
	at, err := url.Parse(s.address)
	s.do(err)
	if at.Hostname() != "127.0.0.1" {
		t.Errorf("without being told it is at %s", at.Host)
	}
	addresses, err := net.InterfaceAddrs()
	s.do(err)
	for _, a := range addresses {
		ip, is := a.(*net.IPNet)
		if !is || ip.IP.IsLoopback() || ip.IP.To4() == nil {
			continue
		}
		if c, err := net.DialTimeout("tcp", net.JoinHostPort(ip.IP.String(), at.Port()), time.Second); err == nil {
			c.Close()
			t.Errorf("it can be had at %s", ip.IP)
		}
	}
}

// TestToldToBeOpen listens on every address: every one of them is its name then, and still no other is.
func TestToldToBeOpen(t *testing.T) {
	t.Parallel()
	s := sit(t, studioOf(scarf), func(o *Order) { o.Host = "0.0.0.0" })
	for question, want := range map[string]int{
		"GET / HTTP/1.1\nHost: HERE":                         200,
		"GET / HTTP/1.1\nHost: 192.168.1.20:PORT":            200,
		"GET / HTTP/1.1\nHost: [fe80::1]:PORT":               200,
		"GET / HTTP/1.1\nHost: 192.168.1.20:1":               421,
		"GET / HTTP/1.1\nHost: rebound.example:PORT":         421,
		"GET / HTTP/1.1\nHost: 192.168.1.20.rebound.example": 421,
	} {
		if status, _, _ := s.ask(question); status != want {
			t.Errorf("%q is answered with %d", question, status)
		}
	}
}

// TestPortTaken finds the next one, and says so.
func TestPortTaken(t *testing.T) {
	t.Parallel()
	l, taken, err := listen("127.0.0.1", 0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	port := l.Addr().(*net.TCPAddr).Port
	next, took, err := listen("127.0.0.1", port)
	if err != nil {
		t.Fatal(err)
	}
	defer next.Close()
	if other := next.Addr().(*net.TCPAddr).Port; took != port || other <= port {
		t.Errorf("with %d taken (%d) it is at %d and says that %d was", port, taken, other, took)
	}
	if _, _, err := listen("192.0.2.1", 0); err == nil || !strings.Contains(err.Error(), "192.0.2.1") {
		t.Errorf("an address that no machine has (RFC 5737) gives %v", err)
	}
}

// TestGuests opens more pages than there is room for.
func TestGuests(t *testing.T) {
	t.Parallel()
	s := guarded(t)
	var open []io.Closer
	for n := range mostGuests + 3 {
		answer, err := http.Get(s.address + "~/changes?of=/patterns/scarf/")
		s.do(err)
		open = append(open, answer.Body)
		want := http.StatusOK
		if n >= mostGuests {
			want = http.StatusServiceUnavailable
		}
		if answer.StatusCode != want {
			t.Fatalf("guest %d is answered with %d", n, answer.StatusCode)
		}
	}
	for _, o := range open {
		o.Close()
	}
	for end := time.Now().Add(patient); ; time.Sleep(10 * time.Millisecond) {
		answer, err := http.Get(s.address + "~/changes?of=/")
		s.do(err)
		line := make([]byte, 6)
		io.ReadFull(answer.Body, line)
		answer.Body.Close()
		if answer.StatusCode == http.StatusOK && string(line) == "data: " {
			return
		}
		if time.Now().After(end) {
			t.Fatal(fmt.Sprint("no room is made when guests go: ", answer.StatusCode))
		}
	}
}
