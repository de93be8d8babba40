module hussif

go 1.26.0

require (
	github.com/adrg/frontmatter v0.2.0
	github.com/arran4/golang-ical v0.3.4
	github.com/bep/imagemeta v1.0.1
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/creack/pty v1.1.24
	github.com/disintegration/imaging v1.6.2
	github.com/emersion/go-ical v0.0.0-20250329121855-f41e73efc392
	github.com/fsnotify/fsnotify v1.10.1
	github.com/gen2brain/heic v0.4.5
	github.com/google/go-cmp v0.7.0
	github.com/gorilla/feeds v1.2.0
	github.com/jba/templatecheck v0.7.1
	github.com/microcosm-cc/bluemonday v1.0.27
	github.com/rivo/uniseg v0.4.7
	github.com/rogpeppe/go-internal v1.16.0
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/schollz/progressbar/v3 v3.19.1
	github.com/spf13/cobra v1.10.2
	github.com/spf13/pflag v1.0.9
	github.com/tetratelabs/wazero v1.12.0
	github.com/yuin/goldmark v1.8.7
	go.yaml.in/yaml/v3 v3.0.6
	golang.org/x/image v0.47.0
	golang.org/x/net v0.62.0
	golang.org/x/sync v0.25.0
	golang.org/x/term v0.48.0
	golang.org/x/text v0.44.0
	golang.org/x/tools v0.52.1-0.20261106145633-d407941a339a
	gonum.org/v1/gonum v0.17.0
)

require (
	github.com/BurntSushi/toml v0.3.1 // indirect
	github.com/aymerick/douceur v0.2.0 // indirect
	github.com/ebitengine/purego v0.11.3 // indirect
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	github.com/google/safehtml v0.0.2 // indirect
	github.com/gorilla/css v1.0.1 // indirect
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/mitchellh/colorstring v0.0.0-20190213212951-d06e56a500db // indirect
	github.com/teambition/rrule-go v1.8.2 // indirect
	golang.org/x/sys v0.50.0 // indirect
	gopkg.in/yaml.v2 v2.4.0 // indirect
)
