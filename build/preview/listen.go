package preview

import (
	"fmt"
	"net"
	"strconv"
)

// Port is where a preview is served unless another port is asked for: the first
// letters of hussif on a telephone's keys.
const Port = 4877

// tried is how many ports from Port on are tried before any free one is taken.
const tried = 20

// Listen opens a port of this machine that no other machine can reach: the one
// asked for, any free one where that is zero, and where it is negative [Port] or
// the next that is free. It is that of 127.0.0.1, or of ::1 where there is no IPv4.
func Listen(port int) (net.Listener, error) {
	host := "127.0.0.1"
	if probe, err := net.Listen("tcp", net.JoinHostPort(host, "0")); err != nil {
		host = "::1"
	} else {
		probe.Close()
	}
	at := func(port int) (net.Listener, error) {
		return net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
	}
	if port >= 0 {
		l, err := at(port)
		if err != nil {
			err = fmt.Errorf("port %d cannot be opened; leave out --port, and one that is free is taken: %w", port, err)
		}
		return l, err
	}
	for port := Port; port < Port+tried; port++ {
		if l, err := at(port); err == nil {
			return l, nil
		}
	}
	return at(0)
}
