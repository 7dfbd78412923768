package core

import (
	"errors"

	"rsc.io/qr/coding"
)

// qrRows returns the square code of a text as rows of 0 and 1, dark is 1,
// without the quiet zone; level L, as the link carries its own check characters.
func qrRows(text string) ([]string, error) {
	content := coding.String(text) // a link has small letters, which only this kind can hold
	version := coding.Version(coding.MinVersion)
	for content.Bits(version) > 8*version.DataBytes(coding.L) {
		if version++; version > coding.MaxVersion {
			return nil, errors.New("too long")
		}
	}
	drawing, err := coding.NewPlan(version, coding.L, 0)
	if err != nil {
		return nil, err
	}
	code, err := drawing.Encode(content)
	if err != nil {
		return nil, err
	}
	rows := make([]string, code.Size)
	for y := range rows {
		row := make([]byte, code.Size)
		for x := range row {
			row[x] = '0'
			if code.Black(x, y) {
				row[x] = '1'
			}
		}
		rows[y] = string(row)
	}
	return rows, nil
}
