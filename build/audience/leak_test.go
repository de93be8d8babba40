package audience_test

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"html"
	"image"
	"image/color"
	"image/png"
	"io"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf16"

	"hussif/build/audience"
	"hussif/build/keep"
	"hussif/build/output"
	"hussif/build/photo"
	"hussif/build/site"
	"hussif/content/edtf"
	"hussif/content/journal"
	"hussif/content/source"
)

// A planter writes a journal in which every hidden thing holds a mark of its own.
type planter struct {
	files fstest.MapFS
	marks []string
}

// mark returns a word that stands nowhere else.
func (p *planter) mark() string {
	p.marks = append(p.marks, fmt.Sprintf("qz%dzq", 1000+len(p.marks)))
	return p.marks[len(p.marks)-1]
}

func (p *planter) add(name, text string) {
	p.files[name] = &fstest.MapFile{Data: []byte(text)}
}

// picture adds a picture of one colour with a mark in a text of its own, as PNG has it
// (PNG specification, third edition, 11.3.3.2: tEXt).
func (p *planter) picture(name string, at int) {
	m := image.NewRGBA(image.Rect(0, 0, 60, 40))
	for i := range m.Pix {
		m.Pix[i] = uint8(at*7 + i%5)
	}
	m.Set(3, 3, color.White)
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		panic(err)
	}
	data := b.Bytes()
	text := "tEXtComment\x00" + p.mark()
	chunk := binary.BigEndian.AppendUint32(nil, uint32(len(text)-4))
	chunk = binary.BigEndian.AppendUint32(append(chunk, text...), crcOf(text))
	const header = 8 + 25 // the signature and IHDR
	p.files[name] = &fstest.MapFile{Data: append(append(append([]byte(nil), data[:header]...), chunk...), data[header:]...)}
}

// fields is front matter of every kind of value, all marked.
func (p *planter) fields() string {
	m := p.mark
	return "title: " + m() + "\ntags: [" + m() + ", " + m() + "]\nnext time: [{do: " + m() + ", garment: " + m() + "}]\n"
}

func (p *planter) text() string {
	m := p.mark
	return "# " + m() + "\n\n" + m() + " [" + m() + "](https://example.org/" + m() + ") `" + m() + "`\n\nNext time: " + m() + "\n\nDecided: " + m() +
		"\n\n- " + m() + "[^1]\n\n| " + m() + " |\n|---|\n| " + m() + " |\n\n[^1]: " + m() + "\n"
}

