package photo

import (
	"bytes"
	"path"
	"slices"
	"strings"
)

// A kind is a file format, read here or refused by name.
type kind struct {
	name    string   // "JPEG"
	called  string   // "a JPEG"
	endings []string // that files of it have, the usual one first
	saveAs  string   // what to save it as where it cannot be read
	look    func(*leaf) (Info, *Fault)
}

func kindJPEG() *kind {
	return &kind{"JPEG", "a JPEG", []string{".jpg", ".jpeg", ".jpe", ".jfif"}, "an ordinary JPEG", lookJPEG}
}

func kindPNG() *kind {
	return &kind{"PNG", "a PNG", []string{".png"}, "an ordinary PNG", lookPNG}
}

func kindWebP() *kind {
	return &kind{"WebP", "a WebP", []string{".webp"}, "JPEG", lookWebP}
}

// sniffed is how much of a file's start tells its format.
const sniffed = 1024

// kindOf tells a format by a file's first bytes. It returns nil for what is
// none of the formats known here.
func kindOf(head []byte, name string) *kind {
	starts := func(magic string) bool { return bytes.HasPrefix(head, []byte(magic)) }
	switch {
	case starts("\xff\xd8\xff"):
		return kindJPEG()
	case starts("\x89PNG\r\n\x1a\n"):
		return kindPNG()
	case starts("RIFF") && len(head) >= 12 && string(head[8:12]) == "WEBP":
		return kindWebP()
	}
	for _, r := range refusals {
		if r.tells(head, strings.ToLower(path.Ext(name))) {
			return &kind{called: r.called, saveAs: r.saveAs}
		}
	}
	return nil
}

// A refusal names a format that is not read here.
type refusal struct {
	tells  func(head []byte, ending string) bool
	called string
	saveAs string
}

// heicPicture is what pictures from phones are called that [Examine] takes.
const heicPicture = "a HEIC picture"

// heicBrands are those of HEVC pictures (ISO/IEC 23008-12, annex B.4), single ones
// and sequences.
var heicBrands = []string{"heic", "heix", "heim", "heis", "hevc", "hevx", "hevm", "hevs"}

// The first bytes are those the formats' specifications give, as collected in
// the IANA media type registrations and the shared MIME information database
// of freedesktop.org.
var refusals = []refusal{
	{brand(heicBrands...), heicPicture, "JPEG"},
	{brand("avif", "avis"), "an AVIF picture", "JPEG"},
	{brand("mif1", "mif2", "msf1"), "a HEIF picture", "JPEG"},
	{brand("crx "), "a camera's raw picture", "JPEG"},
	{brand(""), "a film", "JPEG, one frame of it"},
	{rawTIFF, "a camera's raw picture", "JPEG"},
	{magic("FUJIFILMCCD-RAW", "IIRO", "IIRS", "MMOR", "IIU\x00", "FOVb", "\x00MRM"), "a camera's raw picture", "JPEG"},
	{magic("II*\x00", "MM\x00*", "II+\x00", "MM\x00+"), "a TIFF picture", "JPEG"},
	{magic("GIF87a", "GIF89a"), "a GIF picture", "PNG"},
	{magic("BM"), "a BMP picture", "PNG"},
	{magic("%PDF-"), "a PDF", "PNG, one page a picture"},
	{magic("%!PS", "\xc5\xd0\xd3\xc6"), "a PostScript drawing", "PNG"},
	{magic("8BPS"), "a layered PSD picture", "JPEG"},
	{magic("gimp xcf"), "a layered XCF picture", "JPEG"},
	{magic("\xff\x0a", "\x00\x00\x00\x0cJXL \r\n\x87\n"), "a JPEG XL picture", "JPEG"},
	{magic("\xff\x4f\xff\x51", "\x00\x00\x00\x0cjP  \r\n\x87\n"), "a JPEG 2000 picture", "JPEG"},
	{magic("\x00\x00\x01\x00"), "an icon", "PNG"},
	{magic("PK\x03\x04"), "a ZIP or office file", "JPEG, what it shows"},
	{markup("<svg"), "an SVG drawing", "PNG"},
	{markup("<html", "<!doctype html"), "a web page", "JPEG, the picture it shows"},
}

func magic(starts ...string) func([]byte, string) bool {
	return func(head []byte, _ string) bool {
		return slices.ContainsFunc(starts, func(s string) bool { return bytes.HasPrefix(head, []byte(s)) })
	}
}

// brand tells an ISO base media file by its major brand (ISO/IEC 14496-12,
// 4.3); the empty brand stands for any.
func brand(brands ...string) func([]byte, string) bool {
	return func(head []byte, _ string) bool {
		if len(head) < 12 || string(head[4:8]) != "ftyp" {
			return false
		}
		return brands[0] == "" || slices.Contains(brands, string(head[8:12]))
	}
}

// rawTIFF tells a camera's raw picture that is a TIFF inside; but for Canon's
// mark, only the name sets most of these apart from other TIFF files.
func rawTIFF(head []byte, ending string) bool {
	if !magic("II*\x00", "MM\x00*")(head, ending) {
		return false
	}
	return len(head) >= 10 && string(head[8:10]) == "CR" ||
		slices.Contains([]string{".dng", ".nef", ".nrw", ".arw", ".sr2", ".cr2", ".pef", ".srw", ".3fr", ".iiq", ".raw"}, ending)
}

// markup tells text that holds one of the tags near its start.
func markup(tags ...string) func([]byte, string) bool {
	return func(head []byte, _ string) bool {
		text := bytes.ToLower(bytes.TrimLeft(bytes.TrimPrefix(head, []byte("\xef\xbb\xbf")), " \t\r\n"))
		return bytes.HasPrefix(text, []byte("<")) &&
			slices.ContainsFunc(tags, func(tag string) bool { return bytes.Contains(text, []byte(tag)) })
	}
}
