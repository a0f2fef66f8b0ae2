// Package watch shows a studio in the browser while its designer writes. A page is made when somebody asks for it; when a file
// changes, what changed is made again and the pages that are open follow. Mistakes stand under the last good version of a page.
//
// It changes nothing in the studio and publishes nothing: that is package publish's job. What a page is, package site knows; watch
// keeps an eye on the files, answers the browser, and says what a save has changed.
package watch

import (
	"context"
	"net"
	"net/http"
	"slices"
	"sync"
	"time"

	"foundrow/internal/site"
	"foundrow/internal/source"
)

// An Order says what to watch and where to show it.
type Order struct {
	Studio string // the folder that has content in it; the current one if empty
	Host   string // the address to listen on: "192.168.1.20", or "0.0.0.0" for all; this machine alone can ask if empty
	Port   int    // 4665 if zero: the keys of a telephone that spell hook
	Round  bool   // go round looking instead of being told of changes
	Forget bool   // remember nothing of earlier runs

	Ready func(Ready) // called once, when pages can be asked for
	Tell  func(Told)  // called after each change, one call at a time
}

// Ready says where the studio is shown.
type Ready struct {
	Address string // "http://127.0.0.1:4665/"
	Taken   int    // the port that was asked for, where it was taken; else 0
	Open    bool   // others than this machine can ask
}

// Run shows a studio until the context ends. Its error is one of the machine, or that there is no studio; whatever is wrong with
// the studio itself is told, and shown.
func Run(ctx context.Context, o Order) error {
	if o.Studio == "" {
		o.Studio = "."
	}
	tree, err := openTree(o.Studio)
	if err != nil {
		return err
	}
	past := recallPast(o.Studio, o.Forget)
	s := newStudio(tree, past.memory)
	w := &watching{Order: o, studio: s, past: past, lookout: newLookout(o.Studio, o.Round)}
	if m := s.open(past.program, time.Now()); m.lost != "" {
		return site.ErrNoStudio
	}
	listener, taken, err := listen(o.Host, o.Port)
	if err != nil {
		return err
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	server := serve(ctx, s, listener)
	served := make(chan error, 1)
	go func() { served <- server.Serve(listener) }()
	go w.lookout.run(ctx)
	if o.Ready != nil {
		o.Ready(Ready{Address: addressOn(listener), Taken: taken, Open: !listener.Addr().(*net.TCPAddr).IP.IsLoopback()})
	}
	done := make(chan struct{})
	go func() { w.run(ctx); close(done) }()
	select {
	case <-ctx.Done():
		err = nil
	case err = <-served:
		stop()
	}
	<-done
	ended, cancel := context.WithTimeout(context.Background(), time.Second)
	defer cancel()
	if server.Shutdown(ended) != nil {
		server.Close()
	}
	return err
}

// serve makes the server of a studio. It waits for nobody who has nothing to say.
func serve(ctx context.Context, s *studio, l net.Listener) *http.Server {
	return &http.Server{
		Handler:           hostFor(s, l, ctx.Done()),
		ReadHeaderTimeout: 5 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    32 << 10,
		BaseContext:       func(net.Listener) context.Context { return ctx },
	}
}

// watching is one run.
type watching struct {
	Order
	studio  *studio
	past    *past
	lookout *lookout

	telling sync.Mutex // one at a time
	notices []string   // those that were told

	changed []string  // since something was told last
	work    site.Work // since then
	began   time.Time // when the first of that was noticed; zero where all is told
	known   source.Findings
	told    bool      // something was
	survey  chan bool // closed when the look over the whole studio has ended
	abandon chan bool // closed to have it end early
}

// run follows the changes until the context ends.
func (w *watching) run(ctx context.Context) {
	w.redo(w.studio.now.Load(), time.Now())
	w.notice()
	for {
		noted, since, err := w.lookout.next(ctx)
		if err != nil {
			w.halt()
			w.past.keep()
			return
		}
		changed := w.settle(ctx, noted, since)
		w.notice()
		if len(changed) > 0 {
			began := time.Now()
			w.halt()
			w.changed = append(w.changed, changed...)
			w.redo(w.studio.open(w.past.program, began), began)
		}
	}
}

// settle looks where something was noticed. While a file looks as if it were just being saved it waits, until patience ends.
func (w *watching) settle(ctx context.Context, noted notices, since time.Time) []string {
	for {
		changed, unsettled := w.studio.tree.look(noted, time.Since(since) >= patience)
		if !unsettled {
			return changed
		}
		select {
		case <-ctx.Done():
			return nil
		case <-time.After(quiet):
		}
		noted.join(w.lookout.take())
	}
}

// redo makes the open pages again, tells them, and has the whole studio looked over behind that.
func (w *watching) redo(m *moment, began time.Time) {
	if w.began.IsZero() {
		w.began = began
	}
	open := w.studio.openPages()
	for _, at := range open {
		w.studio.pageAt(at)
	}
	shown := time.Since(began)
	w.studio.wakeAll()
	w.survey, w.abandon = make(chan bool), make(chan bool)
	go func(survey, abandon chan bool) {
		defer close(survey)
		w.lookOver(m, len(open), shown, abandon)
	}(w.survey, w.abandon)
}

// halt ends the look over the whole studio, if it is still going on.
func (w *watching) halt() {
	if w.survey != nil {
		close(w.abandon)
		<-w.survey
		w.survey = nil
	}
}

// lookOver looks the whole studio over and tells what came of the change. It tells nothing when it is abandoned: whatever comes
// next tells of both changes.
func (w *watching) lookOver(m *moment, open int, shown time.Duration, abandon chan bool) {
	stop := func() bool {
		select {
		case <-abandon:
			return true
		default:
			return false
		}
	}
	told := Told{First: !w.told, Open: open, Shown: shown, Lost: m.lost}
	if m.lost == "" {
		o := m.preview.Overview(stop)
		w.add(m.preview.Work())
		if o == nil {
			return
		}
		w.studio.looked(o, m)
		w.studio.wakeAll()
		told.Findings, told.Trouble = o.Findings, o.Trouble
		told.New = news(o.Findings, w.known)
		w.known = o.Findings
	}
	told.Changed, told.Work, told.Took = slices.Compact(slices.Sorted(slices.Values(w.changed))), w.work, time.Since(w.began)
	w.changed, w.work, w.began, w.told = nil, site.Work{}, time.Time{}, true
	w.tell(told)
	w.past.later(w.notice)
}

// add counts work that was done.
func (w *watching) add(more site.Work) {
	w.work.Read += more.Read
	w.work.Set += more.Set
	w.work.Replayed += more.Replayed
	w.work.Layouts += more.Layouts
	w.work.Catalogue += more.Catalogue
}
