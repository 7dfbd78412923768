// Command serve shows the built page on this machine.
package main

import (
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"strconv"
	"strings"

	"twoleaf/web/serve/site"
)

func main() {
	dir := flag.String("dir", ".dist", "folder of the built site")
	host := flag.String("host", "localhost", "address to listen on; 0.0.0.0 lets other machines in")
	port := flag.Int("port", 8080, "port; 0 takes any that is free")
	prefix := flag.String("prefix", "/", "path the site stands under")
	flag.Parse()
	if err := serve(*dir, *host, *port, *prefix); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func serve(dir, host string, port int, prefix string) error {
	if _, err := os.Stat(dir + "/index.html"); err != nil {
		return fmt.Errorf("there is no built site in %s: run `make dist` first", dir)
	}
	listener, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
	if err != nil {
		return fmt.Errorf("%w (another port: make run PORT=8090)", err)
	}
	at := listener.Addr().(*net.TCPAddr).Port
	path := strings.TrimSuffix("/"+strings.Trim(prefix, "/"), "/") + "/"
	fmt.Printf("Twoleaf: http://%s%s   (Ctrl-C ends it)\n", net.JoinHostPort(host, strconv.Itoa(at)), path)
	return http.Serve(listener, site.Handler(os.DirFS(dir), prefix))
}
