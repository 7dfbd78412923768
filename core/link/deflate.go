package link

import (
	"bytes"
	"compress/flate"
	"encoding/base64"
	"errors"
	"io"
)

// packedMark follows the version of a deflated text.
const packedMark = "z"

// most is how long an inflated text may be. A text of Longest characters holds
// no plan longer than that which was not made to do harm.
const most = 64 << 10

// base64 in the letters that a link may have.
var letters = base64.NewEncoding("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-=").WithPadding(base64.NoPadding).Strict()

// dictionary is what a text is likely to contain, likeliest last. It belongs to
// version 1 and must never change: links of that version are read with it.
const dictionary = "/k/f/c1/sf-aF-b6-yground/sc-aE-w-h-b5-ybedroom-g" +
	"/hea12-w24.2-y/has13-w24.8-y/hgl13-w41-p14.98-s4x8-k12-m2/hpl15-w58-p41.5-k9-m2/hgx16-w70-p17.98-k20" +
	"/b/lTcc150/b/lgx16-gx16/gj10-fgs-t-d/ncl-r16-a48-m42-e/lTob18" +
	"/b/lgl13-pl15-gl13/lef15-ef15/gv9-fesw-t/ncl-m21-e/lTea12/lgx16-ob18/lFgx16-gx16/gw4-fsw-t/ncl-m42-e/lTgr13/b/u" +
	"/sw-aA-w160-h8ft-yhall-g/sw-aB-w4000-h2400-b2-yliving.room-g/sw-aC-w128-yyard/sw-aD-b3-ystreet"

func deflate(text string) string {
	var out bytes.Buffer
	// The level is known to be a level: no error can come.
	w, _ := flate.NewWriterDict(&out, flate.BestCompression, []byte(dictionary))
	_, _ = w.Write([]byte(text))
	_ = w.Close()
	return letters.EncodeToString(out.Bytes())
}

var errTooMuch = errors.New("unpacks to too much")

func inflate(text string) (string, error) {
	packed, err := letters.DecodeString(text)
	if err != nil {
		return "", err
	}
	out, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(bytes.NewReader(packed), []byte(dictionary)), most+1))
	if err != nil {
		return "", err
	}
	if len(out) > most {
		return "", errTooMuch
	}
	return string(out), nil
}
