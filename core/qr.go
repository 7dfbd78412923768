package core

import "rsc.io/qr"

// qrRows returns the square code of a text as rows of 0 and 1, dark is 1,
// without the quiet zone; level L, as the link carries its own check characters.
func qrRows(text string) ([]string, error) {
	code, err := qr.Encode(text, qr.L)
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
