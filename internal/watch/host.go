package watch

import (
	"bytes"
	"io"
	"mime"
	"net"
	"net/http"
	"path"
	"strings"
	"time"

	"foundrow/internal/site"
)

// A host answers browsers. It answers only where it was asked by a name of its own, only to reading, and only with what the
// studio's site has or will have: names are looked up among the outputs, never on the disk.
type host struct {
	studio *studio
	names  map[string]bool // its own, with the port: "127.0.0.1:4665", "localhost:4665"
	any    bool            // it listens on every address of the machine: every one of them is a name of its own
	port   string
	over   <-chan struct{} // closed when the preview ends
}

func (h *host) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	head := w.Header()
	head.Set("Cache-Control", "no-store")
	head.Set("X-Content-Type-Options", "nosniff")
	head.Set("X-Frame-Options", "SAMEORIGIN")
	head.Set("Content-Security-Policy", "frame-ancestors 'self'")
	head.Set("Cross-Origin-Resource-Policy", "same-origin")
	head.Set("Cross-Origin-Opener-Policy", "same-origin")
	head.Set("Referrer-Policy", "no-referrer")
	switch {
	case !h.mine(r.Host):
		http.Error(w, "this preview is not called "+printable(r.Host), http.StatusMisdirectedRequest)
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		head.Set("Allow", "GET, HEAD")
		http.Error(w, "a preview can only be looked at", http.StatusMethodNotAllowed)
	case foreign(r, h.mine):
		http.Error(w, "another site asked for this", http.StatusForbidden)
	default:
		h.answer(w, r)
	}
}

// mine reports whether a name is one of the host's own. A name that somebody else gives to this machine is not: a page from there
// would be allowed to read what is previewed. An address in figures cannot be given to another machine, so where the host listens
// on all of them, all are its own.
func (h *host) mine(name string) bool {
	name = strings.ToLower(name)
	if h.names[name] {
		return true
	}
	address, port, err := net.SplitHostPort(name)
	return err == nil && h.any && port == h.port && net.ParseIP(address) != nil
}

// foreign reports whether a page of another site asks, in any other way than by a link that is followed to here.
func foreign(r *http.Request, mine func(string) bool) bool {
	if origin := r.Header.Get("Origin"); origin != "" {
		name, is := strings.CutPrefix(origin, "http://")
		return !is || !mine(name)
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "cross-site", "same-site":
		return r.Header.Get("Sec-Fetch-Mode") != "navigate" || r.Header.Get("Sec-Fetch-Dest") != "document"
	}
	return false
}

// printable returns a name that was sent, cut to what may be said back.
func printable(name string) string {
	name = strings.Map(func(r rune) rune {
		if r < ' ' || r > '~' {
			return -1
		}
		return r
	}, name)
	return name[:min(len(name), 100)]
}

// answer answers a question that may be asked.
func (h *host) answer(w http.ResponseWriter, r *http.Request) {
	at := r.URL.Path
	switch {
	case at == changeAddress:
		if r.Method == http.MethodHead {
			return
		}
		h.follow(w, r)
	case at == scriptAddress:
		h.send(w, r, at, own.script)
	case path.Clean("/"+at) != strings.TrimSuffix(at, "/") && at != "/":
		h.sendPage(w, r, at, http.StatusNotFound)
	case strings.HasSuffix(at, "/") || strings.HasSuffix(at, ".html"):
		h.sendPage(w, r, at, http.StatusOK)
	default:
		h.sendFile(w, r, at)
	}
}

// sendPage sends a page of the site or of the preview's own.
func (h *host) sendPage(w http.ResponseWriter, r *http.Request, at string, status int) {
	if status != http.StatusOK {
		at = ""
	}
	data, _, found := h.page(at)
	if !found {
		status = http.StatusNotFound
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	if r.Method != http.MethodHead {
		w.Write(data)
	}
}

// sendFile sends an output that is no page. A page that was asked for without the slash at its end is pointed out.
func (h *host) sendFile(w http.ResponseWriter, r *http.Request, at string) {
	v, is := h.studio.show(strings.TrimPrefix(at, "/"))
	switch {
	case is && v.From == "":
		h.send(w, r, at, v.Data)
	case is:
		h.sendStudioFile(w, r, at, v.Output)
	default:
		if _, is := h.studio.show(strings.TrimPrefix(at, "/") + "/index.html"); is {
			w.Header().Set("Location", at+"/") // it is the address of a page: nothing else can stand here
			w.WriteHeader(http.StatusMovedPermanently)
			return
		}
		h.sendPage(w, r, at, http.StatusNotFound)
	}
}

// sendStudioFile sends a photo or film of the studio as it is now.
func (h *host) sendStudioFile(w http.ResponseWriter, r *http.Request, at string, o site.Output) {
	file, err := h.studio.tree.Open(o.From)
	if err != nil {
		h.sendPage(w, r, at, http.StatusNotFound)
		return
	}
	defer file.Close()
	info, err := file.Stat()
	content, seeks := file.(io.ReadSeeker)
	if err != nil || !seeks || !info.Mode().IsRegular() {
		h.sendPage(w, r, at, http.StatusNotFound)
		return
	}
	setType(w, at)
	http.ServeContent(w, r, "", info.ModTime(), content)
}

func (h *host) send(w http.ResponseWriter, r *http.Request, at string, data []byte) {
	setType(w, at)
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(data))
}

// kinds are those that a system's own table may lack.
var kinds = map[string]string{
	".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
	".mp4": "video/mp4", ".m4v": "video/mp4", ".webm": "video/webm", ".vtt": "text/vtt; charset=utf-8",
}

// setType names what a file is by its ending, never by what is in it.
func setType(w http.ResponseWriter, at string) {
	ending := strings.ToLower(path.Ext(at))
	kind := kinds[ending]
	if kind == "" {
		kind = mime.TypeByExtension(ending)
	}
	if kind == "" {
		kind = "application/octet-stream"
	}
	w.Header().Set("Content-Type", kind)
}

// page makes the page at an address, with the band under it and the digest that tells it from any other. Where there is none it
// is the page that says so, and found is false.
func (h *host) page(at string) (data []byte, etag site.Digest, found bool) {
	html, v, address, found := h.studio.pageAt(at)
	data, etag, err := covered(html, h.studio.bandOf(v, address, at))
	if err != nil {
		return []byte("foundrow itself went wrong: " + err.Error()), "", false
	}
	return data, etag, found
}
