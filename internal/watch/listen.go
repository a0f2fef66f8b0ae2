package watch

import (
	"errors"
	"fmt"
	"net"
	"strconv"
	"syscall"
)

// usualPort spells hook on the keys of a telephone.
const usualPort = 4665

// tries is how many ports are tried before the system is asked for any that is free.
const tries = 20

// listen opens the port that was asked for, or the next that is free; then taken is the one that was asked for.
func listen(host string, port int) (l net.Listener, taken int, err error) {
	if host == "" {
		host = "127.0.0.1"
	}
	if port == 0 {
		port = usualPort
	}
	for next := port; next < port+tries && next <= 65535; next++ {
		l, err = net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(next)))
		if err == nil {
			break
		}
		if !errors.Is(err, syscall.EADDRINUSE) {
			return nil, 0, fmt.Errorf("cannot listen on %s: %w", net.JoinHostPort(host, strconv.Itoa(next)), err)
		}
		taken = port
	}
	if err != nil {
		l, err = net.Listen("tcp", net.JoinHostPort(host, "0"))
	}
	return l, taken, err
}

// addressOn is where a listener is found by a browser on this machine.
func addressOn(l net.Listener) string {
	at := l.Addr().(*net.TCPAddr)
	host := at.IP.String()
	if at.IP.IsUnspecified() {
		host = "127.0.0.1"
	}
	return "http://" + net.JoinHostPort(host, strconv.Itoa(at.Port)) + "/"
}

// hostFor makes the host of a studio that is found at a listener. On a machine's own loopback it is called by the names that
// always lead there; elsewhere by the address it was given.
func hostFor(s *studio, l net.Listener, over <-chan struct{}) *host {
	at := l.Addr().(*net.TCPAddr)
	port := strconv.Itoa(at.Port)
	h := &host{studio: s, names: map[string]bool{}, port: port, over: over, any: at.IP.IsUnspecified()}
	called := []string{at.IP.String()}
	if at.IP.IsLoopback() || h.any {
		called = append(called, "127.0.0.1", "localhost", "::1")
	}
	for _, name := range called {
		h.names[net.JoinHostPort(name, port)] = true
		if at.Port == 80 { // browsers leave the usual port out
			h.names[name] = true
		}
	}
	return h
}
