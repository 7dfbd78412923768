package link

import (
	"strings"

	"twoleaf/core/internal/deflate"
)

// packedMark follows the version of a deflated text.
const packedMark = "z"

// most is how long an inflated text may be. A text of Longest characters holds
// no plan longer than that which was not made to do harm.
const most = 64 << 10

// letters are those that a link may have, one for every six bits.
const letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-="

// dictionary is what a text is likely to contain, likeliest last. It belongs to
// version 1 and must never change: links of that version are read with it.
const dictionary = "/k/f/c1/sf-aF-b6-yground/sc-aE-w-h-b5-ybedroom-g" +
	"/hea12-w24.2-y/has13-w24.8-y/hgl13-w41-p14.98-s4x8-k12-m2/hpl15-w58-p41.5-k9-m2/hgx16-w70-p17.98-k20" +
	"/b/lTcc150/b/lgx16-gx16/gj10-fgs-t-d/ncl-r16-a48-m42-e/lTob18" +
	"/b/lgl13-pl15-gl13/lef15-ef15/gv9-fesw-t/ncl-m21-e/lTea12/lgx16-ob18/lFgx16-gx16/gw4-fsw-t/ncl-m42-e/lTgr13/b/u" +
	"/sw-aA-w160-h8ft-yhall-g/sw-aB-w4000-h2400-b2-yliving.room-g/sw-aC-w128-yyard/sw-aD-b3-ystreet"

// pack returns a text deflated, in letters.
func pack(text string) string {
	var out strings.Builder
	bits, n := 0, 0
	for _, b := range deflate.Pack(text, dictionary) {
		bits, n = bits<<8|int(b), n+8
		for n >= 6 {
			n -= 6
			out.WriteByte(letters[bits>>n&63])
		}
	}
	if n > 0 {
		out.WriteByte(letters[bits<<(6-n)&63])
	}
	return out.String()
}

// unpack is the inverse of pack; false for a text that pack does not give.
func unpack(text string) (string, bool) {
	packed := make([]byte, 0, len(text))
	bits, n := 0, 0
	for i := range len(text) {
		k := strings.IndexByte(letters, text[i])
		if k < 0 {
			return "", false
		}
		if bits, n = bits<<6|k, n+6; n >= 8 {
			n -= 8
			packed = append(packed, byte(bits>>n))
			bits &= 1<<n - 1
		}
	}
	if bits != 0 || n == 6 {
		return "", false // a rest that belongs to no byte
	}
	return deflate.Unpack(packed, dictionary, most)
}