// plant writes pages of every kind, of which every other one is hidden, and links from
// those that are seen to those that are not in every way there is.
func plant(pages int) *planter {
	p := &planter{files: fstest.MapFS{}}
	m := p.mark
	p.add("journal.yaml", "title: Planted\nshare: public\nunit: cm\ncurrency: EUR # "+m()+"\nease: {"+m()+": {bust girth: 1}}\n")
	p.add("people/ada.md", "---\n# "+m()+"\nmeasured: [{date: 2026-01-10, over: ["+m()+"], by: "+m()+", remarks: "+m()+", bust girth: 91.3}]\nusual changes: ["+m()+"]\n---\nAda.\n\nPrivate: "+m()+"\n")
	p.add("people/hidden.md", "---\nshare: self\n"+p.fields()+"measured: [{remarks: "+m()+", date: 2026-01-10, bust girth: 87.3}]\n---\n"+p.text())
	for i := range pages {
		secret := fmt.Sprintf("builds/%s/build.md", m())
		gown := strings.TrimSuffix(strings.TrimPrefix(secret, "builds/"), "/build.md")
		p.picture(strings.Replace(secret, "build.md", m()+".png", 1), i)
		p.picture(fmt.Sprintf("builds/shown-%d/%s.png", i, m()), i+100)
		face := p.marks[len(p.marks)-2]
		p.picture(fmt.Sprintf("builds/shown-%d/back.png", i), i+200)
		p.add(secret, "---\nshare: self\nfor: ada\ngarment: "+m()+"\n"+p.fields()+
			"seams: [{name: "+m()+", sewn: "+m()+"}]\npieces: [{name: "+m()+", marks: ["+m()+"]}]\nfeatures: [{what: "+m()+", departs: "+m()+"}]\n---\n"+p.text())
		p.add("builds/"+gown+"/2026-03-01-"+m()+".md", "---\n"+p.fields()+"decided: [{question: "+m()+", chose: "+m()+"}]\n---\n"+p.text())
		p.add("builds/heir-"+fmt.Sprint(i)+"/build.md", "---\nfor: hidden\n"+p.fields()+"---\n"+p.text())
		for _, kind := range []string{"patterns", "references", "materials", "techniques"} {
			p.add(fmt.Sprintf("%s/%s.md", kind, m()), "---\nshare: self\n"+p.fields()+"---\n"+p.text())
		}
		p.add(fmt.Sprintf("occasions/%s.md", m()), "---\nshare: self\ndate: 2027-0"+fmt.Sprint(1+i%9)+"-11\nplace: "+m()+"\n"+p.fields()+"---\n"+p.text())
		reference := m()
		p.add("references/"+reference+".md", "---\nshare: self\ndate: 1785\nshows: ["+m()+"]\nholder: "+m()+"\n---\n"+p.text())
		p.add(fmt.Sprintf("builds/shown-%d/build.md", i), "---\nfor: ada # "+m()+"\ngarment: jacket\nremakes: "+gown+"\npattern: [draft]\nplanned: {hours: 12, cost: 4711}\n"+
			"features: [{what: piped armhole, rests on: ["+reference+"]}]\nshare fields: {techniques: self, tags: self}\ntags: ["+m()+"]\nnext time: [\"see [["+gown+"]] and [["+gown+"|"+m()+"]]\"]\n"+
			"seams: [{name: side, count: 2, now: 1.5, keep: 0.6, length: 43.1, crosses: {bust girth: {at: 17.3}}}]\nfit: {bust girth: 5.7}\n"+
			"photos: [{file: back.png, caption: The back, alt: Back view, face: no}, {file: "+face+".png, caption: "+m()+", alt: "+m()+", face: yes}]\n---\n"+
			"Seen. [["+gown+"]] and [["+gown+"|"+m()+"]] and ["+m()+"](../"+gown+"/build.md \""+m()+"\") and [[builds/"+gown+"#"+"cut]]\n\n![ "+m()+"]("+face+".png \""+m()+"\")\n\n"+
			"Private: "+m()+"\n- "+m()+"\n\n- one\n- **Private:** "+m()+"[^2]\n- three\n\nCircle: "+m()+"\n\n[^2]: "+m()+"\n\nNext time: shown (about: "+gown+")\n\n<!-- "+m()+" -->\n")
		p.files[secret].Data = append(p.files[secret].Data, "\n# Cut\n"...)
		p.add(fmt.Sprintf("builds/shown-%d/2026-04-01-fitting.md", i), "---\nspent: [{amount: 123.45, what: "+m()+"}]\nmeasured: {bust girth: 96.7}\n"+
			"body: [{over: ["+m()+"], remarks: "+m()+", bust girth: 91.9}]\naltered: [{seam: side, was: 1.5, now: 1.1, what: "+m()+", because: "+m()+"}]\n"+
			"fitted: [{where: "+m()+", fault: "+m()+"}]\nbought: [{material: linen, amount: 2 m, cost: 67.89, from: "+m()+"}]\npattern changed: {bust girth: 22.2}\n---\nSeen.\n\nPrivate: "+m()+"\n")
	}
	p.add("patterns/draft.md", "---\nsize: "+m()+"\n---\nA draft.\n")
	p.add("materials/linen.md", "---\nprice: 31.99\nfrom: "+m()+"\n---\nLinen.\n")
	p.add("occasions/fair.md", "---\ndate: 2027-06-01\nplace: "+m()+"\n---\nA fair.\n")
	return p
}

// make makes the site of a journal for somebody, packs it, and returns its files.
func (p *planter) make(t *testing.T, who journal.Audience) map[string][]byte {
	t.Helper()
	day := edtf.DayOf(2026, 11, 25)
	j, findings, err := journal.Open(p.files)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range findings {
		if f.Level == source.Error {
			t.Errorf("%s: %s", f.Span, f.Text)
		}
	}
	left := j
	var fits map[journal.ID]audience.Fit
	if who != "" {
		share, err := audience.For(j, who, day)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range share.Cut {
			t.Errorf("the text of %s was left out whole", r.Head().ID)
		}
		left, fits = share.Journal, share.Fits
	}
	store, err := keep.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "site")
	if _, faults, err := site.Make(context.Background(), site.Order{
		Journal: left, Files: p.files, Today: day, For: who, Fits: fits, Out: out, Photos: &photo.Darkroom{Store: store},
	}); err != nil || len(faults) > 0 {
		t.Fatal(err, faults)
	}
	if err := output.Pack(out, out+".zip"); err != nil {
		t.Fatal(err)
	}
	made := make(map[string][]byte)
	err = filepath.WalkDir(out, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		name, _ := filepath.Rel(out, path)
		made[filepath.ToSlash(name)], err = os.ReadFile(path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	z, err := zip.OpenReader(out + ".zip")
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	made["in zip: comment"] = []byte(z.Comment)
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		made["in zip: "+f.Name+" "+f.Comment], err = io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
	}
	made["the zip itself"], err = os.ReadFile(out + ".zip")
	if err != nil {
		t.Fatal(err)
	}
	return made
}

