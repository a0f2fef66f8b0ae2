package cli

import (
	"context"
	"errors"
	"fmt"
	"os/signal"
	"strconv"
	"strings"
	"syscall"

	"os"

	"foundrow/internal/proof"
	"foundrow/internal/site"
	"foundrow/internal/source"
	"foundrow/internal/watch"
)

func watchCommand() command {
	var order watch.Order
	return command{
		name: "watch",
		does: "show the studio in the browser while you write, as it is saved",
		lesson: `
usage: foundrow watch [--studio FOLDER] [--port NUMBER]

Shows the studio in the browser. Every save shows in the open page at once, in
its place, with what it changed in which sizes. A mistake stands under the page
with its line, over the last version that was right. Patterns without a date
are shown here and nowhere else, marked as not out yet.

Below every page there are ways to all its sizes side by side, to the page for
paper, to the widths of two phones, and to a list of the whole studio. What is
not out yet is found in that list; the catalogue is the one that makers will see.

Nothing is written into the studio or into public. The pages can be seen from
this machine alone, unless --host says otherwise: then whoever can reach that
address can read them, the patterns that are not out among them.

Press Ctrl and C to stop.
`,
		example: `
  foundrow watch
      the studio in this folder, at http://127.0.0.1:4665/
  foundrow watch --studio ~/patterns --host 192.168.1.20
      another studio, for a telephone in the same house to look at
`,
		options: func(o *options) {
			o.takeStudio()
			o.taken.IntVar(&order.Port, "port", 0, "the `number` to be found under; 4665, or the next that is free, if left out")
			o.taken.StringVar(&order.Host, "host", "", "the `address` of this machine to be found at by others")
			o.taken.BoolVar(&order.Round, "round", false, "go round looking for changes, for disks that do not tell of them")
			o.taken.BoolVar(&order.Forget, "forget", false, "work everything out anew, remembering nothing of earlier runs")
		},
		run: func(s *call, o options, words []string) (int, error) {
			if len(words) > 0 {
				return couldNot, usageError{"watch shows the whole studio and takes no " + words[0], "to name the studio, write --studio " + words[0]}
			}
			if order.Port < 0 || order.Port > 65535 {
				return couldNot, usageError{"there is no port " + strconv.Itoa(order.Port), "ports are numbers from 1 to 65535"}
			}
			order.Studio = o.studio
			return s.watch(order)
		},
	}
}

// watch shows a studio until it is interrupted.
func (s *call) watch(order watch.Order) (int, error) {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	order.Ready = func(r watch.Ready) {
		if r.Taken != 0 {
			fmt.Fprintf(s.talk, "port %d is taken by another program\n", r.Taken)
		}
		if r.Open {
			fmt.Fprintln(s.talk, "others than this machine can see these pages")
		}
		fmt.Fprintln(s.out, r.Address)
	}
	order.Tell = func(t watch.Told) { s.told(t, order.Studio) }
	err := watch.Run(ctx, order)
	switch {
	case errors.Is(err, site.ErrNoStudio):
		return couldNot, usageError{"there is no studio in " + named(order.Studio) + ": no content/studio.toml", "go to the folder that has content in it, or name it with --studio FOLDER"}
	case err != nil:
		return couldNot, err
	}
	fmt.Fprintln(s.talk, "stopped")
	return fine, nil
}

func named(studio string) string {
	if studio == "" || studio == "." {
		return "this folder"
	}
	return studio
}

// told prints a line of what a change came to, and below it what was found that had not been found before.
func (s *call) told(t watch.Told, studio string) {
	for _, n := range t.Notices {
		fmt.Fprintln(s.talk, n)
	}
	if t.Lost != "" {
		fmt.Fprintln(s.talk, t.Lost+"; the pages stay as they were")
	}
	if t.Lost == "" && (t.First || t.Changed != nil) {
		fmt.Fprintln(s.talk, toldLine(t))
		s.findings(s.talk, fromHere(t.New, studio), s.colourTalk)
	}
	for _, err := range t.Trouble {
		fmt.Fprintln(s.talk, err)
	}
}

// toldLine says in one line what changed, what was done again, and how long that took.
func toldLine(t watch.Told) string {
	what := "the studio as it is"
	if !t.First {
		what = changedSaid(t.Changed)
	}
	done := []string{proof.Number(int(t.Work.Read), "manuscript worked", "manuscripts worked")}
	if t.Work.Layouts > 0 {
		done = append(done, "layouts loaded")
	}
	if t.Open > 0 {
		done = append(done, proof.Number(t.Open, "open page", "open pages")+" in "+shortly(t.Shown))
	}
	return fmt.Sprintf("%s: %s, all in %s; %s", what, strings.Join(done, ", "), shortly(t.Took), proof.Count(t.Findings))
}

// changedSaid names a few files and counts many.
func changedSaid(files []string) string {
	const few = 3
	if len(files) <= few {
		return source.List(files, "and")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(files[:few], ", "), len(files)-few)
}
