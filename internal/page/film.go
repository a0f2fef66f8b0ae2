package page

import (
	"strconv"
	"strings"

	"foundrow/internal/pattern"
)

// A Film is the recording a pattern belongs to. The zero Film is none.
type Film struct {
	Address string // a page elsewhere, or a file beside the pattern's page
	Local   bool   // it is a file beside the pattern's page
	Runs    string // "24:10"; empty when it is not said
}

func filmOf(f pattern.Film) Film {
	film := Film{Address: f.Page.Text}
	if f.File.Text != "" {
		film.Address, film.Local = f.File.Text, true
	}
	if f.Runs > 0 {
		film.Runs = Stamp(f.Runs)
	}
	return film
}

// Moment is the address of a moment of the film. A player elsewhere is told in its own words where that is known, and
// otherwise by the fragment that W3C Media Fragments URI 1.0 gives, as a file is.
func (f Film) Moment(seconds int) string {
	if f.Address == "" || seconds < 0 {
		return f.Address
	}
	at := strconv.Itoa(seconds)
	switch host := hostOf(f.Address); {
	case f.Local:
	case host == "youtube.com" || host == "youtu.be":
		return f.Address + query(f.Address) + "t=" + at + "s"
	case strings.Contains(f.Address, "/videos/watch/") || strings.Contains(f.Address, "/w/"):
		return f.Address + query(f.Address) + "start=" + at + "s"
	}
	return f.Address + "#t=" + at
}

// query is the sign before one more part of an address's query.
func query(address string) string {
	if strings.Contains(address, "?") {
		return "&"
	}
	return "?"
}

func hostOf(address string) string {
	_, rest, _ := strings.Cut(address, "://")
	host, _, _ := strings.Cut(rest, "/")
	return strings.TrimPrefix(strings.TrimPrefix(host, "www."), "m.")
}

// Stamp words a moment of a film: "11:40", "1:02:05".
func Stamp(seconds int) string {
	two := func(n int) string {
		if n < 10 {
			return "0" + strconv.Itoa(n)
		}
		return strconv.Itoa(n)
	}
	if seconds >= 3600 {
		return strconv.Itoa(seconds/3600) + ":" + two(seconds/60%60) + ":" + two(seconds%60)
	}
	return strconv.Itoa(seconds/60) + ":" + two(seconds%60)
}