var (
	inBase64 = regexp.MustCompile(`[A-Za-z0-9+/_-]{8,}={0,2}`)
	aMark    = regexp.MustCompile(`(?i)qz\d{4,}zq`)
)

// readings returns what a file may be read as.
func readings(name string, data []byte) []string {
	text := name + "\n" + string(data)
	all := []string{text, html.UnescapeString(text), html.UnescapeString(html.UnescapeString(text))}
	for _, s := range all[:2] {
		if decoded, err := url.PathUnescape(regexp.MustCompile(`%[^0-9A-Fa-f]|%.[^0-9A-Fa-f]`).ReplaceAllString(s, " ")); err == nil {
			all = append(all, decoded)
		}
	}
	for _, found := range inBase64.FindAllString(text, -1) {
		for _, e := range []*base64.Encoding{base64.StdEncoding, base64.RawStdEncoding, base64.URLEncoding, base64.RawURLEncoding} {
			if decoded, err := e.DecodeString(found); err == nil {
				all = append(all, string(decoded))
			}
		}
	}
	for _, order := range []binary.ByteOrder{binary.LittleEndian, binary.BigEndian} {
		for shift := range 2 {
			var units []uint16
			for i := shift; i+1 < len(data); i += 2 {
				units = append(units, order.Uint16(data[i:]))
			}
			all = append(all, string(utf16.Decode(units)))
		}
	}
	return all
}

// figures are the measures and the money that stand in the journal, as pages show them.
var figures = []string{"91.3", "91.9", "87.3", "96.7", "43.1", "5.7", "4711", "123.45", "67.89", "31.99", "22.2"}

// Thousands of marks are planted in all that is hidden, and none is in any byte of the
// site, however it is read.
func TestNoMarkIsInASharedSite(t *testing.T) {
	const pages = 17
	p := plant(pages)
	if len(p.marks) < 3000 {
		t.Errorf("only %d marks were planted", len(p.marks))
	}
	made := p.make(t, journal.Public)
	if len(made) < 60 {
		t.Errorf("only %d files were made", len(made))
	}
	shown := 0
	for name, data := range made {
		for _, text := range readings(name, data) {
			if found := aMark.FindString(text); found != "" {
				at := strings.Index(text, found)
				t.Errorf("%s: %s is in %q", name, found, text[max(0, at-60):min(len(text), at+40)])
				break
			}
			for _, figure := range figures {
				if strings.HasSuffix(name, ".html") && strings.Contains(text, figure) {
					t.Errorf("%s: the figure %s is there", name, figure)
				}
			}
		}
		if strings.HasPrefix(name, "pictures/") {
			shown++
		}
	}
	if shown != pages {
		t.Errorf("%d pictures were copied, want %d", shown, pages)
	}
	all, told := make(map[string]bool), make(map[string]bool)
	for name, data := range p.make(t, "") {
		for _, figure := range figures {
			told[figure] = told[figure] || strings.Contains(string(data), figure)
		}
		for _, mark := range aMark.FindAllString(name+string(data), -1) {
			all[mark] = true
		}
	}
	for _, figure := range figures {
		if !told[figure] {
			t.Errorf("the figure %s is not even in the maker's own site", figure)
		}
	}
	if len(all) < len(p.marks)*8/10 {
		t.Errorf("of %d marks only %d are in the maker's own site", len(p.marks), len(all))
	}
}

// The search finds marks in all disguises.
func TestTheSearchFindsMarks(t *testing.T) {
	const mark = "qz1234zq"
	var wide []byte
	for _, unit := range utf16.Encode([]rune(" " + mark)) {
		wide = binary.BigEndian.AppendUint16(wide, unit)
	}
	for _, data := range []string{
		"a " + mark, "&#113;z1234zq", "%71z1234zq", "&#x25;71z1234zq", base64.StdEncoding.EncodeToString([]byte("xx" + mark + "y")), string(wide), "x" + string(wide), "QZ1234ZQ",
	} {
		found := false
		for _, text := range readings("a.html", []byte(data)) {
			found = found || aMark.MatchString(text)
		}
		if !found {
			t.Errorf("%q: no mark was found", data)
		}
	}
}

func crcOf(text string) uint32 { return crc32.ChecksumIEEE([]byte(text)) }
