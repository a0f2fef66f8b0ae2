package watch

import (
	"fmt"
	"maps"
	"net/http"
	"slices"
	"time"

	"foundrow/internal/site"
)

// A guest is an open page that wants to hear when it is not what was saved last any more.
type guest struct {
	path string
	wake chan struct{} // rings when something may have changed
}

// mostGuests is how many open pages are told of changes; whoever opens more has lost count, or means no good.
const mostGuests = 64

// heartbeat is how often an open page hears something, so that one which is gone is noticed, after a sleep as well.
const heartbeat = 15 * time.Second

// welcome takes in a guest, unless there are too many.
func (s *studio) welcome(path string) *guest {
	s.mu.Lock()
	defer s.mu.Unlock()
	if len(s.guests) >= mostGuests {
		return nil
	}
	g := &guest{path, make(chan struct{}, 1)}
	s.guests[g] = true
	return g
}

func (s *studio) farewell(g *guest) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.guests, g)
}

// open pages are those that somebody looks at, each once.
func (s *studio) openPages() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	paths := map[string]bool{}
	for g := range s.guests {
		paths[g.path] = true
	}
	return slices.Sorted(maps.Keys(paths))
}

// wakeAll has every guest look whether its page is another.
func (s *studio) wakeAll() {
	s.mu.Lock()
	defer s.mu.Unlock()
	for g := range s.guests {
		select {
		case g.wake <- struct{}{}:
		default:
		}
	}
}

// follow tells an open page, in server-sent events, the digest of what lies at its address: first what it is, then what it
// becomes. What is in between while nobody listens is left out.
func (h *host) follow(w http.ResponseWriter, r *http.Request) {
	g := h.studio.welcome(r.URL.Query().Get("of"))
	if g == nil {
		http.Error(w, "too many pages are open", http.StatusServiceUnavailable)
		return
	}
	defer h.studio.farewell(g)
	w.Header().Set("Content-Type", "text/event-stream; charset=utf-8")
	to := http.NewResponseController(w)
	say := func(text string) bool {
		to.SetWriteDeadline(time.Now().Add(heartbeat))
		_, err := fmt.Fprint(w, text)
		return err == nil && to.Flush() == nil
	}
	var told site.Digest
	beat := time.NewTicker(heartbeat)
	defer beat.Stop()
	for there := true; there; {
		if _, etag, _ := h.page(g.path); etag != told {
			told, there = etag, say(fmt.Sprintf("data: %s\n\n", etag))
		}
		select {
		case <-r.Context().Done():
			return
		case <-h.over:
			return
		case <-g.wake:
		case <-beat.C:
			there = say(": still here\n\n")
		}
	}
}
